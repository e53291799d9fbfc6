//! What strictness costs: how many plants are still settled, and how often the wrong one passes, when what may be left
//! of the bar is a tenth, a hundredth and less of what it must be for everybody.
//!
//! Prints figures: name, value and unit with tabs between. With a folder it draws the curve there, as SVG.

mod kit;
#[path = "kit/typical.rs"]
mod typical;

use ground::Harm;
use identify::follow::{Setting, World};
use identify::{Judge, Level, Strictness};
use kit::Outing;
use std::collections::BTreeSet;
use std::error::Error;
use std::fmt::Write as _;
use std::io::{self, Write as _};
use std::path::PathBuf;
use std::{env, fs};
use typical::read;

/// How many times as strict as everybody must be.
const TIMES: [f64; 5] = [1.0, 10.0, 100.0, 1e3, 1e4];

/// The plants of the demo that are followed, each in the month of its outing.
const FOLLOWED: [(&str, u8); 4] =
    [("Allium ursinum", 4), ("Urtica dioica", 4), ("Picea abies", 4), ("Crataegus monogyna", 9)];

/// Ways less likely than this are not followed, and so many sets of answers at most: what is cut counts as passed.
const LEAST: f64 = 1e-10;
const MOST: usize = 12_000;

/// What one strictness comes to.
struct Point {
    times: f64,
    /// Gathered plants that a leader and somebody trained settle in some month, of all.
    settled: [usize; 2],
    of: usize,
    /// Median of a leader's looks.
    looks: usize,
    /// The worst deadly plant that passes before trained readers, as told and where both believe: at most.
    passes: [f64; 2],
}

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).map(PathBuf::from);
    let herbal = herbal_data::herbal();
    let judge = Judge::new(herbal.flora.matrix().map_err(|faults| faults.to_string())?);
    let outings = kit::outings(&herbal, &[]);
    let points: Vec<Point> =
        TIMES.iter().filter_map(|times| point(&judge, &outings, *times)).collect();
    let mut out = io::stdout();
    for point in &points {
        let Point { times, settled: [leader, trained], of, looks, passes: [told, believe] } = point;
        let name = format!("trade-off-{times}");
        writeln!(
            out,
            "{name}-settled\t{leader}\tof {of} gathered plants by a leader, {trained} by trained readers"
        )?;
        writeln!(out, "{name}-looks\t{looks}\tlooks of a leader, median")?;
        writeln!(
            out,
            "{name}-passes\t{told:.1e}\tat most, worst deadly plant of the demo's, trained, as told; both believe {believe:.1e}"
        )?;
    }
    if let Some(folder) = folder {
        fs::write(folder.join("trade-off.svg"), drawn(&points)?)?;
    }
    Ok(())
}

fn point(judge: &Judge<'_>, outings: &[Outing<'_>], times: f64) -> Option<Point> {
    let strictness = Strictness::times(times)?;
    let read = |level| kit::on_all_cores(outings, |outing| read(judge, outing, level, strictness));
    let [leader, trained] = [Level::Leader, Level::Trained].map(read);
    let settled = |all: &[typical::Read]| {
        let done = all.iter().filter(|read| read.why.is_empty());
        done.map(|read| read.plant.clone()).collect::<BTreeSet<_>>().len()
    };
    let mut looks: Vec<usize> =
        leader.iter().filter(|read| read.why.is_empty()).map(|read| read.looks).collect();
    looks.sort_unstable();
    let plants: BTreeSet<&str> = outings.iter().map(|outing| outing.sheet.name.as_str()).collect();
    Some(Point {
        times,
        settled: [settled(&leader), settled(&trained)],
        of: plants.len(),
        looks: looks.get(looks.len() / 2).copied().unwrap_or(0),
        passes: [World::AsTold, World::BothBelieve]
            .map(|world| passes(judge, outings, world, strictness)),
    })
}

