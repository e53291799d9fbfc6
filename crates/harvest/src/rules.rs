//! The rules that an allowance is held against: shares, laws and distances, each with its source.
//!
//! No authority gives one share that can be taken of anything: shares are the leader's own policy,
//! and published limits stand beside them as ceilings. Nothing here is legal advice; every law is to
//! be checked locally.

use crate::{Asked, Quantity, Scope};
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
        self.nearest_share(asked.part, |rule| rule.scope.covers(asked, &[]))
    }

    /// The share of a plant's part wherever it grows and whatever it is for.
    #[must_use]
    pub fn share_of(&self, taxon: &str, part: Part, life_form: LifeForm) -> Option<&TakeRule> {
        self.nearest_share(part, |rule| rule.scope.covers_anywhere(taxon, part, life_form))
    }

    fn nearest_share(&self, part: Part, fits: impl Fn(&TakeRule) -> bool) -> Option<&TakeRule> {
        self.shares.iter().filter(|rule| fits(rule)).max_by(|a, b| {
            let by_share = || b.share.share().total_cmp(&a.share.share());
            let by_scope = a.scope.narrowness(part).cmp(&b.scope.narrowness(part));
            by_scope.then_with(by_share).then_with(|| b.id.cmp(&a.id))
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
