//! The rules that an allowance is held against: shares, laws and distances, each with its source.
//!
//! No authority gives one share that can be taken of anything: shares are the leader's own policy,
//! and published limits stand beside them as ceilings. Nothing here is legal advice; every law is to
//! be checked locally.

use crate::{Asked, Purpose, Quantity};
use ground::{Arg, Fault, Finite, Fraction, Length, LifeForm, Part, Place, Sourcing, Unit};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Everything that is known of shares, laws and distances.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Rules {
    /// Shares by part and life form: the nearest one to what is asked decides.
    pub shares: Vec<TakeRule>,
    /// Published limits: every one that covers what is asked decides.
    pub ceilings: Vec<TakeRule>,
    /// What the law of a place says.
    pub laws: Vec<LandRule>,
    /// What makes a stand unfit, and how far off it must be.
    pub hazards: Vec<Hazard>,
    /// What to do with a plant that may be taken.
    pub cares: Vec<Care>,
    /// Places with a law of their own, by identifier.
    pub jurisdictions: BTreeMap<String, Jurisdiction>,
    /// Classes of land and what they are, by identifier.
    pub lands: BTreeMap<String, String>,
}

/// A place with a law of its own.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Jurisdiction {
    /// What people call it.
    pub name: String,
    /// The wider place whose law holds there too.
    pub within: Option<String>,
}

/// What a rule is about. An empty list leaves nothing out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Scope {
    /// Species or genera, by scientific name.
    pub taxa: Vec<String>,
    /// Parts. `whole` means whole plants, not every part of them.
    pub parts: Vec<Part>,
    /// How they grow.
    pub life_forms: Vec<LifeForm>,
    /// Places with a law of their own, and those within them.
    pub jurisdictions: Vec<String>,
    /// Classes of land.
    pub lands: Vec<String>,
    /// What gathering is for.
    pub purposes: Vec<Purpose>,
}

/// How much of a season's crop may be taken, and how often.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct TakeRule {
    /// Identifier.
    pub id: String,
    /// What it is about.
    pub scope: Scope,
    /// Share of the season's crop, before anything was taken.
    pub share: Fraction,
    /// At most in one season of so many: 1 is every year.
    pub every_years: u16,
    /// The rule in plain words.
    pub says: String,
    /// Where it comes from.
    pub from: Sourcing,
}

/// What a law says of a place, a plant, a part and a purpose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LandRule {
    /// Identifier.
    pub id: String,
    /// What it is about.
    pub scope: Scope,
    /// What follows from it.
    pub effect: Effect,
    /// The rule in our own words.
    pub says: String,
    /// Where it stands.
    pub from: Sourcing,
    /// When that was read, year and month; none for what nobody has read.
    pub seen: Option<String>,
}

/// What follows from a land rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Effect {
    /// It may not be taken.
    Forbidden,
    /// The landholder must be asked: the law says so, or does not say whether it covers this.
    AskOwner,
    /// An authority must consent.
    Consent,
    /// So much in a day or a year, and no more.
    AtMost(Quantity, Period),
    /// The law leaves it to everybody.
    PublicRight,
    /// Something to look up before going.
    Note,
}

/// The time in which a legal amount is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Period {
    /// A day.
    Day,
    /// A calendar year.
    Year,
}

/// Something that makes a stand unfit.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Hazard {
    /// Identifier, such as `busy-road`.
    pub id: String,
    /// What people call it.
    pub name: String,
    /// How far off the stand must be.
    pub reach: Reach,
    /// Whether only plants that grow in water are concerned.
    pub water_only: bool,
    /// Why, in plain words.
    pub why: String,
    /// Where the figures come from. The distances themselves are policy drawn from them.
    pub from: Sourcing,
    /// Why the leader keeps nearer than the distance this started with, where that is so.
    pub narrowed: Option<String>,
}

/// How far a hazard reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reach {
    /// No distance makes it harmless: where it is, nothing is taken.
    Anywhere,
    /// So far.
    Distance {
        /// Kept unless the leader decides otherwise, and says why.
        keep: Length,
        /// Never nearer than this.
        never: Length,
    },
}

/// What to do with a plant that may be taken: wash, cook, pick above the reach of a dog.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Care {
    /// Identifier.
    pub id: String,
    /// Whether only plants that grow in water are concerned.
    pub water_only: bool,
    /// What to do, in plain words.
    pub says: String,
    /// Where it comes from.
    pub from: Sourcing,
}

impl Scope {
    /// Whether a rule of this scope stands in the way: what is asked lies in it, or shares something
    /// with it. What is not known counts as lying in it.
    #[must_use]
    pub fn touches(&self, asked: &Asked, places: &[&str]) -> bool {
        self.names(&asked.taxon)
            && (self.parts.is_empty() || self.parts.iter().any(|p| part_touches(*p, asked.part)))
            && has_or_unknown(&self.life_forms, asked.life_form.as_ref())
            && has_or_unknown(&self.lands, asked.site.land.as_ref())
            && has_or_unknown(&self.purposes, asked.purpose.as_ref())
            && self.lies_in(places)
    }

