//! The app in a real browser, scenario by scenario: prints a figure a line, fails when a goal is missed.
//!
//! `browser CHROMEDRIVER CHROMIUM TRUG AXE FOLDER KILLS SCENARIO…`; named `taps` besides, the scenarios of the
//! main job run on a processor slowed down, and their taps are timed.

mod access;
mod browser;
mod day;
mod driver;
mod exchange;
mod first_visit;
mod form;
mod ground;
mod habits;
mod in_hand;
mod killed;
mod many;
mod net_log;
mod newer;
mod outing;
mod pdf;
mod pictures;
mod plain_http;
mod refused;
mod site;
mod start;
mod storage_full;
mod taps;
mod twelve;
mod windows;
mod without_network;

use ground::{Ground, Outcome, say};
use std::env;
use std::process::ExitCode;

/// Named among the scenarios, it has their taps timed.
const TAPS: &str = "taps";
/// The scenario that only draws.
const PICTURES: &str = "screens";

#[tokio::main]
async fn main() -> ExitCode {
    let args: Vec<_> = env::args().skip(1).collect();
    let args: Vec<_> = args.iter().map(String::as_str).collect();
    match run(&args).await {
        Ok(0) => ExitCode::SUCCESS,
        Ok(_) => ExitCode::FAILURE,
        Err(failure) => {
            say(failure);
            ExitCode::FAILURE
        }
    }
}

/// How many scenarios failed.
async fn run(args: &[&str]) -> Outcome<usize> {
    let [chromedriver, chromium, trug, axe, folder, kills, chosen @ ..] = args else {
        return Err("browser CHROMEDRIVER CHROMIUM TRUG AXE FOLDER KILLS SCENARIO…".into());
    };
    let mut ground = Ground::prepare(chromedriver, chromium, trug, axe, folder, kills).await?;
    ground.times_taps = chosen.contains(&TAPS);
    let mut failed = 0;
    macro_rules! scenario {
        ($name:literal, $run:path) => {
            if chosen.contains(&$name) {
                ground.begin()?;
                if let Err(failure) = $run(&mut ground).await {
                    say(format_args!("{} failed: {failure}", $name));
                    failed += 1;
                }
            }
        };
    }
    scenario!("first-visit", first_visit::run);
    scenario!("without-network", without_network::run);
    scenario!("plain-http", plain_http::run);
    scenario!("start", start::run);
    scenario!("outing", outing::run);
    scenario!("in-hand", in_hand::run);
    scenario!("day", day::run);
    scenario!("windows", windows::run);
    scenario!("storage-full", storage_full::run);
    scenario!("killed", killed::run);
    scenario!("newer", newer::run);
    scenario!("pdf", pdf::run);
    scenario!("exchange", exchange::run);
    scenario!("habits", habits::run);
    scenario!("access", access::run);
    scenario!("twelve", twelve::run);
    scenario!("many", many::run);
    taps::figures(&mut ground.taps);
    // Pictures are for people to look at, who ask for them.
    if chosen == [PICTURES] {
        pictures::run(&mut ground).await?;
    }
    Ok(failed)
}
