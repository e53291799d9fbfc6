//! What the law of the place says. Nothing of it is legal advice: every row is to be checked
//! locally.

use super::{Candidate, Kind, Note, Outcome, RuleRef, Tally, shown};
use crate::{Asked, Effect, LandRule, Leave, PROTECTED, Period, Quantity, Rules};
use ground::{Formula, Refusal, Text, Working};
use jiff::civil::{Date, date};

/// One candidate for each law that stands in the way or asks for something, and one for each thing
/// that must be known before a law can be looked up.
pub(super) fn candidates(
    asked: &Asked,
    rules: &Rules,
    places: &[&str],
    tally: &Tally<'_>,
) -> Vec<Candidate> {
    let laws = touching(asked, rules, places);
    let mut all = unknowns(asked, rules, places);
    all.extend(laws.filter_map(|law| judge(asked, law, tally)));
    all
}

/// What every law that touches the wish says.
pub(super) fn notes(asked: &Asked, rules: &Rules, places: &[&str]) -> Vec<Note> {
    touching(asked, rules, places)
        .map(|law| Note { says: words(law), from: law.from.clone() })
        .collect()
}

/// What a law says, when that was read, and that it is to be checked locally: always.
fn words(law: &LandRule) -> Text {
    let says = |id: &str| Text::new(id).with("says", law.says.as_str());
    match &law.seen {
        Some(seen) => says("harvest-law").with("seen", seen.as_str()),
        None => says("harvest-law-unread"),
    }
}

/// Whether the sheet of the species speaks of protection.
pub(super) fn protection(asked: &Asked) -> Option<Candidate> {
    let note = asked.protected.as_deref()?;
    let rule = RuleRef::new(Kind::Protection, "");
    let text = |id: &str| Text::new(id).taxon("taxon", asked.taxon.as_str()).with("note", note);
    let consents = asked.site.consents.iter();
    let allowed = consents
        .filter(|consent| consent.rule == PROTECTED && consent.until >= asked.on)
        .find(|consent| !consent.from.is_empty());
    let Some(consent) = allowed else {
        let settle = text("harvest-settle-protected");
        return Some(Candidate::open(rule, text("harvest-protected"), settle));
    };
    let says = text("harvest-consented").with("from", consent.from.as_str());
    Some(clear(rule, says, asked))
}

fn touching<'r>(
    asked: &'r Asked,
    rules: &'r Rules,
    places: &'r [&str],
) -> impl Iterator<Item = &'r LandRule> {
    let laws = rules.laws.iter();
    laws.filter(move |law| law.scope.touches(asked, places))
}

fn unknowns(asked: &Asked, rules: &Rules, places: &[&str]) -> Vec<Candidate> {
    let site = &asked.site;
    let open = |id: &str, why: Text| {
        let settle = Text::new(format!("harvest-settle-{id}")).with("site", site.name.as_str());
        Candidate::open(RuleRef::new(Kind::Law, id), why, settle)
    };
    let why = |id: &str| Text::new(id).with("site", site.name.as_str());
    let mut all = Vec::new();
    match &site.jurisdiction {
        None => all.push(open("jurisdiction", why("harvest-no-jurisdiction"))),
        Some(place) if !has_law(rules, places) => {
            let why = why("harvest-no-law").with("place", place.as_str());
            all.push(open("no-law", why));
        }
        Some(_) => {}
    }
    match &site.land {
        None => all.push(open("land", why("harvest-no-land"))),
        Some(land) if !rules.lands.contains_key(land) => {
            let why = why("harvest-land-unlisted").with("land", land.as_str());
            all.push(open("land", why));
        }
        Some(_) => {}
    }
    if asked.purpose.is_none() {
        all.push(open("purpose", why("harvest-no-purpose")));
    }
    all
}

