//! Two texts beside each other, line by line: what stayed, what went, what came.

/// Most lines of either text, without those that both begin and end with, that are matched one by one; more are one block
/// that went and one that came.
const MOST: usize = 200;

/// A line of two texts: of both, where it stayed; of the first alone, where it went; of the second alone, where it came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Compare<'a> {
    /// It stands in both.
    Stayed(&'a str),
    /// It stands in the first.
    Went(&'a str),
    /// It stands in the second.
    Came(&'a str),
}

/// The lines of a text, without blanks about them; none that are empty.
fn lines(text: &str) -> Vec<&str> {
    text.lines().map(str::trim).filter(|line| !line.is_empty()).collect()
}

/// How two texts differ, with as many lines as can be left where they are (longest common subsequence); at the same place
/// what went stands before what came.
#[must_use]
pub fn compare<'a>(before: &'a str, after: &'a str) -> Vec<Compare<'a>> {
    let (before, after) = (lines(before), lines(after));
    let head = before.iter().zip(&after).take_while(|(a, b)| a == b).count();
    let (left, right) = (&before[head..], &after[head..]);
    let tail = left.iter().rev().zip(right.iter().rev()).take_while(|(a, b)| a == b).count();
    let (left, end) = left.split_at(left.len() - tail);
    let right = &right[..right.len() - tail];
    let mut found: Vec<Compare<'a>> = before[..head].iter().copied().map(Compare::Stayed).collect();
    if left.len() <= MOST && right.len() <= MOST {
        matched(left, right, &mut found);
    } else {
        found.extend(left.iter().copied().map(Compare::Went));
        found.extend(right.iter().copied().map(Compare::Came));
    }
    found.extend(end.iter().copied().map(Compare::Stayed));
    found
}

/// Matches lines by the usual table: how many can be matched of what is left, from each place in both on.
fn matched<'a>(left: &[&'a str], right: &[&'a str], found: &mut Vec<Compare<'a>>) {
    let wide = right.len() + 1;
    let mut longest = vec![0_u16; (left.len() + 1) * wide];
    for (row, a) in left.iter().enumerate().rev() {
        for (column, b) in right.iter().enumerate().rev() {
            let at = row * wide + column;
            longest[at] = if a == b { longest[at + wide + 1] + 1 } else { longest[at + wide].max(longest[at + 1]) };
        }
    }
    let (mut row, mut column) = (0, 0);
    loop {
        let at = row * wide + column;
        match (left.get(row), right.get(column)) {
            (Some(a), Some(b)) if a == b => {
                found.push(Compare::Stayed(a));
                (row, column) = (row + 1, column + 1);
            }
            (Some(a), b) if b.is_none() || longest[at + wide] >= longest[at + 1] => {
                found.push(Compare::Went(a));
                row += 1;
            }
            (_, Some(b)) => {
                found.push(Compare::Came(b));
                column += 1;
            }
            _ => return,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(before: &str, after: &str) -> String {
        let sign = |line: Compare| match line {
            Compare::Stayed(line) => format!("={line}"),
            Compare::Went(line) => format!("-{line}"),
            Compare::Came(line) => format!("+{line}"),
        };
        compare(before, after).into_iter().map(sign).collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn most_lines_stay() {
        for (before, after, expected) in [
            ("", "", ""),
            ("a\nb", "a\nb", "=a =b"),
            ("a\n\n  b ", "a\r\nb\n", "=a =b"),
            ("", "a", "+a"),
            ("a", "", "-a"),
            ("a\nb\nc", "a\nx\nc", "=a -b +x =c"),
            // The example of Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms (from memory): a longest of four.
            ("a\nb\nc\nb\nd\na\nb", "b\nd\nc\na\nb\na", "-a =b -c -b =d +c =a =b +a"),
            ("a\na", "a\na\na", "=a =a +a"),
        ] {
            assert_eq!(shown(before, after), expected, "{before:?} {after:?}");
        }
    }

    #[test]
    fn of_very_many_lines_what_went_and_what_came_are_blocks() {
        let long = |sign: &str| (0..=MOST).map(|at| format!("{sign}{at}")).collect::<Vec<_>>().join("\n");
        let before = format!("top\n{}\nin both\nend", long("a"));
        let after = format!("top\n{}\nin both\nx\nend", long("b"));
        let found = compare(&before, &after);
        assert_eq!(found.iter().filter(|line| matches!(line, Compare::Stayed(_))).count(), 2);
        assert_eq!(found.first(), Some(&Compare::Stayed("top")));
        assert_eq!(found.len(), 2 + 2 * (MOST + 2) + 1);
    }
}
