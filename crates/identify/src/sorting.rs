//! Sorting a basket: how likely a wrong piece stays in it, and why only every piece will do.
//!
//! A [`Basket`] holds so many pieces, some of them wrong, and so many are looked at. A wrong piece stays
//! where nobody looked at it, or where all who did missed it ([`missed_by_all`]). Everything is exact: the
//! pieces that are looked at are drawn without putting back (hypergeometric distribution), as in inspection
//! with acceptance number zero.
//!
//! Two things are asked of a basket, and each is bounded from above. Whether something [stays
//! in](Basket::stays) is worked out as if each wrong piece were missed by itself; whether the basket
//! [passes unnoticed](Basket::unnoticed) as if whoever misses one misses all.
//!
//! ```
//! use identify::sorting::Basket;
//!
//! // One wrong piece among 200, a look at 20 of them that misses nothing: it stays 9 times in 10.
//! let tenth = Basket::new(200, 1, 20).unwrap();
//! assert!((tenth.stays(0.0) - 0.9).abs() < 1e-12);
//! // To have it among those looked at 99 times in 100 takes 198 of the 200.
//! assert_eq!(Basket::sample(200, 1, 0.99), 198);
//! ```

mod basket;
mod left;
mod looks;
mod sorters;

pub use basket::Basket;
pub use left::{Prior, left};
pub use looks::{Sign, looks, misread_all};
pub use sorters::{Planted, Sees, missed_by_all, upper_bound};

/// Share of wrong pieces that a sorter does not notice, whatever the signs: what is rare is overlooked.
///
/// Kunar, Rich & Wolfe 2010, Visual Cognition 18:881 (doi 10.1080/13506280903361988): 30 to 40 % of targets
/// are missed that are there in 1 to 2 % of trials, also by people who are slowed down. The upper end; that
/// it holds for pieces of a basket is policy: nothing measured on them was found.
pub const UNNOTICED: f64 = 0.40;

/// Share of misses that sorters have in common: whatever hides a piece from one hides it from the other.
///
/// Policy, on the careful side: a half is what analyses of human error call high dependence
/// (P(second | first) = (1 + m)/2, Swain & Guttmann 1983, NUREG/CR-1278; the formula from memory). Wolfe et
/// al. 2024, Atten. Percept. Psychophys. (doi 10.3758/s13414-024-02938-y) found misses of simple targets to
/// be mostly a matter of chance, which is no share at all.
pub const SHARED: f64 = 0.5;

/// Share of collectors' baskets that hold something poisonous: the best measured stand-in there is, of
/// mushrooms (Swiss association of mushroom inspectors, of some 20 000 baskets a year: 15 %; reported by
/// swissinfo.ch 43646088).
pub const CONTAMINATED: f64 = 0.15;

/// Share of them that hold something deadly: the upper end of 2 to 3 % (as above).
pub const DEADLY: f64 = 0.03;

/// How often a wrong piece is followed by another one. Policy: a handful is grabbed from one spot, so one
/// wrong piece seldom comes alone; nothing measured was found.
pub const FOLLOWED: f64 = 0.5;

/// How surely a sample is wanted to hold a wrong piece.
pub const CONFIDENCES: [f64; 2] = [0.95, 0.99];

/// Minutes that one tray takes at most. Policy: attention falls within the first half hour.
pub const TRAY_MINUTES: f64 = 15.0;

/// How many tells a piece is held against for each look-alike: as many as a verdict asks for.
pub const LOOKS: usize = 2;

#[cfg(test)]
mod laws;
