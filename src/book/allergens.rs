//! Words of a spec that name something to be declared.

use super::ingredient::{Allergen, Ask};

/// Words, and what they name. Plant milks do not name milk.
const WORDS: [(Allergen, &[&str]); 14] = [
    (Allergen::Egg, &["egg", "eggs", "yolk", "yolks", "albumen", "meringue", "advocaat", "eggnog"]),
    (
        Allergen::Milk,
        &["milk", "cream", "butter", "buttermilk", "whey", "yoghurt", "yogurt", "ghee", "kefir", "cheese", "caramel"],
    ),
    (
        Allergen::Nuts,
        &[
            "nut",
            "nuts",
            "almond",
            "almonds",
            "hazelnut",
            "walnut",
            "pistachio",
            "pecan",
            "cashew",
            "macadamia",
            "orgeat",
            "falernum",
            "marzipan",
        ],
    ),
    (Allergen::Peanut, &["peanut", "peanuts"]),
    (Allergen::Sesame, &["sesame", "tahini"]),
    (Allergen::Soya, &["soy", "soya", "soybean", "soybeans", "miso", "tofu"]),
    (Allergen::Gluten, &["wheat", "barley", "oat", "oats", "malt", "beer", "stout", "ale"]),
    (Allergen::Celery, &["celery", "celeriac"]),
    (Allergen::Sulphites, &["sulphite", "sulphites", "sulfite", "sulfites"]),
    (Allergen::Fish, &["fish", "anchovy", "anchovies", "worcestershire", "isinglass", "dashi", "bonito"]),
    (Allergen::Crustaceans, &["crustaceans", "shellfish", "shrimp", "prawn", "prawns", "crab", "lobster"]),
    (Allergen::Molluscs, &["molluscs", "oyster", "oysters", "clam", "clams", "squid"]),
    (Allergen::Mustard, &["mustard"]),
    (Allergen::Lupin, &["lupin", "lupine"]),
];

/// Words that make a milk or cream of a plant.
const PLANTS: [&str; 8] = ["coconut", "oat", "soy", "soya", "almond", "rice", "cashew", "hazelnut"];

/// Words of what must be asked about first.
const ASKS: [(Ask, &[&str]); 3] = [
    (Ask::Gelatin, &["gelatin", "gelatine"]),
    (Ask::Coconut, &["coconut", "coconuts"]),
    (Ask::Enzyme, &["enzyme", "enzymes", "pectinase"]),
];

/// The words of a text.
fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| c.is_ascii() && !c.is_ascii_alphabetic()).filter(|word| !word.is_empty())
}

/// What a text names that must be asked about before it is known what guests must be told of.
pub fn asked_in(text: &str) -> impl Iterator<Item = Ask> {
    ASKS.into_iter().filter_map(move |(ask, names)| {
        let is_named = words(text).any(|word| names.iter().any(|name| word.eq_ignore_ascii_case(name)));
        is_named.then_some(ask)
    })
}

/// What a line names that guests may have to be told of.
pub fn allergens_in(line: &str) -> impl Iterator<Item = Allergen> {
    let words = move || words(line);
    let is_of_plants = words().any(|word| PLANTS.iter().any(|plant| word.eq_ignore_ascii_case(plant)));
    WORDS.into_iter().filter_map(move |(allergen, names)| {
        let named = |word: &str| names.iter().any(|name| word.eq_ignore_ascii_case(name));
        let is_plain = |word: &str| {
            // "coconut milk", "ginger beer" and "ginger ale" are not what they seem.
            !(is_of_plants && (word.eq_ignore_ascii_case("milk") || word.eq_ignore_ascii_case("cream")))
                && !(words().any(|other| other.eq_ignore_ascii_case("ginger")) && allergen == Allergen::Gluten)
        };
        words().any(|word| named(word) && is_plain(word)).then_some(allergen)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_must_be_asked_about() {
        for (text, asks) in [
            ("Lime, cleared with gelatin", vec![Ask::Gelatin]),
            ("60 ml coconut milk\n2 sheets gelatine", vec![Ask::Gelatin, Ask::Coconut]),
            ("Lime, cleared with Enzyme", vec![Ask::Enzyme]),
            ("Lime, cleared with agar", vec![]),
        ] {
            assert_eq!(asked_in(text).collect::<Vec<_>>(), asks, "{text}");
        }
    }

    #[test]
    fn names_say_what_to_declare() {
        let in_line = |line| allergens_in(line).map(Allergen::name).collect::<Vec<_>>().join(", ");
        for (line, expected) in [
            ("1 whole egg", "egg"),
            ("float cream", "milk"),
            ("30 ml hazelnut liqueur", "nuts"),
            ("2 dash walnut bitters", "nuts"),
            ("peanut butter bourbon", "milk, peanut"),
            ("60 ml butter-washed bourbon", "milk"),
            ("20 ml celery juice", "celery"),
            ("60 ml coconut milk", ""),
            ("oat milk", "gluten"),
            ("120 ml ginger beer", ""),
            ("nutmeg", ""),
            ("60 ml gin", ""),
        ] {
            assert_eq!(in_line(line), expected, "{line}");
        }
    }
}
