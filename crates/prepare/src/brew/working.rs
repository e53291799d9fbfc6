//! The working of a brew: every number down to what was said, what is published, what is supposed.

use super::batch::{Batch, Item, retention};
use super::pot::Pot;
use super::result::{Figures, Span, Yield};
use crate::{Step, What};
use ground::{Formula, Mass, PerVolume, Place, Shown, Text, Unit, Working};

/// The tree of a brew.
pub(super) fn of(batch: &Batch<'_>, pot: &Pot, figures: &Figures) -> Working {
    let mut parts = vec![yielded(batch, pot, figures)];
    parts.extend(alcohol(batch, pot, figures));
    parts.extend(sugar(batch, pot, figures));
    parts.extend(strength(batch, pot, figures));
    parts.extend(keeping(figures));
    let text = Text::new("prepare-working-brew").with("name", batch.recipe.name.as_str());
    let by = Formula::plain("brew", "mass in = mass out");
    Working::computed(text, made(figures), by, parts)
}

fn made(figures: &Figures) -> Shown {
    match figures.made {
        Yield::Volume(volume) => Shown::amount(volume.middle.ml(), Unit::Millilitre),
        Yield::Mass(mass) => Shown::amount(mass.middle.g(), Unit::Gram),
    }
}

fn yielded(batch: &Batch<'_>, pot: &Pot, figures: &Figures) -> Working {
    let mut from = inputs(batch);
    from.extend(moisture(batch));
    from.extend(steam(batch, pot));
    from.extend(held(batch));
    let by = Formula::plain("brew.yield", "what went in − steam − what the spent herb keeps");
    Working::computed(Text::new("prepare-working-yield"), made(figures), by, from)
}

fn inputs(batch: &Batch<'_>) -> Vec<Working> {
    batch.items.iter().map(|item| input(batch, item)).collect()
}

fn input(batch: &Batch<'_>, item: &Item<'_>) -> Working {
    let [_, middle, _] = item.amount;
    let what = item.ingredient.what;
    let name = item.ingredient.name.as_deref().unwrap_or(what.word());
    let text = Text::new("prepare-working-ingredient").with("what", name);
    let unit = match what {
        What::Water | What::Spirit => Unit::Millilitre,
        What::Herb | What::Sugar | What::Other => Unit::Gram,
    };
    let value = Shown::amount(middle, unit);
    if item.said {
        Working::input(text, value, said_at(batch, what.word()))
    } else {
        Working::fact(text, value, batch.recipe.from.clone())
    }
}

fn said_at(batch: &Batch<'_>, field: &str) -> Place {
    Place { field: Some(field.to_owned()), ..batch.have.at.clone() }
}

fn moisture(batch: &Batch<'_>) -> Option<Working> {
    let middle = batch.moisture?.middle().share().percent();
    let what = Text::new("prepare-working-moisture");
    let value = Shown::amount(middle, Unit::Percent);
    Some(if batch.have.herb.moisture_supposed {
        Working::assumed(what, value, Text::new("prepare-working-supposed"))
    } else {
        Working::input(what, value, said_at(batch, "moisture"))
    })
}

/// What the pot loses, where it is on the fire.
fn steam(batch: &Batch<'_>, pot: &Pot) -> Option<Working> {
    if !batch.recipe.steps.iter().any(Step::heats) {
        return None;
    }
    let rate = batch.rate(crate::Lid::Off).ok()?;
    let text = Text::new("prepare-working-evaporation");
    let value = Shown::amount(rate.ml_per_minute(), Unit::Millilitre);
    let rate = match (batch.have.evaporation, &batch.larder.stove) {
        (None, Some(stove)) => Working::fact(text, value, stove.open.from.clone()),
        _ => Working::input(text, value, said_at(batch, "evaporation")),
    };
    Some(Working::computed(
        Text::new("prepare-working-steam"),
        Shown::amount(pot.steam.g(), Unit::Gram),
        Formula::plain("brew.steam", "rate × time"),
        vec![rate],
    ))
}

fn held(batch: &Batch<'_>) -> Vec<Working> {
    let rows = batch.recipe.holds().filter_map(|name| retention(batch.larder, name).ok());
    rows.map(|row| {
        let value = Shown::amount(row.keeps.0, Unit::Millilitre);
        let id = match row.basis {
            crate::HerbBasis::Solids => "prepare-working-held-by-solids",
            crate::HerbBasis::Weighed => "prepare-working-held-as-weighed",
        };
        Working::fact(Text::new(id), value, row.from.clone())
    })
    .collect()
}

