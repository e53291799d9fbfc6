//! Labels that are stuck on jars: a grid of them on a sheet, each set so that it fits.

use crate::{Drawing, Prose};
use desk::LabelSheet;
use unicode_width::UnicodeWidthStr;

/// Labels on sheets, one after the other by rows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Labels {
    /// Paper, size and grid.
    pub sheet: LabelSheet,
    /// The labels; those that a sheet does not hold go on the next.
    pub labels: Vec<Label>,
}

/// What stands on one label. It was fitted to its sheet by [`LabelFace`]: a renderer that keeps to the
/// sizes given there needs to cut nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// What it is, in bold letters 1.2 times as large as the others, on lines 1.2 times as high.
    pub title: Prose,
    /// The plants by their scientific names.
    pub scientific: Prose,
    /// That it must not be used, and why: bold, before all else.
    pub do_not: Option<Prose>,
    /// Lines that stand beside the code, below what comes before.
    pub beside: Vec<LabelLine>,
    /// Lines as wide as the label, below the code and all the others.
    pub below: Vec<LabelLine>,
    /// The code, at the end of the upper part; none of what has none yet: there is room to write it.
    pub code: Option<Drawing>,
    /// What the code says.
    pub code_says: String,
}

/// A line of a label: written as label, colon, value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LabelLine {
    /// What it is about.
    pub label: Prose,
    /// What it says.
    pub value: Prose,
}

impl LabelLine {
    /// A line with a label; the value alone where that is empty.
    #[must_use]
    pub fn new(label: impl Into<Prose>, value: impl Into<Prose>) -> Self {
        Self { label: label.into(), value: value.into() }
    }

    /// The line as one run of words, its label set apart.
    #[must_use]
    pub fn prose(&self) -> Prose {
        if self.label.is_empty() {
            return self.value.clone();
        }
        self.label.emphasised().text(": ").then(self.value.clone())
    }
}

/// How a label is set, in millimetres.
///
/// Letters must have an x-height of 1.2 mm and more (Regulation (EU) No 1169/2011, article 13 (2)): in
/// the sans-serif letters that are used, the x-height is 0.5 of the size and more. A letter is taken to
/// be 0.58 of the size wide, and 0.66 where it is bold; on average they are narrower.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabelFace {
    /// The size of letters.
    pub letters: f64,
    /// From one line to the next: 1.2 times the size of letters.
    pub line: f64,
    /// White at each edge.
    pub margin: f64,
    /// White between words and code.
    pub gap: f64,
    /// The side of the code.
    pub code: f64,
    /// A module of the code, in quarters of a millimetre.
    pub module: u32,
    /// Width and height of the label.
    pub size: (f64, f64),
}

/// A title's letters and lines beside the others.
const TITLE: f64 = 1.2;
/// What the bar before the words takes that say that something must not be used, in millimetres.
const FRAME: f64 = 1.8;
/// How wide a letter is, beside its size.
const LETTER: f64 = 0.58;
/// The same in bold.
const BOLD: f64 = 0.66;

impl LabelFace {
    /// How labels of a sheet are set.
    #[must_use]
    pub fn of(sheet: &LabelSheet) -> Self {
        let (letters, line, module) = if sheet.roomy() { (3.0, 3.6, 3) } else { (2.4, 2.88, 2) };
        Self {
            letters,
            line,
            margin: 1.5,
            gap: 1.5,
            code: crate::Code::side_mm(module),
            module,
            size: (sheet.label.0.mm(), sheet.label.1.mm()),
        }
    }

    /// The width of words beside the code.
    fn beside(&self) -> f64 {
        self.below() - self.code - self.gap
    }

    /// The width of words below the code.
    fn below(&self) -> f64 {
        self.size.0 - 2.0 * self.margin
    }

    /// Sets a label: the title, the scientific name and what must not be done are cut to what there is
    /// room for; then the lines come in the order of their weight, until one does not fit. `rest` says where
    /// those stand that do not, or what was cut.
    #[must_use]
    pub(crate) fn fit(&self, mut label: Label, lines: Vec<LabelLine>, rest: &LabelLine) -> Label {
        let mut cut = false;
        let mut left = self.size.1 - 2.0 * self.margin;
        let many = |share: f64| ((left / self.line) * share) as usize;
        let (title_lines, do_not_lines) = (many(0.2).clamp(1, 3), many(0.42).clamp(2, 6));
        let columns = |width: f64, letter: f64| (width / (self.letters * letter)) as usize;
        let wide = columns(self.beside(), LETTER);
        let bold = columns(self.beside() - FRAME, BOLD);
        let titled = columns(self.beside(), BOLD * TITLE);
        cut |= shorten(&mut label.title, titled, title_lines);
        cut |= shorten(&mut label.scientific, wide, title_lines);
        let mut used = count(&label.title, titled) as f64 * self.line * TITLE;
        used += count(&label.scientific, wide) as f64 * self.line;
        if let Some(do_not) = &mut label.do_not {
            cut |= shorten(do_not, bold, do_not_lines);
            used += count(do_not, bold) as f64 * self.line;
        }
        left -= self.line * count(&rest.prose(), wide) as f64;
        let mut below = 0.0;
        for line in lines {
            let said = line.prose();
            let beside = used + count(&said, wide) as f64 * self.line;
            if below == 0.0
                && used + self.line <= self.code + self.line
                && beside.max(self.code) <= left
            {
                used = beside;
                label.beside.push(line);
                continue;
            }
            let more = count(&said, columns(self.below(), LETTER)) as f64 * self.line;
            if used.max(self.code) + below + more <= left {
                below += more;
                label.below.push(line);
            } else {
                // What weighs less must not stand where something that weighs more is missing.
                cut = true;
                break;
            }
        }
        if cut {
            let lines = if label.below.is_empty() { &mut label.beside } else { &mut label.below };
            lines.push(rest.clone());
        }
        label
    }
}

