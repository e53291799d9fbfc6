//! How much likelier an answer is of the target than of a rival, as the program weighs it.

use super::says::Column;
use crate::rival::Rival;
use crate::spectrum::dot;
use crate::testimony::{Reading, floored, of_two};
use crate::weighing::Trial;
use std::rc::Rc;

/// Something to the powers of 0, ¼, ½, ¾ and 1.
pub(super) type Powers = [f64; 5];

pub(super) const ONE: Powers = [1.0; 5];
pub(super) const NONE: Powers = [0.0; 5];

pub(super) fn powers(x: f64) -> Powers {
    let half = x.sqrt();
    let quarter = half.sqrt();
    [1.0, quarter, half, half * quarter, x]
}

pub(super) fn both(a: &Powers, b: &Powers, with: impl Fn(f64, f64) -> f64) -> Powers {
    let mut out = *a;
    out.iter_mut().zip(b).for_each(|(a, b)| *a = with(*a, *b));
    out
}

/// By answer, how many times likelier it is of the target; last, that the organ is not there.
pub(super) struct Odds {
    /// Given by one reader.
    pub(super) first: Vec<Powers>,
    /// By the answer of the first reader, how many times more, when a second one answers.
    pub(super) then: Vec<Vec<Powers>>,
}

impl Odds {
    /// Nothing where either sheet says nothing.
    pub(super) fn new(
        trial: &Trial<'_>,
        (rival, column): (&Rival, usize),
        said: &Column,
    ) -> Option<Self> {
        let readings = said.readings.as_slice();
        let own = trial.judge.shown(trial.target, column)?;
        let other = rival.shown(trial.judge, trial.target, column)?;
        let one = readings.iter().map(|reading| reading.factor(own, &other)).chain([1.0]);
        let one: Vec<f64> = one.map(|factor| seen(trial, column, factor)).collect();
        let jointly = jointly(&other.shares, readings);
        let then = |(a, first): (usize, &f64)| {
            let after = |(b, more): (usize, &f64)| {
                let at = |both: &[Vec<f64>]| both.get(a).and_then(|row| row.get(b)).copied();
                let joint =
                    at(&jointly).zip(at(&said.jointly)).map(|(r, t)| floored(r) / floored(t));
                // Where the organ is not there for one, the other stands alone.
                let both = of_two(*first, *more, joint.unwrap_or(first * more));
                powers(first / seen(trial, column, both))
            };
            one.iter().enumerate().map(after).collect()
        };
        let first = one.iter().map(|factor| powers(1.0 / factor)).collect();
        Some(Self { first, then: one.iter().enumerate().map(then).collect() })
    }
}

impl Odds {
    /// Of characters that go together the program counts the best that speaks for the target. Where one mistake
    /// brings the next, the first answer that speaks for it is counted for the best that any of them can say, and for
    /// what the first reader, who is misled from there on, says of the others; those that follow for nothing.
    pub(super) fn counted_once(
        &self,
        group: &[Rc<Self>],
        misled: &Powers,
        favours: impl Fn(usize) -> bool,
    ) -> Self {
        let firsts = group.iter().flat_map(|odds| &odds.first);
        let one = firsts.fold(ONE, |most, odds| both(&most, odds, f64::max));
        let pairs = group.iter().flat_map(|odds| odds.first.iter().zip(&odds.then));
        let pairs =
            pairs.flat_map(|(first, then)| then.iter().map(|t| both(first, t, |a, b| a * b)));
        let two = pairs.fold(one, |most, odds| both(&most, &odds, f64::max));
        let more = both(&one, &both(&two, &one, |two, one| two / one), f64::max);
        let count = |(answer, odds): (usize, &Powers), best: &Powers| {
            let speaks = favours(answer) || odds.iter().any(|odds| *odds > 1.0);
            if speaks { *best } else { *odds }
        };
        let all = |odds: &Vec<Powers>, best: &Powers| {
            odds.iter().enumerate().map(|odds| count(odds, best)).collect::<Vec<_>>()
        };
        let then = self.then.iter().map(|then| all(then, &more)).collect();
        Self { first: all(&self.first, &both(&one, misled, |one, misled| one * misled)), then }
    }
}

/// What is not to be seen of the target this month speaks for nothing.
fn seen(trial: &Trial<'_>, column: usize, factor: f64) -> f64 {
    let character = trial.judge.character(column);
    if character.is_some_and(|character| trial.visible(character)) {
        factor
    } else {
        factor.max(1.0)
    }
}

/// By the answers of two readers, how likely both are, through what the plant truly shows.
pub(super) fn jointly(shares: &[f64], readings: &[Reading]) -> Vec<Vec<f64>> {
    let there = || shares.iter().enumerate().filter(|(_, share)| **share > 0.0);
    let on = |reading: &Reading| -> Vec<f64> {
        there().filter_map(|(rung, _)| reading.weights.get(rung).copied()).collect()
    };
    let on: Vec<Vec<f64>> = readings.iter().map(on).collect();
    let after = |one: &Vec<f64>| {
        let shown: Vec<f64> = there().zip(one).map(|((_, share), on)| share * on).collect();
        on.iter().map(|other| dot(&shown, other)).collect()
    };
    on.iter().map(after).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{TARGET, case};
    use crate::follow::says::{Says, Step};
    use crate::judge::Judge;
    use crate::testimony::Testimony;
    use crate::{Level, sample};

    #[test]
    fn two_readers_are_weighed_as_the_program_weighs_them() {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let compare = |trial: &Trial<'_>| {
            let mut says = Says::new(trial, Level::Trained);
            let mut compared = 0;
            for rival in trial.rivals {
                for column in 0..matrix.characters().len() {
                    let Some(odds) = says.odds(rival, column) else { continue };
                    let many = odds.first.len();
                    for (a, b) in (0..many).flat_map(|a| (0..many).map(move |b| (a, b))) {
                        let answer = |at: usize| (at + 1 < many).then_some(at);
                        let steps = [(0, a), (1, b)].map(|(reader, at)| Step {
                            column,
                            reader,
                            answer: answer(at),
                        });
                        let readings = steps.iter().filter_map(|step| says.reading(step, false));
                        let testimony = Testimony { column, readings: readings.collect() };
                        let character = judge.character(column).unwrap();
                        let factor = trial.factor(&testimony, character, rival);
                        let known = odds.first[a][4] * odds.then[a][b][4];
                        assert!((known * factor - 1.0).abs() < 1e-9, "{} {known}", rival.name);
                        compared += 1;
                    }
                }
            }
            compared
        };
        let compared = judge.try_target(TARGET, &case(Vec::new()), |trial, _| compare(trial));
        assert!(compared.unwrap() > 100);
    }
}
