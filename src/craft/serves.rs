//! From a batch to serves and bottles, and back.

use std::fmt;

use crate::quantity::{Ratio, Volume};

/// How a batch shares out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared {
    /// Whole serves.
    pub serves: u32,
    /// What stays when they are poured.
    pub spare: Volume,
    /// What is lost to foam, lees and the walls.
    pub lost: Volume,
    /// The serve that empties the container at the same number of serves; none without a serve.
    pub emptying: Option<Volume>,
}

/// Why serves cannot be counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ServesProblem {
    /// More serves, or more to make, than anybody can.
    TooMany,
}

impl fmt::Display for ServesProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("That is more than anybody can make. Check the number and the serve.")
    }
}

const MOST: f64 = 1e6;
/// Ten cubic metres, the most that any field takes.
const MOST_ML: f64 = 1e7;

/// Shares `volume` out in serves of `serve` after losing the fraction `loss` of it.
///
/// # Errors
/// [`ServesProblem::TooMany`] above a million.
pub fn share(volume: Volume, serve: Volume, loss: Ratio) -> Result<Shared, ServesProblem> {
    let lost = volume * loss;
    let usable = volume.less(lost);
    let serves = whole_parts(usable, serve)?;
    let poured: Volume = serve * Ratio::from_value(f64::from(serves)).unwrap_or(Ratio::ONE);
    Ok(Shared { serves, spare: usable.less(poured), lost, emptying: (serves > 0).then(|| usable / serves) })
}

/// The volume to make for a number of serves, with the fraction `loss` of it lost on the way:
/// serves × serve / (1 − loss).
///
/// # Errors
/// [`ServesProblem::TooMany`] above a million serves or ten cubic metres, or when the loss takes all.
pub fn volume_for(serves: Ratio, serve: Volume, loss: Ratio) -> Result<Volume, ServesProblem> {
    let kept = 1.0 - loss.value();
    let gross = Ratio::from_value(serves.value() / kept).map_err(|_| ServesProblem::TooMany)?;
    let make = serve * gross;
    if serves.value() > MOST || kept <= 0.0 || make.ml() > MOST_ML { Err(ServesProblem::TooMany) } else { Ok(make) }
}

/// A batch in bottles.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottling {
    /// Bottles needed.
    pub bottles: u32,
    /// What goes into a bottle filled up to its headspace.
    pub full: Volume,
    /// What goes into each when all are filled alike.
    pub even: Volume,
    /// What goes into the last when the others are full.
    pub last: Volume,
}

/// Fills `volume` into bottles of `size`, leaving the fraction `headspace` of each empty.
///
/// # Errors
/// [`ServesProblem::TooMany`] above a million bottles.
pub fn bottle(volume: Volume, size: Volume, headspace: Ratio) -> Result<Bottling, ServesProblem> {
    let full = size.less(size * headspace);
    let whole = whole_parts(volume, full)?;
    let filled: Volume = full * Ratio::from_value(f64::from(whole)).unwrap_or(Ratio::ONE);
    let rest = volume.less(filled);
    let started = rest.ml() > 1e-6 * full.ml().max(1.0);
    let bottles = whole + u32::from(started);
    Ok(Bottling { bottles, full, even: volume / bottles, last: if started { rest } else { full } })
}

/// How many whole parts fit, forgiving a billionth for binary fractions.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn whole_parts(volume: Volume, part: Volume) -> Result<u32, ServesProblem> {
    match volume.over(part).map(|ratio| (ratio.value() + 1e-9).floor()) {
        Some(count) if count <= MOST => Ok(count as u32),
        _ => Err(ServesProblem::TooMany),
    }
}
