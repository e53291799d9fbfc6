//! Every message that the code of the workspace names has its sentence.
//!
//! A message is named where `Text::new` or `Fault::new` takes a literal, and by any literal that
//! begins with the name of its craft: crafts name their messages so.

use page::Catalogue;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

#[test]
fn no_message_that_the_code_names_is_missing() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut files = Vec::new();
    rust_files(&crates, &mut files);
    assert!(files.len() > 20, "the sources were not found");
    let catalogue = Catalogue::english();
    let mut missing = BTreeSet::new();
    for file in files {
        let place = file.strip_prefix(&crates).unwrap().to_string_lossy().into_owned();
        let prefix = place.split(['/', '\\']).next().unwrap_or_default();
        let code = code(&fs::read_to_string(&file).unwrap());
        let ids = messages(&code, prefix).into_iter().filter(|id| !catalogue.has(id));
        // A literal may be the code of a fault, which its sentence carries with a prefix.
        let ids = ids.filter(|id| !catalogue.has(&format!("fault-{id}")));
        missing.extend(ids.map(|id| format!("{place}: {id}")));
    }
    assert!(missing.is_empty(), "{}", Vec::from_iter(missing).join("\n"));
}

#[test]
fn messages_are_found_however_they_are_named() {
    let code = code(
        "/// Such as `Text::new(\"in-a-comment\")`.\n\
         let a = Text::new(\n    \"plain-one\",\n);\n\
         let b = Fault::new(\"no-such\", at, got);\n\
         refuse(\"dose-by-a-helper\", \"not a message\");\n\
         #[cfg(test)]\nmod tests { Text::new(\"made-up\") }",
    );
    let found = ["dose-by-a-helper", "fault-no-such", "plain-one"];
    assert_eq!(Vec::from_iter(messages(&code, "dose")), found);
}

/// A source without its comments, and without the unit tests at its end: these make up messages.
fn code(source: &str) -> String {
    let code = source.split("#[cfg(test)]").next().unwrap_or_default();
    let lines = code.lines().filter(|line| !line.trim_start().starts_with("//"));
    lines.collect::<Vec<_>>().join("\n")
}

fn messages(code: &str, craft: &str) -> BTreeSet<String> {
    let texts = first_literals(code, "Text::new(").map(str::to_owned);
    let faults = first_literals(code, "Fault::new(").map(|code| format!("fault-{code}"));
    let prefix = format!("{craft}-");
    let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let literals = code.split('"').filter(|literal| literal.starts_with(&prefix));
    // One that ends in a dash is the beginning of several names.
    let names = |literal: &&str| literal.chars().all(kebab) && !literal.ends_with('-');
    let literals = literals.filter(names).map(str::to_owned);
    texts.chain(faults).chain(literals).collect()
}

/// The string literals that stand first in the calls of a function.
fn first_literals<'a>(code: &'a str, call: &'a str) -> impl Iterator<Item = &'a str> {
    code.split(call).skip(1).filter_map(|rest| {
        let literal = rest.trim_start().strip_prefix('"')?;
        literal.split_once('"').map(|(id, _)| id)
    })
}

/// Every Rust file of the crates but their tests, examples and build scripts.
fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    let mut entries: Vec<_> = fs::read_dir(folder).unwrap().map(|e| e.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        if path.is_dir() && !["tests", "examples", "benches"].contains(&name.as_str()) {
            rust_files(&path, found);
        } else if name.ends_with(".rs") && name != "build.rs" {
            found.push(path);
        }
    }
}
