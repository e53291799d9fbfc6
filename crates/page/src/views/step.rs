//! One step of reading a plant in hand: what the last line did, then what is asked now. It has no
//! title: steps follow each other on a terminal.

use super::name;
use crate::{Block, Fact, Kind, Level, Page, Prose, Words};
use desk::{Asks, Reason, StepReply, Told, Why};
use ground::{Fault, Text, Unit};
use herbal::Term;
use identify::Kind as Of;

pub(super) fn page(reply: &StepReply, words: &Words<'_>) -> Page {
    let page = Page { title: Prose::new(), ..words.page(Kind::Screen, &Text::new("reading-left")) };
    let told = reply.told.iter().flat_map(|told| self::told(told, words));
    page.with(told).with(asks(&reply.asks, words))
}

fn told(told: &Told, words: &Words<'_>) -> Vec<Block> {
    let text = match told {
        Told::Keys => return keys(words),
        Told::Why(why) => return self::why(why, words),
        Told::Fault(fault) => return vec![at_fault(fault, words)],
        Told::Reads { reader, looks, shown } => {
            let reads = Text::new("reading-reads").with("reader", reader.as_str());
            let mut blocks = vec![words.para(&reads.with("looks", *looks))];
            if *shown {
                let shown = Text::new("reading-reads-shown").with("reader", reader.as_str());
                blocks.push(words.para(&shown));
            }
            return blocks;
        }
        Told::OtherDay { looks } => Text::new("reading-other-day").with("looks", *looks),
        Told::Kept { character, seen } => Text::new("reading-kept")
            .with("seen", words.seen(character, seen))
            .with("character", words.character(character)),
        Told::TakenFor { plant } => Text::new("reading-taken-for").taxon("plant", plant),
        Told::TakenBack { character } => {
            Text::new("reading-taken-back").with("character", words.character(character))
        }
        Told::AnswerTakenBack => Text::new("reading-answer-taken-back"),
        Told::NothingToTakeBack => Text::new("reading-nothing-to-take-back"),
    };
    vec![words.para(&text)]
}

fn keys(words: &Words<'_>) -> Vec<Block> {
    let keys = [
        ("?", "reading-key-cannot-tell"),
        ("-", "reading-key-not-there"),
        ("back", "reading-key-back"),
        ("why", "reading-key-why"),
        ("verdict", "reading-key-verdict"),
        ("quit", "reading-key-quit"),
    ];
    let facts = keys.map(|(key, id)| Fact::new(key, words.word(id)));
    vec![
        words.para(&Text::new("reading-keys")),
        words.para(&Text::new("reading-keys-words")),
        Block::Facts(facts.into()),
    ]
}

fn at_fault(fault: &Fault, words: &Words<'_>) -> Block {
    let said = words.catalogue.fault(fault);
    let text = Text::new("reading-not-an-answer")
        .with("what", said.what)
        .with("want", said.want)
        .with("mend", said.mend);
    words.para(&text)
}

/// Why something is asked; of a look also what goes wrong in reading it.
fn why(why: &Why, words: &Words<'_>) -> Vec<Block> {
    let id = match why {
        Why::Plant => "reading-why-plant",
        Why::Place => "reading-why-place",
        Why::Region => "reading-why-region",
        Why::Reader => "reading-why-reader",
        Why::Level => "reading-why-level",
        Why::Nothing => "reading-why-nothing",
        Why::Look { reason, .. } => match reason {
            Reason::ReadByAnother => "reading-why-read-by-another",
            Reason::ReadBefore => "reading-why-read-before",
            Reason::MustLook => "reading-why-must-look",
            Reason::TellsMost => "reading-why-tells-most",
        },
    };
    let mut blocks = vec![words.para(&Text::new(id))];
    if let Why::Look { character, .. } = why
        && let Some(note) = term(character, words).and_then(|term| term.misread_note.as_deref())
    {
        blocks.push(words.para(&Text::new("reading-why-misread").with("note", note)));
    }
    blocks
}

fn term<'w>(character: &str, words: &Words<'w>) -> Option<&'w Term> {
    words.glossary.and_then(|glossary| glossary.term(character))
}

fn asks(asks: &Asks, words: &Words<'_>) -> Vec<Block> {
    let open = |id: &str| question(words, id, &format!("{id}-how"));
    match asks {
        Asks::Plant => open("reading-asks-plant"),
        Asks::Place => open("reading-asks-place"),
        Asks::Region { known } => {
            let known = known.iter().map(|region| region.word().to_owned());
            numbered(open("reading-asks-region"), known)
        }
        Asks::Reader { known } if known.is_empty() => open("reading-asks-reader"),
        Asks::Reader { known } => {
            let question = question(words, "reading-asks-reader", "reading-asks-reader-known");
            numbered(question, known.iter().cloned())
        }
        Asks::Level { known } => {
            let says = |level: &String| {
                let id = format!("reading-level-{level}");
                format!("{level}: {}", words.word(&id))
            };
            let question = vec![words.heading(Level::Section, &Text::new("reading-asks-level"))];
            numbered(question, known.iter().map(says))
        }
        Asks::Look { character } => look(character, words),
        Asks::Nothing { wants_another } => end(*wants_another, words),
        Asks::Verdict(reply) => {
            let page = name::page(reply, words);
            let heading = Block::heading(Level::Section, page.title);
            std::iter::once(heading).chain(page.blocks).collect()
        }
        Asks::Left => vec![words.para(&Text::new("reading-left"))],
    }
}

fn question(words: &Words<'_>, id: &str, how: &str) -> Vec<Block> {
    vec![words.heading(Level::Section, &Text::new(id)), words.para(&Text::new(how))]
}

fn numbered(mut question: Vec<Block>, answers: impl Iterator<Item = String>) -> Vec<Block> {
    question.push(Block::numbered(answers));
    question
}

/// A look: what the character is, how to look, and what it may show.
fn look(character: &str, words: &Words<'_>) -> Vec<Block> {
    let Some(term) = term(character, words) else {
        return vec![Block::heading(Level::Section, words.character(character))];
    };
    let head = Block::heading(Level::Section, Prose::new().said(&term.name));
    let how = Text::new("reading-asks-how").with("how", term.how.as_str());
    let how = how.amount("time", f64::from(term.character.seconds), Unit::Second);
    let is = Block::Para(Prose::new().said(&term.is));
    let blocks = vec![head, is, words.para(&how)];
    let asked = |id: &str| words.para(&Text::new(id));
    match &term.character.kind {
        Of::States(states) => {
            numbered(blocks, states.iter().map(|state| words.state(character, &state.id)))
        }
        Of::Length => blocks.into_iter().chain([asked("reading-asks-length")]).collect(),
        Of::Count => blocks.into_iter().chain([asked("reading-asks-count")]).collect(),
    }
}

fn end(wants_another: bool, words: &Words<'_>) -> Vec<Block> {
    let [head, says] = if wants_another {
        ["reading-another", "reading-another-says"]
    } else {
        ["reading-nothing", "reading-nothing-says"]
    };
    let keys = Text::new("reading-end-words")
        .with("verdict", "verdict")
        .with("back", "back")
        .with("quit", "quit");
    vec![
        words.heading(Level::Section, &Text::new(head)),
        words.para(&Text::new(says)),
        words.para(&keys),
    ]
}
