//! A spec being made: what is seen of it, its ticks and serves, the waits begun at its steps. All of it is this tab's own,
//! stays while one looks elsewhere, and is not kept.

use super::effect::raise;
use super::view::Due;
use super::{Desk, Effect, World};
use crate::reading::named;
use crate::screen::clock::{lasting, to_go};
use crate::screen::route::Route;
use crate::screen::{Act, Begun, Face, InHand, MOST_SERVES, form_of};
use crate::tool::batch::bottle_it;
use crate::tool::batch::run::Timer;
use crate::tool::specs::card;

/// Forms that are remembered as they are in hand.
const MOST_IN_HAND: usize = 50;

impl Desk {
    /// Does something to the spec that is open that is not kept.
    pub(super) fn make(&mut self, act: &Act, world: &World<'_>) {
        let Some((entry, at)) = self.open_spec() else {
            // A batch is ticked as a spec is; it has no steps and no faces.
            return self.tick(act, bottle_it::IN_HAND);
        };
        let which = form_of(&entry.id, at);
        match act {
            Act::Show(face) => {
                self.sight.activate(None);
                if *face == Face::Taste && card::is_untold(self.texts(self.route)) {
                    self.type_into(self.route, card::OF, entry.id.clone(), world);
                }
                self.show_face(entry.id.clone(), *face);
                self.effects.push(Effect::Begin(self.route.row().label));
            }
            Act::Serves(serves) => self.in_hand(&which).serves = (*serves).clamp(1, MOST_SERVES),
            Act::Begin(step, lasts) => {
                self.effects.push(raise("meniscus-arm"));
                let way = entry.value.ways.get(at).map_or("", |way| way.name.trim());
                let comma = if way.is_empty() { "" } else { ", " };
                let name = format!("{}{comma}{way}", named(&entry.value.name));
                let step = step.clone();
                self.end(&which, &step);
                self.bench.at_hand.begun.push(Begun { which, step, name, at: world.now, lasts: *lasts });
                self.beat();
            }
            Act::End(step) => {
                self.end(&which, step);
                self.beat();
            }
            act => self.tick(act, &which),
        }
    }

    /// Ticks a line of what is in hand, or takes its tick away, or all of them.
    fn tick(&mut self, act: &Act, which: &str) {
        match act {
            Act::TickLine(at, typed) => {
                let (line, in_hand) = ((*at, typed.clone()), self.in_hand(which));
                match in_hand.ticked.iter().position(|there| *there == line) {
                    Some(there) => drop(in_hand.ticked.remove(there)),
                    None => in_hand.ticked.push(line),
                }
            }
            Act::UntickLines => self.in_hand(which).ticked.clear(),
            _ => {}
        }
    }

    /// What is seen of a spec from now on.
    pub(super) fn show_face(&mut self, id: String, face: Face) {
        self.bench.at_hand.face = (id, face);
    }

    /// What is written on an empty spec is written with its fields in sight, which then stay.
    pub(super) fn keep_fields(&mut self) {
        if let Some((entry, _)) = self.open_spec().filter(|(entry, _)| card::is_blank(&entry.value)) {
            self.show_face(entry.id.clone(), Face::Change);
        }
    }

    fn end(&mut self, which: &str, step: &str) {
        self.bench.at_hand.begun.retain(|begun| begun.which != which || begun.step != step);
    }

    /// What is in hand of a form, to be changed.
    fn in_hand(&mut self, which: &str) -> &mut InHand {
        let in_hand = self.bench.at_hand.in_hand(which);
        let all = &mut self.bench.at_hand.in_hand;
        all.retain(|there| there.which != which);
        if all.len() == MOST_IN_HAND {
            all.remove(0);
        }
        all.push(in_hand);
        let last = all.len() - 1;
        &mut all[last]
    }

    /// Whether the screen shown counts a wait of its own.
    pub(super) fn counts(&self) -> bool {
        self.route == Route::Card && !self.bench.at_hand.begun.is_empty()
    }

    /// The waits begun at steps of specs.
    pub(super) fn begun(&self) -> Vec<Timer> {
        let timer = |begun: &Begun| {
            let (id, at) = begun.which.rsplit_once('#').unwrap_or((&begun.which, "0"));
            Timer {
                key: format!("{}/{}/{}", begun.which, begun.step, begun.at),
                of: (begun.which.clone(), begun.step.clone()),
                words: format!("{}, {}", begun.step, begun.name),
                due: begun.due(),
                href: format!("{}&at={at}", Route::Card.href_with("id", id)),
            }
        };
        self.bench.at_hand.begun.iter().map(timer).collect()
    }

    /// The wait of a spec that is over first. While it runs it counts at its own step, where that is in sight.
    pub(super) fn due_of_spec(&self) -> Option<Due> {
        let now = self.bench.clock.now();
        let here = (self.route == Route::Card).then(|| self.open_spec()).flatten();
        let here = here.map(|(entry, at)| format!("{}&at={at}", Route::Card.href_with("id", &entry.id)));
        let elsewhere = |timer: &Timer| timer.due <= now || here.as_ref() != Some(&timer.href);
        let timer = self.begun().into_iter().filter(elsewhere).min_by_key(|timer| timer.due)?;
        let seconds = (timer.due - now + 999).div_euclid(1000);
        let is_over = seconds <= 0;
        let figure = if is_over { format!("{} over", lasting((now - timer.due) / 1000)) } else { to_go(seconds) };
        Some(Due { figure, words: timer.words, is_over, href: timer.href })
    }
}
