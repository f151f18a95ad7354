//! What is shown can be typed back; no text and no sequence of keys breaks anything.

use proptest::prelude::*;

use super::volumes;
use meniscus::quantity::{Amount, Conventions, Unit};
use meniscus::screen::address;
use meniscus::screen::pad::{Entry, Key, Keys, face, others, press, units};
use meniscus::screen::route::Route;
use meniscus::screen::{Bench, Texts, Tone};
use meniscus::text::{self, Decimal, Dimension, Reading, read_amount, read_spec};
use meniscus::tool::shelf::settings::ShelfForm;
use meniscus::tool::{Change, after, screen};

fn decimals() -> impl Strategy<Value = Decimal> {
    prop_oneof![Just(Decimal::Point), Just(Decimal::Comma)]
}

fn read_ml(text: &str, decimal: Decimal) -> f64 {
    let conventions = Conventions::default();
    let reading =
        Reading { conventions: &conventions, decimal, bare: Unit::Millilitre, kind: Dimension::Volume, own: &[] };
    match read_amount(text, &reading) {
        Ok(Some(Amount::Volume(volume))) => volume.ml(),
        other => panic!("{text:?}: {other:?}"),
    }
}

fn keys() -> impl Strategy<Value = Key> {
    let kinds = [
        Keys::Pour,
        Keys::Batch,
        Keys::Either,
        Keys::Compared,
        Keys::Bulk,
        Keys::Weight,
        Keys::Count,
        Keys::Percent,
        Keys::Ratio,
        Keys::Marks,
        Keys::Celsius,
        Keys::Seconds,
    ];
    let all: Vec<Key> = kinds
        .into_iter()
        .flat_map(|kind| [face(kind, Decimal::Comma), face(kind, Decimal::Point), units(kind), others(kind)].concat())
        .collect();
    prop::sample::select(all)
}

fn routes() -> impl Strategy<Value = Route> {
    let all = Route::ALL.to_vec();
    prop::sample::select(all)
}

/// Figures on screen: no "NaN", no "inf".
fn is_presentable(text: &str) -> bool {
    !text.contains("NaN") && !text.contains("inf ") && !text.ends_with("inf")
}

