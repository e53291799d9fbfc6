//! How long a start takes on a slow device: of what is kept, without the site, in a browser just opened.

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
    let Start { page, worker } = starts(ground, "start").await?;
    let slowed = format!(
        "ms to the first screen from what is kept, on a device {SLOWER} times slower (goal 1000)"
    );
    figure("start-slowed", Start { page, worker }.slowed(), &slowed);
    figure(
        "start-page",
        page,
        &format!("ms of it the page, slowed by the browser, median of {RUNS}"),
    );
    let unslowed = "ms the worker, which no browser slows: that many times in it, median of";
    figure("start-worker", worker, &format!("{unslowed} {RUNS}"));
    Ok(())
}

/// The parts of a start, in milliseconds.
pub(crate) struct Start {
    /// On the thread of the page, slowed by the browser.
    pub(crate) page: u64,
    /// In the worker, which no browser slows.
    pub(crate) worker: u64,
}

impl Start {
    /// What a device takes that is so much slower.
    pub(crate) fn slowed(&self) -> u64 {
        self.page + SLOWER * self.worker
    }
}

/// The middle of several starts with what this profile kept.
pub(crate) async fn starts(ground: &Ground, profile: &str) -> Outcome<Start> {
    let (mut pages, mut workers) = (Vec::with_capacity(RUNS), Vec::with_capacity(RUNS));
    for _ in 0..RUNS {
        // The page with the brake on; the worker without, or its wait for the page would count as its own.
        pages.push(start(ground, profile, SLOWER).await?.page);
        workers.push(start(ground, profile, 1).await?.worker);
    }
    Ok(Start { page: median(pages)?, worker: median(workers)? })
}

/// Starts the app in a browser that was just opened, with a brake on the thread of the page.
async fn start(ground: &Ground, profile: &str, brake: u64) -> Outcome<Start> {
    let browser = ground.browser(profile).await?;
    browser.tool("Emulation.setCPUThrottlingRate", json!({ "rate": brake })).await?;
    browser.tool("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await?;
    // What a browser does of its own accord when it opens is no part of the app.
    tokio::time::sleep(Duration::from_secs(1)).await;
    browser.client.goto(&format!("{}/", browser.origin)).await?;
    browser.wait("the first screen", "return noted.shown > 0").await?;
    let noted = browser.run("return noted", Vec::new()).await?;
    browser.close().await?;
    let at = |name: &str| noted.get(name).and_then(Value::as_f64).ok_or("a moment was not noted");
    let (made, answered, shown) = (at("made")?, at("answered")?, at("shown")?);
    let worker = answered - made;
    Ok(Start { page: (shown - worker) as u64, worker: worker as u64 })
}

fn median(mut all: Vec<u64>) -> Outcome<u64> {
    all.sort_unstable();
    Ok(*all.get(all.len() / 2).ok_or("nothing started")?)
}
