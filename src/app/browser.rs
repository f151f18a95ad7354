//! What the app asks of the browser, each in one small function that cannot panic.

use leptos::prelude::{request_animation_frame, set_interval_with_handle, set_timeout, window_event_listener_untyped};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Document, History, HtmlElement, HtmlInputElement, Window};

use crate::text::Decimal;

fn window() -> Option<Window> {
    web_sys::window()
}

fn document() -> Option<Document> {
    window()?.document()
}

/// The element the app lives in.
pub(super) fn app_root() -> Option<HtmlElement> {
    document()?.get_element_by_id("app").map(JsCast::unchecked_into)
}

/// A place to draw in that is not in the page.
pub(super) fn aside() -> Option<HtmlElement> {
    document().map(|document| document.create_document_fragment().unchecked_into())
}

/// The input with this id, or the text area, which has the same methods.
pub(super) fn input(id: &str) -> Option<HtmlInputElement> {
    document()?.get_element_by_id(id).map(JsCast::unchecked_into)
}

/// Focuses an input without moving the page.
pub(super) fn focus(id: &str) {
    let options = web_sys::FocusOptions::new();
    options.set_prevent_scroll(true);
    if let Some(input) = input(id) {
        let _ = input.focus_with_options(&options);
    }
}

/// Takes the focus off an input; one that is drawn again for another field would keep it.
pub(super) fn leave_input() {
    let active = document().and_then(|document| document.active_element());
    if let Some(input) = active.and_then(|active| active.dyn_into::<HtmlInputElement>().ok()) {
        let _ = input.blur();
    }
}

/// Selects all of an input's text.
pub(super) fn select(id: &str) {
    // What is entered may be a heading.
    if let Some(input) = input(id).filter(JsCast::has_type::<HtmlInputElement>) {
        input.select();
    }
}

/// Whether an input has the focus.
pub(super) fn has_focus(input: &HtmlInputElement) -> bool {
    document().and_then(|document| document.active_element()).is_some_and(|active| active.id() == input.id())
}

/// Scrolls an element into sight by as little as it takes, once the screen has been laid out.
pub(super) fn show(id: String) {
    next_frame(move || {
        if let Some(element) = document().and_then(|document| document.get_element_by_id(&id)) {
            let options = web_sys::ScrollIntoViewOptions::new();
            options.set_block(web_sys::ScrollLogicalPosition::Nearest);
            element.scroll_into_view_with_scroll_into_view_options(&options);
        }
    });
}

/// Scrolls an element back to its top.
pub(super) fn scroll_to_top(id: &str) {
    if let Some(element) = document().and_then(|document| document.get_element_by_id(id)) {
        element.set_scroll_top(0);
    }
}

/// Calls `then` after so many milliseconds.
pub(super) fn later(milliseconds: u64, then: impl FnOnce() + 'static) {
    set_timeout(then, std::time::Duration::from_millis(milliseconds));
}

/// Calls `then` once a second.
pub(super) fn every_second(then: impl Fn() + 'static) {
    let _ = set_interval_with_handle(then, std::time::Duration::from_secs(1));
}

/// Minutes that the clock on the wall is ahead of universal time, at a time in milliseconds since 1970.
#[allow(clippy::cast_possible_truncation)]
pub(super) fn minutes_ahead(at: i64) -> i64 {
    let there = js_sys::Date::new(&JsValue::from_f64(at as f64)).get_timezone_offset();
    if there.is_finite() { -there as i64 } else { 0 }
}

/// Calls `then` once what has changed is on the screen.
pub(super) fn next_frame(then: impl FnOnce() + 'static) {
    request_animation_frame(then);
}

/// The address from "#" on.
pub(super) fn hash() -> String {
    window().and_then(|window| window.location().hash().ok()).unwrap_or_default()
}

/// Whether the page can be seen.
pub(super) fn is_visible() -> bool {
    document().is_some_and(|document| !document.hidden())
}

/// Whether numbers are at hand without the pad, on a keyboard, or the window has no room for it.
pub(super) fn has_keyboard() -> bool {
    let query = "(hover: hover) and (pointer: fine), (max-height: 299px)";
    let matches = window().and_then(|window| window.match_media(query).ok().flatten());
    matches.is_some_and(|query| query.matches())
}

/// Has a text read out, where someone listens.
pub(super) fn speak(text: &str) {
    if let Some(region) = document().and_then(|document| document.get_element_by_id("spoken")) {
        region.set_text_content(Some(text));
    }
}

/// Goes to an address.
pub(super) fn go(hash: &str) {
    if let Some(window) = window() {
        let _ = window.location().set_hash(hash);
    }
}

fn history() -> Option<History> {
    window()?.history().ok()
}

/// Notes a step in the history, at the address shown. It is marked, so that boot.js takes it back where the page is loaded
/// again there: nothing is open then.
pub(super) fn step() {
    if let Some(history) = history() {
        let _ = history.push_state(&JsValue::TRUE, "");
    }
}

