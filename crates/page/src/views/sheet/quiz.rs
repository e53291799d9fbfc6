//! Three questions at the end of a page, made from what tells a plant from its twins. The answers stand
//! further up on the page, and on the plant.

use super::View;
use super::cell::statements;
use crate::Block;
use crate::views::signs::{Sign, name, signs};
use desk::Twin;
use ground::{Standing, Text};
use herbal::Term;
use identify::{Cell, Sense, never_alike};

/// How many questions there are.
const QUESTIONS: usize = 3;

/// A sign, a twin that it tells apart, and what each of the two shows.
struct Pair<'a> {
    term: &'a Term,
    twin: &'a Twin,
    here: String,
    there: String,
}

impl View<'_> {
    /// The questions: which of the two shows a sign, how to tell a third, and what to do in doubt. The
    /// same sheet gives the same questions.
    pub(super) fn questions(&self) -> Vec<Block> {
        let pairs = self.pairs();
        let which = pairs.iter().take(2).enumerate().map(|(at, pair)| self.which(pair, at == 0));
        let told = self.reply.twins.get(pairs.len().min(2)).or_else(|| self.reply.twins.first());
        let told = told.map(|twin| self.about("forms-quiz-name", twin));
        let fill = ["forms-quiz-doubt", "forms-quiz-first", "forms-quiz-leave"].map(Text::new);
        let looked_at = self.looked_at();
        let all = which.chain(told).chain(looked_at).chain(fill).take(QUESTIONS);
        let all = all.map(|text| self.words.prose(&text));
        self.section("forms-sheet-questions", [Block::numbered(all)])
    }

    /// Signs with a twin that each tells apart, the worst twins first; each sign once, and each twin.
    fn pairs(&self) -> Vec<Pair<'_>> {
        let mut pairs: Vec<Pair<'_>> = Vec::new();
        let sight = |sign: &&Sign<'_>| sign.term.character.sense != Sense::Smell;
        for sign in signs(self.reply).iter().filter(sight) {
            let fresh = |twin: &Twin| pairs.iter().all(|pair| pair.twin.name != twin.name);
            let pair = self.pair(sign, fresh);
            pairs.extend(pair);
        }
        pairs
    }

    fn pair<'s>(&self, sign: &Sign<'s>, fresh: impl Fn(&Twin) -> bool) -> Option<Pair<'s>> {
        let here = self.published(sign.term, sign.here)?;
        sign.there.iter().filter(|(twin, _)| fresh(twin)).find_map(|(twin, cell)| {
            let there = self.published(sign.term, cell)?;
            let apart = never_alike(&sign.term.character.kind, &sign.here.value, &cell.value);
            apart.then(|| Pair { term: sign.term, twin, here: here.clone(), there })
        })
    }

    /// What a sheet says as a rule, where it was read: nobody is examined on what is only remembered.
    fn published(&self, term: &Term, cell: &Cell) -> Option<String> {
        let said = statements(&self.words, term, &cell.value).0.join("; ");
        (cell.standing == Standing::Published && !said.is_empty()).then_some(said)
    }

    /// Asks which of the two shows a sign. The order of the two gives nothing away.
    fn which(&self, pair: &Pair<'_>, of_plant: bool) -> Text {
        let shows = if of_plant { &pair.here } else { &pair.there };
        self.about("forms-quiz-which", pair.twin)
            .with("character", pair.term.name.as_str())
            .with("shows", shows.as_str())
    }

    fn about(&self, id: &str, twin: &Twin) -> Text {
        let mut two = [self.reply.sheet.usual_name(), name(twin)];
        if id == "forms-quiz-which" {
            two.sort_unstable();
        }
        let [one, other] = two;
        Text::new(id).with("one", one).with("other", other)
    }

    /// Asks for what must be looked at, of a plant that nothing is taken for.
    fn looked_at(&self) -> Option<Text> {
        let must = self.reply.sheet.must_look.iter();
        let term = must.chain(self.reply.cells.keys()).find_map(|id| self.reply.terms.get(id))?;
        let asks = Text::new("forms-quiz-see").with("character", term.name.as_str());
        Some(asks.with("one", self.reply.sheet.usual_name()))
    }
}
