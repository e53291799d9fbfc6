//! Blocks into calls of the functions of `style.typ`.

use crate::fonts::{DRAWN, Fonts};
use crate::markup::string;
use crate::paper::Setting;
use crate::width::{self, Width};
use page::{
    Align, Anchor, Block, Break, Column, Details, Direction, Fact, Figure, Heading, Inline, Item,
    Label, LabelFace, LabelLine, Labels, Level, Lines, List, Marks, Notice, NoticeKind, Page,
    Prose, Table, Target, TypeSize,
};
use std::collections::BTreeSet;

/// Letters after which a word without a gap may be broken, so that it stays on the paper.
pub(crate) const LONG_WORD: usize = 24;
/// Letters from one place where it may be broken to the next.
const BREAKS_APART: usize = 6;

/// How much larger the letters are that are read from a step away.
const FROM_AFAR: f64 = 1.4;

/// What is left free between two drawings.
const DRAWINGS_APART_MM: f64 = 3.0;

/// Writes blocks, and minds what must hold of the page as a whole.
pub(crate) struct Writer<'a> {
    fonts: &'a Fonts,
    /// Places that links of this page can lead to.
    anchors: BTreeSet<&'a str>,
    /// How deep the last heading stood; the next stands at most one step deeper.
    depth: u8,
    drawings: u32,
    /// How long a line is, in the size of its letters.
    line_ems: f64,
    line_mm: f64,
    /// How many lines a page holds.
    lines: f64,
    size: TypeSize,
    direction: Direction,
}

impl<'a> Writer<'a> {
    pub(crate) fn new(page: &'a Page, setting: &Setting, fonts: &'a Fonts) -> Self {
        let mut anchors = BTreeSet::new();
        gather(&page.blocks, &mut anchors);
        let (line_ems, line_mm, lines) = (setting.line_ems(), setting.line_mm(), setting.lines());
        let (size, direction) = (page.size, page.direction());
        Self { fonts, anchors, depth: 1, drawings: 0, line_ems, line_mm, lines, size, direction }
    }

    /// Each block on a line of its own.
    pub(crate) fn blocks(&mut self, blocks: &[Block]) -> String {
        blocks.iter().map(|block| self.block(block) + "\n").collect()
    }

    fn block(&mut self, block: &Block) -> String {
        match block {
            Block::Heading(heading) => self.heading(heading),
            Block::Para(says) => format!("para({})", self.prose(says)),
            Block::List(list) => self.list(list),
            Block::Table(table) => self.table(table),
            Block::Facts(facts) => self.facts(facts),
            Block::Notice(notice) => self.notice(notice),
            Block::Details(details) => self.details(details),
            Block::Figure(figure) => format!("drawing({})", self.figure(figure)),
            Block::Figures(figures) => self.figures(figures),
            Block::Ticks(ticks) => self.call("ticks", ticks),
            Block::Lines(Lines { label, count }) => {
                format!("to-write({}, {count})", self.prose(label))
            }
            Block::Large(blocks) => self.enlarged(blocks),
            Block::Labels(labels) => self.labels(labels),
            Block::Break(Break::Rule) => "rule()".to_owned(),
            Block::Break(Break::Page) => "next-page()".to_owned(),
        }
    }

    fn heading(&mut self, heading: &Heading) -> String {
        let level = match heading.level {
            Level::Section => 2,
            Level::Part => 3,
            Level::Point => 4,
        };
        self.depth = level.min(self.depth + 1);
        let says = self.prose(&heading.says);
        let set = format!("heading(level: {}, {says})", self.depth);
        anchored(set, heading.anchor.as_ref())
    }

    /// A function of several pieces of prose.
    fn call(&self, name: &str, all: &[Prose]) -> String {
        let said: Vec<_> = all.iter().map(|prose| self.prose(prose)).collect();
        format!("{name}({})", said.join(", "))
    }

