//! How fast a drink comes to stand with its ice.

use super::{ChillProblem, Ice, Method, Moment, Start, after, equilibrium, on_the_way};
use crate::quantity::{Amount, Ratio};
use crate::substance::mix::Mix;

/// Turns of a spoon in a second. Common practice, no source: about 60 for a drink, in half a minute.
pub const TURNS_A_SECOND: f64 = 2.0;

/// How fast a drink comes to stand with its ice.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Pace {
    /// As usual by its method.
    ///
    /// Shaking is at its end in about 15 s, and hardly depends on the ice (D. Arnold, Science of Shaking II, 2009): four
    /// times over, all but 2 %. The others are common practice, no source; stirring for 30 s comes to 85 %, where the
    /// remembered curves of [`super::second_opinion`] have it too.
    #[default]
    Usual,
    /// A bar's own: the seconds in which what heat is still to be given falls to 1/e, 37 %.
    Own(f64),
}

/// In this many times the seconds of a pace, 95 % of the heat that is given in the end has been given: e⁻³ is 5 %.
const TO_95: f64 = 3.0;

impl Pace {
    /// A bar's own, by the seconds in which 95 % of all heat, and of the water with it, has passed.
    #[must_use]
    pub const fn to_95(seconds: f64) -> Pace {
        Pace::Own(seconds / TO_95)
    }

    /// Those seconds.
    #[must_use]
    pub const fn seconds_to_95(self, method: Method) -> f64 {
        self.seconds(method) * TO_95
    }

    /// The seconds in which what heat is still to be given falls to 1/e.
    #[must_use]
    pub const fn seconds(self, method: Method) -> f64 {
        match (self, method) {
            (Pace::Own(seconds), _) => seconds,
            (Pace::Usual, Method::Stir) => 16.0,
            (Pace::Usual, Method::Shake) => 3.75,
            (Pace::Usual, Method::Throw) => 10.0,
            (Pace::Usual, Method::Swizzle | Method::Build) => 8.0,
            (Pace::Usual, Method::Block) => 40.0,
        }
    }

    /// Of all heat that it gives in the end, what it has given, 0 to 1.
    #[must_use]
    pub fn share(self, method: Method, seconds: f64) -> f64 {
        1.0 - (-seconds / self.seconds(method).max(LEAST)).exp()
    }

    /// The bar's own pace, of a drink that was weighed or measured before and after so many seconds.
    ///
    /// # Errors
    /// As [`after`]; and when the two amounts are not of a kind, or the drink took up nothing, or more than it can: then
    /// ask [`wetness_from_weighed`].
    pub fn from_weighed(start: &Start, seconds: f64, went_in: Amount, came_out: Amount) -> Result<Pace, ChillProblem> {
        super::in_time(seconds)?;
        let end = equilibrium(start)?;
        let times = times(went_in, came_out)?;
        let share = search(0.0, 1.0, |share| grown(start, &on_the_way(start, &end, share, seconds), went_in), times)?;
        Ok(Pace::Own((-seconds / (1.0 - share).ln()).max(LEAST)))
    }
}

/// Seconds below which nobody tells a pace from at once.
const LEAST: f64 = 0.1;

/// How wet the ice must have been, of a drink that took up more than its heat melts: at most half of it water.
///
/// # Errors
/// As [`Pace::from_weighed`].
pub fn wetness_from_weighed(
    start: &Start,
    method: Method,
    pace: Pace,
    seconds: f64,
    went_in: Amount,
    came_out: Amount,
) -> Result<Ratio, ChillProblem> {
    let with = |wet: f64| Start { ice: Ice { wet: super::ratio(wet), ..start.ice }, ..*start };
    let grown = |wet: f64| {
        let start = with(wet);
        after(&start, method, pace, seconds).and_then(|moment| grown(&start, &moment, went_in))
    };
    let wet = search(0.0, 0.5, grown, times(went_in, came_out)?)?;
    Ok(super::ratio(wet))
}

/// How many times as much came out as went in.
fn times(went_in: Amount, came_out: Amount) -> Result<f64, ChillProblem> {
    let times = match (went_in, came_out) {
        (Amount::Mass(before), Amount::Mass(after)) => after.g() / before.g(),
        (Amount::Volume(before), Amount::Volume(after)) => after.ml() / before.ml(),
        _ => return Err(ChillProblem::TwoKinds),
    };
    if times.is_finite() { Ok(times) } else { Err(ChillProblem::NoDrink) }
}

/// How many times as much a drink is at a moment, by mass or by volume, each as warm as it is then.
fn grown(start: &Start, moment: &Moment, by: Amount) -> Result<f64, ChillProblem> {
    let with = *start.drink + Mix::water(moment.water);
    Ok(match by {
        Amount::Volume(_) => {
            let volume = |mix: &Mix, at| mix.volume(at).map_err(ChillProblem::Beyond);
            volume(&with, moment.at)?.ml() / volume(start.drink, start.at)?.ml()
        }
        _ => with.mass().g() / start.drink.mass().g(),
    })
}

/// Where a function that rises comes to a value.
fn search(
    mut least: f64,
    mut most: f64,
    of: impl Fn(f64) -> Result<f64, ChillProblem>,
    value: f64,
) -> Result<f64, ChillProblem> {
    if value <= of(least)? {
        return Err(ChillProblem::NothingTaken);
    }
    if value > of(most)? {
        return Err(ChillProblem::MoreThanBalance);
    }
    for _ in 0..50 {
        let middle = f64::midpoint(least, most);
        if of(middle)? < value { least = middle } else { most = middle }
    }
    Ok(most)
}
