//! The form that whoever comes fills in beforehand: one question after another, why each is asked, who
//! reads the answers and until when. It is blank, and names nobody who comes.

use crate::{Block, Fact, Kind, Level, Page, Prose, Words};
use desk::{IntakeQuestion, Plan, Topic};
use dose::{AgeBand, Question, Rule};
use ground::{Answer, Text};

/// The order in which people are asked.
const TOPICS: [(Topic, &str); 6] = [
    (Topic::You, "forms-topic-you"),
    (Topic::Expecting, "forms-topic-expecting"),
    (Topic::Medicines, "forms-topic-medicines"),
    (Topic::Allergies, "forms-topic-allergies"),
    (Topic::Illnesses, "forms-topic-illnesses"),
    (Topic::Plans, "forms-topic-plans"),
];

/// What it is called.
pub(super) fn title(plan: &Plan) -> Text {
    Text::new("forms-intake-title").with("name", plan.head.name.as_str())
}

/// The form of an outing.
pub(super) fn intake_form(plan: &Plan, words: &Words<'_>) -> Page {
    let page = words.page(Kind::Public, &title(plan)).with(head(plan, words));
    if plan.intake.questions.is_empty() {
        return page.with([words.para(&Text::new("forms-intake-nothing")), changed(words)]);
    }
    page.with(TOPICS.iter().flat_map(|(topic, id)| asked(plan, *topic, id, words)))
        .with([changed(words)])
        .with(foot(words))
}

/// Who reads it, where it is kept, until when, how to take it back.
fn head(plan: &Plan, words: &Words<'_>) -> Vec<Block> {
    let until = match &plan.keep_until {
        Answer::Known(day) => words.prose(&Text::new("forms-intake-until").with("day", *day)),
        Answer::Refused(_) => words.prose(&Text::new("forms-intake-until-open")).blank(),
    };
    let who = Text::new("forms-intake-who").with("leader", plan.head.leader.as_str());
    let plain = |id: &str| words.prose(&Text::new(id));
    let fact = |id: &str, value: Prose| words.fact(&Text::new(id), value);
    let facts: Vec<Fact> = vec![
        fact("forms-intake-who-label", words.prose(&who)),
        fact("forms-intake-where-label", plain("forms-intake-where")),
        fact("forms-intake-until-label", until),
        fact("forms-intake-erase-label", plain("forms-intake-erase")),
        fact("forms-intake-free-label", plain("forms-intake-free")),
    ];
    vec![
        words.para(&Text::new("forms-intake-head")),
        Block::Facts(facts),
        words.para(&Text::new("forms-intake-parents")),
        Block::Para(plain("forms-intake-name").blank()),
    ]
}

/// The questions of one topic, with room to name what no rule asks for; nothing where none is asked.
/// Room for allergies is always there: no list of plant families holds them all.
fn asked(plan: &Plan, topic: Topic, id: &str, words: &Words<'_>) -> Vec<Block> {
    let numbered = plan.intake.questions.iter().zip(1_usize..);
    let own = numbered.filter(|(question, _)| question.topic == topic);
    let mut blocks: Vec<_> =
        own.flat_map(|(question, number)| one(plan, question, number, words)).collect();
    let free = match topic {
        Topic::Medicines => Some("forms-medicines-free"),
        Topic::Allergies => Some("forms-allergies-free"),
        _ => None,
    };
    if !blocks.is_empty() || topic == Topic::Allergies {
        blocks.extend(free.map(|id| Block::lines(words.word(id), 2)));
    }
    super::section(id, blocks, words)
}

fn one(plan: &Plan, question: &IntakeQuestion, number: usize, words: &Words<'_>) -> [Block; 3] {
    let asks = Text::new(message(&question.asks));
    let heading = Text::new("forms-numbered").with("number", number).with("question", asks);
    [
        words.heading(Level::Part, &heading),
        Block::Para(boxes(&question.asks, words)),
        Block::Para(why(plan, question, words)),
    ]
}

