//! Amounts as people write them: `1½ cups`, `10–12 g`, `2 x 150 ml`, `60 % vol`.

use crate::{Dimension, KitchenMeasure, MeasureSystem, Refusal, Text, Unit};
use serde::{Deserialize, Serialize};
use std::fmt;

/// The largest number an amount may hold: beyond it, somebody's finger slipped.
const MOST: f64 = 1e9;

/// A number, or a range of numbers, as said.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Amount {
    /// The lower end.
    pub low: f64,
    /// The upper end; equal to the lower for a single number.
    pub high: f64,
}

impl Amount {
    /// A single number.
    #[must_use]
    pub fn exact(value: f64) -> Self {
        Self { low: value, high: value }
    }

    /// Whether it is a single number.
    #[must_use]
    pub fn is_exact(self) -> bool {
        self.low == self.high
    }
}

/// A unit as said: of fixed size, or a kitchen measure that needs somebody's table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum SaidUnit {
    /// A unit of fixed size.
    Fixed(Unit),
    /// A kitchen measure.
    Kitchen(KitchenMeasure),
}

/// An amount as a person wrote it, not yet resolved to a quantity.
///
/// ```
/// use ground::{KitchenMeasure, SaidUnit, Spoken, Unit};
/// let said: Spoken = "1½ cups".parse().unwrap();
/// assert_eq!((said.amount.low, said.unit), (1.5, SaidUnit::Kitchen(KitchenMeasure::Cup)));
/// let said: Spoken = "2 x 150 ml".parse().unwrap();
/// assert_eq!((said.amount.low, said.unit), (300.0, SaidUnit::Fixed(Unit::Millilitre)));
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Spoken {
    /// How much.
    pub amount: Amount,
    /// Of which unit.
    pub unit: SaidUnit,
    /// The words, as written.
    pub written: String,
}

impl Spoken {
    /// The amount in the base unit of a dimension.
    ///
    /// Kitchen measures need the table of the outing: without one this refuses, since a US pint is
    /// a fifth smaller than an imperial.
    ///
    /// # Errors
    /// A refusal when the unit measures something else, when no kitchen table was named, or when
    /// that table has no such measure.
    pub fn resolve(
        &self,
        dimension: Dimension,
        kitchen: Option<MeasureSystem>,
    ) -> Result<Amount, Refusal> {
        let scale = |size: &dyn Fn(f64) -> f64| Amount {
            low: size(self.amount.low),
            high: size(self.amount.high),
        };
        match self.unit {
            SaidUnit::Fixed(unit) if unit.dimension() == dimension => {
                Ok(scale(&|value| unit.to_base(value)))
            }
            SaidUnit::Kitchen(measure) if dimension == Dimension::Volume => {
                let Some(system) = kitchen else {
                    return Err(self.refuse("refused-whose-spoon", "settle-whose-spoon"));
                };
                let Some(size) = measure.volume(system) else {
                    let refusal = self.refuse("refused-no-such-measure", "settle-write-in-ml");
                    let why = refusal.why.with("system", system.word());
                    return Err(Refusal::new(why, refusal.settle));
                };
                Ok(scale(&|value| value * size.ml()))
            }
            _ => Err(self.refuse("refused-other-dimension", "settle-other-dimension")),
        }
    }

    /// Whether the unit measures this: kitchen measures hold volumes.
    #[must_use]
    pub fn measures(&self, dimension: Dimension) -> bool {
        match self.unit {
            SaidUnit::Fixed(unit) => unit.dimension() == dimension,
            SaidUnit::Kitchen(_) => dimension == Dimension::Volume,
        }
    }

    fn refuse(&self, why: &str, settle: &str) -> Refusal {
        let said = |id: &str| Text::new(id).with("written", self.written.as_str());
        Refusal::new(said(why), said(settle))
    }
}

impl fmt::Display for Spoken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.written)
    }
}

impl From<Spoken> for String {
    fn from(said: Spoken) -> String {
        said.written
    }
}

impl TryFrom<String> for Spoken {
    type Error = String;

    fn try_from(written: String) -> Result<Self, String> {
        written.parse()
    }
}

impl std::str::FromStr for Spoken {
    type Err = String;

    fn from_str(written: &str) -> Result<Self, String> {
        let written = written.trim();
        let mut rest = Reader { rest: written };
        let first = rest.number()?;
        let amount = if rest.times() {
            let each = rest.range_after()?;
            Amount { low: first * each.low, high: first * each.high }
        } else {
            rest.range_from(first)?
        };
        if amount.low > amount.high {
            return Err(format!("\"{written}\": the range runs backwards"));
        }
        if amount.low.abs() > MOST || amount.high.abs() > MOST {
            return Err(format!("\"{written}\": no amount is that large"));
        }
        let unit = rest.unit().ok_or_else(|| format!("\"{written}\": {}", rest.unit_fault()))?;
        Ok(Self { amount, unit, written: written.to_owned() })
    }
}