    fn list(&mut self, list: &List) -> String {
        let name = match list.marks {
            Marks::Bullets => "bullets",
            Marks::Numbers => "numbered",
            Marks::Notes => "notes",
        };
        let items: Vec<_> = list.items.iter().map(|item| self.item(item)).collect();
        format!("{name}({})", items.join(", "))
    }

    fn item(&mut self, item: &Item) -> String {
        let says = self.prose(&item.says);
        if item.under.is_empty() {
            return says;
        }
        format!("{{ {says}\n{}}}", self.blocks(&item.under))
    }

    fn table(&mut self, table: &Table) -> String {
        let size = width::table_size(table, self.line_ems, self.size);
        let columns = width::columns(table, self.line_ems / size);
        let tall = |row: &Vec<Prose>| width::is_tall(row, &columns, self.lines / size);
        let rows: Vec<_> = table.rows.iter().map(|row| self.row(table, row, tall(row))).collect();
        let whole = width::is_short(table, &columns, self.lines / size);
        let columns: Vec<_> = columns.into_iter().map(column_width).collect();
        let heads: Vec<_> = table.columns.iter().map(|column| self.prose(&column.head)).collect();
        let aligns: Vec<_> = table.columns.iter().map(align).collect();
        format!(
            "sheet-table(caption: {}, size: {size}em, whole: {whole}, columns: ({},), aligns: ({},), heads: ({},), row-heads: {}, {})",
            self.prose(&table.caption),
            columns.join(", "),
            aligns.join(", "),
            heads.join(", "),
            table.rows_have_heads,
            rows.join(", ")
        )
    }

    /// Its cells, and whether they may be broken.
    fn row(&self, table: &Table, row: &[Prose], breaks: bool) -> String {
        let empty = Prose::new();
        let cell = |at: usize| row.get(at).unwrap_or(&empty);
        let cells: Vec<_> = (0..table.columns.len()).map(|at| self.cell(cell(at))).collect();
        format!("({breaks}, ({},))", cells.join(", "))
    }

    /// The prose of a cell; room to write makes the cell tall.
    fn cell(&self, prose: &Prose) -> String {
        if width::is_room(prose) { "room".to_owned() } else { self.prose(prose) }
    }

    fn facts(&mut self, facts: &[Fact]) -> String {
        let labels = match width::labels(facts, self.line_ems) {
            Width::Natural => "auto".to_owned(),
            Width::Share(ems) => format!("{ems:.2}em"),
        };
        let facts: Vec<_> = facts.iter().map(|fact| self.fact(fact)).collect();
        format!("facts({labels}, {})", facts.join(", "))
    }

    fn fact(&mut self, fact: &Fact) -> String {
        let (label, value) = (self.prose(&fact.label), self.prose(&fact.value));
        let breaks = !width::is_brief(fact, self.line_ems, self.lines);
        let under = self.blocks(&fact.under);
        format!("({label}, {{ {value}\n{under}}}, {breaks})")
    }

    fn notice(&mut self, notice: &Notice) -> String {
        let kind = match notice.kind {
            NoticeKind::Question => "question",
            NoticeKind::Caution => "caution",
            NoticeKind::DoNot => "do-not",
        };
        let head = self.prose(&notice.head);
        format!("notice(\"{kind}\", {head}, {{\n{}}})", self.blocks(&notice.blocks))
    }

    fn details(&mut self, details: &Details) -> String {
        let summary = self.prose(&details.summary);
        let set = format!("opened({summary}, {{\n{}}})", self.blocks(&details.blocks));
        anchored(set, details.anchor.as_ref())
    }

