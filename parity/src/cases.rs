//! The requests that both machines answer.

use crate::door::Request;
use desk::{InHandOrder, InputFile, MakeOrder, NameOrder, NextLookOrder, Sum, device};
use ground::{DRAWS, Dist, DistError, RandomStart};
use identify::Level;
use jiff::civil::date;
use std::error::Error;

/// A request and the name it goes by in reports.
#[derive(Clone, Debug)]
pub struct Case {
    /// What it is about, fit for a file name.
    pub name: String,
    /// The request, as JSON.
    pub request: String,
}

macro_rules! demo {
    ($($name:literal),+) => {
        [$(($name, include_str!(concat!("../../demo/", $name)))),+]
    };
}

/// The files of the two outings of the demo; the first of each is that of the day itself.
const SPRING: [(&str, &str); 4] =
    demo!["spring-day.toml", "spring-evening.toml", "spring-people.toml", "spring-health.toml"];
const AUTUMN: [(&str, &str); 4] =
    demo!["autumn-day.toml", "autumn-evening.toml", "autumn-people.toml", "autumn-health.toml"];

/// Every request, in order.
///
/// # Errors
/// When something among them cannot be said, such as a distribution with parameters out of order.
pub fn cases() -> Result<Vec<Case>, Box<dyn Error>> {
    let columns = distributions()?.into_iter().flat_map(|(name, dist)| {
        [1, 1000, DRAWS].map(|draws| (format!("column-{name}-{draws}"), column(name, &dist, draws)))
    });
    let desk = outings().into_iter().chain(plants()?).chain(makes()?).chain(sums()?);
    let desk = desk.map(|(name, request)| {
        let now = date(2027, 4, 30).at(19, 0, 0, 0);
        (name, Request::Desk { now, start: RandomStart(1), request: Box::new(request) })
    });
    columns.chain(desk).map(case).collect()
}

fn case((name, request): (String, Request)) -> Result<Case, Box<dyn Error>> {
    Ok(Case { name, request: serde_json::to_string(&request)? })
}

/// A request to the front door and its name.
type Named = (String, desk::Request);

/// The demo in both tenses: its plans with and without reasons, its allowances, labels and servings;
/// and what is wrong with half of its files.
fn outings() -> Vec<Named> {
    let seasons = [("", &SPRING), ("-autumn", &AUTUMN)];
    seasons.into_iter().flat_map(|(season, demo)| outing(season, demo)).collect()
}

fn outing(season: &str, demo: &[(&str, &str)]) -> Vec<Named> {
    let files = |from: usize| -> Vec<InputFile> {
        let file = |(name, text): &(&str, &str)| InputFile {
            name: (*name).to_owned(),
            text: (*text).to_owned(),
        };
        demo.iter().skip(from).map(file).collect()
    };
    let mut requests = Vec::new();
    for (tense, from) in [("day", 0), ("evening", 1), ("half", 2)] {
        let mut add = |what: &str, request: device::Request| {
            requests.push((format!("{what}-{tense}{season}"), request.into()));
        };
        add("plan", device::Request::Plan { files: files(from), reasons: false });
        add("plan-reasons", device::Request::Plan { files: files(from), reasons: true });
        add("allowance", device::Request::Allowance { files: files(from) });
        add("basket", device::Request::Basket { files: files(from) });
        add("pots", device::Request::Pots { files: files(from) });
        add("flags", device::Request::Flags { files: files(from) });
        let order = InHandOrder {
            files: files(from),
            stand: "ramsons-brook".to_owned(),
            specimen: "ramsons-1".to_owned(),
        };
        add("in-hand", device::Request::InHand(order.clone()));
        let order = NextLookOrder { of: order, reader: "tobias".to_owned() };
        add("next-look", device::Request::NextLook(order));
        add("serving", device::Request::Serving { files: files(from), reasons: true });
        let labels = desk::LabelOrder::default();
        let labels = desk::Request::Labels { files: files(from), order: labels };
        requests.push((format!("labels-{tense}{season}"), labels));
    }
    requests
}

fn plants() -> Result<Vec<Named>, Box<dyn Error>> {
    let looks = |said: &[(&str, &str)]| -> Vec<(String, String)> {
        said.iter().map(|(one, other)| ((*one).to_owned(), (*other).to_owned())).collect()
    };
    let order = |is: Option<&str>, said: &[(&str, &str)]| {
        desk::Request::Name(NameOrder {
            is: is.map(str::to_owned),
            region: None,
            day: None,
            looks: looks(said),
            second: Vec::new(),
            level: Level::Trained,
            table: None,
        })
    };
    let nettle = [("leaf_arrangement", "opposite"), ("leaf_surface", "stinging")];
    let compare = |one: &str, other: &str| {
        device::Request::Compare { plants: [one.to_owned(), other.to_owned()] }.into()
    };
    let shown = ["Urtica dioica", "ramsons", "Conium maculatum", "no such plant"];
    let show = |name: &str| {
        (
            format!("show-{}", name.replace(' ', "-")),
            device::Request::HerbalShow { name: name.into() }.into(),
        )
    };
    let named = [
        ("name-nettle", order(Some("Urtica dioica"), &nettle)),
        ("name-unknown", order(None, &[("crushed_smell", "garlic"), ("leaf_type", "simple")])),
        ("name-wrong", order(Some("nettel"), &[("leaf_colour_of_luck", "lucky")])),
        ("compare-leaves", compare("Allium ursinum", "Convallaria majalis")),
        ("compare-sprays", compare("Thuja occidentalis", "Taxus baccata")),
        ("list-all", device::Request::HerbalList { words: String::new() }.into()),
        ("list-some", device::Request::HerbalList { words: "garlik".to_owned() }.into()),
    ];
    let named = named.into_iter().map(|(name, request)| (name.to_owned(), request));
    Ok(named.chain(shown.map(show)).collect())
}

