//! What a form of a spec takes up of its ice, by its own method, steps, ice and glass.

use crate::book::Way;
use crate::craft::chill::{self, Ice, Method, Pace, Start};
use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::screen::Bench;
use crate::substance::cold::DENSITY_OF_ICE;
use crate::substance::mix::Mix;
use crate::text::{self, Decimal};

/// Longest that a step chills a drink, seconds; what waits longer is no stir.
const LONGEST: u32 = 600;

/// Where the water of ice comes from, in words. How sure it is, by the spread of drinks of bars (from memory) and by
/// `tests/published/chilling.rs`.
const SOURCE: &str = "The water of the ice is worked out of the heat that melts it, ± a fifth of it, for as \
    much ice at 0 °C as is usual (rule of thumb). Chill takes yours.";
/// The same of a drink that is stirred in its glass, on cubes: 5 s give 0.58 of the water of 10 s, 20 s 1.53.
const ON_CUBES: &str = "The water of the ice is worked out of the heat that melts it, for a short stir in the glass, 10 s \
    where no step says how long, of what was poured at 20 °C (rule of thumb). ± half of it: half or twice as long a stir \
    makes that. It melts on as it stands.";

/// How a drink is chilled, and how long; how fast that goes is the bar's own, where it has weighed one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Chilled {
    /// By which method.
    pub(crate) method: Method,
    /// Whether that is done on cubes in the glass.
    pub(crate) is_built: bool,
    seconds: f64,
    /// Room for ice in the glass that it stays in, ml with the drink; none where it is not known, or the ice does not stay.
    holds: Option<Volume>,
}

/// The keys of methods, what they are called, what a step of them begins with, and whether their ice stays in the glass.
const METHODS: [(&str, Method, &str, &str, bool); 7] = [
    ("stir", Method::Stir, "stirred", "stir", false),
    ("shake", Method::Shake, "shaken", "shak", false),
    ("throw", Method::Throw, "thrown", "throw", false),
    ("swizzle", Method::Swizzle, "swizzled", "swizzl", true),
    ("build", Method::Build, "built on crushed ice", "stir", true),
    ("block", Method::Block, "stirred over a block", "stir", true),
    (CUBES, Method::Stir, "built on cubes", "stir", true),
];
/// Built on cubes, and stirred there for as long as on crushed ice.
const CUBES: &str = "cubes";
/// What comes cold, and so melts less than is worked out here: a drink with it on cubes is left as it is poured.
const COLD: [&str; 7] = ["soda", "tonic", "sparkl", "cola", "lemonade", "ale", "beer"];

/// The keys of all methods.
pub(crate) fn keys() -> impl Iterator<Item = &'static str> {
    METHODS.iter().map(|row| row.0)
}

impl Chilled {
    /// As usual by the method of a key.
    pub(crate) fn usual(key: &str) -> Option<Chilled> {
        let (_, method, ..) = METHODS.iter().find(|row| row.0 == key)?;
        let is_built = key == CUBES;
        let seconds = chill::usual_seconds(if is_built { Method::Build } else { *method });
        Some(Chilled { method: *method, is_built, seconds, holds: None })
    }

    /// As a form of a spec says; none where it meets no ice, or its words don't tell how.
    pub(crate) fn of(way: &Way, bench: &Bench) -> Option<Chilled> {
        let is_swizzled = way.steps.lines().any(|step| says(step, &["swizzl"]));
        let key = match way.method.as_str() {
            "stirred" => "stir",
            "shaken" => "shake",
            "thrown" => "throw",
            "clarified" if way.steps.lines().any(|step| says(step, &["shak"])) => "shake",
            "clarified" if way.steps.lines().any(|step| says(step, &["stir"])) => "stir",
            "built" | "blended" | "clarified" if is_swizzled => "swizzle",
            "built" if says(&way.ice, &["crush", "crack", "pebble", "shaved"]) => "build",
            "built" if says(&way.ice, &["block", "sphere", "spear", "ball"]) => "block",
            "built"
                if says(&way.ice, &["cubes", "cubed", "rocks"])
                    && !says(&way.steps, &["top"])
                    && !says(&way.lines, &COLD) =>
            {
                CUBES
            }
            _ => return None,
        };
        let (_, _, _, begins, stays) = METHODS.iter().find(|row| row.0 == key)?;
        let usual = Chilled::usual(key)?;
        let holds = if *stays { bench.volume("holds", &way.holds, &mut Vec::new()) } else { None };
        Some(Chilled { seconds: lasts(way, begins, bench.decimal).unwrap_or(usual.seconds), holds, ..usual })
    }

