//! Small drawings of what is said, each with its words for those who do not see it.

use crate::craft::fit::Floe;
use crate::craft::vessel::Vessel;

/// The widest picture of a strip, px.
pub const WIDEST: f64 = 130.0;
/// The highest, px.
pub const HIGHEST: f64 = 90.0;

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Picture {
    /// Vessels side by side, drawn to one scale.
    Vessels {
        /// What they are, and how full.
        text: String,
        /// From the left.
        vessels: Vec<Filled>,
    },
    /// Bars of what something is made of.
    Shares {
        /// One under the other.
        bars: Vec<Bar>,
        /// What each part is, in the order of the bars.
        key: Vec<(Hatch, String)>,
    },
    /// Where a pH lies, and where milk clots.
    PhLine {
        /// Both in words.
        text: String,
        /// pH: least, likely, most.
        ph: [f64; 3],
        /// As it is said at its mark: "3.0 (2.9–3.1)".
        said: String,
        /// Where milk clots, and that as it is said.
        clots: (f64, String),
    },
}

/// A vessel, how high the liquid stands in it, mm above its bottom, and the ice in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// The vessel.
    pub vessel: Vessel,
    /// The level; 0 for an empty one.
    pub level: f64,
    /// Its ice, piece by piece.
    pub ice: Vec<Floe>,
}

/// A bar of shares.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// What of: "sugar"; empty where the heading says it.
    pub of: &'static str,
    /// Its parts in words: "gin 57 %, lemon juice 43 %".
    pub text: String,
    /// Its parts: what is drawn, and what fraction of the whole it is. They come to 1.
    pub parts: Vec<(Hatch, f64)>,
}

/// How a part is drawn: a colour and a hatch of its own, so that neither alone tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hatch {
    /// Plain.
    Strong,
    /// Diagonal lines.
    Sweet,
    /// Dots.
    Sour,
    /// Lines.
    Bitter,
    /// Crossed lines.
    Curd,
    /// Light.
    Milk,
    /// Empty.
    Water,
}

impl Hatch {
    /// All of them, in the order in which they are drawn.
    pub const ALL: [Hatch; 7] =
        [Hatch::Strong, Hatch::Sweet, Hatch::Sour, Hatch::Bitter, Hatch::Curd, Hatch::Milk, Hatch::Water];

    /// In a word.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Hatch::Strong => "strong",
            Hatch::Sweet => "sweet",
            Hatch::Sour => "sour",
            Hatch::Bitter => "bitter",
            Hatch::Curd => "curd",
            Hatch::Milk => "milk",
            Hatch::Water => "water",
        }
    }
}
