//! Draws beside NumPy.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, run};
use crate::tools;

/// Time of the same products and percentiles, ours and NumPy's.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    let python = tools::python_with(house, &[tools::NUMPY])?;
    run(&mut house.cargo(["build", "--release", "--package", "benches", "--bin", "draws"]))?;
    let draws = house.target.join("release/draws");
    let files = ["benches/draws.json", "benches/draws.py"];
    figure::printed(house.command(draws).arg(python).args(files))
}
