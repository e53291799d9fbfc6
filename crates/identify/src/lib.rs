//! Is it the plant? Judges looks at one specimen against a table of taxa.
//!
//! A [`Matrix`] says what is known; a [`Judge`] is a matrix made ready; a [`Case`] is one specimen
//! with every [`Look`] that was made of it. From these come the [`Verdict`], what to look at
//! [`Next`], the chances of every taxon, and what tells two taxa apart.
//!
//! # How a plant is determined
//!
//! What the plant in hand is, nobody can read off a probability: it depends on priors that nobody
//! knows, and it has no place for a plant that is not in the table. So the verdict asks something
//! else: whether everything dangerous that it could be is set aside.
//!
//! 1. A look of state s speaks for the target t over a **rival** r by q(s | t) / q(s | r), where q is
//!    how often a reader reports s of the taxon, misreading included. Lengths and counts are states
//!    of a ladder; several readers speak through the true state.
//! 2. Characters of one correlation **group** give the best that favours, and all that is contrary.
//!    Cells that are only remembered, smells after the first of a day, and organs out of season may
//!    speak against the target, never for it.
//! 3. **The bar**: Σ over rivals of prior × harm × e^(−L) ≤ 1, L being the sum over groups of the
//!    logarithms. The harms stand in [`evidence`]; priors of harmful rivals are those of the target.
//! 4. **Tells**: against each harmful or deadly look-alike two groups of different organs, one of
//!    them not smelt, each at four times or more.
//! 5. **Must-looks**: each read, agreeing, and none misfitting.
//! 6. **Misfit**: what the target hardly ever shows blocks, so that a plant which is in no table ends
//!    in *not yet*. Where that is grave and something else is ten thousand times likelier, the target
//!    is ruled out.
//! 7. **Level**: one determines to the aggregate where its members share use and harm.
//! 8. **Second reading** where a deadly look-alike is named or a deadly rival still weighs.
//! 9. Never from a photograph, nor of bought, chopped or dried plants; for one specimen and day.
//!
//! A look that favours the target over no rival never turns *not yet* into *determined* under rules 1
//! to 4; nor does a cell less, a look less, a rival more.
//!
//! Before anybody goes out, [`sets`] finds the fewest characters that tell plants apart, and [`key`]
//! the quickest key to print, with where readers who misread end up in it. Afterwards [`sorting`] says how
//! likely a wrong piece stays in the basket.
//!
//! ```
//! use identify::{Case, Judge, Material, Outcome, Strictness, foreign};
//!
//! let matrix = foreign::read_csv("taxon,harm,smell\nramsons,none,garlic\ncrocus,deadly,none\n")?;
//! let case = Case {
//!     specimen: "A".to_owned(),
//!     place: "Mill Wood".to_owned(),
//!     day: jiff::civil::date(2027, 4, 17),
//!     region: None,
//!     material: Material::Living,
//!     strictness: Strictness::least(),
//!     looks: Vec::new(),
//! };
//! let verdict = Judge::new(&matrix).verdict("ramsons", &case)?;
//! assert_eq!(verdict.outcome, Outcome::NotYet);
//! # Ok::<(), ground::Faults>(())
//! ```

mod assess;
mod bayes;
mod bits;
mod blocked;
#[cfg(test)]
mod cases;
mod cell;
mod character;
mod check;
mod compare;
mod contrary;
pub mod evidence;
pub mod follow;
pub mod foreign;
mod judge;
pub mod key;
mod ladder;
#[cfg(test)]
mod laws;
mod look;
mod matrix;
mod next;
mod offer;
pub mod packed;
pub mod pairs;
mod posterior;
mod question;
mod reasons;
mod reports;
mod rival;
mod rules;
#[cfg(test)]
mod sample;
mod say;
pub mod sets;
pub mod sorting;
mod spectrum;
mod states;
mod taxon;
mod testimony;
mod told;
mod verdict;
mod weighing;
mod working;

pub use cell::{Cell, Rank, Value};
pub use character::{Character, Kind, Sense, Spoils, State, Tool};
pub use compare::{Comparison, Contrast, Reading, never_alike};
pub use judge::Judge;
pub use look::{Glance, LONGEST_MM, Level, Look, Reader, Seen};
pub use matrix::Matrix;
pub use next::{Next, Offer, Plan};
pub use offer::Means;
pub use posterior::{Chance, Priors, Telling};
pub use question::{Case, Material, Strictness};
pub use rival::RivalKind;
pub use rules::{Denial, Misfit, MustLook, MustLookState, SecondReading, Tell, Tells};
pub use taxon::{LookAlike, Relatives, RelativesStatement, Taxon};
pub use verdict::{Bar, Determination, InTheWay, Outcome, Verdict};
