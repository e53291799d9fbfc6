//! From the tables of a file to entries of the journal.

use super::emergency::said;
use super::file::{Row, Said, Source};
use super::names::Names;
use super::shape::{
    AnswersTable, BatchTable, ConfirmationTable, ConsentTable, CorrectionTable, FlagTable,
    LooksTable, LotTable, OutingFile, ParticipantTable, PermissionTable, ServingTable, SiteTable,
    SortingTable, StandTable, SurveyTable, TakeTable, WeighingTable,
};
use ground::{Condition, ContentId, Fault, Faults, Fresh, Mass, MeasureSystem, Part, Place, Text};
use jiff::civil::DateTime;
use journal::{
    Answers, Batch, Confirmation, Consent, Correction, Entry, Flag, Found, Given, Journal, Look,
    Lot, Material, Participant, Payload, Permission, Plot, Saw, Sealed, Serving, Site, Sorting,
    Stand, Survey, Take, Weighing, Word,
};
use std::collections::BTreeMap;
use toml::Spanned;

/// Reads the entries of one file.
pub(crate) struct Entries<'a> {
    pub(crate) source: &'a Source<'a>,
    pub(crate) names: &'a Names<'a>,
    pub(crate) kitchen: Option<MeasureSystem>,
    pub(crate) leader: &'a str,
    pub(crate) faults: &'a mut Faults,
    pub(crate) journal: &'a mut Journal,
}

impl Entries<'_> {
    /// Reads every table that records something.
    pub(crate) fn read(&mut self, file: &OutingFile) {
        self.each("site", &file.site, |t| t.name.get_ref(), site);
        self.each("permission", &file.permission, |t| t.site.get_ref(), permission);
        self.each("stand", &file.stand, |t| t.name.get_ref(), stand);
        self.each("survey", &file.survey, |t| t.stand.get_ref(), survey);
        self.each("participant", &file.participant, |t| t.name.get_ref(), participant);
        self.each("answers", &file.answers, |t| t.participant.get_ref(), answers);
        self.each("take", &file.take, |t| t.name.get_ref(), take);
        self.each("lot", &file.lot, |t| t.name.get_ref(), lot);
        self.each("sorting", &file.sorting, |t| t.lot.get_ref(), sorting);
        self.each("batch", &file.batch, |t| t.name.get_ref(), batch);
        self.each("weighing", &file.weighing, |t| t.of.get_ref(), weighing);
        self.each("confirmation", &file.confirmation, |t| t.make.get_ref(), confirmations);
        self.each("flag", &file.flag, |t| t.make.get_ref(), flag);
        self.each("serving", &file.serving, |t| t.batch.get_ref(), servings);
        self.each("looks", &file.looks, |t| t.specimen.get_ref(), looks);
        self.each("correction", &file.correction, |t| t.of.get_ref(), correction);
    }

    fn each<'t, T, M: IntoIterator<Item = Made>>(
        &mut self,
        table: &'static str,
        rows: &'t [T],
        name: impl Fn(&'t T) -> &'t str,
        make: impl Fn(&mut Row<'_>, &Names<'_>, &'t T) -> M,
    ) {
        for written in rows {
            let mut row =
                Row::new(self.source, self.kitchen, table, name(written), &mut *self.faults);
            for made in make(&mut row, self.names, written) {
                let by = made.by.unwrap_or_else(|| self.leader.to_owned());
                self.journal.add(Entry { at: made.at, by, what: made.what });
            }
        }
    }
}

/// An entry in the making; by the leader unless somebody else is named.
pub(crate) struct Made {
    at: Option<DateTime>,
    by: Option<String>,
    what: Payload,
}

impl Made {
    fn lasting(what: Payload) -> Self {
        Self { at: None, by: None, what }
    }

    fn at(at: DateTime, what: Payload) -> Self {
        Self { at: Some(at), by: None, what }
    }
}

