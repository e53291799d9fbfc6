//! What it takes to read characters, and how often that goes wrong.

use super::months;
use crate::{Block, Column, Prose, Table, Words};
use ground::{Finite, Text, Unit};
use identify::{Contrast, Reading, Spoils, Tool};

/// A row for each contrast, with the months in which each of the two plants shows it.
pub(super) fn of_contrasts(
    contrasts: &[&Contrast],
    plants: &[(String, String); 2],
    words: &Words<'_>,
) -> Option<Block> {
    let [(one, _), (other, _)] = plants;
    let row = |contrast: &&Contrast| {
        let when =
            [&contrast.a_months, &contrast.b_months].map(|at| Prose::from(months(at, words)));
        let name = name(&contrast.character, &contrast.reading, words);
        row(&name, &contrast.reading, words).into_iter().chain(when).collect()
    };
    let rows: Vec<_> = contrasts.iter().map(row).collect();
    let shown = [one, other].map(|plant| {
        let text = Text::new("view-compare-shown-by").taxon("plant", plant);
        Column::words(words.prose(&text))
    });
    (!rows.is_empty()).then(|| table("view-compare-looks", shown, rows, words))
}

/// A table of looks: what is read, what it takes, how often it is misread, and what else is told.
pub(in crate::views) fn table(
    caption: &str,
    more: impl IntoIterator<Item = Column>,
    rows: Vec<Vec<Prose>>,
    words: &Words<'_>,
) -> Block {
    let heads = ["view-compare-look-at", "view-compare-takes", "view-compare-misread"];
    let heads = heads.map(|id| Column::words(words.word(id)));
    Block::Table(Table {
        caption: words.word(caption).into(),
        columns: heads.into_iter().chain(more).collect(),
        rows_have_heads: true,
        rows,
    })
}

/// What is read, what it takes, and how often each kind of reader misreads it.
pub(in crate::views) fn row(name: &str, reading: &Reading, words: &Words<'_>) -> Vec<Prose> {
    let [leader, trained, public] = reading.misread.map(|share| (100.0 * share.get()).round());
    let misread = Text::new("view-compare-misread-by")
        .amount("leader", leader, Unit::Percent)
        .amount("trained", trained, Unit::Percent)
        .amount("public", public, Unit::Percent);
    vec![Prose::new().said(name), words.prose(&takes(reading, words)), words.prose(&misread)]
}

/// A character with its organ.
pub(in crate::views) fn name(id: &str, reading: &Reading, words: &Words<'_>) -> String {
    let organ = Text::new(format!("organ-{}", reading.organ.word()));
    let text = Text::new("view-compare-of-organ").with("character", words.character(id));
    words.catalogue.say(&text.with("organ", organ))
}

/// A share in per cent.
pub(super) fn share(share: Finite, words: &Words<'_>) -> Prose {
    words.amount((100.0 * share.get()).round(), Unit::Percent)
}

/// Seconds, then the tool and the damage, where there is any.
fn takes(reading: &Reading, words: &Words<'_>) -> Text {
    let tool = match reading.tool {
        Tool::None => None,
        Tool::Ruler => Some("view-compare-ruler"),
        Tool::Lens => Some("view-compare-lens"),
        Tool::Knife => Some("view-compare-knife"),
        Tool::Spade => Some("view-compare-spade"),
    };
    let spoils = match reading.spoils {
        Spoils::Nothing => None,
        Spoils::Piece => Some("view-compare-piece"),
        Spoils::Stem => Some("view-compare-stem"),
        Spoils::Plant => Some("view-compare-plant"),
    };
    let needs: Vec<_> = tool.into_iter().chain(spoils).map(|id| words.word(id)).collect();
    let seconds = |id: &str| Text::new(id).amount("time", f64::from(reading.seconds), Unit::Second);
    if needs.is_empty() {
        return seconds("view-compare-takes-time");
    }
    seconds("view-compare-takes-more").with("more", needs.join("; "))
}
