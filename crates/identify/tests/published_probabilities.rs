//! Identification by tables of frequencies, against worked examples.
//!
//! Method: Willcox, Lapage, Bascomb & Curtis 1973, *Identification of bacteria by computer: theory
//! and programming*, Journal of General Microbiology 77:317–330. The examples are worked in exact
//! rational arithmetic, with 1 % and 99 % for never and always as usual in that field; the fractions
//! stand beside them, so that anybody can repeat them.

#![expect(clippy::unwrap_used, reason = "in a test a panic is the report")]

use ground::{Finite, Harm, Organ, Standing};
use identify::{
    Case, Cell, Character, Judge, Kind, Level, Look, Material, Matrix, Next, Outcome, Priors, Rank,
    Reader, Relatives, RelativesStatement, Seen, Sense, Spoils, State, Strictness, Taxon, Tool,
    Value, foreign,
};
use jiff::civil::date;
use std::collections::BTreeMap;

/// Logarithms are taken and undone, at an error of a few units in the sixteenth place each.
const CLOSE: f64 = 1e-12;

fn finite(value: f64) -> Finite {
    Finite::new(value).unwrap()
}

fn look(character: &str, state: &str, misread: f64) -> Look {
    Look {
        character: character.to_owned(),
        seen: Seen::State(state.to_owned()),
        reader: Reader { name: "Ada".to_owned(), level: Level::Misreads(finite(misread)) },
        time: date(2026, 5, 1).at(10, 0, 0, 0),
        specimen: "A".to_owned(),
        blind: true,
    }
}

fn case(looks: Vec<Look>) -> Case {
    Case {
        specimen: "A".to_owned(),
        place: "bench".to_owned(),
        day: date(2026, 5, 1),
        region: None,
        material: Material::Living,
        strictness: Strictness::least(),
        looks,
    }
}

fn chances(judge: &Judge<'_>, looks: Vec<Look>, priors: &Priors) -> BTreeMap<String, f64> {
    let posterior = judge.posterior(&case(looks), priors).unwrap();
    let name = |taxon: Option<String>| taxon.unwrap_or_else(|| "none".to_owned());
    posterior.into_iter().map(|chance| (name(chance.taxon), chance.chance.get())).collect()
}

fn priors(none: f64, of: &[(&str, f64)]) -> Priors {
    let of = of.iter().map(|(name, weight)| ((*name).to_owned(), finite(*weight)));
    Priors { none_of_these: finite(none), of: of.collect() }
}

fn entropy(chances: &BTreeMap<String, f64>) -> f64 {
    -chances.values().filter(|p| **p > 0.0).map(|p| p * libm::log2(*p)).sum::<f64>()
}

/// Per cent positive in six tests; observed + − + + − +.
const SIX_TESTS: &str = "\
taxon,T1,T2,T3,T4,T5,T6
A,95,2,100,80,10,50
B,90,5,97,15,12,40
C,3,98,99,70,0,60
D,50,50,20,90,95,5
E,99,1,85,78,30,92
";

fn six_looks() -> Vec<Look> {
    let seen = ["+", "-", "+", "+", "-", "+"];
    let looks = seen.iter().zip(1..).map(|(state, at)| look(&format!("T{at}"), state, 0.0));
    looks.collect()
}

#[test]
fn the_score_of_five_taxa_on_six_tests() {
    let matrix = foreign::read_csv(SIX_TESTS).unwrap();
    let judge = Judge::new(&matrix);
    let none = Priors::equal(Finite::ZERO);
    let all = chances(&judge, six_looks(), &none);
    let without_t6 = chances(&judge, six_looks().drain(..5).collect(), &none);
    let known = [("A", 0.5), ("B", 0.3), ("C", 0.1), ("D", 0.05), ("E", 0.05)];
    let weighted = chances(&judge, six_looks(), &priors(0.0, &known));
    let table = [
        ("A", 0.417667033189, 0.539255326360, 0.829540948884),
        ("B", 0.055120683292, 0.088958786831, 0.065686099626),
        ("C", 0.000310895010, 0.000334500484, 0.000123495570),
        ("D", 0.000141610463, 0.001828351067, 0.0000281256764),
        ("E", 0.526759778046, 0.369623035258, 0.104621330244),
    ];
    for (taxon, equal, less, prior) in table {
        // The table gives twelve decimals.
        assert!((all[taxon] - equal).abs() < CLOSE, "{taxon}");
        assert!((without_t6[taxon] - less).abs() < CLOSE, "{taxon}");
        assert!((weighted[taxon] - prior).abs() < CLOSE, "{taxon}");
    }
    assert!((all["A"] - 1_645_875.0 / 3_940_639.0).abs() < CLOSE);
}

