//! Forms that are filled in by hand: the intake form, the sorting sheet, the serving list, and a sheet of
//! one plant for the teacher.

use crate::kit::{self, SPRING_DAY, SPRING_EVENING};
use desk::{IntakeQuestion, Plan, Reply, Request, Topic, World, answer};
use dose::{Question, Rule};
use ground::Condition;
use page::{Format, Page, Paper, html, pages, planned_pages, sheet_pages, view};
use std::collections::BTreeSet;
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0)));

fn plan(outing: &str) -> Plan {
    kit::plan(&WORLD, kit::demo(outing), false)
}

fn page(plan: &Plan, name: &str) -> Page {
    kit::page(&WORLD, plan, name)
}

fn said(page: &Page) -> String {
    kit::said(page, None)
}

fn teach(names: &[&str]) -> Reply {
    let names = names.iter().map(|name| (*name).to_owned()).collect();
    answer(&WORLD, Request::Sheet { names }).unwrap()
}

fn sheet_of(name: &str) -> Page {
    view(&teach(&[name]), &kit::words())
}

/// Fails unless the parts stand in this order.
fn in_order(said: &str, parts: &[&str]) {
    let at = |part: &&str| said.find(part).unwrap_or_else(|| panic!("{part} is missing:\n{said}"));
    let places: Vec<_> = parts.iter().map(at).collect();
    assert!(places.is_sorted(), "{parts:?}: {places:?}");
}

#[test]
fn the_intake_form_reads_like_this() {
    insta::assert_snapshot!(said(&page(&plan(SPRING_EVENING), "intake-form")));
}

#[test]
fn the_intake_form_names_nobody_who_comes() {
    let plan = plan(SPRING_EVENING);
    let shown = html(&page(&plan, "intake-form"));
    for (code, called) in &plan.people {
        assert!(!shown.contains(called.as_str()) && !shown.contains(code.as_str()), "{called}");
    }
    assert!(shown.contains("Maren Holt"));
}

/// A form that asks everything there is to ask.
fn with_everything_asked(mut plan: Plan) -> Plan {
    let conditions = Condition::ALL.iter().filter(|condition| {
        **condition != Condition::All && !Condition::Under18.contains(**condition)
    });
    let asks = conditions.map(|condition| Question::Condition(*condition));
    let asks = [Question::Age, Question::BodyMass].into_iter().chain(asks);
    let makes: BTreeSet<_> = plan.makes.iter().take(2).map(|make| make.name.clone()).collect();
    let by = BTreeSet::from([Rule::Caution, Rule::Amount, Rule::Limit, Rule::Unmeasured]);
    let question = |asks| IntakeQuestion {
        topic: Topic::of(&asks),
        asks,
        by: by.clone(),
        makes: makes.clone(),
    };
    plan.intake.questions = asks.map(question).collect();
    plan.intake.questions.sort();
    plan
}

#[test]
fn every_question_there_is_has_its_words_its_boxes_and_a_reason() {
    let plan = with_everything_asked(plan(SPRING_EVENING));
    let form = said(&page(&plan, "intake-form"));
    let count = |part: &str| form.matches(part).count();
    assert_eq!(count("Why we ask"), plan.intake.questions.len());
    assert_eq!(count("I\u{a0}would\u{a0}rather\u{a0}not\u{a0}say"), plan.intake.questions.len());
    assert_eq!(count("☐\u{a0}yes"), plan.intake.questions.len() - 2);
}

/// Adults read on average at the age of 9 to 11: short sentences. At most 12 words in the mean, and
/// none above 20; the names of dishes are exempt.
#[test]
fn the_words_of_the_forms_are_short() {
    let plan = with_everything_asked(plan(SPRING_EVENING));
    let mut form = said(&page(&plan, "intake-form"));
    for make in &plan.makes {
        form = form.replace(&make.called, "it");
    }
    let sentences = form.split(['.', '?', '\n']).map(|sentence| {
        sentence.split_whitespace().filter(|word| word.chars().any(char::is_alphabetic)).count()
    });
    let counts: Vec<_> = sentences.filter(|words| *words > 2).collect();
    let mean = counts.iter().sum::<usize>() as f64 / counts.len() as f64;
    assert!(mean <= 12.0, "{mean}");
    let boxes = "under\u{a0}1";
    assert!(form.contains(boxes));
    let long: Vec<_> = form
        .lines()
        .filter(|line| !line.contains(boxes))
        .flat_map(|line| line.split(['.', '?', ':']))
        .filter(|sentence| sentence.split_whitespace().count() > 20)
        .collect();
    assert!(long.is_empty(), "{long:#?}");
}

