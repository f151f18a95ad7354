//! The screen that the app begins with, written into the page when it is built: by the code that the app draws it by, so
//! that nothing moves when the app takes its place.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use meniscus::app::draw::{Canvas, html};
use meniscus::desk::{Desk, Device, News, World};
use meniscus::screen::route::Route;
use meniscus::store::memory::Memory;
use meniscus::text::Decimal;

use crate::inline::PAGE;

/// Where it goes: between these, in the element that the app lives in.
const PLACE: (&str, &str) = (" data-first>", "</div>");

/// What the app draws where nothing was ever typed, on a device that writes 1.5 with a point.
#[must_use]
pub fn first_screen() -> String {
    let memory = Memory::default();
    let world = World { keeper: &memory, now: 0, fresh: &String::new };
    let device = Device { decimal: Decimal::Point, ahead: |_| 0, page: String::new() };
    let (mut desk, _) = Desk::open(device, Ok(()), &world);
    // What is asked of a browser then, a caret above all, is for the app to do.
    let _ = desk.tell(&News::Address(Route::default().href()), &world);
    html(&Canvas::of(desk.view(&world)).page())
}

/// Writes it into the page of the build in `folder`.
///
/// # Errors
/// When the page cannot be read or written, or has no place for it.
pub fn write(folder: &Path) -> Result<()> {
    let page = fs::read_to_string(folder.join(PAGE)).with_context(|| format!("{PAGE} is missing"))?;
    let (before, after) = PLACE;
    let place = format!("{before}{after}");
    ensure!(page.matches(&place).count() == 1, "{PAGE} has no place for the first screen: <div id=\"app\"{place}");
    fs::write(folder.join(PAGE), page.replace(&place, &format!("{before}{}{after}", first_screen())))?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_begins_with_what_the_app_draws() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join(PAGE);
        fs::write(&path, "<body><div id=\"app\" data-first></div><p>").expect("written");
        write(folder.path()).expect("a page");
        let page = fs::read_to_string(&path).expect("a page");
        let expected = format!("<body><div id=\"app\" data-first>{}</div><p>", first_screen());
        assert_eq!(page, expected);
        let again = write(folder.path()).expect_err("it is there").to_string();
        assert!(again.contains("no place for the first screen"), "{again}");
    }

    #[test]
    fn it_is_a_screen_that_answers_and_can_be_typed_on() {
        let screen = first_screen();
        for part in ["<output", "51.8", "id=\"amount\"", "aria-label=\"Pad\"", "href=\"#/shelf\""] {
            assert!(screen.contains(part), "{part}: {screen}");
        }
        // Nothing that a policy without inline styles and scripts forbids.
        for forbidden in [" style=", "<script", "<style", " onclick="] {
            assert!(!screen.contains(forbidden), "{forbidden}: {screen}");
        }
    }

    #[test]
    fn what_runs_before_the_app_knows_its_address() {
        let script = fs::read_to_string(crate::root().join("public/first.js")).expect("a script");
        assert!(script.contains(&format!("\"{}\"", Route::default().href())), "{script}");
    }
}
