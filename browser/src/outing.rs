//! An outing, filled in from an empty start.

use crate::browser::Browser;
use crate::form::Said;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::refused;

pub(crate) const NAME: &str = "Nettles by the weir";

pub(crate) const OUTING: [Said<'_>; 7] = [
    ("name", NAME),
    ("date", "2027-05-13"),
    ("from", "10:00"),
    ("to", "12:30"),
    ("leader", "Maren Holt"),
    ("region", "europe"),
    ("purpose", "lesson"),
];

const ROWS: [(&str, &[Said<'_>]); 5] = [
    ("reader", &[("called", "Tobias Quill"), ("level", "trained")]),
    (
        "site",
        &[
            ("called", "Weir Meadow"),
            ("landholder", "Oda Pellwright"),
            ("land", "private"),
            ("jurisdiction", "england-and-wales"),
            ("public-right", "no"),
        ],
    ),
    (
        "stand",
        &[
            ("name", "bank"),
            ("site", "weir-meadow"),
            ("plant", "stinging nettle"),
            ("area", "40 m²"),
            ("without", "railway"),
        ],
    ),
    (
        "stop",
        &[
            ("site", "weir-meadow"),
            ("at", "10:20"),
            ("lasts", "1 h"),
            ("plants", "stinging nettle"),
        ],
    ),
    ("participant", &[("called", "Ansel Brookhouse")]),
];

/// Begins an outing by its form; its address.
pub(crate) async fn begin(browser: &Browser) -> Outcome<String> {
    browser.go("/").await?;
    browser.follow("a[href='#/new']").await?;
    browser.fill(&OUTING).await?;
    browser.keep().await?;
    equal("begun", &browser.heading().await?, &NAME.to_owned())?;
    browser.address().await
}

/// Begins an outing and fills it in as far as a plan wants it.
pub(crate) async fn whole(browser: &Browser) -> Outcome<String> {
    let at = begin(browser).await?;
    for (table, said) in ROWS {
        browser.add(&at, table, said).await.map_err(|error| format!("{table}: {error}"))?;
    }
    Ok(at)
}

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("outing").await?;
    browser.load("/").await?;
    let at = whole(&browser).await?;
    figure("filled-in", ROWS.len() + 1, "forms filled in and kept");
    browser.go(&format!("{at}/plan")).await?;
    browser.has("What is still open").await?;
    browser.has("Weir Meadow").await?;
    undo_and_bring_back(&browser, &at).await?;
    let refused = refused::every_form(&browser, &at).await?;
    figure("forms-at-fault", refused, "forms refused, and left as they were");
    figure("pages-opened", pages(&browser, &at).await?, "pages opened");
    let errors = browser.errors().await?;
    browser.close().await?;
    equal("errors in the console", &errors, &Vec::new())
}

async fn undo_and_bring_back(browser: &Browser, at: &str) -> Outcome {
    browser.go(at).await?;
    browser.follow("main button[name='take-back']").await?;
    browser.has("Taken back: Somebody who comes: Ansel Brookhouse").await?;
    equal("after the taking back", &somebody_comes(browser, at).await?, &false)?;
    browser.go(&format!("{at}/journal")).await?;
    browser.follow("main li:first-child button[name='take-back']").await?;
    equal("after the bringing back", &somebody_comes(browser, at).await?, &true)
}

async fn somebody_comes(browser: &Browser, at: &str) -> Outcome<bool> {
    browser.go(&format!("{at}/rows/participant")).await?;
    Ok(browser.words().await?.contains("Ansel Brookhouse"))
}

/// Opens every page of the plan for paper.
async fn pages(browser: &Browser, at: &str) -> Outcome<usize> {
    browser.go(&format!("{at}/pages")).await?;
    let count =
        browser.run("return document.querySelectorAll('main .ways a').length", Vec::new()).await?;
    let count = count.as_u64().and_then(|count| usize::try_from(count).ok()).unwrap_or_default();
    for page in 1..=count {
        browser.go(&format!("{at}/pages")).await?;
        browser.follow(&format!("main .ways li:nth-child({page}) a")).await?;
        browser.element("button.print").await?;
    }
    if count == 0 { Err("there is no page".into()) } else { Ok(count) }
}
