//! A label as lines of text and a code, placed in millimetres: drawn alike on screen, on paper and in a picture.

use crate::screen::{Drawing, Placed};
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

/// Smallest letters that are read on a bottle, mm. From memory: 1.2 mm for the height of a small x in the European Union,
/// which is letters of about 2.3 mm; half of that is the least that is printed.
const SMALLEST: f64 = 1.6;

/// The width of a letter of a sans face as a part of its size, with room to spare.
fn width_of(letter: char, is_heavy: bool) -> f64 {
    let width = match letter {
        'i' | 'j' | 'l' | 'I' | '.' | ',' | ':' | ';' | '\'' | '|' | ' ' => 0.36,
        'f' | 't' | 'r' | '(' | ')' | '-' | '/' => 0.44,
        'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.99,
        'A'..='Z' | '0'..='9' | '&' => 0.72,
        // Letters as wide as they are high, and pictures.
        '\u{1100}'..='\u{ffff}' | '\u{10000}'.. => 1.1,
        _ => 0.63,
    };
    if is_heavy { width * 1.1 } else { width }
}

/// How wide a text is, as a part of the size of its letters.
fn width_of_all(text: &str, is_heavy: bool) -> f64 {
    text.chars().map(|letter| width_of(letter, is_heavy)).sum()
}

/// Between a code, its quiet zone counted, and the edge, mm.
const CODE_MARGIN: f64 = 0.5;
/// A line's height as a part of the size of its letters.
const LINE: f64 = 1.22;
/// The size of a name's letters, as a part of that of the others.
const NAME: f64 = 1.55;
/// The size of the letters that say what it contains.
const CONTAINS: f64 = 1.15;
/// The room of the rule above them.
const RULE: f64 = 0.5;

/// The side of a code on a label of this size.
pub(super) fn code_side(size: Size) -> f64 {
    // Its own quiet zone is margin enough.
    (size.height - 2.0 * CODE_MARGIN).min(size.width * 0.48)
}

/// A label drawn on a size: letters as large as it takes them.
pub(super) fn draw(stamped: &Stamped, size: Size, paper: &'static str, copies: usize) -> Drawing {
    let side = code_side(size);
    let code =
        stamped.code.clone().map(|code| (code, [size.width - CODE_MARGIN - side, (size.height - side) / 2.0, side]));
    // The quiet zone parts it from the letters.
    let gap = if code.is_some() { side + CODE_MARGIN - size.margin } else { 0.0 };
    let (width, height) = (size.width - 2.0 * size.margin - gap, size.height - 2.0 * size.margin);
    // The largest letters that fit, down to what can still be read; what is only useful goes before what the law asks for is
    // cut.
    let texts = |may: &[&String]| {
        let [serve, note] =
            [&stamped.serve, &stamped.note].map(|text| if may.contains(&text) { text.as_str() } else { "" });
        [(serve, true), (&stamped.made, false), (&stamped.use_by, true), (note, false)]
    };
    let lay = |texts: &[(&str, bool)]| {
        let mut letters = height / 6.5;
        let mut laid = Laid::of(stamped, texts, width, letters);
        while (laid.tall() > height || laid.is_cut) && letters > SMALLEST {
            letters = (letters * 0.95).max(SMALLEST);
            laid = Laid::of(stamped, texts, width, letters);
        }
        laid
    };
    let mut laid = lay(&texts(&[&stamped.serve, &stamped.note]));
    for may in [&[&stamped.serve][..], &[]] {
        if laid.tall() > height {
            laid = Laid { is_cut: true, ..lay(&texts(may)) };
        }
    }
    laid.placed(size, width, code, paper, copies)
}

/// The lines of a label at a size of its letters.
struct Laid {
    letters: f64,
    /// Its name, large.
    name: Vec<String>,
    /// What stands under it, and whether heavy.
    rest: Vec<(String, bool)>,
    /// What guests must be told of, below a rule.
    contains: Vec<String>,
    is_cut: bool,
}

impl Laid {
    fn of(stamped: &Stamped, texts: &[(&str, bool)], width: f64, letters: f64) -> Laid {
        let mut name = wrapped(&stamped.name, width, letters * NAME, true);
        let is_cut = shortened(&mut name, width, letters * NAME);
        let lines = |(text, heavy): &(&str, bool)| {
            let heavy = *heavy;
            wrapped(text, width, letters, heavy).into_iter().map(move |line| (line, heavy))
        };
        let rest = texts.iter().flat_map(lines).collect();
        let contains = match stamped.contains.as_str() {
            "" => Vec::new(),
            contains => wrapped(&format!("▲ {contains}"), width, letters * CONTAINS, true),
        };
        Laid { letters, name, rest, contains, is_cut }
    }

