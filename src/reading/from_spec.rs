//! A spec of the book as what a tool works on: chosen from a list, or come from its page. A tool that takes one has a text
//! called [`FROM`]: the id of the spec, and which form of it.

use super::chilled::{Chilled, serve_of};
use super::label::{self, Keeps};
use super::name::{named, of_form};
use super::{Contents, allergens, asks, glass, iced};
use crate::book::{Card, Entry, Way, best};
use crate::quantity::{Ratio, Temperature, Volume};
use crate::screen::percent::encode;
use crate::screen::route::Route;
use crate::screen::{Act, Answer, Bench, Block, Button, Opt, address};
use crate::substance::fruit::FRUIT;
use crate::substance::mix::Mix;
use crate::text;

/// The text of a form that says which spec it came from, and which form of that: "id/0"; empty for none.
pub(crate) const FROM: &str = "from_spec";
/// The lines of a spec, in most tools.
pub(crate) const SPEC: &str = "spec";
/// The lines of a spec that only came along: the tool begins with something else.
pub(crate) const LINES: &str = "lines";

/// Most forms that stand in one list.
const MOST: usize = 60;
/// Of more, so many that were changed last: each is drawn when a screen opens.
const LATEST: usize = 8;

/// A form of a spec in the book.
pub(crate) struct FromSpec<'a> {
    entry: &'a Entry<Card>,
    at: usize,
}

impl<'a> FromSpec<'a> {
    /// The one that a text says; none where it is not in the book, or the book has not been read.
    pub(crate) fn of(from: &str, bench: &'a Bench) -> Option<FromSpec<'a>> {
        let (id, at) = from.rsplit_once('/')?;
        let (entry, at) = (bench.book.card(id)?, at.parse().ok()?);
        (at < entry.value.ways.len()).then_some(FromSpec { entry, at })
    }

    /// "Orchard lantern, stirred".
    pub(crate) fn name(&self) -> String {
        of_form(&self.entry.value, self.at)
    }

    /// Its lines.
    pub(crate) fn lines(&self) -> &'a str {
        &self.entry.value.ways[self.at].lines
    }

    /// The form itself.
    pub(crate) fn way(&self) -> &'a Way {
        &self.entry.value.ways[self.at]
    }

    /// The spec, and which form of it.
    pub(crate) const fn parts(&self) -> (&'a Entry<Card>, usize) {
        (self.entry, self.at)
    }

    fn key(&self) -> String {
        key(&self.entry.id, self.at)
    }
}

fn key(id: &str, at: usize) -> String {
    format!("{id}/{at}")
}

/// The field that takes a spec from the book, and the way to the rest of them where there are more than a list holds.
/// `lines` are those of the tool, where it has them. Without a spec in the book there is no field.
pub(crate) fn fields(to: Route, from: &str, lines: Option<&str>, bench: &Bench) -> [Block; 2] {
    let cards = &bench.book.cards;
    if cards.is_empty() && from.is_empty() {
        return [Block::Nothing, Block::Nothing];
    }
    let (listed, has_more) = listed(false, bench);
    let mut options = vec![Opt::new("", "none")];
    options.extend(listed);
    let chosen = options.iter().position(|option| option.key == from).unwrap_or_else(|| {
        options.insert(1, Opt::new(from, name_of(from, bench)));
        1
    });
    if is_changed(from, lines, bench) {
        options[chosen].label.push_str(" (changed)");
    }
    [Block::pick(FROM, "Spec", options), find_another(to, has_more)]
}

/// What a form that is chosen is called.
pub(crate) fn name_of(from: &str, bench: &Bench) -> String {
    FromSpec::of(from, bench).map_or_else(|| "no longer in the book".into(), |form| form.name())
}

/// The way to the specs that a list does not hold, where there are more.
pub(crate) fn find_another(to: Route, has_more: bool) -> Block {
    let find = Route::Find.href_with("into", to.row().path);
    match has_more {
        true => Block::Buttons(vec![Button::new("Find another spec", Act::Go(find))]),
        false => Block::Nothing,
    }
}

/// The forms that stand in a list: all there are or, of many, those that were changed last; with `whole`, a spec of
/// several forms stands before them by its id, for all of them. And whether there are more.
pub(crate) fn listed(whole: bool, bench: &Bench) -> (Vec<Opt>, bool) {
    let cards = &bench.book.cards;
    let all: usize = cards.iter().map(|entry| entry.value.ways.len()).sum();
    let mut list: Vec<&Entry<Card>> = cards.iter().map(AsRef::as_ref).collect();
    if all > MOST {
        let latest = best(list.len(), LATEST, &|at| Some(u64::MAX - list[at].stamp.at));
        list = latest.into_iter().map(|at| list[at]).collect();
    }
    let mut options = Vec::new();
    for entry in list {
        let forms = entry.value.ways.len();
        if whole && forms > 1 {
            options.push(Opt::new(entry.id.as_str(), of_all(&entry.value)));
        }
        options.extend((0..forms).map(|at| FromSpec { entry, at }).map(|form| Opt::new(form.key(), form.name())));
    }
    if all > MOST {
        options.truncate(LATEST);
    }
    (options, all > MOST)
}