fn site(row: &mut Row<'_>, names: &Names<'_>, table: &SiteTable) -> Option<Made> {
    let land = names.land(row, "land", &table.land);
    let jurisdiction = names.jurisdiction(row, "jurisdiction", &table.jurisdiction);
    let latitude = table.latitude.as_ref().map(|said| row.degrees("latitude", said, 90.0));
    let longitude = table.longitude.as_ref().map(|said| row.degrees("longitude", said, 180.0));
    let consents: Vec<_> = table.consents.iter().map(|table| consent(row, names, table)).collect();
    let consents: Option<Vec<_>> = consents.into_iter().collect();
    Some(Made::lasting(Payload::Site(Site {
        name: table.name.get_ref().clone(),
        called: table.called.clone(),
        landholder: table.landholder.clone(),
        land: land?,
        jurisdiction: jurisdiction?,
        latitude: maybe(latitude)?,
        longitude: maybe(longitude)?,
        grid: said(table.grid.as_ref()),
        road: said(table.road.as_ref()),
        way_in: said(table.way_in.as_ref()),
        public_right: table.public_right,
        consents: consents?,
    })))
}

fn consent(row: &mut Row<'_>, names: &Names<'_>, table: &ConsentTable) -> Option<Consent> {
    let rule = names.land_rule(row, "consents", &table.rule);
    let until = row.date("consents", &table.until);
    Some(Consent { rule: rule?, from: table.from.clone(), until: until? })
}

fn permission(row: &mut Row<'_>, names: &Names<'_>, table: &PermissionTable) -> Option<Made> {
    let site = names.site(row, "site", &table.site);
    let given = row.date("given", &table.given);
    let until = row.date("until", &table.until);
    let purposes = all(&table.purposes, |said| {
        names.purpose(row, "purposes", said).map(|purpose| purpose.word().to_owned())
    });
    let taxa = all(&table.plants, |said| names.plant(row, "plants", said));
    let parts = all(&table.parts, |said| row.word::<Part>("parts", said));
    let at_most_g = table.at_most.as_ref().map(|said| row.mass::<Fresh>("at-most", said));
    Some(Made::lasting(Payload::Permission(Permission {
        site: site?,
        from: table.from.clone(),
        given: given?,
        until: until?,
        purposes: purposes?,
        taxa: taxa?,
        parts: parts?,
        at_most_g: maybe(at_most_g)?,
    })))
}

fn stand(row: &mut Row<'_>, names: &Names<'_>, table: &StandTable) -> Option<Made> {
    let site = names.site(row, "site", &table.site);
    let taxon = names.plant(row, "plant", &table.plant);
    let area = table.area.as_ref().map(|said| row.area("area", said));
    let mut hazards = BTreeMap::new();
    for (hazard, said) in &table.hazards {
        let known = names.hazard(row, hazard, said);
        let far = row.length("hazards", said);
        if let (Some(()), Some(far)) = (known, far) {
            hazards.insert(hazard.clone(), far);
        }
    }
    let without = all(&table.without, |said| {
        names.hazard(row, said.get_ref(), said).map(|()| said.get_ref().clone())
    });
    let latitude = table.latitude.as_ref().map(|said| row.degrees("latitude", said, 90.0));
    let longitude = table.longitude.as_ref().map(|said| row.degrees("longitude", said, 180.0));
    Some(Made::lasting(Payload::Stand(Stand {
        name: table.name.get_ref().clone(),
        site: site?,
        taxon: taxon?,
        area_m2: maybe(area)?,
        hazards_mm: hazards,
        without: without?,
        in_water: table.in_water,
        latitude: maybe(latitude)?,
        longitude: maybe(longitude)?,
    })))
}

fn survey(row: &mut Row<'_>, names: &Names<'_>, table: &SurveyTable) -> Option<Made> {
    let stand = names.stand(row, "stand", &table.stand);
    let part = row.word("part", &table.part);
    let on = row.date("on", &table.on);
    let plots_in_stand = whole(row, "plots-in-stand", &table.plots_in_stand, 1_000_000);
    let pieces: Option<Vec<_>> = table
        .pieces
        .iter()
        .map(|count| whole(row, "pieces", count, 1_000_000).map(Plot::Pieces))
        .collect();
    let weights = all(&table.weights, |said| row.mass("weights", said).map(Plot::Grams));
    let piece_g = all(&table.piece_weights, |said| row.mass("piece-weights", said));
    let mut plots = pieces?;
    plots.extend(weights?);
    let (on, survey) = (
        on?,
        Survey {
            stand: stand?,
            part: part?,
            plots_in_stand: plots_in_stand?,
            plots,
            piece_g: piece_g?,
        },
    );
    let Place { file, line, column, .. } = row.place("", &table.stand.span());
    for fault in crate::plan::surveyed(on, &survey).err().into_iter().flatten() {
        let at = Place { file: file.clone(), line, column, ..fault.at.clone() };
        row.add(Fault { at, ..fault });
    }
    Some(Made {
        at: Some(on.at(0, 0, 0, 0)),
        by: Some(table.by.clone()),
        what: Payload::Survey(survey),
    })
}

