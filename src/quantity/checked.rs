//! The newtypes and their checked constructors.
//!
//! What is made of a number is checked against the range of its type. What is worked out of quantities already checked
//! (sums, shares, products) is not: it may lie beyond that range, but it stays a number, for no operator divides by
//! what may be nothing.

use std::fmt;

/// A value that its quantity cannot take.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfRange {
    /// What was asked for, such as "volume".
    pub quantity: &'static str,
    /// The value that was refused; it may be NaN or infinite.
    pub value: f64,
    /// Smallest value allowed, in `unit`.
    pub min: f64,
    /// Largest value allowed, in `unit`.
    pub max: f64,
    /// The canonical unit of the quantity.
    pub unit: &'static str,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} must lie between {} and {} {}, not {}", self.quantity, self.min, self.max, self.unit, self.value)
    }
}

impl std::error::Error for OutOfRange {}

macro_rules! quantities {
    ($($(#[$doc:meta])* $name:ident($noun:literal, $from:ident, $get:ident, $unit:literal, $min:expr => $max:expr);)+) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(pub(super) f64);

        impl $name {
            #[doc = concat!("Checked constructor, in ", $unit, ".")]
            ///
            /// # Errors
            /// [`OutOfRange`] for NaN, infinities and values outside the range of the type.
            pub fn $from(value: f64) -> Result<Self, OutOfRange> {
                let (min, max) = ($min, $max);
                if value.is_finite() && value >= min && value <= max {
                    Ok(Self(value))
                } else {
                    Err(OutOfRange { quantity: $noun, value, min, max, unit: $unit })
                }
            }

            #[doc = concat!("The value in ", $unit, ".")]
            #[must_use]
            pub const fn $get(self) -> f64 {
                self.0
            }
        }
    )+};
}

quantities! {
    /// A volume of liquid, in millilitres, 0 to 10⁹ (a thousand cubic metres).
    Volume("volume", from_ml, ml, "ml", 0.0 => 1e9);
    /// A mass, in grams, 0 to 10⁹.
    Mass("mass", from_g, g, "g", 0.0 => 1e9);
    /// A density, in grams per millilitre, 0.1 to 25 (foams to metals).
    Density("density", from_g_per_ml, g_per_ml, "g/ml", 0.1 => 25.0);
    /// A Celsius temperature, −273.15 to 1000.
    Temperature("temperature", from_celsius, celsius, "°C", -273.15 => 1000.0);
    /// Alcoholic strength by volume at 20 °C, as a fraction, 0 to 1. Not a mass fraction.
    Abv("strength by volume", from_fraction, fraction, "ml/ml", 0.0 => 1.0);
    /// A fraction by mass, 0 to 1. Not [`Abv`] and not [`Brix`].
    MassFraction("mass fraction", from_fraction, fraction, "g/g", 0.0 => 1.0);
    /// Degrees Brix: grams of sucrose in 100 g of solution, 0 to 100.
    Brix("sweetness", from_degrees, degrees, "°Bx", 0.0 => 100.0);
    /// Concentration of acid, in grams per litre, 0 to 2000. The acid meant is said where it is used.
    Acidity("acidity", from_g_per_l, g_per_l, "g/l", 0.0 => 2000.0);
    /// Money, in whatever a bar counts in, 0 to 10⁹.
    Money("money", from_units, units, "in all", 0.0 => 1e9);
    /// Pressure over that of the air, as a gauge shows it, in bar, 0 to 10.
    Pressure("pressure", from_bar, bar, "bar", 0.0 => 10.0);
}

impl Default for Mass {
    fn default() -> Self {
        Mass::ZERO
    }
}

impl Default for Volume {
    fn default() -> Self {
        Volume::ZERO
    }
}

impl std::iter::Sum for Mass {
    fn sum<I: Iterator<Item = Mass>>(masses: I) -> Mass {
        masses.fold(Mass::ZERO, std::ops::Add::add)
    }
}

impl std::ops::Add for Mass {
    type Output = Mass;

    fn add(self, other: Mass) -> Mass {
        Mass(self.0 + other.0)
    }
}

impl Mass {
    /// Nothing at all.
    pub const ZERO: Mass = Mass(0.0);
    /// One kilogram.
    pub const KILOGRAM: Mass = Mass(1000.0);
    /// The international avoirdupois pound, exactly 453.592 37 g.
    ///
    /// Source: NIST Handbook 44, Appendix C.
    pub const POUND: Mass = Mass(453.592_37);
    /// The avoirdupois ounce, a sixteenth of a pound.
    pub const OUNCE: Mass = Mass(Self::POUND.0 / 16.0);
    /// The grain, a seven-thousandth of a pound: 64.798 91 mg.
    pub const GRAIN: Mass = Mass(Self::POUND.0 / 7000.0);

    /// The volume this mass fills at `density`.
    #[must_use]
    pub fn volume_at(self, density: Density) -> Volume {
        Volume(self.0 / density.0)
    }
}

impl Temperature {
    /// 0 °C, where ice melts.
    pub const ZERO: Temperature = Temperature(0.0);
    /// 20 °C, to which strengths and volumes are referred.
    pub const TWENTY: Temperature = Temperature(20.0);
}

impl Abv {
    /// No alcohol.
    pub const NONE: Abv = Abv(0.0);
}

impl Pressure {
    /// A pound-force to the square inch, in bar: 0.453 592 37 kg × 9.806 65 m/s² over (0.0254 m)².
    ///
    /// Source: NIST SP 811, appendix B.
    pub const PSI: Pressure = Pressure(Mass::POUND.0 / 1000.0 * 9.806_65 / (0.0254 * 0.0254) / 1e5);
    /// No more than the air's.
    pub const NONE: Pressure = Pressure(0.0);
}

impl MassFraction {
    /// None of it.
    pub const NONE: MassFraction = MassFraction(0.0);
}

impl Density {
    /// Pure water at 20 °C, 998.201 kg/m³.
    ///
    /// Source: OIML R 22 (1975), general formula, first coefficient.
    pub const WATER: Density = Density(0.998_201);
}

impl std::ops::Mul<Density> for Volume {
    type Output = Mass;

    /// Volume × density = mass.
    fn mul(self, density: Density) -> Mass {
        Mass(self.0 * density.0)
    }
}

impl std::ops::Mul<Volume> for Acidity {
    type Output = Mass;

    /// Concentration × volume = mass of acid.
    fn mul(self, volume: Volume) -> Mass {
        Mass(self.0 * volume.0 / 1000.0)
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Amount, Ratio};
    use super::*;

    #[test]
    fn refuses_what_is_not_an_amount() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -0.1, 1.1e9] {
            assert!(Volume::from_ml(bad).is_err(), "{bad}");
            assert!(Mass::from_g(bad).is_err(), "{bad}");
        }
        for bad in [f64::NAN, f64::INFINITY, -0.1, 1.1e9] {
            assert!(Ratio::from_value(bad).is_err(), "{bad}");
        }
        assert!(Temperature::from_celsius(-18.0).is_ok());
        assert!(Abv::from_fraction(1.01).is_err());
    }

    #[test]
    fn an_amount_times_three() {
        let three = Ratio::from_value(3.0).expect("a factor");
        let leaves = |count: f64| Amount::Count(Ratio::from_value(count).expect("a count"));
        assert_eq!(leaves(8.0).times(three), leaves(24.0));
        assert_eq!(Amount::Volume(Volume::whole_ml(20)).times(three), Amount::Volume(Volume::whole_ml(60)));
        assert_eq!(Amount::Mass(Mass::KILOGRAM).times(three), Amount::Mass(Mass(3000.0)));
    }

    #[test]
    fn says_what_was_refused() {
        assert_eq!(
            Brix::from_degrees(120.0).expect_err("too sweet").to_string(),
            "sweetness must lie between 0 and 100 °Bx, not 120"
        );
    }
}
