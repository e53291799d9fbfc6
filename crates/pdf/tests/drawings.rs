//! Words within drawings, in either direction.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod pseudo;

use ground::{Finite, Spread, Text, Unit};
use jiff::civil::date;
use page::{AgainstLimit, Bar, Block, Drawing, Figure, Kind, Paper, Words};
use pdf::Press;
use pseudo::Pseudo;

fn drawing(locale: Pseudo) -> Drawing {
    let at = |value| Finite::new(value).unwrap();
    let spread = Spread {
        least: at(20.0),
        p5: at(40.0),
        p50: at(60.0),
        p95: at(90.0),
        p95_bound: at(92.0),
        most: at(99.0),
    };
    let says = format!("{}: 40 mg (Urtica dioica)", locale.words("Nettle tea in spring"));
    let drawing = AgainstLimit {
        title: locale.words("Nitrate in a day"),
        describes: locale.words("Below the limit"),
        bars: vec![Bar { says, spread }],
        limit: Some((at(100.0), locale.words("limit"))),
        unit: Unit::Milligram,
        scale: locale.words("milligrams in a day"),
    };
    drawing.draw()
}

/// A mark without a letter in the font would break PDF/A, and the press would not print it.
#[test]
fn isolates_in_drawings_are_drawn_as_nothing() {
    for locale in Pseudo::ALL {
        let caption = locale.words("Nitrate").into();
        let figure = Block::Figure(Figure { drawing: drawing(locale), caption });
        let catalogue = locale.catalogue();
        let page = Words::new(&catalogue).page(Kind::Public, &Text::new("notice-question"));
        let made = date(2027, 5, 1).at(9, 0, 0, 0);
        Press::new().unwrap().print(&page.with([figure]), Paper::A4, made).unwrap();
    }
}
