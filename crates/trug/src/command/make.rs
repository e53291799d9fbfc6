//! `trug make`: a preparation, forwards from what is at hand or backwards from what is wanted.

use crate::read::amount;
use clap::{Args, ValueEnum};
use desk::{MakeOrder, device};
use ground::{Heap, MeasureSystem, Spoken};
use prepare::{HerbState, What};

#[derive(Args)]
#[command(
    after_help = "Example:\n  trug make herb-tea --herb \"2 g\" --state dried --moisture \"10 %\""
)]
pub(crate) struct Make {
    /// The recipe, such as herb-tea or root-syrup
    recipe: String,
    /// How much of the herb
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    herb: Option<Spoken>,
    /// Whether it is fresh or dried
    #[arg(long)]
    state: Option<State>,
    /// Its share of water
    #[arg(long, value_name = "SHARE", value_parser = amount)]
    moisture: Option<Spoken>,
    /// How much water
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    water: Option<Spoken>,
    /// How much spirit
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    spirit: Option<Spoken>,
    /// How much sugar
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    sugar: Option<Spoken>,
    /// How much of what was strained is sweetened, by weight
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    sweetened: Option<Spoken>,
    /// Strength of the spirit in the bottle
    #[arg(long, value_name = "STRENGTH", value_parser = amount)]
    stock: Option<Spoken>,
    /// Strength that is wanted in the jar
    #[arg(long, value_name = "STRENGTH", value_parser = amount)]
    jar: Option<Spoken>,
    /// Whether spoons are level or heaped
    #[arg(long)]
    heap: Option<Filled>,
    /// Which of the herbal's spoons is meant
    #[arg(long, value_name = "NAME")]
    spoon: Option<String>,
    /// Whose kitchen is meant: us-customary, us-kitchen, imperial, metric or australian
    #[arg(long, value_name = "KITCHEN")]
    kitchen: Option<MeasureSystem>,
    /// What one person is handed
    #[arg(long, value_name = "AMOUNT", value_parser = amount)]
    serving: Option<Spoken>,
    /// So many servings are wanted: what goes in is worked out
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..))]
    servings: Option<u32>,
}

#[derive(Clone, Copy, ValueEnum)]
enum State {
    Fresh,
    Dried,
}

#[derive(Clone, Copy, ValueEnum)]
enum Filled {
    Level,
    Heaped,
}

impl Make {
    pub(super) fn request(&self) -> device::Request {
        let amounts =
            [(What::Water, &self.water), (What::Spirit, &self.spirit), (What::Sugar, &self.sugar)];
        let said = |(what, said): (What, &Option<Spoken>)| Some((what, said.clone()?));
        device::Request::Make(Box::new(MakeOrder {
            recipe: self.recipe.clone(),
            state: self.state.map(|state| match state {
                State::Fresh => HerbState::Fresh,
                State::Dried => HerbState::Dried,
            }),
            herb: self.herb.clone(),
            moisture: self.moisture.clone(),
            heap: self.heap.map(|heap| match heap {
                Filled::Level => Heap::Level,
                Filled::Heaped => Heap::Heaped,
            }),
            spoon: self.spoon.clone(),
            amounts: amounts.into_iter().filter_map(said).collect(),
            stock: self.stock.clone(),
            jar: self.jar.clone(),
            sweetened: self.sweetened.clone(),
            serving: self.serving.clone(),
            kitchen: self.kitchen,
            servings: self.servings,
        }))
    }
}
