//! Money in whole cents: read as people write it, added without a float, split without a remainder.
//!
//! Only currencies whose unit has a hundredth are known here, so that a cent is always a hundredth.

use crate::Text;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::str::FromStr;

/// The largest amount that is read, in cents: ten million of the unit. Beyond it, somebody's finger
/// slipped.
const MOST: i64 = 1_000_000_000;

/// Currencies of ISO 4217 whose minor unit is a hundredth, by their codes (list one as published on
/// 2026-01-01; codes of funds are left out). Yen, won and the like have no cents, dinars have a
/// thousandth.
const HUNDREDTHS: &[&str] = &[
    "AED", "AFN", "ALL", "AMD", "AOA", "ARS", "AUD", "AWG", "AZN", "BAM", "BBD", "BDT", "BMD",
    "BND", "BOB", "BRL", "BSD", "BTN", "BWP", "BYN", "BZD", "CAD", "CDF", "CHF", "CNY", "COP",
    "CRC", "CUP", "CVE", "CZK", "DKK", "DOP", "DZD", "EGP", "ERN", "ETB", "EUR", "FJD", "FKP",
    "GBP", "GEL", "GHS", "GIP", "GMD", "GTQ", "GYD", "HKD", "HNL", "HTG", "HUF", "IDR", "ILS",
    "INR", "IRR", "JMD", "KES", "KGS", "KHR", "KPW", "KYD", "KZT", "LAK", "LBP", "LKR", "LRD",
    "LSL", "MAD", "MDL", "MGA", "MKD", "MMK", "MNT", "MOP", "MRU", "MUR", "MVR", "MWK", "MXN",
    "MYR", "MZN", "NAD", "NGN", "NIO", "NOK", "NPR", "NZD", "PAB", "PEN", "PGK", "PHP", "PKR",
    "PLN", "QAR", "RON", "RSD", "RUB", "SAR", "SBD", "SCR", "SDG", "SEK", "SGD", "SHP", "SLE",
    "SOS", "SRD", "SSP", "STN", "SVC", "SYP", "SZL", "THB", "TJS", "TMT", "TOP", "TRY", "TTD",
    "TWD", "TZS", "UAH", "USD", "UYU", "UZS", "VED", "VES", "WST", "XAD", "XCD", "XCG", "YER",
    "ZAR", "ZMW", "ZWG",
];

/// Signs, with the currencies that are written with them. A sign never chooses a currency: it only
/// has to fit the one that is named.
const SIGNS: &[(char, &[&str])] = &[
    ('£', &["EGP", "FKP", "GBP", "GIP", "SHP", "SSP", "SYP"]),
    ('€', &["EUR"]),
    (
        '$',
        &[
            "ARS", "AUD", "BBD", "BMD", "BND", "BSD", "BZD", "CAD", "COP", "FJD", "GYD", "HKD",
            "JMD", "KYD", "LRD", "MXN", "NAD", "NZD", "SBD", "SGD", "SRD", "TTD", "TWD", "USD",
            "UYU", "XCD",
        ],
    ),
];

/// A currency by its code in ISO 4217, such as `GBP`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Currency(&'static str);

impl Currency {
    /// The code.
    #[must_use]
    pub const fn code(self) -> &'static str {
        self.0
    }

    /// The amount that somebody wrote, of this currency: `28.00`, `28,50`, `£28`, `28.00 GBP`,
    /// `1 250.00`, `1,250.00`.
    ///
    /// ```
    /// use ground::{Cents, Currency};
    /// let pounds: Currency = "GBP".parse().unwrap();
    /// assert_eq!(pounds.read("£28"), Ok(Cents::new(2800)));
    /// assert_eq!(pounds.read("28,50"), Ok(Cents::new(2850)));
    /// assert_eq!(pounds.read("1,250").unwrap_err().id, "money-two-ways");
    /// ```
    ///
    /// # Errors
    /// Why it cannot be read, as a message: no number, a number that can be read in two ways, finer
    /// than a cent, too large, or of another currency.
    pub fn read(self, written: &str) -> Result<Cents, Text> {
        let number = self.without_sign(written.trim())?;
        let (number, minus) = match number.strip_prefix(['-', '−']) {
            Some(rest) => (rest.trim_start(), true),
            None => (number, false),
        };
        let cents = hundredths(number)?;
        if cents > MOST {
            return Err(Text::new("money-too-much"));
        }
        Ok(Cents(if minus { -cents } else { cents }))
    }

    /// The number alone, once the sign or code at one of its ends was seen to fit.
    fn without_sign(self, written: &str) -> Result<&str, Text> {
        let marks = |c: char| !c.is_ascii_digit() && !['-', '−', '.', ','].contains(&c);
        let before = written.trim_start_matches(marks);
        let number = before.trim_end_matches(marks);
        let first = written.strip_suffix(before).unwrap_or_default().trim();
        let last = before.strip_prefix(number).unwrap_or_default().trim();
        let other = |said: &str| Err(Text::new("money-other-currency").with("said", said));
        match (first, last) {
            ("", "") => Ok(number),
            (said, "") | ("", said) if self.is_said(said) => Ok(number),
            (said, "") | ("", said) => other(said),
            (one, two) => other(&format!("{one} {two}")),
        }
    }

    fn is_said(self, said: &str) -> bool {
        let mut signs = said.chars();
        let sign = signs.next().filter(|_| signs.as_str().is_empty());
        let fits =
            |(known, codes): &(char, &[&str])| Some(*known) == sign && codes.contains(&self.0);
        said == self.0 || SIGNS.iter().any(fits)
    }
}

