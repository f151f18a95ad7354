//! What a drink is in the freezer: how much of its water is ice, and whether it still pours.
//!
//! Ice is water alone, so what is left of the drink grows stronger until it freezes no further: its freezing point is the
//! freezer's temperature (the lever rule along the freezing curve of [`cold`](crate::substance::cold)). That curve is
//! published for alcohol and for sugar; for both at once it is our estimate.

use crate::quantity::{Mass, OutOfRange, Ratio, Temperature};
use crate::substance::milk;
use crate::substance::mix::Mix;

/// At this and colder what has not frozen is thick. Common practice, no source: we have no formula of its thickness.
const SYRUPY_AT: f64 = -10.0;

/// Ice by mass of the whole, up to which it is a slush that can be spooned. Common practice, no source.
const SLUSH: f64 = 0.5;

/// What a drink that shall pour freezes below, K: freezers swing, and the curve is sure to 0.5 K. Common practice, no
/// source.
const MARGIN: f64 = 1.0;

/// What a drink in the freezer is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// No ice.
    Pours,
    /// No ice, and cold enough to be thick.
    Syrupy,
    /// Some ice.
    Slush,
    /// Ice that holds together: it breaks a glass bottle.
    Solid,
}

/// A drink at a temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Frozen {
    /// What it is like.
    pub state: State,
    /// Its ice.
    pub ice: Mass,
    /// Its ice of the whole mass.
    pub share: Ratio,
    /// Where the first ice comes.
    pub begins: Temperature,
    /// The tables end before it does: there is at least so much ice; or, without any, it begins to freeze at `begins` or
    /// colder.
    pub bounded: bool,
}

/// What a drink is at a temperature. Milk counts as the water that is in it.
///
/// # Errors
/// [`OutOfRange`] when it is stronger or sweeter than the tables and colder than they reach.
pub fn at(drink: &Mix, freezer: Temperature) -> Result<Frozen, OutOfRange> {
    let drink = with_water_of_milk(drink);
    let (all, cold) = (drink.water.g(), freezer.celsius());
    let point = |water: f64| freezing_point(&drink, water);
    // The least water that the tables have: 50 % of ethanol, 40 % of sugar, and acids by moles take some more.
    let edge = match point(0.0) {
        Some(_) => 0.0,
        None => halved(0.0, all + 10.0 * drink.mass().g(), |water| point(water).is_some()),
    };
    let begins = point(edge.max(all)).unwrap_or(0.0);
    let mut frozen = Frozen {
        state: if cold <= SYRUPY_AT { State::Syrupy } else { State::Pours },
        ice: Mass::ZERO,
        share: Ratio::ZERO,
        begins: Temperature::from_celsius(begins)?,
        bounded: edge > all,
    };
    if cold >= begins {
        return Ok(frozen);
    }
    if frozen.bounded {
        return Err(OutOfRange { quantity: "temperature", value: cold, min: begins, max: 40.0, unit: "°C" });
    }
    // Still wet at the edge of the tables: there it freezes on, we don't know how far.
    frozen.bounded = edge > 0.0 && point(edge).is_some_and(|edge| edge > cold);
    let wet = if frozen.bounded { edge } else { halved(edge, all, |water| point(water).is_some_and(|at| at >= cold)) };
    frozen.ice = Mass::from_g(all - wet)?;
    frozen.share = Ratio::from_value(frozen.ice.g() / drink.mass().g()).unwrap_or(Ratio::ZERO);
    frozen.state = if frozen.share.value() > SLUSH { State::Solid } else { State::Slush };
    Ok(frozen)
}

/// The water to leave out of a drink so that it pours at a temperature, with a kelvin to spare; none where the tables
/// end before that is known, or no drink would be left.
#[must_use]
pub fn pourable(drink: &Mix, freezer: Temperature) -> Option<Mass> {
    let colder = Temperature::from_celsius(freezer.celsius() - MARGIN).ok()?;
    let frozen = at(drink, colder).ok()?;
    let has_ice = frozen.ice > Mass::ZERO;
    (!has_ice || !frozen.bounded && frozen.ice < drink.water).then_some(frozen.ice)
}

/// Where a drink with so much water in it begins to freeze, °C; none beyond the tables.
fn freezing_point(drink: &Mix, water: f64) -> Option<f64> {
    let mut left = *drink;
    left.water = Mass::from_g(water).ok()?;
    left.freezing_point().ok().map(Temperature::celsius)
}

/// Between `low`, where something does not hold yet, and `high`, where it does: the least at which it does.
fn halved(mut low: f64, mut high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if holds(middle) { high = middle } else { low = middle }
    }
    high
}

/// Its milk taken apart into water and the rest.
fn with_water_of_milk(drink: &Mix) -> Mix {
    let water = drink.milk * Ratio::from_value(milk::WATER_KG_PER_L / milk::G_PER_ML).unwrap_or(Ratio::ZERO);
    let mut apart = *drink;
    apart.water = drink.water + water;
    apart.milk = Mass::from_g(drink.milk.g() - water.g()).unwrap_or(Mass::ZERO);
    apart
}
