//! Will it keep, and how strong is it? Each wish worked through its recipe.

use crate::outing::{Make, Wishes};
use ground::{Amount, Answer, Fresh, Mass, MassFraction, Part, Place};
use herbal::Herbal;
use prepare::{Brew, Have, HerbHave, HerbState, Wanted, backwards, forwards};
use std::collections::BTreeMap;

/// Works a wish through its recipe: forwards from the herb that was said, backwards from the
/// servings that are wanted.
pub(super) fn work(wishes: &Wishes, herbal: &Herbal, make: &Make, people: u32) -> Answer<Brew> {
    let have = have(wishes, make);
    let Some(recipe) = herbal.kitchen.recipes.get(&make.recipe) else {
        return Answer::refused(
            ground::Text::new("plan-no-recipe").with("recipe", make.recipe.as_str()),
            ground::Text::new("plan-settle-no-recipe"),
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

/// How much fresh herb of which part the wishes ask of each stand. A wish that names several stands
/// asks the whole of each: which of them gives how much is the leader's choice on the day.
pub(super) fn wanted(
    wishes: &Wishes,
    worked: &BTreeMap<String, Answer<Brew>>,
) -> BTreeMap<(String, Part), Mass<Fresh>> {
    let mut wanted = BTreeMap::new();
    for make in wishes.makes.values() {
        let herb = worked.get(&make.name).and_then(|brew| herb_mass(brew.known()?));
        let fresh = herb.filter(|_| make.herb == Some(HerbState::Fresh));
        for stand in &make.stands {
            let sum = wanted.entry((stand.clone(), make.part)).or_insert(Mass::ZERO);
            *sum += Mass::from_g(fresh.map_or(0.0, Mass::g));
        }
    }
    wanted
}

/// The herb that goes in, as it is weighed.
pub(super) fn herb_mass(brew: &Brew) -> Option<Mass> {
    let herb = brew.amounts.iter().find(|helping| helping.what == prepare::What::Herb)?;
    Some(herb.mass.middle)
}
