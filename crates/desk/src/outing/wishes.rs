//! What an outing wants, apart from what has happened: the wishes of its file.

use super::emergency::{EmergencyWish, WayBack};
use super::money::MoneyWish;
use ground::{
    AlcoholByVolume, Dist, Duration, Fraction, Heap, Length, LifeForm, MassFraction, MeasureSystem,
    Part, Region, Spoken,
};
use harvest::Purpose;
use identify::Level;
use jiff::civil::{Date, DateTime, Time};
use jiff::tz::TimeZone;
use prepare::{HerbState, What};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// What the outing is and wants.
#[derive(Clone, Debug)]
pub struct Wishes {
    /// What it is called.
    pub name: String,
    /// The day.
    pub date: Date,
    /// When it begins.
    pub from: Time,
    /// When it ends.
    pub to: Time,
    /// Its time zone.
    pub zone: TimeZone,
    /// The standard name of the zone.
    pub zone_name: String,
    /// Where in the world.
    pub region: Region,
    /// Latitude and longitude in degrees north and east, where given.
    pub place: Option<(f64, f64)>,
    /// The short name of the leader, who is one of the readers.
    pub leader: String,
    /// What gathering is for, in the law's eyes.
    pub purpose: Purpose,
    /// Whose kitchen measures are meant, where said.
    pub kitchen: Option<MeasureSystem>,
    /// The moment the plan is worked out for, the latest that a file gives; none means now.
    pub as_of: Option<DateTime>,
    /// The first day since which every take is written down; none means that nobody knows what was
    /// taken before.
    pub records_since: Option<Date>,
    /// Whether something is sold, so that legal maxima bind.
    pub sold: bool,
    /// Plants that something deadly is taken for, and whose recipes go home all the same: the leader
    /// asks for each by name.
    pub recipes_to_take_home: BTreeSet<String>,
    /// Who reads characters, by short name.
    pub readers: BTreeMap<String, Reader>,
    /// The walk, in order of time.
    pub stops: Vec<Stop>,
    /// The way back to its end.
    pub way_back: WayBack,
    /// What is said of emergencies.
    pub emergency: EmergencyWish,
    /// What is to be made, by short name.
    pub makes: BTreeMap<String, Make>,
    /// Contents that the outing uses in place of the herbal's, by short name.
    pub contents: BTreeMap<String, OwnContent>,
    /// Shares of a stand that the leader allows in place of the herbal's.
    pub fractions: Vec<OwnFraction>,
    /// What is said of money; none means that nobody said anything.
    pub money: Option<MoneyWish>,
}

/// Somebody who reads characters.
#[derive(Clone, Debug)]
pub struct Reader {
    /// What they are called.
    pub called: String,
    /// How well they read.
    pub level: Level,
}

/// One stop of the walk.
#[derive(Clone, Debug)]
pub struct Stop {
    /// At which site.
    pub site: String,
    /// When it begins.
    pub at: Time,
    /// How long it lasts.
    pub lasts: Duration,
    /// The way there from the stop before.
    pub walk: Option<Length>,
    /// How far that way climbs.
    pub climb: Option<Length>,
    /// The plants shown there, by scientific name.
    pub plants: Vec<String>,
}

/// Something to make.
#[derive(Clone, Debug)]
pub struct Make {
    /// Short name.
    pub name: String,
    /// What it is called.
    pub called: String,
    /// The recipe.
    pub recipe: String,
    /// Of which plant.
    pub plant: String,
    /// Of which part.
    pub part: Part,
    /// From which stands.
    pub stands: Vec<String>,
    /// From which lots, where they are there already.
    pub lots: Vec<String>,
    /// Whether the herb goes in fresh or dried; none is a question.
    pub herb: Option<HerbState>,
    /// Water in the herb as it goes in, lower and upper end; none is a question where it matters.
    pub moisture: Option<(MassFraction, MassFraction)>,
    /// Whether that is supposed, and nobody weighed it.
    pub moisture_supposed: bool,
    /// Level or heaped spoons.
    pub heap: Option<Heap>,
    /// Which of the herbal's spoons the herb is measured with.
    pub spoon: Option<String>,
    /// The stage at which the part is meant to be gathered, in the words of the part rows.
    pub stage: Option<String>,
    /// How much of the herb, as it was said.
    pub herb_amount: Option<Spoken>,
    /// How much of other ingredients.
    pub amounts: BTreeMap<What, Spoken>,
    /// The spirit in the bottle.
    pub stock: Option<AlcoholByVolume>,
    /// The strength wanted in the jar.
    pub jar: Option<AlcoholByVolume>,
    /// How much of what was strained is sweetened, as it was said.
    pub sweetened: Option<Spoken>,
    /// How much one serving is, as it was said.
    pub serving: Option<Spoken>,
    /// Whether each serving is weighed out, so that no spoon error is left.
    pub weighed: bool,
    /// Servings that each person is meant to have in a day.
    pub servings_a_day: u32,
    /// On how many days.
    pub days: u32,
    /// For whom, by short name; empty means for everybody who comes.
    pub people: Vec<String>,
    /// The first day on which it is had.
    pub on: Date,
    /// Whether it goes home in jars.
    pub taken_home: bool,
}

impl Make {
    /// Whether it is meant for this person.
    #[must_use]
    pub fn is_for(&self, participant: &str) -> bool {
        self.people.is_empty() || self.people.iter().any(|name| name == participant)
    }
}

/// A content that the outing uses in place of the herbal's.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OwnContent {
    /// Of which plant.
    pub plant: String,
    /// In which part.
    pub part: Part,
    /// Which constituent.
    pub constituent: String,
    /// Milligrams in a gram of dry herb.
    pub content: Dist,
    /// Share that goes into the drink; none means that nobody measured it.
    pub transfer: Option<Dist>,
    /// Where the figures come from, in words.
    pub source: String,
}

/// A share of a stand that the leader allows.
#[derive(Clone, Debug)]
pub struct OwnFraction {
    /// Of which part.
    pub part: Part,
    /// Of plants of which life form.
    pub life_form: LifeForm,
    /// At most this share of the crop.
    pub at_most: Fraction,
    /// After how many years it may be taken again.
    pub rest_years: u32,
}
