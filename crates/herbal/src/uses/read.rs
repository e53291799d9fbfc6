//! From rows as they are written to rows that decide.

use super::rows::{
    BodyRow, CautionRow, CeilingRow, ContentRow, LimitRow, PartsFile, PosologyRow, SubstanceRow,
    TransferRow, TransferStanding, UsesFile, Word,
};
use crate::open::{Open, Src};
use dose::{
    Body, Caution, Ceiling, Content, ContentKind, Counted, Level, Limit, LimitUse, PartRow,
    Posology, Substance, SubstanceId, Table, Transfer,
};
use ground::{Dist, Finite, Mass, Sourcing, Unit};
use std::collections::BTreeSet;
use std::ops::Range;
use toml::Spanned;

/// One file on the desk, and what was read so far.
pub(super) struct Desk<'d, 'r, 'a> {
    pub(super) open: Open<'r, 'a>,
    pub(super) table: &'d mut Table,
    pub(super) seen: &'d mut BTreeSet<(&'static str, String)>,
}

/// Puts a row in the place of the one with the same identifier.
fn replace<T>(rows: &mut Vec<T>, row: Option<T>, id: impl Fn(&T) -> &str) {
    if let Some(row) = row {
        rows.retain(|other| id(other) != id(&row));
        rows.push(row);
    }
}

