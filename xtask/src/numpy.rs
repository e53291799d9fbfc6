//! Draws, and looks at large tables, beside NumPy.

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

/// Time of a look at tables of growing size, ours and NumPy's.
pub(crate) fn looks(house: &House) -> Outcome<Vec<Figure>> {
    let python = tools::python_with_peers(house)?;
    run(&mut house.cargo(["build", "--release", "--package", "benches", "--bin", "looks"]))?;
    let looks = house.target.join("release/looks");
    let files = ["benches/looks.json", "benches/looks.py"];
    let folder = house.fresh("looks")?;
    figure::printed(house.command(looks).arg(python).args(files).arg(folder))
}
