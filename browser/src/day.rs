//! The day of an outing by taps, on a phone: from the plant in hand, by way of a basket with a wrong twig in
//! it, to the cup.

use crate::access::resize;
use crate::browser::Browser;
use crate::form::Said;
use crate::ground::{Ground, Outcome, equal, figure};
use crate::{in_hand, outing, taps};
use serde_json::Value;
use std::time::Duration;

const PHONE: (u32, u32) = (360, 740);

pub(crate) const PASSPHRASE: &str = "a weir, a bank, a bell";

const STAGE: &str = "spring, with the owner's leave";

pub(crate) const WISH: [Said<'_>; 10] = [
    ("called", "Spruce tips"),
    ("recipe", "spruce-tip-tea"),
    ("plant", "Norway spruce"),
    ("part", "shoot-tip"),
    ("stands", "ride"),
    ("herb", "fresh"),
    ("amounts", "herb 56 g\nwater 2.2 l"),
    ("moisture", "70–76 %"),
    ("stage", STAGE),
    ("serving", "150 ml"),
];

const TAKE: [Said<'_>; 5] = [
    ("name", "spruce-take"),
    ("stand", "ride"),
    ("part", "shoot-tip"),
    ("amount", "56 g"),
    ("pattern", "ride-1"),
];

const SORTERS: [Said<'_>; 2] = [("sorters", "maren-holt"), ("sorters", "tobias-quill")];

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("day").await?;
    resize(&browser, PHONE).await?;
    browser.load("/").await?;
    taps::slow(ground, &browser).await?;
    let at = outing::whole(&browser).await?;
    let asked = to_the_table(&browser, &at).await?;
    figure("day-questions", asked, "questions asked of one person, each by one tap");
    handing(&browser, &at).await.map_err(|error| format!("handing out: {error}"))?;
    taps::take(ground, &browser).await?;
    sealed(&browser, &at).await.map_err(|error| format!("sealed: {error}"))?;
    let errors = browser.errors().await?;
    browser.close().await?;
    equal("errors in the console", &errors, &Vec::new())
}

/// From the plant in hand to the answers of one person; how many questions those were.
pub(crate) async fn to_the_table(browser: &Browser, at: &str) -> Outcome<usize> {
    browser.add(at, "stand", &in_hand::STAND).await?;
    in_hand::read(browser, at).await.map_err(|error| format!("in hand: {error}"))?;
    browser.add(at, "make", &WISH).await?;
    basket(browser, at).await.map_err(|error| format!("basket: {error}"))?;
    kitchen(browser, at).await.map_err(|error| format!("kitchen: {error}"))?;
    Ok(answers(browser, at).await.map_err(|error| format!("answers: {error}"))?)
}

/// A take, its lot, a wrong twig that holds it, and the second sorting that frees it.
async fn basket(browser: &Browser, at: &str) -> Outcome {
    browser.go(at).await?;
    browser.follow("main a[href$='/basket']").await?;
    browser.follow("main a[href$='/new/take']").await?;
    browser.fill(&TAKE).await?;
    browser.fill(&[("pickers", "maren-holt")]).await?;
    browser.keep().await?;
    browser.add(at, "lot", &[("name", "spruce-lot"), ("takes", "spruce-take")]).await?;
    for (pieces, found) in [("420", "1 Taxus baccata"), ("419", "")] {
        browser.go(&format!("{at}/basket")).await?;
        if found.is_empty() {
            // A sorting that frees a lot is later than the find, by the second.
            tokio::time::sleep(Duration::from_secs(1)).await;
        }
        browser.follow("main a[href$='/new/sorting/lot/spruce-lot']").await?;
        browser.fill(&SORTERS).await?;
        browser.fill(&[("pieces", pieces), ("every-piece", "yes"), ("found", found)]).await?;
        browser.keep().await?;
        browser.go(&format!("{at}/basket")).await?;
        let held = "Nothing of spruce-lot is used: Taxus baccata";
        equal("held", &browser.words().await?.contains(held), &!found.is_empty())?;
    }
    browser.has("sorted by").await
}

