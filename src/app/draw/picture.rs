//! Drawings: vessels with what is in them, bars of shares, the line of pH, curves.
//!
//! Bars stretch with the page and their strokes do not; no words stand in what stretches. A hatch is a path of its own,
//! cut where its part ends: a pattern would need a name that no other drawing on the page has.

mod changed;
mod curve;
mod ice;
#[cfg(test)]
mod tests;

use super::node::{Fixed, Node, Text, element, owned, said, with, words};
use crate::craft::vessel::Vessel;
use crate::screen::picture::{Bar, Filled, HIGHEST, Hatch, Picture, WIDEST};
use crate::text::{self, Decimal};

/// Round a drawing, for its strokes; and between two vessels, px.
const ROOM: f64 = 3.0;
const APART: f64 = 8.0;
/// How far the liquid turns up at the wall, px.
const TURNS_UP: f64 = 2.0;
/// A bar, in its own units; between two parts; and the least that a part shows of itself.
const BAR: [f64; 2] = [360.0, 28.0];
const GAP: f64 = 2.0;
const LEAST: f64 = 2.0;
/// A mark in the key.
const MARK: f64 = 16.0;
/// Half a stroke round a part.
const EDGE: f64 = 0.75;
/// The line of pH from left to right.
const PH: [f64; 2] = [2.0, 7.0];

/// Drawings, each under its heading, if it has one.
pub(super) fn pictures(shown: &[(String, Picture)]) -> Vec<Node> {
    let title = |title: &String| (!title.is_empty()).then(|| said("h2", &[], owned(title)));
    let one = |(words, shown): &(String, Picture)| title(words).into_iter().chain(picture(shown));
    shown.iter().flat_map(one).collect()
}

/// A drawing, with its words.
pub(super) fn picture(shown: &Picture) -> Vec<Node> {
    match shown {
        Picture::Vessels { text, vessels } => vec![vessels_in_row(text, vessels)],
        Picture::Shares { bars, key } => {
            let bars = bars.iter().flat_map(|one| [said("span", &[], one.of.into()), bar(one)]);
            let key = key.iter().map(|(hatch, of)| element("span", &[], vec![mark(*hatch), words(of)]));
            vec![
                element("div", &[("class", "stacks")], bars.collect()),
                element("p", &[("class", "legend")], key.collect()),
            ]
        }
        Picture::PhLine { text, ph, said, clots } => vec![ph_line(text, *ph, said, clots)],
        Picture::Curve { text, lines, seconds, foot } => vec![curve::curve(text, lines, *seconds, foot)],
        Picture::Changed(all) => changed::changed(all),
    }
}

/// A length as an attribute, never below nothing; the printer of floats of the standard library stays out of the build.
fn length(value: f64) -> String {
    text::editable(value.max(0.0), Decimal::Point)
}

fn percent(value: f64) -> Text {
    (length(value) + "%").into()
}

fn svg(class: &'static str, spoken: &str, size: Option<[f64; 2]>, children: Vec<Node>) -> Node {
    let mut attributes = vec![("class", class.into()), ("aria-label", owned(spoken))];
    if let Some([width, height]) = size.map(|size| size.map(length)) {
        attributes.push(("viewBox", format!("0 0 {width} {height}").into()));
        attributes.extend([("width", width.into()), ("height", height.into())]);
    }
    with("svg", &[("role", "img")], attributes, children)
}

fn path(class: Fixed, d: String) -> Node {
    with("path", class, vec![("d", d.into())], Vec::new())
}

fn rect(class: &'static str, [x, y, width, height]: [Text; 4]) -> Node {
    let attributes = vec![("class", class.into()), ("x", x), ("y", y), ("width", width), ("height", height)];
    with("rect", &[], attributes, Vec::new())
}

/// Vessels on one ground, as large as the strip has room for.
fn vessels_in_row(text: &str, vessels: &[Filled]) -> Node {
    let high = |one: &Filled| one.vessel.stem + one.vessel.base + one.vessel.height().max(ice::top(&one.ice));
    let highest = vessels.iter().map(high).fold(1.0, f64::max);
    let wide: f64 = vessels.iter().map(|one| one.vessel.widest() * 2.0).sum();
    let apart = APART * vessels.len().saturating_sub(1) as f64;
    let scale = ((HIGHEST - 2.0 * ROOM) / highest).min((WIDEST - 2.0 * ROOM - apart) / wide.max(1.0));
    let ground = ROOM + highest * scale;
    let (mut children, mut left) = (Vec::new(), ROOM);
    for one in vessels {
        let radius = one.vessel.widest() * scale;
        vessel(one, [left + radius, ground, scale], &mut children);
        left += 2.0 * radius + APART;
    }
    svg("picture", text, Some([left - APART + ROOM, ground + ROOM]), children)
}