#[test]
fn the_likeliest_of_five_taxa_is_not_yet_determined() {
    let matrix = foreign::read_csv(SIX_TESTS).unwrap();
    let judge = Judge::new(&matrix);
    let verdicts = judge.verdicts(&case(six_looks()), 2).unwrap();
    let got: Vec<_> = verdicts.iter().map(|v| (v.target.as_str(), v.outcome.clone())).collect();
    assert_eq!(got, [("E", Outcome::NotYet), ("A", Outcome::NotYet)]);
    assert_eq!(verdicts[0].bar.rivals[0].name, "A");
}

/// Shares of three plants in four characters, in per cent.
const FOUR_CHARACTERS: &str = r#"
[[taxon]]
name = "wanted"
harm = "none"
relatives = "all-listed"
characters.smell = { a = 90, b = 10 }
characters.vein = { a = 95, b = 5 }
characters.stalk = { a = 98, b = 2 }
characters.bract = { a = 70, b = 20, c = 10 }

[[taxon]]
name = "mild"
harm = "irritant"
characters.smell = { a = 30, b = 70 }
characters.vein = { a = 20, b = 80 }
characters.stalk = { a = 90, b = 10 }

[[taxon]]
name = "deadly"
harm = "deadly"
characters.smell = { a = 2, b = 98 }
characters.vein = { a = 5, b = 95 }
characters.stalk = { a = 1, b = 99 }
characters.bract = { a = 10, b = 20, c = 70 }
"#;

/// Of the errors e that the example spreads over all states, e(S − 1)/S are wrong reports.
fn two_looks() -> Vec<Look> {
    vec![look("smell", "a", 0.2 / 2.0), look("vein", "a", 0.1 / 2.0)]
}

fn three_plants() -> Priors {
    priors(0.02, &[("wanted", 0.6), ("mild", 0.3), ("deadly", 0.1)])
}

#[test]
fn chances_with_misreading_unknown_cells_and_none_of_these() {
    let matrix = foreign::read_toml(FOUR_CHARACTERS).unwrap();
    let judge = Judge::new(&matrix);
    let first = chances(&judge, two_looks().drain(..1).collect(), &three_plants());
    let both = chances(&judge, two_looks(), &three_plants());
    let table = [
        ("wanted", 0.7989554059, 0.9375393994),
        ("mild", 0.1656370963, 0.04939737302),
        ("deadly", 0.01883715998, 0.00232037106),
        ("none", 0.01657033777, 0.01074285649),
    ];
    for (taxon, one, two) in table {
        // Ten significant digits are given.
        assert!((first[taxon] - one).abs() < 1e-10 && (both[taxon] - two).abs() < 1e-10, "{taxon}");
    }
    assert!((entropy(&first) - 0.8943185244).abs() < 1e-9);
    assert!((entropy(&both) - 0.3921629176).abs() < 1e-9);
}

#[test]
fn what_the_next_look_would_tell() {
    let matrix = foreign::read_toml(FOUR_CHARACTERS).unwrap();
    let judge = Judge::new(&matrix);
    let bits = |character: &str, misread: f64| {
        let level = Level::Misreads(finite(misread));
        let all = judge.most_telling(&case(two_looks()), &three_plants(), level).unwrap();
        all.iter().find(|telling| telling.character == character).unwrap().bits.get()
    };
    assert!((bits("stalk", 0.05 / 2.0) - 0.02493714339).abs() < 1e-9);
    assert!((bits("bract", 0.1 * 2.0 / 3.0) - 0.02305118621).abs() < 1e-9);
}

/// One step ahead every look of this example lowers the expected harm by nothing, since no single
/// answer can turn *leave it* into *eat it*; not even both together can. So the search must look to
/// the end and then say so.
#[test]
fn a_search_to_the_end_says_that_nothing_left_can_settle_it() {
    let matrix = foreign::read_toml(FOUR_CHARACTERS).unwrap();
    let judge = Judge::new(&matrix);
    let means = identify::Means::all(Level::Leader);
    let Next::CannotSettle { why } = judge.next("wanted", &case(two_looks()), &means).unwrap()
    else {
        panic!("nothing left can settle it");
    };
    assert!(!why.is_empty());
    let more = [look("stalk", "a", 0.025), look("bract", "a", 0.2 / 3.0)];
    let looks = two_looks().into_iter().chain(more).collect::<Vec<_>>();
    let all = chances(&judge, looks.clone(), &three_plants());
    assert!((all["wanted"] - 0.97333087).abs() < 1e-8 && (all["deadly"] - 0.00001616).abs() < 1e-8);
    let verdict = judge.verdict("wanted", &case(looks)).unwrap();
    assert_eq!(verdict.outcome, Outcome::NotYet);
    // The deadly plant alone weighs a million times its odds, which are these over equal priors.
    let odds = all["deadly"] / all["wanted"] * 0.6 / 0.1;
    let deadly = verdict.bar.rivals.iter().find(|rival| rival.name == "deadly").unwrap();
    assert!((deadly.contributes.get() / (1e6 * odds) - 1.0).abs() < 1e-9);
}