async fn kitchen(browser: &Browser, at: &str) -> Outcome {
    browser.go(at).await?;
    browser.follow("main a[href$='/kitchen']").await?;
    browser.follow("main a[href$='/kitchen/spruce-tips']").await?;
    browser.has("infusion").await?;
    browser.tap("button[data-minutes]").await?;
    browser
        .wait(
            "a clock",
            "return /^[0-9]+:[0-9]{2}$/.test(document.querySelector('#clocks .left')?.innerText)",
        )
        .await?;
    browser.follow("main a[href$='/new/batch/make/spruce-tips']").await?;
    browser.fill(&[("name", "spruce-pot"), ("lots", "spruce-lot")]).await?;
    browser.fill(&[("stages", STAGE)]).await?;
    browser.keep().await?;
    browser.tap("#clocks button").await?;
    browser.go(&format!("{at}/kitchen/spruce-tips")).await?;
    browser.follow("main a[href$='/new/weighing/of/spruce-pot']").await?;
    browser.fill(&[("what", "herb"), ("mass", "56 g")]).await?;
    browser.keep().await
}

/// One person is asked everything; how many questions that were.
async fn answers(browser: &Browser, at: &str) -> Outcome<usize> {
    browser.go(at).await?;
    browser.follow("main a[href$='/serving']").await?;
    passphrase(browser, "weir").await?;
    browser.has("too short").await?;
    passphrase(browser, PASSPHRASE).await?;
    browser.follow("main a[href*='/answers/ansel-brookhouse']").await?;
    let Asked { questions, .. } = ask(browser, "ansel-brookhouse").await?;
    browser.has("Has anything changed since?").await?;
    browser.has("34").await?;
    Ok(questions)
}

/// What it took to ask somebody everything.
pub(crate) struct Asked {
    pub(crate) questions: usize,
    pub(crate) taps: usize,
    pub(crate) keys: usize,
}

/// Answers every question to a person, from the one that is on the screen.
pub(crate) async fn ask(browser: &Browser, person: &str) -> Outcome<Asked> {
    let mut asked = Asked { questions: 0, taps: 0, keys: 0 };
    while browser.address().await?.contains(&format!("/answers/{person}/")) {
        if browser.run("return Boolean(document.getElementById('said'))", Vec::new()).await? == true
        {
            let heading = browser.heading().await?;
            let says = if heading.contains("old") { "34" } else { "70 kg" };
            browser.client.active_element().await?.send_keys(says).await?;
            browser.follow("main form.fill > button").await?;
            asked.keys += says.len();
            asked.taps += 1;
        } else {
            browser.follow("main button[value='no']").await?;
            asked.taps += 1;
        }
        asked.questions += 1;
    }
    Ok(asked)
}

pub(crate) async fn passphrase(browser: &Browser, says: &str) -> Outcome {
    browser.element("#passphrase").await?.send_keys(says).await?;
    browser.follow("main form.fill button").await
}

async fn handing(browser: &Browser, at: &str) -> Outcome {
    browser.go(&format!("{at}/serving")).await?;
    browser.follow("main a[href$='/hand-out/spruce-pot']").await?;
    browser.follow("main button[name='stands']").await?;
    browser.follow("main button[name='to']").await?;
    browser.has("had one").await?;
    browser.go(&format!("{at}/why")).await?;
    browser.follow("main form button").await?;
    browser.has("Ansel Brookhouse").await?;
    browser.go(&format!("{at}/pages")).await?;
    browser.follow("main a[href$='/pages/serving-list']").await
}

/// After a reload the answers are closed; a wrong passphrase opens nothing, the right one all.
async fn sealed(browser: &Browser, at: &str) -> Outcome {
    browser.go(&format!("{at}/serving")).await?;
    browser.reload().await?;
    passphrase(browser, "another one").await?;
    browser.has("does not open the answers").await?;
    passphrase(browser, PASSPHRASE).await?;
    browser.has("asked today").await?;
    let kept = browser.client.execute_async(STORED, Vec::new()).await?;
    equal("words of answers on the disk", &kept, &Value::from(0))?;
    browser.follow("main button[name='close']").await?;
    browser.has("While it is closed").await
}

/// How many of what lies in the database speaks of the answers in plain words.
const STORED: &str = "const told = arguments[arguments.length - 1];
    const request = indexedDB.open('trug');
    request.onsuccess = async () => {
        const database = request.result;
        const all = (name) => new Promise((done) => {
            const read = database.transaction(name).objectStore(name).getAll();
            read.onsuccess = () => done(read.result);
        });
        const plain = (bytes) => new TextDecoder().decode(bytes ?? new Uint8Array());
        const sealed = await all('sealed');
        const words = [...(await all('lines')).map(({ line }) => line), ...sealed.map(({ answer }) => plain(answer))];
        database.close();
        told(sealed.length === 0 ? -1 : words.filter((words) => /70 kg|pregnant/.test(words)).length);
    };";
