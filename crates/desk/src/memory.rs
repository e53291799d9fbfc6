//! What was worked out for earlier questions.

use crate::World;
use crate::outing::{InputFile, Outing, Wishes, read};
use crate::plan::Counting;
use ground::Faults;
use identify::{Case, Judge, Means, Next, Verdict};
use std::sync::{Arc, Mutex, PoisonError};

/// What was worked out for earlier questions, each with everything that it hangs on besides the herbal,
/// so that whoever asks again after one small change waits only for what changed.
///
/// It changes no answer: equal worlds and requests give equal bytes, whatever was asked before. A copy
/// starts empty.
#[derive(Debug, Default)]
pub(crate) struct Memory(Mutex<Known>);

#[derive(Debug, Default)]
struct Known {
    outings: Recent<Vec<InputFile>, Arc<Outing>, 4>,
    verdicts: Recent<(String, Case), Verdict, 64>,
    next: Recent<(String, Case, Means), Next, 32>,
    countings: Vec<Counting>,
}

impl Clone for Memory {
    fn clone(&self) -> Self {
        Self::default()
    }
}

impl World {
    /// An outing, as its files say: [`read`], or what was read of them before.
    ///
    /// # Errors
    /// Every fault of the files.
    pub fn outing(&self, files: &[InputFile]) -> Result<Arc<Outing>, Faults> {
        let work_out = |files: &Vec<InputFile>| read(files, &self.herbal).map(Arc::new);
        self.remembered(|known| &mut known.outings, files.to_vec(), work_out)
    }

    /// The verdict of a judge on a case.
    pub(crate) fn verdict(
        &self,
        judge: &Judge<'_>,
        target: &str,
        case: Case,
    ) -> Result<Verdict, Faults> {
        if !self.is_ours(judge)? {
            return judge.verdict(target, &case);
        }
        let work_out = |(target, case): &(String, Case)| judge.verdict(target, case);
        self.remembered(|known| &mut known.verdicts, (target.to_owned(), case), work_out)
    }

    /// What is best looked at next.
    pub(crate) fn next(
        &self,
        judge: &Judge<'_>,
        target: &str,
        case: Case,
        means: Means,
    ) -> Result<Next, Faults> {
        if !self.is_ours(judge)? {
            return judge.next(target, &case, &means);
        }
        let key = (target.to_owned(), case, means);
        let work_out =
            |(target, case, means): &(String, Case, Means)| judge.next(target, case, means);
        self.remembered(|known| &mut known.next, key, work_out)
    }

    /// What cups are counted by, to be given back with [`Self::keep_counting`].
    pub(crate) fn counting(&self, wishes: &Wishes) -> Counting {
        let kept = self.known(|known| {
            let fits = |kept: &Counting| kept.fits(wishes, self.random_start);
            let at = known.countings.iter().position(fits)?;
            Some(known.countings.swap_remove(at))
        });
        kept.unwrap_or_else(|| Counting::new(&self.herbal, wishes, self.random_start))
    }

    /// Keeps what was counted for the next plan.
    pub(crate) fn keep_counting(&self, mut counting: Counting) {
        counting.end_round();
        self.known(|known| known.countings = vec![counting]);
    }

    /// Forgets what was worked out: it may tell of people's answers.
    pub fn forget(&self) {
        self.known(|known| *known = Known::default());
    }

    /// Whether a judge judges by the table of this herbal, and by no changed copy.
    fn is_ours(&self, judge: &Judge<'_>) -> Result<bool, Faults> {
        Ok(std::ptr::eq(judge.matrix(), self.herbal.flora.matrix()?))
    }

    /// What was worked out before from the same, or is worked out now. Nobody waits for another who
    /// works something out.
    fn remembered<K: PartialEq, V: Clone, const MOST: usize>(
        &self,
        of: impl Fn(&mut Known) -> &mut Recent<K, V, MOST>,
        key: K,
        work_out: impl FnOnce(&K) -> Result<V, Faults>,
    ) -> Result<V, Faults> {
        if let Some(known) = self.known(|known| of(known).get(&key)) {
            return Ok(known);
        }
        let value = work_out(&key)?;
        self.known(|known| of(known).put(key, value.clone()));
        Ok(value)
    }

    fn known<T>(&self, with: impl FnOnce(&mut Known) -> T) -> T {
        with(&mut self.memory.0.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

/// The last few answers, the latest last.
#[derive(Debug)]
struct Recent<K, V, const MOST: usize>(Vec<(K, V)>);

impl<K, V, const MOST: usize> Default for Recent<K, V, MOST> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<K: PartialEq, V: Clone, const MOST: usize> Recent<K, V, MOST> {
    fn get(&mut self, key: &K) -> Option<V> {
        let at = self.0.iter().position(|(known, _)| known == key)?;
        let found = self.0.remove(at);
        let value = found.1.clone();
        self.0.push(found);
        Some(value)
    }

    fn put(&mut self, key: K, value: V) {
        if self.0.len() >= MOST {
            self.0.remove(0);
        }
        self.0.push((key, value));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_asked_for_longest_ago_is_forgotten_first() {
        let mut recent = Recent::<_, _, 2>::default();
        recent.put("one", 1);
        recent.put("two", 2);
        assert_eq!(recent.get(&"one"), Some(1));
        recent.put("three", 3);
        assert_eq!(
            [recent.get(&"one"), recent.get(&"two"), recent.get(&"three")],
            [Some(1), None, Some(3)]
        );
    }
}
