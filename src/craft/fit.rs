//! Whether a drink fits its glass, with its ice: how high it stands, and what is left below the rim.
//!
//! What floats displaces its own mass of liquid, so a level stays as floating ice melts (Archimedes). What stands on the
//! bottom displaces only what of it is below the level. The liquid is taken as 1 g/ml: a drink with its water lies within
//! a twentieth of that. Sizes of ice and how close it lies: common practice, no source.

mod lying;

pub use lying::{Floe, lying};

use std::f64::consts::PI;

use super::vessel::Vessel;
use crate::quantity::{Mass, Ratio, Volume};
use crate::substance::cold::DENSITY_OF_ICE;

/// The room that a glass is carried with, mm below its rim. Common practice, no source.
pub const RIM: f64 = 5.0;
/// Less than this runs over unseen, ml.
const JUST: f64 = 1e-3;
/// The share of its room that ice in pieces fills. Common practice, no source.
pub const PACKED: f64 = 0.55;
/// The share of a glass that is filled with ice in pieces. Common practice, no source.
pub const FILLED: f64 = 0.8;

/// How much of the width of a rim a single piece takes at most, where it is not weighed.
const LOOSE: f64 = 0.9;

/// What ice stays in a glass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// None.
    None,
    /// Cubes of about 30 mm.
    Cubes,
    /// Bits of about 15 mm.
    Crushed,
    /// One large cube, of about 45 mm.
    Block,
    /// One sphere, of about 60 mm.
    Sphere,
    /// One long piece, for a tall glass.
    Spear,
}

/// A piece of ice, upright or round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IcePiece {
    /// What it weighs.
    pub mass: Mass,
    /// How high it stands, mm.
    pub high: f64,
    /// Whether it is a sphere; else its sides are upright, and it is square.
    pub is_round: bool,
}

/// How a drink stands in its glass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// How high, mm above the bottom inside; the rim where it runs over.
    pub level: f64,
    /// What still goes in.
    pub room: Volume,
    /// From the level to the rim, mm.
    pub room_mm: f64,
    /// What runs over.
    pub over: Option<Volume>,
    /// How many times the drink would stand [`RIM`] below the rim, with the same ice.
    pub scale: Ratio,
    /// Where the ice begins, mm above the bottom.
    pub ice_from: f64,
}

impl IcePiece {
    /// What room it takes, ml.
    fn ml(self) -> f64 {
        self.mass.g() / DENSITY_OF_ICE
    }

    /// A side of its square, or its diameter, mm.
    fn wide(self) -> f64 {
        if self.is_round { self.high } else { (self.ml() * 1000.0 / self.high).sqrt() }
    }

    /// What of it is below a height above its lowest point, ml.
    fn ml_to(self, height: f64) -> f64 {
        let share = (height / self.high).clamp(0.0, 1.0);
        // A cap of a sphere is πh²(3r − h)/3; the whole 4πr³/3.
        self.ml() * if self.is_round { share * share * (3.0 - 2.0 * share) } else { share }
    }

    /// How far it reaches from its axis at a height above its lowest point, mm.
    fn reach(self, height: f64) -> f64 {
        match self.is_round {
            true => (height * (self.high - height)).max(0.0).sqrt(),
            false => self.wide() * std::f64::consts::FRAC_1_SQRT_2,
        }
    }

    /// The lowest place at which it stands in a glass, mm above its bottom; none where it does not go in.
    #[must_use]
    pub fn stands(self, vessel: &Vessel) -> Option<f64> {
        let (height, widest) = (vessel.height(), self.reach(self.high / 2.0));
        let is_free = |from: f64| {
            (0..=8).map(|part| self.high * f64::from(part) / 8.0).all(|up| {
                let at = from + up;
                at > height || self.reach(up) <= vessel.radius_at(at)
            })
        };
        let places = (0..1000).map(f64::from).take_while(|from| *from < height);
        places.filter(|_| widest <= vessel.radius_at(height)).find(|from| is_free(*from))
    }
}

