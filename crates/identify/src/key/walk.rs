//! Where readers who misread end up in a key.
//!
//! The chance of a lead is that of the reports which fit it: over what plants of this kind show, how
//! often somebody who has that before them reports what the lead says. A walk multiplies these along
//! every way, so that the chances of all ends, and of stopping where no lead fits, sum to 1. Characters
//! are taken to vary and to be misread independently of one another.

use super::marks::{Reads, Stretch, known};
use super::plants::{PlantKey, PlantLead, To};
use crate::judge::Judge;
use crate::ladder::Ladder;
use crate::spectrum::dot;
use crate::states::{self, related};
use crate::{Character, Kind, Level, State};
use ground::{Finite, Harm, Month};
use serde::{Deserialize, Serialize};

/// Where readers of one level end up.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Arrivals {
    /// How well they read.
    pub level: Level,
    /// The mean share that ends where another plant is named and theirs is not.
    pub wrong: Finite,
    /// The mean share that stops where no lead fits.
    pub stopped: Finite,
    /// Of each plant, in the order of the key.
    pub plants: Vec<Arrival>,
}

/// Where the readers end up who have one plant in hand.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Arrival {
    /// The plant.
    pub plant: String,
    /// The share that ends where it is named.
    pub right: Finite,
    /// The share that ends where another is named and it is not.
    pub wrong: Finite,
    /// The share that stops where no lead fits.
    pub stopped: Finite,
    /// Of a harmful or deadly plant, the share that ends where it is not named and one is that does
    /// less harm than that.
    pub harmless: Option<Finite>,
}

impl Arrivals {
    /// The plant that ends wrong most often.
    #[must_use]
    pub fn worst(&self) -> Option<&Arrival> {
        self.plants.iter().rev().max_by_key(|plant| plant.wrong)
    }

    /// The harmful or deadly plant that ends most often at one that does less harm.
    #[must_use]
    pub fn most_dangerous(&self) -> Option<&Arrival> {
        let harmful = self.plants.iter().rev().filter(|plant| plant.harmless.is_some());
        harmful.max_by_key(|plant| plant.harmless)
    }
}

impl Judge<'_> {
    /// Where readers of a level end up in a key that was made of this table for this month.
    ///
    /// Where nobody knows what a plant shows, all leads are right, and readers are spread evenly.
    #[must_use]
    pub fn arrivals(&self, key: &PlantKey, month: Option<Month>, level: Level) -> Arrivals {
        let walk = Walk { judge: self, key, month, weights: weights(self, key, level) };
        let plants: Vec<_> = key.plants.iter().map(|plant| walk.arrival(plant)).collect();
        let mean = |share: fn(&Arrival) -> Finite| {
            let sum: f64 = plants.iter().map(|plant| share(plant).get()).sum();
            finite(sum / states::count(plants.len().max(1)))
        };
        Arrivals { level, wrong: mean(|p| p.wrong), stopped: mean(|p| p.stopped), plants }
    }
}

struct Walk<'a, 'm> {
    judge: &'a Judge<'m>,
    key: &'a PlantKey,
    month: Option<Month>,
    /// By couplet, then by lead: the chance that a reader takes it, on each rung that a plant shows.
    weights: Vec<Vec<Vec<f64>>>,
}

impl Walk<'_, '_> {
    fn arrival(&self, plant: &str) -> Arrival {
        let ends = self.chances(plant);
        let harm = |name: &str| self.judge.matrix().taxon(name).map(|taxon| taxon.harm);
        let harmful = harm(plant).is_some_and(|harm| harm >= Harm::Harmful);
        let (mut right, mut wrong, mut harmless) = (0.0, 0.0, 0.0);
        for (end, chance) in self.key.ends.iter().zip(&ends) {
            if end.plants.iter().any(|name| name == plant) {
                right += chance;
                continue;
            }
            wrong += chance;
            if end.plants.iter().any(|name| harm(name) < Some(Harm::Harmful)) {
                harmless += chance;
            }
        }
        Arrival {
            plant: plant.to_owned(),
            right: finite(right),
            wrong: finite(wrong),
            stopped: finite((1.0 - right - wrong).max(0.0)),
            harmless: harmful.then(|| finite(harmless)),
        }
    }

    /// The chance of each end. A couplet comes before those that it leads to.
    fn chances(&self, plant: &str) -> Vec<f64> {
        let mut ends = vec![0.0; self.key.ends.len()];
        let mut comes = vec![0.0; self.key.couplets.len()];
        match comes.first_mut() {
            Some(first) => *first = 1.0,
            None => ends.iter_mut().for_each(|only| *only = 1.0),
        }
        for (at, couplet) in self.key.couplets.iter().enumerate() {
            let here = comes.get(at).copied().unwrap_or(0.0);
            for (lead, chance) in couplet.leads.iter().zip(self.leads(plant, at)) {
                let place = match lead.to {
                    To::Couplet(next) => comes.get_mut(next),
                    To::End(end) => ends.get_mut(end),
                };
                if let Some(place) = place {
                    *place += here * chance;
                }
            }
        }
        ends
    }

