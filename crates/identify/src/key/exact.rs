//! Cheapest keys, solved from sets of few forms to sets of many.

use super::frame::{Division, Frame, Rest};
use super::{Lead, Step};
use std::collections::BTreeMap;

/// What tells one rest from another: forms with the bits of their weights, and what was read.
type Id = (Vec<(usize, u64)>, Vec<usize>);

/// Solved sets of forms.
pub(super) struct Exact<'f> {
    frame: &'f Frame<'f>,
    /// How many more sets may be solved.
    left: usize,
    solved: BTreeMap<Id, Solved>,
}

/// The cheapest way to go on.
struct Solved {
    /// Seconds that it takes, times the weight that comes here.
    seconds: f64,
    character: usize,
}

/// A character that may be the cheapest to read.
struct Offer {
    division: Division,
    /// By lead: what it takes at least.
    bounds: Vec<f64>,
    /// What all of it takes at least.
    at_least: f64,
}

impl<'f> Exact<'f> {
    pub(super) fn new(frame: &'f Frame<'f>, sets: usize) -> Self {
        Self { frame, left: sets, solved: BTreeMap::new() }
    }

    /// Puts cheapest keys in place of parts of a draft, small parts first, as far as the effort goes.
    pub(super) fn mend(&mut self, mut draft: Step, whole: &Rest) -> Step {
        if self.frame.seconds(&draft, whole) <= self.frame.bound(whole) {
            return draft;
        }
        for forms in 2..=whole.forms.len() {
            if self.left > 0 {
                draft = self.mend_parts(draft, whole, forms);
            }
        }
        draft
    }

    /// Does so for the parts with so many forms.
    fn mend_parts(&mut self, step: Step, rest: &Rest, forms: usize) -> Step {
        if rest.forms.len() < forms {
            return step;
        }
        if rest.forms.len() == forms && self.seconds(rest).is_some() {
            return self.cheapest(rest);
        }
        let Step::Couplet { character, leads } = step else {
            return step;
        };
        let ways = self.frame.divide(rest, character).map(|division| division.leads);
        let ways = ways.into_iter().flatten().zip(leads);
        let leads = ways.map(|((states, rest), lead)| {
            let to = self.mend_parts(lead.to, &rest, forms);
            Lead { states, to }
        });
        Step::Couplet { character, leads: leads.collect() }
    }

    /// Whether the cheapest key from here is known.
    pub(super) fn is_solved(&self, rest: &Rest) -> bool {
        self.frame.is_settled(rest) || self.solved.contains_key(&id(rest))
    }

    /// The cheapest key from here, which was solved.
    fn cheapest(&self, rest: &Rest) -> Step {
        let solved = self.solved.get(&id(rest));
        match solved.and_then(|solved| self.frame.divide(rest, solved.character)) {
            Some(division) => division.couplet(|rest| self.cheapest(rest)),
            None => self.frame.end(rest),
        }
    }

    /// Seconds that the cheapest key takes from here, times the weight that comes here; nothing where
    /// the effort does not suffice.
    fn seconds(&mut self, rest: &Rest) -> Option<f64> {
        if self.frame.is_settled(rest) {
            return Some(0.0);
        }
        let id = id(rest);
        if let Some(solved) = self.solved.get(&id) {
            return Some(solved.seconds);
        }
        self.left = self.left.checked_sub(1)?;
        let solved = self.solve(rest)?;
        let seconds = solved.seconds;
        self.solved.insert(id, solved);
        Some(seconds)
    }

    fn solve(&mut self, rest: &Rest) -> Option<Solved> {
        let divisions = self.frame.divisions(rest).into_iter();
        let mut offers: Vec<_> = divisions.map(|division| self.offer(rest, division)).collect();
        offers.sort_by(|a, b| a.at_least.total_cmp(&b.at_least));
        let mut best = Solved { seconds: f64::INFINITY, character: 0 };
        for offer in offers {
            if offer.at_least >= best.seconds {
                break;
            }
            let seconds = self.through(&offer, best.seconds)?;
            if seconds < best.seconds {
                best = Solved { seconds, character: offer.division.character };
            }
        }
        Some(best)
    }

    fn offer(&self, rest: &Rest, division: Division) -> Offer {
        let bounds: Vec<_> = division.rests().map(|rest| self.frame.bound(rest)).collect();
        let here = self.frame.cost(division.character) * rest.weight();
        let at_least = here + bounds.iter().sum::<f64>();
        Offer { division, bounds, at_least }
    }

    /// Seconds that the cheapest key with this character first takes, times the weight; or a part of
    /// them that is no less than `enough`.
    fn through(&mut self, offer: &Offer, enough: f64) -> Option<f64> {
        let mut seconds = offer.at_least;
        for (rest, bound) in offer.division.rests().zip(&offer.bounds) {
            seconds += self.seconds(rest)? - bound;
            if seconds >= enough {
                break;
            }
        }
        Some(seconds)
    }
}

fn id(rest: &Rest) -> Id {
    let forms = rest.forms.iter().map(|(form, weight)| (*form, weight.to_bits()));
    (forms.collect(), rest.read.clone())
}
