//! Ice in a vessel.

use super::{length, path};
use crate::app::draw::node::{Fixed, Node};
use crate::craft::fit::Floe;

/// The angles at which ice lies, as cosine and sine: upright; 18, −14, 8 and 25 degrees.
const TURNED: [[f64; 2]; 5] = [[1.0, 0.0], [0.951, 0.309], [0.970, -0.242], [0.990, 0.139], [0.906, 0.423]];
/// The corners of a piece, from its middle, in halves of its size.
const SQUARE: [[f64; 2]; 4] = [[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]];
/// The tangent of an eighth of a half turn: where the sides of an octagon about a circle meet.
const EIGHTH: f64 = 0.4142;
/// Those of a sphere, about it; its outline touches the middle of each side.
const OCTAGON: [[f64; 2]; 8] = [
    [1.0, -EIGHTH],
    [1.0, EIGHTH],
    [EIGHTH, 1.0],
    [-EIGHTH, 1.0],
    [-1.0, EIGHTH],
    [-1.0, -EIGHTH],
    [-EIGHTH, -1.0],
    [EIGHTH, -1.0],
];
/// What is smaller is drawn with a finer line, px.
const SMALL: f64 = 12.0;

/// How far ice reaches above the bottom of its vessel, mm.
pub(super) fn top(ice: &[Floe]) -> f64 {
    ice.iter().map(|floe| floe.at[1] + floe.size[1] / 2.0).fold(0.0, f64::max)
}

/// A piece in a vessel whose axis and bottom are there, px, so many to the mm.
pub(super) fn floe(floe: &Floe, [axis, bottom, scale]: [f64; 3]) -> Node {
    let [wide, high] = floe.size.map(|size| size * scale / 2.0);
    let [cos, sin] = TURNED[floe.turned % TURNED.len()];
    let mut d = String::new();
    let mut to = |how: char, [right, down]: [f64; 2]| {
        let (right, down) = (right * wide, down * high);
        d.push(how);
        d.push_str(&length(axis + floe.at[0] * scale + right * cos - down * sin));
        d.push(' ');
        d.push_str(&length(bottom - floe.at[1] * scale + right * sin + down * cos));
    };
    if floe.is_round {
        to('M', [1.0, 0.0]);
        for (at, corner) in OCTAGON.iter().enumerate().cycle().skip(1).take(OCTAGON.len()) {
            let next = OCTAGON[(at + 1) % OCTAGON.len()];
            to('Q', *corner);
            to(' ', [0, 1].map(|axis| f64::midpoint(corner[axis], next[axis])));
        }
    } else {
        SQUARE.iter().enumerate().for_each(|(at, corner)| to(if at == 0 { 'M' } else { 'L' }, *corner));
    }
    d.push('z');
    let class: Fixed = if wide * 2.0 < SMALL { &[("class", "ice fine")] } else { &[("class", "ice")] };
    path(class, d)
}