/// Goes one step back in the history.
pub(super) fn back() {
    if let Some(history) = history() {
        let _ = history.back();
    }
}

/// Goes to an address in the place of the step that was noted.
pub(super) fn go_instead(to: &str) {
    if hash() == to {
        back();
    } else if let Some(window) = window() {
        let _ = window.location().replace(to);
    }
}

/// Replaces the address without a step in the history.
pub(super) fn replace_hash(hash: &str) {
    if let Some(history) = history() {
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(hash));
    }
}

/// Calls `then` on an event of the window: the browser's, or one of ours that boot.js raises.
pub(super) fn on_event(name: &str, then: impl Fn() + 'static) {
    let _ = window_event_listener_untyped(name, move |_| then());
}

/// As [`on_event`], with a text of the event: the key of what another tab has saved, or what boot.js has read.
pub(super) fn on_event_with(name: &str, field: &'static str, then: impl Fn(String) + 'static) {
    let _ = window_event_listener_untyped(name, move |event| {
        let text = js_sys::Reflect::get(&event, &JsValue::from_str(field)).ok().and_then(|text| text.as_string());
        then(text.unwrap_or_default());
    });
}

/// Raises an event of ours with texts, for boot.js.
pub(super) fn send(name: &str, texts: &[(&str, String)]) {
    let (Some(window), Ok(event)) = (window(), web_sys::Event::new(name)) else { return };
    for (field, text) in texts {
        let _ = js_sys::Reflect::set(&event, &JsValue::from_str(field), &JsValue::from_str(text));
    }
    let _ = window.dispatch_event(&event);
}

/// Has boot.js bring the rest of the app at once, where it is not here yet: the build puts the wasm into two parts, and has
/// this called by its name where the first comes to the second (xtask/src/split.rs).
#[inline(never)]
pub(super) fn fetch_rest() {
    send("meniscus-rest", &[]);
}

/// The address of the page, without what stands after "#".
pub(super) fn page_address() -> String {
    let href = window().and_then(|window| window.location().href().ok()).unwrap_or_default();
    href.split('#').next().unwrap_or_default().to_owned()
}

/// An id for a new record: 60 random bits.
pub(super) fn fresh_id() -> String {
    const DIGITS: &[u8; 32] = b"0123456789abcdefghjkmnpqrstvwxyz";
    let digit = |_| char::from(DIGITS[(js_sys::Math::random() * 32.0) as usize % 32]);
    (0..12).map(digit).collect()
}

/// A `data-` attribute of the page, set by boot.js.
pub(super) fn page_flag(name: &str) -> bool {
    document().and_then(|document| document.document_element()).is_some_and(|html| html.has_attribute(name))
}

/// Marks the page so, for boot.js, or takes the mark off.
pub(super) fn mark_page(name: &str, is_on: bool) {
    if let Some(html) = document().and_then(|document| document.document_element()) {
        let _ = html.toggle_attribute_with_force(name, is_on);
    }
}

/// Sets the look: "slate", "paper", or empty for the device's; theme.js has done so before the first paint.
pub(super) fn set_look(look: &str) {
    let Some(html) = document().and_then(|document| document.document_element()) else { return };
    let _ = match look {
        "" => html.remove_attribute("data-theme"),
        look => html.set_attribute("data-theme", look),
    };
}

/// Names the page after the screen.
pub(super) fn set_title(screen: &str) {
    if let Some(document) = document() {
        document.set_title(&format!("{screen} · Meniscus"));
    }
}

/// The decimal mark of the device's language, which boot.js has noted.
pub(super) fn device_decimal() -> Decimal {
    if page_flag("data-comma") { Decimal::Comma } else { Decimal::Point }
}

/// Copies a text, then says whether it was copied.
pub(super) fn copy(text: &str, then: impl Fn(bool) + Clone + 'static) {
    // Absent on a page that is not served securely.
    let clipboard = window()
        .and_then(|window| js_sys::Reflect::get(&window.navigator(), &JsValue::from_str("clipboard")).ok())
        .filter(JsValue::is_object)
        .map(JsCast::unchecked_into::<web_sys::Clipboard>);
    let Some(clipboard) = clipboard else { return then(false) };
    let failed = then.clone();
    let on_copied = Closure::once_into_js(move |_: JsValue| then(true));
    let on_failed = Closure::once_into_js(move |_: JsValue| failed(false));
    let promise: JsValue = clipboard.write_text(text).into();
    // `then` on the promise itself, so that no async runtime comes along for one call.
    if let Ok(method) = js_sys::Reflect::get(&promise, &JsValue::from_str("then")) {
        let _ = method.unchecked_into::<js_sys::Function>().call2(&promise, &on_copied, &on_failed);
    }
}
