//! Every screen as a picture, at the sizes of a phone, a tablet and a desk, in every look.

use crate::access::{LOOKS, PROBE, resize, screens};
use crate::ground::{Ground, Outcome, figure};
use crate::outing;
use serde_json::json;
use std::fs;

const SIZES: [(u32, u32); 3] = [(360, 740), (820, 1180), (1440, 900)];

/// A screen that is longer than this is cut.
const LONGEST: u64 = 4000;

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let folder = ground.folder.join("screens");
    fs::create_dir_all(&folder)?;
    let browser = ground.browser("screens").await?;
    browser.load("/").await?;
    let at = outing::whole(&browser).await?;
    browser.run(PROBE, Vec::new()).await?;
    let mut pictures = 0;
    for to in screens(&browser, &at).await? {
        browser.go(&to).await?;
        let name = to.replace(&at, "outing").trim_matches('/').replace(['/', '?', '%'], "-");
        let name = if name.is_empty() { "home" } else { &name };
        for (width, height) in SIZES {
            for looks in LOOKS {
                browser.run("dressed(arguments[0])", vec![json!(looks)]).await?;
                resize(&browser, (width, height)).await?;
                let long = "return document.documentElement.scrollHeight";
                let long = browser.run(long, Vec::new()).await?.as_u64().unwrap_or_default();
                let whole = u32::try_from(long.min(LONGEST)).unwrap_or(height).max(height);
                resize(&browser, (width, whole)).await?;
                let looks = if looks.is_empty() { "day" } else { looks };
                let picture = browser.client.screenshot().await?;
                fs::write(folder.join(format!("{name}-{width}-{looks}.png")), picture)?;
                pictures += 1;
            }
        }
    }
    browser.close().await?;
    figure("pictures", pictures, &format!("pictures of screens, in {}", folder.display()));
    Ok(())
}
