//! One step: what was typed goes into the file, and the next thing is asked.

use super::file::{Looks, UNKNOWN};
use super::lines::{self, Line, Now, Taken};
use super::typed::{Typed, answer};
use crate::World;
use crate::asking::{Asked, asked, told};
use crate::naming::NameReply;
use crate::outing::{Cell, InputFile};
use ground::{Arg, Fault, Faults, Place, Region};
use identify::{Judge, Level, Look, Seen};
use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

/// The longest name of a reader or a place, in letters.
const MOST_LETTERS: usize = 80;

/// A step of reading a plant in hand.
#[derive(Clone, Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StepOrder {
    /// The file of looks; its text is empty before anything was said.
    pub file: InputFile,
    /// Who reads, where that was said: somebody of the file, or somebody new.
    pub reader: Option<String>,
    /// The character that was asked for, as the reply before this one gave it.
    pub character: Option<String>,
    /// The line that was typed; none when nothing was yet.
    pub typed: Option<String>,
}

/// What a step did, and what is asked now. Never what the plant could be, before its reader asks or
/// all is read.
#[derive(Clone, Debug, Serialize)]
pub struct StepReply {
    /// The file as it stands from now on; none where nothing changed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub file: Option<InputFile>,
    /// Who reads.
    pub reader: Option<String>,
    /// What the line did.
    pub told: Vec<Told>,
    /// What is asked now.
    pub asks: Asks,
}

/// What a line did.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Told {
    /// How to answer: said once, at the beginning.
    Keys,
    /// Somebody reads: their name, how many of their looks of today are in the file, and whether
    /// they were shown what it could be.
    Reads {
        /// Who.
        reader: String,
        /// So many looks.
        looks: usize,
        /// Whether what they read counts as a second reading no more.
        shown: bool,
    },
    /// Looks of another day do not count today.
    OtherDay {
        /// So many.
        looks: usize,
    },
    /// A look was written down.
    Kept {
        /// The character.
        character: String,
        /// What was seen of it.
        seen: Seen,
    },
    /// The plant that it is taken for was written down.
    TakenFor {
        /// Its scientific name.
        plant: String,
    },
    /// A look was taken back.
    TakenBack {
        /// Its character.
        character: String,
    },
    /// Another answer was taken back.
    AnswerTakenBack,
    /// There is no answer that this reader may take back.
    NothingToTakeBack,
    /// The line says nothing here.
    Fault(Fault),
    /// Why this is asked.
    Why(Why),
}

/// Why something is asked. It names no plant.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Why {
    /// What it is taken for decides what must be set aside.
    Plant,
    /// A verdict is of one place.
    Place,
    /// What could grow there.
    Region,
    /// Two people read what could hurt most.
    Reader,
    /// How often somebody misreads.
    Level,
    /// A look.
    Look {
        /// The character.
        character: String,
        /// What calls for it.
        reason: Reason,
    },
    /// Nothing is asked.
    Nothing,
}

/// What calls for a look.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Reason {
    /// Somebody else has read it, and it must be read twice.
    ReadByAnother,
    /// The same leader has read it, ten minutes ago or more.
    ReadBefore,
    /// It must be looked at, whatever else was seen.
    MustLook,
    /// Of all that is open it sets most aside for the time it takes.
    TellsMost,
}

/// What is asked now.
#[derive(Clone, Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Asks {
    /// What the plant is taken for.
    Plant,
    /// Where it was found.
    Place,
    /// Where in the world.
    Region {
        /// The words to choose from.
        known: Vec<Region>,
    },
    /// Who reads.
    Reader {
        /// Who did already.
        known: Vec<String>,
    },
    /// How well they read.
    Level {
        /// The words to choose from.
        known: Vec<String>,
    },
    /// A look.
    Look {
        /// The character.
        character: String,
    },
    /// Nothing of this reader.
    Nothing {
        /// Whether somebody else must read it too, or the leader again later.
        wants_another: bool,
    },
    /// Nothing any more: what it is by all that was read.
    Verdict(Box<NameReply>),
    /// Nothing: the reader has left.
    Left,
}

/// What a plant in hand is by a file of looks, on the day of the last of them.
pub(crate) fn by_looks(world: &World, file: &InputFile) -> Result<NameReply, Faults> {
    let looks = Looks::read(file, &world.herbal)?;
    let Some(target) = &looks.target else {
        let place = Place::entry("plant", "", "taken-for").in_file(&*file.name);
        return Err(Fault::new("looks-of-no-plant", place, "").into());
    };
    let day = looks.last_day().unwrap_or_else(|| world.now.date());
    told(world, target, looks.case(day))
}

