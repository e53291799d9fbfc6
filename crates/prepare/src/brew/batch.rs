//! A recipe with amounts: what the recipe says and what a person has, resolved to grams and
//! millilitres.

use super::Have;
use crate::alcohol::{Strength, menstruum_for, with_amount};
use crate::recipe::Ingredient;
use crate::refuse::{Known, refuse, with};
use crate::{
    EvaporationRate, HerbBasis, HerbState, Larder, Lid, Moisture, MoistureRange, Recipe, Retention,
    Step, What,
};
use ground::{
    AlcoholByVolume, Amount, Dimension, Heap, Mass, MassFraction, SaidUnit, Spoken, Sugar, Unit,
    Volume,
};

/// A recipe with its amounts.
#[derive(Clone, Debug)]
pub(super) struct Batch<'a> {
    pub(super) recipe: &'a Recipe,
    pub(super) have: &'a Have,
    pub(super) larder: &'a Larder,
    pub(super) state: HerbState,
    /// Share of water in the herb; none where it was not said and nothing rests on it.
    pub(super) moisture: Option<MoistureRange>,
    pub(super) basis: HerbBasis,
    pub(super) items: Vec<Item<'a>>,
    pub(super) serving: ServingSize,
    /// How much of the strained liquid is sweetened, where the person said so.
    pub(super) taken: Option<Mass>,
    /// How much sugar is stirred in, where the person said so.
    pub(super) stirred: Option<Mass<Sugar>>,
}

/// One ingredient with its amount.
#[derive(Clone, Debug)]
pub(super) struct Item<'a> {
    pub(super) ingredient: &'a Ingredient,
    /// Grams of herb, sugar and other food, millilitres of water and spirit: least, middle, most.
    pub(super) amount: [f64; 3],
    pub(super) strength: Strength,
    /// Whether the person said so, or the recipe.
    pub(super) said: bool,
}

/// What one person is handed.
#[derive(Clone, Copy, Debug)]
pub(super) enum ServingSize {
    Volume(Volume),
    Mass(Mass),
}

impl ServingSize {
    /// Millilitres or grams.
    pub(super) fn base(self) -> f64 {
        match self {
            Self::Volume(volume) => volume.ml(),
            Self::Mass(mass) => mass.g(),
        }
    }
}

impl<'a> Batch<'a> {
    pub(super) fn of(recipe: &'a Recipe, have: &'a Have, larder: &'a Larder) -> Known<Self> {
        let basis = basis(recipe, larder)?;
        let state = state(recipe, have)?;
        let mut batch = Self {
            recipe,
            have,
            larder,
            state,
            moisture: moisture(recipe, have, basis, state)?,
            basis,
            items: Vec::new(),
            serving: serving(recipe, have)?,
            taken: have.sweetened.as_ref().map(grams).transpose()?,
            stirred: stirred(recipe, have)?,
        };
        only_what_goes_in(recipe, have)?;
        batch.items = batch.resolved()?;
        batch.set_jar()?;
        Ok(batch)
    }

