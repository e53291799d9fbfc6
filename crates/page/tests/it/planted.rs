//! Health words are planted into what people said of themselves, and looked for on every page.
#![expect(clippy::unwrap_used, reason = "a fault here is a fault of the demonstration")]

use crate::kit;
use desk::World;
use dose::AgeBand;
use ground::{Condition, Unit};
use page::{NamedPage, Rounding, html};
use std::collections::{BTreeMap, BTreeSet};

/// The outings, each with the file that holds what people said of their health.
pub(crate) const OUTINGS: [(&str, &str); 4] = [
    (kit::SPRING_EVENING, kit::SPRING_HEALTH),
    (kit::SPRING_DAY, kit::SPRING_HEALTH),
    (kit::AUTUMN_EVENING, kit::AUTUMN_HEALTH),
    (kit::AUTUMN_DAY, kit::AUTUMN_HEALTH),
];

/// The page that may say why anybody is handed what.
const SEALED: &str = "sealed-list";

/// What came of it on the pages of one outing.
pub(crate) struct Tally {
    /// How many words were planted.
    pub(crate) words: usize,
    /// The pages that were looked at: all but the sealed list.
    pub(crate) pages: Vec<String>,
    /// Where a planted word stands that must not stand there.
    pub(crate) found: Vec<String>,
    /// Pages that may speak of groups of people, and are others when nobody answers.
    pub(crate) moved: Vec<String>,
    /// How many of the words the sealed list tells of people, and not of grown-ups to whom no
    /// condition applies.
    pub(crate) on_sealed: usize,
}

/// Plants health words into an outing, and looks for them on its pages.
pub(crate) fn tally(outing: &str, health: &str) -> Tally {
    let world = kit::world(jiff::civil::date(2027, 4, 30).at(9, 0, 0, 0));
    let written = |answers: &str| written(&world, outing, health, answers);
    let mut silent = written("# Nobody said anything.\n");
    silent.remove(SEALED);
    let answered = kit::read(health);
    let said = |people: &[Person<'_>]| people.iter().map(Person::answers).collect::<String>();
    // What they say changes amounts, and an amount may happen to be somebody's age: they say it twice, and the
    // second time no number that stood on a page the first time. A page that told an age would tell the other too.
    let text = |pages: &BTreeMap<String, String>| -> String {
        pages.iter().filter(|(name, _)| *name != SEALED).map(|(_, page)| shown(page)).collect()
    };
    let first = written(&said(&people(&answered, &text(&silent))));
    let people = people(&answered, &(text(&silent) + &text(&first)));
    let words = Words::of(&people);
    let mut pages = written(&said(&people));
    let sealed = shown(&pages.remove(SEALED).unwrap());
    let healthy = people.iter().map(|person| person.healthy().answers()).collect::<String>();
    let otherwise = shown(&written(&healthy).remove(SEALED).unwrap());
    let told = |word: &&String| times_in(&sealed, word) > times_in(&otherwise, word);
    let misplaced = |(name, page): (&String, &String)| words.misplaced(name, &shown(page));
    let moved = |name: &&String| speaks_of_groups(name) && pages.get(*name) != silent.get(*name);
    Tally {
        words: words.all().count(),
        found: pages.iter().flat_map(misplaced).collect(),
        moved: pages.keys().filter(moved).cloned().collect(),
        on_sealed: words.conditions.iter().filter(told).count(),
        pages: pages.into_keys().collect(),
    }
}

/// Words that were planted.
struct Words {
    bodies: BTreeSet<String>,
    conditions: BTreeSet<String>,
}

impl Words {
    fn of(people: &[Person<'_>]) -> Self {
        let bodies = people.iter().flat_map(Person::body_words).collect();
        Self { bodies, conditions: condition_words() }
    }

    fn all(&self) -> impl Iterator<Item = &String> {
        self.bodies.iter().chain(&self.conditions)
    }

    /// Those that stand on a page and must not, each with the name of the page.
    fn misplaced(&self, name: &str, shown: &str) -> Vec<String> {
        let conditions = (!speaks_of_groups(name)).then_some(&self.conditions);
        let words = self.bodies.iter().chain(conditions.into_iter().flatten());
        let found = words.filter(|word| stands_in(shown, word));
        found.map(|word| format!("{name}: {word}")).collect()
    }
}

/// Labels and the sheets of pots carry published cautions, by groups of people; the intake form asks.
fn speaks_of_groups(name: &str) -> bool {
    name.starts_with("brew-") || ["labels", "intake-form"].contains(&name)
}

/// Every page of an outing as HTML, by name, with these answers about health.
fn written(world: &World, outing: &str, health: &str, answers: &str) -> BTreeMap<String, String> {
    let files = kit::changed(outing, health, |_| answers.to_owned());
    let pages = kit::pages(world, &kit::plan(world, files, true));
    let whole = |named: NamedPage| {
        let page = html(&named.page);
        assert!(!page.contains('⟦'), "a message is missing on {}", named.name);
        (named.name, page)
    };
    pages.into_iter().map(whole).collect()
}

/// Somebody, and what they are to say of themselves.
struct Person<'a> {
    name: &'a str,
    age: u32,
    kilograms: String,
    yes: Vec<Condition>,
}

/// Everybody who answered. There is one of each age under 18 that rules ask for; the other ages and
/// all weights stand nowhere on these pages. Every second one says yes to a share of all questions.
fn people<'a>(health: &'a str, pages: &str) -> Vec<Person<'a>> {
    let minors = AgeBand::ALL.iter().filter(|band| **band != AgeBand::Adult);
    let adults = (18..130_u32).filter(|age| !stands_in(pages, &age.to_string()));
    let mut ages = minors.map(|band| u32::from(band.years().1)).chain(adults);
    let weights = (40..120_u32).map(|kilograms| format!("{kilograms}.37"));
    let mut weights =
        weights.filter(|weight| weight_words(weight).iter().all(|word| !stands_in(pages, word)));
    let names = health.lines().filter_map(|line| line.strip_prefix("participant = "));
    let names: Vec<_> = names.map(|name| name.trim_matches('"')).collect();
    let sharers = names.len().div_ceil(2);
    let person = |(at, name): (usize, &&'a str)| Person {
        name,
        age: ages.next().unwrap(),
        kilograms: weights.next().unwrap(),
        yes: if at % 2 == 0 { asked().skip(at / 2).step_by(sharers).collect() } else { Vec::new() },
    };
    names.iter().enumerate().map(person).collect()
}

