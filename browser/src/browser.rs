//! A browser: screens, links and waiting for what they lead to.

use crate::driver::net_log;
use crate::ground::Outcome;
use crate::net_log;
use axum::http::Method;
use fantoccini::elements::Element;
use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, Locator};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use url::{ParseError, Url};

/// Longer than anything takes on a slow machine.
const PATIENCE: Duration = Duration::from_secs(60);
/// How long a condition is left alone before it is asked again.
const STEP: Duration = Duration::from_millis(20);
/// How long a page whose taps are timed is left alone after each: asking it anything takes its time.
const ALONE: Duration = Duration::from_millis(150);

pub(crate) struct Browser {
    pub(crate) client: Client,
    pub(crate) origin: String,
    profile: PathBuf,
    /// Whether it still has to be ended.
    open: bool,
    /// Whether taps are being timed.
    pub(crate) timed: AtomicBool,
}

/// A scenario that failed leaves no browser behind.
impl Drop for Browser {
    fn drop(&mut self) {
        if self.open {
            let _ = self.end();
        }
    }
}

/// A screen is there that was not looked at before.
const FRESH: &str = "const main = document.getElementById('main'); \
    return Boolean(main?.querySelector('h1[tabindex]')) && !main.querySelector('[data-seen]') && !main.ariaBusy";

impl Browser {
    pub(crate) fn new(client: Client, origin: String, profile: PathBuf) -> Self {
        Self { client, origin, profile, open: true, timed: AtomicBool::new(false) }
    }

    pub(crate) async fn close(mut self) -> Outcome {
        self.client.clone().close().await?;
        self.open = false;
        Ok(())
    }

    /// Closes it; the addresses that its pages and workers asked for.
    pub(crate) async fn close_and_tell(self) -> Outcome<Vec<String>> {
        let (log, origin) = (net_log(&self.profile), self.origin.clone());
        self.close().await?;
        until("the log of the network", || net_log::is_whole(&log)).await?;
        net_log::asked(&log, &origin)
    }

    /// Kills the browser as a machine without power does; the lock of its profile names it.
    pub(crate) async fn kill(mut self) -> Outcome {
        self.open = false;
        let process = self.end()?;
        until("the browser to end", || !runs(&process)).await?;
        // The driver is told, so that it lets go of the browser; what it answers means nothing.
        let _ = self.client.clone().close().await;
        Ok(())
    }

    /// Kills it; where the system lists its process.
    fn end(&self) -> Outcome<PathBuf> {
        let lock = fs::read_link(self.profile.join("SingletonLock"))?;
        let lock = lock.to_string_lossy().into_owned();
        let id = lock.rsplit('-').next().ok_or("the profile names no browser")?;
        let killed = std::process::Command::new("kill").args(["-KILL", id]).status()?;
        if !killed.success() {
            return Err("the browser could not be killed".into());
        }
        Ok(Path::new("/proc").join(id))
    }

    // ---- screens ------------------------------------------------------------------------------

    /// Loads an address as if it came from outside.
    pub(crate) async fn load(&self, to: &str) -> Outcome {
        self.client.goto("about:blank").await?;
        self.client.goto(&format!("{}/#{to}", self.origin)).await?;
        self.fresh().await
    }

    /// Goes to an address of the screens, unless it is there already.
    pub(crate) async fn go(&self, to: &str) -> Outcome {
        if self.address().await? == to {
            return Ok(());
        }
        self.seen().await?;
        self.run("location.hash = arguments[0]", vec![json!(to)]).await?;
        self.fresh().await
    }

    /// Taps what leads to another screen.
    pub(crate) async fn follow(&self, css: &str) -> Outcome {
        self.seen().await?;
        self.tap(css).await?;
        if self.timed.load(Ordering::Relaxed) {
            tokio::time::sleep(ALONE).await;
        }
        self.fresh().await
    }

    pub(crate) async fn tap(&self, css: &str) -> Outcome {
        let element = self.element(css).await?;
        // As somebody scrolls who looks for it: it may lie below a bar.
        let middle = "arguments[0].scrollIntoView({ block: 'center', behavior: 'instant' })";
        self.run(middle, vec![serde_json::to_value(&element)?]).await?;
        Ok(element.click().await.map_err(|error| format!("{css}: {error}"))?)
    }

    pub(crate) async fn reload(&self) -> Outcome {
        self.client.refresh().await?;
        self.fresh().await
    }

    /// Marks the screen as looked at, so that the next one can be told from it.
    pub(crate) async fn seen(&self) -> Outcome {
        let mark = "document.getElementById('main').firstElementChild.dataset.seen = ''";
        self.run(mark, Vec::new()).await.map(drop)
    }