    /// What a drawing function takes: the drawing, its width, its words, its caption.
    fn figure(&mut self, figure: &Figure) -> String {
        self.drawings += 1;
        let drawing = &figure.drawing;
        let svg = drawing.svg_in(&format!("figure-{}", self.drawings), DRAWN);
        let width = drawing.width_mm();
        let width = width.map(|mm| if drawing.is_true_to_size() { mm } else { mm * self.grown() });
        format!(
            "{}, {}, {}, {}",
            string(&svg),
            width.map_or("auto".to_owned(), |mm| format!("{mm}mm")),
            string(&self.fonts.drawable(drawing.describes())),
            self.prose(&figure.caption)
        )
    }

    /// Drawings beside each other, as many as the line holds.
    fn figures(&mut self, figures: &[Figure]) -> String {
        let widest = figures.iter().filter_map(|figure| figure.drawing.width_mm());
        let widest = widest.reduce(f64::max);
        let widest = widest.map_or(self.line_mm, |mm| mm * self.grown());
        let across = (self.line_mm / (widest + DRAWINGS_APART_MM)).floor().max(1.0);
        let drawn: Vec<_> = figures.iter().map(|figure| self.figure(figure)).collect();
        format!(
            "drawings({across}, ({},))",
            drawn.iter().map(|d| format!("({d})")).collect::<Vec<_>>().join(", ")
        )
    }

    /// Labels on sheets of their own, each at its corner.
    fn labels(&mut self, labels: &Labels) -> String {
        let face = LabelFace::of(&labels.sheet);
        let (width, height) = labels.sheet.paper.size();
        let sheets = labels.labels.chunks(labels.sheet.holds()).map(|sheet| {
            let placed = sheet.iter().enumerate().map(|(at, label)| {
                let (x, y) = labels.sheet.corner(at);
                format!("({x}mm, {y}mm, {})", self.label(label, &face))
            });
            let placed: Vec<_> = placed.collect();
            format!("label-sheet({width}mm, {height}mm, {})\n", placed.join(", "))
        });
        let sheets: String = sheets.collect();
        format!("{{\n{sheets}}}")
    }

    fn label(&mut self, label: &Label, face: &LabelFace) -> String {
        let lines = |lines: &[LabelLine]| {
            let lines: Vec<_> = lines.iter().map(|line| self.prose(&line.prose())).collect();
            lines.into_iter().map(|line| line + ",").collect::<String>()
        };
        let (beside, below) = (lines(&label.beside), lines(&label.below));
        let do_not = label.do_not.as_ref().map_or("none".to_owned(), |says| self.prose(says));
        let (title, scientific) = (self.prose(&label.title), self.prose(&label.scientific));
        let code = label.code.as_ref().map_or("none".to_owned(), |code| {
            self.drawings += 1;
            let svg = code.svg_in(&format!("figure-{}", self.drawings), DRAWN);
            format!("({}, {})", string(&svg), string(&self.fonts.drawable(code.describes())))
        });
        let LabelFace { letters, margin, gap, code: side, size: (width, height), .. } = face;
        format!(
            "jar-label(({width}mm, {height}mm), {letters}mm, {margin}mm, {gap}mm, {side}mm, {title}, \
             {scientific}, {do_not}, ({beside}), {code}, ({below}))"
        )
    }

    /// Blocks in letters that leave less room on a line.
    fn enlarged(&mut self, blocks: &[Block]) -> String {
        let usual = (self.line_ems, self.lines);
        self.line_ems /= FROM_AFAR;
        self.lines /= FROM_AFAR;
        let set = format!("from-afar({FROM_AFAR}em, {{\n{}}})", self.blocks(blocks));
        (self.line_ems, self.lines) = usual;
        set
    }

    /// How much larger large print draws what is not true to size.
    fn grown(&self) -> f64 {
        match self.size {
            TypeSize::Normal => 1.0,
            TypeSize::Large => 1.5,
        }
    }

    /// Prose as one piece of content.
    pub(crate) fn prose(&self, prose: &Prose) -> String {
        let said: Vec<_> = prose.iter().map(|piece| self.inline(piece)).collect();
        if said.is_empty() { "[]".to_owned() } else { format!("{{ {} }}", said.join("; ")) }
    }

