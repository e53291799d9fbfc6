//! Somebody who reads rightly whatever they are asked for, to the end.

use crate::kit::Outing;
use ground::Text;
use identify::{Case, Judge, Level, Look, Material, Means, Next, Plan, Reader, Seen, Strictness};

/// How one reading ended.
pub(crate) struct Read {
    pub(crate) plant: String,
    /// Looks of the first reader, a glance counted once, and the seconds of both readers.
    pub(crate) looks: usize,
    pub(crate) seconds: u32,
    /// Why it could not be settled.
    pub(crate) why: Vec<Text>,
}

/// One reader looks as the program asks, a second one reads again what it asks for.
pub(crate) fn read(
    judge: &Judge<'_>,
    outing: &Outing<'_>,
    level: Level,
    strictness: Strictness,
) -> Read {
    let mut case = Case {
        specimen: "A".to_owned(),
        place: String::new(),
        day: outing.day(),
        region: outing.region(),
        material: Material::Living,
        strictness,
        looks: Vec::new(),
    };
    let mut done = Read { plant: outing.sheet.name.clone(), looks: 0, seconds: 0, why: Vec::new() };
    let mut glanced = false;
    loop {
        let next = judge.next(&outing.sheet.name, &case, &Means::all(level));
        let plan = match next {
            Ok(Next::Look(plan)) => plan,
            Ok(Next::Settled) => return done,
            Err(_) => return Read { why: vec![Text::new("could-not-be-read")], ..done },
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
