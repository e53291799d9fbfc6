//! The moment of a record, by a clock that never goes back.

use super::id::LAST_MS;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize};

/// A moment of a hybrid logical clock: milliseconds of the wall clock as long as that goes on, and a
/// count where it stands still or lags behind what was seen already.
///
/// S. S. Kulkarni, M. Demirbas, D. Madappa, B. Avva and M. Leone (2014), "Logical Physical Clocks",
/// OPODIS 2014, figure 5, where `ms` is *l* and `count` is *c*. Moments are ordered by milliseconds,
/// then count, then device, so that no two devices share one.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Clock {
    /// Unix milliseconds: the latest that any wall clock showed which this one heard of.
    #[serde(deserialize_with = "milliseconds")]
    pub ms: i64,
    /// How many moments of these milliseconds went before.
    pub count: u32,
    /// The device.
    pub device: String,
}

impl Clock {
    /// The moment of a device whose wall clock shows this, after the latest that it made or saw;
    /// none when the clock is at its end, in the year 10889.
    ///
    /// This is both rules of the figure in one. An event of the device itself comes after its own
    /// latest moment; receiving comes after the later one of that and the moment received.
    #[must_use]
    pub fn after(latest: Option<&Self>, now_ms: i64, device: &str) -> Option<Self> {
        let now = now_ms.clamp(0, LAST_MS);
        let (ms, count) = match latest {
            Some(latest) if latest.ms >= now => match latest.count.checked_add(1) {
                Some(count) => (latest.ms, count),
                None => (latest.ms + 1, 0),
            },
            _ => (now, 0),
        };
        (ms <= LAST_MS).then(|| Self { ms, count, device: device.to_owned() })
    }
}

/// Milliseconds that an identifier holds as well: beyond them a clock could not go on.
fn milliseconds<'de, D: Deserializer<'de>>(from: D) -> Result<i64, D::Error> {
    let ms = i64::deserialize(from)?;
    let held = (0..=LAST_MS).contains(&ms);
    held.then_some(ms).ok_or_else(|| D::Error::custom("milliseconds of 48 bits are wanted"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn clock(ms: i64, count: u32) -> Clock {
        Clock { ms, count, device: "phone".to_owned() }
    }

    /// Figure 5 as it is printed, for an event of the device itself: from `l.j`, `c.j` and `pt.j`.
    fn local((l_j, c_j): (i64, u32), pt_j: i64) -> (i64, u32) {
        let l = l_j.max(pt_j);
        if l == l_j { (l, c_j + 1) } else { (l, 0) }
    }

    /// The same for receiving a message of the moment `l.m`, `c.m`.
    fn receive((l_j, c_j): (i64, u32), (l_m, c_m): (i64, u32), pt_j: i64) -> (i64, u32) {
        let l = l_j.max(l_m).max(pt_j);
        let c = if l == l_j && l == l_m {
            c_j.max(c_m) + 1
        } else if l == l_j {
            c_j + 1
        } else if l == l_m {
            c_m + 1
        } else {
            0
        };
        (l, c)
    }

    #[test]
    fn a_full_count_carries_over_and_the_end_is_told() {
        let after = |ms, count| Clock::after(Some(&clock(ms, count)), 0, "phone");
        assert_eq!(after(7, u32::MAX), Some(clock(8, 0)));
        assert_eq!(after(LAST_MS, 3), Some(clock(LAST_MS, 4)));
        assert_eq!(after(LAST_MS, u32::MAX), None);
        assert_eq!(Clock::after(None, i64::MIN, "phone"), Some(clock(0, 0)));
        assert_eq!(Clock::after(None, i64::MAX, "phone"), Some(clock(LAST_MS, 0)));
    }

    #[test]
    fn milliseconds_that_no_identifier_holds_are_not_read() {
        let read = |ms: i64| {
            let text = format!(r#"{{"ms":{ms},"count":0,"device":"phone"}}"#);
            serde_json::from_str::<Clock>(&text).is_ok()
        };
        assert!(read(0) && read(LAST_MS));
        assert!(!read(-1) && !read(LAST_MS + 1) && !read(i64::MAX));
    }

    proptest! {
        // Few milliseconds, so that all cases of the figure come up.
        #[test]
        fn the_clock_is_that_of_the_figure(
            own in (0..4_i64, 0..9_u32),
            seen in (0..4_i64, 0..9_u32),
            now in 0..4_i64,
        ) {
            let pair = |clock: Clock| (clock.ms, clock.count);
            let after = |(ms, count)| Clock::after(Some(&clock(ms, count)), now, "phone").map(pair);
            prop_assert_eq!(after(own), Some(local(own, now)));
            prop_assert_eq!(after(own.max(seen)), Some(receive(own, seen, now)));
        }

        #[test]
        fn a_later_moment_follows_whatever_the_wall_clock_shows(
            ms in 0..LAST_MS,
            count in any::<u32>(),
            now in any::<i64>(),
        ) {
            let latest = clock(ms, count);
            // By a device that comes first in the alphabet: ties would go against it.
            prop_assert!(Clock::after(Some(&latest), now, "a").is_some_and(|next| next > latest));
        }
    }
}