/// "Orchard lantern, all 3 forms".
pub(crate) fn of_all(card: &Card) -> String {
    format!("{}, all {} forms", named(&card.name), card.ways.len())
}

/// Whether the lines of a tool are no longer those of the spec they came from.
fn is_changed(from: &str, lines: Option<&str>, bench: &Bench) -> bool {
    FromSpec::of(from, bench).zip(lines).is_some_and(|(form, lines)| form.lines().trim() != lines.trim())
}

/// What a spec brings to a tool, by name; of none, that it is none.
pub(crate) fn carried(to: Route, from: &str, bench: &Bench) -> Vec<(String, String)> {
    let pair = |name: &str, text: String| (name.to_owned(), text);
    let Some(form) = FromSpec::of(from, bench) else { return vec![pair(FROM, String::new())] };
    // A count that cannot be read is said where it is typed; until then its lines are one drink.
    let makes = match bench.count("makes", &form.way().makes, &mut Vec::new()) {
        Some(_) => form.way().makes.trim(),
        None => "1",
    };
    let mut carried = match to {
        Route::Label => {
            let facts = facts(&form.entry.id, &form.entry.value, form.at, bench);
            return address::read(&label::href(&facts)).carried;
        }
        Route::Serves => {
            let (way, drunk) = (&form.entry.value.ways[form.at], Contents::of(form.lines(), bench).drunk(bench).0);
            let text = |volume| text::litres_or_ml(volume, bench.decimal).to_string();
            match serve(way, &drunk, bench) {
                // Rounded down, so that the last serve is one.
                Ok(serve) if glass::one_of(way, bench).is_some() => {
                    let serve = Volume::from_ml((serve.ml() * 100.0).floor() / 100.0).unwrap_or(serve);
                    vec![pair("made", bench.carried(in_all(way, &drunk, bench))), pair("serve", bench.carried(serve))]
                }
                Ok(serve) => vec![pair("serve", text(serve))],
                Err(batch) if batch.ml() > 0.0 => vec![pair("made", text(batch))],
                Err(_) => Vec::new(),
            }
        }
        Route::Glass => glass::of_form(&form.entry.value.ways[form.at], &Contents::of(form.lines(), bench), bench),
        Route::Scale | Route::Cost => {
            vec![pair(SPEC, form.lines().to_owned()), pair("makes", makes.to_owned())]
        }
        // As it is in the glass, where that is known.
        Route::Balance => {
            let ice = if Chilled::of(form.way(), bench).is_some() { "own" } else { "" };
            vec![pair(SPEC, form.lines().to_owned()), pair("makes", makes.to_owned()), pair("ice", ice.to_owned())]
        }
        Route::Ice => iced::of_form(&form.entry.value.ways[form.at]),
        Route::BottleIt => {
            let water = match form.entry.value.ways[form.at].method.as_str() {
                ice @ ("stirred" | "shaken") => ice,
                _ => "none",
            };
            vec![pair(SPEC, form.lines().to_owned()), pair("makes", makes.to_owned()), pair("water", water.to_owned())]
        }
        Route::Chill => {
            let said = Chilled::of(form.way(), bench).map(|chilled| chilled.carried(bench));
            let said = said.into_iter().flat_map(|[method, time]| [pair("method", method), pair("time", time)]);
            [pair(SPEC, form.lines().to_owned())].into_iter().chain(said).collect()
        }
        Route::Cordial => {
            let read = Contents::of(form.lines(), bench);
            let mut taken = read.lines.iter().filter_map(|line| line.read.as_ref().ok()?.taken);
            let fruit = taken.find_map(|taken| FRUIT.iter().find(|fruit| fruit.ingredient == taken.ingredient.key));
            let fruit = fruit.map(|fruit| pair("fruit", fruit.key.to_owned()));
            [pair(SPEC, form.lines().to_owned())].into_iter().chain(fruit).collect()
        }
        // They read the lines in the book.
        Route::Bubbles | Route::Sides | Route::Buy => Vec::new(),
        _ => vec![pair(SPEC, form.lines().to_owned())],
    };
    carried.push(pair(FROM, form.key()));
    carried
}

/// The address of a tool with a spec in it.
pub(crate) fn href(to: Route, id: &str, at: usize, bench: &Bench) -> String {
    href_of(to, &carried(to, &key(id, at), bench))
}

/// The address of a tool with texts for it, by name.
pub(crate) fn href_of(to: Route, pairs: &[(String, String)]) -> String {
    let pairs: Vec<String> = pairs.iter().map(|(name, text)| format!("{name}={}", encode(text))).collect();
    format!("{}?{}", to.href(), pairs.join("&"))
}

/// The lines of the spec that a link names and does not carry.
pub(crate) fn brought(carried: &[(String, String)], bench: &Bench) -> Option<String> {
    let text = |name: &str| carried.iter().find(|(carried, _)| carried == name).map(|(_, text)| text.as_str());
    let form = FromSpec::of(text(FROM)?, bench)?;
    text(SPEC).is_none().then(|| form.lines().to_owned())
}

