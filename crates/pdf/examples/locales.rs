//! Prints the pages of the demonstration in pseudo-locales, to look at:
//! `cargo run -p pdf --example locales -- FOLDER WORDS`. The words choose locales (`english`,
//! `accented`, `hebrew`, `arabic`), outings, `a4`, `letter` or `large`, and pages by the beginning of
//! their names; of what none is named all is printed. What cannot be printed is told.
#![expect(clippy::unwrap_used, reason = "a fault here is a fault of the demonstration")]

#[path = "../tests/demo/mod.rs"]
mod demo;
#[path = "../tests/pseudo/mod.rs"]
mod pseudo;

use desk::Plan;
use page::{NamedPage, Paper, html};
use pdf::Press;
use pseudo::Pseudo;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};
use std::{env, fs};

const SETTINGS: [&str; 3] = ["a4", "letter", "large"];

/// What was asked for.
struct Asked(Vec<String>);

impl Asked {
    /// Those of some names that were asked for, or all.
    fn of<'n>(&self, names: &[&'n str]) -> Vec<&'n str> {
        let named = |name: &&str| self.0.iter().any(|word| word == name);
        let asked: Vec<_> = names.iter().copied().filter(named).collect();
        if asked.is_empty() { names.to_vec() } else { asked }
    }

    fn page(&self, name: &str) -> bool {
        let known = Pseudo::ALL.map(Pseudo::name).into_iter().chain(demo::DAYS).chain(SETTINGS);
        let known: Vec<_> = known.collect();
        let mut pages = self.0.iter().filter(|word| !known.contains(&word.as_str())).peekable();
        pages.peek().is_none() || pages.any(|page| name.starts_with(page.as_str()))
    }
}

fn main() -> io::Result<()> {
    let mut args = env::args().skip(1);
    let folder = PathBuf::from(args.next().unwrap_or_else(|| "locales".to_owned()));
    let asked = Asked(args.collect());
    let press = Press::new().unwrap();
    let locales = asked.of(&Pseudo::ALL.map(Pseudo::name));
    for outing in asked.of(&demo::DAYS) {
        let plan = demo::plan(outing, |_, said| said);
        for locale in Pseudo::ALL.into_iter().filter(|locale| locales.contains(&locale.name())) {
            for setting in asked.of(&SETTINGS) {
                let into = folder.join(locale.name()).join(setting).join(outing);
                print(&press, &plan, (locale, setting), &into, &asked)?;
            }
        }
    }
    Ok(())
}

fn print(
    press: &Press,
    plan: &Plan,
    (locale, setting): (Pseudo, &str),
    into: &Path,
    asked: &Asked,
) -> io::Result<()> {
    fs::create_dir_all(into)?;
    let paper = if setting == "letter" { Paper::Letter } else { Paper::A4 };
    let pages = demo::written(plan, paper, &locale.catalogue()).into_iter();
    for NamedPage { name, page } in pages.filter(|named| asked.page(&named.name)) {
        let page = if setting == "large" { page.large() } else { page };
        fs::write(into.join(format!("{name}.html")), html(&page))?;
        match press.print(&page, paper, plan.head.as_of) {
            Ok(printed) => fs::write(into.join(format!("{name}.pdf")), printed)?,
            Err(fault) => {
                writeln!(io::stdout(), "{}/{name}: {}, {}", into.display(), fault.code, fault.got)?;
            }
        }
    }
    Ok(())
}
