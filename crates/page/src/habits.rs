//! What a reader is used to: measures beside the metric ones, and the order of a date.
//!
//! Everything inside is metric, and so is what is computed, kept and exported. What is shown leads with the
//! metric figure too: limits and labels rest on it, and a second one beside it is only a help. Doses and
//! limits in milligrams, shares and times have no other measure, and stay alone.

use ground::{Dimension, KitchenMeasure, MeasureSystem, SaidUnit, Unit};
use serde::{Deserialize, Serialize};

/// What a reader is used to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, rename_all = "kebab-case")]
pub struct Habits {
    /// By which measures they weigh and pour.
    pub measures: Measures,
    /// In which order they read a date.
    pub dates: DateOrder,
}

/// The measures that stand beside the metric ones.
///
/// All factors are exact. Ounce, pound, inch, foot, mile and acre are the same in both: NIST Special
/// Publication 811 (2008), appendix B, and Handbook 44, appendix C; Weights and Measures Act 1985 (United
/// Kingdom), schedule 1 as enacted. Fluid ounces, pints and quarts are not: see [`MeasureSystem`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Measures {
    /// None: metric alone.
    #[default]
    Metric,
    /// US customary: the cup of 236.588 ml, the quart of 946 ml.
    Us,
    /// Imperial: the pint of 568 ml.
    Imperial,
}

/// The order of a date. The month is a word in each, so that none can be taken for another.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum DateOrder {
    /// As in 2 May 2027.
    #[default]
    DayMonthYear,
    /// As in May 2, 2027.
    MonthDayYear,
    /// As in 2027 May 2: the order of ISO 8601.
    YearMonthDay,
}

impl DateOrder {
    /// The message that says a date in this order.
    pub(crate) fn message(self) -> &'static str {
        match self {
            Self::DayMonthYear => "day",
            Self::MonthDayYear => "day-month-first",
            Self::YearMonthDay => "day-year-first",
        }
    }
}

/// A unit, and from how many of it on it is used.
type Step = (SaidUnit, f64);

const fn from(least: f64, unit: Unit) -> Step {
    (SaidUnit::Fixed(unit), least)
}

const fn poured(least: f64, measure: KitchenMeasure) -> Step {
    (SaidUnit::Kitchen(measure), least)
}

// Scales show tenths of an ounce. Below a millimetre nobody has another rule, and below half a fluid ounce a
// spoon is filled, whose size is the kitchen's.
const MASSES: &[Step] = &[from(1.0, Unit::Pound), from(0.1, Unit::Ounce)];
const LENGTHS: &[Step] = &[from(0.5, Unit::Mile), from(3.0, Unit::Foot), from(0.039, Unit::Inch)];
const AREAS: &[Step] = &[from(0.5, Unit::Acre), from(1.0, Unit::SquareFoot)];
const WARMTHS: &[Step] = &[from(f64::NEG_INFINITY, Unit::Fahrenheit)];
const US_VOLUMES: &[Step] = &[
    poured(1.0, KitchenMeasure::Quart),
    poured(1.0, KitchenMeasure::Cup),
    poured(0.5, KitchenMeasure::FluidOunce),
];
const IMPERIAL_VOLUMES: &[Step] =
    &[poured(1.0, KitchenMeasure::Pint), poured(0.5, KitchenMeasure::FluidOunce)];

impl Measures {
    /// The unit in which amounts are said beside a metric one, by the largest of them; none where it is
    /// said in that one alone.
    pub(crate) fn beside(self, amounts: [f64; 2], metric: Unit) -> Option<SaidUnit> {
        if !is_weighed_or_measured(metric) || !amounts.iter().all(|amount| amount.is_finite()) {
            return None;
        }
        let largest = amounts.into_iter().map(f64::abs).fold(0.0, f64::max);
        let fits = |step: &&Step| self.converted(largest, metric, step.0) >= step.1;
        self.steps(metric.dimension()).iter().find(fits).map(|(unit, _)| *unit)
    }

    /// An amount in a metric unit, in another unit of the same dimension.
    pub(crate) fn converted(self, amount: f64, metric: Unit, other: SaidUnit) -> f64 {
        let base = metric.to_base(amount);
        match other {
            SaidUnit::Fixed(unit) => unit.of_base(base),
            SaidUnit::Kitchen(measure) => {
                let one = self.system().and_then(|system| measure.volume(system));
                one.map_or(f64::NAN, |one| base / one.ml())
            }
        }
    }

    fn system(self) -> Option<MeasureSystem> {
        match self {
            Self::Metric => None,
            Self::Us => Some(MeasureSystem::UsCustomary),
            Self::Imperial => Some(MeasureSystem::Imperial),
        }
    }

