//! Drafts of a key: at each couplet the character that some rule likes best.

use super::Step;
use super::bound::entropy;
use super::frame::{Division, Frame, Rest};
use std::collections::BTreeMap;

/// Gives the place in the list of the character to read.
type Rule = fn(&Frame<'_>, &Rest, &[Division]) -> usize;

/// How many characters are looked at two steps ahead, where more would take long.
const LOOKED_AHEAD: usize = 8;

/// What a character that takes no time counts as, in seconds.
const NO_TIME: f64 = 1e-3;

/// Scores that are closer than this differ by rounding only: the first of them is taken.
const ROUNDING: f64 = 1.0 + 1e-12;

/// The cheapest of the drafts.
pub(super) fn best(frame: &Frame<'_>, whole: &Rest) -> Step {
    let rules: [Rule; 3] = [most_information, two_ahead, most_even];
    let drafts = rules.map(|rule| {
        let draft = grow(frame, whole, rule);
        (frame.seconds(&draft, whole), draft)
    });
    let [first, others @ ..] = drafts;
    let cheaper = |a: (f64, Step), b: (f64, Step)| if b.0 < a.0 { b } else { a };
    others.into_iter().fold(first, cheaper).1
}

fn grow(frame: &Frame<'_>, rest: &Rest, rule: Rule) -> Step {
    if frame.is_settled(rest) {
        return frame.end(rest);
    }
    let divisions = frame.divisions(rest);
    let chosen = rule(frame, rest, &divisions);
    match divisions.into_iter().nth(chosen) {
        Some(division) => division.couplet(|rest| grow(frame, rest, rule)),
        None => frame.end(rest),
    }
}

/// The most information for a second.
fn most_information(frame: &Frame<'_>, rest: &Rest, divisions: &[Division]) -> usize {
    first_best(divisions.iter().map(|division| a_second(frame, rest, division)))
}

/// The most information for a second, this character and the best after it taken together.
fn two_ahead(frame: &Frame<'_>, rest: &Rest, divisions: &[Division]) -> usize {
    let score = |division: &Division| a_second(frame, rest, division);
    let mut scores: Vec<_> = divisions.iter().map(score).enumerate().collect();
    scores.sort_by(|a, b| b.1.total_cmp(&a.1));
    scores.truncate(LOOKED_AHEAD);
    let ahead = scores.iter().filter_map(|(at, _)| divisions.get(*at)).map(|first| {
        let mut bits = information(frame, rest, first);
        let mut seconds = frame.cost(first.character) * rest.weight();
        for rest in first.rests().filter(|rest| !frame.is_settled(rest)) {
            let divisions = frame.divisions(rest);
            let second = most_information(frame, rest, &divisions);
            if let Some(second) = divisions.get(second) {
                bits += information(frame, rest, second);
                seconds += frame.cost(second.character) * rest.weight();
            }
        }
        bits / seconds.max(NO_TIME)
    });
    let best = first_best(ahead);
    scores.get(best).map_or(0, |(at, _)| *at)
}

/// The least weight on the heaviest lead.
fn most_even(_: &Frame<'_>, rest: &Rest, divisions: &[Division]) -> usize {
    let heaviest = |division: &Division| division.rests().map(Rest::weight).fold(0.0, f64::max);
    first_best(divisions.iter().map(|division| rest.weight() - heaviest(division)))
}

fn a_second(frame: &Frame<'_>, rest: &Rest, division: &Division) -> f64 {
    information(frame, rest, division) / frame.cost(division.character).max(NO_TIME)
}

/// By how much a character lowers the entropy of the taxa, times the weight that comes here.
fn information(frame: &Frame<'_>, rest: &Rest, division: &Division) -> f64 {
    let after: f64 = division.rests().map(|rest| uncertainty(frame, rest)).sum();
    uncertainty(frame, rest) - after
}

fn uncertainty(frame: &Frame<'_>, rest: &Rest) -> f64 {
    let mut taxa: BTreeMap<usize, f64> = BTreeMap::new();
    for (form, weight) in &rest.forms {
        if let Some(taxon) = frame.taxon(*form) {
            *taxa.entry(taxon).or_default() += weight;
        }
    }
    entropy(&taxa.into_values().collect::<Vec<_>>())
}

/// The place of the first score that no other betters.
fn first_best(scores: impl Iterator<Item = f64>) -> usize {
    let better = |(best, top), (at, score)| {
        if score > f64::max(top * ROUNDING, top) { (at, score) } else { (best, top) }
    };
    scores.enumerate().fold((0, f64::NEG_INFINITY), better).0
}
