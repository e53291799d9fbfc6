//! The numbers that judging rests on: one table, each with its reason.
//!
//! All are policy of this program unless a source stands beside them. What they decide is
//! conservative by construction: every probability of a rival is raised by misreading and held up
//! by a floor, so that no single look can set a rival aside for good.

use ground::{Harm, Organ};

/// Share of plants that show a state of which a sheet says *always*.
pub const ALWAYS: f64 = 1.0;
/// Share where it says *usually*: what is left covers the exceptions that sheets rarely name.
pub const USUALLY: f64 = 0.85;
/// Share where it says *sometimes*: about one plant in eight.
pub const SOMETIMES: f64 = 0.12;
/// Share where it says *rarely*: about one plant in thirty.
pub const RARELY: f64 = 0.03;
/// Share of a state that the sheet does not name: sheets are not complete.
pub const UNSEEN: f64 = 0.004;

/// How far the outer limits lie beyond an ordinary length that has none: a quarter.
pub const BEYOND: f64 = 1.25;
/// Share of lengths below the ordinary range: what is long was short once, and a young leaf of a
/// large plant must not pass for a grown leaf of a small one.
pub const YOUNG: f64 = SOMETIMES;
/// How small a share of its least ordinary length an organ may have while it still shows its
/// characters: a quarter.
pub const YOUNGEST: f64 = 0.25;
/// Error of a measured length, as a share of it (standard deviation of a normal error).
pub const LENGTH_ERROR: f64 = 0.05;
/// Share of wrong counts that miss by one; the others fall anywhere. Ordinal characters are
/// misread into the neighbouring class above all.
pub const OFF_BY_ONE: f64 = 0.8;

/// Misreading of a character by a leader.
///
/// Sneath 1974, IJSB 24:508: laboratory tests read with care differ in 2 to 4 cases in 100.
pub const LEADER: f64 = 0.04;
/// Misreading by somebody who was shown the character; between the two published figures.
pub const TRAINED: f64 = 0.10;
/// Misreading by a member of the public.
///
/// Wäldchen et al. 2022, People and Nature 4:1603: 484 people read 79 % of characters rightly.
pub const PUBLIC: f64 = 0.21;
/// Misreading of leaf characters, relative to others: leaf characters are read worse (direction:
/// Wäldchen et al. 2022; size: policy).
pub const ON_LEAVES: f64 = 1.25;
/// Misreading of flower characters, relative to others: read better (as above).
pub const ON_FLOWERS: f64 = 0.8;
/// Misreading never exceeds an even chance.
pub const MOST_MISREAD: f64 = 0.5;
/// Misreading between two states that nobody confuses (a needle for a palm-shaped leaf), as a
/// share of the reader's misreading: 0.002 for a leader.
pub const FAR: f64 = 0.05;
/// No look is less likely than this, whatever the plant: slips of the tongue and of the pen.
pub const FLOOR: f64 = 1e-4;

/// A tell speaks for the plant at least this many times over its look-alike.
pub const TELL: f64 = 4.0;
/// So many readings must deny a rival that poisons or kills: each would be wrong, or the plant odd, if it were that. One
/// wrong page, one wrong word and one odd leaf do not come together often; a belief brings several wrong words.
pub const DENIALS: usize = 5;
/// A look agrees with the plant when it is at least this share of its likeliest look.
pub const AGREES: f64 = 0.5;
/// A look misfits the plant when it is less than this share of its likeliest look.
pub const MISFIT: f64 = 0.02;
/// So many agreeing groups outweigh one misfit that no sheet calls for.
pub const OUTWEIGH: usize = 6;
/// Two lengths of one plant of which one is more than so many times the other contradict each other: leaves of
/// one plant differ, but a slip of the unit is ten times.
pub const ONE_PLANT: f64 = 2.0;
/// A deadly rival that still contributes this much to the bar calls for a second reading. A rank
/// among the closest rivals would do the reverse of what is wanted: another rival, or a look less,
/// would push the deadly one out of the closest few and lift the demand.
pub const CLOSE: f64 = 0.01;
/// Minutes after which a leader's own reading counts as a second one.
pub const AGAIN_MINUTES: i64 = 10;
/// How many times likelier something else must be for a misfitting plant to be ruled out.
pub const RULES_OUT: f64 = 1e4;
/// Chance, before any look, that the plant is none of the table's, where that is considered.
pub const NONE_OF_THESE: f64 = 0.02;

