//! A sheet of a plant for whoever teaches it: what is known, and what is left standing.

use crate::World;
use crate::knowledge::{SheetReply, show};
use dose::{PartRow, UsedAs};
use ground::{Faults, Harm, Part, Sourcing};
use harvest::{Care, TakeRule};
use serde::Serialize;
use std::collections::BTreeSet;

/// Sheets for the teacher.
#[derive(Clone, Debug, Serialize)]
pub struct TeachReply {
    /// The version of the herbal.
    pub herbal_version: String,
    /// One sheet for each plant, in the order in which they were asked for, each once.
    pub sheets: Vec<TeachSheet>,
}

/// What a teacher needs of one plant.
#[derive(Clone, Debug, Serialize)]
pub struct TeachSheet {
    /// What is known of it.
    pub known: SheetReply,
    /// How much of each part that is used may go.
    pub leave: Vec<Leave>,
    /// What to do with it once it is picked.
    pub cares: Vec<Care>,
}

/// How much of a part may go, wherever it grows.
#[derive(Clone, Debug, Serialize)]
pub struct Leave {
    /// Which part.
    pub part: Part,
    /// The share that is allowed; none where nobody set one, so that nothing may go.
    pub share: Option<TakeRule>,
    /// What published limits say of it besides.
    pub limits: Vec<TakeRule>,
}

impl TeachSheet {
    fn is_of(&self, known: &SheetReply) -> bool {
        self.known.sheet.name == known.sheet.name
    }
}

pub(crate) fn teach(world: &World, names: &[String]) -> Result<TeachReply, Faults> {
    let mut faults = Faults::none();
    let mut sheets: Vec<TeachSheet> = Vec::new();
    for name in names {
        match show(world, name) {
            Err(unknown) => unknown.into_iter().for_each(|fault| faults.add(fault)),
            Ok(known) if sheets.iter().any(|sheet| sheet.is_of(&known)) => {}
            Ok(known) => sheets.push(sheet(world, known)),
        }
    }
    faults.or(TeachReply { herbal_version: world.herbal_version.clone(), sheets })
}

fn sheet(world: &World, mut known: SheetReply) -> TeachSheet {
    let rules = &world.herbal.land.rules;
    let used = known.parts.iter().filter(|row| used(row)).map(|row| row.part);
    let used: BTreeSet<Part> = used.collect();
    let leave: Vec<_> = used.into_iter().map(|part| leave(world, &known, part)).collect();
    let in_water = |care: &&Care| !care.water_only;
    let cares: Vec<_> = rules.cares.iter().filter(in_water).cloned().collect();
    let of_rules = leave.iter().flat_map(|row| row.share.iter().chain(&row.limits));
    let of_rules = of_rules.map(|rule| &rule.from).chain(cares.iter().map(|care| &care.from));
    for id in of_rules.flat_map(|from: &Sourcing| &from.sources) {
        if let Some(source) = world.herbal.sources.get(id) {
            known.sources.insert(id.clone(), source.clone());
        }
    }
    TeachSheet { known, leave, cares }
}

/// Whether a part is gathered for anything: what harms or is of no use is not.
fn used(row: &PartRow) -> bool {
    row.used_as != UsedAs::None && row.feared() <= Harm::Irritant
}

fn leave(world: &World, known: &SheetReply, part: Part) -> Leave {
    let rules = &world.herbal.land.rules;
    let (taxon, life_form) = (known.sheet.name.as_str(), known.sheet.life_form);
    let limits = rules.ceilings.iter().filter(|rule| rule.scope.concerns(taxon, part));
    let share = rules.share_of(taxon, part, life_form).cloned();
    Leave { part, share, limits: limits.cloned().collect() }
}
