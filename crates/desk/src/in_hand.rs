//! A plant in hand at a stand of an outing: what it is so far, and what a reader looks at next.

use crate::World;
use crate::asking::{asked, told};
use crate::naming::NameReply;
use crate::outing::{InputFile, Outing, nearest};
use crate::plan::{case_of, looks};
use ground::{Fault, Faults, Place};
use identify::{Case, Level, Reader};
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
    let InHand { target, case } = InHand::of(world, &outing, order, None)?;
    told(world, &target, case)
}

/// What somebody looks at next, who looks today, on whatever day the outing is.
pub(crate) fn next_look(world: &World, order: &NextLookOrder) -> Result<NextLookReply, Faults> {
    let outing = world.outing(&order.of.files)?;
    let InHand { target, case } = InHand::of(world, &outing, &order.of, Some(world.now.date()))?;
    let reader = outing.wishes.readers.get(&order.reader);
    let level = reader.map_or(Level::Public, |reader| reader.level);
    let reader = Reader { name: order.reader.clone(), level };
    let asked = asked(world, &target, &case, &reader)?;
    Ok(NextLookReply { look_at: asked.look_at, wants_another: asked.wants_another })
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
