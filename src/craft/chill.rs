//! What ice does to a drink: how cold it gets, and the water it takes up, against time.
//!
//! A balance of heat and mass, kept exactly: what the drink and its vessel give up warms the ice and melts it. It ends
//! where the drink stands at its own freezing point, with ice of that temperature, or where no ice is left. Left out:
//! the heat that ethanol and water give off as they mix (see [`band`]), the work of the arm, and the room, whose few
//! watts melt under a gram in a minute (an estimate of ours).
//!
//! Heat capacities are those at 0 °C, of ethanol and water together as published; sugar, acids and whatever else is
//! dissolved count as dissolved sugar, milk as whole milk.

mod opinion;
mod pace;
mod problem;

pub use opinion::{Second, Why, second_opinion};
pub use pace::{Pace, TURNS_A_SECOND, wetness_from_weighed};
pub use problem::ChillProblem;

use crate::quantity::{Mass, MassFraction, OutOfRange, Ratio, Temperature};
use crate::substance::cold;
use crate::substance::mix::Mix;

/// How a drink meets its ice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// Stirred.
    Stir,
    /// Shaken.
    Shake,
    /// From tin to tin, over ice in one of them.
    Throw,
    /// With a stick, in crushed ice.
    Swizzle,
    /// In its glass, on crushed ice.
    Build,
    /// In its glass, over one block.
    Block,
}

/// Ice, with the water that is on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ice {
    /// All of it.
    pub mass: Mass,
    /// How cold it is inside, at most 0 °C.
    pub at: Temperature,
    /// Of its mass, what is water on it, at 0 °C.
    pub wet: Ratio,
}

/// What a vessel holds of heat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Heat {
    /// Heat for each kelvin, kJ.
    pub kj_per_k: f64,
    /// How warm it is.
    pub at: Temperature,
}

/// What a vessel is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Stainless steel: 0.50 kJ/(kg K), from memory.
    Steel,
    /// Soda-lime glass: 0.84 kJ/(kg K), from memory.
    Glass,
}

impl Heat {
    /// The heat of a vessel of so much steel or glass. All of it cools with the drink, so that a thick foot counts too much.
    #[must_use]
    pub fn of(material: Material, mass: Mass, at: Temperature) -> Heat {
        let kj_per_kg_k = match material {
            Material::Steel => 0.50,
            Material::Glass => 0.84,
        };
        Heat { kj_per_k: mass.g() / 1000.0 * kj_per_kg_k, at }
    }
}

/// A drink about to meet ice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Start<'a> {
    /// Before it meets ice.
    pub drink: &'a Mix,
    /// How warm it is.
    pub at: Temperature,
    /// The ice.
    pub ice: Ice,
    /// What it is chilled in; none is counted where none is given.
    pub vessel: Option<Heat>,
}

/// A drink on its ice, at a time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Since it met the ice; infinite for the end.
    pub seconds: f64,
    /// How warm the drink is.
    pub at: Temperature,
    /// The water it has taken up, what was on the ice included.
    pub water: Mass,
}

/// Steps of a [`curve`]: drawn straight between them, one that is done in a sixth of its time is off by 1/300 of its height.
pub const STEPS: u32 = 18;
/// Halvings that find the end of a balance: what is left of a kilogram of ice is under a billionth of a gram.
const HALVINGS: u32 = 44;
/// Seconds beyond which the room counts, which is left out here.
const LONGEST: f64 = 3600.0;

/// The end: where drink and ice stand at the drink's freezing point, or no ice is left.
///
/// # Errors
/// [`ChillProblem`].
pub fn equilibrium(start: &Start) -> Result<Moment, ChillProblem> {
    let balance = Balance::of(start)?;
    let (mut least, mut most) = (0.0, start.ice.mass.g());
    if balance.is_above_freezing(start.drink, most)? {
        return balance.moment(most);
    }
    if !balance.is_above_freezing(start.drink, least)? {
        return Err(ChillProblem::FreezesOn);
    }
    // The balance gets colder with each gram that melts, and the freezing point warmer: they meet once.
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(least, most);
        if balance.is_above_freezing(start.drink, middle)? { least = middle } else { most = middle }
    }
    let end = balance.moment(most)?;
    // Where the table of freezing points begins, they have not met but lost each other.
    let freezes = (*start.drink + Mix::water(end.water)).freezing_point().map_err(ChillProblem::Beyond)?;
    if (freezes.celsius() - end.at.celsius()).abs() > 1e-6 {
        let refused = (*start.drink + Mix::water(balance.moment(least)?.water)).freezing_point();
        return Err(refused.map_or_else(ChillProblem::Beyond, |_| ChillProblem::FreezesOn));
    }
    Ok(end)
}

