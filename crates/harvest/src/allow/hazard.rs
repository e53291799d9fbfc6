//! Roads, railways, sprayed fields and what lay in the ground before.

use super::{Candidate, Kind, Note, Outcome, RuleRef, shown};
use crate::rules::metres;
use crate::{Asked, Care, Hazard, Nearness, Reach, Rules};
use ground::{Formula, Length, Place, Shown, Text, Unit, Working};

/// One candidate for each hazard that concerns the stand, and one for each that somebody wrote down
/// and no rule knows.
pub(super) fn candidates(asked: &Asked, rules: &Rules) -> Vec<Candidate> {
    let known = rules
        .hazards
        .iter()
        .filter(|hazard| !hazard.water_only || may_stand_in_water(asked))
        .map(|hazard| judge(asked, hazard));
    let strange = asked
        .stand
        .hazards
        .keys()
        .filter(|id| rules.hazards.iter().all(|hazard| hazard.id != **id))
        .map(|id| {
            let text = |message: &str| Text::new(message).with("hazard", id.as_str());
            let settle = text("harvest-settle-hazard-unlisted");
            Candidate::open(RuleRef::new(Kind::Hazard, id), text("harvest-hazard-unlisted"), settle)
        });
    known.chain(strange).collect()
}

/// What to do with the plant, as far as it concerns where it grows.
pub(super) fn cares(asked: &Asked, rules: &Rules) -> Vec<Note> {
    let concerns = |care: &&Care| !care.water_only || may_stand_in_water(asked);
    rules
        .cares
        .iter()
        .filter(concerns)
        .map(|care| Note {
            says: Text::new("harvest-care").with("says", care.says.as_str()),
            from: care.from.clone(),
        })
        .collect()
}

/// Where nobody has said, it may.
fn may_stand_in_water(asked: &Asked) -> bool {
    asked.stand.in_water != Some(false)
}

fn judge(asked: &Asked, hazard: &Hazard) -> Candidate {
    let rule = RuleRef::new(Kind::Hazard, &hazard.id);
    let text = |id: &str| {
        Text::new(id).with("hazard", hazard.name.as_str()).with("stand", asked.stand.name.as_str())
    };
    let (outcome, says) = match (asked.stand.hazards.get(&hazard.id), hazard.reach) {
        (None, _) => {
            let settle = match hazard.reach {
                Reach::Anywhere => text("harvest-settle-hazard-history"),
                Reach::Distance { keep, .. } => {
                    text("harvest-settle-hazard-distance").with("keep", metres(keep))
                }
            };
            return Candidate::open(rule, text("harvest-hazard-unknown"), settle);
        }
        (Some(Nearness::NotThere), _) => (Outcome::Clear, text("harvest-hazard-not-there")),
        (Some(Nearness::At(_)), Reach::Anywhere) => {
            let says = text("harvest-hazard-anywhere");
            (Outcome::Nothing, says.with("why", hazard.why.as_str()))
        }
        (Some(Nearness::At(distance)), Reach::Distance { keep, never }) => {
            let (id, outcome) = within(*distance, keep, never);
            let says = text(id)
                .with("distance", metres(*distance))
                .with("keep", metres(keep))
                .with("never", metres(never))
                .with("why", hazard.why.as_str());
            (outcome, says)
        }
    };
    Candidate { working: working(asked, hazard, &says), rule, outcome, says }
}

/// The verdict on a distance. What is no number lies within everything.
fn within(distance: Length, keep: Length, never: Length) -> (&'static str, Outcome) {
    if distance >= keep {
        ("harvest-hazard-far-enough", Outcome::Clear)
    } else if distance >= never {
        ("harvest-hazard-near", Outcome::Nothing)
    } else {
        ("harvest-hazard-too-near", Outcome::Nothing)
    }
}

fn working(asked: &Asked, hazard: &Hazard, says: &Text) -> Working {
    let metres = |length: Length| Shown::amount(length.m(), Unit::Metre);
    let at = Place::entry("stand", &asked.stand.name, &hazard.id);
    let found = match asked.stand.hazards.get(&hazard.id) {
        Some(Nearness::At(distance)) => metres(*distance),
        _ => shown(&Text::new("harvest-not-there")),
    };
    let mut from = vec![Working::input(Text::new("harvest-what-distance"), found, at)];
    let name = || hazard.name.as_str();
    let keep = Text::new("harvest-what-keep").with("hazard", name());
    let value = match hazard.reach {
        Reach::Anywhere => shown(&Text::new("harvest-anywhere")),
        Reach::Distance { keep, .. } => metres(keep),
    };
    from.push(match &hazard.narrowed {
        Some(why) => {
            let why = Text::new("harvest-narrowed").with("why", why.as_str());
            Working::assumed(keep, value, why)
        }
        None => Working::fact(keep, value, hazard.from.clone()),
    });
    let what = Text::new("harvest-what-hazard").with("hazard", name());
    let formula = Formula::plain("harvest.distance", "distance ≥ distance to keep");
    Working::computed(what, shown(says), formula, from)
}
