//! The strip of tape that holds the answer.

use leptos::prelude::*;

use super::desk::Desk;
use super::part::{all, part};
use crate::screen::Tone;
use crate::text::Figure;

/// The answer of the screen. Its height is fixed, so it never moves.
pub(super) fn strip(desk: Desk) -> AnyView {
    part(move || {
        desk.screen.with(|screen| {
            let class = match (screen.tall, screen.strip.tone) {
                (false, Tone::Answer) => "strip",
                (false, _) => "strip waiting",
                (true, Tone::Answer) => "strip tall",
                (true, _) => "strip tall waiting",
            };
            view! {
                <output class=class>
                    {all(screen.strip.figures.iter().map(figure))}
                    <span class="also">{screen.strip.also.clone()}</span>
                </output>
            }
            .into_any()
        })
    })
}

fn figure(figure: &Figure) -> AnyView {
    let long = figure.value.chars().count() + figure.unit.chars().count() > 15;
    let class = if long { "figure long" } else { "figure" };
    view! { <span class=class><b>{figure.value.clone()}</b>" "<small>{figure.unit.clone()}</small></span> }.into_any()
}