fn participant(_: &mut Row<'_>, _: &Names<'_>, table: &ParticipantTable) -> Option<Made> {
    let (name, called) = (table.name.get_ref().clone(), table.called.clone());
    Some(Made::lasting(Payload::Participant(Participant { name, called })))
}

fn answers(row: &mut Row<'_>, names: &Names<'_>, table: &AnswersTable) -> Option<Made> {
    let participant = names.participant(row, "participant", &table.participant);
    let age = table.age.as_ref().map(|age| whole(row, "age", age, 130));
    let body_mass_g = table.weight.as_ref().map(|said| body(row, said));
    let mut said = BTreeMap::new();
    for (question, answer) in &table.said {
        let question = question.parse::<Condition>().map_err(|list| {
            row.fault_with("unknown-question", "said", answer, ("list", list));
        });
        if let (Ok(question), Some(word)) = (question, word(row, "said", answer)) {
            said.insert(question, word);
        }
    }
    let rest = match &table.rest {
        Some(said) => word(row, "rest", said)?,
        None => Word::Unanswered,
    };
    Some(Made::lasting(Payload::Answers(Sealed::new(Answers {
        participant: participant?,
        age: maybe(age)?,
        body_mass_g: maybe(body_mass_g)?,
        said,
        rest,
    }))))
}

/// The mass of a body: from one kilogram up to 400.
fn body(row: &mut Row<'_>, said: &Said) -> Option<Mass> {
    let mass: Mass = row.mass("weight", said)?;
    if (1.0..=400.0).contains(&mass.kg()) {
        return Some(mass);
    }
    row.fault_with("amount-out-of-range", "weight", said, ("most", "400 kg"));
    None
}

fn word(row: &mut Row<'_>, field: &str, said: &Said) -> Option<Word> {
    Some(match said.get_ref().as_str() {
        "yes" => Word::Yes,
        "no" => Word::No,
        "rather-not" => Word::RatherNot,
        "unanswered" => Word::Unanswered,
        _ => {
            row.fault_with(
                "unknown-word",
                field,
                said,
                ("known", "yes, no, rather-not, unanswered"),
            );
            return None;
        }
    })
}

fn take(row: &mut Row<'_>, names: &Names<'_>, table: &TakeTable) -> Option<Made> {
    let stand = names.stand(row, "stand", &table.stand);
    let part = row.word("part", &table.part);
    let amount_g = row.mass("amount", &table.amount);
    let at = row.moment("at", &table.at);
    Some(Made::at(
        at?,
        Payload::Take(Take {
            name: table.name.get_ref().clone(),
            stand: stand?,
            part: part?,
            amount_g: amount_g?,
            pattern: table.pattern.as_ref().map(|said| said.get_ref().clone()),
            stages: words(&table.stages),
            pickers: words(&table.pickers),
        }),
    ))
}

fn lot(row: &mut Row<'_>, names: &Names<'_>, table: &LotTable) -> Option<Made> {
    let takes = all(&table.takes, |said| names.take(row, "takes", said))?;
    Some(Made::lasting(Payload::Lot(Lot { name: table.name.get_ref().clone(), takes })))
}