/// The drink after so many seconds.
///
/// The heat that is still to be given falls by the same share in each second, as where heat flows by the difference of
/// temperatures (Newton's law of cooling); drink, vessel and ice come along alike, so the balance holds at any moment.
///
/// # Errors
/// [`ChillProblem`]; also for no time, and for more than an hour.
pub fn after(start: &Start, method: Method, pace: Pace, seconds: f64) -> Result<Moment, ChillProblem> {
    in_time(seconds)?;
    Ok(on_the_way(start, &equilibrium(start)?, pace.share(method, seconds), seconds))
}

/// The drink after so many seconds, and from the first moment to `until`, in [`STEPS`] steps that grow with time.
///
/// # Errors
/// As [`after`].
pub fn curve(
    start: &Start,
    method: Method,
    pace: Pace,
    [seconds, until]: [f64; 2],
) -> Result<(Moment, Vec<Moment>), ChillProblem> {
    in_time(seconds)?;
    in_time(until)?;
    let end = equilibrium(start)?;
    let moment = |seconds| on_the_way(start, &end, pace.share(method, seconds), seconds);
    let step = |step: u32| moment(until * (f64::from(step) / f64::from(STEPS)).powi(2));
    Ok((moment(seconds), (0..=STEPS).map(step).collect()))
}

/// The water by the plain balance, and at most: mixing gives off heat, 5 to 12 % of what melts the ice (from memory of
/// excess enthalpies; no table in hand), all of which melts more.
#[must_use]
pub fn band(start: &Start, moment: &Moment) -> [Mass; 2] {
    let melted = (moment.water.g() - (start.ice.mass * start.ice.wet).g()).max(0.0);
    [moment.water, moment.water + grams(0.12 * melted)]
}

/// A drink at 20 °C with the usual ice of a method, and no vessel.
///
/// Common practice, no source: twice its mass of ice, or as much of crushed, or two thirds of it as one block; at 0 °C,
/// as ice of a bar is that stands (D. Arnold, 2009 and 2010); with a little water on it, more on crushed.
#[must_use]
pub fn usual(drink: &Mix, method: Method) -> Start<'_> {
    let (times, wet) = match method {
        Method::Stir | Method::Shake | Method::Throw => (2.0, 0.02),
        Method::Swizzle | Method::Build => (1.5, 0.05),
        Method::Block => (0.7, 0.0),
    };
    let ice = Ice { mass: drink.mass() * ratio(times), at: Temperature::ZERO, wet: ratio(wet) };
    Start { drink, at: Temperature::TWENTY, ice, vessel: None }
}

/// How long a method usually takes, seconds. Common practice, no source; for shaking see [`Pace`].
#[must_use]
pub const fn usual_seconds(method: Method) -> f64 {
    match method {
        Method::Stir => 30.0,
        Method::Shake => 15.0,
        Method::Throw | Method::Swizzle | Method::Block => 20.0,
        Method::Build => 10.0,
    }
}

/// A drink as it is served: with the usual ice, for the usual time, and no vessel.
///
/// # Errors
/// As [`after`].
pub fn served(drink: &Mix, method: Method) -> Result<Moment, ChillProblem> {
    after(&usual(drink, method), method, Pace::Usual, usual_seconds(method))
}

fn in_time(seconds: f64) -> Result<(), ChillProblem> {
    match seconds {
        s if s > LONGEST => Err(ChillProblem::TooLong),
        s if s > 0.0 => Ok(()),
        _ => Err(ChillProblem::NoTime),
    }
}