    fn inline(&self, piece: &Inline) -> String {
        let words = breakable(&self.fonts.drawable(piece.words()));
        match piece {
            Inline::Text(_)
            | Inline::Said { strong: false, .. }
            | Inline::Number { working: None, .. } => words,
            Inline::Strong(_) | Inline::Said { strong: true, .. } => format!("strong({words})"),
            Inline::Taxon(_) => format!("taxon({words})"),
            Inline::Code(_) => format!("typed({words})"),
            Inline::Number { working: Some(anchor), .. } => self.here(&words, anchor),
            Inline::Link { to: Target::Here(anchor), .. } => self.here(&words, anchor),
            Inline::Link { to: Target::Web(address), .. } => {
                let shown = piece.words() != address;
                let shown =
                    shown.then(|| breakable(&self.direction.isolated(&format!("<{address}>"))));
                format!("web({words}, {}, {})", string(address), shown.as_deref().unwrap_or("none"))
            }
            Inline::Link { to: Target::Beside(_), .. } => words,
            Inline::Blank => "blank".to_owned(),
        }
    }

    /// Words that lead to a place of this page, where there is one.
    fn here(&self, words: &str, anchor: &Anchor) -> String {
        if self.anchors.contains(anchor.as_str()) {
            format!("link(label({}), {words})", string(anchor.as_str()))
        } else {
            words.to_owned()
        }
    }
}

fn column_width(width: Width) -> String {
    match width {
        Width::Natural => "auto".to_owned(),
        Width::Share(share) => format!("{share:.2}fr"),
    }
}

fn align(column: &Column) -> &'static str {
    match column.align {
        Align::Start => "start",
        Align::End => "end",
    }
}

fn anchored(set: String, anchor: Option<&Anchor>) -> String {
    match anchor {
        Some(anchor) => format!("[#{set} #label({})]", string(anchor.as_str())),
        None => set,
    }
}

fn gather<'a>(blocks: &'a [Block], anchors: &mut BTreeSet<&'a str>) {
    for block in blocks {
        match block {
            Block::Heading(heading) => anchors.extend(heading.anchor.as_ref().map(Anchor::as_str)),
            Block::Details(details) => {
                anchors.extend(details.anchor.as_ref().map(Anchor::as_str));
                gather(&details.blocks, anchors);
            }
            Block::Notice(notice) => gather(&notice.blocks, anchors),
            Block::Large(blocks) => gather(blocks, anchors),
            Block::List(list) => list.items.iter().for_each(|item| gather(&item.under, anchors)),
            Block::Facts(facts) => facts.iter().for_each(|fact| gather(&fact.under, anchors)),
            Block::Para(_)
            | Block::Table(_)
            | Block::Figure(_)
            | Block::Figures(_)
            | Block::Labels(_)
            | Block::Ticks(_)
            | Block::Lines(_)
            | Block::Break(_) => {}
        }
    }
}

/// Words as content, with places where a very long one may go on in the next line. A gap makes them:
/// a hidden letter would be read aloud and copied. It is too narrow to be seen; one without width
/// would be passed over. Capitals are wide and count twice.
fn breakable(words: &str) -> String {
    let (mut run, mut since) = (0, 0);
    let mut pieces = vec![String::new()];
    for letter in words.chars() {
        let wide = if letter.is_uppercase() { 2 } else { 1 };
        (run, since) = if letter.is_whitespace() { (0, 0) } else { (run + wide, since + wide) };
        if run > LONG_WORD && since >= BREAKS_APART {
            pieces.push(String::new());
            since = 0;
        }
        pieces.iter_mut().last().into_iter().for_each(|piece| piece.push(letter));
    }
    let pieces: Vec<_> = pieces.iter().map(|piece| format!("#{}", string(piece))).collect();
    format!("[{}]", pieces.join("#h(0.001pt)"))
}