    /// The chance of each lead of a couplet.
    fn leads(&self, plant: &str, at: usize) -> Vec<f64> {
        let weights = self.weights.get(at).map_or(&[][..], Vec::as_slice);
        match self.shares(plant, at) {
            Some(shares) => weights.iter().map(|weights| dot(shares, weights)).collect(),
            None => vec![1.0 / states::count(weights.len()); weights.len()],
        }
    }

    /// How often the plant shows each rung of what a couplet asks, where that is known.
    fn shares(&self, plant: &str, at: usize) -> Option<&[f64]> {
        let column = self.judge.matrix().column(&self.key.couplets.get(at)?.character)?;
        let row = self.judge.matrix().row(plant)?;
        known(self.judge, row, column, self.month)?;
        Some(&self.judge.shown(row, column)?.shares)
    }
}

fn weights(judge: &Judge<'_>, key: &PlantKey, level: Level) -> Vec<Vec<Vec<f64>>> {
    let of = |couplet: &super::plants::Couplet| {
        let character = judge.matrix().character(&couplet.character)?;
        let misread = level.misread(character.organ);
        let lead = |lead: usize| weights_of(character, &couplet.leads, lead, misread);
        Some((0..couplet.leads.len()).map(lead).collect())
    };
    key.couplets.iter().map(|couplet| of(couplet).unwrap_or_default()).collect()
}

/// The chance of one of these leads on each rung.
fn weights_of(character: &Character, leads: &[PlantLead], at: usize, misread: f64) -> Vec<f64> {
    match (&character.kind, leads.get(at).map(|lead| &lead.reads)) {
        (Kind::States(known), Some(Reads::States(_))) => {
            let answers = states::answers(known, misread);
            let fits =
                known.iter().zip(&answers).filter(|(s, _)| fits(known, s, leads) == Some(at));
            let mut sum = vec![0.0; known.len()];
            for (_, weights) in fits {
                sum.iter_mut().zip(weights).for_each(|(sum, weight)| *sum += weight);
            }
            sum
        }
        (kind, Some(Reads::Within(stretches))) => {
            let ladder = if *kind == Kind::Length { Ladder::Lengths } else { Ladder::Counts };
            let below = |end: Finite| ladder.up_to(end.get(), misread);
            let one = |stretch: &Stretch| {
                let high = stretch.up_to.map_or_else(|| vec![1.0; ladder.rungs()], below);
                let low = stretch.over.map_or_else(|| vec![0.0; ladder.rungs()], below);
                high.iter().zip(&low).map(|(high, low)| high - low).collect::<Vec<f64>>()
            };
            let mut sum = vec![0.0; ladder.rungs()];
            for weights in stretches.iter().map(one) {
                sum.iter_mut().zip(weights).for_each(|(sum, weight)| *sum += weight);
            }
            sum
        }
        _ => Vec::new(),
    }
}

/// The lead that somebody takes who reads a state: the one that names it, or the only one that names
/// its kind or what is a kind of it.
fn fits(known: &[State], state: &State, leads: &[PlantLead]) -> Option<usize> {
    let meets = |lead: &PlantLead, same: &dyn Fn(&String) -> bool| match &lead.reads {
        Reads::States(named) => named.iter().any(same),
        Reads::Within(_) => false,
    };
    let named = leads.iter().position(|lead| meets(lead, &|id| *id == state.id));
    named.or_else(|| {
        let kin = |id: &String| related(known, id, &state.id);
        let mut kin = leads.iter().enumerate().filter(|(_, lead)| meets(lead, &kin));
        let only = kin.next().map(|(at, _)| at);
        only.filter(|_| kin.next().is_none())
    })
}