#[test]
fn a_form_that_asks_nothing_still_reads_and_a_jar_of_unknown_keeping_leaves_the_day_open() {
    let mut plan = plan(SPRING_EVENING);
    let open = || ground::Text::new("unknown");
    plan.keep_until = ground::Answer::Refused(ground::Refusal::new(open(), open()));
    assert!(said(&page(&plan, "intake-form")).contains("The leader writes the day here: ____"));
    plan.intake.questions.clear();
    let form = said(&page(&plan, "intake-form"));
    assert!(form.contains("asks anything of you") && !form.contains("Signature"));
}

#[test]
fn the_sorting_sheet_names_the_worst_twin_first_and_what_is_on_the_piece_before_the_rest() {
    let sheet = said(&page(&plan(SPRING_EVENING), "sorting-ramsons-brook"));
    in_order(&sheet, &["autumn crocus", "lily of the valley", "lords-and-ladies"]);
    in_order(
        &sheet,
        &["foot of the leaf", "smell of the crushed leaf", "underground part", "First round"],
    );
    in_order(&sheet, &["First sorter: ____", "put where", "held:", "Second round"]);
}

#[test]
fn what_was_sorted_shows_what_was_written_down_and_asks_for_no_round() {
    let sheet = said(&page(&plan(SPRING_DAY), "sorting-ramsons-brook"));
    assert!(sheet.contains("Arum maculatum") && sheet.contains("74"), "{sheet}");
    assert!(!sheet.contains("First sorter"));
}

#[test]
fn a_plant_without_twins_or_sheet_is_sorted_with_more_care_not_less() {
    let plan = plan(SPRING_EVENING);
    let mut sheets = kit::sheets(&WORLD, &plan);
    sheets.get_mut("Allium ursinum").unwrap().twins.clear();
    sheets.remove("Urtica dioica");
    let pages = pages(&plan, &sheets, Paper::A4, &kit::words());
    let of = |name: &str| said(&kit::named(&pages, name));
    let ramsons = of("sorting-ramsons-brook");
    assert!(ramsons.contains("does not mean that there is nothing"));
    assert!(ramsons.contains("smell of the crushed leaf") && ramsons.contains("First sorter"));
    assert!(of("sorting-nettle-bank").contains("has no sheet of this plant"));
}

#[test]
fn stands_whose_names_look_alike_in_a_file_name_get_a_page_each() {
    let mut plan = plan(SPRING_EVENING);
    let names = ["Brook 1", "brook-1", "🌿", "סוף", &"x".repeat(200)];
    let take = plan.takes.first().unwrap().clone();
    plan.takes =
        names.map(|stand| desk::TakePlan { stand: stand.to_owned(), ..take.clone() }).into();
    let files: BTreeSet<_> = kit::pages(&WORLD, &plan)
        .into_iter()
        .map(|named| named.name)
        .filter(|file| file.starts_with("sorting"))
        .collect();
    assert_eq!(files.len(), names.len());
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "-.".contains(c);
    assert!(files.iter().all(|file| file.chars().all(plain) && file.len() < 80), "{files:?}");
}

#[test]
fn every_page_is_called_before_it_is_written_what_it_is_called_then() {
    for name in [SPRING_EVENING, kit::AUTUMN_DAY] {
        let plan = kit::plan(&WORLD, kit::demo(name), true);
        let sheets = kit::sheets(&WORLD, &plan);
        let planned = planned_pages(&plan, &sheets, Paper::A4);
        assert!(planned.len() > 15, "{}", planned.len());
        for page in planned {
            let written = page.write(&kit::words());
            assert_eq!(page.title(&kit::words()), written.title.plain(), "{}", page.name);
        }
    }
}