    /// The units of a dimension, the largest first.
    fn steps(self, dimension: Dimension) -> &'static [Step] {
        match (dimension, self) {
            (_, Self::Metric) => &[],
            (Dimension::Mass, _) => MASSES,
            (Dimension::Length, _) => LENGTHS,
            (Dimension::Area, _) => AREAS,
            (Dimension::Temperature, _) => WARMTHS,
            (Dimension::Volume, Self::Us) => US_VOLUMES,
            (Dimension::Volume, Self::Imperial) => IMPERIAL_VOLUMES,
            _ => &[],
        }
    }
}

/// Metric units of scales, jugs, rules, maps and thermometers.
fn is_weighed_or_measured(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Kilogram
            | Unit::Gram
            | Unit::Litre
            | Unit::Decilitre
            | Unit::Centilitre
            | Unit::Millilitre
            | Unit::Kilometre
            | Unit::Metre
            | Unit::Centimetre
            | Unit::Millimetre
            | Unit::Hectare
            | Unit::SquareMetre
            | Unit::Celsius
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Catalogue, Rounding};
    use proptest::prelude::*;
    use std::sync::LazyLock;

    static CATALOGUE: LazyLock<Catalogue> = LazyLock::new(Catalogue::english);

    fn used_to(measures: Measures) -> Catalogue {
        CATALOGUE.with_habits(Habits { measures, ..Habits::default() })
    }

    fn said(measures: Measures, amount: f64, unit: Unit) -> String {
        used_to(measures).amount(amount, unit, Rounding::Nearest).replace('\u{a0}', " ")
    }

    /// How many of a metric unit one of another is, held against what is published.
    fn holds(measures: Measures, other: SaidUnit, metric: Unit, published: f64) {
        let one = 1.0 / measures.converted(1.0, metric, other);
        // A division and its reciprocal round twice.
        assert!((one / published - 1.0).abs() < 1e-15, "{one} {published}");
    }

    #[test]
    fn one_of_each_is_what_is_published() {
        let holds = |unit, metric, published| {
            holds(Measures::Us, SaidUnit::Fixed(unit), metric, published);
            holds(Measures::Imperial, SaidUnit::Fixed(unit), metric, published);
        };
        // NIST SP 811 (2008), appendix B.8, in bold as exact; Weights and Measures Act 1985, schedule 1,
        // parts I and V: the yard of 0.9144 m, the pound of 0.453 592 37 kg.
        holds(Unit::Pound, Unit::Kilogram, 0.453_592_37);
        holds(Unit::Ounce, Unit::Gram, 28.349_523_125);
        holds(Unit::Inch, Unit::Centimetre, 2.54);
        holds(Unit::Foot, Unit::Metre, 0.9144 / 3.0);
        holds(Unit::Mile, Unit::Kilometre, 1.609_344);
        holds(Unit::SquareFoot, Unit::SquareMetre, 0.092_903_04);
        // Weights and Measures Act 1985, schedule 1, part II: an acre has 4,840 square yards.
        holds(Unit::Acre, Unit::SquareMetre, 4840.0 * 0.9144 * 0.9144);
    }

    #[test]
    fn a_measure_of_the_kitchen_is_the_one_of_its_country() {
        let holds = |measures, measure, published| {
            holds(measures, SaidUnit::Kitchen(measure), Unit::Millilitre, published);
        };
        // NIST Handbook 44, appendix C, units of liquid volume.
        holds(Measures::Us, KitchenMeasure::FluidOunce, 29.573_529_562_5);
        holds(Measures::Us, KitchenMeasure::Cup, 236.588_236_5);
        holds(Measures::Us, KitchenMeasure::Quart, 946.352_946);
        // Weights and Measures Act 1985, schedule 1, part IV: the gallon of 4.546 09 dm³ has eight pints of
        // twenty fluid ounces.
        holds(Measures::Imperial, KitchenMeasure::FluidOunce, 28.413_062_5);
        holds(Measures::Imperial, KitchenMeasure::Pint, 568.261_25);
    }

    #[test]
    fn what_is_weighed_or_measured_has_a_second_figure() {
        let us = |amount, unit| said(Measures::Us, amount, unit);
        let imperial = |amount, unit| said(Measures::Imperial, amount, unit);
        assert_eq!(us(150.0, Unit::Gram), "150 g (5.3 oz)");
        assert_eq!(us(453.592_37, Unit::Gram), "454 g (1 lb)");
        assert_eq!(us(81.0, Unit::Kilogram), "81 kg (179 lb)");
        assert_eq!(us(150.0, Unit::Millilitre), "150 ml (5.1 fl oz)");
        assert_eq!(imperial(150.0, Unit::Millilitre), "150 ml (5.3 fl oz)");
        assert_eq!(us(236.588_236_5, Unit::Millilitre), "237 ml (1 cup)");
        assert_eq!(us(2.2, Unit::Litre), "2.2 l (2.3 quarts)");
        assert_eq!(imperial(2.2, Unit::Litre), "2.2 l (3.9 pints)");
        assert_eq!(imperial(46.0, Unit::Millimetre), "46 mm (1.8 in)");
        assert_eq!(imperial(600.0, Unit::Metre), "600 m (1970 ft)");
        assert_eq!(us(1.2, Unit::Kilometre), "1.2 km (0.75 miles)");
        assert_eq!(us(600.0, Unit::SquareMetre), "600 m² (6460 ft²)");
        assert_eq!(imperial(2.0, Unit::Hectare), "2 ha (4.9 acres)");
        assert_eq!(us(80.0, Unit::Celsius), "80 °C (176 °F)");
        assert_eq!(us(-40.0, Unit::Celsius), "−40 °C (−40 °F)");
    }

    #[test]
    fn a_range_says_both_its_units_once() {
        let range = used_to(Measures::Us).range(50.0, 150.0, Unit::Centimetre);
        assert_eq!(range, "50 to 150\u{a0}cm (1.6 to 4.9\u{a0}ft)");
        let single = used_to(Measures::Us).range(3.0, 3.0, Unit::Millimetre);
        assert_eq!(single, "3\u{a0}mm (0.12\u{a0}in)");
    }

    #[test]
    fn what_is_no_thing_to_weigh_stays_alone() {
        for unit in Unit::ALL.iter().filter(|unit| !is_weighed_or_measured(**unit)) {
            let metric = said(Measures::Metric, 250.0, *unit);
            assert_eq!(said(Measures::Us, 250.0, *unit), metric);
            assert_eq!(said(Measures::Imperial, 250.0, *unit), metric);
        }
        assert_eq!(said(Measures::Us, 1.9, Unit::Gram), "1.9 g");
        assert_eq!(said(Measures::Us, 5.0, Unit::Millilitre), "5 ml");
        assert_eq!(said(Measures::Us, f64::INFINITY, Unit::Gram), "? g");
    }

    #[test]
    fn a_date_names_its_month_in_every_order() {
        let day = |dates| {
            let habits = Habits { dates, ..Habits::default() };
            let day = jiff::civil::date(2027, 5, 2);
            CATALOGUE.with_habits(habits).day(day).replace('\u{a0}', " ")
        };
        assert_eq!(day(DateOrder::DayMonthYear), "2 May 2027");
        assert_eq!(day(DateOrder::MonthDayYear), "May 2, 2027");
        assert_eq!(day(DateOrder::YearMonthDay), "2027 May 2");
    }

    #[test]
    fn a_json_document_hangs_on_nobodys_habits() {
        let message = ground::Text::new("spread-exact").amount("middle", 150.0, Unit::Gram);
        let document = serde_json::json!([message]);
        let us = used_to(Measures::Us);
        assert_eq!(us.add_texts(document.clone()), CATALOGUE.add_texts(document));
    }

    #[test]
    fn habits_that_nobody_chose_are_metric() {
        let read = |written: &str| serde_json::from_str::<Habits>(written).unwrap();
        assert_eq!(read("{}"), Habits::default());
        let us = Habits { measures: Measures::Us, dates: DateOrder::MonthDayYear };
        assert_eq!(read(r#"{"measures":"us","dates":"month-day-year"}"#), us);
    }

    fn any_rounding() -> impl Strategy<Value = Rounding> {
        prop_oneof![Just(Rounding::Nearest), Just(Rounding::Down), Just(Rounding::Up)]
    }

    fn any_other() -> impl Strategy<Value = Measures> {
        prop_oneof![Just(Measures::Us), Just(Measures::Imperial)]
    }

    proptest! {
        /// Limits and what is held against them rest on the metric figure.
        #[test]
        fn no_metric_figure_is_ever_lost(
            amount in 1e-6..1e6_f64,
            at in 0..Unit::ALL.len(),
            rounding in any_rounding(),
            measures in any_other(),
        ) {
            let metric = CATALOGUE.amount(amount, Unit::ALL[at], rounding);
            let both = used_to(measures).amount(amount, Unit::ALL[at], rounding);
            let rest = both.strip_prefix(&metric);
            prop_assert!(rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(" (")), "{both}");
        }

        #[test]
        fn a_limit_never_reads_higher_beside_and_a_load_never_lower(
            grams in 3.0..1e5_f64,
            measures in any_other(),
        ) {
            let other = measures.beside([grams, grams], Unit::Gram).unwrap();
            let ounces = measures.converted(grams, Unit::Gram, other);
            let read = |rounding| {
                let said = crate::number::beside(ounces, rounding).replace('\u{202F}', "");
                said.parse::<f64>().unwrap()
            };
            let hair = 2e-9 * ounces;
            prop_assert!(read(Rounding::Down) <= ounces + hair);
            prop_assert!(read(Rounding::Up) >= ounces - hair);
        }
    }
}
