//! A second opinion: the curves that are remembered of a book, beside the balance of heat.

use super::{Method, Moment, Pace, Start, usual_seconds};
use crate::craft::on_ice::{Chilled, takes_up};
use crate::quantity::{Density, Mass, Temperature};

/// What the remembered curves say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Second {
    /// The water by them.
    pub water: Mass,
    /// Why the balance differs by more than 15 % from it; none where it does not.
    pub differs: Option<Why>,
}

/// What the remembered curves do not know of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// The ice is colder than 0 °C: less of it melts.
    ColdIce,
    /// The drink was cold before.
    ColdDrink,
    /// The vessel was cold before.
    ColdVessel,
    /// All ice is melted.
    LittleIce,
    /// Less time than usual.
    ShortTime,
    /// There is water on the ice.
    WetIce,
    /// The vessel has heat of its own to give.
    WarmVessel,
    /// The drink was warmer than a room.
    WarmDrink,
    /// More time than usual.
    LongTime,
    /// None of these: mixing gives off heat, and shaking beats in water, which no balance here counts.
    NotCounted,
}

/// How far the two may lie apart.
const APART: f64 = 0.15;

/// What is remembered of such a drink, stirred or shaken; none for other methods, and for strengths beyond the curves.
#[must_use]
pub fn second_opinion(start: &Start, method: Method, pace: Pace, moment: &Moment) -> Option<Second> {
    let chilled = match method {
        Method::Stir => Chilled::Stirred,
        Method::Shake => Chilled::Shaken,
        _ => return None,
    };
    let share = takes_up(start.drink.strength(), chilled)?;
    let water = start.drink.volume(Temperature::TWENTY).ok()? * share * Density::WATER;
    let apart = moment.water.g() / water.g() - 1.0;
    let differs = (apart.abs() > APART).then(|| why(start, method, pace, moment, apart < 0.0));
    Some(Second { water, differs })
}

fn why(start: &Start, method: Method, pace: Pace, moment: &Moment, is_less: bool) -> Why {
    let (share, usually) = (pace.share(method, moment.seconds), Pace::Usual.share(method, usual_seconds(method)));
    let vessel = start.vessel.filter(|vessel| vessel.kj_per_k > 0.0).map(|vessel| vessel.at.celsius());
    let found = if is_less {
        [
            (moment.water.g() >= 0.999 * share * start.ice.mass.g(), Why::LittleIce),
            (start.ice.at.celsius() < -1.0, Why::ColdIce),
            (start.at.celsius() < 10.0, Why::ColdDrink),
            (vessel.is_some_and(|at| at < 0.0), Why::ColdVessel),
            (share < usually - 0.1, Why::ShortTime),
        ]
    } else {
        [
            (start.ice.wet.value() > 0.04, Why::WetIce),
            (start.at.celsius() > 25.0, Why::WarmDrink),
            (vessel.is_some_and(|at| at > 0.0), Why::WarmVessel),
            (share > usually + 0.05, Why::LongTime),
            (start.ice.wet.value() > 0.0, Why::WetIce),
        ]
    };
    found.into_iter().find(|(is_so, _)| *is_so).map_or(Why::NotCounted, |(_, why)| why)
}