/// Reads an amount from left to right.
struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    fn skip_space(&mut self) {
        self.rest = self.rest.trim_start_matches([' ', '\u{a0}', '\u{202f}']);
    }

    fn take(&mut self, word: &str) -> bool {
        self.skip_space();
        match self.rest.strip_prefix(word) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }

    fn times(&mut self) -> bool {
        self.skip_space();
        let before = self.rest;
        let taken = self.take("x") || self.take("×") || self.take("*");
        self.skip_space();
        if taken && !self.rest.starts_with(|c: char| c.is_ascii_digit() || vulgar(c).is_some()) {
            self.rest = before;
            return false;
        }
        taken
    }

    fn range_after(&mut self) -> Result<Amount, String> {
        let low = self.number()?;
        self.range_from(low)
    }

    fn range_from(&mut self, low: f64) -> Result<Amount, String> {
        let to = self.take("–") || self.take("-") || self.take("to ");
        let high = if to { self.number()? } else { low };
        Ok(Amount { low, high })
    }

    /// A number: `12`, `0.5`, `0,5`, `½`, `1½`, `1 1/2`, `3/4`, with a sign if need be.
    fn number(&mut self) -> Result<f64, String> {
        let negative = self.take("-") || self.take("−");
        self.skip_space();
        let whole = self.decimal()?;
        let fraction = self.fraction(whole.is_some());
        let size = match (whole, fraction) {
            (Some(whole), Some((top, 0.0))) => {
                return Err(format!("{whole} {top}/0 has nothing below the line"));
            }
            (Some(top), None) if self.rest.starts_with('/') => self.below_the_line(top)?,
            (Some(whole), Some((top, bottom))) => whole + top / bottom,
            (Some(whole), None) => whole,
            (None, Some((top, bottom))) => top / bottom,
            (None, None) => return Err("an amount begins with a number".to_owned()),
        };
        Ok(if negative { -size } else { size })
    }

    /// The rest of `3/4` after the 3.
    fn below_the_line(&mut self, top: f64) -> Result<f64, String> {
        let before = self.rest;
        if self.take("/")
            && let Some(bottom) = self.decimal()?
            && bottom != 0.0
        {
            return Ok(top / bottom);
        }
        self.rest = before;
        Err(format!("{top}/… wants a number below the line"))
    }

    /// `½`, or after a whole number ` 1/2`.
    fn fraction(&mut self, after_whole: bool) -> Option<(f64, f64)> {
        let before = self.rest;
        self.skip_space();
        if let Some(found) = self.rest.chars().next().and_then(vulgar) {
            let mut characters = self.rest.chars();
            characters.next();
            self.rest = characters.as_str();
            return Some(found);
        }
        let spaced = before.len() != self.rest.len();
        if after_whole
            && spaced
            && let Ok(Some(top)) = self.decimal()
            && self.rest.starts_with('/')
            && self.take("/")
            && let Ok(Some(bottom)) = self.decimal()
        {
            return Some((top, bottom));
        }
        self.rest = before;
        None
    }

    /// Digits with one decimal mark; a mark that groups thousands is refused, since `1,500` is one
    /// and a half to some and fifteen hundred to others.
    fn decimal(&mut self) -> Result<Option<f64>, String> {
        let end = self
            .rest
            .find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','))
            .unwrap_or(self.rest.len());
        let (written, rest) = self.rest.split_at(end);
        let digits = written.trim_end_matches(['.', ',']);
        if digits.is_empty() {
            return Ok(None);
        }
        let marks = digits.matches(['.', ',']).count();
        let grouped = digits.rsplit([',', '.']).next().is_some_and(|tail| tail.len() == 3)
            && digits.contains(',');
        if marks > 1 || (grouped && !digits.starts_with("0,")) {
            return Err(format!("\"{digits}\" can be read in two ways: write it without commas"));
        }
        self.rest = rest;
        let value = digits.replace(',', ".").parse();
        value.map(Some).map_err(|_| format!("\"{digits}\" is no number"))
    }

    fn unit(&mut self) -> Option<SaidUnit> {
        self.skip_space();
        let written: String = self.rest.split_whitespace().collect::<Vec<_>>().join(" ");
        let spaced = written.replace('%', "% ").replace("  ", " ");
        for form in [written.as_str(), spaced.trim(), written.trim_end_matches('.')] {
            if let Some(unit) = Unit::from_written(form) {
                return Some(SaidUnit::Fixed(unit));
            }
            if let Some(measure) = KitchenMeasure::from_written(form) {
                return Some(SaidUnit::Kitchen(measure));
            }
        }
        written.is_empty().then_some(SaidUnit::Fixed(Unit::One))
    }

    fn unit_fault(&self) -> String {
        format!("\"{}\" is no unit known here", self.rest.trim())
    }
}

