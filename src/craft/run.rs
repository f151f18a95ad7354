//! A run sheet: what must start when, working back from when it must be ready.

use std::ops::Range;

/// How long before it must be ready all is to be over, where nobody says, seconds. Common practice, no source.
pub const USUAL_SLACK: u32 = 30 * 60;
/// How long a bottle that is served cold stands in the cold first, seconds. Common practice, no source.
pub const CHILLS_IN: u32 = 2 * 60 * 60;

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

/// When each step can be over, from `now` on and with what has been done: of the steps that may be begun, the one that
/// can begin first is, and of two the one after which the most is still to wait.
#[must_use]
pub fn earliest_ends(tasks: &[Task], progress: &[Progress], now: i64) -> Vec<i64> {
    let rest = rest_after(tasks);
    let mut ends: Vec<Option<i64>> = progress
        .iter()
        .map(|done| match done {
            Progress::Done => Some(now),
            Progress::OverAt(at) => Some((*at).max(now)),
            Progress::Due => None,
        })
        .collect();
    let mut free = now;
    loop {
        let begins = |at: usize| {
            let after = tasks[at].after.iter().map(|before| ends[*before]).collect::<Option<Vec<i64>>>()?;
            let from = after.into_iter().max().unwrap_or(now).max(now);
            Some(if tasks[at].work > 0 { from.max(free) } else { from })
        };
        let may = (0..tasks.len()).filter(|at| ends[*at].is_none()).filter_map(|at| Some((begins(at)?, at)));
        let Some((start, at)) = may.min_by_key(|(start, at)| (*start, std::cmp::Reverse(rest[*at]), *at)) else {
            break;
        };
        let hands = start + i64::from(tasks[at].work);
        if tasks[at].work > 0 {
            free = hands;
        }
        ends[at] = Some(hands + i64::from(tasks[at].wait));
    }
    ends.into_iter().map(|end| end.unwrap_or(now)).collect()
}

/// How long it takes at least from the start of each step until all that follows it is over.
fn rest_after(tasks: &[Task]) -> Vec<i64> {
    let mut rest = vec![0; tasks.len()];
    for at in (0..tasks.len()).rev() {
        let later = (at + 1..tasks.len()).filter(|later| tasks[*later].after.contains(&at));
        let follows = later.map(|later| rest[later]).max().unwrap_or(0);
        rest[at] = follows + i64::from(tasks[at].work) + i64::from(tasks[at].wait);
    }
    rest
}
