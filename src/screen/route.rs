//! The table of screens: one row each, with all that the frame and the desk ask about it.

use super::percent::encode;

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

    /// What its sheet of tools asks.
    #[must_use]
    pub const fn question(self) -> &'static str {
        match self {
            Place::Service => "Service: what do you need now?",
            Place::Prep => "Prep: what are you making?",
            Place::Batch => "Batch: for how many?",
            Place::Specs => "Specs: which one?",
            Place::Shelf => "Shelf: what is yours?",
        }
    }

    /// Its screens, in the order of the table.
    pub fn screens(self) -> impl Iterator<Item = Route> {
        Route::ALL.iter().copied().filter(move |route| route.row().place == self)
    }

    /// The screen that it opens with: the first, but in Batch the quick question.
    #[must_use]
    pub fn first(self) -> Route {
        match self {
            Place::Batch => Route::Serves,
            _ => self.screens().next().unwrap_or_default(),
        }
    }
}

/// What a screen shows one of, by the id in its form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Record {
    /// A spec.
    Spec,
    /// An ingredient of the bar's own.
    Ingredient,
    /// A run sheet.
    Run,
}

/// A row of the table.
#[derive(Debug)]
pub struct Row {
    /// Where it is.
    pub place: Place,
    /// Its address, behind "#/".
    pub path: &'static str,
    /// The key its form is kept under; never changed once shipped.
    pub key: &'static str,
    /// Its name.
    pub label: &'static str,
    /// The question it answers.
    pub question: &'static str,
    /// What else it is looked for by.
    pub words: &'static str,
    /// What it shows one of; none for a form alone.
    pub record: Option<Record>,
    /// Whether it is of the book, whose deeds Undo takes back.
    pub is_of_book: bool,
    /// Whether its form is each tab's own: another tab's is not followed.
    pub is_tabs_own: bool,
    /// Whether it needs the specs read.
    pub needs_specs: bool,
    /// Whether it shows the time.
    pub shows_time: bool,
    /// Whether it is read before anything is typed: no pad opens with it.
    pub is_read_first: bool,
}

impl Row {
    const fn new(
        place: Place,
        path: &'static str,
        key: &'static str,
        label: &'static str,
        question: &'static str,
    ) -> Row {
        Row {
            place,
            path,
            key,
            label,
            question,
            words: "",
            record: None,
            is_of_book: false,
            is_tabs_own: false,
            needs_specs: false,
            shows_time: false,
            is_read_first: false,
        }
    }

    /// One record of the book at a time.
    const fn shows_one(mut self, record: Record) -> Row {
        self.record = Some(record);
        self.of_book().tabs_own()
    }

    const fn found_by(mut self, words: &'static str) -> Row {
        self.words = words;
        self
    }

    const fn of_book(mut self) -> Row {
        self.is_of_book = true;
        self
    }

    const fn tabs_own(mut self) -> Row {
        self.is_tabs_own = true;
        self
    }

    const fn with_specs(mut self) -> Row {
        self.needs_specs = true;
        self
    }

    const fn timed(mut self) -> Row {
        self.shows_time = true;
        self
    }

    const fn read_first(mut self) -> Row {
        self.is_read_first = true;
        self
    }
}

