//! Screens for readers with other measures and another order of dates.

use crate::{EVENING, again, app, demo, fill, fill_as, follow, moment, take_in};
use app::{App, Form, Shown, Visit};
use page::{DateOrder, Habits, Measures};

const US: Habits = Habits { measures: Measures::Us, dates: DateOrder::MonthDayYear };

fn follow_as(habits: Habits, app: &mut App, to: &str) -> Shown {
    app.show(&Visit { to: to.to_owned(), at: moment("follow"), habits, ..Visit::default() })
}

const TEA: &str = "/work-out?recipe=herb-tea&herb=30%20g&state=dried&moisture=10%20%25";

#[test]
fn screens_follow_the_reader_from_tap_to_tap() {
    let mut app = app();
    let metric = follow(&mut app, TEA).main;
    assert!(metric.contains("30\u{a0}g") && !metric.contains("\u{a0}oz"), "{metric}");
    let us = follow_as(US, &mut app, TEA).main;
    assert!(us.contains("30\u{a0}g (1.1\u{a0}oz)"), "{us}");
    assert_eq!(follow(&mut app, TEA).main, metric);
}

#[test]
fn days_stand_in_the_order_of_the_reader() {
    let mut app = app();
    let at = take_in(&mut app, demo(&EVENING)).at;
    assert!(follow(&mut app, &at).main.contains("1\u{a0}May 2027"));
    assert!(follow_as(US, &mut app, &at).main.contains("May\u{a0}1, 2027"));
}

#[test]
fn what_is_handed_out_is_nobodys() {
    let mut app = again(take_in(&mut app(), demo(&EVENING)).keep);
    let home = follow(&mut app, "/").main;
    let at = home.split("href=\"#/outing/").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
    for way in ["file", "records"] {
        let to = format!("/outing/{at}/{way}");
        let metric = follow(&mut app, &to).file.unwrap();
        assert_eq!(follow_as(US, &mut app, &to).file.unwrap(), metric, "{way}");
    }
}

#[test]
fn a_page_is_ordered_as_its_reader_has_it() {
    let mut app = app();
    let at = take_in(&mut app, demo(&EVENING)).at;
    let form = Form(vec![("page".to_owned(), "run-sheet".to_owned())]);
    let to = format!("{at}/pages/run-sheet");
    let visit = Visit { to, at: moment("pdf"), form: Some(form), habits: US, ..Visit::default() };
    let shown = app.show(&visit);
    assert!(shown.main.contains("\u{a0}oz)"), "{}", shown.main);
    assert_eq!(shown.pdf.unwrap().habits, US);
}

/// A number without a unit means what it meant before: it is refused.
#[test]
fn a_hint_names_the_units_of_the_reader_and_a_bare_number_stays_refused() {
    let mut app = app();
    let at = take_in(&mut app, demo(&EVENING)).at;
    let new = format!("{at}/new/take");
    assert!(follow(&mut app, &new).main.contains("such as 150 g."));
    assert!(follow_as(US, &mut app, &new).main.contains("such as 5.3 oz or 150 g."));
    let mut take = |amount: &str| {
        let at = "at=2027-05-01T10:30";
        let rest = ["name=t", "stand=nettle-bank", "part=young-leaf", at, "pickers=maren"];
        fill_as(US, &mut app, &new, &[&rest[..], &[amount]].concat())
    };
    assert!(take("amount=150").keep.is_empty());
    let taken = take("amount=5.3 oz");
    assert_eq!(taken.keep.len(), 1, "{}", taken.main);
    // Square feet are read whatever the reader is used to.
    let stand = format!("{at}/new/stand");
    let area = ["name=moss", "site=mill-wood", "plant=stinging nettle", "area=6500 sq ft"];
    let kept = fill(&mut app, &stand, &area);
    assert_eq!(kept.keep.len(), 1, "{}", kept.main);
}
