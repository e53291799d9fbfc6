//! The measures of reading against worked examples, the counter of syllables against a dictionary,
//! and every page that is taken home against what such a page should be.

use crate::taken_home;
use page::{Counts, PlantNames, longer_than, readability, syllables};
use proptest::prelude::*;

const SHORT: &str = "Pick the leaf. Smell it. If it does not smell of garlic, put it back.";
const LONG: &str = "Identification of this species should never depend exclusively on odour because \
     contamination of the fingers can produce misleading results.";

fn near(value: Option<f64>, wanted: f64, places: u8) {
    let half = if places == 1 { 0.05 } else { 0.005 };
    let value = value.unwrap();
    assert!((value - wanted).abs() <= half + 1e-9, "{value} is not {wanted}");
}

/// Worked by hand from the counts. The short text: 206.835 − 1.015·5 − 84.6·16/15 = 111.52;
/// 0.39·5 + 11.8·16/15 − 15.59 = −1.05; 5 + 0. The long one: 206.835 − 1.015·19 − 84.6·41/19 = 4.99;
/// 0.39·19 + 11.8·41/19 − 15.59 = 17.28; 19 + 900/19 = 66.37.
#[test]
fn the_formulas_give_what_is_worked_by_hand() {
    let of = |words, sentences, syllables, long_words| Counts {
        words,
        sentences,
        syllables,
        long_words,
        ..Counts::default()
    };
    let short = of(15, 3, 16, 0);
    near(short.reading_ease(), 111.52, 2);
    near(short.grade(), -1.05, 2);
    near(short.lix(), 5.0, 1);
    let long = of(19, 1, 41, 9);
    near(long.reading_ease(), 4.99, 2);
    near(long.grade(), 17.28, 2);
    near(long.lix(), 66.37, 2);
    assert_eq!((of(0, 0, 0, 0).lix(), of(0, 0, 0, 0).grade()), (None, None));
}

#[test]
fn the_counts_of_the_examples_are_found_in_their_texts() {
    let counts = |text| readability(text, &PlantNames::none());
    let short = counts(SHORT);
    assert_eq!((short.words, short.sentences, short.syllables, short.long_words), (15, 3, 16, 0));
    assert_eq!(short.longest, 10);
    let long = counts(LONG);
    assert_eq!((long.words, long.sentences, long.syllables, long.long_words), (19, 1, 41, 9));
}

#[test]
fn words_and_sentences_end_where_a_reader_ends_them() {
    let counts = |text: &str| {
        let counts = readability(text, &PlantNames::none());
        (counts.words, counts.sentences)
    };
    assert_eq!(counts("It is U. dioica, not U. urens."), (7, 1));
    assert_eq!(counts("Take 1.5 l. Boil it; wait: then pour."), (8, 2));
    assert_eq!(counts("A saw-toothed leaf — don't pick it"), (6, 1));
    assert_eq!(counts("  … — . "), (0, 0));
    assert_eq!(counts(""), (0, 0));
}

#[test]
fn a_plant_name_counts_as_one_word() {
    let names = PlantNames::of(["lily of the valley", "Convallaria majalis", "rue"]);
    let text = "Lily of the valley (Convallaria majalis) is deadly. It is true.";
    let counts = readability(text, &names);
    assert_eq!((counts.words, counts.sentences, counts.long_words), (6, 2, 0));
    assert_eq!(readability(text, &PlantNames::none()).words, 11);
    assert!(longer_than(text, 6, &names).is_empty());
    assert_eq!(longer_than(text, 6, &PlantNames::none()).len(), 1);
}

/// The rule agrees with the dictionary on so many words of the sample, no fewer, and its errors
/// cancel. The whole was measured once: see the documentation of the module.
#[test]
fn syllables_agree_with_the_dictionary_as_far_as_was_measured() {
    let lines = include_str!("syllables.txt").lines().filter(|line| !line.starts_with('#'));
    let (mut words, mut right, mut ours, mut theirs) = (0, 0, 0, 0);
    for line in lines {
        let (word, said) = line.split_once(' ').unwrap();
        let said: Vec<u32> = said.split(' ').map(|number| number.parse().unwrap()).collect();
        let counted = syllables(word);
        words += 1;
        right += u32::from(said.contains(&counted));
        ours += counted;
        theirs += said.iter().copied().min_by_key(|number| number.abs_diff(counted)).unwrap();
    }
    assert_eq!((words, right), (WORDS, RIGHT));
    assert!(ours.abs_diff(theirs) * 50 <= theirs, "{ours} for {theirs}");
}

