//! Ingredients of the trade: what a litre of each holds, who must be told, how it keeps. Plain data.

use crate::substance::acid::Acid;
use crate::substance::mix::ML_PER_GRAM_OF_SOLIDS;

/// What sort of ingredient it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Distilled, unsweetened.
    Spirit,
    /// Distilled, sweetened.
    Liqueur,
    /// Wine, fortified and aromatised wine, beer, cider.
    Wine,
    /// Dashed, not poured.
    Bitters,
    /// Pressed from fruit.
    Juice,
    /// Sugar in water, honey and the like.
    Syrup,
    /// Milk, cream and what stands in for them.
    Dairy,
    /// Egg.
    Egg,
    /// Carbonated.
    Soda,
    /// Coffee and tea.
    Brew,
    /// Weighed, not poured: sugar, acids, salt.
    Powder,
    /// Water and ice.
    Water,
}

impl Kind {
    /// What several of them are called.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            Kind::Spirit => "Spirits",
            Kind::Liqueur => "Liqueurs and aperitifs",
            Kind::Wine => "Wine, vermouth, beer",
            Kind::Bitters => "Bitters",
            Kind::Juice => "Juice and purée",
            Kind::Syrup => "Syrups and honey",
            Kind::Dairy => "Milk and the like",
            Kind::Egg => "Egg",
            Kind::Soda => "Sodas",
            Kind::Brew => "Coffee and tea",
            Kind::Powder => "Weighed",
            Kind::Water => "Water",
        }
    }

    /// How it keeps once open, cautiously. A local food code goes first.
    #[must_use]
    pub const fn keeping(self) -> &'static str {
        match self {
            Kind::Spirit | Kind::Liqueur | Kind::Bitters => "for months, closed and out of the light",
            Kind::Wine => "cold once open; days for wine, weeks for fortified",
            Kind::Juice => "cold, and best the day it is pressed",
            Kind::Syrup => "cold; weeks when rich, days when thin or fresh",
            Kind::Dairy => "cold, to the date on the pack",
            Kind::Egg => "cold, and the day it is cracked",
            Kind::Soda => "closed; flat within hours of opening",
            Kind::Brew => "cold, a day or two",
            Kind::Powder => "dry and closed",
            Kind::Water => "",
        }
    }
}

/// How an amount of it is understood where no unit says so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handled {
    /// It is poured: "60 gin" wants a unit.
    Poured,
    /// It is counted: an egg, a cube of ice, a spoon of sugar.
    Counted,
    /// A fruit is counted, and its juice is poured: by its name.
    ByName,
}

/// What guests must be told of. Source: Regulation (EU) 1169/2011, Annex II, and US FALCPA 2004, from memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Allergen {
    /// Milk, lactose included.
    Milk,
    /// Egg.
    Egg,
    /// Tree nuts.
    Nuts,
    /// Soya.
    Soya,
    /// Gluten cereals, oats included in the EU.
    Gluten,
    /// Sulphites above 10 mg/l.
    Sulphites,
    /// Celery.
    Celery,
    /// Peanut.
    Peanut,
    /// Sesame.
    Sesame,
    /// Fish.
    Fish,
    /// Crustaceans.
    Crustaceans,
    /// Molluscs.
    Molluscs,
    /// Mustard.
    Mustard,
    /// Lupin.
    Lupin,
}

impl Allergen {
    /// As it is declared.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Allergen::Milk => "milk",
            Allergen::Egg => "egg",
            Allergen::Nuts => "nuts",
            Allergen::Soya => "soya",
            Allergen::Gluten => "gluten",
            Allergen::Sulphites => "sulphites",
            Allergen::Celery => "celery",
            Allergen::Peanut => "peanut",
            Allergen::Sesame => "sesame",
            Allergen::Fish => "fish",
            Allergen::Crustaceans => "crustaceans",
            Allergen::Molluscs => "molluscs",
            Allergen::Mustard => "mustard",
            Allergen::Lupin => "lupin",
        }
    }
}

/// What must be asked about before it is known what guests must be told of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// Gelatin: of fish it is an allergen; of beef or pork it matters for diets.
    Gelatin,
    /// Coconut: whether it is counted as a tree nut depends on the code.
    Coconut,
    /// Enzyme: a code may ask for it to be declared.
    Enzyme,
}

/// How its sugar is made up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sugar {
    /// Table sugar.
    Sucrose,
    /// Glucose and fructose, as in fruit and honey.
    Invert,
}

