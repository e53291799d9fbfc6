//! What stands on a label: what it is, of what, how strong, until when, for whom not. What nobody
//! wrote down is not known, and what must not be used says so first.

mod allergens;

pub use allergens::{Allergen, Allergens};

use super::MakePlan;
use super::certainty::Certainty;
use super::people::People;
use crate::World;
use crate::outing::{Make, Wishes};
use dose::{Given, Rule, Spoken, Strictness, Tense, spoken};
use ground::{AlcoholByVolume, Answer, Brix, Finite, Form, Mass, MassFraction, Part, Text};
use jiff::civil::DateTime;
use journal::{Batch, Fitness, LabelCode, LotState, School};
use prepare::{Brew, HerbState, Keeping, Moisture, Span, What, keeping_of_dried};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// A label, with the number of its copies.
#[derive(Clone, Debug, Serialize)]
pub struct LabelPlan {
    /// What it is stuck on.
    pub on: Labelled,
    /// Short name of the lot or batch, or of the wish where nothing was made yet.
    pub name: String,
    /// The wish; none of a lot.
    pub make: Option<String>,
    /// What it is called; none of a lot, which goes by its plant.
    pub called: Option<String>,
    /// Which plants are in it.
    pub plants: Vec<LabelPlant>,
    /// Of which part; none where it is not known, or of several.
    pub part: Option<Part>,
    /// What it is made into; none of a lot.
    pub form: Option<Form>,
    /// Whether the herb is fresh or dried, where that was said.
    pub state: Option<HerbState>,
    /// How strong it is.
    pub strength: Strength,
    /// Its code; none where nothing is written down of it yet.
    pub code: Option<LabelCode>,
    /// How many are printed.
    pub copies: u32,
    /// Who sorted it.
    pub sorted: Sorted,
    /// When it was made or gathered, where that was written down.
    pub since: Option<DateTime>,
    /// How it keeps, where a rule says so.
    pub keeping: Option<Keeping>,
    /// The end of its keeping.
    pub until: Option<DateTime>,
    /// Where it was gathered: site and stand, and never where on the map.
    pub stands: Vec<LabelStand>,
    /// Which allergens it carries.
    pub allergens: Allergens,
    /// What published rows say of it to whoever reads them; of a lot, of all that is made of it.
    pub spoken: Vec<Spoken>,
    /// Whether the outing sells something.
    pub sold: bool,
    /// Why it must not be used; empty where no reason was found.
    pub do_not: Vec<Text>,
}

/// What a label is stuck on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Labelled {
    /// The bag or jar of a lot.
    Lot,
    /// A jar of a batch.
    Batch,
    /// A jar of a wish that is not made yet.
    Wish,
}

/// A plant, as a label names it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct LabelPlant {
    /// Scientific name.
    pub taxon: String,
    /// Its usual common name, where it has a sheet.
    pub common: Option<String>,
    /// Its family, where it has a sheet.
    pub family: Option<String>,
}

/// Where something was gathered.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct LabelStand {
    /// What the site is called.
    pub site: String,
    /// The stand, by its short name.
    pub stand: String,
}

/// How strong something is, as far as it is known.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Strength {
    /// Alcohol.
    #[serde(rename = "alcohol_percent_vol")]
    pub alcohol: Option<Span<AlcoholByVolume>>,
    /// Sugar, in grams for 100 g.
    #[serde(rename = "sugar_brix")]
    pub sugar: Option<Brix>,
    /// Millilitres of spirit that were poured over a gram of herb, as it was weighed.
    #[serde(rename = "spirit_ml_per_herb_g")]
    pub spirit_on_herb: Option<Finite>,
    /// Herb in one serving, as it was weighed.
    #[serde(rename = "herb_in_one_g")]
    pub herb_in_one: Option<Mass>,
    /// Water in the herb, lower and upper end.
    pub moisture: Option<(MassFraction, MassFraction)>,
    /// Whether that is supposed, and nobody weighed it.
    pub moisture_supposed: bool,
}

/// Who sorted something.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Sorted {
    /// Two people, by their initials.
    By {
        /// Their initials.
        initials: Vec<String>,
        /// When the last of it was sorted.
        at: Option<DateTime>,
    },
    /// Nobody yet, or not all of it.
    Not,
}

