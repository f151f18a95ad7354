//! A difference of two texts holds both.

use proptest::prelude::*;

use meniscus::book::{Compare, compare};

/// Lines of few letters, so that many are alike; some are empty, some have blanks about them.
fn texts() -> impl Strategy<Value = String> {
    let line = prop_oneof![4 => "[abc]{1,2}", 1 => " {0,2}[ab]?\\t?", 1 => "\\PC{0,12}"];
    prop::collection::vec(line, 0..24).prop_map(|lines| lines.join("\n"))
}

fn lines(text: &str) -> Vec<&str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect()
}

/// How many lines the longest common subsequence has, by trying: for each line of the one, with it and without.
fn longest(a: &[&str], b: &[&str]) -> usize {
    let mut row = vec![0_usize; b.len() + 1];
    for line in a {
        let before = row.clone();
        for (at, other) in b.iter().enumerate() {
            row[at + 1] = if line == other { before[at] + 1 } else { before[at + 1].max(row[at]) };
        }
    }
    row[b.len()]
}

proptest! {
    #[test]
    fn it_gives_back_both_texts_and_leaves_the_most(before in texts(), after in texts()) {
        let found = compare(&before, &after);
        let side = |pick: fn(&Compare<'_>) -> bool| -> Vec<&str> {
            found.iter().filter(|line| pick(line)).map(|line| match *line {
                Compare::Stayed(line) | Compare::Went(line) | Compare::Came(line) => line,
            }).collect()
        };
        prop_assert_eq!(side(|line| !matches!(line, Compare::Came(_))), lines(&before));
        prop_assert_eq!(side(|line| !matches!(line, Compare::Went(_))), lines(&after));
        let stayed = side(|line| matches!(line, Compare::Stayed(_))).len();
        prop_assert_eq!(stayed, longest(&lines(&before), &lines(&after)));
    }

    /// Of texts too long to be matched line by line, too.
    #[test]
    fn of_long_texts_too(before in prop::collection::vec("[abc]", 150..300), after in prop::collection::vec("[abc]", 150..300)) {
        let (before, after) = (before.join("\n"), after.join("\n"));
        let found = compare(&before, &after);
        let kept = |drops: fn(&Compare<'_>) -> bool| {
            let lines = found.iter().filter(|line| !drops(line)).map(|line| match *line {
                Compare::Stayed(line) | Compare::Went(line) | Compare::Came(line) => line,
            });
            lines.collect::<Vec<_>>().join("\n")
        };
        prop_assert_eq!(kept(|line| matches!(line, Compare::Came(_))), before.clone());
        prop_assert_eq!(kept(|line| matches!(line, Compare::Went(_))), after.clone());
    }
}
