//! How the arguments of a message are written: amounts, days, counts, names, lists.

use crate::Catalogue;
use crate::clean::{TAXON_ENDS, TAXON_STARTS, clean};
use crate::number::{Rounding, beside, numerals, whole};
use fluent_bundle::{FluentArgs, FluentValue};
use ground::{Arg, SaidUnit, Text, Unit};

impl Catalogue {
    /// The sentence of a message, or of one of its fields, with scientific names marked.
    pub(crate) fn compose(
        &self,
        text: &Text,
        field: Option<&str>,
        gaps: &mut Vec<String>,
    ) -> String {
        let mut args = FluentArgs::new();
        for (name, arg) in &text.args {
            self.set(&mut args, name, arg, gaps);
        }
        self.format(&text.id, field, &args, gaps)
    }

    fn set(&self, args: &mut FluentArgs<'_>, name: &str, arg: &Arg, gaps: &mut Vec<String>) {
        match arg {
            Arg::Count(count) => args.set(name.to_owned(), FluentValue::from(*count)),
            Arg::Amount(value, unit) => {
                let ways =
                    [("", Rounding::Nearest), ("-down", Rounding::Down), ("-up", Rounding::Up)];
                for (ending, rounding) in ways {
                    let said = self.amount(value.get(), *unit, rounding);
                    args.set(format!("{name}{ending}"), said);
                }
            }
            other => args.set(name.to_owned(), self.argument(other, gaps)),
        }
    }

    fn argument(&self, arg: &Arg, gaps: &mut Vec<String>) -> String {
        match arg {
            Arg::Words(words) => self.name(words),
            Arg::Taxon(name) => format!("{TAXON_STARTS}{}{TAXON_ENDS}", clean(name)),
            Arg::Amount(value, unit) => self.amount(value.get(), *unit, Rounding::Nearest),
            Arg::Money(amount, currency) => self.money(*amount, *currency),
            Arg::Count(count) => whole(*count),
            Arg::Day(day) => self.day(*day),
            Arg::Text(text) => self.compose(text, None, gaps),
            Arg::List(items) => {
                let said: Vec<_> = items.iter().map(|item| self.argument(item, gaps)).collect();
                self.join(&said)
            }
        }
    }

    fn format(
        &self,
        id: &str,
        field: Option<&str>,
        args: &FluentArgs<'_>,
        gaps: &mut Vec<String>,
    ) -> String {
        let message = self.messages.bundle.get_message(id);
        let pattern = message.and_then(|message| match field {
            None => message.value(),
            Some(field) => message.get_attribute(field).map(|found| found.value()),
        });
        let name = field.map_or(id.to_owned(), |field| format!("{id}.{field}"));
        let Some(pattern) = pattern else {
            gaps.push(format!("no message {name}"));
            return format!("⟦{}⟧", clean(&name));
        };
        let mut errors = Vec::new();
        let said = self.messages.bundle.format_pattern(pattern, Some(args), &mut errors);
        gaps.extend(errors.iter().map(|error| format!("{name}: {error}")));
        said.into_owned()
    }

    /// A message of this catalogue's own machinery, from words that are already said.
    pub(crate) fn assemble(&self, id: &str, parts: &[(&'static str, FluentValue<'_>)]) -> String {
        let args: FluentArgs<'_> =
            parts.iter().map(|(name, value)| (*name, value.clone())).collect();
        self.format(id, None, &args, &mut Vec::new())
    }

    /// An amount with its unit, as people write it; number and unit stay on one line. What the reader
    /// weighs and measures by stands beside it, rounded the same way.
    ///
    /// ```
    /// use ground::Unit;
    /// use page::{Catalogue, Rounding};
    /// let catalogue = Catalogue::english();
    /// assert_eq!(catalogue.amount(1.0, Unit::Day, Rounding::Nearest), "1\u{a0}day");
    /// assert_eq!(catalogue.amount(39.96, Unit::PercentVolume, Rounding::Down), "39.9\u{a0}% vol");
    /// ```
    #[must_use]
    pub fn amount(&self, value: f64, unit: Unit, rounding: Rounding) -> String {
        let said = self.in_unit(numerals(value, unit, rounding), value, SaidUnit::Fixed(unit));
        self.and_beside(said, [value, value], unit, rounding)
    }

    /// A number that is written already, to the nearest, with its unit; `value` chooses the plural.
    pub(crate) fn with_unit(&self, number: String, value: f64, unit: Unit) -> String {
        let said = self.in_unit(number, value, SaidUnit::Fixed(unit));
        self.and_beside(said, [value, value], unit, Rounding::Nearest)
    }

    /// A range of amounts: the unit is said once, and equal ends are one amount.
    #[must_use]
    pub fn range(&self, low: f64, high: f64, unit: Unit) -> String {
        let ends = [low, high].map(|end| numerals(end, unit, Rounding::Nearest));
        let said = self.between(ends, high, SaidUnit::Fixed(unit));
        self.and_beside(said, [low, high], unit, Rounding::Nearest)
    }

