//! The pot or jar: what each step does to the grams in it.

use super::Composition;
use super::batch::{Batch, Corner, Item, ServingSize, retention};
use crate::alcohol::Spirit;
use crate::alcohol::with_amount;
use crate::heat::known_time;
use crate::refuse::{Known, refuse};
use crate::sugar::{Sugaring, Sweetness, known_sugaring};
use crate::{HerbBasis, Lid, Moisture, Step, What};
use ground::{Dimension, Duration, Mass, SaidUnit, Solids, Spoken, Unit, Volume, Water};

/// Everything there is while a recipe is worked. Its parts always add up to what went in.
#[derive(Clone, Debug)]
pub(super) struct Pot {
    /// The liquid, or the dish.
    pub(super) liquid: Composition,
    /// Herb in the pot; after straining, in the cloth.
    pub(super) herb: Herb,
    /// Whether it was poured off.
    pub(super) strained: bool,
    /// What the spent herb keeps.
    pub(super) held: Composition,
    /// How much of that it is.
    held_volume: Volume,
    /// Water that steamed off, or dried off.
    pub(super) steam: Mass<Water>,
    /// What was not sweetened.
    pub(super) set_aside: Composition,
    /// What each step did.
    pub(super) events: Vec<Event>,
}

/// Herb as a thing of its own mass.
#[derive(Clone, Copy, Debug)]
pub(super) struct Herb {
    /// As it lies there, without liquid taken up.
    pub(super) mass: Mass,
    /// As it was weighed when it went in.
    weighed: Mass,
    moisture: Option<Moisture>,
}

/// What a step did, for those who tell it.
#[derive(Clone, Copy, Debug)]
pub(super) enum Event {
    /// An ingredient went in: which, by its order.
    Added(usize),
    /// Time went by, least and most, and so much steamed off.
    Waited([Duration; 2], Mass<Water>),
    /// It was boiled down to a volume.
    Reduced(Duration, Volume),
    /// So much was poured off.
    Poured(Volume),
    /// Sugar went in; into so much, where the rest was set aside.
    Sweetened(Sugaring, Option<Mass>),
    /// Herb was dried down to a mass.
    Dried(Mass),
}

/// Works every step.
pub(super) fn run(batch: &Batch<'_>, corner: Corner) -> Known<Pot> {
    let mut pot = Pot {
        liquid: Composition::NOTHING,
        herb: Herb { mass: Mass::ZERO, weighed: Mass::ZERO, moisture: corner.moisture },
        strained: false,
        held: Composition::NOTHING,
        held_volume: Volume::ZERO,
        steam: Mass::ZERO,
        set_aside: Composition::NOTHING,
        events: Vec::new(),
    };
    let mut added = 0;
    for step in &batch.recipe.steps {
        let event = match step {
            Step::Add(_) | Step::Mix(_) => {
                let item = batch.items.get(added);
                added += 1;
                pot.add(batch, item, corner, added - 1)
            }
            Step::Steep { time, .. } | Step::Rest { time } => pot.wait(batch, time, None)?,
            Step::Simmer { time, lid } => pot.wait(batch, time, Some(*lid))?,
            Step::Reduce { to } => pot.reduce(batch, to)?,
            Step::Strain { holds } | Step::Press { holds } => pot.pour_off(batch, holds)?,
            Step::Dissolve { to, of } => pot.sweeten(batch, to, of.as_ref())?,
            Step::Dry { to } => pot.dry(to)?,
        };
        pot.events.push(event);
    }
    Ok(pot)
}

/// Millilitres or grams that come out in the middle of the doubt, as the serving counts.
pub(super) fn yielded(batch: &Batch<'_>) -> Known<f64> {
    let pot = run(batch, batch.corners().0)?;
    Ok(match batch.serving {
        ServingSize::Volume(_) => pot.volume()?.ml(),
        ServingSize::Mass(_) => pot.mass().g(),
    })
}

impl Pot {
    /// What is handed out: the liquid, and the herb with it unless it was poured off.
    pub(super) fn mass(&self) -> Mass {
        let eaten = if self.strained { Mass::ZERO } else { self.herb.mass };
        self.liquid.mass() + eaten
    }

    /// Moisture of herb that was dried, and is handed out as such.
    pub(super) fn dried_to(&self) -> Option<Moisture> {
        let dried = self.events.iter().any(|event| matches!(event, Event::Dried(_)));
        self.herb.moisture.filter(|_| dried && !self.strained)
    }

    /// Volume of what is handed out. Refused for a dish eaten with its herb.
    pub(super) fn volume(&self) -> Known<Volume> {
        if self.strained {
            return self.liquid.known_volume();
        }
        Err(refuse("prepare-refused-dish", "prepare-settle-dish"))
    }

    fn add(
        &mut self,
        batch: &Batch<'_>,
        item: Option<&Item<'_>>,
        corner: Corner,
        at: usize,
    ) -> Event {
        if let Some(item) = item {
            let [_, amount, _] = item.amount;
            match item.ingredient.what {
                What::Herb => self.add_herb(batch.basis, corner),
                What::Water | What::Spirit => {
                    let poured = Spirit::of(Volume::from_ml(amount), item.strength);
                    self.liquid.ethanol += poured.ethanol;
                    self.liquid.water += poured.water;
                }
                What::Sugar => self.liquid.sugar += Mass::from_g(amount),
                What::Other => self.liquid.other += Mass::from_g(amount),
            }
        }
        Event::Added(at)
    }

