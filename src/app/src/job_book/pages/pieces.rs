//! The pieces of a part: ticked off when they are cut, and given their sizes on the tape.

use std::rc::Rc;

use reckoner_core::attention::{Fact, cutting_again, most_left};
use reckoner_core::job::bars::Bars;
use reckoner_core::job::sketch::Look;
use reckoner_core::job::{Dimension, Item, ItemId, Job, Part, PartSizes, Piece, PieceState};
use reckoner_core::measure::text::Quantity;
use yew::prelude::*;

use super::attention::of_piece;
use super::spoiled::{self, Spoiled, is_begun};
use super::{Open, Shared, bar, drafts};
use crate::components::drawing::outline;
use crate::components::heard::Heard;
use crate::components::icon::{Icon, icon};
use crate::components::measure::{length as length_view, spoken};
use crate::form::at_hand::{KnownNames, Manner, use_at_hand_as};
use crate::form::view::asks;
use crate::job_book::forms::{PIECE, entries_of_piece};
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
    let state = part.piece(index).state();
    let number = index.saturating_add(1);
    let (reckoned, bench) = (open.reckoned.clone(), open.settings.bench);
    let onclick = open.making(move |job| {
        let Item::Part(part) = job.item(id)? else { return None };
        if part.piece(index).is_cut() {
            job.not_cutting(id, index)
        } else {
            job.cutting_pieces(&reckoned, &bench, &[(id, index)])
        }
    });
    let is_cut = state == PieceState::Cut;
    let is_off = open.attention.facts.iter().any(|it| it.of_piece(id, index).is_some());
    let (words, class) = match state {
        PieceState::Cut if is_off => ("cut, look at it", "is-off"),
        PieceState::Cut => ("cut", ""),
        PieceState::Again => ("cut again", "is-again"),
        PieceState::ToCut => ("cut", ""),
    };
    html! {
        <button type="button" class={classes!("tick", class)} aria-pressed={if is_cut { "true" } else { "false" }}
            aria-label={format!("{} {number} of {count}, {words}", part.name)}
            data-testid={format!("tick-{}-{number}", part.name)} {onclick}>
            if is_cut && is_off { { "!" } } else if is_cut { { icon(Icon::Tick) } } else { { number } }
        </button>
    }
}

/// A piece to scale, beside its words.
pub(super) fn to_scale(bars: &Bars, it: &PartSizes, look: Look, is_ours: bool) -> Html {
    html! {
        if let Some(bar) = bars.bar(it, look, is_ours) {
            <span class="to-scale" aria-hidden="true">{ outline(&bar) }</span>
        }
    }
}

/// The pieces on the page of their part, each with what it is.
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
    let first = page.saturating_mul(ON_A_PAGE);
    let last = first.saturating_add(ON_A_PAGE).min(count);
    // Those that are cut beyond what is wanted stand at the end.
    let beyond =
        (count..part.pieces.len()).filter(|index| last == count && part.piece(*index).is_cut());
    let row = |index: usize| {
        let number = index.saturating_add(1);
        html! {
            <li class="piece">
                { tick(open, *id, part, index, count) }
                <a class="row piece__row" href={open.at(&format!("piece/{}/{index}", id.0))}
                    data-testid={format!("piece-{number}")}>
                    <span class="row__name">{ format!("Piece {number}") }</span>
                    <span class="row__value">{ state_of(open, *id, index, &part.piece(index)) }</span>
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
            <ul class="rows">{ for (first..last).chain(beyond).map(row) }</ul>
            if count > ON_A_PAGE {
                <div class="adds">
                    if *page > 0 { { turn(page.saturating_sub(1), "Pieces before".to_owned(), "pieces-before") } }
                    if last < count { { turn(page.saturating_add(1), format!("Pieces after {last}"), "pieces-after") } }
                </div>
            }
        </section>
    }
}

/// What a piece is, and whether it wants looking at.
fn state_of(open: &Open, id: ItemId, index: usize, piece: &Piece) -> Html {
    match piece.state() {
        PieceState::ToCut => "the tape says …".into(),
        PieceState::Again => html! { <span class="badge is-short">{ "to cut again" }</span> },
        PieceState::Cut => html! {
            <>
                { sizes_of(open, piece) }
                { for open.attention.facts.iter().filter_map(|it| it.of_piece(id, index)).map(|it| badge(&it)) }
                { for open.attention.left.iter().filter_map(|it| it.of_piece(id, index)).map(|_| html! {
                    <span class="badge">{ "left as it is" }</span>
                }) }
            </>
        },
    }
}

/// What a piece is: thickness, width and length.
fn sizes_of(open: &Open, piece: &Piece) -> Html {
    let tape = open.settings.bench.tape;
    let size = |of: Dimension| match piece.size(of, &open.reckoned) {
        Some(Ok(length)) => length_view(length, tape),
        Some(Err(_)) => {
            html! { <span class="row__problem">{ piece.tape(of).unwrap_or("?") }</span> }
        }
        None => "?".into(),
    };
    html! {
        <>{ size(Dimension::Thickness) }{ " × " }{ size(Dimension::Width) }{ " × " }{ size(Dimension::Length) }</>
    }
}

