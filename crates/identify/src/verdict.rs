//! The verdict on one specimen: determined, not yet, or ruled out, with every reason.

use crate::assess::Assessment;
use crate::judge::Judge;
use crate::offer::Offers;
use crate::rival::{RivalKind, rivals};
use crate::testimony::{Testimony, gather};
use crate::weighing::Trial;
use crate::{
    Case, Chance, Denial, Level, Means, Misfit, MustLook, Priors, RelativesStatement,
    SecondReading, Taxon, Tells, evidence, reasons, working,
};
use ground::{Fault, Faults, Finite, Month, Place, Text, Working};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// The verdict on one specimen. It holds for that specimen, at that place, on that day.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Verdict {
    /// What the plant was judged to be or not to be.
    pub target: String,
    /// The plant in hand.
    pub specimen: String,
    /// Where it stands.
    pub place: String,
    /// The day, at whose end the verdict lapses.
    pub day: Date,
    /// The outcome.
    pub outcome: Outcome,
    /// Why: for *not yet* everything that stands in the way.
    pub reasons: Vec<Text>,
    /// What is left of the bar.
    pub bar: Bar,
    /// What tells it from each dangerous look-alike.
    pub tells: Vec<Tells>,
    /// The rivals that poison or kill, and that too few readings deny.
    pub hardly_denied: Vec<Denial>,
    /// The characters that must be looked at.
    pub must_looks: Vec<MustLook>,
    /// How well what was read fits.
    pub misfit: Misfit,
    /// The deadly rivals that call for a second reading.
    pub second_reading: Vec<SecondReading>,
    /// What the plant could be: the likeliest few. It explains and does not decide;
    /// [`Judge::posterior`] gives all.
    pub posterior: Vec<Chance>,
    /// How the bar came about.
    pub working: Working,
}

/// The outcome of a verdict, from the strictest to the least.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// It misfits gravely, and something else is ten thousand times likelier.
    RuledOut,
    /// Something is open.
    NotYet,
    /// It is the target.
    Determined {
        /// How far down it is determined.
        level: Determination,
        /// Harmless look-alikes that it may be instead: the stricter cautions of all apply.
        twins: Vec<String>,
    },
}

impl Outcome {
    /// Whether the plant is determined.
    #[must_use]
    pub fn is_determined(&self) -> bool {
        matches!(self, Self::Determined { .. })
    }
}

/// How far down a plant is determined.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Determination {
    /// To an aggregate of species that share use and harm; nobody is asked for its members.
    Aggregate(String),
    /// To the species or a relative without a sheet that shares its use and harm.
    OrAlike,
    /// To the species.
    Species,
}

/// What is left of the bar: the sum over rivals of prior times harm times how much likelier what
/// was read is of them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bar {
    /// What is left.
    pub left: Finite,
    /// What may be left.
    pub allowed: Finite,
    /// The rivals that weigh most: named look-alikes that are not set aside before the others, heaviest first.
    pub rivals: Vec<InTheWay>,
    /// How many more there are.
    pub others: usize,
    /// What these others come to together.
    pub others_left: Finite,
}

/// A rival and what is left of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct InTheWay {
    /// Its name; the target's for a relative that nobody has listed.
    pub name: String,
    /// What kind of rival it is.
    pub kind: RivalKind,
    /// Prior times harm, relative to the target.
    pub weight: Finite,
    /// How many times likelier what was read is of the target: natural logarithm.
    pub log_ratio: Finite,
    /// What it contributes to the bar.
    pub contributes: Finite,
    /// Characters, not yet read, that would set it aside best if the plant shows what the target
    /// typically does.
    pub set_aside_by: Vec<String>,
}

/// Rivals, and chances, that a verdict lists one by one.
const LISTED: usize = 10;

