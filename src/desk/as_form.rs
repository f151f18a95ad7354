//! What a tool worked out, kept as a form of a spec; and worked out anew when what it was made from has changed.

use super::{Desk, Effect, World};
use crate::book::{Card, Entry, MOST_WAYS, Origin, Way};
use crate::reading::from_spec::{FROM, FromSpec};
use crate::reading::{free, origin};
use crate::screen::route::Route;
use crate::screen::{Act, Bench, Button, Face};
use crate::store::SaveProblem;
use crate::store::deeds::{self, Deed};
use crate::tool;

impl Desk {
    /// A form more of the spec that it came from; of none, a spec.
    pub(super) fn as_form(&self, way: &Way, world: &World<'_>) -> Result<Deed, SaveProblem> {
        let card = self.bench.book.card(&way.from.spec).filter(|entry| entry.value.ways.len() < MOST_WAYS);
        let Some(entry) = card else {
            let way = Way { from: Origin::default(), ..way.clone() };
            return deeds::new_card_of(way, &(world.fresh)(), world.now);
        };
        let mut card = entry.value.clone();
        let mut way = way.clone();
        // What it is made from gets its key, once.
        let at = FromSpec::of(&self.text(self.route, FROM), &self.bench).map_or(0, |form| form.parts().1);
        if let Some(source) = card.ways.get_mut(at) {
            if source.key.is_empty() {
                source.key = (world.fresh)();
            }
            way.from.form.clone_from(&source.key);
        }
        way.from.texts = tool::typed(self.route, self.texts(self.route), &self.bench);
        let taken = |name: &str| card.ways.iter().any(|way| way.name.trim() == name);
        if taken(&way.name) {
            way.name = free(&way.name, &|name| !taken(name));
        }
        card.ways.push(way);
        let deed = deeds::change(entry, &card, "a form made from another", world.now)?;
        Ok(Deed { open: Some(entry.id.clone()), ..deed })
    }

    /// Goes to a form that was just made: the last of its spec; of a spec of its own, where it gets its name.
    pub(super) fn show_form(&mut self, id: &str, way: &Way) {
        let Some(entry) = self.bench.book.card(id) else { return };
        let (last, is_new) = (entry.value.ways.len().saturating_sub(1), way.from.spec != id);
        self.show_face(id.to_owned(), if is_new { Face::Change } else { Face::Read });
        self.effects.push(Effect::Go(format!("{}&at={last}", Route::Card.href_with("id", id))));
    }

    /// The spec with a form of it worked out anew; none where that cannot be, and why is said.
    pub(super) fn worked_out_anew(&mut self, entry: &Entry<Card>, at: usize) -> Option<Card> {
        let way = entry.value.ways.get(at)?;
        let anew = match tool::worked_out(way, &self.bench) {
            Ok(anew) => anew,
            Err(why) => {
                let label = Route::of_key(&way.from.tool).map_or("its tool", |route| route.row().label);
                let open = Button::new(format!("Open {label}"), Act::OpenTool);
                self.offer(&format!("It can't be worked out anew. {why}"), vec![open]);
                self.sight.is_passing = true;
                return None;
            }
        };
        let mut card = entry.value.clone();
        // What else is said of it is the bar's own.
        let Way { lines, makes, gives, from, .. } = anew;
        card.ways[at] = Way { lines, makes, gives, from, ..way.clone() };
        Some(card)
    }

    /// Goes to the tool that made the form that is open, filled in with what it is made from now; Undo there brings back
    /// what stood in it.
    pub(super) fn open_tool(&mut self, world: &World<'_>) {
        let Some((entry, at)) = self.open_spec() else { return };
        let Some((route, texts)) = entry.value.ways.get(at).and_then(|way| tool::made_by(way, &self.bench)) else {
            return;
        };
        self.note_deed(route.form_key());
        self.replace_form(route, texts, world);
        self.effects.push(Effect::Go(route.href()));
    }
}

/// The spec with a form of it in step again, as it is.
pub(super) fn left_as_it_is(card: &Card, at: usize, bench: &Bench) -> Option<Card> {
    let mut card = card.clone();
    let way = card.ways.get_mut(at)?;
    let lines = origin::source(&way.from, bench)?.lines().to_owned();
    way.from.lines = lines;
    Some(card)
}
