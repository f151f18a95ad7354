//! The frame: every screen draws, whatever is in the book, and says where it is.

use crate::faulty::Faulty;
use meniscus::screen::{Act, Block};

use crate::bar::{Tab, screens};

#[test]
fn every_screen_draws_with_and_without_a_book() {
    let keeper = Faulty::default();
    for _ in 0..2 {
        for route in screens() {
            let mut tab = Tab::open(&keeper, &route.href());
            let view = tab.view();
            assert_eq!(view.title, route.row().label);
            assert_eq!(view.pills.iter().filter(|link| link.is_here).count(), 1, "{route:?}");
            assert_eq!(view.places.iter().filter(|link| link.is_here).count(), 1, "{route:?}");
            assert!(!view.screen.strip.figures.is_empty(), "{route:?}");
            assert!(view.screen.blocks.iter().any(|block| matches!(block, Block::Actions(_))), "{route:?}");
            let words = format!("{:?}", view.screen);
            assert!(!words.contains("NaN") && !words.contains("inf\""), "{route:?}");
        }
        Tab::open(&keeper, "specs").act(Act::Demo);
    }
}