    /// The key of its method, and its seconds as they are typed.
    pub(crate) fn carried(&self, bench: &Bench) -> [String; 2] {
        let key = METHODS.iter().find(|row| row.1 == self.method).map_or("", |row| row.0);
        [key.into(), text::editable(self.seconds, bench.decimal)]
    }

    /// "as stirred 30 s"; "as stirred 30 s, your own" where the bar has weighed one.
    pub(crate) fn words(&self, bench: &Bench) -> String {
        let mut rows = METHODS.iter().filter(|row| row.1 == self.method && (row.0 == CUBES) == self.is_built);
        let called = rows.next().map_or("", |row| row.2);
        let own = if bench.pace(self.method) == Pace::Usual { "" } else { ", your own" };
        format!("as {called} {} s{own}", text::plain(self.seconds, 0, bench.decimal))
    }

    /// Where the water comes from, in words, and how sure it is.
    pub(crate) const fn source(&self) -> &'static str {
        if self.is_built { ON_CUBES } else { SOURCE }
    }

    /// The water that a serve takes up; none where it is not known. No more ice counts than there is room for beside it.
    pub(crate) fn water(&self, serve: &Mix, bench: &Bench) -> Option<Mass> {
        let usual = chill::usual(serve, self.method);
        let poured = serve.volume(Temperature::TWENTY).ok()?;
        let room = self.holds.map_or(f64::INFINITY, |holds| holds.less(poured).ml() * DENSITY_OF_ICE);
        let mass = if usual.ice.mass.g() > room { Mass::from_g(room).ok()? } else { usual.ice.mass };
        let start = Start { ice: Ice { mass, ..usual.ice }, ..usual };
        chill::after(&start, self.method, bench.pace(self.method), self.seconds).ok().map(|moment| moment.water)
    }

    /// "In the glass, as stirred 30 s: about 114 ml, 20 % vol."
    pub(crate) fn in_the_glass(&self, serve: &Mix, bench: &Bench) -> Option<String> {
        let drink = *serve + Mix::water(self.water(serve, bench)?);
        let volume = Volume::from_ml(drink.volume(Temperature::TWENTY).ok()?.ml().round()).ok()?;
        let strength = text::plain(drink.strength().fraction() * 100.0, 0, bench.decimal);
        let volume = text::litres_or_ml(volume, bench.decimal);
        Some(format!("In the glass, {}: about {volume}, {strength} % vol.", self.words(bench)))
    }
}

/// A mix, so many times as little.
pub(crate) fn serve_of(mix: &Mix, serves: Ratio) -> Mix {
    *mix * serves.inverse().unwrap_or(Ratio::ONE)
}

/// How long the steps say that it lasts, of the first that begins so and names a time.
fn lasts(way: &Way, begins: &str, decimal: Decimal) -> Option<f64> {
    let mut steps = way.steps.lines().filter(|step| says(step, &[begins]));
    steps.find_map(|step| text::read_wait(step, decimal)).filter(|seconds| *seconds <= LONGEST).map(f64::from)
}

