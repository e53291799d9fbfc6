//! Whose leave there is, and whether it covers what is asked.

use super::law::owner;
use super::{Candidate, Kind, Outcome, RuleRef, Tally, shown};
use crate::crop::part_text;
use crate::{Asked, Effect, Leave, Permission, Quantity, Rules};
use ground::{Formula, Place, Refusal, Text, Working};

/// The leave, or everything that it does not cover.
pub(super) fn candidates(
    asked: &Asked,
    rules: &Rules,
    places: &[&str],
    tally: &Tally<'_>,
) -> Vec<Candidate> {
    match &asked.leave {
        None => vec![open("leave", owner("harvest-no-leave", asked), asked)],
        Some(Leave::PublicRight) => vec![public_right(asked, rules, places)],
        Some(Leave::Given(permission)) => {
            let gaps = gaps(asked, permission);
            if gaps.is_empty() { vec![given(asked, permission, tally)] } else { gaps }
        }
    }
}

fn open(id: &str, why: Text, asked: &Asked) -> Candidate {
    let settle = owner("harvest-settle-ask-owner", asked);
    Candidate::open(RuleRef::new(Kind::Leave, id), why, settle)
}

/// A right of everybody counts only where a law that was read covers all of what is asked.
fn public_right(asked: &Asked, rules: &Rules, places: &[&str]) -> Candidate {
    let right = rules.laws.iter().find(|law| {
        law.effect == Effect::PublicRight && law.from.may_clear() && law.scope.covers(asked, places)
    });
    let Some(law) = right else {
        return open("public-right", owner("harvest-no-public-right", asked), asked);
    };
    let says = Text::new("harvest-public-right").with("says", law.says.as_str());
    Candidate {
        rule: RuleRef::new(Kind::Leave, &law.id),
        outcome: Outcome::Clear,
        working: Working::fact(says.clone(), shown(&says), law.from.clone()),
        says,
    }
}

/// Everything that the permission does not cover.
fn gaps(asked: &Asked, permission: &Permission) -> Vec<Candidate> {
    let text = |id: &str| owner(id, asked).with("from", permission.from.as_str());
    let other = asked.site.landholder.as_deref() != Some(permission.from.as_str());
    let early = asked.on < permission.given;
    let late = asked.on > permission.until;
    let purpose = asked.purpose.is_none_or(|p| !permission.purposes.contains(&p));
    let part = !permission.parts.iter().any(|p| p.contains(asked.part));
    let checks = [
        (other, "from", text("harvest-leave-of-another")),
        (
            early || late,
            "until",
            text("harvest-leave-not-now")
                .with("given", permission.given)
                .with("until", permission.until),
        ),
        (
            purpose,
            "purposes",
            text("harvest-leave-other-purpose").with("purpose", purpose_text(asked)),
        ),
        (
            !permission.taxa.contains(&asked.taxon),
            "taxa",
            text("harvest-leave-other-taxon").taxon("taxon", asked.taxon.as_str()),
        ),
        (part, "parts", text("harvest-leave-other-part").with("part", part_text(asked.part))),
    ];
    let failed = checks.into_iter().filter(|(fails, ..)| *fails);
    failed.map(|(_, id, why)| open(id, why, asked)).collect()
}

fn purpose_text(asked: &Asked) -> Text {
    let word = asked.purpose.map_or("unknown", crate::Purpose::word);
    Text::new(format!("harvest-purpose-{word}"))
}

/// A permission that covers everything: its amount less what was taken by it, where it names one.
fn given(asked: &Asked, permission: &Permission, tally: &Tally<'_>) -> Candidate {
    let rule = RuleRef::new(Kind::Leave, "permission");
    let at = Place::entry("permission", &asked.site.name, "at_most");
    let says = owner("harvest-leave-given", asked)
        .with("from", permission.from.as_str())
        .with("until", permission.until);
    let Some(most) = permission.at_most else {
        return Candidate {
            working: Working::input(Text::new("harvest-what-leave"), shown(&says), at),
            rule,
            outcome: Outcome::Clear,
            says,
        };
    };
    match left(asked, permission, most, tally) {
        Err(Refusal { why, settle }) => Candidate::open(rule, why, settle),
        Ok((left, taken)) => {
            let from = vec![
                Working::input(Text::new("harvest-what-leave-amount"), most.shown(), at),
                super::share::taken("harvest-what-taken", tally, taken, asked),
            ];
            let formula = Formula::plain("harvest.left", "what is allowed − what was taken");
            let what = Text::new("harvest-what-leave");
            Candidate {
                working: Working::computed(what, left.shown(), formula, from),
                rule,
                outcome: Outcome::AtMost(left),
                says: owner("harvest-leave-amount", asked)
                    .with("from", permission.from.as_str())
                    .with("left", left),
            }
        }
    }
}

fn left(
    asked: &Asked,
    permission: &Permission,
    most: Quantity,
    tally: &Tally<'_>,
) -> Result<(Quantity, f64), Refusal> {
    let takes = tally.takes_since(permission.given)?;
    let by_it = takes.into_iter().filter(|take| {
        take.site == asked.site.name
            && permission.taxa.contains(&take.taxon)
            && permission.parts.iter().any(|part| part.meets(take.part))
    });
    let taken = tally.sum(by_it)?;
    Ok((tally.left(most, taken)?, taken))
}
