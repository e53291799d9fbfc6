//! Bytes of a request in, bytes of a reply out.

use desk::World;
use ground::{ContentId, RandomStart, Spread};
use jiff::civil::DateTime;
use serde::{Deserialize, Serialize};

/// Something asked of either machine.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Request {
    /// Every draw of one quantity, and its spread.
    Column { start: RandomStart, draws: usize, path: Vec<String>, dist: ground::Dist },
    /// Anything that the front door answers.
    Desk { now: DateTime, start: RandomStart, request: Box<desk::Request> },
}

/// What answers: the front door, and the herbal it knows.
pub struct Machine(World);

impl Machine {
    /// A machine that knows a herbal, as the program `herbal-data` compiles it.
    ///
    /// # Errors
    /// When the bytes are no herbal of this version.
    pub fn open(herbal: &[u8]) -> Result<Self, postcard::Error> {
        let (read, version) = (postcard::from_bytes(herbal)?, ContentId::of(herbal).to_string());
        Ok(Self(World::new(read, version, DateTime::default())))
    }

    /// The reply to a request, both as JSON. What cannot be read or done is said in the reply.
    #[must_use]
    pub fn answer(&mut self, request: &[u8]) -> Vec<u8> {
        let reply = serde_json::from_slice(request)
            .map_err(|error| error.to_string())
            .and_then(|request| self.reply(request))
            .and_then(|reply| serde_json::to_vec(&reply).map_err(|error| error.to_string()));
        reply.unwrap_or_else(|why| serde_json::json!({ "fault": why }).to_string().into_bytes())
    }

    fn reply(&mut self, request: Request) -> Result<serde_json::Value, String> {
        match request {
            Request::Column { start, draws, path, dist } => {
                let dist = dist.checked().map_err(|error| error.to_string())?;
                let path: Vec<_> = path.iter().map(String::as_str).collect();
                let mut draws = ground::Draws::of(start, draws);
                let column = draws.column(&path, &dist).map_err(|fault| fault.to_string())?;
                let column: Vec<f64> = column.iter().collect();
                let drawn: Vec<_> = column.iter().map(|draw| ground::Finite::new(*draw)).collect();
                json((drawn, Spread::of(column)))
            }
            Request::Desk { now, start, request } => {
                (self.0.now, self.0.random_start) = (now, start);
                match desk::answer(&self.0, *request) {
                    Ok(reply) => json(reply),
                    Err(faults) => json(serde_json::json!({ "faults": faults })),
                }
            }
        }
    }
}

fn json(value: impl Serialize) -> Result<serde_json::Value, String> {
    serde_json::to_value(value).map_err(|error| error.to_string())
}
