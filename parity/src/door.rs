//! Bytes of a request in, bytes of a reply out.

use ground::{Dimension, Dist, Draws, Finite, MeasureSystem, RandomStart, Spoken, Spread};
use serde::{Deserialize, Serialize};

/// A doubtful quantity by its path of names.
#[derive(Serialize, Deserialize)]
pub(crate) struct Factor {
    pub(crate) path: Vec<String>,
    pub(crate) dist: Dist,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Request {
    /// Every draw of one quantity.
    Column { start: RandomStart, draws: usize, factor: Factor },
    /// The spread of a product of quantities.
    Product { start: RandomStart, draws: usize, factors: Vec<Factor> },
    /// An amount as people write it, in the base unit of a dimension.
    Said { written: String, dimension: Dimension, kitchen: Option<MeasureSystem> },
}

/// The reply to a request, both as JSON. What cannot be read or done is said in the reply.
#[must_use]
pub fn answer(request: &[u8]) -> Vec<u8> {
    let reply = serde_json::from_slice(request)
        .map_err(|error| error.to_string())
        .and_then(reply)
        .and_then(|reply| serde_json::to_vec(&reply).map_err(|error| error.to_string()));
    reply.unwrap_or_else(|why| serde_json::json!({ "fault": why }).to_string().into_bytes())
}

fn reply(request: Request) -> Result<serde_json::Value, String> {
    match request {
        Request::Column { start, draws, factor } => {
            json(finite(products(&mut Draws::of(start, draws), &[factor])?))
        }
        Request::Product { start, draws, factors } => {
            json(Spread::of(products(&mut Draws::of(start, draws), &factors)?))
        }
        Request::Said { written, dimension, kitchen } => {
            json(written.parse::<Spoken>()?.resolve(dimension, kitchen))
        }
    }
}

fn json(value: impl Serialize) -> Result<serde_json::Value, String> {
    serde_json::to_value(value).map_err(|error| error.to_string())
}

fn finite(draws: Vec<f64>) -> Vec<Option<Finite>> {
    draws.into_iter().map(Finite::new).collect()
}

fn products(draws: &mut Draws, factors: &[Factor]) -> Result<Vec<f64>, String> {
    let mut product = vec![1.0; draws.count()];
    for Factor { path, dist } in factors {
        let dist = dist.clone().checked().map_err(|error| error.to_string())?;
        let path: Vec<_> = path.iter().map(String::as_str).collect();
        let column = draws.column(&path, &dist).map_err(|fault| fault.to_string())?;
        product.iter_mut().zip(column.iter()).for_each(|(product, draw)| *product *= draw);
    }
    Ok(product)
}
