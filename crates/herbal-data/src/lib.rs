//! The herbal of the project, compiled in.
//!
//! The files of the folder `herbal/` are read and checked when this crate is built: a fault in any
//! of them, with its line and column, stops the build. What is handed out is therefore whole.

use herbal::{Account, Herbal};

static HERBAL: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/herbal.bin"));
static PACKED: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/herbal.lzma"));
static ACCOUNT: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/account.bin"));

/// The herbal.
#[must_use]
#[expect(clippy::expect_used, reason = "the build wrote these bytes from the same types")]
pub fn herbal() -> Herbal {
    postcard::from_bytes(HERBAL).expect("the build wrote a herbal")
}

/// Where each row of the herbal stands in its files and what it rests on, for reports on it.
#[must_use]
#[expect(clippy::expect_used, reason = "the build wrote these bytes from the same types")]
pub fn account() -> Account {
    postcard::from_bytes(ACCOUNT).expect("the build wrote an account")
}

/// The hash of the herbal's content: two programs with the same version know the same.
#[must_use]
pub fn version() -> &'static str {
    env!("HERBAL_VERSION")
}

/// The herbal as it was compiled, for a program that loads it apart.
#[must_use]
pub fn bytes() -> &'static [u8] {
    HERBAL
}

/// The same bytes, as `pack` packed them for the way to a device.
#[must_use]
pub fn packed() -> &'static [u8] {
    PACKED
}
