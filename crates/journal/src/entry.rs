//! The kinds of entry: what a school writes down.
//!
//! Things are named by the short names their file gives them (`mill-wood`, `nettle-bank`), so that
//! a person can follow a cup back to a stand by reading.

use ground::{Condition, ContentId, Mass, Part, Text, Volume};
use jiff::civil::{Date, DateTime};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One fact that was written down: when, by whom, and what.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// When it happened, as the clock on the wall showed it; none for what holds without a time.
    pub at: Option<DateTime>,
    /// Who wrote it.
    pub by: String,
    /// What.
    pub what: Payload,
}

impl Entry {
    /// The identifier, from the content: equal facts are one entry.
    #[must_use]
    pub fn id(&self) -> ContentId {
        // Every payload is a plain tree of maps, lists, words and finite numbers, which always
        // writes; were one ever not to, all such entries would share one identifier and collapse,
        // and the round trip that every reader makes would show it.
        let content = serde_json::to_vec(self).unwrap_or_default();
        ContentId::of(&content)
    }
}

/// What an entry says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Payload {
    /// A place and whose it is.
    Site(Site),
    /// A landholder's permission.
    Permission(Permission),
    /// A population of one species at a site.
    Stand(Stand),
    /// Counts or weights at a stand.
    Survey(Survey),
    /// One character seen on one plant in hand.
    Look(Look),
    /// A harvest.
    Take(Take),
    /// The labelled material it became.
    Lot(Lot),
    /// Going through a lot piece by piece.
    Sorting(Sorting),
    /// A preparation that was made.
    Batch(Batch),
    /// A weight that was read.
    Weighing(Weighing),
    /// A person who comes.
    Participant(Participant),
    /// What a person said of their health.
    Answers(crate::Sealed<Answers>),
    /// What one person was handed.
    Serving(Serving),
    /// A named person's word on a proposed decision.
    Confirmation(Confirmation),
    /// What a person may be handed, from somebody who knew their answers.
    Flag(Flag),
    /// An earlier entry taken back.
    Correction(Correction),
}

/// A place and whose it is.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Site {
    /// Short name.
    pub name: String,
    /// What people call it.
    pub called: String,
    /// Whose land it is.
    pub landholder: String,
    /// Class of land, in the words of the land rules.
    pub land: String,
    /// Whose law holds, in the words of the land rules.
    pub jurisdiction: String,
    /// Latitude in degrees north, where it was given.
    pub latitude: Option<f64>,
    /// Longitude in degrees east.
    pub longitude: Option<f64>,
    /// Its grid reference, as it was written.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grid: Option<String>,
    /// The nearest road.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub road: Option<String>,
    /// How whoever comes to help gets in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub way_in: Option<String>,
    /// Whether gathering rests on a public right there, so that nobody's permission is needed.
    pub public_right: bool,
    /// What authorities have agreed to.
    pub consents: Vec<Consent>,
}

/// An authority's written consent to what a land rule would not allow without it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Consent {
    /// The land rule, by its identifier.
    pub rule: String,
    /// Who gave it.
    pub from: String,
    /// Its last day.
    pub until: Date,
}

/// A landholder's permission to gather.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Permission {
    /// At which site.
    pub site: String,
    /// Who gave it.
    pub from: String,
    /// When it was given.
    pub given: Date,
    /// Its last day.
    pub until: Date,
    /// For what: own use, teaching, sale, in the words of the land rules.
    pub purposes: Vec<String>,
    /// Which plants; empty means that it names none and so covers none.
    pub taxa: Vec<String>,
    /// Which parts.
    pub parts: Vec<Part>,
    /// How much at most in all, where it says so.
    pub at_most_g: Option<Mass<ground::Fresh>>,
}

/// A population of one species at a site.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stand {
    /// Short name.
    pub name: String,
    /// At which site.
    pub site: String,
    /// Of what.
    pub taxon: String,
    /// Its area, where it was measured.
    pub area_m2: Option<ground::Area>,
    /// How far each known hazard is, by its name in the land rules.
    pub hazards_mm: BTreeMap<String, ground::Length>,
    /// Hazards looked for and not there.
    pub without: Vec<String>,
    /// Whether it grows in water or where it is flooded, where somebody looked.
    pub in_water: Option<bool>,
    /// Latitude in degrees north.
    pub latitude: Option<f64>,
    /// Longitude in degrees east.
    pub longitude: Option<f64>,
}

/// Plots counted or weighed at a stand, chosen at random among equal ones.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Survey {
    /// At which stand.
    pub stand: String,
    /// Of which part.
    pub part: Part,
    /// How many plots of this size the stand holds in all.
    pub plots_in_stand: u32,
    /// What was found in each plot that was drawn.
    pub plots: Vec<Plot>,
    /// Weights of single pieces, in grams, where pieces were counted.
    pub piece_g: Vec<Mass<ground::Fresh>>,
}

/// What was found in one plot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Plot {
    /// So many pieces.
    Pieces(u32),
    /// So much of it.
    Grams(Mass<ground::Fresh>),
}

