//! Substances: what things are. Tables of physical facts, each row with its source.
//!
//! Nothing here computes a tool's answer, formats or parses.

pub mod acid;
pub mod cold;
pub mod energy;
pub mod ethanol;
pub mod fruit;
pub mod juice;
pub mod milk;
pub mod mix;
pub mod ph;
pub mod sucrose;
