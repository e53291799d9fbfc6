//! Sums of a day outdoors: light, ways, warmth, surveys.

use super::said::{both, climb, each, fault, maybe, range, temperature, way};
use super::{SumResult, WalkLeg, Worked, amount, result};
use ground::{Amount, Dimension, Duration, Faults, Length, Shown, Spoken, Temperature, Text, Unit};
use harvest::degree_days::{Day, Method, Threshold};
use harvest::walk::{Leg, langmuir, naismith, tobler};
use harvest::{Confidence, Crossing, Daylight, Estimate, Position, Sample};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::{TimeZone, TimeZoneDatabase};

/// Below this many plots the doubt is large: *common practice, no source*.
const FEW_PLOTS: u32 = 10;
/// More than this, somebody's finger slipped.
const MOST_IN_A_PLOT: f64 = 1e9;

/// When the sun rises and sets, by the clock of a time zone.
pub(super) fn daylight(on: Date, (north, east): (f64, f64), zone: &str) -> Result<Worked, Faults> {
    let here = Position::new(north, east);
    let clock = TimeZoneDatabase::bundled()
        .get(zone)
        .map_err(|_| Faults::from(fault("unknown-time-zone", "zone", zone)));
    let (here, clock) = both(here, clock)?;
    let day = harvest::daylight(on, here)
        .ok_or_else(|| Faults::from(fault("day-out-of-time", "on", on.to_string())))?;
    Ok(sun_rows(&day, on, &clock))
}

fn sun_rows(day: &Daylight, on: Date, clock: &TimeZone) -> Worked {
    let at = |what, crossing| result(what, Shown::Words(crossed(crossing, on, clock)));
    let mut rows = vec![
        at("sums-sunrise", day.rise),
        at("sums-sunset", day.set),
        at("sums-dawn", day.dawn),
        at("sums-dusk", day.dusk),
        at("sums-noon", Crossing::At(day.noon)),
    ];
    if let (Some(rise), Some(set)) = (day.rise.at(), day.set.at()) {
        rows.push(amount("sums-day-length", minutes_between(rise, set), Unit::Minute));
    }
    Worked::of(rows).note(Text::new("sums-sun-open-horizon"))
}

fn minutes_between(earlier: Timestamp, later: Timestamp) -> f64 {
    later.duration_since(earlier).as_secs_f64() / 60.0
}

/// A crossing by the clock; with its day where that is another.
fn crossed(crossing: Crossing, on: Date, clock: &TimeZone) -> Text {
    let moment = match crossing {
        Crossing::StaysAbove => return Text::new("sums-sun-stays-above"),
        Crossing::StaysBelow => return Text::new("sums-sun-stays-below"),
        // Rounding fails only at the end of time.
        Crossing::At(moment) => moment.round(jiff::Unit::Minute).unwrap_or(moment),
    };
    let local = clock.to_datetime(moment);
    let time = local.strftime("%H:%M").to_string();
    let said = |id| Text::new(id).with("time", time).with("moment", moment.to_string());
    if local.date() == on {
        said("sums-clock")
    } else {
        said("sums-clock-other-day").with("day", local.date())
    }
}

/// How long a walk takes, by three rules.
pub(super) fn walk(legs: &[WalkLeg]) -> Result<Worked, Faults> {
    if legs.is_empty() {
        return Err(fault("no-legs", "legs", "").into());
    }
    let legs = each(legs.iter().map(leg))?;
    let along: Length = legs.iter().map(|leg| leg.along).sum();
    let up: Length = legs.iter().map(|leg| leg.climb.max(Length::ZERO)).sum();
    let time = |what, time: Duration| amount(what, time.minutes(), Unit::Minute);
    Ok(Worked::of([
        time("sums-walk-langmuir", langmuir(&legs)),
        time("sums-walk-naismith", naismith(&legs)),
        time("sums-walk-tobler", tobler(&legs, true)),
        time("sums-walk-off-path", tobler(&legs, false)),
        amount("sums-walk-along", along.m() / 1000.0, Unit::Kilometre),
        amount("sums-walk-up", up.m(), Unit::Metre),
    ])
    .note(Text::new("sums-walk-slower")))
}