/// What can be answered with a yes.
fn asked() -> impl Iterator<Item = Condition> {
    let no_question = |condition: Condition| {
        condition == Condition::All || Condition::Under18.contains(condition)
    };
    Condition::ALL.iter().copied().filter(move |condition| !no_question(*condition))
}

impl Person<'_> {
    /// Somebody of the same weight to whom no condition applies.
    fn healthy(&self) -> Self {
        Self { age: 40, kilograms: self.kilograms.clone(), yes: Vec::new(), ..*self }
    }

    fn answers(&self) -> String {
        let yes: Vec<_> =
            self.yes.iter().map(|asked| format!("{} = \"yes\"", asked.word())).collect();
        format!(
            "[[answers]]\nparticipant = \"{}\"\nage = {}\nweight = \"{} kg\"\nsaid = {{ {} }}\nrest = \"no\"\n",
            self.name,
            self.age,
            self.kilograms,
            yes.join(", ")
        )
    }

    /// The weight, and the age where it is no condition of its own.
    fn body_words(&self) -> BTreeSet<String> {
        let age = (AgeBand::of_years(self.age) == AgeBand::Adult).then(|| self.age.to_string());
        weight_words(&self.kilograms).into_iter().chain(age).collect()
    }
}

/// A weight as it was written down, and as pages write it.
pub(crate) fn weight_words(kilograms: &str) -> BTreeSet<String> {
    let value: f64 = kilograms.parse().unwrap();
    let units = [(value, Unit::Kilogram), (value * 1000.0, Unit::Gram)];
    let ways = [Rounding::Nearest, Rounding::Down, Rounding::Up];
    let written = units.into_iter().flat_map(|(value, unit)| {
        ways.map(|way| plain(&kit::words().rounded(value, unit, way).plain()))
    });
    written.chain([kilograms.to_owned()]).collect()
}

/// What tells of a condition, or of an age, in whatever sentence.
const TELLING: [&str; 7] =
    ["pregnan", "epilep", "blood thin", "anticoag", "aspirin", "nursing", "years old"];

/// Every condition as the catalogue says it, and what tells of it.
fn condition_words() -> BTreeSet<String> {
    let all = Condition::ALL.iter().filter(|condition| **condition != Condition::All);
    let said = all.map(|c| plain(&kit::words().word(&format!("condition-{}", c.word()))));
    said.chain(TELLING.map(str::to_owned)).collect()
}

/// What a page says: as it is written, and without its tags, which may part what is read as one. The
/// lines of drawings are left out: among so many coordinates stands every number.
pub(crate) fn shown(html: &str) -> String {
    let mut parts = html.split(" d=\"");
    let before = parts.next().unwrap_or_default();
    let rest = parts.filter_map(|part| part.split_once('"')).map(|(_, after)| after);
    let written: String = std::iter::once(before).chain(rest).collect();
    let texts = written.split('<').map(|tag| tag.split_once('>').map_or(tag, |(_, text)| text));
    plain(&format!("{written} {}", texts.collect::<String>()))
}

/// In small letters, with plain spaces.
fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

pub(crate) fn stands_in(shown: &str, word: &str) -> bool {
    times_in(shown, word) > 0
}

/// How often a word stands there. A number is no part of another, and a fruit under 12 mm is no child.
fn times_in(shown: &str, word: &str) -> usize {
    let digit = |c: char| c.is_ascii_digit();
    let begun = |before: &str| word.starts_with(digit) && before.ends_with(char::is_alphanumeric);
    let goes_on = |after: &str| {
        word.ends_with(digit) && (after.starts_with(digit) || after.starts_with(" mm"))
    };
    let around: Vec<_> = shown.split(word).collect();
    let stands = |around: &&[&str]| match around {
        [before, after] => !begun(before) && !goes_on(after),
        _ => false,
    };
    around.windows(2).filter(stands).count()
}
