//! The serving list answered for twelve people: how many taps and keys that takes.

use crate::browser::Browser;
use crate::day::{self, Asked, PASSPHRASE, WISH};
use crate::ground::{Ground, Outcome, figure};
use crate::in_hand::STAND;
use crate::outing;

/// Who comes besides the one who is there.
const OTHERS: [&str; 11] = [
    "Bertil Ash",
    "Cora Lane",
    "Dunstan Mere",
    "Elsbeth Holm",
    "Fenn Garth",
    "Gunnel Weir",
    "Hob Thorne",
    "Ingrid Moss",
    "Jory Vale",
    "Kester Brook",
    "Lovis Marsh",
];

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("twelve").await?;
    browser.load("/").await?;
    let at = outing::whole(&browser).await?;
    for called in OTHERS {
        browser.add(&at, "participant", &[("called", called)]).await?;
    }
    browser.add(&at, "stand", &STAND).await?;
    browser.add(&at, "make", &WISH).await?;
    browser.go(&at).await?;
    browser.follow("main a[href$='/serving']").await?;
    day::passphrase(&browser, PASSPHRASE).await?;
    // To the list, into the field, and on the button.
    let begun = Asked { questions: 0, taps: 3, keys: PASSPHRASE.len() };
    let all = everybody(&browser, begun).await?;
    figure(
        "twelve-questions",
        all.questions,
        "questions answered by twelve people, one after the other",
    );
    figure("twelve-taps", all.taps, "taps for that, from the outing on");
    figure("twelve-keys", all.keys, "keys for that, the passphrase among them");
    browser.close().await
}

/// Asks whoever is next until nobody is left.
async fn everybody(browser: &Browser, mut all: Asked) -> Outcome<Asked> {
    browser.follow("main .rows a[href*='/answers/']").await?;
    all.taps += 1;
    for person in 1..=OTHERS.len() + 1 {
        let at = browser.address().await?;
        let name = at.split("/answers/").nth(1).and_then(|rest| rest.split('/').next());
        let asked = day::ask(browser, name.ok_or("nobody is asked")?).await?;
        all = Asked {
            questions: all.questions + asked.questions,
            taps: all.taps + asked.taps,
            keys: all.keys + asked.keys,
        };
        if person <= OTHERS.len() {
            browser.follow("main a.button[href*='/answers/']").await?;
            all.taps += 1;
        }
    }
    Ok(all)
}