/// How often the worst deadly plant passes for one of the demo's, at most.
fn passes(judge: &Judge<'_>, outings: &[Outing<'_>], world: World, strictness: Strictness) -> f64 {
    let followed = |outing: &&Outing<'_>| {
        FOLLOWED.contains(&(outing.sheet.name.as_str(), outing.month.number()))
    };
    let followed: Vec<&Outing<'_>> = outings.iter().filter(followed).collect();
    let deadly = judge.matrix().taxa().iter().filter(|taxon| taxon.harm == Harm::Deadly);
    let truths: Vec<(&str, World)> = deadly.map(|taxon| (taxon.name.as_str(), world)).collect();
    let worst = kit::on_all_cores(&followed, |outing| {
        let (day, region) = (outing.day(), outing.region());
        let level = Level::Trained;
        let setting = Setting { day, region, level, strictness, least: LEAST, most: MOST };
        let ends = judge.follow(&outing.sheet.name, &truths, &setting);
        let ends = ends.map_or_else(|_| Vec::new(), |ends| ends.ends);
        // What could not be followed has passed.
        ends.iter().map(|end| end.at_most).reduce(f64::max).unwrap_or(1.0)
    });
    worst.into_iter().reduce(f64::max).unwrap_or(1.0)
}

/// Plants settled from left to right, the chance of the worst from the bottom up by powers of ten.
fn drawn(points: &[Point]) -> Result<String, std::fmt::Error> {
    const WIDTH: f64 = 640.0;
    const HEIGHT: f64 = 420.0;
    let of = points.first().map_or(1, |point| point.of.max(1)) as f64;
    let x = |settled: usize| 80.0 + (WIDTH - 110.0) * settled as f64 / of;
    let y = |chance: f64| 30.0 + (HEIGHT - 100.0) * (-libm::log10(chance.max(1e-14)) / 14.0);
    let mut svg = String::new();
    writeln!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" font-family=\"sans-serif\" font-size=\"13\">"
    )?;
    writeln!(
        svg,
        "<title>What strictness costs: the stricter, the fewer plants are settled and the less often a deadly one passes</title>"
    )?;
    writeln!(svg, "<rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"#fff\"/>")?;
    for power in (0..=14).step_by(2) {
        let at = y(libm::pow(10.0, -f64::from(power)));
        writeln!(
            svg,
            "<line x1=\"80\" x2=\"{:.0}\" y1=\"{at:.1}\" y2=\"{at:.1}\" stroke=\"#ddd\"/>",
            WIDTH - 30.0
        )?;
        let label = if power == 0 {
            "1".to_owned()
        } else {
            format!("1 in 10<tspan dy=\"-5\" font-size=\"9\">{power}</tspan>")
        };
        writeln!(svg, "<text x=\"72\" y=\"{:.1}\" text-anchor=\"end\">{label}</text>", at + 4.0)?;
    }
    for plants in (0..=points.first().map_or(0, |point| point.of)).step_by(20) {
        writeln!(
            svg,
            "<text x=\"{:.1}\" y=\"{:.0}\" text-anchor=\"middle\">{plants}</text>",
            x(plants),
            HEIGHT - 50.0
        )?;
    }
    writeln!(
        svg,
        "<text x=\"{:.0}\" y=\"{:.0}\" text-anchor=\"middle\">gathered plants, of {of}, that somebody trained settles in some month</text>",
        WIDTH / 2.0 + 20.0,
        HEIGHT - 25.0
    )?;
    writeln!(
        svg,
        "<text x=\"80\" y=\"18\">how often the worst deadly plant passes for one of the demo's, at most</text>"
    )?;
    for (name, dash, world) in [("as told", "", 0), ("both readers believe it", "6 4", 1)] {
        // Where nothing was found to pass there is no point on a scale of powers.
        let at = |point: &Point| {
            let passes = point.passes.get(world).filter(|passes| **passes > 0.0)?;
            Some((x(point.settled[1]), y(*passes)))
        };
        let all: Vec<(f64, f64)> = points.iter().filter_map(at).collect();
        let line: Vec<String> = all.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
        writeln!(
            svg,
            "<polyline points=\"{}\" fill=\"none\" stroke=\"#234\" stroke-width=\"2\" stroke-dasharray=\"{dash}\"/>",
            line.join(" ")
        )?;
        for ((x, y), point) in all.iter().zip(points) {
            writeln!(svg, "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"4\" fill=\"#234\"/>")?;
            writeln!(
                svg,
                "<text x=\"{:.1}\" y=\"{:.1}\" font-size=\"11\" text-anchor=\"end\">× {}</text>",
                x - 6.0,
                y - 6.0,
                point.times
            )?;
        }
        if let Some((x, y)) = all.first() {
            writeln!(
                svg,
                "<text x=\"{:.1}\" y=\"{:.1}\" font-weight=\"bold\">{name}</text>",
                x + 14.0,
                y + 16.0
            )?;
        }
    }
    writeln!(svg, "</svg>")?;
    Ok(svg)
}
