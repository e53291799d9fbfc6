//! The greatest number of servings with which a sum stays within a limit.

/// Servings beyond this are no longer counted: whatever holds so far is no limit in practice.
pub(crate) const MOST_SERVINGS: u32 = 64;

/// The greatest `n` up to [`MOST_SERVINGS`] with `holds(n)`; nothing when it holds there too.
///
/// `holds` must be monotone: once it fails it fails for every greater number. More servings never
/// lower a sum of amounts that are not negative, so it is.
pub(crate) fn most<E>(mut holds: impl FnMut(u32) -> Result<bool, E>) -> Result<Option<u32>, E> {
    if !holds(1)? {
        return Ok(Some(0));
    }
    let (mut good, mut bad) = (1, 2);
    while holds(bad)? {
        good = bad;
        if good >= MOST_SERVINGS {
            return Ok(None);
        }
        bad = (bad * 2).min(MOST_SERVINGS);
    }
    while bad - good > 1 {
        let middle = good + (bad - good) / 2;
        if holds(middle)? {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Ok(Some(good))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_search_is_exact_for_every_threshold() {
        for threshold in 0..MOST_SERVINGS {
            let found = most(|n| Ok::<_, ()>(n <= threshold)).unwrap();
            assert_eq!(found, Some(threshold), "{threshold}");
        }
        assert_eq!(most(|n| Ok::<_, ()>(n <= MOST_SERVINGS)).unwrap(), None);
    }
}
