//! A school that wrote ten thousand entries: how long it waits for the first screen.

use crate::ground::{Ground, Outcome, figure};
use crate::outing::OUTING;
use crate::start::{Start, starts};
use app::{App, Form, Kept, Moment, Visit};
use jiff::civil::date;
use serde_json::json;

/// Outings of as many entries each, some for every week of three years.
const OUTINGS: usize = 125;
const ENTRIES: usize = 80;

const ZONE: &str = "Europe/London";

/// So many lines are handed to the browser at once.
const AT_ONCE: usize = 1000;

/// Puts lines into the database of the app, as the app does.
const SEED: &str = "
    const lines = arguments[0];
    return new Promise((resolve, reject) => {
        const opened = indexedDB.open('trug');
        opened.onerror = () => reject(opened.error);
        opened.onsuccess = () => {
            const transaction = opened.result.transaction('lines', 'readwrite');
            for (const line of lines) transaction.objectStore('lines').add(line);
            transaction.oncomplete = () => { opened.result.close(); resolve(lines.length); };
            transaction.onabort = () => reject(transaction.error);
        };
    });";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let lines = entries()?;
    let browser = ground.browser("many").await?;
    browser.load("/").await?;
    browser.kept().await?;
    for some in lines.chunks(AT_ONCE) {
        browser.run(SEED, vec![json!(some)]).await?;
    }
    browser.load("/emergency").await?;
    let outings = "return String(document.querySelectorAll('main .ways a').length)";
    let shown = browser.said(outings).await?;
    browser.close().await?;
    ground.site.stop()?;
    let start = starts(ground, "many").await?;
    let Start { page, worker } = start;
    figure("many-entries", lines.len(), &format!("entries in {shown} outings on a device"));
    let half = "ms to the first screen, the page slowed four times and the worker not (goal 1500)";
    figure("many-start", page + worker, half);
    figure("many-start-slowed", start.slowed(), "ms on a device 4 times slower");
    Ok(())
}

/// What another device of the school wrote, by the program itself.
fn entries() -> Outcome<Vec<Kept>> {
    let mut app = App::open(herbal_data::bytes()).map_err(|_| "the herbal could not be read")?;
    let mut lines = Vec::with_capacity(OUTINGS * ENTRIES);
    let mut write = |to: &str, said: &[(&str, &str)]| -> Outcome<String> {
        let number = lines.len();
        let visit = Visit {
            to: to.to_owned(),
            at: moment(number),
            form: Some(Form(
                said.iter().map(|(f, s)| ((*f).to_owned(), (*s).to_owned())).collect(),
            )),
            ..Visit::default()
        };
        let shown = app.show(&visit);
        lines.extend(shown.keep);
        if lines.len() == number {
            Err(format!("nothing was kept: {}", shown.main).into())
        } else {
            Ok(shown.at)
        }
    };
    let outing = [OUTING.as_slice(), &[("zone", ZONE)]].concat();
    for _ in 0..OUTINGS {
        let at = write("/new", &outing)?;
        for person in 1..ENTRIES {
            write(&format!("{at}/new/participant"), &[("called", &format!("Somebody {person}"))])?;
        }
    }
    Ok(lines)
}

/// A minute after the one before.
fn moment(number: usize) -> Moment {
    let minutes = i64::try_from(number).unwrap_or(i64::MAX);
    let now = date(2025, 3, 1).at(9, 0, 0, 0);
    Moment {
        now: now.saturating_add(jiff::SignedDuration::from_mins(minutes)),
        ms: 1_740_819_600_000 + 60_000 * minutes,
        zone: ZONE.to_owned(),
        seed: format!("entry {number}"),
    }
}