/// A share as it is written: never quite nothing by rounding alone.
fn finite(share: f64) -> Finite {
    Finite::new(share).unwrap_or(Finite::ZERO)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::{cell, character, taxon};
    use crate::{Matrix, Value};
    use ground::Organ;
    use std::collections::BTreeMap;

    /// The shares are sums of few products.
    fn close(got: Finite, expected: f64) {
        assert!((got.get() - expected).abs() < 1e-9, "{got} is not {expected}");
    }

    /// So many characters of two states, told by the bits of the plant's number; those that harm are
    /// the odd ones.
    fn binary(characters: usize) -> Matrix {
        let names: Vec<String> = (0..characters).map(|at| format!("c{at}")).collect();
        let all = names
            .iter()
            .map(|name| Character { organ: Organ::Stem, ..character(name, &["no", "yes"]) });
        let plants: Vec<_> = (0..1_usize << characters)
            .map(|bits| {
                let harm = if bits % 2 == 0 { Harm::None } else { Harm::Deadly };
                (bits, taxon(&format!("Planta {bits:02}"), harm, &[]))
            })
            .collect();
        let cells = plants.iter().flat_map(|(bits, plant)| {
            names.iter().enumerate().map(move |(at, name)| {
                let state = if bits >> at & 1 == 1 { "yes" } else { "no" };
                let shares = BTreeMap::from([(state.to_owned(), 1.0)]);
                (plant.name.clone(), name.clone(), cell(Value::Shares(shares)))
            })
        });
        let cells: Vec<_> = cells.collect();
        let taxa = plants.into_iter().map(|(_, plant)| plant);
        Matrix::new(all.collect(), taxa.collect(), cells).unwrap()
    }

    fn arrivals(matrix: &Matrix, misread: f64) -> (PlantKey, Arrivals) {
        let judge = Judge::new(matrix);
        let names: Vec<_> = matrix.taxa().iter().map(|taxon| taxon.name.clone()).collect();
        let key = judge.key(&names, None, 1_000).unwrap();
        let level = Level::Misreads(Finite::new(misread).unwrap());
        let arrivals = judge.arrivals(&key, None, level);
        (key, arrivals)
    }

    /// (1 − e)^m, by hand: 0.79^5 and 0.95^5.
    #[test]
    fn so_many_couplets_are_each_read_rightly() {
        for (misread, right) in [(0.21, 0.307_705_640), (0.05, 0.773_780_938)] {
            let (key, arrivals) = arrivals(&binary(5), misread);
            close(key.looks, 5.0);
            assert!((key.seconds.get() - 50.0).abs() < 1e-9 && key.ends.len() == 32);
            for plant in &arrivals.plants {
                close(plant.right, right);
                close(plant.wrong, 1.0 - right);
                close(plant.stopped, 0.0);
            }
            close(arrivals.wrong, 1.0 - right);
        }
    }

    /// Of two characters one tells whether it harms: who misreads that alone, or both, ends at a
    /// harmless plant.
    #[test]
    fn a_deadly_plant_ends_at_a_harmless_one_as_often_as_the_character_that_tells_is_misread() {
        let (_, arrivals) = arrivals(&binary(2), 0.1);
        let deadly = arrivals.most_dangerous().unwrap();
        assert_eq!(deadly.plant, "Planta 01");
        close(deadly.harmless.unwrap(), 0.1);
        assert!(arrivals.plants.iter().filter(|plant| plant.harmless.is_some()).count() == 2);
    }

    /// Three plants of which the first is told by one look and the others by two: 0.9 and 0.9².
    #[test]
    fn plants_that_are_told_sooner_are_told_more_surely() {
        let matrix = binary(2);
        let judge = Judge::new(&matrix);
        let names = ["Planta 00", "Planta 01", "Planta 03"].map(str::to_owned);
        let key = judge.key(&names, None, 100).unwrap();
        let level = Level::Misreads(Finite::new(0.1).unwrap());
        let arrivals = judge.arrivals(&key, None, level);
        let mut right: Vec<_> = arrivals.plants.iter().map(|plant| plant.right).collect();
        right.sort();
        close(right[0], 0.81);
        close(right[1], 0.81);
        close(right[2], 0.9);
        close(arrivals.wrong, (0.19 + 0.19 + 0.1) / 3.0);
        close(key.looks, 5.0 / 3.0);
    }

    #[test]
    fn all_that_can_happen_sums_to_one() {
        let matrix = crate::sample::matrix();
        for misread in [0.0, 0.21, 0.5] {
            let (_, arrivals) = arrivals(&matrix, misread);
            for plant in arrivals.plants {
                close(plant.stopped, 1.0 - plant.right.get() - plant.wrong.get());
                assert!(plant.harmless.is_none_or(|harmless| harmless <= plant.wrong));
            }
        }
    }

    #[test]
    fn leads_of_measures_and_counts_share_one_report() {
        let stretch = |over: Option<f64>, up_to: Option<f64>| PlantLead {
            reads: Reads::Within(vec![Stretch {
                over: over.and_then(Finite::new),
                up_to: up_to.and_then(Finite::new),
            }]),
            to: To::End(0),
        };
        let leads =
            [stretch(None, Some(6.0)), stretch(Some(6.0), Some(9.0)), stretch(Some(9.0), None)];
        for kind in [Kind::Length, Kind::Count] {
            let measured = Character { kind, ..character("length", &[]) };
            let of = |at| weights_of(&measured, &leads, at, 0.1);
            let (low, middle, high) = (of(0), of(1), of(2));
            for ((low, middle), high) in low.iter().zip(&middle).zip(&high) {
                assert!((low + middle + high - 1.0).abs() < 1e-12);
                assert!(*low >= 0.0 && *middle >= 0.0 && *high >= 0.0);
            }
        }
    }
}
