//! The ice that a drink meets, which it is aimed at behind.

use super::AimForm;
use crate::quantity::Ratio;
use crate::reading::chilled::{Chilled, serve_of};
use crate::reading::from_spec::FromSpec;
use crate::screen::Bench;
use crate::substance::mix::Mix;

/// The ice that a drink meets.
pub(super) struct Iced<'a> {
    pub(super) chilled: Option<Chilled>,
    pub(super) bench: &'a Bench,
}

impl Iced<'_> {
    /// So many serves as they are in the glass; as they were poured where nothing is known of their ice.
    pub(super) fn serve(&self, mix: &Mix, serves: Ratio) -> Mix {
        let one = serve_of(mix, serves);
        let water = self.chilled.and_then(|chilled| chilled.water(&one, self.bench));
        water.map_or(*mix, |water| (one + Mix::water(water)) * serves)
    }

    /// ", as stirred 30 s".
    pub(super) fn words(&self) -> String {
        self.chilled.map_or_else(String::new, |chilled| format!(", {}", chilled.words(self.bench)))
    }
}

impl AimForm {
    /// What the ice of the form that it came from does to it.
    pub(super) fn ice<'a>(&self, bench: &'a Bench) -> Iced<'a> {
        let chilled = FromSpec::of(&self.from_spec, bench).and_then(|form| Chilled::of(form.way(), bench));
        Iced { chilled, bench }
    }
}