    pub(crate) async fn fresh(&self) -> Outcome {
        self.wait("another screen", FRESH).await
    }

    /// What stands above the screen.
    pub(crate) async fn heading(&self) -> Outcome<String> {
        self.said("return document.querySelector('main h1').innerText").await
    }

    /// All words of the screen.
    pub(crate) async fn words(&self) -> Outcome<String> {
        self.said("return document.getElementById('main').innerText").await
    }

    /// What the rows of the screen are called.
    pub(crate) async fn rows(&self) -> Outcome<Vec<String>> {
        let script = "return [...document.querySelectorAll('main .rows .called')].map((row) => row.innerText)";
        Ok(serde_json::from_value(self.run(script, Vec::new()).await?)?)
    }

    /// The address of the screen.
    pub(crate) async fn address(&self) -> Outcome<String> {
        self.said("return location.hash.slice(1)").await
    }

    /// Fails unless the screen has these words.
    pub(crate) async fn has(&self, words: &str) -> Outcome {
        if self.words().await?.contains(words) {
            return Ok(());
        }
        Err(self.lacks(&format!("{words:?}")).await?.into())
    }

    pub(crate) async fn element(&self, css: &str) -> Outcome<Element> {
        if let Ok(found) = self.client.find(Locator::Css(css)).await {
            return Ok(found);
        }
        Err(self.lacks(css).await?.into())
    }

    /// What is not on the screen, and what is.
    async fn lacks(&self, what: &str) -> Outcome<String> {
        let start: String = self.words().await?.chars().take(600).collect();
        Ok(format!("{what} is not on the screen {}: {start}", self.address().await?))
    }

    /// Waits until files of the app are kept and the keeper answers for this page.
    pub(crate) async fn kept(&self) -> Outcome {
        self.wait("the keeper", "return Boolean(navigator.serviceWorker.controller)").await
    }

    // ---- scripts ------------------------------------------------------------------------------

    pub(crate) async fn run(&self, script: &str, args: Vec<Value>) -> Outcome<Value> {
        Ok(self.client.execute(script, args).await?)
    }

    pub(crate) async fn said(&self, script: &str) -> Outcome<String> {
        let said = self.run(script, Vec::new()).await?;
        Ok(said.as_str().map(str::to_owned).ok_or_else(|| format!("no words: {said}"))?)
    }

    /// Waits until a script says yes. A page that is just being loaded says nothing yet.
    pub(crate) async fn wait(&self, what: &str, script: &str) -> Outcome {
        let start = Instant::now();
        while start.elapsed() < PATIENCE {
            if self.run(script, Vec::new()).await.is_ok_and(|said| said == json!(true)) {
                return Ok(());
            }
            tokio::time::sleep(STEP).await;
        }
        let there = self.words().await.unwrap_or_default();
        let at = self.client.current_url().await?;
        Err(format!("waited in vain for {what} at {at}: {there}").into())
    }

    // ---- past the protocol --------------------------------------------------------------------

    /// A command of the developer tools.
    pub(crate) async fn tool(&self, cmd: &str, params: Value) -> Outcome<Value> {
        self.extra("goog/cdp/execute", json!({ "cmd": cmd, "params": params })).await
    }

    /// What the console said since this was last asked, errors only.
    pub(crate) async fn errors(&self) -> Outcome<Vec<String>> {
        let entries = self.extra("se/log", json!({ "type": "browser" })).await?;
        let severe = |entry: &&Value| entry.get("level") == Some(&json!("SEVERE"));
        let said = |entry: &Value| entry.get("message").map(Value::to_string).unwrap_or_default();
        Ok(entries.as_array().into_iter().flatten().filter(severe).map(said).collect())
    }

    async fn extra(&self, path: &'static str, body: Value) -> Outcome<Value> {
        Ok(self.client.issue_cmd(Extra { path, body }).await?)
    }
}

/// Waits until something is so outside of the browser.
pub(crate) async fn until(what: &str, is_so: impl Fn() -> bool) -> Outcome {
    let start = Instant::now();
    while !is_so() {
        if start.elapsed() > PATIENCE {
            return Err(format!("waited in vain for {what}").into());
        }
        tokio::time::sleep(STEP).await;
    }
    Ok(())
}

/// Whether a process is more than an entry that nobody has collected yet.
fn runs(process: &Path) -> bool {
    let stat = fs::read_to_string(process.join("stat")).unwrap_or_default();
    stat.rsplit(')')
        .next()
        .is_some_and(|rest| !rest.trim().is_empty() && !rest.trim().starts_with('Z'))
}

/// A command that the driver adds to those of the protocol.
#[derive(Debug)]
struct Extra {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extra {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        (Method::POST, Some(self.body.to_string()))
    }
}