/// One question as a person is asked it by itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asking {
    /// The question.
    pub asks: String,
    /// Which kinds of rule ask it, and the dishes that it bears on.
    pub why: String,
}

/// A question of a plan, in words.
#[must_use]
pub fn asking(plan: &Plan, question: &IntakeQuestion, words: &Words<'_>) -> Asking {
    let asks = words.word(&message(&question.asks));
    Asking { asks, why: why(plan, question, words).plain() }
}

/// The message that asks a question.
fn message(asks: &Question) -> String {
    match asks {
        Question::BodyMass => "forms-ask-body-mass".to_owned(),
        Question::Condition(condition) => format!("forms-ask-{}", condition.word()),
        // A stage is asked of a plant; nobody is asked for one.
        Question::Age | Question::Stage { .. } => "forms-ask-age".to_owned(),
    }
}

/// Boxes to tick; body weight has room for a number. Not knowing and not saying are answers too.
fn boxes(asks: &Question, words: &Words<'_>) -> Prose {
    let answers: &[&str] = match asks {
        Question::Condition(_) => &["forms-yes", "forms-no"],
        Question::BodyMass => &[],
        Question::Age | Question::Stage { .. } => &AgeBand::ALL.map(band),
    };
    let room = match asks {
        Question::BodyMass => Prose::new().blank().text(&words.word("forms-kilograms")).text(GAP),
        _ => Prose::new(),
    };
    let unsaid = ["forms-not-known", "forms-rather-not"];
    answers.iter().chain(&unsaid).fold(room, |prose, id| {
        let gap = if prose.is_empty() { "" } else { GAP };
        prose.text(gap).text("☐\u{a0}").text(&words.word(id).replace(' ', "\u{a0}"))
    })
}

/// Between two boxes of a line.
const GAP: &str = "\u{a0}\u{a0} ";

fn band(band: AgeBand) -> &'static str {
    match band {
        AgeBand::Infant => "forms-age-infant",
        AgeBand::Toddler => "forms-age-toddler",
        AgeBand::Child => "forms-age-child",
        AgeBand::Adolescent => "forms-age-adolescent",
        AgeBand::Adult => "forms-age-adult",
    }
}

/// The kinds of rule that ask, and the dishes that it bears on: never of whom.
fn why(plan: &Plan, question: &IntakeQuestion, words: &Words<'_>) -> Prose {
    let rules: Vec<_> = question.by.iter().filter_map(|rule| by(*rule)).collect();
    let rules: Vec<_> = rules.into_iter().map(|id| words.word(id)).collect();
    let dishes = plan.makes.iter().filter(|make| question.makes.contains(&make.name));
    let dishes: Vec<_> = dishes.map(|make| make.called.clone()).collect();
    let dishes = if dishes.len() == plan.makes.len() && dishes.len() > 1 {
        words.word("forms-why-every-dish")
    } else {
        words.catalogue.list(&dishes)
    };
    let text =
        Text::new("forms-why").with("rules", words.catalogue.list(&rules)).with("dishes", dishes);
    words.prose(&text)
}

fn by(rule: Rule) -> Option<&'static str> {
    match rule {
        Rule::Caution => Some("forms-by-caution"),
        Rule::Amount => Some("forms-by-amount"),
        Rule::Limit => Some("forms-by-limit"),
        Rule::Unmeasured => Some("forms-by-unmeasured"),
        Rule::Identity | Rule::Part | Rule::Flag => None,
    }
}

fn changed(words: &Words<'_>) -> Block {
    Block::lines(words.word("forms-changed"), 2)
}

fn foot(words: &Words<'_>) -> Vec<Block> {
    let blank = |id: &str| Block::Para(words.prose(&Text::new(id)).blank());
    vec![
        words.para(&Text::new("forms-foot")),
        blank("forms-date"),
        blank("forms-signature"),
        blank("forms-parent"),
    ]
}
