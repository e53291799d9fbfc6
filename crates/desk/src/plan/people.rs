//! Who may have it, and how much? Each wish decided on for each person.

use super::certainty::{Certainty, of_each};
use super::counting::Counting;
use super::make::herb_mass;
use crate::World;
use crate::outing::{Make, OwnContent, Wishes};
use dose::{
    AgeBand, Case, Content, ContentBasis, ContentKind, Cup, Decision, Given, Held, Herb,
    HowMeasured, Intakes, Person, Portion, SubstanceId, Table, Tense, Transfer, decide_in,
};
use ground::{Answer, Condition, Dist, Faults, Finite, MassFraction, Sourcing, Standing};
use herbal::Herbal;
use journal::{Batch, School, Word};
use prepare::{Brew, HerbState};
use std::collections::BTreeMap;
use std::sync::Arc;

/// How far a ladle or a hand may lie off its share of a pot that nobody weighs out: *assumed*.
const SHARE_OF_POT: (f64, f64) = (0.8, 1.2);

/// What everybody's decisions rest on.
#[derive(Clone)]
pub(super) struct People<'a> {
    pub(super) wishes: &'a Wishes,
    pub(super) school: &'a School,
    pub(super) table: Arc<Table>,
    pub(super) tense: Tense,
    /// Whether the day of the outing lies behind.
    pub(super) over: bool,
    pub(super) certainty: &'a Certainty,
    /// The version of the herbal.
    pub(super) herbal: &'a str,
}

/// The decisions of one wish, by participant.
pub(super) type Decisions = BTreeMap<String, Decision>;

impl<'a> People<'a> {
    /// Everybody who comes, at the moment of the outing or of the world.
    pub(super) fn of(
        world: &'a World,
        wishes: &'a Wishes,
        school: &'a School,
        certainty: &'a Certainty,
        table: Arc<Table>,
    ) -> Self {
        let today = wishes.as_of.unwrap_or(world.now).date();
        let tense = if today < wishes.date { Tense::Before } else { Tense::OnTheDay };
        let over = today > wishes.date;
        let herbal = &world.herbal_version;
        Self { wishes, school, table, tense, over, certainty, herbal }
    }

    /// Decides on every wish for everybody it is meant for, each alone.
    pub(super) fn decide(
        &self,
        worked: &BTreeMap<String, Answer<Brew>>,
        intakes: &mut Intakes,
    ) -> Result<BTreeMap<String, Decisions>, Faults> {
        let cups: BTreeMap<&str, Cup> = self
            .wishes
            .makes
            .values()
            .map(|make| (make.name.as_str(), self.cup(make, worked.get(&make.name))))
            .collect();
        let mut decisions: BTreeMap<String, Decisions> = BTreeMap::new();
        for participant in self.school.participants.keys() {
            let person = self.person(participant);
            for make in self.wishes.makes.values().filter(|make| make.is_for(participant)) {
                let Some(cup) = cups.get(make.name.as_str()) else { continue };
                let beside = self.beside(participant, make, &cups);
                let case = self.case(&person, cup, &beside);
                let decision = match self.flag(participant, &case) {
                    Some(flag) => self.under_flag(flag, &case, intakes)?,
                    None => decide_in(&case, intakes)?,
                };
                decisions
                    .entry(make.name.clone())
                    .or_default()
                    .insert(participant.clone(), decision);
            }
        }
        Ok(decisions)
    }

    /// What each wish alone would be for a grown-up without any answer that matters, at the body mass
    /// that an unanswered one counts as. It is about nobody who comes: it says what pot and plant do.
    pub(super) fn plain_adult(
        &self,
        worked: &BTreeMap<String, Answer<Brew>>,
        intakes: &mut Intakes,
    ) -> Result<BTreeMap<String, Decision>, Faults> {
        let person = plain_adult();
        let mut decisions = BTreeMap::new();
        for make in self.wishes.makes.values() {
            let cup = self.cup(make, worked.get(&make.name));
            decisions
                .insert(make.name.clone(), decide_in(&self.case(&person, &cup, &[]), intakes)?);
        }
        Ok(decisions)
    }

