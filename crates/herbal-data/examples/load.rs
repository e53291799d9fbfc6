//! Says how large the compiled herbal is and how long it takes to read: the median of 101 readings.
//!
//! `cargo run --release -p herbal-data --example load`

use std::time::Instant;

fn main() {
    let mut times: Vec<_> = (0..101)
        .map(|_| {
            let start = Instant::now();
            let herbal = herbal_data::herbal();
            let time = start.elapsed();
            assert!(herbal.flora.sheets().count() > 0, "the herbal has no sheet");
            time
        })
        .collect();
    times.sort();
    let median = times.get(times.len() / 2);
    eprintln!("{} bytes, read in {median:?} (median)", herbal_data::bytes().len());
}
