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

/// Where it goes: between these. In the element that the app lives in, and where no pad is up, in what that is taken from.
const PLACES: [(&str, &str, bool); 2] = [(" data-first>", "</div>", false), (" data-first>", "</template>", true)];

/// What the app draws where nothing was ever typed, on a device that writes 1.5 with a point, by a keyboard or without.
#[must_use]
pub fn first_screen(has_keyboard: bool) -> String {
    let memory = Memory::default();
    let world = World { keeper: &memory, now: 0, fresh: &String::new };
    let device = Device { decimal: Decimal::Point, ahead: |_| 0, page: String::new(), has_keyboard };
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
    let mut page = fs::read_to_string(folder.join(PAGE)).with_context(|| format!("{PAGE} is missing"))?;
    for (before, after, has_keyboard) in PLACES {
        let place = format!("{before}{after}");
        ensure!(page.matches(&place).count() == 1, "{PAGE} has no place for the first screen: {place}");
        page = page.replace(&place, &format!("{before}{}{after}", first_screen(has_keyboard)));
    }
    fs::write(folder.join(PAGE), page)?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_begins_with_what_the_app_draws() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join(PAGE);
        fs::write(&path, "<div id=\"app\" data-first></div><template data-first></template><p>").expect("written");
        write(folder.path()).expect("a page");
        let page = fs::read_to_string(&path).expect("a page");
        let (pad, keyboard) = (first_screen(false), first_screen(true));
        assert_ne!(pad, keyboard);
        let expected = format!("<div id=\"app\" data-first>{pad}</div><template data-first>{keyboard}</template><p>");
        assert_eq!(page, expected);
        let again = write(folder.path()).expect_err("it is there").to_string();
        assert!(again.contains("no place for the first screen"), "{again}");
    }

    #[test]
    fn it_is_a_screen_that_answers_and_can_be_typed_on() {
        let screen = first_screen(false);
        for part in ["<output", "51.8", "id=\"amount\"", "aria-label=\"Pad\"", ">Shelf<"] {
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
        // And asks of the device what the app asks.
        let app = fs::read_to_string(crate::root().join("src/app/browser.rs")).expect("the app");
        let query = app.split("let query = ").nth(1).and_then(|rest| rest.split(';').next()).expect("a query");
        assert!(script.contains(&format!("matchMedia({query})")), "{query}");
    }
}
