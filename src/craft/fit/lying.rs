//! Where the ice in a glass lies, to draw it.

use super::{Fit, IcePiece, PACKED, lowest};
use crate::craft::vessel::Vessel;

/// A piece of ice as it is drawn, from the front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Floe {
    /// Its middle: to the right of the axis of the glass, and above the bottom, mm.
    pub at: [f64; 2],
    /// How wide and how high it is, mm.
    pub size: [f64; 2],
    /// Whether it is round.
    pub is_round: bool,
    /// Which of a few angles it lies at; 0 is upright.
    pub turned: usize,
}

/// Most pieces that are drawn.
const MOST: usize = 40;
/// What a piece in a pile is drawn as, of what it is: it lies at an angle.
const DRAWN: f64 = 0.8;

/// The ice of a glass in which it stands so: one piece upright on the axis, of more those that are seen from the front.
#[must_use]
pub fn lying(vessel: &Vessel, fit: &Fit, ice: &[IcePiece]) -> Vec<Floe> {
    let [first, ..] = ice else { return Vec::new() };
    let (wide, brim) = (first.wide(), vessel.height());
    if ice.len() == 1 {
        let at = [0.0, fit.ice_from + first.high / 2.0];
        return vec![Floe { at, size: [wide, first.high], is_round: first.is_round, turned: 0 }];
    }
    // A pile reaches as high as what it lies in; over the rim its sides are taken as upright.
    let bulk = vessel.ml_to(fit.ice_from) + ice.iter().map(|piece| piece.ml()).sum::<f64>() / PACKED;
    let rim = vessel.radius_at(brim);
    let heaped = (bulk - vessel.ml_to(brim)).max(0.0) * 1000.0 / (std::f64::consts::PI * rim * rim);
    let top = lowest(brim, |height| vessel.ml_to(height) >= bulk) + heaped;
    let rows = ((top - fit.ice_from) / wide).round().max(1.0);
    let step = (top - fit.ice_from) / rows;
    let (mut floes, most) = (Vec::new(), ice.len().min(MOST));
    for row in 0..rows as usize {
        let up = top - step * (row as f64 + 0.5);
        let reach = vessel.radius_at(up.clamp(0.0, brim)).min(vessel.radius_at((up - wide / 2.0).clamp(0.0, brim)));
        let side_by_side = (2.0 * reach / wide).floor().max(1.0);
        let apart = 2.0 * reach / side_by_side;
        for column in 0..side_by_side as usize {
            if floes.len() < most {
                let turned = 1 + (row * 3 + column) % 4;
                let size = [wide * DRAWN; 2];
                // One beside the other a little lower, as they fall.
                let drop = if column % 2 == 1 { step * 0.25 } else { 0.0 };
                let at = [(column as f64 + 0.5) * apart - reach, (up - drop).max(size[0] / 2.0)];
                floes.push(Floe { at, size, is_round: false, turned });
            }
        }
    }
    floes
}

#[cfg(test)]
mod tests {
    use super::super::{Kind, fit, pieces};
    use super::*;
    use crate::craft::vessel::{TALL, TUMBLER};
    use crate::quantity::Volume;

    #[test]
    fn ice_lies_within_its_glass_and_floats_a_little_above_the_level() {
        for (shape, kind) in [(&TUMBLER, Kind::Cubes), (&TALL, Kind::Crushed), (&TUMBLER, Kind::Block)] {
            let glass = shape.holding(300.0);
            let ice = pieces(kind, &glass, None);
            let fitted = fit(&glass, Volume::whole_ml(120), Some(&ice));
            let floes = lying(&glass, &fitted, &ice);
            assert!(!floes.is_empty() && floes.len() <= MOST);
            for floe in &floes {
                assert!(floe.at[0].abs() + floe.size[0] / 2.0 <= glass.widest(), "{kind:?} {floe:?}");
                assert!(floe.at[1] >= floe.size[1] / 2.0, "{kind:?} {floe:?}");
            }
            let top = floes.iter().map(|floe| floe.at[1] + floe.size[1] / 2.0).fold(0.0, f64::max);
            assert!(top > fitted.level, "{kind:?} {top} {}", fitted.level);
        }
        let glass = TUMBLER.holding(300.0);
        let none = fit(&glass, Volume::whole_ml(120), None);
        assert_eq!(lying(&glass, &none, &[]), []);
    }
}
