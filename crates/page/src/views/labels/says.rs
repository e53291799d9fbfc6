//! What a label says, line after line in the order of weight: what must be on it comes first.

use crate::{LabelLine, Prose, Words};
use desk::{LabelPlan, Labelled, Sorted};
use dose::{Action, Spoken, Who};
use ground::{Condition, Text, Unit};
use jiff::civil::DateTime;
use prepare::HerbState;
use std::collections::BTreeSet;

/// A line, and whether it stands on a label of what must not be used too.
pub(super) struct Line {
    pub(super) says: LabelLine,
    pub(super) always: bool,
}

/// Below this, the hour matters, in minutes: three days.
const BY_THE_HOUR: f64 = 3.0 * 24.0 * 60.0;

/// What it is called: a lot by its plants.
pub(super) fn title(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    if let Some(called) = &plan.called {
        return Prose::new().said(called);
    }
    let plants = plan.plants.iter();
    let names: Vec<_> =
        plants.map(|plant| plant.common.clone().unwrap_or_else(|| plant.taxon.clone())).collect();
    if names.is_empty() {
        return words.word("label-plant-unknown").into();
    }
    Prose::new().said(&words.catalogue.list(&names))
}

pub(super) fn scientific(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    if plan.plants.is_empty() {
        return words.word("label-unknown").into();
    }
    let names = plan.plants.iter().enumerate();
    names.fold(Prose::new(), |prose, (at, plant)| {
        let prose = if at > 0 { prose.text(", ") } else { prose };
        prose.taxon(&plant.taxon)
    })
}

/// That it must not be used, with every reason: on a label in few words.
pub(super) fn do_not(plan: &LabelPlan, short: bool, words: &Words<'_>) -> Option<Prose> {
    let said = |text: &Text| {
        let few = short && words.catalogue.has(&format!("{}-short", text.id));
        if few { words.word(&format!("{}-short", text.id)) } else { words.catalogue.say(text) }
    };
    let reasons: Vec<_> = plan.do_not.iter().map(said).collect();
    let says = Text::new("label-do-not").with("reasons", words.catalogue.list(&reasons));
    (!reasons.is_empty()).then(|| words.prose(&says))
}

/// Every line.
pub(super) fn lines(
    plan: &LabelPlan,
    (code, copy): (Option<String>, Option<(u32, u32)>),
    words: &Words<'_>,
) -> Vec<Line> {
    let line = |always: bool, id: &str, value: Prose| Line {
        says: LabelLine::new(words.word(id), value),
        always,
    };
    let kind = match plan.on {
        Labelled::Lot => "label-lot",
        Labelled::Batch | Labelled::Wish => "label-batch",
    };
    let since = if plan.on == Labelled::Lot { "label-gathered" } else { "label-made" };
    let mut lines = vec![
        line(true, kind, code_line(code, copy, words)),
        line(false, "label-until", until(plan, words)),
        line(true, "label-sorting", sorted(plan, words)),
        line(false, "label-allergens", allergens(plan, words)),
    ];
    lines.extend(for_whom(plan, words).into_iter().map(|says| Line { says, always: false }));
    lines.push(line(true, "label-what", what(plan, words)));
    lines.push(line(true, since, day(plan.since, words)));
    lines.extend(strength(plan, words).map(|value| line(false, "label-strength", value)));
    lines.push(line(true, "label-from", stands(plan, words)));
    let law = if plan.sold { "label-law-sold" } else { "label-law-not-sold" };
    lines.push(line(false, "label-law", words.word(law).into()));
    lines.extend(families(plan).map(|value| line(false, "label-family", value)));
    lines
}

/// For whom it is not, who asks first, and what everybody minds.
pub(in crate::views) fn for_whom(plan: &LabelPlan, words: &Words<'_>) -> Vec<LabelLine> {
    let line = |id: &str, value: Prose| LabelLine::new(words.word(id), value);
    let unknown = plan.spoken.is_empty().then(|| words.word("label-cautions-unknown").into());
    let not_for = group(excluded(plan), words).into_iter().chain(unknown);
    let not_for = not_for.map(|value| line("label-not-for", value));
    let ask = asked_first(plan, words).map(|value| line("label-ask", value));
    let mind = everybody(plan).map(|says| line("label-everybody", says));
    not_for.chain(ask).chain(mind).collect()
}

fn code_line(code: Option<String>, copy: Option<(u32, u32)>, words: &Words<'_>) -> Prose {
    let Some(code) = code else { return words.word("label-no-code").into() };
    let code = Prose::new().text(&code);
    let Some((copy, of)) = copy else { return code };
    code.text(", ").then(words.prose(&Text::new("label-jar").with("copy", copy).with("of", of)))
}

