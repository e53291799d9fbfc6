//! Mix-ups that were told, done again: somebody holds the plant that it was, looks at it, and asks
//! whether it is the plant that they meant.

mod in_hand;

use ground::{Faults, Month, Standing};
use herbal::{Herbal, MixUp};
use identify::{
    Case, Judge, Level, Look, Material, Matrix, Means, Next, Reader, Relatives, RelativesStatement,
    Seen, Strictness, Verdict,
};
use in_hand::{InHand, Shows};
use jiff::civil::{Date, DateTime, date};
use std::collections::BTreeSet;

/// Rounds of looks after which nobody goes on; none comes near.
const ROUNDS: i8 = 40;

/// The two who look, neither told what it is taken for.
const READERS: [&str; 2] = ["first", "second"];

/// What became of one mix-up.
pub(crate) struct Done {
    /// The mix-up.
    pub(crate) id: String,
    /// The place of the plant that it was in the list of what it could still be, once everything
    /// that could be seen was read.
    pub(crate) rank: Option<usize>,
    /// Among all plants of the herbal.
    pub(crate) among_all: Tried,
    /// In a world where only the two grow, so that no other plant stands in the way.
    pub(crate) alone: Tried,
}

/// What a mix-up comes to, tried in several ways.
pub(crate) struct Tried {
    /// Every character of every organ that could be seen, read by both at one time.
    pub(crate) at_once: Verdict,
    /// The looks that the program asks for, at what could be seen.
    pub(crate) asked: Verdict,
    /// Every character of the whole plant read at one time, where it is as like the one that was
    /// meant as its sheet lets it be.
    pub(crate) alike_at_once: Verdict,
    /// The looks that the program asks for, at such a plant.
    pub(crate) alike_asked: Verdict,
    /// The looks that the program asks for, at the plant that was meant.
    pub(crate) rightly: Verdict,
}

impl Tried {
    /// What the plant in hand came to, each way that it was tried.
    pub(crate) fn wrongly(&self) -> [&Verdict; 4] {
        [&self.at_once, &self.asked, &self.alike_at_once, &self.alike_asked]
    }
}

/// Does every mix-up of the herbal again.
pub(crate) fn all(herbal: &Herbal) -> Result<Vec<Done>, Faults> {
    let matrix = herbal.flora.matrix()?;
    herbal.flora.mix_ups().map(|mix_up| again(matrix, mix_up)).collect()
}

fn again(matrix: &Matrix, mix_up: &MixUp) -> Result<Done, Faults> {
    let among_all = tried(matrix, mix_up)?;
    Ok(Done {
        id: mix_up.id.clone(),
        rank: rank(&among_all.at_once, &mix_up.was),
        alone: tried(&only_these(matrix, [&mix_up.was, &mix_up.taken_for])?, mix_up)?,
        among_all,
    })
}

fn tried(matrix: &Matrix, mix_up: &MixUp) -> Result<Tried, Faults> {
    let trial = Trial { judge: Judge::new(matrix), mix_up, day: day(mix_up) };
    let was = InHand::new(matrix, &mix_up.was);
    let organs: BTreeSet<_> = mix_up.organs.iter().copied().collect();
    let month = Month::of(trial.day);
    let seen = was.clone().only(&organs);
    let alike = was.shows(Shows::AsLike(&mix_up.taken_for));
    Ok(Tried {
        at_once: trial.at_once(&seen)?,
        asked: trial.follow(&seen.in_month(month))?,
        alike_at_once: trial.at_once(&alike)?,
        alike_asked: trial.follow(&alike)?,
        rightly: trial.follow(&InHand::new(matrix, &mix_up.taken_for).in_month(month))?,
    })
}

