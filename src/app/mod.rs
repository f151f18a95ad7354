//! The app: Leptos, thin. It draws whatever screen the forms describe and knows no tool by name.
//!
//! Signals hold text; everything else is derived from it. No effect writes a signal.

mod block;
mod browser;
mod desk;
mod field;
mod pad;
mod part;
mod shell;
mod slot;
mod strip;

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
    desk.arrive(&browser::hash());
    part::outside(Box::new(move || browser::set_theme(desk.shelf().theme())));
    let route = Memo::new(move |_| desk.route() as usize);
    part::outside(Box::new(move || {
        // Reading the memo, not only tracking it, is what makes it follow its own sources.
        let _ = route.get();
        browser::set_title(untrack(|| desk.route()).label());
        browser::scroll_to_top("page");
        browser::next_frame(move || field::open_first(desk));
    }));
    part::all(
        [shell::header(desk), strip::strip(desk), shell::page(desk), pad::pad(desk), shell::places(desk)].into_iter(),
    )
}
