//! A first visit: the app starts, and the herbal answers.

use crate::ground::{Ground, Outcome, equal, figure};
use std::time::Instant;

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("first-visit").await?;
    let start = Instant::now();
    browser.load("/").await?;
    figure("first-screen", start.elapsed().as_millis(), "ms to the first screen");
    browser.has("None is kept on this device yet").await?;
    browser.follow("header a[href='#/herbal']").await?;
    let words = browser.element("#words").await?;
    browser.seen().await?;
    words.send_keys("nettle\u{e007}").await?;
    browser.fresh().await?;
    equal("search", &browser.address().await?, &"/herbal?words=nettle".to_owned())?;
    browser.follow("main a[href='#/herbal/Urtica%20dioica']").await?;
    equal("plant", &browser.heading().await?, &"Urtica dioica L.".to_owned())?;
    browser.follow("main nav a").await?;
    let compared = browser.address().await?;
    if !compared.starts_with("/compare/Urtica%20dioica/") {
        return Err(format!("no comparison: {compared}").into());
    }
    browser.kept().await?;
    let errors = browser.errors().await?;
    let origin = browser.origin.clone();
    let asked = browser.close_and_tell().await?;
    let elsewhere: Vec<_> =
        asked.iter().filter(|address| !address.starts_with(&format!("{origin}/"))).collect();
    figure("console-errors", errors.len(), "errors in the console");
    figure("requests", asked.len(), "requests of the app");
    figure("elsewhere", elsewhere.len(), "of them to another origin");
    equal("errors in the console", &errors, &Vec::new())?;
    equal("requests to another origin", &elsewhere, &Vec::new())?;
    if asked.is_empty() { Err("the log of the network saw nothing".into()) } else { Ok(()) }
}
