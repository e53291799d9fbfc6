//! Rows and cells of every kind, as no outing would hold them.
#![allow(dead_code, reason = "each test file uses some of it")]
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

use desk::{Cell, TableRow};
use ground::Finite;
use jiff::civil::{Date, DateTime, Time};
use proptest::prelude::*;

fn civil() -> impl Strategy<Value = DateTime> {
    let day = (0..=9999_i16, 1..=12_i8, 1..=28_i8);
    let time = (0..24_i8, 0..60_i8, 0..60_i8, prop_oneof![Just(0), 0..1_000_000_000_i32]);
    (day, time).prop_map(|((y, m, d), (hour, minute, second, nano))| {
        Date::new(y, m, d).unwrap().to_datetime(Time::new(hour, minute, second, nano).unwrap())
    })
}

fn field() -> impl Strategy<Value = String> {
    prop_oneof![4 => "[a-z]{1,3}(-[a-z]{1,3})?", 1 => "=?=?(day|at)", 1 => any::<String>()]
}

fn scalar() -> impl Strategy<Value = Cell> {
    prop_oneof![
        any::<String>().prop_map(Cell::Words),
        civil().prop_map(|at| Cell::Words(at.to_string())),
        any::<i64>().prop_map(Cell::Whole),
        any::<f64>().prop_filter_map("finite", Finite::new).prop_map(Cell::Number),
        any::<bool>().prop_map(Cell::YesNo),
        civil().prop_map(|at| Cell::Day(at.date())),
        civil().prop_map(Cell::Moment),
    ]
}

pub(crate) fn cell() -> impl Strategy<Value = Cell> {
    scalar().prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Cell::List),
            prop::collection::btree_map(field(), inner, 0..4).prop_map(Cell::Table),
        ]
    })
}

pub(crate) fn row() -> impl Strategy<Value = TableRow> {
    let table = prop_oneof![
        4 => prop::sample::select(vec!["outing", "money", "stand", "looks", "take", "cost"])
            .prop_map(str::to_owned),
        1 => any::<String>().prop_filter("these hold no tables", |table| !["", "include"].contains(&table.as_str())),
    ];
    let name = prop::option::of(prop_oneof!["[ab]", any::<String>()].prop_map(Cell::Words));
    let fields = prop::collection::btree_map(field(), cell(), 0..4);
    (table, name, fields).prop_map(|(table, name, mut fields)| {
        fields.extend(name.map(|name| ("name".to_owned(), name)));
        TableRow::new(&table, fields)
    })
}
