//! What a drink is made of, drawn: a bar each of its volume, alcohol, sugar and acid, by the lines that bring them.

use super::contents::{Content, Contents};
use super::shares::whole_percent;
use crate::book::{Ingredient, Kind};
use crate::craft::balance::share;
use crate::screen::Bench;
use crate::screen::picture::{Bar, Hatch, Picture};

/// More lines than this are drawn by what kind they are of: their parts would be slivers.
const MOST_LINES: usize = 8;

/// The bars of a drink; none where there is but one line in it.
pub(crate) fn made_of(read: &Contents, bench: &Bench) -> Option<Picture> {
    let mut parts: Vec<(Hatch, String, [f64; 4])> = Vec::new();
    for (line, content) in read.pairs() {
        let (Ok(line), Content::Poured(mix)) = (&line.read, content) else { continue };
        let share = share(mix, &read.mix);
        let hatch = line.taken.map_or(Hatch::Water, |taken| hatch(taken.ingredient));
        parts.push((hatch, line.name.clone(), [share.volume, share.ethanol, share.sugar, share.acid]));
    }
    if parts.len() > MOST_LINES {
        parts = by_kind(&parts);
    }
    if parts.len() < 2 {
        return None;
    }
    let bar = |of: &'static str, at: usize| {
        let brought = parts.iter().filter(|(.., share)| share[at] > 0.0);
        let words = brought.clone().map(|(_, name, share)| whole_percent(name, share[at], bench));
        // Volumes draw together when they are poured together: of them, what is drawn is the share of their sum.
        let whole: f64 = brought.clone().map(|(.., share)| share[at]).sum();
        let text = format!("{of}: {}", words.collect::<Vec<_>>().join(", "));
        Bar { of, text, parts: brought.map(|(hatch, _, share)| (*hatch, share[at] / whole)).collect() }
    };
    let bars = ["volume", "alcohol", "sugar", "acid"].into_iter().enumerate().map(|(at, of)| bar(of, at));
    let bars: Vec<Bar> = bars.filter(|bar| !bar.parts.is_empty()).collect();
    Some(Picture::Shares { bars, key: parts.into_iter().map(|(hatch, name, _)| (hatch, name)).collect() })
}

/// Parts of a kind as one.
fn by_kind(parts: &[(Hatch, String, [f64; 4])]) -> Vec<(Hatch, String, [f64; 4])> {
    let mut kinds = Vec::new();
    for kind in Hatch::ALL {
        let of_kind = parts.iter().filter(|(hatch, ..)| *hatch == kind);
        let sum = of_kind.clone().fold([0.0; 4], |sum, (.., share)| [0, 1, 2, 3].map(|at| sum[at] + share[at]));
        if of_kind.count() > 0 {
            kinds.push((kind, kind.name().to_owned(), sum));
        }
    }
    kinds
}

/// How an ingredient is drawn: by what it is there for.
pub(crate) fn hatch(ingredient: &Ingredient) -> Hatch {
    match ingredient.kind {
        Kind::Spirit | Kind::Wine => Hatch::Strong,
        Kind::Liqueur | Kind::Syrup => Hatch::Sweet,
        Kind::Juice => Hatch::Sour,
        Kind::Bitters | Kind::Brew => Hatch::Bitter,
        Kind::Dairy | Kind::Egg => Hatch::Milk,
        Kind::Powder if !ingredient.acids.is_empty() => Hatch::Sour,
        Kind::Powder | Kind::Soda if ingredient.sugar > 0.0 => Hatch::Sweet,
        Kind::Powder | Kind::Soda | Kind::Water => Hatch::Water,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn drawn(spec: &str) -> (Vec<Bar>, Vec<(Hatch, String)>) {
        match made_of(&Contents::of(spec, &Bench::default()), &Bench::default()) {
            Some(Picture::Shares { bars, key }) => (bars, key),
            other => panic!("{other:?}"),
        }
    }

    /// 60 ml at 40 %, 22.5 ml of lime at 45.9 − 1.6 g/l, 22.5 ml of 614.8 g/l syrup.
    #[test]
    fn a_sour_is_drawn_by_its_lines() {
        let (bars, key) = drawn("60 ml aged rum\n22.5 ml lime juice\n22.5 ml simple syrup\n1 lime\nLime wheel");
        let texts: Vec<&str> = bars.iter().map(|bar| bar.text.as_str()).collect();
        assert_eq!(
            texts,
            [
                "volume: aged rum 57 %, lime juice 21 %, simple syrup 21 %",
                "alcohol: aged rum 100 %",
                "sugar: lime juice 2 %, simple syrup 98 %",
                "acid: lime juice 100 %"
            ]
        );
        let kinds: Vec<Hatch> = key.iter().map(|(hatch, _)| *hatch).collect();
        assert_eq!(kinds, [Hatch::Strong, Hatch::Sour, Hatch::Sweet]);
        for bar in bars {
            let whole: f64 = bar.parts.iter().map(|(_, fraction)| fraction).sum();
            assert!((whole - 1.0).abs() < 1e-9, "{bar:?}");
        }
    }

    #[test]
    fn a_long_spec_is_drawn_by_kinds() {
        let spec =
            "20 ml gin\n".repeat(5) + &"10 ml lemon juice\n".repeat(5) + "1 g citric acid\n2 g sugar\n30 ml water";
        let (bars, key) = drawn(&spec);
        let names: Vec<&str> = key.iter().map(|(_, name)| name.as_str()).collect();
        assert_eq!(names, ["strong", "sweet", "sour", "water"]);
        assert!(bars[1].text == "alcohol: strong 100 %", "{}", bars[1].text);
    }

    #[test]
    fn one_line_is_all_of_it() {
        for spec in ["", "60 ml gin", "60 ml gin\nLemon twist", "20 ml moon dust\n60 ml gin"] {
            assert_eq!(made_of(&Contents::of(spec, &Bench::default()), &Bench::default()), None, "{spec}");
        }
        // Water holds nothing but volume.
        assert_eq!(drawn("30 ml water\n30 ml soda water").0.len(), 1);
    }
}
