//! How long a preparation keeps, where, and why.

use crate::brew::told_time;
use crate::refuse::{Known, refuse};
use crate::sugar::WaterActivity;
use crate::{Larder, Moisture};
use ground::{AlcoholByVolume, Answer, Brix, Duration, Form, Sourcing, Text};
use serde::{Deserialize, Serialize};

/// A rule of keeping: for some preparations, within some strengths.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeepingRule {
    /// Its name.
    pub id: String,
    /// For which preparations.
    pub forms: Vec<Form>,
    /// Within which strengths.
    #[serde(default)]
    pub when: When,
    /// What it is called.
    pub class: Class,
    /// Where it is kept.
    pub place: Shelf,
    /// How long at most: the shorter end of what is published or customary.
    #[serde(rename = "most_min")]
    pub most: Duration,
    /// Why, in a plain line.
    pub why: String,
    /// Where it comes from.
    pub from: Sourcing,
}

/// Strengths within which a rule holds; lower ends are part of it, upper ends are not.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct When {
    /// From this strength on.
    #[serde(default, rename = "alcohol_from_percent_vol")]
    pub alcohol_from: Option<AlcoholByVolume>,
    /// Below this strength.
    #[serde(default, rename = "alcohol_below_percent_vol")]
    pub alcohol_below: Option<AlcoholByVolume>,
    /// From this sweetness on.
    #[serde(default, rename = "sugar_from_brix")]
    pub sugar_from: Option<Brix>,
    /// Below this sweetness.
    #[serde(default, rename = "sugar_below_brix")]
    pub sugar_below: Option<Brix>,
    /// From this water activity on.
    #[serde(default)]
    pub activity_from: Option<WaterActivity>,
    /// Below this water activity.
    #[serde(default)]
    pub activity_below: Option<WaterActivity>,
    /// Of dried herb: up to this moisture, itself included.
    #[serde(default)]
    pub moisture_up_to: Option<Moisture>,
    /// Of dried herb: above this moisture.
    #[serde(default)]
    pub moisture_above: Option<Moisture>,
}

/// How well something keeps. Ordered from the best to the worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Class {
    /// Keeps on the shelf.
    Keeps,
    /// Keeps for a while in the cold.
    KeepsCold,
    /// Near the line below which it spoils.
    Borderline,
    /// To be used at once.
    UseAtOnce,
}

/// Where something is kept. Ordered from the warmest to the coldest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shelf {
    /// Room, dark.
    Room,
    /// Cool cupboard or cellar, dark.
    Cool,
    /// Refrigerator.
    Fridge,
}

impl Shelf {
    /// The word, as files write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Room => "room",
            Self::Cool => "cool",
            Self::Fridge => "fridge",
        }
    }
}

/// What decides how a preparation keeps: the ends that spoil soonest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Strengths {
    /// Weakest it may be.
    pub(crate) alcohol: AlcoholByVolume,
    /// Sweetness.
    pub(crate) sugar: Brix,
    /// Water activity; not known for a sweet spirit.
    pub(crate) activity: Option<WaterActivity>,
    /// Moisture of dried herb.
    pub(crate) moisture: Option<Moisture>,
}

impl When {
    fn holds(self, of: Strengths) -> bool {
        let alcohol = within(self.alcohol_from, self.alcohol_below, Some(of.alcohol));
        let sugar = within(self.sugar_from, self.sugar_below, Some(of.sugar));
        let activity = within(self.activity_from, self.activity_below, of.activity);
        alcohol && sugar && activity && self.dry_enough(of.moisture)
    }

    fn dry_enough(self, moisture: Option<Moisture>) -> bool {
        let up_to = |most| moisture.is_some_and(|moisture| moisture <= most);
        let above = |least| moisture.is_some_and(|moisture| moisture > least);
        self.moisture_up_to.is_none_or(up_to) && self.moisture_above.is_none_or(above)
    }
}

/// Whether a value lies from one end to below the other; a bounded value that is not known does
/// not.
fn within<T: PartialOrd>(from: Option<T>, below: Option<T>, value: Option<T>) -> bool {
    match value {
        None => from.is_none() && below.is_none(),
        Some(value) => from.is_none_or(|from| value >= from) && below.is_none_or(|to| value < to),
    }
}

/// How a preparation keeps.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Keeping {
    /// What it is called: the worst of the rules that hold.
    pub class: Class,
    /// Where: the coldest that a rule asks for.
    pub place: Shelf,
    /// How long at most: the shortest that a rule allows. The discard date comes from it.
    #[serde(rename = "most_min")]
    pub most: Duration,
    /// The rule that allows least.
    pub binding: String,
    /// Its reason, in a plain line.
    pub why: String,
    /// Where it comes from.
    pub from: Sourcing,
    /// Every rule that holds, in order of their names.
    pub rules: Vec<String>,
}