/// The drink when a share of all the heat has passed, and of the water with it.
fn on_the_way(start: &Start, end: &Moment, share: f64, seconds: f64) -> Moment {
    let drink = heat_capacity(start.drink).unwrap_or(cold::HEAT_CAPACITY_OF_WATER);
    let holds = |water: f64| drink + water * cold::HEAT_CAPACITY_OF_WATER;
    let water = share * end.water.g();
    let (first, last) = (drink * start.at.celsius(), holds(end.water.g()) * end.at.celsius());
    let at = (first + share * (last - first)) / holds(water);
    Moment { seconds, at: Temperature::from_celsius(at).unwrap_or(end.at), water: grams(water) }
}

/// Heat that a drink holds for each kelvin, J.
fn heat_capacity(drink: &Mix) -> Result<f64, OutOfRange> {
    let solvent = drink.water + drink.ethanol;
    let ethanol = MassFraction::from_fraction(drink.ethanol.g() / solvent.g()).unwrap_or(MassFraction::NONE);
    let dissolved = drink.dissolved().g() * cold::HEAT_CAPACITY_OF_SUGAR;
    let milk = drink.milk.g() * cold::HEAT_CAPACITY_OF_MILK;
    Ok(solvent.g() * cold::heat_capacity(ethanol)? + dissolved + milk)
}

/// All heat there is, above that of water at 0 °C, and what holds it. Joules and grams.
struct Balance {
    /// Of drink, vessel, ice and the water on it.
    heat: f64,
    /// Of drink and vessel, for each kelvin.
    holds: f64,
    /// Of ice, with the water on it.
    ice: f64,
}

impl Balance {
    fn of(start: &Start) -> Result<Balance, ChillProblem> {
        let (ice, at) = (&start.ice, start.at.celsius());
        let dry = ice.mass.g() * (1.0 - ice.wet.value());
        if start.drink.mass() <= Mass::ZERO {
            return Err(ChillProblem::NoDrink);
        }
        if dry <= 0.0 {
            return Err(ChillProblem::NoIce);
        }
        if ice.at > Temperature::ZERO {
            return Err(ChillProblem::IceAboveZero);
        }
        if start.at < ice.at {
            return Err(ChillProblem::ColderThanIce);
        }
        let drink = heat_capacity(start.drink).map_err(ChillProblem::Beyond)?;
        match start.drink.freezing_point() {
            Ok(freezes) if at <= freezes.celsius() => return Err(ChillProblem::Frozen(freezes)),
            // It may be frozen, or not.
            Err(beyond) if at <= 0.0 => return Err(ChillProblem::Beyond(beyond)),
            _ => {}
        }
        let vessel = start.vessel.map_or((0.0, 0.0), |vessel| {
            let holds = vessel.kj_per_k * 1000.0;
            (holds, holds * vessel.at.celsius())
        });
        let of_ice = dry * (cold::heat_of_ice(ice.at) - cold::LATENT_HEAT_OF_ICE);
        Ok(Balance { heat: drink * at + vessel.1 + of_ice, holds: drink + vessel.0, ice: ice.mass.g() })
    }

    /// How cold all is when `water` of the ice is liquid, g: the root of the heat that ice, drink and vessel hold then.
    fn celsius(&self, water: f64) -> f64 {
        let ice = self.ice - water;
        let heat = self.heat + ice * cold::LATENT_HEAT_OF_ICE;
        let (straight, square) = cold::ICE_HOLDS;
        let (b, a) = (self.holds + water * cold::HEAT_CAPACITY_OF_WATER + ice * straight, ice * square);
        2.0 * heat / (b + (b * b + 4.0 * a * heat).max(0.0).sqrt())
    }

    fn moment(&self, water: f64) -> Result<Moment, ChillProblem> {
        let at = Temperature::from_celsius(self.celsius(water)).map_err(ChillProblem::Beyond)?;
        Ok(Moment { seconds: f64::INFINITY, at, water: grams(water) })
    }

    /// Whether the drink is liquid with so much water in it. A drink too strong for the table is.
    fn is_above_freezing(&self, drink: &Mix, water: f64) -> Result<bool, ChillProblem> {
        let moment = self.moment(water)?;
        let freezes = (*drink + Mix::water(moment.water)).freezing_point();
        Ok(freezes.map_or(true, |freezes| moment.at > freezes))
    }
}

fn grams(g: f64) -> Mass {
    Mass::from_g(g).unwrap_or(Mass::ZERO)
}

fn ratio(value: f64) -> Ratio {
    Ratio::from_value(value).unwrap_or(Ratio::ZERO)
}
