//! Replies become pages: text, HTML and drawings, with every sentence from one catalogue.
//!
//! The crafts name messages; [`Catalogue`] turns them into sentences. A view turns a reply into a
//! [`Page`] of some ten kinds of [`Block`], with [`Words`] to find the sentences. [`text`] writes a
//! page for a terminal, [`html`] for a browser and for paper. Equal pages give equal bytes.

mod block;
mod calendar;
mod catalogue;
mod clean;
mod direction;
mod fault;
mod habits;
mod html;
mod json;
mod large;
mod money;
mod number;
mod plain;
mod prose;
mod readability;
mod say;
mod sheet;
mod svg;
mod text;
mod views;
mod words;
mod working;

pub use block::{
    Align, Block, Break, Column, Details, Fact, Figure, Heading, Item, Label, LabelFace, LabelLine,
    Labels, Level, Lines, List, Marks, Notice, NoticeKind, Table,
};
pub use calendar::calendar;
pub use catalogue::{Catalogue, MESSAGE_FILES, MessageFile};
pub use desk::Paper;
pub use direction::Direction;
pub use fault::SaidFault;
pub use habits::{DateOrder, Habits, Measures};
pub use html::{html, html_body, html_looks, html_opened, html_paper, html_style};
pub use number::{Rounding, numerals, so_many_in, whole};
pub use prose::{Anchor, Inline, Prose, Target};
pub use readability::{Counts, PlantNames, Reading, longer_than, readability, syllables};
pub use sheet::{Format, Kind, Page, TypeSize};
pub use svg::{AgainstLimit, Bar, Code, Curve, Curves, Drawing, MonthStrip, Ruler};
pub use text::{Style, text};
pub use views::{
    Asking, NamedPage, PlannedPage, Viewed, asking, pages, planned_pages, plate, sheet_pages,
    state_drawing, view,
};
pub use words::{Way, Ways, Words};