fn badge(fact: &Fact) -> Html {
    let words = match fact {
        Fact::NotRecorded { .. } => "size not recorded",
        Fact::NotWanted { .. } => "not wanted any more",
        fact => fact.lean().unwrap_or("cannot be read"),
    };
    html! { <span class="badge is-short">{ words }</span> }
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
    let (names, manner) = (KnownNames::default(), Manner::of_no_examples());
    let at_hand = use_at_hand_as(form.clone(), sheet.clone(), open.settings.clone(), names, manner);
    // What was being written down of what is left goes on, also where another window leaves it to this one later.
    let is_begun = is_begun(open, id, index);
    let is_spoiled = use_state_eq(|| is_begun);
    {
        let is_spoiled = is_spoiled.clone();
        use_effect_with(is_begun, move |is_begun| {
            if *is_begun {
                is_spoiled.set(true);
            }
        });
    }
    let is_keying_too = use_state_eq(|| false);
    let Some(part) = part else { return super::lost(open) };
    let piece = part.piece(index);
    let wanted = open.reckoned.part(id).map(PartSizes::all_wanted).unwrap_or_default();
    let size = |of: Dimension| match wanted.get(of) {
        Some(length) => length_view(*length, bench.tape),
        None => "–".into(),
    };
    // What is wrong with it stands beside the size that is wrong.
    let (verdict, of) = verdict(open, id, index, &piece);
    let label = match of {
        Dimension::Thickness => "Thickness wanted",
        Dimension::Width => "Width wanted",
        Dimension::Length => "Length wanted",
    };
    let [(first, a), (second, b)] = match of {
        Dimension::Thickness => [("Width", Dimension::Width), ("length", Dimension::Length)],
        Dimension::Width => [("Thickness", Dimension::Thickness), ("length", Dimension::Length)],
        Dimension::Length => [("Thickness", Dimension::Thickness), ("width", Dimension::Width)],
    };
    let again = {
        let (open, is_spoiled) = (open.clone(), is_spoiled.clone());
        Callback::from(move |_: MouseEvent| {
            // What was begun to be said of what is left is not so.
            let left = spoiled::place(id, index);
            let reckoned = open.reckoned.clone();
            let step = |job: &Job| cutting_again(job, &reckoned, id, &[index], false);
            open.on_page.make_and_end(&left, step);
            is_spoiled.set(false);
        })
    };
    let can_be_left = most_left(&open.book.job, &open.reckoned, id, index).is_some();
    let is_keying = at_hand.is_keying() || *is_keying_too;
    let to = |is: bool| {
        let (is_spoiled, is_keying_too) = (is_spoiled.clone(), is_keying_too.clone());
        Callback::from(move |()| {
            is_spoiled.set(is);
            is_keying_too.set(false);
        })
    };
    let on_keying = {
        let is_keying_too = is_keying_too.clone();
        Callback::from(move |is: bool| is_keying_too.set(is))
    };
    let title = format!("{}, piece {}", part.name, index.saturating_add(1));
    html! {
        <div class={classes!("page", "page--item", is_keying.then_some("is-keying is-close"))}>
            { bar(open, &open.at(&format!("item/{}", id.0)), &title) }
            <main class="bench">
                <section class="answer" aria-label="What it comes to">
                    <Heard words={format!("{label}: {}, {verdict}", spoken(wanted.get(of).map(Quantity::Length), bench.tape))}
                        typed={at_hand.form.entries().clone()} />
                    <div class="headline" data-testid="answer-headline">
                        <div class="headline__inside is-short">
                            <p class="headline__label">{ label }</p>
                            <p class="headline__figure">{ size(of) }</p>
                            <p class="headline__rest"><span class="lean">{ verdict }</span></p>
                        </div>
                    </div>
                    { drafts::offers(open, &place) }
                    <p class="job__words">{ first }{ " wanted " }{ size(a) }{ format!(", {second} ") }{ size(b) }{ "." }</p>
                    if piece.state() != PieceState::ToCut {
                        <p class="job__words" data-testid="piece-is">
                            { if piece.is_cut() { "It is " } else { "It was " } }{ sizes_of(open, &piece) }{ "." }
                        </p>
                    }
                    { of_piece(open, id, index) }
                </section>
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    if can_be_left && *is_spoiled {
                        <Spoiled open={Shared(open.clone())} {id} {index} close={to(false)} {on_keying} />
                    }
                    if piece.is_cut() {
                        <div class="adds">
                            <button type="button" class="tool" data-testid="spoiled" onclick={again}>{ "Spoiled: cut another" }</button>
                            if can_be_left && !*is_spoiled {
                                <button type="button" class="tool" data-testid="spoiled-rack"
                                    onclick={to(true).reform(|_: MouseEvent| ())}>
                                    { "Spoiled: what is left goes on the rack" }
                                </button>
                            }
                        </div>
                    }
                </section>
            </main>
        </div>
    }
}

/// How a piece stands, and the size of it that this is about.
fn verdict(open: &Open, id: ItemId, index: usize, piece: &Piece) -> (&'static str, Dimension) {
    let facts = || open.attention.facts.iter().filter_map(|it| it.of_piece(id, index));
    let words = match piece.state() {
        PieceState::ToCut => "not cut yet",
        PieceState::Again => "to cut again",
        PieceState::Cut if facts().any(|it| matches!(it, Fact::Unread { .. })) => "cannot be read",
        PieceState::Cut => match facts().next() {
            None => "as wanted",
            Some(Fact::NotRecorded { .. }) => "size not recorded",
            Some(Fact::NotWanted { .. }) => "not wanted any more",
            Some(fact) => {
                let of = if let Fact::Off { of, .. } = fact { of } else { Dimension::Length };
                return (fact.lean().unwrap_or("look at it"), of);
            }
        },
    };
    (words, Dimension::Length)
}