/// Whether a word of a text begins so.
pub(crate) fn says(words: &str, begins: &[&str]) -> bool {
    let is = |word: &str, begin: &str| word.get(..begin.len()).is_some_and(|head| head.eq_ignore_ascii_case(begin));
    words.split(|c: char| !c.is_ascii_alphabetic()).any(|word| begins.iter().any(|begin| is(word, begin)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Abv;

    fn way(method: &str, ice: &str, steps: &str) -> Way {
        Way { method: method.into(), ice: ice.into(), steps: steps.into(), ..Way::default() }
    }

    fn words(method: &str, ice: &str, steps: &str) -> Option<String> {
        Chilled::of(&way(method, ice, steps), &Bench::default()).map(|chilled| chilled.words(&Bench::default()))
    }

    #[test]
    fn a_spec_says_how_it_is_chilled() {
        for (method, ice, steps, said) in [
            ("stirred", "none", "Stir 30 s\nStrain", Some("as stirred 30 s")),
            ("stirred", "", "", Some("as stirred 30 s")),
            ("stirred", "one clear block", "Chill the glass 10 min\nStir 25 s", Some("as stirred 25 s")),
            ("shaken", "cubed", "Dry shake\nShake, 12 s", Some("as shaken 12 s")),
            ("shaken", "", "Shake 2 h", Some("as shaken 15 s")),
            ("thrown", "", "Throw ten times", Some("as thrown 20 s")),
            ("built", "crushed", "Swizzle 10 s", Some("as swizzled 10 s")),
            ("built", "Crushed ice", "Stir 15 s", Some("as built on crushed ice 15 s")),
            ("built", "one clear block", "", Some("as stirred over a block 20 s")),
            ("built", "cubed", "Stir 15 s", Some("as built on cubes 15 s")),
            ("built", "good cubes", "", Some("as built on cubes 10 s")),
            ("built", "cubed", "Stir 5 s\nTop", None),
            ("built", "", "", None),
            ("blended", "crushed", "Blend 20 s", None),
            ("carbonated", "one clear block", "", None),
            ("", "", "Stir 30 s", None),
        ] {
            assert_eq!(words(method, ice, steps).as_deref(), said, "{method} {ice} {steps}");
        }
    }

    /// As sure as is said of it; and what comes cold is not counted as if it were warm.
    #[test]
    fn on_cubes_half_or_twice_the_stir_is_half_more_or_less() {
        let serve = Mix::spirit(Volume::whole_ml(60), Abv::from_fraction(0.4).expect("a strength"));
        let water = |steps: &str| {
            let chilled = Chilled::of(&way("built", "cubed", steps), &Bench::default()).expect("on cubes");
            assert_eq!(chilled.source(), ON_CUBES);
            chilled.water(&serve, &Bench::default()).expect("water").g()
        };
        let usual = water("");
        assert!(usual > 5.0 && (water("Stir 10 s") - usual).abs() < 1e-9, "{usual}");
        // 1 − e^(−5/16) to 1 − e^(−10/16), and 1 − e^(−20/16) to that.
        assert!((water("Stir 5 s") / usual - 0.578).abs() < 1e-3 && (water("Stir 20 s") / usual - 1.535).abs() < 1e-3);
        let long = Way { lines: "60 ml gin\n120 ml tonic water".into(), ..way("built", "cubed", "Stir") };
        assert_eq!(Chilled::of(&long, &Bench::default()), None);
        assert_eq!(Chilled::usual("stir").map(|stirred| stirred.source()), Some(SOURCE));
    }

    /// A pace that was kept on the shelf counts: at 2 s, nearly all is done in 15.
    #[test]
    fn the_pace_of_the_bar_counts() {
        let serve = Mix::spirit(Volume::whole_ml(90), Abv::from_fraction(0.3).expect("a strength"));
        let own = Bench { paces: [Pace::Own(2.0); 6], ..Bench::default() };
        let chilled = Chilled::of(&way("stirred", "", "Stir 15 s"), &own).expect("stirred");
        assert_eq!(chilled.words(&own), "as stirred 15 s, your own");
        let [usual, fast] = [Bench::default(), own].map(|bench| chilled.water(&serve, &bench).expect("water").g());
        // 1 − e^(−15/16) is 0.608 of the end, 1 − e^(−15/2) 0.999.
        assert!((fast / usual - 0.999_447 / 0.608_395).abs() < 1e-4, "{fast} {usual}");
    }

    /// A glass that is nearly full has room for little ice, all of which melts: 10 ml of room are 9.17 g.
    #[test]
    fn no_more_ice_melts_than_the_glass_has_room_for() {
        let serve = Mix::spirit(Volume::whole_ml(90), Abv::from_fraction(0.3).expect("a strength"));
        let water = |holds: &str| {
            let way = Way { holds: holds.into(), ..way("built", "crushed", "Stir 600 s") };
            Chilled::of(&way, &Bench::default())
                .and_then(|chilled| chilled.water(&serve, &Bench::default()))
                .map(Mass::g)
        };
        assert!((water("100 ml").expect("water") - 9.167).abs() < 0.01, "{:?}", water("100 ml"));
        assert!(water("300 ml") > Some(40.0) && water("300 ml") == water(""));
        assert_eq!(water("80 ml"), None);
    }
}
