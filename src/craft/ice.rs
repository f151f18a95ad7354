//! Ice: what pieces weigh and how many a block gives, what a night takes, how long clear ice freezes, how much melts in a
//! glass. Lengths in mm.

use std::f64::consts::PI;

use crate::quantity::{Mass, Ratio, Temperature, Volume};
use crate::substance::cold::{DENSITY_OF_ICE, LATENT_HEAT_OF_ICE};

/// What ice conducts just below 0 °C, W/(m K), from memory.
pub const CONDUCTIVITY: f64 = 2.2;
/// What goes over from open water or ice to the air of a freezer, W/(m² K), from memory: still air, and a fan.
pub const FILM: [f64; 2] = [10.0, 25.0];
/// Heat capacity of water at 20 °C, kJ/(kg K). Source: as [`LATENT_HEAT_OF_ICE`].
const HEAT_CAPACITY_AT_20: f64 = 4.1841;
/// Water that goes in for each part that is to come out clear: the last third of it takes the bubbles, and is left.
/// Common practice, no source.
pub const DEEPER: f64 = 4.0 / 3.0;
/// What comes into a glass on the bar, W/(m² K) of its surface: dry and left alone, and wet outside or in a hand. Common
/// practice, no source.
pub const COMES_IN: [f64; 2] = [8.0, 20.0];
/// What crushed ice fills of its heap. Common practice, no source.
pub const CRUSHED_FILLS: f64 = 0.55;

/// A piece of ice, cut or moulded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Piece {
    /// Straight sides: its three edges.
    Block([f64; 3]),
    /// A sphere: its diameter.
    Sphere(f64),
}

impl Piece {
    /// What it weighs; none for more than there can be.
    #[must_use]
    pub fn mass(self) -> Option<Mass> {
        let cubic_mm = match self {
            Piece::Block([a, b, c]) => a * b * c,
            Piece::Sphere(across) => PI / 6.0 * across.powi(3),
        };
        Mass::from_g(cubic_mm / 1000.0 * DENSITY_OF_ICE).ok()
    }

    /// The block that it is cut from.
    #[must_use]
    pub const fn edges(self) -> [f64; 3] {
        match self {
            Piece::Block(edges) => edges,
            Piece::Sphere(across) => [across; 3],
        }
    }

    /// The cube of this mass.
    #[must_use]
    pub fn cube(mass: Mass) -> Piece {
        Piece::Block([cubic_mm(mass).cbrt(); 3])
    }

    /// The sphere of this mass.
    #[must_use]
    pub fn sphere(mass: Mass) -> Piece {
        Piece::Sphere((cubic_mm(mass) * 6.0 / PI).cbrt())
    }

    /// The spear of this mass, so thick.
    #[must_use]
    pub fn spear(mass: Mass, side: f64) -> Piece {
        Piece::Block([side, side, cubic_mm(mass) / (side * side)])
    }

    /// How many of it a block gives along each of its edges, all laid the same way, the best of the six; each cut takes
    /// so much. Another way of laying them may give a few more.
    #[must_use]
    pub fn cut_from(self, block: [f64; 3], cut: f64) -> [u32; 3] {
        let [a, b, c] = self.edges();
        let ways = [[a, b, c], [a, c, b], [b, a, c], [b, c, a], [c, a, b], [c, b, a]];
        let (mut best, mut most) = ([0; 3], 0);
        for way in ways {
            let laid: [u32; 3] = std::array::from_fn(|at| whole((block[at] + cut) / (way[at] + cut)));
            let pieces = together(laid);
            if pieces > most {
                (best, most) = (laid, pieces);
            }
        }
        best
    }
}

/// How many pieces are laid so.
#[must_use]
pub fn together(laid: [u32; 3]) -> u32 {
    laid.into_iter().fold(1, u32::saturating_mul)
}

/// How many whole ones that is; what is short by no more than the arithmetic is whole.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn whole(count: f64) -> u32 {
    (count + 1e-9) as u32
}

fn cubic_mm(mass: Mass) -> f64 {
    mass.g() / DENSITY_OF_ICE * 1000.0
}

/// What a heap of crushed ice weighs.
#[must_use]
pub fn crushed(heap: Volume) -> Option<Mass> {
    Mass::from_g(heap.ml() * CRUSHED_FILLS * DENSITY_OF_ICE).ok()
}

/// The heap that so much crushed ice makes.
#[must_use]
pub fn heap(mass: Mass) -> Option<Volume> {
    Volume::from_ml(mass.g() / (CRUSHED_FILLS * DENSITY_OF_ICE)).ok()
}

