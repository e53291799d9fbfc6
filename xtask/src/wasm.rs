//! The pure crates on the machine of a browser.

use crate::house::{House, Outcome, run};
use crate::tools;

/// The target that has no clock, file or thread to offer.
pub(crate) const TARGET: &str = "wasm32-unknown-unknown";

/// The crates that must build there.
const PURE: &[&str] = &[
    "app",
    "ground",
    "identify",
    "harvest",
    "prepare",
    "dose",
    "journal",
    "herbal",
    "herbal-data",
    "desk",
    "page",
];

/// Builds the pure crates for [`TARGET`] and lints what is only compiled there.
pub(crate) fn check(house: &House) -> Outcome {
    tools::wasm_target(house)?;
    let packages = || PURE.iter().flat_map(|name| ["--package", name]);
    run(house.cargo(["build", "--target", TARGET]).args(packages()))?;
    let lint = ["clippy", "--target", TARGET, "--lib", "--package", "parity"];
    run(house.cargo(lint).args(packages()).args(["--", "-D", "warnings"]))
}
