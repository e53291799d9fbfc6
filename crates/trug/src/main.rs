//! `trug`: the command line.
//!
//! Arguments become a request, the front door answers it, and the reply is printed: no formula and
//! no sentence of an answer stands here. Results go to the standard output, all else to the
//! standard error. Exit codes: 0 done, 1 the job could not be done, 2 the input is at fault.

mod command;
mod failed;
mod files;
mod folder;
mod habits;
mod one_file;
mod own;
mod pages;
mod printer;
mod read;
mod screen;
mod serve;
mod world;

use clap::Parser;
use command::{Ask, Command};
use desk::{Reply, World};
use failed::Failed;
use ground::Faults;
use habits::HabitArgs;
use page::{Catalogue, Words};
use screen::{Screen, ScreenArgs};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
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
    #[command(flatten)]
    habits: HabitArgs,
    /// A folder of your own herbal files, laid over the herbal
    #[arg(long, global = true, value_name = "DIR", help_heading = "Options of every command")]
    own: Option<PathBuf>,
    #[command(subcommand)]
    command: Command,
}

fn main() -> ExitCode {
    let asked = Trug::parse();
    let catalogue = Catalogue::english().with_habits(asked.habits.habits());
    match &asked.command {
        Command::App(app) => match app.run() {
            Ok(()) => ExitCode::SUCCESS,
            Err(why) => failed(&why, &catalogue),
        },
        Command::Look(look) => {
            let screen = Screen::of_a_dialogue(&asked.screen);
            match look.run(asked.own.as_deref(), &screen, &catalogue) {
                Ok(()) => ExitCode::SUCCESS,
                // Whoever closed the pipe has seen enough; every answer is in the file.
                Err(Failed::Machine(error)) if error.kind() == io::ErrorKind::BrokenPipe => {
                    ExitCode::SUCCESS
                }
                Err(why) => failed(&why, &catalogue),
            }
        }
        Command::Ask(ask) => match answer(ask, asked.own.as_deref()) {
            Ok((world, reply)) => tell(ask, &world, &reply, &Screen::of(&asked.screen), &catalogue),
            Err(faults) => at_fault(&faults, &catalogue),
        },
    }
}

fn answer(ask: &Ask, own: Option<&Path>) -> Result<(World, Reply), Faults> {
    let knowledge = Knowledge::with(own)?;
    let request = ask.request(&knowledge)?;
    let mut world = knowledge.into_world();
    ask.set(&mut world);
    let reply = desk::answer(&world, request)?;
    Ok((world, reply))
}

/// Writes the pages that were asked for, then prints the reply.
fn tell(
    ask: &Ask,
    world: &World,
    reply: &Reply,
    screen: &Screen,
    catalogue: &Catalogue,
) -> ExitCode {
    let words = Words::new(catalogue).with_herbal(world.herbal());
    let written = ask.pages().map(|(pages, names)| pages.write(names, reply, world, &words));
    match written {
        Some(Err(why)) => failed(&why, catalogue),
        _ => print(reply, screen, &words),
    }
}

fn failed(why: &Failed, catalogue: &Catalogue) -> ExitCode {
    match why {
        Failed::Machine(error) => not_done(error),
        Failed::AtFault(faults) => at_fault(faults, catalogue),
    }
}

fn at_fault(faults: &Faults, catalogue: &Catalogue) -> ExitCode {
    complain(&catalogue.faults(faults));
    ExitCode::from(AT_FAULT)
}

fn not_done(error: &io::Error) -> ExitCode {
    complain(&format!("{error}\n"));
    ExitCode::from(NOT_DONE)
}

/// Prints a reply. Whoever closed the pipe has seen enough.
fn print(reply: &Reply, screen: &Screen, words: &Words<'_>) -> ExitCode {
    let printed =
        screen.render(reply, words).and_then(|said| io::stdout().lock().write_all(said.as_bytes()));
    match printed {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => not_done(&error),
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
