//! How long what was made is kept.

use crate::quantity::Mass;

/// Days, the day of making counted, that ready-to-eat food which must be kept cold is kept at 5 °C or less. Source: FDA
/// Food Code 3-501.17, from memory. A local food code goes first.
pub const COLD_DAYS: u32 = 7;

/// Fresh juice is best the day it is pressed. Common practice, no source.
pub const JUICE_DAYS: u32 = 1;

/// pH above which a preserve is no acid food. Source: 21 CFR 114.3.
pub const ACID_FOOD: f64 = 4.6;

/// What decides how long a mixed drink keeps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// Milk, cream or egg is in it.
    Animal,
    /// Fresh juice is in it.
    Fresh,
    /// Alcohol: the rule of acid foods leaves such drinks out. Source: as [`ACID_FOOD`].
    Drink,
    /// No alcohol, and an acid food.
    Acid,
    /// No alcohol, and not sour enough, or not known to be.
    Plain,
}

/// What decides it, by its pH, where that is known, and what is in it.
#[must_use]
pub fn keeping(ph: Option<f64>, ethanol: Mass, has_juice: bool, has_animal: bool) -> Keeping {
    match ph {
        _ if has_animal => Keeping::Animal,
        _ if has_juice => Keeping::Fresh,
        _ if ethanol > Mass::ZERO => Keeping::Drink,
        Some(ph) if ph <= ACID_FOOD => Keeping::Acid,
        _ => Keeping::Plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 21 CFR 114.3: acid foods have a pH of 4.6 or below; alcoholic beverages are left out.
    #[test]
    fn what_is_in_it_goes_before_its_ph() {
        let some = Mass::KILOGRAM;
        assert_eq!(keeping(Some(4.6), Mass::ZERO, false, false), Keeping::Acid);
        assert_eq!(keeping(Some(4.61), Mass::ZERO, false, false), Keeping::Plain);
        assert_eq!(keeping(None, Mass::ZERO, false, false), Keeping::Plain);
        assert_eq!(keeping(Some(3.0), some, false, false), Keeping::Drink);
        assert_eq!(keeping(Some(3.0), some, true, false), Keeping::Fresh);
        assert_eq!(keeping(Some(3.0), some, true, true), Keeping::Animal);
    }
}