    fn resolved(&self) -> Known<Vec<Item<'a>>> {
        let factor = self.factor()?;
        self.recipe.ingredients().map(|ingredient| self.item(ingredient, factor)).collect()
    }

    /// How many times the recipe is made: by the first ingredient whose amount was said. The weight
    /// of a cupful that nobody has weighed says nothing about it.
    fn factor(&self) -> Known<f64> {
        for ingredient in self.recipe.ingredients() {
            let Some(said) = self.said(ingredient.what) else {
                continue;
            };
            let [_, said, _] = self.grams_or_ml(ingredient.what, said)?;
            return match self.grams_or_ml(ingredient.what, &ingredient.amount) {
                Ok([_, written, _]) => Ok(said / written),
                Err(_) if ingredient.what == What::Herb => Ok(1.0),
                Err(refusal) => Err(refusal),
            };
        }
        Ok(1.0)
    }

    fn said(&self, what: What) -> Option<&'a Spoken> {
        match what {
            What::Herb => self.have.herb.amount.as_ref(),
            _ => self.have.amounts.get(&what),
        }
    }

    fn item(&self, ingredient: &'a Ingredient, factor: f64) -> Known<Item<'a>> {
        let said = self.said(ingredient.what);
        let amount = match said {
            Some(said) => self.grams_or_ml(ingredient.what, said)?,
            None => self
                .grams_or_ml(ingredient.what, &ingredient.amount)?
                .map(|written| written * factor),
        };
        Ok(Item { ingredient, amount, strength: strength(ingredient)?, said: said.is_some() })
    }

    fn grams_or_ml(&self, what: What, said: &Spoken) -> Known<[f64; 3]> {
        let kitchen = self.have.kitchen;
        let amount = match (what, said.unit) {
            (What::Herb, SaidUnit::Kitchen(_)) => self.spoonfuls(said)?,
            (What::Herb | What::Sugar | What::Other, _) => {
                three(said.resolve(Dimension::Mass, kitchen)?)
            }
            (What::Water | What::Spirit, _) => three(said.resolve(Dimension::Volume, kitchen)?),
        };
        let [low, ..] = amount;
        if low > 0.0 {
            return Ok(amount);
        }
        Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"))
    }

    /// Grams of herb in spoons or cups: the last resort.
    fn spoonfuls(&self, said: &Spoken) -> Known<[f64; 3]> {
        let asked = |why: &str, settle: &str| {
            let name = self.herb_name();
            with(with(refuse(why, settle), "written", said.written.as_str()), "herb", name)
        };
        let herb = &self.have.herb;
        let Some(spoon) = herb.spoon.as_ref().and_then(|id| self.larder.spoons.get(id)) else {
            return Err(asked("prepare-refused-no-weight", "prepare-settle-weigh"));
        };
        match herb.heap {
            Some(Heap::Level) => {}
            Some(Heap::Heaped) => {
                return Err(asked("prepare-refused-heaped", "prepare-settle-weigh"));
            }
            None => return Err(asked("prepare-refused-heap", "prepare-settle-heap")),
        }
        let volume = three(said.resolve(Dimension::Volume, self.have.kitchen)?);
        let weight = spoon.grams_per_ml()?;
        let times = |(volume, weight): (f64, f64)| volume * weight;
        let mut grams = [0.0; 3];
        for (grams, pair) in grams.iter_mut().zip(volume.into_iter().zip(weight)) {
            *grams = times(pair);
        }
        Ok(grams)
    }

    fn herb_name(&self) -> &str {
        let herb = self.recipe.ingredients().find(|i| i.what == What::Herb);
        herb.and_then(|i| i.name.as_deref()).unwrap_or("herb")
    }

    /// The spirit to pour so that the jar ends at the strength wanted.
    fn set_jar(&mut self) -> Known<()> {
        let Some(wanted) = self.have.jar else {
            return Ok(());
        };
        let wanted = Strength::by_volume(wanted).ok()?;
        let herb = Mass::<ground::Any>::from_g(self.grams(What::Herb));
        let joins = self.basis == HerbBasis::Solids;
        let water = match self.moisture {
            Some(moisture) if joins => moisture.middle().water(herb),
            _ => Mass::ZERO,
        };
        let Some(spirit) = self.items.iter_mut().find(|i| i.ingredient.what == What::Spirit) else {
            return Err(refuse("prepare-refused-no-spirit", "prepare-settle-no-spirit"));
        };
        let [_, ml, _] = spirit.amount;
        spirit.strength = menstruum_for(Volume::from_ml(ml), water, wanted).ok()?;
        Ok(())
    }

    /// Grams, or millilitres, of an ingredient in the middle of its range; none of what the recipe
    /// does not have.
    pub(super) fn grams(&self, what: What) -> f64 {
        let found = self.items.iter().find(|item| item.ingredient.what == what);
        found.map_or(0.0, |item| {
            let [_, middle, _] = item.amount;
            middle
        })
    }

    /// The water or spirit that is worked out, in millilitres.
    pub(super) fn liquid(&self) -> Option<f64> {
        self.items.iter().find(|item| item.is_liquid()).map(|item| {
            let [_, middle, _] = item.amount;
            middle
        })
    }

    /// The same with so much water or spirit.
    pub(super) fn with_liquid(&self, ml: f64) -> Self {
        let mut batch = self.clone();
        if let Some(item) = batch.items.iter_mut().find(|item| item.is_liquid()) {
            item.amount = [ml; 3];
        }
        batch
    }

    /// The same with so many times of everything.
    pub(super) fn scaled(&self, factor: f64) -> Self {
        let mut batch = self.clone();
        for item in &mut batch.items {
            item.amount = item.amount.map(|amount| amount * factor);
        }
        batch
    }

    /// What the pot loses: as measured on this stove, else as the larder has it.
    pub(super) fn rate(&self, lid: Lid) -> Known<EvaporationRate> {
        let stove = self.larder.stove.as_ref();
        let open = self.have.evaporation.or(stove.map(|stove| stove.rate(Lid::Off)));
        let share = match lid {
            Lid::Off => Some(1.0),
            Lid::On => stove.map(|stove| stove.covered.value.share()),
        };
        match (open, share) {
            (Some(open), Some(share)) => {
                Ok(EvaporationRate::from_ml_per_minute(open.ml_per_minute() * share))
            }
            _ => Err(refuse("prepare-refused-no-rate", "prepare-settle-no-rate")),
        }
    }
}

