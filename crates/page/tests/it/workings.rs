//! Workings that are asked for one by one.

use crate::kit::{self, AUTUMN_DAY, SPRING_DAY, SPRING_EVENING, demo, world};
use desk::InHandOrder;
use desk::device::{Reply, Request, answer};
use jiff::civil::date;
use page::{Page, html_body, html_opened, view};
use std::collections::BTreeSet;

/// The anchors of what stands empty on a page, in their order.
fn later(page: &Page) -> Vec<String> {
    let html = html_body(page);
    let empty = html.split("<details data-later>").skip(1);
    let anchor = |rest: &str| {
        let (_, rest) = rest.split_once("<div class=\"opened\" id=\"").unwrap();
        rest.split_once('"').unwrap().0.to_owned()
    };
    empty.map(anchor).collect()
}

/// How many workings a reply has, each of which is asked for by itself.
fn asked_for(reply: &Reply) -> usize {
    let words = kit::words();
    let whole = view(reply, &words);
    assert_eq!(later(&whole), Vec::<String>::new());
    let anchors = later(&view(reply, &words.with_working(None)));
    let distinct: BTreeSet<_> = anchors.iter().collect();
    assert_eq!(distinct.len(), anchors.len(), "{anchors:?}");
    for anchor in &anchors {
        let one = view(reply, &words.with_working(Some(anchor)));
        let opened = html_opened(&one, anchor).unwrap();
        assert!(opened.contains("<li>"), "{anchor}: {opened}");
        assert_eq!(Some(opened), html_opened(&whole, anchor), "{anchor}");
        assert_eq!(later(&one).len(), anchors.len() - 1);
    }
    anchors.len()
}

#[test]
fn each_working_that_is_asked_for_is_the_one_that_the_whole_page_holds() {
    let world = world(date(2027, 5, 1).at(15, 0, 0, 0));
    let asked = |request| asked_for(&answer(&world, request).unwrap());
    for name in [SPRING_EVENING, SPRING_DAY, AUTUMN_DAY] {
        let files = || demo(name);
        assert!(asked(Request::Plan { files: files(), reasons: true }) > 20, "{name}");
        assert!(asked(Request::Allowance { files: files() }) > 1, "{name}");
    }
    let looked = InHandOrder {
        files: demo(SPRING_DAY),
        stand: "ramsons-brook".to_owned(),
        specimen: "ramsons-1".to_owned(),
    };
    assert_eq!(asked(Request::InHand(looked)), 1);
}

#[test]
fn a_place_that_is_not_there_opens_nothing() {
    let world = world(date(2027, 5, 1).at(15, 0, 0, 0));
    let reply = answer(&world, Request::Allowance { files: demo(SPRING_DAY) }).unwrap();
    assert_eq!(html_opened(&view(&reply, &kit::words()), "no-such-stand"), None);
}
