//! What is open, grouped by what it is about, in the order in which it must be settled.

use crate::{Block, Notice, NoticeKind, Prose, Target, Way, Words};
use desk::{About, OpenQuestion, Plan};
use ground::Text;

/// One frame for each thing that questions are about.
pub(super) fn questions(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    if plan.questions.is_empty() {
        return vec![words.para(&Text::new("view-plan-nothing-open"))];
    }
    let groups = plan.questions.chunk_by(|one, next| one.about == next.about);
    groups.map(|group| about(group, words)).collect()
}

fn about(group: &[OpenQuestion], words: &Words<'_>) -> Block {
    let about = group.first().map_or(About::Person, |question| question.about);
    let blocks = by_settling(group).into_iter().flat_map(|Open { settle, whys, of }| {
        let settle = Text::new("refusal-settle").with("settle", settle.clone());
        [words.bullets(whys), words.para(&settle)].into_iter().chain(answered_at(about, &of, words))
    });
    let kind = match about {
        About::Handed | About::HeldLot => NoticeKind::DoNot,
        _ => NoticeKind::Question,
    };
    Block::Notice(Notice { kind, head: words.word(head(about)).into(), blocks: blocks.collect() })
}

/// Where these are answered, if that can be done from here.
fn answered_at(about: About, of: &[&str], words: &Words<'_>) -> Option<Block> {
    let ways = words.ways?;
    let mut places: Vec<Way> = Vec::new();
    for way in of.iter().flat_map(|of| ways(about, of)) {
        if !places.contains(&way) {
            places.push(way);
        }
    }
    let mut says = Prose::from(words.word("view-plan-answer"));
    for (at, Way { says: place, to }) in places.iter().enumerate() {
        says = says.text(if at == 0 { " " } else { ", " }).link(place, Target::Beside(to.clone()));
    }
    (!places.is_empty()).then_some(Block::Para(says))
}

/// What one thing settles.
struct Open<'q> {
    settle: &'q Text,
    whys: Vec<&'q Text>,
    /// The plants, stands, lots, wishes or people.
    of: Vec<&'q str>,
}

/// Questions that the same thing settles stand together, each said once.
fn by_settling(group: &[OpenQuestion]) -> Vec<Open<'_>> {
    let mut settled: Vec<Open<'_>> = Vec::new();
    for OpenQuestion { settle, why, of, .. } in group {
        let Some(open) = settled.iter_mut().find(|open| open.settle == settle) else {
            settled.push(Open { settle, whys: vec![why], of: vec![of] });
            continue;
        };
        if !open.whys.contains(&why) {
            open.whys.push(why);
        }
        open.of.push(of);
    }
    settled
}

fn head(about: About) -> &'static str {
    match about {
        About::Handed => "view-plan-about-handed",
        About::HeldLot => "view-plan-about-held",
        About::Emergency => "view-plan-about-emergency",
        About::WayBack => "view-plan-about-way-back",
        About::Plant => "view-plan-about-plant",
        About::Take => "view-plan-about-take",
        About::Amount => "view-plan-about-amount",
        About::Sorting => "view-plan-about-sorting",
        About::Make => "view-plan-about-make",
        About::Person => "view-plan-about-person",
        About::Confirmation => "view-plan-about-confirmation",
    }
}
