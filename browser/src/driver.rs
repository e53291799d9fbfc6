//! The driver: one program for the run, and a browser for each session.

use crate::ground::Outcome;
use crate::plain_http;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::json;
use std::path::{Path, PathBuf};
use std::process::Stdio;
use std::time::Duration;
use tokio::io::{AsyncBufReadExt as _, BufReader, Lines};
use tokio::process::{Child, ChildStdout, Command};

pub(crate) struct Driver {
    address: String,
    chromium: PathBuf,
    /// Stopped with the run.
    _program: Child,
}

/// No desktop, a sandbox that root cannot have, and nothing that the browser does of its own accord.
///
/// Nobody answers at the proxy: whatever is asked of another machine gets no further. Motion is reduced so
/// that a tap finds what it aims at.
const FLAGS: [&str; 14] = [
    "--headless=new",
    "--proxy-server=127.0.0.1:9",
    "--force-prefers-reduced-motion",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-sync",
    "--disable-features=OptimizationHints,MediaRouter,Translate,AutofillServerCommunication",
    "--lang=en-US",
    "--window-size=1000,900",
];

impl Driver {
    pub(crate) async fn start(program: &Path, chromium: &Path) -> Outcome<Self> {
        let mut child = Command::new(program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .kill_on_drop(true)
            .spawn()?;
        let told = child.stdout.take().ok_or("the driver says nothing")?;
        let mut lines = BufReader::new(told).lines();
        let port = tokio::time::timeout(Duration::from_secs(60), port(&mut lines)).await??;
        // What it says later is read as well: a full pipe would hold it up.
        tokio::spawn(async move { while let Ok(Some(_)) = lines.next_line().await {} });
        Ok(Self {
            address: format!("http://127.0.0.1:{port}"),
            chromium: chromium.to_owned(),
            _program: child,
        })
    }

    /// A browser with a profile of its own.
    pub(crate) async fn session(&self, profile: &Path) -> Outcome<Client> {
        let mut args: Vec<_> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
        args.push(format!("--user-data-dir={}", profile.display()));
        args.push(format!("--host-resolver-rules=MAP {} 127.0.0.1", plain_http::HOST));
        args.push(format!("--proxy-bypass-list={}", plain_http::HOST));
        args.push(format!("--log-net-log={}", net_log(profile).display()));
        let wanted = json!({
            "goog:chromeOptions": { "binary": self.chromium, "args": args },
            "goog:loggingPrefs": { "browser": "ALL" },
        });
        let wanted = wanted.as_object().cloned().unwrap_or_default();
        let mut builder = ClientBuilder::new(HttpConnector::new());
        Ok(builder.capabilities(wanted).connect(&self.address).await?)
    }
}

/// Where the browser of a profile logs what it asks of the network.
pub(crate) fn net_log(profile: &Path) -> PathBuf {
    profile.with_extension("net.json")
}

/// The port that the driver chose, as it says once it listens.
async fn port(lines: &mut Lines<BufReader<ChildStdout>>) -> Outcome<u16> {
    while let Some(line) = lines.next_line().await? {
        if let Some((_, port)) = line.split_once("started successfully on port ") {
            return Ok(port.trim_end_matches('.').parse()?);
        }
    }
    Err("the driver did not start".into())
}
