//! Published figures on drying and on heat.

use ground::{Answer, Duration, Fresh, Length, Mass, MassFraction, Volume};
use prepare::{Drying, EvaporationRate, Moisture, boiling_point, time_to_reduce};

#[expect(clippy::unwrap_used, reason = "a refusal here is the report of the test")]
fn known<T: std::fmt::Debug>(answer: Answer<T>) -> T {
    answer.ok().unwrap()
}

fn moisture(percent: f64) -> Moisture {
    known(Moisture::of(MassFraction::from_percent(percent)))
}

fn close(got: f64, printed: f64, within: f64) {
    assert!((got - printed).abs() <= within, "got {got}, printed {printed}, allowed {within}");
}

/// Worked example: 1000 g of nettle leaf dried from 80.0 to 10.0 %.
#[test]
fn a_kilogram_of_nettle_leaf() {
    let leaf: Mass<Fresh> = Mass::from_kg(1.0);
    let sum = known(Drying::of(leaf, moisture(80.0), moisture(10.0)));
    close(sum.solids.g(), 200.0, 1e-9);
    close(sum.dried.g(), 222.2, 0.05);
    close(sum.fresh_to_dried, 4.5, 1e-12);
    close(sum.water_lost.g(), 777.8, 0.05);
    close(moisture(80.0).dry_basis(), 4.0, 1e-12);
    close(moisture(10.0).dry_basis(), 0.111, 0.0005);
}

/// Lemon balm that keeps at 25 °C: leaf 0.124 and stem 0.113 kg of water for each kg of solids,
/// 11.0 and 10.2 % of the whole (Argyropoulos et al. 2012, LWT, doi 10.1016/j.lwt.2012.01.026).
#[test]
fn lemon_balm_on_both_bases() {
    close(known(Moisture::from_dry_basis(0.124)).share().percent(), 11.0, 0.05);
    close(known(Moisture::from_dry_basis(0.113)).share().percent(), 10.2, 0.05);
}

/// Fresh moisture that a collectors' table of yields implies, if its herb was dried to 12 %
/// (emedicinehealth.ru): nettle leaf 20 kg from 100 is 82 %, strawberry 15 kg is 87 %, alder
/// buckthorn bark 42.5 kg is 63 %.
#[test]
fn yields_imply_a_moisture() {
    for (yield_percent, printed) in [(20.0, 82.0), (15.0, 87.0), (42.5, 63.0), (25.0, 78.0)] {
        let share = MassFraction::from_percent(yield_percent);
        let fresh = known(Moisture::from_yield(share, moisture(12.0)));
        close(fresh.share().percent(), printed, 0.5);
    }
}

#[test]
fn a_scale_tells_the_moisture() {
    let before: Mass<Fresh> = Mass::from_g(500.0);
    let now: Mass<Fresh> = Mass::from_g(125.0);
    let dry = known(Moisture::by_weighing(before, moisture(78.0), now));
    close(dry.share().percent(), 12.0, 1e-9);
    // Lighter than its own solids: the moisture or a weighing is wrong.
    let wrong: Mass<Fresh> = Mass::from_g(100.0);
    assert!(Moisture::by_weighing(before, moisture(78.0), wrong).known().is_none());
}

#[test]
fn what_cannot_be_dried_is_refused() {
    let leaf: Mass<Fresh> = Mass::from_kg(1.0);
    assert!(Drying::of(leaf, moisture(10.0), moisture(80.0)).known().is_none());
    for percent in [-1.0, 100.0, f64::NAN] {
        assert!(Moisture::of(MassFraction::from_percent(percent)).known().is_none());
    }
}

/// An open pot of a decoction loses 13.1 ml a minute (foodnpub.com, decocting formula): 900 ml come
/// to 600 ml in 23 minutes, and three US cups to two in 18.
#[test]
fn a_decoction_boils_down_in_time() {
    let rate = EvaporationRate::from_ml_per_minute(13.1);
    let minutes = |from: f64, to: f64| {
        known(time_to_reduce(Volume::from_ml(from), Volume::from_ml(to), rate)).minutes()
    };
    close(minutes(900.0, 600.0), 23.0, 0.5);
    close(minutes(3.0 * 236.588, 2.0 * 236.588), 18.0, 0.5);
    let never = time_to_reduce(Volume::from_ml(600.0), Volume::from_ml(900.0), rate);
    assert!(never.known().is_none());
}

/// 1 kW into boiling water drives off 26.6 g a minute; a gas ring that gave it some 450 W, 12 g a
/// minute (protonsforbreakfast.wordpress.com).
#[test]
fn power_drives_off_water() {
    close(EvaporationRate::from_net_watts(1000.0).ml_per_minute(), 26.6, 0.05);
    close(EvaporationRate::from_net_watts(450.0).ml_per_minute(), 12.0, 0.1);
    let measured =
        known(EvaporationRate::measured(Volume::from_ml(131.0), Duration::from_minutes(10.0)));
    close(measured.ml_per_minute(), 13.1, 1e-12);
}

/// Boiling points by height, printed to 0.1 °C; printed tables differ from one another by 0.3.
#[test]
fn water_boils_sooner_on_a_mountain() {
    const PRINTED: [(f64, f64); 6] = [
        (0.0, 100.0),
        (500.0, 98.3),
        (1000.0, 96.7),
        (1500.0, 95.0),
        (2000.0, 93.4),
        (3000.0, 90.0),
    ];
    for (metres, printed) in PRINTED {
        close(known(boiling_point(Length::from_m(metres))).celsius(), printed, 0.05);
    }
    assert!(boiling_point(Length::from_m(9000.0)).known().is_none());
}
