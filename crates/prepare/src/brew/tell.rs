//! Amounts, steps and notes, as they are told to the cook.

use super::batch::{Batch, Item};
use super::pot::{Event, Pot};
use super::result::{Done, Helping, KitchenAmount, Span};
use crate::alcohol::{Spirit, Strength, blend};
use crate::recipe::Heat;
use crate::refuse::Known;
use crate::sugar::Sugaring;
use crate::{KitchenNote, Lid, Step, What};
use ground::{
    AlcoholByVolume, Arg, Duration, Finite, KitchenMeasure, Mass, MeasureSystem, Text, Unit, Volume,
};

/// Measures that are worth naming, the largest first.
const MEASURES: [KitchenMeasure; 5] = [
    KitchenMeasure::Quart,
    KitchenMeasure::Pint,
    KitchenMeasure::Cup,
    KitchenMeasure::Tablespoon,
    KitchenMeasure::Teaspoon,
];

/// Everything that goes in, as it is measured out.
pub(super) fn helpings(batch: &Batch<'_>, pot: &Pot) -> Known<Vec<Helping>> {
    let mut all = Vec::new();
    for item in &batch.items {
        all.push(helping(batch, item)?);
    }
    all.extend(pot.events.iter().filter_map(|event| match event {
        Event::Sweetened(sum, _) => Some(sugar(sum)),
        _ => None,
    }));
    Ok(all)
}

fn helping(batch: &Batch<'_>, item: &Item<'_>) -> Known<Helping> {
    let [low, middle, high] = item.amount;
    let what = item.ingredient.what;
    let poured = matches!(what, What::Water | What::Spirit);
    let volume = poured.then(|| Volume::from_ml(middle));
    let grams = |amount: f64| {
        if poured {
            Spirit::of(Volume::from_ml(amount), item.strength).mass()
        } else {
            Mass::from_g(amount)
        }
    };
    Ok(Helping {
        what,
        name: item.ingredient.name.clone(),
        mass: Span { low: grams(low), middle: grams(middle), high: grams(high) },
        volume,
        strength: (what == What::Spirit).then(|| item.strength.volume_percent()),
        pour: pour(batch, item)?,
        kitchen: volume.and_then(|volume| in_kitchen(volume, batch.have.kitchen?)),
    })
}

/// How a spirit is let down from the one in the bottle.
fn pour(batch: &Batch<'_>, item: &Item<'_>) -> Known<Option<crate::alcohol::Pour>> {
    let Some(stock) = batch.have.stock else {
        return Ok(None);
    };
    if item.ingredient.what != What::Spirit {
        return Ok(None);
    }
    let [_, middle, _] = item.amount;
    let spirit = Spirit::of(Volume::from_ml(middle), item.strength);
    let stock = Strength::by_volume(stock).ok()?;
    blend(spirit, stock).ok().map(Some)
}

fn sugar(sum: &Sugaring) -> Helping {
    let mass = Mass::from_g(sum.add.g());
    Helping {
        what: What::Sugar,
        name: None,
        mass: Span { low: mass, middle: mass, high: mass },
        volume: None,
        strength: None,
        pour: None,
        kitchen: None,
    }
}

/// A volume in the kitchen measure that meets it best, to the nearest quarter and in no more than
/// a dozen; the largest measure there is for what is larger. None for less than an eighth of a
/// teaspoon.
#[must_use]
pub fn in_kitchen(volume: Volume, system: MeasureSystem) -> Option<KitchenAmount> {
    let sized = MEASURES.into_iter().filter_map(|measure| Some((measure, measure.volume(system)?)));
    let amounts: Vec<_> = sized
        .filter_map(|(measure, size)| {
            let quarters = (4.0 * (volume / size)).round();
            let off = (quarters * (size / volume) / 4.0 - 1.0).abs();
            // A pint is said as a pint, not as half a quart.
            let off = if quarters < 4.0 { off + 0.01 } else { off };
            (quarters >= 1.0).then_some((measure, quarters as u32, off))
        })
        .collect();
    let few = amounts.iter().filter(|(_, quarters, _)| *quarters <= 48);
    let best = few.min_by(|(_, _, a), (_, _, b)| a.total_cmp(b));
    let (measure, quarters, _) = *best.or(amounts.first())?;
    Some(KitchenAmount { quarters, measure })
}

