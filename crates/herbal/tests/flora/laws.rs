//! Moving files, tables and rows about changes nothing but places.

use crate::small::files;
use herbal::{Herbal, TextFile};
use proptest::prelude::*;

/// The text with its lists of tables in another order: a `[[table]]` goes with all that follows it
/// up to the next table of another name that does not belong to it.
fn shuffled(text: &str, order: &[usize]) -> String {
    let (head, blocks) = blocks(text);
    let mut keyed: Vec<_> = blocks.iter().enumerate().collect();
    keyed.sort_by_key(|(at, _)| order[at % order.len()]);
    let moved: Vec<_> = keyed.into_iter().map(|(_, block)| block.as_str()).collect();
    format!("{head}\n{}", moved.join("\n"))
}

/// The bare keys of a text, and its tables, each whole with its own lists.
fn blocks(text: &str) -> (String, Vec<String>) {
    let mut head = String::new();
    let mut blocks: Vec<String> = Vec::new();
    for line in text.lines() {
        let opens = line.starts_with('[') && !line.starts_with("[[character.state]]");
        if opens {
            blocks.push(String::new());
        }
        let into = blocks.last_mut().unwrap_or(&mut head);
        into.push_str(line);
        into.push('\n');
    }
    (head, blocks)
}

fn bytes(files: &[TextFile]) -> String {
    serde_json::to_string(&Herbal::read(files).unwrap()).unwrap()
}

proptest! {
    #[test]
    fn order_changes_nothing(
        order in proptest::collection::vec(0_usize..100, 17),
        turn in 0_usize..5,
    ) {
        let mut moved = files();
        moved.rotate_left(turn);
        for file in &mut moved {
            file.text = shuffled(&file.text, &order);
        }
        prop_assert_eq!(bytes(&moved), bytes(&files()));
    }

    #[test]
    fn no_text_makes_a_reading_panic(at in 0_usize..3000, junk in "[\\[\\]={}\",a-z0-9. \n-]{0,12}") {
        let mut spoilt = files();
        for file in &mut spoilt {
            let at = file.text.char_indices().map(|(at, _)| at).nth(at);
            if let Some(at) = at {
                file.text.insert_str(at, &junk);
            }
        }
        if let Err(faults) = Herbal::read(&spoilt) {
            prop_assert!(faults.iter().all(|fault| fault.at.line.is_some() && fault.at.file.is_some()));
        }
    }
}

#[test]
fn the_shuffle_moves_tables() {
    let text = "a = 1\n\n[x]\nb = 1\n\n[[y]]\nc = 1\n\n[[y]]\nc = 2\n";
    let moved = shuffled(text, &[3, 2, 1]);
    assert_eq!(moved, "a = 1\n\n\n[[y]]\nc = 2\n\n[[y]]\nc = 1\n\n\n[x]\nb = 1\n\n");
}
