//! Aim: the least change of a drink that brings it where it should be, by one of its parts or by two at once.
//!
//! What is in a drink adds up by mass, so each aim is a line in the amounts but for two small things: liquids contract as
//! they are poured together, and the ice gives water by strength. So the line is solved, what is left over is measured on
//! the drink itself, and the same line is solved for that, until nothing is left (the chord method: Newton's, with the
//! slopes of the start).

use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::substance::{ethanol, mix::Mix};

/// What can be aimed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// Grams of sugar to the litre.
    Sugar,
    /// Grams of acid to the litre that a titration finds, as citric.
    Acid,
    /// Grams of sugar to the gram of acid.
    SugarToAcid,
    /// Strength by volume at 20 °C, a fraction.
    Strength,
    /// Millilitres at 20 °C.
    Volume,
}

/// Where one of them should be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    /// Which.
    pub of: Of,
    /// Where: above nothing.
    pub value: f64,
}

/// Something that is in the drink, or could be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// One measure of it: as much as is in the drink, or any amount of what is not.
    pub measure: Mix,
    /// How many measures are in the drink now.
    pub now: f64,
    /// Whether it stays as it is: nobody mends a drink with its bitters.
    pub is_fixed: bool,
}

/// A change that hits.
#[derive(Clone, Debug, PartialEq)]
pub struct Aimed {
    /// Which parts are changed, and how many measures of each there then are.
    pub to: Vec<(usize, f64)>,
    /// Millilitres that are poured more or less, added up.
    pub moved: f64,
}

/// Why nothing hits.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AimProblem {
    /// Nothing is in the drink.
    Nothing,
    /// No part of it changes that.
    NoneBrings(Of),
    /// This is as near as any one part comes, before it is all gone or fills the glass.
    Nearest(f64),
    /// No two parts reach both: how near they come to which of the two where they hit the other; none where they hit neither.
    NotBoth(Option<Target>),
}

/// A drink is not made larger than so many times itself.
const MOST: f64 = 3.0;
/// Steps that are taken at most: each leaves less than a third of what was left.
const STEPS: usize = 60;
/// What is left over, of the target, when it is hit.
const HIT: f64 = 1e-10;

/// Where a drink is.
#[must_use]
pub fn stands(drink: &Mix, of: Of) -> f64 {
    let ml = ml(drink);
    let over = |value: f64, by: f64| if by > 0.0 { value / by } else { 0.0 };
    match of {
        Of::Sugar => over(drink.sugar().g() * 1000.0, ml),
        Of::Acid => over(drink.titratable().g() * 1000.0, ml),
        Of::SugarToAcid => over(drink.sugar().g(), drink.titratable().g()),
        Of::Strength => over(drink.ethanol.g() / ethanol::G_PER_ML, ml),
        Of::Volume => ml,
    }
}

/// The drink of so many measures of each part.
#[must_use]
pub fn drink(parts: &[Part], to: &[(usize, f64)]) -> Mix {
    let measures = |at: usize| to.iter().find(|(part, _)| *part == at).map_or(parts[at].now, |(_, measures)| *measures);
    (0..parts.len()).fold(Mix::default(), |sum, at| sum + times(&parts[at].measure, measures(at)))
}

/// All changes that hit one target by one part, or two by two, the least first. `serve` adds the water of the ice.
///
/// # Errors
/// [`AimProblem`] when there is none.
pub fn aim(parts: &[Part], targets: &[Target], serve: &dyn Fn(&Mix) -> Mix) -> Result<Vec<Aimed>, AimProblem> {
    let now = drink(parts, &[]);
    if now.mass() <= Mass::ZERO {
        return Err(AimProblem::Nothing);
    }
    let most = ml(&now) * MOST;
    let found = all(parts, targets, serve, most);
    match (found.is_empty(), targets) {
        (false, _) => Ok(found),
        (true, [one, other]) => Err(AimProblem::NotBoth(
            along(parts, *one, *other, serve, most).or(along(parts, *other, *one, serve, most)),
        )),
        _ => Err(nearest(parts, targets[0], serve)),
    }
}

/// All that hits, the least first, with no more than `most` millilitres of a part.
fn all(parts: &[Part], targets: &[Target], serve: &dyn Fn(&Mix) -> Mix, most: f64) -> Vec<Aimed> {
    let now = drink(parts, &[]);
    let water = ml(&serve(&now)) / ml(&now);
    let mut found: Vec<Aimed> = Vec::new();
    for first in 0..parts.len() {
        let seconds = if targets.len() > 1 { first + 1..parts.len() } else { first..first + 1 };
        for second in seconds {
            let which = [first, second];
            if which.iter().any(|at| parts[*at].is_fixed) {
                continue;
            }
            let Some(hit) = solve(parts, &which[..targets.len()], targets, (water, most), serve) else { continue };
            let at = found.iter().position(|other| hit.moved < other.moved).unwrap_or(found.len());
            found.insert(at, hit);
        }
    }
    found
}