/// The last day; the hour too where it keeps for days only.
pub(in crate::views) fn until(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    let Some(keeping) = &plan.keeping else { return words.word("label-until-unknown").into() };
    let place = words.word(&format!("label-shelf-{}", keeping.place.word()));
    let Some(until) = plan.until else {
        return words.prose(&Text::new("label-until-after").with("kept", keeping.text()));
    };
    let says = if keeping.most.minutes() < BY_THE_HOUR {
        Text::new("label-until-hour").with("time", clock(until))
    } else {
        Text::new("label-until-day")
    };
    words.prose(&says.with("day", until.date()).with("place", place))
}

fn clock(at: DateTime) -> String {
    format!("{:02}:{:02}", at.hour(), at.minute())
}

fn day(at: Option<DateTime>, words: &Words<'_>) -> Prose {
    match at {
        Some(at) => words.prose(&Text::new("label-day").with("day", at.date())),
        None => words.word("label-unknown").into(),
    }
}

/// Part, preparation, and whether the herb was fresh.
fn what(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    let part = plan.part.map_or("label-part-unknown".to_owned(), |p| format!("part-{}", p.word()));
    let state = match plan.state {
        Some(HerbState::Fresh) => "label-state-fresh",
        Some(HerbState::Dried) => "label-state-dried",
        None => "label-state-unknown",
    };
    let form = plan.form.map(|form| format!("form-{}", form.word()));
    let ids = form.into_iter().chain([part, state.to_owned()]);
    let said: Vec<_> = ids.map(|id| words.word(&id)).collect();
    Prose::from(said.join(", "))
}

pub(in crate::views) fn sorted(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    match &plan.sorted {
        Sorted::Not => Prose::new().strong(&words.word("label-sorted-not")),
        Sorted::By { initials, at } => {
            let by = words.catalogue.list(initials);
            let says = match at {
                Some(at) => Text::new("label-sorted-on").with("day", at.date()),
                None => Text::new("label-sorted-by"),
            };
            words.prose(&says.with("by", by))
        }
    }
}

/// Alcohol, sugar, spirit on herb, herb in one serving; of a lot, its moisture.
fn strength(plan: &LabelPlan, words: &Words<'_>) -> Option<Prose> {
    let strength = &plan.strength;
    let alcohol = strength.alcohol.map(|span| {
        let range = (span.low.percent(), span.high.percent());
        Prose::from(words.catalogue.range(range.0, range.1, Unit::PercentVolume))
    });
    let sugar = strength.sugar.map(|sugar| {
        let said = words.amount(sugar.degrees(), Unit::PercentMass).plain();
        words.prose(&Text::new("label-sugar").with("sugar", said))
    });
    let ratio = strength.spirit_on_herb.map(|ratio| {
        words.prose(&Text::new("label-ratio").amount("parts", ratio.get(), Unit::One))
    });
    let herb = strength.herb_in_one.map(|herb| {
        words.prose(&Text::new("label-herb-in-one").amount("herb", herb.g(), Unit::Gram))
    });
    let parts = [alcohol, sugar, ratio, herb].into_iter().flatten();
    let parts = parts.chain((plan.on == Labelled::Lot).then(|| moisture(plan, words)));
    parts.reduce(|all, part| all.text("; ").then(part))
}

/// The water in the herb; what nobody weighed is said so.
pub(in crate::views) fn moisture(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    let strength = &plan.strength;
    let Some((low, high)) = strength.moisture else {
        return words.word("label-moisture-unknown").into();
    };
    let id = if strength.moisture_supposed { "label-moisture-supposed" } else { "label-moisture" };
    let range = words.catalogue.range(low.percent(), high.percent(), Unit::Percent);
    words.prose(&Text::new(id).with("water", range))
}

/// The fourteen of the law, as far as they are known.
fn allergens(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    let all = &plan.allergens;
    let carried =
        all.carried.iter().map(|allergen| words.word(&format!("allergen-{}", allergen.word())));
    let carried: Vec<_> = carried.collect();
    let unknown: Vec<_> = all.unknown.iter().cloned().collect();
    let says = match (carried.is_empty(), unknown.is_empty() && all.settled) {
        (true, true) => Text::new("label-allergens-none"),
        (false, true) => Text::new("label-allergens-carried"),
        (true, false) => Text::new("label-allergens-unknown"),
        (false, false) => Text::new("label-allergens-and-unknown"),
    };
    let unknown = if unknown.is_empty() {
        words.word("label-allergens-of-all")
    } else {
        words.catalogue.list(&unknown)
    };
    words.prose(&says.with("carried", words.catalogue.list(&carried)).with("of", unknown))
}

