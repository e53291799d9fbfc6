//! Labels for jars and bags, and a slip for each with all that it says.

mod says;

use super::plan::sources;

pub(super) use says::{for_whom, moisture, sorted, stands, until};

use crate::{
    Block, Code, Habits, Kind, Label, LabelFace, LabelLine, Labels, Level, Measures, NoticeKind,
    Page, Prose, Words,
};
use desk::{LabelPlan, LabelSheet, LabelsReply};
use ground::Text;

pub(super) fn page(reply: &LabelsReply, words: &Words<'_>) -> Page {
    sheets(&reply.labels, reply.sheet, words)
}

/// What their page is called.
pub(super) fn title() -> Text {
    Text::new("view-labels-title")
}

/// The slips, then the labels on their sheets.
pub(super) fn sheets(labels: &[LabelPlan], sheet: LabelSheet, words: &Words<'_>) -> Page {
    let numbers = sources::numbers(&labels, words);
    let words = &words.numbered(&numbers);
    let page = words.page(Kind::Public, &title());
    if labels.is_empty() {
        return page.with([words.para(&Text::new("view-labels-none"))]);
    }
    let face = LabelFace::of(&sheet);
    let each = labels.iter().flat_map(|label| copies(label, &face, words));
    let how = Text::new("view-labels-how")
        .with("paper", Text::new(format!("view-labels-{}", sheet.paper.word())))
        .with("size", sheet.size().replace('x', " × "))
        .with("columns", sheet.columns)
        .with("rows", sheet.rows);
    page.with([words.para(&how), words.para(&Text::new("view-labels-check")), words.ruler(15)])
        .with([words.heading(Level::Section, &Text::new("view-labels-slips"))])
        .with([words.para(&Text::new("view-labels-slips-says"))])
        .with(labels.iter().flat_map(|label| slip(label, words)))
        .with([words.heading(Level::Section, &Text::new("view-plan-sources"))])
        .with(sources::list(&numbers, words))
        .with([Block::Labels(Labels { sheet, labels: each.collect() })])
}

/// The copies of a label, numbered where there are several.
fn copies(label: &LabelPlan, face: &LabelFace, words: &Words<'_>) -> Vec<Label> {
    let numbered = |copy: u32| (label.copies > 1).then_some((copy, label.copies));
    (1..=label.copies.max(1)).map(|copy| one(label, numbered(copy), face, words)).collect()
}

fn one(plan: &LabelPlan, copy: Option<(u32, u32)>, face: &LabelFace, words: &Words<'_>) -> Label {
    // A second figure would take the room of a caution, and what must be on a label is metric.
    let metric = Habits { measures: Measures::Metric, ..words.catalogue.habits() };
    let catalogue = words.catalogue.with_habits(metric);
    let words = &Words { catalogue: &catalogue, ..*words };
    let code_says = code_of(plan, copy);
    let code = code_says.as_ref().and_then(|says| {
        let describes = Text::new("view-labels-code-says").with("code", says.as_str());
        let code = Code {
            title: words.word("view-labels-code"),
            describes: words.catalogue.say(&describes),
            says: says.clone(),
            module: face.module,
        };
        code.draw().ok()
    });
    let label = Label {
        title: says::title(plan, words),
        scientific: says::scientific(plan, words),
        do_not: says::do_not(plan, true, words),
        beside: Vec::new(),
        below: Vec::new(),
        code,
        code_says: code_says.clone().unwrap_or_default(),
    };
    let lines = says::lines(plan, (code_says, copy), words).into_iter();
    let lines = lines.filter(|line| plan.do_not.is_empty() || line.always);
    let lines: Vec<_> = lines.map(|line| line.says).collect();
    let see_the_slip = |of: Prose| LabelLine::new(of, words.word("label-rest-says"));
    let rest = see_the_slip(words.word("label-rest").into());
    let fitted = face.fit(label.clone(), lines.clone(), &rest);
    let stands = |line: &LabelLine| fitted.beside.contains(line) || fitted.below.contains(line);
    let people = says::for_whom(plan, words).into_iter().filter(|line| lines.contains(line));
    match people.into_iter().find(|line| !stands(line)) {
        // Whoever must ask first, or mind something, is told that it stands on the slip.
        Some(missing) => face.fit(label, lines, &see_the_slip(missing.label)),
        None => fitted,
    }
}

/// What the code says: which lot or batch, and which jar of several.
fn code_of(plan: &LabelPlan, copy: Option<(u32, u32)>) -> Option<String> {
    let code = plan.code.as_ref()?;
    Some(copy.map_or_else(|| code.to_string(), |(copy, _)| format!("{code}/{copy}")))
}

/// All that is to say of a label, at full length.
fn slip(plan: &LabelPlan, words: &Words<'_>) -> Vec<Block> {
    let heading = Block::heading(Level::Part, says::title(plan, words));
    std::iter::once(heading).chain(whole(plan, words)).collect()
}

/// What a label says, without its title and at full length.
fn whole(plan: &LabelPlan, words: &Words<'_>) -> Vec<Block> {
    let do_not = says::do_not(plan, false, words);
    let do_not = do_not.map(|says| words.notice(NoticeKind::DoNot, [Block::Para(says)]));
    let lines = says::lines(plan, (code_of(plan, None), None), words).into_iter();
    let lines = lines.map(|line| line.says.prose());
    let lines = run_in([says::scientific(plan, words)].into_iter().chain(lines));
    do_not.into_iter().chain([lines]).chain(points(plan, words)).collect()
}

/// The lines of a label as one paragraph.
fn run_in(lines: impl Iterator<Item = Prose>) -> Block {
    let all = lines.reduce(|all, line| all.text(" · ").then(line));
    Block::Para(all.unwrap_or_default())
}

fn points(plan: &LabelPlan, words: &Words<'_>) -> Option<Block> {
    let points: Vec<_> = says::cautions(plan).map(|row| says::caution(row, words)).collect();
    (!points.is_empty()).then(|| Block::bullets(points))
}

/// The cautions of a wish, on the page of its recipe: with what each row says, and where it comes from.
pub(super) fn cautions(plan: &LabelPlan, words: &Words<'_>) -> Option<Block> {
    points(plan, words).map(|points| words.notice(NoticeKind::Caution, [points]))
}

/// A label as it will be printed, in words.
pub(super) fn preview(plan: &LabelPlan, sheet: LabelSheet, words: &Words<'_>) -> Vec<Block> {
    let label = one(plan, None, &LabelFace::of(&sheet), words);
    let head = [label.title.emphasised(), label.scientific];
    let lines = label.beside.iter().chain(&label.below).map(LabelLine::prose);
    vec![run_in(head.into_iter().chain(label.do_not).chain(lines))]
}