/// How many whole pieces of this mass are in so much.
#[must_use]
pub fn pieces_in(bag: Mass, piece: Mass) -> u32 {
    whole(bag.g() / piece.g())
}

/// How many bags or blocks it takes.
#[must_use]
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
pub fn bags_for(mass: Mass, bag: Mass) -> u32 {
    (mass.g() / bag.g() - 1e-9).ceil() as u32
}

/// Where the ice of a night goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Night {
    /// Stirred and shaken with.
    pub made_with: Mass,
    /// In the glasses.
    pub glasses: Mass,
    /// Under bottles and juices.
    pub tubs: Mass,
    /// Melts before it is used.
    pub melts: Mass,
}

impl Night {
    /// All of it.
    #[must_use]
    pub fn total(&self) -> Mass {
        self.made_with + self.glasses + self.tubs + self.melts
    }
}

/// The ice of a night: what is used, and as much more as melts of all of it: used / (1 − share). None where all melts.
#[must_use]
pub fn night(serves: Ratio, made_with: Mass, in_glass: Mass, tubs: Mass, melts: Ratio) -> Option<Night> {
    let (made_with, glasses) = (made_with * serves, in_glass * serves);
    let used = made_with + glasses + tubs;
    let melts = Mass::from_g(used.g() * melts.value() / (1.0 - melts.value())).ok()?;
    Some(Night { made_with, glasses, tubs, melts })
}

/// Seconds until water at 0 °C has frozen so deep from the side that is open, in a tub that lets nothing through its
/// others. None in a freezer that is not below 0 °C.
///
/// J. Stefan, "Über die Theorie der Eisbildung", Annalen der Physik 278 (1891) 269–286 (formula from memory), with the
/// film of air over the ice: t = ρL/(k ΔT) · (x²/2 + k x/h). It leaves out that the ice itself cools: 4 % at −18 °C.
#[must_use]
pub fn freezes_in(mm: f64, freezer: Temperature, film: f64) -> Option<f64> {
    let (x, below) = (mm / 1000.0, -freezer.celsius());
    let heat = DENSITY_OF_ICE * 1e3 * LATENT_HEAT_OF_ICE * 1e3;
    (below > 0.0).then(|| heat / (CONDUCTIVITY * below) * (x * x / 2.0 + CONDUCTIVITY * x / film))
}

/// Seconds until the water for so much clear ice has cooled to 0 °C, well mixed: m c/h · ln((T − Tf)/(0 − Tf)) for each
/// square metre. None as in [`freezes_in`]; nothing for water that is no warmer.
#[must_use]
pub fn cools_in(mm: f64, water: Temperature, freezer: Temperature, film: f64) -> Option<f64> {
    let (above, below) = (water.celsius().max(0.0), -freezer.celsius());
    let heat = mm / 1000.0 * DEEPER * DENSITY_OF_ICE * 1e3 * HEAT_CAPACITY_AT_20 * 1e3;
    (below > 0.0).then(|| heat / film * ((above + below) / below).ln())
}

/// Seconds until so much of the water is clear ice: at the earliest and at the latest, by the air of the freezer.
#[must_use]
pub fn clear_in(mm: f64, water: Temperature, freezer: Temperature) -> Option<[f64; 2]> {
    let [still, fan] = FILM.map(|film| Some(cools_in(mm, water, freezer, film)? + freezes_in(mm, freezer, film)?));
    Some([fan?, still?])
}

/// What comes into a glass that holds so much, ice and all, W: the least and the most. Its surface is taken for that of a
/// cylinder as high as it is wide, 6πr² round 2πr³, and what is in it for 0 °C.
#[must_use]
pub fn comes_in(holds: Volume, room: Temperature) -> [f64; 2] {
    let radius = (holds.ml() * 1e-6 / (2.0 * PI)).cbrt();
    COMES_IN.map(|each| each * 6.0 * PI * radius * radius * room.celsius().max(0.0))
}

/// What so many watts melt in so many seconds, of ice that is at 0 °C: no more than there is.
#[must_use]
pub fn melted(ice: Mass, watts: f64, seconds: f64) -> Mass {
    Mass::from_g((watts * seconds / LATENT_HEAT_OF_ICE).min(ice.g())).unwrap_or(ice)
}

/// Seconds until all of it has melted; none where nothing comes in.
#[must_use]
pub fn gone_in(ice: Mass, watts: f64) -> Option<f64> {
    (watts > 0.0).then(|| ice.g() * LATENT_HEAT_OF_ICE / watts)
}
