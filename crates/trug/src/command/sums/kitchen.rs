//! Sums of the kitchen.

use crate::read::amount;
use clap::Args;
use desk::Sum;
use ground::{MeasureSystem, Spoken};

#[derive(Args)]
pub(crate) struct Alcohol {
    /// Strength in % vol or % mass, or density in g/ml
    #[arg(value_parser = amount)]
    strength: Spoken,
    /// A volume of it, whose ethanol is asked
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    volume: Option<Spoken>,
    /// Temperature at which density and volume are measured; 20 °C when left out
    #[arg(long, value_name = "TEMPERATURE", value_parser = amount, allow_hyphen_values = true)]
    at: Option<Spoken>,
}

impl Alcohol {
    pub(super) fn sum(&self) -> Sum {
        let Self { strength, volume, at } = self;
        Sum::Alcohol { strength: strength.clone(), volume: volume.clone(), at: at.clone() }
    }
}

#[derive(Args)]
pub(crate) struct Dilute {
    /// Strength of the spirit
    #[arg(long, value_name = "STRENGTH", value_parser = amount)]
    from: Spoken,
    /// Strength that is wanted
    #[arg(long, value_name = "STRENGTH", value_parser = amount)]
    to: Spoken,
    /// Volume of the spirit
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    volume: Spoken,
}

impl Dilute {
    pub(super) fn sum(&self) -> Sum {
        let Self { from, to, volume } = self;
        Sum::Dilute { from: from.clone(), to: to.clone(), volume: volume.clone() }
    }
}

#[derive(Args)]
pub(crate) struct Sugar {
    /// Sweetness that is wanted, in °Bx or % mass
    #[arg(long, value_name = "SWEETNESS", value_parser = amount)]
    to: Spoken,
    /// Weight of the liquid
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    liquid: Spoken,
    /// Weight of the sugar that it holds already
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    held: Option<Spoken>,
}

impl Sugar {
    pub(super) fn sum(&self) -> Sum {
        let Self { to, liquid, held } = self;
        Sum::Sugar { to: to.clone(), liquid: liquid.clone(), held: held.clone() }
    }
}

#[derive(Args)]
pub(crate) struct Dry {
    /// Weight of the fresh herb
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    herb: Spoken,
    /// Its share of water
    #[arg(long, value_name = "SHARE", value_parser = amount)]
    from: Spoken,
    /// The share of water that is wanted
    #[arg(long, value_name = "SHARE", value_parser = amount)]
    to: Spoken,
}

impl Dry {
    pub(super) fn sum(&self) -> Sum {
        let Self { herb, from, to } = self;
        Sum::Dry { herb: herb.clone(), from: from.clone(), to: to.clone() }
    }
}

#[derive(Args)]
pub(crate) struct Measure {
    /// The measure, such as 1½ cups
    #[arg(value_parser = amount)]
    said: Spoken,
    /// Whose kitchen is meant: us-customary, us-kitchen, imperial, metric or australian
    #[arg(long, value_name = "KITCHEN")]
    kitchen: Option<MeasureSystem>,
}

impl Measure {
    pub(super) fn sum(&self) -> Sum {
        Sum::Measure { said: self.said.clone(), kitchen: self.kitchen }
    }
}
