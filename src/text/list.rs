//! Lists of measures, for the lines inside a jigger: "½; ¾; 1 oz".

use super::amount::{AmountProblem, Reading, read_amount};
use super::number::starts_number;
use super::units::{typed, unit_of};
use crate::book::Mark;
use crate::quantity::Amount;

/// Reads measures parted by ";" or "·". A unit at the end serves all before it that have none.
///
/// # Errors
/// The first measure that can't be read.
pub fn read_marks(text: &str, reading: &Reading<'_>) -> Result<Vec<Mark>, AmountProblem> {
    let parts: Vec<&str> = text.split([';', '·']).map(str::trim).filter(|part| !part.is_empty()).collect();
    let shared = parts.last().and_then(|last| unit_of(unit_text(last))).unwrap_or(reading.bare);
    let reading = Reading { bare: shared, ..*reading };
    parts
        .into_iter()
        .map(|part| match read_amount(part, &reading)? {
            Some(Amount::Volume(volume)) => {
                let label =
                    if unit_text(part).is_empty() { format!("{part} {}", typed(shared)) } else { part.to_owned() };
                Ok(Mark { label, volume })
            }
            _ => Err(AmountProblem::Zero),
        })
        .collect()
}

fn unit_text(part: &str) -> &str {
    part.trim_start_matches(|c: char| starts_number(c) || c.is_whitespace() || c == '/')
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Unit};
    use crate::text::{Decimal, Dimension};

    #[test]
    fn a_last_unit_serves_all() {
        let conventions = Conventions::default();
        let reading = Reading {
            conventions: &conventions,
            decimal: Decimal::Point,
            bare: Unit::Millilitre,
            kind: Dimension::Volume,
            own: &[],
        };
        let labels = |text| -> Vec<String> {
            read_marks(text, &reading).expect("readable").into_iter().map(|mark| mark.label).collect()
        };
        assert_eq!(labels("½; ¾; 1 1/2 oz"), ["½ oz", "¾ oz", "1 1/2 oz"]);
        assert_eq!(labels("20 · 25"), ["20 ml", "25 ml"]);
        assert_eq!(labels(""), Vec::<String>::new());
        assert!(read_marks("½; foo", &reading).is_err());
    }
}
