//! How long a start takes on a slow device: of what is kept, without the site, in a browser just opened.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, figure};
use serde_json::{Value, json};
use std::time::Duration;

/// How much slower the device is than this one.
const SLOWER: u64 = 4;
const RUNS: usize = 7;

/// Notes when the worker was made, when it gave its first answer, and when that was on the screen.
const WATCH: &str = "
    const noted = (globalThis.noted = {});
    globalThis.Worker = class extends Worker {
        constructor(...of) {
            super(...of);
            noted.made = performance.now();
            this.addEventListener('message', () => (noted.answered ??= performance.now()));
        }
    };
    new MutationObserver((_, watch) => {
        if (!document.querySelector('#main h1[tabindex]')) return;
        watch.disconnect();
        requestAnimationFrame(() => setTimeout(() => (noted.shown = performance.now())));
    }).observe(document, { childList: true, subtree: true });";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("start").await?;
    browser.load("/").await?;
    browser.kept().await?;
    browser.close().await?;
    ground.site.stop()?;
    let mut starts = Vec::with_capacity(RUNS);
    for _ in 0..RUNS {
        let browser = ground.browser("start").await?;
        starts.push(start(&browser).await?);
        browser.close().await?;
    }
    let of = |part: fn(&Start) -> u64| median(starts.iter().map(part).collect());
    let whole = of(|start| start.page + SLOWER * start.worker).ok_or("nothing started")?;
    let of_median = format!("median of {RUNS}");
    figure(
        "start-slowed",
        whole,
        &format!(
            "ms to the first screen from what is kept, {SLOWER} times slower, {of_median} (goal 1000)"
        ),
    );
    let page = of(|start| start.page).unwrap_or_default();
    let worker = of(|start| start.worker).unwrap_or_default();
    figure("start-page", page, &format!("ms of it the page, slowed by the browser, {of_median}"));
    let unslowed =
        format!("ms the worker, which no browser slows: it counts {SLOWER} times, {of_median}");
    figure("start-worker", worker, &unslowed);
    Ok(())
}

/// The parts of one start, in milliseconds.
struct Start {
    page: u64,
    worker: u64,
}

async fn start(browser: &Browser) -> Outcome<Start> {
    browser.tool("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
    browser.tool("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await?;
    // What a browser does of its own accord when it opens is no part of the app.
    tokio::time::sleep(Duration::from_secs(1)).await;
    browser.client.goto(&format!("{}/", browser.origin)).await?;
    browser.wait("the first screen", "return noted.shown > 0").await?;
    let noted = browser.run("return noted", Vec::new()).await?;
    let at = |name: &str| noted.get(name).and_then(Value::as_f64).ok_or("a moment was not noted");
    let (made, answered, shown) = (at("made")?, at("answered")?, at("shown")?);
    let worker = answered - made;
    Ok(Start { page: (shown - worker) as u64, worker: worker as u64 })
}

fn median(mut all: Vec<u64>) -> Option<u64> {
    all.sort_unstable();
    all.get(all.len() / 2).copied()
}