fn makes() -> Result<Vec<Named>, Box<dyn Error>> {
    let mut requests = Vec::new();
    for recipe in ["dry-tincture", "fresh-tincture", "root-syrup", "herb-tea", "no-such-recipe"] {
        for (way, servings) in [("forwards", None), ("backwards", Some(12))] {
            let order = MakeOrder {
                recipe: recipe.to_owned(),
                moisture: Some(if recipe == "fresh-tincture" { "75 %" } else { "10 %" }.parse()?),
                servings,
                ..MakeOrder::default()
            };
            let request = device::Request::Make(Box::new(order));
            requests.push((format!("make-{recipe}-{way}"), request.into()));
        }
    }
    Ok(requests)
}

fn sums() -> Result<Vec<Named>, Box<dyn Error>> {
    let sums = [
        (
            "dilute",
            Sum::Dilute {
                from: "96 % vol".parse()?,
                to: "60 % vol".parse()?,
                volume: "500 ml".parse()?,
            },
        ),
        ("dry", Sum::Dry { herb: "1 kg".parse()?, from: "80 %".parse()?, to: "10 %".parse()? }),
        ("measure", Sum::Measure { said: "1½ cups".parse()?, kitchen: None }),
        (
            "daylight",
            Sum::Daylight {
                on: date(2027, 5, 1),
                latitude: 52.31,
                longitude: -2.87,
                zone: "Europe/London".to_owned(),
            },
        ),
        (
            "degree-days",
            Sum::DegreeDays {
                days: vec!["4 to 11 °C".parse()?, "6 to 17 °C".parse()?],
                base: "5 °C".parse()?,
                cut_off: None,
            },
        ),
        ("survey", Sum::Survey { plots: vec![41.0, 58.0, 36.0, 62.0, 49.0], of: 600 }),
    ];
    let sum = |(name, sum): (&str, Sum)| (format!("sum-{name}"), desk::Request::Sum(sum));
    Ok(sums.map(sum).into())
}

fn distributions() -> Result<Vec<(&'static str, Dist)>, DistError> {
    Ok(vec![
        ("exact", Dist::exact(0.1)?),
        ("uniform", Dist::uniform(0.55, 0.85)?),
        ("log-uniform", Dist::log_uniform(0.003, 40.0)?),
        ("triangular", Dist::triangular(0.2, 0.3, 0.4)?),
        ("normal", Dist::normal(-3.0, 17.0)?),
        ("lognormal", Dist::log_normal(7.0, 32.0)?),
        ("empirical", Dist::empirical([3.0, 1.0, 4.0, 1.0, 5.0])?),
        ("or-zero", Dist::or_zero(0.4, Dist::log_normal(0.5, 8.0)?)?),
    ])
}

fn column(name: &str, dist: &Dist, draws: usize) -> Request {
    let path = vec!["parity".to_owned(), name.to_owned()];
    Request::Column { start: RandomStart(1), draws, path, dist: dist.clone() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Machine;
    use std::collections::BTreeSet;

    fn machine() -> Machine {
        Machine::open(herbal_data::bytes()).unwrap()
    }

    #[test]
    fn every_case_has_its_own_name_and_a_reply() {
        let cases = cases().unwrap();
        let names: BTreeSet<_> = cases.iter().map(|case| &case.name).collect();
        assert_eq!(names.len(), cases.len());
        let wrong = [
            "half",
            "in-hand-day-autumn",
            "next-look-day-autumn",
            "in-hand-evening-autumn",
            "next-look-evening-autumn",
            "name-wrong",
            "show-no-such-plant",
            "no-such-recipe",
        ];
        let mut machine = machine();
        for case in &cases {
            let reply = String::from_utf8(machine.answer(case.request.as_bytes())).unwrap();
            assert!(!reply.starts_with("{\"fault\":"), "{}: {reply}", case.name);
            let faults = reply.starts_with("{\"faults\":");
            assert_eq!(faults, wrong.iter().any(|part| case.name.contains(part)), "{}", case.name);
        }
    }

    #[test]
    fn what_is_no_request_is_said_to_be_none() {
        let reply = String::from_utf8(machine().answer(b"{}")).unwrap();
        assert!(reply.starts_with("{\"fault\""), "{reply}");
    }
}
