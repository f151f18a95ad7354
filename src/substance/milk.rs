//! What is taken for granted about milk.

/// Grams of whole milk to the millilitre at 20 °C, from memory; cream is taken as the same.
pub const G_PER_ML: f64 = 1.030;

/// Usual range of drink to one part of milk, by volume. Common practice, no source.
pub const USUAL_DRINK_PER_MILK: std::ops::RangeInclusive<f64> = 3.0..=6.0;
