//! Pages that the demo does not print: on other paper, in large print, of plants and of labels alone.

use crate::demo;
use crate::house::{House, Outcome, read};
use std::path::PathBuf;

/// Where the pages of an order go, and what the program is asked for.
type Order = (&'static str, &'static [&'static str]);

/// Labels of every height that is sold but those of a plan, and the smallest that may be.
const ORDERS: &[Order] = &[
    ("spring-letter", &["plan", "demo/spring-day.toml", "--paper", "letter"]),
    ("autumn-large", &["plan", "demo/autumn-day.toml", "--large"]),
    ("sheets", &["sheet", "Sambucus nigra", "ramsons"]),
    ("labels-63.5x38.1", &["label", "demo/spring-day.toml", "--size", "63.5x38.1"]),
    ("labels-70x37", &["label", "demo/autumn-day.toml", "--size", "70x37", "--copies", "3"]),
    ("labels-50x25", &["label", "demo/spring-day.toml", "--size", "50x25", "--copies", "3"]),
    (
        "labels-66.7x25.4",
        &["label", "demo/autumn-day.toml", "--size", "66.7x25.4", "--paper", "letter"],
    ),
];

/// The pages of all orders, and which orders the program refused.
pub(super) struct Variants {
    pub(super) folder: PathBuf,
    pub(super) refused: Vec<String>,
}

/// Prints every order that is not refused.
pub(super) fn print(house: &House) -> Outcome<Variants> {
    let trug = demo::build(house)?;
    let folder = house.fresh("variants")?;
    let mut refused = Vec::new();
    for (name, words) in ORDERS {
        let pages = folder.join(name);
        if let Err(failure) = read(house.command(&trug).args(*words).arg("--out").arg(pages)) {
            refused.push(failure.to_string());
        }
    }
    Ok(Variants { folder, refused })
}
