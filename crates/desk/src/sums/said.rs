//! What was said becomes quantities; what does not fit is a fault at its field.

use ground::{
    AlcoholByVolume, Amount, Answer, Brix, Dimension, Fault, Faults, Length, Mass, MassFraction,
    Place, SaidUnit, Spoken, Substance, Temperature, Text, Unit, Volume,
};
use prepare::Density;
use prepare::alcohol::Strength;
use prepare::sugar::Sweetness;
use prepare::sums::SpiritKnown;

/// Two readings: both, or the faults of both.
pub(super) fn both<A, B>(
    one: Result<A, Faults>,
    other: Result<B, Faults>,
) -> Result<(A, B), Faults> {
    match (one, other) {
        (Ok(one), Ok(other)) => Ok((one, other)),
        (Err(faults), Ok(_)) | (Ok(_), Err(faults)) => Err(faults),
        (Err(one), Err(other)) => Err(one.into_iter().chain(other).collect()),
    }
}

/// Several readings: all, or the faults of all.
pub(super) fn each<T>(all: impl IntoIterator<Item = Result<T, Faults>>) -> Result<Vec<T>, Faults> {
    let mut faults = Faults::none();
    let read = all.into_iter().filter_map(|one| faults.note_all(one)).collect();
    faults.or(read)
}

/// A reading of something that may be left out.
pub(super) fn maybe<T>(
    said: Option<&Spoken>,
    read: impl FnOnce(&Spoken) -> Result<T, Faults>,
) -> Result<Option<T>, Faults> {
    said.map(read).transpose()
}

/// A fault at a field.
pub(super) fn fault(code: &str, field: &str, got: impl Into<String>) -> Fault {
    Fault::new(code, Place::entry("", "", field), got)
}

/// A range in the base unit of a dimension.
pub(super) fn range(field: &str, said: &Spoken, dimension: Dimension) -> Result<Amount, Faults> {
    said.resolve(dimension, None).map_err(|refusal| does_not_fit(field, said, refusal.why))
}

pub(super) fn volume(field: &str, said: &Spoken) -> Result<Volume, Faults> {
    above_zero(field, said, Dimension::Volume).map(Volume::from_ml)
}

pub(super) fn mass<S: Substance>(field: &str, said: &Spoken) -> Result<Mass<S>, Faults> {
    above_zero(field, said, Dimension::Mass).map(Mass::from_g)
}

/// A length along the map.
pub(super) fn way(field: &str, said: &Spoken) -> Result<Length, Faults> {
    above_zero(field, said, Dimension::Length).map(Length::from_mm)
}

/// A length up, or down when below zero.
pub(super) fn climb(field: &str, said: &Spoken) -> Result<Length, Faults> {
    number(field, said, Dimension::Length).map(Length::from_mm)
}

pub(super) fn temperature(field: &str, said: &Spoken) -> Result<Temperature, Faults> {
    number(field, said, Dimension::Temperature).map(Temperature::from_celsius)
}

/// A share of a mass; `82 %` and `82 % mass` both serve.
pub(super) fn share(field: &str, said: &Spoken) -> Result<MassFraction, Faults> {
    let plain = said.unit == SaidUnit::Fixed(Unit::Percent);
    let dimension = if plain { Dimension::Number } else { Dimension::MassShare };
    number(field, said, dimension).map(MassFraction::from_share)
}

/// What is known of a spirit: its strength by volume or by mass, or its density at a temperature.
pub(super) fn spirit(field: &str, said: &Spoken, at: Temperature) -> Result<SpiritKnown, Faults> {
    match dimension(said) {
        Some(Dimension::MassPerVolume) => {
            let g_per_ml = above_zero(field, said, Dimension::MassPerVolume)?;
            Ok(SpiritKnown::Density(Density::from_kg_per_m3(1000.0 * g_per_ml), at))
        }
        Some(Dimension::MassShare) => share(field, said).map(SpiritKnown::ByMass),
        Some(Dimension::Number) => {
            let why = Text::new("sums-percent-of-what").with("written", said.written.as_str());
            Err(does_not_fit(field, said, why))
        }
        _ => number(field, said, Dimension::AlcoholShare)
            .map(|share| SpiritKnown::ByVolume(AlcoholByVolume::from_percent(100.0 * share))),
    }
}

/// The strength of a spirit.
pub(super) fn strength(field: &str, said: &Spoken) -> Result<Answer<Strength>, Faults> {
    let room = Temperature::from_celsius(20.0);
    spirit(field, said, room).map(|known| match known {
        SpiritKnown::ByVolume(percent) => Strength::by_volume(percent),
        SpiritKnown::ByMass(share) => Strength::by_mass(share),
        SpiritKnown::Density(density, at) => Strength::from_density(density, at),
    })
}

/// A sweetness, in degrees Brix or per cent of the mass.
pub(super) fn sweetness(field: &str, said: &Spoken) -> Result<Answer<Sweetness>, Faults> {
    if dimension(said) == Some(Dimension::Sweetness) {
        let degrees = number(field, said, Dimension::Sweetness)?;
        return Ok(Sweetness::of(Brix::from_degrees(degrees)));
    }
    share(field, said).map(Sweetness::by_mass)
}

fn dimension(said: &Spoken) -> Option<Dimension> {
    match said.unit {
        SaidUnit::Fixed(unit) => Some(unit.dimension()),
        SaidUnit::Kitchen(_) => None,
    }
}

/// A single number in the base unit of a dimension.
fn number(field: &str, said: &Spoken, dimension: Dimension) -> Result<f64, Faults> {
    let amount = range(field, said, dimension)?;
    if amount.is_exact() {
        return Ok(amount.low);
    }
    Err(fault("one-number-wanted", field, said.written.as_str()).into())
}

fn above_zero(field: &str, said: &Spoken, dimension: Dimension) -> Result<f64, Faults> {
    let value = number(field, said, dimension)?;
    if value > 0.0 {
        return Ok(value);
    }
    Err(fault("amount-not-above-zero", field, said.written.as_str()).into())
}

fn does_not_fit(field: &str, said: &Spoken, why: Text) -> Faults {
    fault("unit-does-not-fit", field, said.written.as_str()).with("why", why).into()
}