impl Judge<'_> {
    /// The verdict on a specimen that is taken for a target.
    ///
    /// # Errors
    /// A target that is not in the table; looks that do not fit it.
    pub fn verdict(&self, target: &str, case: &Case) -> Result<Verdict, Faults> {
        self.try_target(target, case, |trial, testimonies| {
            let assessment = Assessment::new(trial, testimonies);
            let posterior = self.chances(case.region, testimonies, &Priors::usual());
            let outcome = outcome(trial.taxon, &assessment, &posterior, case);
            Verdict {
                target: target.to_owned(),
                specimen: case.specimen.clone(),
                place: case.place.clone(),
                day: case.day,
                reasons: reasons::all(&outcome, (trial, testimonies), &assessment, case),
                bar: bar(trial, &assessment),
                posterior: likeliest(posterior),
                working: working::bar(trial, &assessment.scales, testimonies),
                outcome,
                tells: assessment.tells,
                hardly_denied: assessment.hardly_denied,
                must_looks: assessment.must_looks,
                misfit: assessment.misfit,
                second_reading: assessment.second,
            }
        })
    }

    /// Verdicts on the likeliest few taxa, the likeliest first: for a plant that nobody has named.
    ///
    /// # Errors
    /// Looks that do not fit the table.
    pub fn verdicts(&self, case: &Case, few: usize) -> Result<Vec<Verdict>, Faults> {
        let posterior = self.posterior(case, &Priors::usual())?;
        let named = posterior.iter().filter_map(|chance| chance.taxon.as_deref());
        named.take(few).map(|target| self.verdict(target, case)).collect()
    }

    /// Sets up the trial of a target and hands it on.
    pub(crate) fn try_target<T>(
        &self,
        target: &str,
        case: &Case,
        with: impl FnOnce(&Trial<'_>, &[Testimony]) -> T,
    ) -> Result<T, Faults> {
        let testimonies = gather(self, &case.specimen, &case.session());
        let mut faults = Faults::none();
        let row = self.matrix().row(target);
        let known = row.and_then(|row| Some((row, self.taxon(row)?)));
        let known = faults.note(known.ok_or_else(|| {
            Fault::new(
                "identify-unknown-taxon",
                Place::entry("case", &case.specimen, "target"),
                target,
            )
        }));
        let testimonies = faults.note_all(testimonies);
        let Some(((row, taxon), testimonies)) = known.zip(testimonies) else {
            return Err(faults);
        };
        let rivals = rivals(self, row, case.region);
        let trial = Trial {
            judge: self,
            target: row,
            taxon,
            rivals: &rivals,
            month: Month::of(case.day),
            allowed: case.strictness.allows(),
        };
        Ok(with(&trial, &testimonies))
    }
}

fn likeliest(mut posterior: Vec<Chance>) -> Vec<Chance> {
    posterior.sort_by(|a, b| b.chance.cmp(&a.chance).then_with(|| a.taxon.cmp(&b.taxon)));
    posterior.truncate(LISTED);
    posterior
}

fn outcome(
    taxon: &Taxon,
    assessment: &Assessment<'_>,
    posterior: &[Chance],
    case: &Case,
) -> Outcome {
    if assessment.misfit.is_grave() && something_else(taxon, posterior) {
        return Outcome::RuledOut;
    }
    match assessment.twins() {
        Some(twins) if assessment.settled() && case.material.can_be_determined() => {
            Outcome::Determined { level: level(taxon), twins }
        }
        _ => Outcome::NotYet,
    }
}

/// Whether something else is so many times likelier that the target is out of the question.
fn something_else(taxon: &Taxon, posterior: &[Chance]) -> bool {
    let (own, others): (Vec<&Chance>, Vec<&Chance>) =
        posterior.iter().partition(|chance| chance.taxon.as_ref() == Some(&taxon.name));
    let most =
        |chances: &[&Chance]| chances.iter().map(|chance| chance.chance.get()).fold(0.0, f64::max);
    most(&others) > evidence::RULES_OUT * most(&own)
}

/// The level to which a taxon is determined.
fn level(taxon: &Taxon) -> Determination {
    let alike = taxon.relatives.trusted() == RelativesStatement::UnlistedAlike;
    match &taxon.aggregate {
        Some(aggregate) => Determination::Aggregate(aggregate.clone()),
        None if alike => Determination::OrAlike,
        None => Determination::Species,
    }
}

fn bar(trial: &Trial<'_>, assessment: &Assessment<'_>) -> Bar {
    let scales = &assessment.scales;
    let mut heaviest = assessment.in_the_way();
    let others = heaviest.split_off(heaviest.len().min(LISTED));
    let means = Means::all(Level::Leader);
    let typical = Offers::new(trial, &means).unread(scales);
    let listed = heaviest.into_iter().filter_map(|(at, rival, part)| {
        Some(InTheWay {
            name: rival.name.clone(),
            kind: rival.kind,
            weight: Finite::new(rival.weight)?,
            log_ratio: Finite::new(-libm::log(scales.factor(at)))?,
            contributes: Finite::new(part)?,
            set_aside_by: set_aside(&typical, at),
        })
    });
    Bar {
        left: Finite::new(scales.left()).unwrap_or_default(),
        allowed: Finite::new(assessment.allowed).unwrap_or_default(),
        rivals: listed.collect(),
        others: others.len(),
        others_left: Finite::new(others.iter().map(|(.., part)| part).sum()).unwrap_or_default(),
    }
}

/// The three characters that would set a rival aside best, where they would do so strongly.
fn set_aside(typical: &[crate::weighing::Weighed<'_>], rival: usize) -> Vec<String> {
    let mut strong: Vec<_> =
        typical.iter().filter(|w| w.factor(rival) <= 1.0 / evidence::TELL).collect();
    strong
        .sort_by(|a, b| a.factor(rival).total_cmp(&b.factor(rival)).then(a.column.cmp(&b.column)));
    strong.iter().take(3).map(|weighed| weighed.character.id.clone()).collect()
}
