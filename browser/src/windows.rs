//! Two windows of one browser write in turn: each sees what the other wrote, and nothing is lost.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use serde_json::json;
use std::collections::BTreeSet;

/// How often each of the two writes.
const TURNS: usize = 6;

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("windows").await?;
    browser.load("/").await?;
    let at = outing::begin(&browser).await?;
    let (first, second) = (browser.client.window().await?, browser.client.new_window(false).await?);
    browser.client.switch_to_window(second.handle.clone()).await?;
    browser.load(&at).await?;
    let mut written = Vec::new();
    for turn in 0..2 * TURNS {
        let window = if turn % 2 == 0 { &first } else { &second.handle };
        browser.client.switch_to_window(window.clone()).await?;
        let name = format!("Somebody {turn}");
        browser.add(&at, "participant", &[("called", &name)]).await?;
        written.push(name);
        equal("seen in this window", &browser.rows().await?, &written)?;
    }
    for name in at_once(&browser, &at).await? {
        written.push(name);
    }
    browser.reload().await?;
    let kept = browser.rows().await?;
    let lost = written.iter().filter(|name| !kept.contains(name)).count();
    browser.close().await?;
    figure(
        "two-windows",
        written.len(),
        "entries written by two windows in turn, then both at once",
    );
    figure("two-windows-lost", lost, "of them lost");
    // Of two at once either may be the first.
    let kept: BTreeSet<_> = kept.into_iter().collect();
    equal("kept", &kept, &written.into_iter().collect())
}

/// Opens another window on a form, and sends its form and that of this window in one breath.
const BOTH: &str = "
    const sent = async (page, name) => {
        page.document.querySelector('[name=called]').value = name;
        page.document.querySelector('main form').requestSubmit();
    };
    const there = (page) => page.document.readyState === 'complete' && page.document.querySelector('[name=called]');
    const shows = (page) => page.document.querySelector('main .rows');
    const until = async (what, page) => {
        while (!what(page)) await new Promise((done) => setTimeout(done, 10));
    };
    const other = window.open(location.href);
    await until(there, other);
    sent(window, arguments[0]);
    sent(other, arguments[1]);
    await until(shows, window);
    await until(shows, other);
    other.close();";

/// What two windows kept that were told to at the same moment, over and over.
async fn at_once(browser: &Browser, at: &str) -> Outcome<Vec<String>> {
    let mut written = Vec::new();
    for turn in 0..TURNS {
        browser.go(&format!("{at}/new/participant")).await?;
        let names = ["this", "that"].map(|window| format!("Somebody of {window} {turn}"));
        let said = names.iter().map(|name| json!(name)).collect();
        browser
            .run(&format!("return (async (...arguments) => {{{BOTH}}})(...arguments)"), said)
            .await?;
        written.extend(names);
    }
    Ok(written)
}
