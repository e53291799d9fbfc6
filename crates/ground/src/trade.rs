//! The closed lists of the trade that several crafts share, with the trees by which rules join.
//!
//! A rule that names a whole applies to its parts, and a rule that names a part applies to a
//! mixture that holds it: so two words *meet* when either contains the other.

use serde::{Deserialize, Serialize};
use std::fmt;

/// Declares a closed list of words, each with the word it belongs under.
macro_rules! words {
    (
        $(#[$doc:meta])*
        $name:ident: $noun:literal {
            $( $(#[$item_doc:meta])* $item:ident = $word:literal $(in $parent:ident)? ),+ $(,)?
        }
    ) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(try_from = "String", into = "String")]
        pub enum $name {
            $( $(#[$item_doc])* $item ),+
        }

        impl $name {
            /// Every word of the list.
            pub const ALL: &[Self] = &[$(Self::$item),+];

            /// The word, as files and commands write it.
            #[must_use]
            pub fn word(self) -> &'static str {
                match self {
                    $( Self::$item => $word ),+
                }
            }

            /// The word it belongs under.
            #[must_use]
            pub fn parent(self) -> Option<Self> {
                match self {
                    $( Self::$item => words!(@parent $($parent)?) ),+
                }
            }

            /// Whether this word is the other, or contains it.
            #[must_use]
            pub fn contains(self, other: Self) -> bool {
                let mut at = Some(other);
                while let Some(word) = at {
                    if word == self {
                        return true;
                    }
                    at = word.parent();
                }
                false
            }

            /// Whether either contains the other.
            #[must_use]
            pub fn meets(self, other: Self) -> bool {
                self.contains(other) || other.contains(self)
            }
        }

        impl TryFrom<String> for $name {
            type Error = String;

            fn try_from(word: String) -> Result<Self, String> {
                word.parse()
            }
        }

        impl std::str::FromStr for $name {
            type Err = String;

            fn from_str(word: &str) -> Result<Self, String> {
                Self::ALL.iter().copied().find(|item| item.word() == word).ok_or_else(|| {
                    let known: Vec<_> = Self::ALL.iter().map(|item| item.word()).collect();
                    format!("no {} is called \"{word}\"; there are: {}", $noun, known.join(", "))
                })
            }
        }

        impl From<$name> for String {
            fn from(item: $name) -> String {
                item.word().to_owned()
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.pad(self.word())
            }
        }
    };
    (@parent) => { None };
    (@parent $parent:ident) => { Some(Self::$parent) };
}

words! {
    /// A part of a plant that is gathered or that a rule names.
    Part: "part of a plant" {
        /// All of it.
        Whole = "whole",
        /// What stands above ground and is not wood or fruit.
        Herb = "herb" in Whole,
        /// Grown leaf, needle, scale spray, leafy twig, fern frond.
        Leaf = "leaf" in Herb,
        /// Leaf before it is grown.
        YoungLeaf = "young-leaf" in Leaf,
        /// Growing tip with its leaves; conifer tips of the year.
        ShootTip = "shoot-tip" in Herb,
        /// Flower or flower head.
        Flower = "flower" in Herb,
        /// Flower before it opens.
        FlowerBud = "flower-bud" in Flower,
        /// Pollen.
        Pollen = "pollen" in Flower,
        /// Fruit of any kind and age.
        Fruit = "fruit" in Whole,
        /// Ripe fruit, hip, berry.
        RipeFruit = "ripe-fruit" in Fruit,
        /// Unripe fruit, pod, husk.
        UnripeFruit = "unripe-fruit" in Fruit,
        /// Berry-like cone.
        ConeBerry = "cone-berry" in Fruit,
        /// Seed, kernel, nut, dry umbellifer fruit.
        Seed = "seed" in Fruit,
        /// Bark.
        Bark = "bark" in Whole,
        /// What grows below ground, of any kind.
        Underground = "underground" in Whole,
        /// Root.
        Root = "root" in Underground,
        /// Rhizome or tuber.
        Rhizome = "rhizome" in Underground,
        /// Bulb or corm.
        Bulb = "bulb" in Underground,
        /// Sap, resin, latex.
        Sap = "sap" in Whole,
        /// Distilled oil.
        EssentialOil = "essential-oil" in Whole,
    }
}

words! {
    /// What a part is made into, or how it meets a body.
    Form: "preparation" {
        /// Any preparation.
        Any = "any",
        /// Any that is eaten or drunk.
        Inward = "inward" in Any,
        /// Eaten as food.
        Food = "food" in Inward,
        /// Eaten raw.
        Raw = "raw" in Food,
        /// Heated through and eaten.
        Cooked = "cooked" in Food,
        /// Cooked in its water, the water eaten too.
        Soup = "soup" in Cooked,
        /// Pickled in salt.
        Brine = "brine" in Food,
        /// Dried and eaten or strewn.
        DriedFood = "dried-food" in Food,
        /// Oil for eating in which herb was steeped.
        FoodOil = "food-oil" in Food,
        /// Any watery drink made from herb.
        Tea = "tea" in Inward,
        /// Boiling water poured over.
        Infusion = "infusion" in Tea,
        /// Simmered.
        Decoction = "decoction" in Tea,
        /// Steeped cold.
        Macerate = "macerate" in Tea,
        /// Any thick sweet preparation.
        Sweet = "sweet" in Inward,
        /// Sugar syrup.
        Syrup = "syrup" in Sweet,
        /// Herb in honey.
        Honey = "honey" in Sweet,
        /// Honey and vinegar.
        Oxymel = "oxymel" in Honey,
        /// Any preparation that holds alcohol.
        Spirit = "spirit" in Inward,
        /// Herb steeped in spirit.
        Tincture = "tincture" in Spirit,
        /// Herb steeped in wine.
        Wine = "wine" in Spirit,
        /// Sweetened spirit.
        Liqueur = "liqueur" in Spirit,
        /// Herb in vinegar.
        Vinegar = "vinegar" in Inward,
        /// Distilled oil, swallowed.
        OilByMouth = "essential-oil-by-mouth" in Inward,
        /// Any that is put on the skin.
        Outward = "outward" in Any,
        /// Oil for the skin.
        SkinOil = "skin-oil" in Outward,
        /// Salve.
        Salve = "salve" in Outward,
        /// Bath, rinse, compress, poultice.
        Bath = "bath" in Outward,
        /// Handling the plant.
        Touch = "touch" in Outward,
        /// Breathing it in: smoke, steam, dust.
        Breath = "breath" in Any,
    }
}

words! {
    /// An organ of a plant that a character belongs to. Two tells count as different only when they
    /// lie in different organs.
    Organ: "organ" {
        /// The plant as a whole: habit, height, length of life.
        Whole = "whole",
        /// Stem, twig, thorns.
        Stem = "stem",
        /// Leaf, needle, leaf stalk, stipule.
        Leaf = "leaf",
        /// Flower and flower head.
        Flower = "flower",
        /// Fruit, cone, seed.
        Fruit = "fruit",
        /// Bark and pith.
        Bark = "bark",
        /// Root, rhizome, bulb.
        Underground = "underground",
    }
}

words! {
    /// How a plant grows: what decides how much of it can be spared.
    LifeForm: "life form" {
        /// Lives one season.
        Annual = "annual",
        /// Lives two.
        Biennial = "biennial",
        /// A herb that comes again each year.
        Perennial = "perennial",
        /// A shrub.
        Shrub = "shrub",
        /// A tree.
        Tree = "tree",
        /// A woody climber.
        Climber = "climber",
    }
}

words! {
    /// Where in the world an outing goes: the closed list that sheets and outings share.
    Region: "region" {
        /// Temperate Europe.
        Europe = "europe",
        /// Temperate North America.
        NorthAmerica = "north-america",
    }
}

words! {
    /// What a person may say of themselves that some rule asks for.
    Condition: "question about a person" {
        /// Everybody.
        All = "all",
        /// Pregnant or may be.
        Pregnant = "pregnant",
        /// Breast-feeding.
        Breastfeeding = "breastfeeding",
        /// Under 18 years.
        Under18 = "under18",
        /// Under 12 years.
        Under12 = "under12" in Under18,
        /// Under 4 years.
        Under4 = "under4" in Under12,
        /// Under 12 months.
        Under1 = "under1" in Under4,
        /// Allergy or intolerance to aspirin or other salicylates.
        Salicylate = "salicylate",
        /// Allergy to the daisy family.
        Asteraceae = "asteraceae",
        /// Allergy to celery, carrot, mugwort, anise.
        Apiaceae = "apiaceae",
        /// Allergy to the mint family.
        Lamiaceae = "lamiaceae",
        /// Birch pollen or related allergy.
        BirchPollen = "birchpollen",
        /// Any prescription medicine, the Pill included.
        AnyMedicine = "anymedicine",
        /// Blood thinners, platelet inhibitors, a bleeding disorder.
        Anticoagulant = "anticoagulant",
        /// Heart or blood-pressure medicine.
        HeartMedicine = "heartmed",
        /// Water tablets, lithium.
        Diuretic = "diuretic",
        /// Sedatives, sleep medicine, alcohol the same evening.
        Sedative = "sedative",
        /// Surgery within 14 days.
        Surgery = "surgery",
        /// Heart failure, oedema from heart disease.
        HeartDisease = "heartdisease",
        /// High blood pressure, low potassium.
        Hypertension = "hypertension",
        /// Kidney disease.
        Kidney = "kidney",
        /// Calcium oxalate stones, a low-oxalate diet.
        OxalateStones = "oxalatestones",
        /// Liver disease, active or past.
        Liver = "liver",
        /// Bile-duct disease.
        BileDuct = "bileduct",
        /// Gallstones.
        Gallstones = "gallstones",
        /// Stomach or duodenal ulcer, gastritis.
        Ulcer = "ulcer",
        /// Epilepsy or past seizures.
        Epilepsy = "epilepsy",
        /// Diabetes, glucose-lowering medicine.
        Diabetes = "diabetes",
        /// G6PD deficiency.
        G6pd = "g6pd",
        /// Photosensitive skin or medicine, strong sun or UV planned.
        Sun = "sun",
        /// Alcohol dependence, or abstinence for any reason.
        NoAlcohol = "alcoholdep",
        /// Drives or works machines afterwards.
        Driver = "driver",
        /// Hormone-dependent illness.
        Hormone = "hormone",
        /// Iron deficiency or iron tablets.
        Iron = "iron",
    }
}

/// How badly a plant, or a part of one, can hurt. Ordered by what a decision must fear most.
///
/// `Unknown` stands above `Irritant`: what nobody has looked up is not mild.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Harm {
    /// A published source says that it is used like this.
    None,
    /// Smarts, reddens, upsets.
    Irritant,
    /// No source was seen, or none that is strong enough.
    Unknown,
    /// Poisoning or organ damage.
    Harmful,
    /// Deaths of people are documented.
    Deadly,
}

impl Part {
    /// Whether characters of this organ can be read on a gathered piece, and not only on the plant where it
    /// grew.
    #[must_use]
    pub fn shows(self, organ: Organ) -> bool {
        match self {
            Self::Whole => true,
            Self::Herb | Self::ShootTip => {
                matches!(organ, Organ::Leaf | Organ::Stem | Organ::Flower)
            }
            Self::Leaf | Self::YoungLeaf => organ == Organ::Leaf,
            Self::Flower | Self::FlowerBud | Self::Pollen => organ == Organ::Flower,
            Self::Fruit | Self::RipeFruit | Self::UnripeFruit | Self::ConeBerry | Self::Seed => {
                organ == Organ::Fruit
            }
            Self::Bark => organ == Organ::Bark,
            Self::Underground | Self::Root | Self::Rhizome | Self::Bulb => {
                organ == Organ::Underground
            }
            Self::Sap | Self::EssentialOil => false,
        }
    }
}

impl Harm {
    /// The word, as files write it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::None => "none",
            Self::Irritant => "irritant",
            Self::Unknown => "unknown",
            Self::Harmful => "harmful",
            Self::Deadly => "deadly",
        }
    }
}

