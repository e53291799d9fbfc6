//! One case for each rule of judging, on the invented table.

mod cells;

use crate::{
    Case, Determination, Judge, Level, Look, LookAlike, Material, Matrix, Means, MustLookState,
    Next, Outcome, Reader, RelativesStatement, Seen, Spoils, Strictness, Taxon, Verdict, sample,
};
use ground::{Finite, Harm, Region, Standing};
use jiff::civil::date;

pub(crate) const TARGET: &str = "Allium ursinum";
pub(crate) const SIX: [&str; 6] = ["smell", "base", "vein", "stem", "bulb", "bract"];

fn read(characters: &[&str], state: &str, name: &str, level: Level, minute: i8) -> Vec<Look> {
    let look = |character: &&str| Look {
        reader: Reader { name: name.to_owned(), level },
        time: date(2026, 5, 1).at(10, minute, 0, 0),
        ..sample::look(character, Seen::State(state.to_owned()))
    };
    characters.iter().map(look).collect()
}

/// The leader Ada reads all six characters as the target shows them; Ben reads those below ground
/// and on the leaf again.
pub(crate) fn typical() -> Vec<Look> {
    let mut looks = read(&SIX, "one", "Ada", Level::Leader, 0);
    looks.extend(read(&["base", "vein", "stem", "bulb"], "one", "Ben", Level::Trained, 5));
    looks
}

pub(crate) fn case(looks: Vec<Look>) -> Case {
    Case {
        specimen: "A".to_owned(),
        place: "wood".to_owned(),
        day: date(2026, 5, 1),
        region: Some(Region::Europe),
        material: Material::Living,
        strictness: Strictness::least(),
        looks,
    }
}

fn judged(matrix: &Matrix, case: &Case) -> Verdict {
    Judge::new(matrix).verdict(TARGET, case).unwrap()
}

fn outcome(looks: Vec<Look>) -> Outcome {
    judged(&sample::matrix(), &case(looks)).outcome
}

/// The table with something changed in its taxa.
fn with_taxa(change: impl Fn(&mut Vec<Taxon>)) -> Matrix {
    let matrix = sample::matrix();
    let mut taxa = matrix.taxa().to_vec();
    change(&mut taxa);
    let known = |name: &str| taxa.iter().any(|taxon| taxon.name == name);
    let cells = matrix.cells().filter(|(taxon, ..)| known(&taxon.name));
    let cells: Vec<_> =
        cells.map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone())).collect();
    Matrix::new(matrix.characters().to_vec(), taxa, cells).unwrap()
}

pub(crate) fn with_target(change: impl Fn(&mut Taxon)) -> Matrix {
    with_taxa(|taxa| change(&mut taxa[0]))
}

/// The table, these characters of the target only remembered.
pub(crate) fn remembered(characters: &[&str]) -> Matrix {
    let matrix = sample::matrix();
    let cells = matrix.cells().map(|(taxon, character, cell)| {
        let fades = taxon.name == TARGET && characters.contains(&character.id.as_str());
        let standing = if fades { Standing::Remembered } else { cell.standing };
        (taxon.name.clone(), character.id.clone(), crate::Cell { standing, ..cell.clone() })
    });
    let cells: Vec<_> = cells.collect();
    Matrix::new(matrix.characters().to_vec(), matrix.taxa().to_vec(), cells).unwrap()
}

fn species() -> Outcome {
    Outcome::Determined { level: Determination::Species, twins: Vec::new() }
}

fn ids(verdict: &Verdict) -> Vec<&str> {
    verdict
        .reasons
        .iter()
        .map(|text| text.id.split_once('-').map_or("", |(_, name)| name))
        .collect()
}

#[test]
fn a_typical_plant_read_by_two_is_determined_for_the_day() {
    let verdict = judged(&sample::matrix(), &case(typical()));
    assert_eq!(verdict.outcome, species());
    assert_eq!(ids(&verdict), ["determined", "told-apart", "lapses"]);
    assert!(verdict.bar.left <= verdict.bar.allowed);
    assert!(verdict.posterior[0].taxon.as_deref() == Some(TARGET));
}

