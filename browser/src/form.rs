//! Forms, filled in by clicks and keys as somebody does it.

use crate::browser::Browser;
use crate::ground::{Outcome, equal};
use fantoccini::elements::Element;
use serde_json::json;

/// A field and what is said in it.
pub(crate) type Said<'a> = (&'a str, &'a str);

const KIND: &str = "const field = document.getElementById(arguments[0]); return field?.type ?? ''";

impl Browser {
    /// Fills fields in. Days and times are written as files have them.
    pub(crate) async fn fill(&self, said: &[Said<'_>]) -> Outcome {
        for (field, says) in said {
            self.answer(field, says).await.map_err(|error| format!("field {field}: {error}"))?;
        }
        Ok(())
    }

    async fn answer(&self, field: &str, says: &str) -> Outcome {
        let id = format!("field-{field}");
        let kind = self.run(KIND, vec![json!(id)]).await?;
        if kind == json!("fieldset") {
            return self.tap(&format!("#{id} .answer:has([value=\"{says}\"])")).await;
        }
        let element = self.element(&format!("#{id}")).await?;
        match kind.as_str().unwrap_or_default() {
            "select-one" => self.tap(&format!("#{id} [value=\"{says}\"]")).await?,
            "date" => typed(&element, &day(says)).await?,
            "time" => typed(&element, &time(says)?).await?,
            _ => {
                element.clear().await?;
                typed(&element, says).await?;
            }
        }
        let holds = format!("return document.getElementById('{id}').value");
        equal(field, &self.said(&holds).await?, &says.to_owned())
    }

    /// Keeps the form, and waits for the screen that follows.
    pub(crate) async fn keep(&self) -> Outcome {
        self.follow("form.fill button:not(.quiet)").await
    }

    /// Adds a row to a table of an outing by its form, and sees that it was kept.
    pub(crate) async fn add(&self, outing: &str, table: &str, said: &[Said<'_>]) -> Outcome {
        self.go(&format!("{outing}/rows/{table}")).await?;
        self.follow("main a.button").await?;
        self.fill(said).await?;
        self.keep().await?;
        if self.address().await? == format!("{outing}/rows/{table}") {
            return Ok(());
        }
        Err(format!("not added to {table}: {}", self.words().await?).into())
    }
}

async fn typed(element: &Element, keys: &str) -> Outcome {
    Ok(element.send_keys(keys).await?)
}

/// The keys for a day, in the order of an American calendar.
fn day(written: &str) -> String {
    let parts: Vec<_> = written.split('-').collect();
    match parts.as_slice() {
        [year, month, day] => format!("{month}{day}{year}"),
        _ => written.to_owned(),
    }
}

/// The keys for a time, by an American clock.
fn time(written: &str) -> Outcome<String> {
    let (hour, minute) = written.split_once(':').ok_or("no time")?;
    let hour: u32 = hour.parse()?;
    let half = if hour < 12 { "AM" } else { "PM" };
    Ok(format!("{:02}{minute}{half}", (hour + 11) % 12 + 1))
}
