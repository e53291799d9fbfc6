//! The outing file: what is known and what is wanted, read into entries and wishes.

mod cross;
mod emergency;
mod entries;
mod file;
mod money;
mod names;
mod read;
mod rows;
mod shape;
mod tree;
mod wishes;

pub use emergency::{Base, Early, EmergencyWish, PhoneNumber, Reaches, WayBack};
pub use file::{InputFile, MOST_BYTES};
pub use money::{Cost, Fee, MoneyWish, Per, Rung};
pub use read::{Outing, includes, read};
pub use rows::{Cell, Change, TableRow, rows, standing_rows, write};
pub use wishes::{Make, OwnContent, OwnFraction, Reader, Stop, Wishes};

pub(crate) use entries::material;
pub(crate) use file::{Row, Said, Source, other_dimension};
pub(crate) use names::{Given, Names, nearest};
pub(crate) use read::level;
pub(crate) use rows::assignment;
pub(crate) use tree::read as read_tree;
