//! Numbers as people read them: rounded by what can be weighed or poured, never to nothing.

use ground::Unit;

/// Which way a number is rounded for display. The unrounded number stays in the JSON.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest.
    Nearest,
    /// Downward: for a limit or an allowance.
    Down,
    /// Upward: for a load held against a limit.
    Up,
}

/// How finely a unit is shown.
enum Grain {
    /// Whole from 10 up, tenths from 1 up, two significant digits below: scales and jugs.
    Scale,
    /// So many decimals, two significant digits where that would show nothing.
    Decimals(i32),
    /// Three significant digits from 100 up, two below: small masses, which are doubtful anyway.
    Significant,
    /// Three significant digits.
    Three,
    /// Tenths below 100, two significant digits where that would show nothing, three from 100 up: what
    /// stands beside an amount is no finer than it.
    Beside,
}

fn grain(unit: Unit) -> Grain {
    match unit {
        Unit::Kilogram
        | Unit::Litre
        | Unit::Kilometre
        | Unit::Mile
        | Unit::Hectare
        | Unit::Acre
        | Unit::GramPer100Millilitre
        | Unit::GramPerLitre
        | Unit::GramPerMillilitre => Grain::Three,
        Unit::Celsius
        | Unit::Fahrenheit
        | Unit::PercentMass
        | Unit::PercentVolume
        | Unit::DegreesBrix => Grain::Decimals(1),
        Unit::One => Grain::Decimals(2),
        Unit::Milligram
        | Unit::Microgram
        | Unit::MilligramPerKilogram
        | Unit::MicrogramPerKilogram
        | Unit::MilligramPerGram
        | Unit::MilligramPerLitre
        | Unit::MilligramPerBody
        | Unit::MicrogramPerBody
        | Unit::MilligramPerDay
        | Unit::MicrogramPerDay
        | Unit::MilligramPerBodyDay
        | Unit::MicrogramPerBodyDay => Grain::Significant,
        _ => Grain::Scale,
    }
}

/// A number in a unit, rounded, without the unit.
///
/// ```
/// use ground::Unit;
/// use page::{Rounding, numerals};
/// assert_eq!(numerals(36.4, Unit::Millilitre, Rounding::Nearest), "36");
/// assert_eq!(numerals(7.96, Unit::Milligram, Rounding::Down), "7.9");
/// assert_eq!(numerals(0.004, Unit::Gram, Rounding::Nearest), "0.004");
/// ```
#[must_use]
pub fn numerals(value: f64, unit: Unit, rounding: Rounding) -> String {
    grained(value, &grain(unit), rounding)
}

/// A number that stands beside an amount in another unit.
pub(crate) fn beside(value: f64, rounding: Rounding) -> String {
    grained(value, &Grain::Beside, rounding)
}

fn grained(value: f64, grain: &Grain, rounding: Rounding) -> String {
    if !value.is_finite() {
        return "?".to_owned();
    }
    let decimals = decimals(value, grain);
    let whole = round(shifted(value, decimals), rounding);
    let rounded = shifted(whole, -decimals);
    let places = usize::try_from(decimals).unwrap_or(0);
    grouped(&format!("{rounded:.places$}"))
}

/// A whole number, its digits in groups of three from 10 000 up.
#[must_use]
pub fn whole(count: i64) -> String {
    grouped(&count.to_string())
}

/// How many decimals are shown; below zero, so many digits before the point are zeros.
fn decimals(value: f64, grain: &Grain) -> i32 {
    let size = magnitude(value);
    let significant = |digits: i32| digits - 1 - size;
    match *grain {
        Grain::Scale if size >= 1 => 0,
        Grain::Scale if size == 0 => 1,
        Grain::Scale => significant(2),
        Grain::Decimals(places) if size >= 1 - places => places,
        Grain::Decimals(_) => significant(2),
        Grain::Significant if size >= 2 => significant(3),
        Grain::Significant => significant(2),
        Grain::Beside if size == 0 || size == 1 => 1,
        Grain::Beside if size < 0 => significant(2),
        Grain::Three | Grain::Beside => significant(3),
    }
}

/// The power of ten of the first digit: 2 for 345, −1 for 0.5; 0 for zero.
pub(crate) fn magnitude(value: f64) -> i32 {
    // Written by the standard library in exact decimal, so that 999.9999 is no 1000.
    let written = format!("{value:e}");
    let power = written.split_once('e').map_or("0", |(_, power)| power);
    power.parse().unwrap_or(0)
}

/// Ten to a whole power.
pub(crate) fn ten_to(power: i32) -> f64 {
    shifted(1.0, power)
}

/// A number with its point moved so many digits to the right. Powers of ten are exact up to 22, so
/// that one multiplication or division rounds once.
fn shifted(value: f64, digits: i32) -> f64 {
    let power = (0..digits.unsigned_abs()).fold(1.0, |product, _| product * 10.0);
    if digits < 0 { value / power } else { value * power }
}