/// The vessels of several drawings, each as a drawing of its own: all of one scale and height, within `[width, height]` px.
pub(super) fn to_one_scale(shown: &[Option<&Picture>], [width, height]: [f64; 2]) -> Vec<Option<Node>> {
    let only = |picture: &&'_ Picture| match picture {
        Picture::Vessels { text, vessels } => vessels.first().map(|one| (text.clone(), one.clone())),
        _ => None,
    };
    let each: Vec<Option<(String, Filled)>> = shown.iter().map(|one| one.as_ref().and_then(only)).collect();
    let vessels = || each.iter().flatten().map(|(_, one)| &one.vessel);
    let highest = vessels().map(|one| one.stem + one.base + one.height()).fold(1.0, f64::max);
    let widest = vessels().map(Vessel::widest).fold(1.0, f64::max);
    let scale = ((height - 2.0 * ROOM) / highest).min((width / 2.0 - ROOM) / widest);
    let ground = ROOM + highest * scale;
    let draw = |(text, one): &(String, Filled)| {
        let (mut children, middle) = (Vec::new(), ROOM + one.vessel.widest() * scale);
        vessel(one, [middle, ground, scale], &mut children);
        svg("picture", text, Some([2.0 * middle, ground + ROOM]), children)
    };
    each.iter().map(|one| one.as_ref().map(draw)).collect()
}

/// A vessel on its axis: what is in it, its surface, its wall, and what it stands on.
fn vessel(one: &Filled, [axis, ground, scale]: [f64; 3], children: &mut Vec<Node>) {
    let Filled { vessel, level, ice } = one;
    let bottom = ground - (vessel.stem + vessel.base) * scale;
    let at = |side: f64, [height, radius]: [f64; 2]| {
        format!("{} {}", length(axis + side * radius * scale), length(bottom - height * scale))
    };
    // Down the left wall and up the right.
    let wall = |points: &[[f64; 2]]| {
        let mut d = String::new();
        for (side, point) in
            points.iter().rev().map(|point| (-1.0, point)).chain(points.iter().map(|point| (1.0, point)))
        {
            d.push(if d.is_empty() { 'M' } else { 'L' });
            d.push_str(&at(side, *point));
        }
        d
    };
    if *level > 0.0 {
        let edge = (level + TURNS_UP / scale).min(vessel.height());
        let edge = [edge, vessel.radius_at(edge)];
        let wet = vessel.profile.iter().copied().take_while(|[height, _]| height < level).chain([edge]);
        // It sags as far below the level as it turns up.
        let sag = at(0.0, [(2.0 * level - edge[0]).max(0.0), 0.0]);
        let wet: Vec<[f64; 2]> = wet.collect();
        children.push(path(&[("class", "liquid")], format!("{}Q{sag} {}z", wall(&wet), at(-1.0, edge))));
        children.push(path(&[("class", "surface")], format!("M{}Q{sag} {}", at(1.0, edge), at(-1.0, edge))));
    }
    children.extend(ice.iter().map(|floe| ice::floe(floe, [axis, bottom, scale])));
    let mut d = wall(&vessel.profile);
    let radius = vessel.profile.first().map_or(0.0, |[_, radius]| *radius);
    if vessel.base > 0.0 {
        let [left, right] = [-1.0, 1.0].map(|side| length(axis + side * radius * scale));
        d.push_str(&format!("M{left} {}V{ground}H{right}V{}", length(bottom), length(bottom), ground = length(ground)));
    }
    if vessel.stem > 0.0 {
        let [left, right] = [-1.0, 1.0].map(|side| length(axis + side * vessel.foot * scale));
        let (axis, ground) = (length(axis), length(ground));
        d.push_str(&format!("M{axis} {}V{ground}M{left} {ground}H{right}", length(bottom)));
    }
    children.push(path(&[("class", "wall")], d));
}

/// A bar whose parts are as wide as their shares, each at least a sliver.
fn bar(bar: &Bar) -> Node {
    let count = bar.parts.len() as f64;
    let shared = BAR[0] - GAP * (count - 1.0) - LEAST * count;
    let (mut children, mut left) = (Vec::new(), 0.0);
    for (hatch, fraction) in &bar.parts {
        let width = LEAST + fraction * shared;
        part(*hatch, [left, width, BAR[1]], &mut children);
        left += width + GAP;
    }
    let [width, height] = BAR.map(length);
    let attributes = vec![("aria-label", owned(&bar.text)), ("viewBox", format!("0 0 {width} {height}").into())];
    with("svg", &[("class", "stack"), ("role", "img"), ("preserveAspectRatio", "none")], attributes, children)
}

