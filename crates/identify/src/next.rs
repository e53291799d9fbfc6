//! What to look at next: the shortest list of looks that would settle it, or why nothing can here
//! today.

use crate::assess::{Assessment, twins};
use crate::judge::Judge;
use crate::offer::{Means, Offers};
use crate::rules::{
    Denial, Heard, calling_twice, dangerous, denial, denials_wanted, heard, heard_of, must_look,
    strong, tells_met, told_apart,
};
use crate::testimony::Testimony;
use crate::weighing::{Scales, Trial, Weighed};
use crate::{Case, MustLook, MustLookState, Seen, Sense, blocked, evidence, spectrum};
use ground::{Faults, Finite, Text};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// What to do next about a specimen.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Next {
    /// Nothing: all rules are met.
    Settled,
    /// Look.
    Look(Plan),
    /// Nothing that can be seen here today settles it.
    CannotSettle {
        /// Why not.
        why: Vec<Text>,
    },
}

/// Looks that would settle it, if the plant shows what the target typically does.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Plan {
    /// What to look at, the best first: most of the bar for each second.
    pub looks: Vec<Offer>,
    /// What somebody else must read too, or the leader again later, the candidates hidden.
    pub again: Vec<String>,
    /// Seconds that the looks take, those of a glance counted once.
    pub seconds: u32,
}

/// A look that is offered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Offer {
    /// The character to look at.
    pub character: String,
    /// What the target typically shows.
    pub typical: Seen,
    /// Seconds that it takes.
    pub seconds: u16,
    /// Whether it is taken in at a glance, together with the others that are.
    pub at_a_glance: bool,
    /// By how much it is expected to lower the natural logarithm of what is left of the bar, if it
    /// is looked at first.
    pub lowers: Finite,
}

impl Judge<'_> {
    /// What to look at next to settle whether a specimen is the target.
    ///
    /// The list is found by looking all the way to the bar: the characters that must be looked at,
    /// then tells, then whatever lowers the bar most for each second; at last every look is dropped
    /// that the others make needless. One step alone would see nothing but ties, since one answer
    /// seldom turns *not yet* into *determined*.
    ///
    /// # Errors
    /// As [`Judge::verdict`].
    pub fn next(&self, target: &str, case: &Case, means: &Means) -> Result<Next, Faults> {
        self.try_target(target, case, |trial, testimonies| {
            if !case.material.can_be_determined() {
                let id = format!("identify-material-{}", case.material.word());
                return Next::CannotSettle { why: vec![Text::new(id)] };
            }
            next(&Offers::new(trial, means), testimonies)
        })
    }
}

fn next(offers: &Offers<'_, '_>, testimonies: &[Testimony]) -> Next {
    let trial = offers.trial;
    let heard = heard(trial, testimonies);
    let assessment = Assessment::of(trial, &heard, trial.scales(testimonies), &must_look(trial));
    next_of(offers, &heard, &assessment)
}

/// What to do after what was read, which was assessed before.
pub(crate) fn next_of<'a>(
    offers: &Offers<'_, 'a>,
    heard: &[Heard<'_>],
    assessment: &Assessment<'a>,
) -> Next {
    let trial = offers.trial;
    if assessment.settled() {
        return Next::Settled;
    }
    let contrary = blocked::by_what_was_read(assessment);
    if !contrary.is_empty() {
        return Next::CannotSettle { why: contrary };
    }
    let mut search = Search::new(offers, assessment);
    let unseen = search.must_look(assessment);
    search.outweigh(assessment);
    search.tell_apart();
    search.reach_the_bar();
    search.deny();
    let why = blocked::by_what_is_known(trial, &search.scales, &unseen);
    if !why.is_empty() {
        return Next::CannotSettle { why };
    }
    search.prune();
    match search.again(assessment, heard) {
        Ok(again) => Next::Look(Plan { again, ..search.plan(assessment) }),
        Err(why) => Next::CannotSettle { why: vec![why] },
    }
}