/// Does one step.
///
/// # Errors
/// What is wrong with the file. What is wrong with the line is told, and asked again.
pub(crate) fn step(world: &World, order: &StepOrder) -> Result<StepReply, Faults> {
    let mut reading = Reading::of(world, order)?;
    let mut told = reading.begin(order)?;
    if let Some(line) = &order.typed {
        let heard = reading.hear(line, order.character.as_deref())?;
        match heard {
            Heard::Told(more) => told.extend(more),
            Heard::Left => return Ok(reading.reply(order, told, Asks::Left)),
            Heard::Verdict => {
                let asks = reading.verdict()?;
                return Ok(reading.reply(order, told, asks));
            }
        }
    }
    let asks = reading.asks()?;
    Ok(reading.reply(order, told, asks))
}

/// What came of a line.
enum Heard {
    Told(Vec<Told>),
    Verdict,
    Left,
}

/// A file being read into.
struct Reading<'a> {
    world: &'a World,
    file: InputFile,
    looks: Looks,
    reader: Option<String>,
    /// The second that it is.
    at: DateTime,
}

impl<'a> Reading<'a> {
    fn of(world: &'a World, order: &StepOrder) -> Result<Self, Faults> {
        let looks = Looks::read(&order.file, &world.herbal)?;
        let now = world.now;
        let at = now.date().at(now.hour(), now.minute(), now.second(), 0);
        Ok(Self { world, file: order.file.clone(), looks, reader: order.reader.clone(), at })
    }

    fn reply(self, order: &StepOrder, told: Vec<Told>, asks: Asks) -> StepReply {
        let file = (self.file != order.file).then_some(self.file);
        StepReply { file, reader: self.reader, told, asks }
    }

    /// What is said before anything was typed, and the reader who was named beforehand.
    fn begin(&mut self, order: &StepOrder) -> Result<Vec<Told>, Faults> {
        if order.typed.is_some() {
            return Ok(Vec::new());
        }
        let mut told = vec![Told::Keys];
        let today = self.at.date();
        let others = self.looks.looks.iter().filter(|look| look.time.date() != today).count();
        if others > 0 {
            told.push(Told::OtherDay { looks: others });
        }
        if let Some(name) = self.reader.take() {
            if self.plant_is_said() {
                told.extend(self.read_by(&name)?);
            } else {
                self.reader = Some(name);
            }
        }
        Ok(told)
    }

    fn plant_is_said(&self) -> bool {
        let looks = &self.looks;
        looks.target.is_some() && looks.place.is_some() && looks.region.is_some()
    }

    /// Who reads, as the file knows them.
    fn known_reader(&self) -> Option<&str> {
        let named = self.reader.as_deref()?;
        self.looks.readers.iter().map(|(name, _)| name.as_str()).find(|name| *name == named)
    }

    /// What is asked for in this state of the file; none where a look may be.
    fn asks_first(&self) -> Option<Asks> {
        let looks = &self.looks;
        if looks.target.is_none() {
            return Some(Asks::Plant);
        }
        if looks.place.is_none() {
            return Some(Asks::Place);
        }
        if looks.region.is_none() {
            return Some(Asks::Region { known: Region::ALL.to_vec() });
        }
        let Some(reader) = self.known_reader() else {
            let known = looks.readers.iter().map(|(name, _)| name.clone()).collect();
            return Some(Asks::Reader { known });
        };
        let level = looks.readers.iter().find(|(name, _)| name == reader);
        let known = || Level::NAMED.map(|(word, _)| word.to_owned()).to_vec();
        level.is_some_and(|(_, level)| level.is_none()).then(|| Asks::Level { known: known() })
    }

    fn asks(&mut self) -> Result<Asks, Faults> {
        if let Some(asks) = self.asks_first() {
            return Ok(asks);
        }
        let asked = self.asked()?;
        if asked.settled {
            return self.verdict();
        }
        let wants_another = asked.wants_another;
        Ok(match asked.look_at.into_iter().next() {
            Some(character) => Asks::Look { character },
            None => Asks::Nothing { wants_another },
        })
    }

    fn asked(&self) -> Result<Asked, Faults> {
        let target = self.looks.target.as_deref().unwrap_or_default();
        let reader = self.looks.reader(self.known_reader().unwrap_or_default());
        asked(self.world, target, &self.looks.case(self.at.date()), &reader)
    }

