//! One target against all that was read: the rules of judging, put together.

use crate::rival::Rival;
use crate::rules::{self, Denial, Heard, Misfit, MustLook, MustLookState, SecondReading, Tells};
use crate::testimony::Testimony;
use crate::weighing::{Scales, Trial};
use std::collections::BTreeSet;

/// How a target stands.
#[derive(Clone, Debug)]
pub(crate) struct Assessment<'a> {
    pub(crate) scales: Scales<'a>,
    /// What may be left of the bar.
    pub(crate) allowed: f64,
    pub(crate) tells: Vec<Tells>,
    /// The dangerous rivals that too few readings deny.
    pub(crate) hardly_denied: Vec<Denial>,
    pub(crate) must_looks: Vec<MustLook>,
    pub(crate) misfit: Misfit,
    pub(crate) second: Vec<SecondReading>,
}

impl<'a> Assessment<'a> {
    pub(crate) fn new(trial: &Trial<'a>, testimonies: &[Testimony]) -> Self {
        let heard = rules::heard(trial, testimonies);
        Self::of(trial, &heard, trial.scales(testimonies), &rules::must_look(trial))
    }

    /// What it could still be, with its number and what it contributes to the bar: the look-alikes that a sheet
    /// names and that are not set aside, as anybody who knows the plant would fear them, then whatever weighs most.
    pub(crate) fn in_the_way(&self) -> Vec<(usize, &'a Rival, f64)> {
        let contributions = self.scales.contributions().enumerate();
        let mut all: Vec<_> = contributions.map(|(at, (rival, part))| (at, rival, part)).collect();
        let feared = |rival: &Rival, part: f64| rival.named && part > self.allowed;
        all.sort_by(|a, b| {
            let fear = feared(b.1, b.2).cmp(&feared(a.1, a.2));
            fear.then_with(|| b.2.total_cmp(&a.2)).then(a.0.cmp(&b.0))
        });
        all
    }

    /// The same of what was weighed before, with the characters that must be looked at.
    pub(crate) fn of(
        trial: &Trial<'a>,
        heard: &[Heard<'_>],
        scales: Scales<'a>,
        must: &BTreeSet<String>,
    ) -> Self {
        Self {
            tells: rules::tells(&scales),
            hardly_denied: rules::denied_too_seldom(&scales),
            must_looks: rules::must_look_states(trial, heard, must),
            misfit: rules::misfit(trial, heard, must),
            second: rules::second_reading(trial, heard, &scales),
            allowed: trial.allowed,
            scales,
        }
    }

    /// The harmless twins with which the target is determined together; nothing where the bar is
    /// not met even so.
    pub(crate) fn twins(&self) -> Option<Vec<String>> {
        twins(&self.scales, self.allowed)
    }

    pub(crate) fn tells_met(&self) -> bool {
        self.tells.iter().all(|tells| tells.met)
    }

    pub(crate) fn must_looks_done(&self) -> bool {
        self.must_looks.iter().all(|must| must.state == MustLookState::Done)
    }

    pub(crate) fn read_twice(&self) -> bool {
        self.second.iter().all(|second| second.had)
    }

    /// Whether all rules are met but the second reading.
    pub(crate) fn settled_once(&self) -> bool {
        self.twins().is_some()
            && self.tells_met()
            && self.hardly_denied.is_empty()
            && self.must_looks_done()
            && !self.misfit.blocks()
    }

    /// Whether all rules are met.
    pub(crate) fn settled(&self) -> bool {
        self.settled_once() && self.read_twice()
    }
}

/// The harmless twins that must be left aside for what is left of the bar to be allowed: none where
/// that needs none; nothing where leaving all of them aside would not do.
pub(crate) fn twins(scales: &Scales<'_>, allowed: f64) -> Option<Vec<String>> {
    let all: Vec<_> = scales.contributions().collect();
    if all.iter().map(|(_, part)| part).sum::<f64>() <= allowed {
        return Some(Vec::new());
    }
    let mut harmless: Vec<_> =
        all.iter().copied().filter(|(rival, _)| rival.is_harmless_twin()).collect();
    harmless.sort_by(|a, b| a.1.total_cmp(&b.1).then_with(|| b.0.name.cmp(&a.0.name)));
    let mut twins: Vec<String> = Vec::new();
    while left_without(&all, &twins) > allowed {
        let (most, _) = harmless.pop()?;
        twins.push(most.name.clone());
    }
    twins.sort();
    Some(twins)
}

fn left_without(all: &[(&Rival, f64)], twins: &[String]) -> f64 {
    let others = all.iter().filter(|(rival, _)| !twins.contains(&rival.name));
    others.map(|(_, part)| part).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::judge::Judge;
    use crate::testimony::gather;
    use crate::{cases, sample};

    fn nothing_read<'a>(good: &Assessment<'a>) -> Scales<'a> {
        good.scales.weighed().fold(good.scales.clone(), |less, w| less.without(w.column))
    }

    #[test]
    fn every_rule_must_be_met() {
        let matrix = sample::matrix();
        let judge = Judge::new(&matrix);
        let case = cases::case(cases::typical());
        judge
            .try_target("Allium ursinum", &case, |trial, _| {
                let testimonies = gather(&judge, "A", &case.session()).unwrap();
                let good = Assessment::new(trial, &testimonies);
                assert!(good.settled());
                let spoilt = |spoil: fn(&mut Assessment<'_>)| {
                    let mut bad = good.clone();
                    spoil(&mut bad);
                    assert!(!bad.settled());
                };
                spoilt(|bad| bad.allowed = 0.0);
                spoilt(|bad| bad.tells[0].met = false);
                spoilt(|bad| bad.must_looks[0].state = MustLookState::Open);
                spoilt(|bad| bad.must_looks[0].state = MustLookState::Doubtful);
                spoilt(|bad| bad.misfit.must_look.push("base".to_owned()));
                spoilt(|bad| bad.second[0].had = false);
                spoilt(|bad| bad.hardly_denied = rules::denied_too_seldom(&nothing_read(bad)));
            })
            .unwrap();
    }
}
