//! Addresses: `#/service/measure`, with amounts to carry over as `?amount=45+ml`.

/// The five places at the bottom of the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Mid-shift.
    Service,
    /// Making ingredients.
    Prep,
    /// Bottling.
    Batch,
    /// The book.
    Specs,
    /// Ingredients and settings.
    Shelf,
}

/// A screen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Route {
    /// Any unit in any other.
    #[default]
    Measure,
    /// A spec made larger.
    Scale,
    /// What a spec reads as.
    Balance,
    /// How strong, and water to make it less.
    Strength,
    /// Sugar and water.
    Syrup,
    /// Fruit for juice.
    Fruit,
    /// Juice made clear.
    Clarify,
    /// Juice made cordial.
    Cordial,
    /// Salt, peel, fat, gum.
    Infuse,
    /// Acid in place of citrus.
    Acid,
    /// Milk for a wash.
    MilkWash,
    /// A batch in serves and bottles.
    Serves,
    /// What must start when.
    Run,
    /// A label to print.
    Label,
    /// The book of specs.
    Specs,
    /// One spec.
    Card,
    /// Backup and import.
    Backup,
    /// Ingredients of the bar's own.
    Ingredients,
    /// Settings.
    Shelf,
}

impl Place {
    /// All, in the order shown.
    pub const ALL: [Place; 5] = [Place::Service, Place::Prep, Place::Batch, Place::Specs, Place::Shelf];

    /// Its name.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Place::Service => "Service",
            Place::Prep => "Prep",
            Place::Batch => "Batch",
            Place::Specs => "Specs",
            Place::Shelf => "Shelf",
        }
    }

    /// Its tools, in the order of the pills.
    #[must_use]
    pub const fn tools(self) -> &'static [Route] {
        match self {
            Place::Service => &[Route::Measure, Route::Scale, Route::Balance],
            Place::Prep => &[
                Route::Fruit,
                Route::Clarify,
                Route::Cordial,
                Route::MilkWash,
                Route::Infuse,
                Route::Acid,
                Route::Syrup,
                Route::Strength,
            ],
            Place::Batch => &[Route::Serves, Route::Run, Route::Label],
            Place::Specs => &[Route::Specs, Route::Card, Route::Backup],
            Place::Shelf => &[Route::Shelf, Route::Ingredients],
        }
    }
}

impl Route {
    /// The place it belongs to.
    #[must_use]
    pub const fn place(self) -> Place {
        match self {
            Route::Measure | Route::Scale | Route::Balance => Place::Service,
            Route::Fruit
            | Route::Clarify
            | Route::Cordial
            | Route::MilkWash
            | Route::Infuse
            | Route::Acid
            | Route::Syrup
            | Route::Strength => Place::Prep,
            Route::Serves | Route::Run | Route::Label => Place::Batch,
            Route::Specs | Route::Card | Route::Backup => Place::Specs,
            Route::Shelf | Route::Ingredients => Place::Shelf,
        }
    }

    /// Its name on a pill.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Route::Measure => "Measure",
            Route::Scale => "Scale",
            Route::Balance => "Balance",
            Route::Strength => "Strength",
            Route::Syrup => "Syrup",
            Route::Fruit => "Fruit",
            Route::Clarify => "Clarify",
            Route::Cordial => "Cordial",
            Route::Infuse => "Infuse",
            Route::Acid => "Acid",
            Route::MilkWash => "Milk wash",
            Route::Serves => "Serves",
            Route::Run => "Run sheet",
            Route::Label => "Label",
            Route::Specs => "All",
            Route::Card => "Spec",
            Route::Backup => "Backup",
            Route::Ingredients => "Ingredients",
            Route::Shelf => "Settings",
        }
    }

    /// The key its form is kept under; never changed once shipped. Balance shares the form of Scale.
    #[must_use]
    pub const fn form_key(self) -> &'static str {
        match self {
            Route::Measure => "measure",
            Route::Scale | Route::Balance => "scale",
            Route::Specs => "specs",
            Route::Card => "card",
            Route::Backup => "backup",
            Route::Ingredients => "ingredients",
            Route::Strength => "strength",
            Route::Syrup => "syrup",
            Route::Fruit => "fruit",
            Route::Clarify => "clear",
            Route::Cordial => "cordial",
            Route::Infuse => "infuse",
            Route::Acid => "acid",
            Route::MilkWash => "milk-wash",
            Route::Serves => "serves",
            Route::Run => "run",
            Route::Label => "label",
            Route::Shelf => "shelf",
        }
    }

    const fn path(self) -> &'static str {
        match self {
            Route::Measure => "service/measure",
            Route::Scale => "service/scale",
            Route::Balance => "service/balance",
            Route::Strength => "prep/strength",
            Route::Syrup => "prep/syrup",
            Route::Fruit => "prep/fruit",
            Route::Clarify => "prep/clear",
            Route::Cordial => "prep/cordial",
            Route::Infuse => "prep/infuse",
            Route::Acid => "prep/acid",
            Route::MilkWash => "prep/milk-wash",
            Route::Serves => "batch/serves",
            Route::Run => "batch/run",
            Route::Label => "batch/label",
            Route::Specs => "specs",
            Route::Card => "specs/spec",
            Route::Backup => "specs/backup",
            Route::Shelf => "shelf",
            Route::Ingredients => "shelf/ingredients",
        }
    }

    /// Its address.
    #[must_use]
    pub fn href(self) -> String {
        format!("#/{}", self.path())
    }

    /// Its address with an amount to carry over.
    #[must_use]
    pub fn href_with(self, name: &str, text: &str) -> String {
        format!("#/{}?{name}={}", self.path(), encode(text))
    }
}

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
    let route = Place::ALL
        .iter()
        .flat_map(|place| place.tools())
        .find(|route| route.path() == path)
        .or_else(|| {
            // "#/prep" leads to the first tool of Prep.
            Place::ALL.iter().find(|place| place.label().eq_ignore_ascii_case(path)).map(|place| &place.tools()[0])
        })
        .copied();
    let carried = query
        .split('&')
        .filter_map(|pair| pair.split_once('='))
        .map(|(name, text)| (name.to_owned(), decode(text)))
        .collect();
    Address { route: route.unwrap_or_default(), carried, unknown: route.is_none() && !path.is_empty() }
}

/// A text in the letters of an address.
pub(crate) fn encode(text: &str) -> String {
    text.bytes()
        .map(|byte| match byte {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'.' | b'-' => char::from(byte).to_string(),
            b' ' => "+".to_owned(),
            _ => format!("%{byte:02X}"),
        })
        .collect()
}

fn decode(text: &str) -> String {
    let mut bytes = Vec::new();
    let mut rest = text.bytes();
    while let Some(byte) = rest.next() {
        bytes.push(match byte {
            b'+' => b' ',
            b'%' => {
                let mut ahead = rest.clone();
                let digits = [ahead.next(), ahead.next()].map(|digit| digit.and_then(|d| char::from(d).to_digit(16)));
                if let [Some(high), Some(low)] = digits {
                    rest = ahead;
                    u8::try_from(high * 16 + low).unwrap_or(b'?')
                } else {
                    b'%'
                }
            }
            byte => byte,
        });
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_screen_has_an_address_that_leads_back() {
        for route in Place::ALL.iter().flat_map(|place| place.tools()) {
            assert_eq!(read(&route.href()), Address { route: *route, ..Address::default() });
            assert!(route.place().tools().contains(route));
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
