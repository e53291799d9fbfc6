//! Draws and looks at large tables beside NumPy; open tables beside scikit-learn.

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
    beside(house, "looks", ["benches/looks.json", "benches/looks.py"])
}

/// How well specimens of open tables are named, by us and by scikit-learn.
pub(crate) fn tables(house: &House) -> Outcome<Vec<Figure>> {
    beside(house, "tables", ["benches/tables.json", "benches/tables.py"])
}

/// What a program prints that is given the peers' Python, its parameters, their script and a folder.
fn beside(house: &House, name: &str, files: [&str; 2]) -> Outcome<Vec<Figure>> {
    let python = tools::python_with_peers(house)?;
    run(&mut house.cargo(["build", "--release", "--package", "benches", "--bin", name]))?;
    let program = house.target.join("release").join(name);
    let folder = house.fresh(name)?;
    figure::printed(house.command(program).arg(python).args(files).arg(folder))
}
