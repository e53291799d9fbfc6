//! How far somebody comes who reads rightly whatever they are asked for: every plant that is gathered, in every month
//! in which something of it is there, read as it typically looks, to the end.
//!
//! Prints figures for leaders and trained readers: name, value and unit with tabs between. With a folder it writes
//! there the end of every plant and month, with what would mend it, as CSV.

mod kit;
#[path = "kit/typical.rs"]
mod typical;

use ground::{Part, Text};
use identify::{Judge, Level, RelativesStatement, Strictness};
use kit::Outing;
use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::io::{self, Write};
use std::path::PathBuf;
use std::{env, fs, iter};
use typical::{Read, read};

const LEVELS: [(&str, Level, [usize; 2]); 2] =
    [("leader", Level::Leader, [7, 10]), ("trained", Level::Trained, [9, 13])];

/// One reading, and of what.
type Done<'h> = (&'h Outing<'h>, Read);

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).map(PathBuf::from);
    let herbal = herbal_data::herbal();
    let judge = Judge::new(herbal.flora.matrix().map_err(|faults| faults.to_string())?);
    let outings = kit::outings(&herbal, &[]);
    let mut table = "plant,month,level,looks,seconds,what would mend it\n".to_owned();
    for (word, level, goal) in LEVELS {
        let all =
            kit::on_all_cores(&outings, |outing| read(&judge, outing, level, Strictness::least()));
        let all: Vec<Done<'_>> = outings.iter().zip(all).collect();
        table.extend(all.iter().map(|done| row(word, done)));
        say(&mut io::stdout(), &judge, &all, (word, goal))?;
    }
    if let Some(folder) = folder {
        fs::write(folder.join("helpfulness.csv"), table)?;
    }
    Ok(())
}

fn row(level: &str, (outing, read): &Done<'_>) -> String {
    let mend: BTreeSet<String> = read.why.iter().map(mend).collect();
    let mend = mend.into_iter().collect::<Vec<_>>().join("; ");
    let (month, Read { plant, looks, seconds, .. }) = (outing.month.number(), read);
    format!("{plant},{month},{level},{looks},{seconds},\"{mend}\"\n")
}

/// What stands in the way, in a few words: the message, and whom and what it names.
fn mend(why: &Text) -> String {
    let args = why.args.iter().filter(|(name, _)| *name != "character");
    let named: Vec<String> = args.map(|(_, value)| format!("{value:?}")).collect();
    format!(
        "{} {}",
        why.id.trim_start_matches("identify-cannot-"),
        named.join(" ").replace('"', "")
    )
}

/// Plants of a kind, and those of them that were settled in some month.
fn plants<'h>(all: &'h [Done<'h>], of: impl Fn(&Outing<'_>) -> bool) -> [usize; 2] {
    let those = || all.iter().filter(|(outing, _)| of(outing));
    let names = |done: &'h Done<'h>| done.1.plant.as_str();
    let settled = those().filter(|(_, read)| read.why.is_empty());
    [
        settled.map(names).collect::<BTreeSet<_>>().len(),
        those().map(names).collect::<BTreeSet<_>>().len(),
    ]
}

fn say(
    out: &mut impl Write,
    judge: &Judge<'_>,
    all: &[Done<'_>],
    (level, goal): (&str, [usize; 2]),
) -> io::Result<()> {
    let known = |outing: &Outing<'_>| {
        let taxon = judge.matrix().taxa().iter().find(|taxon| taxon.name == outing.sheet.name);
        taxon.is_some_and(|t| t.relatives.trusted() != RelativesStatement::UnlistedUnknown)
    };
    let [settled, of] = plants(all, |_| true);
    writeln!(out, "help-{level}-plants\t{settled}\tof {of} gathered plants settled in some month")?;
    let [settled, of] = plants(all, known);
    writeln!(
        out,
        "help-{level}-relatives\t{settled}\tof {of} whose relatives are known (goal: all)"
    )?;
    let [settled, of] = plants(all, in_leaf);
    writeln!(
        out,
        "help-{level}-in-leaf\t{settled}\tof {of} greens in a month without flower and fruit (goal 2 in 3)"
    )?;
    for (part, [settled, of]) in by_part(all) {
        let part = format!("{part:?}").to_lowercase();
        writeln!(
            out,
            "help-{level}-{part}\t{settled}\tof {of} months in which it is gathered of a plant"
        )?;
    }
    let done = || all.iter().map(|(_, read)| read).filter(|read| read.why.is_empty());
    let looks: Vec<usize> = done().map(|read| read.looks).collect();
    let seconds: Vec<usize> = done().map(|read| read.seconds as usize).collect();
    let [median, most] = goal;
    let (half, nine) = (share(&looks, 50), share(&looks, 90));
    writeln!(out, "help-{level}-looks\t{half}\tlooks, median (goal {median})")?;
    writeln!(out, "help-{level}-looks-90\t{nine}\tlooks in 9 of 10 (goal {most})")?;
    let (half, nine) = (share(&seconds, 50), share(&seconds, 90));
    writeln!(
        out,
        "help-{level}-seconds\t{half}\tseconds of both readers, median; {nine} in 9 of 10"
    )
}

/// By part that is gathered: months in which it was settled, and all.
fn by_part(all: &[Done<'_>]) -> BTreeMap<Part, [usize; 2]> {
    let mut by_part: BTreeMap<Part, [usize; 2]> = BTreeMap::new();
    for (outing, read) in all {
        for part in parts(outing) {
            let [settled, of] = by_part.entry(part).or_default();
            *of += 1;
            *settled += usize::from(read.why.is_empty());
        }
    }
    by_part
}

/// What so many in a hundred do not go beyond.
fn share(all: &[usize], percent: usize) -> usize {
    let mut all = all.to_vec();
    all.sort_unstable();
    let at = (all.len() * percent).div_ceil(100).saturating_sub(1);
    all.get(at).copied().unwrap_or(0)
}

/// Whether it is gathered in leaf, with neither flower nor fruit to be seen.
fn in_leaf(outing: &Outing<'_>) -> bool {
    let green = [Part::Leaf, Part::Herb, Part::ShootTip];
    let bare = [Part::Flower, Part::Fruit].iter().all(|part| !is_there(outing, *part));
    bare && parts(outing).iter().any(|part| green.contains(part))
}

/// The parts that are gathered in that month.
fn parts(outing: &Outing<'_>) -> BTreeSet<Part> {
    let gathered = outing.sheet.gathered_for.iter().map(|gathered| gathered.part);
    gathered.filter(|part| is_there(outing, *part)).collect()
}

/// Whether a part is there, or what it is a part of.
fn is_there(outing: &Outing<'_>, part: Part) -> bool {
    let mut of = iter::successors(Some(part), |part| part.parent());
    let season = of.find_map(|part| outing.sheet.months.get(&part));
    season.is_some_and(|season| season.contains(outing.month))
}
