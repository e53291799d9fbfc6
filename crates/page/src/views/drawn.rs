//! What is known of a plant, as line drawings. A drawing is made from the states that are seen as a
//! rule; it is schematic, and never evidence.

mod plate;
mod read;

pub use plate::{plate, state_drawing};

use crate::svg::Drawing;
use crate::svg::path::{Point, at};
use crate::svg::plant::DRAWN;
use crate::{Figure, Prose, Words};
use ground::Text;
use herbal::Term;
use identify::Cell;
use read::{Part, Seen, seen, sign};
use std::collections::{BTreeMap, BTreeSet};

/// Width of a drawing, in millimetres of paper.
const WIDTH_MM: u32 = 50;
/// Units of a drawing across and down: four to a millimetre, as in those true to size.
const SIZE: (f64, f64) = (200.0, 216.0);
const MARGIN: f64 = 8.0;
/// How far the tail of an arrow stands from the side.
const TAIL: f64 = 15.0;

/// What is said of a plant.
#[derive(Clone, Copy)]
pub(crate) struct Subject<'a> {
    pub(crate) name: &'a str,
    pub(crate) cells: &'a BTreeMap<String, Cell>,
}

/// Everything of a plant that can be drawn. What is not told is not drawn, or dashed where it cannot
/// be left out; what is only remembered is said to be so.
pub(crate) fn drawings(
    subject: Subject<'_>,
    terms: &BTreeMap<String, Term>,
    words: &Words<'_>,
) -> Vec<Figure> {
    let sign = Sign { name: subject.name, terms, words: *words };
    seen(subject.cells).iter().map(|seen| sign.figure(seen, &[])).collect()
}

/// The characters that the drawings of a plant show.
pub(crate) fn characters(cells: &BTreeMap<String, Cell>) -> BTreeSet<&'static str> {
    seen(cells).iter().flat_map(|seen| seen.told.iter().map(|told| told.character)).collect()
}

/// Two plants side by side, part for part, where they differ: the first, then the second,
/// then the next part, and last the signs that no part shows. An arrow with a number points to each character in which the two never look
/// alike by what is published; what is only remembered of either is not marked.
pub(crate) fn twins_drawn(
    here: Subject<'_>,
    there: Subject<'_>,
    terms: &BTreeMap<String, Term>,
    words: &Words<'_>,
) -> Vec<Figure> {
    let others = seen(there.cells);
    let pairs = seen(here.cells).into_iter().filter_map(|one| {
        let other = others.iter().find(|other| other.part == one.part)?.clone();
        let differs = differing(&one, &other, terms);
        (!differs.is_empty()).then_some((one, other, differs))
    });
    let mut pairs: Vec<_> = pairs.collect();
    let marked: BTreeSet<_> =
        pairs.iter().flat_map(|(_, _, differs)| differs.iter().copied()).collect();
    let unmarked = DRAWN.iter().filter(|(character, _)| !marked.contains(character));
    pairs.extend(unmarked.filter_map(|(character, _)| {
        let (one, other) = (sign(here.cells, character)?, sign(there.cells, character)?);
        let differs = differing(&one, &other, terms);
        (!differs.is_empty()).then_some((one, other, differs))
    }));
    let figure = |subject: Subject<'_>, seen: &Seen, differs: &[&str]| {
        Sign { name: subject.name, terms, words: *words }.figure(seen, differs)
    };
    let drawn = pairs.into_iter().flat_map(|(one, other, differs)| {
        [figure(here, &one, &differs), figure(there, &other, &differs)]
    });
    drawn.collect()
}

/// Characters that both drawings show, and in which the two plants never look alike.
fn differing(one: &Seen, other: &Seen, terms: &BTreeMap<String, Term>) -> Vec<&'static str> {
    let differs = one.told.iter().filter(|told| {
        let same = other.told.iter().find(|there| there.character == told.character);
        same.is_some_and(|there| told.tells_from(there, &kinds(told.character, terms)))
    });
    differs.map(|told| told.character).collect()
}

