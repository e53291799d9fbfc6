//! Land rules, shares that may be taken, distances to keep, and what stands yield.

mod rows;

use crate::file::{Reader, TextFile};
use ground::{Dimension, Fraction, Fresh, Length, Mass, Part, Sourcing, Spoken};
use harvest::{
    Care, Effect, Hazard, Jurisdiction, LandRule, Pieces, Quantity, Reach, Rules, Scope, TakeRule,
};
use rows::{
    CareRow, EffectWord, HazardRow, JurisdictionRow, LandFile, LandRow, LawRow, ShareRow, YieldRow,
};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use std::ops::Range;
use toml::Spanned;

pub use rows::Per;

/// Land rules, shares that may be taken, distances to keep, and what stands yield.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Land {
    /// What an allowance is held against.
    pub rules: Rules,
    /// What stands grow to, as published: shown beside a survey, never instead of one.
    pub yields: Vec<Yield>,
}

/// What a stand of a species grows to, as published.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Yield {
    /// Identifier.
    pub id: String,
    /// Species or genus.
    pub taxon: String,
    /// The part.
    pub part: Part,
    /// Lower end; of dried herb where `dried` says so.
    pub low_g: Mass,
    /// Upper end.
    pub high_g: Mass,
    /// Of what.
    pub per: Per,
    /// Whether the mass is that of dried herb.
    pub dried: bool,
    /// Under which circumstances, in plain words.
    pub says: String,
    /// Where it stands.
    pub from: Sourcing,
}

impl Land {
    pub(crate) fn read(reader: &mut Reader<'_>) -> Self {
        Self::default().overlaid(reader)
    }

    /// This land with the files of the folder laid over it: rows with the same identifier replace,
    /// all else stays.
    pub(crate) fn overlaid(&self, reader: &mut Reader<'_>) -> Self {
        let mut land = self.clone();
        let files: Vec<_> = reader
            .files_in("land")
            .into_iter()
            .filter_map(|file| Some((file, reader.parse::<LandFile>(file)?)))
            .collect();
        let mut desk = Desk { reader, seen: BTreeSet::new() };
        // Places and classes of land first, since the other rows name them.
        for (file, read) in &files {
            for row in &read.jurisdiction {
                desk.jurisdiction(&mut land.rules, file, row);
            }
            for row in &read.land {
                desk.land(&mut land.rules, file, row);
            }
        }
        for (file, read) in files {
            desk.places(&land.rules, file, &read.jurisdiction);
            desk.rows(&mut land, file, read);
        }
        land
    }
}

/// Reads rows, each identifier once in its table.
struct Desk<'d, 'r> {
    reader: &'d mut Reader<'r>,
    seen: BTreeSet<(&'static str, String)>,
}

impl Desk<'_, '_> {
    fn rows(&mut self, land: &mut Land, file: &TextFile, read: LandFile) {
        for row in read.share {
            let rule = self.share(&land.rules, file, "share", row);
            replace(&mut land.rules.shares, rule, |rule| &rule.id);
        }
        for row in read.ceiling {
            let rule = self.share(&land.rules, file, "ceiling", row);
            replace(&mut land.rules.ceilings, rule, |rule| &rule.id);
        }
        for row in read.law {
            let rule = self.law(&land.rules, file, row);
            replace(&mut land.rules.laws, rule, |rule| &rule.id);
        }
        for row in read.hazard {
            let hazard = self.hazard(file, row);
            replace(&mut land.rules.hazards, hazard, |hazard| &hazard.id);
        }
        for row in read.care {
            let care = self.care(file, row);
            replace(&mut land.rules.cares, care, |care| &care.id);
        }
        for row in read.yields {
            let found = self.yields(file, row);
            replace(&mut land.yields, found, |found| &found.id);
        }
    }

    /// Notes where a row stands; a fault when its table holds another of that name.
    fn enter(&mut self, file: &TextFile, table: &'static str, id: &Spanned<String>) {
        self.reader.mark(file, &id.span(), table, id.get_ref(), "");
        if !self.seen.insert((table, id.get_ref().clone())) {
            self.reader.fault("land-twice", file, id.span(), id.get_ref());
        }
    }

