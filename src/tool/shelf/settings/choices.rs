//! What is chosen on the shelf.

use crate::quantity::Ounce;
use crate::screen::choice;
use crate::substance::energy::StandardDrink;
use crate::substance::juice::Citrus;

choice! { Ounce:
    Us = "us", "US, 29.57 ml";
    Imperial = "imperial", "Imperial, 28.41 ml";
    Round30 = "round", "Round, 30 ml";
}

choice! { StandardDrink:
    UnitedStates = "us", "US, 14 g of ethanol";
    UnitedKingdom = "uk", "UK unit, 10 ml of ethanol";
    Australia = "au", "Australia, 10 g of ethanol";
    Canada = "ca", "Canada, 17.05 ml of ethanol";
    Austria = "at", "Austria, 20 g of ethanol";
    Japan = "jp", "Japan, about 20 g of ethanol";
    NewZealand = "nz", "New Zealand, 10 g of ethanol";
    Portugal = "pt", "Portugal, 10 g of ethanol, from memory";
    Spain = "es", "Spain, 10 g of ethanol";
    Who = "who", "WHO, 10 g of ethanol";
}

choice! { Citrus:
    Published = "published", "As published";
    BarRule = "bar", "By the bar rule";
}

/// The unit of a number typed without one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UsualUnit {
    /// Millilitres.
    Millilitre,
    /// Centilitres.
    Centilitre,
    /// House ounces.
    Ounce,
}

choice! { UsualUnit:
    Millilitre = "ml", "ml";
    Centilitre = "cl", "cl";
    Ounce = "oz", "oz";
}

/// What weights are shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weights {
    /// Grams.
    Grams,
    /// Pounds and ounces.
    Pounds,
}

choice! { Weights:
    Grams = "g", "g";
    Pounds = "lb", "lb and oz";
}

/// The decimal mark shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecimalMark {
    /// As the device's language has it.
    Device,
    /// 1.5
    Point,
    /// 1,5
    Comma,
}

choice! { DecimalMark:
    Device = "device", "As the device";
    Point = "point", "1.5";
    Comma = "comma", "1,5";
}

/// The look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// As the device has it.
    System,
    /// For a dark bar.
    Slate,
    /// For daylight.
    Paper,
}

choice! { Theme:
    System = "system", "As the device";
    Slate = "slate", "Slate";
    Paper = "paper", "Paper";
}

/// What numbers are entered with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keyboard {
    /// The app's own pad.
    Pad,
    /// The phone's keyboard.
    Phone,
}

choice! { Keyboard:
    Pad = "pad", "The pad";
    Phone = "phone", "Phone keyboard";
}

/// The hand that types on the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// Digits at the left, the rest under the right thumb.
    Right,
    /// The columns mirrored.
    Left,
}

choice! { Hand:
    Right = "right", "Right";
    Left = "left", "Left";
}
