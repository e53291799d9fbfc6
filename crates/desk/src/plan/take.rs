//! May we take it, and how much? What is asked of each stand, and what may go.

use super::make::WantedOf;
use crate::World;
use crate::outing::{Outing, Wishes};
use ground::{Answer, Fault, Faults, Fresh, Mass, Part, Place, Sourcing, Standing};
use harvest::{
    Allowance, Asked, Consent, History, Leave, Measure, Nearness, Permission, Plots, Purpose,
    Quantity, Rules, Scope, Site, Stand, Survey, SurveyNotes, TakeRule, Taken, allow,
};
use herbal::Herbal;
use jiff::civil::Date;
use journal::{Plot, School};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// What one stand is asked for, and what may go.
#[derive(Clone, Debug, Serialize)]
pub struct TakePlan {
    /// The stand.
    pub stand: String,
    /// The site it lies at.
    pub site: String,
    /// What the site is called.
    pub site_called: String,
    /// Of which plant.
    pub taxon: String,
    /// Of which part.
    pub part: Part,
    /// What the wishes ask of it, all together.
    #[serde(rename = "wanted_g")]
    pub wanted: Answer<Mass<Fresh>>,
    /// What was taken on the day itself.
    #[serde(rename = "taken_today_g")]
    pub taken_today: Mass<Fresh>,
    /// How much may be taken now.
    pub allowance: Allowance,
    /// Whether what is wanted and not yet taken fits the allowance. Unknown is no.
    pub enough: bool,
}

/// Works out what may go from each stand that a wish names.
pub(super) fn take_plans(
    wishes: &Wishes,
    school: &School,
    herbal: &Herbal,
    wanted: &WantedOf,
) -> Vec<TakePlan> {
    let rules = rules(herbal, wishes);
    let asked: BTreeSet<(&String, Part)> = wishes
        .makes
        .values()
        .flat_map(|make| make.stands.iter().map(|stand| (stand, make.part)))
        .collect();
    asked
        .into_iter()
        .filter_map(|(stand, part)| {
            take_plan(wishes, school, herbal, &rules, (stand, part), wanted)
        })
        .collect()
}

fn take_plan(
    wishes: &Wishes,
    school: &School,
    herbal: &Herbal,
    rules: &Rules,
    (stand, part): (&String, Part),
    wanted: &WantedOf,
) -> Option<TakePlan> {
    let known = school.stands.get(stand)?;
    let asked = asked(wishes, school, herbal, stand, part)?;
    let allowance = allow(&asked, rules);
    let wanted = wanted.get(&(stand.clone(), part)).cloned();
    let wanted = wanted.unwrap_or(Answer::Known(Mass::ZERO));
    let taken_today = school
        .taken(stand, part)
        .into_iter()
        .filter(|(at, _)| at.is_some_and(|at| at.date() == wishes.date))
        .map(|(_, take)| take.amount_g)
        .sum();
    let enough = matches!(
        (allowance.amount.known(), wanted.known()),
        (Some(Quantity::Mass(most)), Some(wanted)) if *wanted - taken_today <= *most
    );
    Some(TakePlan {
        stand: stand.clone(),
        site: known.site.clone(),
        site_called: school.sites.get(&known.site).map(|s| s.called.clone()).unwrap_or_default(),
        taxon: known.taxon.clone(),
        part,
        wanted,
        taken_today,
        allowance,
        enough,
    })
}

/// What an allowance at a stand depends on, from the records.
fn asked(
    wishes: &Wishes,
    school: &School,
    herbal: &Herbal,
    stand: &str,
    part: Part,
) -> Option<Asked> {
    let known = school.stands.get(stand)?;
    let sheet = herbal.flora.sheet(&known.taxon);
    let season = sheet.and_then(|sheet| season(&sheet.months, part));
    Some(Asked {
        on: wishes.date,
        taxon: known.taxon.clone(),
        part,
        measure: Measure::Mass,
        life_form: sheet.map(|sheet| sheet.life_form),
        season,
        protected: sheet.and_then(|sheet| sheet.protected.clone()),
        purpose: Some(wishes.purpose),
        site: site(school, &known.site),
        stand: stand_of(known),
        leave: leave(school, wishes, &known.site, &known.taxon),
        survey: survey(school, stand, part),
        history: wishes.records_since.map(|since| history(school, since, wishes.date)),
    })
}

/// The months in which a part can be had: its own, else those of the part it belongs to.
fn season(months: &BTreeMap<Part, ground::Season>, part: Part) -> Option<ground::Season> {
    std::iter::successors(Some(part), |part| part.parent())
        .find_map(|part| months.get(&part).copied())
}

fn site(school: &School, name: &str) -> Site {
    let known = school.sites.get(name);
    let consent = |c: &journal::Consent| Consent {
        rule: c.rule.clone(),
        from: c.from.clone(),
        until: c.until,
    };
    Site {
        name: name.to_owned(),
        landholder: known.map(|site| site.landholder.clone()),
        land: known.map(|site| site.land.clone()),
        jurisdiction: known.map(|site| site.jurisdiction.clone()),
        consents: known.map(|site| site.consents.iter().map(consent).collect()).unwrap_or_default(),
    }
}

