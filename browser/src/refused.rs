//! Forms that are refused: what is wrong is said, and what was typed stays.

use crate::browser::Browser;
use crate::ground::{Outcome, equal};
use serde_json::json;

pub(crate) const TABLES: [&str; 16] = [
    "number",
    "reader",
    "site",
    "permission",
    "stand",
    "survey",
    "stop",
    "make",
    "participant",
    "take",
    "lot",
    "sorting",
    "batch",
    "weighing",
    "confirmation",
    "serving",
];

/// Every fault leads to its field, and the field says what is wrong with it.
const SAID: &str = "
    const links = [...document.querySelectorAll('main .warned a')];
    const field = (link) => document.getElementById(link.hash.slice(1));
    const says = (link) => document.getElementById(`${field(link)?.id}-says`)?.querySelector('strong');
    return links.length > 0 && links.every((link) => field(link) && says(link)?.innerText.trim()) &&
        document.activeElement === document.querySelector('main .warned') &&
        document.title.startsWith('Not kept:')";

/// The fields that take free words, by id.
const FREE: &str =
    "return [...document.querySelectorAll('form.fill :is(input[type=text], textarea)')]
    .map((field) => field.id)";

const HOLDS: &str = "return document.getElementById(arguments[0]).value";

/// Tries every form without a word and with words in some fields only; how often one was refused.
pub(crate) async fn every_form(browser: &Browser, outing: &str) -> Outcome<usize> {
    let forms = TABLES.map(|table| format!("{outing}/new/{table}"));
    let mut refused = 0;
    for to in [&["/new".to_owned()], forms.as_slice()].concat() {
        browser.go(&to).await?;
        nothing_said(browser).await.map_err(|error| format!("{to}, empty: {error}"))?;
        refused += 1;
        // A name is all that is asked of somebody who comes: the form is at fault only without it.
        if !to.ends_with("/participant") {
            half_said(browser).await.map_err(|error| format!("{to}, half filled in: {error}"))?;
            refused += 1;
        }
    }
    Ok(refused)
}

async fn nothing_said(browser: &Browser) -> Outcome {
    browser.keep().await?;
    browser.wait("what is wrong", SAID).await
}

async fn half_said(browser: &Browser) -> Outcome {
    let free = browser.run(FREE, Vec::new()).await?;
    let free: Vec<_> = free.as_array().into_iter().flatten().filter_map(|id| id.as_str()).collect();
    for id in &free {
        let field = browser.element(&format!("#{id}")).await?;
        field.clear().await?;
        field.send_keys(&words(id)).await?;
    }
    browser.keep().await?;
    browser.wait("what is wrong", SAID).await?;
    for id in free {
        let holds = browser.run(HOLDS, vec![json!(id)]).await?;
        equal(id, &holds, &json!(words(id)))?;
    }
    Ok(())
}

fn words(id: &str) -> String {
    format!("“{id}” <b> & ½")
}
