//! One page, opened by a browser without a window and printed as it stands once it is quiet.

use crate::house::Outcome;
use std::fs::{self, File};
use std::path::Path;
use std::process::{Child, Command, ExitStatus, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// No desktop, no network of its own, and a sandbox that root cannot have; 15 seconds of the page's
/// own time, which pass as fast as the page allows.
const FLAGS: [&str; 11] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--window-size=1700,1000",
    "--virtual-time-budget=15000",
    "--dump-dom",
];

/// Longer than any page takes on a slow machine.
const PATIENCE: Duration = Duration::from_secs(120);

/// The document of a page of this folder, after its scripts have run.
pub(super) fn dump(browser: &Path, folder: &Path, page: &str) -> Outcome<String> {
    let (printed, log) = (folder.join("printed.html"), folder.join("browser.log"));
    let child = Command::new(browser)
        .args(FLAGS)
        .arg(format!("--user-data-dir={}", folder.join("profile").display()))
        .arg(format!("file://{}", folder.join(page).display()))
        .stdin(Stdio::null())
        .stdout(File::create(&printed)?)
        .stderr(File::create(&log)?)
        .spawn()?;
    match wait(child)? {
        Some(status) if status.success() => Ok(fs::read_to_string(printed)?),
        Some(status) => Err(format!("the browser failed ({status}); see {}", log.display()).into()),
        None => Err(format!("the browser did not finish; see {}", log.display()).into()),
    }
}

/// How it ended; nothing if it had to be stopped.
fn wait(mut child: Child) -> Outcome<Option<ExitStatus>> {
    let start = Instant::now();
    while start.elapsed() < PATIENCE {
        if let Some(status) = child.try_wait()? {
            return Ok(Some(status));
        }
        thread::sleep(Duration::from_millis(20));
    }
    child.kill()?;
    child.wait()?;
    Ok(None)
}
