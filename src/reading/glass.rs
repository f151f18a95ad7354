//! The glass of a spec, from the words it is called by, with the drink and the ice that stand in it.

use super::Contents;
use super::chilled::Chilled;
use crate::book::Way;
use crate::craft::fit::{Fit, IcePiece, Kind, fit, lying, pieces};
use crate::craft::vessel::{CONE, COUPE, FLUTE, GOBLET, MUG, PINT, SHOT, Shape, TALL, TUMBLER, Vessel, WINE};
use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::screen::picture::{Filled, Picture};
use crate::screen::{Bench, Choice, choice};
use crate::substance::mix::Mix;
use crate::text::{self, Decimal};

/// What glasses are called, and their shapes. Common practice, no source.
const CALLED: [(&str, &Shape); 36] = [
    ("tumbler", &TUMBLER),
    ("rocks", &TUMBLER),
    ("lowball", &TUMBLER),
    ("fashioned", &TUMBLER),
    ("whisky", &TUMBLER),
    ("whiskey", &TUMBLER),
    ("short", &TUMBLER),
    ("tall", &TALL),
    ("highball", &TALL),
    ("collins", &TALL),
    ("long", &TALL),
    ("longdrink", &TALL),
    ("sling", &TALL),
    ("beer", &PINT),
    ("pint", &PINT),
    ("shot", &SHOT),
    ("shooter", &SHOT),
    ("mug", &MUG),
    ("cup", &MUG),
    ("teacup", &MUG),
    ("tankard", &MUG),
    ("wine", &WINE),
    ("stem", &WINE),
    ("stemmed", &WINE),
    ("sour", &WINE),
    ("sherry", &WINE),
    ("port", &WINE),
    ("goblet", &GOBLET),
    ("balloon", &GOBLET),
    ("snifter", &GOBLET),
    ("coupe", &COUPE),
    ("saucer", &COUPE),
    ("flute", &FLUTE),
    ("champagne", &FLUTE),
    ("cocktail", &CONE),
    ("cone", &CONE),
];

/// A word for each shape.
pub(crate) const SHAPES: &str = "tumbler, tall, pint, shot, mug, wine, goblet, coupe, flute, cone";

choice! { Kind:
    None = "none", "no ice";
    Cubes = "cubes", "cubes";
    Crushed = "crushed", "crushed";
    Block = "block", "block";
    Sphere = "sphere", "sphere";
    Spear = "spear", "spear";
}

/// What ice is called, and what it is. Common practice, no source.
const ICE: [(&str, Kind); 14] = [
    ("cubes", Kind::Cubes),
    ("cubed", Kind::Cubes),
    ("rocks", Kind::Cubes),
    ("crushed", Kind::Crushed),
    ("pebble", Kind::Crushed),
    ("pebbles", Kind::Crushed),
    ("shaved", Kind::Crushed),
    ("block", Kind::Block),
    ("cube", Kind::Block),
    ("sphere", Kind::Sphere),
    ("ball", Kind::Sphere),
    ("spear", Kind::Spear),
    ("stick", Kind::Spear),
    ("column", Kind::Spear),
];

/// What the last of these words that a table has means.
fn meant<T: Copy>(words: &str, called: &[(&str, T)]) -> Option<T> {
    let words = words.split(|c: char| !c.is_ascii_alphabetic());
    let known = |word: &str| called.iter().find(|(called, _)| called.eq_ignore_ascii_case(word));
    words.filter_map(known).next_back().map(|(_, what)| *what)
}

/// The shape that the words of a glass end in: of "small wine glass", a wine glass. None where none is known.
pub(crate) fn shape(words: &str) -> Option<&'static Shape> {
    meant(words, &CALLED)
}

/// The ice that stays in a glass, of what a spec says of it; none where that is of no kind that is known.
pub(crate) fn ice(words: &str) -> Kind {
    meant(words, &ICE).unwrap_or(Kind::None)
}

/// The glass that is called so: one of the bar's own, else of a known shape. It holds so many millilitres; where that is
/// nothing, what the bar's own holds, else the usual.
pub(crate) fn vessel(words: &str, holds_ml: f64, bench: &Bench) -> Option<Vessel> {
    let own = bench.glasses.iter().find(|glass| glass.name.eq_ignore_ascii_case(words.trim()));
    let shape = shape(own.map_or(words, |glass| &glass.shape))?;
    let own = own.map_or(0.0, |glass| glass.holds.ml());
    Some(shape.holding(if holds_ml > 0.0 { holds_ml } else { own }))
}

