//! The pictures of the README, drawn from pages that the program made.

use crate::house::{House, Outcome, run, say};
use crate::{demo, tools};
use std::fs;

/// A page of the demo, which of its sides, and what its picture is called.
const PICTURES: [(&str, u32, &str); 4] = [
    ("day/emergency-wallet.pdf", 1, "emergency-wallet"),
    ("day/run-sheet.pdf", 2, "run-sheet"),
    ("autumn-day/plant-sambucus-nigra.pdf", 1, "plant"),
    ("day/labels.pdf", 2, "labels"),
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
        let side = side.to_string();
        let mut draw = house.command("pdftoppm");
        draw.args(["-r", DPI, "-gray", "-png", "-singlefile", "-f", &side, "-l", &side]);
        run(draw.arg(demo::folder(house).join(page)).arg(folder.join(name)))?;
    }
    say(format_args!("{} pictures lie in {}", PICTURES.len(), house.short(&folder)));
    Ok(())
}
