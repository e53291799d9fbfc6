//! A device that goes afield without answers hands out by flags: never more than the answers allow.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a panic is how a test reports")]

mod kit;

use desk::device::{Reply, Request, answer};
use desk::{Cell, Handed, InputFile, Plan, TableRow, World, rows, write};
use jiff::civil::date;
use journal::Flag;
use kit::{AUTUMN_EVENING, DAY, EVENING, demo, plan, world};
use std::collections::BTreeMap;

/// The flags that a device with the answers makes.
fn flags(world: &World, files: &[InputFile]) -> Vec<Flag> {
    match answer(world, Request::Flags { files: files.to_vec() }).unwrap() {
        Reply::Flags(flags) => flags,
        _ => panic!("flags were asked for"),
    }
}

/// The rows of the files without anybody's answers, and with these flags.
fn afield(files: &[InputFile], flags: &[Flag]) -> Vec<TableRow> {
    let mut all: Vec<_> = rows(files).unwrap();
    all.retain(|row| !matches!(row.table.as_str(), "answers" | "confirmation"));
    all.extend(flags.iter().map(row));
    all
}

fn row(flag: &Flag) -> TableRow {
    TableRow::of_flag(flag, "Maren Holt", date(2027, 4, 30).at(19, 0, 0, 0))
}

type ByPerson = BTreeMap<(String, String), Handed>;

fn handed(plan: &Plan) -> ByPerson {
    let all = plan.makes.iter().flat_map(|make| {
        let of = |(person, handed): (&String, &Handed)| {
            ((make.name.clone(), person.clone()), handed.clone())
        };
        make.handed_out.iter().map(of)
    });
    all.collect()
}

fn planned(world: &World, rows: &[TableRow]) -> ByPerson {
    handed(&plan(world, vec![write("outing.toml", rows)], false))
}

#[test]
fn nobody_is_handed_more_by_a_flag_than_by_their_answers() {
    let world = world();
    for name in [EVENING, AUTUMN_EVENING, DAY] {
        let files = demo(name);
        let by_answers = planned(&world, &rows(&files).unwrap());
        let flags = flags(&world, &files);
        let by_flags = planned(&world, &afield(&files, &flags));
        let without = planned(&world, &afield(&files, &[]));
        let mut milder = 0;
        for (key, by_answers) in &by_answers {
            let (by_flag, without) = (&by_flags[key].outcome, &without[key].outcome);
            assert!(by_flag.no_milder_than(by_answers.outcome), "{name}: {key:?}");
            milder += usize::from(by_flag.most_servings() > without.most_servings());
        }
        // They would be of no use if they let nobody have anything.
        assert_eq!(milder > 0, flags.iter().any(|flag| flag.servings_a_day > 0), "{name}");
    }
}

#[test]
fn a_flag_holds_for_the_very_cup_that_it_was_found_for() {
    let world = world();
    let files = demo(EVENING);
    let flags = flags(&world, &files);
    let some = |rows: &[TableRow]| planned(&world, rows).values().filter(|h| h.by_flag).count();
    let held = some(&afield(&files, &flags));
    assert!(held > 0);
    let changed = |change: &dyn Fn(&mut TableRow)| {
        let mut rows = afield(&files, &flags);
        rows.iter_mut().filter(|row| row.table == "make").for_each(change);
        some(&rows)
    };
    let more = |row: &mut TableRow| {
        row.cells.insert("servings-a-day".to_owned(), Cell::Whole(9));
    };
    assert_eq!(changed(&more), 0, "more servings a day");
    let later = |row: &mut TableRow| {
        row.cells.insert("days".to_owned(), Cell::Whole(8));
    };
    assert_eq!(changed(&later), 0, "on more days");
    let mut another_day = afield(&files, &flags);
    for row in another_day.iter_mut().filter(|row| row.table == "outing") {
        row.cells.insert("date".to_owned(), Cell::Day(date(2027, 5, 2)));
    }
    assert_eq!(some(&another_day), 0, "on another day");
}

#[test]
fn a_flag_lapses_with_the_day_and_answers_go_before_it() {
    let files = demo(EVENING);
    let mut world = world();
    let flags = flags(&world, &files);
    let mut rows = afield(&files, &flags);
    // The moment of the file would stand for the clock on the wall.
    rows.iter_mut().for_each(|row| drop(row.cells.remove("as-of")));
    world.now = date(2027, 5, 2).at(8, 0, 0, 0);
    assert!(planned(&world, &rows).values().all(|handed| !handed.by_flag));
    let with_answers: Vec<_> =
        desk::rows(&files).unwrap().into_iter().chain(flags.iter().map(row)).collect();
    assert!(planned(&kit::world(), &with_answers).values().all(|handed| !handed.by_flag));
}

#[test]
fn of_several_flags_all_bind() {
    let world = world();
    let files = demo(EVENING);
    let mut flags = flags(&world, &files);
    let none: Vec<_> =
        flags.iter().map(|flag| Flag { servings_a_day: 0, ..flag.clone() }).collect();
    flags.extend(none);
    for _ in 0..2 {
        flags.reverse();
        let handed = planned(&world, &afield(&files, &flags));
        assert!(handed.values().all(|handed| handed.outcome.most_servings() == 0));
    }
}