/// An ingredient: what a litre of it holds at 20 °C, or for a powder what a kilogram does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ingredient {
    /// Stable key, kept in saved data.
    pub key: &'static str,
    /// Name in the trade's words.
    pub name: &'static str,
    /// Other phrases that mean it in a spec.
    pub names: &'static [&'static str],
    /// What sort it is.
    pub kind: Kind,
    /// Strength, % vol.
    pub percent: f64,
    /// Sugar, g/l (g/kg for a powder).
    pub sugar: f64,
    /// What sugar.
    pub sugar_kind: Sugar,
    /// Acids, g/l (g/kg for a powder).
    pub acids: &'static [(Acid, f64)],
    /// Strong cations less strong anions, mmol/l: the potassium of juice.
    pub cations: f64,
    /// Anything else dissolved or afloat, g/l.
    pub other: f64,
    /// Millilitres that a gram of that takes up: sugars and protein 0.62 to 0.75, fat 1.09, salt 0.35.
    pub other_room: f64,
    /// How an amount of it without a unit is understood.
    pub handled: Handled,
    /// Whether it is milk or cream, which clot and must be declared.
    pub is_milk: bool,
    /// Published spread of its figures, in words; empty where we know none.
    pub range: &'static str,
    /// Who must be told.
    pub allergens: &'static [Allergen],
    /// Where the figures come from.
    pub source: &'static str,
}

/// The source of most figures of the trade.
pub const COMMON: &str = "common practice, no source";

impl Ingredient {
    /// An ingredient that holds nothing but water yet.
    #[must_use]
    pub const fn new(key: &'static str, name: &'static str, kind: Kind) -> Ingredient {
        Ingredient {
            key,
            name,
            names: &[],
            kind,
            percent: 0.0,
            sugar: 0.0,
            sugar_kind: Sugar::Sucrose,
            acids: &[],
            cations: 0.0,
            other: 0.0,
            other_room: ML_PER_GRAM_OF_SOLIDS,
            handled: match kind {
                Kind::Egg | Kind::Powder => Handled::Counted,
                Kind::Juice => Handled::ByName,
                _ => Handled::Poured,
            },
            is_milk: false,
            range: "",
            allergens: &[],
            source: COMMON,
        }
    }

    /// Also called so.
    #[must_use]
    pub const fn also(mut self, names: &'static [&'static str]) -> Ingredient {
        self.names = names;
        self
    }

    /// With this strength, % vol.
    #[must_use]
    pub const fn at(mut self, percent: f64) -> Ingredient {
        self.percent = percent;
        self
    }

    /// With this sucrose, g/l.
    #[must_use]
    pub const fn sweet(mut self, sugar: f64) -> Ingredient {
        self.sugar = sugar;
        self
    }

    /// With this glucose and fructose, g/l.
    #[must_use]
    pub const fn fruit_sweet(mut self, sugar: f64) -> Ingredient {
        self.sugar = sugar;
        self.sugar_kind = Sugar::Invert;
        self
    }

    /// With these acids, g/l.
    #[must_use]
    pub const fn sour(mut self, acids: &'static [(Acid, f64)]) -> Ingredient {
        self.acids = acids;
        self
    }

    /// With the potassium of juice, mmol/l.
    #[must_use]
    pub const fn salts(mut self, cations: f64) -> Ingredient {
        self.cations = cations;
        self
    }

    /// With other solids, g/l.
    #[must_use]
    pub const fn solids(mut self, other: f64) -> Ingredient {
        self.other = other;
        self
    }

    /// With what a gram of its other solids takes up, ml.
    #[must_use]
    pub const fn roomy(mut self, ml_per_gram: f64) -> Ingredient {
        self.other_room = ml_per_gram;
        self
    }

    /// Counted, not poured.
    #[must_use]
    pub const fn counted(mut self) -> Ingredient {
        self.handled = Handled::Counted;
        self
    }

    /// As milk or cream of this density, g/ml.
    #[must_use]
    pub const fn milk(mut self, g_per_ml: f64) -> Ingredient {
        self.is_milk = true;
        self.other_room = 1.0 / g_per_ml;
        self.allergens = &[Allergen::Milk];
        self
    }

    /// With allergens to declare.
    #[must_use]
    pub const fn declare(mut self, allergens: &'static [Allergen]) -> Ingredient {
        self.allergens = allergens;
        self
    }

    /// With a source, and the spread it gives.
    #[must_use]
    pub const fn from(mut self, source: &'static str, range: &'static str) -> Ingredient {
        self.source = source;
        self.range = range;
        self
    }
}
