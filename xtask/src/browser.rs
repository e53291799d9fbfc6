//! The app in a real browser: what it must do there, driven from outside.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, Program, run};
use crate::{app, tools};
use std::process::Command;

/// How often the browser is killed while it writes: in a test, and where that is what is counted.
const KILLS: &str = "3";
const MANY_KILLS: &str = "200";

/// What is tested.
const TESTED: [&str; 14] = [
    "first-visit",
    "without-network",
    "plain-http",
    "outing",
    "in-hand",
    "day",
    "windows",
    "storage-full",
    "killed",
    "newer",
    "pdf",
    "exchange",
    "habits",
    "access",
];

/// What is measured besides: three scenarios, and the taps of those that are tested.
const MEASURED: [&str; 4] = ["start", "twelve", "many", "taps"];

/// Runs every scenario; one that misses its goal is a failure.
pub(crate) fn check(house: &House) -> Outcome {
    run(scenarios(house, KILLS)?.args(TESTED))
}

/// Draws every screen, to be looked at.
pub(crate) fn screens(house: &House) -> Outcome {
    run(scenarios(house, KILLS)?.arg("screens"))
}

/// What the scenarios count.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    figure::printed(scenarios(house, MANY_KILLS)?.args(TESTED).args(MEASURED))
}

fn scenarios(house: &House, kills: &str) -> Outcome<Command> {
    let tools = [tools::CHROMEDRIVER.find(house)?, tools::CHROMIUM.find(house)?];
    let trug = app::build(house)?;
    let program = house.program("browser", Program::Binary("browser"))?;
    let mut command = house.command(program);
    command.args(tools).arg(trug).arg(tools::axe(house)?).arg(house.fresh("browser")?).arg(kills);
    Ok(command)
}
