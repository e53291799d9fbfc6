//! Sentences beside the messages of a JSON document, so that it can be read without the catalogue.

use crate::{Catalogue, Habits};
use ground::{Fault, Text};
use serde_json::{Map, Value};

impl Catalogue {
    /// The same document, with `"text"` beside each message (an object with `"text_id"`), and
    /// `"want"` and `"mend"` beside each fault. Nothing else changes.
    #[must_use]
    pub fn add_texts(&self, document: Value) -> Value {
        // Programs read it: it hangs on nobody's habits.
        self.with_habits(Habits::default()).add_to(document)
    }

    fn add_to(&self, document: Value) -> Value {
        match document {
            Value::Array(items) => items.into_iter().map(|item| self.add_to(item)).collect(),
            Value::Object(fields) => Value::Object(self.add_to_object(fields)),
            other => other,
        }
    }

    fn add_to_object(&self, fields: Map<String, Value>) -> Map<String, Value> {
        if !fields.contains_key("text_id") {
            return fields.into_iter().map(|(name, value)| (name, self.add_to(value))).collect();
        }
        let mut fields = fields;
        let whole = Value::Object(fields.clone());
        if let Ok(text) = serde_json::from_value::<Text>(whole.clone()) {
            fields.insert("text".to_owned(), self.say(&text).into());
        }
        if let Ok(fault) = serde_json::from_value::<Fault>(whole) {
            let said = self.fault(&fault);
            fields.insert("want".to_owned(), said.want.into());
            fields.insert("mend".to_owned(), said.mend.into());
        }
        fields
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ground::{Place, Unit};
    use serde_json::json;

    #[test]
    fn each_message_gets_its_sentence_and_stays_readable_as_a_message() {
        let message =
            Text::new("range").amount("low", 3.0, Unit::Gram).amount("high", 5.0, Unit::Gram);
        let document = json!({ "plan": [ { "why": message, "water_g": 0.1 } ] });
        let added = Catalogue::english().add_texts(document.clone());
        assert_eq!(added["plan"][0]["why"]["text"], "3\u{a0}g to 5\u{a0}g");
        assert_eq!(added["plan"][0]["water_g"], document["plan"][0]["water_g"]);
        let read: Text = serde_json::from_value(added["plan"][0]["why"].clone()).unwrap();
        assert_eq!(read, message);
    }

    #[test]
    fn a_fault_gets_what_was_wanted_and_how_to_mend_it() {
        let fault = Fault::new("one-key-two-distributions", Place::default(), "lot/a");
        let added = Catalogue::english().add_texts(json!([fault]));
        for field in ["text", "want", "mend"] {
            let said = added[0][field].as_str().unwrap();
            assert!(!said.is_empty() && !said.contains('⟦'), "{field}: {said}");
        }
    }
}
