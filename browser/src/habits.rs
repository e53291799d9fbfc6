//! A reader's measures and order of dates, chosen on the device that they read on.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, equal};
use crate::outing;

const TEA: &str = "/work-out?recipe=herb-tea&herb=30%20g&state=dried&moisture=10%20%25";
const METRIC: &str = "30\u{a0}g";
const US: &str = "30\u{a0}g (1.1\u{a0}oz)";
const NAME: &str = "return document.getElementById('field-name').value";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("habits").await?;
    browser.load("/").await?;
    let at = outing::begin(&browser).await?;
    browser.has("13\u{a0}May 2027").await?;
    browser.go(TEA).await?;
    browser.has(METRIC).await?;
    equal("before", &browser.words().await?.contains(US), &false)?;
    // The screen follows at once, and the choice outlives it.
    browser.seen().await?;
    choose(&browser, "measures", "us").await?;
    browser.fresh().await?;
    browser.has(US).await?;
    browser.reload().await?;
    browser.has(US).await?;
    equal("kept", &chosen(&browser, "measures").await?, &"us".to_owned())?;
    nothing_is_lost(&browser).await?;
    browser.go(&at).await?;
    browser.has("May\u{a0}13, 2027").await?;
    browser.seen().await?;
    choose(&browser, "dates", "").await?;
    browser.fresh().await?;
    browser.has("13\u{a0}May 2027").await?;
    let errors = browser.errors().await?;
    browser.close().await?;
    equal("errors in the console", &errors, &Vec::new())
}

/// A form that is being filled in waits for the next screen.
async fn nothing_is_lost(browser: &Browser) -> Outcome {
    browser.go("/new").await?;
    browser.fill(&[("name", "Sloes")]).await?;
    choose(browser, "dates", "month-day-year").await?;
    equal("filled in", &browser.said(NAME).await?, &"Sloes".to_owned())
}

async fn choose(browser: &Browser, habit: &str, value: &str) -> Outcome {
    browser.run("document.querySelector('footer details').open = true", Vec::new()).await?;
    Ok(browser.element(&format!("#{habit}")).await?.select_by_value(value).await?)
}

async fn chosen(browser: &Browser, habit: &str) -> Outcome<String> {
    browser.said(&format!("return document.getElementById('{habit}').value")).await
}
