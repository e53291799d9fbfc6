//! Asking for one character after another, the most telling first, with the candidates hidden.

use desk::{NameOrder, Reply, Request, World, answer};
use ground::{Faults, Text, Unit};
use herbal::Term;
use identify::{Kind, Next};
use page::{Catalogue, Words};
use std::io::{self, BufRead as _, Write as _};

/// What a line that was typed means.
enum Typed {
    /// This was seen.
    Saw(String),
    /// Back to the question before.
    Back,
    /// No more questions.
    Quit,
}

/// Asks until the plant is settled, nothing is left to look at, or whoever answers has enough. The
/// questions go to the standard error, so that the standard output holds the reply alone.
pub(super) fn step_by_step(mut order: NameOrder, world: &World) -> Result<Request, Faults> {
    let catalogue = Catalogue::english();
    let words = Words::new(&catalogue).with_herbal(world.herbal());
    tell(&words.word("view-ask-keys"));
    while let Some(character) = next(&order, world)? {
        let term = world.herbal().flora.glossary.term(&character);
        question(&words, &character, term);
        match typed(term) {
            Typed::Quit => break,
            Typed::Back if order.looks.pop().is_none() => tell(&words.word("view-ask-first")),
            Typed::Back => {}
            Typed::Saw(saw) => note(&mut order, world, (character, saw), &words),
        }
    }
    Ok(Request::Name(order))
}

/// The character to ask for next; none when it is settled or cannot be.
fn next(order: &NameOrder, world: &World) -> Result<Option<String>, Faults> {
    let Reply::Name(reply) = answer(world, Request::Name(order.clone()))? else {
        return Ok(None);
    };
    let new = |character: &String| order.looks.iter().all(|(asked, _)| asked != character);
    // Of a plant that nobody named, first what tells most; of one that is named, what settles it.
    let telling = reply.telling.into_iter().map(|telling| telling.character);
    let settling = match reply.next {
        Some(Next::Look(plan)) => plan.looks,
        Some(Next::Settled | Next::CannotSettle { .. }) | None => Vec::new(),
    };
    let mut settling = settling.into_iter().map(|offer| offer.character);
    Ok(if order.is.is_none() { telling.chain(settling).find(new) } else { settling.find(new) })
}

/// Notes an answer, where it fits the character.
fn note(order: &mut NameOrder, world: &World, look: (String, String), words: &Words<'_>) {
    let mut tried = order.clone();
    tried.looks.push(look);
    match answer(world, Request::Name(tried.clone())) {
        Ok(_) => *order = tried,
        Err(faults) => tell(&words.catalogue.faults(&faults)),
    }
}

/// A question: how to look, and the states numbered.
fn question(words: &Words<'_>, character: &str, term: Option<&Term>) {
    let Some(term) = term else { return tell(&words.character(character)) };
    let text = Text::new("view-ask")
        .with("name", term.name.as_str())
        .with("how", term.how.as_str())
        .amount("time", f64::from(term.character.seconds), Unit::Second);
    tell(&format!("\n{}", words.catalogue.say(&text)));
    for (state, number) in states(term).iter().zip(1..) {
        tell(&format!("  {number}  {}", words.state(character, state)));
    }
}

fn states(term: &Term) -> Vec<&str> {
    match &term.character.kind {
        Kind::States(states) => states.iter().map(|state| state.id.as_str()).collect(),
        Kind::Length | Kind::Count => Vec::new(),
    }
}

/// The next line that says something. The end of the input is enough.
fn typed(term: Option<&Term>) -> Typed {
    let mut line = String::new();
    while line.trim().is_empty() {
        line.clear();
        match io::stdin().lock().read_line(&mut line) {
            Ok(read) if read > 0 => {}
            _ => return Typed::Quit,
        }
    }
    match line.trim() {
        "q" | "quit" => Typed::Quit,
        "b" | "back" => Typed::Back,
        said => {
            let states = term.map(states).unwrap_or_default();
            let number = said.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
            let state = number.and_then(|at| states.get(at));
            Typed::Saw(state.map_or(said, |state| *state).to_owned())
        }
    }
}

/// Says a line to whoever answers; where nobody listens, nothing is lost.
fn tell(line: &str) {
    let _ = writeln!(io::stderr().lock(), "{line}");
}
