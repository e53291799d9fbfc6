//! Fading: whatever is blanked in the demo, nobody may end up with more.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, say};

/// The program that blanks every known input in turn. It prints the figures `fade-trials` and
/// `fade-widened`, each as its name, its value and its unit with tabs between.
const PROGRAM: &str = "crates/desk/examples/fade.rs";

/// Blanks everything once; fails when an answer got looser, or when nothing was tried.
pub(crate) fn check(house: &House) -> Outcome {
    let figures = figures(house)?;
    figures.iter().for_each(say);
    let value = |name: &str| {
        let found = figures.iter().find(|figure| figure.name == name);
        found.ok_or_else(|| format!("{PROGRAM} printed no figure {name}"))
    };
    match (value("fade-trials")?.value.as_str(), value("fade-widened")?.value.as_str()) {
        ("0", _) => Err("nothing was blanked".into()),
        (_, "0") => Ok(()),
        (_, widened) => {
            Err(format!("{widened} answers got looser when an input was blanked").into())
        }
    }
}

/// Trials and widened answers.
pub(crate) fn figures(house: &House) -> Outcome<Vec<Figure>> {
    if !house.root.join(PROGRAM).exists() {
        return Err(format!("{PROGRAM} is missing, so nothing was blanked").into());
    }
    let args = ["run", "--quiet", "--package", "desk", "--example", "fade"];
    figure::printed(&mut house.cargo(args))
}
