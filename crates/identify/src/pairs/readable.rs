//! What the rival may be read as, character by character.

use crate::judge::Judge;
use crate::told::Told;
use crate::{Character, evidence};

/// A character of the target, and how far a reading of the rival in hand may speak for the target: natural
/// logarithms of how many times over, the best that there is.
pub(super) struct Readable<'a> {
    pub(super) character: &'a Character,
    /// Whether the two are told apart by it.
    pub(super) tells: bool,
    /// Whether it can be done as a must-look.
    pub(super) can_be_done: bool,
    /// By what the rival usually shows, or by anything where its sheet says nothing.
    pub(super) honest: Option<f64>,
    /// The same, among what agrees with the target.
    pub(super) honest_agreeing: Option<f64>,
    /// By one reading that went wrong.
    pub(super) misread: f64,
    /// By the same of two readers.
    pub(super) misread_twice: f64,
    /// Whether any reading that speaks for the target denies the rival.
    pub(super) deniable: bool,
}

pub(super) fn readable<'a>(
    judge: &Judge<'a>,
    told: &Told,
    column: usize,
    (target, rival): (usize, usize),
) -> Option<Readable<'a>> {
    let character = judge.character(column)?;
    let can_be_done = judge.shown(target, column)?.clears;
    let mut one = Readable {
        character,
        tells: false,
        can_be_done,
        honest: None,
        honest_agreeing: None,
        misread: 0.0,
        misread_twice: 0.0,
        deniable: false,
    };
    let likeliest = told.likeliest(column, target);
    for answer in 0..told.answers(column) {
        let (once, twice) = told.factors(column, answer, target, rival).unwrap_or((1.0, 1.0));
        let (once, twice) = (-libm::log(once), -libm::log(twice));
        let agrees = told.agrees(column, answer, target);
        if judge.shown(rival, column).is_none() || told.agrees(column, answer, rival) {
            one.honest = best(one.honest, once);
            if agrees {
                one.honest_agreeing = best(one.honest_agreeing, once);
            }
        }
        one.deniable |= once > 0.0 && told.denies(column, answer, rival);
        if Some(answer) == likeliest {
            one.tells = once >= libm::log(evidence::TELL);
        }
        if agrees {
            one.misread = one.misread.max(once);
            one.misread_twice = one.misread_twice.max(twice);
        }
    }
    Some(one)
}

fn best(so_far: Option<f64>, favour: f64) -> Option<f64> {
    Some(so_far.map_or(favour, |known| known.max(favour)))
}
