//! What changes nothing: the order of tables, who else comes, whose answers are whose.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use desk::device::Request;
use desk::{InputFile, Plan, fade};
use dose::Tense;
use kit::*;
use std::num::NonZeroUsize;
use toml::Value;

#[test]
fn the_order_of_tables_changes_no_byte() {
    let world = world();
    for name in OUTINGS {
        let files = demo(name);
        let turned = reversed(&files);
        assert!(turned.iter().any(|file| files.iter().all(|other| other.text != file.text)));
        let json = |files: Vec<InputFile>| json(&world, Request::Plan { files, reasons: true });
        assert!(json(files) == json(turned), "{name}");
    }
}

/// The files without everything that names one participant.
fn without(files: &[InputFile], person: &str) -> Vec<InputFile> {
    let table = |value: &Value| {
        let says = |key: &str| value.get(key).and_then(Value::as_str) == Some(person);
        !(says("participant") || says("name"))
    };
    let one = |file: &InputFile| {
        let mut tables: toml::Table = file.text.parse().unwrap();
        for (_, value) in &mut tables {
            if let Value::Array(list) = value {
                list.retain(table);
                for row in list.iter_mut().filter_map(Value::as_table_mut) {
                    for key in ["to", "participants", "people", "pickers"] {
                        if let Some(Value::Array(names)) = row.get_mut(key) {
                            names.retain(|name| name.as_str() != Some(person));
                        }
                    }
                }
            }
        }
        let text = toml::to_string(&tables).unwrap();
        InputFile { text, ..file.clone() }
    };
    files.iter().map(one).collect()
}

/// Every decision of a plan, as JSON, but those for one person.
fn decisions(plan: &Plan, but: &str) -> Vec<String> {
    let rows = plan.sealed.iter().flatten().filter(|row| row.decision.person != but);
    let sealed = rows.map(|row| serde_json::to_string(row).unwrap());
    let handed = plan.makes.iter().flat_map(|make| {
        let others = make.handed_out.iter().filter(|(name, _)| *name != but);
        others.map(|one| serde_json::to_string(&(&make.name, one)).unwrap())
    });
    sealed.chain(handed).collect()
}

#[test]
fn leaving_one_person_out_changes_nobody_elses_decision() {
    let world = world();
    let files = demo(DAY);
    let all = plan(&world, files.clone(), true);
    for person in ["p02", "p06", "p12"] {
        let less = plan(&world, without(&files, person), true);
        assert_eq!(less.people.len() + 1, all.people.len());
        assert!(decisions(&all, person) == decisions(&less, person), "{person}");
    }
}

/// The outing with the answers of two people exchanged.
fn exchanged(files: &[InputFile], one: &str, other: &str) -> Vec<InputFile> {
    let said = |name: &str| format!("participant = \"{name}\"");
    let swap = |file: &InputFile| {
        let text = file.text.replace(&said(one), "participant = \"?\"");
        let text =
            text.replace(&said(other), &said(one)).replace("participant = \"?\"", &said(other));
        InputFile { text, ..file.clone() }
    };
    files.iter().map(swap).collect()
}

#[test]
fn exchanging_answers_of_equal_decisions_changes_no_byte_of_the_plan() {
    let world = world();
    let public = |files: Vec<InputFile>| json(&world, Request::Plan { files, reasons: false });
    for name in OUTINGS {
        let files = demo(name);
        let plan = plan(&world, files.clone(), false);
        let all: Vec<_> = plan.people.keys().cloned().collect();
        let row = |person: &str| -> Vec<String> {
            let handed = |make: &desk::MakePlan| format!("{:?}", make.handed_out.get(person));
            plan.makes.iter().map(handed).collect()
        };
        let mut equal = 0;
        for (at, one) in all.iter().enumerate() {
            for other in all.iter().skip(at + 1).filter(|other| row(one) == row(other)).take(1) {
                equal += 1;
                assert!(
                    public(files.clone()) == public(exchanged(&files, one, other)),
                    "{one} {other}"
                );
            }
        }
        assert!(equal > 0, "no two people have equal decisions in {name}");
    }
}

#[test]
fn no_word_about_health_stands_in_the_plan_without_reasons() {
    let world = world();
    for name in OUTINGS {
        let mut files = demo(name);
        let sown: Vec<_> = files.iter().filter(|file| file.text.contains("[[answers]]")).collect();
        assert_eq!(sown.len(), 1, "the answers lie in one file");
        for file in &mut files {
            // Every question is answered yes by somebody: each would show if it leaked.
            file.text = file.text.replace("said = { pregnant = \"yes\" }", &everything());
            for weight in ["64 kg", "62 kg"] {
                let odd = "weight = \"63.821749035 kg\"";
                file.text = file.text.replace(&format!("weight = \"{weight}\""), odd);
            }
        }
        assert!(files.iter().any(|file| file.text.contains("821749035")), "{name}");
        // What a pot means for a made-up grown-up, the published cautions on a label and what everybody
        // is asked stay the same, whoever says what.
        let strip = |files: Vec<InputFile>| {
            let mut plan = plan(&world, files, false);
            let made_up: Vec<_> =
                plan.makes.iter_mut().map(|make| make.plain_adult.take()).collect();
            let cautions: Vec<_> =
                plan.labels.iter_mut().map(|label| std::mem::take(&mut label.spoken)).collect();
            assert!(cautions.iter().any(|spoken| !spoken.is_empty()));
            let asked = std::mem::take(&mut plan.intake.questions);
            (plan, serde_json::to_string(&(made_up, cautions, asked)).unwrap())
        };
        let (plan, made_up) = strip(files.clone());
        assert!(made_up == strip(demo(name)).1, "{name}");
        let public = serde_json::to_string(&plan).unwrap();
        let words = ground::Condition::ALL.iter().map(|condition| condition.word());
        // Words that a recipe or a sheet may say of itself are no answers.
        for word in words.filter(|word| *word != "all") {
            assert!(!public.contains(&format!("\"{word}\"")), "{word} in {name}");
            assert!(!public.contains(&format!("condition-{word}")), "{word} in {name}");
        }
        for secret in ["\"sealed\"", "821749035"] {
            assert!(!public.contains(secret), "{secret} in {name}");
        }
        let reasons = json(&world, Request::Plan { files, reasons: true });
        assert!(reasons.contains("\"pregnant\""), "the search would find it");
    }
}