    /// What it is by all that was read. Whoever was shown it goes on knowing it: that is written down.
    fn verdict(&mut self) -> Result<Asks, Faults> {
        let target = self.looks.target.clone().unwrap_or_default();
        if let Some(reader) = self.known_reader().map(str::to_owned)
            && !self.looks.shown.contains(&reader)
        {
            let now = Now { reader: &reader, at: self.at, shown: true };
            self.write(&Line::Shown(now))?;
        }
        let reply = told(self.world, &target, self.looks.case(self.at.date()))?;
        Ok(Asks::Verdict(Box::new(reply)))
    }

    /// Writes an answer down, if the file can be read and judged with it.
    fn write(&mut self, line: &Line<'_>) -> Result<(), Faults> {
        let file = lines::with(&self.file, line)?;
        let looks = Looks::read(&file, &self.world.herbal)?;
        if let Some(target) = &looks.target {
            let judge = Judge::new(self.world.herbal.flora.matrix()?);
            self.world.verdict(&judge, target, looks.case(self.at.date()))?;
        }
        self.file = file;
        self.looks = looks;
        Ok(())
    }

    fn hear(&mut self, line: &str, asked: Option<&str>) -> Result<Heard, Faults> {
        let one = |told: Told| Heard::Told(vec![told]);
        match Typed::of(line) {
            Typed::Nothing => Ok(Heard::Told(Vec::new())),
            Typed::Quit => Ok(Heard::Left),
            Typed::Back => self.back().map(one),
            Typed::Why => Ok(one(Told::Why(self.why(asked)?))),
            Typed::Verdict if self.asks_first().is_none() => Ok(Heard::Verdict),
            Typed::Verdict => Ok(one(Told::Fault(said("answer-no-verdict-yet", line)))),
            Typed::Said(said) => Ok(Heard::Told(self.said(said, asked))),
        }
    }

    /// Takes an answer to what is asked, or says what is wrong with it.
    fn said(&mut self, said: &str, asked: Option<&str>) -> Vec<Told> {
        let heard = match self.asks_first() {
            Some(Asks::Plant) => self.taken_for(said),
            Some(Asks::Place) => self.place(said),
            Some(Asks::Region { known }) => self.region(said, &known),
            Some(Asks::Reader { .. }) => self.read_by(said),
            Some(Asks::Level { known }) => self.level(said, &known),
            _ => match asked {
                Some(character) => self.look(character, said),
                None => Err(self::said("answer-to-nothing", said).into()),
            },
        };
        // The answer is at fault, and not the file, which was read before.
        heard.unwrap_or_else(|faults| {
            let bare = |fault: Fault| Told::Fault(Fault { at: Place::default(), ..fault });
            faults.into_iter().map(bare).collect()
        })
    }

    fn taken_for(&mut self, said: &str) -> Result<Vec<Told>, Faults> {
        let found = self.world.herbal.flora.find(said);
        let plant = found.map_err(|near| near.fault(Place::default()))?.name.clone();
        self.write(&Line::Plant("taken-for", &plant))?;
        Ok(vec![Told::TakenFor { plant }])
    }

    fn place(&mut self, said: &str) -> Result<Vec<Told>, Faults> {
        let place = name(said)?;
        self.write(&Line::Plant("place", place))?;
        Ok(Vec::new())
    }

    fn region(&mut self, said: &str, known: &[Region]) -> Result<Vec<Told>, Faults> {
        let word = match said {
            UNKNOWN => UNKNOWN,
            _ => {
                let words: Vec<_> = known.iter().map(|region| region.word()).collect();
                chosen(said, &words)?
            }
        };
        self.write(&Line::Plant("region", word))?;
        // A reader who was named beforehand is heard as soon as they can be.
        match self.reader.take() {
            Some(reader) => self.read_by(&reader),
            None => Ok(Vec::new()),
        }
    }

    fn read_by(&mut self, said: &str) -> Result<Vec<Told>, Faults> {
        let readers: Vec<_> = self.looks.readers.iter().map(|(name, _)| name.clone()).collect();
        let number = said.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
        let by_name = |name: &&String| name.to_lowercase() == said.to_lowercase();
        let known = number.and_then(|at| readers.get(at)).or_else(|| readers.iter().find(by_name));
        let reader = match known {
            Some(known) => known.clone(),
            None => {
                let new = name(said)?;
                if !new.chars().any(char::is_alphabetic) {
                    return Err(self::said("answer-no-name", said).into());
                }
                self.write(&Line::Reader(new))?;
                new.to_owned()
            }
        };
        let today = self.at.date();
        let own = self.looks.looks.iter().filter(|look| look.reader.name == reader);
        let told = Told::Reads {
            looks: own.filter(|look| look.time.date() == today).count(),
            shown: self.looks.shown.contains(&reader),
            reader: reader.clone(),
        };
        self.reader = Some(reader);
        Ok(vec![told])
    }

