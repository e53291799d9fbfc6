//! Cases of what may not speak for a plant.

use super::{TARGET, case, judged, read, with_target};
use crate::{Cell, Level, Look, Matrix, Value, sample};
use ground::{Month, Organ, Season, Standing};

/// What Colchicum contributes when one of its cells, or of the target's, is changed.
fn contributed(taxon: &str, character: &str, change: impl Fn(&mut Cell), looks: Vec<Look>) -> f64 {
    let known = sample::matrix();
    let cells = known.cells().map(|(t, c, cell)| {
        let mut cell = cell.clone();
        if t.name == taxon && c.id == character {
            change(&mut cell);
        }
        (t.name.clone(), c.id.clone(), cell)
    });
    let cells: Vec<_> = cells.collect();
    let matrix = Matrix::new(known.characters().to_vec(), known.taxa().to_vec(), cells).unwrap();
    let bar = judged(&matrix, &case(looks)).bar;
    let rival = bar.rivals.iter().find(|rival| rival.name == "Colchicum autumnale").unwrap();
    rival.contributes.get()
}

#[test]
fn a_cell_that_is_only_remembered_speaks_against_and_never_for() {
    let bulb = |state: &str| read(&["bulb"], state, "Ada", Level::Leader, 0);
    let remembered = |cell: &mut Cell| cell.standing = Standing::Remembered;
    for taxon in [TARGET, "Colchicum autumnale"] {
        assert_eq!(contributed(taxon, "bulb", remembered, bulb("one")), 1e6);
        assert!(contributed(taxon, "bulb", remembered, bulb("two")) > 1e7);
        assert!(contributed(taxon, "bulb", |_| {}, bulb("one")) < 1e5);
    }
}

#[test]
fn what_is_remembered_of_the_rarer_states_never_speaks_for_the_plant() {
    let bulb = |state: &str| read(&["bulb"], state, "Ada", Level::Leader, 0);
    let rare = |standing| {
        move |cell: &mut Cell| {
            let only = |state: &str| vec![state.to_owned()];
            cell.rare_standing = standing;
            cell.value = Value::States {
                always: Vec::new(),
                usually: only("one"),
                sometimes: only("three"),
                rarely: Vec::new(),
            };
        }
    };
    let remembered = rare(Standing::Remembered);
    assert_eq!(contributed(TARGET, "bulb", remembered, bulb("three")), 1e6);
    assert!(contributed(TARGET, "bulb", remembered, bulb("one")) < 1e5);
    assert!(contributed(TARGET, "bulb", rare(Standing::Published), bulb("three")) < 1e6);
}

#[test]
fn an_organ_out_of_season_never_speaks_for_the_plant() {
    let month = |number| Month::new(number).unwrap();
    let summer = Season::new(month(6), month(8));
    let matrix = with_target(|taxon| {
        taxon.seasons.insert(Organ::Flower, summer);
    });
    let bract = case(read(&["bract"], "one", "Ada", Level::Leader, 0));
    let none = judged(&sample::matrix(), &case(Vec::new())).bar.left;
    let verdict = judged(&matrix, &bract);
    assert_eq!(verdict.bar.left, none);
    assert!(verdict.reasons.iter().any(|reason| reason.id == "identify-out-of-season"));
    assert!(judged(&sample::matrix(), &bract).bar.left < none);
}