    fn tall(&self) -> f64 {
        let rule = if self.contains.is_empty() { 0.0 } else { RULE };
        let lines = self.name.len() as f64 * NAME + self.rest.len() as f64 + self.contains.len() as f64 * CONTAINS;
        (lines * LINE + rule) * self.letters
    }

    /// Each line in its place. What does not fit even in the smallest letters is left off at the end, and said.
    fn placed(
        self,
        size: Size,
        width: f64,
        code: Option<(Qr, [f64; 3])>,
        paper: &'static str,
        copies: usize,
    ) -> Drawing {
        let Laid { letters, name, rest, contains, mut is_cut } = self;
        let (mut y, mut texts, mut rule) = (size.margin, Vec::new(), None);
        let name = name.into_iter().map(|line| (line, letters * NAME, true, false));
        let rest = rest.into_iter().map(|(line, heavy)| (line, letters, heavy, false));
        let contains = contains.into_iter().enumerate().map(|(at, line)| (line, letters * CONTAINS, true, at == 0));
        for (words, letters, is_heavy, is_ruled) in name.chain(rest).chain(contains) {
            if is_ruled {
                y += letters * RULE / CONTAINS;
            }
            if y + letters * LINE > size.height - size.margin * 0.5 {
                is_cut = true;
                break;
            }
            if is_ruled {
                rule = Some([size.margin, y - letters * RULE / 2.0, size.margin + width]);
            }
            texts.push(Placed { words, x: size.margin, y: y + letters * 0.95, size: letters, is_heavy });
            y += letters * LINE;
        }
        Drawing { width: size.width, height: size.height, texts, rule, code, paper, copies, is_cut }
    }
}

/// Two lines at most; a longer name ends in dots. Whether it was cut.
fn shortened(lines: &mut Vec<String>, width: f64, letters: f64) -> bool {
    let is_long = lines.len() > 2;
    lines.truncate(2);
    if let Some(last) = lines.last_mut().filter(|_| is_long) {
        while width_of_all(last, true) + width_of('…', true) > width / letters && last.pop().is_some() {}
        last.push('…');
    }
    is_long
}

/// Words in lines of a width, broken between them, and within one that is too long by itself.
fn wrapped(text: &str, width: f64, letters: f64, is_heavy: bool) -> Vec<String> {
    let most = width / letters;
    let mut lines = vec![String::new()];
    for word in text.split_whitespace() {
        let last = lines.last().map_or(0.0, |line| width_of_all(line, is_heavy));
        let joint = if last > 0.0 { width_of(' ', is_heavy) } else { 0.0 };
        if last > 0.0 && last + joint + width_of_all(word, is_heavy) > most {
            lines.push(String::new());
        }
        let mut is_first = true;
        for letter in word.chars() {
            let Some(line) = lines.last_mut() else { break };
            if is_first && !line.is_empty() {
                line.push(' ');
            }
            is_first = false;
            if !line.is_empty() && width_of_all(line, is_heavy) + width_of(letter, is_heavy) > most {
                lines.push(letter.to_string());
            } else {
                line.push(letter);
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
        for (length, letters) in [
            (1, "a"),
            (10, "abcdefghi "),
            (40, "abcdefghi "),
            (200, "MAMMOTH WHAMMY "),
            (24, "W"),
            (30, "樹園灯"),
            (2_000, "ab "),
        ] {
            let long: String = letters.chars().cycle().take(length).collect();
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
                let wide = width_of_all(&text.words, text.is_heavy) * text.size;
                assert!(text.x + wide <= 48.01, "{text:?}");
                assert!(text.y < 24.0 && text.size >= SMALLEST, "{text:?}");
            }
            // However long the name is, dates and allergens begin to be said.
            for must in ["Made", "Use by", "▲ Contains"] {
                assert!(drawn.texts.iter().any(|text| text.words.starts_with(must)), "{must}: {:?}", drawn.texts);
            }
            assert_eq!(drawn.is_cut, length > 150, "{length}");
        }
    }

    #[test]
    fn breaks_between_words() {
        assert_eq!(wrapped("Orchard cordial, stirred", 22.0, 3.0, true), ["Orchard", "cordial,", "stirred"]);
        assert_eq!(wrapped("", 22.0, 3.0, true), Vec::<String>::new());
    }
}
