//! What a bar pays: "London dry gin, 700 ml, 24.00, 2026-11-20", a line each; and "24.00 for 700 ml", as one says it.

use super::amount::{AmountProblem, Reading, read_amount, read_count, read_percent};
use super::number::{NumberProblem, is_digit, read_number, replaced};
use super::spec::egg::poured;
use super::units::typed;
use super::unread::Unread;
use crate::book::{Measured, Price, Taken, whole};
use crate::quantity::{Amount, Money, Ratio};

/// Most that a pack costs.
const MOST: f64 = 1e6;
/// A line, and a price as one says it.
const LINE: &str = "London dry gin, 700 ml, 24.00, 2026-11-20";
const OFFER: &str = "24.00 for 700 ml";
/// What pieces are called.
const PIECES: [&str; 5] = ["pieces", "piece", "pcs", "pc", "x"];

/// A line of prices: name, pack and price, then its yield and the day, where they are told. A comma between two digits is a
/// decimal mark, any other parts.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_price(line: &str, reading: &Reading<'_>) -> Result<Price, Unread> {
    let (parts, usable, day) = told(parts(line), line, reading)?;
    let [name @ .., pack, paid] = parts.as_slice() else { return Err(unlike(line, LINE)) };
    let (Some(first), Some(last)) = (name.first(), name.last()) else { return Err(unlike(line, LINE)) };
    // A name may hold commas, and stays as it was typed.
    let from = first.as_ptr() as usize - line.as_ptr() as usize;
    let to = last.as_ptr() as usize - line.as_ptr() as usize + last.len();
    let name = line[from..to].trim();
    if name.is_empty() {
        return Err(unlike(line, LINE));
    }
    priced(name, (pack, paid), (usable, day), line, reading)
}

/// A price of what was told of it in a text.
fn priced(
    name: &str,
    (pack, paid): (&str, &str),
    (usable, day): (Ratio, &str),
    text: &str,
    reading: &Reading<'_>,
) -> Result<Price, Unread> {
    let (amount, paid) = (read_pack(pack, text, reading)?, read_paid(paid, text, reading)?);
    let library = whole(name);
    // Eggs that are counted in a spec are so much to pour, and so are these.
    let egg = library.map(|ingredient| Taken { ingredient, measured: Measured::default() });
    let amount = poured(amount, egg.as_ref(), name, &mut String::new());
    let library = library.map_or("", |ingredient| ingredient.key);
    let size = if pack.contains(is_digit) { pack.to_owned() } else { format!("1 {pack}") };
    Ok(Price { name: name.to_owned(), library, pack: amount, size, paid, usable, day: day.to_owned() })
}

/// A price as one says it, "24.00 for 700 ml", or as it stands in a line, "700 ml, 24.00"; with its yield, "24 for 700 ml,
/// 95 %". None for an empty text. Its name is for the caller.
///
/// # Errors
/// A sentence for the person who typed.
pub fn read_offer(text: &str, reading: &Reading<'_>) -> Result<Option<Price>, Unread> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let (parts, usable, day) = told(parts(text), text, reading)?;
    let Some((pack, paid)) = offered(&parts) else { return Err(unlike(text, OFFER)) };
    // "lemon, 1 kg" says no price.
    if !pack.contains(is_digit) && read_pack(pack, text, reading).is_err() {
        return Err(unlike(text, "3.50 for 1 kg"));
    }
    priced("", (pack, paid), (usable, day), text, reading).map(Some)
}

/// Pack and price of what was told besides yield and day.
fn offered<'t>(parts: &[&'t str]) -> Option<(&'t str, &'t str)> {
    match parts {
        [pack, paid] => Some((pack, paid)),
        [said] => {
            let (paid, pack) = [" for ", " per ", "/"].iter().find_map(|joint| split_at(said, joint))?;
            Some((pack, paid))
        }
        _ => None,
    }
}

/// Both sides of a joint.
fn split_at<'t>(text: &'t str, joint: &str) -> Option<(&'t str, &'t str)> {
    let (at, _) = text.char_indices().find(|(at, _)| text[*at..].starts_with(joint))?;
    Some((text[..at].trim(), text[at + joint.len()..].trim()))
}

/// The lines with the price of a name, as it was typed and read, on a day: in place of one of the same name and day, so that
/// what is put right is no history.
#[must_use]
pub fn with_price(lines: &str, (name, offer): (&str, &str), day: &str, reading: &Reading<'_>) -> String {
    let is_other = |line: &&str| {
        let there = read_price(line, reading);
        there.map_or(true, |there| !there.name.eq_ignore_ascii_case(name) || there.day != day)
    };
    let others = lines.lines().filter(|line| !line.trim().is_empty()).filter(is_other);
    let mut line = name.to_owned();
    let all = parts(offer);
    let count = all.iter().rposition(|part| !part.ends_with('%') && !is_day(part)).map_or(0, |last| last + 1);
    if let Some((pack, paid)) = offered(&all[..count]) {
        for part in
            [pack, paid].into_iter().chain(all[count..].iter().copied().filter(|part| !is_day(part))).chain([day])
        {
            line.push_str(", ");
            line.push_str(part);
        }
    }
    others.chain([line.as_str()]).collect::<Vec<_>>().join("\n")
}