#[test]
fn nothing_looked_at_is_not_yet() {
    let verdict = judged(&sample::matrix(), &case(Vec::new()));
    assert_eq!(verdict.outcome, Outcome::NotYet);
    assert!(ids(&verdict).contains(&"no-looks") && ids(&verdict).contains(&"tells-open"));
}

#[test]
fn a_deadly_look_alike_calls_for_a_second_reading() {
    let alone = read(&SIX, "one", "Ada", Level::Leader, 0);
    let verdict = judged(&sample::matrix(), &case(alone.clone()));
    assert_eq!(verdict.outcome, Outcome::NotYet);
    assert_eq!(ids(&verdict), ["not-yet", "second-reading-open"]);
    let again = |minute, blind| {
        let mut more = read(&["base", "bulb"], "one", "Ada", Level::Leader, minute);
        more.iter_mut().for_each(|look| look.blind = blind);
        outcome([alone.clone(), more].concat())
    };
    assert_eq!(again(9, true), Outcome::NotYet);
    assert_eq!(again(10, false), Outcome::NotYet);
    assert_eq!(again(10, true), species());
    let trained = |looks: Vec<Look>| {
        let mut looks = looks;
        looks.iter_mut().for_each(|look| look.reader.level = Level::Trained);
        looks
    };
    let more = read(&["base", "bulb"], "one", "Ada", Level::Trained, 30);
    assert_eq!(outcome([trained(alone), more].concat()), Outcome::NotYet);
}

#[test]
fn tells_must_lie_in_two_organs() {
    let leaf = ["smell", "base", "vein"];
    let looks =
        [read(&leaf, "one", "Ada", Level::Leader, 0), read(&leaf, "one", "Ben", Level::Leader, 1)];
    let verdict = judged(&sample::matrix(), &case(looks.concat()));
    assert!(!verdict.tells[0].met && verdict.tells[0].characters.len() == 3);
}

#[test]
fn must_looks_are_the_tells_of_dangerous_look_alikes_unless_the_sheet_says_others() {
    let names = |verdict: &Verdict| -> Vec<String> {
        verdict.must_looks.iter().map(|must| must.character.clone()).collect()
    };
    let derived = judged(&sample::matrix(), &case(typical()));
    assert_eq!(names(&derived), ["base", "bulb", "smell", "stem"]);
    let said = with_target(|taxon| taxon.must_look = vec!["bract".to_owned()]);
    assert_eq!(names(&judged(&said, &case(typical()))), ["bract"]);
    let open = typical().into_iter().filter(|look| look.character != "bract").collect();
    let verdict = judged(&said, &case(open));
    assert_eq!(verdict.must_looks[0].state, MustLookState::Open);
    assert_eq!(verdict.outcome, Outcome::NotYet);
}

#[test]
fn a_must_look_that_disagrees_blocks() {
    let mut looks = typical();
    looks.retain(|look| look.character != "stem");
    looks.extend(read(&["stem"], "three", "Ada", Level::Leader, 0));
    let verdict = judged(&sample::matrix(), &case(looks));
    let stem = verdict.must_looks.iter().find(|must| must.character == "stem").unwrap();
    assert_ne!(stem.state, MustLookState::Done);
    assert_eq!(verdict.outcome, Outcome::NotYet);
}

#[test]
fn readings_that_contradict_each_other_are_named() {
    let mut looks = typical();
    assert!(!ids(&judged(&sample::matrix(), &case(looks.clone()))).contains(&"contradict"));
    looks.extend(read(&["bract"], "two", "Ben", Level::Trained, 5));
    let verdict = judged(&sample::matrix(), &case(looks));
    let found = verdict.reasons.iter().find(|reason| reason.id == "identify-contradict").unwrap();
    let arg = |name: &str| found.args.get(name).cloned();
    assert_eq!(arg("character"), Some("bract".into()));
    assert_eq!((arg("first"), arg("second")), (Some("Ada".into()), Some("Ben".into())));
    assert_eq!(verdict.outcome, Outcome::NotYet);
}

