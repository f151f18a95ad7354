//! Vessels as solids of revolution: what stands in a jigger, a bottle or a glass, and how high.
//!
//! The shapes are drawn, not measured: common practice, no source. A shape is made larger or smaller, its proportions
//! kept, until it holds what it should.

use std::f64::consts::PI;

use crate::quantity::Volume;

/// A shape, whatever it holds. Lengths in mm, of which only the proportions count.
#[derive(Debug, PartialEq)]
pub struct Shape {
    /// What one of it usually holds to the brim, ml.
    pub usual_ml: f64,
    /// Its inside from the bottom up: height above the bottom, and radius there.
    profile: &'static [[f64; 2]],
    /// Whether it is blown round, and not made of straight walls.
    is_round: bool,
    /// Length of its stem; 0 for none.
    stem: f64,
    /// Radius of the foot under that.
    foot: f64,
    /// Thickness of its base.
    base: f64,
}

/// A vessel that holds so much. Lengths in mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Vessel {
    /// Its inside from the bottom up: height above the bottom, and radius there.
    pub profile: Vec<[f64; 2]>,
    /// Length of its stem; 0 for none.
    pub stem: f64,
    /// Radius of the foot under that.
    pub foot: f64,
    /// Thickness of its base.
    pub base: f64,
}

const fn plain(usual_ml: f64, profile: &'static [[f64; 2]], base: f64) -> Shape {
    Shape { usual_ml, profile, is_round: false, stem: 0.0, foot: 0.0, base }
}

const fn stemmed(usual_ml: f64, profile: &'static [[f64; 2]], [stem, foot]: [f64; 2]) -> Shape {
    Shape { usual_ml, profile, is_round: true, stem, foot, base: 0.0 }
}

/// A jigger: a cone without its tip.
pub const JIGGER: Shape = plain(45.0, &[[0.0, 11.0], [48.0, 22.0]], 0.0);
/// A bottle: body, shoulder, neck.
pub const BOTTLE: Shape = Shape {
    is_round: true,
    ..plain(700.0, &[[0.0, 32.0], [5.0, 38.0], [125.0, 38.0], [160.0, 34.0], [185.0, 13.0], [240.0, 13.0]], 0.0)
};
/// A bag of ice, tied.
pub const BAG: Shape = plain(
    5000.0,
    &[[0.0, 76.0], [14.0, 90.0], [150.0, 90.0], [196.0, 44.0], [206.0, 36.0], [216.0, 44.0], [236.0, 56.0]],
    0.0,
);
/// A low glass with a thick base.
pub const TUMBLER: Shape = plain(300.0, &[[0.0, 35.0], [86.0, 41.0]], 8.0);
/// A tall glass.
pub const TALL: Shape = plain(300.0, &[[0.0, 27.0], [142.0, 31.0]], 8.0);
/// A glass for beer.
pub const PINT: Shape = plain(568.0, &[[0.0, 29.0], [150.0, 43.0]], 5.0);
/// A glass for one mouthful.
pub const SHOT: Shape = plain(45.0, &[[0.0, 15.0], [58.0, 21.0]], 8.0);
/// A mug or a cup.
pub const MUG: Shape = plain(350.0, &[[0.0, 38.0], [92.0, 38.0]], 4.0);
/// A wine glass, closing towards its rim.
pub const WINE: Shape =
    stemmed(140.0, &[[0.0, 3.0], [4.0, 16.0], [24.0, 32.0], [52.0, 36.0], [78.0, 30.0], [90.0, 27.0]], [78.0, 34.0]);
/// A large one.
pub const GOBLET: Shape =
    stemmed(600.0, &[[0.0, 4.0], [5.0, 26.0], [30.0, 46.0], [66.0, 51.0], [100.0, 42.0]], [66.0, 38.0]);
