//! What a browser asked of the network, by its own log: of pages, workers and keepers alike.

use crate::ground::Outcome;
use serde_json::Value;
use std::fs;
use std::path::Path;

/// The addresses that were asked for on behalf of an origin. What the browser asks on its own account,
/// such as whether there is a newer one, is none of them.
pub(crate) fn asked(log: &Path, origin: &str) -> Outcome<Vec<String>> {
    let text = fs::read_to_string(log)?;
    Ok(text.lines().filter_map(|line| address(line, origin)).collect())
}

/// Whether the browser has written its log to the end.
pub(crate) fn is_whole(log: &Path) -> bool {
    fs::read_to_string(log).is_ok_and(|text| text.trim_end().ends_with("\n}"))
}

/// The log holds an event a line.
fn address(line: &str, origin: &str) -> Option<String> {
    let event: Value = serde_json::from_str(line.trim_end_matches(',')).ok()?;
    let said = |what: &str| event.pointer(&format!("/params/{what}"))?.as_str();
    let site = origin.rsplit_once(':').map_or(origin, |(site, _)| site);
    let of_site = said("network_isolation_key").is_some_and(|key| key.contains(site));
    (said("initiator") == Some(origin) || of_site).then_some(said("url")?.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_event_of_the_origin_is_told_from_the_browsers_own() {
        let event = |initiator: &str, key: &str| {
            format!(
                "{{\"params\":{{\"initiator\":\"{initiator}\",\"network_isolation_key\":\"{key}\",\"url\":\"https://a.example/\"}}}},"
            )
        };
        let (origin, own) = ("http://localhost:4717", "https://b.example https://b.example");
        let found = |line: &str| address(line, origin).is_some();
        assert!(found(&event(origin, own)));
        assert!(found(&event("not an origin", "http://localhost http://localhost")));
        assert!(!found(&event("not an origin", own)));
        assert!(!found("{\"constants\":{"));
    }
}
