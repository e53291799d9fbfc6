//! What is open, grouped by what it is about, in the order in which it must be settled.

use crate::{Block, Notice, NoticeKind, Words};
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
    let blocks = by_settling(group).into_iter().flat_map(|(settle, whys)| {
        let settle = Text::new("refusal-settle").with("settle", settle.clone());
        [words.bullets(whys), words.para(&settle)]
    });
    let kind = match about {
        About::Handed | About::HeldLot => NoticeKind::DoNot,
        _ => NoticeKind::Question,
    };
    Block::Notice(Notice { kind, head: words.word(head(about)).into(), blocks: blocks.collect() })
}

/// Questions that the same thing settles stand together, each said once.
fn by_settling(group: &[OpenQuestion]) -> Vec<(&Text, Vec<&Text>)> {
    let mut settled: Vec<(&Text, Vec<&Text>)> = Vec::new();
    for question in group {
        match settled.iter_mut().find(|(settle, _)| *settle == &question.settle) {
            Some((_, whys)) if whys.contains(&&question.why) => {}
            Some((_, whys)) => whys.push(&question.why),
            None => settled.push((&question.settle, vec![&question.why])),
        }
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
