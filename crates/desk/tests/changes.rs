//! Changes to rows fold to the same rows in whatever order they arrive, and the latest of each row holds.
#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a panic is how a test reports")]

mod any_row;

use any_row::row;
use desk::{Cell, Change, TableRow, standing_rows};
use journal::{Act, Log, Record, RecordId};
use proptest::prelude::*;
use proptest::sample::Index;
use std::collections::BTreeMap;

fn stand(name: &str, area: i64) -> TableRow {
    let cells = [("name", Cell::Words(name.to_owned())), ("area", Cell::Whole(area))];
    TableRow::new("stand", cells.map(|(field, cell)| (field.to_owned(), cell)).into())
}

fn gone(row: TableRow) -> Change {
    Change::Drop { table: row.table, key: row.key }
}

fn put(name: &str, area: i64) -> Act<Vec<Change>> {
    Act::Say(vec![Change::Put(stand(name, area))])
}

/// What no two rows share.
fn place(row: &TableRow) -> (String, String) {
    (row.table.clone(), row.key.clone())
}

/// Says all this on one device.
fn log(acts: impl IntoIterator<Item = Act<Vec<Change>>>) -> (Log<Vec<Change>>, Vec<RecordId>) {
    let mut log = Log::new();
    let says = |(turn, act)| log.append("phone", 1000, [turn; 10], "maren", act).unwrap();
    let ids = (0..).zip(acts).map(says).collect();
    (log, ids)
}

#[test]
fn a_changed_row_keeps_its_place_and_a_dropped_one_vanishes() {
    let (mut log, ids) = log([
        put("weir", 1),
        put("bank", 2),
        put("dell", 3),
        put("weir", 4),
        Act::Say(vec![gone(stand("bank", 0))]),
    ]);
    assert_eq!(standing_rows(&log), [stand("weir", 4), stand("dell", 3)]);
    let back = |of| Act::TakeBack { of };
    log.append("tablet", 1000, [10; 10], "tobias", back(ids[4])).unwrap();
    assert_eq!(standing_rows(&log), [stand("weir", 4), stand("bank", 2), stand("dell", 3)]);
    log.append("tablet", 1000, [11; 10], "tobias", back(ids[3])).unwrap();
    assert_eq!(standing_rows(&log), [stand("weir", 1), stand("bank", 2), stand("dell", 3)]);
    log.append("phone", 1000, [12; 10], "maren", put("bank", 9)).unwrap();
    assert_eq!(standing_rows(&log)[1], stand("bank", 9));
}

#[test]
fn what_was_done_in_one_go_is_taken_back_whole() {
    let both = vec![Change::Put(stand("weir", 7)), gone(stand("bank", 0))];
    let (mut log, ids) = log([put("weir", 1), put("bank", 2), Act::Say(both)]);
    assert_eq!(standing_rows(&log), [stand("weir", 7)]);
    log.append("phone", 1000, [9; 10], "maren", Act::TakeBack { of: ids[2] }).unwrap();
    assert_eq!(standing_rows(&log), [stand("weir", 1), stand("bank", 2)]);
}

#[test]
fn a_change_is_plain_json() {
    let json = |change: &Change| serde_json::to_string(change).unwrap();
    let row = r#"{"table":"stand","key":"bank","cells":{"area":2,"name":"bank"}}"#;
    assert_eq!(json(&Change::Put(stand("bank", 2))), format!(r#"{{"put":{row}}}"#));
    let dropped = r#"{"drop":{"table":"stand","key":"bank"}}"#;
    assert_eq!(json(&gone(stand("bank", 2))), dropped);
}

fn change() -> impl Strategy<Value = Change> {
    // Few rows, so that many changes meet the same one.
    let few = ("[abc]", 0..9_i64).prop_map(|(name, area)| stand(&name, area));
    prop_oneof![
        4 => few.clone().prop_map(Change::Put),
        2 => few.prop_map(gone),
        1 => row().prop_map(Change::Put),
    ]
}

/// What two devices note down, each by itself: which of them, and whether it has just heard of the
/// other; then a change, or the taking back of something that either noted.
fn notes() -> impl Strategy<Value = Vec<(bool, bool, Result<Vec<Change>, Index>)>> {
    let some = prop::collection::vec(change(), 1..4);
    let act = prop_oneof![4 => some.prop_map(Ok), 1 => any::<Index>().prop_map(Err)];
    prop::collection::vec((any::<bool>(), prop::bool::weighted(0.2), act), 1..24)
}

/// Everything that they noted, as one log.
fn changes() -> impl Strategy<Value = Log<Vec<Change>>> {
    notes().prop_map(|notes| {
        let mut logs = [Log::new(), Log::new()];
        let mut ids: Vec<RecordId> = Vec::new();
        for (turn, (first, heard, act)) in (0..).zip(notes) {
            let [own, other] = &mut logs;
            let (own, other) = if first { (own, other) } else { (other, own) };
            if heard {
                own.merge(other).unwrap();
            }
            let act = match act {
                Ok(changes) => Act::Say(changes),
                Err(_) if ids.is_empty() => continue,
                Err(at) => Act::TakeBack { of: ids[at.index(ids.len())] },
            };
            let device = if first { "phone" } else { "tablet" };
            ids.push(own.append(device, 1000, [turn; 10], "maren", act).unwrap());
        }
        let [mut all, other] = logs;
        all.merge(&other).unwrap();
        all
    })
}

/// Whether no later record that stands takes this one back.
fn stands(records: &[&Record<Vec<Change>>], at: usize) -> bool {
    let back = Act::TakeBack { of: records[at].id };
    !(at + 1..records.len()).any(|later| records[later].what == back && stands(records, later))
}

proptest! {
    #[test]
    fn changes_make_the_same_rows_in_whatever_order_they_arrive(
        (log, lines) in changes().prop_flat_map(|log| {
            let lines: Vec<_> = log.lines().map(str::to_owned).collect();
            (Just(log), Just(lines).prop_shuffle())
        }),
    ) {
        let mut arrived = Log::new();
        for line in lines {
            arrived.merge(&Log::read("one", &line).unwrap()).unwrap();
        }
        prop_assert_eq!(standing_rows(&arrived), standing_rows(&log));
    }

    #[test]
    fn the_latest_standing_change_of_each_row_holds(log in changes()) {
        let records: Vec<_> = log.iter().collect();
        let mut want = BTreeMap::new();
        for at in (0..records.len()).filter(|at| stands(&records, *at)) {
            let Act::Say(changes) = records[at].what.clone() else { continue };
            for change in changes {
                match change {
                    Change::Put(row) => want.insert(place(&row), Some(row)),
                    Change::Drop { table, key } => want.insert((table, key), None),
                };
            }
        }
        let want: Vec<_> = want.into_values().flatten().collect();
        let mut got = standing_rows(&log);
        got.sort_by_key(place);
        prop_assert_eq!(got, want);
    }
}
