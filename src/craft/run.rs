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
        let followers = (0..tasks.len()).filter(|later| tasks[*later].after.contains(&at));
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
        let later = (0..tasks.len()).filter(|later| tasks[*later].after.contains(&at));
        let follows = later.map(|later| rest[later]).max().unwrap_or(0);
        rest[at] = follows + i64::from(tasks[at].work) + i64::from(tasks[at].wait);
    }
    rest
}

#[cfg(test)]
mod tests {
    use super::*;

    fn task(work: u32, wait: u32, after: &[usize]) -> Task {
        Task { work, wait, after: after.to_vec() }
    }

    /// Ready at 100, all independent: 10 of work and a wait of 5 begin at 85 and hold the hands to 95; 10 of work before it
    /// cannot begin at 90, so at 75; 5 of work fit between 95 and 100; what needs no hands waits for nobody.
    #[test]
    fn one_pair_of_hands() {
        let tasks = [task(10, 0, &[]), task(0, 5, &[]), task(5, 0, &[]), task(10, 5, &[])];
        assert_eq!(latest_starts(&tasks, 100), [75, 95, 95, 85]);
        // Nor does what needs no hands keep anybody from working.
        assert_eq!(latest_starts(&[task(10, 0, &[]), task(0, 5, &[])], 100), [90, 95]);
        assert_eq!(latest_starts(&[task(0, 7, &[]), task(10, 5, &[])], 100), [93, 85]);
        // What is needed first begins where the hands are needed next, less its own work.
        assert_eq!(latest_starts(&[task(10, 0, &[]), task(10, 5, &[0])], 100), [75, 85]);
        // A wait of 30 after 10 of work: 60, then 20 more of work from 80.
        assert_eq!(latest_starts(&[task(10, 30, &[]), task(20, 0, &[0])], 100), [40, 80]);
    }

    /// From 0: the step after which 50 are still to wait goes first, to 10, though it stands second; the other to 20.
    #[test]
    fn the_longest_wait_goes_first() {
        let due = |count: usize| vec![Progress::Due; count];
        assert_eq!(earliest_ends(&[task(10, 0, &[]), task(10, 50, &[])], &due(2), 0), [20, 60]);
        // The same by what follows it: 10 of work, then 5 and a wait of 40.
        let tasks = [task(10, 20, &[]), task(10, 0, &[]), task(5, 40, &[1])];
        assert_eq!(earliest_ends(&tasks, &due(3), 0), [45, 10, 55]);
        // What needs no hands begins at once, and keeps nobody: 30 of wait beside 10 of work.
        assert_eq!(earliest_ends(&[task(0, 30, &[]), task(10, 50, &[]), task(10, 0, &[])], &due(3), 0), [30, 60, 20]);
        // Long work goes before a shorter wait.
        assert_eq!(earliest_ends(&[task(1, 10, &[]), task(20, 0, &[])], &due(2), 0), [31, 20]);
    }

    /// What is left to itself is over when it was to be, or now if that has passed; what follows begins then.
    #[test]
    fn what_has_been_done_counts() {
        let tasks = [task(10, 30, &[]), task(10, 0, &[0])];
        assert_eq!(earliest_ends(&tasks, &[Progress::OverAt(70), Progress::Due], 50), [70, 80]);
        assert_eq!(earliest_ends(&tasks, &[Progress::OverAt(20), Progress::Due], 50), [50, 60]);
        assert_eq!(earliest_ends(&tasks, &[Progress::Done, Progress::Due], 50), [50, 60]);
    }
}
