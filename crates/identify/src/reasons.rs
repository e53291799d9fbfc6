//! The reasons of a verdict, as messages.

use crate::assess::Assessment;
use crate::contrary::contradictions;
use crate::testimony::Testimony;
use crate::verdict::{Determination, Outcome};
use crate::weighing::Trial;
use crate::{Case, MustLookState, RivalKind, evidence};
use ground::{Arg, Text};

/// As many characters are named that tell it from a look-alike.
const TOLD_BY: usize = 4;

/// Every reason, in the order of the rules.
pub(crate) fn all(
    outcome: &Outcome,
    (trial, testimonies): (&Trial<'_>, &[Testimony]),
    assessment: &Assessment<'_>,
    case: &Case,
) -> Vec<Text> {
    let mut reasons = vec![headline(outcome, trial)];
    if outcome.is_determined() {
        reasons.extend(told_apart(assessment));
    } else {
        reasons.extend(open(trial, assessment, case));
    }
    reasons.extend(contradictions(trial.judge, testimonies));
    if case.left_out() > 0 {
        reasons.push(Text::new("identify-looks-of-another-day").with("count", case.left_out()));
    }
    reasons.extend(out_of_season(trial, assessment));
    if outcome.is_determined() {
        reasons.push(Text::new("identify-lapses").with("day", case.day));
    }
    reasons
}

fn headline(outcome: &Outcome, trial: &Trial<'_>) -> Text {
    let taxon = trial.taxon.name.as_str();
    match outcome {
        Outcome::RuledOut => Text::new("identify-ruled-out").taxon("taxon", taxon),
        Outcome::NotYet => Text::new("identify-not-yet").taxon("taxon", taxon),
        Outcome::Determined { level, twins } => {
            let text = match level {
                Determination::Species => Text::new("identify-determined").taxon("taxon", taxon),
                Determination::OrAlike => {
                    Text::new("identify-determined-or-alike").taxon("taxon", taxon)
                }
                Determination::Aggregate(name) => {
                    Text::new("identify-determined-aggregate").taxon("aggregate", name)
                }
            };
            if twins.is_empty() {
                return text;
            }
            Text::new("identify-or-harmless-twin")
                .with("determined", text)
                .with("twins", taxa(twins))
        }
    }
}

/// What tells it from each dangerous look-alike, the strongest first.
fn told_apart<'a>(assessment: &'a Assessment<'_>) -> impl Iterator<Item = Text> + 'a {
    assessment.tells.iter().map(|tells| {
        let strongest = tells.characters.iter().take(TOLD_BY);
        let strongest: Vec<Arg> = strongest.map(|tell| tell.character.as_str().into()).collect();
        Text::new("identify-told-apart")
            .taxon("look_alike", &tells.look_alike)
            .with("characters", strongest)
    })
}

/// What was read of organs that the plant does not show in that month: it counts only against it.
fn out_of_season(trial: &Trial<'_>, assessment: &Assessment<'_>) -> Option<Text> {
    let weighed = assessment.scales.weighed();
    let hidden = weighed.filter(|weighed| !trial.visible(weighed.character));
    let hidden: Vec<Arg> = hidden.map(|weighed| weighed.character.id.as_str().into()).collect();
    (!hidden.is_empty()).then(|| {
        Text::new("identify-out-of-season")
            .taxon("taxon", &trial.taxon.name)
            .with("month", Text::new(format!("month-{}", trial.month.number())))
            .with("characters", hidden)
    })
}

/// What stands in the way.
fn open<'a>(
    trial: &'a Trial<'_>,
    assessment: &'a Assessment<'_>,
    case: &'a Case,
) -> impl Iterator<Item = Text> + 'a {
    let material = (!case.material.can_be_determined())
        .then(|| Text::new(format!("identify-material-{}", case.material.word())));
    let unread = assessment.scales.weighed().next().is_none();
    let none = unread.then(|| Text::new("identify-no-looks"));
    let bar = (assessment.twins().is_none()).then(|| bar(assessment));
    let sheets = trial.rivals.iter().filter(|rival| rival.kind == RivalKind::NoSheet);
    let sheets =
        sheets.map(|rival| Text::new("identify-no-sheet").taxon("look_alike", &rival.name));
    let beside = tells(assessment).chain(hardly_denied(assessment)).chain(must_looks(assessment));
    let beside = beside.chain(misfit(assessment)).chain(second(assessment));
    material.into_iter().chain(none).chain(bar).chain(sheets).chain(beside)
}

/// What it could still be.
fn bar(assessment: &Assessment<'_>) -> Text {
    let heavy = assessment.in_the_way();
    let name = |kind: RivalKind, name: &str| match kind {
        RivalKind::Cousin => {
            Arg::Text(Text::new("identify-unlisted-relative").taxon("taxon", name))
        }
        _ => Arg::Taxon(name.to_owned()),
    };
    let rivals: Vec<Arg> =
        heavy.iter().take(3).map(|(_, rival, _)| name(rival.kind, &rival.name)).collect();
    Text::new("identify-rivals-in-the-way").with("rivals", rivals)
}

fn tells<'a>(assessment: &'a Assessment<'_>) -> impl Iterator<Item = Text> + 'a {
    let open = assessment.tells.iter().filter(|tells| !tells.met);
    open.map(|tells| Text::new("identify-tells-open").taxon("look_alike", &tells.look_alike))
}

/// Once the bar is met, since before it every rival is denied too seldom.
fn hardly_denied<'a>(assessment: &'a Assessment<'_>) -> impl Iterator<Item = Text> + 'a {
    let met = assessment.twins().is_some();
    assessment.hardly_denied.iter().filter(move |_| met).map(|denial| {
        Text::new("identify-hardly-denied")
            .taxon("rival", &denial.rival)
            .with("readings", denial.readings)
            .with("organs", denial.organs)
            .with("wanted", evidence::DENIALS)
    })
}

fn must_looks<'a>(assessment: &'a Assessment<'_>) -> impl Iterator<Item = Text> + 'a {
    let id = |state: MustLookState| match state {
        MustLookState::Done => None,
        MustLookState::Open => Some("identify-must-look-open"),
        MustLookState::Doubtful => Some("identify-must-look-doubtful"),
        MustLookState::Contrary => Some("identify-must-look-contrary"),
        MustLookState::NotKnown => Some("identify-must-look-not-known"),
    };
    let text = move |must: &'a crate::MustLook| {
        Some(Text::new(id(must.state)?).with("character", must.character.as_str()))
    };
    assessment.must_looks.iter().filter_map(text)
}

fn misfit(assessment: &Assessment<'_>) -> Option<Text> {
    let misfit = &assessment.misfit;
    let groups: Vec<Arg> = misfit.groups.iter().map(|group| group.as_str().into()).collect();
    misfit.blocks().then(|| Text::new("identify-misfit").with("groups", groups))
}

fn second(assessment: &Assessment<'_>) -> Option<Text> {
    let open = assessment.second.iter().filter(|second| !second.had);
    let open: Vec<String> = open.map(|second| second.against.clone()).collect();
    let wanted = assessment.settled_once() && !open.is_empty();
    wanted.then(|| Text::new("identify-second-reading-open").with("rivals", taxa(&open)))
}

/// Scientific names as a list.
pub(crate) fn taxa(names: &[String]) -> Vec<Arg> {
    names.iter().map(|name| Arg::Taxon(name.clone())).collect()
}
