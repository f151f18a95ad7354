//! The blocks of a screen, each drawn from its data.

use leptos::prelude::*;

use super::browser;
use super::desk::Desk;
use super::field::{field, fix_buttons};
use super::label;
use super::part::{all, button, link, nothing, on_tap, paragraph};
use crate::screen::{Block, Deed, Do};
use crate::screen::{Cell, Row, Share};

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
        Block::Buttons(buttons) if buttons.is_empty() => nothing(),
        Block::Label(label) => label.as_ref().map_or_else(nothing, label::label),
        Block::Buttons(buttons) => {
            let buttons = all(buttons.iter().map(|shown| {
                let (deed, puts) = (shown.deed, shown.puts.clone());
                let tap = on_tap(move || match deed {
                    Some(Do::KeepYield) => desk.keep_yield(&puts),
                    Some(Do::Arm) => {
                        browser::raise("meniscus-arm");
                        desk.act(Deed::Put(&puts));
                    }
                    Some(deed) => desk.do_to_book(deed),
                    None => desk.act(Deed::Put(&puts)),
                });
                button("", shown.label.clone(), true, tap)
            }));
            view! { <div class="actions">{buttons}</div> }.into_any()
        }
        Block::Code(code, words) => {
            let side = code.size.to_string();
            view! {
                <figure class="code">
                    <svg viewBox=format!("0 0 {side} {side}") role="img" aria-label="QR code of the link below">
                        <path d=code.path.clone()></path>
                    </svg>
                    <figcaption>{words.clone()}</figcaption>
                </figure>
            }
            .into_any()
        }
        Block::Remark(words) => paragraph("remark", words.clone()),
        Block::Caution(words) => paragraph("caution", words.clone()),
    }
}

fn heading(words: &'static str) -> AnyView {
    view! { <h2>{words}</h2> }.into_any()
}

fn table_row(desk: Desk, row: &Row) -> AnyView {
    let typed = if row.typed.is_empty() { row.name.clone() } else { row.typed.clone() };
    let fixes = fix_buttons(&row.fixes, move |fixed| desk.act(Deed::Rewrite(&typed, fixed)));
    let puts = all(row.puts.iter().map(|(field, put)| {
        let puts = [(*field, put.text.clone())];
        let tap = on_tap(move || desk.act(Deed::Put(&puts)));
        view! {
            <button type="button" class="move" aria-label=put.spoken.clone() on:click=tap>{put.label.clone()}</button>
        }
        .into_any()
    }));
    let name = match row.href.as_str() {
        "" => view! { {row.name.clone()} }.into_any(),
        href => link(href.to_owned(), row.name.clone(), false),
    };
    view! {
        <li class=if row.marked { "marked" } else { "" }>
            <span class="name">{name}</span>
            <b>{row.amount.clone()}</b>
            <span class="detail">{row.detail.clone()}{fixes}</span>
            {shares(&row.shares)}
            <span class="moves">{puts}</span>
        </li>
    }
    .into_any()
}

/// Shares of the drink: a bar over its words each.
fn shares(shares: &[Share]) -> AnyView {
    if shares.is_empty() {
        return nothing();
    }
    let shares = all(shares.iter().map(|share| {
        view! {
            <span>
                <svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                    <rect class="whole" width="100" height="4"></rect>
                    <rect class="share" width=share.percent.to_string() height="4"></rect>
                </svg>
                <b>{share.words.clone()}</b>
                {share.of}
            </span>
        }
        .into_any()
    }));
    view! { <span class="shares">{shares}</span> }.into_any()
}

/// A figure under its label; one that explains itself opens when tapped anywhere.
fn cell(cell: &Cell) -> AnyView {
    let figure = view! { <b>{cell.figure.value.clone()}</b>" "{cell.figure.unit.clone()} }.into_any();
    let figure = match cell.about {
        "" => figure,
        about => view! { <details><summary>{figure}</summary><p>{about}</p></details> }.into_any(),
    };
    view! { <div class="cell"><dt>{cell.label.clone()}</dt><dd>{figure}</dd></div> }.into_any()
}

/// Clear, Undo and Copy.
fn actions(desk: Desk, clear: &'static str) -> AnyView {
    let copied = desk.sight.with(|sight| sight.copied.clone());
    let can_copy = desk.screen.with(|screen| !screen.copy.is_empty());
    let all = [
        match clear {
            "" => nothing(),
            clear => button("", clear.into(), true, on_tap(move || desk.act(Deed::Clear))),
        },
        button("", "Undo".into(), desk.can_undo(), on_tap(move || desk.undo())),
        button(
            "",
            if copied.is_empty() { "Copy".into() } else { copied },
            can_copy,
            on_tap(move || desk.copy(&desk.screen.with_untracked(|screen| screen.copy.clone()))),
        ),
    ];
    view! { <div class="actions" aria-live="polite">{Vec::from(all)}</div> }.into_any()
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