/// What holds for everybody, in the words of the rows.
fn everybody(plan: &LabelPlan) -> impl Iterator<Item = Prose> + '_ {
    let all = plan.spoken.iter().filter(|row| row.who == Who::Group(Condition::All));
    let said: BTreeSet<_> =
        all.filter(|row| !row.wording.is_empty()).map(|row| &row.wording).collect();
    said.into_iter().map(|wording| Prose::new().said(wording))
}

/// Those it is not for.
fn excluded(plan: &LabelPlan) -> BTreeSet<Who> {
    let rows = plan.spoken.iter().filter(|row| row.action == Action::Exclude);
    rows.map(|row| row.who).collect()
}

fn asks(row: &Spoken) -> bool {
    matches!(row.action, Action::Ask | Action::Limit)
}

/// Every caution, but for those that ask something of people it is not for anyway.
pub(super) fn cautions(plan: &LabelPlan) -> impl Iterator<Item = &Spoken> {
    let not_for = excluded(plan);
    let under = not_for.iter().filter_map(|who| years(*who)).max();
    let left =
        move |who: &Who| !not_for.contains(who) && (years(*who).is_none() || years(*who) > under);
    plan.spoken.iter().filter(move |row| !asks(row) || left(&row.who))
}

/// Those who ask first.
fn asked_first(plan: &LabelPlan, words: &Words<'_>) -> Option<Prose> {
    group(cautions(plan).filter(|row| asks(row)).map(|row| row.who).collect(), words)
}

/// Groups of people, each once; of ages the highest stands for all.
fn group(who: BTreeSet<Who>, words: &Words<'_>) -> Option<Prose> {
    let years = who.iter().filter_map(|who| years(*who)).max();
    let mut said: Vec<_> = who
        .iter()
        .filter(|who| years_of(**who).is_none())
        .filter_map(|who| match who {
            Who::Group(Condition::All) | Who::Under(_) => None,
            Who::Group(condition) => Some(words.word(&format!("label-who-{}", condition.word()))),
        })
        .collect();
    said.extend(years.map(|years| {
        words.catalogue.say(&Text::new("label-who-under").with("years", u32::from(years)))
    }));
    (!said.is_empty()).then(|| Prose::from(said.join(", ")))
}

fn years(who: Who) -> Option<u8> {
    years_of(who).filter(|years| *years > 0)
}

/// The age below which a group of people is.
fn years_of(who: Who) -> Option<u8> {
    match who {
        Who::Under(years) => Some(years),
        Who::Group(Condition::Under18) => Some(18),
        Who::Group(Condition::Under12) => Some(12),
        Who::Group(Condition::Under4) => Some(4),
        Who::Group(Condition::Under1) => Some(1),
        Who::Group(_) => None,
    }
}

pub(in crate::views) fn stands(plan: &LabelPlan, words: &Words<'_>) -> Prose {
    let said: Vec<_> = plan
        .stands
        .iter()
        .map(|place| {
            let says = Text::new("label-stand");
            says.with("site", place.site.as_str()).with("stand", place.stand.as_str())
        })
        .map(|says| words.catalogue.say(&says))
        .collect();
    if said.is_empty() {
        return words.word("label-unknown").into();
    }
    Prose::from(words.catalogue.list(&said))
}

fn families(plan: &LabelPlan) -> impl Iterator<Item = Prose> + '_ {
    let all: BTreeSet<_> = plan.plants.iter().filter_map(|plant| plant.family.as_ref()).collect();
    all.into_iter().map(|family| Prose::new().taxon(family))
}

/// One caution at full length: for whom, what it asks, what it says, where it comes from.
pub(super) fn caution(row: &Spoken, words: &Words<'_>) -> Prose {
    let who = match row.who {
        Who::Group(condition) => Text::new(format!("label-who-{}", condition.word())),
        Who::Under(years) => Text::new("label-who-under").with("years", u32::from(years)),
    };
    let id = match row.action {
        Action::Exclude => "label-caution-not-for",
        Action::Ask => "label-caution-ask",
        Action::Limit => "label-caution-limit",
        Action::Note | Action::NoneFound => "label-caution-note",
    };
    let head = words.prose(&Text::new(id).with("who", who));
    let days = row.days.map(|days| {
        Prose::new()
            .text(" ")
            .then(words.prose(&Text::new("label-caution-days").with("days", days)))
    });
    let wording = if row.wording.is_empty() {
        Prose::from(words.word("label-caution-no-data"))
    } else {
        Prose::new().said(&row.wording)
    };
    head.text(" ")
        .then(wording)
        .then(days.unwrap_or_default())
        .text(" (")
        .then(words.sourcing(&row.from))
        .text(")")
}
