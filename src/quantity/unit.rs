//! Units that are typed and shown, and the house conventions some of them depend on.

use super::{Amount, Mass, OutOfRange, Volume};

/// Which ounce a bar means by "oz".
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Ounce {
    /// US fluid ounce, 29.57 ml.
    #[default]
    Us,
    /// Imperial fluid ounce, 28.41 ml.
    Imperial,
    /// A round 30 ml (common practice, no source).
    Round30,
}

impl Ounce {
    /// The volume of one such ounce.
    #[must_use]
    pub const fn volume(self) -> Volume {
        match self {
            Ounce::Us => Volume::US_FLUID_OUNCE,
            Ounce::Imperial => Volume::IMPERIAL_FLUID_OUNCE,
            Ounce::Round30 => Volume::whole_ml(30),
        }
    }
}

/// What a bar means by the units that have no single definition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Conventions {
    /// The house ounce.
    pub ounce: Ounce,
    /// One dash of bitters.
    pub dash: Volume,
    /// One barspoon.
    pub barspoon: Volume,
    /// One part of a list of parts, where the list says so; else a house ounce.
    pub part: Option<Volume>,
}

impl Conventions {
    /// The dash before a bar has measured its own: 0.8 ml.
    ///
    /// Common practice, no source: quoted between 0.6 and 1 ml.
    pub const DASH: Volume = Volume(0.8);
    /// The barspoon before a bar has measured its own: 5 ml.
    ///
    /// Common practice, no source: quoted between 2.5 and 5 ml.
    pub const BARSPOON: Volume = Volume(5.0);
    /// Twenty drops of a watery liquid to the millilitre; spirit drops are smaller.
    ///
    /// A pharmacy convention, from memory.
    const DROP: Volume = Volume(0.05);
    /// Metric spoons and cup for bars that do not use the US ounce: 5, 15 and 240 ml.
    ///
    /// Source: 21 CFR 101.9(b)(5)(viii), household measures for labels.
    const METRIC_TEASPOON: Volume = Volume(5.0);
    const METRIC_TABLESPOON: Volume = Volume(15.0);
    const METRIC_CUP: Volume = Volume(240.0);
}

impl Default for Conventions {
    fn default() -> Self {
        Conventions { ounce: Ounce::default(), dash: Self::DASH, barspoon: Self::BARSPOON, part: None }
    }
}

/// The size of one unit: poured or weighed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// A unit of volume.
    Volume(Volume),
    /// A unit of mass.
    Mass(Mass),
}

/// A unit a person may type.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "the names are the documentation")]
pub enum Unit {
    Millilitre,
    Centilitre,
    Decilitre,
    Litre,
    /// The house ounce: see [`Conventions::ounce`].
    Ounce,
    UsFluidOunce,
    ImperialFluidOunce,
    Dash,
    Drop,
    /// An eighth of a fluid ounce: imperial with the imperial ounce, else US.
    FluidDram,
    Barspoon,
    Teaspoon,
    Tablespoon,
    Cup,
    /// A quarter of a pint.
    Gill,
    ImperialGill,
    Pint,
    ImperialPint,
    Quart,
    Gallon,
    ImperialGallon,
    Grain,
    Gram,
    Kilogram,
    OunceWeight,
    Pound,
}

impl Unit {
    /// Every unit.
    pub const ALL: [Unit; 26] = [
        Unit::Millilitre,
        Unit::Centilitre,
        Unit::Decilitre,
        Unit::Litre,
        Unit::Ounce,
        Unit::UsFluidOunce,
        Unit::ImperialFluidOunce,
        Unit::Dash,
        Unit::Drop,
        Unit::FluidDram,
        Unit::Barspoon,
        Unit::Teaspoon,
        Unit::Tablespoon,
        Unit::Cup,
        Unit::Gill,
        Unit::ImperialGill,
        Unit::Pint,
        Unit::ImperialPint,
        Unit::Quart,
        Unit::Gallon,
        Unit::ImperialGallon,
        Unit::Grain,
        Unit::Gram,
        Unit::Kilogram,
        Unit::OunceWeight,
        Unit::Pound,
    ];

