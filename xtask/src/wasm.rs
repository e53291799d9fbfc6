//! The pure crates on the machine of a browser.

use crate::house::{House, Outcome, run_without_warnings};
use crate::tools;
use std::path::PathBuf;

/// The target that has no clock, file or thread to offer.
pub(crate) const TARGET: &str = "wasm32-unknown-unknown";

/// The two that stand on all other pure crates, and the one that a browser needs before it can read them.
const PACKAGES: [&str; 3] = ["app", "parity", "unpack"];

/// Builds the pure crates for [`TARGET`] as a browser loads them, and gives the folder of what was built.
pub(crate) fn build(house: &House) -> Outcome<PathBuf> {
    tools::wasm_target(house)?;
    let mut command = house.cargo(["build", "--lib", "--profile", "app", "--target", TARGET]);
    run_without_warnings(command.args(PACKAGES.iter().flat_map(|name| ["--package", name])))?;
    Ok(house.target.join(TARGET).join("app"))
}
