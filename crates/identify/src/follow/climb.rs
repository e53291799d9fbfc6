//! How likely a way still ends as determined, at most.
//!
//! Let *x* be how many times likelier what was read is of the target than of one rival, as the program weighs it. The
//! program determines only where *x* ≥ *k*, the rival's weight over what may be left of the bar. Let a character
//! multiply E(*x*ˢ) by a known factor at most, whatever was read before. Then, whatever is looked at and wherever one
//! stops, *x* reaches *k* with a chance of at most the product of these factors over *k*ˢ, for each power *s* of 0 to 1
//! (Ville 1939, *Étude critique de la notion de collectif*; the power is chosen as by Chernoff 1952, Ann. Math. Stat.
//! 23:493). Of a plant that is read as told, itself being the rival, no look raises E(*x*), so that one in *k* passes
//! at most. A character that must be looked at lets only those through who say what agrees.

use super::odds::{NONE, ONE, Odds, Powers, both, powers};
use super::says::{Says, Step};
use super::{Truth, World};
use crate::rules::{Fit, fits, known, must_look};
use crate::testimony::Testimony;
use crate::weighing::Trial;
use std::collections::{BTreeMap, HashMap};
use std::rc::Rc;

/// No bound lies lower, so that how many times one lies above another is a number.
const LEAST: Powers = [1e-12; 5];

/// What a truth must overcome to pass for the target.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hurdle {
    pub(super) truth: Truth,
    /// The rival's number; without one, only what must be looked at stands in the way.
    rival: Option<usize>,
    /// How likely it passes at most, before anything was read.
    pub(super) at_first: Powers,
}

/// What a character multiplies the bound by, at most.
struct Rise {
    /// Before it was read.
    unread: Powers,
    /// How many times more, where the first reader is misled by another of the group.
    misled: Powers,
    /// By the answer of the first reader, from there on.
    once: Vec<Powers>,
}

/// A character in the way of a truth: what its answers do to the bound.
pub(super) struct Turn {
    odds: Option<Rc<Odds>>,
    rise: Option<Rc<Rise>>,
    fits: Option<Rc<[Option<Fit>]>>,
}

pub(super) struct Climb<'t, 'a> {
    trial: &'t Trial<'a>,
    /// By character that must be looked at: how each answer fits the target.
    must: BTreeMap<usize, Rc<[Option<Fit>]>>,
    rises: HashMap<(Truth, Option<usize>, usize), Option<Rc<Rise>>>,
    /// Where one mistake brings the next: by what the plant is, rival and column.
    together: HashMap<(usize, usize, usize), Rc<Odds>>,
}

impl<'t, 'a> Climb<'t, 'a> {
    pub(super) fn new(trial: &'t Trial<'a>, says: &Says<'_>) -> Self {
        let must = must_look(trial).into_iter().filter_map(|id| trial.judge.matrix().column(&id));
        let must = must.map(|column| (column, all_fits(trial, says, column))).collect();
        Self { trial, must, rises: HashMap::new(), together: HashMap::new() }
    }

    /// Whichever hurdle is the highest: the plant itself, or what is told from the target most surely.
    pub(super) fn hurdle(&mut self, says: &mut Says<'_>, truth: Truth) -> Hurdle {
        let mut rivals = self.trial.rivals.iter();
        let itself = rivals.position(|rival| rival.row() == Some(truth.row));
        // One mistake brings the next where it makes the plant itself less likely.
        let any = itself.is_none() && truth.world != World::Together;
        let other = any.then(|| self.farthest(says, truth)).flatten();
        let either = [itself.or(other), None].map(|rival| self.bound(says, truth, rival));
        let [against, alone] = either;
        if least(&against.at_first) < least(&alone.at_first) { against } else { alone }
    }

    fn bound(&mut self, says: &mut Says<'_>, truth: Truth, rival: Option<usize>) -> Hurdle {
        let mut at_first = self.bar(rival);
        for column in 0..self.trial.judge.characters().len() {
            let rise = self.rise(says, (truth, rival), column);
            at_first = rise.map_or(at_first, |rise| times(&at_first, &rise.unread));
        }
        Hurdle { truth, rival, at_first }
    }

    /// One over what a rival must be outweighed by.
    fn bar(&self, rival: Option<usize>) -> Powers {
        let rival = rival.and_then(|at| self.trial.rivals.get(at));
        rival.map_or(ONE, |rival| powers(self.trial.allowed / rival.weight))
    }

