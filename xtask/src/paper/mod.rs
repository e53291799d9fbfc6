//! PDF pages, looked at with tools that had no part in making them.

pub(crate) mod pictures;
pub(crate) mod typesetter;
mod variants;

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, read, say};
use crate::{demo, tools};
use std::path::{Path, PathBuf};
use variants::Variants;

/// The figure that counts what is wrong.
const FINDINGS: &str = "paper-findings";

/// The pages of the demo, and their variants.
pub(crate) fn check(house: &House) -> Outcome {
    let variants = variants::print(house)?;
    let found = report(&look(house, &all_pages(house, &variants)?)?);
    if variants.refused.is_empty() {
        return found;
    }
    variants.refused.iter().for_each(say);
    let and = found.err().map(|found| format!(", and {found}")).unwrap_or_default();
    Err(format!("{} orders of pages were refused{and}", variants.refused.len()).into())
}

/// The pages of a folder; having none is a failure.
pub(crate) fn check_folder(house: &House, folder: &Path) -> Outcome {
    let pages = demo::files(folder, "pdf")?;
    if pages.is_empty() {
        return Err(format!("no page lies under {}", house.short(folder)).into());
    }
    report(&look(house, &pages)?)
}

/// The pages of the demo and their variants, made anew and measured.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    demo::show(house)?;
    let variants = variants::print(house)?;
    let mut figures = figure::figures(&look(house, &all_pages(house, &variants)?)?)?;
    figures.push(Figure {
        name: "paper-refused".to_owned(),
        value: variants.refused.len().to_string(),
        unit: "orders of pages that were refused (goal 0)".to_owned(),
    });
    Ok(figures)
}

fn all_pages(house: &House, variants: &Variants) -> Outcome<Vec<PathBuf>> {
    let mut pages = demo::files(&demo::made(house)?, "pdf")?;
    pages.extend(demo::files(&variants.folder, "pdf")?);
    Ok(pages)
}

/// What the tools say of each page: lines, then figures over all.
fn look(house: &House, pages: &[PathBuf]) -> Outcome<String> {
    for tool in [tools::PDFINFO, tools::QPDF, tools::ZBAR] {
        tool.find(house)?;
    }
    let python = tools::python_with(house, &[tools::NUMPY, tools::PIKEPDF, tools::PILLOW])?;
    let pictures = house.fresh("paper")?;
    let script = "xtask/src/paper/check.py";
    // -B: no compiled modules among the sources.
    read(house.command(python).args(["-B", script]).arg(pictures).args(pages))
}

/// Prints what the tools said; a finding is a failure.
fn report(said: &str) -> Outcome {
    for line in said.lines() {
        match figure::figure(line) {
            Some(figure) => say(figure),
            None => say(line),
        }
    }
    verdict(said)
}

fn verdict(said: &str) -> Outcome {
    match figure::value(&figure::figures(said)?, FINDINGS) {
        Some("0") => Ok(()),
        Some(findings) => Err(format!("{findings} findings").into()),
        None => Err("nothing was counted".into()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_count_of_no_findings_passes() {
        assert!(verdict("a.pdf: 1 pages\npaper-findings\t0\tfaults").is_ok());
        let found = verdict("a.pdf: 1 pages\n  finding: pale\npaper-findings\t1\tfaults");
        assert_eq!(found.unwrap_err().to_string(), "1 findings");
        assert!(verdict("a.pdf: 1 pages\npaper-pages\t1\tPDF pages").is_err());
    }
}
