//! Addresses: `#/service/measure`, with amounts to carry over as `?amount=45+ml`.

use super::percent::decode;
use super::route::{Place, Route};

/// An address, read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Address {
    /// Where it leads.
    pub route: Route,
    /// Amounts to carry over.
    pub carried: Vec<(String, String)>,
    /// Whether it named no screen we have, and leads to Service instead.
    pub unknown: bool,
}

/// Reads the part of an address from "#" on. An empty one leads to Service.
#[must_use]
pub fn read(hash: &str) -> Address {
    let hash = hash.trim_start_matches('#').trim_start_matches('/');
    let (path, query) = hash.split_once('?').unwrap_or((hash, ""));
    let path = path.trim_end_matches('/');
    let at_path = Route::ALL.iter().copied().find(|route| route.row().path == path);
    // "#/prep" leads to the first tool of Prep.
    let at_place = || Place::ALL.into_iter().find(|place| place.label().eq_ignore_ascii_case(path)).map(Place::first);
    let route = at_path.or_else(at_place);
    let carried = query
        .split('&')
        .filter_map(|pair| pair.split_once('='))
        .map(|(name, text)| (name.to_owned(), decode(text)))
        .collect();
    Address { route: route.unwrap_or_default(), carried, unknown: route.is_none() && !path.is_empty() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_an_address_that_leads_back() {
        for route in Route::ALL {
            assert_eq!(read(&route.href()), Address { route: *route, ..Address::default() });
        }
    }

    #[test]
    fn a_place_leads_to_its_first_tool_and_nonsense_to_service() {
        assert_eq!(read("#/prep").route, Route::Fruit);
        assert_eq!(read(""), Address::default());
        let lost = read("#/cellar/rats");
        assert!(lost.unknown && lost.route == Route::Measure);
    }

    #[test]
    fn carried_amounts_come_through_whole() {
        for text in ["1¾ oz + 2 dash", "1 725 ml", "50%", "a&b=c", "%", "100%25", "🍋"] {
            let address = read(&Route::MilkWash.href_with("drink", text));
            assert_eq!(address.carried, [("drink".to_owned(), text.to_owned())], "{text}");
            assert_eq!(address.route, Route::MilkWash);
        }
        assert_eq!(read("#/prep/acid?juice=%F0%9F").carried[0].1, "\u{fffd}");
    }
}
