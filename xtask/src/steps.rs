//! `cargo xtask test`: the list of everything that is checked.

use crate::house::{House, Outcome, run, run_without_warnings, say};
use crate::{app, browser, calendar, demo, pages, paper, parity, size, tools, trials};
use std::time::Instant;

/// One thing that is checked.
struct Step {
    name: &'static str,
    work: Work,
}

enum Work {
    /// A cargo command that must succeed.
    Cargo(&'static [&'static str]),
    /// A check of our own.
    Own(fn(&House) -> Outcome),
}
use Work::{Cargo, Own};

/// In this order: what is missing and what is cheap to find wrong come first.
const STEPS: &[Step] = &[
    Step { name: "tools", work: Own(tools::ready) },
    Step { name: "format", work: Cargo(&["fmt", "--all", "--", "--check"]) },
    Step { name: BUILD, work: Own(build) },
    Step { name: "tests", work: Own(test_all) },
    Step { name: "herbal", work: Own(herbal) },
    Step { name: "demo", work: Own(demo::show) },
    Step { name: "calendar", work: Own(calendar::check) },
    Step { name: "fade", work: Own(trials::fade) },
    Step { name: "recall", work: Own(trials::recall) },
    Step { name: "parity", work: Own(parity::check) },
    Step { name: "pages", work: Own(pages::check) },
    Step { name: "paper", work: Own(paper::check) },
    Step { name: "size", work: Own(size::check) },
    Step { name: "browser", work: Own(browser::check) },
];

/// The step that builds, with the linter, whatever later steps run.
const BUILD: &str = "build";

/// Everything that is tested, for a browser and for this machine. A warning is a failure.
fn build(house: &House) -> Outcome {
    let program = app::program(house)?;
    let mut all = house.cargo(["build", "--workspace", "--all-targets"]);
    run_without_warnings(all.env(app::PROGRAM, program))
}

fn test_all(house: &House) -> Outcome {
    let program = app::program(house)?;
    run(house.cargo(["test", "--workspace"]).env(app::PROGRAM, program))
}

/// Everything that is known can be read, and what is remembered or missing is counted.
fn herbal(house: &House) -> Outcome {
    run(house.command(demo::build(house)?).args(["herbal", "check"]))
}

/// Runs every step, or the named ones in the order of the list, up to the first that fails.
pub(crate) fn test(house: &House, names: &[&str]) -> Outcome {
    let steps = chosen(names)?;
    let linting =
        steps.iter().any(|step| step.name == BUILD).then(|| house.linting()).transpose()?;
    let house = linting.as_ref().unwrap_or(house);
    let mut passed = 0;
    for step in &steps {
        say(format_args!("\n== {} of {}: {}", passed + 1, steps.len(), step.name));
        if let Err(failure) = timed(house, step) {
            say(format_args!("\nstep {} failed: {failure}", step.name));
            return Err(format!("{passed} passed, 1 failed").into());
        }
        passed += 1;
    }
    say(format_args!("\n{passed} passed, 0 failed"));
    Ok(())
}

fn chosen(names: &[&str]) -> Outcome<Vec<&'static Step>> {
    if let Some(unknown) = names.iter().find(|name| STEPS.iter().all(|step| step.name != **name)) {
        let known: Vec<_> = STEPS.iter().map(|step| step.name).collect();
        return Err(format!("no step is called {unknown}; there are {}", known.join(", ")).into());
    }
    Ok(STEPS.iter().filter(|step| names.is_empty() || names.contains(&step.name)).collect())
}

fn timed(house: &House, step: &Step) -> Outcome {
    let start = Instant::now();
    let outcome = match step.work {
        Cargo(args) => run(&mut house.cargo(args)),
        Own(check) => check(house),
    };
    say(format_args!("-- {}: {:.1} s", step.name, start.elapsed().as_secs_f64()));
    outcome
}
