//! The ice that a drink meets, which it is aimed at behind.

use super::AimForm;
use crate::quantity::{Ratio, Temperature};
use crate::reading::Contents;
use crate::reading::chilled::{Chilled, serve_of};
use crate::reading::from_spec::{self, FromSpec};
use crate::screen::{Bench, Block, Opt};
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
    /// The field that takes a spec to be like.
    pub(super) fn like_field(&self, bench: &Bench) -> Block {
        if bench.book.cards.is_empty() {
            return Block::Nothing;
        }
        let mut options = vec![Opt::new("", "as typed, or a step")];
        options.extend(from_spec::listed(false, bench).0);
        if options.iter().all(|option| option.key != self.like) {
            options.push(Opt::new(self.like.as_str(), from_spec::name_of(&self.like, bench)));
        }
        Block::pick("like", "Aim", options)
    }

    /// One serve of the form that it should be like, in its glass.
    pub(super) fn like(&self, bench: &Bench) -> Option<Mix> {
        let form = FromSpec::of(&self.like, bench)?;
        let whole = Contents::of(form.lines(), bench).drunk(bench).0;
        let volume = whole.volume(Temperature::TWENTY).ok()?;
        let part = from_spec::serve(form.way(), &whole, bench).ok().and_then(|serve| serve.over(volume));
        let ice = Iced { chilled: Chilled::of(form.way(), bench), bench };
        Some(ice.serve(&(whole * part.unwrap_or(Ratio::ONE)), Ratio::ONE))
    }

    /// What the ice of the form that it came from does to it.
    pub(super) fn ice<'a>(&self, bench: &'a Bench) -> Iced<'a> {
        let chilled = FromSpec::of(&self.from_spec, bench).and_then(|form| Chilled::of(form.way(), bench));
        Iced { chilled, bench }
    }
}
