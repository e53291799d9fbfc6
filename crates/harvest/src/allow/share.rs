//! Shares of the season's crop: the leader's policy and published limits.
//!
//! A share is of the crop before anybody took anything this season, not of what is left: three
//! people who each take a tenth of what they find leave 72.9 %, not 90 %.

use super::calendar::{season_start, years_before};
use super::{Candidate, Kind, Note, Outcome, RuleRef, Tally, shown};
use crate::crop::part_text;
use crate::{Asked, Crop, Quantity, Rules, Survey, TakeRule, Taken};
use ground::{
    Formula, Part, Place, Refusal, Season, Shown, Sourcing, Standing, Text, Unit, Working,
};
use jiff::civil::Date;

/// What a share is a share of.
struct Base {
    crop: Crop,
    /// Taken this season before the survey's day, which therefore did not see it.
    before: f64,
    /// Taken this season since.
    after: f64,
}

/// The leader's share, every published limit that touches the wish, and the rest each asks for.
pub(super) fn candidates(
    asked: &Asked,
    rules: &Rules,
    places: &[&str],
    tally: &Tally<'_>,
) -> Vec<Candidate> {
    let base = base(asked, tally);
    let ceilings = rules.ceilings.iter();
    let mut all: Vec<_> = ceilings
        .filter(|rule| rule.scope.touches(asked, places))
        .flat_map(|rule| judge(asked, rule, Kind::Ceiling, &base, tally))
        .collect();
    match rules.share_for(asked) {
        Some(rule) => all.extend(judge(asked, rule, Kind::Share, &base, tally)),
        None => all.push(no_share(asked)),
    }
    all
}

/// What to mind about the survey and about others who pick.
pub(super) fn notes(asked: &Asked, tally: &Tally<'_>) -> Vec<Note> {
    let crop = asked.survey.as_ref().and_then(|survey| survey.crop(tally.measure()).ok().ok());
    let warnings = crop.map(|crop| crop.warnings).unwrap_or_default();
    let others = Text::new("harvest-others").with("stand", asked.stand.name.as_str());
    warnings
        .into_iter()
        .chain([others])
        .map(|says| Note { says, from: Sourcing::bare(Standing::Practice) })
        .collect()
}

/// What was taken, as a working shows it.
pub(super) fn taken(what: &str, tally: &Tally<'_>, number: f64, asked: &Asked) -> Working {
    let at = Place::entry("take", &asked.stand.name, "amount");
    let value = Quantity::of(tally.measure(), number).shown();
    Working::input(Text::new(what), value, at)
}

fn no_share(asked: &Asked) -> Candidate {
    let text = |id: &str| {
        Text::new(id).taxon("taxon", asked.taxon.as_str()).with("part", part_text(asked.part))
    };
    let (why, settle) = if asked.life_form.is_none() {
        ("harvest-no-life-form", "harvest-settle-life-form")
    } else {
        ("harvest-no-share", "harvest-settle-share")
    };
    Candidate::open(RuleRef::new(Kind::Share, ""), text(why), text(settle))
}

/// The season that runs, a survey made in it, and what was taken in it.
fn base(asked: &Asked, tally: &Tally<'_>) -> Result<Base, Refusal> {
    let stand = |id: &str| Text::new(id).with("stand", asked.stand.name.as_str());
    let survey = asked.survey.as_ref().ok_or_else(|| {
        let settle = stand("harvest-settle-survey").with("part", part_text(asked.part));
        Refusal::new(stand("harvest-no-survey"), settle)
    })?;
    let start = season_start(season(asked)?, asked.on);
    fits(asked, survey, start)?;
    let crop = survey.crop(tally.measure()).ok()?;
    let takes = tally.takes_since(start)?;
    let here = takes.into_iter().filter(|take| is_here(asked, take));
    let (before, after): (Vec<_>, Vec<_>) = here.partition(|take| take.on < survey.notes().on);
    Ok(Base { crop, before: tally.sum(before)?, after: tally.sum(after)? })
}

fn season(asked: &Asked) -> Result<Season, Refusal> {
    let text = |id: &str| {
        Text::new(id).taxon("taxon", asked.taxon.as_str()).with("part", part_text(asked.part))
    };
    asked
        .season
        .ok_or_else(|| Refusal::new(text("harvest-no-season"), text("harvest-settle-season")))
}

