//! A preparation by itself: forwards from what is at hand, backwards from what is wanted.

use crate::World;
use ground::{
    AlcoholByVolume, Answer, Dimension, Fault, Faults, Heap, MeasureSystem, Place, Spoken,
};
use prepare::{Brew, Have, HerbHave, HerbState, Wanted, What, backwards, forwards};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What somebody wants to make, in their words.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct MakeOrder {
    /// The recipe.
    pub recipe: String,
    /// Fresh or dried.
    pub state: Option<HerbState>,
    /// How much of the herb.
    pub herb: Option<Spoken>,
    /// How much water is in it.
    pub moisture: Option<Spoken>,
    /// Level or heaped spoons.
    pub heap: Option<Heap>,
    /// Which of the herbal's spoons it is measured with.
    pub spoon: Option<String>,
    /// How much of other ingredients.
    pub amounts: BTreeMap<What, Spoken>,
    /// The strength of the spirit in the bottle.
    pub stock: Option<Spoken>,
    /// The strength wanted in the jar.
    pub jar: Option<Spoken>,
    /// How much of what was strained is sweetened, by weight.
    pub sweetened: Option<Spoken>,
    /// Another serving than the recipe's.
    pub serving: Option<Spoken>,
    /// Whose kitchen measures are meant.
    pub kitchen: Option<MeasureSystem>,
    /// So many servings are wanted: worked backwards.
    pub servings: Option<u32>,
}

/// A preparation.
#[derive(Clone, Debug, Serialize)]
pub struct MakeReply {
    /// What comes out, or what must be said first.
    pub brew: Answer<Brew>,
}

pub(crate) fn make(world: &World, order: &MakeOrder) -> Result<MakeReply, Faults> {
    let kitchen = &world.herbal.kitchen;
    let mut faults = Faults::none();
    let recipe = kitchen.recipes.get(&order.recipe);
    if recipe.is_none() {
        let known: Vec<ground::Arg> =
            kitchen.recipes.keys().map(|name| name.as_str().into()).collect();
        let fault =
            Fault::new("unknown-recipe", Place::entry("make", "", "recipe"), &*order.recipe);
        faults.add(fault.with("list", known));
    }
    for fault in misfits(order) {
        faults.add(fault);
    }
    let moisture = order.moisture.as_ref().map(|said| share(said, "moisture"));
    let stock = order.stock.as_ref().map(|said| strength(said, "stock"));
    let jar = order.jar.as_ref().map(|said| strength(said, "jar"));
    let [stock, jar] = [stock, jar].map(|read| read.and_then(|read| faults.note(read)));
    let moisture_percent = moisture.and_then(|read| faults.note(read));
    let have = Have {
        herb: HerbHave {
            state: order.state,
            amount: order.herb.clone(),
            moisture_percent,
            moisture_supposed: false,
            heap: order.heap,
            spoon: order.spoon.clone(),
        },
        amounts: order.amounts.clone(),
        kitchen: order.kitchen,
        stock,
        jar,
        sweetened: order.sweetened.clone(),
        serving: order.serving.clone(),
        ..Have::at(Place::entry("make", &order.recipe, ""))
    };
    let brew = recipe.map(|recipe| match order.servings {
        Some(count) => backwards(recipe, Wanted::Servings(count), &have, &kitchen.larder),
        None => forwards(recipe, &have, &kitchen.larder),
    });
    match (faults.is_empty(), brew) {
        (true, Some(brew)) => Ok(MakeReply { brew }),
        _ => Err(faults.into_iter().collect()),
    }
}

/// Amounts in units that measure something else.
fn misfits(order: &MakeOrder) -> Vec<Fault> {
    let herb = order.herb.as_ref().map(|said| (What::Herb, said));
    let said = herb.into_iter().chain(order.amounts.iter().map(|(what, said)| (*what, said)));
    let by_what = said.filter(|(what, said)| !what.is_measured_by(said));
    let by_what = by_what.map(|(what, said)| (what.word(), said));
    let sweetened = order.sweetened.as_ref().filter(|said| !said.measures(Dimension::Mass));
    let serving = order.serving.as_ref();
    let serving =
        serving.filter(|s| !s.measures(Dimension::Mass) && !s.measures(Dimension::Volume));
    let all = by_what.chain(sweetened.map(|said| ("sweetened", said)));
    let all = all.chain(serving.map(|said| ("serving", said)));
    let fault = |(field, said): (&str, &Spoken)| {
        let at = Place::entry("make", "", field);
        let fault = Fault::new("unit-does-not-fit", at, said.written.as_str());
        fault.with("why", crate::outing::other_dimension(said))
    };
    all.map(fault).collect()
}

/// A share in per cent; `10 %` and `10 % mass` both serve.
fn share(said: &Spoken, field: &str) -> Result<ground::Amount, Fault> {
    let shares = [Dimension::Number, Dimension::MassShare];
    let read = shares.into_iter().find_map(|dimension| said.resolve(dimension, None).ok());
    let fits = read.filter(|amount| amount.low >= 0.0 && amount.high <= 1.0);
    let percent = |amount: ground::Amount| ground::Amount {
        low: amount.low * 100.0,
        high: amount.high * 100.0,
    };
    fits.map(percent).ok_or_else(|| {
        Fault::new("share-wanted", Place::entry("make", "", field), said.written.as_str())
    })
}

fn strength(said: &Spoken, field: &str) -> Result<AlcoholByVolume, Fault> {
    let read = said.resolve(Dimension::AlcoholShare, None).ok();
    let fits = read.filter(|amount| amount.is_exact() && (0.0..=1.0).contains(&amount.low));
    fits.map(|amount| AlcoholByVolume::from_percent(100.0 * amount.low)).ok_or_else(|| {
        Fault::new("strength-wanted", Place::entry("make", "", field), said.written.as_str())
    })
}
