//! Makes every known input of the demo unknown in turn, in both tenses, and prints how many trials
//! that were and how many of them let anybody have more, as figures: name, value and unit with tabs
//! between. What got looser is said on standard error.

use desk::{InputFile, World, fade, includes, read};
use journal::Journal;
use std::error::Error;
use std::io::{self, Write};
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};
use std::{env, fs};

/// The outing in both tenses.
const OUTINGS: [&str; 2] = ["spring-evening.toml", "spring-day.toml"];

fn main() -> Result<(), Box<dyn Error>> {
    let step: NonZeroUsize =
        env::args().nth(1).map_or(Ok(NonZeroUsize::MIN), |step| step.parse())?;
    let world = World {
        herbal: herbal_data::herbal(),
        herbal_version: herbal_data::version().to_owned(),
        journal: Journal::new(),
        now: jiff::civil::date(2027, 4, 30).at(19, 0, 0, 0),
        random_start: ground::RandomStart(1),
    };
    let (mut trials, mut widened) = (0, 0);
    for outing in OUTINGS {
        let outing = read(&files(outing)?, &world.herbal)?;
        for trial in fade(&world, &outing, step)? {
            trials += 1;
            widened += usize::from(!trial.widened.is_empty());
            for what in &trial.widened {
                writeln!(io::stderr(), "{} unknown: {what}", trial.what)?;
            }
        }
    }
    let mut out = io::stdout();
    writeln!(out, "fade-trials\t{trials}\tknown inputs made unknown, each by itself")?;
    writeln!(out, "fade-widened\t{widened}\tof them let anybody have more")?;
    Ok(())
}

/// A file of the demo and all that it includes.
fn files(name: &str) -> Result<Vec<InputFile>, Box<dyn Error>> {
    let folder: PathBuf = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let mut wanted = vec![name.to_owned()];
    let mut files: Vec<InputFile> = Vec::new();
    while let Some(name) = wanted.pop() {
        if files.iter().all(|file| file.name != name) {
            let file = InputFile::from_bytes(&name, fs::read(folder.join(&name))?)?;
            wanted.extend(includes(&file)?);
            files.push(file);
        }
    }
    Ok(files)
}
