//! Every message that the crate names has its sentence, every fault what is wanted and how to mend.

#![expect(clippy::unwrap_used, reason = "in a test a panic is the report")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

fn sources(at: &Path, into: &mut String) {
    for entry in fs::read_dir(at).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, into);
        } else {
            into.push_str(&fs::read_to_string(path).unwrap());
        }
    }
}

/// The identifiers that follow this prefix, in quotes.
fn named(text: &str, prefix: &str) -> BTreeSet<String> {
    let quoted = format!("\"{prefix}");
    let after = text.split(&quoted).skip(1);
    after.map(|rest| format!("{prefix}{}", rest.split('"').next().unwrap())).collect()
}

#[test]
fn every_message_has_its_sentence() {
    let crate_at = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut text = String::new();
    sources(&crate_at.join("src"), &mut text);
    let catalogue = fs::read_to_string(crate_at.join("../page/messages/en/identify.ftl")).unwrap();
    let has = |id: &str| catalogue.lines().any(|line| line.starts_with(&format!("{id} =")));
    let whole = |id: &&String| !id.contains('{') && !id.ends_with('-');
    let messages = named(&text, "identify-");
    assert!(messages.len() > 60, "the sources were read");
    for id in messages.iter().filter(whole) {
        let fault = catalogue.split(&format!("\nfault-{id} =")).nth(1);
        let Some(fault) = fault else {
            assert!(has(id), "{id} has no sentence");
            continue;
        };
        let attributes: Vec<_> = fault.lines().skip(1).take(2).map(str::trim).collect();
        assert!(
            attributes[0].starts_with(".want =") && attributes[1].starts_with(".mend ="),
            "{id}"
        );
    }
    for formula in named(&text, "identify.") {
        assert!(has(&format!("formula-{}", formula.replace('.', "-"))), "{formula}");
    }
}
