//! A page with every kind of block, of an invented outing.
#![expect(clippy::unwrap_used, reason = "the sample is fixed: it cannot fail in one place only")]

use ground::{
    Finite, Formula, Place, Season, Shown, Source, SourceId, SourceKind, Sourcing, Spread, Text,
    Unit, Working,
};
use page::*;
use std::collections::BTreeMap;

/// Messages of the sample alone.
const MESSAGES: &str = "
sample-title = { $plant } by the mill
sample-water = water in the leaf
sample-fresh = fresh leaf
sample-share = share of water
sample-season = When it can be gathered
sample-who = Who has counted the stand by the weir?
sample-count = Count the shoots in ten squares of one metre, set down blindly.
formula-water-of-leaf = water in fresh herb
";

/// The catalogue in English with the messages of the sample.
pub(crate) fn catalogue() -> Catalogue {
    let sample = MessageFile { language: "en", name: "sample.ftl", text: MESSAGES };
    Catalogue::new("en", MESSAGE_FILES.iter().copied().chain([sample]))
}

fn at(value: f64) -> Finite {
    Finite::new(value).unwrap()
}

fn spread(p5: f64, p50: f64, p95: f64) -> Spread {
    Spread {
        least: at(p5 * 0.8),
        p5: at(p5),
        p50: at(p50),
        p95: at(p95),
        p95_bound: at(p95 * 1.02),
        most: at(p95 * 1.3),
    }
}

fn sources() -> BTreeMap<SourceId, Source> {
    let source = Source {
        id: SourceId::from("oiml-r22"),
        title: "R 22, International alcoholometric tables".into(),
        author: "OIML, 1975".into(),
        address: Some("https://www.oiml.org/en/publications".into()),
        kind: SourceKind::Standard,
        weak: false,
    };
    BTreeMap::from([(source.id.clone(), source)])
}

fn working() -> Working {
    let fresh = Working::input(
        Text::new("sample-fresh"),
        Shown::amount(250.0, Unit::Gram),
        Place::entry("lot", "weir-1", "fresh"),
    );
    let share = Working::fact(
        Text::new("sample-share"),
        Shown::spread(Some(spread(78.0, 82.0, 86.0)), Unit::Percent),
        Sourcing::published(["oiml-r22"]),
    );
    let by = Formula::published("water.of-leaf", "water = fresh × share", "oiml-r22");
    let value = Shown::spread(Some(spread(195.0, 205.0, 215.0)), Unit::Gram);
    Working::computed(Text::new("sample-water"), value, by, vec![fresh, share])
}

fn words_and_lists(words: &Words<'_>, anchor: &Anchor) -> Vec<Block> {
    let warns = Prose::new()
        .strong("Do not pick")
        .text(" where ")
        .taxon("Conium maculatum")
        .text(" stands among it. The leaf holds ")
        .then(words.worked(205.0, Unit::Gram, Rounding::Nearest, anchor))
        .text(" of water; run ")
        .code("trug trace weir-1")
        .text(" or read ")
        .link("what the weir is", Target::Here(Anchor::new("weir")))
        .text(".");
    vec![
        Block::heading(Level::Section, "What is open"),
        words.notice(
            NoticeKind::Question,
            [words.para(&Text::new("sample-who")), words.para(&Text::new("sample-count"))],
        ),
        Block::heading_at(Level::Section, "What is settled", Anchor::new("weir")),
        Block::Para(warns),
        words.working(anchor, &working()),
        Block::heading(Level::Part, "On the way"),
        Block::numbered([
            Item::from(
                "Meet at the mill at nine; the path along the leat is wet, and boots that \
                        keep water out are worth carrying even in a dry week.",
            ),
            Item {
                says: Prose::from("At the weir, in pairs:"),
                under: vec![Block::bullets(["look from afar", "look at the leaf", "smell last"])],
            },
        ]),
        Block::heading(Level::Point, "In the basket"),
        Block::Para(Prose::from("Counted by ").blank()),
        Block::lines("What was seen", 2),
        Block::Ticks(vec![
            Prose::from("sorted piece by piece by two people"),
            Prose::new().text("no leaf of ").taxon("Conium maculatum").text(" found"),
        ]),
    ]
}

fn numbers(words: &Words<'_>) -> Vec<Block> {
    let row = |who: &str, decision: &str, cups: f64| {
        let cups = words.rounded(cups, Unit::One, Rounding::Down);
        vec![Prose::new().said(who), Prose::from(decision), cups]
    };
    let table = Table {
        caption: Prose::from("Who may have the nettle tea"),
        columns: vec![
            Column::words("Name"),
            Column::words("Decision"),
            Column::numbers("Cups a day"),
        ],
        rows_have_heads: true,
        rows: vec![
            row("Ida Bell", "at most 3 cups a day, for two weeks", 3.0),
            row("Noor", "ask first: takes water tablets", 0.0),
            row("נועה <b>&amp;", "withhold", 0.0),
        ],
    };
    let facts = vec![
        Fact::new("Fresh leaf", words.amount(250.0, Unit::Gram)),
        Fact::new("Water", words.spread(&spread(195.0, 205.0, 215.0), Unit::Gram)),
        Fact::new("Made on", words.catalogue.day(jiff::civil::date(2026, 4, 12))),
    ];
    vec![
        Block::Break(Break::Page),
        Block::heading(Level::Section, "Amounts"),
        Block::Table(table),
        Block::Facts(facts),
        Block::Figure(limit_figure(words)),
        words.month_strip(
            &Text::new("sample-season"),
            &[Season::new(ground::Month::new(10).unwrap(), ground::Month::new(6).unwrap())],
        ),
        words.ruler(10),
        words.notice(
            NoticeKind::Caution,
            [Block::para("Keep the tea cool, and pour it away after two days.")],
        ),
        words.notice(
            NoticeKind::DoNot,
            [Block::para("Do not give it to anybody who takes water tablets.")],
        ),
        Block::Break(Break::Rule),
        Block::para("Made by the spring school."),
    ]
}

fn limit_figure(words: &Words<'_>) -> Figure {
    let says = |what: &str, low, high| {
        format!("{what}: {}", words.catalogue.range(low, high, Unit::Milligram))
    };
    let drawing = AgainstLimit {
        title: "Nitrate in a day".into(),
        describes: "Nettle tea brings 40 to 90 mg, nettle soup 120 to 210 mg; the limit is 259 mg."
            .into(),
        bars: vec![
            Bar { says: says("Nettle tea", 40.0, 90.0), spread: spread(40.0, 60.0, 90.0) },
            Bar { says: says("Nettle soup", 120.0, 210.0), spread: spread(120.0, 160.0, 210.0) },
        ],
        limit: Some((at(259.0), "limit 259 mg".into())),
        unit: Unit::Milligram,
        scale: "mg a day; bar: 9 in 10, ring: held to the limit".into(),
    };
    Figure {
        drawing: drawing.draw(),
        caption: Prose::from("Nitrate in a day, for 70 kg of body weight (invented numbers)"),
    }
}

/// The sample page.
pub(crate) fn page() -> Page {
    let catalogue = catalogue();
    let sources = sources();
    let words = Words::new(&catalogue).with_sources(&sources);
    let anchor = Anchor::new("working water");
    let title = Text::new("sample-title").taxon("plant", "Urtica dioica");
    words.page(Kind::Sealed, &title).with(words_and_lists(&words, &anchor)).with(numbers(&words))
}
