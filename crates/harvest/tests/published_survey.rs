//! Surveys against published data and figures.
//!
//! The schools of California, Academic Performance Index 2000 (state public records, 6,194 schools,
//! a simple random sample of 200), are the worked example of Lumley 2010, *Complex Surveys*. The
//! tree counts are those of Condit et al. 2002, *Science* 295:666–669: a complete census of fifty
//! hectares, so that the truth is known.

#![expect(clippy::unreadable_literal, reason = "figures stand as they were published")]

use harvest::{Confidence, Estimate, Sample, plots_needed};

const USUAL: Confidence = Confidence::NINETEEN_IN_TWENTY;

/// Figures are published to ten digits.
fn close(got: f64, published: f64) {
    assert!((got / published - 1.0).abs() < 1e-9, "{got} is not {published}");
}

fn interval(estimate: Estimate, low: f64, high: f64) {
    close(estimate.low, low);
    close(estimate.high, high);
}

/// Mean performance of the 200 schools, from their number, mean and variance.
#[test]
fn a_mean_with_finite_population_correction() {
    let sample = Sample::from_moments(200, 656.585, 17682.424899497473).unwrap();
    let mean = sample.mean_of(Some(6194), USUAL);
    close(mean.se, 9.249722039);
    interval(mean, 638.3449501, 674.8250499);
}

#[test]
fn a_total_with_its_standard_error() {
    let mean = 3621074.34 / 6194.0;
    let sample = Sample::from_moments(200, mean, 154803.99788944726).unwrap();
    let total = sample.total_of(6194, USUAL);
    close(total.value, 3621074.34);
    close(total.se, 169519.6543);
}

/// 142 of the 200 schools are elementary.
#[test]
fn a_proportion_with_its_standard_error() {
    let share = Sample::of_shares(142, 200).unwrap().mean_of(Some(6194), USUAL);
    close(share.value, 0.71);
    close(share.se, 0.0316427634);
}

/// Ten hectares of fifty, drawn at random: *Alseis blackiana*, of which there are 983.
#[test]
fn ten_plots_of_fifty_hold_the_truth() {
    let sample = Sample::of(&[26., 18., 14., 25., 10., 20., 15., 42., 25., 8.]).unwrap();
    close(sample.mean(), 20.3);
    close(sample.variance().sqrt(), 9.877584050);
    let total = sample.total_of(50, USUAL);
    close(total.value, 1015.0);
    close(total.se, 139.6901333);
    interval(total, 698.9989645, 1331.0010355);
    assert!(total.low < 983.0 && 983.0 < total.high);
}

/// Every fifth hectare of the same census, *Gustavia superba*, of which there are 644: one clump of
/// 247 is met from the fifth start and missed from the third.
#[test]
fn a_clumped_plant_fools_a_survey_that_misses_the_clump() {
    let third = Sample::of(&[0., 4., 10., 3., 3., 8., 6., 11., 1., 4.]).unwrap();
    let total = third.total_of(50, USUAL);
    close(total.value, 250.0);
    assert!((total.se - 52.07).abs() < 5e-3);
    assert!(total.high < 644.0, "the interval misses the truth");
    assert!(third.dispersion().unwrap().is_clumped(), "but it warns");

    let fifth = Sample::of(&[3., 4., 4., 4., 14., 23., 247., 63., 2., 10.]).unwrap();
    let total = fifth.total_of(50, USUAL);
    close(total.value, 1870.0);
    assert!((total.se - 1073.6894).abs() < 5e-5);
    assert!(total.low < 0.0, "the interval reaches below zero");
}

/// Bliss & Fisher 1953, *Biometrics* 9:176–200: red mites on 150 apple leaves.
#[test]
fn mites_on_apple_leaves_are_clumped() {
    let leaves = [70, 38, 17, 10, 9, 3, 2, 1];
    let mites: Vec<f64> =
        (0_u32..).zip(leaves).flat_map(|(mites, leaves)| vec![f64::from(mites); leaves]).collect();
    let sample = Sample::of(&mites).unwrap();
    close(sample.mean(), 172.0 / 150.0);
    close(sample.variance(), 2.273646532);
    // Published to seven digits.
    let mean = sample.mean_of(None, USUAL);
    assert!((mean.low - 0.9033871).abs() < 6e-8 && (mean.high - 1.3899463).abs() < 6e-8);
    let dispersion = sample.dispersion().unwrap();
    assert!((dispersion.ratio - 1.982831).abs() < 5e-7);
    assert!((dispersion.chi_squared - 295.44186).abs() < 5e-6);
    close(dispersion.k.unwrap(), 1.16669737);
    assert!(dispersion.is_clumped());
}

/// Worked by the formulas of Cochran 1977, chapter 4.
#[test]
fn the_number_of_plots_that_a_wanted_doubt_takes() {
    let ninety = Confidence::new(0.9).unwrap();
    assert_eq!(plots_needed(7.0, 2.0, USUAL, None), Some(50));
    assert_eq!(plots_needed(5.0, 1.5, ninety, None), Some(32));
    assert_eq!(plots_needed(5.0, 1.5, ninety, Some(100)), Some(25));
    assert_eq!(plots_needed(12.0, 3.0, USUAL, None), Some(64));
    assert_eq!(plots_needed(12.0, 3.0, USUAL, Some(60)), Some(31));
    // Here it swings between 37 and 38.
    assert_eq!(plots_needed(0.6, 0.2, USUAL, None), Some(38));
    assert_eq!(plots_needed(1.0, 0.0, USUAL, None), None);
}
