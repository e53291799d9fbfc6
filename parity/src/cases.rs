//! The requests that both machines answer.

use crate::door::{Factor, Request};
use ground::{DRAWS, Dimension, Dist, DistError, MeasureSystem, RandomStart};
use std::error::Error;

/// A request and the name it goes by in reports.
#[derive(Clone, Debug)]
pub struct Case {
    /// What it is about, fit for a file name.
    pub name: String,
    /// The request, as JSON.
    pub request: String,
}

/// Amounts as people write them, some of them wrong.
const SAID: [(&str, Dimension); 12] = [
    ("1½ cups", Dimension::Volume),
    ("2 x 150 ml", Dimension::Volume),
    ("10–12 g", Dimension::Mass),
    ("2 3/4 tsp", Dimension::Volume),
    ("1/3 oz", Dimension::Mass),
    ("60 % vol", Dimension::AlcoholShare),
    ("72 °F", Dimension::Temperature),
    ("0.1 mg", Dimension::Mass),
    ("3 cups", Dimension::Mass),
    ("-1 g", Dimension::Mass),
    ("12–10 g", Dimension::Mass),
    ("a pinch of luck", Dimension::Mass),
];

/// Every request, in order.
///
/// # Errors
/// When a distribution among them has parameters out of order.
pub fn cases() -> Result<Vec<Case>, Box<dyn Error>> {
    let columns = distributions()?.into_iter().flat_map(|(name, dist)| {
        [1, 1000, DRAWS].map(|draws| (format!("column-{name}-{draws}"), column(name, &dist, draws)))
    });
    let said = SAID.iter().enumerate().flat_map(|(i, (written, dimension))| {
        [None, Some(MeasureSystem::UsCustomary), Some(MeasureSystem::Imperial)]
            .into_iter()
            .enumerate()
            .map(move |(j, kitchen)| (format!("said-{i}-{j}"), said(written, *dimension, kitchen)))
    });
    columns.chain([("product".to_owned(), product()?)]).chain(said).map(case).collect()
}

fn case((name, request): (String, Request)) -> Result<Case, Box<dyn Error>> {
    Ok(Case { name, request: serde_json::to_string(&request)? })
}

fn distributions() -> Result<Vec<(&'static str, Dist)>, DistError> {
    Ok(vec![
        ("exact", Dist::exact(0.1)?),
        ("uniform", Dist::uniform(0.55, 0.85)?),
        ("log-uniform", Dist::log_uniform(0.003, 40.0)?),
        ("triangular", Dist::triangular(0.2, 0.3, 0.4)?),
        ("normal", Dist::normal(-3.0, 17.0)?),
        ("lognormal", Dist::log_normal(7.0, 32.0)?),
        ("empirical", Dist::empirical([3.0, 1.0, 4.0, 1.0, 5.0])?),
        ("or-zero", Dist::or_zero(0.4, Dist::log_normal(0.5, 8.0)?)?),
    ])
}

fn column(name: &str, dist: &Dist, draws: usize) -> Request {
    let factor = Factor { path: vec!["parity".to_owned(), name.to_owned()], dist: dist.clone() };
    Request::Column { start: RandomStart(1), draws, factor }
}

fn product() -> Result<Request, DistError> {
    let factors = distributions()?.into_iter().map(|(name, dist)| {
        let path = vec!["parity".to_owned(), name.to_owned()];
        Factor { path, dist }
    });
    Ok(Request::Product { start: RandomStart(1), draws: DRAWS, factors: factors.collect() })
}

fn said(written: &str, dimension: Dimension, kitchen: Option<MeasureSystem>) -> Request {
    Request::Said { written: written.to_owned(), dimension, kitchen }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_case_has_its_own_name_and_a_reply() {
        let cases = cases().unwrap();
        let names: BTreeSet<_> = cases.iter().map(|case| &case.name).collect();
        assert_eq!(names.len(), cases.len());
        for case in &cases {
            let reply = String::from_utf8(crate::answer(case.request.as_bytes())).unwrap();
            let fault = reply.starts_with("{\"fault\"");
            assert_eq!(fault, case.name.starts_with("said-10") || case.name.starts_with("said-11"));
        }
    }

    #[test]
    fn what_is_no_request_is_said_to_be_none() {
        let reply = String::from_utf8(crate::answer(b"{}")).unwrap();
        assert!(reply.starts_with("{\"fault\""), "{reply}");
    }
}
