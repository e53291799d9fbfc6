//! Every screen, held to what anybody needs to use it: the checker's rules, room to tap, keys, no sideways
//! scrolling.

use crate::browser::Browser;
use crate::ground::{Ground, Outcome, figure, say};
use crate::refused::TABLES;
use crate::{day, in_hand, outing};
use fantoccini::actions::{InputSource as _, KeyAction, KeyActions};
use serde_json::{Value, json};
use std::fs;

/// Each size with its looks: what is pale on a phone is pale at a desk, where the usual look stands for all.
const SIZES: [((u32, u32), &[&str]); 2] = [((360, 740), &LOOKS), ((1440, 900), &[""])];
const NARROW: (u32, u32) = (320, 740);
pub(crate) const LOOKS: [&str; 3] = ["", "dusk", "contrast"];

pub(crate) const PROBE: &str = include_str!("access.js");

/// A fault of each kind, which must be found, or finding none proves nothing.
const PLANTED: &str = "document.getElementById('main').insertAdjacentHTML('beforeend',
    '<div id=planted><p style=\"color:#bbb;width:2000px\">pale</p>' +
    '<button tabindex=-1 style=\"min-height:0;height:20px;padding:0\">small</button></div>')";
const PLANTED_FAULTS: [&str; 4] = ["color-contrast", "px wide", "not reached by keys", "small"];

/// What was looked at, and what was found.
#[derive(Default)]
struct Count {
    screens: usize,
    checks: usize,
    controls: u64,
    findings: Vec<String>,
}

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let checker = fs::read_to_string(&ground.axe)?;
    let browser = ground.browser("access").await?;
    browser.load("/").await?;
    let at = outing::whole(&browser).await?;
    browser.run(&format!("{checker}\n{PROBE}"), Vec::new()).await?;
    prove(&browser).await?;
    let mut count = Count::default();
    for to in screens(&browser, &at).await? {
        browser.go(&to).await?;
        screen(&browser, &to, &mut count).await.map_err(|error| format!("{to}: {error}"))?;
    }
    browser.go(&format!("{at}/new/stand")).await?;
    browser.keep().await?;
    screen(&browser, "a form at fault", &mut count).await?;
    browser.close().await?;
    let Count { screens, checks, controls, findings } = count;
    figure("screens", screens, "screens looked at");
    figure("checks", checks, "runs of the checker, by size and looks");
    figure("controls", controls, "controls measured and reached by keys");
    figure("findings", findings.len(), "findings");
    findings.iter().for_each(say);
    if findings.is_empty() { Ok(()) } else { Err("screens have faults".into()) }
}

async fn prove(browser: &Browser) -> Outcome {
    browser.run(PLANTED, Vec::new()).await?;
    let mut planted = Count::default();
    screen(browser, "planted", &mut planted).await?;
    browser.run("document.getElementById('planted').remove()", Vec::new()).await?;
    let found = |fault: &&str| planted.findings.iter().any(|finding| finding.contains(*fault));
    match PLANTED_FAULTS.iter().find(|fault| !found(fault)) {
        None => Ok(()),
        Some(fault) => Err(format!("a planted fault was overlooked: {fault}").into()),
    }
}

/// Every kind of screen.
pub(crate) async fn screens(browser: &Browser, at: &str) -> Outcome<Vec<String>> {
    let known = [
        "/",
        "/new",
        "/herbal",
        "/herbal?words=nettle",
        "/herbal/Urtica%20dioica",
        "/compare/Urtica%20dioica/Lamium%20album",
        "/emergency",
        "/work-out",
        "/work-out?recipe=herb-tea&herb=2%20g&state=dried&moisture=10%20%25",
        "/work-out?recipe=herb-tea&herb=two",
        "/nowhere",
    ];
    day::to_the_table(browser, at).await?;
    browser.add(at, "survey", &in_hand::SURVEY).await?;
    browser.go(&format!("{at}/rows/survey")).await?;
    let count = browser.said(in_hand::COUNT).await?;
    let own = [
        "",
        "/in-hand",
        "/in-hand/bank/bank-1/tobias-quill",
        "/in-hand/bank/bank-1",
        "/in-hand/ride/ride-1",
        "/allowance",
        "/basket",
        "/kitchen",
        "/kitchen/spruce-tips",
        "/serving",
        "/answers/ansel-brookhouse",
        "/answers/ansel-brookhouse/1",
        "/answers/ansel-brookhouse/2",
        "/hand-out/spruce-pot",
        "/why",
        "/new/sorting/lot/spruce-lot",
        "/journal",
        "/plan",
        "/pages",
        "/row/outing",
        "/row/stand/bank",
        "/rows/reader",
    ];
    let mut all: Vec<_> = known.map(str::to_owned).to_vec();
    all.extend(own.map(|way| format!("{at}{way}")));
    all.push(count);
    all.extend(TABLES.map(|table| format!("{at}/new/{table}")));
    browser.go(&format!("{at}/pages")).await?;
    let pages = "return [...document.querySelectorAll('main .ways a')].map((a) => a.hash.slice(1))";
    let pages: Vec<String> = serde_json::from_value(browser.run(pages, Vec::new()).await?)?;
    all.extend(pages);
    Ok(all)
}

async fn screen(browser: &Browser, name: &str, count: &mut Count) -> Outcome {
    count.screens += 1;
    browser.run("return opened()", Vec::new()).await?;
    for (size, looks) in SIZES {
        resize(browser, size).await?;
        for looks in looks {
            browser.run("dressed(arguments[0])", vec![json!(looks)]).await?;
            let found = browser.run("return checked(arguments[0])", vec![json!(looks)]).await?;
            note(count, &format!("{name} at {} {looks}", size.0), &found)?;
            count.checks += 1;
        }
        keys(browser, &format!("{name} at {}", size.0), count).await?;
    }
    resize(browser, NARROW).await?;
    let found = browser.run("return sideways()", Vec::new()).await?;
    note(count, &format!("{name} at {}", NARROW.0), &found)
}

/// Controls are measured, and each is reached by the tabulator.
async fn keys(browser: &Browser, name: &str, count: &mut Count) -> Outcome {
    let controls = browser.run("return listen()", Vec::new()).await?;
    let controls = controls.as_u64().ok_or("no number of controls")?;
    let mut keys = KeyActions::new("keys".to_owned());
    // More than one for each: parts of days and times take the focus, and frames that scroll.
    for _ in 0..controls + 40 {
        let value = '\u{e004}';
        keys = keys.then(KeyAction::Down { value }).then(KeyAction::Up { value });
    }
    browser.client.perform_actions(keys).await?;
    let found = browser.run("return missed()", Vec::new()).await?;
    count.controls += controls;
    note(count, name, &found)
}

fn note(count: &mut Count, name: &str, found: &Value) -> Outcome {
    let found = found.as_array().ok_or_else(|| format!("the checker did not finish: {found}"))?;
    count.findings.extend(found.iter().map(|one| format!("{name}: {one}")));
    Ok(())
}

pub(crate) async fn resize(browser: &Browser, (width, height): (u32, u32)) -> Outcome {
    let metrics =
        json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
    browser.tool("Emulation.setDeviceMetricsOverride", metrics).await.map(drop)
}