#[test]
fn the_plant_of_the_look_alike_is_ruled_out() {
    let looks = read(&SIX, "two", "Ada", Level::Leader, 0);
    let verdict = judged(&sample::matrix(), &case(looks));
    assert_eq!(verdict.outcome, Outcome::RuledOut);
    assert_eq!(verdict.posterior[0].taxon.as_deref(), Some("Colchicum autumnale"));
}

#[test]
fn photographs_and_bought_chopped_and_dried_plants_are_never_determined() {
    for material in [Material::Photograph, Material::Bought, Material::Chopped, Material::Dried] {
        let case = Case { material, ..case(typical()) };
        let verdict = judged(&sample::matrix(), &case);
        assert_eq!(verdict.outcome, Outcome::NotYet);
        let next = Judge::new(&sample::matrix()).next(TARGET, &case, &Means::all(Level::Leader));
        assert!(matches!(next.unwrap(), Next::CannotSettle { .. }));
    }
}

#[test]
fn looks_of_another_day_and_at_another_plant_do_not_count() {
    let stale = Case { day: date(2026, 5, 2), ..case(typical()) };
    let verdict = judged(&sample::matrix(), &stale);
    assert_eq!(verdict.outcome, Outcome::NotYet);
    assert!(ids(&verdict).contains(&"looks-of-another-day"));
    let other = Case { specimen: "B".to_owned(), ..case(typical()) };
    assert!(ids(&judged(&sample::matrix(), &other)).contains(&"no-looks"));
}

#[test]
fn a_smell_met_at_another_plant_taints_the_later_one() {
    let fresh = judged(&sample::matrix(), &case(typical()));
    let mut looks = typical();
    looks.push(Look {
        specimen: "earlier".to_owned(),
        time: date(2026, 5, 1).at(9, 0, 0, 0),
        ..sample::look("smell", Seen::State("one".to_owned()))
    });
    let tainted = judged(&sample::matrix(), &case(looks));
    assert!(tainted.bar.left.get() > fresh.bar.left.get());
    let smells =
        |verdict: &Verdict| verdict.tells[0].characters.iter().any(|t| t.character == "smell");
    assert!(smells(&fresh) && !smells(&tainted));
}

#[test]
fn a_look_alike_without_a_sheet_cannot_be_ruled_out() {
    let alike = LookAlike { name: "Crocus".to_owned(), tells: Vec::new(), confirmed: false };
    let matrix = with_target(|taxon| taxon.look_alikes.push(alike.clone()));
    let verdict = judged(&matrix, &case(typical()));
    assert_eq!(verdict.outcome, Outcome::NotYet);
    assert!(ids(&verdict).contains(&"no-sheet"));
    assert!(verdict.bar.left.get() >= 1e6);
}

#[test]
fn unlisted_relatives_of_unknown_kind_stay_in_the_way() {
    let relatives = |statement, standing| {
        let matrix = with_target(|taxon| {
            taxon.relatives.statement = statement;
            taxon.relatives.standing = standing;
        });
        judged(&matrix, &case(typical())).outcome
    };
    let remembered = relatives(RelativesStatement::AllListed, Standing::Remembered);
    assert_eq!(remembered, Outcome::NotYet);
    let unknown = relatives(RelativesStatement::UnlistedUnknown, Standing::Published);
    assert_eq!(unknown, Outcome::NotYet);
    let alike = relatives(RelativesStatement::UnlistedAlike, Standing::Published);
    assert_eq!(alike, Outcome::Determined { level: Determination::OrAlike, twins: Vec::new() });
}

#[test]
fn one_determines_to_the_aggregate_and_its_members_are_no_rivals() {
    let matrix = with_taxa(|taxa| {
        taxa[0].aggregate = Some("Allium agg.".to_owned());
        let mut member = taxa[0].clone();
        member.name = "Allium zebdanense".to_owned();
        taxa.push(member);
    });
    let level = Determination::Aggregate("Allium agg.".to_owned());
    let determined = Outcome::Determined { level, twins: Vec::new() };
    assert_eq!(judged(&matrix, &case(typical())).outcome, determined);
}

