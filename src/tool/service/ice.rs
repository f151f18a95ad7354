//! Ice: enough for a night, what pieces weigh, clear ice and when to start it, what melts in a glass.

mod clear;
mod melt;
mod night;
mod pieces;
#[cfg(test)]
mod tests;

use crate::quantity::Mass;
use crate::reading::{from_spec, iced};
use crate::screen::pad::Keys;
use crate::screen::plan::{Makes, Making};
use crate::screen::route::Route;
use crate::screen::{Answer, Bench, Block, Choice, Figure, Tool, choice, form};
use crate::text;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// How much a night takes.
    Night,
    /// What pieces weigh, and how many there are.
    Pieces,
    /// How long clear ice freezes.
    Clear,
    /// What melts in a glass.
    Melt,
}

choice! { Ask:
    Night = "night", "For a night";
    Pieces = "pieces", "Pieces";
    Clear = "clear", "Clear ice";
    Melt = "melt", "Melt";
}

/// What a piece looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// All edges alike.
    Cube,
    /// Long, as thick as it is wide.
    Spear,
    /// Round.
    Sphere,
    /// A heap of small ones.
    Crushed,
}

choice! { Shape:
    Cube = "cube", "Cube";
    Spear = "spear", "Spear";
    Sphere = "sphere", "Sphere";
    Crushed = "crushed", "Crushed";
}

/// What is known of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KnownBy {
    /// Its size.
    Size,
    /// What it weighs.
    Weight,
}

choice! { KnownBy:
    Size = "size", "By size";
    Weight = "weight", "By weight";
}

/// What pieces come from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// They are cut.
    Block,
    /// They are bought.
    Bag,
}

choice! { Source:
    Block = "block", "Out of a block";
    Bag = "bag", "Out of a bag";
}

form! {
    /// What is typed.
    IceForm {
        /// What is asked: a key of [`Ask`].
        ask = "night",
        /// Serves of the night.
        serves = "30",
        /// What one is stirred or shaken with.
        made_with = "180 g",
        /// What goes in its glass.
        glass = "90 g",
        /// What bottles and juices stand in.
        tubs = "4 kg",
        /// Of all of it, percent that melts before it is used.
        melts = iced::MELTS,
        /// What a bag holds.
        bag = "5 kg",
        /// What a piece looks like: a key of [`Shape`].
        shape = "cube",
        /// What is known of it: a key of [`KnownBy`].
        known_by = "size",
        /// Side of a cube.
        side = "46",
        /// Side of a spear.
        spear_side = "32",
        /// Length of a spear.
        spear = "120",
        /// Diameter of a sphere.
        sphere = "60",
        /// Crushed ice, as it lies.
        heap = "300 ml",
        /// What it weighs.
        weight = "90 g",
        /// What it comes from: a key of [`Source`].
        source = "block",
        /// Length of a block, and of the tub that it freezes in.
        long = "240",
        /// Its width.
        wide = "145",
        /// Its thickness, clear.
        thick = "50",
        /// What a cut takes.
        cut = "2",
        /// How cold the freezer is.
        freezer = "−18",
        /// How warm the water goes in.
        water = "15",
        /// What a glass holds, ice and all.
        holds = "180 ml",
        /// Ice in it.
        ice = "90 g",
        /// How warm the room is.
        room = "21",
        /// How long it stands, minutes.
        minutes = "20",
        /// The spec it came from, and which form of it: "id/0"; empty for none.
        from_spec = "",
    }
}

const SERVES: &str = "serves";
const MADE_WITH: &str = "made_with";
const GLASS: &str = "glass";
const TUBS: &str = "tubs";
const MELTS: &str = "melts";
const BAG: &str = "bag";
const SIDE: &str = "side";
const SPEAR_SIDE: &str = "spear_side";
const SPEAR: &str = "spear";
const SPHERE: &str = "sphere";
const HEAP: &str = "heap";
const WEIGHT: &str = "weight";
const LONG: &str = "long";
const WIDE: &str = "wide";
const THICK: &str = "thick";
const CUT: &str = "cut";
const FREEZER: &str = "freezer";
const WATER: &str = "water";
const HOLDS: &str = "holds";
const ICE: &str = "ice";
const ROOM: &str = "room";
const MINUTES: &str = "minutes";