/// Glassfuls from which on a form of a spec is a batch, not one drink; and ml, where its glass is not known.
const BATCH: [f64; 2] = [3.0, 1000.0];

/// What one serve is of a form that says how many it makes, where that is more than one.
pub(crate) fn one_of(way: &Way, bench: &Bench) -> Option<Ratio> {
    bench.count("makes", &way.makes, &mut Vec::new()).filter(|makes| makes.value() > 1.0)?.inverse()
}

/// Whether so much of a form of a spec is more than a drink: by how many serves it makes, where it says so.
pub(crate) fn is_batch(way: &Way, poured: Volume, bench: &Bench) -> bool {
    if let Some(makes) = bench.count("makes", &way.makes, &mut Vec::new()) {
        return makes.value() > 1.0;
    }
    let holds = bench.volume("holds", &way.holds, &mut Vec::new());
    poured.ml() >= holds.map_or(BATCH[1], |holds| holds.ml() * BATCH[0])
}

/// What a form of a spec brings to Glass, by name: its glass, what is poured in it, its ice. Of a batch nothing is poured,
/// or one of the serves that it says it makes.
pub(crate) fn of_form(way: &Way, read: &Contents, bench: &Bench) -> Vec<(String, String)> {
    let (before, is_washed) = read.drunk(bench);
    let one = one_of(way, bench);
    let before = one.map_or(before, |one| before * one);
    let poured = before.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let chilled = Chilled::of(way, bench).filter(|_| !is_washed && read.missing.is_empty());
    let water = chilled.and_then(|chilled| chilled.water(&before, bench));
    let volume = water.and_then(|water| (before + Mix::water(water)).volume(Temperature::TWENTY).ok());
    // What is estimated is said in whole millilitres.
    let volume = volume.and_then(|volume| Volume::from_ml(volume.ml().round()).ok()).unwrap_or(poured);
    carried(way, if one.is_none() && is_batch(way, poured, bench) { Volume::ZERO } else { volume }, bench)
}

/// The same where what is poured is known.
pub(crate) fn carried(way: &Way, drink: Volume, bench: &Bench) -> Vec<(String, String)> {
    let holds = bench.volume("holds", &way.holds, &mut Vec::new()).map_or(0.0, Volume::ml);
    let vessel = vessel(&way.glass, holds, bench);
    let brim = vessel.map_or(holds, |vessel| vessel.ml_to(vessel.height()));
    // A comma ends a name.
    let name: String = way.glass.trim().chars().map(|c| if c == ',' { ' ' } else { c }).collect();
    let glass = if name.is_empty() { name } else { format!("{name}, {} ml", text::editable(brim, bench.decimal)) };
    let poured =
        if drink > Volume::ZERO { text::litres_or_ml(drink, bench.decimal).to_string() } else { String::new() };
    let pair = |name: &str, text: String| (name.to_owned(), text);
    vec![pair("glass", glass), pair("drink", poured), pair("ice", ice(&way.ice).key().to_owned())]
}

/// A drink in its glass, with its ice.
pub(crate) struct InGlass {
    pub(crate) vessel: Vessel,
    pub(crate) ice: Vec<IcePiece>,
    pub(crate) fit: Fit,
}

impl InGlass {
    /// So much of it, with the ice of a kind: of this mass, or the usual.
    pub(crate) fn of(vessel: Vessel, drink: Volume, kind: Kind, mass: Option<Mass>) -> InGlass {
        let ice = pieces(kind, &vessel, mass);
        let fit = fit(&vessel, drink, Some(&ice));
        InGlass { vessel, ice, fit }
    }

    /// What the glass holds to the brim, ml.
    pub(crate) fn brim(&self) -> f64 {
        self.vessel.ml_to(self.vessel.height())
    }

    /// What all its ice weighs.
    pub(crate) fn ice_mass(&self) -> Mass {
        self.ice.iter().map(|piece| piece.mass).sum()
    }

    /// Whether its ice goes in.
    pub(crate) fn takes_ice(&self) -> bool {
        match self.ice[..] {
            [one] => one.stands(&self.vessel).is_some(),
            _ => true,
        }
    }

