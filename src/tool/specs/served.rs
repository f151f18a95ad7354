//! A form of a spec as it is served: what is in the glass, and how strong.

use super::method::Method;
use crate::book::Way;
use crate::craft::fit::Kind;
use crate::quantity::{Ratio, Temperature, Volume};
use crate::reading::chilled::Chilled;
use crate::reading::glass::{self, InGlass};
use crate::reading::{Contents, from_spec};
use crate::screen::Bench;
use crate::screen::picture::Picture;
use crate::substance::mix::Mix;
use crate::text;

/// A form as it is served.
pub(super) struct Served {
    /// Before it meets ice; of what is washed with milk, what comes through.
    pub(super) before: Mix,
    /// As it is served, as far as is known.
    pub(super) volume: Volume,
    /// Percent by volume, then.
    pub(super) strength: f64,
    /// How its ice was taken up, where that is counted in.
    pub(super) chilled: Option<Chilled>,
    /// Whether it is washed with milk.
    pub(super) is_washed: bool,
    /// Whether it is more than a drink.
    pub(super) is_batch: bool,
    /// What one serve is of a batch that says how many it makes.
    pub(super) one: Option<Ratio>,
    /// Whether it is served over ice, or may be: what that gives is not counted.
    pub(super) is_over_ice: bool,
}

/// Reads what a form is served as.
pub(super) fn served(way: &Way, read: &Contents, bench: &Bench) -> Served {
    let (before, is_washed) = read.drunk(bench);
    let poured = before.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let is_batch = glass::is_batch(way, poured, bench);
    let chilled = Chilled::of(way, bench).filter(|_| !is_washed && !is_batch && read.missing.is_empty());
    let water = chilled.and_then(|chilled| chilled.water(&before, bench));
    let drink = water.map_or(before, |water| before + Mix::water(water));
    let volume = match is_batch {
        true => from_spec::in_all(way, &before, bench),
        false => drink.volume(Temperature::TWENTY).unwrap_or(poured),
    };
    Served {
        before,
        // What is estimated is said in whole millilitres.
        volume: if water.is_some() { Volume::from_ml(volume.ml().round()).unwrap_or(volume) } else { volume },
        strength: drink.strength().fraction() * 100.0,
        chilled: chilled.filter(|_| water.is_some()),
        is_washed,
        is_batch,
        one: glass::one_of(way, bench),
        is_over_ice: !is_none(&way.ice) || Method::read_or_none(&way.method).is_none(),
    }
}

/// Whether a text says that there is none of it.
pub(super) fn is_none(text: &str) -> bool {
    matches!(text.trim().to_ascii_lowercase().as_str(), "" | "none" | "no" | "no ice" | "-" | "–")
}

impl Served {
    /// The glass, as full as one serve fills it; small, and so without its ice.
    pub(super) fn glass(&self, way: &Way, bench: &Bench) -> Option<Picture> {
        Some(self.in_glass(way, Kind::None, bench)?.picture(&way.glass, Kind::None))
    }

    /// One serve in its glass, with the usual ice of a kind; none of a batch, and where no shape is known for the glass.
    pub(super) fn in_glass(&self, way: &Way, kind: Kind, bench: &Bench) -> Option<InGlass> {
        let holds = bench.volume("holds", &way.holds, &mut Vec::new()).map_or(0.0, Volume::ml);
        let vessel = glass::vessel(&way.glass, holds, bench)?;
        (!self.is_batch).then(|| InGlass::of(vessel, self.volume, kind, None))
    }

    /// What its volume is of.
    pub(super) const fn place(&self) -> &'static str {
        match (self.is_batch, self.chilled.is_some(), self.is_over_ice) {
            (true, ..) => "in all",
            (_, true, _) | (_, _, false) => "in the glass",
            _ => "before ice",
        }
    }

    /// "about 19 % vol, as stirred 30 s".
    pub(super) fn strength_words(&self, bench: &Bench) -> String {
        let to = |decimals| text::plain(self.strength, decimals, bench.decimal);
        match self.chilled {
            Some(chilled) => format!("about {} % vol, {}", to(0), chilled.words(bench)),
            None if self.is_washed => format!("{} % vol through the milk", to(1)),
            None => format!("{} % vol", to(1)),
        }
    }

    /// Where the water of its ice comes from, in words.
    pub(super) const fn source(&self) -> &'static str {
        match self.chilled {
            Some(chilled) => chilled.source(),
            None => "",
        }
    }
}
