//! `trug look`: one plant in hand, asked for look by look.

use crate::failed::Failed;
use crate::screen::Screen;
use crate::world::{Knowledge, now};
use crate::{files, one_file};
use clap::Args;
use desk::{Asks, InputFile, Reply, Request, StepOrder, StepReply, World, answer};
use ground::{Fault, Place};
use jiff::civil::DateTime;
use page::{Catalogue, Words};
use std::fs;
use std::io::{self, BufRead, IsTerminal as _, Read as _, Write as _};
use std::path::{Path, PathBuf};

/// So much of a line is heard, in bytes: more than any answer has.
const LONGEST_LINE: u64 = 400;
/// So often an answer is worked out anew because somebody else has changed the file meanwhile.
const TRIES: usize = 20;

/// Each answer is written into the file at once. The same command goes on where the file ends, for
/// the same reader or for another one, who sees nothing of what the first saw.
#[derive(Args)]
#[command(after_help = "Example:\n  trug look in-hand.toml --reader Maren")]
pub(crate) struct Look {
    /// The file of looks; begun where there is none
    file: PathBuf,
    /// Who reads; asked for when left out
    #[arg(long, value_name = "NAME")]
    reader: Option<String>,
    /// The moment of every look; the clock's when left out
    #[arg(long, value_name = "DATETIME", value_parser = crate::read::moment)]
    now: Option<DateTime>,
}

/// What was typed, and what had been asked before.
#[derive(Default)]
struct Said {
    reader: Option<String>,
    character: Option<String>,
    typed: Option<String>,
}

impl Look {
    /// Asks until all is read, or whoever answers has enough. Nothing but the file is remembered.
    pub(crate) fn run(
        &self,
        own: Option<&Path>,
        screen: &Screen,
        catalogue: &Catalogue,
    ) -> Result<(), Failed> {
        let mut world = Knowledge::with(own)?.into_world();
        let mut answers = io::stdin().lock();
        let said = Said { reader: self.reader.clone(), ..Said::default() };
        let mut reply = self.step(&mut world, &said)?;
        while let Reply::Step(step) = &reply {
            let over = matches!(step.asks, Asks::Verdict(_) | Asks::Left);
            if !screen.is_json() {
                print(&reply, &world, screen, catalogue, !over)?;
            }
            if over {
                break;
            }
            // The end of the input is enough.
            let typed = match line(&mut answers)? {
                None if screen.is_json() => break,
                None => "quit".to_owned(),
                Some(line) => line,
            };
            reply = self.step(&mut world, &Said::after(step, typed))?;
        }
        if screen.is_json() {
            print(&reply, &world, screen, catalogue, false)?;
        }
        Ok(())
    }

    /// One step, with the file as it is now. Where somebody else has changed it before it could be
    /// written, the same line is heard again.
    fn step(&self, world: &mut World, said: &Said) -> Result<Reply, Failed> {
        for _ in 0..TRIES {
            world.now = self.now.unwrap_or_else(now);
            let file = self.file()?;
            let before = file.text.clone();
            let reply = answer(world, Request::Step(said.order(file)))?;
            let after = match &reply {
                Reply::Step(step) => step.file.as_ref(),
                _ => None,
            };
            if after.map_or(Ok(true), |file| one_file::replace(&self.file, &before, &file.text))? {
                return Ok(reply);
            }
        }
        let name = self.file.display().to_string();
        Err(Fault::new("looks-changed", Place::default().in_file(&*name), name.as_str()).into())
    }

    /// The file as it stands; empty where there is none.
    fn file(&self) -> Result<InputFile, Failed> {
        let empty = match fs::metadata(&self.file) {
            Err(error) => error.kind() == io::ErrorKind::NotFound,
            Ok(known) => known.is_file() && known.len() == 0,
        };
        if empty {
            return Ok(InputFile { name: self.file.display().to_string(), text: String::new() });
        }
        Ok(files::read(&self.file)?)
    }
}

impl Said {
    fn after(step: &StepReply, typed: String) -> Self {
        let character = match &step.asks {
            Asks::Look { character } => Some(character.clone()),
            _ => None,
        };
        Self { reader: step.reader.clone(), character, typed: Some(typed) }
    }

    fn order(&self, file: InputFile) -> StepOrder {
        StepOrder {
            file,
            reader: self.reader.clone(),
            character: self.character.clone(),
            typed: self.typed.clone(),
        }
    }
}

/// Prints a step, and a mark where somebody types.
fn print(
    reply: &Reply,
    world: &World,
    screen: &Screen,
    catalogue: &Catalogue,
    asks: bool,
) -> io::Result<()> {
    let words = Words::new(catalogue).with_herbal(world.herbal());
    let mut out = io::stdout().lock();
    out.write_all(screen.render(reply, &words)?.as_bytes())?;
    if !screen.is_json() {
        let mark = if asks && io::stdin().is_terminal() { "\n> " } else { "\n" };
        out.write_all(mark.as_bytes())?;
    }
    out.flush()
}

/// The next line, without its end; none at the end of the input. What is no UTF-8 is no answer, and
/// is told so like any other.
fn line(input: &mut impl BufRead) -> io::Result<Option<String>> {
    let mut bytes = Vec::new();
    let read = input.by_ref().take(LONGEST_LINE).read_until(b'\n', &mut bytes)?;
    if read > 0 && !bytes.ends_with(b"\n") {
        input.skip_until(b'\n')?;
    }
    Ok((read > 0).then(|| String::from_utf8_lossy(&bytes).trim().to_owned()))
}