/// Weight of a named look-alike that is harmless: how much worse than leaving a good plant behind.
pub const WEIGHT_HARMLESS: f64 = 20.0;
/// Weight of an irritant rival.
pub const WEIGHT_IRRITANT: f64 = 1e2;
/// Weight of a rival whose harm is not known: between irritant and harmful, as in the order of harm.
/// Nobody has looked it up, so it is not mild; most such plants are common herbs.
pub const WEIGHT_UNKNOWN: f64 = 1e3;
/// Weight of a harmful rival: as of a deadly one, since at a hundredth of it plants of which little is written passed
/// too often.
pub const WEIGHT_HARMFUL: f64 = 1e6;
/// Weight of an unlisted relative.
pub const WEIGHT_COUSIN: f64 = 1e4;
/// Weight of a deadly rival. Of published and hospital cases of autumn crocus taken for ramsons a
/// third died (Razinger et al. 2021, Clin. Toxicol. 59:493).
pub const WEIGHT_DEADLY: f64 = 1e6;

/// Prior of an unlisted relative where a source says that there is none, or that all are alike.
pub const COUSIN_LISTED: f64 = 0.001;
/// The same where nobody knows, or somebody only remembers.
pub const COUSIN_UNKNOWN: f64 = 1.0;

/// Weight of a rival of this harm.
#[must_use]
pub fn weight(harm: Harm) -> f64 {
    match harm {
        Harm::None => WEIGHT_HARMLESS,
        Harm::Irritant => WEIGHT_IRRITANT,
        Harm::Unknown => WEIGHT_UNKNOWN,
        Harm::Harmful => WEIGHT_HARMFUL,
        Harm::Deadly => WEIGHT_DEADLY,
    }
}

/// How much worse or better the characters of an organ are read than others.
#[must_use]
pub fn organ_factor(organ: Organ) -> f64 {
    match organ {
        Organ::Leaf => ON_LEAVES,
        Organ::Flower => ON_FLOWERS,
        _ => 1.0,
    }
}

/// How many times one look speaks for a taxon that always shows a state, over one that never does,
/// when misreading is spread evenly over the other states: (1 − e)(S − 1)/e.
#[must_use]
pub fn look_ratio(misread: f64, states: u32) -> f64 {
    (1.0 - misread) * (f64::from(states) - 1.0) / misread
}

/// How many independent looks of that kind reach these odds from even ones:
/// ⌈ln odds / ln ratio⌉.
#[must_use]
pub fn looks_needed(odds: f64, misread: f64, states: u32) -> f64 {
    (libm::log(odds) / libm::log(look_ratio(misread, states))).ceil()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table follows from the formula; the error shares are those of Sneath 1974 (0.05, 0.10)
    /// and Wäldchen et al. 2022 (0.21).
    #[test]
    fn the_number_of_looks_needed_follows_from_misreading_states_and_harm() {
        let table = [
            (0.05, 2, 19.0, [3.0, 4.0, 5.0]),
            (0.05, 4, 57.0, [2.0, 3.0, 4.0]),
            (0.10, 2, 9.0, [4.0, 5.0, 7.0]),
            (0.21, 2, 3.762, [6.0, 7.0, 11.0]),
            (0.21, 3, 7.524, [4.0, 5.0, 7.0]),
            (0.21, 5, 15.048, [3.0, 4.0, 6.0]),
        ];
        for (misread, states, ratio, needed) in table {
            // The table gives three decimals.
            assert!((look_ratio(misread, states) - ratio).abs() < 5e-4);
            assert_eq!([1e3, 1e4, 1e6].map(|odds| looks_needed(odds, misread, states)), needed);
        }
    }
}
