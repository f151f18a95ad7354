//! What is typed into a number's field, and the unit it takes there.

use super::Desk;
use super::sight::Typing;
use crate::quantity::Unit;
use crate::screen::pad::{Keys, unit_typed, with_unit_of};
use crate::screen::{Field, Input, Screen};
use crate::text::Dimension;

impl Desk {
    /// A text as it is kept: with the unit that stood in its field, where it is a number without one. While the field is
    /// typed in, it shows what was typed, and the unit dim behind it, so that no caret moves.
    pub(super) fn with_unit(&mut self, name: &str, new: &str) -> String {
        // The screen is as it was drawn before the stroke.
        let Some(Field { name, input: Input::Amount(keys), text, .. }) = self.screen.field(name) else {
            return new.to_owned();
        };
        let typing = self.sight.typing.take().filter(|typing| typing.field == *name && typing.made == *text);
        let stood = typing.map_or_else(|| text.clone(), |typing| typing.stood);
        let kind = if *keys == Keys::Weight { Dimension::Mass } else { Dimension::Either };
        let made = with_unit_of(&stood, new, *keys, &self.bench.reading(kind));
        let says_unit = unit_typed(new).is_some() || (*keys == Keys::Celsius && made == new && !new.is_empty());
        let stood = if says_unit { new.to_owned() } else { stood };
        self.sight.typing = Some(Typing { field: name, typed: new.to_owned(), made: made.clone(), stood });
        made
    }

    /// A text as it was typed, where its field holds it with a unit.
    pub(super) fn as_typed(&self, screen: &Screen) -> Option<(&'static str, String)> {
        let Typing { field, typed, made, .. } = self.sight.typing.as_ref()?;
        (typed != made && screen.field(field)?.text == *made).then(|| (*field, typed.clone()))
    }

    /// The unit that a number typed into a field takes; none while it is asked.
    pub(super) fn lit(&self, field: &Field, keys: Keys) -> Option<Unit> {
        let bare = if keys == Keys::Weight { Unit::Gram } else { self.bench.house.usual_unit };
        let stood = self.sight.typing.as_ref().filter(|typing| typing.field == field.name);
        let stood = || stood.and_then(|typing| unit_typed(&typing.stood));
        // In a line of a spec a number alone counts things.
        let bare = if keys == Keys::Line { None } else { Some(bare) };
        (!field.text.contains('?')).then(|| unit_typed(&field.text).or_else(stood).or(bare)).flatten()
    }
}