impl LabelPlan {
    /// Whether somebody means it by this name: that of its lot, batch or wish, or its code.
    #[must_use]
    pub fn answers_to(&self, name: &str) -> bool {
        let code = || LabelCode::read(name).ok();
        self.name == name
            || self.make.as_deref() == Some(name)
            || (self.code.is_some() && self.code == code())
    }
}

/// What labels are made of.
pub(super) struct Known<'a> {
    pub(super) world: &'a World,
    pub(super) wishes: &'a Wishes,
    pub(super) school: &'a School,
    pub(super) certainty: &'a Certainty,
    pub(super) people: &'a People<'a>,
    pub(super) worked: &'a BTreeMap<String, Answer<Brew>>,
    pub(super) makes: &'a [MakePlan],
    pub(super) tense: Tense,
}

/// A label for each batch, for each wish that nothing was made of yet, and for each lot.
pub(super) fn labels(known: &Known<'_>) -> Vec<LabelPlan> {
    let states = known.school.lot_states();
    let of_wishes = known.wishes.makes.values().flat_map(|make| {
        let batches = known.school.batches.values().filter(|(_, batch)| batch.make == make.name);
        let made: Vec<_> =
            batches.map(|(at, batch)| known.of_make(make, Some((*at, batch)), &states)).collect();
        if made.is_empty() { vec![known.of_make(make, None, &states)] } else { made }
    });
    let of_wishes: Vec<_> = of_wishes.collect();
    let lots = known.school.lots.keys();
    let of_lots: Vec<_> = lots.map(|lot| known.of_lot(lot, &states, &of_wishes)).collect();
    of_wishes.into_iter().chain(of_lots).collect()
}

