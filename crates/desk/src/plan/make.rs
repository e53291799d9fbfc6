//! Will it keep, and how strong is it? Each wish worked through its recipe.

use crate::outing::{Make, Wishes};
use ground::{Amount, Answer, Fresh, Mass, MassFraction, Part, Place, Text};
use herbal::Herbal;
use prepare::{Brew, Have, HerbHave, HerbState, Wanted, backwards, forwards};
use std::collections::BTreeMap;

/// Works a wish through its recipe: forwards from the herb that was said, backwards from the
/// servings that are wanted.
pub(super) fn work(wishes: &Wishes, herbal: &Herbal, make: &Make, people: u32) -> Answer<Brew> {
    let have = have(wishes, make);
    let Some(recipe) = herbal.kitchen.recipes.get(&make.recipe) else {
        return Answer::refused(
            Text::new("plan-no-recipe").with("recipe", make.recipe.as_str()),
            Text::new("plan-settle-no-recipe"),
        );
    };
    let servings = people.saturating_mul(make.servings_a_day).saturating_mul(make.days);
    if have.herb.amount.is_some() || servings == 0 {
        forwards(recipe, &have, &herbal.kitchen.larder)
    } else {
        backwards(recipe, Wanted::Servings(servings), &have, &herbal.kitchen.larder)
    }
}

/// What the outing says of the ingredients of a wish.
fn have(wishes: &Wishes, make: &Make) -> Have {
    Have {
        herb: HerbHave {
            state: make.herb,
            amount: make.herb_amount.clone(),
            moisture_percent: make.moisture.map(in_percent),
            moisture_supposed: make.moisture_supposed,
            heap: make.heap,
            spoon: make.spoon.clone(),
        },
        amounts: make.amounts.clone(),
        kitchen: wishes.kitchen,
        stock: make.stock,
        jar: make.jar,
        sweetened: make.sweetened.clone(),
        serving: make.serving.clone(),
        ..Have::at(Place::entry("make", &make.name, "amounts"))
    }
}

fn in_percent((low, high): (MassFraction, MassFraction)) -> Amount {
    Amount { low: low.percent(), high: high.percent() }
}

/// What is asked of a part of a stand.
pub(super) type WantedOf = BTreeMap<(String, Part), Answer<Mass<Fresh>>>;

/// How much fresh herb of which part the wishes ask of each stand; refused where one of them does not
/// say. A wish that names several stands asks the whole of each: which of them gives how much is the
/// leader's choice on the day.
pub(super) fn wanted(
    wishes: &Wishes,
    herbal: &Herbal,
    worked: &BTreeMap<String, Answer<Brew>>,
) -> WantedOf {
    let mut wanted = WantedOf::new();
    for make in wishes.makes.values() {
        let fresh = fresh_wanted(make, herbal, worked.get(&make.name));
        for stand in &make.stands {
            let sum = wanted.entry((stand.clone(), make.part));
            let sum = sum.or_insert(Answer::Known(Mass::ZERO));
            *sum = sum.as_ref().and_then(|sum| fresh.as_ref().map(|fresh| *sum + *fresh));
        }
    }
    wanted
}

/// The fresh herb that a wish takes. Of dried herb it is the most that the published yields of drying
/// leave possible.
fn fresh_wanted(make: &Make, herbal: &Herbal, brew: Option<&Answer<Brew>>) -> Answer<Mass<Fresh>> {
    let said = |id: &str| Text::new(id).with("make", make.called.as_str());
    let known = brew.and_then(Answer::known);
    let Some((brew, herb)) = known.and_then(|brew| Some((brew, herb_mass(brew)?))) else {
        return Answer::refused(said("plan-wanted-open"), said("plan-settle-wanted-open"));
    };
    match brew.state {
        HerbState::Fresh => Answer::Known(Mass::from_g(herb.g())),
        HerbState::Dried => {
            let driest = make.moisture.map_or(0.0, |(low, _)| low.share());
            let solids = herb.g() * (1.0 - driest);
            let wettest = herbal.kitchen.fresh_moisture(&make.plant, make.part);
            wettest.map(|range| Mass::from_g(solids / (1.0 - range.high.share().share())))
        }
    }
}

/// The herb that goes in, as it is weighed.
pub(super) fn herb_mass(brew: &Brew) -> Option<Mass> {
    let herb = brew.amounts.iter().find(|helping| helping.what == prepare::What::Herb)?;
    Some(herb.mass.middle)
}
