//! The pictures of the README, drawn from pages that the program made.

use crate::house::{House, Outcome, run, say};
use crate::{demo, tools};
use std::fs;
use std::path::Path;

/// A side of a page.
#[derive(Clone, Copy)]
enum Side {
    /// Counted from the first, which is 1.
    Th(u32),
    /// The last but one: slips of any number go before the sheet of labels.
    LastButOne,
}

/// A page of the demo, which of its sides, and what its picture is called.
const PICTURES: [(&str, Side, &str); 4] = [
    ("day/emergency-wallet.pdf", Side::Th(1), "emergency-wallet"),
    ("day/run-sheet.pdf", Side::Th(2), "run-sheet"),
    ("autumn-day/plant-sambucus-nigra.pdf", Side::Th(1), "plant"),
    ("day/labels.pdf", Side::LastButOne, "labels"),
];

/// Dots to an inch: enough to see how a page is laid out.
const DPI: &str = "60";

/// Draws each picture anew from the pages of the demo.
pub(crate) fn draw(house: &House) -> Outcome {
    tools::PDFINFO.find(house)?;
    demo::show(house)?;
    let folder = house.root.join("docs/pictures");
    fs::create_dir_all(&folder)?;
    for (page, side, name) in PICTURES {
        let page = demo::folder(house).join(page);
        let side = match side {
            Side::Th(side) => side,
            Side::LastButOne => sides(house, &page)?.saturating_sub(1).max(1),
        };
        let side = side.to_string();
        let mut draw = house.command("pdftoppm");
        draw.args(["-r", DPI, "-gray", "-png", "-singlefile", "-f", &side, "-l", &side]);
        run(draw.arg(page).arg(folder.join(name)))?;
    }
    say(format_args!("{} pictures lie in {}", PICTURES.len(), house.short(&folder)));
    Ok(())
}

/// How many sides a page has.
fn sides(house: &House, page: &Path) -> Outcome<u32> {
    let told = house.command("pdfinfo").arg(page).output()?;
    let told = String::from_utf8_lossy(&told.stdout).into_owned();
    let pages = told.lines().find_map(|line| line.strip_prefix("Pages:"));
    let pages = pages.and_then(|number| number.trim().parse().ok());
    pages.ok_or_else(|| format!("{} has no pages", house.short(page)).into())
}
