//! Why a twin is not told apart as surely as the rules ask.

use super::View;
use crate::{Block, Prose};
use desk::ApartTwin;
use ground::Text;
use identify::sets::{Between, Reach};

/// More characters than these are counted, not named.
const NAMED: usize = 4;

impl View<'_> {
    pub(super) fn in_the_way(&self, twin: &ApartTwin, between: &Between) -> Vec<Block> {
        let id = match between.reach {
            Reach::Never if twin.harm.is_none() => "view-apart-no-sheet",
            Reach::Never => "view-apart-never",
            Reach::Once if between.tells.len() == 1 => "view-apart-once",
            Reach::Once => "view-apart-one-group",
            Reach::NotOfTwoOrgans | Reach::AsAsked => "view-apart-one-organ",
        };
        let tells = self.characters(&between.tells);
        let says = self.words.prose(&Text::new(id).with("characters", tells));
        let head = Block::Para(self.twin(twin).text(": ").then(says));
        let reasons = [
            ("view-apart-mostly", &between.mostly),
            ("view-apart-not-now", &between.not_now),
            ("view-apart-remembered", &between.remembered),
            ("view-apart-misread", &between.misread),
            ("view-apart-empty", &between.empty),
        ];
        let some = reasons.into_iter().filter(|(_, characters)| !characters.is_empty());
        let reasons: Vec<Prose> = some
            .map(|(id, characters)| {
                let text = Text::new(id).with("characters", self.characters(characters));
                self.words.prose(&text)
            })
            .collect();
        let reasons = (!reasons.is_empty()).then(|| Block::bullets(reasons));
        std::iter::once(head).chain(reasons).collect()
    }

    /// The first few by name, and how many more there are.
    fn characters(&self, ids: &[String]) -> String {
        let mut named: Vec<_> = ids.iter().take(NAMED).map(|id| self.words.character(id)).collect();
        let left = ids.len().saturating_sub(NAMED);
        if left > 0 {
            named.push(self.words.catalogue.say(&Text::new("view-apart-more").with("count", left)));
        }
        self.words.catalogue.list(&named)
    }
}