impl Item<'_> {
    fn is_liquid(&self) -> bool {
        matches!(self.ingredient.what, What::Water | What::Spirit)
    }
}

/// Least, middle and most of an amount.
fn three(amount: Amount) -> [f64; 3] {
    [amount.low, 0.5 * (amount.low + amount.high), amount.high]
}

fn strength(ingredient: &Ingredient) -> Known<Strength> {
    let Some(said) = &ingredient.strength else {
        return Ok(Strength::NONE);
    };
    let share = said.resolve(Dimension::AlcoholShare, None)?;
    let [_, middle, _] = three(share);
    Strength::by_volume(AlcoholByVolume::from_percent(middle * 100.0)).ok()
}

fn state(recipe: &Recipe, have: &Have) -> Known<HerbState> {
    let herb = recipe.ingredients().find(|i| i.what == What::Herb);
    let written = herb.and_then(|herb| herb.state);
    match (written, have.herb.state) {
        (Some(written), Some(said)) if written != said => {
            let why = refuse("prepare-refused-other-state", "prepare-settle-other-state");
            let why = with(why, "said", said.word());
            Err(with(why, "written", written.word()))
        }
        (Some(state), _) | (None, Some(state)) => Ok(state),
        (None, None) => {
            Err(refuse("prepare-refused-fresh-or-dried", "prepare-settle-fresh-or-dried"))
        }
    }
}

/// The weight by which the spent herb keeps liquid: the first row that pours off says it, and the
/// others must agree. What is not poured off keeps all its water.
fn basis(recipe: &Recipe, larder: &Larder) -> Known<HerbBasis> {
    let mut basis = None;
    for name in recipe.holds() {
        let found = retention(larder, name)?.basis;
        if basis.is_some_and(|known| known != found) {
            return Err(with(
                refuse("prepare-refused-two-bases", "prepare-settle-two-bases"),
                "holds",
                name,
            ));
        }
        basis = Some(found);
    }
    Ok(basis.unwrap_or(HerbBasis::Weighed))
}

/// A row of the larder.
pub(super) fn retention<'a>(larder: &'a Larder, name: &str) -> Known<&'a Retention> {
    larder.retentions.get(name).ok_or_else(|| {
        let why = refuse("prepare-refused-no-retention", "prepare-settle-no-retention");
        with(why, "holds", name)
    })
}

/// Between dried herb, at 8 to 15 % of water, and fresh, from 50 % of bark up.
const NEITHER_FRESH_NOR_DRIED: f64 = 0.25;