impl Known<'_> {
    fn of_make(
        &self,
        make: &Make,
        made: Option<(Option<DateTime>, &Batch)>,
        states: &BTreeMap<String, LotState>,
    ) -> LabelPlan {
        let batch = made.map(|(_, batch)| batch);
        let brew = self.worked.get(&make.name).and_then(Answer::known);
        let lots = batch.map_or(&make.lots, |batch| &batch.lots);
        let keeping = brew.and_then(|brew| brew.keeping.known()).cloned();
        let since = made.and_then(|(at, _)| at);
        let cup = self.people.cup(make, self.worked.get(&make.name));
        LabelPlan {
            on: if batch.is_some() { Labelled::Batch } else { Labelled::Wish },
            name: batch.map_or(&make.name, |batch| &batch.name).clone(),
            make: Some(make.name.clone()),
            called: Some(make.called.clone()),
            plants: vec![self.plant(&make.plant)],
            part: Some(make.part),
            form: Some(self.certainty.form_of(make)).filter(|form| *form != Form::Any),
            state: brew.map(|brew| brew.state).or(make.herb),
            strength: strength(make, brew),
            code: batch.and_then(|batch| self.school.batch_code(&batch.name)),
            copies: jars(make, brew),
            sorted: self.sorted(lots, states),
            until: end(since, keeping.as_ref()),
            since,
            keeping,
            stands: self.stands_of(make, lots),
            allergens: allergens::of_brew(&make.plant, brew),
            spoken: spoken(&self.people.table, &cup, self.tense),
            sold: self.wishes.sold,
            do_not: self.do_not(make, batch),
        }
    }

    /// A lot says of itself what is said of all that is made of it.
    fn of_lot(
        &self,
        name: &str,
        states: &BTreeMap<String, LotState>,
        made: &[LabelPlan],
    ) -> LabelPlan {
        let lot = [name.to_owned()];
        let takes = self.takes(&lot);
        let parts: BTreeSet<_> = takes.iter().map(|(_, take)| take.part).collect();
        let taxa: BTreeSet<_> = takes
            .iter()
            .filter_map(|(_, take)| Some(self.school.stands.get(&take.stand)?.taxon.as_str()))
            .collect();
        let (state, strength) = self.herb_of(name);
        let since = takes.iter().map(|(at, _)| *at).min().flatten();
        let keeping = self.keeping_of(state, &strength);
        let of_it = self.users(name);
        let of_it =
            |label: &&LabelPlan| of_it.iter().any(|make| label.make.as_ref() == Some(&make.name));
        let said = made.iter().filter(of_it).flat_map(|label| label.spoken.iter().cloned());
        LabelPlan {
            on: Labelled::Lot,
            name: name.to_owned(),
            make: None,
            called: None,
            plants: taxa.iter().map(|taxon| self.plant(taxon)).collect(),
            part: parts.first().copied().filter(|_| parts.len() == 1),
            form: None,
            state,
            strength,
            code: self.school.lot_code(name),
            copies: 1,
            sorted: self.sorted(&lot, states),
            until: end(since, keeping.as_ref()),
            since,
            keeping,
            stands: self.stands(&lot),
            allergens: allergens::of_plants(taxa.iter().copied()),
            spoken: said.collect::<BTreeSet<_>>().into_iter().collect(),
            sold: self.wishes.sold,
            do_not: self
                .identity(self.certainty.lot_determined(name), self.certainty.lots_sorted(&lot)),
        }
    }

    fn plant(&self, taxon: &str) -> LabelPlant {
        let sheet = self.world.herbal.flora.sheet(taxon);
        LabelPlant {
            taxon: taxon.to_owned(),
            common: sheet.map(|sheet| sheet.usual_name().to_owned()),
            family: sheet.map(|sheet| sheet.family.clone()).filter(|family| !family.is_empty()),
        }
    }

    fn takes(&self, lots: &[String]) -> Vec<&(Option<DateTime>, journal::Take)> {
        let lots = lots.iter().filter_map(|lot| self.school.lots.get(lot));
        lots.flat_map(|lot| &lot.takes).filter_map(|take| self.school.takes.get(take)).collect()
    }

    /// The stands of lots; of a wish without any, those it names.
    fn stands_of(&self, make: &Make, lots: &[String]) -> Vec<LabelStand> {
        if lots.is_empty() { self.said_stands(make.stands.iter()) } else { self.stands(lots) }
    }

    fn stands(&self, lots: &[String]) -> Vec<LabelStand> {
        self.said_stands(self.takes(lots).iter().map(|(_, take)| &take.stand))
    }

    fn said_stands<'s>(&self, stands: impl Iterator<Item = &'s String>) -> Vec<LabelStand> {
        let said = |name: &String| {
            let site = &self.school.stands.get(name)?.site;
            let called = self.school.sites.get(site).map_or(site, |site| &site.called);
            Some(LabelStand { site: called.clone(), stand: name.clone() })
        };
        stands.filter_map(said).collect::<BTreeSet<_>>().into_iter().collect()
    }

    /// Who sorted all of these lots.
    fn sorted(&self, lots: &[String], states: &BTreeMap<String, LotState>) -> Sorted {
        let mut initials = BTreeSet::new();
        let mut last = None;
        for lot in lots {
            let Some(Fitness::Sorted { by, at }) = states.get(lot).map(|state| &state.fitness)
            else {
                return Sorted::Not;
            };
            initials.extend(by.iter().map(|name| self.initials(name)));
            last = last.max(*at);
        }
        if initials.is_empty() {
            return Sorted::Not;
        }
        Sorted::By { initials: initials.into_iter().collect(), at: last }
    }

    /// The first letters of what somebody is called.
    fn initials(&self, name: &str) -> String {
        let reader = self.wishes.readers.get(name).map(|reader| &reader.called);
        let called = reader.or(self.school.participants.get(name).map(|person| &person.called));
        let called = called.map_or(name, String::as_str);
        let firsts = called.split_whitespace().filter_map(|word| word.chars().next());
        firsts.take(4).flat_map(|first| first.to_uppercase().chain(['.'])).collect()
    }

    /// The wishes that a lot goes into.
    fn users(&self, lot: &str) -> Vec<&Make> {
        let into = |make: &&Make| {
            let batches = self.school.batches.values().map(|(_, batch)| batch);
            let mut of_it = batches.filter(|batch| batch.make == make.name);
            make.lots.iter().any(|name| name == lot)
                || of_it.any(|batch| batch.lots.iter().any(|name| name == lot))
        };
        self.wishes.makes.values().filter(into).collect()
    }

    /// Whether the herb of a lot is fresh or dried, and how moist, as the wishes say that it goes into;
    /// nothing where they do not agree.
    fn herb_of(&self, lot: &str) -> (Option<HerbState>, Strength) {
        let users = self.users(lot);
        let state = agreed(users.iter().map(|make| make.herb));
        let moisture = agreed(users.iter().map(|make| make.moisture));
        let strength = Strength {
            moisture,
            moisture_supposed: users.iter().any(|make| make.moisture_supposed),
            ..Strength::default()
        };
        (state, strength)
    }

    /// How a lot keeps: of dried herb whose moisture was weighed, by its wettest; else nobody knows.
    fn keeping_of(&self, state: Option<HerbState>, strength: &Strength) -> Option<Keeping> {
        let weighed = strength.moisture.filter(|_| !strength.moisture_supposed);
        let (_, wettest) = weighed.filter(|_| state == Some(HerbState::Dried))?;
        let moisture = Moisture::of(wettest);
        let larder = &self.world.herbal.kitchen.larder;
        keeping_of_dried(larder, *moisture.known()?).known().cloned()
    }

    /// Why a jar of a wish must not be used: the plant, the basket, the pot, and that nobody wrote down
    /// that there is any.
    fn do_not(&self, make: &Make, batch: Option<&Batch>) -> Vec<Text> {
        let plan = self.makes.iter().find(|plan| plan.name == make.name);
        let adult = plan.and_then(|plan| plan.plain_adult.as_ref());
        let withheld = adult
            .into_iter()
            .flat_map(|adult| &adult.sealed.reasons)
            .find(|reason| reason.asks == Strictness::Withhold && reason.rule != Rule::Identity);
        let withheld =
            withheld.map(|reason| Text::new("label-withheld").with("reason", reason.text.clone()));
        let identity = self
            .identity(self.certainty.determined(make, batch), self.certainty.sorted(make, batch));
        let not_made = batch.is_none().then(|| Text::new("label-not-made"));
        withheld.into_iter().chain(identity).chain(not_made).collect()
    }

    /// Why something must not be used by what the records say of plant and basket.
    fn identity(&self, determined: Given, sorted: Given) -> Vec<Text> {
        let plant = match determined {
            Given::Yes => None,
            Given::No => Some("label-ruled-out"),
            Given::RatherNot | Given::Unanswered => Some("label-not-determined"),
        };
        let basket = match sorted {
            Given::Yes => None,
            Given::No => Some("label-held"),
            Given::RatherNot | Given::Unanswered => Some("label-not-sorted"),
        };
        plant.into_iter().chain(basket).map(Text::new).collect()
    }
}