/// By how much a drink misses, in what adds up: grams, or millilitres.
fn miss(drink: &Mix, target: Target, ml: f64) -> f64 {
    let Target { of, value } = target;
    match of {
        Of::Sugar => drink.sugar().g() - value * ml / 1000.0,
        Of::Acid => drink.titratable().g() - value * ml / 1000.0,
        Of::SugarToAcid => drink.sugar().g() - value * drink.titratable().g(),
        Of::Strength => drink.ethanol.g() / ethanol::G_PER_ML - value * ml,
        Of::Volume => ml - value,
    }
}

/// What a measure of a part adds to a miss.
fn slope(part: &Part, target: Target, water: f64) -> f64 {
    let ml = ml(&part.measure) * water;
    match target.of {
        Of::Volume => ml,
        _ => miss(&part.measure, target, ml),
    }
}

/// The amounts of one or two parts that hit; none where they would be less than nothing, or too much.
fn solve(
    parts: &[Part],
    which: &[usize],
    targets: &[Target],
    (water, most): (f64, f64),
    serve: &dyn Fn(&Mix) -> Mix,
) -> Option<Aimed> {
    let slopes = |at: usize| [0, 1].map(|row| targets.get(row).map_or(0.0, |target| slope(&parts[at], *target, water)));
    let (a, b) = (slopes(which[0]), slopes(which[which.len() - 1]));
    let determinant = if which.len() > 1 { a[0] * b[1] - a[1] * b[0] } else { a[0] };
    let size = if which.len() > 1 { (a[0].abs() + b[0].abs()) * (a[1].abs() + b[1].abs()) } else { 1e-6 };
    if determinant.abs() <= size * 1e-6 {
        return None;
    }
    let mut to: Vec<(usize, f64)> = which.iter().map(|at| (*at, parts[*at].now)).collect();
    for _ in 0..STEPS {
        let served = serve(&drink(parts, &to));
        let ml = ml(&served);
        let left = [0, 1].map(|row| targets.get(row).map_or(0.0, |target| miss(&served, *target, ml)));
        let is_hit = |target: &Target| (stands(&served, target.of) - target.value).abs() <= HIT * target.value;
        let poured = |(at, measures): &(usize, f64)| measures * self::ml(&parts[*at].measure);
        if targets.iter().all(is_hit) {
            let moved = to.iter().map(|to| (poured(to) - poured(&(to.0, parts[to.0].now))).abs()).sum();
            return to.iter().all(|to| poured(to) <= most * (1.0 + 1e-9)).then_some(Aimed { to, moved });
        }
        let steps = match which.len() {
            1 => [left[0] / determinant, 0.0],
            _ => [left[0] * b[1] - left[1] * b[0], a[0] * left[1] - a[1] * left[0]].map(|step| step / determinant),
        };
        // On the way a step may go beyond what may be; below nothing is nothing. Where that ends the way, nothing hits.
        let mut gone = 0.0;
        for (to, step) in to.iter_mut().zip(steps) {
            let was = poured(to);
            to.1 = (to.1 - step).max(0.0);
            gone += (poured(to) - was).abs();
        }
        if gone <= most * 1e-14 || to.iter().any(|to| poured(to) > 1.5 * most) {
            return None;
        }
    }
    None
}

/// Where one part alone comes nearest to a target: all of it left out, or as much as may be.
fn nearest(parts: &[Part], target: Target, serve: &dyn Fn(&Mix) -> Mix) -> AimProblem {
    let at = |to: &[(usize, f64)]| stands(&serve(&drink(parts, to)), target.of);
    let now = at(&[]);
    let whole = ml(&drink(parts, &[]));
    let (mut best, mut moves) = (now, false);
    for (index, part) in parts.iter().enumerate().filter(|(_, part)| !part.is_fixed) {
        for measures in [0.0, whole * MOST / ml(&part.measure).max(1e-9)] {
            let there = at(&[(index, measures)]);
            moves |= (there - now).abs() > HIT * now.abs();
            if there.is_finite() && (there - target.value).abs() < (best - target.value).abs() {
                best = there;
            }
        }
    }
    if moves { AimProblem::Nearest(best) } else { AimProblem::NoneBrings(target.of) }
}

/// How near two parts come to another target where they hit one. Along all that hits the one the other only grows or falls,
/// so it is nearest where a part is all gone, or as much as may be.
fn along(parts: &[Part], hit: Target, other: Target, serve: &dyn Fn(&Mix) -> Mix, most: f64) -> Option<Target> {
    let mut best: Option<f64> = None;
    for index in (0..parts.len()).filter(|index| !parts[*index].is_fixed) {
        for measures in [0.0, most / ml(&parts[index].measure).max(1e-9)] {
            let mut ends = parts.to_vec();
            ends[index] = Part { now: measures, is_fixed: true, ..ends[index] };
            for end in all(&ends, &[hit], serve, most) {
                let there = stands(&serve(&drink(&ends, &end.to)), other.of);
                if best.is_none_or(|best| (there - other.value).abs() < (best - other.value).abs()) {
                    best = Some(there);
                }
            }
        }
    }
    best.map(|value| Target { of: other.of, value })
}

fn ml(mix: &Mix) -> f64 {
    mix.volume(Temperature::TWENTY).map_or(0.0, Volume::ml)
}

fn times(measure: &Mix, measures: f64) -> Mix {
    *measure * Ratio::from_value(measures.max(0.0)).unwrap_or(Ratio::ONE)
}

#[cfg(test)]
mod tests;