/// Edges of a piece and of a block that are taken, mm.
const PIECE: (f64, f64) = (5.0, 500.0);
const BLOCK: (f64, f64) = (5.0, 2000.0);

/// Common practice, no source.
const SAW: &str = "Ice slips: dry hands, a cloth under it, and cut away from you.";

impl Tool for IceForm {
    fn layout(&self, bench: &Bench) -> Vec<Block> {
        let mut blocks = vec![Block::chips::<Ask>("ask", "What is asked", false)];
        match self.ask() {
            Ask::Night => {
                blocks.extend(from_spec::fields(Route::Ice, &self.from_spec, None, bench));
                blocks.extend([
                    Block::amount(SERVES, "Serves", Keys::Count),
                    Block::amount(MADE_WITH, "Stirred or shaken, each", Keys::Weight),
                    Block::amount(GLASS, "In the glass, each", Keys::Weight),
                    Block::amount(TUBS, "For the tubs", Keys::Weight),
                    Block::amount(MELTS, "Melts before use", Keys::Percent),
                    Block::amount(BAG, "A bag holds", Keys::Weight),
                    Block::Pictures(Vec::new()),
                    Block::Table("", Vec::new()),
                ]);
            }
            Ask::Pieces => blocks.extend(self.layout_pieces()),
            Ask::Clear => blocks.extend([
                Block::amount(THICK, "Clear ice, thick, mm", Keys::Count),
                Block::amount(LONG, "Tub, long, mm", Keys::Count),
                Block::amount(WIDE, "Tub, wide, mm", Keys::Count),
                Block::amount(FREEZER, "Freezer", Keys::Celsius),
                Block::amount(WATER, "Water goes in at", Keys::Celsius),
                Block::amount(GLASS, "One piece", Keys::Weight),
                self.cut_field(),
                Block::Table("", Vec::new()),
            ]),
            Ask::Melt => blocks.extend([
                Block::amount(ICE, "Ice in the glass", Keys::Weight),
                Block::amount(HOLDS, "Ice and drink together", Keys::Pour),
                Block::amount(ROOM, "Room", Keys::Celsius),
                Block::amount(MINUTES, "After, min", Keys::Count),
                Block::Pictures(Vec::new()),
                Block::Table("", Vec::new()),
            ]),
        }
        blocks
    }

    fn answer(&self, bench: &Bench) -> Answer {
        match self.ask() {
            Ask::Night => self.night(Answer::default(), bench),
            Ask::Pieces => self.pieces(Answer::default(), bench),
            Ask::Clear => self.clear(Answer::default(), bench),
            Ask::Melt => self.melt(Answer::default(), bench),
        }
    }

    fn making(&self, _bench: &Bench) -> Making {
        Making { makes: Makes::Ice, ..Making::default() }
    }

    fn empty(&mut self) {
        for text in [
            &mut self.serves,
            &mut self.made_with,
            &mut self.glass,
            &mut self.tubs,
            &mut self.side,
            &mut self.spear_side,
            &mut self.spear,
            &mut self.sphere,
            &mut self.heap,
            &mut self.weight,
            &mut self.ice,
            &mut self.holds,
        ] {
            text.clear();
        }
    }

    fn take(&mut self, name: &str, text: &str) {
        let field = match name {
            SERVES => &mut self.serves,
            MADE_WITH => &mut self.made_with,
            GLASS => &mut self.glass,
            _ => return,
        };
        text.clone_into(field);
        Ask::Night.key().clone_into(&mut self.ask);
    }
}

impl IceForm {
    fn ask(&self) -> Ask {
        Ask::read(&self.ask)
    }

    fn cut_field(&self) -> Block {
        Block::amount(CUT, "A cut takes, mm", Keys::Count)
    }
}

/// A weight of ice: kilograms from one up.
fn weight(mass: Mass, bench: &Bench) -> Figure {
    if mass < Mass::KILOGRAM {
        return bench.weight(mass);
    }
    bench.weighed(mass, Figure::new(text::count(mass.g() / 1000.0, bench.decimal), "kg"))
}

/// Millimetres.
fn mm(length: f64, bench: &Bench) -> Figure {
    Figure::new(text::count(length, bench.decimal), "mm")
}

/// Seconds in hours.
fn hours(seconds: f64, bench: &Bench) -> String {
    text::count(seconds / 3600.0, bench.decimal)
}
