//! What one reader of one plant in hand is asked next, whatever the looks were written in.

use crate::World;
use crate::naming::{NameReply, in_plain_words};
use ground::Faults;
use identify::{Case, Judge, Level, Look, Means, Next, Reader, Seen, evidence};

/// What is asked of one reader.
#[derive(Default)]
pub(crate) struct Asked {
    /// The characters that this reader is asked for, the best first.
    pub(crate) look_at: Vec<String>,
    /// Those of a second reading, by whomever.
    pub(crate) again: Vec<String>,
    /// Whether nothing is left for this reader, but something that another one must read, or the
    /// leader again later.
    pub(crate) wants_another: bool,
    /// Whether all is read: every rule is met.
    pub(crate) settled: bool,
}

/// What a reader is asked now, of the plant that a case is of. What they could not tell they are not
/// asked again; to others it is as good as unread.
pub(crate) fn asked(
    world: &World,
    target: &str,
    case: &Case,
    reader: &Reader,
) -> Result<Asked, Faults> {
    let plan = match next(world, target, case, reader)? {
        Next::Look(plan) => plan,
        Next::Settled => return Ok(Asked { settled: true, ..Asked::default() }),
        Next::CannotSettle { .. } => return Ok(Asked::default()),
    };
    let own = |character: &str| {
        let today = case
            .looks
            .iter()
            .filter(|look| look.specimen == case.specimen && look.time.date() == case.day);
        today
            .filter(|look| look.reader.name == reader.name && look.character == character)
            .map(|look| look.time)
            .max()
    };
    // A leader's own reading counts as a second one when it is made so much later.
    let later = |character: &str| {
        own(character).is_none_or(|time| {
            let minutes = time.duration_until(world.now).as_mins();
            reader.level == Level::Leader && minutes >= evidence::AGAIN_MINUTES
        })
    };
    let new = plan.looks.iter().map(|offer| &offer.character).filter(|c| own(c).is_none());
    let again = plan.again.iter().filter(|character| later(character));
    let mut look_at: Vec<String> = Vec::new();
    for character in new.chain(again) {
        if !look_at.contains(character) {
            look_at.push(character.clone());
        }
    }
    let wants_another = look_at.is_empty();
    Ok(Asked { look_at, again: plan.again, wants_another, settled: false })
}

/// What would settle it. Where that hangs on something that this reader cannot tell, the rest is
/// theirs to read all the same: somebody else may tell it.
fn next(world: &World, target: &str, case: &Case, reader: &Reader) -> Result<Next, Faults> {
    let judge = Judge::new(world.herbal.flora.matrix()?);
    let work_out = |counts: &dyn Fn(&Look) -> bool| {
        let looks = case.looks.iter().filter(|look| counts(look)).cloned().collect();
        world.next(&judge, target, Case { looks, ..case.clone() }, Means::all(reader.level))
    };
    let told = |look: &Look| look.seen != Seen::CannotTell;
    match work_out(&|look| told(look) || look.reader.name == reader.name)? {
        Next::CannotSettle { .. } => work_out(&told),
        next => Ok(next),
    }
}

/// What a plant in hand is by all that was read of it.
pub(crate) fn told(world: &World, target: &str, case: Case) -> Result<NameReply, Faults> {
    let matrix = world.herbal.flora.matrix()?;
    let judge = Judge::new(matrix);
    let verdict = world.verdict(&judge, target, case.clone())?;
    let next = world.next(&judge, target, case, Means::all(Level::Public))?;
    let harms = matrix.taxa().iter().map(|taxon| (taxon.name.clone(), taxon.harm)).collect();
    let (verdicts, next) = in_plain_words(world, vec![verdict], Some(next));
    Ok(NameReply { verdicts, next, telling: Vec::new(), harms })
}