fn leg(said: &WalkLeg) -> Result<Leg, Faults> {
    let up = maybe(said.climb.as_ref(), |said| climb("climb", said));
    let (along, up) = both(way("along", &said.along), up)?;
    Ok(Leg { along, climb: up.unwrap_or(Length::ZERO) })
}

/// The methods in which degree-days are counted, each with its message. Only the weather services'
/// knows no cut-off.
const METHODS: [(Method, &str); 5] = [
    (Method::Sine, "sums-degree-days-sine"),
    (Method::Triangle, "sums-degree-days-triangle"),
    (Method::Average, "sums-degree-days-average"),
    (Method::Modified, "sums-degree-days-modified"),
    (Method::FourCase, "sums-degree-days-four-case"),
];

/// Degree-days by every method.
pub(super) fn degree_days(
    days: &[Spoken],
    base: &Spoken,
    cut_off: Option<&Spoken>,
) -> Result<Worked, Faults> {
    if days.is_empty() {
        return Err(fault("no-days", "days", "").into());
    }
    let days = each(days.iter().map(|said| range("day", said, Dimension::Temperature)));
    let cut_off = maybe(cut_off, |said| temperature("cut-off", said));
    let (days, (from, cut_off)) = both(days, both(temperature("base", base), cut_off))?;
    if let Some(top) = cut_off.filter(|top| *top <= from) {
        let fault = fault("cut-off-below-base", "cut-off", format!("{top:?}"));
        return Err(fault.with("base", base.written.as_str()).into());
    }
    let days: Vec<_> = days.into_iter().map(day).collect();
    let from = Threshold { base: from, cut_off };
    let fits = |method: &Method| cut_off.is_none() || *method != Method::FourCase;
    let rows = METHODS.into_iter().filter(|(method, _)| fits(method));
    let rows = rows.map(|(method, what)| amount(what, method.of_days(&days, from).0, Unit::One));
    Ok(Worked::of(rows).note(Text::new("sums-degree-days-methods")))
}

fn day(Amount { low, high }: Amount) -> Day {
    Day::new(Temperature::from_celsius(low), Temperature::from_celsius(high))
}

/// Mean and total of plots drawn at random.
pub(super) fn survey(plots: &[f64], of: u32) -> Result<Worked, Faults> {
    if plots.iter().any(|found| !(0.0..=MOST_IN_A_PLOT).contains(found)) {
        return Err(fault("plot-out-of-range", "plots", written(plots)).into());
    }
    let sample = Sample::of(plots)
        .ok_or_else(|| Faults::from(fault("too-few-plots", "plots", written(plots))))?;
    if sample.n() > of {
        let fault = fault("more-plots-than-all", "of", of.to_string());
        return Err(fault.with("plots", sample.n()).into());
    }
    Ok(survey_rows(&sample, of))
}

fn survey_rows(sample: &Sample, of: u32) -> Worked {
    let mean = sample.mean_of(Some(of), Confidence::NINETEEN_IN_TWENTY);
    let total = sample.total_of(of, Confidence::NINETEEN_IN_TWENTY);
    let clumped = sample.dispersion().is_some_and(|dispersion| dispersion.is_clumped());
    let few = Text::new("harvest-few-plots").with("n", sample.n());
    let worked = Worked::of([
        amount("sums-survey-total", total.value, Unit::One),
        between("sums-survey-total-between", &total),
        amount("sums-survey-mean", mean.value, Unit::One),
        between("sums-survey-mean-between", &mean),
    ]);
    let worked = if sample.n() < FEW_PLOTS { worked.note(few) } else { worked };
    worked
        .note_if(clumped, "harvest-clumped")
        .note_if(total.low < 0.0, "sums-survey-below-zero")
        .note(Text::new("sums-survey-at-random"))
}

