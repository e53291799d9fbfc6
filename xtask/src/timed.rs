//! Whole processes of the release build, timed.

use crate::demo::{self, DAY};
use crate::figure::Figure;
use crate::house::{House, Outcome};
use std::fs;
use std::process::{Command, Stdio};
use std::time::Instant;

/// How often a command runs to find its median time.
const RUNS: usize = 31;

/// How many copies of each label of the day are printed, and how many labels that must be at least.
const COPIES: &str = "25";
const LEAST_LABELS: usize = 200;

/// The time of a plan, and how much longer it takes with all its pages.
pub(crate) fn plan(house: &House) -> Outcome<Vec<Figure>> {
    let trug = demo::release(house)?;
    let folder = house.fresh("timed")?.join("pages");
    let plan = median_ms(house.command(&trug).args(["plan", DAY]))?;
    let printed = median_ms(house.command(&trug).args(["plan", DAY, "--out"]).arg(&folder))?;
    let count = demo::files(&folder, "pdf")?.len();
    let beyond = format!(", beyond the plan: {count} pages (goal 1000)");
    Ok(vec![timed("plan", plan, " (goal 150)"), timed("pages", printed - plan, &beyond)])
}

/// The time of a stack of labels.
pub(crate) fn labels(house: &House) -> Outcome<Vec<Figure>> {
    let trug = demo::release(house)?;
    let folder = house.fresh("timed")?.join("labels");
    let order = ["label", DAY, "--copies", COPIES, "--out"];
    let printed = median_ms(house.command(&trug).args(order).arg(&folder))?;
    let codes = codes(&fs::read_to_string(folder.join("labels.html"))?);
    if codes < LEAST_LABELS {
        return Err(format!("only {codes} labels with a code were printed").into());
    }
    Ok(vec![timed("labels", printed, &format!(": {codes} labels with their codes (goal 2000)"))])
}

/// How many codes are drawn; a label whose code is not known yet has an empty place for it.
fn codes(labels: &str) -> usize {
    let places = labels.split("<div class=\"code\"").skip(1);
    let drawn =
        |place: &&str| place.split_once('>').is_some_and(|(_, in_it)| in_it.starts_with("<svg"));
    places.filter(drawn).count()
}

fn timed(name: &str, ms: f64, what: &str) -> Figure {
    let unit = format!("ms wall, whole process, median of {RUNS}{what}");
    Figure { name: name.to_owned(), value: format!("{ms:.0}"), unit }
}

/// The median time of a command in milliseconds; each run must succeed.
fn median_ms(command: &mut Command) -> Outcome<f64> {
    command.stdout(Stdio::null());
    let mut times = Vec::with_capacity(RUNS);
    for _ in 0..RUNS {
        let start = Instant::now();
        let status = command.status()?;
        times.push(start.elapsed());
        if !status.success() {
            return Err(format!("a timed run failed ({status})").into());
        }
    }
    times.sort_unstable();
    let median = times.get(RUNS / 2).ok_or("nothing was timed")?;
    Ok(median.as_secs_f64() * 1e3)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_place_is_no_code() {
        let place = "<div class=\"code\" style=\"width:16.5mm\">";
        assert_eq!(codes(&format!("{place}<svg></svg></div>{place}</div>")), 1);
    }
}
