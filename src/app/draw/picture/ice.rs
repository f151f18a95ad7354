//! Ice in a vessel.

use super::{length, path};
use crate::app::draw::node::{Fixed, Node};
use crate::craft::fit::Floe;

/// The angles at which ice lies, as cosine and sine: upright; 18, −14, 8 and 25 degrees.
const TURNED: [[f64; 2]; 5] = [[1.0, 0.0], [0.951, 0.309], [0.970, -0.242], [0.990, 0.139], [0.906, 0.423]];
/// The corners of a piece, from its middle, in halves of its size.
const CORNERS: [[f64; 2]; 4] = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]];
/// What is smaller is drawn with a finer line, px.
const SMALL: f64 = 12.0;

/// How far ice reaches above the bottom of its vessel, mm.
pub(super) fn top(ice: &[Floe]) -> f64 {
    ice.iter().map(|floe| floe.at[1] + floe.size[1] / 2.0).fold(0.0, f64::max)
}

/// A piece in a vessel whose axis and bottom are there, px, so many to the mm.
pub(super) fn floe(floe: &Floe, [axis, bottom, scale]: [f64; 3]) -> Node {
    let [x, y] = [axis + floe.at[0] * scale, bottom - floe.at[1] * scale];
    let [wide, high] = floe.size.map(|size| size * scale / 2.0);
    let class: Fixed = if wide * 2.0 < SMALL { &[("class", "ice fine")] } else { &[("class", "ice")] };
    let d = if floe.is_round {
        let (radius, across) = (length(wide), length(wide * 2.0));
        format!(
            "M{} {}a{radius} {radius} 0 1 0 {across} 0a{radius} {radius} 0 1 0 -{across} 0z",
            length(x - wide),
            length(y)
        )
    } else {
        let [cos, sin] = TURNED[floe.turned % TURNED.len()];
        let mut d = String::new();
        for [right, down] in CORNERS {
            d.push(if d.is_empty() { 'M' } else { 'L' });
            let (right, down) = (right * wide, down * high);
            d.push_str(&length(x + right * cos - down * sin));
            d.push(' ');
            d.push_str(&length(y + right * sin + down * cos));
        }
        d.push('z');
        d
    };
    path(class, d)
}
