//! The acids of the bench: what they weigh, how many protons they give up, and how readily.

/// An acid of the bench, anhydrous.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Acid {
    /// C6H8O7, of lemons and limes.
    Citric,
    /// C4H6O5, of apples.
    Malic,
    /// C4H6O6, of grapes.
    Tartaric,
    /// C3H6O3, of milk gone sour.
    Lactic,
    /// C2H4O2, of vinegar.
    Acetic,
    /// H3PO4, of colas.
    Phosphoric,
    /// C6H8O6, vitamin C.
    Ascorbic,
    /// C4H6O4, of wine.
    Succinic,
}

/// What is known of an acid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Constants {
    /// Grams to the mole, from IUPAC atomic weights.
    pub molar_mass: f64,
    /// Protons neutralised on titration to pH 8.2.
    pub protons_titrated: f64,
    /// Dissociation constants at 25 °C and zero ionic strength, as pKa; the first proton first.
    pub pka: &'static [f64],
    /// Where the constants come from.
    pub source: &'static str,
}

const NIST46: &str = "NIST46 log K, as in the PHREEQC database minteq.v4 (USGS)";
const CRC: &str = "CRC Handbook, Dissociation Constants of Organic Acids, from memory";

const fn row(molar_mass: f64, protons_titrated: f64, pka: &'static [f64], source: &'static str) -> Constants {
    Constants { molar_mass, protons_titrated, pka, source }
}

impl Acid {
    /// All of them.
    pub const ALL: [Acid; 8] = [
        Acid::Citric,
        Acid::Malic,
        Acid::Tartaric,
        Acid::Lactic,
        Acid::Acetic,
        Acid::Phosphoric,
        Acid::Ascorbic,
        Acid::Succinic,
    ];

    /// What is known of it.
    #[must_use]
    pub const fn constants(self) -> Constants {
        match self {
            Acid::Citric => row(192.12, 3.0, &[3.128, 4.761, 6.396], NIST46),
            Acid::Malic => row(
                134.09,
                2.0,
                &[3.459, 5.097],
                "Goldberg, Kishore, Lennen, J. Phys. Chem. Ref. Data 31 (2002) 231, from memory",
            ),
            Acid::Tartaric => row(150.09, 2.0, &[3.036, 4.366], NIST46),
            Acid::Lactic => row(90.08, 1.0, &[3.86], CRC),
            Acid::Acetic => row(60.05, 1.0, &[4.756], CRC),
            // The third proton is not titrated.
            Acid::Phosphoric => row(98.0, 2.0, &[2.148, 7.198, 12.35], NIST46),
            Acid::Ascorbic => row(176.12, 1.0, &[4.04], CRC),
            Acid::Succinic => row(118.09, 2.0, &[4.21, 5.64], CRC),
        }
    }

    /// As a word.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Acid::Citric => "citric",
            Acid::Malic => "malic",
            Acid::Tartaric => "tartaric",
            Acid::Lactic => "lactic",
            Acid::Acetic => "acetic",
            Acid::Phosphoric => "phosphoric",
            Acid::Ascorbic => "ascorbic",
            Acid::Succinic => "succinic",
        }
    }

    /// Grams that neutralise one mole of base: molar mass / protons titrated.
    #[must_use]
    pub const fn equivalent_mass(self) -> f64 {
        let Constants { molar_mass, protons_titrated, .. } = self.constants();
        molar_mass / protons_titrated
    }
}

impl Acid {
    /// Grams of citric acid that neutralise as much base as so many of this one.
    #[must_use]
    pub const fn as_citric(self, grams: f64) -> f64 {
        grams * Acid::Citric.equivalent_mass() / self.equivalent_mass()
    }
}

/// Millilitres that one gram of dissolved acid adds to its solution.
///
/// From the density of a 10 % citric acid solution, CRC Handbook of Chemistry and Physics (from memory);
/// used for the other acids too (our assumption, worth under 0.1 % of a drink's volume).
pub const ML_PER_GRAM_DISSOLVED: f64 = 0.60;
