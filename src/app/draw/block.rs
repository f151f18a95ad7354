//! The blocks of a screen, each drawn from its data.

use super::field::{field, fix_buttons};
use super::label::label;
use super::making::{doing, pours, printed, serves};
pub(super) use super::node::act_button;
use super::node::{Node, Tap, button, element, link, number_and_unit, owned, said, with, words};
use super::paper;
use super::picture::{picture, pictures};
use super::sides::sides;
use super::timeline::timeline;
use crate::desk::View;
use crate::screen::{ASKED, Act, Block, Button, Cell, Row};
use crate::text::Qr;

/// The pieces of a block.
pub(super) fn block(view: &View, block: &Block) -> Vec<Node> {
    match block {
        Block::Field(shown) => field(view, shown),
        Block::Actions("") => Vec::new(),
        Block::Actions(empty) => {
            let empty = button("word", (*empty).into(), "", Some(Tap::Act(Act::Empty)));
            vec![element("p", &[("class", "end")], vec![empty])]
        }
        Block::Sources(sources) if sources.is_empty() => Vec::new(),
        Block::Sources(sources) => vec![sources_of(sources)],
        Block::Nothing => Vec::new(),
        Block::InstallHint if view.is_installed => Vec::new(),
        Block::InstallHint => vec![install_hint(view)],
        Block::Heading(words) => heading(words).into_iter().collect(),
        Block::Table(_, rows) if rows.is_empty() => Vec::new(),
        Block::Timeline(events) if events.is_empty() => Vec::new(),
        Block::Timeline(events) => vec![timeline(events)],
        Block::SheetHead(head) => vec![paper::head(head)],
        Block::ToHave(to_have) => vec![paper::to_have(to_have)],
        Block::Cells(_, cells) if cells.is_empty() => Vec::new(),
        Block::Table(title, rows) => {
            let asked = asked(view);
            let class = if rows.iter().any(|row| row.picture.is_some()) { "rows some" } else { "rows" };
            let rows = rows.iter().map(|shown| row(shown, asked.is_some_and(|asked| std::ptr::eq(asked, shown))));
            heading(title).into_iter().chain([with("ul", &[], vec![("class", class.into())], rows.collect())]).collect()
        }
        Block::Cells(title, cells) => {
            let list = element("dl", &[("class", "list")], cells.iter().map(cell).collect());
            heading(title).into_iter().chain([list]).collect()
        }
        Block::Carry(links) => {
            let links = links.iter().map(|to| link(&to.href, owned(&to.label), false)).collect();
            let fixed = &[("class", "carry"), ("aria-label", "Carry on")];
            vec![element("nav", fixed, links)]
        }
        Block::Buttons(buttons) if buttons.is_empty() => Vec::new(),
        Block::Buttons(buttons) => {
            // The app taps the one that shows more of a list when it comes in sight.
            let class = |shown: &Button| if shown.act == Act::More { "btn more" } else { "btn" };
            let buttons = buttons.iter().map(|shown| act_button(class(shown), shown)).collect();
            vec![element("div", &[("class", "actions")], buttons)]
        }
        Block::Pictures(shown) => pictures(shown),
        Block::Sides(shown) => sides(shown).into_iter().collect(),
        Block::Label(shown) => shown.iter().map(label).collect(),
        Block::Serves(label, count) => vec![serves(label, *count)],
        Block::Pours(shown) if shown.lines.is_empty() => Vec::new(),
        Block::Pours(shown) => vec![pours(shown)],
        Block::Doing(steps) => vec![doing(steps)],
        Block::Printed(shown) => vec![printed(shown)],
        Block::Code(shown, words) => vec![code(shown, words)],
        Block::Link(label, href) => {
            vec![element("p", &[("class", "remark")], vec![link(href, (*label).into(), false)])]
        }
        Block::Remark(words) => vec![said("p", &[("class", "remark")], owned(words))],
        Block::Caution(words) => vec![said("p", &[("class", "caution")], owned(words))],
    }
}

fn heading(words: &'static str) -> Option<Node> {
    (!words.is_empty()).then(|| said("h2", &[], words.into()))
}

/// The row that the strip leads to: the first of the page that needs a look.
fn asked(view: &View) -> Option<&Row> {
    let tables = view.screen.blocks.iter().filter_map(|block| match block {
        Block::Table(_, rows) if !view.screen.leads.is_empty() => Some(rows),
        _ => None,
    });
    tables.flatten().find(|row| row.marked)
}

