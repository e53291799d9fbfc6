//! Blocks into HTML elements.

use crate::{
    Align, Block, Break, Column, Details, Fact, Figure, Heading, Inline, Item, Label, LabelFace,
    LabelLine, Labels, Level, List, Marks, Notice, NoticeKind, Prose, Table, Target,
};
use maud::{Markup, PreEscaped, html};

/// Writes blocks, and counts what needs a name of its own on the page.
#[derive(Default)]
pub(super) struct Writer {
    named: u32,
}

impl Writer {
    pub(super) fn blocks(&mut self, blocks: &[Block]) -> Markup {
        html! {
            @for block in blocks { (self.block(block)) }
        }
    }

    fn block(&mut self, block: &Block) -> Markup {
        match block {
            Block::Heading(heading) => write_heading(heading),
            Block::Para(says) => html! { p { (prose(says)) } },
            Block::List(list) => self.list(list),
            Block::Table(table) => self.table(table),
            Block::Facts(facts) => self.facts(facts),
            Block::Notice(notice) => self.notice(notice),
            Block::Details(details) => self.details(details),
            Block::Figure(figure) => self.figure(figure),
            Block::Figures(figures) => html! {
                div.figures { @for figure in figures { (self.figure(figure)) } }
            },
            Block::Ticks(ticks) => html! {
                ul.ticks role="list" {
                    @for tick in ticks { li { span { (prose(tick)) } } }
                }
            },
            Block::Lines(lines) => html! {
                p.to-write { (prose(&lines.label)) }
                div.lines aria-hidden="true" { @for _ in 0..lines.count { div {} } }
            },
            Block::Large(blocks) => html! { div.from-afar { (self.blocks(blocks)) } },
            Block::Labels(labels) => self.labels(labels),
            Block::Break(Break::Rule) => html! { hr; },
            Block::Break(Break::Page) => html! { div.page-break {} },
        }
    }

    fn name(&mut self, kind: &str) -> String {
        self.named += 1;
        format!("{kind}-{}", self.named)
    }

    fn list(&mut self, list: &List) -> Markup {
        let items = html! {
            @for item in &list.items { (self.item(item)) }
        };
        match list.marks {
            Marks::Bullets => html! { ul { (items) } },
            Marks::Numbers => html! { ol { (items) } },
            Marks::Notes => html! { ol.notes { (items) } },
        }
    }

    fn item(&mut self, item: &Item) -> Markup {
        html! { li { (prose(&item.says)) (self.blocks(&item.under)) } }
    }

    /// A table in a frame that scrolls sideways, and can be reached by keyboard, on a narrow
    /// screen.
    fn table(&mut self, table: &Table) -> Markup {
        let caption = self.name("table");
        html! {
            div.wide role="group" aria-labelledby=(caption) tabindex="0" {
                table {
                    caption id=(caption) { span { (prose(&table.caption)) } }
                    thead { tr { @for column in &table.columns {
                        th scope="col" class=[end(column)] { (prose(&column.head)) }
                    } } }
                    tbody { @for row in &table.rows { (write_row(table, row)) } }
                }
            }
        }
    }

    fn facts(&mut self, facts: &[Fact]) -> Markup {
        html! {
            dl {
                @for fact in facts {
                    div {
                        dt { (prose(&fact.label)) }
                        dd { (prose(&fact.value)) (self.blocks(&fact.under)) }
                    }
                }
            }
        }
    }

    fn notice(&mut self, notice: &Notice) -> Markup {
        let (class, sign) = match notice.kind {
            NoticeKind::Question => ("notice question", "?"),
            NoticeKind::Caution => ("notice caution", "!"),
            NoticeKind::DoNot => ("notice do-not", "×"),
        };
        html! {
            div class=(class) role="note" {
                p.head { span.sign aria-hidden="true" { (sign) } span { (prose(&notice.head)) } }
                (self.blocks(&notice.blocks))
            }
        }
    }

    /// The anchor stands within, so that a link to it opens what holds it. What is empty says so to whoever
    /// can ask for what belongs there.
    fn details(&mut self, details: &Details) -> Markup {
        let anchor = details.anchor.as_ref().map(|anchor| anchor.as_str());
        html! {
            details open[details.open] data-later[details.blocks.is_empty()] {
                summary { (prose(&details.summary)) }
                div.opened id=[anchor] { (self.blocks(&details.blocks)) }
            }
        }
    }

