//! A preparation by itself, as a form of the kitchen says it.

use crate::visit::Form;
use desk::MakeOrder;
use ground::{Fault, Faults, Place, Spoken};
use prepare::What;
use serde::de::DeserializeOwned;

/// The amounts that a form may say, first those that most recipes ask for.
pub(crate) const AMOUNTS: [&str; 9] =
    ["herb", "moisture", "water", "spirit", "stock", "jar", "sugar", "sweetened", "serving"];

/// What somebody wants to make, or everything in the form that cannot be read.
pub(crate) fn order(form: &Form) -> Result<MakeOrder, Faults> {
    let mut faults = Faults::none();
    let mut spoken = |field: &str| {
        let said = form.one(field);
        let read: Result<Spoken, _> = said.trim().parse();
        let at = || Place::entry("work-out", "", field);
        let read = read.map_err(|why| Fault::new("app-no-amount", at(), &*said).with("why", why));
        if said.trim().is_empty() { None } else { faults.note(read) }
    };
    let amounts = [(What::Water, "water"), (What::Spirit, "spirit"), (What::Sugar, "sugar")];
    let amounts = amounts.into_iter().filter_map(|(what, field)| Some((what, spoken(field)?)));
    let mut order = MakeOrder {
        recipe: form.one("recipe"),
        amounts: amounts.collect(),
        herb: spoken("herb"),
        moisture: spoken("moisture"),
        stock: spoken("stock"),
        jar: spoken("jar"),
        sweetened: spoken("sweetened"),
        serving: spoken("serving"),
        ..MakeOrder::default()
    };
    order.state = faults.note(word(form, "state")).flatten();
    order.kitchen = faults.note(word(form, "kitchen")).flatten();
    let servings = form.one("servings");
    if !servings.trim().is_empty() {
        let at = Place::entry("work-out", "", "servings");
        let read = servings.trim().parse().ok().filter(|count| *count > 0);
        order.servings =
            faults.note(read.ok_or_else(|| Fault::new("app-not-read", at, &*servings)));
    }
    faults.or(order)
}

/// One word of a closed list; none where nothing was chosen.
fn word<T: DeserializeOwned>(form: &Form, field: &str) -> Result<Option<T>, Fault> {
    let said = form.one(field);
    if said.is_empty() {
        return Ok(None);
    }
    let unread = |_| Fault::new("app-not-read", Place::entry("work-out", "", field), &*said);
    serde_json::from_value(said.clone().into()).map(Some).map_err(unread)
}
