//! `cargo xtask figures`: numbers measured there and then.

use crate::house::{House, Outcome, Program, read, say};
use crate::{browser, numpy, paper, parity, size, timed, trials};
use std::fmt;
use std::process::Command;

/// A number that was measured.
pub(crate) struct Figure {
    pub(crate) name: String,
    pub(crate) value: String,
    pub(crate) unit: String,
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:<32} {:>8}  {}", self.name, self.value, self.unit)
    }
}

/// What measures one or more figures.
struct Gauge {
    name: &'static str,
    measure: fn(&House) -> Outcome<Vec<Figure>>,
    /// Whether it takes so long that it is measured only when it is named.
    named_only: bool,
}

impl Gauge {
    const fn new(name: &'static str, measure: fn(&House) -> Outcome<Vec<Figure>>) -> Self {
        Self { name, measure, named_only: false }
    }

    const fn when_named(self) -> Self {
        Self { named_only: true, ..self }
    }

    fn is_asked_for(&self, names: &[&str]) -> bool {
        names.contains(&self.name) || (names.is_empty() && !self.named_only)
    }
}

const GAUGES: &[Gauge] = &[
    Gauge::new("draws", numpy::figures),
    Gauge::new("looks", numpy::looks),
    Gauge::new("tables", numpy::tables),
    Gauge::new("parity", parity::figures),
    Gauge::new("plan", timed::plan),
    Gauge::new("labels", timed::labels),
    Gauge::new("paper", paper::figures),
    Gauge::new("size", size::figures),
    Gauge::new("browser", browser::figures),
    Gauge::new("typesetter", paper::typesetter::figures),
    Gauge::new("reversal", trials::reversal_figures),
    Gauge::new("fade", trials::fade_figures),
    Gauge::new("facts", trials::recall_figures),
    Gauge::new("planted", trials::planted_figures),
    Gauge::new("readability", |house| example(house, "page", "readability")),
    Gauge::new("confusion", trials::confusion).when_named(),
    Gauge::new("help", trials::help),
    Gauge::new("strictness", trials::strictness).when_named(),
];

/// Measures everything that does not take long, or what is named. What cannot be measured is said in its line, and fails.
pub(crate) fn print(house: &House, names: &[&str]) -> Outcome {
    let (mut lines, mut missing) = (Vec::new(), 0);
    for gauge in GAUGES.iter().filter(|gauge| gauge.is_asked_for(names)) {
        match (gauge.measure)(house) {
            Ok(figures) => lines.extend(figures.iter().map(Figure::to_string)),
            Err(failure) => {
                missing += 1;
                lines.push(format!("{:<32} not measured: {failure}", gauge.name));
            }
        }
    }
    say("");
    lines.iter().for_each(say);
    match (lines.len(), missing) {
        (0, _) => Err("no figure has that name".into()),
        (_, 0) => Ok(()),
        _ => Err(format!("{missing} not measured").into()),
    }
}

/// The figures that an example of a package prints.
pub(crate) fn example(house: &House, package: &str, name: &str) -> Outcome<Vec<Figure>> {
    printed(&mut house.command(house.program(package, Program::Example(name))?))
}

/// The figures that a program prints.
pub(crate) fn printed(command: &mut Command) -> Outcome<Vec<Figure>> {
    figures(&read(command)?)
}

/// The figures in a text: name, value and unit on a line, tabs between.
pub(crate) fn figures(text: &str) -> Outcome<Vec<Figure>> {
    let figures: Vec<_> = text.lines().filter_map(figure).collect();
    if figures.is_empty() { Err("no figure was printed".into()) } else { Ok(figures) }
}

/// The value of the figure of this name.
pub(crate) fn value<'a>(figures: &'a [Figure], name: &str) -> Option<&'a str> {
    let found = figures.iter().find(|figure| figure.name == name);
    found.map(|figure| figure.value.as_str())
}

pub(crate) fn figure(line: &str) -> Option<Figure> {
    let (name, rest) = line.split_once('\t')?;
    let (value, unit) = rest.split_once('\t')?;
    Some(Figure { name: name.to_owned(), value: value.to_owned(), unit: unit.to_owned() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_the_lines_with_two_tabs() {
        let found = figures("a word\nfade-trials\t12\tinputs blanked\n").unwrap();
        assert_eq!(found.len(), 1);
        assert_eq!(
            (value(&found, "fade-trials"), found[0].unit.as_str()),
            (Some("12"), "inputs blanked")
        );
        assert_eq!(value(&found, "fade"), None);
        assert!(figures("nothing here").is_err());
    }
}
