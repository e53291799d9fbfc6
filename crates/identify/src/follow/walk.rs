//! The ways that a reading may go.

use super::climb::{Climb, Hurdle, least, scale, times};
use super::odds::Powers;
use super::says::{Says, Step};
use super::{End, Ends, Setting, Truth};
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

/// A truth is dropped from a way where it is so much less likely than a way that is not followed.
const HARDLY: f64 = 0.01;

/// A truth that may still be.
struct Chance {
    /// Its number.
    truth: usize,
    /// How likely the way is.
    reach: f64,
    /// How likely the way is and still ends as determined, at most.
    open: Powers,
}

/// What was answered up to here.
struct Way {
    path: Vec<Step>,
    chances: Vec<Chance>,
    /// How likely it still ends as determined at most, of the truths.
    worth: f64,
}

pub(super) struct Walk<'t, 's, 'a> {
    offers: &'t Offers<'t, 'a>,
    setting: &'t Setting,
    says: &'t mut Says<'s>,
    must: BTreeSet<String>,
    truths: Vec<Truth>,
    climb: Climb<'t, 'a>,
    hurdles: Vec<Hurdle>,
    determined: Vec<f64>,
    lost: Vec<f64>,
    followed: usize,
    /// What was read of a character before, weighed.
    read: HashMap<Vec<(Step, bool)>, Rc<Read<'a>>>,
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
        let mut climb = Climb::new(offers.trial, says);
        let hurdles = truths.iter().map(|truth| climb.hurdle(says, *truth)).collect();
        Self {
            offers,
            setting,
            says,
            must: must_look(offers.trial),
            determined: vec![0.0; truths.len()],
            lost: vec![0.0; truths.len()],
            truths,
            climb,
            hurdles,
            followed: 0,
            read: HashMap::new(),
        }
    }

    pub(super) fn ends(mut self) -> Ends {
        let all = self.hurdles.iter().enumerate();
        let chances = all.map(|(truth, known)| Chance { truth, reach: 1.0, open: known.at_first });
        let mut open = BinaryHeap::from([Way::new(Vec::new(), chances.collect())]);
        while let Some(way) = open.pop() {
            if self.followed >= self.setting.most {
                way.chances.iter().for_each(|chance| self.lose(chance));
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

    fn visit(&mut self, way: &Way, open: &mut BinaryHeap<Way>) {
        match self.next(&way.path) {
            Next::Settled => {
                for chance in &way.chances {
                    add(&mut self.determined, chance.truth, chance.reach);
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
        let before = way.path.iter().find(|step| step.column == column);
        let many = self.says.column(column).map_or(0, |known| known.readings.len());
        let before = before.map(|step| step.answer.unwrap_or(many));
        let mut by_answer: BTreeMap<usize, Vec<Chance>> = BTreeMap::new();
        for chance in &way.chances {
            let Some(hurdle) = self.hurdles.get(chance.truth) else { continue };
            let turn = self.climb.turn(self.says, hurdle, column);
            let misled = self.says.fooled(&way.path, hurdle.truth, (column, reader));
            let said = self.says.chances(&way.path, hurdle.truth, (column, reader));
            for (answer, said) in said.iter().enumerate().filter(|(_, said)| **said > 0.0) {
                let (first, second) =
                    before.map_or((answer, None), |before| (before, Some(answer)));
                let open = times(&chance.open, &turn.answered(first, second, misled));
                let chance =
                    Chance { reach: chance.reach * said, open: scale(&open, *said), ..*chance };
                by_answer.entry(answer).or_default().push(chance);
            }
        }
        for (answer, chances) in by_answer {
            let answer = (answer < many).then_some(answer);
            let path = way.path.iter().copied().chain([Step { column, reader, answer }]);
            self.go_on(path.collect(), chances, open);
        }
    }

    /// Truths that hardly come about any more are not followed further.
    fn go_on(&mut self, path: Vec<Step>, chances: Vec<Chance>, open: &mut BinaryHeap<Way>) {
        let least = self.setting.least;
        let (on, out): (Vec<Chance>, Vec<Chance>) =
            chances.into_iter().partition(|chance| chance.at_most() >= least * HARDLY);
        out.iter().for_each(|chance| self.lose(chance));
        let way = Way::new(path, on);
        if way.worth < least {
            way.chances.iter().for_each(|chance| self.lose(chance));
        } else {
            open.push(way);
        }
    }

    fn lose(&mut self, chance: &Chance) {
        add(&mut self.lost, chance.truth, chance.at_most());
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

impl Chance {
    fn at_most(&self) -> f64 {
        least(&self.open).min(self.reach)
    }
}

impl Way {
    fn new(path: Vec<Step>, chances: Vec<Chance>) -> Self {
        Self { worth: chances.iter().map(Chance::at_most).fold(0.0, f64::max), path, chances }
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