/// Forty people with long and strange names, and ten dishes.
fn crowd() -> Plan {
    let mut plan = plan(SPRING_EVENING);
    let (one, handed) = {
        let make = plan.makes.iter().find(|make| make.name == "ramsons-bread").unwrap();
        (make.clone(), make.handed_out.values().next().unwrap().clone())
    };
    let name = |n: usize| match n % 3 {
        0 => "x".repeat(200),
        1 => "נועה 🌿".to_owned(),
        _ => format!("Person {n}"),
    };
    plan.people = (1..=40).map(|n| (format!("p{n:02}"), name(n))).collect();
    plan.makes = (1..=10)
        .map(|n| {
            let mut make = one.clone();
            make.called = format!("Dish {n}");
            make.handed_out =
                plan.people.keys().map(|name| (name.clone(), handed.clone())).collect();
            make
        })
        .collect();
    plan
}

#[test]
fn a_serving_list_of_forty_people_and_ten_dishes_fits_across_a_sheet() {
    let page = page(&crowd(), "serving-list");
    assert_eq!(page.format, Format::Wide);
    let tables = page.blocks.iter().filter_map(|block| match block {
        page::Block::Table(table) => Some(table),
        _ => None,
    });
    let tables: Vec<_> = tables.collect();
    assert_eq!(tables.iter().map(|t| t.columns.len()).collect::<Vec<_>>(), [7, 7]);
    assert!(tables.iter().all(|table| table.rows.len() == 40));
    let shown = html(&page);
    assert!(!shown.contains(&"x".repeat(41)) && shown.contains("p40"));
    assert_eq!(said(&page).matches('☐').count(), 400);
}

#[test]
fn only_what_may_be_handed_has_a_box() {
    let list = said(&page(&plan(SPRING_EVENING), "serving-list"));
    let row = list.lines().find(|line| line.contains("Lowen Marsh")).unwrap();
    assert!(row.contains("withhold") && !row.contains('☐'), "{row}");
    in_order(&list, &["Heads counted", "Anything changed since", "p01"]);
}

#[test]
fn a_sheet_for_the_teacher_goes_from_far_to_near_and_ends_in_three_questions() {
    let sheet = said(&sheet_of("ramsons"));
    in_order(
        &sheet,
        &[
            "look in",
            "When it is there",
            "From afar",
            "Stem, bark and leaf",
            "Flower and fruit",
            "In the hand",
            "Below the ground",
            "What it is taken for",
            "What hurts",
            "How to gather, and how much to leave",
            "Part by part",
            "Who should not have it",
            "Three questions",
            "Date: ____",
            "Herbal as-tested",
            "Sources",
        ],
    );
    let (_, asked) = sheet.split_once("Three questions").unwrap();
    let (asked, _) = asked.split_once("Date:").unwrap();
    insta::assert_snapshot!(asked.trim());
}

#[test]
fn every_plant_of_the_herbal_gets_a_sheet_with_three_questions() {
    let names: Vec<_> = WORLD.herbal().flora.sheets().map(|sheet| sheet.name.as_str()).collect();
    let Reply::Sheet(reply) = teach(&names) else { panic!("no sheets") };
    assert_eq!(reply.sheets.len(), names.len());
    for named in sheet_pages(&reply, &kit::words()) {
        let sheet = said(&named.page);
        let (_, asked) = sheet.split_once("Three questions").unwrap();
        let (asked, _) = asked.split_once("Date:").unwrap();
        let count = asked.lines().filter(|line| line.trim().starts_with(['1', '2', '3'])).count();
        assert_eq!(count, 3, "{}: {asked}", named.name);
        assert!(!asked.contains("from memory"), "{}: {asked}", named.name);
    }
}

#[test]
fn a_deadly_plant_says_so_before_anything_that_helps_to_find_it() {
    in_order(&said(&sheet_of("Conium maculatum")), &["Deadly", "When it is there", "From afar"]);
}

#[test]
fn faults_of_all_unknown_names_come_back_at_once() {
    let names = ["ramsonz", "nettel", "ramsons"].map(str::to_owned).into();
    let faults = answer(&WORLD, Request::Sheet { names }).unwrap_err();
    assert_eq!(faults.into_iter().count(), 2);
}

#[test]
fn what_goes_home_ends_in_questions_and_says_when_and_by_whom() {
    let home = said(&page(&plan(SPRING_EVENING), "plant-urtica-dioica"));
    in_order(
        &home,
        &[
            "When it is there",
            "From afar",
            "What it is taken for",
            "How much to leave",
            "What to make of it",
            "Before you use it, ask",
            "Three questions",
            "Maren Holt",
            "Sources",
        ],
    );
}
