//! Land rules, shares, distances and yields: what the project ships, and what is wrong with files.

#![expect(clippy::unwrap_used, reason = "a test reports by panicking, in its helpers too")]

use ground::{Mass, Part, Standing};
use harvest::{Effect, Period, Quantity, Reach};
use herbal::{Herbal, TextFile};

fn file(path: &str, text: &str) -> TextFile {
    TextFile { path: path.to_owned(), text: text.to_owned() }
}

fn shipped() -> Vec<TextFile> {
    vec![
        file("land/buffers.toml", include_str!("../../../herbal/land/buffers.toml")),
        file("land/fractions.toml", include_str!("../../../herbal/land/fractions.toml")),
        file("land/rules.toml", include_str!("../../../herbal/land/rules.toml")),
        file("land/yields.toml", include_str!("../../../herbal/land/yields.toml")),
        file("sources/land.toml", include_str!("../../../herbal/sources/land.toml")),
    ]
}

fn codes(files: &[TextFile]) -> Vec<(String, String)> {
    let faults = Herbal::read(files).unwrap_err();
    faults.into_iter().map(|fault| (fault.code, fault.got)).collect()
}

#[test]
fn what_is_shipped_reads_without_a_fault() {
    let land = Herbal::read(&shipped()).unwrap().land;
    let rules = &land.rules;
    assert!(rules.laws.len() >= 35 && rules.shares.len() >= 20 && rules.ceilings.len() >= 5);
    assert_eq!(rules.places("england"), ["england", "england-and-wales", "great-britain"]);
    // Every share is the leader's; every ceiling was published.
    assert!(rules.shares.iter().all(|rule| rule.from.standing == Standing::Policy));
    assert!(rules.ceilings.iter().all(|rule| rule.from.may_clear()));
}

#[test]
fn a_share_is_set_for_every_part_and_life_form() {
    use ground::LifeForm;
    let land = Herbal::read(&shipped()).unwrap().land;
    for part in Part::ALL.iter().filter(|part| **part != Part::EssentialOil) {
        for life_form in LifeForm::ALL {
            let fits = land.rules.shares.iter().any(|rule| {
                // A rule for whole plants is none for their parts.
                let holds = |p: &Part| p == part || (*p != Part::Whole && p.contains(*part));
                let forms = &rule.scope.life_forms;
                rule.scope.parts.iter().any(holds)
                    && (forms.is_empty() || forms.contains(life_form))
            });
            assert!(fits, "{part} {life_form}");
        }
    }
}

#[test]
fn amounts_and_distances_come_in_their_units() {
    let land = Herbal::read(&shipped()).unwrap().land;
    let ramps = land.rules.laws.iter().find(|law| law.id == "nc-ramps").unwrap();
    // Five pounds of 453.59237 g.
    let five = Quantity::Mass(Mass::from_g(5.0 * 453.592_37));
    assert_eq!(ramps.effect, Effect::AtMost(five, Period::Year));
    let road = land.rules.hazards.iter().find(|hazard| hazard.id == "busy-road").unwrap();
    let Reach::Distance { keep, never } = road.reach else { unreachable!() };
    assert_eq!((keep.m(), never.m()), (50.0, 25.0));
    let bulb = land.yields.iter().find(|found| found.id == "ramps-bulb").unwrap();
    // Sixty to the pound.
    assert!((bulb.low_g.g() - 453.592_37 / 60.0).abs() < 5e-3);
}

#[test]
fn every_fault_of_a_file_comes_at_once() {
    let bad = r#"
[[jurisdiction]]
id = "here"
name = "Here"
within = "nowhere"

[[law]]
id = "a"
jurisdictions = ["there"]
lands = ["moor"]
effect = "note"
amount = "5 ml"
says = "no"
src = ["memory"]

[[law]]
id = "a"
effect = "at-most"
says = "no"
src = ["memory"]

[[share]]
id = "s"
share = 1.5
says = "no"
src = ["policy"]

[[hazard]]
id = "h"
name = "h"
keep = "10 m"
never = "20 m"
why = "no"
src = ["unheard-of"]
"#;
    let found = codes(&[file("land/bad.toml", bad)]);
    let expected = [
        ("land-unknown-place", "nowhere"),
        ("land-at-most", "a"),
        ("land-unknown-place", "there"),
        ("land-unknown-class", "moor"),
        ("land-amount", "5 ml"),
        ("land-at-most", "a"),
        ("land-twice", "a"),
        ("land-share", "1.5"),
        ("land-distance", "h"),
        ("unknown-source", "unheard-of"),
    ];
    let expected = expected.map(|(code, got)| (code.to_owned(), got.to_owned()));
    assert_eq!(found, expected);
}

#[test]
fn a_row_without_a_source_or_with_a_stray_field_does_not_pass() {
    let sourceless = "[[care]]\nid = \"c\"\nsays = \"wash\"\nsrc = []\n";
    assert_eq!(codes(&[file("land/a.toml", sourceless)])[0].0, "no-source");
    let stray = "[[care]]\nid = \"c\"\nsays = \"wash\"\nsrc = [\"memory\"]\nsafe = true\n";
    assert_eq!(codes(&[file("land/a.toml", stray)])[0].0, "unreadable-toml");
}

#[test]
fn a_school_lays_its_own_shares_and_places_over_those_shipped() {
    let base = Herbal::read(&shipped()).unwrap();
    let own = r#"
[[jurisdiction]]
id = "bavaria"
name = "Bavaria"
within = "germany"

[[share]]
id = "leaf-perennial"
parts = ["leaf"]
life_forms = ["perennial"]
share = 0.1
says = "One leaf in ten."
src = ["policy"]
"#;
    let over = base.overlay(&[file("land/own.toml", own)]).unwrap();
    let rules = &over.land.rules;
    assert_eq!(rules.places("bavaria"), ["bavaria", "germany"]);
    assert_eq!(rules.shares.len(), base.land.rules.shares.len());
    let leaf = rules.shares.iter().find(|rule| rule.id == "leaf-perennial").unwrap();
    assert_eq!(leaf.share.share(), 0.1);
}