/// A table of two plants, as if no other and no relative grew.
fn only_these(matrix: &Matrix, plants: [&str; 2]) -> Result<Matrix, Faults> {
    let listed = |name: &str| plants.contains(&name);
    let taxa = matrix.taxa().iter().filter(|taxon| listed(&taxon.name)).cloned();
    let taxa = taxa.map(|mut taxon| {
        taxon.look_alikes.retain(|alike| listed(&alike.name));
        taxon.relatives =
            Relatives { statement: RelativesStatement::AllListed, standing: Standing::Published };
        taxon
    });
    let cells = matrix.cells().filter(|(taxon, ..)| listed(&taxon.name));
    let cells = cells
        .map(|(taxon, character, cell)| (taxon.name.clone(), character.id.clone(), cell.clone()));
    Matrix::new(matrix.characters().to_vec(), taxa.collect(), cells)
}

/// The place of a plant in the list that readers are shown of what it could still be: the rivals,
/// the heaviest first. One that does not pass the bar by itself stands nowhere.
fn rank(verdict: &Verdict, plant: &str) -> Option<usize> {
    let mut heavy = verdict.bar.rivals.iter().filter(|r| r.contributes > verdict.bar.allowed);
    heavy.position(|rival| rival.name == plant).map(|at| at + 1)
}

/// The middle of the first of the months.
fn day(mix_up: &MixUp) -> Date {
    let month = mix_up.months.first().map_or(1, |month| month.number());
    date(2027, i8::try_from(month).unwrap_or(1), 15)
}

/// One mix-up that is done again.
struct Trial<'t> {
    judge: Judge<'t>,
    mix_up: &'t MixUp,
    day: Date,
}

impl Trial<'_> {
    /// Everything that can be looked at, read by both at one time.
    fn at_once(&self, hand: &InHand<'_>) -> Result<Verdict, Faults> {
        let characters = self.judge.matrix().characters().iter();
        let shown = characters.filter_map(|character| Some((character, hand.known(character)?)));
        let looks = shown.flat_map(|(character, seen)| {
            READERS.map(|reader| look(&character.id, seen.clone(), reader, self.time(0)))
        });
        self.judge.verdict(&self.mix_up.taken_for, &self.case(looks.collect()))
    }

    /// What the program asks for, until it asks for nothing more.
    fn follow(&self, hand: &InHand<'_>) -> Result<Verdict, Faults> {
        let target = &self.mix_up.taken_for;
        let means = Means::all(Level::Trained);
        let mut case = self.case(Vec::new());
        for round in 0..ROUNDS {
            let Next::Look(plan) = self.judge.next(target, &case, &means)? else { break };
            let first = plan.looks.iter().map(|offer| (&offer.character, READERS[0]));
            let again = plan.again.iter().map(|character| (character, READERS[1]));
            let fresh = first.chain(again).filter(|(character, reader)| {
                let same =
                    |look: &Look| look.character == **character && look.reader.name == *reader;
                !case.looks.iter().any(same)
            });
            let looks: Vec<_> = fresh
                .map(|(character, reader)| {
                    look(character, hand.answer(character), reader, self.time(round))
                })
                .collect();
            if looks.is_empty() {
                break;
            }
            case.looks.extend(looks);
        }
        self.judge.verdict(target, &case)
    }

    fn case(&self, looks: Vec<Look>) -> Case {
        Case {
            specimen: SPECIMEN.to_owned(),
            place: String::new(),
            day: self.day,
            region: self.mix_up.region,
            material: Material::Living,
            strictness: Strictness::least(),
            looks,
        }
    }

    fn time(&self, round: i8) -> DateTime {
        self.day.at(9, round, 0, 0)
    }
}

/// The name of the plant in hand.
const SPECIMEN: &str = "A";

fn look(character: &str, seen: Seen, reader: &str, time: DateTime) -> Look {
    Look {
        character: character.to_owned(),
        seen,
        reader: Reader { name: reader.to_owned(), level: Level::Trained },
        time,
        specimen: SPECIMEN.to_owned(),
        blind: true,
    }
}
