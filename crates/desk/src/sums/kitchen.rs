//! Sums of the kitchen: spirit, syrup, drying, spoons and cups.

use super::said::{both, mass, maybe, share, spirit, strength, sweetness, temperature, volume};
use super::{SumResult, Worked, amount, result};
use ground::{
    AlcoholByVolume, Answer, Ethanol, Faults, Mass, MeasureSystem, Shown, Spoken, Temperature,
    Text, Unit, Volume,
};
use prepare::alcohol::{Dilution, Strength};
use prepare::sugar::Sugaring;
use prepare::sums::{self, SpiritSum};
use prepare::{Drying, KitchenAmount, Moisture};

/// The temperature at which strengths and volumes are measured unless somebody says otherwise.
const ROOM: Temperature = Temperature::from_celsius(20.0);

/// What is known of a spirit, and the ethanol in a volume of it.
pub(super) fn alcohol(
    strength: &Spoken,
    of: Option<&Spoken>,
    at: Option<&Spoken>,
) -> Result<Worked, Faults> {
    let at = maybe(at, |said| temperature("at", said))?.unwrap_or(ROOM);
    let known = spirit("strength", strength, at);
    let (known, of) = both(known, maybe(of, |said| volume("volume", said)))?;
    let Some(of) = of else {
        let sum = sums::spirit(known, at);
        return Ok(Worked::answered("sums-strength", sum, |sum| Worked::of(spirit_rows(&sum, at))));
    };
    let sum = sums::spirit(known, at)
        .and_then(|sum| ethanol_at(of, sum.by_volume, at).map(|ethanol| (sum, ethanol)));
    Ok(Worked::answered("sums-ethanol-in-it", sum, |(sum, ethanol)| {
        let asked = amount("sums-ethanol-in-it", ethanol.g(), Unit::Gram);
        Worked::of([asked].into_iter().chain(spirit_rows(&sum, at)))
    }))
}

/// The ethanol in a volume that is measured at a temperature.
fn ethanol_at(volume: Volume, strength: AlcoholByVolume, at: Temperature) -> Answer<Mass<Ethanol>> {
    Strength::by_volume(strength)
        .and_then(|strength| sums::volume_at(volume, strength, at, ROOM))
        .and_then(|volume| sums::ethanol_in(volume, strength))
}

fn spirit_rows(sum: &SpiritSum, at: Temperature) -> Vec<SumResult> {
    let mut density =
        amount("sums-density", sum.density.kg_per_m3() / 1000.0, Unit::GramPerMillilitre);
    density.what = density.what.amount("at", at.celsius(), Unit::Celsius);
    vec![
        amount("sums-strength", sum.by_volume.percent(), Unit::PercentVolume),
        amount("sums-strength-by-mass", sum.by_mass.percent(), Unit::PercentMass),
        density,
        amount("sums-ethanol-in-100-ml", sum.ethanol.g(), Unit::Gram),
    ]
}

/// Water that brings a spirit down to a strength.
pub(super) fn dilute(from: &Spoken, to: &Spoken, of: &Spoken) -> Result<Worked, Faults> {
    let strengths = both(strength("from", from), strength("to", to));
    let ((from, to), of) = both(strengths, volume("volume", of))?;
    let sum = from.and_then(|from| to.and_then(|to| sums::dilute(of, from, to)));
    Ok(Worked::answered("sums-water-to-add", sum, |sum| diluted(&sum)))
}

fn diluted(sum: &Dilution) -> Worked {
    let results = [
        amount("sums-water-to-add", sum.water_volume.ml(), Unit::Millilitre),
        amount("sums-water-by-weight", sum.water.g(), Unit::Gram),
        amount("sums-mixture", sum.volume.ml(), Unit::Millilitre),
        amount("sums-contraction", sum.contraction.ml(), Unit::Millilitre),
        amount(
            "sums-strength",
            sum.result.strength().volume_percent().percent(),
            Unit::PercentVolume,
        ),
    ];
    let shrinks = sum.contraction > Volume::ZERO;
    Worked::of(results)
        .note_if(shrinks, "sums-volumes-shrink")
        .note_if(!shrinks, "sums-volumes-grow")
        .note(Text::new("sums-at-20"))
}