fn between(what: &str, estimate: &Estimate) -> SumResult {
    let range = Text::new("sums-between").amount("low", estimate.low, Unit::One).amount(
        "high",
        estimate.high,
        Unit::One,
    );
    result(what, Shown::Words(range))
}

fn written(plots: &[f64]) -> String {
    plots.iter().map(f64::to_string).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(words: &str) -> Spoken {
        words.parse().unwrap()
    }

    fn words(worked: &Worked, what: &str) -> Text {
        let row = worked.results.iter().find(|row| row.what.id == what).unwrap();
        match row.value.known() {
            Some(Shown::Words(text)) => text.clone(),
            other => panic!("{other:?}"),
        }
    }

    fn numbers(worked: &Worked) -> Vec<f64> {
        let number = |row: &SumResult| match row.value.known() {
            Some(Shown::Amount(value, _)) => Some(value.get()),
            _ => None,
        };
        worked.results.iter().filter_map(number).collect()
    }

    #[test]
    fn the_sun_rises_by_the_clock_of_the_zone() {
        let on = jiff::civil::date(2026, 6, 21);
        let worked = daylight(on, (51.48, 0.0), "Europe/London").unwrap();
        let rise = words(&worked, "sums-sunrise");
        assert_eq!(rise.id, "sums-clock");
        assert_eq!(rise.args["time"], "04:43".into());
        let elsewhere = daylight(on, (51.48, 0.0), "Pacific/Auckland").unwrap();
        assert_eq!(words(&elsewhere, "sums-sunset").id, "sums-clock-other-day");
    }

    #[test]
    fn beyond_the_circle_the_sun_stays_where_it_is() {
        let on = jiff::civil::date(2026, 6, 21);
        let worked = daylight(on, (78.0, 15.0), "Arctic/Longyearbyen").unwrap();
        assert_eq!(words(&worked, "sums-sunset").id, "sums-sun-stays-above");
        assert!(numbers(&worked).is_empty());
    }

    #[test]
    fn every_fault_of_a_place_is_told() {
        let on = jiff::civil::date(2026, 6, 21);
        let faults = daylight(on, (100.0, 200.0), "Europe/Nowhere").err().unwrap();
        assert_eq!(faults.iter().count(), 3);
    }

    /// 20 km and 1000 m up: four hours, and 100 minutes for the climb (Naismith 1892).
    #[test]
    fn a_walk_is_timed_by_its_legs() {
        let leg = |along: &str, climb: Option<&str>| WalkLeg {
            along: said(along),
            climb: climb.map(said),
        };
        let worked = walk(&[leg("15 km", Some("1000 m")), leg("5 km", None)]).unwrap();
        assert!((numbers(&worked)[1] - 340.0).abs() < 1e-9);
        assert!(walk(&[leg("0 km", None)]).is_err() && walk(&[]).is_err());
    }

    #[test]
    fn degree_days_add_up_over_days_in_either_unit() {
        let sum = |days: &[&str]| {
            let days: Vec<_> = days.iter().map(|day| said(day)).collect();
            numbers(&degree_days(&days, &said("5 °C"), None).unwrap())
        };
        let (one, two) = (sum(&["4 to 10 °C"]), sum(&["4 to 10 °C", "39.2 to 50 °F"]));
        assert!(one.iter().zip(&two).all(|(one, two)| (2.0 * one - two).abs() < 1e-9));
        let top = said("4 °C");
        assert!(degree_days(&[said("4 to 10 °C")], &said("5 °C"), Some(&top)).is_err());
    }

    #[test]
    fn a_whole_stand_that_was_counted_has_no_doubt() {
        let worked = survey(&[2.0, 4.0, 6.0], 3).unwrap();
        assert_eq!(numbers(&worked), [12.0, 4.0]);
        let between = words(&worked, "sums-survey-total-between");
        assert_eq!(between.args["low"], between.args["high"]);
        assert!(survey(&[2.0], 3).is_err() && survey(&[2.0, 4.0], 1).is_err());
    }
}