    /// The size of one such unit in a house with these conventions.
    ///
    /// Spoons and the cup follow the ounce: US customary with the US ounce, else metric.
    /// Fluid dram, gill, pint, quart and gallon are imperial with the imperial ounce, else US.
    #[must_use]
    pub const fn size(self, house: &Conventions) -> Size {
        let us = matches!(house.ounce, Ounce::Us);
        let imperial = matches!(house.ounce, Ounce::Imperial);
        Size::Volume(match self {
            Unit::Millilitre => Volume(1.0),
            Unit::Centilitre => Volume(10.0),
            Unit::Decilitre => Volume(100.0),
            Unit::Litre => Volume::LITRE,
            Unit::Ounce => house.ounce.volume(),
            Unit::UsFluidOunce => Volume::US_FLUID_OUNCE,
            Unit::ImperialFluidOunce => Volume::IMPERIAL_FLUID_OUNCE,
            Unit::Dash => house.dash,
            Unit::Drop => Conventions::DROP,
            Unit::FluidDram if imperial => Volume(Volume::IMPERIAL_FLUID_OUNCE.0 / 8.0),
            Unit::FluidDram => Volume(Volume::US_FLUID_OUNCE.0 / 8.0),
            Unit::Barspoon => house.barspoon,
            Unit::Teaspoon if us => Volume::US_TEASPOON,
            Unit::Teaspoon => Conventions::METRIC_TEASPOON,
            Unit::Tablespoon if us => Volume::US_TABLESPOON,
            Unit::Tablespoon => Conventions::METRIC_TABLESPOON,
            Unit::Cup if us => Volume::US_CUP,
            Unit::Cup => Conventions::METRIC_CUP,
            Unit::Gill if imperial => Volume(Volume::IMPERIAL_PINT.0 / 4.0),
            Unit::Gill => Volume(Volume::US_PINT.0 / 4.0),
            Unit::ImperialGill => Volume(Volume::IMPERIAL_PINT.0 / 4.0),
            Unit::Pint if imperial => Volume::IMPERIAL_PINT,
            Unit::Pint => Volume::US_PINT,
            Unit::ImperialPint => Volume::IMPERIAL_PINT,
            Unit::Quart if imperial => Volume(Volume::IMPERIAL_GALLON.0 / 4.0),
            Unit::Quart => Volume::US_QUART,
            Unit::Gallon if imperial => Volume::IMPERIAL_GALLON,
            Unit::Gallon => Volume::US_GALLON,
            Unit::ImperialGallon => Volume::IMPERIAL_GALLON,
            Unit::Grain => return Size::Mass(Mass::GRAIN),
            Unit::Gram => return Size::Mass(Mass(1.0)),
            Unit::Kilogram => return Size::Mass(Mass::KILOGRAM),
            Unit::OunceWeight => return Size::Mass(Mass::OUNCE),
            Unit::Pound => return Size::Mass(Mass::POUND),
        })
    }

    /// Whether this unit measures mass.
    #[must_use]
    pub const fn weighs(self) -> bool {
        matches!(self, Unit::Grain | Unit::Gram | Unit::Kilogram | Unit::OunceWeight | Unit::Pound)
    }

    /// Whether this unit is a litre, or a decimal part of one.
    #[must_use]
    pub const fn is_metric_volume(self) -> bool {
        matches!(self, Unit::Millilitre | Unit::Centilitre | Unit::Decilitre | Unit::Litre)
    }

    /// `count` of this unit.
    ///
    /// # Errors
    /// [`OutOfRange`] when the result is not a possible volume or mass.
    pub fn times(self, count: f64, house: &Conventions) -> Result<Amount, OutOfRange> {
        match self.size(house) {
            Size::Volume(one) => Volume::from_ml(count * one.ml()).map(Amount::Volume),
            Size::Mass(one) => Mass::from_g(count * one.g()).map(Amount::Mass),
        }
    }
}
