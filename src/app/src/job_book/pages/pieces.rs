//! The pieces of a part: ticked off when they are cut, and given their length on the tape.

use std::rc::Rc;

use reckoner_core::job::rescue::{Cut, off_by, troubles};
use reckoner_core::job::{Item, ItemId, Part, PartSizes, Piece, Step};
use reckoner_core::measure::Length;
use yew::prelude::*;

use super::attention::ways;
use super::{Open, Shared, bar};
use crate::components::icon::{Icon, icon};
use crate::components::measure::length as length_view;
use crate::form::at_hand::use_at_hand;
use crate::form::view::asks;
use crate::job_book::forms::{PIECE, entries_of_piece, with_piece};
use crate::job_book::kept_form::use_kept_form;

/// Pieces ticked on one page of the list; a long run has more pages.
const ON_A_PAGE: usize = 40;

/// One box for each piece, ticked when it is cut.
pub(super) fn ticks(open: &Open, part: &Part, it: &PartSizes) -> Html {
    let Ok(count) = it.quantity.clone() else { return html! {} };
    let count = count as usize;
    html! {
        <div class="ticks">
            { for (0..count.min(ON_A_PAGE)).map(|index| tick(open, it.id, part, index, count)) }
            if count > ON_A_PAGE {
                <a class="tool" href={open.at(&format!("item/{}", it.id.0))}
                    data-testid={format!("more-{}", part.name)}>{ format!("all {count} pieces") }</a>
            }
        </div>
    }
}

fn tick(open: &Open, id: ItemId, part: &Part, index: usize, count: usize) -> Html {
    let is_done = part.pieces.get(index).is_some_and(|piece| piece.done);
    let number = index.saturating_add(1);
    let onclick = open.making(move |job| {
        let Item::Part(part) = job.item(id)? else { return None };
        let old = part.pieces.get(index).cloned().unwrap_or_default();
        let words = if old.done {
            format!("put {} {number} back", part.name)
        } else {
            format!("cut {} {number}", part.name)
        };
        let ticked = with_piece(part, index, Piece { done: !old.done, ..old });
        Some(Step::new(words, vec![job.replacing(id, Item::Part(ticked))]))
    });
    html! {
        <button type="button" class="tick" aria-pressed={if is_done { "true" } else { "false" }}
            aria-label={format!("{} {number} of {count}, cut", part.name)}
            data-testid={format!("tick-{}-{number}", part.name)} {onclick}>
            if is_done { { icon(Icon::Tick) } } else { { number } }
        </button>
    }
}

/// The pieces on the page of their part, each with its length as cut.
pub(super) fn list(open: &Open, id: ItemId) -> Html {
    html! { <List open={Shared(open.clone())} {id} /> }
}

#[derive(Properties, PartialEq)]
struct ListProps {
    open: Shared,
    id: ItemId,
}

#[component]
fn List(props: &ListProps) -> Html {
    let ListProps { open: Shared(open), id } = props;
    let page = use_state_eq(|| 0_usize);
    let Some(Item::Part(part)) = open.book.job.item(*id) else { return html! {} };
    let Some(sizes) = open.reckoned.part(*id) else { return html! {} };
    let Ok(count) = sizes.quantity else { return html! {} };
    let count = count as usize;
    let wanted = sizes.length.as_ref().ok().copied();
    let first = page.saturating_mul(ON_A_PAGE);
    let last = first.saturating_add(ON_A_PAGE).min(count);
    let row = |index: usize| {
        let piece = part.pieces.get(index);
        let as_cut = piece.and_then(|it| it.as_cut.as_ref());
        let number = index.saturating_add(1);
        let state = as_cut.map(|text| state(open, text, wanted));
        html! {
            <li class="piece">
                { tick(open, *id, part, index, count) }
                <a class="row piece__row" href={open.at(&format!("piece/{}/{index}", id.0))}
                    data-testid={format!("piece-{number}")}>
                    <span class="row__name">{ format!("Piece {number}") }</span>
                    <span class="row__value">{ state.unwrap_or_else(|| "as cut …".into()) }</span>
                </a>
            </li>
        }
    };
    let turn = |to: usize, label: String, id: &'static str| {
        let page = page.clone();
        let onclick = Callback::from(move |_: MouseEvent| page.set(to));
        html! { <button type="button" class="tool" data-testid={id} {onclick}>{ label }</button> }
    };
    html! {
        <section class="pieces" aria-label="Pieces" data-testid="pieces">
            <h2 class="job__title">{ format!("Pieces: {} of {count} cut", sizes.done) }</h2>
            <ul class="rows">{ for (first..last).map(row) }</ul>
            if count > ON_A_PAGE {
                <div class="adds">
                    if *page > 0 { { turn(page.saturating_sub(1), "Pieces before".to_owned(), "pieces-before") } }
                    if last < count { { turn(page.saturating_add(1), format!("Pieces after {last}"), "pieces-after") } }
                </div>
            }
        </section>
    }
}

