//! Why nothing that can be seen here today settles it.

use crate::MustLookState;
use crate::assess::{Assessment, twins};
use crate::rival::{Rival, RivalKind};
use crate::rules::tells;
use crate::weighing::{Scales, Trial};
use ground::{Arg, Text};

/// Rivals named one by one.
const NAMED: usize = 5;
/// Characters named for each.
const CHARACTERS: usize = 5;

/// What was read and cannot be unread: a grave misfit, a must-look character that does not agree.
pub(crate) fn by_what_was_read(assessment: &Assessment<'_>) -> Vec<Text> {
    let contrary = assessment.must_looks.iter().filter(|m| m.state == MustLookState::Contrary);
    let text =
        |character: &str| Text::new("identify-must-look-contrary").with("character", character);
    let contrary = contrary.map(|must| text(&must.character));
    let groups: Vec<Arg> =
        assessment.misfit.groups.iter().map(|group| group.as_str().into()).collect();
    let misfit = Text::new("identify-misfit").with("groups", groups);
    contrary.chain(assessment.misfit.is_grave().then_some(misfit)).collect()
}

/// What stays open although everything that can be seen was typical of the target.
pub(crate) fn by_what_is_known(
    trial: &Trial<'_>,
    scales: &Scales<'_>,
    unseen: &[String],
) -> Vec<Text> {
    let unseen = unseen
        .iter()
        .map(|must| Text::new("identify-cannot-must-look").with("character", must.as_str()));
    let tells = tells(scales).into_iter().filter(|tells| !tells.met);
    let tells =
        tells.map(|tells| Text::new("identify-cannot-tell").taxon("look_alike", tells.look_alike));
    let mut why: Vec<_> = unseen.chain(tells).collect();
    if twins(scales, trial.allowed).is_none() {
        why.extend(rivals(trial, scales));
    }
    why
}

/// The heaviest rivals that are left, and why each cannot be set aside.
fn rivals(trial: &Trial<'_>, scales: &Scales<'_>) -> Vec<Text> {
    let mut heavy: Vec<_> = scales.contributions().filter(|(r, _)| !r.is_harmless_twin()).collect();
    heavy.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.name.cmp(&b.0.name)));
    let enough = heavy.iter().position(|(_, part)| *part < trial.allowed / 10.0);
    heavy.truncate(enough.unwrap_or(heavy.len()).clamp(1, NAMED));
    heavy.iter().map(|(rival, _)| why(trial, rival)).collect()
}

fn why(trial: &Trial<'_>, rival: &Rival) -> Text {
    match rival.kind {
        RivalKind::NoSheet => Text::new("identify-no-sheet").taxon("look_alike", &rival.name),
        RivalKind::Cousin => Text::new("identify-cannot-cousin").taxon("taxon", &rival.name),
        RivalKind::Listed(_) => listed(trial, rival),
    }
}

/// What is missing between the target and a rival: characters of which one sheet says nothing, or
/// only from memory; where neither, that the two are too much alike.
fn listed(trial: &Trial<'_>, rival: &Rival) -> Text {
    let mut empty: Vec<Arg> = Vec::new();
    let mut remembered: Vec<Arg> = Vec::new();
    for (column, character) in trial.judge.characters().iter().enumerate() {
        let own = trial.judge.shown(trial.target, column);
        let other = rival.shown(trial.judge, trial.target, column);
        let name = || Arg::Words(character.id.clone());
        match (own.filter(|_| trial.visible(character)), other) {
            (Some(_), None) => empty.push(name()),
            (Some(own), Some(other)) if !(own.clears && other.clears) => remembered.push(name()),
            _ => {}
        }
    }
    let id = match (empty.is_empty(), remembered.is_empty()) {
        (true, true) => "identify-cannot-alike",
        (false, true) => "identify-cannot-empty",
        (true, false) => "identify-cannot-remembered",
        (false, false) => "identify-cannot-empty-and-remembered",
    };
    empty.truncate(CHARACTERS);
    remembered.truncate(CHARACTERS);
    let text = Text::new(id).taxon("rival", &rival.name);
    text.with("empty", empty).with("remembered", remembered)
}
