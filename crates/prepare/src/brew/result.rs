//! What a brew is once it is worked out.

use super::batch::{Batch, ServingSize};
use super::pot::{Pot, run};
use super::{Composition, tell, working};
use crate::alcohol::Pour;
use crate::keeping::{Strengths, keeping};
use crate::refuse::{Known, refuse};
use crate::sugar::WaterActivity;
use crate::{HerbState, Keeping, KitchenNote, What};
use ground::{
    AlcoholByVolume, Answer, Brix, Duration, Form, KitchenMeasure, Mass, PerVolume, Text, Volume,
    Water, Working,
};
use serde::{Deserialize, Serialize};

/// A number with its ends: how it turns out when the doubtful inputs turn out least and most.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Span<T> {
    /// Least.
    pub low: T,
    /// With every doubtful input in the middle of its range.
    pub middle: T,
    /// Most.
    pub high: T,
}

/// What is handed out in all.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Yield {
    /// A liquid.
    #[serde(rename = "volume_ml")]
    Volume(Span<Volume>),
    /// A dish, or dried herb.
    #[serde(rename = "mass_g")]
    Mass(Span<Mass>),
}

/// A preparation, worked out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Brew {
    /// The recipe it follows.
    pub recipe: String,
    /// What people call it.
    pub name: String,
    /// What it is.
    pub form: Form,
    /// The state in which the herb was weighed.
    pub state: HerbState,
    /// What comes out.
    #[serde(rename = "yield")]
    pub made: Yield,
    /// Grams of each thing in what comes out.
    pub composition: Composition,
    /// Its mass.
    #[serde(rename = "mass_g")]
    pub mass: Span<Mass>,
    /// Its strength at 20 °C.
    #[serde(rename = "alcohol_percent_vol")]
    pub alcohol: Answer<Span<AlcoholByVolume>>,
    /// Its sugar, in grams for 100 g.
    #[serde(rename = "sugar_brix")]
    pub sugar: Brix,
    /// Its water activity.
    #[serde(rename = "water_activity")]
    pub activity: Answer<WaterActivity>,
    /// The herb, as it was weighed, that 100 ml stand for.
    #[serde(rename = "herb_as_weighed_g_per_100_ml")]
    pub stands_for: Answer<Span<PerVolume>>,
    /// The same without any water: the herb solids that 100 ml stand for.
    #[serde(rename = "herb_solids_g_per_100_ml")]
    pub solids: Answer<Span<PerVolume>>,
    /// What one person is handed.
    pub portion: Portion,
    /// What goes in.
    pub amounts: Vec<Helping>,
    /// What is done.
    pub steps: Vec<Done>,
    /// What does not come out.
    pub losses: Losses,
    /// How it keeps; decided by the end of each doubt that spoils soonest.
    pub keeping: Answer<Keeping>,
    /// What to know about pot, fire and spirit.
    pub notes: Vec<KitchenNote>,
    /// How it was worked out.
    pub working: Working,
}

/// What one person is handed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Portion {
    /// Whole servings that it makes.
    pub servings: u32,
    /// Servings, with the part of one that is left over.
    pub exactly: f64,
    /// How many a day, where the recipe speaks of that.
    pub times_a_day: Option<u32>,
    /// One serving.
    pub one: Serving,
}

/// One serving.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Serving {
    /// Its volume; none for a dish.
    #[serde(rename = "volume_ml")]
    pub volume: Option<Volume>,
    /// Its mass.
    #[serde(rename = "mass_g")]
    pub mass: Mass,
    /// Grams of each thing in it.
    pub composition: Composition,
}

/// Something that goes in, as it is measured out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Helping {
    /// What it is.
    pub what: What,
    /// How the recipe calls it.
    pub name: Option<String>,
    /// Its mass.
    #[serde(rename = "mass_g")]
    pub mass: Span<Mass>,
    /// Its volume, of what is poured.
    #[serde(rename = "volume_ml")]
    pub volume: Option<Volume>,
    /// Of spirit: its strength.
    #[serde(rename = "alcohol_percent_vol")]
    pub strength: Option<AlcoholByVolume>,
    /// Of spirit that is let down from a stronger one: how.
    pub pour: Option<Pour>,
    /// The same in the measures of the kitchen, to the nearest quarter.
    pub kitchen: Option<KitchenAmount>,
}

/// An amount in kitchen measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct KitchenAmount {
    /// So many quarters.
    pub quarters: u32,
    /// Of this measure.
    pub measure: KitchenMeasure,
}

/// A step, as it is told.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Done {
    /// What to do.
    pub text: Text,
    /// How long it takes, least and most.
    #[serde(rename = "time_min")]
    pub time: Option<[Duration; 2]>,
}

/// What does not come out.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Losses {
    /// Water that went off as steam, or dried off.
    #[serde(rename = "steam_g")]
    pub steam: Mass<Water>,
    /// Liquid that the spent herb keeps.
    pub held: Composition,
    /// The spent herb without that liquid.
    #[serde(rename = "spent_herb_g")]
    pub spent: Mass,
    /// What was set aside before sweetening.
    pub set_aside: Composition,
}

