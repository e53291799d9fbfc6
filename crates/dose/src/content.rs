//! What a gram of herb adds: the rows that speak of it, its solids, and the share that passes over.

use crate::doubt::{Doubt, Ledger};
use crate::shares::{Gap, Told};
use crate::{
    Content, ContentBasis, ContentKind, Cup, Herb, HerbState, SubstanceId, Table, Tie, Transfer,
};
use ground::{Fault, Finite, Form, Text};

/// The content rows that speak of this herb in this cup and count towards a limit.
pub(crate) fn contents<'a>(
    table: &'a Table,
    cup: &'a Cup,
    herb: &'a Herb,
    counted: &'a SubstanceId,
) -> impl Iterator<Item = (&'a Content, Tie, f64)> {
    let ties = table.ties(&herb.taxon);
    table.contents.iter().filter_map(move |row| {
        let tie = ties(&row.taxon)?;
        let speaks = row.kind == ContentKind::Plant
            && row.parts.iter().any(|part| part.meets(herb.part))
            && (row.forms.is_empty() || row.forms.iter().any(|form| form.meets(cup.form)));
        let factor = table.counts(&row.substance, counted)?;
        speaks.then_some((row, tie, factor))
    })
}

/// Grams of a substance for each gram of herb, and flat: the most that any row says, since of
/// several rows the strictest holds.
pub(crate) fn substance_rates(
    table: &Table,
    (cup, herb): (&Cup, &Herb),
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Told<Option<(Doubt, Doubt)>> {
    let mut rates: Option<(Doubt, Doubt)> = None;
    for (row, _, factor) in contents(table, cup, herb, counted) {
        let (per_gram, flat) = match row_rate(row, (cup, herb), counted, ledger)? {
            Ok((rate, false)) => (rate.scaled(factor), Doubt::exact(0.0)),
            Ok((rate, true)) => (Doubt::exact(0.0), rate.scaled(factor)),
            Err(gap) => return Ok(Err(gap)),
        };
        rates = Some(match rates {
            None => (per_gram, flat),
            Some((most, most_flat)) => (most.or_more(&per_gram), most_flat.or_more(&flat)),
        });
    }
    Ok(Ok(rates))
}

/// Whether a content is given for dried herb, and the herb is weighed fresh, or the other way round.
pub(crate) fn hangs_on_moisture(
    table: &Table,
    (cup, herb): (&Cup, &Herb),
    substance: &SubstanceId,
) -> bool {
    contents(table, cup, herb, substance).any(|(row, ..)| match row.basis {
        ContentBasis::Dry => herb.portion.state == HerbState::Fresh,
        ContentBasis::Fresh => herb.portion.state == HerbState::Dried,
        ContentBasis::InDrinkPerG | ContentBasis::Drink => false,
    })
}

/// What one row says: grams for each gram of herb, or flat for the serving.
fn row_rate(
    row: &Content,
    (cup, herb): (&Cup, &Herb),
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Told<(Doubt, bool)> {
    let gap =
        |id: &str| Gap(Text::new(id).taxon("plant", herb.taxon.as_str()).with("row", &*row.id));
    let Some(amount) = &row.amount else { return Ok(Err(gap("dose-gap-content"))) };
    let mut content = match Finite::new(amount.ends().1) {
        Some(high) if row.only_high => Doubt::exact(high.get()),
        None if row.only_high => return Ok(Err(gap("dose-gap-content"))),
        _ => ledger.read(&["lot", &herb.lot, "content", &counted.0], amount)?,
    };
    if row.averages {
        content.worst = None;
    }
    match row.basis {
        ContentBasis::Dry => {
            let share = passes_over(row, cup, counted, ledger)?;
            Ok(Ok((content.times(&share).times(&solids(herb, ledger)?).scaled(1e-3), false)))
        }
        ContentBasis::Fresh => {
            let share = passes_over(row, cup, counted, ledger)?;
            let fresh = fresh(herb, ledger)?;
            Ok(fresh.map(|fresh| (content.times(&share).times(&fresh).scaled(1e-3), false)))
        }
        ContentBasis::InDrinkPerG => Ok(Ok((content.scaled(1e-3), false))),
        ContentBasis::Drink => Ok(match cup.volume {
            Some(volume) => Ok((content.scaled(1e-6 * volume.ml()), true)),
            None => Err(gap("dose-gap-volume")),
        }),
    }
}

/// The share of a content that reaches the cup. A supposed share counts as all of it, and so does
/// whatever is eaten.
fn passes_over(
    row: &Content,
    cup: &Cup,
    counted: &SubstanceId,
    ledger: &mut Ledger,
) -> Result<Doubt, Fault> {
    match transfer(row, cup.form).filter(|transfer| transfer.measured) {
        None => Ok(Doubt::exact(1.0)),
        Some(transfer) => {
            ledger.read(&["batch", &cup.batch, "transfer", &counted.0], &transfer.share)
        }
    }
}

/// The transfer that a row gives for a preparation.
pub(crate) fn transfer(row: &Content, form: Form) -> Option<&Transfer> {
    if Form::Tea.contains(form) {
        row.water.as_ref()
    } else if Form::Spirit.contains(form) {
        row.ethanol.as_ref()
    } else {
        None
    }
}

/// Grams of dried herb in a gram as weighed. Of fresh herb whose water nobody knows, all.
pub(crate) fn solids(herb: &Herb, ledger: &mut Ledger) -> Result<Doubt, Fault> {
    match (herb.portion.state, &herb.moisture) {
        (HerbState::Fresh, Some(moisture)) => {
            let dry = |water: f64| (1.0 - water).clamp(0.0, 1.0);
            let water = ledger.read(&["lot", &herb.lot, "moisture"], moisture)?;
            Ok(water.map(dry, Some(dry(moisture.ends().0))))
        }
        _ => Ok(Doubt::exact(1.0)),
    }
}

/// Grams of fresh herb in a gram as weighed.
pub(crate) fn fresh(herb: &Herb, ledger: &mut Ledger) -> Told<Doubt> {
    match (herb.portion.state, &herb.moisture) {
        (HerbState::Fresh, _) => Ok(Ok(Doubt::exact(1.0))),
        (HerbState::Dried, None) => {
            let text = Text::new("dose-gap-moisture").taxon("plant", herb.taxon.as_str());
            Ok(Err(Gap(text)))
        }
        (HerbState::Dried, Some(moisture)) => {
            let wet = |water: f64| 1.0 / (1.0 - water.clamp(0.0, 0.999));
            let water = ledger.read(&["lot", &herb.lot, "moisture"], moisture)?;
            let wettest = Some(moisture.ends().1).filter(|high| *high < 1.0);
            Ok(Ok(water.map(wet, wettest.map(wet))))
        }
    }
}
