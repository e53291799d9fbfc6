//! How often something harmful ends as determined for a plant that is gathered: of every pair, for readers of every
//! level, as told and in worse worlds. Of months in which the same parts of the plant are there, the first is followed.
//!
//! Prints the worst pair of each as figures: name, value and unit with tabs between. With a folder it writes there
//! the worst of every plant and month as soon as it is known, as CSV; with names of plants after it, of those alone.

mod kit;

use ground::{Harm, Part};
use identify::follow::{End, Setting, World};
use identify::{Judge, Level, Strictness, Taxon};
use kit::Outing;
use std::collections::{BTreeMap, BTreeSet};
use std::env;
use std::error::Error;
use std::fs::File;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// Worlds that are followed together.
struct Together {
    worlds: &'static [World],
    /// Ways less likely than this are not followed: frozen before the figures were taken. What is cut counts as
    /// determined as often as it can be at most.
    least: f64,
    /// So many sets of answers are followed, of the plants of which it is not known yet whether the goal is met.
    rounds: &'static [usize],
}

/// As told the goal lies lower, so that less likely ways are followed; of a mixed handful every other piece is the
/// plant that is sought, and most ways stay likely for long.
const FOLLOWED: [Together; 4] = [
    Together { worlds: &[World::AsTold], least: 1e-9, rounds: &[0, 4_000] },
    Together {
        worlds: &[
            World::Doubled,
            World::Together,
            World::OneBelieves,
            World::BothBelieve,
            World::Lingering,
            World::HalfThere,
            World::OtherHalfThere,
        ],
        least: 1e-8,
        rounds: &[0, 4_000],
    },
    Together { worlds: &[World::Unlisted], least: 1e-7, rounds: &[0, 1_000] },
    Together { worlds: &[World::Mixed], least: 1e-6, rounds: &[500] },
];

/// The worst of one plant in one month.
#[derive(Clone)]
struct Worst {
    plant: String,
    month: i8,
    level: &'static str,
    world: String,
    harm: Harm,
    end: End,
}

/// What is asked for: one in so many.
fn goal(level: &str, world: &str) -> f64 {
    match (world, level) {
        ("as told", "public") => 1e-5,
        ("as told", _) => 1e-6,
        _ => 1e-4,
    }
}

