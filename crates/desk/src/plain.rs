//! Characters and states by their plain words: judging knows them by the names of its table.

use ground::{Arg, How, Shown, Text, Working};
use herbal::Glossary;
use identify::{Next, Verdict};

/// A verdict whose sentences and workings name characters and states in plain words.
pub(crate) fn verdict(glossary: &Glossary, verdict: Verdict) -> Verdict {
    let reasons = verdict.reasons.into_iter().map(|reason| text(glossary, reason, None)).collect();
    Verdict { reasons, working: working(glossary, verdict.working, None), ..verdict }
}

/// What to do next, with its sentences in plain words.
pub(crate) fn next(glossary: &Glossary, next: Next) -> Next {
    match next {
        Next::CannotSettle { why } => Next::CannotSettle {
            why: why.into_iter().map(|why| text(glossary, why, None)).collect(),
        },
        other => other,
    }
}

/// The character that a message speaks of, by its name in the table.
fn character(text: &Text) -> Option<String> {
    match text.args.get("character") {
        Some(Arg::Words(name)) => Some(name.clone()),
        _ => None,
    }
}

fn text(glossary: &Glossary, said: Text, within: Option<&str>) -> Text {
    let own = character(&said);
    let within = own.as_deref().or(within);
    let args = said.args.into_iter().map(|(name, value)| (name, arg(glossary, value, within)));
    Text { id: said.id, args: args.collect() }
}

fn arg(glossary: &Glossary, value: Arg, within: Option<&str>) -> Arg {
    match value {
        Arg::Words(word) => Arg::Words(plain(glossary, &word, within).unwrap_or(word)),
        Arg::Text(said) => Arg::Text(text(glossary, said, within)),
        Arg::List(list) => {
            Arg::List(list.into_iter().map(|item| arg(glossary, item, within)).collect())
        }
        other => other,
    }
}

/// The plain words of a character, or of a state of the character that is spoken of.
fn plain(glossary: &Glossary, word: &str, within: Option<&str>) -> Option<String> {
    let state = within.and_then(|character| {
        glossary.state(character, word).map(|_| glossary.says(character, word).to_owned())
    });
    state.or_else(|| glossary.term(word).map(|term| term.name.clone()))
}

fn working(glossary: &Glossary, node: Working, within: Option<&str>) -> Working {
    let own = character(&node.what);
    let within = own.as_deref().or(within);
    let value = match node.value {
        Shown::Words(said) => Shown::Words(text(glossary, said, within)),
        other => other,
    };
    let how = match node.how {
        How::Computed { by, from } => How::Computed {
            by,
            from: from.into_iter().map(|part| working(glossary, part, within)).collect(),
        },
        How::Assumed(why) => How::Assumed(text(glossary, why, within)),
        other => other,
    };
    Working { what: text(glossary, node.what, within), value, how }
}
