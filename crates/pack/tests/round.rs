//! What is packed comes back, and what is no such thing is told from it.

use pack::{pack, unpack};
use proptest::prelude::*;

/// How long the header is.
const HEADER: usize = 13;

proptest! {
    #[test]
    fn bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..4000), times in 1_usize..20) {
        let bytes = bytes.repeat(times);
        prop_assert_eq!(unpack(&pack(&bytes)), Some(bytes));
    }

    /// The header is left alone: a length in it that no device has room for ends a module, too.
    #[test]
    fn what_was_changed_on_the_way_ends_no_program(at: prop::sample::Index, by in 1_u8..) {
        let mut packed = pack(&words());
        let at = HEADER + at.index(packed.len() - HEADER);
        packed[at] ^= by;
        let _ = unpack(&packed);
    }
}

#[test]
fn what_was_cut_short_is_not_read() {
    let packed = pack(&words());
    for len in [0, 4, HEADER - 1, HEADER, 20, packed.len() / 2, packed.len() - 8] {
        assert_eq!(unpack(&packed[..len]), None, "the first {len} bytes");
    }
}

#[test]
fn words_get_smaller() {
    assert!(pack(&words()).len() * 4 < words().len());
}

fn words() -> Vec<u8> {
    let lines = (0..300).map(|line| format!("stinging nettle, stand {line}, {} g\n", line * 7));
    lines.collect::<String>().into_bytes()
}