    fn level(&mut self, said: &str, known: &[String]) -> Result<Vec<Told>, Faults> {
        let words: Vec<_> = known.iter().map(String::as_str).collect();
        let level = chosen(said, &words)?;
        let reader = self.known_reader().unwrap_or_default().to_owned();
        self.write(&Line::Level { reader: &reader, level })?;
        Ok(Vec::new())
    }

    fn look(&mut self, character: &str, said: &str) -> Result<Vec<Told>, Faults> {
        let term = self.world.herbal.flora.glossary.term(character);
        let term = term.ok_or_else(|| self::said("answer-to-nothing", said))?;
        let cell: Cell = answer(term, said)?;
        let reader = self.known_reader().unwrap_or_default().to_owned();
        let shown = self.looks.shown.contains(&reader);
        let now = Now { reader: &reader, at: self.at, shown };
        self.write(&Line::Saw(now, character, cell))?;
        let own = |look: &&Look| look.reader.name == reader && look.time <= self.at;
        let kept = self.looks.looks.iter().rfind(|look| own(look) && look.character == character);
        let kept = kept
            .map(|look| Told::Kept { character: look.character.clone(), seen: look.seen.clone() });
        Ok(kept.into_iter().collect())
    }

    fn back(&mut self) -> Result<Told, Faults> {
        let taken = lines::without_last(&self.file, self.known_reader(), self.at.date());
        let Some((file, taken)) = taken else { return Ok(Told::NothingToTakeBack) };
        self.looks = Looks::read(&file, &self.world.herbal)?;
        self.file = file;
        Ok(match taken {
            Taken::Look(character) => Told::TakenBack { character },
            Taken::Reader => {
                self.reader = None;
                Told::AnswerTakenBack
            }
            Taken::Plant | Taken::Level => Told::AnswerTakenBack,
        })
    }

    fn why(&self, asked: Option<&str>) -> Result<Why, Faults> {
        Ok(match self.asks_first() {
            Some(Asks::Plant) => Why::Plant,
            Some(Asks::Place) => Why::Place,
            Some(Asks::Region { .. }) => Why::Region,
            Some(Asks::Reader { .. }) => Why::Reader,
            Some(Asks::Level { .. }) => Why::Level,
            _ => match asked {
                Some(character) => {
                    let reason = self.reason(character)?;
                    Why::Look { character: character.to_owned(), reason }
                }
                None => Why::Nothing,
            },
        })
    }

    /// What calls for a look at a character.
    fn reason(&self, character: &str) -> Result<Reason, Faults> {
        let reader = self.known_reader().unwrap_or_default();
        let today = self.looks.case(self.at.date());
        let read = today.looks.iter().filter(|look| look.time.date() == today.day);
        let mut read = read.filter(|look| look.character == character);
        if read.clone().any(|look| look.reader.name == reader) {
            return Ok(Reason::ReadBefore);
        }
        if self.asked()?.again.iter().any(|again| again == character) && read.next().is_some() {
            return Ok(Reason::ReadByAnother);
        }
        let judge = Judge::new(self.world.herbal.flora.matrix()?);
        let target = self.looks.target.as_deref().unwrap_or_default();
        let verdict = self.world.verdict(&judge, target, today)?;
        let must = verdict.must_looks.iter().any(|must| must.character == character);
        Ok(if must { Reason::MustLook } else { Reason::TellsMost })
    }
}

fn said(code: &str, said: &str) -> Fault {
    Fault::new(code, Place::default(), said)
}

/// A name that fits a line.
fn name(said: &str) -> Result<&str, Fault> {
    let fits = said.chars().count() <= MOST_LETTERS && !said.chars().any(char::is_control);
    fits.then_some(said)
        .ok_or_else(|| self::said("answer-name-too-long", said).with("most", MOST_LETTERS))
}

/// One of several words, by number or as it is.
fn chosen<'w>(said: &str, words: &[&'w str]) -> Result<&'w str, Fault> {
    let number = said.parse::<usize>().ok().and_then(|number| number.checked_sub(1));
    let by_number = number.and_then(|at| words.get(at));
    let by_word = || words.iter().find(|word| **word == said.to_lowercase());
    by_number.or_else(by_word).copied().ok_or_else(|| {
        let near: Vec<Arg> = words.iter().map(|word| (*word).into()).collect();
        self::said("answer-none-of-these", said).with("most", words.len()).with("near", near)
    })
}
