//! The glasses that a bar owns.

use crate::quantity::Volume;

/// A glass of the bar's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Glass {
    /// What it is called: "small wine glass".
    pub name: String,
    /// To the brim.
    pub holds: Volume,
    /// What its shape is called: "wine"; its name where none was written.
    pub shape: String,
}

/// Generic shapes with their usual sizes, a line each, as a bar would write its own. Common practice, no source.
pub const GENERIC: &str = "tumbler, 300 ml\ntall glass, 300 ml\nsmall wine glass, 140 ml\ncoupe, 180 ml\n\
                           cocktail glass, 150 ml\nflute, 160 ml\ngoblet, 600 ml\nmug, 350 ml\npint, 568 ml\nshot, 45 ml";
