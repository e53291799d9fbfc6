//! What its parts are used for, how each can hurt, and who should not have it.

use super::{View, list};
use crate::{Block, Item, Prose};
use dose::{Action, Caution, PartRow, UsedAs};
use ground::{Form, Part, Text};
use herbal::GatheredFor;

impl View<'_> {
    /// Harm and use of each part.
    pub(super) fn parts(&self) -> Vec<Block> {
        let points = self.reply.parts.iter().map(|row| self.part(row));
        self.section("sheet-parts", bullets(points))
    }

    fn part(&self, row: &PartRow) -> Item {
        let stage = row.stage.as_deref().map(|stage| Prose::new().text(", ").said_strong(stage));
        let uses = Text::new("sheet-part-says")
            .with("forms", self.forms_said(&row.forms))
            .with("use", Text::new(used_as(row.used_as)))
            .with("harm", list::harm(row.feared(), &self.words));
        let contact = row.contact.as_deref();
        let contact = contact.map(|does| Text::new("sheet-contact").with("does", does));
        let mut says = Prose::new()
            .strong(&self.parts_said(&[row.part]))
            .then(stage.unwrap_or_default())
            .text(". ")
            .then(self.words.prose(&uses));
        if let Some(note) = &row.note {
            says = says.text(" ").said(note);
        }
        if let Some(contact) = contact {
            says = says.text(" ").then(self.words.prose(&contact));
        }
        Item::from(says.then(self.mark(&row.from)))
    }

    /// Who should not have it, or not without asking.
    pub(super) fn cautions(&self) -> Vec<Block> {
        let points = self.reply.cautions.iter().map(|row| self.caution(row));
        self.section("sheet-cautions", bullets(points))
    }

    fn caution(&self, row: &Caution) -> Item {
        let action = match row.action {
            Action::Exclude => "sheet-caution-exclude",
            Action::Ask => "sheet-caution-ask",
            Action::Limit => "sheet-caution-limit",
            Action::Note => "sheet-caution-note",
            Action::NoneFound => "sheet-caution-none-found",
        };
        let who = self.words.word(&format!("condition-{}", row.who.word()));
        let of = Text::new("sheet-caution-of")
            .with("parts", self.parts_said(&row.parts))
            .with("forms", self.forms_said(&row.forms));
        let says = Prose::new()
            .strong(&who)
            .text(" — ")
            .strong(&self.words.word(action))
            .text(" ")
            .then(self.words.prose(&of))
            .text(" ")
            .said(&row.wording);
        Item::from(says.then(self.mark(&row.from)))
    }

    /// What people gather it for.
    pub(super) fn gathered_for(&self) -> Vec<Block> {
        let rows = &self.reply.sheet.gathered_for;
        let points = bullets(rows.iter().map(|row| self.gathered(row)));
        let says = points.as_ref().map(|_| self.words.para(&Text::new("sheet-gathered-says")));
        self.section("sheet-gathered", says.into_iter().chain(points))
    }

    fn gathered(&self, row: &GatheredFor) -> Item {
        let says = Prose::new()
            .strong(&self.parts_said(&[row.part]))
            .text(": ")
            .text(&self.forms_said(&row.forms));
        let note = row.note.as_deref().map(|note| Prose::new().text("; ").said(note));
        Item::from(says.then(note.unwrap_or_default()).then(self.mark(&row.from)))
    }

    fn parts_said(&self, parts: &[Part]) -> String {
        let said = parts.iter().map(|part| self.words.word(&format!("part-{}", part.word())));
        said.collect::<Vec<_>>().join(", ")
    }

    fn forms_said(&self, forms: &[Form]) -> String {
        let said = forms.iter().map(|form| self.words.word(&format!("form-{}", form.word())));
        said.collect::<Vec<_>>().join(", ")
    }
}

/// Points with bullets, if there are any.
pub(super) fn bullets(points: impl IntoIterator<Item = impl Into<Item>>) -> Option<Block> {
    let points: Vec<Item> = points.into_iter().map(Into::into).collect();
    (!points.is_empty()).then(|| Block::bullets(points))
}

fn used_as(used: UsedAs) -> &'static str {
    match used {
        UsedAs::Food => "sheet-use-food",
        UsedAs::Flavour => "sheet-use-flavour",
        UsedAs::Tea => "sheet-use-tea",
        UsedAs::Medicinal => "sheet-use-medicinal",
        UsedAs::Skin => "sheet-use-skin",
        UsedAs::None => "sheet-use-none",
    }
}
