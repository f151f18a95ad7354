//! What else can be done with a spec: made into other things, handed on, copied, deleted.

use super::{CardForm, Read};
use crate::book::{Card, Origin, Own, Way};
use crate::quantity::Ratio;
use crate::reading::from_spec::FromSpec;
use crate::reading::{Contents, from_spec, label, links, named, of_form, origin};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Face, Strip, Tone, form_of};
use crate::text;
use crate::tool::specs::served::{Served, served};
use crate::tool::specs::sides;

impl CardForm {
    /// The screen of it.
    pub(super) fn more(&self, card: &Card, way: &Way, bench: &Bench) -> (Vec<Block>, Answer) {
        let read = Contents::of(&way.lines, bench);
        let served = served(way, &read, bench);
        let mut answer = Answer { name: named(&card.name), ..Answer::default() };
        answer.strip =
            Strip { also: "Make something of it, or hand it on".into(), tone: Tone::Answer, ..Strip::default() };
        let at = self.at.parse().unwrap_or(0);
        answer.text = Some(Read { card, at, id: Some(&self.id), bench }.as_text(way, &read));
        answer.head = vec![Button::new("Done", Act::Show(Face::Read))];
        answer.foot = vec![Button::new("Taste", Act::Show(Face::Taste))];
        let mut blocks = Vec::new();
        if card.ways.len() > 1 {
            answer.carry("Compare", Route::Sides.href_with(sides::ALL, &self.id));
        }
        if !read.lines.is_empty() {
            carry(&mut answer, card, way, ((&self.id, at), &read, &served), bench);
        }
        blocks.push(Block::Heading("Hand it on"));
        blocks.push(Block::Buttons(vec![
            Button::new("Share as a link", Act::Share),
            Button::new("Print", Act::Print),
            Button::new("Save as text", Act::Text),
            Button::new("Save as a recipe file", Act::Recipe),
        ]));
        blocks.extend(self.shared(bench));
        blocks.push(Block::Heading("In the book"));
        let mut buttons = vec![Button::new("Duplicate", Act::Duplicate), Button::new("Delete", Act::Empty)];
        if read.is_something() {
            buttons.splice(1..1, origin::to_keep(self.prep(card, way, &read, bench), "Keep as an ingredient", bench));
        }
        blocks.push(Block::Buttons(buttons));
        (blocks, answer)
    }

    /// It as an ingredient of the bar's own, made of its lines.
    fn prep(&self, card: &Card, way: &Way, read: &Contents, bench: &Bench) -> Box<Own> {
        let drunk = read.drunk(bench).0;
        let from = FromSpec::of(&format!("{}/{}", self.id, self.at), bench);
        Box::new(Own {
            name: if card.ways.len() > 1 { of_form(card, self.at.parse().unwrap_or(0)) } else { named(&card.name) },
            like: origin::like(&drunk).to_owned(),
            // What comes through a milk wash is not what goes in.
            holds: if drunk == read.mix { String::new() } else { text::whole_figures(&drunk, bench.decimal) },
            parts: way.lines.clone(),
            gives: way.gives.clone(),
            from: from.as_ref().map_or_else(Origin::default, origin::of_form),
            ..Own::default()
        })
    }

    /// The link that it has been made into, with its code.
    fn shared(&self, bench: &Bench) -> Vec<Block> {
        let Some(link) = bench.at_hand.link_of(&self.id) else { return Vec::new() };
        let code = match text::qr(link) {
            Some(code) => Block::Code(code, link.to_owned()),
            None => Block::Remark("Too long for a code: copy the link.".into()),
        };
        let copy = Block::Buttons(vec![Button::new("Copy the link", Act::CopyLink)]);
        vec![code, copy, Block::Remark("The whole spec is in the link. Nothing is kept on any server.".into())]
    }
}

/// Where its lines can go next.
fn carry(
    answer: &mut Answer,
    card: &Card,
    way: &Way,
    (which, read, served): ((&str, usize), &Contents, &Served),
    bench: &Bench,
) {
    let lines = &way.lines;
    let (id, at) = which;
    answer.carry("Balance", from_spec::href(Route::Balance, id, at, bench));
    let serves = bench.at_hand.in_hand(&form_of(id, at)).serves;
    let many = if serves > 1 { format!("&serves={serves}") } else { String::new() };
    answer.carry("Cost", from_spec::href(Route::Cost, id, at, bench) + &many);
    let buy = match serves {
        0 | 1 => from_spec::href(Route::Buy, id, at, bench),
        serves => Route::Buy.href_with("serves", &serves.to_string()),
    };
    answer.carry("To buy", buy);
    answer.carry("Chill it", from_spec::href(Route::Chill, id, at, bench));
    answer.carry("Scale it", from_spec::href(Route::Scale, id, at, bench) + &many);
    answer.carry("Does it fit?", from_spec::href(Route::Glass, id, at, bench));
    let serves = match served.one {
        Some(_) => from_spec::href(Route::Serves, id, at, bench),
        None => Route::Serves.href_with("made", &bench.carried(served.volume)),
    };
    answer.carry("Into serves", serves);
    links::fruit(&read.lines, Ratio::ONE, answer, bench);
    links::fat_wash(&read.lines, Ratio::ONE, answer, bench);
    answer.carry("A cordial for its juice", from_spec::href(Route::Cordial, id, at, bench));
    links::milk_wash(read, served.is_washed, lines, answer, bench);
    answer.carry("Bubbles for it", from_spec::href(Route::Bubbles, id, at, bench));
    answer.carry("Label it", label::href(&from_spec::facts(id, card, at, bench)));
}