/// Keeps a spec with what a tool answers: its name, where no field shows it, the way back to it, and what leads on to a
/// tool that `takes` it. On the page of the spec itself there is no way back.
pub(crate) fn keep(
    from: &str,
    (is_shown, is_home): (bool, bool),
    answer: &mut Answer,
    bench: &Bench,
    takes: &dyn Fn(Route) -> bool,
) {
    let Some((id, at)) = from.rsplit_once('/') else { return };
    let form = FromSpec::of(from, bench);
    if !is_home && (form.is_some() || !bench.book.has_cards) {
        let form = format!("{}&at={at}", Route::Card.href_with("id", id));
        answer.head.push(Button::new("Back", Act::Go(form)));
    }
    if let Some(form) = form.filter(|_| !is_shown && !is_home) {
        let name = format!("For {}", form.name());
        answer.strip.below = match answer.strip.below.as_str() {
            "" => name,
            below => format!("{below}. {name}"),
        };
    }
    let links = answer.carry.iter_mut().map(|carry| &mut carry.href);
    let words = answer.foot.iter_mut().filter_map(|button| match &mut button.act {
        Act::Go(href) => Some(href),
        _ => None,
    });
    for href in links.chain(words) {
        let to = address::read(href);
        // A label says itself which spec it is of.
        let brings = !to.carried.is_empty() && to.carried.iter().all(|(name, _)| name != FROM);
        if brings && to.route != Route::Label && takes(to.route) {
            href.push_str(&format!("&{FROM}={}", encode(from)));
        }
    }
}

/// What is known of a form of a spec, to label it.
pub(crate) fn facts(id: &str, card: &Card, at: usize, bench: &Bench) -> label::Facts {
    let Some(way) = card.ways.get(at) else { return label::Facts::default() };
    let read = Contents::of(&way.lines, bench);
    let serve = serve(way, &read.drunk(bench).0, bench).ok();
    label::Facts {
        pour: serve.map_or_else(String::new, |serve| text::millilitres(serve, bench.decimal).to_string()),
        spec: Some((id.to_owned(), at.to_string())),
        ..of_lines(of_form(card, at), &read, bench)
    }
}

/// What is known of lines, to label what they make. Where some are not counted, its strength is not known.
pub(crate) fn of_lines(name: String, read: &Contents, bench: &Bench) -> label::Facts {
    let (drunk, is_washed) = read.drunk(bench);
    let strength = read.whole().map(|_| text::editable(drunk.strength().fraction() * 100.0, bench.decimal));
    label::Facts {
        name,
        strength: strength.unwrap_or_default(),
        allergens: label::declared(allergens(&read.lines, bench)),
        asks: asks(&read.lines, bench),
        keeps: match is_washed {
            true => Some(Keeps::Washed),
            false => label::is_fresh(&read.lines).then_some(Keeps::Fresh),
        },
        ..label::Facts::default()
    }
}

/// What a form of a spec comes to, before ice: a serve, one of those it says it makes; or, as an error, a batch, which its
/// glass does not hold.
pub(crate) fn serve(way: &Way, drunk: &Mix, bench: &Bench) -> Result<Volume, Volume> {
    match glass::one_of(way, bench) {
        Some(one) => Ok(in_all(way, drunk, bench) * one),
        None => one_serve(way, drunk, bench),
    }
}

/// What comes out of a batch in all: as it says, else what goes in.
pub(crate) fn in_all(way: &Way, drunk: &Mix, bench: &Bench) -> Volume {
    let whole = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let gives = bench.volume("gives", &way.gives, &mut Vec::new());
    gives.filter(|gives| !is_more(*gives, whole)).unwrap_or(whole)
}

/// That it cannot be.
pub(crate) const MORE: &str = "That is more than goes in. What is added, water too, is a line of its own.";

/// Whether more comes out of something than goes in; what is measured may be a hundredth off.
pub(crate) fn is_more(gives: Volume, whole: Volume) -> bool {
    gives.ml() > whole.ml() * 1.01
}

/// What goes in, as a serve; or, as an error, a batch, which the glass does not hold.
fn one_serve(way: &Way, drunk: &Mix, bench: &Bench) -> Result<Volume, Volume> {
    let volume = drunk.volume(Temperature::TWENTY).unwrap_or(Volume::ZERO);
    let holds = bench.volume("holds", &way.holds, &mut Vec::new());
    match holds.is_none_or(|holds| volume <= holds) && volume > Volume::ZERO {
        true => Ok(volume),
        false => Err(volume),
    }
}

/// What a serve of lines is in its glass, by the spec that they came from; none where that meets no ice, or its lines are a
/// batch, or not all of them are known.
pub(crate) fn in_the_glass(from: &str, read: &Contents, serves: Ratio, bench: &Bench) -> Option<String> {
    let way = FromSpec::of(from, bench)?.way();
    let (drunk, is_washed) = read.drunk(bench);
    let serve = serve_of(&drunk, serves);
    let is_one = one_serve(way, &serve, bench).is_ok_and(|volume| volume < Volume::LITRE);
    read.whole().filter(|_| is_one && !is_washed)?;
    Chilled::of(way, bench)?.in_the_glass(&serve, bench)
}
