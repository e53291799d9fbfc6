//! Testimony: all that was read of one character of one specimen, and how it speaks for one taxon
//! against another.

use crate::judge::Judge;
use crate::look::{self, Look};
use crate::spectrum::{Spectrum, weights};
use crate::{Character, Level, Seen, Sense, evidence};
use ground::Faults;
use jiff::civil::DateTime;

/// One report of a character.
#[derive(Clone, Debug)]
pub(crate) struct Reading {
    pub(crate) reader: String,
    pub(crate) level: Level,
    pub(crate) time: DateTime,
    pub(crate) blind: bool,
    pub(crate) seen: Seen,
    /// On each true rung, the probability that this reader reports this.
    pub(crate) weights: Vec<f64>,
    /// Whether an earlier smell may still have been on the fingers.
    pub(crate) tainted: bool,
}

/// All that was read of one character.
#[derive(Clone, Debug)]
pub(crate) struct Testimony {
    pub(crate) column: usize,
    pub(crate) readings: Vec<Reading>,
}

/// The readings of a specimen, sorted by character, then reader, then time.
///
/// `session` holds every look of the day, at other specimens too: a smell that was met anywhere
/// taints those that follow.
pub(crate) fn gather(
    judge: &Judge<'_>,
    specimen: &str,
    session: &[&Look],
) -> Result<Vec<Testimony>, Faults> {
    let mut faults = Faults::none();
    let mut looks: Vec<_> = session.to_vec();
    looks.sort_by(|a, b| (&a.character, &a.reader, a.time).cmp(&(&b.character, &b.reader, b.time)));
    looks.dedup();
    let mut all: Vec<Testimony> = Vec::new();
    for look in &looks {
        let Some(column) = faults.note(look::column(judge.matrix(), look)) else {
            continue;
        };
        let Some(character) = judge.character(column) else {
            continue;
        };
        if look.specimen != specimen {
            continue;
        }
        let tainted = character.sense == Sense::Smell && smelt_before(judge, look, &looks);
        let reading = Reading::new(character, look, tainted);
        match all.last_mut() {
            Some(last) if last.column == column => last.readings.push(reading),
            _ => all.push(Testimony { column, readings: vec![reading] }),
        }
    }
    faults.or(all)
}

/// Whether a smell was met before this one: earlier in the session by anybody, or at the same time
/// by the same reader at another plant.
fn smelt_before(judge: &Judge<'_>, look: &Look, session: &[&Look]) -> bool {
    let smell = |other: &Look| {
        let character = judge.matrix().character(&other.character);
        character.is_some_and(|character| character.sense == Sense::Smell)
            && other.seen.says_something()
    };
    let before = |other: &&&Look| {
        other.time < look.time
            || (other.time == look.time
                && other.reader.name == look.reader.name
                && other.specimen != look.specimen)
    };
    session.iter().filter(before).any(|other| smell(other))
}

impl Reading {
    fn new(character: &Character, look: &Look, tainted: bool) -> Self {
        let misread = look.reader.level.misread(character.organ);
        Self {
            reader: look.reader.name.clone(),
            level: look.reader.level,
            time: look.time,
            blind: look.blind,
            seen: look.seen.clone(),
            weights: weights(character, &look.seen, misread),
            tainted,
        }
    }

    /// How many times likelier this reading is of the rival than of the target.
    pub(crate) fn factor(&self, target: &Spectrum, rival: &Spectrum) -> f64 {
        if !self.seen.says_something() {
            return 1.0;
        }
        let factor = floored(rival.chance(&self.weights)) / floored(target.chance(&self.weights));
        let favours =
            !self.tainted && target.may_favour(&self.weights) && rival.may_favour(&self.weights);
        if favours { factor } else { factor.max(1.0) }
    }
}

impl Testimony {
    /// How many times likelier what was read is of the rival than of the target: below 1 it speaks
    /// for the target.
    ///
    /// Of one reader's readings the least favourable stands. Of several readers, those who speak
    /// for the target do so through the true state, at most two of them together, and so do those
    /// who speak against it; the two sides multiply. A further reading on either side then never
    /// works for the other.
    pub(crate) fn factor(&self, target: &Spectrum, rival: &Spectrum) -> f64 {
        if let [only] = self.readings.as_slice() {
            return only.factor(target, rival);
        }
        let standing = self.least_favourable(target, rival);
        let (favouring, contrary): (Vec<_>, Vec<_>) =
            standing.into_iter().partition(|(_, factor)| *factor < 1.0);
        let best = jointly(&favouring, target, rival).fold(1.0, f64::min);
        let worst = jointly(&contrary, target, rival).fold(1.0, f64::max);
        best * worst
    }

