//! Trials over the whole demo, by programs of their own: what must never happen, counted.
//!
//! Each program prints figures, among them how many trials it made and how many went wrong.

use crate::figure::{self, Figure};
use crate::house::{House, Outcome, Program, say};

/// A program that tries a law on the demo.
struct Law {
    package: &'static str,
    /// An example of the package.
    program: &'static str,
    /// The figure that counts its trials.
    trials: &'static str,
    /// The figure that counts those that went wrong.
    wrong: &'static str,
}

/// Whatever is made unknown, nobody ends up with more.
const FADE: Law =
    Law { package: "desk", program: "fade", trials: "fade-trials", wrong: "fade-widened" };
/// Whatever only memory carries, nobody ends up with less when it is forgotten.
const RECALL: Law =
    Law { package: "desk", program: "recall", trials: "recall-trials", wrong: "recall-favouring" };
/// The order of tables changes nothing.
const REVERSAL: Law = Law {
    package: "desk",
    program: "reversal",
    trials: "reversal-plans",
    wrong: "reversal-different",
};
/// What somebody said of their health stands on no page but the sealed list.
const PLANTED: Law =
    Law { package: "page", program: "planted", trials: "planted-words", wrong: "planted-found" };

impl Law {
    fn figures(&self, house: &House) -> Outcome<Vec<Figure>> {
        figure::example(house, self.package, self.program)
    }

    /// Fails when a trial went wrong, or when nothing was tried.
    fn check(&self, house: &House) -> Outcome {
        let figures = self.figures(house)?;
        figures.iter().for_each(say);
        let value = |name| figure::value(&figures, name);
        match (value(self.trials), value(self.wrong)) {
            (None, _) | (_, None) => Err(format!("{} did not count", self.program).into()),
            (Some("0"), _) => Err("nothing was tried".into()),
            (_, Some("0")) => Ok(()),
            (_, Some(wrong)) => Err(format!("{}: {wrong}", self.wrong).into()),
        }
    }
}

pub(crate) fn fade(house: &House) -> Outcome {
    FADE.check(house)
}

pub(crate) fn recall(house: &House) -> Outcome {
    RECALL.check(house)
}

pub(crate) fn fade_figures(house: &House) -> Outcome<Vec<Figure>> {
    FADE.figures(house)
}

pub(crate) fn recall_figures(house: &House) -> Outcome<Vec<Figure>> {
    RECALL.figures(house)
}

pub(crate) fn reversal_figures(house: &House) -> Outcome<Vec<Figure>> {
    REVERSAL.figures(house)
}

/// How often something harmful passes for what is gathered; the worst of each plant and month beside it.
pub(crate) fn confusion(house: &House) -> Outcome<Vec<Figure>> {
    of_all_plants(house, "confusion")
}

/// How many plants are settled, and in how many looks; what would mend the others beside it.
pub(crate) fn help(house: &House) -> Outcome<Vec<Figure>> {
    of_all_plants(house, "helpfulness")
}

/// What it costs to judge more strictly, with the curve beside it.
pub(crate) fn strictness(house: &House) -> Outcome<Vec<Figure>> {
    of_all_plants(house, "trade_off")
}

/// The figures of a program that goes through the whole herbal and leaves its table in a folder.
fn of_all_plants(house: &House, name: &str) -> Outcome<Vec<Figure>> {
    let program = house.program("herbal-data", Program::Example(name))?;
    let folder = house.fresh(name)?;
    let figures = figure::printed(house.command(program).arg(&folder))?;
    say(format_args!("the table lies in {}", house.short(&folder)));
    Ok(figures)
}

pub(crate) fn planted_figures(house: &House) -> Outcome<Vec<Figure>> {
    PLANTED.figures(house)
}