/// Works a batch out.
pub(super) fn brew(batch: &Batch<'_>) -> Known<Brew> {
    let worked = Worked::of(batch)?;
    let pot = &worked.middle;
    let figures = Figures::of(batch, &worked)?;
    let working = working::of(batch, pot, &figures);
    Ok(Brew {
        recipe: batch.recipe.id.clone(),
        name: batch.recipe.name.clone(),
        form: batch.recipe.form,
        state: batch.state,
        made: figures.made,
        composition: pot.liquid,
        mass: worked.span(|pot| Ok(pot.mass()))?,
        alcohol: figures.alcohol,
        sugar: pot.liquid.brix(),
        activity: figures.activity,
        stands_for: figures.stands_for,
        solids: figures.solids,
        portion: portion(batch, pot)?,
        amounts: tell::helpings(batch, pot)?,
        steps: tell::steps(batch, pot),
        losses: losses(pot),
        keeping: figures.keeping,
        notes: tell::notes(batch),
        working,
    })
}

/// The numbers that have a working.
pub(super) struct Figures {
    pub(super) made: Yield,
    pub(super) alcohol: Answer<Span<AlcoholByVolume>>,
    pub(super) activity: Answer<WaterActivity>,
    pub(super) stands_for: Answer<Span<PerVolume>>,
    pub(super) solids: Answer<Span<PerVolume>>,
    pub(super) keeping: Answer<Keeping>,
}

impl Figures {
    fn of(batch: &Batch<'_>, worked: &Worked) -> Known<Self> {
        let liquid = &worked.middle.liquid;
        let alcohol: Answer<_> = worked.span(|pot| pot.liquid.known_alcohol()).into();
        let activity = liquid.activity();
        let keeping = alcohol.as_ref().and_then(|alcohol| {
            let strengths = Strengths {
                alcohol: alcohol.low,
                sugar: liquid.brix(),
                activity: activity.known().copied(),
                moisture: worked.middle.dried_to(),
            };
            keeping(&batch.larder.keeping, batch.recipe.form, strengths)
        });
        let stands_for = |grams: fn(&Composition) -> Option<f64>| {
            worked.span(|pot| per_volume(pot, grams(&pot.liquid))).into()
        };
        Ok(Self {
            made: worked.made()?,
            alcohol,
            activity,
            stands_for: stands_for(|liquid| Some(liquid.herb.g())),
            solids: stands_for(|liquid| liquid.solids.map(Mass::g)),
            keeping,
        })
    }
}

/// The pot as it turns out in the middle and at each end of the doubt.
struct Worked {
    middle: Pot,
    ends: Vec<Pot>,
    by_volume: bool,
}

impl Worked {
    fn of(batch: &Batch<'_>) -> Known<Self> {
        let (middle, ends) = batch.corners();
        Ok(Self {
            middle: run(batch, middle)?,
            ends: ends.into_iter().map(|end| run(batch, end)).collect::<Known<_>>()?,
            by_volume: matches!(batch.serving, ServingSize::Volume(_)),
        })
    }

    fn span<T: PartialOrd + Copy>(&self, of: impl Fn(&Pot) -> Known<T>) -> Known<Span<T>> {
        let middle = of(&self.middle)?;
        let mut span = Span { low: middle, middle, high: middle };
        for end in &self.ends {
            let value = of(end)?;
            if value < span.low {
                span.low = value;
            }
            if value > span.high {
                span.high = value;
            }
        }
        Ok(span)
    }

    fn made(&self) -> Known<Yield> {
        if self.by_volume {
            return self.span(Pot::volume).map(Yield::Volume);
        }
        self.span(|pot| Ok(pot.mass())).map(Yield::Mass)
    }
}

/// Grams that 100 ml stand for.
fn per_volume(pot: &Pot, grams: Option<f64>) -> Known<PerVolume> {
    let volume = pot.volume()?;
    match grams {
        Some(grams) if volume > Volume::ZERO => Ok(PerVolume(100.0 * grams / volume.ml())),
        _ => Err(refuse("prepare-refused-moisture-unknown", "prepare-settle-moisture-unknown")),
    }
}

fn portion(batch: &Batch<'_>, pot: &Pot) -> Known<Portion> {
    let (made, volume) = match batch.serving {
        ServingSize::Volume(size) => (pot.volume()?.ml(), Some(size)),
        ServingSize::Mass(_) => (pot.mass().g(), None),
    };
    let exactly = made / batch.serving.base();
    let share = 1.0 / exactly;
    Ok(Portion {
        servings: whole(exactly),
        exactly,
        times_a_day: batch.recipe.times_a_day,
        one: Serving { volume, mass: pot.mass() * share, composition: pot.liquid.share(share) },
    })
}

/// Whole servings; what rounding alone took from the last one is given back.
fn whole(exactly: f64) -> u32 {
    (exactly + 1e-9).floor() as u32
}

fn losses(pot: &Pot) -> Losses {
    Losses {
        steam: pot.steam,
        held: pot.held,
        spent: if pot.strained { pot.herb.mass } else { Mass::ZERO },
        set_aside: pot.set_aside,
    }
}