    /// How many readers, two at most, deny a rival: what they say speaks for the target, and it is not what the
    /// rival usually shows.
    pub(crate) fn denials(
        &self,
        character: &Character,
        (target, rival): (&Spectrum, &Spectrum),
    ) -> usize {
        let denies = |(reading, factor): &(&Reading, f64)| {
            let usual = || rival.usual_chance(character, reading.level.misread(character.organ));
            *factor < 1.0 && rival.chance(&reading.weights) < evidence::AGREES * usual()
        };
        let standing = self.least_favourable(target, rival);
        standing.iter().filter(|standing| denies(standing)).count().min(2)
    }

    /// How many readers said something.
    pub(crate) fn readers(&self) -> usize {
        let said = self.readings.iter().filter(|reading| reading.seen.says_something());
        let names: std::collections::BTreeSet<_> = said.map(|reading| &reading.reader).collect();
        names.len()
    }

    /// Each reader's least favourable reading, with its factor.
    fn least_favourable(&self, target: &Spectrum, rival: &Spectrum) -> Vec<(&Reading, f64)> {
        let mut standing: Vec<(&Reading, f64)> = Vec::new();
        for reading in &self.readings {
            let factor = reading.factor(target, rival);
            match standing.last_mut() {
                Some(last) if last.0.reader == reading.reader => {
                    if factor > last.1 {
                        *last = (reading, factor);
                    }
                }
                _ => standing.push((reading, factor)),
            }
        }
        standing
    }

    /// Whether the character was read a second time, each reading speaking for the target over the
    /// rival: by two readers, or by one leader again some time later; the candidates hidden.
    pub(crate) fn twice(&self, target: &Spectrum, rival: &Spectrum) -> bool {
        let good = |reading: &&Reading| reading.blind && reading.factor(target, rival) < 1.0;
        let good: Vec<_> = self.readings.iter().filter(good).collect();
        let mut pairs = good.iter().flat_map(|a| good.iter().map(move |b| (a, b)));
        pairs.any(|(a, b)| a.reader != b.reader || again(a, b))
    }
}

/// Whether the later of two readings by one leader counts as a second one.
fn again(a: &Reading, b: &Reading) -> bool {
    let minutes = a.time.duration_until(b.time).as_mins();
    a.level == Level::Leader && minutes >= evidence::AGAIN_MINUTES
}

/// The factor of each reading alone and of each pair through the true state.
fn jointly<'a>(
    readings: &'a [(&'a Reading, f64)],
    target: &'a Spectrum,
    rival: &'a Spectrum,
) -> impl Iterator<Item = f64> + 'a {
    let pairs = readings.iter().enumerate().flat_map(move |(at, (a, _))| {
        let after = readings.iter().skip(at + 1);
        after.filter_map(move |(b, _)| pair(a, b, target, rival))
    });
    readings.iter().map(|(_, factor)| *factor).chain(pairs)
}

/// What two readers come to by [`Testimony::factor`], from the factor of each and that through the true state.
pub(crate) fn of_two(one: f64, other: f64, jointly: f64) -> f64 {
    match (one < 1.0, other < 1.0) {
        (true, true) => one.min(other).min(jointly),
        (false, false) => one.max(other).max(jointly),
        _ => one * other,
    }
}

fn pair(a: &Reading, b: &Reading, target: &Spectrum, rival: &Spectrum) -> Option<f64> {
    let said = a.seen.says_something() && b.seen.says_something();
    let factor = || {
        let both: Vec<f64> = a.weights.iter().zip(&b.weights).map(|(a, b)| a * b).collect();
        floored(rival.chance(&both)) / floored(target.chance(&both))
    };
    said.then(factor)
}

pub(crate) fn floored(chance: f64) -> f64 {
    if chance > evidence::FLOOR { chance } else { evidence::FLOOR }
}