impl fmt::Display for Harm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.word())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rule_for_the_herb_meets_its_leaf_and_a_rule_for_leaf_meets_the_herb() {
        assert!(Part::Herb.meets(Part::YoungLeaf));
        assert!(Part::YoungLeaf.meets(Part::Herb));
        assert!(!Part::Leaf.meets(Part::Root));
        assert!(Part::ALL.iter().all(|part| Part::Whole.meets(*part)));
    }

    #[test]
    fn a_piece_shows_its_own_organ_and_the_whole_plant_shows_all() {
        assert!(Organ::ALL.iter().all(|organ| Part::Whole.shows(*organ)));
        assert!(Part::YoungLeaf.shows(Organ::Leaf) && !Part::YoungLeaf.shows(Organ::Flower));
        assert!(Part::Herb.shows(Organ::Stem) && !Part::Herb.shows(Organ::Underground));
        assert!(!Organ::ALL.iter().any(|organ| Part::Sap.shows(*organ)));
    }

    #[test]
    fn a_rule_for_teas_meets_a_decoction_and_no_salve() {
        assert!(Form::Tea.contains(Form::Decoction));
        assert!(!Form::Tea.meets(Form::Salve));
        assert!(Form::Inward.contains(Form::Oxymel));
    }

    #[test]
    fn an_unknown_word_is_answered_with_the_list() {
        let fault = "needle".parse::<Part>().unwrap_err();
        assert!(fault.contains("needle") && fault.contains("shoot-tip"));
    }

    #[test]
    fn no_tree_has_a_loop_and_words_are_unique() {
        fn words<T: Copy>(all: &[T], word: impl Fn(T) -> &'static str) {
            let mut seen = std::collections::BTreeSet::new();
            assert!(all.iter().all(|item| seen.insert(word(*item))));
        }
        words(Part::ALL, Part::word);
        words(Form::ALL, Form::word);
        words(Condition::ALL, Condition::word);
        assert!(Form::ALL.iter().all(|form| Form::Any.contains(*form)));
    }
}