/// Words of the sample, and on how many of them the rule agrees.
const WORDS: u32 = 200;
const RIGHT: u32 = 193;

proptest! {
    #[test]
    fn any_text_is_counted_and_never_panics(text in "\\PC{0,80}", name in "\\PC{0,8}") {
        let counts = readability(&text, &PlantNames::of([name]));
        prop_assert!(counts.longest <= counts.words && counts.long_words <= counts.words);
        prop_assert!(counts.sentences <= counts.words && counts.syllables >= counts.words);
    }

    #[test]
    fn two_texts_count_as_the_sum_of_both(a in "[a-z ]{1,40}", b in "[a-z ]{1,40}") {
        let none = PlantNames::none();
        let both = readability(&format!("{a}. {b}."), &none);
        prop_assert_eq!(both, readability(&a, &none).and(readability(&b, &none)));
    }
}

/// What a page that is taken home should be, as health services write for the public: short
/// sentences. A rule of the house: 12 words on average, with and without
/// sentences of three words and fewer, 20 at most, LIX 30, grade 5.
#[test]
fn every_page_that_is_taken_home_is_easily_read() {
    let pages = taken_home::pages();
    let of = |season: &str| pages.iter().filter(|named| named.name.starts_with(season)).count();
    assert!(of("spring") > 3 && of("autumn") > 3, "the pages were not found");
    for named in pages {
        let reading = taken_home::reading(&named.page);
        let long = reading.longer_than(20, &taken_home::NAMES);
        assert!(long.is_empty(), "{}:\n{}", named.name, long.join("\n"));
        let counts = reading.counts;
        assert!(counts.sentences > 20, "{}: {counts:?}", named.name);
        let within = |what: &str, value: Option<f64>, most: f64| {
            let value = value.unwrap();
            assert!(value <= most, "{}: {what} {value:.1}, and {most} is wanted", named.name);
        };
        within("words a sentence", counts.mean_sentence(), 12.0);
        // A word or two before a full stop, such as the name of a part, make no page easier.
        let whole = reading.longer_than(3, &taken_home::NAMES);
        let whole = whole.iter().map(|sentence| readability(sentence, &taken_home::NAMES));
        let whole = whole.fold(Counts::default(), Counts::and);
        within("words a sentence of more than three", whole.mean_sentence(), 12.0);
        within("LIX", counts.lix(), 30.0);
        within("grade", counts.grade(), 5.0);
    }
}

/// What must not be done is a sentence of its own: it begins with what is not to be done.
#[test]
fn what_must_not_be_done_is_a_sentence_of_its_own() {
    for named in taken_home::pages() {
        let texts = taken_home::reading(&named.page).texts;
        for text in texts.iter().flat_map(|text| text.split(". ")) {
            let lower = text.trim().to_lowercase();
            for ban in [" do not ", " don't ", " must not ", " and never ", ", never "] {
                assert!(!lower.contains(ban), "{}: {text}", named.name);
            }
        }
    }
}

/// A page of long sentences would be found out: the tests above would otherwise hold of anything.
#[test]
fn only_sentences_count_and_all_of_them() {
    let catalogue = page::Catalogue::english();
    let words = page::Words::new(&catalogue);
    let notice = page::Notice {
        kind: page::NoticeKind::Caution,
        head: "Not a sentence of the page.".into(),
        blocks: vec![page::Block::para(LONG)],
    };
    let page = words.page(page::Kind::Public, &ground::Text::new("unknown")).with([
        page::Block::heading(page::Level::Section, "A heading is no sentence."),
        page::Block::para("Smell it (from memory). [4, 19]"),
        page::Block::Notice(notice),
        page::Block::bullets(["Put it back."]),
        page::Block::heading(page::Level::Section, words.word("sheet-sources")),
        page::Block::numbered(["An author of a very long list of sources."]),
    ]);
    let reading = words.reading(&page, &PlantNames::none());
    assert_eq!((reading.counts.words, reading.counts.sentences), (2 + 19 + 3, 3));
    assert!(reading.longer_than(18, &PlantNames::none()).len() == 1);
}
