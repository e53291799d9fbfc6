//! Every message and fault of this craft has its sentence in the catalogue.

#![expect(clippy::unwrap_used, reason = "a test may panic")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// All code under a folder.
fn code(folder: &Path) -> String {
    let mut all = String::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.push_str(&code(&path));
        } else {
            all.push_str(&fs::read_to_string(&path).unwrap());
        }
    }
    all
}

/// String literals that begin like this.
fn literals(code: &str, begin: &str) -> BTreeSet<String> {
    let whole = |literal: &&str| {
        let plain = |c: char| c.is_ascii_lowercase() || c == '-';
        literal.starts_with(begin) && literal.chars().all(plain)
    };
    code.split('"').filter(whole).map(str::to_owned).collect()
}

#[test]
fn no_sentence_is_missing_and_none_is_idle() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut code = code(&root.join("src"));
    code.push_str(&self::code(&root.join("../herbal/src/kitchen")));
    let catalogue = fs::read_to_string(root.join("../page/messages/en/prepare.ftl")).unwrap();
    let said: BTreeSet<_> = catalogue
        .lines()
        .filter_map(|line| line.split_once(" ="))
        .map(|(id, _)| id.to_owned())
        .filter(|id| !id.starts_with([' ', '#']))
        .collect();
    let mut wanted = literals(&code, "prepare-");
    for begin in ["recipe-", "kitchen-"] {
        wanted.extend(literals(&code, begin).iter().map(|code| format!("fault-{code}")));
    }
    assert!(wanted.len() > 100, "the literals were not found");
    let missing: Vec<_> = wanted.difference(&said).collect();
    assert!(missing.is_empty(), "no sentence for {missing:?}");
    let formula = |id: &&&String| !id.starts_with("formula-");
    let idle: Vec<_> = said.difference(&wanted).collect();
    let idle: Vec<_> = idle.iter().filter(formula).collect();
    assert!(idle.is_empty(), "nobody says {idle:?}");
}