fn sorting(row: &mut Row<'_>, names: &Names<'_>, table: &SortingTable) -> Option<Made> {
    let lot = names.lot(row, "lot", &table.lot);
    let at = row.moment("at", &table.at);
    let pieces = whole(row, "pieces", &table.pieces, 10_000_000);
    let found: Option<Vec<_>> = table
        .found
        .iter()
        .map(|found| {
            let pieces = whole(row, "found", &found.pieces, 10_000_000)?;
            let harmless = names.is_harmless(&found.what);
            Some(Found { what: found.what.clone(), pieces, harmless })
        })
        .collect();
    Some(Made::at(
        at?,
        Payload::Sorting(Sorting {
            lot: lot?,
            sorters: words(&table.sorters),
            pieces: pieces?,
            every_piece: table.every_piece,
            found: found?,
        }),
    ))
}

fn batch(row: &mut Row<'_>, names: &Names<'_>, table: &BatchTable) -> Option<Made> {
    let make = names.make(row, "make", &table.make);
    let lots = all(&table.lots, |said| names.lot(row, "lots", said));
    let at = row.moment("at", &table.at);
    Some(Made::at(
        at?,
        Payload::Batch(Batch {
            name: table.name.get_ref().clone(),
            make: make?,
            lots: lots?,
            stages: words(&table.stages),
            cook: table.cook.clone(),
        }),
    ))
}

fn weighing(row: &mut Row<'_>, names: &Names<'_>, table: &WeighingTable) -> Option<Made> {
    let of = names.lot_or_batch(row, "of", &table.of);
    let at = row.moment("at", &table.at);
    let mass_g = table.mass.as_ref().map(|said| row.mass("mass", said));
    let volume_ml = table.volume.as_ref().map(|said| row.volume("volume", said));
    if table.mass.is_none() && table.volume.is_none() {
        row.fault("nothing-weighed", "mass", &table.of);
    }
    Some(Made::at(
        at?,
        Payload::Weighing(Weighing {
            of: of?,
            what: table.what.get_ref().clone(),
            mass_g: maybe(mass_g)?,
            volume_ml: maybe(volume_ml)?,
        }),
    ))
}

fn servings(row: &mut Row<'_>, names: &Names<'_>, table: &ServingTable) -> Vec<Made> {
    let batch = names.batch(row, "batch", &table.batch);
    let at = row.moment("at", &table.at);
    let servings = whole(row, "servings", &table.servings, 1000);
    let people = all(&table.to, |said| names.participant(row, "to", said));
    let (Some(batch), Some(at), Some(servings), Some(people)) = (batch, at, servings, people)
    else {
        return Vec::new();
    };
    let made = |participant| {
        let (batch, taken_home) = (batch.clone(), table.taken_home);
        Made::at(at, Payload::Serving(Serving { batch, participant, servings, taken_home }))
    };
    people.into_iter().map(made).collect()
}

fn confirmations(row: &mut Row<'_>, names: &Names<'_>, table: &ConfirmationTable) -> Vec<Made> {
    let make = names.make(row, "make", &table.make);
    let at = row.moment("at", &table.at);
    let people = all(&table.participants, |said| names.participant(row, "participants", said));
    let given = given(row, table);
    let (Some(make), Some(at), Some(people), Some(given)) = (make, at, people, given) else {
        return Vec::new();
    };
    let made = |participant| {
        let said = Confirmation { make: make.clone(), participant, given: given.clone() };
        Made { at: Some(at), by: Some(table.by.clone()), what: Payload::Confirmation(said) }
    };
    people.into_iter().map(made).collect()
}

fn given(row: &mut Row<'_>, table: &ConfirmationTable) -> Option<Given> {
    match (&table.at_most, &table.clinician) {
        (Some(most), _) => whole(row, "at-most", most, 1000).map(Given::AtMost),
        (None, None) => Some(Given::AsProposed),
        (None, Some(clinician)) => Some(Given::ClinicianSaid {
            role: clinician.role.clone(),
            on: row.date("clinician", &clinician.on)?,
            preparation: clinician.preparation.clone(),
        }),
    }
}