    /// The rival against which one reader's answers would carry a truth the least far.
    fn farthest(&self, says: &mut Says<'_>, truth: Truth) -> Option<usize> {
        let columns = 0..self.trial.judge.characters().len();
        let said = columns.map(|column| (column, says.worked_out(&[], truth, (column, 0))));
        let said: Vec<(usize, Vec<f64>)> = said.collect();
        let rivals = self.trial.rivals.iter().enumerate();
        let far = rivals.filter(|(_, rival)| !rival.is_harmless_twin()).map(|(at, rival)| {
            let mut bound = self.bar(Some(at));
            for (column, chances) in &said {
                let Some(odds) = says.odds(rival, *column) else { continue };
                let carried = chances.iter().zip(&odds.first);
                let carried = carried.map(|(chance, odds)| scale(odds, *chance));
                bound = times(&bound, &most(&ONE, &sum(carried)));
            }
            (at, least(&bound))
        });
        far.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(at, _)| at)
    }

    /// What the answers to a character do; the second reader answers after the first one.
    pub(super) fn turn(&mut self, says: &mut Says<'_>, hurdle: &Hurdle, column: usize) -> Turn {
        let odds = hurdle.rival.and_then(|rival| self.odds(says, (hurdle.truth, rival), column));
        let rise = self.rise(says, (hurdle.truth, hurdle.rival), column);
        Turn { rise, ..self.unmoved(odds, column) }
    }

    fn odds(
        &mut self,
        says: &mut Says<'_>,
        (truth, rival): (Truth, usize),
        column: usize,
    ) -> Option<Rc<Odds>> {
        let of = self.trial.rivals.get(rival)?;
        let odds = says.odds(of, column)?;
        if !says.goes_on(truth, column) {
            return Some(odds);
        }
        let key = (truth.row, rival, column);
        if let Some(known) = self.together.get(&key) {
            return Some(known.clone());
        }
        let group: Vec<usize> = says.group(column).collect();
        let all: Vec<_> = group.iter().filter_map(|at| says.odds(of, *at)).collect();
        let mut misled = ONE;
        for at in group {
            let Some(one) = says.odds(of, at) else { continue };
            let odds = one.counted_once(&all, &ONE, |answer| says.takes(truth, (at, answer)));
            let turn = self.unmoved(Some(Rc::new(odds)), at);
            misled = times(&misled, &turn.rise(says, truth, at).misled);
        }
        let odds = odds.counted_once(&all, &misled, |answer| says.takes(truth, (column, answer)));
        let odds = Rc::new(odds);
        self.together.insert(key, odds.clone());
        Some(odds)
    }

    fn unmoved(&self, odds: Option<Rc<Odds>>, column: usize) -> Turn {
        Turn { odds, rise: None, fits: self.must.get(&column).cloned() }
    }

    /// Nothing where the character says nothing and need not be looked at.
    fn rise(
        &mut self,
        says: &mut Says<'_>,
        (truth, rival): (Truth, Option<usize>),
        column: usize,
    ) -> Option<Rc<Rise>> {
        let key = (says.alike(truth, column), rival, column);
        if let Some(known) = self.rises.get(&key) {
            return known.clone();
        }
        let odds = rival.and_then(|rival| self.odds(says, (truth, rival), column));
        let turn = self.unmoved(odds, column);
        let says_something = turn.odds.is_some() || turn.fits.is_some();
        let mut rise = says_something.then(|| turn.rise(says, truth, column));
        if let Some(rise) = rise.as_mut().filter(|_| turn.odds.is_none()) {
            // Without a rival nothing tells when somebody is misled: it is reckoned with from the start.
            rise.unread = times(&rise.unread, &rise.misled);
            rise.misled = ONE;
        }
        let rise = rise.map(Rc::new);
        self.rises.insert(key, rise.clone());
        rise
    }
}

impl Turn {
    /// What an answer multiplies the bound by; of the second reader after that of the first. Whoever is misled by
    /// another character of the group says nothing new.
    pub(super) fn answered(&self, first: usize, second: Option<usize>, misled: bool) -> Powers {
        let rise = |after: &Rise| {
            let once = after.once.get(first).unwrap_or(&ONE);
            match (second, misled) {
                (None, false) => over(once, &after.unread),
                (None, true) => over(once, &times(&after.unread, &after.misled)),
                (Some(_), _) => over(&ONE, once),
            }
        };
        let rise = self.rise.as_ref().map_or(ONE, |after| rise(after));
        let odds = if misled { ONE } else { self.odds(first, second) };
        let done = second.is_none_or(|second| self.done(&[first, second]));
        if done { times(&rise, &odds) } else { NONE }
    }

