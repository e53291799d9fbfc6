//! What was made is decided on as it is, on whatever day, and by the worst that is in it.
#![expect(clippy::unwrap_used, reason = "a panic is how a test reports")]

mod kit;

use dose::Outcome;
use kit::{DAY, demo, plan, world};

/// What may be handed out of the nettle dish, the spring day's file put through a change.
fn nettle_dish(change: impl Fn(&str) -> String) -> Vec<Outcome> {
    let mut files = demo(DAY);
    let day = files.iter_mut().find(|file| file.name == DAY).unwrap();
    day.text = change(&day.text);
    let plan = plan(&world(), files, false);
    let dish = plan.makes.into_iter().find(|make| make.name == "nettle-dish").unwrap();
    dish.handed_out.into_values().map(|handed| handed.outcome).collect()
}

/// The dish was made of a take without a pattern: no plant of it was determined.
fn without_pattern(said: &str) -> String {
    said.replace("pattern = \"nettle-1\"\n", "")
}

fn the_evening_before(said: &str) -> String {
    said.replace("as-of = 2027-05-01T15:10:00", "as-of = 2027-04-30T19:00:00")
}

/// A second pot of the dish, of a lot that nobody sorted.
fn with_a_second_pot(said: &str) -> String {
    format!(
        "{said}\n[[lot]]\nname = \"nettle-late\"\ntakes = [\"nettle-take\"]\n\n[[batch]]\n\
         name = \"a-second-pot\"\nmake = \"nettle-dish\"\nlots = [\"nettle-late\"]\n\
         at = 2027-05-01T14:45:00\nstages = [\"young tops before flowering, boiled\"]\ncook = \"maren\"\n"
    )
}

#[test]
fn a_pot_of_a_plant_that_was_not_determined_is_withheld_before_the_day_too() {
    let some = |outcomes: &[Outcome]| outcomes.iter().any(|outcome| *outcome != Outcome::Withhold);
    assert!(some(&nettle_dish(the_evening_before)));
    assert!(!some(&nettle_dish(without_pattern)));
    assert!(!some(&nettle_dish(|said| the_evening_before(&without_pattern(said)))));
}

#[test]
fn of_two_pots_the_worse_one_counts() {
    let withheld = |outcomes: Vec<Outcome>| outcomes.iter().all(|o| *o == Outcome::Withhold);
    assert!(!withheld(nettle_dish(str::to_owned)));
    assert!(withheld(nettle_dish(with_a_second_pot)));
    // Which of the two is found first changes nothing.
    let last = |said: &str| with_a_second_pot(said).replace("a-second-pot", "the-second-pot");
    assert!(withheld(nettle_dish(last)));
}