/// Sugar that brings a liquid up to a sweetness.
pub(super) fn sugar(to: &Spoken, liquid: &Spoken, held: Option<&Spoken>) -> Result<Worked, Faults> {
    let masses = both(mass("liquid", liquid), maybe(held, |said| mass("held", said)));
    let (to, (liquid, held)) = both(sweetness("to", to), masses)?;
    let held = held.unwrap_or(Mass::ZERO);
    let sum = to.and_then(|to| sums::sugar_to_add(liquid, held, to));
    Ok(Worked::answered("sums-sugar-to-add", sum, |sum| sugared(&sum)))
}

fn sugared(sum: &Sugaring) -> Worked {
    let syrup = sums::syrup(sum.reached);
    let volume = syrup.density.volume_of(sum.mass);
    let activity = SumResult {
        what: Text::new("sums-water-activity"),
        value: syrup.activity.map(|activity| Shown::amount(activity.0, Unit::One)),
    };
    Worked::of([
        amount("sums-sugar-to-add", sum.add.g(), Unit::Gram),
        amount("sums-syrup-weighs", sum.mass.g(), Unit::Gram),
        amount("sums-syrup-measures", volume.ml(), Unit::Millilitre),
        amount("sums-sweetness", syrup.brix.degrees(), Unit::DegreesBrix),
        amount("sums-sugar-in-100-ml", syrup.sugar.0, Unit::Gram),
        activity,
    ])
    .note_if(sum.held_back, "sums-sugar-held-back")
    .note(Text::new("sums-liquid-is-water"))
}

/// What is left when herb is dried.
pub(super) fn dry(herb: &Spoken, from: &Spoken, to: &Spoken) -> Result<Worked, Faults> {
    let shares = both(share("from", from), share("to", to));
    let (herb, (from, to)) = both(mass("herb", herb), shares)?;
    let sum = Moisture::of(from)
        .and_then(|from| Moisture::of(to).and_then(|to| Drying::of(herb, from, to)));
    Ok(Worked::answered("sums-dried", sum, |sum| {
        Worked::of([
            amount("sums-dried", sum.dried.g(), Unit::Gram),
            amount("sums-water-lost", sum.water_lost.g(), Unit::Gram),
            amount("sums-fresh-to-dried", sum.fresh_to_dried, Unit::One),
            amount("sums-solids", sum.solids.g(), Unit::Gram),
        ])
        .note(Text::new("sums-stop-drying"))
    }))
}

/// A measure in millilitres and in the measures of every kitchen.
pub(super) fn measure(said: &Spoken, kitchen: Option<MeasureSystem>) -> Result<Worked, Faults> {
    if !said.amount.is_exact() {
        return Err(super::said::fault("one-number-wanted", "said", said.written.as_str()).into());
    }
    Ok(Worked::answered("sums-volume", sums::measure(said, kitchen), |sum| {
        let asked = amount("sums-volume", sum.volume.ml(), Unit::Millilitre);
        let elsewhere = sum.elsewhere.iter().map(|(system, same)| in_kitchen(*system, *same));
        Worked::of([asked].into_iter().chain(elsewhere)).note(Text::new("sums-nearest-quarter"))
    }))
}

fn in_kitchen(system: MeasureSystem, same: KitchenAmount) -> SumResult {
    let says = Text::new(format!("sums-kitchen-{}", same.measure.word().replace(' ', "-")))
        .with("quarters", same.quarters)
        .with("written", quarters(same.quarters));
    let kitchen = Text::new(format!("measures-{}", system.word()));
    let mut row = result("sums-in-kitchen", Shown::Words(says));
    row.what = row.what.with("kitchen", kitchen);
    row
}

