//! Working a recipe: forwards from what is at hand, backwards from what is wanted.

mod batch;
mod composition;
mod pot;
mod result;
mod tell;
mod working;

pub use composition::Composition;
pub use result::{Brew, Done, Helping, KitchenAmount, Losses, Portion, Serving, Span, Yield};
pub use tell::in_kitchen;
pub(crate) use tell::told_time;

use crate::refuse::{Known, refuse};
use crate::{EvaporationRate, HerbState, Larder, Recipe, What};
use batch::Batch;
use ground::{AlcoholByVolume, Amount, Answer, Heap, MeasureSystem, Place, Spoken, Volume};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What a person says of the brew they want to make. Nothing in it has a default: what is left out
/// follows from the recipe where that says it, and is asked where it does not.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Have {
    /// Where they said it.
    pub at: Place,
    /// The herb.
    #[serde(default)]
    pub herb: HerbHave,
    /// How much of another ingredient is at hand, where that differs from the recipe. Sugar that a
    /// recipe stirs in until it is sweet enough is all stirred in when its amount is said.
    #[serde(default)]
    pub amounts: BTreeMap<What, Spoken>,
    /// Whose spoons and cups are meant.
    #[serde(default)]
    pub kitchen: Option<MeasureSystem>,
    /// The spirit in the bottle, to be let down to what the recipe asks.
    #[serde(default)]
    pub stock: Option<AlcoholByVolume>,
    /// The strength wanted in the jar once the water of the herb has joined; the spirit poured
    /// over it is worked out.
    #[serde(default)]
    pub jar: Option<AlcoholByVolume>,
    /// What this pot on this stove loses, measured; the larder's figure otherwise.
    #[serde(default)]
    pub evaporation: Option<EvaporationRate>,
    /// How much of the strained liquid is sweetened, by weight; the rest is set aside. As the
    /// recipe says, otherwise. It is for working forwards, as is an amount of sugar to stir in:
    /// backwards, both are what is worked out.
    #[serde(default)]
    pub sweetened: Option<Spoken>,
    /// Another serving than the recipe's.
    #[serde(default)]
    pub serving: Option<Spoken>,
}

/// What a person says of the herb.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HerbHave {
    /// Fresh or dried.
    #[serde(default)]
    pub state: Option<HerbState>,
    /// How much: by weight, or by spoons as a last resort. Where the recipe measures herb by the
    /// cup and no weight of such a cup is known, it is the weight of what the recipe names.
    #[serde(default)]
    pub amount: Option<Spoken>,
    /// Share of water in it as weighed, in per cent; a range where it is doubtful.
    #[serde(default)]
    pub moisture_percent: Option<Amount>,
    /// Whether that moisture is supposed, and nobody weighed it.
    #[serde(default)]
    pub moisture_supposed: bool,
    /// Level or heaped spoons.
    #[serde(default)]
    pub heap: Option<Heap>,
    /// Which of the larder's spoons it is measured with.
    #[serde(default)]
    pub spoon: Option<String>,
}

impl Have {
    /// Nothing said yet, at this place.
    #[must_use]
    pub fn at(at: Place) -> Self {
        Self {
            at,
            herb: HerbHave::default(),
            amounts: BTreeMap::new(),
            kitchen: None,
            stock: None,
            jar: None,
            evaporation: None,
            sweetened: None,
            serving: None,
        }
    }
}

/// How much is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wanted {
    /// So many servings.
    Servings(u32),
    /// A volume of what is poured off.
    #[serde(rename = "volume_ml")]
    Volume(Volume),
}

/// What comes out of a recipe with what is at hand.
///
/// Refused where something that decides is not said: fresh or dried, level or heaped, whose spoon,
/// the weight of a cupful, the moisture where the herb's water joins the liquid.
pub fn forwards(recipe: &Recipe, have: &Have, larder: &Larder) -> Answer<Brew> {
    known_forwards(recipe, have, larder).into()
}

fn known_forwards(recipe: &Recipe, have: &Have, larder: &Larder) -> Known<Brew> {
    let batch = Batch::of(recipe, have, larder)?;
    result::brew(&batch)
}

/// What a recipe needs so that so much comes out.
///
/// Everything grows with the servings but the water or spirit, which is worked out, since a pot
/// steams off the same for few and for many. Refused as [`forwards`] is.
pub fn backwards(recipe: &Recipe, wanted: Wanted, have: &Have, larder: &Larder) -> Answer<Brew> {
    known_backwards(recipe, wanted, have, larder).into()
}

fn known_backwards(recipe: &Recipe, wanted: Wanted, have: &Have, larder: &Larder) -> Known<Brew> {
    let batch = Batch::of(recipe, have, larder)?;
    if batch.taken.is_some() || batch.stirred.is_some() {
        return Err(refuse("prepare-refused-backwards", "prepare-settle-backwards"));
    }
    let made = pot::yielded(&batch)?;
    let wanted = match wanted {
        Wanted::Servings(count) => batch.serving.base() * f64::from(count),
        Wanted::Volume(volume) => volume.ml(),
    };
    if wanted <= 0.0 {
        return Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
    }
    let scaled = batch.scaled(wanted / made);
    result::brew(&solve_liquid(scaled, wanted)?)
}

/// Halvings that leave less than one step of rounding of any volume of a kitchen.
const HALVINGS: u32 = 100;

/// The batch with the water or spirit that yields so much, by bisection: the yield rises with it.
fn solve_liquid(batch: Batch<'_>, wanted: f64) -> Known<Batch<'_>> {
    let Some(guess) = batch.liquid() else {
        return Ok(batch);
    };
    // A pot so small that the herb drinks it, or the fire, yields nothing yet.
    let short = |ml: f64| pot::yielded(&batch.with_liquid(ml)).map_or(true, |made| made < wanted);
    let (mut low, mut high) = (0.0, 2.0 * guess + 1000.0);
    while short(high) {
        high *= 2.0;
        if high > 1e9 {
            pot::yielded(&batch.with_liquid(high))?;
            return Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"));
        }
    }
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if short(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Ok(batch.with_liquid(high))
}
