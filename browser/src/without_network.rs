//! The site is gone: what was kept starts without it.

use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("without-network").await?;
    browser.load("/").await?;
    browser.kept().await?;
    let at = outing::begin(&browser).await?;
    ground.site.stop()?;
    ground.site.asked();
    browser.reload().await?;
    equal("reloaded", &browser.heading().await?, &outing::NAME.to_owned())?;
    browser.load("/herbal/Urtica%20dioica").await?;
    equal("plant", &browser.heading().await?, &"Urtica dioica L.".to_owned())?;
    browser.load(&format!("{at}/plan")).await?;
    browser.has("What is still open").await?;
    browser.add(&at, "participant", &[("called", "Wren Ashby")]).await?;
    browser.has("Wren Ashby").await?;
    browser.close().await?;
    let again = ground.browser("without-network").await?;
    again.load(&format!("{at}/rows/participant")).await?;
    again.has("Wren Ashby").await?;
    again.close().await?;
    equal("answers of a site that is gone", &ground.site.asked(), &Vec::new())?;
    figure("without-network", 5, "addresses opened without the site");
    Ok(())
}