/// The parts of a line.
fn parts(line: &str) -> Vec<&str> {
    let bytes = line.as_bytes();
    let is_digit_at = |at: Option<usize>| at.and_then(|at| bytes.get(at)).is_some_and(u8::is_ascii_digit);
    let (mut parts, mut from) = (Vec::new(), 0);
    for (at, byte) in bytes.iter().enumerate() {
        let is_mark = is_digit_at(at.checked_sub(1)) && is_digit_at(Some(at + 1));
        if *byte == b';' || *byte == b',' && !is_mark {
            parts.push(line[from..at].trim());
            from = at + 1;
        }
    }
    parts.push(line[from..].trim());
    parts
}

/// The parts without what may stand last: its yield, and the day.
fn told<'t>(
    mut parts: Vec<&'t str>,
    text: &str,
    reading: &Reading<'_>,
) -> Result<(Vec<&'t str>, Ratio, &'t str), Unread> {
    let (mut usable, mut day) = (Ratio::ONE, "");
    while let Some(last) = parts.last().copied() {
        if is_day(last) {
            day = last;
        } else if is_like_day(last) {
            return Err(format!("“{last}”: write a day like 2026-11-20.").into());
        } else if last.ends_with('%') && parts.len() > 1 {
            let words = format!("“{last}” of it is used? Type the share that ends in drinks, above 0 to 100 %.");
            let share = match read_percent(last, reading.decimal, 101) {
                Err(unread) if !unread.fixes.is_empty() => return Err(within(unread, last, text)),
                share => share.ok().flatten(),
            };
            let is_share = |share: &Ratio| *share > Ratio::ZERO && *share <= Ratio::ONE;
            usable = share.filter(is_share).ok_or(words)?;
        } else {
            break;
        }
        parts.pop();
    }
    Ok((parts, usable, day))
}

/// "2026-11-20".
fn is_day(text: &str) -> bool {
    let bytes = text.as_bytes();
    let number = |from: usize, to: usize| {
        bytes[from..to]
            .iter()
            .try_fold(0_u32, |sum, byte| byte.is_ascii_digit().then(|| sum * 10 + u32::from(byte - b'0')))
    };
    bytes.len() == 10
        && (bytes[4], bytes[7]) == (b'-', b'-')
        && number(0, 4).is_some_and(|year| (1970..9_000).contains(&year))
        && number(5, 7).is_some_and(|month| (1..=12).contains(&month))
        && number(8, 10).is_some_and(|day| (1..=31).contains(&day))
}

/// Whether a text is a day in another way of writing, or none that is: three numbers with marks between.
fn is_like_day(text: &str) -> bool {
    let marks = text.bytes().filter(|byte| matches!(byte, b'.' | b'/' | b'-')).count();
    marks == 2
        && text.len() >= 6
        && text.bytes().all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'/' | b'-'))
}

/// How much is in a pack. A bare number could be pieces or millilitres, and is asked about.
fn read_pack(part: &str, text: &str, reading: &Reading<'_>) -> Result<Amount, Unread> {
    let bare = part.trim_end_matches(|c: char| c.is_ascii_alphabetic()).trim_end();
    let word = part[bare.len()..].trim();
    let like = || Unread::from(format!("“{part}” is no pack. Type it like 700 ml, 1 kg or 12 pieces."));
    if bare.is_empty() {
        // "3.50 / kg" is for one.
        let one = format!("1 {part}");
        return if word.is_empty() { Err(like()) } else { read_pack(&one, &one, reading).map_err(|_| like()) };
    }
    if word.is_empty() && bare.ends_with(is_digit) {
        let fixes = [typed(reading.bare), PIECES[0]].map(|unit| replaced(text, part, &format!("{part} {unit}")));
        let words = format!("{part} of what is in the pack? Type it like 700 ml, 1 kg or 12 pieces.");
        return Err(Unread { words, fixes: fixes.to_vec() });
    }
    let amount = match PIECES.iter().any(|piece| piece.eq_ignore_ascii_case(word)) {
        true => read_count(bare, reading.decimal).map(|count| count.map(Amount::Count)),
        false => read_amount(part, reading),
    };
    match amount {
        Ok(Some(amount)) => Ok(amount),
        Ok(None) => Err(like()),
        Err(AmountProblem::Zero) => {
            Err("A pack of nothing has no price. Type what is in it, like 700 ml.".to_owned().into())
        }
        Err(AmountProblem::Number(NumberProblem::Negative)) => Err(like()),
        Err(problem) => {
            let fixes = problem.fixes(part).iter().map(|fixed| replaced(text, part, fixed)).collect();
            Err(Unread { words: problem.to_string(), fixes })
        }
    }
}