    /// The sums of [`Self::plain_adult`] that would be others if as much passed over as is supposed
    /// where nobody measured it. They show what the supposition would mean, and decide nothing.
    pub(super) fn as_supposed(
        &self,
        worked: &BTreeMap<String, Answer<Brew>>,
        adults: &BTreeMap<String, Decision>,
        counting: &mut Counting,
    ) -> Result<BTreeMap<String, Vec<Held>>, Faults> {
        let table = counting.supposed.table();
        let mut wishes = self.wishes.clone();
        let of_it = |make: &Make, plant: &String| table.tie(plant, &make.plant).is_some();
        wishes.makes.retain(|_, make| counting.supposed_of.iter().any(|plant| of_it(make, plant)));
        let people = People { wishes: &wishes, table, ..self.clone() };
        let supposed = people.plain_adult(worked, &mut counting.supposed)?;
        let others = |(make, decision): (String, Decision)| {
            let counted = adults.get(&make).map(|adult| &adult.sealed.held);
            let same = |held: &Held| counted.is_some_and(|counted| counted.contains(held));
            let held = decision.sealed.held.into_iter().filter(|held| !same(held)).collect();
            (make, held)
        };
        Ok(supposed.into_iter().map(others).collect())
    }

    /// A cup for a person, with everything that they have beside it. What was made is decided on as it is,
    /// on whatever day: nothing of it is still to come.
    pub(super) fn case<'c>(
        &'c self,
        person: &'c Person,
        cup: &'c Cup,
        beside: &'c [Cup],
    ) -> Case<'c> {
        let made = self.batches_of(&cup.batch).next().is_some();
        let tense = if made { Tense::OnTheDay } else { self.tense };
        let sold = self.wishes.sold;
        Case { table: &self.table, person, cup, beside, tense, sold }
    }

    /// What else is planned for a person on days that this wish is had.
    pub(super) fn beside(
        &self,
        participant: &str,
        make: &Make,
        cups: &BTreeMap<&str, Cup>,
    ) -> Vec<Cup> {
        let others = self.wishes.makes.values().filter(|other| {
            other.name != make.name && other.is_for(participant) && same_days(make, other)
        });
        others.filter_map(|other| cups.get(other.name.as_str()).cloned()).collect()
    }

    pub(super) fn person(&self, participant: &str) -> Person {
        let Some(answers) = self.school.answers.get(participant).map(|sealed| sealed.open()) else {
            return Person { id: participant.to_owned(), ..Person::default() };
        };
        let rest = Condition::ALL.iter().map(|condition| (*condition, given(answers.rest)));
        let said = answers.said.iter().map(|(condition, word)| (*condition, given(*word)));
        Person {
            id: participant.to_owned(),
            age: answers.age.map(AgeBand::of_years),
            body_mass: answers.body_mass_g,
            said: rest.chain(said).collect(),
        }
    }

    /// A serving of a wish, as one person takes it. What is not known of it stays unknown.
    pub(super) fn cup(&self, make: &Make, brew: Option<&Answer<Brew>>) -> Cup {
        let brew = brew.and_then(Answer::known);
        let batches: Vec<_> = self.batches_of(&make.name).collect();
        let one = brew.map(|brew| &brew.portion.one);
        let held = |id: &str, mass: f64| {
            Finite::new(mass).filter(|m| *m > Finite::ZERO).map(|m| (id.into(), Dist::Exact(m)))
        };
        let holds: BTreeMap<SubstanceId, Dist> = one
            .into_iter()
            .flat_map(|one| {
                let ethanol = held("ethanol", one.composition.ethanol.g());
                let sugar = held("free-sugars", one.composition.sugar.g());
                [ethanol, sugar].into_iter().flatten()
            })
            .collect();
        Cup {
            batch: make.name.clone(),
            cook: batches.first().map_or(&self.wishes.leader, |batch| &batch.cook).clone(),
            form: self.certainty.form_of(make),
            herbs: vec![self.herb(make, brew, &batches)],
            holds,
            volume: one.and_then(|one| one.volume),
            mass: one.map(|one| one.mass),
            servings_a_day: make.servings_a_day,
            days: make.days,
            days_before: 0,
        }
    }

    /// What was made of a wish.
    fn batches_of(&self, make: &str) -> impl Iterator<Item = &'a Batch> {
        let all = self.school.batches.values().map(|(_, batch)| batch);
        all.filter(move |batch| batch.make == make)
    }

    /// What goes into a wish. A serving may be of any of its batches: the worst of them counts.
    fn herb(&self, make: &Make, brew: Option<&Brew>, batches: &[&Batch]) -> Herb {
        let lots: Vec<_> = if batches.is_empty() {
            make.lots.iter().map(String::as_str).collect()
        } else {
            batches.iter().flat_map(|batch| &batch.lots).map(String::as_str).collect()
        };
        let lot = (!lots.is_empty()).then(|| lots.join("+"));
        let certainty = self.certainty;
        Herb {
            taxon: make.plant.clone(),
            part: make.part,
            lot: lot.unwrap_or_else(|| format!("planned-{}", make.name)),
            portion: portion(make, brew),
            moisture: make.moisture.and_then(moisture),
            moisture_supposed: make.moisture_supposed,
            determined: of_each(batches, |batch| certainty.determined(make, batch)),
            sorted: of_each(batches, |batch| certainty.sorted(make, batch)),
            stages: certainty.stages_of_each(make, batches),
            planned_stage: make.stage.clone(),
        }
    }
}

