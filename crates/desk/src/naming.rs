//! What is this plant, or is it this one? And what tells two plants apart.

use crate::outing::InputFile;
use crate::{World, plain};
use ground::{Arg, Dimension, Fault, Faults, Finite, Harm, Month, Place, Region, Spoken};
use herbal::{Resemblance, Sheet};
use identify::{
    Case, Character, Comparison, Judge, Kind, Level, Look, Material, Matrix, Means, Next, Priors,
    Reader, Seen, Strictness, Telling, Verdict,
};
use jiff::civil::{Date, DateTime};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// How many of the likeliest plants are judged when none was named.
const FEW: usize = 3;

/// How many characters are listed that would tell most.
const TELLING: usize = 10;

/// What was seen of one plant in hand.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NameOrder {
    /// The plant it is taken for, by any of its names; none asks what it could be.
    pub is: Option<String>,
    /// Where in the world; none: anything could grow there.
    pub region: Option<Region>,
    /// The day; none: today.
    pub day: Option<Date>,
    /// What was seen: character and what was read of it.
    pub looks: Vec<(String, String)>,
    /// What a second reader saw, the candidates hidden.
    pub second: Vec<(String, String)>,
    /// How well the readers read.
    pub level: Level,
    /// Another table than the herbal's.
    pub table: Option<InputFile>,
}

/// What the plant is, or could be.
#[derive(Clone, Debug, Serialize)]
pub struct NameReply {
    /// The verdict on the plant it is taken for, or on the likeliest few.
    pub verdicts: Vec<Verdict>,
    /// What to look at next, for the first of them.
    pub next: Option<Next>,
    /// What would tell most of what the plant is, the best first; where no plant was named.
    pub telling: Vec<Telling>,
    /// The harm of each plant that a verdict names, where it has a sheet.
    pub harms: BTreeMap<String, Harm>,
}

/// What tells two plants apart.
#[derive(Clone, Debug, Serialize)]
pub struct CompareReply {
    /// The two, by scientific name and usual name.
    pub plants: [(String, String); 2],
    /// How badly each can hurt.
    pub harms: [Harm; 2],
    /// The characters that both sheets speak of, the most telling first.
    pub comparison: Comparison,
    /// What the sheet of either says of the other.
    pub said: Vec<Resemblance>,
    /// The month that it is.
    pub month: Month,
}

pub(crate) fn name(world: &World, order: &NameOrder) -> Result<NameReply, Faults> {
    let own = order.table.as_ref().map(table).transpose()?;
    let matrix = match &own {
        Some(table) => table,
        None => world.herbal.flora.matrix()?,
    };
    let judge = Judge::new(matrix);
    let case = case(world, order, matrix)?;
    let target = order.is.as_ref().map(|said| target(world, order, matrix, said)).transpose()?;
    let mut verdicts = match &target {
        Some(target) => vec![judge.verdict(target, &case)?],
        None => judge.verdicts(&case, FEW)?,
    };
    if order.table.is_some() {
        // A table from elsewhere is explained as it stands, without plants that it does not list.
        let listed = judge.posterior(&case, &Priors::equal(Finite::ZERO))?;
        verdicts.iter_mut().for_each(|verdict| verdict.posterior.clone_from(&listed));
    }
    let next = match verdicts.first() {
        Some(first) => Some(judge.next(&first.target, &case, &Means::all(order.level))?),
        None => None,
    };
    let telling = match &target {
        Some(_) => Vec::new(),
        None => judge.most_telling(&case, &Priors::usual(), order.level)?,
    };
    let telling = telling.into_iter().take(TELLING).collect();
    // Somebody else's table has words of its own.
    let (verdicts, next) = match order.table {
        Some(_) => (verdicts, next),
        None => in_plain_words(world, verdicts, next),
    };
    let harms = matrix.taxa().iter().map(|taxon| (taxon.name.clone(), taxon.harm)).collect();
    Ok(NameReply { verdicts, next, telling, harms })
}

/// Verdicts and what to look at next, in the plain words of the glossary.
pub(crate) fn in_plain_words(
    world: &World,
    verdicts: Vec<Verdict>,
    next: Option<Next>,
) -> (Vec<Verdict>, Option<Next>) {
    let glossary = &world.herbal.flora.glossary;
    let verdicts = verdicts.into_iter().map(|verdict| plain::verdict(glossary, verdict));
    (verdicts.collect(), next.map(|next| plain::next(glossary, next)))
}

/// Somebody else's table: CSV where its name ends so, else TOML.
fn table(file: &InputFile) -> Result<Matrix, Faults> {
    let read = if file.name.to_lowercase().ends_with(".csv") {
        identify::foreign::read_csv(&file.text)
    } else {
        identify::foreign::read_toml(&file.text)
    };
    let name = |fault: Fault| Fault { at: fault.at.clone().in_file(&file.name), ..fault };
    read.map_err(|faults| faults.into_iter().map(name).collect())
}

