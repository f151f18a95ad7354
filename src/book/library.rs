//! The library: generic ingredients with their usual figures. Fruit varies, bottles differ: every figure is
//! a starting point that a bar may override with what it has measured.

use super::ingredient::{Allergen, Ingredient, Kind};
use crate::substance::acid::Acid;
use crate::substance::juice::{LEMON_CITRIC, LIME_CITRIC};

const fn spirit(key: &'static str, name: &'static str, percent: f64) -> Ingredient {
    Ingredient::new(key, name, Kind::Spirit).at(percent)
}

const fn liqueur(key: &'static str, name: &'static str, percent: f64, sugar: f64) -> Ingredient {
    Ingredient::new(key, name, Kind::Liqueur).at(percent).sweet(sugar)
}

/// A wine: acids in all, of which its salts hold a third, so that it titrates 5 to 7 g/l as tartaric and reads as sour as
/// wine is, pH 3.2 to 3.5, both from memory.
const fn wine(
    key: &'static str,
    name: &'static str,
    percent: f64,
    sugar: f64,
    acids: &'static [(Acid, f64)],
) -> Ingredient {
    let plain = Ingredient::new(key, name, Kind::Wine).at(percent);
    plain.fruit_sweet(sugar).sour(acids).salts(44.0).declare(&[Allergen::Sulphites]).from(WINE, "")
}

/// A juice: sugar, acids, and the potassium of juice (20 to 50 mmol/l, from memory).
const fn juice(key: &'static str, name: &'static str, sugar: f64, acids: &'static [(Acid, f64)]) -> Ingredient {
    Ingredient::new(key, name, Kind::Juice).fruit_sweet(sugar).sour(acids).salts(25.0).solids(10.0)
}

const fn syrup(key: &'static str, name: &'static str, sugar: f64) -> Ingredient {
    Ingredient::new(key, name, Kind::Syrup).sweet(sugar)
}

const fn other(key: &'static str, name: &'static str, kind: Kind) -> Ingredient {
    Ingredient::new(key, name, kind)
}

/// A pure acid, g/kg.
const fn powder(key: &'static str, name: &'static str, acids: &'static [(Acid, f64)]) -> Ingredient {
    Ingredient::new(key, name, Kind::Powder).sour(acids).from("pure substance", "")
}

/// With 44 mmol/l of salts it titrates 5.5 g/l as tartaric.
const WINE_ACID: &[(Acid, f64)] = &[(Acid::Tartaric, 6.0), (Acid::Malic, 2.5)];
const WINE: &str = "common practice, no source; salts so that it reads the pH that it has, from memory";
const GRAPEFRUIT: &str = "19.6 g/l of citric acid as published; 25.0 ready to drink, Penniston et al., J Endourol 2008;22(3):567–570; sugar and salts common practice, no source";
const PENNISTON: &str = "Penniston et al., J Endourol 2008;22(3):567–570; sugar common practice, no source";
const ICUMSA: &str = "by weight, density by the ICUMSA formula at 20 °C";
const CUPS: &str = "by the cup, sugar at 200 g (USDA portion data, from memory), density by the ICUMSA formula";
const FAO: &str = "FAO Food Composition Tables for International Use; density from memory";