/// Whether any law of these places is written down.
fn has_law(rules: &Rules, places: &[&str]) -> bool {
    let here = |place: &String| places.contains(&place.as_str());
    let mut laws = rules.laws.iter();
    laws.any(|law| law.scope.jurisdictions.iter().any(here))
}

fn judge(asked: &Asked, law: &LandRule, tally: &Tally<'_>) -> Option<Candidate> {
    let rule = RuleRef::new(Kind::Law, &law.id);
    let says = words(law);
    let fact = || Working::fact(says.clone(), shown(&says), law.from.clone());
    match &law.effect {
        Effect::PublicRight | Effect::Note => None,
        Effect::Forbidden => {
            Some(Candidate { rule, outcome: Outcome::Nothing, working: fact(), says })
        }
        Effect::AskOwner => Some(match &asked.leave {
            Some(Leave::Given(_)) => {
                Candidate { rule, outcome: Outcome::Clear, working: fact(), says }
            }
            _ => Candidate::open(rule, says, owner("harvest-settle-ask-owner", asked)),
        }),
        Effect::Consent => Some(consent(asked, law, rule, says)),
        Effect::AtMost(most, period) => Some(at_most(asked, law, tally, (*most, *period))),
    }
}

/// A message that names the landholder, where one is known.
pub(super) fn owner(id: &str, asked: &Asked) -> Text {
    let landholder = asked.site.landholder.as_deref();
    Text::new(id).with("site", asked.site.name.as_str()).with(
        "landholder",
        landholder.map_or_else(|| Text::new("harvest-the-landholder").into(), ground::Arg::from),
    )
}

fn consent(asked: &Asked, law: &LandRule, rule: RuleRef, says: Text) -> Candidate {
    let mut consents = asked.site.consents.iter();
    let given = consents.find(|consent| consent.rule == law.id && consent.until >= asked.on);
    match given {
        Some(consent) => {
            let says = Text::new("harvest-consented").with("from", consent.from.as_str());
            clear(rule, says, asked)
        }
        None => {
            let settle = Text::new("harvest-settle-consent").with("rule", law.id.as_str());
            Candidate::open(rule, says, settle.with("site", asked.site.name.as_str()))
        }
    }
}

fn clear(rule: RuleRef, says: Text, asked: &Asked) -> Candidate {
    let at = ground::Place::entry("site", &asked.site.name, "consents");
    Candidate {
        working: Working::input(Text::new("harvest-what-consent"), shown(&says), at),
        rule,
        outcome: Outcome::Clear,
        says,
    }
}

fn at_most(
    asked: &Asked,
    law: &LandRule,
    tally: &Tally<'_>,
    (most, period): (Quantity, Period),
) -> Candidate {
    let rule = RuleRef::new(Kind::Law, &law.id);
    let left = || -> Result<(Quantity, f64), Refusal> {
        let takes = tally.takes_since(period_start(period, asked.on))?;
        let concerned = takes.into_iter().filter(|take| law.scope.concerns(&take.taxon, take.part));
        let taken = tally.sum(concerned)?;
        Ok((tally.left(most, taken)?, taken))
    };
    match left() {
        Err(Refusal { why, settle }) => Candidate::open(rule, why, settle),
        Ok((left, taken)) => {
            let says =
                Text::new("harvest-law-amount").with("says", law.says.as_str()).with("left", left);
            let what = Text::new("harvest-what-law-amount");
            let from = vec![
                Working::fact(what, most.shown(), law.from.clone()),
                super::share::taken("harvest-what-taken", tally, taken, asked),
            ];
            let formula = Formula::plain("harvest.left", "what is allowed − what was taken");
            Candidate {
                working: Working::computed(says.clone(), left.shown(), formula, from),
                rule,
                outcome: Outcome::AtMost(left),
                says,
            }
        }
    }
}

fn period_start(period: Period, on: Date) -> Date {
    match period {
        Period::Day => on,
        Period::Year => date(on.year(), 1, 1),
    }
}
