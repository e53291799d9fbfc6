//! What a line that was typed means.

use crate::outing::{Cell, nearest};
use ground::{Dimension, Fault, Place, Spoken};
use herbal::Term;
use identify::{Kind, LONGEST_MM, State};

/// A line.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Typed<'l> {
    /// Nothing: the question stands.
    Nothing,
    /// Enough for now.
    Quit,
    /// The last answer is taken back.
    Back,
    /// Why is this asked?
    Why,
    /// What is it, by all that was read?
    Verdict,
    /// An answer.
    Said(&'l str),
}

impl<'l> Typed<'l> {
    pub(super) fn of(line: &'l str) -> Self {
        let line = line.trim();
        match line.to_lowercase().as_str() {
            "" => Self::Nothing,
            "q" | "quit" => Self::Quit,
            "b" | "back" => Self::Back,
            "why" => Self::Why,
            "verdict" => Self::Verdict,
            _ => Self::Said(line),
        }
    }
}

/// What an answer says of a character, as a file of looks writes it.
///
/// # Errors
/// A state that the character has not, a length that no plant has, a count that is none.
pub(super) fn answer(term: &Term, said: &str) -> Result<Cell, Fault> {
    match (said, &term.character.kind) {
        ("?", _) => Ok(Cell::Words("?".to_owned())),
        ("-" | "not-there", _) => Ok(Cell::Words("not-there".to_owned())),
        (_, Kind::States(states)) => of_states(term, states, said),
        (_, Kind::Count) => {
            let count = said.parse::<u32>().map_err(|_| fault("answer-no-count", said));
            Ok(Cell::Whole(count?.into()))
        }
        (_, Kind::Length) => length(said),
    }
}

fn fault(code: &str, said: &str) -> Fault {
    Fault::new(code, Place::default(), said)
}

/// One state, or several that cannot be told apart, by number, name or words.
fn of_states(term: &Term, states: &[State], said: &str) -> Result<Cell, Fault> {
    // The words of a state may hold commas.
    if let Some(state) = state(term, states, said) {
        return Ok(Cell::Words(state.to_owned()));
    }
    let mut named: Vec<&str> = Vec::new();
    for word in said.split([',', '|']).flat_map(|part| part.split(" or ")) {
        let state = state(term, states, word.trim()).ok_or_else(|| {
            let says = states.iter().filter_map(|state| term.says.get(&state.id));
            let near = nearest(word.trim(), says.map(String::as_str));
            fault("answer-none-of-these", word.trim()).with("most", states.len()).with("near", near)
        })?;
        if !named.contains(&state) {
            named.push(state);
        }
    }
    let several = named.iter().map(|state| Cell::Words((*state).to_owned())).collect();
    Ok(match named.as_slice() {
        [one] => Cell::Words((*one).to_owned()),
        _ => Cell::List(several),
    })
}

fn state<'s>(term: &Term, states: &'s [State], said: &str) -> Option<&'s str> {
    if let Ok(number) = said.parse::<usize>() {
        return Some(&states.get(number.checked_sub(1)?)?.id);
    }
    let said = said.to_lowercase();
    let is = |state: &&State| {
        let says = term.says.get(&state.id).map(|says| says.to_lowercase());
        state.id == said || says.as_deref() == Some(&said)
    };
    states.iter().find(is).map(|state| state.id.as_str())
}

/// A length, as it was said.
fn length(said: &str) -> Result<Cell, Fault> {
    let spoken: Spoken =
        said.parse().map_err(|why: String| fault("answer-no-length", said).with("why", why))?;
    let amount =
        spoken.resolve(Dimension::Length, None).map_err(|_| fault("answer-other-unit", said))?;
    if amount.low <= 0.0 || amount.high > LONGEST_MM {
        return Err(fault("answer-length-cannot-be", said));
    }
    Ok(Cell::Words(said.to_owned()))
}
