//! How far somebody comes who reads rightly whatever they are asked for: every plant that is gathered, in every month
//! in which something of it is there, read as it typically looks, to the end.
//!
//! Prints figures for leaders and trained readers: name, value and unit with tabs between. With a folder it writes
//! there the end of every plant and month, with what would mend it, as CSV.

mod kit;

use ground::{Part, Text};
use identify::{Case, Judge, Level, Look, Material, Means, Next, Plan, Reader, Seen, Strictness};
use kit::Outing;
use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::io::{self, Write};
use std::path::PathBuf;
use std::{env, fs};

const LEVELS: [(&str, Level, [usize; 2]); 2] =
    [("leader", Level::Leader, [7, 10]), ("trained", Level::Trained, [9, 13])];

/// How one reading ended.
struct Read {
    plant: String,
    month: i8,
    /// The parts that are gathered in that month.
    parts: BTreeSet<Part>,
    /// Whether it is gathered in leaf then, with neither flower nor fruit to be seen.
    in_leaf: bool,
    /// Looks of the first reader, a glance counted once, and the seconds of both readers.
    looks: usize,
    seconds: u32,
    /// Why it could not be settled.
    why: Vec<Text>,
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).map(PathBuf::from);
    let herbal = herbal_data::herbal();
    let judge = Judge::new(herbal.flora.matrix().map_err(|faults| faults.to_string())?);
    let outings = kit::outings(&herbal, None);
    let mut table = "plant,month,level,looks,seconds,what would mend it\n".to_owned();
    for (word, level, goal) in LEVELS {
        let all = kit::on_all_cores(&outings, |outing| read(&judge, outing, level));
        table.extend(all.iter().map(|read| row(word, read)));
        say(&mut io::stdout(), &all, (word, goal))?;
    }
    if let Some(folder) = folder {
        fs::write(folder.join("helpfulness.csv"), table)?;
    }
    Ok(())
}

/// One reader looks as the program asks, a second one reads again what it asks for.
fn read(judge: &Judge<'_>, outing: &Outing<'_>, level: Level) -> Read {
    let mut case = Case {
        specimen: "A".to_owned(),
        place: String::new(),
        day: outing.day(),
        region: outing.region(),
        material: Material::Living,
        strictness: Strictness::least(),
        looks: Vec::new(),
    };
    let mut done = Read {
        plant: outing.sheet.name.clone(),
        month: i8::try_from(outing.month.number()).unwrap_or(0),
        parts: outing.parts(),
        in_leaf: in_leaf(outing),
        looks: 0,
        seconds: 0,
        why: Vec::new(),
    };
    let mut glanced = false;
    loop {
        let next = judge.next(&outing.sheet.name, &case, &Means::all(level));
        let plan = match next {
            Ok(Next::Look(plan)) => plan,
            Ok(Next::Settled) | Err(_) => return done,
            Ok(Next::CannotSettle { why }) => return Read { why, ..done },
        };
        let Some((look, seconds)) = asked(judge, &case, &plan, level) else {
            return Read { why: vec![Text::new("nothing-to-look-at")], ..done };
        };
        let first = look.reader.name == "A";
        let at_a_glance = plan.looks.first().is_some_and(|offer| offer.at_a_glance);
        done.looks += usize::from(first && !(at_a_glance && glanced));
        if !(first && at_a_glance && glanced) {
            done.seconds += u32::from(seconds);
        }
        glanced |= first && at_a_glance;
        case.looks.push(look);
    }
}

fn in_leaf(outing: &Outing<'_>) -> bool {
    let green = [Part::Leaf, Part::Herb, Part::ShootTip];
    let bare = [Part::Flower, Part::Fruit].iter().all(|part| !outing.is_there(*part));
    bare && outing.parts().iter().any(|part| green.contains(part))
}

/// The look that is asked for, as the plant typically is, and the seconds that it takes.
fn asked(judge: &Judge<'_>, case: &Case, plan: &Plan, level: Level) -> Option<(Look, u16)> {
    let look = |character: &String, seen: &Seen, name: &str| Look {
        character: character.clone(),
        seen: seen.clone(),
        reader: Reader { name: name.to_owned(), level },
        time: case.day.at(8, 0, 0, 0),
        specimen: case.specimen.clone(),
        blind: true,
    };
    if let Some(offer) = plan.looks.first() {
        return Some((look(&offer.character, &offer.typical, "A"), offer.seconds));
    }
    let read = |name: &str, character: &String| {
        case.looks.iter().find(|look| look.reader.name == name && look.character == *character)
    };
    let again = plan.again.iter().find(|character| read("B", character).is_none())?;
    let seconds = judge.matrix().character(again)?.seconds;
    Some((look(again, &read("A", again)?.seen, "B"), seconds))
}