/// A shallow bowl on a stem.
pub const COUPE: Shape = stemmed(180.0, &[[0.0, 2.0], [3.0, 18.0], [14.0, 40.0], [44.0, 48.0]], [86.0, 36.0]);
/// A tall narrow glass on a stem.
pub const FLUTE: Shape = stemmed(160.0, &[[0.0, 3.0], [10.0, 14.0], [90.0, 25.0], [150.0, 22.0]], [70.0, 30.0]);
/// A cone on a stem.
pub const CONE: Shape = stemmed(150.0, &[[0.0, 2.0], [64.0, 50.0]], [88.0, 36.0]);

impl Shape {
    /// A vessel of this shape that holds so many millilitres to the brim; its usual size where that is nothing.
    #[must_use]
    pub fn holding(&self, ml: f64) -> Vessel {
        let mut profile = self.profile.to_vec();
        if self.is_round {
            profile = smoothed(&smoothed(&profile));
        }
        let ml = if ml > 0.0 { ml } else { self.usual_ml };
        // Of two alike solids, the volumes are as the cubes of their lengths.
        let times = (ml / below(&profile, f64::INFINITY)).cbrt();
        for point in &mut profile {
            *point = point.map(|length| length * times);
        }
        Vessel { profile, stem: self.stem * times, foot: self.foot * times, base: self.base * times }
    }
}

impl Vessel {
    /// How high its inside is, mm.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.profile.last().map_or(0.0, |[height, _]| *height)
    }

    /// What it holds up to a height above its bottom, in ml.
    #[must_use]
    pub fn ml_to(&self, height: f64) -> f64 {
        below(&self.profile, height)
    }

    /// How high a volume stands in it, mm above its bottom; the brim for more than it holds.
    #[must_use]
    pub fn level(&self, volume: Volume) -> f64 {
        let (mut low, mut high) = (0.0, self.height());
        if self.ml_to(high) <= volume.ml() {
            return high;
        }
        // Forty halvings of a metre are less than an atom.
        for _ in 0..40 {
            let middle = f64::midpoint(low, high);
            if self.ml_to(middle) < volume.ml() { low = middle } else { high = middle }
        }
        f64::midpoint(low, high)
    }

    /// Its radius at a height above its bottom, mm.
    #[must_use]
    pub fn radius_at(&self, height: f64) -> f64 {
        let above = self.profile.windows(2).find(|pair| pair[1][0] >= height);
        above.map_or(0.0, |pair| between(pair, height))
    }

    /// Its radius where it is widest, foot included, mm.
    #[must_use]
    pub fn widest(&self) -> f64 {
        self.profile.iter().fold(self.foot, |widest, [_, radius]| widest.max(*radius))
    }
}

/// The radius between two points of a profile.
fn between(pair: &[[f64; 2]], height: f64) -> f64 {
    let [[bottom, wide], [top, wider]] = [pair[0], pair[1]];
    wide + (wider - wide) * (height - bottom) / (top - bottom)
}

/// The millilitres of a profile up to a height: frusta of cones, πh/3 · (R² + Rr + r²), one on another.
fn below(profile: &[[f64; 2]], height: f64) -> f64 {
    let frustum = |pair: &[[f64; 2]]| {
        let [bottom, radius] = pair[0];
        let top = pair[1][0].min(height);
        let upper = between(pair, top);
        PI * (top - bottom) / 3.0 * (radius * radius + radius * upper + upper * upper) / 1000.0
    };
    profile.windows(2).take_while(|pair| pair[0][0] < height).map(frustum).sum()
}

