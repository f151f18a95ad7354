//! Drawings: each has its words, fits its place, and shows what its data say.

use super::*;
use crate::app::draw::{Canvas, html};
use crate::craft::fit::{Kind, fit, lying, pieces};
use crate::craft::vessel::{BOTTLE, CONE, COUPE, FLUTE, GOBLET, JIGGER, MUG, PINT, SHOT, Shape, TALL, TUMBLER, WINE};
use crate::desk::View;
use crate::quantity::{Mass, Volume};
use crate::screen::picture::{Bar, Filled, Hatch, Line, Picture};
use crate::screen::route::Route;
use crate::screen::{Figure, Screen, Strip, Tone};
use crate::tool::screen;
use crate::tool::shelf::settings::ShelfForm;

fn holds(html: &str, part: &str) {
    assert!(html.contains(part), "{part}\nis not in\n{html}");
}

/// What an attribute says, of each element that has it.
fn attribute<'a>(html: &'a str, name: &str) -> Vec<&'a str> {
    let start = format!(" {name}=\"");
    html.split(&start).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

/// The numbers of a path or a box.
fn numbers(path: &str) -> Vec<f64> {
    let each = path.split(|c: char| !c.is_ascii_digit() && c != '.').filter(|number| !number.is_empty());
    each.map(|number| number.parse().expect("a number")).collect()
}

/// Every drawing has its words; each of its numbers is one, and lies within it.
#[track_caller]
fn is_sound(html: &str) {
    assert!(html.contains("<svg"), "{html}");
    for svg in html.split("<svg").skip(1).filter_map(|rest| rest.split("</svg>").next()) {
        // What stretches in another drawing is said by that.
        if svg.split('>').next().is_some_and(|start| start.contains(" aria-hidden=\"true\"")) {
            continue;
        }
        assert!(svg.split('>').next().is_some_and(|start| start.contains(" role=\"img\"")), "{svg}");
        assert!(attribute(svg, "aria-label").first().is_some_and(|words| !words.trim().is_empty()), "{svg}");
        for place in ["x", "y", "width", "height", "d", "viewBox"].into_iter().flat_map(|name| attribute(svg, name)) {
            let is_drawn = |c: char| c.is_ascii_digit() || " .%emMLQVHz".contains(c);
            assert!(place.chars().all(is_drawn) && !numbers(place).is_empty(), "{place} in {svg}");
        }
        let Some(size) = attribute(svg, "viewBox").first().map(|size| numbers(size)) else { continue };
        for path in attribute(svg, "d") {
            let most = size[2].max(size[3]);
            assert!(path.starts_with('M') && numbers(path).iter().all(|at| *at <= most), "{path} of {size:?}");
        }
    }
}

fn drawn(picture: Picture) -> String {
    html(&pictures(&[("What it is".into(), picture)]))
}

#[test]
fn vessels_fit_the_strip_and_stand_on_one_ground() {
    let all = [&JIGGER, &BOTTLE, &TUMBLER, &TALL, &PINT, &SHOT, &MUG, &WINE, &GOBLET, &COUPE, &FLUTE, &CONE];
    for (shape, count) in all.into_iter().flat_map(|shape| (1..=6).map(move |count| (shape, count))) {
        for (ml, level) in [(0.5, 0.0), (44.36, 0.2), (700.0, 0.999), (1e7, 1.0)] {
            let vessel = shape.holding(ml);
            let one = Filled { level: vessel.height() * level, ice: Vec::new(), vessel };
            let html = drawn(Picture::Vessels { text: "filled".into(), vessels: vec![one; count] });
            is_sound(&html);
            let size = numbers(attribute(&html, "viewBox")[0]);
            assert!(size[2] <= 130.01 && size[3] <= 90.01, "{size:?}");
            assert!(size[2] > 120.0 || size[3] > 80.0, "{size:?}");
            assert_eq!(html.matches("class=\"wall\"").count(), count);
            assert_eq!(html.matches("class=\"liquid\"").count(), if level > 0.0 { count } else { 0 });
        }
    }
    // A mug that is half full: its wall down and up again, and what is in it up to the middle, turned up at the wall.
    let vessel = MUG.holding(350.0);
    let one = Filled { level: vessel.height() / 2.0, ice: Vec::new(), vessel };
    let html = drawn(Picture::Vessels { text: "mug, 50 % full".into(), vessels: vec![one] });
    holds(&html, "<h2>What it is</h2><svg role=\"img\" class=\"picture\" aria-label=\"mug, 50 % full\" viewBox=\"0 0 ");
    let d = attribute(&html, "d");
    let (liquid, wall) = (numbers(d[0]), numbers(d[2]));
    let (brim, bottom) = (wall[1], wall[3]);
    assert!((liquid[1] - ((brim + bottom) / 2.0 - 2.0)).abs() < 0.02, "{liquid:?} {wall:?}");
    assert!((liquid[0] - wall[0]).abs() < 1e-9 && (liquid[3] - bottom).abs() < 1e-9, "{liquid:?} {wall:?}");
}

