//! A label as lines of text and a code, placed in millimetres: drawn alike on screen, on paper and in a picture.

use crate::text::Qr;

/// What stands on a label.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stamped {
    /// What it is.
    pub name: String,
    /// When it was made.
    pub made: String,
    /// When it must be used.
    pub use_by: String,
    /// Strength, and what is poured of it.
    pub serve: String,
    /// Allergens.
    pub contains: String,
    /// Anything else.
    pub note: String,
    /// The code of its spec.
    pub code: Option<Qr>,
}

/// A size, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Size {
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) margin: f64,
}

/// A label, drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Width in mm.
    pub width: f64,
    /// Height in mm.
    pub height: f64,
    /// Its lines.
    pub texts: Vec<Placed>,
    /// Its code, and where: left, top, side.
    pub code: Option<(Qr, [f64; 3])>,
    /// The key of the paper.
    pub paper: &'static str,
    /// How many to print.
    pub copies: usize,
}

/// A line of text in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// What it says.
    pub words: String,
    /// Left end of its baseline, mm.
    pub x: f64,
    /// Its baseline, mm.
    pub y: f64,
    /// Size of its letters, mm.
    pub size: f64,
    /// Whether it is heavy.
    pub is_heavy: bool,
}

/// Mean width of a letter of a sans face as a part of its size, with room to spare: light, heavy.
const LETTER: [f64; 2] = [0.56, 0.62];
/// A line's height as a part of the size of its letters.
const LINE: f64 = 1.22;

/// The side of a code on a label of this size.
pub(super) fn code_side(size: Size) -> f64 {
    (size.height - 2.0 * size.margin).min(size.width * 0.42)
}

/// A label drawn on a size: letters as large as it takes them.
pub(super) fn draw(stamped: &Stamped, size: Size, paper: &'static str, copies: usize) -> Drawing {
    let side = code_side(size);
    let code =
        stamped.code.clone().map(|code| (code, [size.width - size.margin - side, (size.height - side) / 2.0, side]));
    let gap = if code.is_some() { side + 1.0 } else { 0.0 };
    let (width, height) = (size.width - 2.0 * size.margin - gap, size.height - 2.0 * size.margin);
    let rest = [&stamped.made, &stamped.use_by, &stamped.serve, &stamped.contains, &stamped.note];
    let rest: Vec<&str> = rest.into_iter().map(String::as_str).filter(|text| !text.is_empty()).collect();
    // The largest letters that fit, down to what can still be read.
    let mut letters = height / 6.5;
    let laid = |letters: f64| {
        let name = wrapped(&stamped.name, width, letters * 1.55, true);
        let rest: Vec<(String, bool)> = rest
            .iter()
            .flat_map(|text| {
                let heavy = text.starts_with("Use by") || text.starts_with("Contains");
                wrapped(text, width, letters, heavy).into_iter().map(move |line| (line, heavy))
            })
            .collect();
        let tall = (name.len() as f64 * letters * 1.55 + rest.len() as f64 * letters) * LINE;
        (name, rest, tall)
    };
    let (mut name, mut others, mut tall) = laid(letters);
    while tall > height && letters > 1.2 {
        letters *= 0.95;
        (name, others, tall) = laid(letters);
    }
    let mut y = size.margin;
    let mut texts = Vec::new();
    let lines = name
        .into_iter()
        .map(|line| (line, letters * 1.55, true))
        .chain(others.into_iter().map(|(line, heavy)| (line, letters, heavy)));
    for (words, letters, is_heavy) in lines {
        // What does not fit even in the smallest letters is left off at the end, not printed over the edge.
        if y + letters * LINE > size.height - size.margin * 0.5 {
            break;
        }
        texts.push(Placed { words, x: size.margin, y: y + letters * 0.95, size: letters, is_heavy });
        y += letters * LINE;
    }
    Drawing { width: size.width, height: size.height, texts, code, paper, copies }
}

/// Words in lines of a width, broken between them, and within one that is too long by itself.
fn wrapped(text: &str, width: f64, letters: f64, is_heavy: bool) -> Vec<String> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let most = ((width / (letters * LETTER[usize::from(is_heavy)])).floor() as usize).max(4);
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let mut word: Vec<char> = word.chars().collect();
        loop {
            let line = lines.last_mut().map_or(0, |line| line.chars().count());
            let joint = usize::from(line > 0);
            if line + joint + word.len() <= most {
                if let Some(last) = lines.last_mut() {
                    last.push_str(if joint > 0 { " " } else { "" });
                    last.extend(word);
                }
                break;
            }
            if line > 0 {
                lines.push(String::new());
            } else {
                let rest = word.split_off(most.min(word.len()));
                lines.push(String::new());
                let at = lines.len() - 2;
                lines[at] = word.into_iter().collect();
                word = rest;
            }
        }
    }
    lines.retain(|line| !line.is_empty());
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    const TAPE: Size = Size { width: 50.0, height: 25.0, margin: 2.0 };

    #[test]
    fn everything_stays_on_the_label() {
        for length in [1, 10, 40, 200, 2_000] {
            let long: String = "abcdefghi ".repeat(length / 10 + 1).chars().take(length).collect();
            let stamped = Stamped {
                name: long.clone(),
                made: "Made Wed 25 Nov, 15:30".into(),
                use_by: "Use by Tue 1 Dec 2026".into(),
                contains: format!("Contains {long}"),
                ..Stamped::default()
            };
            let drawn = draw(&stamped, TAPE, "tape", 1);
            assert!(!drawn.texts.is_empty());
            for text in &drawn.texts {
                let wide = text.words.chars().count() as f64 * text.size * LETTER[usize::from(text.is_heavy)];
                assert!(text.x + wide <= 48.01 || text.words.chars().count() <= 4, "{text:?}");
                assert!(text.y < 24.0 && text.size > 1.0, "{text:?}");
            }
        }
    }

    #[test]
    fn breaks_between_words() {
        assert_eq!(wrapped("Orchard cordial, stirred", 22.0, 3.0, true), ["Orchard", "cordial,", "stirred"]);
        assert_eq!(wrapped("", 22.0, 3.0, true), Vec::<String>::new());
    }
}