fn stand_of(known: &journal::Stand) -> Stand {
    let not_there = known.without.iter().map(|hazard| (hazard.clone(), Nearness::NotThere));
    let near = known.hazards_mm.iter().map(|(hazard, far)| (hazard.clone(), Nearness::At(*far)));
    // A distance that was measured outweighs a note that nothing is there.
    let hazards = not_there.chain(near).collect();
    Stand { name: known.name.clone(), hazards, in_water: known.in_water }
}

/// The permission that serves best: one that still runs and names the plant before one that does
/// not, the latest of equals.
fn leave(school: &School, wishes: &Wishes, site: &str, taxon: &str) -> Option<Leave> {
    if school.sites.get(site).is_some_and(|site| site.public_right) {
        return Some(Leave::PublicRight);
    }
    let serves = |p: &&journal::Permission| {
        let runs = p.given <= wishes.date && wishes.date <= p.until;
        (p.taxa.iter().any(|name| name == taxon), runs, p.given)
    };
    let best = school.permissions.iter().filter(|p| p.site == site).max_by_key(serves)?;
    let purposes = best.purposes.iter().filter_map(|word| Purpose::of(word)).collect();
    Some(Leave::Given(Permission {
        from: best.from.clone(),
        given: best.given,
        until: best.until,
        purposes,
        taxa: best.taxa.clone(),
        parts: best.parts.clone(),
        at_most: best.at_most_g.map(Quantity::Mass),
    }))
}

/// The latest survey. Reading its file refused one that makes no sense.
fn survey(school: &School, stand: &str, part: Part) -> Option<Survey> {
    let (at, notes) = school.survey(stand, part)?;
    surveyed((*at)?.date(), notes).ok()
}

/// The notes of a survey as the sums of the harvest take them.
///
/// # Errors
/// Notes that make no sense: no plots, more plots than there are, some counted and some weighed.
pub(crate) fn surveyed(on: Date, notes: &journal::Survey) -> Result<Survey, Faults> {
    let pieces = notes.plots.iter().map(|plot| match plot {
        Plot::Pieces(count) => Some(*count),
        Plot::Grams(_) => None,
    });
    let weights = notes.plots.iter().map(|plot| match plot {
        Plot::Grams(mass) => Some(*mass),
        Plot::Pieces(_) => None,
    });
    let weights: Option<Vec<_>> = weights.collect();
    let plots = match (pieces.collect::<Option<Vec<_>>>(), weights) {
        (Some(pieces), _) => Plots::Pieces(pieces),
        (None, Some(weights)) => Plots::Weights(weights),
        (None, None) => {
            let at = Place::entry("survey", &notes.stand, "plots");
            return Err(Fault::new("counted-and-weighed", at, notes.plots.len().to_string()).into());
        }
    };
    Survey::new(SurveyNotes {
        on,
        stand: notes.stand.clone(),
        part: notes.part,
        plots_in_stand: notes.plots_in_stand,
        plots,
        piece_weights: notes.piece_g.clone(),
    })
}

fn history(school: &School, since: Date, today: Date) -> History {
    let taken = |(at, take): &(Option<jiff::civil::DateTime>, journal::Take)| {
        let stand = school.stands.get(&take.stand)?;
        Some(Taken {
            // A take without a day counts as one of today, which leaves least.
            on: at.map_or(today, |at| at.date()),
            site: stand.site.clone(),
            stand: take.stand.clone(),
            taxon: stand.taxon.clone(),
            part: take.part,
            amount: Quantity::Mass(take.amount_g),
        })
    };
    History { since, takes: school.takes.values().filter_map(taken).collect() }
}

/// The rules of the herbal, with the shares that the leader allows instead.
fn rules(herbal: &Herbal, wishes: &Wishes) -> Rules {
    let mut rules = herbal.land.rules.clone();
    for own in &wishes.fractions {
        let same = |rule: &TakeRule| {
            rule.scope.parts == [own.part]
                && rule.scope.life_forms == [own.life_form]
                && rule.scope.taxa.is_empty()
        };
        rules.shares.retain(|rule| !same(rule));
        rules.shares.push(TakeRule {
            id: format!("own-{}-{}", own.part, own.life_form),
            scope: Scope {
                parts: vec![own.part],
                life_forms: vec![own.life_form],
                ..Scope::default()
            },
            share: own.at_most,
            every_years: u16::try_from(own.rest_years.saturating_add(1)).unwrap_or(u16::MAX),
            says: String::new(),
            from: Sourcing::bare(Standing::Policy),
        });
    }
    rules
}

/// What may go from every stand of an outing, for every part that a wish or a survey names.
pub(crate) fn allowances(world: &World, outing: &Outing) -> Vec<TakePlan> {
    let school = world.journal.clone().merge(outing.journal.clone()).fold();
    let wishes = &outing.wishes;
    let rules = rules(&world.herbal, wishes);
    let surveyed = school.surveys.iter().map(|(_, survey)| (&survey.stand, survey.part));
    let wished = wishes.makes.values();
    let wished = wished.flat_map(|make| make.stands.iter().map(|stand| (stand, make.part)));
    let all: BTreeSet<(&String, Part)> = surveyed.chain(wished).collect();
    let none = WantedOf::new();
    let plan = |asked| take_plan(wishes, &school, &world.herbal, &rules, asked, &none);
    all.into_iter().filter_map(plan).collect()
}