fn target(world: &World, order: &NameOrder, matrix: &Matrix, said: &str) -> Result<String, Faults> {
    let place = Place::entry("name", "", "is");
    if order.table.is_some() {
        let known = matrix.taxa().iter().map(|taxon| &taxon.name);
        return match known.clone().find(|name| *name == said) {
            Some(name) => Ok(name.clone()),
            None => {
                let list: Vec<Arg> = known.map(|name| Arg::Taxon(name.clone())).collect();
                Err(Fault::new("no-such-taxon", place, said).with("list", list).into())
            }
        };
    }
    Ok(world.herbal.flora.find(said).map_err(|near| near.fault(place))?.name.clone())
}

/// The looks of both readers as one case; the second reads an hour later, so that the two stand
/// apart.
fn case(world: &World, order: &NameOrder, matrix: &Matrix) -> Result<Case, Faults> {
    let day = order.day.unwrap_or_else(|| world.now.date());
    let mut faults = Faults::none();
    let mut looks = Vec::new();
    for (reader, hour, said) in [("first", 10, &order.looks), ("second", 11, &order.second)] {
        let time = day.at(hour, 0, 0, 0);
        let reader = Reader { name: reader.to_owned(), level: order.level };
        let mut named = BTreeMap::new();
        for (character, saw) in said {
            if let Some(before) = named.insert(character, saw) {
                let place = Place::entry("name", "", character);
                faults.add(Fault::new("look-twice", place, saw).with("before", before.as_str()));
            }
            let look = look(matrix, character, saw, &reader, time);
            looks.extend(faults.note(look));
        }
    }
    faults.or(Case {
        specimen: "in-hand".to_owned(),
        place: String::new(),
        day,
        region: order.region,
        material: Material::Living,
        strictness: Strictness::least(),
        looks,
    })
}

fn look(
    matrix: &Matrix,
    character: &str,
    saw: &str,
    reader: &Reader,
    time: DateTime,
) -> Result<Look, Fault> {
    let place = Place::entry("name", "", character);
    let Some(known) = matrix.character(character) else {
        let names = matrix.characters().iter().map(|character| character.id.as_str());
        let near = crate::outing::nearest(character, names);
        return Err(Fault::new("no-such-character", place, character).with("near", near));
    };
    Ok(Look {
        character: character.to_owned(),
        seen: seen(known, saw, place)?,
        reader: reader.clone(),
        time,
        specimen: "in-hand".to_owned(),
        blind: true,
    })
}

/// What was said of a character: a state, several joined by `|`, a length, a number, `not-there`
/// or `?`.
fn seen(character: &Character, saw: &str, place: Place) -> Result<Seen, Fault> {
    match (saw, &character.kind) {
        ("?", _) => Ok(Seen::CannotTell),
        ("not-there", _) => Ok(Seen::NotThere),
        (_, Kind::States(states)) => {
            let said: Vec<String> = saw.split('|').map(|word| word.trim().to_owned()).collect();
            let known = |word: &String| states.iter().any(|state| state.id == *word);
            if !said.iter().all(known) {
                let list: Vec<Arg> = states.iter().map(|state| state.id.as_str().into()).collect();
                return Err(Fault::new("unknown-state", place, saw).with("known", list));
            }
            Ok(match said.as_slice() {
                [one] => Seen::State(one.clone()),
                _ => Seen::OneOf(said),
            })
        }
        (_, Kind::Count) => {
            let count = saw.parse().map_err(|_| Fault::new("unreadable-look", place, saw))?;
            Ok(Seen::Counted(count))
        }
        (_, Kind::Length) => {
            let said: Spoken = saw.parse().map_err(|why: String| {
                Fault::new("unreadable-amount", place.clone(), saw).with("why", why)
            })?;
            let amount = said.resolve(Dimension::Length, None).map_err(|refusal| {
                Fault::new("unit-does-not-fit", place.clone(), saw).with("why", refusal.why)
            })?;
            let ends = Finite::new(amount.low).zip(Finite::new(amount.high));
            let (low, high) = ends.ok_or_else(|| Fault::new("unreadable-look", place, saw))?;
            Ok(Seen::Measured { low, high })
        }
    }
}

pub(crate) fn compare(world: &World, plants: &[String; 2]) -> Result<CompareReply, Faults> {
    let flora = &world.herbal.flora;
    let mut faults = Faults::none();
    let [one, other] = plants.each_ref().map(|said| {
        let place = Place::entry("compare", "", "plant");
        faults.note(flora.find(said).map_err(|near| near.fault(place)))
    });
    let (Some(one), Some(other)) = (one, other) else { return Err(faults) };
    let matrix = world.herbal.flora.matrix()?;
    let comparison = Judge::new(matrix).compare(&one.name, &other.name)?;
    let said = [(one, other), (other, one)];
    let said = said.iter().filter_map(|(a, b)| a.look_alikes.get(&b.name).cloned()).collect();
    let names = |sheet: &Sheet| (sheet.name.clone(), sheet.usual_name().to_owned());
    Ok(CompareReply {
        plants: [names(one), names(other)],
        harms: [one.harm.value, other.harm.value],
        comparison,
        said,
        month: Month::of(world.now.date()),
    })
}
