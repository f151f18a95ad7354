//! The unit that is lit is the unit of what is typed.

use crate::bar::{Tab, screens};
use crate::faulty::Faulty;
use meniscus::screen::pad::{Entry, Key, Keys, press, unit_typed};
use meniscus::screen::{Act, Block, Input};
use meniscus::text::{Decimal, typed};

/// Presses keys of the pad as the page does: in what the field shows, at its caret.
fn press_over(tab: &mut Tab<'_>, field: &'static str, keys: &[Key]) {
    tab.act(Act::Activate(Some(field.into())));
    let mut entry = Entry::selected(tab.value(field));
    for key in keys {
        entry = press(&entry, *key, Decimal::Point);
        tab.type_in(field, &entry.text);
    }
}

fn fields(tab: &mut Tab<'_>) -> Vec<(&'static str, Keys)> {
    let number = |block: &Block| match block {
        Block::Field(field) => match field.input {
            Input::Amount(keys) => Some((field.name, keys)),
            _ => None,
        },
        _ => None,
    };
    tab.view().screen.blocks.iter().filter_map(number).collect()
}

#[test]
fn a_number_over_an_amount_takes_the_unit_that_is_lit_on_every_screen() {
    let keeper = Faulty::default();
    let mut tried = 0;
    for route in screens() {
        let mut tab = Tab::open(&keeper, &route.href());
        for (field, keys) in fields(&mut tab) {
            let stood = tab.value(field);
            let Some(unit) = unit_typed(&stood) else { continue };
            if matches!(keys, Keys::Count | Keys::Percent | Keys::Ratio | Keys::Celsius | Keys::Seconds) {
                continue;
            }
            tried += 1;
            tab.act(Act::Activate(Some(field.into())));
            assert_eq!(tab.view().pad.and_then(|pad| pad.unit), Some(unit), "{route:?} {field}: {stood}");
            // The number that stood there, and then another.
            let number: Vec<Key> = stood
                .chars()
                .take_while(|c| *c != ' ')
                .map(|c| if c.is_ascii() { Key::Char(c) } else { Key::Fraction(c) })
                .collect();
            press_over(&mut tab, field, &number);
            assert_eq!(tab.view().pad.and_then(|pad| pad.unit), Some(unit), "{route:?} {field}: {stood}");
            assert_eq!(tab.value(field).split(' ').next_back(), Some(typed(unit)), "{route:?} {field}: {stood}");
            assert!(tab.view().as_typed.is_some_and(|(name, shown)| name == field && !shown.ends_with(typed(unit))));
            tab.act(Act::Activate(None));
            assert_eq!(tab.view().as_typed, None);
        }
    }
    assert!(tried >= 20, "{tried}");
}

#[test]
fn what_is_typed_over_litres_is_litres_also_after_a_reload() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "batch/serves");
    assert_eq!(tab.value("made"), "2.8 l");
    press_over(&mut tab, "made", &[Key::Char('1'), Key::Char('.'), Key::Char('1')]);
    assert_eq!(tab.value("made"), "1.1 l");
    assert_eq!(tab.view().as_typed, Some(("made", "1.1".into())), "no caret moves");
    let strip = tab.strip();
    let mut later = Tab::open(&keeper, "batch/serves");
    assert_eq!((later.value("made"), later.strip()), ("1.1 l".into(), strip));
    assert_eq!(tab.act(Act::Undo).value("made"), "2.8 l");
    assert_eq!(tab.view().as_typed, None);
}

#[test]
fn emptied_first_the_field_keeps_its_unit_until_it_is_left() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "batch/serves");
    press_over(&mut tab, "made", &[Key::Delete]);
    assert_eq!(tab.value("made"), "");
    assert_eq!(tab.view().pad.and_then(|pad| pad.unit).map(typed), Some("l"));
    tab.type_in("made", "3");
    assert_eq!(tab.value("made"), "3 l");
    tab.type_in("made", "");
    tab.act(Act::Activate(Some("serve".into()))).act(Act::Activate(Some("made".into())));
    assert_eq!(tab.view().pad.and_then(|pad| pad.unit).map(typed), Some("ml"));
    assert_eq!(tab.type_in("made", "3").value("made"), "3");
}

#[test]
fn a_unit_typed_is_the_one_that_the_next_number_takes() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "batch/serves");
    tab.act(Act::Activate(Some("made".into()))).type_in("made", "900 ml");
    assert_eq!(tab.type_in("made", "500").value("made"), "500 ml");
}

#[test]
fn a_leap_is_asked_about_and_settled_in_a_tap() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    assert_eq!(tab.value("amount"), "1¾ oz");
    tab.type_in("amount", "4").type_in("amount", "45");
    assert_eq!(tab.strip(), "? | Did you mean 45 oz or 45 ml?");
    assert_eq!(tab.view().pad.and_then(|pad| pad.unit), None);
    let problem = |tab: &mut Tab<'_>| tab.view().screen.field("amount").and_then(|field| field.problem.clone());
    let fixes: Vec<String> = problem(&mut tab).expect("a question").fixes.into_iter().map(|fix| fix.text).collect();
    assert_eq!(fixes, ["45 oz", "45 ml"]);
    // Left as it is, it is asked again.
    let mut later = Tab::open(&keeper, "service/measure");
    assert_eq!(later.strip(), "? | Did you mean 45 oz or 45 ml?");
    assert_eq!(later.type_in("amount", "45 ml").strip().split(' ').next(), Some("1.52"));
    // Typed on, it is asked no more.
    assert_eq!(later.type_in("amount", "2").value("amount"), "2 ml");
}

#[test]
fn degrees_fahrenheit_stay_so() {
    let keeper = Faulty::default();
    let mut tab = Tab::open(&keeper, "service/measure");
    tab.type_in("at", "68 °F").type_in("at", "6").type_in("at", "60");
    assert_eq!(tab.value("at"), "60 °F");
}
