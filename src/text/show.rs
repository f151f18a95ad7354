//! Quantities as text: decimals chosen by size and unit, fractions as bars write them.

use super::number::{Decimal, VULGAR};
use super::units::typed;
use crate::quantity::{Amount, Conventions, Mass, Ratio, Size, Unit, Volume};

/// A number and its unit, kept apart so that the unit can be set lighter.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Figure {
    /// The number, such as "1 350" or "1½".
    pub value: String,
    /// The unit, such as "ml".
    pub unit: String,
}

impl Figure {
    /// A figure from its two texts.
    pub fn new(value: impl Into<String>, unit: impl Into<String>) -> Figure {
        Figure { value: value.into(), unit: unit.into() }
    }
}

impl std::fmt::Display for Figure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.unit.is_empty() { f.write_str(&self.value) } else { write!(f, "{} {}", self.value, self.unit) }
    }
}

/// Between groups of three digits: a narrow space that does not break.
const GROUP: char = '\u{202f}';

/// A number with `decimals` places, thousands grouped by a narrow space.
#[must_use]
pub fn plain(value: f64, decimals: usize, decimal: Decimal) -> String {
    let (whole, rest) = digits(value, decimals);
    let mut shown = String::new();
    if value < 0.0 && (whole.as_str() != "0" || rest.bytes().any(|digit| digit != b'0')) {
        shown.push('−');
    }
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            shown.push(GROUP);
        }
        shown.push(digit);
    }
    if decimals > 0 {
        shown.push(decimal.mark());
        shown.push_str(&rest);
    }
    shown
}

/// The digits of a value before and after its mark, halves rounded up. In whole numbers: the
/// float printer of the standard library is twelve kilobytes that nothing else here needs. A drawing has hundreds of them:
/// nothing is formatted. Without places there is nothing after it.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn digits(value: f64, decimals: usize) -> (String, String) {
    let scale = 10_u64.pow(u32::try_from(decimals.min(6)).unwrap_or(0));
    let scaled = (value.abs() * scale as f64).round() as u64;
    // A one before them keeps the zeros that they begin with.
    let rest = (scale + scaled % scale).to_string().split_off(1);
    ((scaled / scale).to_string(), rest)
}

/// A number to type on with: up to two places, so that it can be read one way only, nothing grouped.
#[must_use]
pub fn editable(value: f64, decimal: Decimal) -> String {
    let (mut shown, rest) = digits(value, 2);
    let rest = rest.trim_end_matches('0');
    if !rest.is_empty() {
        shown.push(decimal.mark());
        shown.push_str(rest);
    }
    shown
}

/// Three significant digits or so, never more than the bench can tell apart.
fn decimals_for(value: f64) -> usize {
    match value.abs() {
        v if v >= 99.95 => 0,
        v if v >= 9.995 => 1,
        v if v >= 0.0995 || v == 0.0 => 2,
        v if v >= 0.00995 => 3,
        _ => 5,
    }
}

pub(super) fn trimmed(value: f64, decimal: Decimal) -> String {
    without_end_zeros(plain(value, decimals_for(value), decimal), decimal)
}

fn without_end_zeros(text: String, decimal: Decimal) -> String {
    if text.contains(decimal.mark()) {
        text.trim_end_matches('0').trim_end_matches(decimal.mark()).to_owned()
    } else {
        text
    }
}

/// "22.5 ml".
#[must_use]
pub fn millilitres(volume: Volume, decimal: Decimal) -> Figure {
    Figure::new(trimmed(volume.ml(), decimal), "ml")
}

/// Millilitres to a hundredth, for saying what a rounded amount stands for.
#[must_use]
pub fn exact_millilitres(volume: Volume, decimal: Decimal) -> Figure {
    Figure::new(without_end_zeros(plain(volume.ml(), 2, decimal), decimal), "ml")
}

/// Millilitres up to ten litres, litres above.
#[must_use]
pub fn litres_or_ml(volume: Volume, decimal: Decimal) -> Figure {
    if volume.ml() < 9_999.5 {
        millilitres(volume, decimal)
    } else {
        Figure::new(trimmed(volume.ml() / 1000.0, decimal), "l")
    }
}

/// Grams with a fixed number of places, kilograms from a hundred up.
#[must_use]
pub fn grams(mass: Mass, decimals: usize, decimal: Decimal) -> Figure {
    if mass.g() < 99_999.5 {
        Figure::new(plain(mass.g(), decimals, decimal), "g")
    } else {
        Figure::new(trimmed(mass.g() / 1000.0, decimal), "kg")
    }
}

