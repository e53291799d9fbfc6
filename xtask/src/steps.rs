//! `cargo xtask test`: the list of everything that is checked.

use crate::house::{House, Outcome, run, run_without_warnings, say};
use crate::{app, browser, calendar, demo, pages, paper, parity, size, tools, trials};
use std::thread;
use std::time::Instant;

/// One thing that is checked.
struct Step {
    name: &'static str,
    work: Work,
    /// Whether it runs beside the one before it: neither keeps the machine busy by itself.
    beside: bool,
}

impl Step {
    const fn new(name: &'static str, work: Work) -> Self {
        Self { name, work, beside: false }
    }

    const fn beside(self) -> Self {
        Self { beside: true, ..self }
    }
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
    Step::new("tools", Own(tools::ready)),
    Step::new("format", Cargo(&["fmt", "--all", "--", "--check"])),
    Step::new(BUILD, Own(build)),
    Step::new("tests", Own(test_all)),
    Step::new("fade", Own(trials::fade)).beside(),
    Step::new("recall", Own(trials::recall)).beside(),
    Step::new("herbal", Own(herbal)),
    Step::new("demo", Own(demo::show)),
    Step::new("calendar", Own(calendar::check)),
    Step::new("parity", Own(parity::check)),
    Step::new("pages", Own(pages::check)),
    Step::new("size", Own(size::check)),
    Step::new("paper", Own(paper::check)),
    Step::new("browser", Own(browser::check)).beside(),
];

/// The step that builds, with the linter, whatever later steps run.
const BUILD: &str = "build";

/// Everything that is tested, for this machine and for a browser. A warning is a failure.
///
/// What a browser loads is linked by one core for a minute; meanwhile another builds everything as if there were
/// no app, and at last the command line is built once more, with the app in it.
fn build(house: &House) -> Outcome {
    let all = || house.cargo(["build", "--workspace", "--all-targets"]);
    let program = thread::scope(|scope| {
        let program = scope.spawn(|| app::program(house));
        run_without_warnings(&mut all())?;
        joined(program)
    })?;
    run_without_warnings(all().env(app::PROGRAM, program))
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
    for together in steps.chunk_by(|_, next| next.beside) {
        let names: Vec<_> = together.iter().map(|step| step.name).collect();
        say(format_args!("\n== {} of {}: {}", passed + 1, steps.len(), names.join(", ")));
        let failed = all_at_once(house, together);
        passed += together.len() - failed;
        if failed > 0 {
            return Err(format!("{passed} passed, {failed} failed").into());
        }
    }
    say(format_args!("\n{passed} passed, 0 failed"));
    Ok(())
}

/// Runs steps beside one another; how many failed.
fn all_at_once(house: &House, steps: &[&Step]) -> usize {
    thread::scope(|scope| {
        let started: Vec<_> =
            steps.iter().map(|step| (step, scope.spawn(|| timed(house, step)))).collect();
        started
            .into_iter()
            .filter_map(|(step, run)| Some((step, joined(run).err()?)))
            .map(|(step, failure)| say(format_args!("\nstep {} failed: {failure}", step.name)))
            .count()
    })
}

/// What a thread came to.
fn joined<T>(run: thread::ScopedJoinHandle<'_, Outcome<T>>) -> Outcome<T> {
    run.join().unwrap_or_else(|_| Err("it broke off".into()))
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
