//! Any bytes as a file to import: read or refused, never a panic.
#![no_main]

use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    if let Ok(import) = meniscus::store::backup::read(text) {
        assert!(import.cards.iter().all(|(id, card)| !id.contains('/') && !card.ways.is_empty()));
    }
});
