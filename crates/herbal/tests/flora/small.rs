//! A small herbal in text: two species, a genus, a glossary of three characters.

use ground::{Fault, Faults};
use herbal::{Herbal, TextFile};

pub(crate) const SOURCES: &str = r#"[[source]]
id = "flora"
title = "A flora"
author = "Somebody"
address = "https://example.org/flora"
kind = "flora"

[[source]]
id = "digest"
title = "A digest"
author = "Somebody else"
kind = "page"
"#;

pub(crate) const GLOSSARY: &str = r#"[[character]]
id = "leaf_margin"
name = "leaf edge"
is = "what the edge of the blade looks like"
how = "Run a finger along the edge of a grown leaf."
kind = "states"
organ = "leaf"
sense = "sight"
tool = "none"
spoils = "nothing"
seconds = 10
group = "leaf-edge"
src = ["flora"]

[[character.state]]
id = "toothed"
says = "with teeth"

[[character.state]]
id = "serrate"
says = "saw-toothed, teeth pointing to the tip"
kind_of = "toothed"
taken_for = ["entire"]

[[character.state]]
id = "entire"
says = "without teeth"

[[character]]
id = "crushed_smell"
name = "smell when crushed"
is = "what a bruised leaf smells of"
how = "Crush a leaf and smell."
kind = "states"
organ = "leaf"
sense = "smell"
tool = "none"
spoils = "piece"
seconds = 15
group = "smell"
src = ["practice"]

[[character.state]]
id = "none"
says = "no smell"

[[character.state]]
id = "mousy"
says = "of mice"

[[character]]
id = "leaf_length_mm"
name = "leaf length"
is = "how long the blade is"
how = "Measure from the foot to the tip."
kind = "length"
organ = "leaf"
sense = "measure"
tool = "ruler"
spoils = "nothing"
seconds = 20
group = "leaf-size"
src = ["flora"]
"#;

pub(crate) const NETTLE: &str = r#"name = "Urtica dioica"
authority = "L."
family = "Urticaceae"
common = ["stinging nettle", "nettle"]
former = ["Urtica galeopsifolia"]
regions = ["europe", "north-america"]
life_form = "perennial"
harm = "irritant"
harm_note = "Stings."
harm_src = ["flora"]
habitats = ["hedge"]
caution_taxa = ["Urtica dioica"]

[months]
leaf = [3, 11]
flower = [6, 9]
root = [10, 3]

[characters]
leaf_margin = { always = ["serrate"], src = ["flora"] }
leaf_length_mm = { range = [40, 150], extreme = [20, 200], src = ["flora", "memory"] }

[[use]]
part = "leaf"
as = ["cooked", "infusion"]
src = ["flora"]

[[look_alike]]
name = "Conium maculatum"
why = "invented for a test"
tells = ["crushed_smell", "leaf_margin"]
says = "Hemlock smells of mice."
confirmed = true
src = ["flora"]

[relatives]
statement = "unlisted-alike"
regions = ["europe"]
note = "Other nettles are used alike."
src = ["memory"]

[[conflict]]
about = "seed"
says = "One source eats it, one does not."
kept = "not eaten"
src = ["flora"]
"#;

pub(crate) const HEMLOCK: &str = r#"name = "Conium maculatum"
authority = "L."
family = "Apiaceae"
common = ["hemlock", "poison hemlock"]
regions = ["europe"]
life_form = "biennial"
harm = "deadly"
harm_note = "Kills."
harm_src = ["flora"]
habitats = ["ditch"]

[months]
leaf = [1, 12]

[characters]
crushed_smell = { usually = ["mousy"], sometimes = ["none"], src = ["digest"] }

[relatives]
statement = "all-listed"
regions = ["europe"]
note = "The only one."
src = ["flora"]
"#;

pub(crate) const FAMILY: &str = r#"name = "Apiaceae"
rank = "family"
note = "The carrot family."

[characters]
leaf_margin = { usually = ["toothed"], src = ["flora"] }
crushed_smell = { always = ["none"], src = ["memory"] }
"#;

/// The small herbal.
pub(crate) fn files() -> Vec<TextFile> {
    let file =
        |(path, text): (&str, &str)| TextFile { path: path.to_owned(), text: text.to_owned() };
    [
        ("sources/all.toml", SOURCES),
        ("glossary/characters.toml", GLOSSARY),
        ("species/urtica-dioica.toml", NETTLE),
        ("species/conium-maculatum.toml", HEMLOCK),
        ("groups/family-apiaceae.toml", FAMILY),
    ]
    .map(file)
    .to_vec()
}

pub(crate) fn herbal() -> Herbal {
    Herbal::read(&files()).unwrap()
}

/// The small herbal with one piece of text changed, which must be there exactly once.
pub(crate) fn files_with(from: &str, to: &str) -> Vec<TextFile> {
    let mut files = files();
    let found: usize = files.iter().map(|file| file.text.matches(from).count()).sum();
    assert_eq!(found, 1, "{from} stands {found} times");
    for file in &mut files {
        file.text = file.text.replace(from, to);
    }
    files
}

pub(crate) fn faults(files: &[TextFile]) -> Faults {
    Herbal::read(files).map(|_| ()).unwrap_err()
}

/// The one fault that such a change brings, as file, line, column, code and what was got.
pub(crate) fn fault_of(from: &str, to: &str) -> (String, u32, u32, String, String) {
    only(&files_with(from, to))
}

/// The one fault that these files hold.
pub(crate) fn only(files: &[TextFile]) -> (String, u32, u32, String, String) {
    let all = faults(files);
    let list: Vec<_> = all.iter().collect();
    assert_eq!(list.len(), 1, "{all}");
    said(list[0])
}

pub(crate) fn said(fault: &Fault) -> (String, u32, u32, String, String) {
    (
        fault.at.file.clone().unwrap(),
        fault.at.line.unwrap(),
        fault.at.column.unwrap(),
        fault.code.clone(),
        fault.got.clone(),
    )
}

/// An overlay of one file.
pub(crate) fn one(path: &str, text: &str) -> Vec<TextFile> {
    vec![TextFile { path: path.to_owned(), text: text.to_owned() }]
}
