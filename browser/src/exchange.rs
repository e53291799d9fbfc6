//! Records saved in one browser, taken in by another, and back: both end up with the same.

use crate::browser::{Browser, until};
use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let phone = ground.browser("phone").await?;
    phone.load("/").await?;
    let at = outing::begin(&phone).await?;
    let handed = saved(&phone, &at, "records", &ground.folder.join("handed")).await?;
    let laptop = ground.browser("laptop").await?;
    laptop.load("/").await?;
    take_in(&laptop, &handed).await?;
    equal("taken in", &laptop.address().await?, &at)?;
    phone.add(&at, "participant", &[("called", "Wren Ashby")]).await?;
    laptop.add(&at, "participant", &[("called", "Ansel Brookhouse")]).await?;
    let of_phone = saved(&phone, &at, "records", &ground.folder.join("of-phone")).await?;
    let of_laptop = saved(&laptop, &at, "records", &ground.folder.join("of-laptop")).await?;
    take_in(&phone, &of_laptop).await?;
    take_in(&laptop, &of_phone).await?;
    let mut same = 0;
    for what in ["records", "file"] {
        let one = saved(&phone, &at, what, &ground.folder.join(format!("phone-{what}"))).await?;
        let other =
            saved(&laptop, &at, what, &ground.folder.join(format!("laptop-{what}"))).await?;
        let (one, other) = (fs::read_to_string(one)?, fs::read_to_string(other)?);
        equal(what, &one, &other)?;
        for name in ["Wren Ashby", "Ansel Brookhouse"] {
            equal(name, &one.contains(name), &true)?;
        }
        same += 1;
    }
    phone.close().await?;
    laptop.close().await?;
    figure("exchanged", same, "files alike after two browsers took in each other's records");
    Ok(())
}

/// Chooses a file on the first screen and takes it in.
async fn take_in(browser: &Browser, file: &Path) -> Outcome {
    browser.go("/").await?;
    browser.element("#files").await?.send_keys(&file.to_string_lossy()).await?;
    browser.follow("form.take-in button").await
}

/// Saves the records or the file of an outing into a folder; the file that arrives there.
async fn saved(browser: &Browser, outing: &str, what: &str, folder: &Path) -> Outcome<PathBuf> {
    fs::create_dir_all(folder)?;
    let to = json!({ "behavior": "allow", "downloadPath": folder });
    browser.tool("Browser.setDownloadBehavior", to).await?;
    browser.go(outing).await?;
    browser.follow(&format!("main a[href='#{outing}/{what}']")).await?;
    let name = if what == "records" { "records.jsonl" } else { "outing.toml" };
    let file = folder.join(name);
    until("the file to arrive", || file.metadata().is_ok_and(|file| file.len() > 0)).await?;
    Ok(file)
}
