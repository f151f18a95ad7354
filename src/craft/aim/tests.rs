//! Each sum worked beside it; what may come is in `tests/properties/aiming.rs`.

use super::*;
use crate::quantity::{Abv, Brix, Density};
use crate::substance::acid::Acid;

fn g(value: f64) -> Mass {
    Mass::from_g(value).expect("a mass")
}

fn part(measure: Mix, now: f64) -> Part {
    Part { measure, now, is_fixed: false }
}

fn syrup() -> Mix {
    Mix::syrup(g(60.0), Brix::from_degrees(50.0).expect("°Bx"))
}

fn sour() -> Mix {
    Mix::acid(Acid::Citric, g(2.0)) + Mix::water(g(50.0))
}

/// A mix with the water of its ice: so much to its own volume.
fn watered(drink: &Mix, water: Ratio) -> Mix {
    let volume = drink.volume(Temperature::TWENTY).expect("a volume");
    *drink + Mix::water(volume * water * Density::WATER)
}

fn plain(drink: &Mix) -> Mix {
    *drink
}

fn to(of: Of, value: f64) -> Target {
    Target { of, value }
}

/// 30 g of sugar to 2 g of acid is 15 : 1. For 10 : 1 there is to be 3 g of acid, half as much again; or 20 g of sugar,
/// two thirds. The least moved is the sour: 51.2 ml × ½, against 48.9 ml × ⅓: so the syrup comes first.
#[test]
fn a_ratio_worked_by_hand() {
    let parts = [part(syrup(), 1.0), part(sour(), 1.0), part(Mix::water(g(1.0)), 0.0)];
    let found = aim(&parts, &[to(Of::SugarToAcid, 10.0)], &plain).expect("it can be hit");
    assert_eq!(found.len(), 2, "water changes no ratio");
    assert_eq!(found[0].to[0].0, 0);
    assert!((found[0].to[0].1 - 2.0 / 3.0).abs() < 1e-9, "{found:?}");
    assert_eq!(found[1].to[0].0, 1);
    assert!((found[1].to[0].1 - 1.5).abs() < 1e-9, "{found:?}");
    assert!((found[0].moved - ml(&syrup()) / 3.0).abs() < 1e-6);
}

/// 100 ml of 30 % vol to 15 % vol takes 99.68 ml of water, where 100 would be thought: by the OIML's densities
/// (OIML R 22, 1975) at 60 °F. Here all is at 20 °C, where the two have grown unlike by less than a tenth of a per cent.
#[test]
fn water_to_half_the_strength() {
    let gin = Mix::spirit(Volume::whole_ml(100), Abv::from_fraction(0.30).expect("a strength"));
    let parts = [part(gin, 1.0), part(Mix::water(g(1.0)), 0.0)];
    let found = aim(&parts, &[to(Of::Strength, 0.15)], &plain).expect("it can be hit");
    let (_, grams) = found.iter().find(|hit| hit.to[0].0 == 1).expect("by water").to[0];
    let poured = ml(&Mix::water(g(grams)));
    assert!((poured - 99.68).abs() < 0.1, "{poured}");
    // By the spirit alone it cannot be: it is all there is.
    assert_eq!(found.len(), 1);
}

/// 30 g of sugar and 2 g of acid; aimed at the half of both in the litre, it takes water alone, and of two parts none
/// that move nothing but themselves. With sour and syrup both are hit at once.
#[test]
fn sweet_and_sour_together() {
    let parts = [part(syrup(), 1.0), part(sour(), 1.0), part(Mix::water(g(1.0)), 60.0)];
    let now = drink(&parts, &[]);
    let (sugar, acid) = (stands(&now, Of::Sugar), stands(&now, Of::Acid));
    let targets = [to(Of::Sugar, sugar * 1.1), to(Of::Acid, acid * 0.8)];
    let found = aim(&parts, &targets, &plain).expect("it can be hit");
    let hit = found.iter().find(|hit| hit.to[0].0 == 0 && hit.to[1].0 == 1).expect("by both");
    let there = drink(&parts, &hit.to);
    assert!((stands(&there, Of::Sugar) / sugar - 1.1).abs() < 1e-9);
    assert!((stands(&there, Of::Acid) / acid - 0.8).abs() < 1e-9);
    assert!(found.windows(2).all(|pair| pair[0].moved <= pair[1].moved));
}