#[test]
fn a_harmless_twin_is_determined_together_with_the_target() {
    let matrix = with_taxa(|taxa| {
        let twin = LookAlike { name: "Zigadenus".to_owned(), tells: Vec::new(), confirmed: false };
        taxa[0].look_alikes.push(twin);
        taxa.push(sample::taxon("Zigadenus", Harm::None, &[]));
    });
    let twins = vec!["Zigadenus".to_owned()];
    let determined = Outcome::Determined { level: Determination::Species, twins };
    assert_eq!(judged(&matrix, &case(typical())).outcome, determined);
}

#[test]
fn what_grows_elsewhere_is_a_rival_only_when_it_is_named() {
    let matrix = with_taxa(|taxa| {
        let mut far = sample::taxon("Zigadenus", Harm::Deadly, &[]);
        far.regions = vec![Region::NorthAmerica];
        taxa.push(far);
    });
    assert_eq!(judged(&matrix, &case(typical())).outcome, species());
    let anywhere = Case { region: None, ..case(typical()) };
    assert_eq!(judged(&matrix, &anywhere).outcome, Outcome::NotYet);
}

#[test]
fn a_stricter_school_asks_for_more() {
    let strict = Case { strictness: Strictness::times(100.0).unwrap(), ..case(typical()) };
    let verdict = judged(&sample::matrix(), &strict);
    assert_eq!(verdict.outcome, Outcome::NotYet);
    assert_eq!(verdict.bar.allowed, Finite::new(0.01).unwrap());
}

#[test]
fn the_same_reader_reading_again_gains_nothing_and_the_less_favourable_stands() {
    let matrix = sample::matrix();
    let once = read(&["base"], "one", "Ada", Level::Leader, 0);
    let again = [once.clone(), read(&["base"], "one", "Ada", Level::Leader, 30)].concat();
    let left = |looks: Vec<Look>| judged(&matrix, &case(looks)).bar.left;
    assert_eq!(left(once.clone()), left(again));
    let wavering = [once.clone(), read(&["base"], "two", "Ada", Level::Leader, 30)].concat();
    let other = read(&["base"], "two", "Ada", Level::Leader, 30);
    let deadly = |looks: Vec<Look>| {
        let bar = judged(&matrix, &case(looks)).bar;
        bar.rivals.into_iter().find(|rival| rival.name.starts_with("Colchicum")).unwrap()
    };
    assert_eq!(deadly(wavering).contributes, deadly(other).contributes);
    let both = [once.clone(), read(&["base"], "one", "Ben", Level::Leader, 5)].concat();
    assert!(left(both) < left(once));
}

#[test]
fn the_offered_looks_settle_it_when_the_plant_is_typical() {
    let matrix = sample::matrix();
    let judge = Judge::new(&matrix);
    let means = Means::all(Level::Leader);
    let Next::Look(plan) = judge.next(TARGET, &case(Vec::new()), &means).unwrap() else {
        panic!("it can be settled");
    };
    let first: Vec<&str> = plan.looks.iter().map(|offer| offer.character.as_str()).collect();
    let again: Vec<&str> = plan.again.iter().map(String::as_str).collect();
    let ada = read(&first, "one", "Ada", Level::Leader, 0);
    let ben = read(&again, "one", "Ben", Level::Leader, 5);
    let settled = case([ada, ben].concat());
    assert_eq!(judge.verdict(TARGET, &settled).unwrap().outcome, species());
    assert_eq!(judge.next(TARGET, &settled, &means).unwrap(), Next::Settled);
}

