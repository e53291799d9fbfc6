//! May we take it, and how much? Surveys, allowances, land rules, daylight.
//!
//! [`allow`] joins what was asked with the rules that are known and gives an [`Allowance`]: the
//! smallest amount that any rule leaves, which rule that is, and every question that is still open.
//! What nobody has surveyed, measured or asked the owner about is never allowed.
//!
//! Beside it stand the small sums of a day outdoors: [`Sample`] for surveys, [`daylight`],
//! [`walk`] and [`degree_days`].

mod allow;
mod asked;
mod crop;
mod quantity;
mod rules;
mod sample;
mod scope;
mod student;
mod sun;

pub mod degree_days;
pub mod walk;

pub use allow::{Allowance, Candidate, Kind, Note, Outcome, RuleRef, allow};
pub use asked::{
    Asked, Consent, History, Leave, Nearness, PROTECTED, Permission, Purpose, Site, Stand, Taken,
};
pub use crop::{Crop, Plots, Survey, SurveyNotes};
pub use quantity::{Measure, Pieces, Quantity};
pub use rules::{Care, Effect, Hazard, Jurisdiction, LandRule, Period, Reach, Rules, TakeRule};
pub use sample::{Confidence, Dispersion, Estimate, Sample, plots_needed};
pub use scope::Scope;
pub use student::student_quantile;
pub use sun::{Crossing, Daylight, Position, daylight};