    /// What was said of an amount or a range, and beside it the same in the measures of the reader.
    fn and_beside(&self, said: String, ends: [f64; 2], unit: Unit, rounding: Rounding) -> String {
        let measures = self.habits.measures;
        let Some(other) = measures.beside(ends, unit) else { return said };
        let [low, high] = ends.map(|end| measures.converted(end, unit, other));
        let numbers = [low, high].map(|end| beside(end, rounding));
        let other = self.between(numbers, high, other);
        self.assemble("beside", &[("amount", said.into()), ("other", other.into())])
    }

    /// A range of numbers that are written already; the last one's value chooses the plural.
    fn between(&self, [low, high]: [String; 2], value: f64, unit: SaidUnit) -> String {
        let single = low == high;
        let last = self.in_unit(high, value, unit);
        if single {
            return last;
        }
        self.assemble("range", &[("low", low.into()), ("high", last.into())])
    }

    fn in_unit(&self, number: String, value: f64, unit: SaidUnit) -> String {
        match unit_message(unit) {
            Ok(id) => {
                let shown = number.parse().unwrap_or(value);
                let parts = [("shown", FluentValue::from(shown)), ("number", number.into())];
                self.assemble(&id, &parts)
            }
            Err(Unit::One) => number,
            Err(unit) => {
                let said = format!("{number}\u{a0}{}", unit.symbol());
                self.messages.direction.isolated(&said)
            }
        }
    }

    /// A day with the name of its month, which no order can mistake.
    ///
    /// ```
    /// let day = jiff::civil::date(2026, 4, 12);
    /// assert_eq!(page::Catalogue::english().day(day), "12\u{a0}April 2026");
    /// ```
    #[must_use]
    pub fn day(&self, day: jiff::civil::Date) -> String {
        let month = self.word(&format!("month-{}", day.month()));
        let parts = [
            ("day", day.day().to_string().into()),
            ("month", month.into()),
            ("year", day.year().to_string().into()),
        ];
        self.assemble(self.habits.dates.message(), &parts)
    }

    /// Words that somebody else wrote, fit to stand in a sentence.
    pub(crate) fn name(&self, words: &str) -> String {
        self.messages.direction.isolated(&clean(words))
    }

    /// Several things in one sentence: "a, b and c".
    #[must_use]
    pub fn list(&self, items: &[String]) -> String {
        let items: Vec<_> = items.iter().map(|item| self.name(item)).collect();
        self.join(&items)
    }

    fn join(&self, items: &[String]) -> String {
        match items {
            [] => self.word("list-none"),
            [only] => only.clone(),
            [before @ .., last] => {
                let parts = [("before", before.join(", ").into()), ("last", last.as_str().into())];
                self.assemble("list-last", &parts)
            }
        }
    }
}

/// The message that says a unit in words, or the unit where it is written as a symbol.
fn unit_message(unit: SaidUnit) -> Result<String, Unit> {
    match unit {
        SaidUnit::Kitchen(measure) => Ok(format!("unit-{}", measure.word().replace(' ', "-"))),
        SaidUnit::Fixed(unit) => fixed_unit_message(unit).map(str::to_owned).ok_or(unit),
    }
}

fn fixed_unit_message(unit: Unit) -> Option<&'static str> {
    Some(match unit {
        Unit::Day => "unit-day",
        Unit::Year => "unit-year",
        Unit::Week => "unit-week",
        Unit::Hour => "unit-hour",
        Unit::Minute => "unit-minute",
        Unit::Second => "unit-second",
        Unit::Mile => "unit-mile",
        Unit::Acre => "unit-acre",
        Unit::Percent => "unit-percent",
        Unit::PercentMass => "unit-percent-mass",
        Unit::GramPerDay => "unit-gram-per-day",
        Unit::MilligramPerDay => "unit-milligram-per-day",
        Unit::MicrogramPerDay => "unit-microgram-per-day",
        Unit::MilligramPerBody => "unit-milligram-per-body",
        Unit::MicrogramPerBody => "unit-microgram-per-body",
        Unit::MilligramPerBodyDay => "unit-milligram-per-body-day",
        Unit::MicrogramPerBodyDay => "unit-microgram-per-body-day",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_unit_can_be_said() {
        let catalogue = Catalogue::english();
        for unit in Unit::ALL {
            let said = catalogue.amount(2.0, *unit, Rounding::Nearest);
            assert!(said.starts_with('2') && !said.contains(['⟦', '{']), "{said}");
        }
    }

    #[test]
    fn a_range_says_its_unit_once() {
        let catalogue = Catalogue::english();
        assert_eq!(catalogue.range(3.0, 5.0, Unit::Gram), "3 to 5\u{a0}g");
        assert_eq!(catalogue.range(36.1, 36.2, Unit::Gram), "36\u{a0}g");
    }

    #[test]
    fn a_list_ends_in_and() {
        let catalogue = Catalogue::english();
        let list = |items: &[&str]| {
            let items: Vec<_> = items.iter().map(|item| (*item).to_owned()).collect();
            catalogue.list(&items)
        };
        assert_eq!(list(&["leaf", "bark", "root"]), "leaf, bark and root");
        assert_eq!(list(&["leaf", "bark"]), "leaf and bark");
        assert_eq!(list(&["leaf"]), "leaf");
        assert_eq!(list(&[]), "none");
    }
}
