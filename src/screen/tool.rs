//! What every tool can do: lay itself out, and answer.

use super::plan::Making;
use super::{Answer, Bench, Block, Fields};

/// A tool: a form that lays itself out and answers.
pub trait Tool: Fields {
    /// Whether its strip needs room for two figures.
    fn is_tall(&self) -> bool {
        false
    }

    /// What the button that empties it says; empty for none.
    fn empty_label(&self, _bench: &Bench) -> &'static str {
        "Empty"
    }

    /// The fields, with whatever stands between them.
    fn layout(&self, bench: &Bench) -> Vec<Block>;

    /// What to show for what was typed.
    fn answer(&self, bench: &Bench) -> Answer;

    /// Takes in the texts of the record that is open, lays itself out and answers. Whatever both need is worked out once.
    fn show(&mut self, bench: &Bench) -> (Vec<Block>, Answer) {
        (self.layout(bench), self.answer(bench))
    }

    /// What it makes and of what, whatever the amounts are.
    fn making(&self, _bench: &Bench) -> Making {
        Making::default()
    }

    /// Empties the amounts and keeps the choices.
    fn empty(&mut self);

    /// Takes an amount carried over from another tool. Names it does not know are ignored.
    fn take(&mut self, name: &str, text: &str);
}