/// What is paid, with or without a sign of money on either side.
fn read_paid(part: &str, text: &str, reading: &Reading<'_>) -> Result<Money, Unread> {
    let is_of_number = |c: char| is_digit(c) || matches!(c, '-' | '−' | '–' | '.' | ',');
    let bare = part.trim_matches(|c: char| !is_of_number(c));
    let words = || Unread::from(format!("“{part}” is no price. Type what a pack costs, like 24.00."));
    match read_number(bare, reading.decimal) {
        Ok(Some(paid)) if paid > 0.0 && paid <= MOST => Money::from_units(paid).map_err(|_| words()),
        Ok(Some(paid)) if paid > 0.0 => Err("That is over a million for a pack. Check the price.".to_owned().into()),
        Ok(Some(_)) | Err(NumberProblem::Negative) => {
            Err("A price is above zero. Type what a pack costs, like 24.00.".to_owned().into())
        }
        Ok(None) => Err(words()),
        Err(problem) => Err(within(Unread::number(&problem, bare, || words().words), bare, text)),
    }
}

/// What would settle a part, as the whole text with it.
fn within(unread: Unread, part: &str, text: &str) -> Unread {
    let fixes = unread.fixes.iter().map(|fixed| replaced(text, part, fixed)).collect();
    Unread { fixes, ..unread }
}