/// A billionth of a number is an error of arithmetic, no reason to step down or up.
fn round(scaled: f64, rounding: Rounding) -> f64 {
    let near = scaled.round();
    if (scaled - near).abs() <= 1e-9 * near.abs().max(1.0) {
        return near;
    }
    match rounding {
        Rounding::Nearest => near,
        Rounding::Down => scaled.floor(),
        Rounding::Up => scaled.ceil(),
    }
}

/// A number with so many decimals, zeros too.
pub(crate) fn fixed(value: f64, places: usize) -> String {
    spaced(&format!("{value:.places$}"))
}

/// Digits as SI writes them, with no zero at the end that claims precision.
fn grouped(digits: &str) -> String {
    let plain = if digits.contains('.') {
        digits.trim_end_matches('0').trim_end_matches('.')
    } else {
        digits
    };
    spaced(plain)
}

/// Digits as SI writes them: groups of three from five digits up, a true minus, none before zero.
pub(crate) fn spaced(digits: &str) -> String {
    let (sign, digits) = match digits.strip_prefix('-') {
        Some(rest) if rest.contains(|c| matches!(c, '1'..='9')) => ("−", rest),
        Some(rest) => ("", rest),
        None => ("", digits),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let mut written = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && whole.len() > 4 && (whole.len() - at) % 3 == 0 {
            written.push('\u{202F}');
        }
        written.push(digit);
    }
    if !part.is_empty() {
        written.push('.');
        written.push_str(part);
    }
    format!("{sign}{written}")
}

/// A share as so many in so many, with the smallest of the usual numbers: 0.95 is 19 in 20.
///
/// ```
/// use ground::Fraction;
/// assert_eq!(page::so_many_in(Fraction::from_percent(95.0)), Some((19, 20)));
/// assert_eq!(page::so_many_in(Fraction::from_share(0.123_456)), None);
/// ```
#[must_use]
pub fn so_many_in(share: ground::Fraction) -> Option<(u32, u32)> {
    let share = share.share();
    [1, 2, 3, 4, 5, 10, 20, 50, 100, 1000].into_iter().find_map(|of| {
        let many = share * f64::from(of);
        let near = (0.0..=f64::from(of)).contains(&many) && (many - many.round()).abs() < 1e-9;
        near.then(|| (many.round() as u32, of))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(value: f64, unit: Unit) -> String {
        numerals(value, unit, Rounding::Nearest)
    }

    #[test]
    fn what_is_poured_is_shown_as_finely_as_it_can_be_poured() {
        assert_eq!(near(1120.4, Unit::Millilitre), "1120");
        assert_eq!(near(36.4, Unit::Gram), "36");
        assert_eq!(near(5.04, Unit::Gram), "5");
        assert_eq!(near(9.96, Unit::Gram), "10");
        assert_eq!(near(0.0441, Unit::Gram), "0.044");
        assert_eq!(near(39.96, Unit::PercentVolume), "40");
        assert_eq!(near(0.854, Unit::One), "0.85");
        assert_eq!(near(12_345.0, Unit::Milligram), "12\u{202F}300");
        assert_eq!(near(0.0, Unit::Gram), "0");
        assert_eq!(near(-5.25, Unit::Celsius), "−5.3");
    }

    #[test]
    fn a_number_that_arithmetic_left_a_hair_below_is_not_stepped_down() {
        assert_eq!(numerals(0.1 + 0.7, Unit::Gram, Rounding::Down), "0.8");
        assert_eq!(numerals(29.999_999_999_999_996, Unit::Gram, Rounding::Down), "30");
    }

    #[test]
    fn decimals_that_were_asked_for_stay() {
        assert_eq!(fixed(799.999, 1), "800.0");
        assert_eq!(fixed(-0.04, 1), "0.0");
        assert_eq!(fixed(-12_345.25, 1), "−12\u{202F}345.2");
    }

    #[test]
    fn large_counts_are_grouped_without_a_comma_that_could_be_a_decimal_mark() {
        assert_eq!(whole(8192), "8192");
        assert_eq!(whole(-1_234_567), "−1\u{202F}234\u{202F}567");
    }

    fn read(said: &str) -> f64 {
        let plain: String = said.replace('−', "-").replace('\u{202F}', "");
        plain.parse().unwrap()
    }

    proptest! {
        #[test]
        fn a_limit_never_reads_higher_and_a_load_never_lower(
            value in 1e-9..1e9_f64,
            at in 0..Unit::ALL.len(),
        ) {
            let unit = Unit::ALL[at];
            let hair = 2e-9 * value;
            prop_assert!(read(&numerals(value, unit, Rounding::Down)) <= value + hair);
            prop_assert!(read(&numerals(value, unit, Rounding::Up)) >= value - hair);
        }

        #[test]
        fn something_never_reads_as_nothing(value in 1e-9..1e9_f64, at in 0..Unit::ALL.len()) {
            for rounding in [Rounding::Nearest, Rounding::Down, Rounding::Up] {
                prop_assert!(read(&numerals(value, Unit::ALL[at], rounding)) > 0.0);
            }
        }
    }
}