proptest! {
    #[test]
    fn shown_millilitres_read_back(volume in volumes(), decimal in decimals()) {
        let shown = text::millilitres(volume, decimal).to_string();
        let back = read_ml(&shown, decimal);
        // To the figures shown: half a unit in the third significant place, or half a millilitre.
        prop_assert!((back - volume.ml()).abs() <= (0.0051 * volume.ml()).clamp(0.0051, 0.51), "{} -> {}", shown, back);
        // And what is read back is shown the same.
        let again = text::millilitres(meniscus::quantity::Volume::from_ml(back).expect("ml"), decimal).to_string();
        prop_assert_eq!(again, shown);
    }

    #[test]
    fn shown_ounces_read_back(eighths in 1_u32..400, decimal in decimals()) {
        let house = Conventions::default();
        let volume = Unit::Ounce.times(f64::from(eighths) / 8.0, &house).expect("an amount");
        let Amount::Volume(volume) = volume else { panic!("a volume") };
        let shown = text::ounces(volume, &house, decimal).to_string();
        prop_assert!((read_ml(&shown, decimal) - volume.ml()).abs() < 1e-6, "{}", shown);
    }

    #[test]
    fn amounts_carried_to_another_tool_arrive(volume in volumes(), decimal in decimals()) {
        let carried = format!("{} ml", text::editable(volume.ml(), decimal));
        let address = address::read(&Route::Serves.href_with("made", &carried));
        prop_assert_eq!(&address.carried[0].1, &carried);
        prop_assert!((read_ml(&carried, decimal) - volume.ml()).abs() <= 0.0051, "{}", carried);
    }

    #[test]
    fn no_sequence_of_keys_breaks_the_pad(decimal in decimals(), pressed in prop::collection::vec((keys(), 0_usize..40, 0_usize..40), 0..60)) {
        let mut entry = Entry::default();
        for (key, start, end) in pressed {
            entry = press(&Entry { start: start.min(end), end, text: entry.text }, key, decimal);
            let length = entry.text.chars().count();
            prop_assert!(entry.start <= entry.end && entry.end <= length, "{:?}", entry);
        }
    }

    #[test]
    fn the_pad_types_numbers_as_they_are_read(digits in "[1-9][0-9]{0,3}", unit in prop_oneof![Just("ml"), Just("cl"), Just("oz")]) {
        let all = [face(Keys::Pour, Decimal::Point), units(Keys::Pour)].concat();
        let key = |label: &str| *all.iter().find(|key| key.label() == label).expect("a key");
        let typed = digits.chars().map(|digit| key(&digit.to_string())).chain([key(unit)]);
        let text = typed.fold(Entry::default(), |entry, key| press(&entry, key, Decimal::Point)).text;
        prop_assert_eq!(text, format!("{digits} {unit}"));
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,80}", decimal in decimals()) {
        let conventions = Conventions::default();
        for kind in [Dimension::Volume, Dimension::Mass, Dimension::Either] {
            let reading = Reading { conventions: &conventions, decimal, bare: Unit::Millilitre, kind, own: &[] };
            match read_amount(&text, &reading) {
                Ok(Some(Amount::Volume(volume))) => prop_assert!(volume.ml() > 0.0 && volume.ml() <= 1e7),
                Ok(Some(Amount::Mass(mass))) => prop_assert!(mass.g() > 0.0 && mass.g() <= 1e7),
                Ok(_) => {}
                Err(problem) => prop_assert!(!problem.to_string().is_empty()),
            }
        }
    }

    #[test]
    fn numbers_with_noise_are_read_or_refused(text in "[0-9 .,/¼½¾⅓+:;%x×−-]{0,24}( ?(ml|oz|g|dash|cl))?", decimal in decimals()) {
        let conventions = Conventions::default();
        let reading = Reading { conventions: &conventions, decimal, bare: Unit::Ounce, kind: Dimension::Either, own: &[] };
        if let Err(problem) = read_amount(&text, &reading) {
            for fix in problem.fixes(&text) {
                // A fix is never asked about again in the same place.
                prop_assert!(fix != text);
            }
        }
    }

    #[test]
    fn no_line_of_a_pasted_spec_is_dropped(text in "(\\PC{0,40}\n){0,6}") {
        let bench = Bench::default();
        let lines = read_spec(&text, &bench.reading(Dimension::Either));
        let written = text.lines().filter(|line| !line.trim().is_empty()).count();
        prop_assert_eq!(lines.len(), written);
    }

    #[test]
    fn every_screen_stands_whatever_is_typed(route in routes(), typed in prop::collection::vec(("\\PC{0,30}", "[0-9.,/ ½]{0,8}( ml| oz| g| %)?"), 12), pick in 0_usize..2) {
        let bench = ShelfForm::default().bench(Decimal::Point);
        let empty = Texts::new();
        let mut texts: Texts = after(route, &empty, Change::Empty);
        for (text, (wild, number)) in texts.values_mut().zip(typed) {
            *text = if pick == 0 { wild } else { number };
        }
        let shown = screen(route, &texts, &bench);
        prop_assert!(!shown.strip.figures.is_empty() || !shown.strip.also.is_empty());
        prop_assert!(shown.strip.tone == Tone::Answer || !shown.strip.also.is_empty(), "{:?}", shown.strip);
        let all = format!("{:?}", shown);
        prop_assert!(is_presentable(&all.replace("inference", "")), "{}", all);
        // Clearing twice is clearing once, and taking something unknown changes nothing.
        let cleared = after(route, &texts, Change::Empty);
        prop_assert_eq!(after(route, &cleared, Change::Empty), cleared.clone());
        prop_assert_eq!(after(route, &cleared, Change::Take("no such field", "1 ml")), cleared);
    }

    #[test]
    fn any_address_leads_somewhere(hash in "\\PC{0,60}") {
        let address = address::read(&hash);
        prop_assert_eq!(address::read(&address.route.href()).route, address.route);
    }
}
