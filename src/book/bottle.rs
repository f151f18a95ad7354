//! Standard bottle sizes, and measures by the glass that a law sets.

use crate::quantity::Volume;

/// A standard size of bottle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottle {
    /// Nominal contents, whole millilitres.
    pub ml: u32,
    /// Where, and for what, the size is standard.
    pub regions: &'static str,
}

impl Bottle {
    /// The nominal contents.
    #[must_use]
    pub const fn volume(self) -> Volume {
        Volume::whole_ml(self.ml)
    }
}

const fn size(ml: u32, regions: &'static str) -> Bottle {
    Bottle { ml, regions }
}

const ALL: &str = "EU, UK, US";
const US: &str = "US";
const US_SPIRITS: &str = "US spirits";
const US_WINE: &str = "US wine";

/// Sizes a bar meets, smallest first. Rules change: a list to choose from, not legal advice.
///
/// Sources: EU and UK, Directive 2007/45/EC Annex and the GOV.UK page "Specified quantities" (its wine sizes other than
/// sparkling from memory); US spirits, 27 CFR 5.203, US wine, 27 CFR 4.72, both as widened by the rules of 29 December
/// 2020 (TTB Newsletter 28 Dec 2020) and T.D. TTB-200 (90 FR 1868, 10 Jan 2025); those before 2020 from memory.
pub const BOTTLES: &[Bottle] = &[
    size(50, US),
    size(100, ALL),
    size(125, "EU, UK sparkling wine"),
    size(180, US_WINE),
    size(187, "EU, UK wine; US"),
    size(200, ALL),
    size(250, "EU, UK wine; US"),
    size(300, US_WINE),
    size(330, US_WINE),
    size(331, US_SPIRITS),
    size(350, "EU, UK; US spirits"),
    size(355, US),
    size(360, US_WINE),
    size(375, "EU, UK wine; US"),
    size(473, US_WINE),
    size(475, US_SPIRITS),
    size(500, ALL),
    size(550, US_WINE),
    size(568, US_WINE),
    size(570, US_SPIRITS),
    size(600, US_WINE),
    size(620, US_WINE),
    size(700, ALL),
    size(710, US_SPIRITS),
    size(720, US),
    size(750, "EU, UK wine; US"),
    size(900, US_SPIRITS),
    size(945, US_SPIRITS),
    size(1000, ALL),
    size(1500, ALL),
    size(1750, "EU, UK; US spirits"),
    size(1800, US),
    size(2000, "EU, UK; US spirits"),
    size(2250, US_WINE),
    size(3000, US),
    size(3750, US_SPIRITS),
];

/// Measures by the glass in the UK, and of what; some of them in multiples too.
///
/// Source: the GOV.UK page "Specified quantities" (Weights and Measures (Intoxicating Liquor) Order 1988).
pub const GLASSES: &[(Volume, &str)] = &[
    (Volume::whole_ml(25), "gin, rum, vodka and whisky"),
    (Volume::whole_ml(35), "gin, rum, vodka and whisky"),
    (Volume::whole_ml(50), "fortified wine"),
    (Volume::whole_ml(70), "fortified wine"),
    (Volume::whole_ml(125), "still wine"),
    (Volume::whole_ml(175), "still wine"),
    (Volume::THIRD_OF_A_PINT, "draught beer and cider"),
    (Volume::HALF_A_PINT, "draught beer and cider"),
    (Volume::TWO_THIRDS_OF_A_PINT, "draught beer and cider"),
    (Volume::IMPERIAL_PINT, "draught beer and cider"),
];

/// What a serve of this size is a measure of in the UK, to half a millilitre.
#[must_use]
pub fn glass_of(serve: Volume) -> Option<&'static str> {
    GLASSES.iter().find(|(glass, _)| (glass.ml() - serve.ml()).abs() <= 0.5).map(|(_, of)| *of)
}