    /// Whether a rule of this scope covers all of what is asked. What is not known is not covered.
    #[must_use]
    pub fn covers(&self, asked: &Asked, places: &[&str]) -> bool {
        self.names(&asked.taxon)
            && (self.parts.is_empty() || self.parts.iter().any(|p| part_covers(*p, asked.part)))
            && has_known(&self.life_forms, asked.life_form.as_ref())
            && has_known(&self.lands, asked.site.land.as_ref())
            && has_known(&self.purposes, asked.purpose.as_ref())
            && self.lies_in(places)
    }

    /// Whether a take of a part of a plant counts towards a limit of this scope.
    #[must_use]
    pub fn concerns(&self, taxon: &str, part: Part) -> bool {
        let touched = |rule: &Part| part_touches(*rule, part);
        self.names(taxon) && (self.parts.is_empty() || self.parts.iter().any(touched))
    }

    fn names(&self, taxon: &str) -> bool {
        let named = |name: &String| {
            let rest = taxon.strip_prefix(name.as_str());
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
        };
        self.taxa.is_empty() || self.taxa.iter().any(named)
    }

    fn lies_in(&self, places: &[&str]) -> bool {
        let known = |place: &String| places.contains(&place.as_str());
        self.jurisdictions.is_empty() || self.jurisdictions.iter().any(known)
    }
}

fn has_or_unknown<T: PartialEq>(list: &[T], item: Option<&T>) -> bool {
    list.is_empty() || item.is_none_or(|item| list.contains(item))
}

fn has_known<T: PartialEq>(list: &[T], item: Option<&T>) -> bool {
    list.is_empty() || item.is_some_and(|item| list.contains(item))
}

/// A rule on whole plants concerns whoever takes whole plants; other parts meet by their tree.
fn part_touches(rule: Part, asked: Part) -> bool {
    if rule == Part::Whole { asked == Part::Whole } else { rule.meets(asked) }
}

fn part_covers(rule: Part, asked: Part) -> bool {
    if rule == Part::Whole { asked == Part::Whole } else { rule.contains(asked) }
}

impl Rules {
    /// A place and the wider ones whose law holds there too; nothing for one that is not listed.
    #[must_use]
    pub fn places(&self, jurisdiction: &str) -> Vec<&str> {
        let mut places: Vec<&str> = Vec::new();
        let mut at = self.jurisdictions.get_key_value(jurisdiction);
        while let Some((id, place)) = at {
            if places.contains(&id.as_str()) {
                break;
            }
            places.push(id);
            let wider = place.within.as_ref();
            at = wider.and_then(|wider| self.jurisdictions.get_key_value(wider));
        }
        places
    }

    /// The leader's share that decides for a part: the one for the narrowest part that holds it, and
    /// among these one for the life form before one for any. Of equals the smallest.
    #[must_use]
    pub fn share_for(&self, asked: &Asked) -> Option<&TakeRule> {
        let fits = |rule: &&TakeRule| rule.scope.covers(asked, &[]);
        let narrowness = |rule: &TakeRule| {
            let depth = rule.scope.parts.iter().map(|part| depth(*part)).max();
            let named = !rule.scope.taxa.is_empty();
            (named, depth, !rule.scope.life_forms.is_empty())
        };
        self.shares.iter().filter(fits).max_by(|a, b| {
            let by_share = || b.share.share().total_cmp(&a.share.share());
            narrowness(a).cmp(&narrowness(b)).then_with(by_share).then_with(|| b.id.cmp(&a.id))
        })
    }

    /// Keeps another distance from a hazard than the rules start with. Farther is always possible;
    /// nearer only with a reason, and never nearer than the hard limit.
    ///
    /// # Errors
    /// `hazard-unknown`, `hazard-too-near`, or `hazard-no-reason`.
    pub fn keep_off(
        &mut self,
        hazard: &str,
        distance: Length,
        why: Option<&str>,
    ) -> Result<(), Fault> {
        let at = || Place::entry("keep-off", hazard, "distance");
        let known: Vec<_> = self.hazards.iter().map(|h| h.id.clone()).collect();
        let Some(found) = self.hazards.iter_mut().find(|h| h.id == hazard) else {
            return Err(Fault::new("hazard-unknown", at(), hazard).with("known", known.join(", ")));
        };
        let written = format!("{} m", distance.m());
        let Reach::Distance { keep, never } = &mut found.reach else {
            return Err(Fault::new("hazard-no-distance", at(), written));
        };
        if !(distance.m().is_finite() && distance >= *never) {
            let fault = Fault::new("hazard-too-near", at(), written);
            return Err(fault.with("never", metres(*never)));
        }
        let why = why.map(str::trim).filter(|why| !why.is_empty());
        if distance < *keep && why.is_none() {
            let fault = Fault::new("hazard-no-reason", at(), written);
            return Err(fault.with("keep", metres(*keep)));
        }
        found.narrowed = why.filter(|_| distance < *keep).map(str::to_owned);
        *keep = distance;
        Ok(())
    }
}

/// A length in metres, as a message says it.
pub(crate) fn metres(length: Length) -> Arg {
    Finite::new(length.m()).map_or_else(|| "?".into(), |m| Arg::Amount(m, Unit::Metre))
}

/// How far down its tree a part lies.
fn depth(part: Part) -> usize {
    std::iter::successors(Some(part), |part| part.parent()).count()
}
