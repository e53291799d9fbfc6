//! The browser is killed while entries are made, many times in a row: none that was confirmed is lost.

use crate::browser::{Browser, until};
use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use serde_json::json;
use std::collections::BTreeSet;
use std::time::Duration;

/// Makes one entry after the other by the form, and tells the site of each that was shown as kept.
const WRITE: &str = "
    const [at, round] = arguments;
    const main = document.getElementById('main');
    const until = (there) => new Promise((resolve) => {
        const look = () => { if (there()) { watch.disconnect(); resolve(); } };
        const watch = new MutationObserver(look);
        watch.observe(main, { childList: true, subtree: true });
        look();
    });
    (async () => {
        for (let number = 0; ; number += 1) {
            const name = `entry-${round}-${number}`;
            location.hash = `${at}/new/participant`;
            await until(() => main.querySelector('#field-called'));
            main.querySelector('#field-called').value = name;
            main.querySelector('form.fill button').click();
            await until(() => [...main.querySelectorAll('.called')].some((row) => row.innerText === name));
            await fetch(`confirmed/${name}`);
        }
    })();";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("killed").await?;
    browser.load("/").await?;
    browser.kept().await?;
    let at = outing::begin(&browser).await?;
    browser.close().await?;
    let mut confirmed = BTreeSet::new();
    let mut lost = BTreeSet::new();
    for round in 0..ground.kills {
        let browser = ground.browser("killed").await?;
        lost.extend(missing(&browser, &at, &confirmed).await?);
        write_and_kill(ground, browser, &at, round).await?;
        confirmed.extend(told(ground));
    }
    let browser = ground.browser("killed").await?;
    confirmed.extend(told(ground));
    lost.extend(missing(&browser, &at, &confirmed).await?);
    browser.close().await?;
    figure("kills", ground.kills, "times the browser was killed while it wrote");
    figure("kills-confirmed", confirmed.len(), "entries confirmed before");
    figure("kills-lost", lost.len(), "of them lost");
    equal("lost", &lost, &BTreeSet::new())
}

/// Kills at another moment of the writing each time.
async fn write_and_kill(ground: &Ground, browser: Browser, at: &str, round: usize) -> Outcome {
    ground.site.asked();
    browser.run(WRITE, vec![json!(at), json!(round)]).await?;
    let enough = 1 + round % 3;
    until("entries to be confirmed", || ground.site.count("confirmed/") >= enough).await?;
    // Not to wait for anything, but to hit another moment of the next entry each time.
    tokio::time::sleep(Duration::from_millis((round as u64 * 37) % 101)).await;
    browser.kill().await
}

/// What was confirmed since this was last asked.
fn told(ground: &Ground) -> Vec<String> {
    let asked = ground.site.asked();
    asked.iter().filter_map(|path| path.strip_prefix("confirmed/")).map(str::to_owned).collect()
}

/// The confirmed entries that are not there.
async fn missing(
    browser: &Browser,
    at: &str,
    confirmed: &BTreeSet<String>,
) -> Outcome<Vec<String>> {
    browser.load(&format!("{at}/rows/participant")).await?;
    let there = browser.rows().await?;
    Ok(confirmed.iter().filter(|name| !there.contains(name)).cloned().collect())
}