#[test]
fn without_leave_to_dig_or_cut_it_may_not_be_settled() {
    let mut characters = sample::matrix().characters().to_vec();
    for character in &mut characters {
        if ["bulb", "stem", "bract"].contains(&character.id.as_str()) {
            character.spoils = Spoils::Stem;
        }
    }
    let known = sample::matrix();
    let cells = known.cells().map(|(t, c, cell)| (t.name.clone(), c.id.clone(), cell.clone()));
    let matrix = Matrix::new(characters, known.taxa().to_vec(), cells).unwrap();
    let means = Means { may_spoil: Spoils::Nothing, ..Means::all(Level::Leader) };
    let next = Judge::new(&matrix).next(TARGET, &case(Vec::new()), &means).unwrap();
    let Next::CannotSettle { why } = next else {
        panic!("one organ is too little");
    };
    assert!(why.iter().any(|text| text.id == "identify-cannot-must-look"));
}

#[test]
fn a_verdict_shows_its_working_down_to_looks_and_sources() {
    let verdict = judged(&sample::matrix(), &case(typical()));
    let leaves = verdict.working.leaves();
    let has = |id: &str| leaves.iter().any(|leaf| leaf.what.id == id);
    assert!(has("identify-working-look") && has("identify-working-sheet"));
    let text = serde_json::to_string(&verdict).unwrap();
    assert_eq!(serde_json::from_str::<Verdict>(&text).unwrap(), verdict);
}

#[test]
fn a_plant_that_strains_without_misfitting_is_not_ruled_out() {
    // Every state was seen that the target's own is taken for: a far likelier plant shows them.
    let verdict = judged(&sample::matrix(), &case(read(&SIX, "three", "Ada", Level::Leader, 0)));
    assert_eq!(verdict.posterior[0].taxon.as_deref(), Some("Mentha pulegium"));
    assert_eq!(verdict.outcome, Outcome::NotYet);
}

#[test]
fn a_look_alike_is_a_rival_whichever_sheet_names_it() {
    let matrix = with_taxa(|taxa| {
        let names = sample::taxon("Zigadenus", Harm::Deadly, &[(TARGET, &[])]);
        taxa.push(Taxon { regions: vec![Region::NorthAmerica], ..names });
    });
    assert_eq!(judged(&matrix, &case(typical())).outcome, Outcome::NotYet);
}

#[test]
fn where_a_plant_grows_is_unknown_it_may_grow_here() {
    let matrix = with_taxa(|taxa| {
        let anywhere = sample::taxon("Zigadenus", Harm::Deadly, &[]);
        taxa.push(Taxon { regions: Vec::new(), ..anywhere });
    });
    assert_eq!(judged(&matrix, &case(typical())).outcome, Outcome::NotYet);
}

#[test]
fn a_member_of_the_aggregate_that_does_more_harm_is_a_rival() {
    let matrix = with_taxa(|taxa| {
        taxa[0].aggregate = Some("Allium agg.".to_owned());
        let mut member = taxa[0].clone();
        member.name = "Allium zebdanense".to_owned();
        member.harm = Harm::Harmful;
        taxa.push(member);
    });
    assert_eq!(judged(&matrix, &case(typical())).outcome, Outcome::NotYet);
}

#[test]
fn a_deadly_rival_that_nobody_names_calls_for_a_second_reading_while_it_weighs() {
    let matrix = with_taxa(|taxa| {
        taxa[0].look_alikes.clear();
        taxa[2].harm = Harm::Deadly;
    });
    let three = |name, minute| read(&SIX[..3], "one", name, Level::Leader, minute);
    let called = |looks: Vec<Look>| {
        let second = judged(&matrix, &case(looks)).second_reading;
        second.into_iter().map(|second| (second.against, second.had)).collect::<Vec<_>>()
    };
    let open = called(three("Ada", 0));
    assert_eq!(open.len(), 2);
    assert!(open.contains(&("Mentha pulegium".to_owned(), false)));
    let both = [three("Ada", 0), three("Ben", 5)].concat();
    assert!(called(both).iter().all(|(_, had)| *had));
    assert_eq!(called(read(&SIX, "one", "Ada", Level::Leader, 0)), []);
}
