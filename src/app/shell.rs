//! Round the blocks: pills for the tools of a place, the five places, what needs saying.

use leptos::prelude::*;

use super::block::block;
use super::browser;
use super::desk::Desk;
use super::part::{all, button, link, nothing, on_tap, part};
use crate::screen::Do;
use crate::screen::route::Place;

/// The pills, and the offer of an update.
pub(super) fn header(desk: Desk) -> AnyView {
    // A new version waits until it is asked for; boot.js watches the service worker.
    browser::on_event("meniscus-update-waiting", move || desk.sight.update(|sight| sight.update_waits = true));
    part(move || {
        let (route, update_waits) = desk.sight.with(|sight| (sight.route, sight.update_waits));
        let pill = |tool: &_| {
            let tool: crate::screen::route::Route = *tool;
            link(tool.href(), tool.label().into(), tool == route)
        };
        let pills = all(route.place().tools().iter().map(pill));
        let update = match update_waits {
            true => button("update", "Update".into(), true, on_tap(|| browser::raise("meniscus-update-now"))),
            false => nothing(),
        };
        view! {
            <header class="top">
                <h1 class="unseen">{route.label()}</h1>
                <nav class="pills" aria-label="Tools">{pills}</nav>
                {update}
            </header>
        }
        .into_any()
    })
}

/// The five places.
pub(super) fn places(desk: Desk) -> AnyView {
    part(move || {
        let here = desk.route().place();
        let place = |place: &Place| link(place.tools()[0].href(), place.label().into(), *place == here);
        view! { <nav class="places" aria-label="Places">{all(Place::ALL.iter().map(place))}</nav> }.into_any()
    })
}

/// What stands between strip and pad: a notice, then the blocks of the screen.
pub(super) fn page(desk: Desk) -> AnyView {
    part(move || {
        let blocks = desk.screen.with(|screen| all(screen.blocks.iter().map(|shown| block(desk, shown))));
        view! { <main id="page">{notice(desk)}{blocks}</main> }.into_any()
    })
}

/// Something to say above a page, put away with a tap.
fn notice(desk: Desk) -> AnyView {
    let said = desk.sight.with(|sight| sight.notice.clone());
    if said.is_empty() {
        return nothing();
    }
    // What could not be saved can be taken home as a file.
    let give = match desk.sight.with(|sight| !sight.unsaved.is_empty()) {
        true => button("", "Save as a file".into(), true, on_tap(move || desk.do_to_book(Do::GiveUnsaved))),
        false => nothing(),
    };
    let put_away = button("", "OK".into(), true, on_tap(move || desk.sight.update(|sight| sight.notice.clear())));
    view! { <p class="notice" role="alert"><span>{said}</span>{give}{put_away}</p> }.into_any()
}