/// A state, and how often it was seen with play and without.
type Counts = (&'static str, f64, f64);

/// Quinlan 1986, *Induction of decision trees*, Machine Learning 1:81–106: fourteen mornings, by
/// whether there was play.
fn mornings() -> Matrix {
    let counts: [(&str, &[Counts]); 4] = [
        ("outlook", &[("sunny", 2.0, 3.0), ("overcast", 4.0, 0.0), ("rain", 3.0, 2.0)]),
        ("temperature", &[("hot", 2.0, 2.0), ("mild", 4.0, 2.0), ("cool", 3.0, 1.0)]),
        ("humidity", &[("high", 3.0, 4.0), ("normal", 6.0, 1.0)]),
        ("windy", &[("true", 3.0, 3.0), ("false", 6.0, 2.0)]),
    ];
    let mut cells = Vec::new();
    let mut characters = Vec::new();
    for (id, states) in counts {
        let shares = |of: fn(&Counts) -> f64| {
            let total: f64 = states.iter().map(of).sum();
            Value::Shares(states.iter().map(|row| (row.0.to_owned(), of(row) / total)).collect())
        };
        cells.push(("play".to_owned(), id.to_owned(), cell(shares(|row| row.1))));
        cells.push(("no play".to_owned(), id.to_owned(), cell(shares(|row| row.2))));
        characters.push(character(id, states.iter().map(|row| row.0)));
    }
    Matrix::new(characters, vec![taxon("play"), taxon("no play")], cells).unwrap()
}

fn cell(value: Value) -> Cell {
    let published = Standing::Published;
    let from = Rank::Species;
    Cell { value, standing: published, rare_standing: published, from, sources: Vec::new() }
}

fn character<'a>(id: &str, states: impl Iterator<Item = &'a str>) -> Character {
    let state = |id: &str| State { id: id.to_owned(), kind_of: None, taken_for: Vec::new() };
    Character {
        id: id.to_owned(),
        kind: Kind::States(states.map(state).collect()),
        organ: Organ::Whole,
        group: id.to_owned(),
        sense: Sense::Sight,
        tool: Tool::None,
        spoils: Spoils::Nothing,
        seconds: 1,
    }
}

fn taxon(name: &str) -> Taxon {
    Taxon {
        name: name.to_owned(),
        harm: Harm::None,
        regions: Vec::new(),
        relatives: Relatives {
            statement: RelativesStatement::AllListed,
            standing: Standing::Published,
        },
        aggregate: None,
        seasons: BTreeMap::new(),
        look_alikes: Vec::new(),
        must_look: Vec::new(),
    }
}

fn fourteen() -> Priors {
    priors(0.0, &[("play", 9.0), ("no play", 5.0)])
}

#[test]
fn what_each_character_of_the_fourteen_mornings_tells() {
    let matrix = mornings();
    let judge = Judge::new(&matrix);
    let exact = Level::Misreads(Finite::ZERO);
    let before = chances(&judge, Vec::new(), &fourteen());
    assert!((entropy(&before) - 0.940285959).abs() < 1e-9);
    let told = judge.most_telling(&case(Vec::new()), &fourteen(), exact).unwrap();
    let got: Vec<_> = told.iter().map(|t| (t.character.as_str(), t.bits.get())).collect();
    let gains = [
        ("outlook", 0.246749820),
        ("humidity", 0.151835501),
        ("windy", 0.048127030),
        ("temperature", 0.029222566),
    ];
    for (got, want) in got.iter().zip(gains) {
        assert!(got.0 == want.0 && (got.1 - want.1).abs() < 1e-9, "{got:?} {want:?}");
    }
}

/// Witten & Frank, *Data Mining*, chapter 4: a sunny, cool, humid and windy morning, 20.5 % to
/// 79.5 %; exactly 125/611.
#[test]
fn play_on_a_sunny_cool_humid_and_windy_morning() {
    let matrix = mornings();
    let judge = Judge::new(&matrix);
    let seen =
        [("outlook", "sunny"), ("temperature", "cool"), ("humidity", "high"), ("windy", "true")];
    let looks = seen.map(|(character, state)| look(character, state, 0.0));
    let got = chances(&judge, looks.to_vec(), &fourteen());
    assert!((got["play"] - 125.0 / 611.0).abs() < CLOSE);
}
