//! How long people wait after a tap, on a processor slowed down.
//!
//! The tools of the browser slow the page down and not its worker: what the worker took is counted as
//! often as it would have taken on a processor that slow.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, figure};
use serde::Deserialize;
use serde_json::json;
use std::sync::atomic::Ordering;

/// How many times slower the processor is made.
const SLOWED: f64 = 4.0;
/// What a tap may take, in milliseconds, and how many in a hundred must keep to it.
const GOAL: f64 = 100.0;

/// A tap, as the page timed it.
#[derive(Clone, Debug, Deserialize)]
pub(crate) struct Tap {
    /// The address of the screen that answered it.
    at: String,
    /// From the finger to the paint.
    ms: f64,
    /// What the worker took of that.
    worker: f64,
}

impl Tap {
    fn slowed(&self) -> f64 {
        self.ms + (SLOWED - 1.0) * self.worker
    }

    /// The kind of screen, without what names this outing.
    fn screen(&self) -> &str {
        let at = self.at.rsplit_once("/outing/").map_or(self.at.as_str(), |(_, rest)| rest);
        at.split_once('/').map_or(at, |(_, way)| way)
    }
}

/// Slows the page down, and times its taps from here on, where that is asked for.
pub(crate) async fn slow(ground: &Ground, browser: &Browser) -> Outcome {
    if !ground.times_taps {
        return Ok(());
    }
    browser.tool("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWED })).await?;
    browser.timed.store(true, Ordering::Relaxed);
    browser.run(include_str!("taps.js"), Vec::new()).await.map(drop)
}

/// Takes what was timed along, before the page goes.
pub(crate) async fn take(ground: &mut Ground, browser: &Browser) -> Outcome {
    if !ground.times_taps {
        return Ok(());
    }
    browser.timed.store(false, Ordering::Relaxed);
    let taps = browser.run("return window.taps.splice(0)", Vec::new()).await?;
    ground.taps.extend(serde_json::from_value::<Vec<Tap>>(taps)?);
    Ok(())
}

/// How long taps took: how many in a hundred kept to the goal, and the slowest by their screens.
pub(crate) fn figures(taps: &mut [Tap]) {
    if taps.is_empty() {
        return;
    }
    taps.sort_by(|a, b| a.slowed().total_cmp(&b.slowed()));
    let within = taps.iter().filter(|tap| tap.slowed() <= GOAL).count();
    let share = 100.0 * within as f64 / taps.len() as f64;
    figure("taps", taps.len(), "taps of the main job that led to a screen, slowed four times");
    figure("taps-within", format!("{share:.1}"), "in 100 of them answered within 100 ms (goal 99)");
    for (name, at) in [("taps-median", taps.len() / 2), ("taps-95", taps.len() * 95 / 100)] {
        if let Some(tap) = taps.get(at) {
            figure(name, format!("{:.0}", tap.slowed()), "ms");
        }
    }
    for tap in taps.iter().rev().take(SLOWEST) {
        let (all, worker) = (tap.slowed(), SLOWED * tap.worker);
        let says = format!("ms, of which the worker {worker:.0}: {}", tap.screen());
        figure("taps-slow", format!("{all:.0}"), &says);
    }
}

/// How many of the slowest are named.
const SLOWEST: usize = 12;