fn everything() -> String {
    let asked = ground::Condition::ALL.iter().map(|condition| condition.word());
    let asked = asked.filter(|word| *word != "all" && !word.starts_with("under"));
    let said: Vec<_> = asked.map(|word| format!("{word} = \"yes\"")).collect();
    format!("said = {{ {} }}", said.join(", "))
}

#[test]
fn the_plan_knows_whether_anything_is_in_hand() {
    let world = world();
    let evening = plan(&world, demo(EVENING), false);
    let day = plan(&world, demo(DAY), false);
    assert_eq!((evening.head.tense, day.head.tense), (Tense::Before, Tense::OnTheDay));
    let settled = |plan: &Plan| -> Vec<bool> { plan.plants.iter().map(|p| p.settled()).collect() };
    assert!(settled(&evening).iter().all(|settled| !settled));
    assert!(settled(&day).contains(&true));
    // Nothing can be handed out before the plant is determined, but provided that it is.
    assert!(evening.makes.iter().any(|make| !make.provisos.is_empty()));
}

#[test]
fn nothing_that_is_made_unknown_gives_anybody_more() {
    let world = world();
    for name in OUTINGS {
        let outing = desk::read(&demo(name), world.herbal()).unwrap();
        // Every 29th: all of them are tried by the example `fade`.
        let trials = fade(&world, &outing, NonZeroUsize::new(29).unwrap()).unwrap();
        assert!(trials.len() > 15);
        for trial in trials {
            assert!(trial.moved.is_empty(), "{trial:?}");
        }
    }
}

#[test]
fn who_was_handed_more_than_was_decided_comes_first() {
    let world = world();
    let about = |files| {
        let plan = plan(&world, files, false);
        plan.questions.into_iter().map(|question| (question.about, question.of)).collect::<Vec<_>>()
    };
    assert!(!about(demo(DAY)).iter().any(|(about, _)| *about == desk::About::Handed));
    // The one may have none of it; of the other no number was found, and one was planned.
    for (batch, to) in [("spruce-pot", "p02"), ("ramsons-board", "p01")] {
        let more = format!(
            "[[serving]]\nbatch = \"{batch}\"\nat = 2027-05-01T15:01:00\nto = [\"{to}\"]\n\
             servings = 1\n"
        );
        let files = demo(DAY).into_iter().chain([file("more.toml", &more)]).collect();
        assert_eq!(about(files)[0], (desk::About::Handed, to.to_owned()));
    }
}

#[test]
fn a_wish_that_comes_from_nowhere_is_open_and_its_plant_too() {
    let open = "[outing]\nname = \"N\"\ndate = 2027-05-01\nfrom = \"10:00\"\nto = \"15:30\"\n\
                zone = \"Europe/London\"\nregion = \"europe\"\nleader = \"m\"\npurpose = \"lesson\"\n\
                [[reader]]\nname = \"m\"\ncalled = \"M\"\nlevel = \"leader\"\n\
                [[make]]\nname = \"t\"\ncalled = \"Tea\"\nrecipe = \"herb-tea\"\n\
                plant = \"Conium maculatum\"\npart = \"leaf\"\nservings-a-day = 1\ndays = 1\n\
                everybody = true\n";
    let plan = plan(&world(), vec![file("n.toml", open)], false);
    let about = plan.questions.iter().map(|question| question.about);
    // Nobody said how help is called; that is told elsewhere.
    let about: Vec<_> = about.filter(|about| *about != desk::About::Emergency).collect();
    assert_eq!(about, [desk::About::Plant, desk::About::Make]);
    assert_eq!(plan.plants.len(), 1);
}

#[test]
fn dried_herb_asks_a_stand_for_what_it_weighed_fresh() {
    let text = demo(EVENING).into_iter().find(|file| file.name == EVENING).unwrap().text;
    let dried = text.replace("recipe = \"cooked-leaf\"", "recipe = \"herb-tea\"");
    let dried = dried.replace("herb = \"fresh\"\nmoisture = \"80–84 %\"", "moisture = \"10 %\"");
    let dried = dried.replace("serving = \"60 g\"", "serving = \"150 ml\"");
    assert_ne!(text, dried);
    let files = demo(EVENING).into_iter().map(|other| match other.name.as_str() {
        EVENING => file(EVENING, &dried),
        _ => other,
    });
    let plan = plan(&world(), files.collect(), false);
    let bank = plan.takes.iter().find(|take| take.stand == "nettle-bank").unwrap();
    // 800 g of dried leaf are 720 g of solids; leaf holds three quarters of water and more.
    assert!(bank.wanted.known().unwrap().g() > 720.0 / 0.25);
    assert!(!bank.enough);
}