    fn odds(&self, first: usize, second: Option<usize>) -> Powers {
        let known = self.odds.as_ref().and_then(|odds| match second {
            None => odds.first.get(first),
            Some(second) => odds.then.get(first)?.get(second),
        });
        known.copied().unwrap_or(ONE)
    }

    /// Whether these answers do where the character must be looked at.
    fn done(&self, answers: &[usize]) -> bool {
        self.fits.as_ref().is_none_or(|all| {
            let fits = || answers.iter().filter_map(|answer| all.get(*answer).copied().flatten());
            fits().any(|fit| fit == Fit::Agrees) && fits().all(|fit| fit != Fit::Misfits)
        })
    }

    fn rise(&self, says: &Says<'_>, truth: Truth, column: usize) -> Rise {
        let (first, misled) = says.may_say(&[], truth, (column, 0));
        let said = |answer: &usize| {
            let said =
                |chances: &Vec<f64>| chances.get(*answer).is_some_and(|chance| *chance > 0.0);
            said(&first) || misled.as_ref().is_some_and(said)
        };
        let once =
            |answer| if said(&answer) { self.once(says, truth, (column, answer)) } else { ONE };
        let once: Vec<Powers> = (0..first.len()).map(once).collect();
        let after = |answer: usize| once.get(answer).copied().unwrap_or(ONE);
        let fresh = expected(&first, |answer| times(&self.odds(answer, None), &after(answer)));
        let misled = misled.map_or(NONE, |chances| expected(&chances, after));
        let left = if self.fits.is_none() { ONE } else { LEAST };
        let unread = most(&left, &fresh);
        Rise { misled: most(&ONE, &over(&misled, &unread)), unread, once }
    }

    /// After the first reader gave this answer.
    fn once(&self, says: &Says<'_>, truth: Truth, (column, first): (usize, usize)) -> Powers {
        let before = Step { column, reader: 0, answer: says.answer(column, first) };
        let (second, misled) = says.may_say(&[before], truth, (column, 1));
        let done = |second: usize| self.done(&[first, second]);
        let fresh = |second| if done(second) { self.odds(first, Some(second)) } else { NONE };
        let misled =
            misled.map(|chances| expected(&chances, |at| if done(at) { ONE } else { NONE }));
        let left = if self.done(&[first]) { ONE } else { NONE };
        most(&left, &most(&expected(&second, fresh), &misled.unwrap_or(NONE)))
    }
}

/// How each answer to a character that must be looked at fits the target; last, that the organ is not there.
fn all_fits(trial: &Trial<'_>, says: &Says<'_>, column: usize) -> Rc<[Option<Fit>]> {
    let many = says.column(column).map_or(0, |known| known.readings.len());
    let fit = |answer| {
        let step = Step { column, reader: 0, answer: Some(answer) };
        let readings = says.reading(&step, false).into_iter().collect();
        known(trial, column)?;
        fits(trial, &Testimony { column, readings }).first().copied()
    };
    (0..many).map(fit).chain([None]).collect()
}

/// The least over all powers.
pub(super) fn least(bound: &Powers) -> f64 {
    bound.iter().copied().fold(f64::INFINITY, f64::min)
}

pub(super) fn scale(bound: &Powers, by: f64) -> Powers {
    bound.map(|one| one * by)
}

pub(super) fn times(a: &Powers, b: &Powers) -> Powers {
    both(a, b, |a, b| a * b)
}

fn over(a: &Powers, b: &Powers) -> Powers {
    both(a, b, |a, b| if b > 0.0 { a / b } else { 0.0 })
}

fn most(a: &Powers, b: &Powers) -> Powers {
    both(a, b, f64::max)
}

fn sum(all: impl Iterator<Item = Powers>) -> Powers {
    all.fold(NONE, |a, b| both(&a, &b, |a, b| a + b))
}

fn expected(chances: &[f64], of: impl Fn(usize) -> Powers) -> Powers {
    let all = chances.iter().enumerate().filter(|(_, chance)| **chance > 0.0);
    sum(all.map(|(answer, chance)| scale(&of(answer), *chance)))
}