/// States of a character, each with the more general one that it is a kind of.
fn kinds<'a>(character: &str, terms: &'a BTreeMap<String, Term>) -> Vec<(&'a str, &'a str)> {
    let Some(identify::Kind::States(states)) =
        terms.get(character).map(|term| &term.character.kind)
    else {
        return Vec::new();
    };
    states.iter().filter_map(|state| Some((state.id.as_str(), state.kind_of.as_deref()?))).collect()
}

struct Sign<'a> {
    name: &'a str,
    terms: &'a BTreeMap<String, Term>,
    words: Words<'a>,
}

impl Sign<'_> {
    fn figure(&self, seen: &Seen, differs: &[&str]) -> Figure {
        let part = self.part(seen);
        let title = Text::new("drawn-figure-title").taxon("plant", self.name).with("part", part);
        let title = self.words.catalogue.say(&title);
        let (width, height) = (SIZE.0 as u32, SIZE.1 as u32);
        let mut drawing =
            Drawing::new(&title, &self.describes(seen), width, height).across(WIDTH_MM);
        let room = at(SIZE.0 - 2.0 * MARGIN, SIZE.1 - 2.0 * MARGIN);
        let spots = seen.sketch.draw(&mut drawing, at(MARGIN, MARGIN), room);
        if !differs.is_empty() {
            self.mark(&mut drawing, &spots, differs);
        }
        Figure { drawing, caption: self.caption(seen, differs) }
    }

    /// A frame, and an arrow with its number to each character that differs.
    fn mark(&self, drawing: &mut Drawing, spots: &[(&'static str, Point)], differs: &[&str]) {
        let spot = |id: &str| spots.iter().find(|(there, _)| *there == id).map(|(_, spot)| *spot);
        let mut lowest = SIZE.1;
        let mut arrows = Vec::new();
        for (number, character) in (1..).zip(differs) {
            arrows.extend(spot(character).map(|spot| (spot, number)));
            let says = Text::new("drawn-differs")
                .with("number", number.to_string())
                .with("character", self.term(character));
            let says = self.words.catalogue.say(&says);
            lowest = drawing.lines(MARGIN, SIZE.0 - MARGIN, lowest, &says);
        }
        let mut free = [TAIL; 2];
        arrows.sort_by(|(a, _), (b, _)| a.y.total_cmp(&b.y));
        for (spot, number) in arrows {
            let right = spot.x > SIZE.0 / 2.0 + 1.0;
            let [left_free, right_free] = &mut free;
            let free = if right { right_free } else { left_free };
            let y = (spot.y - 1.5 * TAIL).max(*free);
            *free = y + 1.6 * TAIL;
            let x = if right { SIZE.0 - TAIL } else { TAIL };
            drawing.arrow(at(x, y), spot, &number.to_string());
        }
        let height = lowest + MARGIN;
        drawing.reach_down(height as u32);
        drawing.rect((1.0, 1.0), (SIZE.0 - 2.0, height - 2.0), false);
    }

    fn caption(&self, seen: &Seen, differs: &[&str]) -> Prose {
        let part = self.part(seen);
        let mut said = Prose::new().strong(&part);
        if !differs.is_empty() {
            said = Prose::new().taxon(self.name).text(" — ").strong(&part);
        }
        said = said.text(&self.words.word("drawn-caption"));
        for (index, character) in differs.iter().enumerate() {
            let told = seen.told.iter().find(|told| told.character == *character);
            let state = told.map_or_else(String::new, |told| self.state(character, &told.state));
            let says = Text::new("drawn-differs-caption")
                .with("number", (index + 1).to_string())
                .with("character", self.term(character))
                .with("state", state);
            said = said.text(" ").then(self.words.prose(&says));
        }
        let remembered: Vec<_> =
            seen.told.iter().filter(|told| told.remembered).map(|told| told.character).collect();
        said = self.note(said, "drawn-remembered", &remembered);
        self.note(said, "drawn-untold", &seen.untold)
    }

    fn note(&self, said: Prose, id: &str, characters: &[&'static str]) -> Prose {
        if characters.is_empty() {
            return said;
        }
        let names: Vec<_> = characters.iter().map(|character| self.term(character)).collect();
        let note = Text::new(id).with("characters", self.words.catalogue.list(&names));
        said.text(" ").then(self.words.prose(&note))
    }

    /// What the drawing shows, in words that can stand in its place.
    fn describes(&self, seen: &Seen) -> String {
        let signs = seen.told.iter().map(|told| {
            let id = match (told.number, told.others.is_empty()) {
                (Some(_), _) => "drawn-sign-number",
                (None, true) => "drawn-sign",
                (None, false) => "drawn-sign-or",
            };
            let others: Vec<_> =
                told.others.iter().map(|state| self.state(told.character, state)).collect();
            let sign = Text::new(id)
                .with("character", self.term(told.character))
                .with("state", self.state(told.character, &told.state))
                .with("number", i64::from(told.number.unwrap_or(0)))
                .with("others", self.words.either(&others));
            self.words.catalogue.say(&sign)
        });
        let signs = signs.collect::<Vec<_>>();
        let view = self.words.catalogue.say_field(&Text::new(seen.part.message()), "view");
        let says = Text::new("drawn-describes")
            .taxon("plant", self.name)
            .with("view", view)
            .with("signs", signs.join("; "));
        self.words.catalogue.say(&says)
    }

    /// What is drawn, as a caption names it.
    fn part(&self, seen: &Seen) -> String {
        match seen.part {
            Part::Sign(character) => large_first(&self.term(character)),
            part => self.words.word(part.message()),
        }
    }

    fn term(&self, character: &str) -> String {
        self.terms.get(character).map_or_else(|| character.to_owned(), |term| term.name.clone())
    }

    fn state(&self, character: &str, state: &str) -> String {
        let said = self.terms.get(character).and_then(|term| term.says.get(state));
        said.map_or_else(|| state.to_owned(), Clone::clone)
    }
}

/// With a large first letter, as captions begin.
fn large_first(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

impl Part {
    fn message(self) -> &'static str {
        match self {
            Self::Whole => "drawn-whole",
            Self::Sign(_) => "drawn-sign-alone",
            Self::Leaf => "drawn-leaf",
            Self::Stand => "drawn-stand",
            Self::Twig => "drawn-twig",
            Self::Needle => "drawn-needle",
            Self::LeafCut => "drawn-leaf-cut",
            Self::Stem => "drawn-stem",
            Self::Flowers => "drawn-flowers",
            Self::Fruit => "drawn-fruit",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Catalogue;
    use herbal::Herbal;
    use std::sync::LazyLock;

    static HERBAL: LazyLock<Herbal> = LazyLock::new(herbal_data::herbal);

    /// What is said of every plant, by scientific name.
    fn cells() -> BTreeMap<&'static str, BTreeMap<String, Cell>> {
        let mut all: BTreeMap<_, BTreeMap<_, _>> = BTreeMap::new();
        for (sheet, character, cell) in HERBAL.flora.cells() {
            let plant = all.entry(sheet.name.as_str()).or_default();
            plant.insert(character.to_owned(), cell.clone());
        }
        all
    }

    fn terms() -> BTreeMap<String, Term> {
        HERBAL.flora.glossary.terms().map(|t| (t.character.id.clone(), t.clone())).collect()
    }

    #[test]
    fn what_is_not_told_is_not_drawn() {
        assert_eq!(seen(&BTreeMap::new()), []);
        for (name, cells) in cells() {
            for character in characters(&cells) {
                let mut fewer = cells.clone();
                fewer.remove(character);
                assert!(!characters(&fewer).contains(character), "{name} {character}");
            }
        }
    }

    #[test]
    fn what_is_drawn_is_a_state_that_is_seen_as_a_rule() {
        for (name, cells) in cells() {
            for told in seen(&cells).into_iter().flat_map(|seen| seen.told) {
                let cell = &cells[told.character];
                let usual = match &cell.value {
                    identify::Value::States { always, usually, .. } => {
                        always.contains(&told.state) || usually.contains(&told.state)
                    }
                    _ => told.number.is_some(),
                };
                assert!(usual, "{name} {told:?}");
                let remembered = cell.standing == ground::Standing::Remembered;
                assert_eq!(told.remembered, remembered, "{name} {told:?}");
            }
        }
    }

    #[test]
    fn most_sheets_have_a_drawing_of_the_leaf() {
        let all = cells();
        let leaf = |cells: &BTreeMap<String, Cell>| {
            seen(cells)
                .iter()
                .any(|seen| matches!(seen.part, Part::Leaf | Part::Twig | Part::Needle))
        };
        let drawn = all.values().filter(|cells| leaf(cells)).count();
        assert_eq!(all.len(), HERBAL.flora.sheets().count());
        assert!(drawn * 10 > all.len() * 9, "{drawn} of {}", all.len());
    }

    #[test]
    fn twins_show_only_what_differs_and_a_plant_does_not_differ_from_itself() {
        let catalogue = Catalogue::english();
        let words = Words::new(&catalogue).with_herbal(&HERBAL);
        let terms = terms();
        let all = cells();
        let [nettle, dead] = ["Urtica dioica", "Lamium album"];
        let here = Subject { name: nettle, cells: &all[nettle] };
        assert_eq!(twins_drawn(here, here, &terms, &words), []);
        let there = Subject { name: dead, cells: &all[dead] };
        let drawn = twins_drawn(here, there, &terms, &words);
        assert_eq!(drawn.len() % 2, 0);
        let count = |figures: &[Figure]| {
            figures
                .iter()
                .map(|figure| figure.drawing.svg("x").matches("<circle").count())
                .sum::<usize>()
        };
        assert!(count(&drawn) >= 2, "each pair has its arrows");
    }

    #[test]
    fn twins_show_the_signs_that_no_part_shows() {
        let catalogue = Catalogue::english();
        let words = Words::new(&catalogue).with_herbal(&HERBAL);
        let (terms, all) = (terms(), cells());
        let [hemlock, chervil] = ["Conium maculatum", "Anthriscus sylvestris"];
        let subject = |name| Subject { name, cells: &all[name] };
        let drawn = twins_drawn(subject(hemlock), subject(chervil), &terms, &words);
        let mark = large_first(&terms["fruit_surface"].name);
        let titled: Vec<_> =
            drawn.iter().filter(|figure| figure.drawing.title().ends_with(&mark)).collect();
        assert_eq!(titled.len(), 2, "{mark}");
        for figure in titled {
            assert!(figure.drawing.svg("x").contains("<circle"), "an arrow with its number");
            assert!(figure.caption.plain().contains("schematic"));
        }
    }

    #[test]
    fn a_kind_of_a_state_is_not_marked_as_different() {
        let terms = terms();
        let of = |state: &str| {
            let mut cell = cells()["Urtica dioica"]["leaf_margin"].clone();
            cell.value = identify::Value::States {
                always: vec![state.to_owned()],
                usually: Vec::new(),
                sometimes: Vec::new(),
                rarely: Vec::new(),
            };
            cell.standing = ground::Standing::Published;
            sign(&BTreeMap::from([("leaf_margin".to_owned(), cell)]), "leaf_margin").unwrap()
        };
        let differs = |one, other| differing(&of(one), &of(other), &terms);
        assert_eq!(differs("serrate", "doubly-serrate"), [""; 0]);
        assert_eq!(differs("doubly-serrate", "serrate"), [""; 0]);
        assert_eq!(differs("serrate", "entire"), ["leaf_margin"]);
    }

    #[test]
    fn what_both_may_show_is_not_marked_as_different() {
        let all = cells();
        for pair in all.values().collect::<Vec<_>>().windows(2) {
            for (one, other) in seen(pair[0]).iter().zip(&seen(pair[1])) {
                for character in differing(one, other, &terms()) {
                    let states = |cells: &BTreeMap<String, Cell>| match &cells[character].value {
                        identify::Value::States { always, usually, sometimes, rarely } => {
                            [always, usually, sometimes, rarely]
                                .into_iter()
                                .flatten()
                                .cloned()
                                .collect()
                        }
                        _ => BTreeSet::new(),
                    };
                    assert!(states(pair[0]).is_disjoint(&states(pair[1])), "{character}");
                }
            }
        }
    }
}