fn moisture(
    recipe: &Recipe,
    have: &Have,
    basis: HerbBasis,
    state: HerbState,
) -> Known<Option<MoistureRange>> {
    let dries = recipe.steps.iter().any(|step| matches!(step, Step::Dry { .. }));
    let Some(Amount { low, high }) = have.herb.moisture_percent else {
        if dries || basis == HerbBasis::Solids {
            return Err(refuse(
                "prepare-refused-moisture-unknown",
                "prepare-settle-moisture-unknown",
            ));
        }
        return Ok(None);
    };
    let share = MassFraction::from_percent;
    let range = MoistureRange::between(share(low), share(high)).ok()?;
    let fits = match state {
        HerbState::Fresh => range.low.share().share() >= NEITHER_FRESH_NOR_DRIED,
        HerbState::Dried => range.high.share().share() <= NEITHER_FRESH_NOR_DRIED,
    };
    if fits {
        return Ok(Some(range));
    }
    let why = refuse("prepare-refused-moisture-of-state", "prepare-settle-moisture-of-state");
    let why = with_amount(why, "least", low, Unit::Percent);
    Err(with(with_amount(why, "most", high, Unit::Percent), "state", state.word()))
}

/// The sugar that is at hand for a recipe that stirs it in until it is sweet enough.
fn stirred(recipe: &Recipe, have: &Have) -> Known<Option<Mass<Sugar>>> {
    let said = have.amounts.get(&What::Sugar).filter(|_| !recipe.takes(What::Sugar));
    Ok(said.map(grams).transpose()?.map(|mass| Mass::from_g(mass.g())))
}

fn grams(said: &Spoken) -> Known<Mass> {
    let [low, middle, _] = three(said.resolve(Dimension::Mass, None)?);
    if low > 0.0 {
        return Ok(Mass::from_g(middle));
    }
    Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"))
}

/// Refuses what is said of something that the recipe has no use for: nothing said is passed over.
fn only_what_goes_in(recipe: &Recipe, have: &Have) -> Known<()> {
    let used = |what: What| recipe.takes(what) || (what == What::Sugar && recipe.dissolves());
    let sweetened = have.sweetened.as_ref().filter(|_| !recipe.dissolves()).map(|_| What::Sugar);
    let stock = have.stock.map(|_| What::Spirit);
    let said = have.amounts.keys().copied().chain(stock);
    match said.filter(|what| !used(*what)).chain(sweetened).next() {
        None => Ok(()),
        Some(what) => {
            let why = refuse("prepare-refused-no-use", "prepare-settle-no-use");
            Err(with(why, "what", what.word()))
        }
    }
}

fn serving(recipe: &Recipe, have: &Have) -> Known<ServingSize> {
    let said = have.serving.as_ref().unwrap_or(&recipe.serving);
    let by_mass = match said.unit {
        SaidUnit::Fixed(unit) => unit.dimension() == Dimension::Mass,
        SaidUnit::Kitchen(_) => false,
    };
    let size = if by_mass {
        let [_, g, _] = three(said.resolve(Dimension::Mass, have.kitchen)?);
        ServingSize::Mass(Mass::from_g(g))
    } else {
        let [_, ml, _] = three(said.resolve(Dimension::Volume, have.kitchen)?);
        ServingSize::Volume(Volume::from_ml(ml))
    };
    if size.base() > 0.0 {
        return Ok(size);
    }
    Err(refuse("prepare-refused-nothing", "prepare-settle-nothing"))
}

/// One way the doubtful inputs may turn out.
#[derive(Clone, Copy, Debug)]
pub(super) struct Corner {
    /// Herb as weighed, in grams.
    pub(super) herb: Mass,
    pub(super) moisture: Option<Moisture>,
}

impl Batch<'_> {
    /// The middle, then every end of weight with every end of moisture. Each result moves one way
    /// with each of the two, so that its own ends lie among these.
    pub(super) fn corners(&self) -> (Corner, Vec<Corner>) {
        let herb = self.items.iter().find(|i| i.ingredient.what == What::Herb);
        let [low, middle, high] = herb.map_or([0.0; 3], |herb| herb.amount);
        let corner =
            |g: f64, moisture: Option<Moisture>| Corner { herb: Mass::from_g(g), moisture };
        let ends = [low, high].into_iter().flat_map(|g| {
            let range = self.moisture;
            [range.map(|r| r.low), range.map(|r| r.high)].map(|end| corner(g, end))
        });
        let middle = corner(middle, self.moisture.map(MoistureRange::middle));
        (middle, ends.collect())
    }
}
