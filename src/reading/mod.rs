//! Reading: what the lines of a spec are read as, and how that is shown in every tool that takes a spec. It names no tool.

mod allergens;
pub(crate) mod bought;
pub(crate) mod cells;
pub(crate) mod chilled;
pub(crate) mod contents;
pub(crate) mod cost;
pub(crate) mod differ;
pub(crate) mod freezer;
pub(crate) mod from_spec;
pub(crate) mod glance;
pub(crate) mod glass;
pub(crate) mod iced;
pub(crate) mod label;
pub(crate) mod links;
mod made_of;
mod name;
mod offered;
pub(crate) mod origin;
pub(crate) mod paid;
mod parts;
pub(crate) mod pours;
pub(crate) mod rows;
mod shares;
pub(crate) mod thing;
pub(crate) mod yields;

pub(crate) use allergens::{about, allergens, asks, cautions, declared};
pub(crate) use cells::four_cells;
pub(crate) use contents::{Content, Contents};
pub(crate) use made_of::{hatch, made_of};
pub(crate) use name::{free, named, of_form, poured_name};
pub(crate) use offered::offered;
pub(crate) use parts::ask_part;
pub(crate) use shares::{card_row, counted_row};

/// A spec of our own to start from.
pub(crate) const EXAMPLE: &str =
    "45 ml pear brandy\n20 ml dry vermouth\n15 ml pear cordial\n2 dash orange bitters\nLemon twist";
/// Shown where a spec is still to be typed.
pub(crate) const PLACEHOLDER: &str = "like 2 oz gin\n3/4 oz lemon juice\n2 dashes bitters";