/// A list of looks in the making.
struct Search<'s, 'a> {
    trial: &'s Trial<'a>,
    all: &'s Offers<'s, 'a>,
    /// What was read, and what was chosen to be read.
    scales: Scales<'a>,
    /// What else can be looked at.
    offers: Vec<Weighed<'a>>,
    chosen: Vec<Weighed<'a>>,
    /// Columns that no other look makes needless.
    fixed: BTreeSet<usize>,
}

impl<'s, 'a> Search<'s, 'a> {
    fn new(all: &'s Offers<'s, 'a>, assessment: &Assessment<'a>) -> Self {
        let scales = assessment.scales.clone();
        let offers = all.unread(&scales);
        let (chosen, fixed) = (Vec::new(), BTreeSet::new());
        Self { trial: all.trial, all, scales, offers, chosen, fixed }
    }

    fn choose(&mut self, column: usize) -> bool {
        let Some(at) = self.offers.iter().position(|offer| offer.column == column) else {
            return false;
        };
        let offer = self.offers.remove(at);
        self.scales.add(offer.clone());
        self.chosen.push(offer);
        true
    }

    /// Chooses the characters that must be looked at; gives those that cannot be.
    fn must_look(&mut self, assessment: &Assessment<'_>) -> Vec<String> {
        let settled = [MustLookState::Done, MustLookState::Doubtful];
        let open = assessment.must_looks.iter().filter(|m| !settled.contains(&m.state));
        let mut unseen = Vec::new();
        for must in open {
            let column = self.trial.judge.matrix().column(&must.character);
            let known = must.state == MustLookState::Open;
            match column.filter(|column| known && self.choose(*column)) {
                Some(column) => {
                    self.fixed.insert(column);
                }
                None => unseen.push(must.character.clone()),
            }
        }
        unseen
    }

