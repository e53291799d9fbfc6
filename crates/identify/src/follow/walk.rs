//! The ways that a reading may go.

use super::says::{Says, Step};
use super::{End, Ends, Setting, Truth, World};
use crate::assess::Assessment;
use crate::next::next_of;
use crate::offer::Offers;
use crate::rules::{Fit, Heard, fits, must_look};
use crate::testimony::Testimony;
use crate::weighing::{Scales, Weighed};
use crate::{Next, Sense};
use std::cmp::Ordering;
use std::collections::{BTreeMap, BTreeSet, BinaryHeap, HashMap};
use std::rc::Rc;

/// How likely a way is, for each truth that may still be.
type Reach = Vec<(usize, f64)>;

/// What was answered up to here.
struct Way {
    path: Vec<Step>,
    reach: Reach,
    /// By truth in the order of `reach`: how likely the way is and still ends as determined, at most.
    open: Vec<f64>,
    /// The most of these.
    worth: f64,
}

pub(super) struct Walk<'t, 's, 'a> {
    offers: &'t Offers<'t, 'a>,
    setting: &'t Setting,
    says: &'t mut Says<'s>,
    must: BTreeSet<String>,
    truths: Vec<Truth>,
    determined: Vec<f64>,
    lost: Vec<f64>,
    followed: usize,
    /// What was read of a character before, weighed.
    read: HashMap<Vec<(Step, bool)>, Rc<Read<'a>>>,
    /// By character that must be looked at, its column, and how likely it can agree, by truth.
    agreeing: Vec<(usize, Vec<f64>)>,
}

struct Read<'a> {
    testimony: Testimony,
    fits: Rc<[Fit]>,
    weighed: Option<Weighed<'a>>,
}

impl<'t, 's, 'a> Walk<'t, 's, 'a> {
    pub(super) fn new(
        offers: &'t Offers<'t, 'a>,
        setting: &'t Setting,
        says: &'t mut Says<'s>,
        truths: Vec<Truth>,
    ) -> Self {
        let trial = offers.trial;
        let mut walk = Self {
            offers,
            setting,
            says,
            must: must_look(trial),
            determined: vec![0.0; truths.len()],
            lost: vec![0.0; truths.len()],
            truths,
            followed: 0,
            read: HashMap::new(),
            agreeing: Vec::new(),
        };
        let must = walk.must.iter().filter_map(|id| trial.judge.matrix().column(id));
        let must: Vec<usize> = must.collect();
        walk.agreeing = must.into_iter().map(|column| (column, walk.agreeing(column))).collect();
        walk
    }

    pub(super) fn ends(mut self) -> Ends {
        let reach: Reach = (0..self.truths.len()).map(|truth| (truth, 1.0)).collect();
        let mut open = BinaryHeap::from([self.way(Vec::new(), reach)]);
        while let Some(way) = open.pop() {
            if self.followed >= self.setting.most {
                self.lose(&way);
                continue;
            }
            self.followed += 1;
            self.visit(&way, &mut open);
        }
        let judge = self.offers.trial.judge;
        let all = self.truths.iter().zip(&self.determined).zip(&self.lost);
        let ends = all.filter_map(|((truth, determined), lost)| {
            let plant = judge.taxon(truth.row)?.name.clone();
            let at_most = determined + lost;
            Some(End { plant, world: truth.world, determined: *determined, at_most })
        });
        Ends { ends: ends.collect(), followed: self.followed }
    }

    fn way(&self, path: Vec<Step>, reach: Reach) -> Way {
        let unread = |column: usize| path.iter().all(|step| step.column != column);
        let must = self.agreeing.iter().filter(|(column, _)| unread(*column));
        let must: Vec<&[f64]> = must.map(|(_, chances)| chances.as_slice()).collect();
        let still = |(at, reach): &(usize, f64)| {
            reach * must.iter().filter_map(|chances| chances.get(*at)).product::<f64>()
        };
        let open: Vec<f64> = reach.iter().map(still).collect();
        Way { worth: open.iter().copied().fold(0.0, f64::max), open, path, reach }
    }

    fn visit(&mut self, way: &Way, open: &mut BinaryHeap<Way>) {
        match self.next(&way.path) {
            Next::Settled => {
                for (at, reach) in &way.reach {
                    add(&mut self.determined, *at, *reach);
                }
            }
            Next::CannotSettle { .. } => {}
            Next::Look(plan) => {
                let column = |id: &String| self.offers.trial.judge.matrix().column(id);
                let first = plan.looks.first().and_then(|offer| column(&offer.character));
                let unread = |column: &usize| {
                    way.path.iter().all(|step| (step.reader, step.column) != (1, *column))
                };
                let mut again = plan.again.iter().filter_map(column).filter(unread);
                let asked = first.map(|column| (column, 0)).or_else(|| Some((again.next()?, 1)));
                // Where whatever could be read again was, it stays open.
                if let Some(asked) = asked {
                    self.ask(way, asked, open);
                }
            }
        }
    }

