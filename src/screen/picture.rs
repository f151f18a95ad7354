//! Drawings of what is said, each with its words for those who do not see it.

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
    /// What changes with time.
    Curve {
        /// What it comes to, and when.
        text: String,
        /// At most two: the first solid, its axis at the left; the second dashed, its axis at the right.
        /// Two of one unit have one axis, at either side.
        lines: Vec<Line>,
        /// The time chosen, and the last drawn: seconds.
        seconds: [f64; 2],
        /// What stands along the foot: at how many seconds, and the words.
        foot: Vec<(f64, String)>,
    },
    /// Figures before and after a change, a pair of bars each.
    Changed(Vec<Changed>),
}

/// A line over time.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What stands at it: "ml water, right".
    pub name: &'static str,
    /// Seconds and value, in order.
    pub points: Vec<[f64; 2]>,
    /// Its value at the time chosen.
    pub now: f64,
    /// What stands behind each number of its axis: "°".
    pub unit: &'static str,
}

/// Rules across a curve, each with a number of either axis.
pub const RULES: u8 = 4;

impl Line {
    /// The lowest number of its axis, and the step from one to the next: whole, and so that it all lies between the first
    /// rule and the last.
    #[must_use]
    pub fn axis(&self) -> [f64; 2] {
        let values = self.points.iter().map(|[_, value]| *value);
        let [least, most] = values.fold([self.now; 2], |[least, most], value| [least.min(value), most.max(value)]);
        let steps = (0..9).flat_map(|power| [1.0, 2.0, 3.0, 5.0].map(|step: f64| step * 10_f64.powi(power)));
        let from = |step: f64| (least / step).floor() * step;
        let step = steps.into_iter().find(|step| from(*step) + f64::from(RULES - 1) * step >= most).unwrap_or(1e9);
        [from(step), step]
    }
}

/// A figure before and after a change.
#[derive(Clone, Debug, PartialEq)]
pub struct Changed {
    /// What of: "sugar".
    pub of: &'static str,
    /// Both as they are said: "106 → 136 g/l".
    pub said: String,
    /// Before, after.
    pub values: [f64; 2],
    /// Where it should be.
    pub aim: Option<f64>,
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
