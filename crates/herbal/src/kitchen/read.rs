//! Reading the kitchen's files: each row checked, then put where rows of its name are replaced.

use super::rows::{
    DriedToRow, GrowthRow, KeepingRow, KitchenFile, NoteRow, RecipeRow, RetentionRow, SpoonRow,
    SpreadRow, StoveRow, TargetRow, WarmthRow, YieldRow,
};
use super::{DryingTarget, Growth, Kitchen, Ph, Warmth};
use crate::file::{Reader, TextFile, place};
use crate::open::{Open, Src};
use ground::{
    Answer, Duration, Fault, Fraction, Mass, MassFraction, Sourced, Sourcing, Temperature,
};
use prepare::sugar::WaterActivity;
use prepare::{
    DryingYield, EvaporationRate, Holds, KeepingRule, KitchenNote, Moisture, MoistureRange, Recipe,
    Retention, SpoonWeight, Stove,
};
use std::collections::BTreeSet;
use std::ops::Range;
use toml::Spanned;

impl Kitchen {
    /// This kitchen with the files of the folder laid over it: rows with the same name replace, all
    /// else stays.
    pub(crate) fn overlaid(&self, reader: &mut Reader<'_>) -> Self {
        let mut kitchen = self.clone();
        let files: Vec<_> = reader
            .files_in("kitchen")
            .into_iter()
            .filter_map(|file| Some((file, reader.parse::<KitchenFile>(file)?)))
            .collect();
        let spread = spread(&mut *reader, &files);
        let mut seen = BTreeSet::new();
        let (mut recipes, mut named) = (Vec::new(), Vec::new());
        for (file, read) in files {
            let notes = read.note.iter().filter_map(|note| note.get_ref().recipe.clone());
            named.extend(notes.map(|recipe| (file, recipe)));
            let mut desk = Desk {
                open: Open { reader: &mut *reader, file },
                seen: &mut seen,
                spread: spread.clone(),
            };
            recipes.extend(desk.rows(&mut kitchen, read).into_iter().map(|span| (file, span)));
        }
        for (file, (span, id)) in recipes {
            kitchen.check_holds(reader, file, &span, &id);
        }
        for (file, recipe) in named {
            if !kitchen.recipes.contains_key(recipe.get_ref()) {
                reader.fault("kitchen-unknown-recipe", file, recipe.span(), recipe.get_ref());
            }
        }
        kitchen
    }

    /// Every row of the larder that a recipe names must be there.
    fn check_holds(&self, reader: &mut Reader<'_>, file: &TextFile, span: &Range<usize>, id: &str) {
        let Some(recipe) = self.recipes.get(id) else {
            return;
        };
        for name in recipe.holds() {
            if !self.larder.retentions.contains_key(name) {
                reader.fault("kitchen-unknown-retention", file, span.clone(), name);
            }
        }
    }
}

/// How far spoonfuls lie off, from whichever file says it.
fn spread<'a>(
    reader: &mut Reader<'a>,
    files: &[(&'a TextFile, KitchenFile)],
) -> Option<Sourced<MassFraction>> {
    let found = files.iter().find_map(|(file, read)| Some((*file, read.spread.as_ref()?)));
    let (file, row) = found?;
    let span = row.span();
    let SpreadRow { percent, src } = row.get_ref();
    let mut open = Open { reader, file };
    let percent = within(&mut open, &span, *percent, 0.0..=99.0);
    Some(Sourced::new(MassFraction::from_percent(percent), open.sourcing(src, span)))
}

/// The number, or a fault when it lies outside what is possible.
fn within(
    open: &mut Open<'_, '_>,
    span: &Range<usize>,
    value: f64,
    fits: std::ops::RangeInclusive<f64>,
) -> f64 {
    if !fits.contains(&value) {
        let range = format!("{} to {}", fits.start(), fits.end());
        open.fault_with(
            "kitchen-out-of-range",
            span.clone(),
            &value.to_string(),
            ("range", range.as_str()),
        );
    }
    value
}

/// Reads the rows of one file.
struct Desk<'d, 'r, 'a> {
    open: Open<'r, 'a>,
    seen: &'d mut BTreeSet<(&'static str, String)>,
    spread: Option<Sourced<MassFraction>>,
}