/// The ice of a kind that a glass is served with: of this mass, or the usual: one of its size that goes in, or pieces to four
/// fifths.
#[must_use]
pub fn pieces(kind: Kind, vessel: &Vessel, mass: Option<Mass>) -> Vec<IcePiece> {
    let full = vessel.ml_to(vessel.height()) * FILLED * PACKED * DENSITY_OF_ICE;
    let one = |high: f64, ml: f64, is_round: bool| {
        let usual = IcePiece { mass: grams_of(ml * DENSITY_OF_ICE), high, is_round };
        // Of two alike, the masses are as the cubes of their lengths.
        let times = match mass {
            Some(mass) => (mass.g() / usual.mass.g()).cbrt(),
            None => (LOOSE * vessel.radius_at(vessel.height()) / usual.reach(high / 2.0)).min(1.0),
        };
        vec![IcePiece { mass: grams_of(usual.mass.g() * times.powi(3)), high: high * times, is_round }]
    };
    let many = |high: f64| {
        let grams = mass.map_or(full, Mass::g);
        let count = (grams / (high.powi(3) / 1000.0 * DENSITY_OF_ICE)).round().clamp(1.0, 99.0);
        let each = grams / count;
        let high = (each / DENSITY_OF_ICE * 1000.0).cbrt();
        vec![IcePiece { mass: grams_of(each), high, is_round: false }; count as usize]
    };
    match kind {
        Kind::None => Vec::new(),
        Kind::Cubes => many(30.0),
        Kind::Crushed => many(15.0),
        Kind::Block => one(45.0, 91.125, false),
        Kind::Sphere => one(60.0, PI * 36.0, true),
        Kind::Spear => one(110.0, 99.0, false),
    }
}

fn grams_of(grams: f64) -> Mass {
    Mass::from_g(grams).unwrap_or(Mass::ZERO)
}

/// What floats in a glass, or stands in it.
struct Bed<'a> {
    vessel: &'a Vessel,
    ice: &'a [IcePiece],
    /// Where one piece stands.
    from: f64,
    /// What it displaces where it floats, ml.
    afloat: f64,
}

impl Bed<'_> {
    /// What it would displace below a level if it stood, ml.
    fn standing(&self, level: f64) -> f64 {
        match self.ice {
            [one] => one.ml_to(level - self.from),
            pile => {
                let all: f64 = pile.iter().map(|piece| piece.ml()).sum();
                (PACKED * self.vessel.ml_to(level)).min(all)
            }
        }
    }

    /// The liquid below a level, ml.
    fn liquid(&self, level: f64) -> f64 {
        self.vessel.ml_to(level) - self.standing(level).min(self.afloat)
    }

    /// Where the ice begins at a level, mm above the bottom.
    fn begins(&self, level: f64) -> f64 {
        if self.standing(level) < self.afloat {
            return self.from;
        }
        match self.ice {
            [] => level,
            [one] => level - lowest(one.high, |height| one.ml_to(height) >= self.afloat),
            _ => {
                let below = self.vessel.ml_to(level) - self.afloat / PACKED;
                lowest(level, |height| self.vessel.ml_to(height) >= below)
            }
        }
    }
}

/// The lowest height at which something that is true from there on is true.
fn lowest(height: f64, is_true: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.0, height);
    // Thirty halvings of a metre are a nanometre.
    for _ in 0..30 {
        let middle = f64::midpoint(low, high);
        if is_true(middle) { high = middle } else { low = middle }
    }
    high
}