/// One character of one plant in hand, read by one person.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Look {
    /// The plant in hand.
    pub specimen: String,
    /// Where it grows.
    pub stand: String,
    /// Who read it.
    pub reader: String,
    /// The character, in the words of the glossary.
    pub character: String,
    /// What was read.
    pub saw: Saw,
    /// What was in hand.
    pub material: Material,
    /// Whether the reader did not see which plants were still possible.
    pub candidates_hidden: bool,
}

/// What was read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Saw {
    /// A state.
    State(String),
    /// One of several states, without being able to say which.
    OneOf(Vec<String>),
    /// A length, or the range over several pieces.
    Length(ground::Length, ground::Length),
    /// A number.
    Count(u32),
    /// Looked for and not there.
    NotThere,
    /// Looked, and could not tell.
    CannotTell,
}

/// What was in hand when a look was made. Only a growing or freshly picked whole plant can be
/// determined.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// The plant where it grows, or just picked.
    Growing,
    /// A photograph.
    Photograph,
    /// Bought or given.
    Bought,
    /// Cut up.
    Chopped,
    /// Dried.
    Dried,
}

/// A harvest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Take {
    /// Short name.
    pub name: String,
    /// From which stand.
    pub stand: String,
    /// Of which part.
    pub part: Part,
    /// How much.
    pub amount_g: Mass<ground::Fresh>,
    /// The determined plant that was the pattern.
    pub pattern: Option<String>,
    /// The stages that were seen and confirmed, in the words of the part rows.
    pub stages: Vec<String>,
    /// Who picked.
    pub pickers: Vec<String>,
}

/// The labelled material that a take became.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lot {
    /// Short name, as on the label.
    pub name: String,
    /// The takes it holds.
    pub takes: Vec<String>,
}

/// Two people going through a lot piece by piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sorting {
    /// Which lot.
    pub lot: String,
    /// Who looked at every piece.
    pub sorters: Vec<String>,
    /// Pieces that were looked at.
    pub pieces: u32,
    /// Whether every piece of the lot was looked at.
    pub every_piece: bool,
    /// What was found that does not belong.
    pub found: Vec<Found>,
}

/// Something in a lot that does not belong.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Found {
    /// What it was taken to be; `?` when nobody could say.
    pub what: String,
    /// How many pieces.
    pub pieces: u32,
    /// Whether it is harmless for certain. What is not is treated as harmful.
    pub harmless: bool,
}

/// A preparation that was made.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Batch {
    /// Short name.
    pub name: String,
    /// The wish it fulfils.
    pub make: String,
    /// The lots that went in.
    pub lots: Vec<String>,
    /// The stages that were confirmed at the stove, in the words of the part rows.
    pub stages: Vec<String>,
    /// Who made it: spoon error is theirs.
    pub cook: String,
}

/// A weight or volume that was read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Weighing {
    /// The lot or batch.
    pub of: String,
    /// What was weighed: `herb`, `yield`, `serving`.
    pub what: String,
    /// Its mass, where it was weighed.
    pub mass_g: Option<Mass>,
    /// Its volume, where it was measured.
    pub volume_ml: Option<Volume>,
}

/// A person who comes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Participant {
    /// Short name or number, as on the lists.
    pub name: String,
    /// What the person is called.
    pub called: String,
}

/// What a person said of their health. Sealed: it is opened only to decide.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Answers {
    /// Whose answers.
    pub participant: String,
    /// Age in whole years, where given.
    pub age: Option<u32>,
    /// Body mass, where given.
    pub body_mass_g: Option<Mass>,
    /// What was said to each question.
    pub said: BTreeMap<Condition, Word>,
    /// What was said to every question that was asked and is not listed.
    pub rest: Word,
}

/// What a person said to one question.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Word {
    /// It holds.
    Yes,
    /// It does not.
    No,
    /// I would rather not say.
    RatherNot,
    /// Not asked, or not answered.
    Unanswered,
}

/// What one person was handed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Serving {
    /// From which batch.
    pub batch: String,
    /// To whom.
    pub participant: String,
    /// How many servings.
    pub servings: u32,
    /// Whether it goes home in a jar.
    pub taken_home: bool,
}

/// What a person may be handed of a wish, as somebody found who knew their answers, for whoever hands out
/// without knowing them. It never says why.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Flag {
    /// The wish.
    pub make: String,
    /// Who.
    pub participant: String,
    /// What it holds for: as long as the cup is one with this identifier.
    pub basis: String,
    /// Most servings a day; 0 where it is not for this person.
    pub servings_a_day: u32,
    /// Most days at a time.
    pub days: u32,
}

/// A named person's word on a proposed decision.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Confirmation {
    /// The wish that was decided on.
    pub make: String,
    /// For whom.
    pub participant: String,
    /// What was settled.
    pub given: Given,
}

/// What was settled.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Given {
    /// As proposed.
    AsProposed,
    /// Less than proposed: at most so many servings a day, or none.
    AtMost(u32),
    /// *Ask first* lifted on a clinician's word.
    ClinicianSaid {
        /// Pharmacist, doctor, midwife.
        role: String,
        /// When.
        on: Date,
        /// On what preparation.
        preparation: String,
    },
}

/// An earlier entry taken back. What holds instead is an entry of its own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Correction {
    /// The entry.
    pub of: ContentId,
    /// Why.
    pub why: Text,
}
