//! Two windows of one browser write in turn: each sees what the other wrote, and nothing is lost.

use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;

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
    browser.reload().await?;
    let kept = browser.rows().await?;
    let lost = written.iter().filter(|name| !kept.contains(name)).count();
    browser.close().await?;
    figure("two-windows", written.len(), "entries written by two windows in turn");
    figure("two-windows-lost", lost, "of them lost");
    equal("kept", &kept, &written)
}