/// What a part of the bars looks like.
fn mark(hatch: Hatch) -> Node {
    let mut children = Vec::new();
    part(hatch, [0.0, MARK, MARK], &mut children);
    svg("mark", hatch.name(), Some([MARK, MARK]), children)
}

/// A part: its colour, its edge and its hatch.
fn part(hatch: Hatch, [left, width, height]: [f64; 3], children: &mut Vec<Node>) {
    let place = [left + EDGE, EDGE, width - 2.0 * EDGE, height - 2.0 * EDGE].map(|value| length(value).into());
    children.push(rect(hatch.name(), place));
    let [inside, wide, high] = [left + 2.0 * EDGE, width - 4.0 * EDGE, height - 4.0 * EDGE];
    let d = lines(hatch, [inside, wide.max(0.0), high]);
    if !d.is_empty() {
        children.push(path(&[("class", "hatch")], d));
    }
}

/// The lines of a hatch, within the edge of its part.
fn lines(hatch: Hatch, [left, width, height]: [f64; 3]) -> String {
    let mut d = String::new();
    let mut line = |from: [f64; 2], to: [f64; 2]| {
        let [[a, b], [e, f]] = [from, to].map(|[x, y]| [length(left + x), length(2.0 * EDGE + y)]);
        d.push_str(&format!("M{a} {b}L{e} {f}"));
    };
    let every =
        |step: f64, end: f64| (0..64).map(move |at| step * (f64::from(at) + 0.5)).take_while(move |at| *at < end);
    match hatch {
        Hatch::Sweet => {
            for start in every(7.0, width + height) {
                let [from, to] = [(start - height).max(0.0), start.min(width)];
                line([from, start - from], [to, start - to]);
            }
        }
        Hatch::Sour => {
            for (x, y) in every(8.0, width).flat_map(|x| every(8.0, height).map(move |y| (x, y))) {
                line([x, y], [x, y]);
            }
        }
        Hatch::Bitter => every(4.0, height).for_each(|y| line([0.0, y], [width, y])),
        Hatch::Curd => {
            every(8.0, width).for_each(|x| line([x, 0.0], [x, height]));
            every(8.0, height).for_each(|y| line([0.0, y], [width, y]));
        }
        Hatch::Strong | Hatch::Milk | Hatch::Water => {}
    }
    d
}

/// The line from sour to not: what clots, a box as wide as the doubt, a dot. Across in percent, down in lines of text.
fn ph_line(text: &str, ph: [f64; 3], said: &str, (clots_at, limit): &(f64, String)) -> Node {
    let at = |ph: f64| ((ph - PH[0]) / (PH[1] - PH[0])).clamp(0.0, 1.0) * 100.0;
    let ([least, likely, most], clots) = (ph.map(at), at(*clots_at));
    let label = |x: f64, y: &'static str, anchor: &'static str, said: &str| {
        let attributes = vec![("x", percent(x)), ("y", y.into()), ("text-anchor", anchor.into())];
        with("text", &[], attributes, vec![words(said)])
    };
    let across = |class, from: f64, to: f64, y: &'static str, height: &'static str| {
        rect(class, [percent(from), y.into(), percent(to - from), height.into()])
    };
    // What has a width of its own is moved to the middle of its place by the sheet.
    let about = |class, x: f64, y: &'static str, width: &'static str, height: &'static str| {
        rect(class, [percent(x), y.into(), width.into(), height.into()])
    };
    let below = "4.9em";
    let children = vec![
        across("stays", clots, 100.0, "2.4em", ".4em"),
        across("clots", 0.0, clots, "2.4em", ".4em"),
        about("limit", clots, "1.6em", "3", "2em"),
        across("doubt", least, most, "1.9em", "1.4em"),
        about("likely", likely, "2.6em", "12", "12"),
        label(likely.clamp(16.0, 84.0), "1.1em", "middle", said),
        label(0.0, below, "start", &length(PH[0])),
        label(clots / 2.0, below, "middle", "milk clots"),
        label(clots, below, "middle", limit),
        label(f64::midpoint(clots, 100.0), below, "middle", "it stays milk"),
        label(100.0, below, "end", &length(PH[1])),
    ];
    svg("ph", text, None, children)
}
