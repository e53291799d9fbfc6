//! What is judged: one specimen, on one day, at one place.

use crate::Look;
use ground::{Finite, Region};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// One specimen with all that was read of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Case {
    /// The plant in hand, as the looks call it.
    pub specimen: String,
    /// Where it stands.
    pub place: String,
    /// The day; looks of other days are left out, and the verdict lapses with it.
    pub day: Date,
    /// The region, which decides what else could grow there; none: anything could.
    pub region: Option<Region>,
    /// What the material is.
    pub material: Material,
    /// How much lower the bar lies than the least that is asked.
    pub strictness: Strictness,
    /// The looks of the day, those at other specimens too: a smell met there taints a later one.
    pub looks: Vec<Look>,
}

impl Case {
    /// The looks that were made on the day.
    pub(crate) fn session(&self) -> Vec<&Look> {
        self.looks.iter().filter(|look| look.time.date() == self.day).collect()
    }

    /// How many looks at the specimen were made on another day.
    pub(crate) fn left_out(&self) -> usize {
        let stale = |look: &&Look| look.specimen == self.specimen && look.time.date() != self.day;
        self.looks.iter().filter(stale).count()
    }
}

/// What is in hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// A living plant where it grows, or fresh from there.
    Living,
    /// A picture.
    Photograph,
    /// Bought, or given by somebody.
    Bought,
    /// Cut up.
    Chopped,
    /// Dried.
    Dried,
}

impl Material {
    /// Whether it can be determined at all.
    #[must_use]
    pub fn can_be_determined(self) -> bool {
        self == Self::Living
    }

    /// Its word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Living => "living",
            Self::Photograph => "photograph",
            Self::Bought => "bought",
            Self::Chopped => "chopped",
            Self::Dried => "dried",
        }
    }
}

/// How many times stricter than the least a school judges. Never below 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Strictness(Finite);

impl Strictness {
    /// As strict as everybody must be.
    #[must_use]
    pub fn least() -> Self {
        Self(Finite::new(1.0).unwrap_or_default())
    }

    /// So many times as strict; nothing below once.
    #[must_use]
    pub fn times(times: f64) -> Option<Self> {
        Finite::new(times).filter(|times| times.get() >= 1.0).map(Self)
    }

    /// What may be left of the bar.
    #[must_use]
    pub fn allows(self) -> f64 {
        1.0 / self.0.get()
    }
}

impl TryFrom<f64> for Strictness {
    type Error = String;

    fn try_from(times: f64) -> Result<Self, String> {
        Self::times(times).ok_or_else(|| format!("a strictness of {times} is below 1"))
    }
}

impl From<Strictness> for f64 {
    fn from(strictness: Strictness) -> f64 {
        strictness.0.get()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_may_be_raised_and_never_lowered() {
        assert_eq!(Strictness::times(10.0).unwrap().allows(), 0.1);
        assert_eq!(Strictness::times(0.5), None);
        assert_eq!(Strictness::times(f64::NAN), None);
        assert!(serde_json::from_str::<Strictness>("0.9").is_err());
    }
}