/// Grams to what a good scale can tell: whole from a hundred up, tenths from one, finer below.
#[must_use]
pub fn fine_grams(mass: Mass, decimal: Decimal) -> Figure {
    let decimals = match mass.g() {
        g if g >= 99.95 => 0,
        g if g >= 0.995 || g <= 0.0 => 1,
        g if g >= 0.0995 => 2,
        _ => 3,
    };
    grams(mass, decimals, decimal)
}

/// Pounds and ounces: "1 lb 3¼ oz", "1 lb", and below a pound "7.1 oz wt", to a tenth of an ounce where it is no fraction
/// of a bar.
#[must_use]
pub fn pounds(mass: Mass, decimal: Decimal) -> Figure {
    let ounces = mass.g() / Mass::OUNCE.g();
    let ounces = if fraction_of(ounces).is_some() { ounces } else { (ounces * 10.0).round() / 10.0 };
    let pounds = ((ounces + 0.005) / 16.0).floor();
    let rest = (ounces - 16.0 * pounds).max(0.0);
    let shown = fraction_of(rest).unwrap_or_else(|| without_end_zeros(plain(rest, 1, decimal), decimal));
    let whole = digits(pounds, 0).0;
    match (pounds > 0.0, shown.as_str()) {
        (true, "0") => Figure::new(whole, typed(Unit::Pound)),
        (true, _) => Figure::new(format!("{whole} {} {shown}", typed(Unit::Pound)), typed(Unit::Ounce)),
        (false, _) => Figure::new(shown, "oz wt"),
    }
}

/// A percentage with one place: "4.5 %".
#[must_use]
pub fn percent(fraction: f64, decimal: Decimal) -> String {
    format!("{} %", plain(fraction * 100.0, 1, decimal))
}

/// As [`percent`], with its sign.
#[must_use]
pub fn signed_percent(fraction: f64, decimal: Decimal) -> String {
    let text = percent(fraction, decimal);
    if fraction > 0.0 && text.chars().any(|c| ('1'..='9').contains(&c)) { format!("+{text}") } else { text }
}

/// A count: whole where it is, else short.
#[must_use]
pub fn count(value: f64, decimal: Decimal) -> String {
    trimmed(value, decimal)
}

/// "1½" where `value` is an eighth or a third to within half a hundredth, else none.
#[must_use]
pub fn fraction_of(value: f64) -> Option<String> {
    let whole = (value + 1e-9).floor();
    let part = value - whole;
    let wholes = |n: f64| if n > 0.0 { digits(n, 0).0 } else { String::new() };
    if part.abs() < 0.005 && whole > 0.0 {
        return Some(wholes(whole));
    }
    if (1.0 - part).abs() < 0.005 {
        return Some(wholes(whole + 1.0));
    }
    VULGAR
        .iter()
        .find(|(_, n, d)| (part - f64::from(*n) / f64::from(*d)).abs() < 0.005)
        .map(|(sign, ..)| format!("{}{sign}", wholes(whole)))
}

/// House ounces, as a fraction where they are one: "1¾ oz", else "1.82 oz".
#[must_use]
pub fn ounces(volume: Volume, house: &Conventions, decimal: Decimal) -> Figure {
    let value = volume.ml() / house.ounce.volume().ml();
    Figure::new(fraction_of(value).unwrap_or_else(|| trimmed(value, decimal)), typed(Unit::Ounce))
}

fn count_of(amount: Amount, unit: Unit, house: &Conventions) -> Option<f64> {
    match (amount, unit.size(house)) {
        (Amount::Volume(volume), Size::Volume(one)) => volume.over(one).map(Ratio::value),
        (Amount::Mass(mass), Size::Mass(one)) => Some(mass.g() / one.g()),
        _ => None,
    }
}

/// `amount` in `unit`; none when one is poured and the other weighed, or for a count.
#[must_use]
pub fn figure(amount: Amount, unit: Unit, house: &Conventions, decimal: Decimal) -> Option<Figure> {
    let value = count_of(amount, unit, house)?;
    Some(Figure::new(trimmed(value, decimal), typed(unit)))
}