/// Ice lies in its glass: cubes at an angle, crushed finer, a sphere round; what stands over the rim has room above it.
#[test]
fn ice_is_drawn_in_its_glass() {
    let iced = |shape: &Shape, kind: Kind, ml: u32, mass: Option<Mass>| {
        let vessel = shape.holding(300.0);
        let ice = pieces(kind, &vessel, mass);
        let fit = fit(&vessel, Volume::whole_ml(ml), Some(&ice));
        let one = Filled { level: fit.level, ice: lying(&vessel, &fit, &ice), vessel };
        let html = drawn(Picture::Vessels { text: "iced".into(), vessels: vec![one] });
        is_sound(&html);
        html
    };
    let cubes = iced(&TUMBLER, Kind::Cubes, 120, None);
    assert_eq!(cubes.matches("class=\"ice\"").count(), 4);
    let crushed = iced(&TALL, Kind::Crushed, 120, None);
    assert!((12..=40).contains(&crushed.matches("class=\"ice fine\"").count()), "{crushed}");
    // Four corners of a block, upright; eight curves of a sphere.
    let block = iced(&TUMBLER, Kind::Block, 120, None);
    let path = |html: &str| attribute(html, "d")[2].to_owned();
    let corners = numbers(&path(&block));
    assert_eq!(corners.len(), 8);
    assert!((corners[0] - corners[6]).abs() < 0.02 && (corners[1] - corners[3]).abs() < 0.02, "{corners:?}");
    let sphere = iced(&TUMBLER, Kind::Sphere, 120, None);
    assert_eq!(path(&sphere).matches('Q').count(), 8);
    // 220 g of cubes stand over the rim.
    let heaped = iced(&TUMBLER, Kind::Cubes, 120, Mass::from_g(220.0).ok());
    let lowest = |d: &str| numbers(d).into_iter().skip(1).step_by(2).fold(f64::INFINITY, f64::min);
    let paths = attribute(&heaped, "d");
    let (first, wall) = (lowest(paths[2]), lowest(paths[paths.len() - 1]));
    assert!(first > 0.0 && first < wall, "{first} {wall}");
}

/// The words have their room first: a picture stands beside few, and few large ones.
#[test]
fn a_picture_leaves_the_words_their_room() {
    let strip = |value: &str, unit: &str, also: &str| {
        let vessel = MUG.holding(350.0);
        let one = Filled { level: vessel.height(), ice: Vec::new(), vessel };
        let picture = Some(Picture::Vessels { text: "mug".into(), vessels: vec![one] });
        let figures = vec![Figure::new(value, unit)];
        let strip = Strip { figures, also: also.into(), picture, tone: Tone::Answer, ..Strip::default() };
        let page =
            html(&Canvas::of(View { screen: Screen { strip, ..Screen::default() }.into(), ..View::default() }).page());
        let said = attribute(&page, "class");
        let size = ["f64", "f52", "f44"].into_iter().find(|size| said.iter().any(|class| class.ends_with(size)));
        (page.contains("<svg"), size.unwrap_or_default(), said.contains(&"also long"))
    };
    assert_eq!(strip("44.4", "ml", "Pour 1½ oz"), (true, "f64", false));
    assert_eq!(strip("51.8", "ml", "Pour 1½ oz + ¼ oz"), (true, "f52", true));
    assert_eq!(strip("51.8", "ml", "Pour 1½ oz + ¾ oz + 1 bsp"), (true, "f52", true));
    assert!(strip("36½", "oz, 1 080 ml", "2 bottles of 700 ml, 400 ml in the last").0);
    assert_eq!(strip("123 456", "ml", "Pour 1½ oz"), (false, "f52", false));
    assert_eq!(strip("51.8", "ml", "12 345 bottles of 1 500 ml, 1 400 ml in the last"), (false, "f52", true));
}