/// What all say; nothing where one says nothing, or something else.
fn agreed<T: PartialEq>(mut said: impl Iterator<Item = Option<T>>) -> Option<T> {
    let first = said.next()??;
    said.all(|other| other.as_ref() == Some(&first)).then_some(first)
}

/// A jar for each whole share of one person, where it goes home; else one pot.
fn jars(make: &Make, brew: Option<&Brew>) -> u32 {
    let share = f64::from(make.servings_a_day.saturating_mul(make.days).max(1));
    let shares =
        brew.filter(|_| make.taken_home).map(|brew| (brew.portion.exactly / share).floor());
    shares.map_or(1, |shares| shares.max(1.0) as u32)
}

fn strength(make: &Make, brew: Option<&Brew>) -> Strength {
    let alcohol = brew.and_then(|brew| brew.alcohol.known()).copied();
    Strength {
        alcohol: alcohol.filter(|span| span.high.percent() > 0.0),
        sugar: brew.map(|brew| brew.sugar).filter(|sugar| sugar.degrees() > 0.0),
        spirit_on_herb: brew.and_then(spirit_on_herb),
        herb_in_one: brew
            .map(|brew| brew.portion.one.composition.herb)
            .map(|herb| Mass::from_g(herb.g()))
            .filter(|herb| herb.g() > 0.0),
        moisture: make.moisture,
        moisture_supposed: make.moisture_supposed,
    }
}

fn spirit_on_herb(brew: &Brew) -> Option<Finite> {
    let spirit = brew.amounts.iter().filter(|helping| helping.what == What::Spirit);
    let spirit: f64 = spirit.filter_map(|helping| helping.volume).map(|volume| volume.ml()).sum();
    let herb = super::make::herb_mass(brew)?.g();
    Finite::new(spirit / herb).filter(|ratio| *ratio > Finite::ZERO)
}

/// The end of a keeping; never later than it says.
fn end(since: Option<DateTime>, keeping: Option<&Keeping>) -> Option<DateTime> {
    let minutes = keeping?.most.minutes().floor() as i64;
    since?.checked_add(jiff::Span::new().try_minutes(minutes).ok()?).ok()
}