/// A profile with its corners cut: of each part the middle half, and the two ends.
fn smoothed(profile: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let (Some(first), Some(last)) = (profile.first(), profile.last()) else { return Vec::new() };
    let mut round = vec![*first];
    for pair in profile.windows(2) {
        let at = |share: f64| [0, 1].map(|axis| pair[0][axis] + (pair[1][axis] - pair[0][axis]) * share);
        round.extend([at(0.25), at(0.75)]);
    }
    round.push(*last);
    round
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [&Shape; 12] =
        [&JIGGER, &BOTTLE, &TUMBLER, &TALL, &PINT, &SHOT, &MUG, &WINE, &GOBLET, &COUPE, &FLUTE, &CONE];

    #[track_caller]
    fn near(value: f64, expected: f64) {
        assert!((value - expected).abs() < 1e-6 * expected.abs().max(1.0), "{value} is not {expected}");
    }

    /// By hand. A cylinder is πr²h: 20² × 50 × π = 62 831.85 mm³. A cone is a third of that, and half way up it holds
    /// an eighth. A frustum is the cone less its tip: of 40 mm to r = 20, with the lower 20 mm (r = 10) off,
    /// π/3 × (400 × 40 − 100 × 20) = 14 660.77 mm³.
    #[test]
    fn volumes_worked_by_hand() {
        near(below(&[[0.0, 20.0], [50.0, 20.0]], 50.0), 62.831_853_07);
        near(below(&[[0.0, 0.0], [50.0, 20.0]], 50.0), 20.943_951_02);
        near(below(&[[0.0, 0.0], [50.0, 20.0]], 25.0), 20.943_951_02 / 8.0);
        near(below(&[[0.0, 10.0], [20.0, 20.0]], 20.0), 14.660_765_72);
        // One on another, and no further than its brim.
        near(below(&[[0.0, 0.0], [20.0, 10.0], [40.0, 20.0]], 99.0), 16.755_160_82);
        near(below(&[[0.0, 20.0], [50.0, 20.0]], 0.0), 0.0);
        near(below(&[[0.0, 20.0], [50.0, 20.0]], -1.0), 0.0);
    }

    #[test]
    fn every_shape_holds_what_it_should() {
        for shape in ALL {
            for ml in [15.0, 44.36, 140.0, 700.0, 4_500.0] {
                let vessel = shape.holding(ml);
                near(vessel.ml_to(vessel.height()), ml);
                let twice = shape.holding(ml * 8.0);
                near(twice.height(), vessel.height() * 2.0);
                near(twice.widest(), vessel.widest() * 2.0);
                near(twice.stem, vessel.stem * 2.0);
                near(twice.base, vessel.base * 2.0);
                assert!(vessel.profile.iter().all(|[height, radius]| *height >= 0.0 && *radius > 0.0));
                assert!(vessel.profile.windows(2).all(|pair| pair[0][0] < pair[1][0]));
            }
            assert_eq!(shape.holding(0.0), shape.holding(shape.usual_ml));
        }
    }

    #[test]
    fn a_level_holds_its_volume_and_rises_with_it() {
        for shape in ALL {
            let vessel = shape.holding(200.0);
            let mut before = -1.0;
            for ml in 0..=200_u16 {
                let level = vessel.level(Volume::whole_ml(u32::from(ml)));
                assert!((vessel.ml_to(level) - f64::from(ml)).abs() < 1e-6, "{shape:?} {ml}");
                assert!(level > before && level <= vessel.height());
                before = level;
            }
            near(vessel.level(Volume::whole_ml(999)), vessel.height());
        }
    }

    /// The shoulder of a bottle is no corner, and what is straight stays so.
    #[test]
    fn what_is_blown_is_round() {
        let bottle = BOTTLE.holding(700.0);
        assert!(bottle.radius_at(bottle.height() * 125.0 / 240.0) < bottle.widest() * 0.99);
        let cone = CONE.holding(150.0);
        let (tip, brim) = (cone.radius_at(0.0), cone.radius_at(cone.height()));
        near(cone.radius_at(cone.height() / 2.0), f64::midpoint(tip, brim));
        near(tip / brim, 2.0 / 50.0);
    }

    /// Half of what a cylinder holds stands half way up; of a cone, at the cube root of a half: 0.793 70.
    #[test]
    fn levels_worked_by_hand() {
        let mug = MUG.holding(300.0);
        near(mug.level(Volume::whole_ml(150)), mug.height() / 2.0);
        near(mug.radius_at(mug.height() / 3.0), mug.widest());
        let profile = vec![[0.0, 0.0], [60.0, 30.0]];
        let cone = Vessel { profile, stem: 0.0, foot: 0.0, base: 0.0 };
        let whole = cone.ml_to(60.0);
        near(cone.level(Volume::from_ml(whole / 2.0).expect("ml")), 60.0 * 0.793_700_526);
        near(cone.radius_at(30.0), 15.0);
    }
}
