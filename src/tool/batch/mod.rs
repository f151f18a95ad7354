//! Batch: bottling, and getting it all ready in time.

pub mod label;
pub mod run;
pub mod serves;
