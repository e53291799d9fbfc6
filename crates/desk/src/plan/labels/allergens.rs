//! Which of the fourteen allergens of the law on food labels a brew carries.

use prepare::{Brew, Helping, What};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// The substances of Annex II of Regulation (EU) No 1169/2011, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Allergen {
    /// Cereals that contain gluten.
    Gluten,
    /// Crustaceans.
    Crustaceans,
    /// Eggs.
    Eggs,
    /// Fish.
    Fish,
    /// Peanuts.
    Peanuts,
    /// Soybeans.
    Soybeans,
    /// Milk.
    Milk,
    /// Nuts of the trees that it names.
    Nuts,
    /// Celery.
    Celery,
    /// Mustard.
    Mustard,
    /// Sesame.
    Sesame,
    /// Sulphur dioxide and sulphites above 10 mg in a kilogram or litre.
    Sulphites,
    /// Lupin.
    Lupin,
    /// Molluscs.
    Molluscs,
}

impl Allergen {
    /// All fourteen.
    pub const ALL: [Self; 14] = [
        Self::Gluten,
        Self::Crustaceans,
        Self::Eggs,
        Self::Fish,
        Self::Peanuts,
        Self::Soybeans,
        Self::Milk,
        Self::Nuts,
        Self::Celery,
        Self::Mustard,
        Self::Sesame,
        Self::Sulphites,
        Self::Lupin,
        Self::Molluscs,
    ];

    /// Its word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Gluten => "gluten",
            Self::Crustaceans => "crustaceans",
            Self::Eggs => "eggs",
            Self::Fish => "fish",
            Self::Peanuts => "peanuts",
            Self::Soybeans => "soybeans",
            Self::Milk => "milk",
            Self::Nuts => "nuts",
            Self::Celery => "celery",
            Self::Mustard => "mustard",
            Self::Sesame => "sesame",
            Self::Sulphites => "sulphites",
            Self::Lupin => "lupin",
            Self::Molluscs => "molluscs",
        }
    }
}

/// Plants that Annex II of Regulation (EU) No 1169/2011 means, by genus and, where it names one, by
/// species: points 1, 5, 6, 8 (with the names that it gives itself), 9, 10, 11 and 13.
const PLANTS: &[(&str, Allergen)] = &[
    ("Triticum", Allergen::Gluten),
    ("Secale", Allergen::Gluten),
    ("Hordeum", Allergen::Gluten),
    ("Avena", Allergen::Gluten),
    ("Arachis", Allergen::Peanuts),
    ("Glycine", Allergen::Soybeans),
    ("Prunus dulcis", Allergen::Nuts),
    ("Corylus", Allergen::Nuts),
    ("Juglans", Allergen::Nuts),
    ("Carya", Allergen::Nuts),
    ("Pistacia vera", Allergen::Nuts),
    ("Apium", Allergen::Celery),
    ("Sinapis", Allergen::Mustard),
    ("Brassica", Allergen::Mustard),
    ("Sesamum", Allergen::Sesame),
    ("Lupinus", Allergen::Lupin),
];

/// Other food by the names that recipes give it, with what it carries. What is not here is not known.
const FOODS: &[(&str, Option<Allergen>)] = &[
    ("butter", Some(Allergen::Milk)),
    ("cream", Some(Allergen::Milk)),
    ("eggs", Some(Allergen::Eggs)),
    ("honey", None),
    ("milk", Some(Allergen::Milk)),
    ("potatoes", None),
    ("salt", None),
    ("wheat flour", Some(Allergen::Gluten)),
];

/// Allergens of what goes in.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Allergens {
    /// Those it carries.
    pub carried: BTreeSet<Allergen>,
    /// Ingredients of which nobody wrote down what they carry.
    pub unknown: BTreeSet<String>,
    /// Whether it is known what goes in.
    pub settled: bool,
}

/// Of plants alone.
pub(super) fn of_plants<'a>(taxa: impl IntoIterator<Item = &'a str>) -> Allergens {
    let meant = |taxon: &str, name: &str| {
        taxon == name || taxon.strip_prefix(name).is_some_and(|rest| rest.starts_with(' '))
    };
    let carried = |taxon: &'a str| {
        PLANTS.iter().filter(move |(name, _)| meant(taxon, name)).map(|(_, allergen)| *allergen)
    };
    let mut settled = false;
    let carried = taxa.into_iter().inspect(|_| settled = true).flat_map(carried).collect();
    Allergens { carried, unknown: BTreeSet::new(), settled }
}

/// Of a brew of a plant; where it is not worked out, nobody knows what goes in.
pub(super) fn of_brew(taxon: &str, brew: Option<&Brew>) -> Allergens {
    let mut all = of_plants([taxon]);
    all.settled = brew.is_some();
    for helping in brew.into_iter().flat_map(|brew| &brew.amounts) {
        match carried(helping) {
            Ok(allergen) => all.carried.extend(allergen),
            Err(name) => drop(all.unknown.insert(name)),
        }
    }
    all
}

/// What an ingredient carries, or the name of one of which nobody knows. Spirit without a name is
/// ethanol and water: Annex II leaves distillates of cereals, whey and nuts out (points 1 (d), 7 (a)
/// and 8 (a)).
fn carried(helping: &Helping) -> Result<Option<Allergen>, String> {
    match (helping.what, &helping.name) {
        (What::Herb, _) | (What::Water | What::Sugar | What::Spirit, None) => Ok(None),
        (what, name) => {
            let name = name.as_deref().unwrap_or(what.word());
            let food = FOODS.iter().find(|(food, _)| name.eq_ignore_ascii_case(food));
            food.map(|(_, carried)| *carried).ok_or_else(|| name.to_owned())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_genus_is_met_by_its_species_and_by_no_longer_name() {
        let of = |taxon| of_plants([taxon]).carried.into_iter().collect::<Vec<_>>();
        assert_eq!(of("Corylus avellana"), [Allergen::Nuts]);
        assert_eq!(of("Prunus dulcis"), [Allergen::Nuts]);
        assert_eq!(of("Prunus padus"), []);
        assert_eq!(of("Brassicella erucastrum"), []);
        assert!(!of_plants([]).settled);
    }
}
