//! What the milk wash takes for granted about milk.

/// Usual range of drink to one part of milk, by volume. Common practice, no source.
pub const USUAL_DRINK_PER_MILK: std::ops::RangeInclusive<f64> = 3.0..=6.0;
