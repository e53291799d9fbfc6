//! Messages and workings about sums and limits.

use crate::content::{contents, transfer};
use crate::decide::Case;
use crate::{Content, ContentBasis, Cup, Held, Herb, Limit, SubstanceId, Window};
use ground::{Dist, Formula, Place, Shown, Spread, Text, Unit, Working};

/// A message about a limit and what is held against it.
pub(crate) fn held(id: &str, substance: &str, limit: &Limit, held: &Held) -> Text {
    let window = match limit.window {
        Window::Serving => "window-serving",
        Window::Day => "window-day",
        Window::Week => "window-week",
        Window::Lifetime => "window-lifetime",
        Window::Product => "window-product",
    };
    let mg = |grams: Option<ground::Finite>| grams.map_or(f64::NAN, |grams| grams.get() * 1e3);
    let (unit, value) = match limit.level {
        Some(level) => (level.unit, level.value.get()),
        None => (Unit::Milligram, f64::NAN),
    };
    Text::new(id)
        .with("substance", substance)
        .with("limit", limit.id.as_str())
        .with("population", limit.population.as_str())
        .with("date", limit.date.as_str())
        .with("window", Text::new(format!("dose-{window}")))
        .amount("value", value, unit)
        .amount("most", mg(held.limit_g), Unit::Milligram)
        .amount("sum", mg(held.sum_g), Unit::Milligram)
}

/// How the day's sum of a substance came about.
pub(crate) fn working(case: &Case<'_>, substance: &SubstanceId, day_mg: Option<Spread>) -> Working {
    let what = Text::new("dose-working-day").with("substance", case.table.name(substance));
    let formula = Formula::plain(
        "dose.day",
        "Σ servings × (herb × solids × content × share that passes over)",
    );
    let cups = case.cups();
    let from = cups.map(|cup| of_cup(case, cup, substance)).collect();
    Working::computed(what, Shown::spread(day_mg, Unit::MilligramPerDay), formula, from)
}

fn of_cup(case: &Case<'_>, cup: &Cup, substance: &SubstanceId) -> Working {
    let servings = Working::input(
        Text::new("dose-working-servings"),
        Shown::amount(f64::from(cup.servings_a_day), Unit::One),
        Place::entry("make", &cup.batch, "servings-a-day"),
    );
    let mut from = vec![servings];
    for (held, grams) in &cup.holds {
        if case.table.counts(held, substance).is_some() {
            from.push(Working::input(
                Text::new("dose-working-holds").with("substance", case.table.name(held)),
                range(Some(grams), Unit::Gram),
                Place::entry("make", &cup.batch, &held.0),
            ));
        }
    }
    for herb in &cup.herbs {
        from.extend(of_herb(case, cup, herb, substance));
    }
    let what = Text::new("dose-working-cup").with("batch", cup.batch.as_str());
    let formula = Formula::plain("dose.cup", "herb × solids × content × share that passes over");
    let part = Shown::Words(Text::new("dose-working-in-the-sum"));
    Working::computed(what, part, formula, from)
}

fn of_herb(case: &Case<'_>, cup: &Cup, herb: &Herb, substance: &SubstanceId) -> Vec<Working> {
    let mut leaves = Vec::new();
    let plant = |id: &str| Text::new(id).taxon("plant", herb.taxon.as_str());
    for (row, _, _) in contents(case.table, cup, herb, substance) {
        let what = plant("dose-working-content").with("substance", case.table.name(substance));
        leaves.push(Working::fact(what, range(row.amount.as_ref(), unit(row)), row.from.clone()));
        leaves.push(of_transfer(row, cup));
    }
    if leaves.is_empty() {
        return leaves;
    }
    let at = |field| Place::entry("make", &cup.batch, field);
    let grams = range(herb.portion.grams.as_ref(), Unit::Gram);
    leaves.push(Working::input(plant("dose-working-portion"), grams, at("amounts")));
    if let Some(moisture) = &herb.moisture {
        let (what, water) = (plant("dose-working-moisture"), range(Some(moisture), Unit::One));
        leaves.push(if herb.moisture_supposed {
            Working::assumed(what, water, Text::new("dose-working-supposed"))
        } else {
            Working::input(what, water, at("moisture"))
        });
    }
    leaves
}

fn of_transfer(row: &Content, cup: &Cup) -> Working {
    let what = Text::new("dose-working-transfer");
    match transfer(row, cup.form) {
        Some(share) if share.measured => {
            Working::fact(what, range(Some(&share.share), Unit::One), row.from.clone())
        }
        _ if matches!(row.basis, ContentBasis::InDrinkPerG | ContentBasis::Drink) => {
            Working::fact(what, Shown::amount(1.0, Unit::One), row.from.clone())
        }
        _ => {
            let why = Text::new("dose-working-all-of-it");
            Working::assumed(what, Shown::amount(1.0, Unit::One), why)
        }
    }
}

fn unit(row: &Content) -> Unit {
    match row.basis {
        ContentBasis::Drink => Unit::MilligramPerLitre,
        _ => Unit::MilligramPerGram,
    }
}

/// A distribution as a working shows it: its value, or its ends and quartiles as a spread.
fn range(dist: Option<&Dist>, unit: Unit) -> Shown {
    let Some(dist) = dist else { return Shown::Unknown };
    let (low, high) = dist.ends();
    if low == high {
        return Shown::amount(low, unit);
    }
    let strata = (0..200).map(|i| dist.quantile((f64::from(i) + 0.5) / 200.0)).collect();
    Shown::spread(Spread::of(strata), unit)
}
