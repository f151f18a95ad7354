//! What the screens of the book remark: a backup that is due, and what Undo would take back.

use crate::book::{Book, DEMO};
use crate::screen::{Answer, Bench};

/// Days after which a backup is old.
pub(super) const OLD_DAYS: u64 = 30;
const DAY: u64 = 24 * 60 * 60 * 1000;
/// Specs that are quickly written again.
const FEW: usize = 5;
/// Whole days since the last backup.
pub(super) fn age(book: &Book) -> Option<u64> {
    Some(book.now.saturating_sub(book.last_backup?) / DAY)
}

/// A word where a backup is due: there is something to lose, and none is recent.
pub(super) fn reminder(book: &Book) -> Option<String> {
    let own = book.cards.iter().filter(|entry| !entry.id.starts_with(DEMO)).count();
    match age(book) {
        _ if own < FEW => None,
        None => Some("Never backed up. Backup saves everything in one file.".into()),
        Some(days) if days > OLD_DAYS => Some(format!("Last backup {days} days ago. Save one in Backup.")),
        Some(_) => None,
    }
}

/// What Undo would take back, where there is something.
pub(super) fn undo_remark(answer: &mut Answer, bench: &Bench) {
    if let Some(words) = &bench.book.last_act {
        answer.remarks.push(format!("Undo takes back: {words}."));
    }
}
