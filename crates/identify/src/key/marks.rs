//! What a printed key can ask: the characters of some plants as columns of a table of few answers.
//!
//! - Only cells that were read count, and only of organs that a plant shows in the month; everything
//!   else is unknown.
//! - States of which one is a kind of another are one answer where both are shown.
//! - A length or a count is cut where the ranges of two groups of plants leave a gap; a plant gives
//!   every answer that its range touches, outer limits included.

use super::{Form, Table};
use crate::compare::named;
use crate::judge::Judge;
use crate::states::related;
use crate::weighing::visible;
use crate::{Kind, State, Value};
use ground::{Finite, Month};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};

/// More cuts than these would make more leads than a reader can compare.
const MOST_CUTS: usize = 2;

/// With more plants than these, not every character is tried.
const FEW: usize = 12;

/// With more, so many characters are tried for each pair, or as many as tell it apart.
const FOR_EACH_PAIR: usize = 3;

/// What somebody reads who goes along a lead.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Reads {
    /// One of these states.
    States(Vec<String>),
    /// A measure or count in one of these stretches.
    Within(Vec<Stretch>),
}

/// A stretch of lengths in millimetres, or of counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Stretch {
    /// More than this; none: from nothing on.
    pub over: Option<Finite>,
    /// Up to this; none: however much.
    pub up_to: Option<Finite>,
}

impl Reads {
    /// Whether either is read.
    fn or(self, other: Self) -> Self {
        match (self, other) {
            (Self::States(one), Self::States(other)) => {
                Self::States(one.into_iter().chain(other).collect())
            }
            (Self::Within(one), Self::Within(other)) => {
                Self::Within(other.into_iter().fold(one, joined))
            }
            (one, _) => one,
        }
    }
}

/// Stretches with one more, which goes on from the last where it begins there.
fn joined(mut all: Vec<Stretch>, next: Stretch) -> Vec<Stretch> {
    match all.last_mut() {
        Some(last) if last.up_to.is_some() && last.up_to == next.over => last.up_to = next.up_to,
        _ => all.push(next),
    }
    all
}

/// A character as a printed key asks for it.
pub(super) struct Column {
    /// Its number in the table of plants.
    pub(super) character: usize,
    /// What each of its answers says.
    answers: Vec<Reads>,
    /// By plant: the answers that it may give; none where that is unknown.
    shows: Vec<BTreeSet<usize>>,
}

impl Column {
    /// What somebody reads who gives one of these answers.
    pub(super) fn reads(&self, answers: &[usize]) -> Reads {
        let said = answers.iter().filter_map(|answer| self.answers.get(*answer)).cloned();
        said.reduce(Reads::or).unwrap_or(Reads::States(Vec::new()))
    }

    /// The answers that a plant may give; none where that is unknown.
    pub(super) fn shows(&self, plant: usize) -> Option<&BTreeSet<usize>> {
        self.shows.get(plant).filter(|shows| !shows.is_empty())
    }

    /// The pairs of plants that it tells apart.
    fn pairs(&self) -> impl Iterator<Item = (usize, usize)> {
        let known = || self.shows.iter().enumerate().filter(|(_, shows)| !shows.is_empty());
        known().flat_map(move |(one, shows)| {
            let others =
                known().filter(move |(other, theirs)| one < *other && shows.is_disjoint(theirs));
            others.map(move |(other, _)| (one, other))
        })
    }

    /// How many leads all plants together would go down.
    fn spread(&self) -> usize {
        let goes = |shows: &BTreeSet<usize>| match shows.len() {
            0 => self.answers.len(),
            some => some,
        };
        self.shows.iter().map(goes).sum()
    }
}

/// The columns that tell some of these plants apart.
pub(super) fn columns(judge: &Judge<'_>, rows: &[usize], month: Option<Month>) -> Vec<Column> {
    let all = 0..judge.characters().len();
    let made = all.filter_map(|character| column(judge, rows, character, month));
    made.filter(|column| column.pairs().next().is_some()).collect()
}

/// Of columns to many plants those that are tried: for each pair the few that tell it apart and send
/// the plants down the fewest leads, so that the key stays short enough to print. What any column
/// tells apart, these tell apart too.
pub(super) fn tried(judge: &Judge<'_>, columns: Vec<Column>, plants: usize) -> Vec<Column> {
    if plants <= FEW {
        return columns;
    }
    let seconds = |column: &Column| judge.character(column.character).map(|c| c.seconds);
    let mut ranked: Vec<_> = columns.into_iter().collect();
    ranked.sort_by_key(|column| (column.spread(), seconds(column), column.character));
    let mut told: BTreeMap<(usize, usize), usize> = BTreeMap::new();
    let mut kept: Vec<Column> = Vec::new();
    for column in ranked {
        let wanted = |pair: &(usize, usize)| told.get(pair).is_none_or(|n| *n < FOR_EACH_PAIR);
        if column.pairs().any(|pair| wanted(&pair)) {
            column.pairs().for_each(|pair| *told.entry(pair).or_default() += 1);
            kept.push(column);
        }
    }
    kept.sort_by_key(|column| column.character);
    kept
}

