//! The blocks of a screen, each drawn from its data.

use super::field::{field, fix_buttons};
use super::label::label;
use super::node::{Element, Node, Tap, Text, button, element, link, said, words};
use crate::desk::View;
use crate::screen::{Act, Block, Button, Cell, Row, Share};
use crate::text::Qr;

/// The pieces of a block.
pub(super) fn block(view: &View, block: &Block) -> Vec<Node> {
    match block {
        Block::Field(shown) => field(view, shown),
        Block::Actions(clear) => vec![actions(view, clear)],
        Block::InstallHint if view.is_installed => Vec::new(),
        Block::InstallHint => vec![install_hint(view)],
        Block::Heading(words) => vec![heading(words)],
        Block::Table(_, rows) if rows.is_empty() => Vec::new(),
        Block::Cells(_, cells) if cells.is_empty() => Vec::new(),
        Block::Table(title, rows) => {
            vec![heading(title), element("ul", &[("class", "rows")], rows.iter().map(row).collect())]
        }
        Block::Cells(title, cells) => {
            vec![heading(title), element("dl", &[("class", "cells")], cells.iter().map(cell).collect())]
        }
        Block::Carry(links) => {
            let links = links.iter().map(|to| link(&to.href, to.label.clone(), false)).collect();
            let fixed = &[("class", "carry"), ("aria-label", "Carry on")];
            vec![heading("Carry on"), element("nav", fixed, links)]
        }
        Block::Buttons(buttons) if buttons.is_empty() => Vec::new(),
        Block::Buttons(buttons) => {
            let buttons = buttons.iter().map(|shown| act_button("", shown)).collect();
            vec![element("div", &[("class", "actions")], buttons)]
        }
        Block::Label(shown) => shown.iter().map(label).collect(),
        Block::Code(shown, words) => vec![code(shown, words)],
        Block::Remark(words) => vec![said("p", &[("class", "remark")], words.clone())],
        Block::Caution(words) => vec![said("p", &[("class", "caution")], words.clone())],
    }
}

/// A button that carries its act.
pub(super) fn act_button(class: &'static str, shown: &Button) -> Node {
    button(class, shown.label.clone(), &shown.spoken, Some(Tap::Act(shown.act.clone())))
}

fn heading(words: &'static str) -> Node {
    said("h2", &[], words)
}

fn row(row: &Row) -> Node {
    let typed = if row.typed.is_empty() { &row.name } else { &row.typed };
    let mut detail = vec![words(row.detail.clone())];
    fix_buttons(&row.fixes, |fixed| Tap::Act(Act::Rewrite(typed.clone(), fixed)), &mut detail);
    let name = match row.href.as_str() {
        "" => words(row.name.clone()),
        href => link(href, row.name.clone(), false),
    };
    let mut children = vec![
        element("span", &[("class", "name")], vec![name]),
        said("b", &[], row.amount.clone()),
        element("span", &[("class", "detail")], detail),
    ];
    if !row.shares.is_empty() {
        children.push(element("span", &[("class", "shares")], row.shares.iter().map(share).collect()));
    }
    let moves = row.buttons.iter().map(|shown| act_button("move", shown)).collect();
    children.push(element("span", &[("class", "moves")], moves));
    let attributes = if row.marked { vec![("class", "marked".into())] } else { Vec::new() };
    Element { tag: "li", attributes, children, ..Element::default() }.into()
}

/// A share of the drink: a bar over its words.
fn share(share: &Share) -> Node {
    let part = Element {
        tag: "rect",
        fixed: &[("class", "share"), ("height", "4")],
        attributes: vec![("width", share.percent.to_string().into())],
        ..Element::default()
    };
    let whole = element("rect", &[("class", "whole"), ("width", "100"), ("height", "4")], Vec::new());
    let fixed = &[("viewBox", "0 0 100 4"), ("preserveAspectRatio", "none"), ("aria-hidden", "true")];
    let bar = element("svg", fixed, vec![whole, part.into()]);
    element("span", &[], vec![bar, said("b", &[], share.words.clone()), words(share.of)])
}

/// A figure under its label; one that explains itself opens when tapped anywhere.
fn cell(cell: &Cell) -> Node {
    let figure = vec![said("b", &[], cell.figure.value.clone()), words(" "), words(cell.figure.unit.clone())];
    let figure = match cell.about {
        "" => figure,
        about => {
            vec![element("details", &[], vec![element("summary", &[], figure), said("p", &[], about)])]
        }
    };
    let children = vec![said("dt", &[], cell.label.clone()), element("dd", &[], figure)];
    element("div", &[("class", "cell")], children)
}

fn code(code: &Qr, said_below: &str) -> Node {
    let side = code.size.to_string();
    let path = Element { tag: "path", attributes: vec![("d", Text::Owned(code.path.clone()))], ..Element::default() };
    let drawing = Element {
        tag: "svg",
        fixed: &[("role", "img"), ("aria-label", "QR code of the link below")],
        attributes: vec![("viewBox", format!("0 0 {side} {side}").into())],
        children: vec![path.into()],
        ..Element::default()
    };
    let caption = said("figcaption", &[], said_below.to_owned());
    element("figure", &[("class", "code")], vec![drawing.into(), caption])
}

/// Clear, Undo and Copy.
fn actions(view: &View, clear: &'static str) -> Node {
    let copy = if view.copied.is_empty() { "Copy".into() } else { Text::Owned(view.copied.clone()) };
    let mut buttons = Vec::new();
    if !clear.is_empty() {
        buttons.push(button("", clear, "", Some(Tap::Act(Act::Empty))));
    }
    let undo = view.undo.as_ref().map_or("Undo".into(), |words| Text::Owned(format!("Undo: {words}")));
    buttons.push(button("undo", undo, "", view.undo.is_some().then_some(Tap::Act(Act::Undo))));
    buttons.push(button("", copy, "", (!view.screen.copy.is_empty()).then_some(Tap::Act(Act::Copy))));
    element("div", &[("class", "actions"), ("aria-live", "polite")], buttons)
}

/// How to put the app on the home screen; gone for good once put away or installed.
fn install_hint(view: &View) -> Node {
    let mut buttons = Vec::new();
    if view.can_install {
        buttons.push(button("", "Install", "", Some(Tap::Act(Act::Install))));
    }
    let put_away = Act::Put(vec![("install_hint", "away".into())]);
    buttons.push(button("", "Don't show again", "", Some(Tap::Act(put_away))));
    let how = vec![
        said("b", &[], "Keep it on your phone. "),
        words(
            "It works without a network. On an iPhone or iPad: tap Share, then “Add to Home Screen”. \
             Elsewhere: the browser's menu, then “Install” or “Add to Home screen”.",
        ),
    ];
    let children = vec![element("p", &[], how), element("div", &[("class", "actions")], buttons)];
    element("section", &[("class", "hint"), ("aria-label", "Install")], children)
}
