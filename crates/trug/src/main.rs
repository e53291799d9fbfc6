//! `trug`: the command line.
//!
//! Arguments become a request, the front door answers it, and the reply is printed: no formula and
//! no sentence of an answer stands here. Results go to the standard output, all else to the
//! standard error. Exit codes: 0 done, 1 the job could not be done, 2 the input is at fault.

mod command;
mod files;
mod own;
mod pages;
mod read;
mod screen;
mod world;

use clap::Parser;
use command::Command;
use desk::{Reply, World};
use ground::Faults;
use page::{Catalogue, Words};
use pages::Failed;
use screen::{Screen, ScreenArgs};
use std::io::{self, Write as _};
use std::path::PathBuf;
use std::process::ExitCode;
use world::Knowledge;

/// The job could not be done.
const NOT_DONE: u8 = 1;
/// The input is at fault.
const AT_FAULT: u8 = 2;

/// Work for people who gather wild plants with a group: what is known of a plant, and the sums of
/// kitchen and wood.
#[derive(Parser)]
#[command(name = "trug", version, color = clap::ColorChoice::Never, max_term_width = 100)]
#[command(after_help = "Example:\n  trug herbal show \"stinging nettle\"")]
struct Trug {
    #[command(flatten)]
    screen: ScreenArgs,
    /// A folder of your own herbal files, laid over the herbal
    #[arg(long, global = true, value_name = "DIR", help_heading = "Options of every command")]
    own: Option<PathBuf>,
    #[command(subcommand)]
    command: Command,
}

fn main() -> ExitCode {
    let asked = Trug::parse();
    let catalogue = Catalogue::english();
    let screen = Screen::of(&asked.screen);
    match answer(&asked) {
        Ok((world, reply)) => {
            let words = Words::new(&catalogue).with_herbal(&world.herbal);
            let pages = asked.command.pages();
            match pages.map(|(pages, names)| pages.write(names, &reply, &world, &words)) {
                Some(Err(Failed::Disk(error))) => {
                    complain(&format!("{error}\n"));
                    ExitCode::from(NOT_DONE)
                }
                Some(Err(Failed::AtFault(faults))) => {
                    complain(&catalogue.faults(&faults));
                    ExitCode::from(AT_FAULT)
                }
                _ => print(&reply, &screen, &words),
            }
        }
        Err(faults) => {
            complain(&catalogue.faults(&faults));
            ExitCode::from(AT_FAULT)
        }
    }
}

fn answer(asked: &Trug) -> Result<(World, Reply), Faults> {
    let knowledge = Knowledge::with(asked.own.as_deref())?;
    let request = asked.command.request(&knowledge)?;
    let mut world = knowledge.into_world();
    asked.command.set(&mut world);
    let reply = desk::answer(&world, request)?;
    Ok((world, reply))
}

/// Prints a reply. Whoever closed the pipe has seen enough.
fn print(reply: &Reply, screen: &Screen, words: &Words<'_>) -> ExitCode {
    let printed =
        screen.render(reply, words).and_then(|said| io::stdout().lock().write_all(said.as_bytes()));
    match printed {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            complain(&format!("{error}\n"));
            ExitCode::from(NOT_DONE)
        }
        _ if refused(reply) => ExitCode::from(NOT_DONE),
        _ => ExitCode::SUCCESS,
    }
}

/// Whether a reply says that there is no answer.
fn refused(reply: &Reply) -> bool {
    match reply {
        Reply::Sum(sum) => sum.refused(),
        _ => false,
    }
}

/// Tells what went wrong; where nobody listens, the exit code says it.
fn complain(said: &str) {
    let _ = io::stderr().lock().write_all(said.as_bytes());
}