fn row(level: &str, read: &Read) -> String {
    let mend: BTreeSet<String> = read.why.iter().map(mend).collect();
    let mend = mend.into_iter().collect::<Vec<_>>().join("; ");
    let Read { plant, month, looks, seconds, .. } = read;
    format!("{plant},{month},{level},{looks},{seconds},\"{mend}\"\n")
}

/// What stands in the way, in a few words: the message, and whom and what it names.
fn mend(why: &Text) -> String {
    let args = why.args.iter().filter(|(name, _)| *name != "character");
    let named: Vec<String> = args.map(|(_, value)| format!("{value:?}")).collect();
    format!("{} {}", why.id.trim_start_matches("identify-cannot-"), named.join(" ").replace('"', ""))
}

fn say(out: &mut impl Write, all: &[Read], (level, goal): (&str, [usize; 2])) -> io::Result<()> {
    let settled = |read: &&Read| read.why.is_empty();
    let plants: BTreeSet<&str> = all.iter().map(|read| read.plant.as_str()).collect();
    let ever: BTreeSet<&str> =
        all.iter().filter(settled).map(|read| read.plant.as_str()).collect();
    let line = |out: &mut dyn Write, name: &str, value: String, unit: String| {
        writeln!(out, "help-{level}-{name}\t{value}\t{unit}")
    };
    line(out, "plants", ever.len().to_string(), format!("of {} gathered plants settled in some month", plants.len()))?;
    let relatives: BTreeSet<&str> = all
        .iter()
        .filter(|read| read.why.iter().any(|why| why.id == "identify-cannot-cousin"))
        .map(|read| read.plant.as_str())
        .collect();
    let known = plants.difference(&relatives).count();
    let both = ever.difference(&relatives).count();
    line(out, "plants-with-known-relatives", both.to_string(), format!("of {known} (goal: all)"))?;
    let months = all.iter().filter(settled).count();
    line(out, "months", months.to_string(), format!("of {} plant-months", all.len()))?;
    let mut by_part: BTreeMap<Part, [usize; 2]> = BTreeMap::new();
    for read in all {
        for part in &read.parts {
            let [of, done] = by_part.entry(*part).or_default();
            *of += 1;
            *done += usize::from(read.why.is_empty());
        }
    }
    for (part, [of, done]) in by_part {
        let name = format!("{part:?}").to_lowercase();
        line(out, &format!("part-{name}"), done.to_string(), format!("of {of} plant-months in which it is gathered"))?;
    }
    let green = |read: &&Read| read.in_leaf;
    let name = |read: &Read| read.plant.clone();
    let greens: BTreeSet<String> = all.iter().filter(green).map(name).collect();
    let told: BTreeSet<String> = all.iter().filter(green).filter(settled).map(name).collect();
    let unit = format!("of {} greens settled in a month without flower and fruit (goal 2 in 3)", greens.len());
    line(out, "greens-in-leaf", told.len().to_string(), unit)?;
    let looks: Vec<usize> = all.iter().filter(settled).map(|read| read.looks).collect();
    let seconds: Vec<usize> = all.iter().filter(settled).map(|read| read.seconds as usize).collect();
    let [median, most] = goal;
    line(out, "looks", share(&looks, 50).to_string(), format!("looks, median (goal {median})"))?;
    line(out, "looks-90", share(&looks, 90).to_string(), format!("looks in 9 of 10 (goal {most})"))?;
    line(out, "seconds", share(&seconds, 50).to_string(), "seconds of both readers, median".to_owned())?;
    line(out, "seconds-90", share(&seconds, 90).to_string(), "seconds in 9 of 10".to_owned())
}

/// What so many in a hundred do not go beyond.
fn share(all: &[usize], percent: usize) -> usize {
    let mut all = all.to_vec();
    all.sort_unstable();
    let at = (all.len() * percent).div_ceil(100).saturating_sub(1);
    all.get(at).copied().unwrap_or(0)
}
