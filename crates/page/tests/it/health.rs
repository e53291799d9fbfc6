//! What people say of their health stands on the sealed list, and on no other page.

use crate::kit;
use crate::planted::{OUTINGS, shown, stands_in, tally, weight_words};
use ground::{Text, Unit};
use page::{Block, Kind, Prose, Rounding, html};

#[test]
fn health_words_that_were_planted_stand_on_the_sealed_list_alone() {
    for (outing, health) in OUTINGS {
        let tally = tally(outing, health);
        assert_eq!(tally.found, [""; 0], "{outing}");
        assert!(tally.words > 80 && tally.on_sealed > 10, "{outing}: {}", tally.on_sealed);
        for page in ["run-sheet", "emergency-card", "emergency-wallet", "copy-at-base"] {
            assert!(tally.pages.iter().any(|known| known == page), "{page} was not looked at");
        }
        assert_eq!(tally.moved, [""; 0], "{outing}");
    }
}

/// The test above would otherwise hold of anything.
#[test]
fn a_planted_word_would_be_found_however_it_is_written() {
    let words = kit::words();
    let page = |says: Prose| {
        shown(&html(&words.page(Kind::Public, &Text::new("unknown")).with([Block::Para(says)])))
    };
    let amounts = [(61.37, Unit::Kilogram), (61_370.0, Unit::Gram)];
    for (value, unit) in amounts {
        for way in [Rounding::Nearest, Rounding::Down, Rounding::Up] {
            let page = page(words.rounded(value, unit, way));
            assert!(weight_words("61.37").iter().any(|word| stands_in(&page, word)), "{page}");
        }
    }
    let parted = page(Prose::new().strong("Pregnant").text(", or\u{a0}may be, at 83."));
    assert!(stands_in(&parted, "pregnant, or may be") && stands_in(&parted, "83"));
    let others = page(Prose::from("183 g, 830 g, a fruit under 12 mm"));
    assert!(!stands_in(&others, "83") && !stands_in(&others, "under 12"));
}
