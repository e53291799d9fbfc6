//! The signs that tell a plant from its twins, side by side, and the order in which they are looked at.

use super::sheet::cell::statements;
use crate::{Prose, Words};
use desk::{SheetReply, Twin};
use ground::{Harm, Standing};
use herbal::Term;
use identify::{Cell, Sense};
use std::cmp::Reverse;

/// A character that tells a plant from some of its twins: both are known to show something.
pub(super) struct Sign<'a> {
    /// The character in plain words.
    pub(super) term: &'a Term,
    /// What the plant shows.
    pub(super) here: &'a Cell,
    /// What each twin shows, the worst twin first.
    pub(super) there: Vec<(&'a Twin, &'a Cell)>,
}

impl Sign<'_> {
    /// How bad the worst twin is that it tells apart.
    fn worst(&self) -> Harm {
        self.there.iter().map(|(twin, _)| harm(twin)).max().unwrap_or(Harm::None)
    }
}

/// How badly a twin can hurt; one without a sheet counts as deadly.
pub(super) fn harm(twin: &Twin) -> Harm {
    twin.harm.unwrap_or(Harm::Deadly)
}

/// Every sign, the one to look at first before the others: what tells the worst twin apart, then what
/// tells most twins apart, then what is read fastest. A smell stays on the fingers: it comes last.
pub(super) fn signs(reply: &SheetReply) -> Vec<Sign<'_>> {
    let mut signs: Vec<_> = reply.terms.values().filter_map(|term| sign(reply, term)).collect();
    signs.sort_by_key(|sign| {
        let character = &sign.term.character;
        let smell = character.sense == Sense::Smell;
        (smell, Reverse(sign.worst()), Reverse(sign.there.len()), character.seconds)
    });
    signs
}

fn sign<'a>(reply: &'a SheetReply, term: &'a Term) -> Option<Sign<'a>> {
    let id = &term.character.id;
    let there = reply.twins.iter().filter_map(|twin| {
        let tell = twin.tells.get(id)?;
        Some((twin, tell.there.as_ref()?))
    });
    let there: Vec<_> = there.collect();
    let here = reply.cells.get(id).filter(|_| !there.is_empty())?;
    Some(Sign { term, here, there })
}

/// What a sheet says of a character; what is only remembered is marked.
pub(super) fn said(term: &Term, cell: &Cell, words: &Words<'_>) -> String {
    let (main, rare) = statements(words, term, &cell.value);
    let marked = |said: &[String], standing| {
        let remembered = standing == Standing::Remembered && !said.is_empty();
        let mark = if remembered { words.word("view-compare-mark") } else { String::new() };
        said.join("; ") + &mark
    };
    let all = [marked(&main, cell.standing), marked(&rare, cell.rare_standing)];
    all.into_iter().filter(|said| !said.is_empty()).collect::<Vec<_>>().join("; ")
}

/// A twin by its usual name, or the scientific one where it has no other.
pub(super) fn name(twin: &Twin) -> &str {
    twin.common.as_deref().unwrap_or(&twin.name)
}

/// A twin by both names.
pub(super) fn names(twin: &Twin) -> Prose {
    let common = twin.common.as_deref().map(|common| Prose::new().said(common).text(", "));
    common.unwrap_or_default().taxon(&twin.name)
}
