//! Glasses that a bar owns: "small wine glass, 140 ml, wine", a line each.

use super::amount::{Reading, read_amount};
use crate::book::Glass;
use crate::quantity::{Amount, Volume};

/// The largest glass, ml: a jug.
const LARGEST: f64 = 5000.0;

/// A glass, of its line: what it is called, what it holds to the brim, and what its shape is called, where its name does
/// not say that. None for what cannot be read, nothing, and more than five litres.
#[must_use]
pub fn read_glass(line: &str, reading: &Reading<'_>) -> Option<Glass> {
    let (name, rest) = line.split_once(',')?;
    let name = name.trim();
    // A decimal comma stands before a digit.
    let (amount, shape) = match rest.rsplit_once(',') {
        Some((amount, shape)) if !shape.trim_start().starts_with(|c: char| c.is_ascii_digit()) => (amount, shape),
        _ => (rest, ""),
    };
    let Ok(Some(Amount::Volume(holds))) = read_amount(amount, reading) else { return None };
    let shape = match shape.trim() {
        "" => name,
        shape => shape,
    };
    let is_glass = !name.is_empty() && holds > Volume::ZERO && holds.ml() <= LARGEST;
    is_glass.then(|| Glass { name: name.into(), holds, shape: shape.into() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Dimension};

    fn read(line: &str, decimal: Decimal) -> Option<(String, f64, String)> {
        let conventions = Conventions::default();
        let reading =
            Reading { conventions: &conventions, decimal, bare: Unit::Millilitre, kind: Dimension::Volume, own: &[] };
        read_glass(line, &reading).map(|glass| (glass.name, glass.holds.ml(), glass.shape))
    }

    #[test]
    fn a_line_is_a_name_a_size_and_maybe_a_shape() {
        let glass = |name: &str, ml, shape: &str| Some((name.to_owned(), ml, shape.to_owned()));
        for (line, expected) in [
            ("small wine glass, 140 ml", glass("small wine glass", 140.0, "small wine glass")),
            (" Nan's best ,14 cl,  wine ", glass("Nan's best", 140.0, "wine")),
            ("mug,350", glass("mug", 350.0, "mug")),
            ("mug, 350 ml,", glass("mug", 350.0, "mug")),
            ("jug, 5 l, mug", glass("jug", 5000.0, "mug")),
        ] {
            assert_eq!(read(line, Decimal::Point), expected, "{line}");
        }
        assert_eq!(read("stem, 14,5 cl, wine", Decimal::Comma), glass("stem", 145.0, "wine"));
        assert_eq!(read("stem, 14,5 cl", Decimal::Comma), glass("stem", 145.0, "stem"));
        for line in ["", "mug", "mug 350 ml", ", 350 ml", "mug, 0 ml", "mug, 6 l", "mug, lots", "mug, 200 g"] {
            assert_eq!(read(line, Decimal::Point), None, "{line}");
        }
    }

    #[test]
    fn the_generic_glasses_are_read() {
        let read: Vec<_> = crate::book::GENERIC.lines().filter_map(|line| read(line, Decimal::Comma)).collect();
        assert_eq!(read.len(), crate::book::GENERIC.lines().count());
    }
}
