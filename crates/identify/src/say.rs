//! What was seen, and what a sheet says, as messages.

use crate::{Seen, Value};
use ground::{Arg, Finite, Text, Unit};

/// What was seen.
pub(crate) fn seen(seen: &Seen) -> Text {
    match seen {
        Seen::State(state) => Text::new("identify-seen-state").with("state", state.as_str()),
        Seen::OneOf(states) => Text::new("identify-seen-one-of").with("states", words(states)),
        Seen::Measured { low, high } => between("identify-seen-measured", low.get(), high.get()),
        Seen::Counted(count) => Text::new("identify-seen-counted").with("count", *count),
        Seen::NotThere => Text::new("identify-seen-not-there"),
        Seen::CannotTell => Text::new("identify-seen-cannot-tell"),
    }
}

/// What a sheet says.
pub(crate) fn value(value: &Value) -> Text {
    match value {
        Value::States { always, usually, sometimes, rarely } => {
            let said = [
                ("identify-said-always", always),
                ("identify-said-usually", usually),
                ("identify-said-sometimes", sometimes),
                ("identify-said-rarely", rarely),
            ];
            let said = said.into_iter().filter(|(_, states)| !states.is_empty());
            let parts = said.map(|(id, states)| Text::new(id).with("states", words(states)).into());
            Text::new("identify-said").with("parts", parts.collect::<Vec<Arg>>())
        }
        Value::Shares(shares) => {
            let part = |(state, share): (&String, &f64)| {
                let text = Text::new("identify-said-share").with("state", state.as_str());
                text.amount("share", 100.0 * share, Unit::Percent).into()
            };
            Text::new("identify-said").with("parts", shares.iter().map(part).collect::<Vec<Arg>>())
        }
        Value::Range { ordinary: (low, high), .. } => {
            let end = |value: f64| Finite::new(value).map_or_else(String::new, |v| v.to_string());
            Text::new("identify-said-range").with("low", end(*low)).with("high", end(*high))
        }
    }
}

fn between(id: &str, low: f64, high: f64) -> Text {
    Text::new(id).amount("low", low, Unit::Millimetre).amount("high", high, Unit::Millimetre)
}

/// Words as a list.
pub(crate) fn words(words: &[String]) -> Vec<Arg> {
    words.iter().map(|word| Arg::Words(word.clone())).collect()
}
