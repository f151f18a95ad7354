//! How long what was made is kept.

/// Days, the day of making counted, that ready-to-eat food which must be kept cold is kept at 5 °C or less. Source: FDA
/// Food Code 3-501.17, from memory. A local food code goes first.
pub const COLD_DAYS: u32 = 7;

/// Fresh juice is best the day it is pressed. Common practice, no source.
pub const JUICE_DAYS: u32 = 1;

/// pH above which a preserve is no acid food. Source: 21 CFR 114.3.
pub const ACID_FOOD: f64 = 4.6;