/// A length as cut, and how it stands to the length wanted.
fn state(open: &Open, text: &str, wanted: Option<Length>) -> Html {
    let tape = open.settings.bench.tape;
    match open.reckoned.length_of(text) {
        Err(_) => html! { <span class="row__problem">{ text }</span> },
        Ok(length) => html! {
            <>
                { length_view(length, tape) }
                if wanted.is_some_and(|wanted| length < wanted) { <span class="badge is-short">{ "short" }</span> }
                if wanted.is_some_and(|wanted| length > wanted) { <span class="badge">{ "long" }</span> }
            </>
        },
    }
}

/// The page of one piece: `piece/PART/INDEX`.
pub(super) fn page(open: &Open, id: ItemId, index: usize) -> Html {
    html! { <PiecePage key={format!("{}-{index}", id.0)} open={Shared(open.clone())} {id} {index} /> }
}

#[derive(Properties, PartialEq)]
struct PiecePageProps {
    open: Shared,
    id: ItemId,
    index: usize,
}

#[component]
fn PiecePage(props: &PiecePageProps) -> Html {
    let PiecePageProps { open: Shared(open), id, index } = props;
    let (id, index) = (*id, *index);
    let part = match open.book.job.item(id) {
        Some(Item::Part(part)) => Some(part),
        _ => None,
    };
    let stored = part.map(|part| {
        let mut entries = entries_of_piece(part, index);
        entries.set_unit(Some(open.book.job.unit));
        entries
    });
    let place = format!("piece/{}/{index}", id.0);
    let form = use_kept_form(open.keeping(), &place, &PIECE, stored.unwrap_or_default());
    let bench = open.settings.bench;
    let sheet = Rc::new(PIECE.sheet(form.entries(), &bench, &*open.reckoned));
    let at_hand = use_at_hand(form.clone(), sheet.clone(), open.settings.clone(), Rc::default());
    let Some(part) = part else { return super::lost(open) };
    let wanted = open.reckoned.length_of(&part.length).ok();
    let as_cut = part.pieces.get(index).and_then(|it| it.as_cut.as_ref());
    let as_cut = as_cut.and_then(|text| open.reckoned.length_of(text).ok());
    let all = troubles(&open.book.job, &open.reckoned, bench.tape);
    let trouble = all.into_iter().find(|it| it.cut == Cut::Piece(id, index));
    let title = format!("{}, piece {}", part.name, index.saturating_add(1));
    html! {
        <div class={classes!("page", "page--item", at_hand.is_keying().then_some("is-keying"))}>
            { bar(open, &open.at(&format!("item/{}", id.0)), &title) }
            <main class="bench">
                <section class="answer" aria-label="What it comes to">
                    <div class="headline" data-testid="answer-headline" role="status">
                        <div class="headline__inside is-short">
                            <p class="headline__label">{ "Length wanted" }</p>
                            <p class="headline__figure">{ wanted.map_or_else(|| "–".into(), |it| length_view(it, bench.tape)) }</p>
                            <p class="headline__rest"><span class="lean">{ verdict(as_cut, wanted) }</span></p>
                        </div>
                    </div>
                    if let (Some(as_cut), Some(wanted)) = (as_cut, wanted) { { off(open, as_cut, wanted) } }
                    if let Some(trouble) = trouble {
                        <section class="attention" aria-label="Ways out" data-testid="attention">{ ways(open, trouble) }</section>
                    }
                </section>
                <section class="sizes" aria-label="What is asked">{ asks(&at_hand) }</section>
            </main>
        </div>
    }
}

fn verdict(as_cut: Option<Length>, wanted: Option<Length>) -> &'static str {
    match (as_cut, wanted) {
        (Some(as_cut), Some(wanted)) if as_cut < wanted => "too short",
        (Some(as_cut), Some(wanted)) if as_cut > wanted => "too long: trim it",
        (Some(_), Some(_)) => "as wanted",
        (None, Some(_)) => "not measured yet",
        (_, None) => "the part has no length yet",
    }
}

fn off(open: &Open, as_cut: Length, wanted: Length) -> Html {
    let tape = open.settings.bench.tape;
    match off_by(as_cut, wanted) {
        Some(by) if !by.is_zero() => html! {
            <p class="job__words" data-testid="off-by">
                { "Cut at " }{ length_view(as_cut, tape) }{ ": " }{ length_view(by.abs(), tape) }
                { if by.is_negative() { " short." } else { " long." } }
            </p>
        },
        _ => html! {},
    }
}
