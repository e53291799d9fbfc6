//! No room left: the screen says that nothing was kept, and what was filled in still stands.

use crate::ground::{Ground, Outcome, equal, figure};
use crate::outing;
use serde_json::json;

const NOT_KEPT: &str =
    "return document.querySelector('main .warned h2')?.innerText === 'This was not kept'";

/// The browser looks anew only now and then how much room there is: a database aside is written to until
/// that is refused.
const NO_ROOM: &str = "return new Promise((resolve) => {
    const aside = indexedDB.open('aside', 1);
    aside.onupgradeneeded = () => aside.result.createObjectStore('all', { autoIncrement: true });
    aside.onerror = () => resolve(true);
    aside.onsuccess = () => {
        const write = aside.result.transaction('all', 'readwrite');
        write.objectStore('all').add('something');
        write.oncomplete = () => resolve(false);
        write.onabort = () => resolve(true);
    };
})";

pub(crate) async fn run(ground: &mut Ground) -> Outcome {
    let browser = ground.browser("storage-full").await?;
    browser.load("/").await?;
    browser.kept().await?;
    let at = outing::begin(&browser).await?;
    browser.go(&format!("{at}/new/site")).await?;
    let said = [("called", "Weir Meadow"), ("landholder", "Oda Pellwright"), ("land", "private")];
    browser.fill(&said).await?;
    browser.fill(&[("jurisdiction", "england-and-wales"), ("public-right", "no")]).await?;
    let full = json!({ "origin": browser.origin, "quotaSize": 1 });
    browser.tool("Storage.overrideQuotaForOrigin", full).await?;
    browser.wait("storage to be full", NO_ROOM).await?;
    let mut refused = 0;
    for _ in 0..2 {
        browser.run("document.querySelector('main .warned')?.remove()", Vec::new()).await?;
        browser.tap("form.fill button:not(.quiet)").await?;
        browser.wait("word that it was not kept", NOT_KEPT).await?;
        refused += 1;
        for (field, says) in said {
            let holds = format!("return document.getElementById('field-{field}').value");
            equal(field, &browser.said(&holds).await?, &says.to_owned())?;
        }
    }
    let room = json!({ "origin": browser.origin });
    browser.tool("Storage.overrideQuotaForOrigin", room).await?;
    browser.keep().await?;
    equal("kept once there is room", &browser.rows().await?, &vec!["Weir Meadow".to_owned()])?;
    browser.load(&format!("{at}/rows/site")).await?;
    equal("kept", &browser.rows().await?, &vec!["Weir Meadow".to_owned()])?;
    browser.close().await?;
    figure("storage-full", refused, "tries without room: told, and the form left as it was");
    Ok(())
}
