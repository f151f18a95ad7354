//! A run sheet: what must start when, working back from when it must be ready.

use std::ops::Range;

/// A step: hands on for a while, then left to itself. Times in seconds.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Task {
    /// Hands on.
    pub work: u32,
    /// Left to itself.
    pub wait: u32,
    /// Steps before it in the list that must be over first, waits and all.
    pub after: Vec<usize>,
}

/// What has been done of a step. Times in seconds on any clock.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Progress {
    /// Nothing yet.
    #[default]
    Due,
    /// Left to itself, and over then.
    OverAt(i64),
    /// Over.
    Done,
}

/// The latest start of each step, so that everything is over when `ready`: never later than what follows it allows, and
/// with one pair of hands. Steps stand in the order in which they may be done.
#[must_use]
pub fn latest_starts(tasks: &[Task], ready: i64) -> Vec<i64> {
    let mut starts = vec![ready; tasks.len()];
    let mut hands: Vec<Range<i64>> = Vec::new();
    for at in (0..tasks.len()).rev() {
        let followers = (at + 1..tasks.len()).filter(|later| tasks[*later].after.contains(&at));
        let end = followers.map(|later| starts[later]).min().unwrap_or(ready);
        let work = i64::from(tasks[at].work);
        let start = free_before(end - i64::from(tasks[at].wait) - work, work, &hands);
        starts[at] = start;
        if work > 0 {
            hands.push(start..start + work);
        }
    }
    starts
}

/// The latest time, not after `start`, at which the hands are free for so long.
fn free_before(mut start: i64, work: i64, hands: &[Range<i64>]) -> i64 {
    while let Some(busy) = hands.iter().find(|busy| work > 0 && start < busy.end && busy.start < start + work) {
        start = busy.start - work;
    }
    start
}

/// When each step can be over, from `now` on and with what has been done.
#[must_use]
pub fn earliest_ends(tasks: &[Task], progress: &[Progress], now: i64) -> Vec<i64> {
    let mut ends: Vec<i64> = Vec::new();
    let mut free = now;
    for (task, done) in tasks.iter().zip(progress) {
        let (work, wait) = (i64::from(task.work), i64::from(task.wait));
        let end = match done {
            Progress::Done => now,
            Progress::OverAt(at) => (*at).max(now),
            Progress::Due => {
                let from = task.after.iter().filter_map(|before| ends.get(*before)).copied().max().unwrap_or(now);
                let start = from.max(free);
                free = start + work;
                start + work + wait
            }
        };
        ends.push(end);
    }
    ends
}