    /// Where one group misfits: enough groups that would agree to outweigh it, the quickest first.
    fn outweigh(&mut self, assessment: &Assessment<'_>) {
        if !assessment.misfit.blocks() {
            return;
        }
        let agreeing = assessment.misfit.agreeing;
        let read = |scales: &Scales<'_>| -> BTreeSet<String> {
            scales.weighed().map(|w| w.character.group.clone()).collect()
        };
        let before = read(&self.scales).len();
        while agreeing + read(&self.scales).len() - before < evidence::OUTWEIGH {
            let known = read(&self.scales);
            let fresh = self.offers.iter().filter(|w| !known.contains(&w.character.group));
            let Some(column) = fresh.min_by_key(|w| w.character.seconds).map(|w| w.column) else {
                return;
            };
            self.fixed.insert(column);
            self.choose(column);
        }
    }

    /// Chooses the quickest tells against every look-alike that lacks some.
    fn tell_apart(&mut self) {
        for at in 0..self.trial.rivals.len() {
            let wants = self.trial.rivals.get(at).is_some_and(|rival| rival.wants_tells());
            if wants && !told_apart(&strong(&self.scales, at), true) {
                for column in self.quickest_tells(at) {
                    self.choose(column);
                }
            }
        }
    }

    /// The one or two quickest offers that complete the tells against a rival.
    fn quickest_tells(&self, at: usize) -> Vec<usize> {
        let is_strong = |w: &&Weighed<'_>| w.factor(at) <= 1.0 / evidence::TELL;
        let could: Vec<_> = self.offers.iter().filter(is_strong).collect();
        let cost = |w: &Weighed<'_>| w.character.seconds;
        let best = quickest(&could, &strong(&self.scales, at), cost, true);
        best.iter().map(|weighed| weighed.column).collect()
    }

    /// Chooses the quickest looks that deny every dangerous rival often enough.
    fn deny(&mut self) {
        for (at, _) in dangerous(self.trial.rivals) {
            while denial(&self.scales, at).is_some() {
                let Some(column) = self.quickest_denial(at) else {
                    break;
                };
                self.choose(column);
            }
        }
    }

    /// The quickest offer of a group that does not deny a rival yet; where all looks that do are of one organ,
    /// rather of another.
    fn quickest_denial(&self, at: usize) -> Option<usize> {
        let (readings, organs) = self.scales.denied(at);
        let denying: BTreeSet<&str> = self
            .scales
            .weighed()
            .filter(|w| w.denials(at) > 0)
            .map(|w| w.character.group.as_str())
            .collect();
        let last = readings + 1 >= evidence::DENIALS && organs.len() == 1;
        let fresh =
            |w: &&Weighed<'_>| w.denials(at) > 0 && !denying.contains(w.character.group.as_str());
        let same = |w: &Weighed<'_>| last && organs.contains(&w.character.organ);
        let could = self.offers.iter().filter(fresh);
        could.min_by_key(|w| (same(w), w.character.seconds, w.column)).map(|w| w.column)
    }

    /// Chooses whatever lowers the bar most for each second, until it is met or nothing lowers it.
    fn reach_the_bar(&mut self) {
        while twins(&self.scales, self.trial.allowed).is_none() {
            let Some(column) = self.best_offer() else {
                return;
            };
            self.choose(column);
        }
    }

    fn best_offer(&self) -> Option<usize> {
        let contributions: Vec<f64> = self.scales.contributions().map(|(_, part)| part).collect();
        let before: f64 = contributions.iter().sum();
        let gain = |offer: &Weighed<'_>| {
            let after = self.scales.left_with(&contributions, offer);
            libm::log(before / after) / f64::from(offer.character.seconds.max(1))
        };
        let gains = self.offers.iter().map(|offer| (offer.column, gain(offer)));
        // Columns come in order, so that of equal gains the first stays.
        let best = gains.rev().max_by(|a, b| a.1.total_cmp(&b.1));
        best.filter(|(_, gain)| *gain > 1e-6).map(|(column, _)| column)
    }

    /// Has looks read twice, the quickest first, until a rival is denied often enough; whether it is then.
    fn deny_again(&self, at: usize, denial: &Denial, again: &mut BTreeSet<usize>) -> bool {
        let once = self.scales.weighed().filter(|w| w.denials(at) == 1);
        let mut once: Vec<_> = once.filter(|w| w.character.sense != Sense::Smell).collect();
        once.sort_by_key(|w| (!again.contains(&w.column), w.character.seconds, w.column));
        let mut twice = BTreeSet::new();
        let wanted = denials_wanted(denial.organs);
        for weighed in once {
            if denial.readings + twice.len() < wanted && twice.insert(&weighed.character.group) {
                again.insert(weighed.column);
            }
        }
        denial.readings + twice.len() >= wanted
    }

    /// Drops every chosen look that the others make needless, the slowest first.
    fn prune(&mut self) {
        let mut columns: Vec<_> =
            self.chosen.iter().map(|w| (w.character.seconds, w.column)).collect();
        columns.sort_by(|a, b| b.cmp(a));
        for (_, column) in columns {
            let without = self.scales.without(column);
            let needless = twins(&without, self.trial.allowed).is_some()
                && tells_met(&without)
                && self.denies_no_less(&without);
            if needless && !self.fixed.contains(&column) {
                self.scales = without;
                self.chosen.retain(|weighed| weighed.column != column);
            }
        }
    }

    /// Whether every dangerous rival that is denied often enough still is without a look.
    fn denies_no_less(&self, without: &Scales<'_>) -> bool {
        let lacks = |scales: &Scales<'_>, at| denial(scales, at).is_some();
        dangerous(self.trial.rivals).all(|(at, _)| !lacks(without, at) || lacks(&self.scales, at))
    }

    fn plan(&self, assessment: &Assessment<'_>) -> Plan {
        let mut looks: Vec<_> =
            self.chosen.iter().filter_map(|weighed| self.offer(assessment, weighed)).collect();
        let per_second = |offer: &Offer| offer.lowers.get() / f64::from(offer.seconds.max(1));
        looks.sort_by(|a, b| {
            per_second(b).total_cmp(&per_second(a)).then_with(|| a.character.cmp(&b.character))
        });
        let glance = looks.iter().filter(|offer| offer.at_a_glance).map(|offer| offer.seconds);
        let others = looks.iter().filter(|offer| !offer.at_a_glance);
        let seconds = others.map(|offer| u32::from(offer.seconds)).sum::<u32>()
            + u32::from(glance.max().unwrap_or(0));
        Plan { again: Vec::new(), seconds, looks }
    }

    fn offer(&self, assessment: &Assessment<'_>, weighed: &Weighed<'_>) -> Option<Offer> {
        let cell = self.trial.judge.matrix().at(self.trial.target, weighed.column)?;
        let lowers = self.all.expected_lowering(&assessment.scales, weighed.column);
        Some(Offer {
            character: weighed.character.id.clone(),
            typical: spectrum::typical(weighed.character, cell)?,
            seconds: weighed.character.seconds,
            at_a_glance: weighed.character.at_a_glance(),
            lowers: Finite::new(lowers)?,
        })
    }

    /// The quickest characters that a second reading needs; the deadly rival against which none
    /// would do, where there is one.
    ///
    /// Never a smell: the second one favours nothing. And every must-look character of which one
    /// reader alone was in doubt.
    fn again(&self, assessment: &Assessment<'_>, heard: &[Heard<'_>]) -> Result<Vec<String>, Text> {
        let doubtful =
            assessment.must_looks.iter().filter(|must| must.state == MustLookState::Doubtful);
        let column = |must: &MustLook| self.trial.judge.matrix().column(&must.character);
        let mut again: BTreeSet<usize> = doubtful.filter_map(column).collect();
        for at in calling_twice(&self.scales) {
            let Some(rival) = self.trial.rivals.get(at) else {
                continue;
            };
            let twice = |w: &Weighed<'_>| {
                heard_of(heard, w.column).is_some_and(|h| self.trial.twice(h.testimony, rival))
            };
            let free = |w: &Weighed<'_>| again.contains(&w.column) || twice(w);
            let cost = |w: &Weighed<'_>| if free(w) { 0 } else { w.character.seconds };
            let mut could = strong(&self.scales, at);
            could.retain(|w| w.character.sense != Sense::Smell || twice(w));
            let needed = quickest(&could, &[], cost, rival.named);
            if needed.is_empty() {
                return Err(Text::new("identify-cannot-read-twice").taxon("rival", &rival.name));
            }
            let more: Vec<_> = needed.iter().filter(|w| !twice(w)).map(|w| w.column).collect();
            again.extend(more);
        }
        for (at, rival) in dangerous(self.trial.rivals) {
            let lacks = denial(&self.scales, at);
            if lacks.is_some_and(|denial| !self.deny_again(at, &denial, &mut again)) {
                return Err(Text::new("identify-cannot-deny").taxon("rival", &rival.name));
            }
        }
        let names = again.iter().filter_map(|column| self.trial.judge.character(*column));
        Ok(names.map(|character| character.id.clone()).collect())
    }
}

/// The one or two of these that, with what there is, tell two plants apart at the least cost.
fn quickest<'w, 'a>(
    could: &[&'w Weighed<'a>],
    had: &[&'w Weighed<'a>],
    cost: impl Fn(&Weighed<'_>) -> u16,
    of_two_organs: bool,
) -> Vec<&'w Weighed<'a>> {
    let alone = could.iter().map(|a| vec![*a]);
    let pairs = could
        .iter()
        .enumerate()
        .flat_map(|(first, a)| could.iter().skip(first + 1).map(move |b| vec![*a, *b]));
    let completes = |more: &Vec<&Weighed<'_>>| {
        let all: Vec<_> = had.iter().chain(more).copied().collect();
        told_apart(&all, of_two_organs)
    };
    let total = |more: &Vec<&Weighed<'_>>| more.iter().map(|w| u32::from(cost(w))).sum::<u32>();
    alone.chain(pairs).filter(completes).min_by_key(total).unwrap_or_default()
}
