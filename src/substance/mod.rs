//! Substances: what things are. Tables of physical facts, each row with its source.
//!
//! Nothing here computes a tool's answer, formats or parses.

pub mod acid;
pub mod density;
pub mod juice;
pub mod milk;
