//! Tables that were published elsewhere, read as they stand: see `docs/foreign-table.md`.
//!
//! **CSV**: a header line, then one line a taxon. The first column is the taxon's name. A column
//! `harm` holds `none`, `irritant`, `unknown`, `harmful` or `deadly`; without it every taxon counts
//! as deadly. A column `relatives` holds `all-listed`, `unlisted-alike` or `unlisted-unknown`;
//! without it nobody knows, and an unlisted relative stays in the way. Every other column is a
//! character. A cell is
//! - empty or `?`: unknown;
//! - a number from 0 to 100, with or without `%`: the share of plants that show `+` of a character
//!   whose states are `+` and `-`, kept within 1 and 99 since every reading can be wrong;
//! - a state, or several with `|` between them: the plant shows one of them.
//!
//! **TOML**: `[[taxon]]` tables with `name`, `harm`, `relatives`, and `characters`, in which each
//! character is a string as in a CSV cell, a number as there, a table of states with their shares
//! in per cent, or a pair of millimetres.
//!
//! Characters of such a table stand each in a group of their own and belong to no organ in
//! particular; nothing is known of what people confuse, so misreading is spread evenly.

mod column;
mod text;

pub use text::{read_csv, read_toml};