/// A grown-up without any answer that matters, at the body mass that an unanswered one counts as.
pub(super) fn plain_adult() -> Person {
    let said = Condition::ALL.iter().map(|condition| (*condition, Given::No)).collect();
    Person { id: "plain-adult".to_owned(), age: Some(AgeBand::Adult), body_mass: None, said }
}

/// The herb behind one serving: all that went into the pot, shared by its servings. What the spent
/// herb keeps back is counted too, since its constituents may have gone over.
fn portion(make: &Make, brew: Option<&Brew>) -> Portion {
    let grams = brew.and_then(|brew| {
        let share = herb_mass(brew)?.g() / brew.portion.exactly;
        let (low, high) = (share * SHARE_OF_POT.0, share * SHARE_OF_POT.1);
        let dist =
            if make.weighed { Dist::exact(share) } else { Dist::triangular(low, share, high) };
        dist.ok()
    });
    let state = match brew.map(|brew| brew.state).or(make.herb) {
        Some(HerbState::Fresh) => dose::HerbState::Fresh,
        // Dried herb is stronger by weight: what nobody said counts as dried.
        Some(HerbState::Dried) | None => dose::HerbState::Dried,
    };
    let how = if make.weighed { HowMeasured::Weighed } else { HowMeasured::Spooned };
    Portion { state, grams, how }
}

fn moisture((low, high): (MassFraction, MassFraction)) -> Option<Dist> {
    Dist::uniform(low.share(), high.share()).ok()
}

fn given(word: Word) -> Given {
    match word {
        Word::Yes => Given::Yes,
        Word::No => Given::No,
        Word::RatherNot => Given::RatherNot,
        Word::Unanswered => Given::Unanswered,
    }
}

/// Whether two wishes are had on some day together.
pub(super) fn same_days(one: &Make, other: &Make) -> bool {
    let last = |make: &Make| {
        let days = i64::from(make.days.saturating_sub(1));
        make.on.checked_add(jiff::Span::new().days(days)).unwrap_or(make.on)
    };
    one.on <= last(other) && other.on <= last(one)
}

/// The table of the herbal, with the contents that the outing uses instead.
pub(super) fn table(herbal: &Herbal, wishes: &Wishes) -> Table {
    let mut table = herbal.uses.table.clone();
    for (name, own) in &wishes.contents {
        let substance = SubstanceId(own.constituent.clone());
        table.contents.retain(|row| {
            let same = row.taxon == own.plant && row.substance == substance;
            !(same && row.parts.iter().any(|part| part.meets(own.part)))
        });
        table.contents.push(content(name, own, substance));
    }
    table
}

/// A content that the outing brought along. A transfer that it gives counts as measured, since the
/// outing names where it comes from; none given counts as all.
fn content(name: &str, own: &OwnContent, substance: SubstanceId) -> Content {
    let transfer = own.transfer.clone().map(|share| Transfer { share, measured: true });
    Content {
        id: name.to_owned(),
        taxon: own.plant.clone(),
        parts: vec![own.part],
        forms: Vec::new(),
        substance,
        kind: ContentKind::Plant,
        basis: ContentBasis::Dry,
        amount: Some(own.content.clone()),
        only_high: false,
        averages: false,
        water: transfer.clone(),
        ethanol: transfer,
        note: None,
        from: Sourcing { standing: Standing::Published, sources: vec![own.source.as_str().into()] },
    }
}