/// Every ingredient, by kind.
pub const LIBRARY: &[Ingredient] = &[
    // Spirits, at the strength they are usually bottled.
    spirit("london-dry-gin", "London dry gin", 40.0).also(&["gin", "dry gin"]),
    spirit("navy-gin", "Navy-strength gin", 57.0).also(&["navy gin"]),
    spirit("old-style-gin", "Old-style sweetened gin", 40.0).also(&["old tom gin"]).sweet(20.0),
    spirit("genever", "Genever", 38.0),
    spirit("vodka", "Vodka", 40.0),
    spirit("neutral-spirit", "Neutral spirit", 96.0).also(&["grain spirit"]),
    spirit("light-rum", "Light rum", 40.0).also(&["white rum"]),
    spirit("aged-rum", "Aged rum", 40.0).also(&["rum", "gold rum"]),
    spirit("dark-rum", "Dark rum", 40.0),
    spirit("cane-juice-rum", "Cane-juice rum", 50.0).also(&["agricole rum"]),
    spirit("overproof-rum", "Overproof rum", 63.0).also(&["overproof"]),
    spirit("cachaca", "Cachaça", 40.0).also(&["cachaca"]),
    spirit("malt-whisky", "Malt whisky", 43.0).also(&["malt whiskey"]),
    spirit("blended-whisky", "Blended whisky", 40.0).also(&["whisky", "whiskey", "scotch"]),
    spirit("bourbon", "Bourbon", 45.0),
    spirit("rye", "Rye whiskey", 45.0).also(&["rye", "rye whisky"]),
    spirit("grape-brandy", "Grape brandy", 40.0).also(&["brandy", "cognac"]),
    spirit("apple-brandy", "Apple brandy", 40.0),
    spirit("pear-brandy", "Pear brandy", 40.0),
    spirit("pisco", "Pisco", 42.0),
    spirit("tequila-blanco", "Tequila, blanco", 40.0).also(&["tequila", "blanco tequila"]),
    spirit("tequila-reposado", "Tequila, reposado", 40.0).also(&["reposado tequila", "reposado"]),
    spirit("mezcal", "Mezcal", 42.0),
    spirit("aquavit", "Aquavit", 42.0),
    spirit("absinthe", "Absinthe", 60.0),
    spirit("spirit-40", "Spirit", 40.0),
    spirit("spirit-50", "Strong spirit", 50.0),
    // Liqueurs and bitter aperitifs.
    liqueur("liqueur", "Liqueur, sweet", 24.0, 260.0).also(&["liqueur"]),
    liqueur("orange-liqueur", "Orange liqueur, dry", 40.0, 240.0).also(&[
        "orange liqueur",
        "triple sec",
        "curaçao",
        "curacao",
    ]),
    liqueur("blue-orange-liqueur", "Orange liqueur, sweet", 25.0, 330.0).also(&["blue curaçao", "blue curacao"]),
    liqueur("cherry-liqueur", "Cherry liqueur", 24.0, 250.0).also(&["cherry brandy"]),
    liqueur("cherry-distillate-liqueur", "Clear cherry liqueur", 32.0, 350.0).also(&["maraschino"]),
    liqueur("elderflower-liqueur", "Elderflower liqueur", 20.0, 190.0).also(&["elderflower"]),
    liqueur("apricot-liqueur", "Apricot liqueur", 24.0, 280.0),
    liqueur("peach-liqueur", "Peach liqueur", 18.0, 250.0),
    liqueur("blackcurrant-liqueur", "Blackcurrant liqueur", 16.0, 420.0).also(&["cassis"]),
    liqueur("almond-liqueur", "Almond liqueur", 26.0, 290.0).also(&["amaretto"]).declare(&[Allergen::Nuts]),
    liqueur("coffee-liqueur", "Coffee liqueur", 20.0, 390.0),
    liqueur("cacao-liqueur", "Cacao liqueur", 24.0, 320.0).also(&[
        "chocolate liqueur",
        "crème de cacao",
        "creme de cacao",
    ]),
    liqueur("mint-liqueur", "Mint liqueur", 24.0, 320.0).also(&["crème de menthe", "creme de menthe"]),
    liqueur("ginger-liqueur", "Ginger liqueur", 28.0, 260.0),
    liqueur("green-herb-liqueur", "Herb liqueur, strong", 55.0, 250.0).also(&["strong herb liqueur", "herb liqueur"]),
    liqueur("yellow-herb-liqueur", "Herb liqueur, mild", 42.0, 310.0).also(&["mild herb liqueur"]),
    liqueur("cream-liqueur", "Cream liqueur", 17.0, 200.0)
        .solids(140.0)
        .roomy(1.0)
        .also(&["Irish cream", "rum cream", "cream liqueur"])
        .declare(&[Allergen::Milk]),
    liqueur("sloe-gin", "Sloe gin", 26.0, 200.0),
    liqueur("bitter-red-aperitif", "Bitter red aperitif", 24.0, 230.0).also(&[
        "aperitif",
        "red bitter",
        "bitter aperitif",
    ]),
    liqueur("light-bitter-aperitif", "Light bitter aperitif", 11.0, 240.0).also(&["light aperitif"]),
    liqueur("amaro", "Amaro", 28.0, 200.0),
    // Wines, fortified and aromatised wines, beer.
    wine("dry-vermouth", "Dry vermouth", 18.0, 30.0, WINE_ACID).also(&["vermouth dry", "french vermouth"]),
    wine("blanc-vermouth", "Blanc vermouth", 16.0, 130.0, WINE_ACID).also(&[
        "bianco vermouth",
        "vermouth blanc",
        "vermouth bianco",
    ]),
    wine("sweet-vermouth", "Sweet vermouth", 16.0, 150.0, WINE_ACID).also(&[
        "vermouth",
        "red vermouth",
        "vermouth rosso",
    ]),
    wine("quinine-wine", "Quinine aperitif wine", 17.0, 110.0, WINE_ACID).also(&["quinquina", "aperitif wine"]),
    wine("fino-sherry", "Dry sherry", 15.0, 3.0, WINE_ACID).also(&["sherry", "fino", "manzanilla"]),
    wine("sweet-sherry", "Sweet sherry", 17.0, 380.0, WINE_ACID).also(&["cream sherry", "PX sherry"]),
    wine("ruby-port", "Ruby port", 20.0, 100.0, WINE_ACID).also(&["port", "port wine"]),
    wine("white-wine", "Dry white wine", 12.5, 3.0, &[(Acid::Tartaric, 6.5), (Acid::Malic, 3.0)])
        .also(&["wine", "white wine"]),
    wine("red-wine", "Dry red wine", 13.5, 3.0, &[(Acid::Tartaric, 6.0), (Acid::Lactic, 2.5)]).also(&["red wine"]),
    wine("sparkling-wine", "Sparkling wine, brut", 12.0, 9.0, &[(Acid::Tartaric, 6.5), (Acid::Malic, 3.0)]).also(&[
        "sparkling wine",
        "champagne",
        "sparkling",
    ]),
    wine("cider", "Dry cider", 5.0, 12.0, &[(Acid::Malic, 6.5)]).also(&["cider"]).salts(26.0),
    wine("lager", "Lager", 5.0, 25.0, &[(Acid::Lactic, 0.5)]).also(&["beer"]).declare(&[Allergen::Gluten]).salts(4.0),
    // Bitters.
    other("aromatic-bitters", "Aromatic bitters", Kind::Bitters).also(&["bitters"]).at(45.0).sweet(50.0),
    other("orange-bitters", "Orange bitters", Kind::Bitters).at(40.0).sweet(30.0),
    other("anise-bitters", "Anise bitters", Kind::Bitters).at(35.0).sweet(30.0),
    // Juices. Fresh fruit varies by a fifth and more.
    juice("lemon-juice", "Lemon juice", 20.0, &[(Acid::Citric, LEMON_CITRIC)])
        .also(&["lemon", "juice of lemon"])
        .from(PENNISTON, "citric 44 to 60 g/l"),
    juice("lime-juice", "Lime juice", 15.0, &[(Acid::Citric, LIME_CITRIC)])
        .also(&["lime", "juice of lime"])
        .from(PENNISTON, "citric 39 to 53 g/l"),
    juice("orange-juice", "Orange juice", 100.0, &[(Acid::Citric, 9.1)])
        .salts(45.0)
        .also(&["orange", "juice of orange"])
        .from(PENNISTON, "citric 7 to 13 g/l"),
    juice("grapefruit-juice", "Grapefruit juice", 80.0, &[(Acid::Citric, 19.6)])
        .salts(50.0)
        .also(&["grapefruit"])
        .from(GRAPEFRUIT, "citric 19.6 to 25.0 g/l"),
    juice("pineapple-juice", "Pineapple juice", 125.0, &[(Acid::Citric, 8.0)]).also(&["pineapple"]),
    juice("apple-juice", "Apple juice", 110.0, &[(Acid::Malic, 6.0)]).also(&["apple"]),
    juice("pear-juice", "Pear juice", 110.0, &[(Acid::Malic, 3.0)]).also(&["pear"]),
    juice("cranberry-juice", "Cranberry juice, unsweetened", 40.0, &[(Acid::Citric, 11.0), (Acid::Malic, 8.0)])
        .also(&["cranberry juice"]),
    juice("pomegranate-juice", "Pomegranate juice", 130.0, &[(Acid::Citric, 12.0)]).also(&["pomegranate"]),
    juice("grape-juice", "Grape juice", 160.0, &[(Acid::Tartaric, 4.0), (Acid::Malic, 3.0)]).also(&["grape"]),
    juice("tomato-juice", "Tomato juice", 35.0, &[(Acid::Citric, 4.0)]).also(&["tomato"]),
    juice("passion-fruit", "Passion fruit pulp", 100.0, &[(Acid::Citric, 30.0)]).also(&[
        "passion fruit",
        "passion fruit purée",
        "passion fruit puree",
    ]),
    juice("raspberry-puree", "Raspberry purée", 50.0, &[(Acid::Citric, 15.0)])
        .also(&["raspberry puree", "raspberries", "raspberry"])
        .solids(40.0),
    juice("puree", "Fruit purée", 100.0, &[(Acid::Citric, 8.0)]).solids(30.0).also(&["purée", "puree", "pulp"]),
    juice("juice", "Fruit juice", 110.0, &[(Acid::Citric, 8.0)]).also(&["juice"]),
    juice("verjus", "Verjus", 15.0, &[(Acid::Tartaric, 8.0), (Acid::Malic, 14.0)]),
    juice("vinegar", "Wine vinegar", 2.0, &[(Acid::Acetic, 60.0)]).also(&["vinegar"]).salts(10.0),
    // Syrups.
    syrup("simple-syrup", "Simple syrup 1:1 by weight", 614.8)
        .also(&["syrup", "simple", "simple syrup", "sugar syrup", "syrup 1:1 by weight"])
        .from(ICUMSA, ""),
    syrup("simple-syrup-cups", "Simple syrup 1:1 by the cup", 553.5)
        .also(&["1:1 by the cup", "1:1 by volume"])
        .from(CUPS, ""),
    syrup("rich-syrup", "Rich syrup 2:1 by weight", 884.5)
        .also(&["rich syrup", "rich", "rich simple", "rich simple syrup", "syrup 2:1 by weight"])
        .from(ICUMSA, ""),
    syrup("rich-syrup-cups", "Rich syrup 2:1 by the cup", 820.4)
        .also(&["2:1 by the cup", "2:1 by volume"])
        .from(CUPS, ""),
    syrup("demerara-syrup", "Demerara syrup 2:1 by weight", 884.5)
        .also(&["demerara syrup", "demerara"])
        .from(ICUMSA, ""),
    syrup("gomme", "Gomme syrup", 850.0).also(&["gomme", "gum syrup"]).solids(20.0),
    syrup("grenadine", "Grenadine", 700.0).sour(&[(Acid::Citric, 8.0)]),
    syrup("orgeat", "Orgeat", 650.0).solids(30.0).declare(&[Allergen::Nuts]),
    syrup("ginger-syrup", "Ginger syrup", 600.0),
    syrup("raspberry-syrup", "Raspberry syrup", 600.0).sour(&[(Acid::Citric, 8.0)]),
    syrup("lime-cordial", "Lime cordial", 450.0).sour(&[(Acid::Citric, 25.0)]),
    syrup("pear-cordial", "Pear cordial", 430.0).sour(&[(Acid::Citric, 20.0), (Acid::Malic, 3.0)]),
    syrup("cordial", "Fruit cordial", 430.0).sour(&[(Acid::Citric, 20.0)]).also(&["cordial"]),
    syrup("shrub", "Shrub", 400.0).sour(&[(Acid::Acetic, 15.0)]),
    syrup("honey", "Honey", 0.0)
        .fruit_sweet(1156.0)
        .from("US grade standard, at most 18.6 % moisture", "1.41 to 1.43 g/ml"),
    syrup("honey-syrup", "Honey syrup 1:1 by weight", 0.0).also(&["honey syrup"]).fruit_sweet(480.0),
    syrup("agave-syrup", "Agave syrup", 0.0)
        .also(&["agave", "agave nectar"])
        .fruit_sweet(1030.0)
        .from("supplier practice, from memory", "74 to 76 °Bx"),
    syrup("maple-syrup", "Maple syrup", 876.0)
        .also(&["maple"])
        .from("21 CFR 168.140, at least 66 °Bx, from memory", "66.0 to 68.9 °Bx"),
    // Dairy and what stands in for it.
    other("whole-milk", "Whole milk", Kind::Dairy).also(&["milk"]).milk(1.030).from(FAO, "3.25 to 3.5 % fat"),
    other("skim-milk", "Skim milk", Kind::Dairy).milk(1.030),
    other("cream", "Cream", Kind::Dairy).also(&["heavy cream", "double cream"]).milk(1.000),
    other("yoghurt", "Yoghurt", Kind::Dairy).also(&["yogurt"]).milk(1.030).sour(&[(Acid::Lactic, 9.0)]),
    other("coconut-cream", "Coconut cream, sweetened", Kind::Dairy)
        .also(&["coconut cream", "cream of coconut"])
        .sweet(520.0)
        .solids(180.0)
        .roomy(1.05),
    other("oat-drink", "Oat drink", Kind::Dairy)
        .also(&["oat milk"])
        .sweet(40.0)
        .solids(40.0)
        .declare(&[Allergen::Gluten]),
    other("soya-drink", "Soya drink", Kind::Dairy)
        .also(&["soya milk", "soy milk"])
        .sweet(25.0)
        .solids(60.0)
        .declare(&[Allergen::Soya]),
    other("almond-drink", "Almond drink", Kind::Dairy)
        .sweet(25.0)
        .solids(20.0)
        .also(&["almond milk"])
        .declare(&[Allergen::Nuts]),
    // Egg. About 30 ml to a white, 18 to a yolk (common practice, no source).
    other("egg-white", "Egg white", Kind::Egg)
        .also(&["egg whites", "white of egg"])
        .solids(110.0)
        .roomy(0.73)
        .declare(&[Allergen::Egg]),
    other("whole-egg", "Whole egg", Kind::Egg)
        .solids(250.0)
        .roomy(0.88)
        .also(&["egg", "eggs"])
        .declare(&[Allergen::Egg]),
    other("egg-yolk", "Egg yolk", Kind::Egg)
        .also(&["egg yolks", "yolk"])
        .solids(500.0)
        .roomy(0.95)
        .declare(&[Allergen::Egg]),
    other("aquafaba", "Chickpea water", Kind::Egg).solids(50.0),
    // Sodas.
    other("soda-water", "Soda water", Kind::Soda).also(&["soda", "sparkling water", "seltzer", "club soda"]),
    other("tonic", "Tonic water", Kind::Soda).also(&["tonic"]).sweet(85.0).sour(&[(Acid::Citric, 3.5)]),
    other("sweet-soda", "Sweet soda", Kind::Soda).sweet(100.0).sour(&[(Acid::Citric, 2.5)]).also(&[
        "cream soda",
        "cherry soda",
        "orange soda",
        "lemonade",
        "lemon-lime soda",
        "bitter lemon",
    ]),
    other("ginger-ale", "Ginger ale", Kind::Soda).sweet(85.0).sour(&[(Acid::Citric, 1.5)]),
    other("ginger-beer", "Ginger beer", Kind::Soda).sweet(110.0).sour(&[(Acid::Citric, 2.5)]),
    other("cola", "Cola", Kind::Soda).sweet(106.0).sour(&[(Acid::Phosphoric, 0.6)]),
    other("grapefruit-soda", "Grapefruit soda", Kind::Soda).sweet(90.0).sour(&[(Acid::Citric, 3.0)]),
    // Coffee and tea.
    other("espresso", "Espresso", Kind::Brew).solids(50.0),
    other("cold-brew", "Cold brew coffee", Kind::Brew).also(&["coffee", "cold brew"]).solids(20.0),
    other("black-tea", "Black tea", Kind::Brew).also(&["tea"]).solids(3.0),
    other("green-tea", "Green tea", Kind::Brew).solids(2.0),
    // Weighed: g/kg.
    other("sugar", "Sugar", Kind::Powder)
        .also(&["caster sugar", "white sugar"])
        .sweet(1000.0)
        .from("pure substance", ""),
    powder("citric-acid", "Citric acid", &[(Acid::Citric, 1000.0)]).also(&["citric"]),
    powder("citric-monohydrate", "Citric acid, monohydrate", &[(Acid::Citric, 914.3)]),
    powder("malic-acid", "Malic acid", &[(Acid::Malic, 1000.0)]).also(&["malic"]),
    powder("tartaric-acid", "Tartaric acid", &[(Acid::Tartaric, 1000.0)]).also(&["tartaric"]),
    powder("lactic-acid", "Lactic acid, 80 %", &[(Acid::Lactic, 800.0)]).also(&["lactic acid", "lactic"]),
    powder("ascorbic-acid", "Ascorbic acid", &[(Acid::Ascorbic, 1000.0)]).also(&["ascorbic"]),
    other("salt", "Salt", Kind::Powder).solids(1000.0).roomy(0.35).from("pure substance", ""),
    // Water.
    other("saline", "Saline, 20 %", Kind::Water).also(&["saline", "salt solution"]).solids(230.0).roomy(0.35),
    other("water", "Water", Kind::Water).from("OIML R 22 (1975)", ""),
    other("ice", "Ice, melted", Kind::Water).also(&["ice"]).counted().from("OIML R 22 (1975)", ""),
];

/// The ingredient of this key.
#[must_use]
pub fn ingredient(key: &str) -> Option<&'static Ingredient> {
    LIBRARY.iter().find(|ingredient| ingredient.key == key)
}
