//! The worked examples of the documentation, run as a reader runs them.
#![expect(clippy::expect_used, reason = "a test reports by panicking")]

mod common;

use common::run;

const PAGE: &str = include_str!("../../../docs/worked.md");

/// A command of the page with the lines that it must print.
struct Example<'p> {
    command: &'p str,
    lines: Vec<String>,
}

fn examples(page: &str) -> Vec<Example<'_>> {
    let blocks = page.split("\n```").skip(1).step_by(2);
    let mut examples: Vec<Example<'_>> = Vec::new();
    for block in blocks {
        match block.split_once('\n').expect("a block has a first line") {
            ("sh", command) => examples.push(Example { command, lines: Vec::new() }),
            ("text", lines) => {
                let example = examples.last_mut().expect("a command comes first");
                example.lines.extend(lines.lines().map(without_gaps));
            }
            (kind, _) => unreachable!("no block is {kind}"),
        }
    }
    examples
}

/// The words of a command as a shell splits them: quotes hold words together.
fn words(command: &str) -> Vec<String> {
    let mut words = Vec::new();
    for (at, part) in command.trim().split('"').enumerate() {
        if at % 2 == 1 {
            words.push(part.to_owned());
        } else {
            words.extend(part.split_whitespace().map(str::to_owned));
        }
    }
    words
}

fn without_gaps(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_worked_example_says_what_the_page_says() {
    let examples = examples(PAGE);
    assert_eq!(examples.len(), 16);
    for Example { command, lines } in examples {
        let words = words(command);
        let (program, args) = words.split_first().expect("a command is not empty");
        assert_eq!(program, "trug");
        let args: Vec<_> = args.iter().map(String::as_str).collect();
        let ran = run(&args);
        assert_eq!((ran.code, ran.err.as_str()), (Some(0), ""), "{command}");
        let said = without_gaps(&ran.out);
        assert!(!lines.is_empty(), "{command}");
        for line in lines {
            assert!(said.contains(&line), "{command}\nsays nothing of: {line}\n{}", ran.out);
        }
    }
}
