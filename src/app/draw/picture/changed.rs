//! Figures before and after a change: an outlined bar over a filled one, and a mark where it should be.

use super::{percent, rect, svg, words};
use crate::app::draw::node::{Fixed, Node, Text, element, owned, said};
use crate::screen::picture::Changed;

/// What of the width the largest takes, %.
const WIDEST: f64 = 96.0;
const HEAD: Fixed = &[("class", "changed")];
const KEY: Fixed = &[("class", "legend")];

/// Each with what it is of, and both figures in words; then what is drawn how.
pub(super) fn changed(all: &[Changed]) -> Vec<Node> {
    let key = |class, of| {
        let bar =
            rect(class, ["1".into(), "3".into(), if class == "aim" { "3".into() } else { "22".into() }, "10".into()]);
        element("span", &[], vec![svg("change", of, Some([24.0, 16.0]), vec![bar]), words(of)])
    };
    let key = element("p", KEY, vec![key("was", "before"), key("is", "after"), key("aim", "aim")]);
    all.iter().flat_map(one).chain([key]).collect()
}

fn one(figure: &Changed) -> [Node; 2] {
    let Changed { of, said: shown, values, aim } = figure;
    let largest = values.iter().copied().chain(*aim).fold(1e-9, f64::max);
    let wide = |value: f64| percent(value / largest * WIDEST);
    let bar =
        |class, [top, high]: [&'static str; 2], width: Text| rect(class, ["1".into(), top.into(), width, high.into()]);
    let mut bars = vec![bar("was", ["2", "9"], wide(values[0])), bar("is", ["14", "9"], wide(values[1]))];
    bars.extend(aim.map(|aim| rect("aim", [wide(aim), "0".into(), "3".into(), "26".into()])));
    let head = vec![said("span", &[], (*of).into()), said("b", &[], owned(shown))];
    [element("p", HEAD, head), svg("change wide", &format!("{of}: {shown}"), None, bars)]
}