/// The hundredths of a number without sign.
///
/// One mark with one or two digits behind it is the decimal mark; marks or spaces before groups of
/// three group. One mark before three digits can be either, and is refused.
fn hundredths(number: &str) -> Result<i64, Text> {
    let two_ways = || Text::new("money-two-ways");
    let marks: Vec<char> = number.chars().filter(|c| !c.is_ascii_digit()).collect();
    let point = marks.last().copied().filter(|mark| {
        let once = marks.iter().filter(|other| *other == mark).count() == 1;
        ['.', ','].contains(mark) && once
    });
    let (whole, part) = match point {
        None => (number, ""),
        Some(mark) => number.split_once(mark).unwrap_or((number, "")),
    };
    match (part.len(), marks.as_slice()) {
        (3, [_]) => return Err(two_ways()),
        (0, _) if point.is_some() => return Err(Text::new("money-no-number")),
        (0..=2, _) => {}
        _ => return Err(Text::new("money-finer-than-a-cent")),
    }
    let whole = ungrouped(whole)?;
    let part = format!("{part:0<2}");
    format!("{whole}{part}").parse().map_err(|_| match whole.len() {
        0 => Text::new("money-no-number"),
        _ => Text::new("money-too-much"),
    })
}

/// The digits before the decimal mark, once their groups were seen to be of three.
fn ungrouped(whole: &str) -> Result<String, Text> {
    let spaces = |c: char| [' ', '\u{a0}', '\u{202f}'].contains(&c);
    let mark = |c: char| spaces(c) || ['.', ',', '\'', '’'].contains(&c);
    let mut used: Vec<char> = whole.chars().filter(|c| !c.is_ascii_digit()).collect();
    used.dedup();
    let groups: Vec<&str> = whole.split(mark).collect();
    let threes = groups.iter().skip(1).all(|group| group.len() == 3);
    let first = groups.first().is_some_and(|group| (1..=3).contains(&group.len()));
    let digits = groups.concat();
    if digits.is_empty() || !digits.chars().all(|c| c.is_ascii_digit()) {
        return Err(Text::new("money-no-number"));
    }
    match (groups.len(), used.len()) {
        (1, _) => Ok(digits),
        (_, 1) if threes && first => Ok(digits),
        _ => Err(Text::new("money-two-ways")),
    }
}

impl FromStr for Currency {
    type Err = String;

    fn from_str(code: &str) -> Result<Self, String> {
        let known = HUNDREDTHS.iter().find(|known| **known == code);
        known.map(|code| Self(code)).ok_or_else(|| HUNDREDTHS.join(", "))
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.0)
    }
}

impl Serialize for Currency {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.0)
    }
}

impl<'de> Deserialize<'de> for Currency {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let code = String::deserialize(from)?;
        code.parse().map_err(serde::de::Error::custom)
    }
}

/// An amount of money in whole cents; below zero, it is owed.
///
/// Sums and products that do not fit are nothing, never a wrong number.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
#[serde(transparent)]
pub struct Cents(i64);

impl Cents {
    /// Nothing.
    pub const ZERO: Cents = Cents(0);

    /// So many cents.
    #[must_use]
    pub const fn new(cents: i64) -> Self {
        Self(cents)
    }

    /// How many cents.
    #[must_use]
    pub const fn get(self) -> i64 {
        self.0
    }

    /// The sum.
    #[must_use]
    pub fn plus(self, other: Self) -> Option<Self> {
        self.0.checked_add(other.0).map(Self)
    }

    /// The difference.
    #[must_use]
    pub fn minus(self, other: Self) -> Option<Self> {
        self.0.checked_sub(other.0).map(Self)
    }

    /// So many times this.
    #[must_use]
    pub fn times(self, count: u32) -> Option<Self> {
        self.0.checked_mul(i64::from(count)).map(Self)
    }

