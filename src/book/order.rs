//! Putting a list in order, once for every kind of list.

use std::cmp::Ordering;
use std::sync::Arc;

/// The places of a list of `count` in their order, where it is not in order already; those that are equal stay as they
/// are. `goes_after` says whether what stands at one place belongs after what stands at another.
#[must_use]
pub fn order(count: usize, goes_after: &dyn Fn(usize, usize) -> bool) -> Option<Vec<usize>> {
    if (1..count).all(|at| !goes_after(at - 1, at)) {
        return None;
    }
    let mut sorted: Vec<usize> = (0..count).collect();
    sorted.sort_unstable_by(|a, b| match (goes_after(*a, *b), goes_after(*b, *a)) {
        (true, _) => Ordering::Greater,
        (_, true) => Ordering::Less,
        _ => a.cmp(b),
    });
    Some(sorted)
}

/// Puts records in their order.
pub(super) fn put_in_order<T>(list: &mut Vec<Arc<T>>, goes_after: &dyn Fn(&T, &T) -> bool) {
    if let Some(order) = order(list.len(), &|a, b| goes_after(&list[a], &list[b])) {
        *list = order.into_iter().map(|at| Arc::clone(&list[at])).collect();
    }
}

/// Which names have stood before, by their places.
#[must_use]
pub fn stood_before(names: &[&str]) -> Vec<bool> {
    let order = order(names.len(), &|a, b| names[a] > names[b]).unwrap_or_else(|| (0..names.len()).collect());
    let mut before = vec![false; names.len()];
    for pair in order.windows(2).filter(|pair| names[pair[0]] == names[pair[1]]) {
        before[pair[1]] = true;
    }
    before
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_list_comes_in_order_and_equals_stay_as_they_are() {
        for count in 0..70_u64 {
            for seed in 1..20 {
                let list: Vec<(u64, u64)> = (0..count).map(|at| ((at * 7919 * seed) % 13, at)).collect();
                let mut expected = list.clone();
                expected.sort();
                let sorted = order(list.len(), &|a, b| list[a].0 > list[b].0);
                assert_eq!(sorted.is_none(), list == expected, "{list:?}");
                let sorted: Vec<_> = sorted.into_iter().flatten().map(|at| list[at]).collect();
                assert!(sorted.is_empty() || sorted == expected, "{list:?}");
            }
        }
    }

    #[test]
    fn names_that_stood_before_are_found() {
        for (names, before) in [
            (&["a", "b", "c"][..], &[][..]),
            (&["c", "a", "c", "a"], &[2, 3]),
            (&["b", "b"], &[1]),
            (&["a", "b", "b", "a", "a"], &[2, 3, 4]),
            (&[], &[]),
        ] {
            let found: Vec<bool> = (0..names.len()).map(|at| before.contains(&at)).collect();
            assert_eq!(stood_before(names), found, "{names:?}");
        }
    }
}