#[test]
fn bars_are_as_wide_as_their_shares_each_with_its_hatch() {
    let parts: Vec<(Hatch, f64)> = Hatch::ALL.into_iter().zip([0.5, 0.2, 0.1, 0.1, 0.099, 0.001, 0.0]).collect();
    let key = Hatch::ALL.into_iter().map(|hatch| (hatch, hatch.name().to_owned())).collect();
    let html = drawn(Picture::Shares { bars: vec![Bar { of: "sugar", text: "sugar: all".into(), parts }], key });
    is_sound(&html);
    let (bar, legend) = html.split_once("</svg>").expect("a bar");
    holds(
        bar,
        "<div class=\"stacks\"><span>sugar</span><svg class=\"stack\" role=\"img\" preserveAspectRatio=\"none\" aria-label=\"sugar: all\"",
    );
    let place = |name: &str| attribute(bar, name).iter().map(|at| at.parse().expect("a number")).collect::<Vec<f64>>();
    // The first two are of the bar itself, by its box alone.
    let (left, width) = (place("x"), place("width"));
    assert_eq!((left.len(), width.len()), (7, 7));
    let gaps = (1..7).map(|at| left[at] - left[at - 1] - width[at - 1]);
    assert!(gaps.clone().all(|gap| (gap - 3.5).abs() < 0.02), "{:?}", gaps.collect::<Vec<_>>());
    assert!(width.iter().all(|width| *width >= 0.5) && (left[6] + width[6] - 359.25).abs() < 0.02, "{width:?}");
    assert!((width[0] + 1.5 - 2.0 - 0.5 * (360.0 - 12.0 - 14.0)).abs() < 0.01, "{width:?}");
    // Four are hatched, each in its own way, in the bar and in the legend.
    assert_eq!(bar.matches("class=\"hatch\"").count(), 4);
    let marks = attribute(legend, "d");
    assert_eq!(marks.len(), 4);
    assert!((1..4).all(|at| marks[at] != marks[at - 1]));
    for hatch in Hatch::ALL {
        holds(
            legend,
            &format!(
                "class=\"mark\" aria-label=\"{name}\" viewBox=\"0 0 16 16\" width=\"16\" height=\"16\"><rect class=\"{name}\"",
                name = hatch.name()
            ),
        );
    }
    // A part's hatch stays within it.
    let sweet = numbers(attribute(bar, "d")[0]);
    let (from, to) = (left[1] + 0.75, left[1] + width[1] - 0.75);
    assert!(sweet.iter().step_by(2).all(|x| *x >= from - 0.01 && *x <= to + 0.01), "{sweet:?} {from} {to}");
    assert!(sweet.iter().skip(1).step_by(2).all(|y| *y >= 1.49 && *y <= 26.51), "{sweet:?}");
}

#[test]
fn the_line_of_ph_is_marked_where_it_is() {
    let line = |ph: [f64; 3]| {
        let html = drawn(Picture::PhLine { text: "pH".into(), ph, said: "so".into(), clots: (4.6, "4.6".into()) });
        is_sound(&html);
        let place = |class: &str| {
            let start = format!("<rect class=\"{class}\" x=\"");
            html.split(&start).nth(1).and_then(|rest| rest.split('"').next()).map(str::to_owned).expect("a mark")
        };
        [place("likely"), place("doubt"), place("limit")]
    };
    assert_eq!(line([2.9, 3.0, 3.25]), ["20%", "18%", "52%"]);
    // What lies beyond the line is drawn at its end.
    assert_eq!(line([-1.0, 0.5, 14.0]), ["0%", "0%", "52%"]);
    assert_eq!(line([9.0, 10.0, 11.0]), ["100%", "100%", "52%"]);
}

