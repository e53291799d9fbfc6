//! The intake form: it asks what some decision hangs on, and nothing else.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use desk::{InputFile, Plan, Topic};
use dose::{Question, Rule};
use ground::Condition;
use kit::*;
use std::collections::BTreeSet;

/// The demo on the evening before, with what one person said of their health in place of theirs.
fn with_answers(answers: &str) -> Vec<InputFile> {
    let mut files = demo(EVENING);
    let health = files.iter_mut().find(|file| file.name.contains("health")).unwrap();
    health.text = format!("[[answers]]\nparticipant = \"p01\"\n{answers}\n");
    files
}

fn conditions(plan: &Plan) -> BTreeSet<Condition> {
    let asked = plan.intake.questions.iter().filter_map(|question| match question.asks {
        Question::Condition(condition) => Some(condition),
        _ => None,
    });
    asked.collect()
}

/// The outcomes of everything for p01.
fn outcomes(plan: &Plan) -> Vec<String> {
    let handed = plan.makes.iter().map(|make| make.handed_out.get("p01"));
    handed.map(|handed| format!("{:?}", handed.unwrap().outcome)).collect()
}

#[test]
fn what_is_not_asked_changes_no_decision_however_it_is_answered() {
    let world = world();
    let no = "age = 44\nweight = \"78 kg\"\nrest = \"no\"";
    let plain = plan(&world, with_answers(no), false);
    let asked = conditions(&plain);
    let unasked = Condition::ALL.iter().filter(|condition| {
        **condition != Condition::All
            && !Condition::Under18.contains(**condition)
            && !asked.contains(condition)
    });
    let unasked: Vec<_> = unasked.collect();
    assert!(asked.len() >= 10 && unasked.len() >= 3, "{asked:?}");
    for word in ["rather-not", "unanswered"] {
        let said = unasked.iter().map(|condition| format!("{condition} = \"{word}\""));
        let said = said.collect::<Vec<_>>().join(", ");
        let other = plan(&world, with_answers(&format!("{no}\nsaid = {{ {said} }}")), false);
        assert_eq!(outcomes(&plain), outcomes(&other), "{said}");
    }
}

#[test]
fn what_is_open_for_whoever_answered_nothing_is_asked() {
    for name in [EVENING, DAY] {
        let plan = plan(&world(), demo(name), true);
        let asks: BTreeSet<_> = plan.intake.questions.iter().map(|q| &q.asks).collect();
        let mut seen = 0;
        for row in plan.sealed.iter().flatten() {
            let open = row.decision.sealed.open.iter();
            for open in open.filter(|open| !matches!(open, Question::Stage { .. })) {
                assert!(asks.contains(open), "{open:?}");
                seen += 1;
            }
        }
        assert!(seen > 5);
    }
}

#[test]
fn every_question_names_a_dish_and_a_kind_of_rule_and_a_no_is_worth_giving() {
    let world = world();
    let no = "age = 44\nweight = \"78 kg\"\nrest = \"no\"";
    let plan_of = |said: &str| plan(&world, with_answers(&format!("{no}\n{said}")), true);
    let plain = plan_of("");
    let called: BTreeSet<_> = plain.makes.iter().map(|make| make.name.clone()).collect();
    for question in &plain.intake.questions {
        assert!(!question.makes.is_empty() && question.makes.is_subset(&called));
        assert!(!question.by.is_empty() && !question.by.contains(&Rule::Identity));
    }
    let reasons = |plan: &Plan| {
        let rows = plan.sealed.iter().flatten().filter(|row| row.decision.person == "p01");
        rows.map(|row| serde_json::to_string(&row.decision).unwrap()).collect::<Vec<_>>()
    };
    for condition in conditions(&plain) {
        let yes = plan_of(&format!("said = {{ {condition} = \"yes\" }}"));
        assert!(reasons(&plain) != reasons(&yes), "{condition} decides nothing");
    }
}

#[test]
fn the_form_hangs_on_nobodys_answers() {
    let world = world();
    let form = |files| serde_json::to_string(&plan(&world, files, true).intake).unwrap();
    assert_eq!(form(demo(EVENING)), form(with_answers("rest = \"rather-not\"")));
}

#[test]
fn questions_come_topic_by_topic_and_age_comes_first() {
    let plan = plan(&world(), demo(EVENING), false);
    let topics: Vec<Topic> = plan.intake.questions.iter().map(|q| q.topic).collect();
    assert!(topics.is_sorted());
    assert_eq!(plan.intake.questions.first().map(|q| &q.asks), Some(&Question::Age));
}

#[test]
fn answers_are_kept_until_thirty_days_after_the_last_jar() {
    let world = world();
    let until = |files: Vec<InputFile>| plan(&world, files, false).keep_until;
    assert_eq!(until(demo(EVENING)).known(), Some(&jiff::civil::date(2027, 5, 31)));
    let home = |recipe: &str| {
        let mut files = demo(EVENING);
        for file in &mut files {
            let tea = "called = \"Nettle leaf tea, dried\"";
            assert!(file.name != EVENING || file.text.contains(tea));
            file.text = file.text.replace(tea, &format!("{tea}\ntaken-home = true"));
            file.text = file.text.replace("recipe = \"herb-tea\"", recipe);
        }
        until(files)
    };
    // A tea that keeps for a day at the most ends no later than a day after the outing.
    assert_eq!(home("recipe = \"herb-tea\"").known(), Some(&jiff::civil::date(2027, 6, 1)));
}
