//! What must hold for every input, tried on many.

mod adjusting;
mod aiming;
mod bottling;
mod buying;
mod chilling;
mod costing;
mod differing;
#[path = "../faulty/mod.rs"]
mod faulty;
mod figures;
mod fit;
mod ice;
mod import;
mod ledger;
mod mixing;
mod pad_and_text;
mod prep;
mod preps;
mod recipes;
mod runs;
mod scaling;
mod strangers;
mod texts;

use proptest::prelude::*;

use meniscus::quantity::{Ratio, Volume};

/// A volume between a drop and a tank.
fn volumes() -> impl Strategy<Value = Volume> {
    (0.05_f64..1e6).prop_map(|ml| Volume::from_ml(ml).expect("in range"))
}

/// A factor that a person would scale by.
fn factors() -> impl Strategy<Value = Ratio> {
    (0.01_f64..1e3).prop_map(|value| Ratio::from_value(value).expect("in range"))
}