/// Whether a survey is of this season and of nothing beyond the part that is asked.
fn fits(asked: &Asked, survey: &Survey, start: Date) -> Result<(), Refusal> {
    let notes = survey.notes();
    let text = |id: &str| {
        Text::new(id).with("stand", asked.stand.name.as_str()).with("part", part_text(asked.part))
    };
    let settle = || text("harvest-settle-survey");
    if notes.on < start || notes.on > asked.on {
        let why = text("harvest-survey-of-another-season").with("day", notes.on);
        return Err(Refusal::new(why, settle()));
    }
    if !asked.part.contains(notes.part) {
        let why = text("harvest-survey-of-another-part").with("surveyed", part_text(notes.part));
        return Err(Refusal::new(why, settle()));
    }
    if notes.stand != asked.stand.name {
        let why = text("harvest-survey-of-another-stand").with("surveyed", notes.stand.as_str());
        return Err(Refusal::new(why, settle()));
    }
    Ok(())
}

/// Whether a take was of this stand and of the part, of what holds it or lies in it.
fn is_here(asked: &Asked, take: &Taken) -> bool {
    take.stand == asked.stand.name
        && take.taxon == asked.taxon
        && (take.part.meets(asked.part) || take.part == Part::Whole)
}

fn judge(
    asked: &Asked,
    rule: &TakeRule,
    kind: Kind,
    base: &Result<Base, Refusal>,
    tally: &Tally<'_>,
) -> Vec<Candidate> {
    let share = match base {
        Ok(base) => amount(asked, rule, kind, base, tally),
        Err(Refusal { why, settle }) => {
            Candidate::open(RuleRef::new(kind, &rule.id), why.clone(), settle.clone())
        }
    };
    let rest = (rule.every_years > 1).then(|| rest(asked, rule, tally));
    std::iter::once(share).chain(rest).collect()
}

/// The share of the season's crop, less what was taken, and never more than stands there.
fn amount(asked: &Asked, rule: &TakeRule, kind: Kind, base: &Base, tally: &Tally<'_>) -> Candidate {
    let share = Some(rule.share.share()).filter(|share| (0.0..=1.0).contains(share));
    let share = share.unwrap_or(0.0);
    let standing = base.crop.at_least.number();
    let of_season = share * (standing + base.before) - (base.before + base.after);
    // A share of all leaves what still stands; the smaller keeps rounding from leaving more.
    let left = tally.amount(of_season.min(standing - base.after));
    let percent = || Shown::amount(share * 100.0, Unit::Percent);
    let says = Text::new("harvest-share")
        .with("says", rule.says.as_str())
        .with("left", left)
        .amount("share", share * 100.0, Unit::Percent)
        .with("standing", base.crop.at_least);
    let what = Text::new("harvest-what-share").with("says", rule.says.as_str());
    let from = vec![
        base.crop.working.clone(),
        Working::fact(what, percent(), rule.from.clone()),
        taken("harvest-what-taken-before", tally, base.before, asked),
        taken("harvest-what-taken-after", tally, base.after, asked),
    ];
    let formula = Formula::plain(
        "harvest.share",
        "share × (what stands there + taken before the survey) − taken this season",
    );
    let what = Text::new("harvest-what-share-left");
    Candidate {
        rule: RuleRef::new(kind, &rule.id),
        outcome: Outcome::AtMost(left),
        working: Working::computed(what, left.shown(), formula, from),
        says,
    }
}

/// Whether the stand has rested for as long as a rule asks.
fn rest(asked: &Asked, rule: &TakeRule, tally: &Tally<'_>) -> Candidate {
    let reference = RuleRef::new(Kind::Rest, &rule.id);
    let last = || -> Result<Option<Date>, Refusal> {
        let start = season_start(season(asked)?, asked.on);
        let takes = tally.takes_since(years_before(start, rule.every_years - 1))?;
        let earlier = takes.into_iter().filter(|take| take.on < start);
        Ok(earlier.filter(|take| is_here(asked, take)).map(|take| take.on).max())
    };
    let years = i64::from(rule.every_years);
    let (outcome, says) = match last() {
        Err(Refusal { why, settle }) => return Candidate::open(reference, why, settle),
        Ok(None) => (Outcome::Clear, Text::new("harvest-rested")),
        Ok(Some(day)) => (Outcome::Nothing, Text::new("harvest-resting").with("day", day)),
    };
    let says = says
        .with("stand", asked.stand.name.as_str())
        .with("years", years)
        .with("says", rule.says.as_str());
    let what = Text::new("harvest-what-rest");
    Candidate {
        working: Working::fact(what, shown(&says), rule.from.clone()),
        rule: reference,
        outcome,
        says,
    }
}