/// Quarters as a cook writes them: `1½`.
fn quarters(quarters: u32) -> String {
    let part = match quarters % 4 {
        1 => "¼",
        2 => "½",
        3 => "¾",
        _ => "",
    };
    match quarters / 4 {
        0 => part.to_owned(),
        whole => format!("{whole}{part}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(words: &str) -> Spoken {
        words.parse().unwrap()
    }

    fn number(worked: &Worked, what: &str) -> f64 {
        let row = worked.results.iter().find(|row| row.what.id == what).unwrap();
        match row.value.known() {
            Some(Shown::Amount(value, _)) => value.get(),
            other => panic!("{other:?}"),
        }
    }

    /// OIML R 22: half a litre of 96 % vol gives 800 ml of 60 % vol with 324.2 ml of water; adding
    /// volumes would say 300.
    #[test]
    fn spirit_is_let_down_by_weight_and_not_by_volume() {
        let worked = dilute(&said("96 % vol"), &said("60 % vol"), &said("500 ml")).unwrap();
        let is = |what, published: f64| (number(&worked, what) - published).abs() < 0.05;
        assert!(is("sums-water-to-add", 324.2));
        assert!(is("sums-mixture", 800.0));
        assert!(is("sums-contraction", 24.2));
    }

    #[test]
    fn what_cannot_be_is_refused_and_what_does_not_fit_is_a_fault() {
        let up = dilute(&said("40 % vol"), &said("60 % vol"), &said("1 l")).unwrap();
        assert!(up.results.iter().all(|row| row.value.known().is_none()));
        let faults = dilute(&said("96 %"), &said("60 g"), &said("0 ml")).err().unwrap();
        let codes: Vec<_> = faults.iter().map(|fault| fault.code.as_str()).collect();
        assert_eq!(codes, ["unit-does-not-fit", "unit-does-not-fit", "amount-not-above-zero"]);
    }

    #[test]
    fn a_warm_litre_holds_less_ethanol_than_one_at_20_degrees() {
        let grams = |at: &str| {
            let worked = alcohol(&said("40 % vol"), Some(&said("1 l")), Some(&said(at))).unwrap();
            number(&worked, "sums-ethanol-in-it")
        };
        // OIML R 22: pure ethanol weighs 789.24 g a litre at 20 °C.
        assert!((grams("20 °C") - 0.4 * 789.24).abs() < 0.005);
        assert!(grams("30 °C") < grams("20 °C"));
    }

    #[test]
    fn a_hydrometer_tells_the_strength() {
        let plain = alcohol(&said("40 % vol"), None, None).unwrap();
        let density = format!("{} g/ml", number(&plain, "sums-density"));
        let read = alcohol(&said(&density), None, None).unwrap();
        assert!((number(&read, "sums-strength") - 40.0).abs() < 1e-6);
    }

    #[test]
    fn syrup_stops_where_water_is_full_of_sugar() {
        let worked = sugar(&said("70 °Bx"), &said("1 kg"), None).unwrap();
        assert!(worked.notes.iter().any(|note| note.id == "sums-sugar-held-back"));
        let sixty = sugar(&said("60 % mass"), &said("480 g"), None).unwrap();
        assert!((number(&sixty, "sums-sugar-to-add") - 720.0).abs() < 1e-9);
        let sweet = sugar(&said("60 % mass"), &said("480 g"), Some(&said("30 g"))).unwrap();
        assert!(number(&sweet, "sums-sugar-to-add") < 720.0);
    }

    #[test]
    fn solids_are_what_drying_leaves_alone() {
        let worked = dry(&said("1 kg"), &said("80 %"), &said("10 % mass")).unwrap();
        assert!((number(&worked, "sums-dried") - 200.0 / 0.9).abs() < 1e-9);
        assert!((number(&worked, "sums-solids") - 200.0).abs() < 1e-9);
    }

    #[test]
    fn a_cup_needs_a_kitchen() {
        let nobody = measure(&said("1 cup"), None).unwrap();
        assert!(nobody.results.iter().all(|row| row.value.known().is_none()));
        let metric = measure(&said("1½ cups"), Some(MeasureSystem::Metric)).unwrap();
        assert_eq!(number(&metric, "sums-volume"), 375.0);
        assert!(measure(&said("1–2 cups"), Some(MeasureSystem::Metric)).is_err());
    }

    #[test]
    fn quarters_are_written_as_a_cook_writes_them() {
        assert_eq!([1, 4, 6, 11].map(quarters), ["¼", "1", "1½", "2¾"]);
    }
}