/// How a drink stands in a glass with ice in it. A single piece that does not go in counts as floating.
#[must_use]
pub fn fit(vessel: &Vessel, drink: Volume, ice: Option<&[IcePiece]>) -> Fit {
    let ice = ice.unwrap_or_default();
    let from = if let [one] = ice { one.stands(vessel).unwrap_or(0.0) } else { 0.0 };
    let bed = Bed { vessel, ice, from, afloat: ice.iter().map(|piece| piece.mass.g()).sum() };
    let (brim, ml) = (vessel.height(), drink.ml());
    let all = bed.liquid(brim);
    let level = if ml < all { lowest(brim, |height| bed.liquid(height) >= ml) } else { brim };
    let volume = |ml: f64| Volume::from_ml(ml.max(0.0)).unwrap_or(Volume::ZERO);
    Fit {
        level,
        room: volume(all - ml),
        room_mm: brim - level,
        // A glass that is just full is not over: what it holds is only a number.
        over: (ml > all + JUST).then(|| volume(ml - all)),
        scale: Ratio::from_value(bed.liquid(brim - RIM) / ml).unwrap_or(Ratio::ZERO),
        ice_from: bed.begins(level),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::vessel::{CONE, COUPE, TALL, TUMBLER, WINE};

    #[track_caller]
    fn near(value: f64, expected: f64) {
        assert!((value - expected).abs() < 1e-4 * expected.abs().max(1.0), "{value} is not {expected}");
    }

    fn cylinder(radius: f64, height: f64) -> Vessel {
        Vessel { profile: vec![[0.0, radius], [height, radius]], stem: 0.0, foot: 0.0, base: 0.0 }
    }

    fn ml(ml: f64) -> Volume {
        Volume::from_ml(ml).expect("ml")
    }

    fn cube(side: f64) -> [IcePiece; 1] {
        [IcePiece { mass: grams_of(side.powi(3) / 1000.0 * DENSITY_OF_ICE), high: side, is_round: false }]
    }

    /// By hand: πr² = 1256.64 mm² at r = 20, so 1.25664 ml to the mm, 125.664 ml to a rim of 100 mm.
    #[test]
    fn a_cylinder_worked_by_hand() {
        let glass = cylinder(20.0, 100.0);
        let dry = fit(&glass, ml(50.0), None);
        near(dry.level, 39.7887);
        near(dry.room_mm, 60.2113);
        near(dry.room.ml(), 75.6637);
        assert_eq!(dry.over, None);
        // 95 mm hold 119.3805 ml.
        near(dry.scale.value(), 2.38761);
        // A cube of 20 mm floats: 8 × 0.91672 = 7.33376 ml of liquid make way for it, and 18.3344 mm of it are below.
        let iced = fit(&glass, ml(50.0), Some(&cube(20.0)));
        near(iced.level, 45.6247);
        near(iced.room.ml(), 68.3299);
        near(iced.ice_from, 45.6247 - 18.3344);
        near(iced.scale.value(), (119.3805 - 7.33376) / 50.0);
        // 140 ml run over by 14.336, and 0.85272 of it stands 5 mm below the rim.
        let full = fit(&glass, ml(140.0), None);
        near(full.over.expect("it runs over").ml(), 14.3363);
        near(full.scale.value(), 0.852_718);
        assert_eq!((full.level, full.room_mm, full.room), (100.0, 0.0, Volume::ZERO));
        // What is just full is not over.
        assert_eq!(fit(&glass, ml(125.66), None).over, None);
    }

    /// By hand: r = 30 is 2827.43 mm². A cube of 40 mm would float 36.67 mm deep. In 10 ml it stands on the bottom, and the
    /// liquid has 2827.43 − 1600 mm² to stand on: 8.1471 mm. From 45.012 ml on (36.6688 mm) it floats.
    #[test]
    fn what_stands_on_the_bottom_displaces_what_is_below_the_level() {
        let glass = cylinder(30.0, 100.0);
        let shallow = fit(&glass, ml(10.0), Some(&cube(40.0)));
        near(shallow.level, 8.14711);
        near(shallow.ice_from, 0.0);
        near(fit(&glass, ml(45.0090), Some(&cube(40.0))).level, 36.6688);
        let deep = fit(&glass, ml(100.0), Some(&cube(40.0)));
        near(deep.level, (100.0 + 64.0 * DENSITY_OF_ICE) / 2.82743);
        assert!(deep.ice_from > 0.0);
        // A pile takes 0.55 of what is below the level: 10 ml stand in 10 / 0.45 ml, 7.8595 mm.
        let pile = vec![cube(15.0)[0]; 40];
        near(fit(&glass, ml(10.0), Some(&pile)).level, 10.0 / 0.45 / 2.82743);
        // Afloat, its 123.757 g lie in 225.013 ml below a level of 323.757 ml: from 98.744 ml on.
        let tall = fit(&cylinder(30.0, 200.0), ml(200.0), Some(&pile));
        near(tall.level, 323.757 / 2.82743);
        near(tall.ice_from, 98.744 / 2.82743);
    }

    /// Archimedes: floating ice that melts leaves the level where it was.
    #[test]
    fn the_level_stays_as_floating_ice_melts() {
        for shape in [&TUMBLER, &TALL, &WINE, &COUPE] {
            let glass = shape.holding(300.0);
            for kind in [Kind::Cubes, Kind::Crushed, Kind::Block, Kind::Sphere] {
                let ice = pieces(kind, &glass, Mass::from_g(20.0).ok());
                let melted = fit(&glass, ml(220.0), None).level;
                near(fit(&glass, ml(200.0), Some(&ice)).level, melted);
            }
        }
    }

    /// A sphere of 60 mm is 113.10 ml; half of it lies below its middle, and by the cap a quarter of its height holds
    /// 10/64 of it: π·15²·(90 − 15)/3 = 17 671.5 mm³.
    #[test]
    fn a_sphere_worked_by_hand() {
        let [sphere] = pieces(Kind::Sphere, &TUMBLER.holding(300.0), None)[..] else { panic!("one") };
        near(sphere.ml(), 113.0973);
        near(sphere.ml_to(30.0), 56.5487);
        near(sphere.ml_to(15.0), 17.6715);
        near(sphere.reach(30.0), 30.0);
        near(sphere.wide(), 60.0);
        near(sphere.ml_to(99.0), 113.0973);
    }

    #[test]
    fn the_usual_ice_is_what_it_says() {
        let glass = TUMBLER.holding(300.0);
        let grams = |kind, mass| pieces(kind, &glass, mass).iter().map(|piece| piece.mass.g()).sum::<f64>();
        // 300 × 0.8 × 0.55 × 0.91672.
        near(grams(Kind::Cubes, None), 121.007);
        near(grams(Kind::Crushed, None), 121.007);
        near(grams(Kind::Block, None), 83.5361);
        near(grams(Kind::Sphere, None), 103.679);
        near(grams(Kind::Spear, None), 90.755);
        assert_eq!(pieces(Kind::None, &glass, None), []);
        for kind in [Kind::Cubes, Kind::Crushed, Kind::Block, Kind::Sphere, Kind::Spear] {
            near(grams(kind, Mass::from_g(80.0).ok()), 80.0);
        }
        assert_eq!(pieces(Kind::Cubes, &glass, None).len(), 5);
        assert_eq!(pieces(Kind::Cubes, &glass, Mass::from_g(10.0).ok()).len(), 1);
        // A block of an eighth the mass is half as high.
        near(pieces(Kind::Block, &glass, Mass::from_g(83.5361 / 8.0).ok())[0].high, 22.5);
        near(pieces(Kind::Spear, &glass, None)[0].wide(), 30.0);
    }

    #[test]
    fn what_is_too_wide_does_not_go_in() {
        let block = |shape: &crate::craft::vessel::Shape| {
            let glass = shape.holding(0.0);
            pieces(Kind::Block, &glass, Mass::from_g(83.5361).ok())[0].stands(&glass)
        };
        // Its corners are 31.8 mm out.
        assert_eq!(block(&TUMBLER), Some(0.0));
        assert_eq!(block(&TALL), None);
        assert_eq!(block(&WINE), None);
        // In a cone of 150 ml (1.90 mm at its foot, 47.55 at its rim, 60.86 high) it hangs on the wall: 39.9 mm up.
        let hangs = block(&CONE).expect("it goes in");
        near(hangs, 40.0);
        // Liquid that does not reach it stands as without it.
        let cone = CONE.holding(150.0);
        let block = pieces(Kind::Block, &cone, Mass::from_g(83.5361).ok());
        near(fit(&cone, ml(30.0), Some(&block)).level, fit(&cone, ml(30.0), None).level);
        // The usual one is as large as goes in: its corners at nine tenths of the rim.
        let glass = WINE.holding(140.0);
        let usual = pieces(Kind::Block, &glass, None)[0];
        near(usual.reach(0.0), 0.9 * glass.radius_at(glass.height()));
        assert!(usual.stands(&glass).is_some());
    }
}
