//! Every fault and finding of the flora has its sentences.

use std::fs;
use std::path::Path;

/// The string literals that stand first in the calls of a function.
fn named<'a>(code: &'a str, call: &'a str) -> Vec<&'a str> {
    let literal = |rest: &'a str| {
        let quoted = rest.trim_start().strip_prefix('"')?;
        quoted.split_once('"').map(|(id, _)| id)
    };
    code.split(call).skip(1).filter_map(literal).collect()
}

fn sources() -> String {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let folders = ["flora", "check"].map(|folder| src.join(folder));
    let inside = folders.iter().flat_map(|folder| fs::read_dir(folder).unwrap());
    let mut paths: Vec<_> = inside.map(|entry| entry.unwrap().path()).collect();
    paths.extend(["file.rs", "open.rs", "search.rs"].map(|name| src.join(name)));
    paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect()
}

#[test]
fn no_sentence_is_missing() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let catalogue = root.join("../page/messages/en/herbal.ftl");
    let catalogue = fs::read_to_string(catalogue).unwrap();
    let has = |id: &str| catalogue.lines().any(|line| line.starts_with(&format!("{id} = ")));
    let code = sources();
    let faults = ["fault(", "fault_with("].map(|call| named(&code, call)).concat();
    let codes = ["several-plants", "unknown-plant", "unknown-plant-none-near"];
    assert!(faults.len() > 25, "the calls were not found");
    for code in faults.iter().chain(&codes) {
        assert!(has(&format!("fault-{code}")), "fault-{code}");
    }
    let texts = [
        "Text::new(",
        "text(",
        "note(",
        "Lack::Missing, ",
        "Lack::Remembered, ",
        "Lack::Contradictory, ",
    ]
    .map(|call| named(&code, call))
    .concat();
    let texts: Vec<_> = texts.iter().filter(|id| id.starts_with("herbal-")).collect();
    assert!(texts.len() > 10, "the calls were not found");
    for id in texts {
        assert!(has(id), "{id}");
    }
}
