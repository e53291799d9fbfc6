//! The same requests answered natively and in WebAssembly, to be compared byte for byte.
//!
//! [`Machine`] is all that runs on either side. The example `native` writes every request of [`cases`] with
//! its native reply; `run.mjs` feeds the requests to the module and compares.

#[cfg(target_arch = "wasm32")]
mod abi;
mod cases;
mod door;

pub use cases::{Case, cases};
pub use door::Machine;