/// `amount` in the unit it was written in, as bars write that: "1¾ oz", "4 dashes", "4.5 cl", "10.0 g". As [`figure`] for
/// what does not fit.
#[must_use]
pub fn written(amount: Amount, unit: Unit, house: &Conventions, decimal: Decimal) -> Option<Figure> {
    let value = count_of(amount, unit, house)?;
    let in_full = |decimals| without_end_zeros(plain(value, decimals, decimal), decimal);
    let number = match unit {
        Unit::Gram => plain(value, 1, decimal),
        Unit::Millilitre => in_full(2),
        Unit::Centilitre | Unit::Decilitre => in_full(3),
        Unit::Litre | Unit::Kilogram => in_full(4),
        _ => fraction_of(value).unwrap_or_else(|| in_full(2)),
    };
    let name = match unit {
        Unit::Dash if value > 1.0 => "dashes",
        Unit::Drop if value > 1.0 => "drops",
        unit => typed(unit),
    };
    Some(Figure::new(number, name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn decimals_follow_size() {
        let ml = |value| millilitres(Volume::from_ml(value).expect("volume"), Decimal::Point).to_string();
        assert_eq!(ml(51.753_68), "51.8 ml");
        assert_eq!(ml(45.0), "45 ml");
        assert_eq!(ml(0.8), "0.8 ml");
        assert_eq!(ml(1725.3), "1\u{202f}725 ml");
        assert_eq!(ml(99.97), "100 ml");
        assert_eq!(
            (trimmed(0.045_6, Decimal::Point).as_str(), trimmed(0.004_56, Decimal::Point).as_str()),
            ("0.046", "0.00456")
        );
        assert_eq!(litres_or_ml(Volume::whole_ml(12_500), Decimal::Comma).to_string(), "12,5 l");
        assert_eq!(grams(Mass::from_g(12.0).expect("mass"), 1, Decimal::Point).to_string(), "12.0 g");
        assert_eq!(signed_percent(0.0141, Decimal::Point), "+1.4 %");
        assert_eq!(signed_percent(-0.0141, Decimal::Comma), "−1,4 %");
        assert_eq!(signed_percent(0.0001, Decimal::Point), "0.0 %");
        assert_eq!(signed_percent(-0.0001, Decimal::Point), "0.0 %");
    }

    /// A pound is 453.592 37 g, an ounce a sixteenth of it (NIST Handbook 44, as in tests/published/nist_units.rs).
    #[test]
    fn pounds_and_ounces() {
        for (g, shown) in [
            (453.592_37, "1 lb"),
            (453.0, "1 lb"),
            (546.0, "1 lb 3.3 oz"),
            (545.728, "1 lb 3¼ oz"),
            (200.0, "7.1 oz wt"),
            (226.796_185, "8 oz wt"),
            (10_000.0, "22 lb 0.7 oz"),
            (0.0, "0 oz wt"),
        ] {
            assert_eq!(pounds(Mass::from_g(g).expect("g"), Decimal::Point).to_string(), shown, "{g}");
        }
    }

    #[test]
    fn an_amount_in_the_unit_it_was_written_in() {
        let house = Conventions::default();
        for (count, unit, shown) in [
            (22.5, Unit::Millilitre, "22.5 ml"),
            (4.5, Unit::Centilitre, "4.5 cl"),
            (4.375, Unit::Centilitre, "4.375 cl"),
            (0.5, Unit::Decilitre, "0.5 dl"),
            (1.5, Unit::Litre, "1.5 l"),
            (1.0625, Unit::Litre, "1.0625 l"),
            (0.25, Unit::Kilogram, "0.25 kg"),
            (10.0, Unit::Gram, "10.0 g"),
            (1.75, Unit::Ounce, "1¾ oz"),
            (1.0, Unit::Dash, "1 dash"),
            (4.0, Unit::Dash, "4 dashes"),
            (1.0, Unit::Drop, "1 drop"),
            (2.0, Unit::Drop, "2 drops"),
        ] {
            let amount = unit.times(count, &house).expect("an amount");
            assert_eq!(written(amount, unit, &house, Decimal::Point).expect("it fits").to_string(), shown);
        }
    }

    #[test]
    fn fractions_as_bars_write_them() {
        assert_eq!(fraction_of(1.75).as_deref(), Some("1¾"));
        assert_eq!(fraction_of(0.333).as_deref(), Some("⅓"));
        assert_eq!(fraction_of(2.0).as_deref(), Some("2"));
        assert_eq!(fraction_of(1.999).as_deref(), Some("2"));
        assert_eq!(fraction_of(0.125).as_deref(), Some("⅛"));
        assert_eq!(fraction_of(1.82), None);
        assert_eq!(fraction_of(0.001), None);
    }
}
