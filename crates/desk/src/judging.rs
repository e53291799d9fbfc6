//! From entries to the looks that plants are judged by.

use ground::Finite;
use identify::{Level, Look, Reader, Seen};
use jiff::civil::DateTime;
use journal::{LooksBySpecimen, Saw};

/// The looks that were written down of all specimens, as judging takes them.
pub(crate) fn looks(written: &LooksBySpecimen, level: impl Fn(&str) -> Level) -> Vec<Look> {
    let one = |at: Option<DateTime>, look: &journal::Look| {
        Some(Look {
            character: look.character.clone(),
            seen: seen(&look.saw)?,
            reader: Reader { name: look.reader.clone(), level: level(&look.reader) },
            time: at?,
            specimen: look.specimen.clone(),
            blind: look.candidates_hidden,
        })
    };
    written.values().flatten().filter_map(|(_, at, look)| one(*at, look)).collect()
}

/// What was seen, as judging takes it.
pub(crate) fn seen(saw: &Saw) -> Option<Seen> {
    Some(match saw {
        Saw::State(state) => Seen::State(state.clone()),
        Saw::OneOf(states) => Seen::OneOf(states.clone()),
        Saw::Length(low, high) => {
            Seen::Measured { low: Finite::new(low.mm())?, high: Finite::new(high.mm())? }
        }
        Saw::Count(count) => Seen::Counted(*count),
        Saw::NotThere => Seen::NotThere,
        Saw::CannotTell => Seen::CannotTell,
    })
}

/// What was in hand, as judging takes it.
pub(crate) fn material(material: journal::Material) -> identify::Material {
    match material {
        journal::Material::Growing => identify::Material::Living,
        journal::Material::Photograph => identify::Material::Photograph,
        journal::Material::Bought => identify::Material::Bought,
        journal::Material::Chopped => identify::Material::Chopped,
        journal::Material::Dried => identify::Material::Dried,
    }
}
