//! The fold: entries in, the state of the school out.

use crate::lot::{LotState, lot_states};
use crate::{
    Answers, Batch, Confirmation, Entry, Flag, Look, Lot, Participant, Payload, Permission, Sealed,
    Serving, Site, Sorting, Stand, Survey, Take, Weighing,
};
use ground::{ContentId, Fresh, Mass, Part};
use jiff::civil::DateTime;
use std::collections::BTreeMap;

/// Something that happened at a time.
type Dated<T> = (Option<DateTime>, T);

/// The looks at each plant in hand, in the order in which they were made.
pub type LooksBySpecimen = BTreeMap<String, Vec<(ContentId, Option<DateTime>, Look)>>;

/// The state of the school: what stands in its journal, by name.
///
/// Where two entries give the same name, the later one holds; of two at the same time, the one with
/// the greater identifier, so that the order of arrival changes nothing.
#[derive(Clone, Debug, Default)]
pub struct School {
    /// Places.
    pub sites: BTreeMap<String, Site>,
    /// Permissions, in the order of their sites.
    pub permissions: Vec<Permission>,
    /// Stands.
    pub stands: BTreeMap<String, Stand>,
    /// Surveys, latest last.
    pub surveys: Vec<Dated<Survey>>,
    /// Looks by the plant in hand, in the order in which they were made.
    pub looks: LooksBySpecimen,
    /// Harvests.
    pub takes: BTreeMap<String, Dated<Take>>,
    /// Lots.
    pub lots: BTreeMap<String, Lot>,
    /// Sortings, in the order in which they were made.
    pub sortings: Vec<Dated<Sorting>>,
    /// Preparations.
    pub batches: BTreeMap<String, Dated<Batch>>,
    /// Weights, in the order in which they were read.
    pub weighings: Vec<Dated<Weighing>>,
    /// People who come.
    pub participants: BTreeMap<String, Participant>,
    /// What they said of their health.
    pub answers: BTreeMap<String, Sealed<Answers>>,
    /// What they were handed.
    pub servings: Vec<Dated<Serving>>,
    /// What was settled, by wish and participant.
    pub confirmations: BTreeMap<(String, String), (Option<DateTime>, String, Confirmation)>,
    /// What they may be handed where nobody knows their answers.
    pub flags: Vec<Flag>,
}

impl School {
    /// The state that these entries make; they come in the order in which they happened.
    pub(crate) fn of(standing: &[(&ContentId, &Entry)]) -> Self {
        let mut school = Self::default();
        for (id, entry) in standing {
            school.note(id, entry);
        }
        school
    }

    fn note(&mut self, id: &ContentId, entry: &Entry) {
        let at = entry.at;
        match entry.what.clone() {
            Payload::Site(site) => drop(self.sites.insert(site.name.clone(), site)),
            Payload::Permission(permission) => self.permissions.push(permission),
            Payload::Stand(stand) => drop(self.stands.insert(stand.name.clone(), stand)),
            Payload::Survey(survey) => self.surveys.push((at, survey)),
            Payload::Look(look) => {
                let looks = self.looks.entry(look.specimen.clone()).or_default();
                looks.push((id.clone(), at, look));
            }
            Payload::Take(take) => drop(self.takes.insert(take.name.clone(), (at, take))),
            Payload::Lot(lot) => drop(self.lots.insert(lot.name.clone(), lot)),
            Payload::Sorting(sorting) => self.sortings.push((at, sorting)),
            Payload::Batch(batch) => drop(self.batches.insert(batch.name.clone(), (at, batch))),
            Payload::Weighing(weighing) => self.weighings.push((at, weighing)),
            Payload::Participant(person) => {
                self.participants.insert(person.name.clone(), person);
            }
            Payload::Answers(answers) => {
                self.answers.insert(answers.open().participant.clone(), answers);
            }
            Payload::Serving(serving) => self.servings.push((at, serving)),
            Payload::Confirmation(said) => {
                let key = (said.make.clone(), said.participant.clone());
                self.confirmations.insert(key, (at, entry.by.clone(), said));
            }
            Payload::Flag(flag) => self.flags.push(flag),
            Payload::Correction(_) => {}
        }
    }

    /// The latest survey of a part at a stand.
    #[must_use]
    pub fn survey(&self, stand: &str, part: Part) -> Option<&Dated<Survey>> {
        self.surveys.iter().rev().find(|(_, s)| s.stand == stand && s.part.meets(part))
    }

    /// What was taken from a stand, of a part or of any that holds it or lies in it.
    #[must_use]
    pub fn taken(&self, stand: &str, part: Part) -> Vec<&Dated<Take>> {
        self.takes.values().filter(|(_, t)| t.stand == stand && t.part.meets(part)).collect()
    }

    /// How much of a lot came in, all its takes together.
    #[must_use]
    pub fn lot_mass(&self, lot: &str) -> Mass<Fresh> {
        let takes = self.lots.get(lot).map(|lot| lot.takes.as_slice()).unwrap_or_default();
        takes.iter().filter_map(|take| self.takes.get(take)).map(|(_, t)| t.amount_g).sum()
    }

    /// How each lot stands: unsorted, sorted or held, and why.
    #[must_use]
    pub fn lot_states(&self) -> BTreeMap<String, LotState> {
        lot_states(self)
    }
}
