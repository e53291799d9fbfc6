//! `cargo xtask demo`: two outings, as a school would work them out.

use crate::house::{House, Outcome, Program, run, say};
use std::fs;
use std::path::{Path, PathBuf};

/// The outings in both tenses: a name for the pages of each, and its file.
pub(crate) const TENSES: [(&str, &str); 4] = [
    ("evening", "demo/spring-evening.toml"),
    ("day", DAY),
    ("autumn-evening", "demo/autumn-evening.toml"),
    ("autumn-day", "demo/autumn-day.toml"),
];

/// The outing that is timed, and proposed for a change.
pub(crate) const DAY: &str = "demo/spring-day.toml";

/// Where the pages of the demo go.
pub(crate) fn folder(house: &House) -> PathBuf {
    house.target.join("demo")
}

/// The pages of the demo, made where none were yet.
pub(crate) fn made(house: &House) -> Outcome<PathBuf> {
    let folder = folder(house);
    if !folder.exists() {
        show(house)?;
    }
    Ok(folder)
}

/// Works each outing out the evening before and on the day, prints all and says what to do next.
pub(crate) fn show(house: &House) -> Outcome {
    let trug = build(house)?;
    house.fresh("demo")?;
    for (tense, outing) in TENSES {
        let pages = folder(house).join(tense);
        run(house.command(&trug).args(["plan", outing, "--out"]).arg(pages))?;
        say("");
    }
    next(house)
}

fn next(house: &House) -> Outcome {
    let pages = pages(&folder(house))?;
    say(format_args!("{} pages were written. Open them in a browser:", pages.len()));
    pages.iter().for_each(|page| say(format_args!("  {}", house.short(page))));
    say(format_args!("Then change something in {DAY}, and work it out again:"));
    say(format_args!("  cargo run --package trug -- plan {DAY}"));
    Ok(())
}

/// Every HTML page under a folder, by name.
pub(crate) fn pages(folder: &Path) -> Outcome<Vec<PathBuf>> {
    files(folder, "html")
}

/// Every file under a folder whose name ends like this, by name.
pub(crate) fn files(folder: &Path, ends: &str) -> Outcome<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            found.extend(files(&path, ends)?);
        } else if path.extension().is_some_and(|end| end == ends) {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

/// The program, built for use in development.
pub(crate) fn build(house: &House) -> Outcome<PathBuf> {
    house.program("trug", Program::Binary("trug"))
}

/// The program as it is handed out.
pub(crate) fn release(house: &House) -> Outcome<PathBuf> {
    run(&mut house.cargo(["build", "--package", "trug", "--release"]))?;
    Ok(house.target.join("release/trug"))
}
