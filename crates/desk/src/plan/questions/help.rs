//! Whether help can be called and finds the way, and whether the group knows when to turn back.

use super::{About, OpenQuestion, question, refused};
use crate::outing::Reaches;
use crate::plan::{Emergency, NumberPlan, NumberStanding, StopPlace, Timetable};
use ground::{Answer, Arg, Refusal, Text};
use std::collections::BTreeSet;

pub(super) fn of_emergency(card: &Emergency) -> Vec<OpenQuestion> {
    let numbers = card.numbers.iter().filter_map(number);
    let places = card.places.iter().flat_map(place);
    numbers.chain(first_aider(card)).chain(gaps(card)).chain(places).collect()
}

fn ask(of: &str, why: Text, settle: &str) -> OpenQuestion {
    question(About::Emergency, of, why, Text::new(settle))
}

fn first_aider(card: &Emergency) -> Option<OpenQuestion> {
    let why = Text::new("plan-no-first-aider");
    card.first_aider.is_none().then(|| ask("", why, "plan-settle-first-aider"))
}

fn number(number: &NumberPlan) -> Option<OpenQuestion> {
    let kind = match number.reaches {
        Reaches::Emergency => "emergency",
        Reaches::PoisonInformation => "poison-information",
        Reaches::Other => "other",
    };
    let called = || number.called.clone().unwrap_or_default();
    let why = match number.standing {
        NumberStanding::LookedUp => return None,
        NumberStanding::Missing => {
            Text::new("plan-number-missing").with("kind", Text::new(format!("plan-reaches-{kind}")))
        }
        NumberStanding::Unsourced => Text::new("plan-number-unsourced").with("called", called()),
        NumberStanding::Old => {
            let text = Text::new("plan-number-old").with("called", called());
            number.looked_up.iter().fold(text, |text, day| text.with("day", *day))
        }
    };
    Some(ask(kind, why, "plan-settle-look-up"))
}

/// What else the card has room for and nobody said.
fn gaps(card: &Emergency) -> Option<OpenQuestion> {
    let gaps: Vec<Arg> = [
        ("plan-gap-base", card.base.is_none()),
        ("plan-gap-alarm", card.alarm_at.is_none()),
        ("plan-gap-meeting", card.meeting_point.is_none()),
        ("plan-gap-second-way", card.second_way.is_none()),
        ("plan-gap-deputy", card.deputy.is_none()),
    ]
    .into_iter()
    .filter(|(_, open)| *open)
    .map(|(gap, _)| Arg::from(Text::new(gap)))
    .collect();
    let why = Text::new("plan-card-gaps").with("gaps", gaps.clone());
    (!gaps.is_empty()).then(|| ask("", why, "plan-settle-card-gaps"))
}

fn place(place: &StopPlace) -> Vec<OpenQuestion> {
    let lacks = [("plan-no-place", place.is_placed()), ("plan-no-road", place.road.is_some())];
    let open = lacks.into_iter().filter(|(_, known)| !known).map(|(id, _)| {
        let why = Text::new(id).with("site", place.called.as_str());
        ask(&place.site, why, "plan-settle-place")
    });
    open.collect()
}

/// Each reason for which it is not known when to turn back, once.
pub(super) fn of_the_way_back(day: &Timetable) -> Vec<OpenQuestion> {
    let open = day.rows.iter().filter_map(|row| match &row.leave_by {
        Answer::Refused(refusal) => Some(refusal),
        Answer::Known(_) => None,
    });
    let open: BTreeSet<&Refusal> = open.collect();
    open.into_iter().map(|refusal| refused(About::WayBack, "", refusal)).collect()
}
