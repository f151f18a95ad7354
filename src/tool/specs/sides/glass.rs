//! A form of a spec as it stands in its glass, with the water of its ice.

use crate::book::{Allergen, Kind, Way};
use crate::craft::balance::{Balance, balance};
use crate::craft::fit;
use crate::craft::sides::Glass;
use crate::quantity::{Money, Ratio, Volume};
use crate::reading::chilled::Chilled;
use crate::reading::cost::{costs, sum_of};
use crate::reading::{self, Contents, glass};
use crate::screen::Bench;
use crate::screen::picture::Picture;
use crate::substance::mix::Mix;
use crate::tool::specs::method::Method;
use crate::tool::specs::served::{is_none, served};

/// A form in its glass.
pub(super) struct InGlass {
    /// What it is called here.
    pub(super) name: String,
    /// Its ice, and what is not counted: a line each.
    pub(super) below: Vec<String>,
    /// The glass, as full as it is.
    pub(super) picture: Option<Picture>,
    /// What is in it.
    pub(super) mix: Mix,
    /// What that reads as.
    pub(super) reads: Balance,
    /// Whether it can be compared: every line is counted, there is something, and no more than a drink.
    pub(super) is_whole: bool,
    /// Whether it has energy that is not in its figures.
    pub(super) has_more_energy: bool,
    /// Whether it is washed with milk.
    pub(super) is_washed: bool,
    /// Whether it is more than a drink, and does not say how many it makes.
    pub(super) is_batch: bool,
    /// What its lines cost, as far as is known, and whether all of it is; none where nothing of it has a price.
    pub(super) costs: Option<(Money, bool)>,
    /// What guests must be told of.
    pub(super) allergens: Vec<Allergen>,
    /// What must be asked before that is known.
    pub(super) has_asks: bool,
    /// How long it keeps, mixed and without ice.
    pub(super) keeps: &'static str,
}

impl InGlass {
    /// What is compared of it; nothing where not all of it is known.
    pub(super) fn glass(&self) -> Option<Glass> {
        let Balance { acid, sugar, strength, volume, .. } = self.reads;
        self.is_whole.then(|| Glass { acid, sugar, strength: strength.fraction(), volume: volume.ml() })
    }
}

/// Puts a form in its glass; of a batch, `pour` of it.
pub(super) fn in_glass(name: String, way: &Way, pour: Option<Volume>, bench: &Bench) -> InGlass {
    let read = Contents::of(&way.lines, bench);
    let served = served(way, &read, bench);
    let all = balance(&served.before).volume;
    let poured = || pour.filter(|_| served.is_batch).and_then(|pour| Ratio::from_value(pour.ml() / all.ml()).ok());
    let part = served.one.or_else(poured);
    let before = part.map_or(served.before, |part| served.before * part);
    // What was washed meets the ice of its glass alone.
    let chilled = Chilled::of(way, bench).filter(|_| !served.is_washed).or_else(|| match glass::ice(&way.ice) {
        fit::Kind::None => None,
        fit::Kind::Crushed => Chilled::usual("build"),
        _ => Chilled::usual("block"),
    });
    let water = chilled.and_then(|chilled| chilled.water(&before, bench));
    let mix = water.map_or(before, |water| before + Mix::water(water));
    let mut below = vec![ice(way)];
    if let Some(first) = read.missing.first() {
        let more = read.missing.len() - 1;
        below.push(if more > 0 { format!("without {first} and {more} more") } else { format!("without {first}") });
    }
    if !read.is_something() {
        below.push("nothing measured".into());
    } else if water.is_none() && (!is_none(&way.ice) || is_unsaid(way)) {
        below.push("before ice".into());
    }
    let is_whole_batch = served.is_batch && part.is_none();
    if is_whole_batch {
        below.push("the whole batch".into());
    }
    below.retain(|line| !line.is_empty());
    let reads = balance(&mix);
    let holds = bench.volume("holds", &way.holds, &mut Vec::new()).map_or(0.0, Volume::ml);
    InGlass {
        name,
        below,
        picture: glass::vessel(&way.glass, holds, bench).filter(|_| !is_whole_batch).map(|vessel| {
            let kind = glass::ice(&way.ice);
            glass::InGlass::of(vessel, reads.volume, kind, None).picture(&way.glass, kind)
        }),
        mix,
        reads,
        is_whole: read.whole().is_some() && read.is_something() && !is_whole_batch,
        has_more_energy: read.has_more_energy,
        is_washed: served.is_washed,
        is_batch: served.is_batch && served.one.is_none(),
        costs: Some(sum_of(&costs(&read, bench)))
            .filter(|sum| sum.unknown == 0 || sum.known > Money::ZERO)
            .map(|sum| (sum.known * part.unwrap_or(Ratio::ONE), sum.unknown == 0)),
        allergens: reading::allergens(&read.lines, bench),
        has_asks: !reading::asks(&read.lines, bench).is_empty(),
        keeps: keeps(&read, served.is_washed),
    }
}

/// Whether neither a method nor ice is noted.
fn is_unsaid(way: &Way) -> bool {
    Method::read_or_none(&way.method).is_none() && way.ice.trim().is_empty()
}

/// "crushed ice", "one clear block", "no ice"; nothing where nothing is said.
fn ice(way: &Way) -> String {
    let said = way.ice.trim();
    match (said, is_none(said)) {
        ("", _) => String::new(),
        (_, true) => "no ice".into(),
        // One word is what kind of ice it is.
        _ if said.split(' ').count() == 1 && !said.eq_ignore_ascii_case("ice") => format!("{said} ice"),
        _ => said.to_owned(),
    }
}

/// How long it keeps once mixed, before ice: as long as what in it keeps least. For what is washed no time is published.
fn keeps(read: &Contents, is_washed: bool) -> &'static str {
    let kinds = || {
        let taken = read.lines.iter().filter_map(|line| line.read.as_ref().ok()?.taken);
        taken.map(|taken| taken.ingredient.kind)
    };
    let has = |any: &[Kind]| kinds().any(|kind| any.contains(&kind));
    match () {
        () if is_washed => "cold, your own days",
        () if has(&[Kind::Dairy, Kind::Egg, Kind::Soda]) => "made to order",
        () if has(&[Kind::Juice]) => "today, cold",
        () if has(&[Kind::Wine, Kind::Syrup, Kind::Brew, Kind::Water]) => "days, cold",
        () if kinds().next().is_none() => "–",
        () => "months, closed",
    }
}
