//! Where every run of letters came to lie on paper, and what must not happen to it there.

#[path = "../../tests/demo/mod.rs"]
mod demo;
mod directions;
mod locales;
#[path = "../../tests/pseudo/mod.rs"]
mod pseudo;

use crate::Press;
use ground::Fault;
use page::{Page, Paper};
use std::fmt;
use typst::layout::{Abs, Frame, FrameItem, Point, Size};
use typst::text::TextItem;
use typst_layout::PagedDocument;

/// What a run may reach over an edge, in points: letters do not fill the room that they are given.
const GIVE: f64 = 0.5;

/// Edges in points, from the corner at the top left of the paper.
#[derive(Clone, Copy, Debug)]
struct Edges {
    left: f64,
    top: f64,
    right: f64,
    bottom: f64,
}

impl Edges {
    fn of(corner: Point, size: Size) -> Self {
        let (left, top) = (corner.x.to_pt(), corner.y.to_pt());
        Self { left, top, right: left + size.x.to_pt(), bottom: top + size.y.to_pt() }
    }

    fn meet(self, other: Self) -> bool {
        self.left.max(other.left) + GIVE < self.right.min(other.right)
            && self.top.max(other.top) + GIVE < self.bottom.min(other.bottom)
    }

    fn hold(self, other: Self) -> bool {
        self.left - GIVE <= other.left
            && self.top - GIVE <= other.top
            && other.right <= self.right + GIVE
            && other.bottom <= self.bottom + GIVE
    }
}

/// Letters of one look on one line.
#[derive(Clone, Debug)]
pub(super) struct Run {
    says: String,
    page: usize,
    /// From the line that letters stand on up to the height of small ones.
    body: Edges,
    /// What is cut off around it.
    clip: Edges,
}

impl fmt::Display for Run {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Edges { left, bottom, .. } = self.body;
        write!(f, "{:?} at {left:.0}, {bottom:.0} of page {}", self.says, self.page)
    }
}

/// The runs of a document, page after page.
fn runs(document: &PagedDocument) -> Vec<Run> {
    let mut runs = Vec::new();
    for (page, sheet) in (1..).zip(document.pages()) {
        let clip = Edges::of(Point::zero(), sheet.frame.size());
        gather(&sheet.frame, Point::zero(), clip, page, &mut runs);
    }
    runs
}

fn gather(frame: &Frame, corner: Point, clip: Edges, page: usize, runs: &mut Vec<Run>) {
    for (at, item) in frame.items() {
        let at = corner + *at;
        match item {
            FrameItem::Text(text) => runs.push(run(text, at, clip, page)),
            FrameItem::Group(group) => {
                let at = at + Point::new(group.transform.tx, group.transform.ty);
                let clips = group.clip.is_some();
                let clip = if clips { Edges::of(at, group.frame.size()) } else { clip };
                gather(&group.frame, at, clip, page, runs);
            }
            _ => {}
        }
    }
}

fn run(text: &TextItem, at: Point, clip: Edges, page: usize) -> Run {
    let height: Abs = text.size * 0.5;
    let corner = Point::new(at.x, at.y - height);
    let body = Edges::of(corner, Size::new(text.width(), height));
    Run { says: text.text.to_string(), page, body, clip }
}

/// What no reader should see: a run that is cut off, and runs over one another.
fn collisions(runs: &[Run]) -> Vec<String> {
    let cut = runs.iter().filter(|run| !run.clip.hold(run.body)).map(|run| format!("{run} is cut"));
    let mut sorted: Vec<_> = runs.iter().collect();
    sorted.sort_by(|a, b| (a.page, a.body.top).partial_cmp(&(b.page, b.body.top)).unwrap());
    let over = sorted.iter().enumerate().flat_map(|(at, run)| {
        let near = sorted.iter().skip(at + 1);
        let near = near.take_while(|o| o.page == run.page && o.body.top < run.body.bottom);
        near.filter(|o| o.body.meet(run.body)).map(move |o| format!("{run} and {o}"))
    });
    cut.chain(over).collect()
}

/// A page as it comes to lie on paper.
fn laid(press: &Press, page: &Page, paper: Paper) -> Result<Vec<Run>, Fault> {
    press.document(&page.isolated(), paper).map(|document| runs(&document))
}