    fn ask(&mut self, way: &Way, (column, reader): (usize, usize), open: &mut BinaryHeap<Way>) {
        let Some(many) = self.says.column(column).map(|known| known.said.len()) else {
            return self.lose(way);
        };
        let mut by_answer: BTreeMap<usize, Reach> = BTreeMap::new();
        for (at, reach) in &way.reach {
            let Some(truth) = self.truths.get(*at).copied() else { continue };
            let chances = self.says.chances(&way.path, truth, (column, reader));
            for (answer, chance) in chances.iter().enumerate().filter(|(_, chance)| **chance > 0.0)
            {
                by_answer.entry(answer).or_default().push((*at, reach * chance));
            }
        }
        for (answer, reach) in by_answer {
            let answer = (answer < many).then_some(answer);
            let path = way.path.iter().copied().chain([Step { column, reader, answer }]);
            let way = self.way(path.collect(), reach);
            if way.worth < self.setting.least {
                self.lose(&way);
            } else {
                open.push(way);
            }
        }
    }

    fn lose(&mut self, way: &Way) {
        for ((at, _), open) in way.reach.iter().zip(&way.open) {
            add(&mut self.lost, *at, *open);
        }
    }

    /// How likely a character agrees with the target when both readers look at it, by truth. Where one mistake
    /// brings the next, it may always.
    fn agreeing(&mut self, column: usize) -> Vec<f64> {
        let many = self.says.column(column).map_or(0, |known| known.said.len());
        let agrees: Vec<bool> = (0..many).map(|answer| self.agrees(column, answer)).collect();
        let chance = |truth: &Truth| match truth.world {
            World::Together => 1.0,
            _ => self.says.either(*truth, column, &agrees),
        };
        self.truths.iter().map(chance).collect()
    }

    fn agrees(&mut self, column: usize, answer: usize) -> bool {
        let step = Step { column, reader: 0, answer: Some(answer) };
        let read = self.read(vec![(step, false)]);
        read.is_some_and(|read| read.fits.contains(&Fit::Agrees))
    }

    fn next(&mut self, path: &[Step]) -> Next {
        let trial = self.offers.trial;
        let mut by_column: BTreeMap<usize, Vec<(Step, bool)>> = BTreeMap::new();
        let mut smelt = false;
        for step in path {
            let smell = trial.judge.character(step.column).is_some_and(|c| c.sense == Sense::Smell);
            by_column.entry(step.column).or_default().push((*step, smell && smelt));
            smelt |= smell && step.answer.is_some();
        }
        let read: Vec<Rc<Read<'a>>> =
            by_column.into_values().filter_map(|steps| self.read(steps)).collect();
        let heard: Vec<_> = read
            .iter()
            .map(|read| Heard { testimony: &read.testimony, fits: read.fits.clone() })
            .collect();
        let mut scales = Scales::empty(trial.rivals);
        for weighed in read.iter().filter_map(|read| read.weighed.clone()) {
            scales.add(weighed);
        }
        let assessment = Assessment::of(trial, &heard, scales, &self.must);
        next_of(self.offers, &heard, &assessment)
    }

    fn read(&mut self, steps: Vec<(Step, bool)>) -> Option<Rc<Read<'a>>> {
        if let Some(known) = self.read.get(&steps) {
            return Some(known.clone());
        }
        let column = steps.first()?.0.column;
        let readings = steps.iter().filter_map(|(step, tainted)| self.says.reading(step, *tainted));
        let testimony = Testimony { column, readings: readings.collect() };
        let weighed = self.offers.trial.weigh(&testimony);
        let fits = fits(self.offers.trial, &testimony).into();
        let read = Rc::new(Read { testimony, fits, weighed });
        self.read.insert(steps, read.clone());
        Some(read)
    }
}

impl Ord for Way {
    fn cmp(&self, other: &Self) -> Ordering {
        self.worth.total_cmp(&other.worth).then_with(|| other.path.cmp(&self.path))
    }
}

impl PartialOrd for Way {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Way {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Way {}

fn add(sums: &mut [f64], at: usize, more: f64) {
    if let Some(sum) = sums.get_mut(at) {
        *sum += more;
    }
}