fn flag(row: &mut Row<'_>, names: &Names<'_>, table: &FlagTable) -> Option<Made> {
    let make = names.make(row, "make", &table.make);
    let participant = names.participant(row, "participant", &table.participant);
    let most = whole(row, "at-most", &table.at_most, 1000);
    let days = whole(row, "days", &table.days, 1000);
    let at = row.moment("at", &table.at);
    let flag = Flag {
        make: make?,
        participant: participant?,
        basis: table.basis.clone(),
        servings_a_day: most?,
        days: days?,
    };
    Some(Made { at: Some(at?), by: Some(table.by.clone()), what: Payload::Flag(flag) })
}

fn looks(row: &mut Row<'_>, names: &Names<'_>, table: &LooksTable) -> Vec<Made> {
    let stand = names.stand(row, "stand", &table.stand);
    let reader = names.reader(row, "reader", &table.reader);
    let at = row.moment("at", &table.at);
    let material = match &table.material {
        None => Some(Material::Growing),
        Some(said) => material(row, said),
    };
    let saw: Vec<_> = table
        .saw
        .iter()
        .filter_map(|(character, said)| Some((character, names.saw(row, character, said)?)))
        .collect();
    let (Some(stand), Some(reader), Some(at), Some(material)) = (stand, reader, at, material)
    else {
        return Vec::new();
    };
    let made = |(character, saw): (&String, Saw)| {
        let look = Look {
            specimen: table.specimen.get_ref().clone(),
            stand: stand.clone(),
            reader: reader.clone(),
            character: character.clone(),
            saw,
            material,
            candidates_hidden: !table.candidates_shown,
        };
        Made { at: Some(at), by: Some(reader.clone()), what: Payload::Look(look) }
    };
    saw.into_iter().map(made).collect()
}

/// What was in hand, by its word.
pub(crate) fn material(row: &mut Row<'_>, said: &Said) -> Option<Material> {
    Some(match said.get_ref().as_str() {
        "growing" => Material::Growing,
        "photograph" => Material::Photograph,
        "bought" => Material::Bought,
        "chopped" => Material::Chopped,
        "dried" => Material::Dried,
        _ => {
            let list = "growing, photograph, bought, chopped, dried";
            row.fault_with("unknown-word", "material", said, ("known", list));
            return None;
        }
    })
}

fn correction(row: &mut Row<'_>, _: &Names<'_>, table: &CorrectionTable) -> Option<Made> {
    let at = row.moment("at", &table.at);
    let of = match ContentId::read(table.of.get_ref()) {
        Some(of) => of,
        None => {
            row.fault("no-such-entry", "of", &table.of);
            return None;
        }
    };
    let why = Text::new("correction-because").with("why", table.why.as_str());
    Some(Made {
        at: Some(at?),
        by: Some(table.by.clone()),
        what: Payload::Correction(Correction { of, why }),
    })
}

/// A whole number from zero up to a most.
pub(crate) fn whole(row: &mut Row<'_>, field: &str, said: &Spanned<i64>, most: u32) -> Option<u32> {
    let fits = u32::try_from(*said.get_ref()).ok().filter(|value| *value <= most);
    if fits.is_none() {
        let written = Spanned::new(said.span(), said.get_ref().to_string());
        row.fault_with("number-out-of-range", field, &written, ("most", most));
    }
    fits
}

/// A whole number from one up to a most.
pub(crate) fn counted(
    row: &mut Row<'_>,
    field: &str,
    said: &Spanned<i64>,
    most: u32,
) -> Option<u32> {
    let count = whole(row, field, said, most)?;
    if count == 0 {
        row.fault("nothing-counted", field, &Spanned::new(said.span(), count.to_string()));
    }
    (count > 0).then_some(count)
}

/// Reads every one of a list, noting the faults of all before giving up.
pub(crate) fn all<T>(said: &[Said], mut read: impl FnMut(&Said) -> Option<T>) -> Option<Vec<T>> {
    let read: Vec<_> = said.iter().map(&mut read).collect();
    read.into_iter().collect()
}

/// A field that may be left out: nothing when it was written and could not be read.
pub(crate) fn maybe<T>(read: Option<Option<T>>) -> Option<Option<T>> {
    match read {
        None => Some(None),
        Some(None) => None,
        Some(Some(value)) => Some(Some(value)),
    }
}

fn words(said: &[Said]) -> Vec<String> {
    said.iter().map(|word| word.get_ref().clone()).collect()
}
