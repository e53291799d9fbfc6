//! The commands of the project. `cargo xtask` names them.

mod app;
mod browser;
mod calendar;
mod cores;
mod demo;
mod figure;
mod house;
mod numpy;
mod pages;
mod paper;
mod parity;
mod size;
mod steps;
mod timed;
mod tools;
mod trials;
mod wasm;

use house::{House, Outcome, say};
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask demo              works out both outings: the evening before, then the day itself
cargo xtask app               builds the app and serves it on this machine
cargo xtask test [STEP…]      everything that is checked, or these steps only
cargo xtask figures [NAME…]   measures and prints one line a figure; confusion and strictness, which take long, when named
cargo xtask browser           the app in a browser: every scenario, with an accessibility checker; some minutes
cargo xtask screens           every screen of the app as a picture: phone, tablet and desk, day, dusk and contrast
cargo xtask fade              blanks every answer of the demo in turn: no decision may get looser
cargo xtask recall            forgets in turn what the herbal only remembers: none may get stricter
cargo xtask pages [FOLDER]    the HTML pages of a folder in a browser, with an accessibility checker
cargo xtask paper [FOLDER]    the PDF pages of the demo and their variants, or of a folder, looked at with tools
                              that had no part in them
cargo xtask pictures          draws the pictures of the README from the pages of the demo";

fn main() -> ExitCode {
    let args: Vec<_> = std::env::args().skip(1).collect();
    let words: Vec<_> = args.iter().map(String::as_str).collect();
    match House::find().and_then(|house| run(&house, &words)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            say(failure);
            ExitCode::FAILURE
        }
    }
}

fn run(house: &House, words: &[&str]) -> Outcome {
    match words {
        ["app"] => app::serve(house),
        ["demo"] => demo::show(house),
        ["test", steps @ ..] => steps::test(house, steps),
        ["figures", names @ ..] => figure::print(house, names),
        ["browser"] => browser::check(house),
        ["screens"] => browser::screens(house),
        ["fade"] => trials::fade(house),
        ["recall"] => trials::recall(house),
        ["pages"] => pages::check(house),
        ["paper"] => paper::check(house),
        ["paper", folder] => paper::check_folder(house, folder.as_ref()),
        ["pictures"] => paper::pictures::draw(house),
        ["pages", folder] => pages::check_folder(house, folder.as_ref()),
        _ => Err(USAGE.into()),
    }
}
