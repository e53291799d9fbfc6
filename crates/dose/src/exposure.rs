//! What a person takes of one substance, with everything it came from.

use crate::decide::Case;
use crate::doubt::Ledger;
use crate::naming::{measured, named};
use crate::shares::{Gap, Yard};
use crate::sum::Sum;
use crate::{Counted, Herb, SubstanceId, Window};
use ground::{Answer, Faults, Mass, RandomStart, Spread, Text, Working};
use serde::{Deserialize, Serialize};

/// What a person takes of one substance.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Exposure {
    /// Of what.
    pub substance: SubstanceId,
    /// In one serving of the cup, in grams.
    pub serving_g: Spread,
    /// In a day, with everything beside it, in grams.
    pub day_g: Spread,
    /// In a day, with every input at its worst end; nothing where no extreme is published.
    pub worst_day_g: Option<Mass>,
    /// How the day's sum came about.
    pub working: Working,
}

/// What a person takes of one substance, summed over everything in the case.
///
/// Formula: in every draw, the sum over servings of
/// `herb × solids × content × share that passes over`, in grams; content and moisture drawn once a
/// lot, the share once a batch, the spoon once a cook, the scale once a serving.
///
/// # Errors
/// Only a fault of our own: one quantity drawn in two ways.
pub fn exposure(
    case: &Case<'_>,
    substance: &SubstanceId,
    start: RandomStart,
) -> Result<Answer<Exposure>, Faults> {
    let mut ledger = Ledger::new(start);
    let yard = Yard::everywhere(Counted::Substance(substance.clone()));
    let settle = || Text::new("dose-settle-measure").with("substance", case.table.name(substance));
    if case.cup.herbs.iter().any(|herb| unmeasured(case, herb, substance)) {
        let why = Text::new("dose-gap-named").with("substance", case.table.name(substance));
        return Ok(Answer::refused(why, settle()));
    }
    let mut sum = match Sum::gather(case, &yard, &mut ledger)? {
        Ok(sum) => sum,
        Err(Gap(why)) => return Ok(Answer::refused(why, settle())),
    };
    let planned = case.cup.servings_a_day;
    let serving = sum.spread(Window::Serving, planned, &mut ledger)?;
    let day = sum.spread(Window::Day, planned, &mut ledger)?;
    let worst_day_g = sum.worst_day(planned, &mut ledger)?;
    let working = sum.working(case, substance, &mut ledger)?;
    let substance = substance.clone();
    Ok(match (serving, day) {
        (Some(serving_g), Some(day_g)) => {
            Answer::Known(Exposure { substance, serving_g, day_g, worst_day_g, working })
        }
        _ => Answer::refused(Text::new("dose-gap-draws"), settle()),
    })
}

fn unmeasured(case: &Case<'_>, herb: &Herb, substance: &SubstanceId) -> bool {
    named(case.table, &herb.taxon).contains(substance)
        && !measured(case.table, case.cup, herb, substance)
}
