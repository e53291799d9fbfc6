//! The small sums of the trade, each asked in the words people use.
//!
//! No formula stands here: what was said becomes quantities, the crafts do the sum, and what comes
//! out gets its name.

use ground::{Answer, Faults, MeasureSystem, Shown, Spoken, Text, Unit};
use serde::{Deserialize, Serialize};

mod kitchen;
mod outdoors;
mod said;

/// A small sum.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sum {
    /// What is known of a spirit from its strength.
    Alcohol {
        /// Its strength in % vol or % mass, or its density.
        strength: Spoken,
        /// A volume of it, whose ethanol is asked.
        volume: Option<Spoken>,
        /// The temperature at which density and volume are measured; 20 °C when left out.
        at: Option<Spoken>,
    },
    /// Water that brings a spirit down to a strength.
    Dilute {
        /// Strength of the spirit.
        from: Spoken,
        /// Strength that is wanted.
        to: Spoken,
        /// Volume of the spirit.
        volume: Spoken,
    },
    /// Sugar that brings a liquid up to a sweetness.
    Sugar {
        /// Sweetness that is wanted, in °Bx or % mass.
        to: Spoken,
        /// Mass of the liquid.
        liquid: Spoken,
        /// Mass of the sugar that it holds already; none when left out.
        held: Option<Spoken>,
    },
    /// What is left when herb is dried.
    Dry {
        /// Mass of the fresh herb.
        herb: Spoken,
        /// Its moisture.
        from: Spoken,
        /// The moisture that is wanted.
        to: Spoken,
    },
    /// A kitchen measure in millilitres and in other kitchens' measures.
    Measure {
        /// The measure.
        said: Spoken,
        /// Whose kitchen is meant.
        kitchen: Option<MeasureSystem>,
    },
    /// When the sun rises and sets.
    Daylight {
        /// The day.
        on: jiff::civil::Date,
        /// Degrees north.
        latitude: f64,
        /// Degrees east.
        longitude: f64,
        /// Standard name of the time zone, such as `Europe/Dublin`.
        zone: String,
    },
    /// How long a walk takes.
    Walk {
        /// Its legs, in any order.
        legs: Vec<WalkLeg>,
    },
    /// Degree-days of one day or several.
    DegreeDays {
        /// The lowest and highest temperature of each day, such as `4 to 11 °C`.
        days: Vec<Spoken>,
        /// Temperature from which growth counts.
        base: Spoken,
        /// Temperature above which it grows no faster.
        cut_off: Option<Spoken>,
    },
    /// Mean and total of plots drawn at random, with their doubt.
    Survey {
        /// What was found in each.
        plots: Vec<f64>,
        /// How many plots there are in all.
        of: u32,
    },
}

/// A stretch of way that climbs or falls evenly.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub struct WalkLeg {
    /// Along the map.
    pub along: Spoken,
    /// Up, or down when below zero.
    pub climb: Option<Spoken>,
}

/// What a sum comes to.
#[derive(Clone, Debug, Serialize)]
pub struct SumReply {
    /// What was asked.
    pub asked: Sum,
    /// Each result, the one that was asked for first.
    pub results: Vec<SumResult>,
    /// What to know about it.
    pub notes: Vec<Text>,
}

impl SumReply {
    /// Whether the sum could not be done.
    #[must_use]
    pub fn refused(&self) -> bool {
        self.results.first().is_none_or(|result| result.value.known().is_none())
    }
}

/// One result of a sum.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SumResult {
    /// What it is.
    pub what: Text,
    /// Its value, or why there is none.
    pub value: Answer<Shown>,
}

/// Works a sum out.
///
/// # Errors
/// What was said in a unit that does not fit, or lies outside what there is.
pub(crate) fn work_out(asked: Sum) -> Result<SumReply, Faults> {
    let Worked { results, notes } = match &asked {
        Sum::Alcohol { strength, volume, at } => {
            kitchen::alcohol(strength, volume.as_ref(), at.as_ref())
        }
        Sum::Dilute { from, to, volume } => kitchen::dilute(from, to, volume),
        Sum::Sugar { to, liquid, held } => kitchen::sugar(to, liquid, held.as_ref()),
        Sum::Dry { herb, from, to } => kitchen::dry(herb, from, to),
        Sum::Measure { said, kitchen } => kitchen::measure(said, *kitchen),
        Sum::Daylight { on, latitude, longitude, zone } => {
            outdoors::daylight(*on, (*latitude, *longitude), zone)
        }
        Sum::Walk { legs } => outdoors::walk(legs),
        Sum::DegreeDays { days, base, cut_off } => {
            outdoors::degree_days(days, base, cut_off.as_ref())
        }
        Sum::Survey { plots, of } => outdoors::survey(plots, *of),
    }?;
    Ok(SumReply { asked, results, notes })
}

/// Results and notes of a sum.
struct Worked {
    results: Vec<SumResult>,
    notes: Vec<Text>,
}

impl Worked {
    /// Results without notes.
    fn of(results: impl IntoIterator<Item = SumResult>) -> Self {
        Self { results: results.into_iter().collect(), notes: Vec::new() }
    }

    /// The results of an answer; of a refusal, the one that was asked for with the reasons.
    fn answered<T>(asked: &str, answer: Answer<T>, work: impl FnOnce(T) -> Self) -> Self {
        match answer {
            Answer::Known(value) => work(value),
            Answer::Refused(refusal) => {
                Self::of([SumResult { what: Text::new(asked), value: Answer::Refused(refusal) }])
            }
        }
    }

    fn note(mut self, text: Text) -> Self {
        self.notes.push(text);
        self
    }

    fn note_if(self, holds: bool, id: &str) -> Self {
        if holds { self.note(Text::new(id)) } else { self }
    }
}

fn result(what: &str, value: Shown) -> SumResult {
    SumResult { what: Text::new(what), value: Answer::Known(value) }
}

fn amount(what: &str, value: f64, unit: Unit) -> SumResult {
    result(what, Shown::amount(value, unit))
}
