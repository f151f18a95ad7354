//! Letting a spirit down with water, by weight and by volume, with the contraction that comes of it.

use std::fmt;

use crate::quantity::{Abv, Density, Mass, Temperature, Volume};
use crate::substance::ethanol;
use crate::substance::mix::Mix;

/// A spirit let down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Water to add, weighed: exact.
    pub water: Mass,
    /// The same water poured at 20 °C.
    pub water_volume: Volume,
    /// What it comes to at 20 °C.
    pub total: Volume,
    /// What is lost to contraction: spirit + water − total; nothing for weak spirit, which gains a little.
    pub contraction: Volume,
}

/// Why a spirit cannot be let down to a strength.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutProblem {
    /// The strength wanted is not below that of the spirit.
    NotWeaker,
    /// There is no end of water to nothing.
    ToNothing,
}

impl fmt::Display for CutProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CutProblem::NotWeaker => "Water only makes it weaker. Choose a strength below the spirit's.",
            CutProblem::ToNothing => "No amount of water takes it to nothing. Choose a strength above 0 %.",
        })
    }
}

/// Water to bring `spirit` at 20 °C from one strength to another: m (w₁ / w₂ − 1), by mass.
///
/// ```
/// use meniscus::craft::strength::cut;
/// use meniscus::quantity::{Abv, Volume};
///
/// let percent = |p: f64| Abv::from_fraction(p / 100.0).unwrap();
/// let made = cut(Volume::LITRE, percent(50.0), percent(40.0)).unwrap();
/// assert!((made.water.g() - 254.9).abs() < 0.2); // not the 250 that volumes alone would say
/// ```
///
/// # Errors
/// [`CutProblem`].
pub fn cut(spirit: Volume, from: Abv, to: Abv) -> Result<Cut, CutProblem> {
    if to <= Abv::NONE {
        return Err(CutProblem::ToNothing);
    }
    if to >= from {
        return Err(CutProblem::NotWeaker);
    }
    let strong = Mix::spirit(spirit, from);
    let whole = strong.ethanol.g() / ethanol::mass_fraction(to).fraction();
    let water = Mass::from_g(whole - strong.mass().g()).map_err(|_| CutProblem::ToNothing)?;
    let weak = strong + Mix::water(water);
    let total = weak.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let water_volume = water.volume_at(Density::WATER);
    Ok(Cut { water, water_volume, total, contraction: (spirit + water_volume).less(total) })
}

/// Spirit and water that make `total` at 20 °C: a litre let down, as many times as fill it.
///
/// # Errors
/// [`CutProblem`].
pub fn cut_to_fill(total: Volume, from: Abv, to: Abv) -> Result<(Volume, Cut), CutProblem> {
    let litre = cut(Volume::LITRE, from, to)?;
    let times = total.over(litre.total).ok_or(CutProblem::ToNothing)?;
    let Cut { water, water_volume, total, contraction } = litre;
    let made = Cut {
        water: water * times,
        water_volume: water_volume * times,
        total: total * times,
        contraction: contraction * times,
    };
    Ok((Volume::LITRE * times, made))
}