    /// It as it is drawn, with what the glass is called.
    pub(crate) fn picture(self, words: &str, kind: Kind) -> Picture {
        // With what makes way for the ice.
        let full = text::plain(self.vessel.ml_to(self.fit.level) / self.brim() * 100.0, 0, Decimal::Point);
        let how = if self.fit.over.is_some() { "more than it holds".to_owned() } else { format!("{full} % full") };
        let with = if kind == Kind::None { String::new() } else { format!(", {}", kind.label()) };
        let text = format!("{}, {how}{with}", words.trim());
        let ice = lying(&self.vessel, &self.fit, &self.ice);
        Picture::Vessels { text, vessels: vec![Filled { level: self.fit.level, ice, vessel: self.vessel }] }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn glasses_are_known_by_their_words() {
        for (words, expected) in [
            ("small wine glass", &WINE),
            ("Tumbler", &TUMBLER),
            ("tall glass", &TALL),
            ("double old-fashioned", &TUMBLER),
            ("champagne coupe", &COUPE),
            ("tall wine glass", &WINE),
            ("cocktail", &CONE),
        ] {
            assert_eq!(shape(words), Some(expected), "{words}");
        }
        for words in ["", "glass", "hollow pumpkin", "Weinglas", "tumblers?"] {
            assert_eq!(shape(words), None, "{words}");
        }
    }

    #[test]
    fn ice_is_known_by_its_words() {
        for (words, expected) in [
            ("cubed", Kind::Cubes),
            ("good cubes", Kind::Cubes),
            ("one large cube", Kind::Block),
            ("one clear block", Kind::Block),
            ("Crushed", Kind::Crushed),
            ("pebble ice", Kind::Crushed),
            ("sphere", Kind::Sphere),
            ("a spear", Kind::Spear),
            ("none", Kind::None),
            ("", Kind::None),
            ("lots", Kind::None),
        ] {
            assert_eq!(ice(words), expected, "{words}");
        }
    }

    fn drawn(words: &str, holds_ml: f64, ml: f64, kind: Kind) -> Option<(String, f64, usize)> {
        let drink = Volume::from_ml(ml).expect("ml");
        let glass = InGlass::of(vessel(words, holds_ml, &Bench::default())?, drink, kind, None);
        let Picture::Vessels { text, vessels } = glass.picture(words, kind) else { return None };
        Some((text, vessels[0].level / vessels[0].vessel.height(), vessels[0].ice.len()))
    }

    #[test]
    fn a_glass_says_how_full_it_is() {
        let said = |words, holds, ml| drawn(words, holds, ml, Kind::None).expect("a glass");
        let (text, level, _) = said("small wine glass", 140.0, 112.0);
        assert_eq!(text, "small wine glass, 80 % full");
        assert!(level > 0.5 && level < 1.0, "{level}");
        assert_eq!(said("mug", 0.0, 175.0), ("mug, 50 % full".into(), said("mug", 350.0, 175.0).1, 0));
        assert_eq!(said("mug", 100.0, 120.0), ("mug, more than it holds".into(), 1.0, 0));
        assert_eq!(said("mug", 100.0, 100.0).0, "mug, 100 % full");
        assert_eq!(said("mug", 0.0, 0.0).0, "mug, 0 % full");
        assert_eq!(drawn("gourd", 0.0, 100.0, Kind::None), None);
        // 105 ml and 121 g of cubes, in 300.
        let (text, _, ice) = drawn("tumbler", 300.0, 105.0, Kind::Cubes).expect("a glass");
        assert_eq!((text.as_str(), ice), ("tumbler, 75 % full, cubes", 4));
    }

    #[test]
    fn a_glass_of_its_own_goes_before_a_shape() {
        let own = |name: &str, ml, shape: &str| crate::book::Glass {
            name: name.into(),
            holds: Volume::whole_ml(ml),
            shape: shape.into(),
        };
        let bench =
            Bench { glasses: vec![own("house coupe", 210, "flute"), own("gourd", 400, "mug")], ..Bench::default() };
        assert_eq!(vessel("House coupe ", 0.0, &bench), Some(FLUTE.holding(210.0)));
        assert_eq!(vessel("gourd", 0.0, &bench), Some(MUG.holding(400.0)));
        // What a spec says of its size goes before what the shelf does.
        assert_eq!(vessel("gourd", 350.0, &bench), Some(MUG.holding(350.0)));
        assert_eq!(vessel("coupe", 0.0, &bench), Some(COUPE.holding(0.0)));
        assert_eq!(vessel("pumpkin", 350.0, &bench), None);
    }
}
