//! A drink in its glass: nothing is lost between what is filled, what is left and what the ice makes way for.

use proptest::prelude::*;

use meniscus::craft::fit::{Fit, IcePiece, Kind, RIM, fit, lying, pieces};
use meniscus::craft::vessel::{CONE, COUPE, FLUTE, GOBLET, MUG, PINT, SHOT, TALL, TUMBLER, Vessel, WINE};
use meniscus::quantity::{Mass, Volume};

/// A glass, with ice of any kind in it that goes in.
fn iced() -> impl Strategy<Value = (Vessel, Vec<IcePiece>)> {
    let shapes = [&TUMBLER, &TALL, &PINT, &SHOT, &MUG, &WINE, &GOBLET, &COUPE, &FLUTE, &CONE];
    let kinds = [Kind::None, Kind::Cubes, Kind::Crushed, Kind::Block, Kind::Sphere, Kind::Spear];
    let parts = (0..shapes.len(), 40.0_f64..900.0, 0..kinds.len(), 0.01_f64..0.45);
    parts.prop_map(move |(shape, holds, kind, share)| {
        let glass = shapes[shape].holding(holds);
        let ice = pieces(kinds[kind], &glass, Mass::from_g(holds * share).ok());
        (glass, ice)
    })
}

fn in_glass(glass: &Vessel, ice: &[IcePiece], ml: f64) -> Fit {
    fit(glass, Volume::from_ml(ml).expect("ml"), Some(ice))
}

fn grams(ice: &[IcePiece]) -> f64 {
    ice.iter().map(|piece| piece.mass.g()).sum()
}

proptest! {
    /// Drink and room are what the glass takes beside its ice, and the ice makes way for no more than its mass.
    #[test]
    fn nothing_is_lost((glass, ice) in iced(), share in 0.01_f64..1.5) {
        let brim = glass.ml_to(glass.height());
        let drink = brim * share;
        let found = in_glass(&glass, &ice, drink);
        let takes = drink + found.room.ml() - found.over.map_or(0.0, Volume::ml);
        let displaced = brim - takes;
        prop_assert!(displaced > -1e-6 && displaced <= grams(&ice) + 1e-6, "{displaced}");
        prop_assert_eq!(found.over.is_some(), drink > takes + 1e-3);
        if found.over.is_none() {
            let displaced = glass.ml_to(found.level) - drink;
            prop_assert!(displaced > -1e-4 && displaced <= grams(&ice) + 1e-4, "{displaced}");
        }
        prop_assert!((found.room_mm + found.level - glass.height()).abs() < 1e-9);
    }

    /// More drink stands higher; ice never lowers a level.
    #[test]
    fn it_rises_with_what_goes_in((glass, ice) in iced(), share in 0.01_f64..0.9, more in 0.001_f64..0.1) {
        let brim = glass.ml_to(glass.height());
        let [low, high] = [share, share + more].map(|share| in_glass(&glass, &ice, brim * share));
        prop_assert!(high.level >= low.level && high.room <= low.room && high.scale < low.scale);
        prop_assert!(low.level >= in_glass(&glass, &[], brim * share).level - 1e-6);
    }

    /// Made so many times, it stands a rim's room below the rim.
    #[test]
    fn what_is_scaled_fits((glass, ice) in iced(), share in 0.1_f64..1.5) {
        let drink = glass.ml_to(glass.height()) * share;
        let scale = in_glass(&glass, &ice, drink).scale.value();
        prop_assume!(scale * drink > 0.1);
        let made = in_glass(&glass, &ice, drink * scale);
        prop_assert!(made.over.is_none() && (made.room_mm - RIM).abs() < 1e-3, "{made:?}");
    }

    /// Ice that floats, melted, leaves the level where it was.
    #[test]
    fn melted_ice_stays_level((glass, ice) in iced(), share in 0.1_f64..1.0) {
        let drink = glass.ml_to(glass.height()) * share;
        let found = in_glass(&glass, &ice, drink);
        prop_assume!(found.over.is_none());
        let afloat = glass.ml_to(found.level) - drink >= grams(&ice) - 1e-4;
        let melted = in_glass(&glass, &[], drink + grams(&ice)).level;
        let holds = if afloat { (melted - found.level).abs() < 1e-3 } else { melted > found.level };
        prop_assert!(holds, "{melted} {found:?}");
    }

    /// Whatever is drawn is a number, and no lower than the bottom.
    #[test]
    fn ice_is_drawn_somewhere((glass, ice) in iced(), share in 0.0_f64..1.5) {
        let drink = glass.ml_to(glass.height()) * share;
        let found = in_glass(&glass, &ice, drink);
        for floe in lying(&glass, &found, &ice) {
            let [x, y] = floe.at;
            prop_assert!(x.is_finite() && y.is_finite() && floe.size[0] > 0.0 && y > 0.0 && x.abs() < 1e3, "{floe:?}");
        }
    }
}
