//! Refusals in the words of this craft.

use ground::{Arg, Refusal, Text};

/// What a step of a computation gives: its value, or the refusal that ends the computation.
pub(crate) type Known<T> = Result<T, Refusal>;

/// A refusal from the two messages it shows.
pub(crate) fn refuse(why: &str, settle: &str) -> Refusal {
    Refusal::new(Text::new(why), Text::new(settle))
}

/// The same refusal with one more argument in both messages.
pub(crate) fn with(refusal: Refusal, name: &str, arg: impl Into<Arg>) -> Refusal {
    let arg = arg.into();
    Refusal::new(refusal.why.with(name, arg.clone()), refusal.settle.with(name, arg))
}
