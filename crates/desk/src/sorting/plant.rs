//! What a piece of a plant is held against, and how likely each look-alike stays in.

use super::{SortingLook, SortingOrder, SortingPlant, SortingTwin, finite};
use crate::World;
use crate::knowledge::{SheetReply, Twin, show};
use ground::{Faults, Harm, Part};
use identify::pairs::{Pair, Pairs};
use identify::sorting::{self, Basket, Sees, Sign, looks, misread_all, missed_by_all};
use identify::{Judge, Level, Sense};
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn plant(
    world: &World,
    order: &SortingOrder,
    basket: Basket,
    name: &str,
    part: Part,
) -> Result<SortingPlant, Faults> {
    let mut sheet = show(world, name)?;
    let flora = &world.herbal.flora;
    let grows = |twin: &Twin| {
        let regions = flora.sheet(&twin.name).map_or(&[][..], |sheet| &sheet.regions[..]);
        order.region.is_none_or(|here| regions.is_empty() || regions.contains(&here))
    };
    sheet.twins.retain(grows);
    let signs = signs(world, &sheet, part);
    let told = told(world, &sheet, &signs)?;
    let twins: Vec<&Twin> = sheet.twins.iter().filter(|twin| is_dangerous(twin)).collect();
    let each: Vec<Vec<&Sign>> =
        twins.iter().map(|twin| told.get(&twin.name).cloned().unwrap_or_default()).collect();
    let mut chosen: BTreeSet<&str> =
        looks(&each).into_iter().map(|sign| sign.character.as_str()).collect();
    let must = sheet.sheet.must_look.iter().filter(|must| signs.contains_key(*must));
    chosen.extend(must.map(String::as_str));
    let looks: Vec<SortingLook> = signs
        .values()
        .filter(|sign| chosen.contains(sign.character.as_str()))
        .map(|sign| look(sign, &sheet, &told))
        .collect();
    let twin = |(twin, signs): (&&Twin, &Vec<&Sign>)| {
        let read = signs.iter().copied().filter(|sign| chosen.contains(sign.character.as_str()));
        row(order, basket, twin, &read.collect::<Vec<_>>())
    };
    let twins = twins.iter().zip(&each).map(twin).collect();
    let seconds = looks.iter().map(|look| u32::from(look.seconds)).sum();
    let seconds = Some(seconds).filter(|seconds| *seconds > 0);
    let tray = |seconds: u32| (sorting::TRAY_MINUTES * 60.0 / f64::from(seconds)).max(1.0) as u32;
    Ok(SortingPlant { part, looks, twins, seconds, tray: seconds.map(tray), sheet })
}

/// Whether a look-alike may harm; one without a sheet counts as deadly.
fn is_dangerous(twin: &Twin) -> bool {
    twin.harm.is_none_or(|harm| harm >= Harm::Unknown)
}

/// What can be read on a gathered piece, by character. A smell stays on the fingers: it tells no piece from
/// the one before.
fn signs(world: &World, sheet: &SheetReply, part: Part) -> BTreeMap<String, Sign> {
    let characters = world.herbal.flora.glossary.terms().map(|term| &term.character);
    let on_it = characters.filter(|character| {
        part.shows(character.organ)
            && character.sense != Sense::Smell
            && sheet.cells.contains_key(&character.id)
    });
    let sign = |character: &identify::Character| Sign {
        character: character.id.clone(),
        group: character.group.clone(),
        organ: character.organ,
        seconds: character.seconds,
    };
    on_it.map(|character| (character.id.clone(), sign(character))).collect()
}

/// What tells each look-alike on a piece, by its name: both sheets were read, not remembered.
fn told<'s>(
    world: &World,
    sheet: &SheetReply,
    signs: &'s BTreeMap<String, Sign>,
) -> Result<BTreeMap<String, Vec<&'s Sign>>, Faults> {
    let judge = Judge::new(world.herbal.flora.matrix()?);
    // The less is read rightly, the fewer characters tell enough.
    let pairs = Pairs::new(&judge, Level::Public).of(&sheet.sheet.name, None)?;
    let tells = |pair: &Pair| {
        pair.tells.iter().filter_map(|tell| signs.get(&tell.character)).collect::<Vec<_>>()
    };
    let named = pairs.into_iter().filter(|pair| pair.named);
    Ok(named.map(|pair| (pair.rival.clone(), tells(&pair))).collect())
}

fn look(sign: &Sign, sheet: &SheetReply, told: &BTreeMap<String, Vec<&Sign>>) -> SortingLook {
    let tells = |twin: &&Twin| told.get(&twin.name).is_some_and(|signs| signs.contains(&sign));
    SortingLook {
        character: sign.character.clone(),
        seconds: sign.seconds,
        tells: sheet.twins.iter().filter(tells).map(|twin| twin.name.clone()).collect(),
        must: sheet.sheet.must_look.contains(&sign.character),
    }
}

/// A look-alike, if a piece of it is what is wrong. What nothing tells is missed by everybody.
fn row(order: &SortingOrder, basket: Basket, twin: &Twin, signs: &[&Sign]) -> SortingTwin {
    let misses = |sees: Sees| sees.misses(misread_all(sees.level, signs));
    let misses: Vec<f64> = order.sorters.iter().map(|sorter| misses(sorter.sees)).collect();
    SortingTwin {
        name: twin.name.clone(),
        common: twin.common.clone(),
        harm: twin.harm,
        looks: signs.iter().map(|sign| sign.character.clone()).collect(),
        stays: finite(basket.stays(missed_by_all(&misses, sorting::SHARED))),
    }
}
