//! What was asked before changes no answer.

#![allow(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use desk::device::Request;
use desk::{InHandOrder, InputFile, NextLookOrder, World};
use kit::{AUTUMN_DAY, DAY, EVENING, demo, json, world};

fn in_hand(files: &[InputFile]) -> InHandOrder {
    InHandOrder {
        files: files.to_vec(),
        stand: "ramsons-brook".to_owned(),
        specimen: "ramsons-1".to_owned(),
    }
}

fn next_look(files: &[InputFile], reader: &str) -> Request {
    Request::NextLook(NextLookOrder { of: in_hand(files), reader: reader.to_owned() })
}

/// Everything that memory has to do with, asked of one outing.
fn questions(files: &[InputFile]) -> Vec<Request> {
    let files = files.to_vec();
    vec![
        Request::Plan { files: files.clone(), reasons: true },
        Request::InHand(in_hand(&files)),
        next_look(&files, "tobias"),
        next_look(&files, "maren"),
        Request::Serving { files: files.clone(), reasons: true },
        Request::Flags { files: files.clone() },
        Request::Pots { files: files.clone() },
        Request::Allowance { files: files.clone() },
        Request::Basket { files },
    ]
}

/// The files with these words changed wherever they stand.
fn changed(files: &[InputFile], from: &str, to: &str) -> Vec<InputFile> {
    assert!(files.iter().any(|file| file.text.contains(from)), "{from} stands in no file");
    let change = |file: &InputFile| {
        let text = file.text.replace(from, to);
        InputFile::from_bytes(&file.name, text.into_bytes()).unwrap()
    };
    files.iter().map(change).collect()
}

#[test]
fn what_was_asked_before_changes_no_answer() {
    let day = demo(DAY);
    let outings = [
        day.clone(),
        changed(&day, "pregnant = \"yes\"", "pregnant = \"no\""),
        changed(&day, "crushed_smell = \"garlic\"", "crushed_smell = \"none\""),
        day.clone(),
        demo(EVENING),
        demo(AUTUMN_DAY),
        day,
    ];
    let old = world();
    for files in outings {
        let mut asked = questions(&files);
        if !files[0].text.contains("ramsons-brook") {
            asked.retain(|request| !matches!(request, Request::InHand(_) | Request::NextLook(_)));
        }
        // A world that remembers nothing yet is asked in the other order.
        let new = world();
        let mut fresh: Vec<_> =
            asked.iter().rev().map(|request| json(&new, request.clone())).collect();
        fresh.reverse();
        for (request, fresh) in asked.into_iter().zip(fresh) {
            assert_eq!(json(&old, request.clone()), fresh, "{request:?}");
        }
    }
}

#[test]
fn another_moment_and_another_random_start_are_heard() {
    let old = world();
    let ask = |world: &World| json(world, Request::Plan { files: demo(DAY), reasons: true });
    let first = ask(&old);
    let mut later = old;
    later.now = jiff::civil::date(2027, 5, 1).at(20, 0, 0, 0);
    later.random_start = ground::RandomStart(2);
    assert_eq!(ask(&later), ask(&later.clone()));
    assert_ne!(ask(&later), first);
}