/// The water of the ice counts: 100 ml and half as much again, aimed at in the glass.
#[test]
fn it_is_aimed_at_in_the_glass() {
    let half = |drink: &Mix| watered(drink, Ratio::from_value(0.5).expect("a ratio"));
    let parts = [part(syrup(), 1.0), part(sour(), 1.0)];
    let sugar = stands(&half(&drink(&parts, &[])), Of::Sugar);
    let found = aim(&parts, &[to(Of::Sugar, sugar * 1.2)], &half).expect("it can be hit");
    for hit in found {
        assert!((stands(&half(&drink(&parts, &hit.to)), Of::Sugar) / sugar - 1.2).abs() < 1e-9);
    }
}

#[test]
fn what_is_fixed_stays() {
    let fixed = Part { is_fixed: true, ..part(syrup(), 1.0) };
    let found = aim(&[fixed, part(sour(), 1.0)], &[to(Of::SugarToAcid, 10.0)], &plain).expect("it can be hit");
    assert_eq!(found.iter().map(|hit| hit.to[0].0).collect::<Vec<_>>(), [1]);
    let alone = aim(&[fixed], &[to(Of::Sugar, 10.0)], &plain);
    assert_eq!(alone, Err(AimProblem::NoneBrings(Of::Sugar)));
}

/// Of 614.8 g/l of sugar and 39.1 g/l of acid (2 g in 51.2 ml), a share s of the syrup has 614.8 s of the one and 39.1 (1 − s)
/// of the other: at 307.4 g/l sugar no more than 19.5 g/l acid, whatever water does.
#[test]
fn how_near_both_come_is_where_one_part_is_gone() {
    let parts = [part(syrup(), 1.0), part(sour(), 1.0), part(Mix::water(g(1.0)), 20.0)];
    let sugar = to(Of::Sugar, 307.4);
    let missed = aim(&parts, &[sugar, to(Of::Acid, 25.0)], &plain);
    let Err(AimProblem::NotBoth(Some(near))) = missed else { panic!("{missed:?}") };
    assert!(near.of == Of::Acid && (near.value - 19.5).abs() < 0.2, "{near:?}");
    assert!(aim(&parts, &[sugar, to(Of::Acid, near.value * 0.999)], &plain).is_ok());
    assert!(aim(&parts, &[sugar, to(Of::Acid, near.value)], &plain).is_ok(), "with none of the water");
}

#[test]
fn what_cannot_be_hit_is_said_with_how_near_one_gets() {
    let parts = [part(syrup(), 1.0), part(Mix::water(g(1.0)), 40.0)];
    assert_eq!(aim(&parts, &[to(Of::Acid, 5.0)], &plain), Err(AimProblem::NoneBrings(Of::Acid)));
    assert_eq!(aim(&parts[..0], &[to(Of::Acid, 5.0)], &plain), Err(AimProblem::Nothing));
    // No sweeter than its syrup by itself: 614.8 g/l.
    let nearest = aim(&parts, &[to(Of::Sugar, 900.0)], &plain);
    let Err(AimProblem::Nearest(value)) = nearest else { panic!("{nearest:?}") };
    assert!((value - 614.8).abs() < 0.5, "{value}");
    let both = [to(Of::Sugar, 100.0), to(Of::Acid, 5.0)];
    assert_eq!(aim(&parts, &both, &plain), Err(AimProblem::NotBoth(Some(to(Of::Acid, 0.0)))));
    assert_eq!(aim(&parts, &[to(Of::Sugar, 900.0), both[1]], &plain), Err(AimProblem::NotBoth(None)));
}