impl Desk<'_, '_, '_> {
    pub(super) fn substances(&mut self, rows: &[SubstanceRow]) {
        for row in rows {
            self.enter("substance", &row.id);
            let id = SubstanceId(row.id.get_ref().clone());
            let counts_as = row.counts_as.iter();
            let counts_as = counts_as.filter_map(|other| {
                let factor = self.positive(&other.factor)?;
                Some((SubstanceId(other.substance.get_ref().clone()), factor))
            });
            let counts_as = counts_as.collect();
            let from = self.sourcing(&row.src, &row.id);
            let (name, no_safe_level) = (row.name.clone(), row.no_safe_level);
            let substance = Substance { id: id.clone(), name, no_safe_level, counts_as, from };
            self.table.substances.insert(id, substance);
        }
    }

    pub(super) fn rows(&mut self, read: UsesFile) {
        for row in &read.substance {
            for other in &row.counts_as {
                self.substance(&other.substance);
            }
        }
        for row in read.caution {
            let caution = self.caution(row);
            replace(&mut self.table.cautions, caution, |row| &row.id);
        }
        for row in read.posology {
            let amount = self.posology(row);
            replace(&mut self.table.posology, amount, |row| &row.id);
        }
        for row in read.content {
            let content = self.content(row);
            replace(&mut self.table.contents, content, |row| &row.id);
        }
        for row in read.limit {
            let limit = self.limit(row);
            replace(&mut self.table.limits, limit, |row| &row.id);
        }
        for row in read.body {
            self.body(&row);
        }
    }

    /// Names under which cautions know a species must be names that some row gives.
    pub(super) fn borrowed(&mut self, taxa: &[Word]) {
        // A herbal of species alone has nothing to join.
        let table = &*self.table;
        let none = table.cautions.is_empty() && table.posology.is_empty();
        if none || self.open.reader.broken("uses") {
            return;
        }
        for word in taxa {
            let taxon = super::plain(word.get_ref());
            let table = &*self.table;
            let known = table.cautions.iter().any(|row| row.taxon == taxon)
                || table.posology.iter().any(|row| row.taxon == taxon)
                || table.contents.iter().any(|row| row.taxon == taxon);
            if !known {
                self.open.fault("uses-caution-taxon", word.span(), word.get_ref());
            }
        }
    }

    pub(super) fn parts(&mut self, read: PartsFile) {
        let taxon = read.name.into_inner();
        if !read.part.is_empty() {
            self.table.parts.retain(|row| row.taxon != taxon);
        }
        for (number, row) in read.part.into_iter().enumerate() {
            let span = row.span();
            let row = row.into_inner();
            self.open.mark(&span, "part", &taxon, &number.to_string());
            let from = self.open.sourcing(&row.src, span);
            let (part, harm) = (self.open.word(&row.part), self.open.word(&row.harm));
            let (route, used_as) = (self.open.word(&row.route), self.open.word(&row.used_as));
            let forms = self.open.words(&row.forms);
            let caution_parts = self.open.words(&row.caution_parts);
            let (Some(part), Some(harm), Some(route), Some(used_as)) = (part, harm, route, used_as)
            else {
                continue;
            };
            self.table.parts.push(PartRow {
                taxon: taxon.clone(),
                part,
                stage: row.stage,
                harm,
                route,
                forms,
                used_as,
                caution_parts,
                contact: row.contact,
                note: row.note,
                from,
            });
        }
    }

    fn caution(&mut self, row: CautionRow) -> Option<Caution> {
        self.enter("caution", &row.id);
        let from = self.sourcing(&row.src, &row.id);
        let (parts, forms) = (self.some(&row.parts, &row.id), self.some(&row.forms, &row.id));
        let (who, action) = (self.open.word(&row.who), self.open.word(&row.action));
        let uses = self.open.words(&row.uses);
        let limit = row.limit.as_ref().map(|limit| self.ceiling(limit));
        let names = row.names.iter().filter_map(|name| self.substance(name)).collect();
        Some(Caution {
            id: row.id.into_inner(),
            taxon: row.taxon.into_inner(),
            parts: parts?,
            forms: forms?,
            who: who?,
            action: action?,
            when: row.when,
            uses,
            spares_food: row.spares_food,
            limit: match limit {
                Some(limit) => Some(limit?),
                None => None,
            },
            names,
            days: row.days,
            wording: row.wording,
            note: row.note,
            from,
        })
    }

    fn ceiling(&mut self, row: &CeilingRow) -> Option<Ceiling> {
        let of = match row.of.get_ref().as_str() {
            "herb-dried" => Some(Counted::DriedHerb),
            "herb-fresh" => Some(Counted::FreshHerb),
            "herb-as-weighed" => Some(Counted::HerbAsWeighed),
            "servings" => Some(Counted::Servings),
            _ => self.substance(&row.of).map(Counted::Substance),
        };
        let level = self.level(row.amount.as_ref(), row.unit.as_ref());
        Some(Ceiling { of: of?, level: level? })
    }

    fn posology(&mut self, row: PosologyRow) -> Option<Posology> {
        self.enter("posology", &row.id);
        let from = self.sourcing(&row.src, &row.id);
        let (parts, forms) = (self.some(&row.parts, &row.id), self.some(&row.forms, &row.id));
        let (low, high) = *row.grams.get_ref();
        let grams = Finite::new(low).zip(Finite::new(high)).filter(|_| 0.0 < low && low <= high);
        if grams.is_none() {
            self.open.fault("uses-amount", row.grams.span(), &format!("{low} to {high}"));
        }
        let cup_ml = row.cup_ml.as_ref().and_then(|ml| self.positive(ml));
        // Nought would withhold from everybody; a text without a number leaves the field out.
        let day_max_g = row.day_max_g.as_ref().and_then(|most| self.positive(most));
        Some(Posology {
            id: row.id.into_inner(),
            taxon: row.taxon.into_inner(),
            parts: parts?,
            forms: forms?,
            grams: grams?,
            cup_ml,
            times: row.times,
            day_max_g,
            max_days: row.max_days,
            age_from: row.age_from,
            note: row.note,
            from,
        })
    }

    fn content(&mut self, row: ContentRow) -> Option<Content> {
        self.enter("content", &row.id);
        let from = self.sourcing(&row.src, &row.id);
        let parts = self.some(&row.parts, &row.id);
        let forms = self.open.words(&row.forms);
        let substance = self.substance(&row.substance);
        let kind = match &row.kind {
            Some(kind) => self.open.word(kind),
            None => Some(ContentKind::Plant),
        };
        let basis = self.open.word(&row.basis);
        let amount = row.amount.and_then(|amount| self.amount(amount));
        let (water, ethanol) = (self.transfer(row.water), self.transfer(row.ethanol));
        Some(Content {
            id: row.id.into_inner(),
            taxon: row.taxon.into_inner(),
            parts: parts?,
            forms,
            substance: substance?,
            kind: kind?,
            basis: basis?,
            amount,
            only_high: row.only_high,
            averages: row.averages,
            water,
            ethanol,
            note: row.note,
            from,
        })
    }

    /// A distribution of an amount, which is never below nothing.
    fn amount(&mut self, written: Spanned<Dist>) -> Option<Dist> {
        let span = written.span();
        match written.into_inner().checked() {
            Ok(dist) if dist.ends().0 >= 0.0 => Some(dist),
            Ok(dist) => {
                self.open.fault("uses-amount", span, &dist.ends().0.to_string());
                None
            }
            Err(why) => {
                self.open.fault("uses-amount", span, &why.to_string());
                None
            }
        }
    }

    fn transfer(&mut self, row: Option<Spanned<TransferRow>>) -> Option<Transfer> {
        let row = row?;
        let TransferRow { low, mode, high, ref standing } = *row.get_ref();
        let measured = !matches!(standing, TransferStanding::Assumed);
        match Dist::triangular(low, mode, high) {
            Ok(share) if low >= 0.0 && high <= 1.0 => Some(Transfer { share, measured }),
            _ => {
                self.open.fault("uses-share", row.span(), &format!("{low}, {mode}, {high}"));
                None
            }
        }
    }

    fn limit(&mut self, row: LimitRow) -> Option<Limit> {
        self.enter("limit", &row.id);
        let from = self.sourcing(&row.src, &row.id);
        let substance = self.substance(&row.substance);
        let level = self.level(row.value.as_ref(), row.unit.as_ref());
        let (window, basis) = (self.open.word(&row.window), self.open.word(&row.basis));
        let used = self.open.word(&row.used);
        let (who, except) = (self.open.words(&row.who), self.open.words(&row.except));
        let forms = self.open.words(&row.forms);
        if row.value.is_none() && used.is_some_and(|used| used != LimitUse::None) {
            self.open.fault("missing-field", row.id.span(), "value");
        }
        Some(Limit {
            id: row.id.into_inner(),
            substance: substance?,
            level: level?,
            window: window?,
            basis: basis?,
            used: used?,
            from_age: row.from_age,
            to_age: row.to_age,
            who,
            except,
            forms,
            max_days: row.max_days,
            population: row.population,
            date: row.date,
            note: row.note,
            from,
        })
    }

    fn body(&mut self, row: &BodyRow) {
        self.enter("body", &row.band);
        let from = self.sourcing(&row.src, &row.band);
        let band = self.open.word(&row.band);
        if let (Some(band), Some(kg)) = (band, self.positive(&row.kg)) {
            self.table.bodies.insert(band, Body { mass: Mass::from_kg(kg.get()), from });
        }
    }

    /// A number and its unit: both or neither.
    #[expect(clippy::option_option, reason = "no number, and a number at fault, are two things")]
    fn level(
        &mut self,
        value: Option<&Spanned<f64>>,
        unit: Option<&Word>,
    ) -> Option<Option<Level>> {
        match (value, unit) {
            (None, None) => Some(None),
            (Some(value), Some(unit)) => {
                let number = Finite::new(*value.get_ref()).filter(|number| number.get() >= 0.0);
                if number.is_none() {
                    self.open.fault("uses-amount", value.span(), &value.get_ref().to_string());
                }
                let unit = self.open.word::<Unit>(unit);
                Some(Some(Level { value: number?, unit: unit? }))
            }
            (Some(value), None) => self.lone(value.span(), "unit"),
            (None, Some(unit)) => self.lone(unit.span(), "value"),
        }
    }

    #[expect(clippy::option_option, reason = "as the caller's")]
    fn lone(&mut self, span: Range<usize>, missing: &str) -> Option<Option<Level>> {
        self.open.fault("missing-field", span, missing);
        None
    }

    /// A number above nought.
    fn positive(&mut self, written: &Spanned<f64>) -> Option<Finite> {
        let number = Finite::new(*written.get_ref()).filter(|number| *number > Finite::ZERO);
        if number.is_none() {
            self.open.fault("uses-amount", written.span(), &written.get_ref().to_string());
        }
        number
    }

    /// A substance that is listed.
    fn substance(&mut self, word: &Word) -> Option<SubstanceId> {
        let id = SubstanceId(word.get_ref().clone());
        if self.table.substances.contains_key(&id) {
            return Some(id);
        }
        self.open.fault("uses-substance", word.span(), word.get_ref());
        None
    }

    /// Words of a closed list, at least one: a row that reaches nothing would be passed over.
    fn some<'w, T: serde::Deserialize<'w>>(
        &mut self,
        words: &'w [Word],
        id: &Word,
    ) -> Option<Vec<T>> {
        if words.is_empty() {
            self.open.fault("uses-reaches-nothing", id.span(), id.get_ref());
        }
        let read = self.open.words(words);
        (!read.is_empty()).then_some(read)
    }

    fn sourcing(&mut self, src: &Src, id: &Word) -> Sourcing {
        self.open.sourcing(src, id.span())
    }

    /// Notes where a row stands; a fault when its table holds another of that name.
    fn enter(&mut self, table: &'static str, id: &Word) {
        self.open.mark(&id.span(), table, id.get_ref(), "");
        if !self.seen.insert((table, id.get_ref().clone())) {
            self.open.fault("uses-twice", id.span(), id.get_ref());
        }
    }
}
