use super::*;

#[test]
fn the_last_noun_decides() {
    for (name, key) in [
        ("London dry gin", "london-dry-gin"),
        ("gin", "london-dry-gin"),
        ("GIN", "london-dry-gin"),
        ("lemon-leaf gin", "london-dry-gin"),
        ("gin cordial", "cordial"),
        ("Ginger syrup", "ginger-syrup"),
        ("pear brandy", "pear-brandy"),
        ("pear", "pear-juice"),
        ("juice of lemon", "lemon-juice"),
        ("fresh lime juice", "lime-juice"),
        ("lime juice, strained", "lime-juice"),
        ("rich simple syrup", "rich-syrup"),
        ("gin infused with tea", "london-dry-gin"),
        ("gin, tea-infused", "london-dry-gin"),
        ("butter-washed bourbon", "bourbon"),
        ("Irish cream", "cream-liqueur"),
        ("port wine", "ruby-port"),
        ("cream soda", "sweet-soda"),
        ("1 whole egg", "whole-egg"),
        ("Orange liqueur, sweet", "blue-orange-liqueur"),
        ("syrup", "simple-syrup"),
        ("honey syrup", "honey-syrup"),
        ("orange bitters", "orange-bitters"),
        ("cherry bark bitters", "aromatic-bitters"),
        ("banana liqueur", "liqueur"),
        ("apple puree", "puree"),
        ("raspberry purée", "raspberry-puree"),
        ("whole milk", "whole-milk"),
        ("almond milk", "almond-drink"),
        ("soda", "soda-water"),
        ("cachaca", "cachaca"),
        ("egg white", "egg-white"),
        ("saline 20 %", "saline"),
    ] {
        assert_eq!(named(name).map(|ingredient| ingredient.key), Some(key), "{name}");
    }
    for name in [
        "mint leaves",
        "😀",
        "",
        "moon dust",
        "ginnel",
        "alcohol-free gin",
        "non-alcoholic beer",
        "lemon peel",
        "lime zest",
        "coffee beans",
        "coconut milk",
        "sweetened condensed milk",
    ] {
        assert_eq!(named(name), None, "{name}");
    }
    assert_eq!(named_to_the_end("coffee beans"), None);
}

#[test]
fn every_name_of_the_library_means_its_own_row() {
    for row in LIBRARY {
        for phrase in [row.name].iter().chain(row.names) {
            assert_eq!(named(phrase).map(|found| found.key), Some(row.key), "{phrase}");
        }
    }
}

#[test]
fn a_letter_or_two_may_be_wrong() {
    for (name, read_as) in [
        ("lime juise", "lime juice"),
        ("line juice", "lime juice"),
        ("fresh lime jucie", "lime juice"),
        ("bitter red aperitiv", "bitter red aperitif"),
        ("orgeatt", "orgeat"),
        ("rich sugar syurp", "sugar syrup"),
        ("vermuth", "vermouth"),
        ("dry vermuth", "dry vermouth"),
        ("sweet vermout, chilled", "sweet vermouth"),
        ("burbon", "bourbon"),
        ("tequilla", "tequila"),
        ("amareto", "amaretto"),
        ("orange biters", "orange bitters"),
        ("pear bandy", "pear brandy"),
        ("rasberry", "raspberry"),
        ("pinaple juice", "pineapple juice"),
        ("cheery liqueur", "cherry liqueur"),
        ("rich sirup", "rich syrup"),
        // Not a letter is wrong.
        ("limes", ""),
        ("lime juice", ""),
        ("quince liqueur", ""),
        ("mint tea", ""),
        ("cherry bark bitters", ""),
        ("lemon cordial", ""),
        ("strawberry syrup", ""),
    ] {
        let Fit::As(_, read) = fit(name, &[]) else { panic!("{name}: {:?}", fit(name, &[])) };
        assert_eq!(read, read_as, "{name}");
    }
}

#[test]
fn what_may_be_two_things_is_asked() {
    for (name, maybe) in [
        // One is stronger than the other, or one has to be declared.
        ("slow gin", &["Sloe gin", "London dry gin"][..]),
        ("almnd liqueur", &["Almond liqueur", "Liqueur, sweet"]),
        ("coffe liqueur", &["Coffee liqueur", "Liqueur, sweet"]),
        ("grapa", &["Grape juice", "Grape brandy"]),
        // A short word is near too many.
        ("beet", &["Lager"]),
        ("rice", &["Rich syrup 2:1 by weight"]),
        // Bars differ.
        ("limón", &["Lime juice", "Lemon juice"]),
        ("jugo de limón", &["Lime juice", "Lemon juice"]),
        ("peach schnapps", &["Liqueur, sweet", "Spirit"]),
        ("latte", &["Whole milk", "Espresso"]),
        ("liquor", &["Spirit", "Liqueur, sweet"]),
    ] {
        assert_eq!(fit(name, &[]), Fit::Maybe(maybe.to_vec()), "{name}");
    }
    for name in ["cherry", "plum", "mango", "peach", "basil", "ginger", "gim", "run", "vanilla", "perry"] {
        assert_eq!(fit(name, &[]), Fit::Nothing, "{name}");
    }
}

#[test]
fn a_bar_s_own_name_may_be_misspelt() {
    let house = Taken { ingredient: named("gin").expect("gin"), measured: Measured::default() };
    let own = [("moon dust".to_owned(), house)];
    assert_eq!(fit("moon dusst", &own), Fit::As(house, "moon dust".into()));
}

#[test]
fn nouns_that_stand_first() {
    for (name, key) in [
        ("sirop de sucre", Some("simple-syrup")),
        ("jarabe de azúcar", Some("simple-syrup")),
        ("sirop de citron", Some("simple-syrup")),
        ("sirop d’orange", Some("simple-syrup")),
        ("sirop d'orgeat", Some("orgeat")),
        ("sirop d'agave", Some("agave-syrup")),
        ("jus de citron vert frais", Some("lime-juice")),
        ("jus d'orange", Some("orange-juice")),
        ("ZUMO DE LIMÓN", Some("lemon-juice")),
        ("succo di lime", Some("lime-juice")),
        ("crème de cassis", Some("blackcurrant-liqueur")),
        ("crème de pêche", Some("peach-liqueur")),
        ("crème de mûre", None),
        ("lait de coco", None),
        ("latte di mandorla", None),
        ("eau de vie", Some("spirit-40")),
        ("agua de coco", None),
        ("Blanc d’Œuf", Some("egg-white")),
        ("frischer Limettensaft", Some("lime-juice")),
        ("weißer Rum", Some("light-rum")),
        ("Kokoswasser", None),
    ] {
        assert_eq!(named(name).map(|found| found.key), key, "{name}");
    }
}

#[test]
fn what_is_poured_wants_a_unit() {
    for name in ["gin", "lime juice", "Limettensaft", "Wodka", "sirop de sucre", "jus de citron vert", "leche"] {
        assert!(is_poured(name), "{name}");
    }
    for name in
        ["lime", "Limette", "egg white", "Eier", "clara de huevo", "sugar", "Zucker", "crème de la crème", "Stir", ""]
    {
        assert!(!is_poured(name), "{name}");
    }
}

#[test]
fn guesses_share_a_word() {
    assert_eq!(alike("wild cherry thing"), ["Cherry liqueur", "Clear cherry liqueur"]);
    assert!(alike("moon dust").is_empty());
}