fn word(world: World, reckoned: bool) -> &'static str {
    match world {
        World::AsTold => "as told",
        World::Doubled => "misread twice as often",
        World::Together => "misread together",
        World::OneBelieves => "one believes",
        World::BothBelieve => "both believe",
        World::Lingering => "lingering smell",
        World::HalfThere | World::OtherHalfThere => "half the organs",
        World::Unlisted if reckoned => "no sheet",
        World::Unlisted => "wrong region",
        World::Mixed => "mixed handful",
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let mut args = env::args().skip(1);
    let folder = args.next().map(PathBuf::from);
    let only: Vec<String> = args.collect();
    let herbal = herbal_data::herbal();
    let judge = Judge::new(herbal.flora.matrix().map_err(|faults| faults.to_string())?);
    let outings = apart(kit::outings(&herbal, &only));
    let jobs: Vec<(Outing<'_>, &str, Level)> = outings
        .iter()
        .flat_map(|outing| Level::NAMED.map(|(word, level)| (*outing, word, level)))
        .collect();
    let table = folder.map(|folder| table(&folder)).transpose()?;
    let found = kit::on_all_cores(&jobs, |(outing, word, level)| {
        let worst = worst(&judge, outing, (word, *level));
        table.iter().try_for_each(|table| write(table, &worst)).map(|()| worst)
    });
    let all: Vec<Worst> = found.into_iter().collect::<io::Result<Vec<_>>>()?.concat();
    say(&all, &mut io::stdout())?;
    Ok(())
}

/// The first of the months in which the same parts of a plant are there.
fn apart(outings: Vec<Outing<'_>>) -> Vec<Outing<'_>> {
    let mut met = BTreeSet::new();
    let parts = |outing: &Outing<'_>| -> Vec<Part> {
        let seasons = outing.sheet.months.iter();
        seasons.filter(|(_, s)| s.contains(outing.month)).map(|(part, _)| *part).collect()
    };
    outings.into_iter().filter(|outing| met.insert((&outing.sheet.name, parts(outing)))).collect()
}

/// The worst harmful plant and the worst deadly one, in each world.
fn worst(
    judge: &Judge<'_>,
    outing: &Outing<'_>,
    (level, how): (&'static str, Level),
) -> Vec<Worst> {
    let target = &outing.sheet.name;
    let others = judge.matrix().taxa().iter();
    let harmful: BTreeMap<&str, &Taxon> = others
        .filter(|taxon| taxon.harm >= Harm::Harmful && taxon.name != *target)
        .map(|taxon| (taxon.name.as_str(), taxon))
        .collect();
    let grows = |taxon: &Taxon| {
        taxon.regions.is_empty() || outing.region().is_none_or(|r| taxon.regions.contains(&r))
    };
    let ends = FOLLOWED.iter().flat_map(|together| {
        // What does not grow there is met in the wrong region alone.
        let of = |world: &World| {
            let all = harmful.values();
            let there = all.filter(|taxon| *world == World::Unlisted || grows(taxon));
            there.map(|taxon| (taxon.name.as_str(), *world)).collect::<Vec<_>>()
        };
        let truths: Vec<_> = together.worlds.iter().flat_map(of).collect();
        follow(judge, outing, (level, how), &truths, together)
    });
    let mut worst: BTreeMap<(&str, Harm), End> = BTreeMap::new();
    for end in ends {
        let taxon = harmful.get(end.plant.as_str());
        let harm = taxon.map_or(Harm::Unknown, |taxon| taxon.harm);
        let grows = taxon.is_some_and(|taxon| grows(taxon));
        let key = (word(end.world, grows), harm);
        if worst.get(&key).is_none_or(|known| known.at_most < end.at_most) {
            worst.insert(key, end);
        }
    }
    let one = |((world, harm), end): ((&str, Harm), End)| Worst {
        plant: target.clone(),
        month: i8::try_from(outing.month.number()).unwrap_or(0),
        level,
        world: world.to_owned(),
        harm,
        end,
    };
    worst.into_iter().map(one).collect()
}

/// What becomes of each, followed further where it is not known yet whether the goal is met.
fn follow(
    judge: &Judge<'_>,
    outing: &Outing<'_>,
    (level, how): (&str, Level),
    truths: &[(&str, World)],
    together: &Together,
) -> Vec<End> {
    let (day, region, strictness) = (outing.day(), outing.region(), Strictness::least());
    // What could not be followed has passed.
    let passed = |(plant, world): &(&str, World)| End {
        plant: (*plant).to_owned(),
        world: *world,
        determined: 0.0,
        at_most: 1.0,
    };
    let mut ends: Vec<End> = truths.iter().map(passed).collect();
    for most in together.rounds {
        let is_open = |end: &&mut End| {
            let goal = goal(level, word(end.world, true));
            end.determined <= goal && goal < end.at_most
        };
        let mut open: Vec<&mut End> = ends.iter_mut().filter(is_open).collect();
        let truths: Vec<_> = open.iter().map(|end| (end.plant.clone(), end.world)).collect();
        let truths: Vec<_> = truths.iter().map(|(plant, world)| (plant.as_str(), *world)).collect();
        let setting =
            Setting { day, region, level: how, strictness, least: together.least, most: *most };
        let found = judge.follow(&outing.sheet.name, &truths, &setting);
        let found = found.map_or_else(|_| Vec::new(), |ends| ends.ends);
        open.iter_mut().zip(found).for_each(|(end, found)| **end = found);
    }
    ends
}

/// A table with one line a plant, month, level and world, deadly plants and harmful ones apart.
fn table(folder: &Path) -> io::Result<Mutex<File>> {
    let mut table = File::create(folder.join("confusion.csv"))?;
    writeln!(table, "plant,month,level,world,harm,rival,determined_at_least,determined_at_most")?;
    Ok(Mutex::new(table))
}

fn write(table: &Mutex<File>, worst: &[Worst]) -> io::Result<()> {
    let line = |w: &Worst| {
        let Worst { plant, month, level, world, harm, end } = w;
        let End { plant: rival, determined, at_most, .. } = end;
        format!("{plant},{month},{level},{world},{harm:?},{rival},{determined:.3e},{at_most:.3e}\n")
    };
    let lines: String = worst.iter().map(line).collect();
    let mut table = table.lock().unwrap_or_else(PoisonError::into_inner);
    table.write_all(lines.as_bytes())
}

/// The worst pair of each level and world, deadly and harmful apart, and how many plant-months pass the goal.
fn say(all: &[Worst], out: &mut impl Write) -> io::Result<()> {
    let mut by: BTreeMap<(&str, &str, Harm), Vec<&Worst>> = BTreeMap::new();
    for one in all {
        by.entry((one.level, &one.world, one.harm)).or_default().push(one);
    }
    for ((level, world, harm), of) in by {
        let Some(worst) = of.iter().max_by(|a, b| a.end.at_most.total_cmp(&b.end.at_most)) else {
            continue;
        };
        let goal = goal(level, world);
        let over = of.iter().filter(|one| one.end.at_most > goal).count();
        let End { plant: rival, determined, at_most, .. } = &worst.end;
        let (plant, month) = (&worst.plant, worst.month);
        let name = format!("confusion-{harm:?}-{level}-{world}").to_lowercase().replace(' ', "-");
        writeln!(
            out,
            "{name}\t{at_most:.1e}\tat most, {determined:.1e} at least: {rival} for {plant} in month {month} (goal {goal:.0e}); over it in {over} of {} plant-months",
            of.len()
        )?;
    }
    Ok(())
}