/// The value of a single-character fraction, as top and bottom.
fn vulgar(character: char) -> Option<(f64, f64)> {
    Some(match character {
        '½' => (1.0, 2.0),
        '⅓' => (1.0, 3.0),
        '⅔' => (2.0, 3.0),
        '¼' => (1.0, 4.0),
        '¾' => (3.0, 4.0),
        '⅕' => (1.0, 5.0),
        '⅖' => (2.0, 5.0),
        '⅗' => (3.0, 5.0),
        '⅘' => (4.0, 5.0),
        '⅙' => (1.0, 6.0),
        '⅚' => (5.0, 6.0),
        '⅛' => (1.0, 8.0),
        '⅜' => (3.0, 8.0),
        '⅝' => (5.0, 8.0),
        '⅞' => (7.0, 8.0),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(text: &str) -> (f64, f64, SaidUnit) {
        let said: Spoken = text.parse().unwrap();
        (said.amount.low, said.amount.high, said.unit)
    }

    #[test]
    fn people_write_amounts_in_many_ways() {
        let fixed = SaidUnit::Fixed;
        let kitchen = SaidUnit::Kitchen;
        assert_eq!(read("96 % vol"), (96.0, 96.0, fixed(Unit::PercentVolume)));
        assert_eq!(read("96% vol"), (96.0, 96.0, fixed(Unit::PercentVolume)));
        assert_eq!(read("0,5 l"), (0.5, 0.5, fixed(Unit::Litre)));
        assert_eq!(read("10–12 g"), (10.0, 12.0, fixed(Unit::Gram)));
        assert_eq!(read("6 to 8 weeks"), (6.0, 8.0, fixed(Unit::Week)));
        assert_eq!(read("1 1/2 cups"), (1.5, 1.5, kitchen(KitchenMeasure::Cup)));
        assert_eq!(read("¾ tsp"), (0.75, 0.75, kitchen(KitchenMeasure::Teaspoon)));
        assert_eq!(read("3/4 in"), (0.75, 0.75, fixed(Unit::Inch)));
        assert_eq!(read("20 fl oz"), (20.0, 20.0, kitchen(KitchenMeasure::FluidOunce)));
        assert_eq!(read("-4 °C"), (-4.0, -4.0, fixed(Unit::Celsius)));
        assert_eq!(read("12"), (12.0, 12.0, fixed(Unit::One)));
        assert_eq!(read("0.1 mg/kg bw/day"), (0.1, 0.1, fixed(Unit::MilligramPerBodyDay)));
    }

    #[test]
    fn what_can_be_read_in_two_ways_is_refused() {
        for text in
            ["1,500 g", "1.500.000 g", "12 parsecs", "", "g", "12–10 g", "1e300 kg", "3/0 g"]
        {
            assert!(text.parse::<Spoken>().is_err(), "{text}");
        }
    }

    #[test]
    fn a_spoon_without_a_kitchen_is_a_question() {
        let said: Spoken = "2 tbsp".parse().unwrap();
        let refusal = said.resolve(Dimension::Volume, None).unwrap_err();
        assert_eq!(refusal.why.id, "refused-whose-spoon");
        let metric = said.resolve(Dimension::Volume, Some(MeasureSystem::Metric)).unwrap();
        assert_eq!(metric.low, 30.0);
        let australian = said.resolve(Dimension::Volume, Some(MeasureSystem::Australian)).unwrap();
        assert_eq!(australian.low, 40.0);
        assert!(said.resolve(Dimension::Mass, Some(MeasureSystem::Metric)).is_err());
    }

    proptest! {
        #[test]
        fn any_text_is_read_or_refused_and_never_panics(text in "\\PC{0,24}") {
            let _ = text.parse::<Spoken>();
        }

        #[test]
        fn what_is_written_reads_back(value in 0.0..1e6f64, which in 0..Unit::ALL.len()) {
            let unit = Unit::ALL[which];
            let said: Spoken = format!("{value} {unit}").parse().unwrap();
            prop_assert_eq!(said.amount, Amount::exact(value));
            prop_assert_eq!(said.unit, SaidUnit::Fixed(unit));
        }
    }
}
