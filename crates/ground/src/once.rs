//! What is worked out once, from what it lies beside.

use std::sync::OnceLock;

/// A value that is worked out from its neighbours when it is first asked for, and then kept.
///
/// It says nothing that they do not say: two of these are always equal, and a copy starts empty, so that
/// a changed copy works its own out. It belongs beside what nobody changes in place.
#[derive(Debug)]
pub struct Once<T>(OnceLock<T>);

impl<T> Once<T> {
    /// The value; `work_out` is asked for it the first time.
    pub fn get(&self, work_out: impl FnOnce() -> T) -> &T {
        self.0.get_or_init(work_out)
    }
}

impl<T> Default for Once<T> {
    fn default() -> Self {
        Self(OnceLock::new())
    }
}

impl<T> Clone for Once<T> {
    fn clone(&self) -> Self {
        Self::default()
    }
}

impl<T> PartialEq for Once<T> {
    fn eq(&self, _: &Self) -> bool {
        true
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_value_is_worked_out_once_and_anew_in_a_copy() {
        let once = Once::default();
        assert_eq!((*once.get(|| 1), *once.get(|| 2)), (1, 1));
        assert_eq!(*once.clone().get(|| 3), 3);
    }
}
