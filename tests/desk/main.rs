//! The desk, act by act, on a store that fails on demand: what no browser is needed for.

mod backup;
mod bar;
mod book;
mod buy;
mod change;
mod faults;
#[path = "../faulty/mod.rs"]
mod faulty;
mod frame;
mod from_spec;
mod handed;
mod kept;
mod links;
mod makes;
mod making;
mod pasted;
mod pieces;
mod runs;
mod sides;
mod tabs;
mod tasting;
mod tools;
mod undo;
mod units;
mod words;
