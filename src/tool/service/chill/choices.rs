//! What is chosen in Chill.

use crate::craft::chill::{Material, Method};
use crate::quantity::{Mass, Ratio};
use crate::screen::choice;

choice! { Method:
    Stir = "stir", "Stir";
    Shake = "shake", "Shake";
    Throw = "throw", "Throw";
    Swizzle = "swizzle", "Swizzle";
    Build = "build", "Build";
    Block = "block", "Block";
}

/// What a drink by a method is called, and the text of the shelf on how fast that goes.
pub(super) const fn called(method: Method) -> (&'static str, &'static str) {
    match method {
        Method::Stir => ("stirred", "pace_stir"),
        Method::Shake => ("shaken", "pace_shake"),
        Method::Throw => ("thrown", "pace_throw"),
        Method::Swizzle => ("swizzled", "pace_swizzle"),
        Method::Build => ("on crushed ice", "pace_build"),
        Method::Block => ("over a block", "pace_block"),
    }
}

/// Whether there is water on the ice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wet {
    /// As usual for its method.
    Usual,
    /// None.
    Dry,
    /// As from a well that has stood.
    Wet,
}

choice! { Wet:
    Usual = "usual", "As usual";
    Dry = "dry", "Dry";
    Wet = "wet", "Wet";
}

impl Wet {
    /// Of the mass of the ice, what is water on it. Common practice, no source.
    pub(super) fn share(self, usual: Ratio) -> Ratio {
        match self {
            Wet::Usual => usual,
            Wet::Dry => Ratio::ZERO,
            Wet::Wet => Ratio::from_value(0.1).unwrap_or(usual),
        }
    }
}

/// What a drink is chilled in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Vessel {
    /// Nothing that counts.
    Uncounted,
    /// A mixing glass.
    Glass,
    /// A tin of steel.
    Tin,
}

choice! { Vessel:
    Uncounted = "none", "Not counted";
    Glass = "glass", "Glass";
    Tin = "tin", "Tin";
}

impl Vessel {
    /// What it is made of, and its usual mass. Common practice, no source.
    pub(super) fn made_of(self) -> Option<(Material, Mass)> {
        let grams = |g| Mass::from_g(g).unwrap_or(Mass::ZERO);
        match self {
            Vessel::Uncounted => None,
            Vessel::Glass => Some((Material::Glass, grams(500.0))),
            Vessel::Tin => Some((Material::Steel, grams(250.0))),
        }
    }
}
