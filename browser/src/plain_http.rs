//! Plain http to another device: nothing is kept there, and the app works all the same.

use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;

/// A name that the browser finds on this machine, and trusts no more than any other.
pub(crate) const HOST: &str = "plain.test";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let mut browser = ground.browser("plain-http").await?;
    browser.origin = browser.origin.replace("localhost", HOST);
    browser.load("/herbal/Urtica%20dioica").await?;
    equal("secure", &browser.run("return isSecureContext", Vec::new()).await?, &false.into())?;
    equal("plant", &browser.heading().await?, &"Urtica dioica L.".to_owned())?;
    let told = "return document.getElementById('not-kept').hidden === false";
    browser.wait("word that nothing is kept", told).await?;
    let at = outing::begin(&browser).await?;
    browser.add(&at, "participant", &[("called", "Wren Ashby")]).await?;
    browser.load(&format!("{at}/rows/participant")).await?;
    browser.has("Wren Ashby").await?;
    browser.close().await?;
    figure("plain-http", 1, "outings begun over plain http, and there when it was loaded again");
    Ok(())
}
