//! Parts: pieces of the screen drawn whole from data, and drawn again when it changes.
//!
//! A view is plain values: when it is drawn again Leptos changes, in place, the few nodes that
//! differ, so an input keeps its caret. Signals inside views would do the same for one to three
//! kilobytes each: drawing whole parts took the download from 213 KB to under the budget.

use leptos::ev::{Event, MouseEvent};
use leptos::prelude::*;

/// Something that is drawn again when a signal it reads changes.
pub(super) fn part(draw: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    boxed(Box::new(draw))
}

fn boxed(draw: Box<dyn Fn() -> AnyView + Send>) -> AnyView {
    (move || draw()).into_any()
}

/// Keeps something outside the views in step with what `deed` reads. It must write no signal.
pub(super) fn outside(deed: Box<dyn Fn()>) {
    Effect::new(move |_: Option<()>| deed());
}

/// Several views, one after the other.
pub(super) fn all(views: impl Iterator<Item = AnyView>) -> AnyView {
    views.collect::<Vec<AnyView>>().into_any()
}

/// Nothing to draw.
pub(super) fn nothing() -> AnyView {
    ().into_any()
}

/// A handler of taps, in one type for all.
pub(super) type OnTap = Box<dyn FnMut(MouseEvent)>;

/// A handler of other events, in one type for all.
pub(super) type On = Box<dyn FnMut(Event)>;

/// Does `deed` on a tap.
pub(super) fn on_tap(deed: impl Fn() + 'static) -> OnTap {
    Box::new(move |_| deed())
}

/// A button; one that cannot be tapped now is shown as such.
pub(super) fn button(class: &'static str, label: String, can: bool, tap: OnTap) -> AnyView {
    view! { <button type="button" class=class disabled=!can on:click=tap>{label}</button> }.into_any()
}

/// A link; `is_here` marks the one that leads to what is shown.
pub(super) fn link(href: String, label: String, is_here: bool) -> AnyView {
    view! { <a href=href aria-current=is_here.then_some("page")>{label}</a> }.into_any()
}

/// A paragraph.
pub(super) fn paragraph(class: &'static str, words: String) -> AnyView {
    view! { <p class=class>{words}</p> }.into_any()
}
