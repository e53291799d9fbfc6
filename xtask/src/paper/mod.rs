//! PDF pages, looked at with tools that had no part in making them.

pub(crate) mod pictures;

use crate::figure::Figure;
use crate::house::{House, Outcome, read, say};
use crate::{demo, tools};
use std::path::{Path, PathBuf};

/// The pages of the demo.
pub(crate) fn check(house: &House) -> Outcome {
    check_folder(house, &demo::folder(house))
}

/// The pages of a folder; having none is a failure.
pub(crate) fn check_folder(house: &House, folder: &Path) -> Outcome {
    let pages = demo::files(folder, "pdf")?;
    if pages.is_empty() {
        return Err(format!("no page lies under {}", house.short(folder)).into());
    }
    let mut findings = 0;
    for looked in look(house, &pages)? {
        say(format_args!("{looked}"));
        findings += looked.matches("finding:").count();
    }
    match findings {
        0 => Ok(()),
        _ => Err(format!("{findings} findings on {} pages", pages.len()).into()),
    }
}

/// What the tools say of each page.
fn look(house: &House, pages: &[PathBuf]) -> Outcome<Vec<String>> {
    for tool in [tools::PDFINFO, tools::QPDF, tools::ZBAR] {
        tool.find(house)?;
    }
    let python = tools::python_with(house, &[tools::NUMPY, tools::PIKEPDF, tools::PILLOW])?;
    let pictures = house.fresh("paper")?;
    let script = "xtask/src/paper/check.py";
    // -B: no compiled modules among the sources.
    let said = read(house.command(python).args(["-B", script]).arg(pictures).args(pages))?;
    Ok(said.lines().map(str::to_owned).collect())
}

/// Which of our crates are built after the typesetter: a change in any other leaves it alone, and none
/// of ours is built before it.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    let args = ["tree", "--invert", "typst", "--edges", "normal,build", "--prefix", "none"];
    let above = read(&mut house.cargo(args))?;
    let root = house.root.display().to_string();
    let names = above.lines().filter(|line| line.contains(&root));
    let mut names: Vec<_> = names.filter_map(|line| line.split(' ').next()).collect();
    names.sort_unstable();
    names.dedup();
    let unit = format!("crates stand on the typesetter: {} (goal 2: pdf, trug)", names.join(", "));
    Ok(vec![Figure { name: "typesetter".to_owned(), value: names.len().to_string(), unit }])
}
