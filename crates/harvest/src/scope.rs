//! What a rule is about, and whether it concerns a wish.

use crate::{Asked, Purpose};
use ground::{LifeForm, Part};
use serde::{Deserialize, Serialize};

/// What a rule is about. An empty list leaves nothing out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Scope {
    /// Species or genera, by scientific name.
    pub taxa: Vec<String>,
    /// Parts. `whole` means whole plants, not every part of them.
    pub parts: Vec<Part>,
    /// How they grow.
    pub life_forms: Vec<LifeForm>,
    /// Places with a law of their own, and those within them.
    pub jurisdictions: Vec<String>,
    /// Classes of land.
    pub lands: Vec<String>,
    /// What gathering is for.
    pub purposes: Vec<Purpose>,
}

impl Scope {
    /// Whether a rule of this scope stands in the way: what is asked lies in it, or shares something
    /// with it. What is not known counts as lying in it.
    #[must_use]
    pub fn touches(&self, asked: &Asked, places: &[&str]) -> bool {
        self.names(&asked.taxon)
            && (self.parts.is_empty() || self.parts.iter().any(|p| part_touches(*p, asked.part)))
            && has_or_unknown(&self.life_forms, asked.life_form.as_ref())
            && has_or_unknown(&self.lands, asked.site.land.as_ref())
            && has_or_unknown(&self.purposes, asked.purpose.as_ref())
            && self.lies_in(places)
    }

    /// Whether a rule of this scope covers all of what is asked. What is not known is not covered.
    #[must_use]
    pub fn covers(&self, asked: &Asked, places: &[&str]) -> bool {
        self.names(&asked.taxon)
            && (self.parts.is_empty() || self.parts.iter().any(|p| part_covers(*p, asked.part)))
            && has_known(&self.life_forms, asked.life_form.as_ref())
            && has_known(&self.lands, asked.site.land.as_ref())
            && has_known(&self.purposes, asked.purpose.as_ref())
            && self.lies_in(places)
    }

    /// Whether a rule of this scope covers a part of a plant on any land and for any purpose.
    pub(crate) fn covers_anywhere(&self, taxon: &str, part: Part, life_form: LifeForm) -> bool {
        self.names(taxon)
            && (self.parts.is_empty() || self.parts.iter().any(|rule| part_covers(*rule, part)))
            && has_known(&self.life_forms, Some(&life_form))
            && self.lands.is_empty()
            && self.purposes.is_empty()
            && self.jurisdictions.is_empty()
    }

    /// Whether a take of a part of a plant counts towards a limit of this scope.
    #[must_use]
    pub fn concerns(&self, taxon: &str, part: Part) -> bool {
        let touched = |rule: &Part| part_touches(*rule, part);
        self.names(taxon) && (self.parts.is_empty() || self.parts.iter().any(touched))
    }

    /// How closely a rule of this scope speaks of a part: the greater, the closer. One that names
    /// the plant comes before one that does not, then the one for the narrower part, then the one
    /// for a life form.
    pub(crate) fn narrowness(&self, part: Part) -> (bool, usize, bool) {
        let holding = self.parts.iter().filter(|rule| part_covers(**rule, part));
        let depth = holding.map(|rule| depth(*rule)).max().unwrap_or_default();
        (!self.taxa.is_empty(), depth, !self.life_forms.is_empty())
    }

    fn names(&self, taxon: &str) -> bool {
        let named = |name: &String| {
            let rest = taxon.strip_prefix(name.as_str());
            rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
        };
        self.taxa.is_empty() || self.taxa.iter().any(named)
    }

    fn lies_in(&self, places: &[&str]) -> bool {
        let known = |place: &String| places.contains(&place.as_str());
        self.jurisdictions.is_empty() || self.jurisdictions.iter().any(known)
    }
}

fn has_or_unknown<T: PartialEq>(list: &[T], item: Option<&T>) -> bool {
    list.is_empty() || item.is_none_or(|item| list.contains(item))
}

fn has_known<T: PartialEq>(list: &[T], item: Option<&T>) -> bool {
    list.is_empty() || item.is_some_and(|item| list.contains(item))
}

/// A rule on whole plants concerns whoever takes whole plants; other parts meet by their tree.
fn part_touches(rule: Part, asked: Part) -> bool {
    if rule == Part::Whole { asked == Part::Whole } else { rule.meets(asked) }
}

fn part_covers(rule: Part, asked: Part) -> bool {
    if rule == Part::Whole { asked == Part::Whole } else { rule.contains(asked) }
}

/// How far down its tree a part lies.
fn depth(part: Part) -> usize {
    std::iter::successors(Some(part), |part| part.parent()).count()
}
