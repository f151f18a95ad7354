//! Standard bottle sizes.

use crate::quantity::Volume;

/// A standard size of bottle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bottle {
    /// Nominal contents, whole millilitres.
    pub ml: u32,
    /// Where the size is standard.
    pub regions: &'static str,
}

impl Bottle {
    /// The nominal contents.
    #[must_use]
    pub const fn volume(self) -> Volume {
        Volume::whole_ml(self.ml)
    }
}

/// Sizes a bar meets, smallest first. Rules change: a list to choose from, not legal advice.
///
/// Sources: EU and UK spirits, Directive 2007/45/EC Annex and the GOV.UK page "Specified quantities";
/// wine sizes from the same annex; US, 27 CFR 5.203 as widened by T.D. TTB-200 (90 FR 1868, 2025).
pub const BOTTLES: &[Bottle] = &[
    Bottle { ml: 100, regions: "EU, UK, US" },
    Bottle { ml: 187, regions: "US" },
    Bottle { ml: 200, regions: "EU, UK, US" },
    Bottle { ml: 250, regions: "US" },
    Bottle { ml: 350, regions: "EU, UK, US" },
    Bottle { ml: 375, regions: "EU, UK, US" },
    Bottle { ml: 500, regions: "EU, UK, US" },
    Bottle { ml: 700, regions: "EU, UK, US" },
    Bottle { ml: 750, regions: "EU, UK wine; US" },
    Bottle { ml: 1000, regions: "EU, UK, US" },
    Bottle { ml: 1500, regions: "EU, UK, US" },
    Bottle { ml: 1750, regions: "EU, UK, US" },
    Bottle { ml: 2000, regions: "EU, UK, US" },
    Bottle { ml: 3000, regions: "US" },
];