/// A row of a table; the one that the strip leads to can be focused.
fn row(row: &Row, is_asked: bool) -> Node {
    let typed = if row.typed.is_empty() { &row.name } else { &row.typed };
    let mut detail = vec![words(&row.detail)];
    fix_buttons(&row.fixes, |fixed| Tap::Act(Act::Rewrite(typed.clone(), fixed)), &mut detail);
    let name = match (row.href.as_str(), &row.opens) {
        ("", None) => words(&row.name),
        ("", Some(act)) => button("line", owned(&row.name), typed, Some(Tap::Act(act.clone()))),
        (href, _) => link(href, owned(&row.name), false),
    };
    let drawn = row.picture.iter().map(|shown| element("span", &[("class", "glass")], picture(shown)));
    let mut children: Vec<Node> = drawn.collect();
    children.push(element("span", &[("class", "name")], vec![name]));
    // What is empty is no element: lists are long, and drawn anew at each letter of a search.
    let has_amount = !row.amount.is_empty();
    let has_detail = !row.detail.is_empty() || !row.fixes.is_empty();
    if has_amount {
        children.push(amount(&row.amount));
    }
    if has_detail {
        children.push(element("span", &[("class", "detail")], detail));
    }
    if !row.buttons.is_empty() {
        let moves: Vec<Node> = row.buttons.iter().map(|shown| act_button("move", shown)).collect();
        let class = if moves.len() > 1 { "moves many" } else { "moves" };
        children.push(with("span", &[], vec![("class", class.into())], moves));
    }
    // How a row is laid out is said by it, not asked of what is in it.
    let is_bare = row.name.is_empty() && !has_amount && !has_detail;
    let classes = [
        (row.marked, "marked"),
        (row.picture.is_some(), "pictured"),
        (!row.href.is_empty(), "linked"),
        (row.href.is_empty() && row.opens.is_some(), if has_amount { "opens" } else { "opens whole" }),
        (!row.buttons.is_empty(), "moved"),
        (is_bare, "bare"),
    ];
    let classes: Vec<&str> = classes.iter().filter(|(is, _)| *is).map(|(_, class)| *class).collect();
    let mut attributes = Vec::new();
    if !classes.is_empty() {
        attributes.push(("class", classes.join(" ").into()));
    }
    if is_asked {
        attributes.extend([("id", ASKED.into()), ("tabindex", "-1".into())]);
    }
    with("li", &[], attributes, children)
}

/// An amount: its unit stands in a column of its own.
fn amount(amount: &str) -> Node {
    let is_unit = |unit: &str| !unit.contains(|c: char| c.is_ascii_digit());
    let starts = amount.starts_with(|c: char| !c.is_alphabetic());
    let (number, unit) = match amount.rsplit_once(' ') {
        Some((number, unit)) if starts && is_unit(unit) => (number, unit),
        _ => (amount, ""),
    };
    element("span", &[("class", "q")], number_and_unit(number, unit))
}

/// A figure beside its label: its unit stands in a column of its own.
fn cell(cell: &Cell) -> Node {
    let children = vec![
        said("dt", &[], owned(&cell.label)),
        element("dd", &[], vec![said("b", &[], owned(&cell.figure.value)), said("i", &[], owned(&cell.figure.unit))]),
    ];
    element("div", &[], children)
}

/// Where the figures come from, folded away.
fn sources_of(sources: &[(String, String)]) -> Node {
    let mut children = vec![said("summary", &[], "Where these figures come from".into())];
    for (of, said_of_it) in sources {
        let of = if of.is_empty() { None } else { Some(said("b", &[], owned(of))) };
        children.push(element("p", &[], of.into_iter().chain([Node::Words(" ".into()), words(said_of_it)]).collect()));
    }
    element("details", &[("class", "src")], children)
}

fn code(code: &Qr, said_below: &str) -> Node {
    let side = code.size.to_string();
    let path = with("path", &[], vec![("d", owned(&code.path))], Vec::new());
    let fixed = &[("role", "img"), ("aria-label", "QR code of the link below")];
    let drawing = with("svg", fixed, vec![("viewBox", format!("0 0 {side} {side}").into())], vec![path]);
    element("figure", &[("class", "code")], vec![drawing, said("figcaption", &[], owned(said_below))])
}

/// How to put the app on the home screen; gone for good once put away or installed.
fn install_hint(view: &View) -> Node {
    let mut buttons = Vec::new();
    if view.can_install {
        buttons.push(button("btn", "Install".into(), "", Some(Tap::Act(Act::Install))));
    }
    let put_away = Act::Put(vec![("install_hint", "away".into())]);
    buttons.push(button("btn", "Don't show again".into(), "", Some(Tap::Act(put_away))));
    let how = vec![
        said("b", &[], "Keep it on your phone. ".into()),
        Node::Words(
            "It works without a network. In the browser's menu: “Install” or “Add to Home screen”; where there is \
             none, tap Share, the square with an arrow, then “Add to Home Screen”."
                .into(),
        ),
    ];
    let children = vec![element("p", &[], how), element("div", &[("class", "actions")], buttons)];
    element("section", &[("class", "hint"), ("aria-label", "Install")], children)
}
