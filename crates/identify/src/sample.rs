//! A tiny invented table for the tests beside the code.

use crate::{
    Cell, Character, Kind, Level, Look, LookAlike, Matrix, Rank, Reader, Relatives,
    RelativesStatement, Seen, Sense, Spoils, State, Taxon, Tool, Value,
};
use ground::{Harm, Organ, Region, Standing};
use std::collections::BTreeMap;

/// A character of these states, read by sight in ten seconds, alone in its group.
pub(crate) fn character(id: &str, states: &[&str]) -> Character {
    let state = |id: &&str| State { id: (*id).to_owned(), kind_of: None, taken_for: Vec::new() };
    Character {
        id: id.to_owned(),
        kind: Kind::States(states.iter().map(state).collect()),
        organ: Organ::Leaf,
        group: id.to_owned(),
        sense: Sense::Sight,
        tool: Tool::None,
        spoils: Spoils::Nothing,
        seconds: 10,
    }
}

/// A taxon of Europe without relatives.
pub(crate) fn taxon(name: &str, harm: Harm, look_alikes: &[(&str, &[&str])]) -> Taxon {
    let alike = |(name, tells): &(&str, &[&str])| LookAlike {
        name: (*name).to_owned(),
        tells: tells.iter().map(|tell| (*tell).to_owned()).collect(),
        confirmed: true,
    };
    Taxon {
        name: name.to_owned(),
        harm,
        regions: vec![Region::Europe],
        relatives: Relatives {
            statement: RelativesStatement::AllListed,
            standing: Standing::Published,
        },
        aggregate: None,
        seasons: BTreeMap::new(),
        look_alikes: look_alikes.iter().map(alike).collect(),
        must_look: Vec::new(),
    }
}

/// Always this state.
pub(crate) fn always(state: &str) -> Value {
    let none = Vec::new;
    Value::States {
        always: vec![state.to_owned()],
        usually: none(),
        sometimes: none(),
        rarely: none(),
    }
}

/// A published cell of a species' own sheet.
pub(crate) fn cell(value: Value) -> Cell {
    Cell {
        value,
        standing: Standing::Published,
        rare_standing: Standing::Published,
        from: Rank::Species,
        sources: vec!["flora".into()],
    }
}

/// A look by the leader Ada at the specimen `A` on the first of May, candidates hidden.
pub(crate) fn look(character: &str, seen: Seen) -> Look {
    Look {
        character: character.to_owned(),
        seen,
        reader: Reader { name: "Ada".to_owned(), level: Level::Leader },
        time: jiff::civil::date(2026, 5, 1).at(10, 0, 0, 0),
        specimen: "A".to_owned(),
        blind: true,
    }
}

/// States of which the first is taken for the last.
fn taken_for_three(id: &str, names: &[&str]) -> Vec<State> {
    let Kind::States(mut states) = character(id, names).kind else {
        return Vec::new();
    };
    states[0].taken_for = vec!["three".to_owned()];
    states
}

/// Three invented descriptions under real names, each character telling all three apart.
pub(crate) fn matrix() -> Matrix {
    let states = ["one", "two", "three"];
    let organs = [
        ("smell", Organ::Leaf, Sense::Smell),
        ("base", Organ::Leaf, Sense::Sight),
        ("vein", Organ::Leaf, Sense::Sight),
        ("stem", Organ::Stem, Sense::Sight),
        ("bulb", Organ::Underground, Sense::Sight),
        ("bract", Organ::Flower, Sense::Sight),
    ];
    let characters = organs.map(|(id, organ, sense)| Character {
        organ,
        sense,
        kind: Kind::States(taken_for_three(id, &states)),
        ..character(id, &states)
    });
    let tells: &[&str] = &["smell", "base", "stem", "bulb"];
    let taxa = [
        taxon("Allium ursinum", Harm::None, &[("Colchicum autumnale", tells)]),
        taxon("Colchicum autumnale", Harm::Deadly, &[]),
        taxon("Mentha pulegium", Harm::Harmful, &[]),
    ];
    let cells = taxa.iter().zip(states).flat_map(|(taxon, state)| {
        let row = organs.map(|(id, _, _)| (taxon.name.clone(), id.to_owned(), cell(always(state))));
        row.into_iter()
    });
    let cells: Vec<_> = cells.collect();
    Matrix::new(characters.to_vec(), taxa.to_vec(), cells).unwrap()
}
