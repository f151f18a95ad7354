//! What the device hands over: a shortcut of the home screen, a recipe shared from another app.

use meniscus::desk::{Effect, News};
use meniscus::screen::route::Route;

use crate::bar::{Tab, stored};
use crate::faulty::Faulty;

#[test]
fn a_new_spec_by_its_shortcut_is_begun_once() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "specs/spec?new=1");
    // The address names the record, so that a reload begins no other.
    let addresses: Vec<_> =
        tab.effects.iter().filter(|effect| matches!(effect, Effect::Go(_) | Effect::Replace(_))).cloned().collect();
    let [Effect::Replace(plain), Effect::Go(to)] = addresses.as_slice() else { panic!("{addresses:?}") };
    assert_eq!(*plain, Route::Card.href());
    assert!(to.starts_with("#/specs/spec?id="), "{to}");
    tab.follow().type_in("name", "Orchard lantern");
    assert_eq!(stored(&keeper, "spec/").len(), 1);
    // Once more, while it is open.
    tab.go("specs/spec?new=1").follow();
    assert_eq!(stored(&keeper, "spec/").len(), 2);
    assert_eq!(tab.view().screen.field("name").map(|field| field.text.as_str()), Some(""));
}

#[test]
fn a_shared_recipe_is_looked_at_before_it_is_kept() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    tab.tell(News::File("Orchard lantern\n45 ml pear brandy\n20 ml dry vermouth".into())).follow();
    assert!(tab.strip().starts_with("64.9 ml before ice"), "{}", tab.strip());
    assert_eq!(stored(&keeper, "spec/").len(), 0);
    tab.tap("Keep it");
    assert_eq!(stored(&keeper, "spec/").len(), 1);
}