fn unlike(text: &str, like: &str) -> Unread {
    format!("“{}” can't be read as a price. Write it like {like}.", text.trim()).into()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Conventions, Mass, Ounce, Unit, Volume};
    use crate::text::{Decimal, Dimension};

    const HOUSE: Conventions =
        Conventions { ounce: Ounce::Us, dash: Conventions::DASH, barspoon: Conventions::BARSPOON, part: None };

    fn reading(decimal: Decimal) -> Reading<'static> {
        Reading { conventions: &HOUSE, decimal, bare: Unit::Millilitre, kind: Dimension::Either, own: &[] }
    }

    fn read(line: &str, decimal: Decimal) -> (String, Amount, f64, f64, String) {
        let Price { name, pack, paid, usable, day, .. } = read_price(line, &reading(decimal)).expect(line);
        (name, pack, paid.units(), usable.value(), day)
    }

    fn wrong(line: &str) -> String {
        read_price(line, &reading(Decimal::Point)).expect_err(line).words
    }

    #[test]
    fn every_way_of_writing_a_price() {
        let bottle = Amount::Volume(Volume::whole_ml(700));
        let gin = |usable, day: &str| ("London dry gin".to_owned(), bottle, 24.0, usable, day.to_owned());
        for line in [
            "London dry gin, 700 ml, 24.00, 95 %, 2026-11-20",
            "London dry gin,70 cl,24;2026-11-20;95%",
            " London dry gin; 700 ml; 24,00; 95 %; 2026-11-20 ",
            "London dry gin, 0,7 l, £24.00, 95 %, 2026-11-20",
        ] {
            assert_eq!(read(line, Decimal::Comma), gin(0.95, "2026-11-20"), "{line}");
        }
        assert_eq!(read("London dry gin, 700 ml, 24.00 EUR", Decimal::Point), gin(1.0, ""));
        let (name, pack, paid, ..) = read("gin, tea-infused, 1 l, 30", Decimal::Point);
        assert_eq!((name.as_str(), pack, paid), ("gin, tea-infused", Amount::Volume(Volume::LITRE), 30.0));
        let twelve = Amount::Count(Ratio::from_value(12.0).expect("a count"));
        assert_eq!(read("mint leaves, 12 pieces, 3.60", Decimal::Point).1, twelve);
        // As "1 egg white" is 30 ml.
        assert_eq!(read("egg white, 10 pieces, 3", Decimal::Point).1, Amount::Volume(Volume::whole_ml(300)));
        assert_eq!(read("sugar, 1 kg, 1.10", Decimal::Point).1, Amount::Mass(Mass::KILOGRAM));
        assert_eq!(read("whole milk 3,5 %, 1 l, 1,10", Decimal::Comma).0, "whole milk 3,5 %");
    }

    #[test]
    fn what_cannot_be_read_is_said() {
        let like = "Write it like London dry gin, 700 ml, 24.00, 2026-11-20.";
        for line in ["gin", "gin, 24.00", "700 ml, 24.00", ", 700 ml, 24.00", "my note; or two"] {
            assert!(wrong(line).ends_with(like) || wrong(line).ends_with("12 pieces."), "{line}: {}", wrong(line));
        }
        assert_eq!(wrong("gin, 700 ml, 0"), "A price is above zero. Type what a pack costs, like 24.00.");
        assert_eq!(wrong("gin, 700 ml, -24"), "A price is above zero. Type what a pack costs, like 24.00.");
        assert_eq!(wrong("gin, 0 ml, 24"), "A pack of nothing has no price. Type what is in it, like 700 ml.");
        assert_eq!(wrong("egg, 0 pieces, 24"), "A pack of nothing has no price. Type what is in it, like 700 ml.");
        assert_eq!(wrong("gin, 700 ml, lots"), "“lots” is no price. Type what a pack costs, like 24.00.");
        assert_eq!(wrong("gin, 700 ml, 2000000"), "That is over a million for a pack. Check the price.");
        assert_eq!(wrong("gin, 700 bottles, 24"), "No unit is called “bottles”. Try ml, cl, oz, dash, bsp or g.");
        assert_eq!(wrong("gin, bottle, 24"), "“bottle” is no pack. Type it like 700 ml, 1 kg or 12 pieces.");
        let share = "is used? Type the share that ends in drinks, above 0 to 100 %.";
        for line in ["gin, 700 ml, 24, 0 %", "gin, 700 ml, 24, 120 %"] {
            assert!(wrong(line).ends_with(share), "{}", wrong(line));
        }
        // A day that is none is no price either.
        assert_eq!(wrong("gin, 700 ml, 24, 20.11.2026"), "“20.11.2026”: write a day like 2026-11-20.");
        assert_eq!(wrong("gin, 700 ml, 24, 2026-13-20"), "“2026-13-20”: write a day like 2026-11-20.");
    }

    /// 12 pieces or 12 ml, 1.250 or 1250: asked, each with what would settle it.
    #[test]
    fn two_meanings_are_asked_about() {
        let asked = |text: &str| read_offer(text, &reading(Decimal::Point)).expect_err(text);
        assert_eq!(asked("3.60 for 12").words, "12 of what is in the pack? Type it like 700 ml, 1 kg or 12 pieces.");
        assert_eq!(asked("3.60 for 12").fixes, ["3.60 for 12 ml", "3.60 for 12 pieces"]);
        assert_eq!(asked("1,250 for 20 l").fixes, ["1250 for 20 l", "1.25 for 20 l"]);
        for text in ["24.00", "24.00 700 ml", "for 700 ml"] {
            assert!(!asked(text).words.is_empty(), "{text}");
        }
        assert_eq!(read_offer(" ", &reading(Decimal::Point)), Ok(None));
        for text in ["lemon, 1 kg", "lemons; 1 kg"] {
            assert_eq!(asked(text).words, format!("“{text}” can't be read as a price. Write it like 3.50 for 1 kg."));
        }
    }

    #[test]
    fn a_unit_alone_is_one_of_it() {
        for decimal in [Decimal::Point, Decimal::Comma] {
            let reading = reading(decimal);
            for (text, size) in [("3,50 / kg", "1 kg"), ("3.50 per kg", "1 kg"), ("0.40 per piece", "1 piece")] {
                let read = read_offer(text, &reading).expect(text).expect(text);
                assert_eq!(read.size, size, "{text}");
                let kept = read_price(&with_price("", ("lemons", text), "2026-11-20", &reading), &reading).expect(text);
                assert_eq!((kept.pack, kept.paid, kept.size), (read.pack, read.paid, read.size), "{text}");
            }
        }
    }

    #[test]
    fn what_is_kept_is_read_and_history_stays() {
        let reading = reading(Decimal::Point);
        let lines = "gin, 700 ml, 22.00, 2026-10-03\n\nmy note\nlime juice, 1 kg, 3.00, 38 %";
        let kept = with_price(lines, ("Gin", "24.00 for 70 cl, 95 %"), "2026-11-20", &reading);
        assert_eq!(
            kept,
            "gin, 700 ml, 22.00, 2026-10-03\nmy note\nlime juice, 1 kg, 3.00, 38 %\nGin, 70 cl, 24.00, 95 %, 2026-11-20"
        );
        let again = with_price(&kept, ("gin", "700 ml, 23.50"), "2026-11-20", &reading);
        assert!(again.ends_with("38 %\ngin, 700 ml, 23.50, 2026-11-20"), "{again}");
        assert_eq!(again.lines().count(), 4);
        for offer in ["24.00 for 700 ml", "24/700 ml", "24 per 700 ml", "700 ml, 24", "£24 for 700 ml"] {
            let read = read_offer(offer, &reading).expect(offer).expect(offer);
            let kept = with_price("", ("gin", offer), "2026-11-20", &reading);
            assert_eq!(
                read_price(&kept, &reading),
                Ok(Price { name: "gin".into(), day: "2026-11-20".into(), library: "london-dry-gin", ..read })
            );
        }
    }
}
