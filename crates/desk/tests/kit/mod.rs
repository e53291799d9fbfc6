//! The demo and the herbal, ready to ask.
#![allow(dead_code, reason = "each test file uses some of it")]
#![expect(clippy::unwrap_used, clippy::panic, reason = "a panic is how a test reports")]

use desk::device::{Reply, Request, answer};
use desk::{InputFile, Plan, World, includes};
use ground::{Fault, RandomStart};
use herbal::{Herbal, TextFile};
use std::path::Path;
use toml::Value;

pub(crate) const EVENING: &str = "spring-evening.toml";
pub(crate) const DAY: &str = "spring-day.toml";
pub(crate) const AUTUMN_EVENING: &str = "autumn-evening.toml";
pub(crate) const AUTUMN_DAY: &str = "autumn-day.toml";

/// Both outings of the demo, each in both tenses.
pub(crate) const OUTINGS: [&str; 4] = [EVENING, DAY, AUTUMN_EVENING, AUTUMN_DAY];

/// Does the same to each outing of the demo, all at once, and gives the results in their order.
pub(crate) fn side_by_side<R: Send>(work: impl Fn(&str) -> R + Sync) -> [R; 4] {
    std::thread::scope(|scope| {
        let work = &work;
        let started = OUTINGS.map(|outing| scope.spawn(move || work(outing)));
        started.map(|thread| thread.join().unwrap())
    })
}

pub(crate) fn world() -> World {
    of(herbal_data::herbal(), herbal_data::version())
}

fn of(herbal: Herbal, version: &str) -> World {
    let now = jiff::civil::date(2027, 4, 30).at(19, 0, 0, 0);
    let mut world = World::new(herbal, version.to_owned(), now);
    world.random_start = RandomStart(1);
    world
}

/// The same with files laid over the herbal.
pub(crate) fn world_with(path: &str, text: &str) -> World {
    overlaid(&[TextFile { path: path.to_owned(), text: text.to_owned() }])
}

/// The same with all of these files laid over the herbal.
pub(crate) fn overlaid(files: &[TextFile]) -> World {
    of(herbal_data::herbal().overlay(files).unwrap(), "overlaid")
}

pub(crate) fn file(name: &str, text: &str) -> InputFile {
    InputFile::from_bytes(name, text.as_bytes().to_vec()).unwrap()
}

/// A file of the demo and all that it includes.
pub(crate) fn demo(name: &str) -> Vec<InputFile> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo");
    let mut wanted = vec![name.to_owned()];
    let mut files: Vec<InputFile> = Vec::new();
    while let Some(name) = wanted.pop() {
        if files.iter().all(|file| file.name != name) {
            let file = file(&name, &std::fs::read_to_string(folder.join(&name)).unwrap());
            wanted.extend(includes(&file).unwrap());
            files.push(file);
        }
    }
    files
}

pub(crate) fn plan(world: &World, files: Vec<InputFile>, reasons: bool) -> Plan {
    match answer(world, Request::Plan { files, reasons }) {
        Ok(Reply::Plan(plan)) => *plan,
        Ok(_) => panic!("a plan was asked for"),
        Err(faults) => panic!("{faults}"),
    }
}

pub(crate) fn json(world: &World, request: Request) -> String {
    match answer(world, request) {
        Ok(reply) => serde_json::to_string(&reply).unwrap(),
        Err(faults) => panic!("{faults}"),
    }
}

/// The faults of files that cannot be an outing, each as file, line, column and code.
pub(crate) fn faults(world: &World, files: Vec<InputFile>) -> Vec<(String, u32, u32, String)> {
    let all = desk::read(&files, world.herbal()).unwrap_err();
    all.into_iter().map(|fault| told(&fault)).collect()
}

pub(crate) fn told(fault: &Fault) -> (String, u32, u32, String) {
    let at = &fault.at;
    let file = at.file.clone().unwrap_or_default();
    (file, at.line.unwrap_or(0), at.column.unwrap_or(0), fault.code.clone())
}

/// The same files in the opposite order, and in each its tables and every list of tables too.
pub(crate) fn reversed(files: &[InputFile]) -> Vec<InputFile> {
    files.iter().rev().map(turned).collect()
}

fn turned(file: &InputFile) -> InputFile {
    fn turn(value: Value) -> Value {
        match value {
            Value::Array(list) if list.iter().all(Value::is_table) => {
                Value::Array(list.into_iter().rev().map(turn).collect())
            }
            Value::Table(table) => Value::Table(
                table.into_iter().rev().map(|(key, value)| (key, turn(value))).collect(),
            ),
            other => other,
        }
    }
    let text: String = match turn(file.text.parse().map(Value::Table).unwrap()) {
        // Each table by itself, last first: a map would put them back in order.
        Value::Table(table) => {
            let (tables, plain): (Vec<_>, Vec<_>) =
                table.into_iter().rev().partition(|(_, value)| {
                    value.is_table()
                        || value.as_array().is_some_and(|list| list.iter().all(Value::is_table))
                });
            let write =
                |(key, value)| toml::to_string(&toml::Table::from_iter([(key, value)])).unwrap();
            plain.into_iter().chain(tables).map(write).collect::<Vec<_>>().join("\n")
        }
        _ => unreachable!("a file is a table"),
    };
    InputFile { text, ..file.clone() }
}
