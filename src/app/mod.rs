//! The app: it draws what the desk says is to be drawn, hands acts and news to it, and does the effects it is handed.
//!
//! `draw` turns a view into pieces of a page, as plain data; the rest needs a browser. Nothing here names a tool.

#[cfg(feature = "app")]
mod attributes;
#[cfg(feature = "app")]
mod browser;
pub mod draw;
#[cfg(feature = "app")]
mod effects;
#[cfg(feature = "app")]
mod element;
#[cfg(feature = "app")]
mod listen;
#[cfg(feature = "app")]
mod shown;
#[cfg(feature = "app")]
mod tab;

#[cfg(feature = "app")]
pub use tab::start;
