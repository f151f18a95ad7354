//! Service: mid-shift, one drink at a time.

pub mod balance;
pub mod measure;
pub mod scale;
