//! In the field, by taps alone: a plant read by two people, and the plots of a stand counted.

use crate::browser::Browser;
use crate::form::Said;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::{outing, taps};

/// So many looks are taken by each reader.
const LOOKS: usize = 6;

/// The first thing that a character may show; that it cannot be told, where it is measured.
const CHOICE: &str = "main form.look .choice";

/// A survey of which one plot is counted.
pub(crate) const SURVEY: [Said<'_>; 6] = [
    ("stand", "bank"),
    ("part", "young-leaf"),
    ("on", "2027-05-12"),
    ("by", "Tobias Quill"),
    ("plots-in-stand", "160"),
    ("pieces", "12"),
];

/// The way to the plots of the survey.
pub(crate) const COUNT: &str =
    "return document.querySelector(\"main a[href*='/count/']\").hash.slice(1)";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("in-hand").await?;
    browser.load("/").await?;
    let at = outing::whole(&browser).await?;
    taps::slow(ground, &browser).await?;
    let taps = read(ground, &browser, &at).await?;
    figure(
        "in-hand-taps",
        taps,
        "taps for a plant in hand: two readers, six looks each, what it is",
    );
    let taps = count(&browser, &at).await?;
    taps::take(ground, &browser).await?;
    figure("count-taps", taps, "taps for nine more plots, counted by steps of ten, five and one");
    let errors = browser.errors().await?;
    browser.close().await?;
    equal("errors in the console", &errors, &Vec::new())
}

/// Two readers look, neither of whom is told what it could be; then it is shown, and stays.
async fn read(ground: &mut Ground, browser: &Browser, at: &str) -> Outcome<usize> {
    browser.go(at).await?;
    browser.follow("main a[href$='/in-hand']").await?;
    let mut taps = 1;
    for reader in ["maren-holt", "tobias-quill"] {
        browser.follow(&format!("main a[href$='/bank-1/{reader}']")).await?;
        for _ in 0..LOOKS {
            browser.follow(CHOICE).await?;
        }
        let words = browser.words().await?;
        if words.contains("Lamium") {
            return Err(format!("a candidate is shown to a reader: {words}").into());
        }
        taps += 1 + LOOKS;
        browser.go(&format!("{at}/in-hand")).await?;
        taps += 1;
    }
    browser.follow("main a[href$='/bank-1/tobias-quill']").await?;
    browser.follow("main button[name='looked']").await?;
    browser.has("Urtica dioica").await?;
    taps::take(ground, browser).await?;
    browser.reload().await?;
    browser.has("Urtica dioica").await?;
    taps::slow(ground, browser).await?;
    Ok(taps + 2)
}

async fn count(browser: &Browser, at: &str) -> Outcome<usize> {
    browser.add(at, "survey", &SURVEY).await?;
    browser.go(&format!("{at}/rows/survey")).await?;
    let to = browser.said(COUNT).await?;
    browser.go(&to).await?;
    let mut taps = 0;
    for plot in 2..=10 {
        for step in ["10", "5", "1", "-1"] {
            browser.tap(&format!("button[data-step='{step}']")).await?;
        }
        equal(
            "counted",
            &browser.said("return document.getElementById('plot').value").await?,
            &"15".to_owned(),
        )?;
        browser.follow("form.count button:not([type])").await?;
        equal("next", &browser.heading().await?, &format!("Plot {}", plot + 1))?;
        taps += 5;
    }
    browser.follow("main button[name='take-back']").await?;
    browser.go(&to).await?;
    equal("after the taking back", &browser.heading().await?, &"Plot 10".to_owned())?;
    browser.go(&format!("{at}/allowance")).await?;
    browser.tap("main details[data-later] summary").await?;
    browser
        .wait(
            "the working",
            "return Boolean(document.querySelector('main details[open] .opened li'))",
        )
        .await?;
    Ok(taps)
}