/// What is done, in order.
pub(super) fn steps(batch: &Batch<'_>, pot: &Pot) -> Vec<Done> {
    let told = batch.recipe.steps.iter().zip(&pot.events);
    told.map(|(step, event)| done(batch, step, event)).collect()
}

fn done(batch: &Batch<'_>, step: &Step, event: &Event) -> Done {
    let (text, time) = match (step, event) {
        (_, Event::Added(at)) => (batch.items.get(*at).map_or_else(nothing, added), None),
        (Step::Simmer { lid, .. }, Event::Waited(time, steam)) => {
            let text = Text::new("prepare-step-simmer").with("lid", lid_word(*lid));
            (text.amount("steam", steam.g(), Unit::Gram), Some(*time))
        }
        (Step::Steep { lid, .. }, Event::Waited(time, _)) => {
            let text = Text::new("prepare-step-steep").with("lid", lid_word(*lid));
            (text, Some(*time))
        }
        (_, Event::Waited(time, _)) => (Text::new("prepare-step-rest"), Some(*time)),
        (_, Event::Reduced(time, to)) => {
            let text = volume(Text::new("prepare-step-reduce"), "to", *to);
            (text, Some([*time, *time]))
        }
        (Step::Press { .. }, Event::Poured(made)) => {
            (volume(Text::new("prepare-step-press"), "made", *made), None)
        }
        (_, Event::Poured(made)) => (volume(Text::new("prepare-step-strain"), "made", *made), None),
        (_, Event::Sweetened(sum, part)) => (sweetened(sum, *part), None),
        (_, Event::Dried(to)) => {
            (Text::new("prepare-step-dry").amount("to", to.g(), Unit::Gram), None)
        }
    };
    let text = match time {
        Some(time) => text.with("time", Arg::Text(told_time(time))),
        None => text,
    };
    Done { text, time }
}

fn nothing() -> Text {
    Text::new("prepare-step-nothing")
}

fn added(item: &Item<'_>) -> Text {
    let [_, middle, _] = item.amount;
    let ingredient = item.ingredient;
    let name = ingredient.name.as_deref().unwrap_or(ingredient.what.word());
    let (id, unit) = match (ingredient.what, ingredient.heat) {
        (What::Water, Some(Heat::Boiling)) => ("prepare-step-pour-boiling", Unit::Millilitre),
        (What::Water, _) => ("prepare-step-pour", Unit::Millilitre),
        (What::Spirit, _) => ("prepare-step-pour-spirit", Unit::Millilitre),
        _ => ("prepare-step-add", Unit::Gram),
    };
    let text = Text::new(id).with("what", name).amount("amount", middle, unit);
    let strength: AlcoholByVolume = item.strength.volume_percent();
    match ingredient.what {
        What::Spirit => text.amount("strength", strength.percent(), Unit::PercentVolume),
        _ => text,
    }
}

fn sweetened(sum: &Sugaring, part: Option<Mass>) -> Text {
    let id =
        if sum.held_back { "prepare-step-dissolve-all-it-holds" } else { "prepare-step-dissolve" };
    let stir = Text::new(id).amount("sugar", sum.add.g(), Unit::Gram).amount(
        "reached",
        sum.reached.brix().degrees(),
        Unit::PercentMass,
    );
    match part {
        None => stir,
        Some(part) => Text::new("prepare-step-weigh-off")
            .amount("part", part.g(), Unit::Gram)
            .with("then", Arg::Text(stir)),
    }
}

fn volume(text: Text, name: &str, volume: Volume) -> Text {
    text.amount(name, volume.ml(), Unit::Millilitre)
}

