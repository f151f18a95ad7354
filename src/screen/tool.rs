//! What every tool can do: lay itself out, and answer.

use super::plan::Plan;
use super::{Answer, Bench, Block, Fields};

/// A tool: a form that lays itself out and answers.
pub trait Tool: Fields {
    /// Whether its strip needs room for two figures.
    fn is_tall(&self) -> bool {
        false
    }

    /// What the button that empties it says; empty for none.
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        "Clear"
    }

    /// The fields, with whatever stands between them.
    fn layout(&self, bench: &Bench) -> Vec<Block>;

    /// What its answer takes to make, step by step; none where there is nothing to make, or not yet.
    fn plan(&self, _bench: &Bench) -> Option<Plan> {
        None
    }

    /// What to show for what was typed.
    fn answer(&self, bench: &Bench) -> Answer;

    /// Empties the amounts and keeps the choices.
    fn empty(&mut self);

    /// Takes an amount carried over from another tool. Names it does not know are ignored.
    fn take(&mut self, name: &str, text: &str);
}