impl Keeping {
    /// Where and how long, in words.
    #[must_use]
    pub fn text(&self) -> Text {
        let id = match self.place {
            Shelf::Room => "prepare-keep-in-room",
            Shelf::Cool => "prepare-keep-cool",
            Shelf::Fridge => "prepare-keep-in-fridge",
        };
        Text::new(id).with("time", told_time([self.most, self.most]))
    }

    /// How well it keeps, in words.
    #[must_use]
    pub fn class_text(&self) -> Text {
        Text::new(match self.class {
            Class::Keeps => "prepare-class-keeps",
            Class::KeepsCold => "prepare-class-keeps-cold",
            Class::Borderline => "prepare-class-borderline",
            Class::UseAtOnce => "prepare-class-use-at-once",
        })
    }
}

/// The strictest of the rules that hold for a preparation.
///
/// Refused when none holds: a preparation that no rule knows has no date.
pub(crate) fn keeping(rules: &[KeepingRule], form: Form, of: Strengths) -> Answer<Keeping> {
    known_keeping(rules, form, of).into()
}

/// How long dried herb keeps in its jar, at a moisture that was weighed.
///
/// Refused where no rule speaks of it.
pub fn keeping_of_dried(larder: &Larder, moisture: Moisture) -> Answer<Keeping> {
    let strengths = Strengths {
        alcohol: AlcoholByVolume::ZERO,
        sugar: Brix::ZERO,
        activity: None,
        moisture: Some(moisture),
    };
    keeping(&larder.keeping, Form::DriedFood, strengths)
}

fn known_keeping(rules: &[KeepingRule], form: Form, of: Strengths) -> Known<Keeping> {
    let formed = |rule: &&KeepingRule| rule.forms.iter().any(|known| known.contains(form));
    let mut holding: Vec<_> =
        rules.iter().filter(formed).filter(|rule| rule.when.holds(of)).collect();
    holding.sort_by(|a, b| a.id.cmp(&b.id));
    let shortest = |a: &&KeepingRule, b: &&KeepingRule| a.most.base().total_cmp(&b.most.base());
    let binding = *holding.iter().min_by(|a, b| shortest(a, b)).ok_or_else(|| {
        let why = refuse("prepare-refused-keeping", "prepare-settle-keeping");
        crate::refuse::with(why, "form", form.word())
    })?;
    Ok(Keeping {
        class: holding.iter().map(|rule| rule.class).max().unwrap_or(binding.class),
        place: holding.iter().map(|rule| rule.place).max().unwrap_or(binding.place),
        most: binding.most,
        binding: binding.id.clone(),
        why: binding.why.clone(),
        from: binding.from.clone(),
        rules: holding.iter().map(|rule| rule.id.clone()).collect(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::Standing;

    fn rule(id: &str, when: When, class: Class, place: Shelf, days: f64) -> KeepingRule {
        KeepingRule {
            id: id.to_owned(),
            forms: vec![Form::Inward],
            when,
            class,
            place,
            most: Duration::from_days(days),
            why: String::new(),
            from: Sourcing::bare(Standing::Practice),
        }
    }

    fn spirit(percent: f64) -> Strengths {
        Strengths {
            alcohol: AlcoholByVolume::from_percent(percent),
            sugar: Brix::ZERO,
            activity: None,
            moisture: None,
        }
    }

    #[test]
    fn the_strictest_of_several_rules_stands() {
        let long = rule("long", When::default(), Class::Keeps, Shelf::Fridge, 30.0);
        let short = rule("short", When::default(), Class::UseAtOnce, Shelf::Room, 1.0);
        let got = keeping(&[long, short], Form::Infusion, spirit(0.0));
        let got = got.ok().unwrap();
        assert_eq!((got.class, got.place), (Class::UseAtOnce, Shelf::Fridge));
        assert_eq!((got.most, got.binding.as_str()), (Duration::from_days(1.0), "short"));
    }

    #[test]
    fn a_lower_end_is_part_of_a_rule_and_an_upper_end_is_not() {
        let when = When {
            alcohol_from: Some(AlcoholByVolume::from_percent(20.0)),
            alcohol_below: Some(AlcoholByVolume::from_percent(25.0)),
            ..When::default()
        };
        assert!(when.holds(spirit(20.0)) && when.holds(spirit(24.999)));
        assert!(!when.holds(spirit(19.999)) && !when.holds(spirit(25.0)));
    }

    #[test]
    fn what_no_rule_knows_has_no_date() {
        let got = keeping(&[], Form::Syrup, spirit(0.0));
        assert!(got.known().is_none());
        let when = When { activity_from: Some(WaterActivity(0.0)), ..When::default() };
        assert!(!when.holds(spirit(30.0)), "an unknown activity meets no bound");
    }
}