    fn jurisdiction(&mut self, rules: &mut Rules, file: &TextFile, row: &JurisdictionRow) {
        self.enter(file, "jurisdiction", &row.id);
        let within = row.within.as_ref().map(|within| within.get_ref().clone());
        let place = Jurisdiction { name: row.name.clone(), within };
        rules.jurisdictions.insert(row.id.get_ref().clone(), place);
    }

    fn land(&mut self, rules: &mut Rules, file: &TextFile, row: &LandRow) {
        self.enter(file, "land", &row.id);
        rules.lands.insert(row.id.get_ref().clone(), row.is.clone());
    }

    /// A wider place must be listed.
    fn places(&mut self, rules: &Rules, file: &TextFile, rows: &[JurisdictionRow]) {
        for within in rows.iter().filter_map(|row| row.within.as_ref()) {
            if !rules.jurisdictions.contains_key(within.get_ref()) {
                self.reader.fault("land-unknown-place", file, within.span(), within.get_ref());
            }
        }
    }

    /// What a rule is about; every place and class of land it names must be listed.
    fn scope(&mut self, rules: &Rules, file: &TextFile, scope: rows::ScopeRow) -> Scope {
        for place in &scope.jurisdictions {
            if !rules.jurisdictions.contains_key(place.get_ref()) {
                self.reader.fault("land-unknown-place", file, place.span(), place.get_ref());
            }
        }
        for land in &scope.lands {
            if !rules.lands.contains_key(land.get_ref()) {
                self.reader.fault("land-unknown-class", file, land.span(), land.get_ref());
            }
        }
        let plain =
            |list: Vec<Spanned<String>>| list.into_iter().map(Spanned::into_inner).collect();
        Scope {
            taxa: scope.taxa,
            parts: scope.parts,
            life_forms: scope.life_forms,
            jurisdictions: plain(scope.jurisdictions),
            lands: plain(scope.lands),
            purposes: scope.purposes,
        }
    }

    fn share(
        &mut self,
        rules: &Rules,
        file: &TextFile,
        table: &'static str,
        mut row: ShareRow,
    ) -> TakeRule {
        self.enter(file, table, &row.id);
        let share = *row.share.get_ref();
        if !(0.0..=1.0).contains(&share) {
            self.reader.fault("land-share", file, row.share.span(), &share.to_string());
        }
        let scope = row.take_scope();
        TakeRule {
            scope: self.scope(rules, file, scope),
            id: row.id.into_inner(),
            share: Fraction::from_share(share),
            every_years: row.every_years.map_or(1, std::num::NonZeroU16::get),
            says: row.says,
            from: self.reader.sourcing(file, &row.src),
        }
    }

    fn law(&mut self, rules: &Rules, file: &TextFile, mut row: LawRow) -> LandRule {
        self.enter(file, "law", &row.id);
        let scope = row.take_scope();
        LandRule {
            effect: self.effect(file, &row),
            scope: self.scope(rules, file, scope),
            id: row.id.into_inner(),
            says: row.says,
            from: self.reader.sourcing(file, &row.src),
            seen: row.seen,
        }
    }

    /// An amount and a period belong to `at-most`, and to nothing else.
    fn effect(&mut self, file: &TextFile, row: &LawRow) -> Effect {
        let amount = row.amount.as_ref().map(|said| self.amount(file, said));
        match (row.effect, amount, row.period) {
            (EffectWord::AtMost, Some(amount), Some(period)) => Effect::AtMost(amount, period),
            (EffectWord::AtMost, ..) | (_, Some(_), _) | (_, _, Some(_)) => {
                self.reader.fault("land-at-most", file, row.id.span(), row.id.get_ref());
                Effect::Forbidden
            }
            (EffectWord::Forbidden, ..) => Effect::Forbidden,
            (EffectWord::AskOwner, ..) => Effect::AskOwner,
            (EffectWord::Consent, ..) => Effect::Consent,
            (EffectWord::PublicRight, ..) => Effect::PublicRight,
            (EffectWord::Note, ..) => Effect::Note,
        }
    }