/// How many lines words take in so many columns.
fn count(says: &Prose, columns: usize) -> usize {
    broken(&says.plain(), columns).len()
}

/// Cuts prose that takes more lines than there are, with an ellipsis. Whether it did.
fn shorten(says: &mut Prose, columns: usize, most: usize) -> bool {
    let plain = says.plain();
    if broken(&plain, columns).len() <= most {
        return false;
    }
    let mut short = String::new();
    for letter in plain.chars() {
        let longer = format!("{short}{letter}…");
        if broken(&longer, columns).len() > most {
            break;
        }
        short.push(letter);
    }
    *says = says.cut(short.trim_end().chars().count());
    true
}

/// Words in lines of so many columns; a word that is longer goes on in the next line.
fn broken(words: &str, columns: usize) -> Vec<usize> {
    let columns = columns.max(1);
    let mut lines = vec![0];
    // No line is broken at a space that holds number and unit together.
    for word in words.split(' ').filter(|word| !word.is_empty()) {
        let mut width = word.width();
        let last = lines.last_mut();
        match last {
            Some(line) if *line == 0 => *line = width,
            Some(line) if *line + 1 + width <= columns => {
                *line += 1 + width;
                continue;
            }
            _ => lines.push(width),
        }
        while width > columns {
            // A wide letter may not fit the end of a line: each line is one column short.
            width -= columns.saturating_sub(1).max(1);
            lines.push(width);
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use desk::Paper;
    use proptest::prelude::*;

    fn sheets() -> impl Iterator<Item = LabelSheet> {
        [Paper::A4, Paper::Letter].into_iter().flat_map(LabelSheet::sold)
    }

    fn label(title: &str, do_not: Option<&str>) -> Label {
        Label {
            title: title.into(),
            scientific: Prose::new().taxon("Urtica dioica"),
            do_not: do_not.map(Prose::from),
            beside: Vec::new(),
            below: Vec::new(),
            code: None,
            code_says: String::new(),
        }
    }

    /// The height that a label takes by its own sums.
    fn height(face: &LabelFace, label: &Label) -> f64 {
        let columns = |width: f64, letter: f64| (width / (face.letters * letter)) as usize;
        let many =
            |says: &Prose, width: f64, letter: f64| count(says, columns(width, letter)) as f64;
        let beside = face.beside();
        let mut upper = many(&label.title, beside, BOLD * TITLE) * TITLE;
        upper += many(&label.scientific, beside, LETTER);
        upper += label.do_not.as_ref().map_or(0.0, |says| many(says, beside - FRAME, BOLD));
        upper += label.beside.iter().map(|l| many(&l.prose(), beside, LETTER)).sum::<f64>();
        let lower: f64 = label.below.iter().map(|l| many(&l.prose(), face.below(), LETTER)).sum();
        (upper * face.line).max(face.code) + lower * face.line
    }

    #[test]
    fn letters_are_as_large_as_the_law_on_food_labels_asks() {
        for sheet in sheets() {
            let face = LabelFace::of(&sheet);
            assert!(0.5 * face.letters >= 1.2 && face.code >= 15.0, "{}", sheet.size());
        }
    }

    #[test]
    fn a_name_of_200_letters_is_cut_and_says_so() {
        let rest = LabelLine::new("", "the rest stands on the slip");
        for sheet in sheets() {
            let fitted =
                LabelFace::of(&sheet).fit(label(&"x".repeat(200), None), Vec::new(), &rest);
            assert!(fitted.title.plain().ends_with('…'));
            assert_eq!(fitted.beside.last(), Some(&rest));
        }
    }

    proptest! {
        #[test]
        fn whatever_is_said_fits_its_label(
            title in "\\PC{0,200}",
            do_not in prop::option::of("\\PC{0,200}"),
            lines in prop::collection::vec(("\\PC{0,20}", "\\PC{0,120}"), 0..14),
        ) {
            let rest = LabelLine::new("", "more on the slip");
            for sheet in sheets() {
                let face = LabelFace::of(&sheet);
                let lines: Vec<_> = lines.iter().map(|(a, b)| LabelLine::new(&**a, &**b)).collect();
                let wanted = lines.len();
                let fitted = face.fit(label(&title, do_not.as_deref()), lines, &rest);
                let room = face.size.1 - 2.0 * face.margin;
                prop_assert!(height(&face, &fitted) <= room + 1e-9, "{}", sheet.size());
                let stands = fitted.beside.iter().chain(&fitted.below);
                let kept = stands.filter(|line| **line != rest).count();
                let all = fitted.beside.iter().chain(&fitted.below).count();
                prop_assert!(kept == wanted || all > kept, "what is left out is told");
            }
        }
    }
}