/// Declares the screens and their table, a row each.
macro_rules! routes {
    ($($(#[$meta:meta])* $route:ident: $place:ident $path:literal $key:literal $label:literal $question:literal
        $(.$column:ident($($value:expr)?))*;)+) => {
        /// A screen.
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
        pub enum Route { $($(#[$meta])* #[doc = $question] $route,)+ }

        impl Route {
            /// All, in the order shown.
            pub const ALL: &'static [Route] = &[$(Route::$route,)+];
        }

        const TABLE: &[Row] =
            &[$(Row::new(Place::$place, $path, $key, $label, $question)$(.$column($($value)?))*,)+];
    };
}

routes! {
    #[default]
    Measure: Service "service/measure" "measure" "Measure" "How much is it, and how do I pour it?"
        .found_by("convert cl to oz ml dash");
    Scale: Service "service/scale" "scale" "Scale" "This spec for so many, or for what I have"
        .with_specs().read_first()
        .found_by("multiply times double parts");
    // Shares the form of Scale.
    Balance: Service "service/balance" "scale" "Balance" "How strong, sweet and sour is it?"
        .with_specs().read_first()
        .found_by("abv sugar sweetness ratio");
    Chill: Service "service/chill" "chill" "Chill" "How cold, and how much water?" .with_specs().read_first()
        .found_by("dilution shake stir temperature");
    Glass: Service "service/glass" "glass" "Glass" "Does it fit its glass, with its ice?"
        .with_specs().read_first()
        .found_by("brim washline");
    Ice: Service "service/ice" "ice" "Ice" "How much for a night, and clear by when?"
        .with_specs()
        .found_by("cubes melt block");
    Aim: Service "service/aim" "aim" "Aim" "Too sharp, too sweet, too strong?" .with_specs().read_first();
    Fruit: Prep "prep/fruit" "fruit" "Fruit" "How many for this much juice?"
        .found_by("yield lemons limes");
    Clarify: Prep "prep/clear" "clear" "Clarify" "Enzyme, agar, gelatin or rest" .with_specs()
        .found_by("dose pectinase clear ph");
    Cordial: Prep "prep/cordial" "cordial" "Cordial" "Sugar and acid for clear juice" .with_specs();
    MilkWash: Prep "prep/milk-wash" "milk-wash" "Milk wash" "Milk for this drink, and does it clot?"
        .with_specs()
        .found_by("curdle casein ph");
    Infuse: Prep "prep/infuse" "infuse" "Infuse" "Saline, tincture, peel, fat, gomme"
        .found_by("fat wash oil bitters");
    Acid: Prep "prep/acid" "acid" "Acid" "Powders in place of citrus, and back"
        .found_by("ph citric malic adjust");
    Syrup: Prep "prep/syrup" "syrup" "Syrup" "Sugar and water for a syrup"
        .found_by("brix simple rich");
    Strength: Prep "prep/strength" "strength" "Strength" "Water to let a spirit down"
        .found_by("dilute proof abv blend");
    BottleIt: Batch "batch/bottle" "bottle" "Bottle it" "Serves, bottles, water in it"
        .with_specs().read_first()
        .found_by("batch freezer premix");
    Run: Batch "batch/run" "run" "Run sheet" "What must start when?"
        .shows_one(Record::Run).timed().read_first()
        .found_by("timer prep list");
    Buy: Batch "batch/buy" "buy" "To buy" "What is missing, what it costs" .with_specs().read_first()
        .found_by("shopping order");
    Label: Batch "batch/label" "label" "Label" "A strip for what was made"
        .timed().read_first().with_specs()
        .found_by("keep shelf life date allergens");
    Serves: Batch "batch/serves" "serves" "Serves" "How many serves are in it?" .with_specs()
        .found_by("portions");
    Bubbles: Batch "batch/bubbles" "bubbles" "Bubbles" "What pressure for so many bubbles?" .with_specs()
        .found_by("carbonate co2 fizz");
    Specs: Specs "specs" "specs" "Book" "All specs: search, sort, tags"
        .of_book().tabs_own().with_specs().read_first();
    Card: Specs "specs/spec" "card" "Spec" "One drink, in its forms" .shows_one(Record::Spec).with_specs();
    Sides: Specs "specs/sides" "sides" "Side by side" "Compare forms: which is sharper, stronger?"
        .with_specs().read_first()
        .found_by("differ");
    Cost: Specs "specs/cost" "cost" "Cost" "What a drink costs, what to ask" .with_specs().read_first()
        .found_by("price margin money");
    Backup: Specs "specs/backup" "backup" "Backup" "Everything in one file, and back" .of_book().with_specs()
        .found_by("import export paste restore");
    Find: Specs "find" "find" "Find" "A tool, a spec, an ingredient" .tabs_own().with_specs().read_first();
    Shelf: Shelf "shelf" "shelf" "Settings" "What an oz is here, and my jiggers" .read_first()
        .found_by("glasses units theme");
    Ingredients: Shelf "shelf/ingredients" "ingredients" "Ingredients" "My own; they replace ours"
        .shows_one(Record::Ingredient).with_specs();
}

impl Route {
    /// Its row.
    #[must_use]
    pub const fn row(self) -> &'static Row {
        &TABLE[self as usize]
    }

    /// The one whose form is kept under a key.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Route> {
        Route::ALL.iter().copied().find(|route| route.form_key() == key)
    }

    /// The key its form is kept under.
    #[must_use]
    pub const fn form_key(self) -> &'static str {
        self.row().key
    }

    /// Its address.
    #[must_use]
    pub fn href(self) -> String {
        format!("#/{}", self.row().path)
    }

    /// Its address with an amount to carry over.
    #[must_use]
    pub fn href_with(self, name: &str, text: &str) -> String {
        format!("#/{}?{name}={}", self.row().path, encode(text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whether two rows have something in common that must be their own.
    fn shared<T: PartialEq>(of: impl Fn(&Row) -> T) -> Vec<&'static str> {
        let is_second = |(at, row): (usize, &Row)| TABLE[..at].iter().any(|other| of(other) == of(row));
        TABLE.iter().enumerate().filter(|row| is_second(*row)).map(|(_, row)| row.label).collect()
    }

    #[test]
    fn each_screen_has_an_address_and_a_form_of_its_own() {
        assert_eq!(shared(|row| row.path), Vec::<&str>::new());
        assert_eq!(shared(|row| row.label), Vec::<&str>::new());
        assert_eq!(shared(|row| row.key), ["Balance"], "but the pair that shares");
        assert_eq!(TABLE.len(), Route::ALL.len());
        for place in Place::ALL {
            assert_eq!(place.first().row().place, place);
        }
    }
}
