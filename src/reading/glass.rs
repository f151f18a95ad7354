//! The glass of a spec, from the words it is called by, with what stands in it.

use crate::craft::vessel::{CONE, COUPE, FLUTE, GOBLET, MUG, PINT, SHOT, Shape, TALL, TUMBLER, WINE};
use crate::quantity::Volume;
use crate::screen::picture::{Filled, Picture};
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

/// The shape that the words of a glass end in: of "small wine glass", a wine glass. None where none is known.
fn shape(words: &str) -> Option<&'static Shape> {
    let words = words.split(|c: char| !c.is_ascii_alphabetic());
    let known = |word: &str| CALLED.iter().find(|(called, _)| called.eq_ignore_ascii_case(word));
    words.filter_map(known).next_back().map(|(_, shape)| *shape)
}

/// The glass that is called so, of the usual size for it, with `ml` in it; none where no shape is known for its words.
#[allow(dead_code, reason = "for a glass whose size is not noted")]
pub(crate) fn glass(words: &str, ml: f64) -> Option<Picture> {
    glass_holding(words, 0.0, ml)
}

/// The glass that is called so and holds so much, with `ml` in it. The usual size for it where it holds nothing.
pub(crate) fn glass_holding(words: &str, holds_ml: f64, ml: f64) -> Option<Picture> {
    let vessel = shape(words)?.holding(holds_ml);
    let brim = vessel.ml_to(vessel.height());
    let level = vessel.level(Volume::from_ml(ml).ok()?);
    let full = text::plain(ml / brim * 100.0, 0, Decimal::Point);
    let how = if ml > brim * 1.005 { "more than it holds".to_owned() } else { format!("{full} % full") };
    let text = format!("{}, {how}", words.trim());
    Some(Picture::Vessels { text, vessels: vec![Filled { vessel, level }] })
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
    fn a_glass_says_how_full_it_is() {
        let said = |picture: Option<Picture>| match picture {
            Some(Picture::Vessels { text, vessels }) => (text, vessels[0].level / vessels[0].vessel.height()),
            other => panic!("{other:?}"),
        };
        let (text, level) = said(glass_holding("small wine glass", 140.0, 112.0));
        assert_eq!(text, "small wine glass, 80 % full");
        assert!(level > 0.5 && level < 1.0, "{level}");
        assert_eq!(said(glass("mug", 175.0)), ("mug, 50 % full".into(), said(glass_holding("mug", 350.0, 175.0)).1));
        assert_eq!(said(glass_holding("mug", 100.0, 120.0)), ("mug, more than it holds".into(), 1.0));
        assert_eq!(said(glass("mug", 0.0)).0, "mug, 0 % full");
        assert_eq!(glass("gourd", 100.0), None);
    }
}