fn grams(id: &str, mass: Mass, from: Vec<Working>) -> Working {
    let by = Formula::plain("brew.mass", "grams add up");
    Working::computed(Text::new(id), Shown::amount(mass.g(), Unit::Gram), by, from)
}

fn alcohol(batch: &Batch<'_>, pot: &Pot, figures: &Figures) -> Option<Working> {
    let strength = figures.alcohol.known()?;
    if pot.liquid.ethanol.g() == 0.0 {
        return None;
    }
    let spirit = pot.liquid.spirit();
    let ethanol = grams("prepare-working-ethanol", Mass::from_g(spirit.ethanol.g()), inputs(batch));
    let water = grams(
        "prepare-working-water",
        Mass::from_g(spirit.water.g()),
        moisture(batch).into_iter().chain(inputs(batch)).collect(),
    );
    let by = Formula::published(
        "alcohol.mixture",
        "p = e / (e + w);  q = p ρ(p, 20 °C) / ρ(1, 20 °C)",
        "oiml-r22",
    );
    Some(Working::computed(
        Text::new("prepare-working-alcohol"),
        Shown::amount(strength.middle.percent(), Unit::PercentVolume),
        by,
        vec![ethanol, water],
    ))
}

fn sugar(batch: &Batch<'_>, pot: &Pot, figures: &Figures) -> Vec<Working> {
    if pot.liquid.sugar.g() == 0.0 {
        return Vec::new();
    }
    let said = Working::fact(
        Text::new("prepare-working-sweetness"),
        Shown::amount(pot.liquid.brix().degrees(), Unit::PercentMass),
        batch.recipe.from.clone(),
    );
    let added = Working::computed(
        Text::new("prepare-working-sugar"),
        Shown::amount(pot.liquid.sugar.g(), Unit::Gram),
        Formula::plain("sugar.to-add", "S = (b L − s) / (1 − b)"),
        vec![said.clone()],
    );
    let density = pot.liquid.volume().known().map(|volume| {
        let density = pot.liquid.mass().g() / volume.ml();
        Working::computed(
            Text::new("prepare-working-density"),
            Shown::amount(density, Unit::GramPerMillilitre),
            Formula::published("sugar.density", "ρ = 998.203 (1 + Σ hₖ bᵏ)", "hackbarth-2011"),
            vec![said.clone()],
        )
    });
    let activity = figures.activity.known().map(|activity| {
        Working::computed(
            Text::new("prepare-working-activity"),
            Shown::amount(activity.0, Unit::One),
            Formula::published("sugar.activity", "a = X_w exp(−K X_s²)", "baeza-2010"),
            vec![said.clone()],
        )
    });
    [Some(added), density, activity].into_iter().flatten().collect()
}

fn strength(batch: &Batch<'_>, pot: &Pot, figures: &Figures) -> Vec<Working> {
    let node = |id: &str, span: &Span<PerVolume>, mut from: Vec<Working>| {
        from.push(grams("prepare-working-poured-off", pot.liquid.mass(), held(batch)));
        let by = Formula::plain(
            "brew.stands-for",
            "herb / (liquid poured off + liquid kept by the herb)",
        );
        let value = Shown::amount(span.middle.0, Unit::GramPer100Millilitre);
        Working::computed(Text::new(id), value, by, from)
    };
    let herb = || -> Vec<Working> {
        let of_herb = |item: &&Item<'_>| item.ingredient.what == What::Herb;
        let items = batch.items.iter().filter(of_herb);
        items.map(|item| input(batch, item)).collect()
    };
    let weighed =
        figures.stands_for.known().map(|span| node("prepare-working-stands-for", span, herb()));
    let solids = figures.solids.known().map(|span| {
        let from = herb().into_iter().chain(moisture(batch)).collect();
        node("prepare-working-stands-for-solids", span, from)
    });
    weighed.into_iter().chain(solids).collect()
}

fn keeping(figures: &Figures) -> Option<Working> {
    let keeping = figures.keeping.known()?;
    let text = Text::new("prepare-working-keeping").with("why", keeping.why.as_str());
    let value = Shown::amount(keeping.most.days(), Unit::Day);
    Some(Working::fact(text, value, keeping.from.clone()))
}
