//! A newer version: it is offered and not forced, and files of two versions never mix.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use std::fs;
use std::path::{Path, PathBuf};

/// The versions that the files of this document are of.
const RUNS: &str = "const all = performance.getEntriesByType('resource').map(({ name }) => name)
    .concat([...document.querySelectorAll('script, link[rel=stylesheet]')].map((one) => one.src ?? one.href));
    return [...new Set(all.map((name) => name.match(/[0-9a-f]{32}/)?.[0]).filter(Boolean))].join()";
/// The versions that are kept, each with those that its files are of.
const KEPT: &str = "return caches.keys().then((names) => Promise.all(names.map(async (name) => {
    const files = await (await caches.open(name)).keys();
    const versions = files.map(({ url }) => url.match(/[0-9a-f]{32}/)?.[0]).filter(Boolean);
    return `${name}: ${[...new Set(versions)]}`;
}))).then((all) => all.join())";
const OFFERED: &str = "return document.getElementById('newer').hidden === false";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let old = version(&ground.exported)?;
    let (newer, new) = another(&ground.exported, &ground.folder.join("newer"), &old)?;
    let browser = ground.browser("newer").await?;
    browser.load("/").await?;
    browser.kept().await?;
    let at = outing::begin(&browser).await?;
    ground.site.show(&newer);
    ground.site.asked();
    browser.reload().await?;
    browser.wait("the offer of a newer version", OFFERED).await?;
    // A page that is left altogether lets the newer version in: this one stays.
    for to in [at.as_str(), "/herbal/Urtica%20dioica"] {
        browser.go(to).await?;
        browser.reload().await?;
        browser.wait("the offer of a newer version", OFFERED).await?;
        equal("before the tap", &browser.said(RUNS).await?, &old)?;
    }
    changed(&browser, &new).await?;
    browser.go(&at).await?;
    equal("the outing", &browser.heading().await?, &outing::NAME.to_owned())?;
    let stale = ground.site.asked().iter().filter(|path| path.contains(&old)).count();
    browser.close().await?;
    figure("newer-stale", stale, "old files asked for once there was a newer version");
    equal("old files asked for", &stale, &0)
}

/// Taps the offer: the new version runs, and nothing of the old one is kept.
async fn changed(browser: &Browser, new: &str) -> Outcome {
    browser.seen().await?;
    browser.tap("#renew").await?;
    browser.fresh().await?;
    equal("after the tap", &browser.said(RUNS).await?, &new.to_owned())?;
    equal("kept", &browser.said(KEPT).await?, &format!("trug-{new}: {new}"))?;
    equal("offered again", &browser.run(OFFERED, Vec::new()).await?, &false.into())
}

/// The version of an exported app: the one folder in it.
fn version(app: &Path) -> Outcome<String> {
    let entries: Vec<_> = fs::read_dir(app)?.collect::<Result<_, _>>()?;
    let folder = entries.iter().find(|entry| entry.path().is_dir()).ok_or("no version")?;
    Ok(folder.file_name().to_string_lossy().into_owned())
}

/// A copy of the app with another version in the names of its files and in its texts.
fn another(app: &Path, copy: &Path, old: &str) -> Outcome<(PathBuf, String)> {
    let new: String = old.chars().rev().collect();
    fs::create_dir_all(copy.join(&new))?;
    for folder in [app.to_owned(), app.join(old)] {
        for entry in fs::read_dir(folder)? {
            let path = entry?.path();
            if path.is_file() {
                let name = path.strip_prefix(app)?.to_string_lossy().replace(old, &new);
                fs::write(copy.join(name), renamed(fs::read(&path)?, old, &new))?;
            }
        }
    }
    Ok((copy.to_owned(), new))
}

fn renamed(bytes: Vec<u8>, old: &str, new: &str) -> Vec<u8> {
    match String::from_utf8(bytes) {
        Ok(text) => text.replace(old, new).into_bytes(),
        Err(packed) => packed.into_bytes(),
    }
}
