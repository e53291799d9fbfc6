//! A table made ready, and what is left of it at a place of a key.

use super::bound::Best;
use super::{Form, Lead, Step, Table};
use crate::bits::Bits;
use crate::states::count;
use std::collections::BTreeSet;

/// A table made ready for making keys.
pub(super) struct Frame<'t> {
    table: &'t Table,
    pub(super) best: Best,
    /// By form: the forms of other taxa that some character tells from it.
    apart: Vec<Bits>,
}

/// What may be in hand at a place of a key.
#[derive(Clone, Debug)]
pub(super) struct Rest {
    /// Forms in order, each with the part of its weight that comes here.
    pub(super) forms: Vec<(usize, f64)>,
    /// The characters that were read on the way, as far as they would divide what is left if they
    /// were read for the first time.
    pub(super) read: Vec<usize>,
}

impl Rest {
    pub(super) fn weight(&self) -> f64 {
        self.forms.iter().map(|(_, weight)| weight).sum()
    }
}

/// A character that can be read at a place of a key, and where it leads.
pub(super) struct Division {
    pub(super) character: usize,
    pub(super) leads: Vec<(Vec<usize>, Rest)>,
}

impl Division {
    pub(super) fn rests(&self) -> impl Iterator<Item = &Rest> {
        self.leads.iter().map(|(_, rest)| rest)
    }

    /// The couplet, each lead of which goes on as is said.
    pub(super) fn couplet(self, mut to: impl FnMut(&Rest) -> Step) -> Step {
        let leads = self.leads.into_iter().map(|(states, rest)| Lead { states, to: to(&rest) });
        Step::Couplet { character: self.character, leads: leads.collect() }
    }
}

impl<'t> Frame<'t> {
    pub(super) fn new(table: &'t Table) -> Self {
        let forms = &table.forms;
        let characters = table.seconds.len();
        let apart = |one: &Form| {
            let others = forms.iter().enumerate();
            let others = others.filter(|(_, other)| told_apart(one, other, characters));
            Bits::of(forms.len(), others.map(|(at, _)| at))
        };
        Self { table, best: Best::of(table), apart: forms.iter().map(apart).collect() }
    }

    /// All forms, nothing read. The heaviest weighs one, so that no sum grows out of bounds.
    pub(super) fn whole(&self) -> Rest {
        let weights = || self.table.forms.iter().map(|form| form.weight.get());
        let heaviest = weights().fold(0.0, f64::max);
        let unit = if heaviest > 0.0 { heaviest } else { 1.0 };
        Rest {
            forms: weights().map(|weight| weight / unit).enumerate().collect(),
            read: Vec::new(),
        }
    }

    /// Whether two forms are of different taxa and some character tells them apart.
    pub(super) fn apart(&self, one: usize, other: usize) -> bool {
        self.apart.get(one).is_some_and(|apart| apart.contains(other))
    }

    /// Whether no two of the taxa that are left can be told apart.
    pub(super) fn is_settled(&self, rest: &Rest) -> bool {
        let forms = || rest.forms.iter().map(|(form, _)| *form);
        !forms().any(|one| forms().any(|other| self.apart(one, other)))
    }

    pub(super) fn taxon(&self, form: usize) -> Option<usize> {
        Some(self.table.forms.get(form)?.taxon)
    }

    pub(super) fn end(&self, rest: &Rest) -> Step {
        let taxa: BTreeSet<_> = rest.forms.iter().filter_map(|(at, _)| self.taxon(*at)).collect();
        Step::Taxa(taxa.into_iter().collect())
    }

    pub(super) fn cost(&self, character: usize) -> f64 {
        self.table.seconds.get(character).copied().map_or(0.0, f64::from)
    }

    /// Every character that can be read here and divides what is left.
    pub(super) fn divisions(&self, rest: &Rest) -> Vec<Division> {
        (0..self.table.seconds.len()).filter_map(|character| self.divide(rest, character)).collect()
    }

    /// Where a character leads, if it was not read already and divides what is left.
    pub(super) fn divide(&self, rest: &Rest, character: usize) -> Option<Division> {
        if rest.read.contains(&character) {
            return None;
        }
        let ways = self.ways(&rest.forms, character);
        if ways.len() < 2 {
            return None;
        }
        let leads =
            ways.iter().map(|way| (way.states.clone(), self.follow(rest, character, way, &ways)));
        Some(Division { character, leads: leads.collect() })
    }

    /// The states that these forms may show, those that leave the same forms together.
    fn ways(&self, forms: &[(usize, f64)], character: usize) -> Vec<Way> {
        let shown: Vec<_> =
            forms.iter().map(|(at, _)| shown(self.table.forms.get(*at), character)).collect();
        let states: BTreeSet<usize> =
            shown.iter().flatten().flat_map(|states| states.iter().copied()).collect();
        let mut ways: Vec<Way> = Vec::new();
        for state in states {
            let goes: Vec<bool> =
                shown.iter().map(|states| states.is_none_or(|s| s.contains(&state))).collect();
            match ways.iter_mut().find(|way| way.goes == goes) {
                Some(way) => way.states.push(state),
                None => ways.push(Way { states: vec![state], goes }),
            }
        }
        ways
    }

    /// What is left along one of the ways.
    fn follow(&self, rest: &Rest, character: usize, way: &Way, ways: &[Way]) -> Rest {
        let mut forms = Vec::new();
        for (at, (form, weight)) in rest.forms.iter().enumerate() {
            if way.takes(at) {
                let leads = ways.iter().filter(|way| way.takes(at)).count();
                forms.push((*form, weight / count(leads)));
            }
        }
        let read = rest.read.iter().copied().chain([character]);
        let read = read.filter(|character| self.ways(&forms, *character).len() > 1).collect();
        Rest { forms, read }
    }

    /// Seconds that a key takes from here, times the weight that comes here.
    pub(super) fn seconds(&self, step: &Step, rest: &Rest) -> f64 {
        let Step::Couplet { character, leads } = step else {
            return 0.0;
        };
        let division = self.divide(rest, *character);
        let ways = leads.iter().zip(division.iter().flat_map(Division::rests));
        let below: f64 = ways.map(|(lead, rest)| self.seconds(&lead.to, rest)).sum();
        self.cost(*character) * rest.weight() + below
    }
}

/// One way to go on.
struct Way {
    states: Vec<usize>,
    /// By place in the list of forms: whether it goes this way.
    goes: Vec<bool>,
}

impl Way {
    fn takes(&self, at: usize) -> bool {
        self.goes.get(at).copied().unwrap_or(false)
    }
}

/// The states that a form may show, where they are known.
fn shown(form: Option<&Form>, character: usize) -> Option<&BTreeSet<usize>> {
    form?.shows.get(character).filter(|states| !states.is_empty())
}

/// Whether two forms are of different taxa and some character tells them apart.
fn told_apart(one: &Form, other: &Form, characters: usize) -> bool {
    let mut both = one.shows.iter().zip(&other.shows).take(characters);
    let tells = |(a, b): (&BTreeSet<usize>, &BTreeSet<usize>)| {
        !a.is_empty() && !b.is_empty() && a.is_disjoint(b)
    };
    one.taxon != other.taxon && both.any(tells)
}
