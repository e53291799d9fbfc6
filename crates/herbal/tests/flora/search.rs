//! Finding plants by name.

use crate::small::{HEMLOCK, NETTLE, files, herbal};
use ground::Place;
use herbal::{Herbal, Match, NameKind, TextFile};

/// The small herbal with hemlock, water hemlock and two plants called wild garlic.
fn wide() -> Herbal {
    let mut files = files();
    let mut add = |name: &str, common: &str, text: &str, own: &str, was: &str| {
        let text =
            text.replace(&format!("name = \"{own}\"\nauth"), &format!("name = \"{name}\"\nauth"));
        files.push(TextFile {
            path: format!("species/{}.toml", ground::slug(name)),
            text: text.replace(was, common).replace("former = [\"Urtica galeopsifolia\"]\n", ""),
        });
    };
    let hemlock = "\"hemlock\", \"poison hemlock\"";
    let nettle = "\"stinging nettle\", \"nettle\"";
    add("Cicuta virosa", "\"water hemlock\"", HEMLOCK, "Conium maculatum", hemlock);
    add(
        "Allium ursinum",
        "\"ramsons\", \"bear's garlic\", \"wild garlic\"",
        NETTLE,
        "Urtica dioica",
        nettle,
    );
    add("Allium vineale", "\"crow garlic\", \"wild garlic\"", NETTLE, "Urtica dioica", nettle);
    add(
        "Hypericum perforatum",
        "\"St John's-wort\", \"Johanniskraut, echtes Tüpfel-\"",
        NETTLE,
        "Urtica dioica",
        nettle,
    );
    add("Cupressus ×leylandii", "\"leyland cypress\"", NETTLE, "Urtica dioica", nettle);
    Herbal::read(&files).unwrap()
}

fn found(herbal: &Herbal, name: &str) -> String {
    herbal.flora.find(name).map(|sheet| sheet.name.clone()).unwrap()
}

#[test]
fn case_hyphens_accents_and_gaps_count_for_nothing() {
    let herbal = wide();
    for asked in ["St. John's wort", "st johns wort", "ST-JOHNS-WORT", "hypericum  perforatum"] {
        assert_eq!(found(&herbal, asked), "Hypericum perforatum", "{asked}");
    }
    assert_eq!(herbal.flora.search("tupfel").len(), 1);
    for asked in ["Cupressus x leylandii", "cupressus ×leylandii", "Cupressus leylandii"] {
        assert_eq!(found(&herbal, asked), "Cupressus ×leylandii");
    }
}

#[test]
fn a_former_name_finds_the_plant() {
    assert_eq!(found(&herbal(), "urtica galeopsifolia"), "Urtica dioica");
    let hit = &herbal().flora.search("Urtica galeopsifolia")[0];
    assert_eq!((hit.kind, hit.fit), (NameKind::Former, Match::Exact));
}

#[test]
fn a_common_name_of_several_plants_is_never_settled_in_silence() {
    let herbal = wide();
    let near = herbal.flora.find("wild garlic").unwrap_err();
    let names: Vec<_> = near.hits.iter().map(|hit| hit.species.as_str()).collect();
    assert_eq!((near.several, names), (true, vec!["Allium ursinum", "Allium vineale"]));
    assert_eq!(near.fault(Place::default()).code, "several-plants");
}

#[test]
fn a_common_name_within_a_longer_one_is_not_settled_either() {
    let herbal = wide();
    let near = herbal.flora.find("hemlock").unwrap_err();
    let names: Vec<_> = near.hits.iter().map(|hit| hit.species.as_str()).collect();
    assert_eq!((near.several, names), (true, vec!["Conium maculatum", "Cicuta virosa"]));
    assert_eq!(found(&herbal, "poison hemlock"), "Conium maculatum");
    assert_eq!(found(&herbal, "water-hemlock"), "Cicuta virosa");
}

#[test]
fn a_misspelt_name_is_answered_with_the_nearest_and_not_settled() {
    let herbal = wide();
    for asked in ["Urtica dioca", "Urtcia dioica", "urtika dioika"] {
        let near = herbal.flora.find(asked).unwrap_err();
        assert!(!near.several);
        assert_eq!(near.hits[0].species, "Urtica dioica", "{asked}");
        assert_eq!(near.fault(Place::default()).code, "unknown-plant");
    }
    // Of a longer name one word may be misspelt.
    let near = herbal.flora.find("nettel").unwrap_err();
    assert_eq!(near.hits[0].species, "Urtica dioica");
    let near = herbal.flora.find("zzzzzz").unwrap_err();
    assert_eq!(near.fault(Place::default()).code, "unknown-plant-none-near");
    assert!(herbal.flora.find("").is_err() && herbal.flora.find(" - ").is_err());
}

#[test]
fn a_genus_or_a_letter_for_it_gives_its_plants_and_settles_nothing() {
    let herbal = wide();
    let genus: Vec<_> = herbal.flora.search("allium").into_iter().map(|hit| hit.species).collect();
    assert_eq!(genus, ["Allium ursinum", "Allium vineale"]);
    assert!(herbal.flora.find("Allium").is_err());
    let near = herbal.flora.find("A. ursinum").unwrap_err();
    assert_eq!(near.hits[0].species, "Allium ursinum");
}

#[test]
fn the_best_fit_comes_first() {
    let fits: Vec<_> = wide().flora.search("nettle").into_iter().map(|hit| hit.fit).collect();
    assert_eq!(fits, [Match::Exact]);
    let fits: Vec<_> = wide().flora.search("garlic").into_iter().map(|hit| hit.fit).collect();
    assert_eq!(fits, [Match::Word, Match::Word]);
}