    /// The sum of all.
    #[must_use]
    pub fn sum(all: impl IntoIterator<Item = Self>) -> Option<Self> {
        all.into_iter().try_fold(Self::ZERO, Self::plus)
    }

    /// One of so many equal shares, up to a whole cent: all together they are no less than this.
    #[must_use]
    pub fn share_up(self, count: u32) -> Option<Self> {
        let down = self.share_down(count)?;
        let exact = self.0.checked_rem(i64::from(count))? == 0;
        if exact { Some(down) } else { down.plus(Self(1)) }
    }

    /// One of so many equal shares, down to a whole cent: all together they are no more than this.
    #[must_use]
    pub fn share_down(self, count: u32) -> Option<Self> {
        self.0.checked_div_euclid(i64::from(count)).map(Self)
    }

    /// Split by weight, by the method of the largest remainder: each share is rounded down, and the
    /// cents left over go one by one to the shares that lost most, the earlier first where two lost
    /// the same. The shares sum to the whole exactly. None where no weight is above zero.
    ///
    /// ```
    /// use ground::Cents;
    /// let split = Cents::new(1000).split(&[1, 1, 1]).unwrap();
    /// assert_eq!(split.iter().map(|share| share.get()).collect::<Vec<_>>(), [334, 333, 333]);
    /// ```
    #[must_use]
    pub fn split(self, weights: &[u32]) -> Option<Vec<Self>> {
        let all: u128 = weights.iter().map(|weight| u128::from(*weight)).sum();
        if all == 0 {
            return None;
        }
        let whole = u128::from(self.0.unsigned_abs());
        let product = |weight: &u32| whole * u128::from(*weight);
        let mut shares = Vec::with_capacity(weights.len());
        let mut lost = Vec::with_capacity(weights.len());
        for (at, weight) in weights.iter().enumerate() {
            shares.push(product(weight).checked_div(all)?);
            lost.push((std::cmp::Reverse(product(weight).checked_rem(all)?), at));
        }
        lost.sort_unstable();
        let left = whole.checked_sub(shares.iter().sum())?;
        for (_, at) in lost.into_iter().take(usize::try_from(left).ok()?) {
            *shares.get_mut(at)? += 1;
        }
        let signed = |share: u128| i64::try_from(share).ok().map(|share| self.0.signum() * share);
        shares.into_iter().map(|share| signed(share).map(Self)).collect()
    }
}

/// A share of a price in whole millionths, such as what a card payment costs: 1.5 % are 15 000.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Millionths(u32);

impl Millionths {
    /// How many millionths.
    #[must_use]
    pub const fn get(self) -> u32 {
        self.0
    }

    /// A share that somebody wrote in per cent: `1.5 %`, `2,75 %`; below all of it, and with four
    /// decimals at most.
    ///
    /// # Errors
    /// Why it cannot be read, as a message.
    pub fn read(written: &str) -> Result<Self, Text> {
        let no_share = || Text::new("money-no-share");
        let number = written.trim().strip_suffix('%').ok_or_else(no_share)?.trim_end();
        let (whole, part) = number.split_once(['.', ',']).unwrap_or((number, "0"));
        let digits = |said: &str, most: usize| {
            (1..=most).contains(&said.len()) && said.chars().all(|c| c.is_ascii_digit())
        };
        if !digits(whole, 2) || !digits(part, 4) {
            return Err(no_share());
        }
        format!("{whole}{part:0<4}").parse().map(Self).map_err(|_| no_share())
    }

