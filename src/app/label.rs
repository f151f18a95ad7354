//! A label, as it is printed: one drawing in millimetres, as often as it is wanted.

use leptos::prelude::*;

use super::part::all;
use crate::screen::Drawing;
use crate::text::{self, Decimal};

/// The label, and behind it, on paper alone, its copies.
pub(super) fn label(drawn: &Drawing) -> AnyView {
    let copies = all((0..drawn.copies).map(|_| one(drawn)));
    let class = format!("labels {}", drawn.paper);
    view! { <section class=class aria-label="Label">{copies}</section> }.into_any()
}

/// Millimetres as an attribute; the printer of floats of the standard library stays out of the build.
fn mm(value: f64) -> String {
    text::plain(value, 5, Decimal::Point)
}

fn one(drawn: &Drawing) -> AnyView {
    let texts = all(drawn.texts.iter().map(|text| {
        let weight = if text.is_heavy { "700" } else { "500" };
        let (x, y, size) = (mm(text.x), mm(text.y), mm(text.size));
        view! { <text x=x y=y font-size=size font-weight=weight>{text.words.clone()}</text> }.into_any()
    }));
    let code = all(drawn.code.iter().map(|(code, [left, top, side])| {
        let scale = mm(side / code.size as f64);
        let place = format!("translate({} {}) scale({scale})", mm(*left), mm(*top));
        view! { <path d=code.path.clone() transform=place></path> }.into_any()
    }));
    let (width, height) = (mm(drawn.width), mm(drawn.height));
    view! {
        <svg class="label" viewBox=format!("0 0 {width} {height}") role="img" aria-label="Label, as it is printed">
            <rect class="tape" width=width.clone() height=height.clone()></rect>
            {texts}
            {code}
        </svg>
    }
    .into_any()
}
