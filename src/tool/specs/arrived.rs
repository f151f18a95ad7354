//! One spec that came from elsewhere: read as it is made, before anything is taken.

use super::card::{Read, way_at};
use crate::book::{Card, Import, Standing};
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Stands};

/// Whether an import is one spec and nothing else.
pub(super) fn is_one_spec(import: &Import, bench: &Bench) -> bool {
    let Import { cards, own, runs, refused, .. } = import;
    let Stands { settings, tools, aside, .. } = &bench.at_hand.stands;
    cards.len() == 1
        && own.is_empty()
        && runs.is_empty()
        && refused.is_empty()
        && !settings
        && tools.is_empty()
        && *aside == 0
}

/// Its screen.
pub(super) fn show(import: &Import, at: &str, bench: &Bench) -> (Vec<Block>, Answer) {
    let nothing = Card::default();
    let (id, card) = import.cards.first().map_or(("", &nothing), |(id, card)| (id.as_str(), card));
    let at = way_at(at, card);
    let standing = import.card_standing(&bench.book, 0);
    let came = match bench.at_hand.is_by_link {
        true => "It came inside the link; nothing was sent anywhere.",
        false => "It is read, and not kept until you say.",
    };
    let words = match standing {
        Standing::New => format!("Not yours yet. {came}"),
        Standing::Differing => format!("Not yours yet: you have another of it. {came}"),
        Standing::Same => "You have this one already.".into(),
    };
    let (blocks, mut answer) = Read { card, at, id: None, bench }.show(vec![Block::Caution(words)]);
    answer.cautions.extend(import.remarks.iter().cloned());
    let away = Button::new("Not now", Act::PutAway);
    answer.foot = match standing {
        Standing::New => vec![Button::new("Keep it", Act::TakeNew), away],
        Standing::Differing => {
            vec![Button::new("Keep both", Act::TakeBoth), Button::new("Replace mine", Act::TakeAll), away]
        }
        Standing::Same => {
            vec![Button::new("Open mine", Act::Go(Route::Card.href_with("id", id))), Button::new("Close", Act::PutAway)]
        }
    };
    (blocks, answer)
}