/// A table of plants that are met equally often, each a form of its own.
pub(super) fn table(judge: &Judge<'_>, columns: &[Column], plants: usize) -> Table {
    let seconds = |column: &Column| judge.character(column.character).map_or(1, |c| c.seconds);
    let form = |plant: usize| Form {
        taxon: plant,
        weight: Finite::new(1.0).unwrap_or(Finite::ZERO),
        shows: columns.iter().map(|c| c.shows(plant).cloned().unwrap_or_default()).collect(),
    };
    Table { seconds: columns.iter().map(seconds).collect(), forms: (0..plants).map(form).collect() }
}

fn column(
    judge: &Judge<'_>,
    rows: &[usize],
    character: usize,
    month: Option<Month>,
) -> Option<Column> {
    let known = |row: &usize| known(judge, *row, character, month);
    let values: Vec<Option<&Value>> = rows.iter().map(known).collect();
    let (answers, shows) = match &judge.character(character)?.kind {
        Kind::States(states) => of_states(states, &values),
        kind => of_ranges(*kind == Kind::Count, &values),
    };
    Some(Column { character, answers, shows })
}

/// What a sheet says of a character, where it was read and can be seen.
pub(super) fn known<'m>(
    judge: &Judge<'m>,
    row: usize,
    column: usize,
    month: Option<Month>,
) -> Option<&'m Value> {
    let (taxon, character) = (judge.taxon(row)?, judge.character(column)?);
    let seen = month.is_none_or(|month| visible(taxon, character, month));
    let cell = judge.matrix().at(row, column)?;
    (seen && judge.shown(row, column)?.clears).then_some(&cell.value)
}

type Answers = (Vec<Reads>, Vec<BTreeSet<usize>>);

fn of_states(states: &[State], values: &[Option<&Value>]) -> Answers {
    let shown: Vec<BTreeSet<&String>> =
        values.iter().map(|value| value.iter().flat_map(|value| named(value)).collect()).collect();
    let all: BTreeSet<&String> = shown.iter().flatten().copied().collect();
    let mut kinds: Vec<Vec<&String>> = Vec::new();
    for state in states.iter().map(|state| &state.id).filter(|id| all.contains(id)) {
        let kin = |kind: &Vec<&String>| kind.iter().any(|other| related(states, state, other));
        let (mut one, others): (Vec<_>, Vec<_>) = kinds.into_iter().partition(kin);
        one.push(vec![state]);
        kinds = others;
        kinds.push(one.concat());
    }
    let answers = kinds.iter().map(|kind| kind.iter().map(|id| (*id).clone()).collect());
    let gives = |shown: &BTreeSet<&String>| {
        let met = kinds.iter().enumerate();
        met.filter(|(_, kind)| kind.iter().any(|id| shown.contains(id))).map(|(at, _)| at).collect()
    };
    (answers.map(Reads::States).collect(), shown.iter().map(gives).collect())
}

fn of_ranges(count: bool, values: &[Option<&Value>]) -> Answers {
    let ranges: Vec<_> = values.iter().map(|value| value.and_then(range)).collect();
    let cuts = cuts(&ranges.iter().flatten().copied().collect::<Vec<_>>(), count);
    let ends = || cuts.iter().copied().map(Finite::new);
    let overs = std::iter::once(None).chain(ends());
    let stretches: Vec<_> =
        overs.zip(ends().chain([None])).map(|(over, up_to)| Stretch { over, up_to }).collect();
    let gives = |range: &Option<(f64, f64)>| {
        let met = stretches.iter().enumerate();
        met.filter(|(_, stretch)| range.is_some_and(|range| stretch.touches(range)))
            .map(|(at, _)| at)
            .collect()
    };
    let shows = ranges.iter().map(gives).collect();
    (stretches.iter().map(|stretch| Reads::Within(vec![*stretch])).collect(), shows)
}

impl Stretch {
    fn touches(&self, (low, high): (f64, f64)) -> bool {
        let above = self.over.is_none_or(|over| high > over.get());
        above && self.up_to.is_none_or(|up_to| low <= up_to.get())
    }
}

fn range(value: &Value) -> Option<(f64, f64)> {
    match value {
        Value::Range { ordinary, extreme } => Some(extreme.unwrap_or(*ordinary)),
        _ => None,
    }
}

/// Where to cut, in order: the gaps that tell most pairs apart which no other cut does.
fn cuts(ranges: &[(f64, f64)], count: bool) -> Vec<f64> {
    let mut gaps: Vec<f64> = gaps(ranges).into_iter().map(|gap| within(gap, count)).collect();
    let mut cuts = Vec::new();
    let mut apart = BTreeSet::new();
    while cuts.len() < MOST_CUTS {
        let told = gaps.iter().map(|cut| (told_apart(ranges, *cut), *cut));
        let more = told.map(|(pairs, cut)| (pairs.difference(&apart).count(), pairs, cut));
        let better = |best: &(usize, _, f64), next: &(usize, _, f64)| best.0 < next.0;
        let best = more.reduce(|best, next| if better(&best, &next) { next } else { best });
        let Some((1.., pairs, cut)) = best else { break };
        apart.extend(pairs);
        gaps.retain(|gap| *gap != cut);
        cuts.push(cut);
    }
    cuts.sort_by(f64::total_cmp);
    cuts
}

