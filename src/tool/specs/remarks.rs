//! What the screens of the book remark: a backup that is due.

use crate::book::DEMO;
use crate::screen::Bench;

/// Days after which a backup is old.
pub(super) const OLD_DAYS: u64 = 30;
const DAY: u64 = 24 * 60 * 60 * 1000;
/// Specs that are quickly written again.
const FEW: usize = 5;
/// Whole days since the last backup.
pub(super) fn age(bench: &Bench) -> Option<u64> {
    Some(bench.clock.now.saturating_sub(bench.book.last_backup?) / DAY)
}

/// A word where a backup is due: there is something to lose, and none is recent.
pub(super) fn reminder(bench: &Bench) -> Option<String> {
    let own = bench.book.cards.iter().filter(|entry| !entry.id.starts_with(DEMO)).count();
    match age(bench) {
        _ if own < FEW => None,
        None => Some("Never backed up. Backup saves everything in one file.".into()),
        Some(days) if days > OLD_DAYS => Some(format!("Last backup {days} days ago. Save one in Backup.")),
        Some(_) => None,
    }
}