#[test]
fn a_curve_is_drawn_over_its_rules_with_a_dot_at_the_chosen_time() {
    let drawn = |[least, most]: [f64; 2], chosen: f64| {
        let at = [0.0, 30.0, 60.0, 90.0];
        let points = |from: f64, to: f64| at.map(|s: f64| [s, from + (to - from) * s / 90.0]).to_vec();
        let now = |from: f64, to: f64| from + (to - from) * chosen / 90.0;
        let lines = vec![
            Line { name: "°C, left", points: points(most, least), now: now(most, least), unit: "°" },
            Line { name: "ml water, right", points: points(0.0, 45.0), now: now(0.0, 45.0), unit: "" },
        ];
        let foot = vec![(0.0, "0".into()), (chosen, "now".into()), (90.0, "90 s".into())];
        drawn(Picture::Curve { text: "colder".into(), lines, seconds: [chosen, 90.0], foot })
    };
    let html = drawn([-5.0, 20.0], 30.0);
    holds(&html, "<svg role=\"img\" class=\"curve\" aria-label=\"colder\"><svg viewBox=\"0 0 100 100\"");
    let inner = html.split("</svg>").next().expect("what stretches");
    for (class, d) in [
        ("rule", "M0 0H100M0 33.33H100M0 66.67H100M0 100H100"),
        ("first", "M0 0L33.33 27.78L66.67 55.56L100 83.33"),
        ("second", "M0 100L33.33 75L66.67 50L100 25"),
        ("chosen", "M33.33 0V100"),
    ] {
        holds(inner, &format!("<path class=\"{class}\" d=\"{d}\""));
    }
    holds(&html, "<rect class=\"dot\" x=\"33.33%\" y=\"27.78%\"");
    holds(&html, "<rect class=\"dot hollow\" x=\"33.33%\" y=\"75%\"");
    let said: Vec<&str> = html.split("</text>").filter_map(|rest| rest.rsplit('>').next()).collect();
    let shown = ["20°", "10°", "0°", "−10°", "°C, left", "60", "40", "20", "0", "ml water, right"];
    assert_eq!(said[..13], [&shown[..], &["0", "now", "90 s"]].concat());
    // What falls low is named above its line, what stays high below it; what rises is always named above.
    let name = |html: &str, name: &str| {
        let before = html.split(name).next().unwrap_or_default().rsplit("<text").next().unwrap_or_default().to_owned();
        [attribute(&before, "dy")[0].to_owned(), attribute(&before, "y")[0].to_owned()]
    };
    assert_eq!(name(&html, "°C, left"), ["-.6em", "83.33%"]);
    assert_eq!(name(&html, "ml water, right"), ["-.6em", "25%"]);
    assert_eq!(name(&drawn([13.9, 20.0], 30.0), "°C, left")[0], "1.3em");
    // Whatever it is drawn of stays within.
    for (range, chosen) in [([20.0, 20.0], 0.0), ([-1e12, 1e12], 90.0), ([0.0, 1e9], 1e9), ([-0.4, 0.2], 45.0)] {
        let html = drawn(range, chosen);
        let places = ["x", "y", "d"].into_iter().flat_map(|name| attribute(&html, name).into_iter().map(numbers));
        assert!(places.flatten().all(|at| (0.0..=100.0).contains(&at)), "{html}");
    }
}

#[test]
fn lines_of_one_unit_have_one_axis() {
    let line = |name, most| Line { name, points: vec![[0.0, 0.0], [60.0, most]], now: most / 2.0, unit: "" };
    let (lines, foot) = (vec![line("g, most", 53.0), line("g, least", 21.0)], Vec::new());
    let html = drawn(Picture::Curve { text: "water".into(), lines, seconds: [30.0, 60.0], foot });
    // Both from 0 to 60: 53 and 21 of it.
    holds(&html, "<path class=\"first\" d=\"M0 100L100 11.67\"");
    holds(&html, "<path class=\"second\" d=\"M0 100L100 65\"");
}

#[test]
fn the_numbers_of_an_axis_are_whole_and_hold_all_of_its_line() {
    let axis = |values: &[f64]| {
        let points = values.iter().map(|value| [0.0, *value]).collect();
        format!("{:?}", Line { name: "", points, now: values[0], unit: "" }.axis())
    };
    assert_eq!(axis(&[20.0, -4.6]), "[-10.0, 10.0]");
    assert_eq!(axis(&[0.0, 31.0, 44.0]), "[0.0, 20.0]");
    assert_eq!(axis(&[0.0, 61.0]), "[0.0, 30.0]");
    assert_eq!(axis(&[4.0, 4.0]), "[4.0, 1.0]");
    assert_eq!(axis(&[-2.0, -6.5]), "[-8.0, 2.0]");
    assert_eq!(axis(&[0.0, 45_000.0]), "[0.0, 20000.0]");
}

#[test]
fn what_every_screen_draws_is_sound() {
    for (route, typed) in [
        (Route::Measure, [("amount", "1¾ oz")]),
        (Route::Measure, [("amount", "4 dash")]),
        (Route::Serves, [("ask", "make")]),
        (Route::Balance, [("makes", "1")]),
        (Route::Balance, [("spec", "60 ml gin\n20 ml lemon juice\n0.001 ml water")]),
        (Route::Chill, [("method", "stir")]),
        (Route::Chill, [("time", "59 min")]),
        (Route::Ice, [("ask", "night")]),
        (Route::Ice, [("ask", "melt")]),
        (Route::MilkWash, [("ratio", "1:5")]),
        (Route::MilkWash, [("ratio", "2:1")]),
        (Route::MilkWash, [("ratio", "1:100")]),
    ] {
        let texts = typed.map(|(name, text)| (name.to_owned(), text.to_owned())).into();
        let screen = screen(route, &texts, &ShelfForm::default().bench(Decimal::Point)).into();
        let page = html(&Canvas::of(View { screen, ..View::default() }).page());
        match typed[0].1 {
            // Nothing is poured that has a jigger.
            "4 dash" => assert!(!page.contains("<svg"), "{page}"),
            _ => is_sound(&page),
        }
    }
}