    /// Grams or pieces, the lower end of a range.
    fn amount(&mut self, file: &TextFile, said: &Spanned<Spoken>) -> Quantity {
        let mass = said.get_ref().resolve(Dimension::Mass, None);
        let pieces = said.get_ref().resolve(Dimension::Number, None);
        match (mass, pieces) {
            (Ok(mass), _) => Quantity::Mass(Mass::<Fresh>::from_g(mass.low)),
            (_, Ok(pieces)) => Quantity::Pieces(Pieces(pieces.low)),
            _ => {
                self.unfit(file, &said.span(), said.get_ref());
                Quantity::Mass(Mass::ZERO)
            }
        }
    }

    fn unfit(&mut self, file: &TextFile, span: &Range<usize>, said: &Spoken) {
        self.reader.fault("land-amount", file, span.clone(), &said.written);
    }

    fn hazard(&mut self, file: &TextFile, row: HazardRow) -> Hazard {
        self.enter(file, "hazard", &row.id);
        Hazard {
            reach: self.reach(file, &row),
            id: row.id.into_inner(),
            name: row.name,
            water_only: row.water_only,
            why: row.why,
            from: self.reader.sourcing(file, &row.src),
            narrowed: None,
        }
    }

    /// Either both distances, in order, or none that would do.
    fn reach(&mut self, file: &TextFile, row: &HazardRow) -> Reach {
        let keep = row.keep.as_ref().map(|said| self.length(file, said));
        let never = row.never.as_ref().map(|said| self.length(file, said));
        match (row.anywhere, keep, never) {
            (true, None, None) => Reach::Anywhere,
            (false, Some(keep), Some(never)) if never <= keep => Reach::Distance { keep, never },
            _ => {
                self.reader.fault("land-distance", file, row.id.span(), row.id.get_ref());
                Reach::Anywhere
            }
        }
    }

    /// The upper end of a range: a distance to keep is the longer one.
    fn length(&mut self, file: &TextFile, said: &Spanned<Spoken>) -> Length {
        match said.get_ref().resolve(Dimension::Length, None) {
            Ok(length) => Length::of_base(length.high),
            Err(_) => {
                self.unfit(file, &said.span(), said.get_ref());
                Length::ZERO
            }
        }
    }

    fn care(&mut self, file: &TextFile, row: CareRow) -> Care {
        self.enter(file, "care", &row.id);
        Care {
            id: row.id.into_inner(),
            water_only: row.water_only,
            says: row.says,
            from: self.reader.sourcing(file, &row.src),
        }
    }

    fn yields(&mut self, file: &TextFile, row: YieldRow) -> Yield {
        self.enter(file, "yield", &row.id);
        let high = row.high.as_ref().unwrap_or(&row.low);
        let low_g = self.mass(file, &row.low, |amount| amount.low);
        let high_g = self.mass(file, high, |amount| amount.high);
        if high_g < low_g {
            self.unfit(file, &high.span(), high.get_ref());
        }
        Yield {
            id: row.id.into_inner(),
            taxon: row.taxon,
            part: row.part,
            low_g,
            high_g,
            per: row.per,
            dried: row.dried,
            says: row.says,
            from: self.reader.sourcing(file, &row.src),
        }
    }

    fn mass(
        &mut self,
        file: &TextFile,
        said: &Spanned<Spoken>,
        end: impl Fn(ground::Amount) -> f64,
    ) -> Mass {
        match said.get_ref().resolve(Dimension::Mass, None) {
            Ok(amount) => Mass::from_g(end(amount)),
            Err(_) => {
                self.unfit(file, &said.span(), said.get_ref());
                Mass::ZERO
            }
        }
    }
}

/// Puts a row in the place of the one with its identifier, or in order among the others.
fn replace<T>(rows: &mut Vec<T>, row: T, id: impl Fn(&T) -> &String) {
    match rows.binary_search_by(|known| id(known).cmp(id(&row))) {
        Ok(at) => {
            if let Some(known) = rows.get_mut(at) {
                *known = row;
            }
        }
        Err(at) => rows.insert(at, row),
    }
}
