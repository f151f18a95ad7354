//! The blocks of a screen, each drawn from its data.

use leptos::prelude::*;

use super::browser;
use super::desk::Desk;
use super::field::{field, fix_buttons};
use super::part::{all, button, link, nothing, on_tap, paragraph};
use crate::form::screen::{Block, Deed};
use crate::form::{Cell, Row};

/// One block.
pub(super) fn block(desk: Desk, block: &Block) -> AnyView {
    match block {
        Block::Field(shown) => field(desk, shown),
        Block::Actions(clear) => actions(desk, clear),
        Block::InstallHint => install_hint(desk),
        Block::Heading(words) => heading(words),
        Block::Table(_, rows) if rows.is_empty() => nothing(),
        Block::Cells(_, cells) if cells.is_empty() => nothing(),
        Block::Table(title, rows) => {
            let rows = all(rows.iter().map(|row| table_row(desk, row)));
            view! { {heading(title)}<ul class="rows">{rows}</ul> }.into_any()
        }
        Block::Cells(title, cells) => {
            let cells = all(cells.iter().map(cell));
            view! { {heading(title)}<dl class="cells">{cells}</dl> }.into_any()
        }
        Block::Carry(links) => {
            let links = all(links.iter().map(|to| link(to.href.clone(), to.label.clone(), false)));
            view! { {heading("Carry on")}<nav class="carry" aria-label="Carry on">{links}</nav> }.into_any()
        }
        Block::Remark(words) => paragraph("remark", words.clone()),
        Block::Caution(words) => paragraph("caution", words.clone()),
    }
}

fn heading(words: &'static str) -> AnyView {
    view! { <h2>{words}</h2> }.into_any()
}

fn table_row(desk: Desk, row: &Row) -> AnyView {
    let typed = row.name.clone();
    let fixes = fix_buttons(&row.fixes, move |fixed| desk.act(Deed::Rewrite(&typed, fixed)));
    view! {
        <li class=if row.marked { "marked" } else { "" }>
            <span class="name">{row.name.clone()}</span>
            <b>{row.amount.clone()}</b>
            <span class="detail">{row.detail.clone()}{fixes}</span>
        </li>
    }
    .into_any()
}

fn cell(cell: &Cell) -> AnyView {
    view! {
        <div class="cell">
            <dt>{cell.label.clone()}</dt>
            <dd><b>{cell.figure.value.clone()}</b>" "{cell.figure.unit.clone()}</dd>
        </div>
    }
    .into_any()
}

/// Clear, Undo and Copy.
fn actions(desk: Desk, clear: &'static str) -> AnyView {
    let copied = desk.sight.with(|sight| sight.copied.clone());
    let can_copy = desk.screen.with(|screen| !screen.copy.is_empty());
    let all = [
        button("", clear.into(), true, on_tap(move || desk.act(Deed::Clear))),
        button("", "Undo".into(), desk.slot().can_undo(), on_tap(move || desk.slot().undo())),
        button("", if copied.is_empty() { "Copy".into() } else { copied }, can_copy, on_tap(move || copy(desk))),
    ];
    view! { <div class="actions" aria-live="polite">{Vec::from(all)}</div> }.into_any()
}

/// Copies the answer, and says so on the button for a moment.
fn copy(desk: Desk) {
    let text = desk.screen.with_untracked(|screen| screen.copy.clone());
    browser::copy(&text, move |done| {
        desk.sight.update(|sight| sight.copied = if done { "Copied" } else { "Can't copy here" }.into());
        browser::later(2000, move || desk.sight.update(|sight| sight.copied.clear()));
    });
}

/// How to put the app on the home screen; gone for good once put away or installed.
fn install_hint(desk: Desk) -> AnyView {
    if browser::page_flag("data-installed") {
        return nothing();
    }
    let ask = match browser::page_flag("data-can-install") {
        true => button("", "Install".into(), true, on_tap(|| browser::raise("meniscus-install"))),
        false => nothing(),
    };
    let put_away = on_tap(move || desk.slot().set("install_hint", "away".into()));
    view! {
        <section class="hint" aria-label="Install">
            <p>
                <b>"Keep it on your phone. "</b>
                "It works without a network. On an iPhone or iPad: tap Share, then “Add to Home Screen”. \
                 Elsewhere: the browser's menu, then “Install” or “Add to Home screen”."
            </p>
            <div class="actions">{ask}{button("", "Don't show again".into(), true, put_away)}</div>
        </section>
    }
    .into_any()
}
