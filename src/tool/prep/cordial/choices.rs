//! What is chosen of a cordial.

use crate::book::{Ingredient, ingredient};
use crate::craft::cordial::Fill;
use crate::screen::choice;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Sugar and acid into juice.
    Make,
    /// A cordial in place of fresh lines of a spec.
    Swap,
}

choice! { Ask:
    Make = "make", "Make";
    Swap = "swap", "In place of citrus";
}

/// What it is made to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum To {
    /// The house's own proportions.
    House,
    /// A sweetness and an acidity.
    Target,
}

choice! { To:
    House = "house", "House recipe";
    Target = "target", "Brix and acid";
}

choice! { Fill:
    Juice = "juice", "All juice";
    Water = "water", "Same juice, add water";
}

/// How much of a swap is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum For {
    /// So many serves.
    Serves,
    /// As many as the juice there is makes.
    Juice,
}

choice! { For:
    Serves = "serves", "So many serves";
    Juice = "juice", "The juice I have";
}

/// Acids that go in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Blend {
    /// Citric.
    Citric,
    /// Two parts citric, one malic.
    TwoToOne,
    /// Malic.
    Malic,
    /// Tartaric.
    Tartaric,
}

choice! { Blend:
    Citric = "citric", "Citric";
    TwoToOne = "2:1", "Citric 2 to malic 1";
    Malic = "malic", "Malic";
    Tartaric = "tartaric", "Tartaric";
}

impl Blend {
    pub(super) fn parts(self) -> Vec<(&'static Ingredient, f64)> {
        let parts: &[(&str, f64)] = match self {
            Blend::Citric => &[("citric-acid", 1.0)],
            Blend::TwoToOne => &[("citric-acid", 2.0), ("malic-acid", 1.0)],
            Blend::Malic => &[("malic-acid", 1.0)],
            Blend::Tartaric => &[("tartaric-acid", 1.0)],
        };
        parts.iter().filter_map(|(key, part)| Some((ingredient(key)?, *part))).collect()
    }
}
