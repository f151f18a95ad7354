//! The app: Leptos, thin. It draws whatever screen the forms describe and knows no tool by name.
//!
//! Signals hold text; everything else is derived from it. No effect writes a signal.

mod block;
mod browser;
mod deed;
mod desk;
mod field;
mod label;
mod library;
mod pad;
mod part;
mod shell;
mod slot;
mod strip;
mod ticker;

use leptos::prelude::*;

use desk::Desk;

/// Mounts the app in place of the first paint.
pub fn start() {
    let Some(root) = browser::app_root() else { return };
    root.set_text_content(None);
    mount_to(root, app).forget();
}

/// The whole screen.
fn app() -> AnyView {
    let desk = Desk::open();
    browser::on_event("hashchange", move || desk.arrive(&browser::hash()));
    browser::on_event_with("storage", "key", move |key| desk.follow(&key));
    browser::on_event_with("meniscus-given", "text", move |file| desk.given(&file));
    // A phone may have slept through what other tabs did.
    browser::on_event("visibilitychange", move || {
        if browser::is_visible() {
            desk.library.read_all(desk.library.has_cards());
        }
    });
    ticker::start(desk);
    browser::on_event_with("meniscus-packed", "text", move |text| desk.library.packed(&text));
    browser::on_event_with("meniscus-file", "text", move |text| desk.library.look_at(&text));
    // The hint on installing reads what boot.js has noted by then.
    for noted in ["meniscus-can-install", "meniscus-installed"] {
        browser::on_event(noted, move || desk.sight.update(|_| {}));
    }
    desk.arrive(&browser::hash());
    desk.begin();
    part::outside(Box::new(move || browser::set_theme(desk.theme())));
    part::all(
        [
            shell::header(desk),
            strip::strip(desk),
            shell::page(desk),
            ticker::line(desk),
            pad::pad(desk),
            shell::places(desk),
        ]
        .into_iter(),
    )
}