    /// This share of an amount, up to a whole cent, as nobody rounds a fee down.
    #[must_use]
    pub fn of_up(self, amount: Cents) -> Option<Cents> {
        let product = i128::from(amount.0) * i128::from(self.0);
        let down = product.div_euclid(1_000_000);
        let up = if product.rem_euclid(1_000_000) == 0 { down } else { down + 1 };
        i64::try_from(up).ok().map(Cents)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read(written: &str) -> Result<i64, String> {
        let pounds: Currency = "GBP".parse().unwrap();
        pounds.read(written).map(Cents::get).map_err(|why| why.id)
    }

    #[test]
    fn people_write_money_in_many_ways() {
        let same =
            ["28", "28.00", "28,00", "28.0", "£28", "£ 28.00", "28 GBP", "GBP 28.00", " 28 "];
        for written in same {
            assert_eq!(read(written), Ok(2800), "{written}");
        }
        let thousands = ["1250.50", "1,250.50", "1.250,50", "1 250.50", "1\u{202f}250,5"];
        for written in thousands {
            assert_eq!(read(written), Ok(125_050), "{written}");
        }
        assert_eq!(read("1,234,567"), Ok(123_456_700));
        assert_eq!(read("0.07"), Ok(7));
        assert_eq!(read("-3.20"), Ok(-320));
        assert_eq!(read("£−3"), Ok(-300));
    }

    #[test]
    fn what_can_be_read_in_two_ways_or_in_none_is_refused() {
        let refused = [
            ("1,250", "money-two-ways"),
            ("1.250", "money-two-ways"),
            ("0.500", "money-two-ways"),
            ("1,25,000.00", "money-two-ways"),
            ("12 50", "money-two-ways"),
            ("1.2345", "money-finer-than-a-cent"),
            ("28.", "money-no-number"),
            (".50", "money-no-number"),
            ("", "money-no-number"),
            ("£", "money-no-number"),
            ("€28", "money-other-currency"),
            ("$28", "money-other-currency"),
            ("28 EUR", "money-other-currency"),
            ("£28 GBP", "money-other-currency"),
            ("28 or so", "money-other-currency"),
            ("2e3", "money-no-number"),
            ("10000000.01", "money-too-much"),
            ("99999999999999999999999999", "money-too-much"),
            ("２８", "money-other-currency"),
        ];
        for (written, why) in refused {
            assert_eq!(read(written), Err(why.to_owned()), "{written}");
        }
    }

    #[test]
    fn a_sign_fits_its_currency_and_never_chooses_it() {
        let of = |code: &str, written: &str| {
            code.parse::<Currency>().unwrap().read(written).map(Cents::get).ok()
        };
        assert_eq!(
            (of("USD", "$5"), of("CAD", "$5"), of("EUR", "$5")),
            (Some(500), Some(500), None)
        );
        assert_eq!(of("EUR", "5,50 €"), Some(550));
    }

    #[test]
    fn currencies_without_hundredths_are_not_known() {
        for code in ["JPY", "KWD", "XAU", "gbp", "GB", "EUO", ""] {
            assert!(code.parse::<Currency>().is_err(), "{code}");
        }
        assert!(HUNDREDTHS.is_sorted());
    }

    #[test]
    fn a_share_is_read_without_a_float() {
        let read = |written: &str| Millionths::read(written).map(Millionths::get).ok();
        assert_eq!(read("1.5 %"), Some(15_000));
        assert_eq!(read("2,75%"), Some(27_500));
        assert_eq!(read("0 %"), Some(0));
        for written in ["1.5", "100 %", "-1 %", "1.23456 %", "%", "1.2.3 %", "1. %"] {
            assert_eq!(read(written), None, "{written}");
        }
    }

    #[test]
    fn a_fee_is_never_rounded_down() {
        let share = Millionths::read("1.5 %").unwrap();
        let of = |cents| share.of_up(Cents::new(cents)).unwrap().get();
        assert_eq!((of(2800), of(2801), of(1), of(0)), (42, 43, 1, 0));
    }

    proptest! {
        #[test]
        fn a_split_loses_no_cent_and_strays_less_than_one_from_its_weight(
            whole in -1_000_000_000_000..1_000_000_000_000i64,
            weights in proptest::collection::vec(0..1000u32, 1..40),
        ) {
            let shares = Cents(whole).split(&weights);
            let all: u32 = weights.iter().sum();
            prop_assert_eq!(shares.is_some(), all > 0);
            let shares = shares.unwrap_or_default();
            if all > 0 {
                prop_assert_eq!(Cents::sum(shares.iter().copied()), Some(Cents(whole)));
            }
            for (share, weight) in shares.iter().zip(&weights) {
                let strays = i128::from(share.0) * i128::from(all)
                    - i128::from(whole) * i128::from(*weight);
                prop_assert!(strays.abs() < i128::from(all));
            }
        }

        #[test]
        fn what_is_written_reads_back(cents in -MOST..=MOST) {
            let sign = if cents < 0 { "-" } else { "" };
            let (whole, part) = (cents.abs() / 100, cents.abs() % 100);
            prop_assert_eq!(read(&format!("{sign}{whole}.{part:02}")), Ok(cents));
            prop_assert_eq!(read(&format!("{sign}{whole},{part:02}")), Ok(cents));
        }

        #[test]
        fn any_text_is_read_or_refused_and_never_panics(text in "\\PC{0,24}") {
            let _ = (read(&text), Millionths::read(&text));
        }

        #[test]
        fn equal_shares_lie_around_the_whole(cents in -MOST..=MOST, count in 1..500u32) {
            let all = |share: Option<Cents>| share.unwrap().times(count).unwrap();
            prop_assert!(all(Cents(cents).share_up(count)) >= Cents(cents));
            prop_assert!(all(Cents(cents).share_down(count)) <= Cents(cents));
        }
    }
}
