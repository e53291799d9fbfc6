//! A page as PDF, by the program that serves the app; without it, its screen says what is missing.

use crate::browser::{Browser, until};
use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use serde_json::json;
use std::fs;
use std::process::Stdio;
use tokio::io::{AsyncBufReadExt as _, BufReader};
use tokio::process::{Child, Command};

const OFFERED: &str = "return [...document.querySelectorAll('main .as-pdf')]
    .filter((form) => form.checkVisibility()).length";
const NOT_MADE: &str =
    "return document.querySelector('main .warned h2')?.innerText === 'No PDF was made'";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    nobody_to_make_it(ground).await?;
    let mut browser = ground.browser("pdf").await?;
    let (mut server, origin) = served(ground).await?;
    browser.origin = origin;
    browser.load("/").await?;
    browser.kept().await?;
    let pages = format!("{}/pages", outing::whole(&browser).await?);
    browser.go(&pages).await?;
    equal("on each page", &(offered(&browser).await? > 3), &true)?;
    let mut made = 0;
    for at in [pages.clone(), format!("{pages}/run-sheet")] {
        browser.go(&at).await?;
        made += usize::from(ordered(ground, &browser).await?);
        equal("the screen stays", &browser.address().await?, &at)?;
    }
    server.kill().await?;
    browser.reload().await?;
    browser.tap("main .as-pdf button").await?;
    browser.wait("word that no PDF was made", NOT_MADE).await?;
    browser.close().await?;
    figure("pdf", made, "PDFs made by a tap; without the program, the screen says so");
    equal("made", &made, &2)
}

/// Exported files have no program that makes PDFs: none is offered.
async fn nobody_to_make_it(ground: &Ground) -> Outcome {
    let browser = ground.browser("no-pdf").await?;
    browser.load("/").await?;
    let at = outing::whole(&browser).await?;
    for at in [format!("{at}/pages"), format!("{at}/pages/run-sheet")] {
        browser.go(&at).await?;
        equal("offered", &offered(&browser).await?, &0)?;
    }
    browser.close().await
}

/// How many PDFs the screen offers.
async fn offered(browser: &Browser) -> Outcome<u64> {
    let count = browser.run(OFFERED, Vec::new()).await?;
    Ok(count.as_u64().ok_or("no count")?)
}

/// Taps for the PDF of the run sheet; whether that is what arrives.
async fn ordered(ground: &Ground, browser: &Browser) -> Outcome<bool> {
    let folder = ground.folder.join("pdf-made");
    fs::create_dir_all(&folder)?;
    let to = json!({ "behavior": "allow", "downloadPath": folder });
    browser.tool("Browser.setDownloadBehavior", to).await?;
    browser.follow("main .as-pdf button[value='run-sheet']").await?;
    let file = folder.join("run-sheet.pdf");
    until("the PDF to arrive", || file.metadata().is_ok_and(|file| file.len() > 0)).await?;
    let is_pdf = fs::read(&file)?.starts_with(b"%PDF-");
    fs::remove_file(file)?;
    Ok(is_pdf)
}

/// The program, serving the app, and the origin that it names.
async fn served(ground: &Ground) -> Outcome<(Child, String)> {
    let mut child = Command::new(&ground.trug)
        .args(["app", "--no-open", "--port", "0"])
        .stdout(Stdio::piped())
        .kill_on_drop(true)
        .spawn()?;
    let told = child.stdout.take().ok_or("the program says nothing")?;
    let address = BufReader::new(told).lines().next_line().await?.ok_or("it names no address")?;
    Ok((child, address.trim_end_matches('/').to_owned()))
}
