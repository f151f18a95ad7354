//! Lines over time, with their rules and numbers. What is ruled and drawn stretches with the page, in a drawing of its own
//! within the other, and its strokes do not; across, words stand in percent.

use super::{Fixed, Node, Text, element, length, path, percent, rect, svg, with, words};
use crate::screen::picture::{Line, RULES};
use crate::text::{self, Decimal};

/// How far along a line its name ends, percent.
const NAMED: f64 = 75.0;
/// Beyond this, percent from the top, what stands below a line would stand in the foot.
const LOW: f64 = 80.0;

/// A curve, with its words.
pub(super) fn curve(text: &str, lines: &[Line], [chosen, last]: [f64; 2], foot: &[(f64, String)]) -> Node {
    let x = |seconds: f64| (seconds / last * 100.0).clamp(0.0, 100.0);
    let mut ruled = String::new();
    for rule in 0..RULES {
        ruled.push_str(&format!("M0 {}H100", length(level(rule))));
    }
    let mut drawn = vec![path(&[("class", "rule")], ruled)];
    let (mut dots, mut said) = (Vec::new(), Vec::new());
    // Lines of one unit have one axis.
    let shared = match lines {
        [one, other] if one.unit == other.unit => {
            Some(Line { points: [&one.points[..], &other.points].concat(), ..one.clone() }.axis())
        }
        _ => None,
    };
    for (at, line) in lines.iter().enumerate() {
        let [from, step] = shared.unwrap_or_else(|| line.axis());
        let y = |value: f64| (1.0 - (value - from) / (step * f64::from(RULES - 1))).clamp(0.0, 1.0) * 100.0;
        let mut d = String::new();
        for [seconds, value] in &line.points {
            d.push(if d.is_empty() { 'M' } else { 'L' });
            d.push_str(&format!("{} {}", length(x(*seconds)), length(y(*value))));
        }
        let (of, dot, aside, end): (Fixed, _, _, _) = match at {
            0 => (&[("class", "first")], "dot", "-.6em", "end"),
            _ => (&[("class", "second")], "dot hollow", ".6em", "start"),
        };
        drawn.push(path(of, d));
        // The sheet moves it to the middle of its place.
        dots.push(rect(dot, [percent(x(chosen)), percent(y(line.now)), "12".into(), "12".into()]));
        for rule in 0..RULES {
            let number = text::plain(from + step * f64::from(RULES - 1 - rule), 0, Decimal::Point) + line.unit;
            said.push(label(&[], [if at == 0 { 0.0 } else { 100.0 }, level(rule)], [aside, ".35em"], end, &number));
        }
        // Below what falls, where there is room, and above all else: the line itself lies on the other side.
        let named = line.points.iter().find(|[seconds, _]| x(*seconds) >= NAMED).map_or(line.now, |[_, value]| *value);
        let falls = line.points.first().is_some_and(|[_, first]| *first > named) && y(named) < LOW;
        let off = ["0", if falls { "1.3em" } else { "-.6em" }];
        said.push(label(&[("class", "name")], [NAMED, y(named)], off, "end", line.name));
    }
    drawn.push(path(&[("class", "chosen")], format!("M{} 0V100", length(x(chosen)))));
    let end = |x: f64| {
        if x < 5.0 {
            "start"
        } else if x > 95.0 {
            "end"
        } else {
            "middle"
        }
    };
    said.extend(foot.iter().map(|(seconds, words)| {
        let of: Fixed = if (seconds - chosen).abs() < 1e-9 { &[("class", "name")] } else { &[] };
        label(of, [x(*seconds), 100.0], ["0", "1.6em"], end(x(*seconds)), words)
    }));
    let stretched = &[("viewBox", "0 0 100 100"), ("preserveAspectRatio", "none"), ("aria-hidden", "true")];
    svg("curve", text, None, [vec![element("svg", stretched, drawn)], dots, said].concat())
}

/// How far down a rule lies, of a hundred.
fn level(rule: u8) -> f64 {
    f64::from(rule) / f64::from(RULES - 1) * 100.0
}

/// Words at a place, moved off it so far.
fn label(of: Fixed, [x, y]: [f64; 2], [dx, dy]: [&'static str; 2], end: &'static str, said: &str) -> Node {
    let attributes: Vec<(&'static str, Text)> =
        vec![("x", percent(x)), ("y", percent(y)), ("dx", dx.into()), ("dy", dy.into()), ("text-anchor", end.into())];
    with("text", of, attributes, vec![words(said)])
}