fn lid_word(lid: Lid) -> &'static str {
    match lid {
        Lid::Off => "off",
        Lid::On => "on",
    }
}

impl KitchenAmount {
    /// The amount in words: `1½ cups`.
    #[must_use]
    pub fn text(self) -> Text {
        let id = match self.measure {
            KitchenMeasure::Teaspoon => "prepare-teaspoons",
            KitchenMeasure::Tablespoon => "prepare-tablespoons",
            KitchenMeasure::FluidOunce => "prepare-fluid-ounces",
            KitchenMeasure::Gill => "prepare-gills",
            KitchenMeasure::Cup => "prepare-cups",
            KitchenMeasure::Pint => "prepare-pints",
            KitchenMeasure::Quart => "prepare-quarts",
            KitchenMeasure::Gallon => "prepare-gallons",
        };
        let many = if self.quarters > 4 { "more" } else { "one" };
        Text::new(id).with("count", self.count()).with("many", many)
    }

    fn count(self) -> String {
        let part = match self.quarters % 4 {
            1 => "¼",
            2 => "½",
            3 => "¾",
            _ => "",
        };
        match self.quarters / 4 {
            0 => part.to_owned(),
            whole => format!("{whole}{part}"),
        }
    }
}

/// A stretch of time in the largest unit of which both ends are at least one.
pub(crate) fn told_time([least, most]: [Duration; 2]) -> Text {
    let unit = [Unit::Year, Unit::Week, Unit::Day, Unit::Hour, Unit::Minute]
        .into_iter()
        .find(|unit| least.minutes() >= unit.size())
        .unwrap_or(Unit::Minute);
    let amount = |time: Duration| Finite::new(unit.of_base(time.minutes())).unwrap_or_default();
    let id = if least == most { "prepare-time" } else { "prepare-time-between" };
    Text::new(id)
        .with("least", Arg::Amount(amount(least), unit))
        .with("most", Arg::Amount(amount(most), unit))
}

/// What to know about pot, fire and spirit.
pub(super) fn notes(batch: &Batch<'_>) -> Vec<KitchenNote> {
    let joins = |note: &&KitchenNote| note.joins(batch.recipe, batch.state);
    batch.larder.notes.iter().filter(joins).cloned().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(ml: f64, system: MeasureSystem) -> Option<(u32, KitchenMeasure)> {
        let amount = in_kitchen(Volume::from_ml(ml), system)?;
        Some((amount.quarters, amount.measure))
    }

    #[test]
    fn kitchen_amounts_stay_near_and_few() {
        use KitchenMeasure::{Cup, Pint, Tablespoon, Teaspoon};
        use MeasureSystem::{Imperial, Metric, UsCustomary};
        assert_eq!(told(842.0, UsCustomary), Some((7, Pint)));
        assert_eq!(told(842.0, Metric), Some((13, Cup)));
        assert_eq!(told(100.0, Metric), Some((27, Tablespoon)));
        assert_eq!(told(2.5, Metric), Some((2, Teaspoon)));
        assert_eq!(told(568.26125, Imperial), Some((4, Pint)));
        assert_eq!(told(0.3, Metric), None);
    }

    #[test]
    fn quarters_are_said_as_people_say_them() {
        let said = |quarters| {
            let amount = KitchenAmount { quarters, measure: KitchenMeasure::Cup };
            amount.text().args.remove("count")
        };
        let words = |words: &str| Some(Arg::from(words));
        assert_eq!([said(2), said(4), said(6)], ["½", "1", "1½"].map(words));
    }

    #[test]
    fn a_time_is_told_in_its_largest_whole_unit() {
        let text = told_time([Duration::from_days(42.0), Duration::from_days(56.0)]);
        assert_eq!(text.id, "prepare-time-between");
        let six = Finite::new(6.0).unwrap();
        assert_eq!(text.args.get("least"), Some(&Arg::Amount(six, Unit::Week)));
    }
}