    fn figure(&mut self, figure: &Figure) -> Markup {
        let name = self.name("figure");
        // A sign by itself needs less room than a part of a plant.
        let small = figure.drawing.width_mm().is_some_and(|width| width < 40.0);
        html! {
            figure.small[small] {
                (PreEscaped(figure.drawing.svg(&name)))
                figcaption { (prose(&figure.caption)) }
            }
        }
    }

    /// Labels as large as they are: one below the other on a screen, in their grid on paper.
    fn labels(&mut self, labels: &Labels) -> Markup {
        let sheet = &labels.sheet;
        let face = LabelFace::of(sheet);
        let size = format!(
            "width:{}mm;height:{}mm;font-size:{}mm",
            sheet.label.0, sheet.label.1, face.letters
        );
        html! {
            div class={ "labels " (sheet.paper.word()) } {
                @for one in labels.labels.chunks(sheet.holds()) {
                    div.label-sheet {
                        @for (at, label) in one.iter().enumerate() {
                            @let (x, y) = sheet.corner(at);
                            div.label role="group" style={ "left:" (x) "mm;top:" (y) "mm;" (size) } {
                                (self.label(label, &face))
                            }
                        }
                    }
                }
            }
        }
    }

    fn label(&mut self, label: &Label, face: &LabelFace) -> Markup {
        let side = format!("width:{0}mm;height:{0}mm", face.code);
        let name = self.name("code");
        html! {
            div.upper {
                div.says {
                    p.called { (prose(&label.title)) }
                    p { (prose(&label.scientific)) }
                    @if let Some(do_not) = &label.do_not { p.never { (prose(do_not)) } }
                    (label_lines(&label.beside))
                }
                div.code style=(side) {
                    @if let Some(code) = &label.code { (PreEscaped(code.svg(&name))) }
                }
            }
            (label_lines(&label.below))
        }
    }
}

fn label_lines(lines: &[LabelLine]) -> Markup {
    html! { @for line in lines { p { (prose(&line.prose())) } } }
}

fn write_heading(heading: &Heading) -> Markup {
    let anchor = heading.anchor.as_ref().map(|anchor| anchor.as_str());
    let says = prose(&heading.says);
    match heading.level {
        Level::Section => html! { h2 id=[anchor] { (says) } },
        Level::Part => html! { h3 id=[anchor] { (says) } },
        Level::Point => html! { h4 id=[anchor] { (says) } },
    }
}

fn write_row(table: &Table, row: &[Prose]) -> Markup {
    let empty = Prose::new();
    let cell = |at: usize| row.get(at).unwrap_or(&empty);
    html! {
        tr {
            @for (at, column) in table.columns.iter().enumerate() {
                @if at == 0 && table.rows_have_heads {
                    th scope="row" class=[end(column)] { (prose(cell(at))) }
                } @else {
                    td class=[end(column)] { (prose(cell(at))) }
                }
            }
        }
    }
}

fn end(column: &Column) -> Option<&'static str> {
    (column.align == Align::End).then_some("end")
}

/// Prose, its scientific names marked as Latin.
pub(super) fn prose(prose: &Prose) -> Markup {
    html! {
        @for piece in prose.iter() { (inline(piece)) }
    }
}

fn inline(piece: &Inline) -> Markup {
    let words = isolates(piece.words());
    match piece {
        Inline::Text(_) | Inline::Said { strong: false, .. } => words,
        Inline::Strong(_) | Inline::Said { strong: true, .. } => html! { strong { (words) } },
        Inline::Taxon(_) => html! { i lang="la" { (words) } },
        Inline::Code(_) => html! { code { (words) } },
        Inline::Number { working: None, .. } => html! { span.number { (words) } },
        Inline::Number { working: Some(anchor), .. } => html! {
            a.number href={ "#" (anchor.as_str()) } { (words) }
        },
        Inline::Link { to, .. } => html! { a href=(address(to)) { (words) } },
        Inline::Blank => html! { span.blank { (words) } },
    }
}

/// Words whose isolates are elements, as HTML asks of what is not plain text.
fn isolates(words: &str) -> Markup {
    let elements = [
        ('\u{2066}', "<bdi dir=\"ltr\">"),
        ('\u{2067}', "<bdi dir=\"rtl\">"),
        ('\u{2068}', "<bdi>"),
        ('\u{2069}', "</bdi>"),
    ];
    let escaped = html! { (words) }.into_string();
    PreEscaped(elements.into_iter().fold(escaped, |said, (mark, tag)| said.replace(mark, tag)))
}

fn address(to: &Target) -> String {
    match to {
        Target::Here(anchor) => format!("#{}", anchor.as_str()),
        Target::Web(address) | Target::Beside(address) => address.clone(),
    }
}