impl Desk<'_, '_, '_> {
    /// Puts every row in its place; gives the recipes that were read, for the check that needs all
    /// files.
    fn rows(&mut self, kitchen: &mut Kitchen, read: KitchenFile) -> Vec<(Range<usize>, String)> {
        let larder = &mut kitchen.larder;
        self.each(read.retention, "retention", |desk, span, row: RetentionRow| {
            let id = row.id.clone();
            larder.retentions.insert(id.clone(), desk.retention(span, row));
            id
        });
        self.each(read.spoon, "spoon", |desk, span, row: SpoonRow| {
            let id = row.id.clone();
            larder.spoons.extend(desk.spoon(span, row).map(|spoon| (id.clone(), spoon)));
            id
        });
        self.each(read.keeping, "keeping", |desk, span, row: KeepingRow| {
            let id = row.id.clone();
            let rule = desk.keeping(span, row);
            larder.keeping.retain(|known| known.id != id);
            larder.keeping.push(rule);
            id
        });
        larder.keeping.sort_by(|a, b| a.id.cmp(&b.id));
        self.each(read.note, "note", |desk, span, row: NoteRow| {
            let id = row.id.clone();
            let note = desk.note(span, row);
            larder.notes.retain(|known| known.id != id);
            larder.notes.push(note);
            id
        });
        larder.notes.sort_by(|a, b| a.id.cmp(&b.id));
        if let Some(row) = read.stove {
            larder.stove = Some(self.stove(row.span(), row.into_inner()));
        }
        if let Some(row) = read.dried_to {
            let span = row.span();
            kitchen.dried_to = self.dried_to(span, row.into_inner()).or(kitchen.dried_to.take());
        }
        self.drying(kitchen, read.yields, read.target, read.warmth);
        self.each(read.growth, "growth", |desk, span, row: GrowthRow| {
            let id = row.id.clone();
            kitchen.growth.insert(id.clone(), desk.growth(span, row));
            id
        });
        self.recipes(kitchen, read.recipe)
    }

    /// Reads the rows of a table and marks where each stands; two of one name are a fault.
    fn each<T>(
        &mut self,
        rows: Vec<Spanned<T>>,
        table: &'static str,
        mut put: impl FnMut(&mut Self, Range<usize>, T) -> String,
    ) {
        for row in rows {
            let span = row.span();
            let id = put(self, span.clone(), row.into_inner());
            self.open.mark(&span, table, &id, "");
            if !self.seen.insert((table, id.clone())) {
                self.open.fault("kitchen-twice", span, &id);
            }
        }
    }

    fn recipes(
        &mut self,
        kitchen: &mut Kitchen,
        rows: Vec<Spanned<RecipeRow>>,
    ) -> Vec<(Range<usize>, String)> {
        let mut read = Vec::new();
        self.each(rows, "recipe", |desk, span, row: RecipeRow| {
            let id = row.id.clone();
            read.push((span.clone(), id.clone()));
            let recipe = desk.recipe(span, row);
            kitchen.recipes.extend(recipe.map(|recipe| (id.clone(), recipe)));
            id
        });
        read
    }

    /// The recipe, or its faults at the row's place.
    fn recipe(&mut self, span: Range<usize>, row: RecipeRow) -> Option<Recipe> {
        let from = self.open.sourcing(&row.src, span.clone());
        let recipe = Recipe {
            id: row.id,
            name: row.name,
            form: row.form,
            serving: row.serving,
            times_a_day: row.times_a_day,
            steps: row.step,
            from,
        };
        match recipe.checked() {
            Ok(recipe) => Some(recipe),
            Err(faults) => {
                let here = place(self.open.file, &span);
                for fault in faults {
                    let at = ground::Place {
                        file: here.file.clone(),
                        line: here.line,
                        column: here.column,
                        ..fault.at.clone()
                    };
                    self.open.reader.add_fault(Fault { at, ..fault });
                }
                None
            }
        }
    }

    fn retention(&mut self, span: Range<usize>, row: RetentionRow) -> Retention {
        Retention {
            says: row.says,
            keeps: Holds(within(&mut self.open, &span, row.ml_per_g, 0.0..=20.0)),
            basis: row.of,
            from: self.open.sourcing(&row.src, span),
        }
    }

    fn spoon(&mut self, span: Range<usize>, row: SpoonRow) -> Option<SpoonWeight> {
        if row.measure.volume(row.of).is_none() {
            self.open.fault("kitchen-no-such-measure", span.clone(), row.measure.word());
        }
        if self.spread.is_none() {
            self.open.fault("missing-field", span.clone(), "spread");
        }
        let grams = within(&mut self.open, &span, row.g, 0.01..=1000.0);
        let from = self.open.sourcing(&row.src, span);
        Some(SpoonWeight {
            what: row.what,
            measure: row.measure,
            system: row.of,
            weight: Mass::from_g(grams),
            spread: self.spread.clone()?,
            from,
        })
    }

    fn stove(&mut self, span: Range<usize>, row: StoveRow) -> Stove {
        let open = within(&mut self.open, &span, row.open_ml_per_min, 0.1..=200.0);
        let covered = within(&mut self.open, &span, row.covered_percent, 0.0..=100.0);
        let mut from = |src: &Src| self.open.sourcing(src, span.clone());
        Stove {
            open: Sourced::new(EvaporationRate::from_ml_per_minute(open), from(&row.open_src)),
            covered: Sourced::new(Fraction::from_percent(covered), from(&row.covered_src)),
        }
    }

    fn keeping(&mut self, span: Range<usize>, row: KeepingRow) -> KeepingRule {
        let days = within(&mut self.open, &span, row.days, 0.0..=3650.0);
        KeepingRule {
            id: row.id,
            forms: row.forms,
            when: row.when,
            class: row.class,
            place: row.place,
            most: Duration::from_days(days),
            why: row.why,
            from: self.open.sourcing(&row.src, span),
        }
    }

    fn note(&mut self, span: Range<usize>, row: NoteRow) -> KitchenNote {
        KitchenNote {
            id: row.id,
            says: row.says,
            forms: row.forms,
            state: row.state,
            recipe: row.recipe.map(Spanned::into_inner),
            from: self.open.sourcing(&row.src, span),
        }
    }

    fn drying(
        &mut self,
        kitchen: &mut Kitchen,
        yields: Vec<Spanned<YieldRow>>,
        targets: Vec<Spanned<TargetRow>>,
        warmths: Vec<Spanned<WarmthRow>>,
    ) {
        self.each(yields, "yield", |desk, span, row: YieldRow| {
            let id = row.id.clone();
            kitchen.yields.insert(id.clone(), desk.yields(span, row));
            id
        });
        self.each(targets, "target", |desk, span, row: TargetRow| {
            let id = row.id.clone();
            let target = desk.target(span, row);
            kitchen.targets.extend(target.map(|target| (id.clone(), target)));
            id
        });
        self.each(warmths, "warmth", |desk, span, row: WarmthRow| {
            let id = row.id.clone();
            kitchen.warmths.insert(id.clone(), desk.warmth(span, row));
            id
        });
    }

    fn yields(&mut self, span: Range<usize>, row: YieldRow) -> DryingYield {
        let least = within(&mut self.open, &span, row.least_percent, 1.0..=100.0);
        let most = within(&mut self.open, &span, row.most_percent, least..=100.0);
        DryingYield {
            taxon: row.taxon,
            part: row.part,
            least: MassFraction::from_percent(least),
            most: MassFraction::from_percent(most),
            from: self.open.sourcing(&row.src, span),
        }
    }

    fn dried_to(&mut self, span: Range<usize>, row: DriedToRow) -> Option<Sourced<Moisture>> {
        let percent = within(&mut self.open, &span, row.moisture_percent, 0.0..=99.0);
        let from: Sourcing = self.open.sourcing(&row.src, span);
        let moisture = Moisture::of(MassFraction::from_percent(percent));
        moisture.known().map(|moisture| Sourced::new(*moisture, from))
    }

    fn target(&mut self, span: Range<usize>, row: TargetRow) -> Option<DryingTarget> {
        let least = within(&mut self.open, &span, row.least_percent, 0.0..=99.0);
        let most = within(&mut self.open, &span, row.most_percent, least..=99.0);
        let from = self.open.sourcing(&row.src, span);
        let share = MassFraction::from_percent;
        let range: Answer<MoistureRange> = MoistureRange::between(share(least), share(most));
        range.known().map(|moisture| DryingTarget {
            says: row.says,
            parts: row.parts,
            moisture: *moisture,
            from,
        })
    }

    fn warmth(&mut self, span: Range<usize>, row: WarmthRow) -> Warmth {
        let most = within(&mut self.open, &span, row.most_c, 0.0..=120.0);
        let least = row.least_c.map(|least| within(&mut self.open, &span, least, 0.0..=most));
        Warmth {
            says: row.says,
            least: least.map(Temperature::from_celsius),
            most: Temperature::from_celsius(most),
            from: self.open.sourcing(&row.src, span),
        }
    }

    fn growth(&mut self, span: Range<usize>, row: GrowthRow) -> Growth {
        let activity = within(&mut self.open, &span, row.activity_from, 0.0..=1.0);
        let ph = row.ph_above.map(|ph| within(&mut self.open, &span, ph, 0.0..=14.0));
        Growth {
            says: row.says,
            activity_from: WaterActivity(activity),
            ph_above: ph.map(Ph),
            from: self.open.sourcing(&row.src, span),
        }
    }
}
