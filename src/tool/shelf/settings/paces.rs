//! How fast drinks chill here, by method: the texts of the shelf, and what they are read as.

use super::ShelfForm;
use crate::craft::chill::Pace;
use crate::screen::pad::Keys;
use crate::screen::{Bench, Block, Problem};

/// Names and labels of the fields, in the order of the methods.
const FIELDS: [(&str, &str); 6] = [
    ("pace_stir", "Stirred"),
    ("pace_shake", "Shaken"),
    ("pace_throw", "Thrown"),
    ("pace_swizzle", "Swizzled"),
    ("pace_build", "On crushed ice"),
    ("pace_block", "Over a block"),
];

/// The fields, and what they are.
pub(super) fn fields() -> impl Iterator<Item = Block> {
    let heading = Block::Heading("Your own chill: seconds to 95 % of the water");
    let remark = Block::Remark("Empty counts as usual. “Weigh mine” in Chill works them out.".into());
    let fields = FIELDS.map(|(name, label)| Block::amount(name, label, Keys::Seconds));
    [heading].into_iter().chain(fields).chain([remark])
}

/// How fast, by method; as usual where nothing is typed, or nothing that can be read.
pub(super) fn read(shelf: &ShelfForm, bench: &Bench, problems: &mut Vec<Problem>) -> [Pace; 6] {
    let texts = [
        &shelf.pace_stir,
        &shelf.pace_shake,
        &shelf.pace_throw,
        &shelf.pace_swizzle,
        &shelf.pace_build,
        &shelf.pace_block,
    ];
    let mut paces = [Pace::Usual; 6];
    for ((pace, text), (field, _)) in paces.iter_mut().zip(texts).zip(FIELDS) {
        match bench.seconds(field, text, problems) {
            Some(seconds) if (1.0..=3_600.0).contains(&seconds) => *pace = Pace::to_95(seconds),
            Some(_) => problems.push(Problem::new(field, "Type 1 to 3 600 s; nothing for what is usual.")),
            None => {}
        }
    }
    paces
}