/// Where the end of a range is followed by the beginning of another, with nothing between.
fn gaps(ranges: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut gaps: Vec<(f64, f64)> = Vec::new();
    let mut lows: Vec<f64> = ranges.iter().map(|(low, _)| *low).collect();
    lows.sort_by(f64::total_cmp);
    for low in lows {
        let ends = ranges.iter().map(|(_, high)| *high).filter(|high| *high < low);
        let Some(high) = ends.max_by(f64::total_cmp) else { continue };
        if gaps.last().is_none_or(|gap| gap.0 < high) {
            gaps.push((high, low));
        }
    }
    gaps
}

/// The pairs of which one lies below a cut and the other above.
fn told_apart(ranges: &[(f64, f64)], cut: f64) -> BTreeSet<(usize, usize)> {
    let all = || ranges.iter().enumerate();
    let below = all().filter(|(_, (_, high))| *high <= cut);
    below
        .flat_map(|(one, _)| {
            all().filter(|(_, (low, _))| *low > cut).map(move |(two, _)| (one, two))
        })
        .collect()
}

/// A number to cut a gap at: as round as there is one in its middle half, so that a measure that is a
/// little off still falls on its side.
fn within((high, low): (f64, f64), count: bool) -> f64 {
    if count {
        return ((high.floor() + low.ceil() - 1.0) / 2.0).floor().max(high.floor());
    }
    let quarter = (low - high) / 4.0;
    let (from, to, middle) = (high + quarter, low - quarter, high + 2.0 * quarter);
    let steps = [1000.0, 500.0, 100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2, 0.1];
    // A tenth of a millimetre is not said of what is longer than a centimetre.
    let said = steps.iter().filter(|step| **step >= 1.0 || middle < 10.0);
    let mut round = said.map(|step| (middle / step).round() * step);
    round.find(|at| (from..=to).contains(at)).unwrap_or(high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_is_cut_at_a_round_number_in_a_gap() {
        let ranges = [(10.0, 40.0), (30.0, 50.0), (80.0, 200.0), (20.0, 300.0), (700.0, 900.0)];
        assert_eq!(gaps(&ranges), [(50.0, 80.0), (300.0, 700.0)]);
        assert_eq!(cuts(&ranges, false), [60.0, 500.0]);
        assert!(cuts(&[(1.0, 3.0), (2.0, 4.0)], false).is_empty());
    }

    #[test]
    fn a_count_is_cut_between_two_numbers() {
        assert_eq!(within((5.0, 6.0), true), 5.0);
        assert_eq!(within((3.0, 10.0), true), 6.0);
        assert_eq!(within((0.0, 1.0), true), 0.0);
    }

    #[test]
    fn a_plant_gives_every_answer_that_its_range_touches() {
        let range = |low, high| Value::Range { ordinary: (low, high), extreme: None };
        let values = [range(10.0, 50.0), range(80.0, 200.0), range(20.0, 120.0)];
        let (answers, shows) = of_ranges(false, &values.each_ref().map(Some));
        let cut = Finite::new(60.0);
        assert_eq!(
            answers,
            [(None, cut), (cut, None)]
                .map(|(over, up_to)| Reads::Within(vec![Stretch { over, up_to }]))
        );
        assert_eq!(shows, [BTreeSet::from([0]), BTreeSet::from([1]), BTreeSet::from([0, 1])]);
    }

    #[test]
    fn a_state_and_its_kind_are_one_answer_where_both_are_shown() {
        let Kind::States(mut states) =
            crate::sample::character("vein", &["netted", "palmate", "parallel", "pinnate"]).kind
        else {
            panic!("states");
        };
        states[1].kind_of = Some("netted".to_owned());
        states[3].kind_of = Some("netted".to_owned());
        let values = ["palmate", "netted", "parallel", "pinnate"].map(crate::sample::always);
        let (answers, shows) = of_states(&states, &values.each_ref().map(Some));
        assert_eq!(answers.len(), 2);
        assert!(shows[0] == shows[1] && shows[1] == shows[3] && shows[2] != shows[0]);
        let (answers, _) = of_states(&states, &[Some(&values[0]), Some(&values[3])]);
        assert_eq!(answers.len(), 2, "without the general state the two differ");
    }

    #[test]
    fn stretches_that_meet_are_said_as_one() {
        let stretch = |over: Option<f64>, up_to: Option<f64>| Stretch {
            over: over.and_then(Finite::new),
            up_to: up_to.and_then(Finite::new),
        };
        let within = |stretch| Reads::Within(vec![stretch]);
        let low = within(stretch(None, Some(6.0)));
        let middle = within(stretch(Some(6.0), Some(12.0)));
        let high = within(stretch(Some(12.0), None));
        assert_eq!(low.clone().or(middle), within(stretch(None, Some(12.0))));
        let apart = Reads::Within(vec![stretch(None, Some(6.0)), stretch(Some(12.0), None)]);
        assert_eq!(low.or(high), apart);
    }
}
