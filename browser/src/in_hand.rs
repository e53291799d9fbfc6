//! In the field, by taps alone: a plant read by two people, and the plots of a stand counted.

use crate::browser::Browser;
use crate::form::Said;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::{outing, taps};

/// An evergreen, since a browser knows no day but today.
pub(crate) const STAND: [Said<'_>; 5] = [
    ("name", "ride"),
    ("site", "weir-meadow"),
    ("plant", "Picea abies"),
    ("area", "900 m²"),
    ("without", "railway"),
];

/// What a spruce shows, as the demo's readers say, and that it is no herb of one year; anything else cannot be told.
const SPRUCE: [Said<'_>; 14] = [
    ("habit", "tree"),
    ("leaf_venation", "single"),
    ("leaf_type", "needle"),
    ("leaf_base", "sessile"),
    ("leaf_arrangement", "alternate"),
    ("leaf_underside", "green"),
    ("leaf_length_mm", "18 mm"),
    ("needle_tip", "prickly"),
    ("needle_section", "four-angled"),
    ("needle_base", "woody-peg"),
    ("twig_surface", "rough-pegged"),
    ("stem_section", "round"),
    ("duration", "perennial"),
    ("crushed_smell", "resinous"),
];

/// There are fewer characters to a plant than this.
const MOST_LOOKS: usize = 100;

const READERS: [&str; 2] = ["maren-holt", "tobias-quill"];

/// The character that is asked for; nothing once all is read.
const ASKED: &str = "return document.querySelector(\"main input[name='character']\")?.value ?? ''";

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
    browser.add(&at, "stand", &STAND).await?;
    taps::slow(ground, &browser).await?;
    let (taps, looks) = read(&browser, &at).await?;
    taps::take(ground, &browser).await?;
    browser.reload().await?;
    browser.has("Determined").await?;
    taps::slow(ground, &browser).await?;
    figure(
        "in-hand-taps",
        taps,
        "taps for a plant in hand, from the outing on: two readers, and what it is",
    );
    for (reader, looks) in READERS.iter().zip(looks) {
        figure(&format!("in-hand-looks-{reader}"), looks, "looks until nothing more is asked");
    }
    let taps = count(&browser, &at).await?;
    taps::take(ground, &browser).await?;
    figure("count-taps", taps, "taps for nine more plots, counted by steps of ten, five and one");
    let errors = browser.errors().await?;
    browser.close().await?;
    equal("errors in the console", &errors, &Vec::new())
}

/// Two readers look at a plant until nothing more is asked of them, neither of whom is told what it
/// could be; then it is shown. How many taps that took, and how many looks of each.
pub(crate) async fn read(browser: &Browser, at: &str) -> Outcome<(usize, Vec<usize>)> {
    browser.go(at).await?;
    browser.follow("main a[href$='/in-hand']").await?;
    let mut all = Vec::new();
    for reader in READERS {
        browser.follow(&format!("main a[href$='/ride-1/{reader}']")).await?;
        all.push(looks(browser).await?);
        let words = browser.words().await?;
        if words.contains("Taxus") {
            return Err(format!("a candidate is shown to a reader: {words}").into());
        }
        browser.go(&format!("{at}/in-hand")).await?;
    }
    browser.follow("main a[href$='/ride-1/tobias-quill']").await?;
    browser.follow("main button[name='looked']").await?;
    browser.has("Determined").await?;
    browser.has("Taxus baccata").await?;
    // To the plants, to each reader's looks and back, and at last what it is.
    let taps = 3 + all.iter().map(|looks| looks + 2).sum::<usize>();
    Ok((taps, all))
}

/// Answers every look that is asked for by one tap, or by a measure; how many those were.
async fn looks(browser: &Browser) -> Outcome<usize> {
    for looks in 0..MOST_LOOKS {
        let asked = browser.said(ASKED).await?;
        if asked.is_empty() {
            return Ok(looks);
        }
        let known = SPRUCE.iter().find(|(character, _)| *character == asked);
        match known {
            Some((_, saw)) if asked.ends_with("_mm") => {
                browser.element("#saw").await?.send_keys(saw).await?;
                browser.follow("form.look > button").await?;
            }
            Some((_, saw)) => browser.follow(&format!("form.look [value='{saw}']")).await?,
            None => browser.follow("form.look [value='?']").await?,
        }
    }
    Err(format!("asked for more than {MOST_LOOKS} looks").into())
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
