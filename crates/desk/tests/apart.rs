//! What tells a plant from its twins, held against the rule in plain words for every plant that is gathered.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a test reports by panicking")]

use desk::{ApartOrder, ApartReply, Reply, Request, World, answer};
use ground::{Harm, Month};
use identify::sets::{Between, Reach};
use identify::{Level, Sense};

fn world() -> World {
    let now = jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0);
    World::new(herbal_data::herbal(), herbal_data::version().to_owned(), now)
}

fn apart(world: &World, plant: &str, month: Option<u8>) -> ApartReply {
    let order = ApartOrder {
        plant: plant.to_owned(),
        region: None,
        month: month.and_then(Month::new),
        level: Level::Trained,
    };
    match answer(world, Request::Apart(order)).unwrap() {
        Reply::Apart(reply) => *reply,
        _ => panic!("another reply"),
    }
}

/// Whether two characters of a set tell a twin apart as the rule asks.
fn does(world: &World, set: &[String], twin: &Between) -> bool {
    let matrix = world.herbal().flora.matrix().unwrap();
    let tells: Vec<_> = set.iter().filter(|id| twin.tells.contains(id)).collect();
    let tells: Vec<_> = tells.into_iter().map(|id| matrix.character(id).unwrap()).collect();
    tells.iter().any(|a| {
        tells.iter().any(|b| {
            let both_smelt = a.sense == Sense::Smell && b.sense == Sense::Smell;
            a.group != b.group && (!twin.dangerous || (a.organ != b.organ && !both_smelt))
        })
    })
}

#[test]
fn every_set_of_every_gathered_plant_does_what_the_rule_asks() {
    let world = world();
    let gathered = world.herbal().flora.sheets().filter(|sheet| sheet.is_gathered());
    let (mut plants, mut proved, mut told) = (0, 0, 0);
    for sheet in gathered {
        let reply = apart(&world, &sheet.name, Some(5));
        let smallest = &reply.apart.smallest;
        assert!(smallest.at_least <= smallest.size(), "{}", sheet.name);
        assert!(reply.apart.seconds.is_sorted(), "{}: {:?}", sheet.name, reply.apart.seconds);
        for set in &smallest.sets {
            assert_eq!(set.len(), smallest.size(), "{}", sheet.name);
            let as_asked = |twin: &&Between| twin.reach == Reach::AsAsked;
            for twin in reply.apart.twins.iter().filter(as_asked) {
                assert!(does(&world, set, twin), "{}, {}: {set:?}", sheet.name, twin.twin);
                told += 1;
            }
        }
        plants += 1;
        proved += usize::from(smallest.is_proved());
    }
    assert!(plants > 100 && told > plants, "{plants} plants, {told} told apart");
    assert_eq!(proved, plants, "not proved for all");
}

#[test]
fn twins_are_those_that_either_sheet_names_and_the_worst_come_first() {
    let world = world();
    let flora = &world.herbal().flora;
    let reply = apart(&world, "ramsons", None);
    let names: Vec<_> = reply.twins.iter().map(|twin| twin.name.as_str()).collect();
    let mut own = flora.sheet("Allium ursinum").unwrap().look_alikes.keys();
    assert!(own.all(|name| names.contains(&name.as_str())));
    let mut naming = flora.sheets().filter(|s| s.look_alikes.contains_key("Allium ursinum"));
    assert!(naming.all(|sheet| names.contains(&sheet.name.as_str())));
    let worst = |harm: Option<Harm>| harm.unwrap_or(Harm::Deadly);
    assert!(reply.twins.is_sorted_by(|a, b| worst(a.harm) >= worst(b.harm)));
    assert!(!names.contains(&"Allium ursinum"));
}
