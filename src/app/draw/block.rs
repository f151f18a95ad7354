//! The blocks of a screen, each drawn from its data.

use super::field::{field, fix_buttons};
use super::label::label;
use super::making::{doing, pours, printed, serves};
use super::node::{Node, Tap, button, element, link, owned, said, with, words};
use crate::desk::View;
use crate::screen::{ASKED, Act, Block, Button, Cell, Row, Share};
use crate::text::Qr;

/// The pieces of a block.
pub(super) fn block(view: &View, block: &Block) -> Vec<Node> {
    match block {
        Block::Field(shown) => field(view, shown),
        Block::Actions(clear) => vec![actions(view, clear)],
        Block::Nothing => Vec::new(),
        Block::InstallHint if view.is_installed => Vec::new(),
        Block::InstallHint => vec![install_hint(view)],
        Block::Heading(words) => vec![heading(words)],
        Block::Table(_, rows) if rows.is_empty() => Vec::new(),
        Block::Cells(_, cells) if cells.is_empty() => Vec::new(),
        Block::Table(title, rows) => {
            let asked = rows.iter().position(|row| row.marked && !view.screen.leads.is_empty());
            let rows = rows.iter().enumerate().map(|(at, shown)| row(shown, asked == Some(at)));
            vec![heading(title), element("ul", &[("class", "rows")], rows.collect())]
        }
        Block::Cells(title, cells) => {
            vec![heading(title), element("dl", &[("class", "cells")], cells.iter().map(cell).collect())]
        }
        Block::Carry(links) => {
            let links = links.iter().map(|to| link(&to.href, owned(&to.label), false)).collect();
            let fixed = &[("class", "carry"), ("aria-label", "Carry on")];
            vec![heading("Carry on"), element("nav", fixed, links)]
        }
        Block::Buttons(buttons) if buttons.is_empty() => Vec::new(),
        Block::Buttons(buttons) => {
            // The app taps the one that shows more of a list when it comes in sight.
            let class = |shown: &Button| if shown.act == Act::More { "more" } else { "" };
            let buttons = buttons.iter().map(|shown| act_button(class(shown), shown)).collect();
            vec![element("div", &[("class", "actions")], buttons)]
        }
        Block::Label(shown) => shown.iter().map(label).collect(),
        Block::Serves(label, count) => vec![serves(label, *count)],
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

/// A button that carries its act.
pub(super) fn act_button(class: &'static str, shown: &Button) -> Node {
    if let Act::Go(href) = &shown.act {
        return link(href, owned(&shown.label), false);
    }
    button(class, owned(&shown.label), &shown.spoken, Some(Tap::Act(shown.act.clone())))
}

fn heading(words: &'static str) -> Node {
    said("h2", &[], words.into())
}

/// A row of a table; the one that the strip leads to can be focused.
fn row(row: &Row, is_asked: bool) -> Node {
    let typed = if row.typed.is_empty() { &row.name } else { &row.typed };
    let mut detail = vec![words(&row.detail)];
    fix_buttons(&row.fixes, |fixed| Tap::Act(Act::Rewrite(typed.clone(), fixed)), &mut detail);
    let name = match row.href.as_str() {
        "" => words(&row.name),
        href => link(href, owned(&row.name), false),
    };
    let mut children = vec![
        element("span", &[("class", "name")], vec![name]),
        said("b", &[], owned(&row.amount)),
        element("span", &[("class", "detail")], detail),
    ];
    if !row.shares.is_empty() {
        children.push(element("span", &[("class", "shares")], row.shares.iter().map(share).collect()));
    }
    let moves = row.buttons.iter().map(|shown| act_button("move", shown)).collect();
    children.push(element("span", &[("class", "moves")], moves));
    let mut attributes = if row.marked { vec![("class", "marked".into())] } else { Vec::new() };
    if is_asked {
        attributes.extend([("id", ASKED.into()), ("tabindex", "-1".into())]);
    }
    with("li", &[], attributes, children)
}

/// A share of the drink: a bar over its words.
fn share(share: &Share) -> Node {
    let width = vec![("width", share.percent.to_string().into())];
    let part = with("rect", &[("class", "share"), ("height", "4")], width, Vec::new());
    let whole = element("rect", &[("class", "whole"), ("width", "100"), ("height", "4")], Vec::new());
    let fixed = &[("viewBox", "0 0 100 4"), ("preserveAspectRatio", "none"), ("aria-hidden", "true")];
    let bar = element("svg", fixed, vec![whole, part]);
    element("span", &[], vec![bar, said("b", &[], owned(&share.words)), Node::Words(share.of.into())])
}

/// A figure under its label; one that explains itself opens when tapped anywhere.
fn cell(cell: &Cell) -> Node {
    let value = said("b", &[], owned(&cell.figure.value));
    let mut figure = vec![value, Node::Words(" ".into()), words(&cell.figure.unit)];
    if !cell.about.is_empty() {
        let inside = vec![element("summary", &[], figure), said("p", &[], cell.about.into())];
        figure = vec![element("details", &[], inside)];
    }
    let children = vec![said("dt", &[], owned(&cell.label)), element("dd", &[], figure)];
    element("div", &[("class", "cell")], children)
}

fn code(code: &Qr, said_below: &str) -> Node {
    let side = code.size.to_string();
    let path = with("path", &[], vec![("d", owned(&code.path))], Vec::new());
    let fixed = &[("role", "img"), ("aria-label", "QR code of the link below")];
    let drawing = with("svg", fixed, vec![("viewBox", format!("0 0 {side} {side}").into())], vec![path]);
    element("figure", &[("class", "code")], vec![drawing, said("figcaption", &[], owned(said_below))])
}

/// Clear, Undo and Copy.
fn actions(view: &View, clear: &'static str) -> Node {
    let copy = if view.copied.is_empty() { "Copy".into() } else { owned(&view.copied) };
    let mut buttons = Vec::new();
    if !clear.is_empty() {
        buttons.push(button("", clear.into(), "", Some(Tap::Act(Act::Empty))));
    }
    let undo = view.undo.as_ref().map_or("Undo".into(), |words| owned(&format!("Undo: {words}")));
    buttons.push(button("undo", undo, "", view.undo.is_some().then_some(Tap::Act(Act::Undo))));
    buttons.push(button("", copy, "", (!view.screen.copy.is_empty()).then_some(Tap::Act(Act::Copy))));
    element("div", &[("class", "actions"), ("aria-live", "polite")], buttons)
}

/// How to put the app on the home screen; gone for good once put away or installed.
fn install_hint(view: &View) -> Node {
    let mut buttons = Vec::new();
    if view.can_install {
        buttons.push(button("", "Install".into(), "", Some(Tap::Act(Act::Install))));
    }
    let put_away = Act::Put(vec![("install_hint", "away".into())]);
    buttons.push(button("", "Don't show again".into(), "", Some(Tap::Act(put_away))));
    let how = vec![
        said("b", &[], "Keep it on your phone. ".into()),
        Node::Words(
            "It works without a network. On an iPhone or iPad: tap Share, then “Add to Home Screen”. \
             Elsewhere: the browser's menu, then “Install” or “Add to Home screen”."
                .into(),
        ),
    ];
    let children = vec![element("p", &[], how), element("div", &[("class", "actions")], buttons)];
    element("section", &[("class", "hint"), ("aria-label", "Install")], children)
}