    /// By solids, the herb's own water joins the liquid; as weighed, it stays in the herb.
    fn add_herb(&mut self, basis: HerbBasis, corner: Corner) {
        let moisture = corner.moisture;
        let solids: Option<Mass<Solids>> = moisture.map(|m| m.solids(corner.herb));
        self.herb.weighed = corner.herb;
        self.herb.mass = corner.herb;
        self.liquid.herb = corner.herb;
        self.liquid.solids = solids;
        if let (HerbBasis::Solids, Some(moisture)) = (basis, moisture) {
            let water = moisture.water(corner.herb);
            self.liquid.water += water;
            self.herb.mass = Mass::from_g(self.herb.mass.g() - water.g());
        }
    }

    fn wait(&mut self, batch: &Batch<'_>, time: &Spoken, lid: Option<Lid>) -> Known<Event> {
        let time = time.resolve(Dimension::Duration, None)?;
        let ends = [time.low, time.high].map(Duration::from_minutes);
        let middle = Duration::from_minutes(0.5 * (time.low + time.high));
        let lost = match lid {
            None => Volume::ZERO,
            Some(lid) => batch.rate(lid)?.over(middle),
        };
        let steam = crate::water::mass(lost);
        self.steam_off(steam)?;
        Ok(Event::Waited(ends, steam))
    }

    fn steam_off(&mut self, steam: Mass<Water>) -> Known<()> {
        if steam > Mass::ZERO && steam >= self.liquid.water {
            let why = refuse("prepare-refused-boils-dry", "prepare-settle-boils-dry");
            return Err(with_amount(why, "water", self.liquid.water.g(), Unit::Gram));
        }
        self.liquid.water = self.liquid.water - steam;
        self.steam += steam;
        Ok(())
    }

    fn reduce(&mut self, batch: &Batch<'_>, to: &Spoken) -> Known<Event> {
        let before = self.liquid.known_volume()?;
        let after = before * number(to)?;
        let time = known_time(before, after, batch.rate(Lid::Off)?)?;
        self.steam_off(crate::water::mass(before - after))?;
        Ok(Event::Reduced(time, after))
    }

    /// The herb keeps a share of the liquid; pressing gives back what it kept too much.
    fn pour_off(&mut self, batch: &Batch<'_>, holds: &str) -> Known<Event> {
        let whole = self.liquid.and(&self.held);
        let volume = self.liquid.known_volume()? + self.held_volume;
        let keeps = retention(batch.larder, holds)?;
        let counted = match (keeps.basis, self.herb.moisture) {
            (HerbBasis::Weighed, _) => self.herb.weighed.g(),
            (HerbBasis::Solids, Some(moisture)) => moisture.solids(self.herb.weighed).g(),
            (HerbBasis::Solids, None) => {
                return Err(refuse(
                    "prepare-refused-moisture-unknown",
                    "prepare-settle-moisture-unknown",
                ));
            }
        };
        let held = Volume::from_ml(keeps.keeps.0 * counted);
        if held >= volume {
            let why = refuse("prepare-refused-drinks-all", "prepare-settle-drinks-all");
            return Err(with_amount(why, "held", held.ml(), Unit::Millilitre));
        }
        let share = held / volume;
        self.held = whole.share(share);
        self.liquid = whole.share(1.0 - share);
        self.held_volume = held;
        self.strained = true;
        Ok(Event::Poured(volume - held))
    }

    fn sweeten(&mut self, batch: &Batch<'_>, to: &Spoken, of: Option<&Spoken>) -> Known<Event> {
        let taken = match batch.taken {
            Some(taken) => taken / self.liquid.mass(),
            None => of.map_or(Ok(1.0), number)?,
        };
        if taken > 1.0 {
            let why = refuse("prepare-refused-not-so-much", "prepare-settle-not-so-much");
            return Err(with_amount(why, "liquid", self.liquid.mass().g(), Unit::Gram));
        }
        self.set_aside = self.liquid.share(1.0 - taken);
        self.liquid = self.liquid.share(taken);
        let (liquid, held) = (self.liquid.mass(), self.liquid.sugar);
        let to = match batch.stirred {
            Some(sugar) => Sweetness::checked((held + sugar).g() / (liquid.g() + sugar.g()))?,
            None => sweetness(to)?,
        };
        let sum = known_sugaring(liquid, held, to)?;
        self.liquid.sugar += sum.add;
        Ok(Event::Sweetened(sum, (taken < 1.0).then_some(liquid)))
    }

    fn dry(&mut self, to: &Spoken) -> Known<Event> {
        let to = Moisture::checked(number(to)?)?;
        let Some(from) = self.herb.moisture else {
            return Err(refuse(
                "prepare-refused-moisture-unknown",
                "prepare-settle-moisture-unknown",
            ));
        };
        let fresh: Mass<ground::Fresh> = Mass::from_g(self.herb.mass.g());
        let sum = crate::Drying::of(fresh, from, to).ok()?;
        self.herb.mass = Mass::from_g(sum.dried.g());
        self.herb.weighed = self.herb.mass;
        self.herb.moisture = Some(to);
        self.steam += sum.water_lost;
        Ok(Event::Dried(self.herb.mass))
    }
}

/// The middle of a plain number or share.
fn number(said: &Spoken) -> Known<f64> {
    let said = said.resolve(Dimension::Number, None)?;
    Ok(0.5 * (said.low + said.high))
}

fn sweetness(said: &Spoken) -> Known<Sweetness> {
    let by_mass =
        matches!(said.unit, SaidUnit::Fixed(unit) if unit.dimension() == Dimension::MassShare);
    if by_mass {
        let share = said.resolve(Dimension::MassShare, None)?;
        return Sweetness::checked(0.5 * (share.low + share.high));
    }
    let degrees = said.resolve(Dimension::Sweetness, None)?;
    Sweetness::checked(0.005 * (degrees.low + degrees.high))
}
