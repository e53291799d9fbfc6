//! The ways that a reading may go.

use super::says::{Says, Step, Truth};
use super::{End, Ends, Setting, World};
use crate::assess::Assessment;
use crate::next::next_of;
use crate::offer::Offers;
use crate::rules::must_look;
use crate::spectrum::weights;
use crate::testimony::{Reading, Testimony};
use crate::weighing::{Scales, Weighed};
use crate::{Next, Seen, Sense};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::rc::Rc;

const READERS: [&str; 2] = ["A", "B"];

/// How likely a way is, for each truth that may still be.
type Reach = Vec<(usize, f64)>;

pub(super) struct Walk<'t, 'a> {
    offers: &'t Offers<'t, 'a>,
    setting: &'t Setting,
    says: Says<'t, 'a>,
    must: BTreeSet<String>,
    truths: Vec<Truth>,
    determined: Vec<f64>,
    lost: Vec<f64>,
    followed: usize,
    /// What was read of a character before, weighed.
    read: HashMap<Vec<(Step, bool)>, Rc<Read<'a>>>,
}

struct Read<'a> {
    testimony: Testimony,
    weighed: Option<Weighed<'a>>,
}

impl<'t, 'a> Walk<'t, 'a> {
    pub(super) fn new(offers: &'t Offers<'t, 'a>, setting: &'t Setting, rows: &[usize]) -> Self {
        let trial = offers.trial;
        let worlds = |row: &usize| World::ALL.map(|world| Truth { row: *row, world });
        let truths: Vec<Truth> = rows.iter().flat_map(worlds).collect();
        Self {
            offers,
            setting,
            says: Says::new(trial, setting.level),
            must: must_look(trial),
            determined: vec![0.0; truths.len()],
            lost: vec![0.0; truths.len()],
            truths,
            followed: 0,
            read: HashMap::new(),
        }
    }

    pub(super) fn ends(mut self) -> Ends {
        let reach = (0..self.truths.len()).map(|truth| (truth, 1.0)).collect();
        self.visit(&mut Vec::new(), &reach);
        let judge = self.offers.trial.judge;
        let all = self.truths.iter().zip(self.determined).zip(self.lost);
        let ends = all.filter_map(|((truth, determined), lost)| {
            let plant = judge.taxon(truth.row)?.name.clone();
            Some(End { plant, world: truth.world, determined, lost })
        });
        Ends { ends: ends.collect(), followed: self.followed }
    }

    fn visit(&mut self, path: &mut Vec<Step>, reach: &Reach) {
        self.followed += 1;
        match self.next(path) {
            Next::Settled => add(&mut self.determined, reach),
            Next::CannotSettle { .. } => {}
            Next::Look(plan) => {
                let column = |id: &String| self.offers.trial.judge.matrix().column(id);
                let first = plan.looks.first().and_then(|offer| column(&offer.character));
                let unread = |column: &usize| {
                    path.iter().all(|step| (step.reader, step.column) != (1, *column))
                };
                let mut again = plan.again.iter().filter_map(column).filter(unread);
                let asked = first.map(|column| (column, 0)).or_else(|| Some((again.next()?, 1)));
                // Where whatever could be read again was, it stays open.
                if let Some(asked) = asked {
                    self.ask(path, reach, asked);
                }
            }
        }
    }

    fn ask(&mut self, path: &mut Vec<Step>, reach: &Reach, (column, reader): (usize, usize)) {
        let Some(many) = self.says.column(column).map(|known| known.said.len()) else {
            // What cannot be followed counts as determined.
            return add(&mut self.lost, reach);
        };
        let mut by_answer: BTreeMap<usize, Reach> = BTreeMap::new();
        for (at, reach) in reach {
            let Some(truth) = self.truths.get(*at).copied() else { continue };
            let chances = self.says.chances(path, truth, (column, reader));
            for (answer, chance) in chances.iter().enumerate().filter(|(_, chance)| **chance > 0.0)
            {
                by_answer.entry(answer).or_default().push((*at, reach * chance));
            }
        }
        for (answer, reach) in by_answer {
            if reach.iter().all(|(_, reach)| *reach < self.setting.least) {
                add(&mut self.lost, &reach);
                continue;
            }
            path.push(Step { column, reader, answer: (answer < many).then_some(answer) });
            self.visit(path, &reach);
            path.pop();
        }
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
        let testimonies: Vec<Testimony> = read.iter().map(|read| read.testimony.clone()).collect();
        let mut scales = Scales::empty(trial.rivals);
        for weighed in read.iter().filter_map(|read| read.weighed.clone()) {
            scales.add(weighed);
        }
        let assessment = Assessment::of(trial, &testimonies, scales, &self.must);
        next_of(self.offers, &testimonies, &assessment)
    }

    fn read(&mut self, steps: Vec<(Step, bool)>) -> Option<Rc<Read<'a>>> {
        if let Some(known) = self.read.get(&steps) {
            return Some(known.clone());
        }
        let column = steps.first()?.0.column;
        let readings = steps.iter().filter_map(|(step, tainted)| self.reading(step, *tainted));
        let testimony = Testimony { column, readings: readings.collect() };
        let weighed = self.offers.trial.weigh(&testimony);
        let read = Rc::new(Read { testimony, weighed });
        self.read.insert(steps, read.clone());
        Some(read)
    }

    fn reading(&self, step: &Step, tainted: bool) -> Option<Reading> {
        let character = self.offers.trial.judge.character(step.column)?;
        let said = &self.says.column(step.column)?.said;
        let seen = step.answer.and_then(|answer| said.get(answer)).unwrap_or(&Seen::NotThere);
        Some(Reading {
            reader: (*READERS.get(step.reader)?).to_owned(),
            level: self.setting.level,
            time: self.setting.day.at(8, 0, 0, 0),
            blind: true,
            seen: seen.clone(),
            weights: weights(character, seen, self.says.misread(character)),
            tainted,
        })
    }
}

fn add(sums: &mut [f64], reach: &Reach) {
    for (at, more) in reach {
        if let Some(sum) = sums.get_mut(*at) {
            *sum += more;
        }
    }
}
