//! What an amount that is written in a unit is measured in, and the parts of it that a bar measures.

use crate::book::House;
use crate::quantity::{Size, Unit, Volume};

/// Dashes anybody counts out: a dozen. Common practice, no source; so are the spoons.
const MOST_DASHES: f64 = 12.5;
/// Spoons anybody counts out: half a dozen.
const MOST_SPOONS: f64 = 6.25;
/// Drops anybody counts out.
const MOST_DROPS: f64 = 20.5;
/// Ounces from which on nobody measures eighths and thirds.
const FINE_BELOW: f64 = 4.0;
/// Parts that a bar measures, the usual first.
const PARTS: [f64; 3] = [1.0 / 4.0, 1.0 / 8.0, 1.0 / 3.0];
/// How near to a part is that part, in parts: an eighth of a percent of an ounce.
const NEAR: f64 = 0.01;

/// The unit that a volume written in `unit` is measured in, and the part of that unit which it is rounded to: whole dashes
/// up to a dozen, then barspoons; quarters of an ounce. None where that is millilitres.
#[must_use]
pub fn measured_in(volume: Volume, unit: Unit, house: &House) -> Option<(Unit, f64)> {
    let count = |unit: Unit| match unit.size(&house.conventions) {
        Size::Volume(one) => volume.ml() / one.ml(),
        Size::Mass(_) => 0.0,
    };
    let large = (house.usual_unit == Unit::Ounce).then_some(Unit::Ounce);
    let unit = match unit {
        Unit::Dash if count(Unit::Dash) < MOST_DASHES => return Some((Unit::Dash, 1.0)),
        Unit::Drop if count(Unit::Drop) < MOST_DROPS => return Some((Unit::Drop, 1.0)),
        Unit::Dash | Unit::Barspoon if count(Unit::Barspoon) < MOST_SPOONS => return Some((Unit::Barspoon, 0.5)),
        Unit::Teaspoon | Unit::Tablespoon if count(unit) < MOST_SPOONS => unit,
        Unit::Dash | Unit::Drop | Unit::Barspoon | Unit::Teaspoon | Unit::Tablespoon => large?,
        unit if unit.is_metric_volume() || unit.weighs() => return None,
        unit => unit,
    };
    let value = count(unit);
    // Less than a sixteenth of it: dashes, as long as they can be counted.
    if value < 1.0 / 16.0 {
        return (count(Unit::Dash) < MOST_DASHES).then_some((Unit::Dash, 1.0));
    }
    let is_whole = |part: &f64| ((value / part) - (value / part).round()).abs() < NEAR;
    let fine = PARTS.into_iter().find(is_whole).filter(|_| value < FINE_BELOW);
    Some((unit, fine.unwrap_or(if value < 0.5 { PARTS[1] } else { PARTS[0] })))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Conventions;
    use crate::substance::energy::StandardDrink;

    fn measured(number: f64, unit: Unit, usual_unit: Unit) -> Option<(Unit, f64)> {
        let house = House {
            conventions: Conventions::default(),
            usual_unit,
            jiggers: Vec::new(),
            region: StandardDrink::default(),
            citrus: crate::substance::juice::Citrus::default(),
        };
        let Size::Volume(one) = unit.size(&house.conventions) else { panic!("a volume") };
        measured_in(Volume::from_ml(number * one.ml()).expect("a volume"), unit, &house)
    }

    #[test]
    fn dashes_stay_dashes_up_to_a_dozen_then_spoons_then_what_the_bar_counts_in() {
        let dash = |number, usual| measured(number, Unit::Dash, usual);
        assert_eq!(dash(4.0, Unit::Millilitre), Some((Unit::Dash, 1.0)));
        assert_eq!(dash(12.0, Unit::Millilitre), Some((Unit::Dash, 1.0)));
        assert_eq!(dash(13.0, Unit::Millilitre), Some((Unit::Barspoon, 0.5)));
        assert_eq!(dash(36.0, Unit::Millilitre), Some((Unit::Barspoon, 0.5)));
        assert_eq!(dash(72.0, Unit::Millilitre), None);
        assert_eq!(dash(72.0, Unit::Ounce), Some((Unit::Ounce, 0.25)));
        assert_eq!(dash(12.5, Unit::Millilitre), Some((Unit::Barspoon, 0.5)));
    }

    /// Drops to twenty, spoons to six; beyond, what the bar counts in: ounces, or millilitres.
    #[test]
    fn drops_and_spoons_are_counted_as_far_as_anybody_counts() {
        let (ml, oz) = (Unit::Millilitre, Unit::Ounce);
        for (number, unit, usual, expected) in [
            (20.0, Unit::Drop, ml, Some((Unit::Drop, 1.0))),
            (20.5, Unit::Drop, ml, None),
            (21.0, Unit::Drop, ml, None),
            // 21 drops of 0.05 ml are 1.05 ml, under a sixteenth of an ounce: dashes.
            (21.0, Unit::Drop, oz, Some((Unit::Dash, 1.0))),
            (6.0, Unit::Barspoon, ml, Some((Unit::Barspoon, 0.5))),
            (6.25, Unit::Barspoon, ml, None),
            (7.0, Unit::Barspoon, oz, Some((oz, 0.25))),
            (6.0, Unit::Teaspoon, ml, Some((Unit::Teaspoon, 0.25))),
            (6.25, Unit::Teaspoon, ml, None),
            (7.0, Unit::Teaspoon, ml, None),
            (7.0, Unit::Teaspoon, oz, Some((oz, 0.25))),
            (2.0, Unit::Tablespoon, ml, Some((Unit::Tablespoon, 0.25))),
            (7.0, Unit::Tablespoon, ml, None),
            (0.5, Unit::Cup, ml, Some((Unit::Cup, 0.25))),
            (3.0, Unit::Centilitre, oz, None),
        ] {
            assert_eq!(measured(number, unit, usual), expected, "{number} {unit:?}");
        }
    }

    /// Thirds and eighths below four ounces, where they are hit to a hundredth of a part; a sixteenth is not yet dashes; and
    /// dashes of a tenth of a millilitre are too many to count.
    #[test]
    fn how_fine_an_ounce_is_measured() {
        let part = |number| measured(number, Unit::Ounce, Unit::Millilitre).map(|(_, part)| part);
        for (number, expected) in [
            (1.0 / 3.0, 1.0 / 3.0),
            (10.0 / 3.0, 1.0 / 3.0),
            (13.0 / 3.0, 0.25),
            (3.875, 0.125),
            (4.125, 0.25),
            (0.375 + 0.001, 0.125),
            (1.375 + 0.002, 0.25),
            (1.0 / 16.0, 0.125),
            (0.45, 0.125),
            (0.55, 0.25),
        ] {
            assert_eq!(part(number), Some(expected), "{number}");
        }
        let house = House {
            conventions: Conventions { dash: Volume::from_ml(0.1).expect("a dash"), ..Conventions::default() },
            usual_unit: Unit::Millilitre,
            jiggers: Vec::new(),
            region: StandardDrink::default(),
            citrus: crate::substance::juice::Citrus::default(),
        };
        let of = |ml: f64| measured_in(Volume::from_ml(ml).expect("a volume"), Unit::Ounce, &house);
        assert_eq!((of(1.2), of(1.25), of(1.3)), (Some((Unit::Dash, 1.0)), None, None));
    }

    #[test]
    fn ounces_are_measured_in_the_fractions_of_a_bar() {
        let ounces = |number| measured(number, Unit::Ounce, Unit::Millilitre);
        for (number, part) in [(1.75, 0.25), (1.1, 0.25), (27.1, 0.25), (0.375, 0.125), (0.3, 0.125), (27.125, 0.25)] {
            assert_eq!(ounces(number), Some((Unit::Ounce, part)), "{number}");
        }
        assert_eq!(ounces(2.0 / 3.0), Some((Unit::Ounce, 1.0 / 3.0)));
        assert_eq!(ounces(0.05), Some((Unit::Dash, 1.0)));
        assert_eq!(measured(45.0, Unit::Millilitre, Unit::Ounce), None);
    }
}
