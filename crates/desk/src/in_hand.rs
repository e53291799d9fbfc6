//! A plant in hand at a stand of an outing: what it is so far, and what a reader looks at next.

use crate::World;
use crate::naming::{NameReply, in_plain_words};
use crate::outing::{InputFile, Outing, nearest};
use crate::plan::{case_of, looks};
use ground::{Fault, Faults, Place};
use identify::{Case, Judge, Level, Means, Next, evidence};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// Which plant in hand.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InHandOrder {
    /// The outing file, and those that it includes.
    pub files: Vec<InputFile>,
    /// The stand that it was picked from, by short name.
    pub stand: String,
    /// The specimen, by short name: one of those that were looked at, or one to come.
    pub specimen: String,
}

/// Which plant in hand, and who looks at it now.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NextLookOrder {
    /// The plant.
    pub of: InHandOrder,
    /// Who looks, by short name; whoever is no reader of the outing reads like anybody else.
    pub reader: String,
}

/// What a reader looks at next. Never what that would show: the candidates are hidden from whoever
/// still looks.
#[derive(Clone, Debug, Serialize)]
pub struct NextLookReply {
    /// The characters that this reader is asked for, the best first.
    pub look_at: Vec<String>,
    /// Whether nothing is left for this reader, but something that another one must read, or the
    /// leader again later.
    pub wants_another: bool,
}

/// What the plant is by all that was read of it. A verdict is of one day: that of its last look, and
/// the outing's before anybody looked.
pub(crate) fn in_hand(world: &World, order: &InHandOrder) -> Result<NameReply, Faults> {
    let outing = world.outing(&order.files)?;
    let matrix = world.herbal.flora.matrix()?;
    let judge = Judge::new(matrix);
    let InHand { target, case } = InHand::of(world, &outing, order, None)?;
    let verdict = world.verdict(&judge, &target, case.clone())?;
    let next = world.next(&judge, &target, case, Means::all(Level::Public))?;
    let harms = matrix.taxa().iter().map(|taxon| (taxon.name.clone(), taxon.harm)).collect();
    let (verdicts, next) = in_plain_words(world, vec![verdict], Some(next));
    Ok(NameReply { verdicts, next, telling: Vec::new(), harms })
}

/// What somebody looks at next, who looks today, on whatever day the outing is.
pub(crate) fn next_look(world: &World, order: &NextLookOrder) -> Result<NextLookReply, Faults> {
    let outing = world.outing(&order.of.files)?;
    let judge = Judge::new(world.herbal.flora.matrix()?);
    let InHand { target, case } = InHand::of(world, &outing, &order.of, Some(world.now.date()))?;
    let reader = outing.wishes.readers.get(&order.reader);
    let level = reader.map_or(Level::Public, |reader| reader.level);
    let next = world.next(&judge, &target, case.clone(), Means::all(level))?;
    let (look_at, again) = asked(world, order, level, &case, &next);
    Ok(NextLookReply { wants_another: look_at.is_empty() && again, look_at })
}

/// A plant in hand: what its stand is said to be of, and what was read.
struct InHand {
    target: String,
    case: Case,
}

impl InHand {
    fn of(
        world: &World,
        outing: &Outing,
        order: &InHandOrder,
        today: Option<Date>,
    ) -> Result<Self, Faults> {
        let wishes = &outing.wishes;
        let school = world.journal.clone().merge(outing.journal.clone()).fold();
        let Some(stand) = school.stands.get(&order.stand) else {
            let place = Place::entry("looks", &order.specimen, "stand");
            let near = nearest(&order.stand, school.stands.keys().map(String::as_str));
            return Err(Fault::new("no-such-stand", place, order.stand.as_str())
                .with("near", near)
                .into());
        };
        let looks = looks(wishes, &school);
        let read = looks.iter().filter(|look| look.specimen == order.specimen);
        let last = read.map(|look| look.time.date()).max();
        let day = today.or(last).unwrap_or(wishes.date);
        let case = case_of(wishes, &school, &looks, &order.specimen, day, None);
        Ok(Self { target: stand.taxon.clone(), case })
    }
}

/// What a reader is asked for, and whether anything must be read a second time.
fn asked(
    world: &World,
    order: &NextLookOrder,
    level: Level,
    case: &Case,
    next: &Next,
) -> (Vec<String>, bool) {
    let Next::Look(plan) = next else { return (Vec::new(), false) };
    let own = |character: &str| {
        let read = case
            .looks
            .iter()
            .filter(|look| look.specimen == order.of.specimen && look.time.date() == case.day);
        read.filter(|look| look.reader.name == order.reader && look.character == character)
            .map(|look| look.time)
            .max()
    };
    // A leader's own reading counts as a second one when it is made so much later.
    let later = |character: &str| {
        own(character).is_none_or(|time| {
            let minutes = time.duration_until(world.now).as_mins();
            level == Level::Leader && minutes >= evidence::AGAIN_MINUTES
        })
    };
    let new = plan.looks.iter().map(|offer| &offer.character).filter(|c| own(c).is_none());
    let again = plan.again.iter().filter(|character| later(character));
    let mut all: Vec<String> = Vec::new();
    for character in new.chain(again) {
        if !all.contains(character) {
            all.push(character.clone());
        }
    }
    (all, !plan.again.is_empty())
}
