//! A label as lines of text and a code, placed in millimetres: drawn alike on screen, on paper and in a picture.

use crate::text::Qr;

/// A label, drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Width in mm.
    pub width: f64,
    /// Height in mm.
    pub height: f64,
    /// Its lines.
    pub texts: Vec<Placed>,
    /// A rule across it: left end, height and right end.
    pub rule: Option<[f64; 3]>,
    /// Its code, and where: left, top, side.
    pub code: Option<(Qr, [f64; 3])>,
    /// The key of the paper.
    pub paper: &'static str,
    /// How many to print.
    pub copies: usize,
    /// Whether something was left off, or is too small to be read.
    pub is_cut: bool,
}

/// A line of text in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// What it says.
    pub words: String,
    /// Left end of its baseline, mm.
    pub x: f64,
    /// Its baseline, mm.
    pub y: f64,
    /// Size of its letters, mm.
    pub size: f64,
    /// Whether it is heavy.
    pub is_heavy: bool,
}
