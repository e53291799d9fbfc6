//! Pages for readers with other measures and another order of dates.

use crate::kit::{self, AUTUMN_DAY, SPRING_DAY, SPRING_EVENING};
use desk::{LabelOrder, MakeOrder, Request, World, answer, device};
use ground::MeasureSystem;
use page::{Block, Catalogue, DateOrder, Habits, Measures, Words, calendar, html, view};
use std::sync::LazyLock;

static WORLD: LazyLock<World> =
    LazyLock::new(|| kit::world(jiff::civil::date(2027, 5, 1).at(9, 0, 0, 0)));

const US: Habits = Habits { measures: Measures::Us, dates: DateOrder::MonthDayYear };
const IMPERIAL: Habits = Habits { measures: Measures::Imperial, dates: DateOrder::DayMonthYear };

fn used_to(habits: Habits) -> Catalogue {
    kit::words().catalogue.with_habits(habits)
}

fn words(catalogue: &Catalogue) -> Words<'_> {
    Words::new(catalogue).with_herbal(kit::herbal())
}

fn said(request: impl Into<Request>, habits: Habits) -> String {
    let catalogue = used_to(habits);
    kit::said(&view(&answer(&WORLD, request).unwrap(), &words(&catalogue)), Some(80))
}

fn syrup() -> device::Request {
    device::Request::Make(Box::new(MakeOrder {
        recipe: "root-syrup".to_owned(),
        moisture: Some("10 %".parse().unwrap()),
        kitchen: Some(MeasureSystem::UsCustomary),
        ..MakeOrder::default()
    }))
}

#[test]
fn a_syrup_by_us_measures() {
    insta::assert_snapshot!(said(syrup(), US));
}

#[test]
fn what_is_measured_of_an_elder_by_imperial_measures() {
    let sheet = said(device::Request::HerbalShow { name: "black elder".to_owned() }, IMPERIAL);
    let measured =
        sheet.lines().filter(|line| line.contains("\u{a0}ft)") || line.contains("\u{a0}in)"));
    insta::assert_snapshot!(measured.collect::<Vec<_>>().join("\n"));
}

/// Without what stands in brackets after an amount, a page by other measures is the metric one.
#[test]
fn every_page_of_a_day_keeps_its_metric_figures() {
    let plan = kit::plan(&WORLD, kit::demo(SPRING_DAY), false);
    let us = used_to(Habits { measures: Measures::Us, ..Habits::default() });
    let sheets = kit::sheets(&WORLD, &plan);
    let by = |words: &Words<'_>| page::pages(&plan, &sheets, page::Paper::A4, words);
    let (metric, both) = (by(&kit::words()), by(&words(&us)));
    let mut converted = 0;
    for (metric, both) in metric.iter().zip(&both) {
        let plain = |page| kit::said(page, None);
        let (metric, both) = (plain(&metric.page), plain(&both.page));
        converted += both.matches("\u{a0}oz)").count();
        assert_eq!(figures(&without_second_figures(&both)), figures(&metric));
    }
    assert!(converted > 10, "{converted}");
}

/// A page without the second figures, as `150 g` of `150 g (5.3 oz)`.
fn without_second_figures(said: &str) -> String {
    const UNITS: [&str; 12] =
        ["oz", "lb", "cup", "cups", "quart", "quarts", "in", "ft", "mile", "miles", "ft²", "°F"];
    let mut rest = said;
    let mut kept = String::new();
    while let Some((before, after)) = rest.split_once(" (") {
        kept.push_str(before);
        let second = after.split_once(')').filter(|(inner, _)| {
            let number = inner.starts_with(|c: char| c.is_ascii_digit() || c == '−');
            number && inner.rsplit('\u{a0}').next().is_some_and(|unit| UNITS.contains(&unit))
        });
        rest = match second {
            Some((_, rest)) => rest,
            None => {
                kept.push_str(" (");
                after
            }
        };
    }
    kept + rest
}

/// All that is no room: tables are set as wide as what they hold.
fn figures(said: &str) -> String {
    said.chars().filter(|c| !c.is_whitespace() && !"-─│|".contains(*c)).collect()
}

#[test]
fn a_calendar_file_hangs_on_nobodys_habits() {
    let plan = kit::plan(&WORLD, kit::demo(AUTUMN_DAY), false);
    let us = used_to(US);
    assert_eq!(calendar(&plan, &words(&us)), calendar(&plan, &kit::words()));
}

#[test]
fn a_label_has_metric_amounts_alone_and_the_dates_of_its_reader() {
    let files = kit::demo(SPRING_EVENING);
    let reply = answer(&WORLD, Request::Labels { files, order: LabelOrder::default() }).unwrap();
    let us = used_to(US);
    let mut page = view(&reply, &words(&us));
    page.blocks.retain(|block| matches!(block, Block::Labels(_)));
    let said = html(&page).replace('\u{a0}', " ");
    assert!(!said.contains(" oz)"), "{said}");
    assert!(said.contains(", 2027") && !said.contains("May 2027"), "{said}");
}
