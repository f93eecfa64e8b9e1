//! Parts, and the rack.

use std::iter;
use std::rc::Rc;

use reckoner_core::attention::Fact;
use reckoner_core::job::bars::{Bars, Group};
use reckoner_core::job::sketch::Look;
use reckoner_core::job::{Item, ItemId, OnOurs, Part, PartSizes, Step, YardBoard};
use reckoner_core::measure::Length;
use reckoner_core::measure::text::{Quantity, TextProblem};
use reckoner_core::sentence::counted;
use reckoner_core::sheet::money;
use yew::prelude::*;

use super::drafts::to_look_at;
use super::long_list::long_list;
use super::pieces::{ticks, to_scale};
use super::{Open, Shared, add, row};
use crate::components::drawing::outline;
use crate::components::measure::{length, quantity};
use crate::components::stepper::{ENOUGH, Stepper, take_out};
use crate::words::together;

fn size(open: &Open, length: &Result<Length, TextProblem>) -> Html {
    match length {
        Ok(length) => quantity(Some(Quantity::Length(*length)), open.settings.bench.tape),
        Err(_) => html! { <span class="row__problem">{ "?" }</span> },
    }
}

/// A row of the list of pieces: what those that follow are cut from, or a part.
#[derive(Clone, Copy)]
enum Row {
    From(usize),
    Part(ItemId),
}

pub(super) fn parts(open: &Open) -> Html {
    let bars = Rc::new(Bars::of(&open.book.job, &open.reckoned));
    let on_ours = OnOurs::of(&open.book.job, &open.reckoned);
    let rows: Vec<Row> = bars
        .groups
        .iter()
        .enumerate()
        .flat_map(|(at, group)| {
            iter::once(Row::From(at)).chain(group.parts.iter().copied().map(Row::Part))
        })
        .collect();
    html! {
        <>
            { to_look_at(open) }
            if rows.is_empty() { <p class="job__words">{ "No piece yet." }</p> }
            <ul class="rows" data-testid="parts">
                { long_list(rows.len(), {
                    let open = open.clone();
                    move |at| {
                        let row = rows.get(at).and_then(|row| match *row {
                            Row::From(at) => Some(from(&open, &bars, bars.groups.get(at)?)),
                            Row::Part(id) => match open.book.job.item(id) {
                                Some(Item::Part(part)) => Some(part_row(&open, (&bars, &on_ours), part, open.reckoned.part(id)?)),
                                _ => None,
                            },
                        });
                        row.unwrap_or_default()
                    }
                }) }
            </ul>
            <div class="adds">{ add(open, "part", "Add a piece") }</div>
        </>
    }
}

/// What the pieces below are cut from: the end of its boards, its name, its size.
fn from(open: &Open, bars: &Bars, group: &Group) -> Html {
    let tape = open.settings.bench.tape;
    let stock = if group.stock.is_empty() { "any board" } else { &group.stock };
    html! {
        <li class="from">
            <h2 class="from__head">
                if let Some(end) = bars.end(group) { <span class="from__end" aria-hidden="true">{ outline(&end) }</span> }
                <span class="from__name">{ format!("From {stock}") }</span>
                if let Some((thickness, width)) = group.size {
                    <span class="from__size">{ length(thickness, tape) }{ " × " }{ length(width, tape) }</span>
                }
            </h2>
        </li>
    }
}

fn part_row(open: &Open, (bars, on_ours): (&Bars, &OnOurs), part: &Part, it: &PartSizes) -> Html {
    let name = |id: &ItemId| open.book.job.item(*id).map_or("", Item::name);
    let sides = [
        ("How many", &part.quantity, it.quantity.as_ref().err()),
        ("Thickness", &part.thickness, it.thickness.as_ref().err()),
        ("Width", &part.width, it.width.as_ref().err()),
        ("Length", &part.length, it.length.as_ref().err()),
    ];
    let problem = sides.into_iter().find_map(|(side, text, problem)| match problem? {
        _ if text.trim().is_empty() => Some(format!("{side} is still to write.")),
        problem => Some(format!("{side}: {problem}")),
    });
    let waits: Vec<&str> = it.waits_for.iter().map(name).collect();
    let is_ours = on_ours.has_sizes_of(&open.reckoned, it.id, part);
    html! {
        <li class="part">
            <a class="row" href={open.at(&format!("item/{}", it.id.0))} data-testid={format!("item-{}", part.name)}>
                <span class="row__name">{ &part.name }</span>
                <span class="row__value">
                    <span class={is_ours.then_some("is-pencil")}>{ size(open, &it.thickness) }{ " × " }{ size(open, &it.width) }{ " × " }{ size(open, &it.length) }</span>
                </span>
                { to_scale(bars, it, part_look(open, it), is_ours) }
                if is_ours || !waits.is_empty() {
                    <span class="row__more">
                        if is_ours { <span class="badge is-ours">{ "example" }</span> }
                        if !waits.is_empty() { <span class="badge is-wait">{ format!("wait: measure {}", waits.join(", ")) }</span> }
                    </span>
                }
                if let Some(words) = problem { <span class="row__problem">{ words }</span> }
            </a>
            <div class="part__work">
                { ticks(open, part, it) }
                { stepper(open, it.id, part) }
            </div>
        </li>
    }
}

/// How the pieces of a part stand, in one.
fn part_look(open: &Open, it: &PartSizes) -> Look {
    let is_off = |fact: &Fact| match fact {
        Fact::Off { part, .. } | Fact::NotRecorded { part, .. } => *part == it.id,
        Fact::Unread { item, piece, .. } => *item == it.id && piece.is_some(),
        _ => false,
    };
    if open.attention.facts.iter().any(is_off) {
        Look::Wrong
    } else if it.quantity.as_ref().is_ok_and(|count| it.done >= *count) {
        Look::Cut
    } else {
        Look::ToCut
    }
}

/// One piece fewer, how many, one more.
fn stepper(open: &Open, id: ItemId, part: &Part) -> Html {
    let counting = |counted: fn(&Part) -> Option<Part>| {
        counted(part).map(|_| {
            open.making(move |job| {
                let Item::Part(part) = job.item(id)? else { return None };
                let words = format!("change how many {}", part.name);
                Some(Step::new(words, vec![job.replacing(id, Item::Part(counted(part)?))]))
            })
        })
    };
    html! {
        <Stepper id={format!("of-{}", part.name)} name={part.name.clone()} count={part.quantity.clone()}
            fewer={counting(Part::one_fewer)} more={counting(Part::one_more)} />
    }
}

pub(super) fn rack(open: &Open) -> Html {
    let group = |title: &str, form: &str, label: &str, is_of: fn(&Item) -> bool| {
        let mut here = open.book.job.items().filter(|(_, item)| is_of(item)).peekable();
        html! {
            <section class="batches">
                <h2>{ title }</h2>
                if here.peek().is_some() {
                    <ul class="rows">
                        { for here.map(|(id, item)| match item {
                            Item::YardBoard(board) => html! {
                                <YardRow key={id.0} open={Shared(open.clone())} {id} board={board.clone()} />
                            },
                            item => row(open, id, item.name(), named(item)),
                        }) }
                    </ul>
                }
                if !(["sketch", "close"].contains(&form) && open.book.job.items().any(|(_, item)| is_of(item))) {
                    <div class="adds">{ add(open, form, label) }</div>
                }
            </section>
        }
    };
    html! {
        <div data-testid="rack">
            { group("On my rack", "board", "Add a board", |it| matches!(it, Item::RackBoard(_))) }
            { group("At the yard", "yard", "Add a length", |it| matches!(it, Item::YardBoard(_))) }
            { group("Round things I own", "round", "Add a round thing", |it| matches!(it, Item::Round(_))) }
            { group("My saws", "saw", "Add a saw", |it| matches!(it, Item::Saw(_))) }
            { group("Sketch", "sketch", "Add a sketch", |it| matches!(it, Item::Sketch(_))) }
            { group("Close enough", "close", "Say what is close enough", |it| matches!(it, Item::CloseEnough(_))) }
            { group("Screws I have", "screw", "Add screws", |it| matches!(it, Item::Screw(_))) }
        </div>
    }
}

fn named(item: &Item) -> Html {
    html! { <><span class="row__name">{ item.name() }</span><span class="row__more">{ about(item) }</span></> }
}

#[derive(Properties, PartialEq)]
struct YardRowProps {
    open: Shared,
    id: ItemId,
    board: YardBoard,
}

/// A length at the yard with how many can be had. One fewer than one asks whether the row goes.
#[component]
fn YardRow(props: &YardRowProps) -> Html {
    let YardRowProps { open: Shared(open), id, board } = props;
    let id = *id;
    let item = Item::YardBoard(board.clone());
    let name = item.name().to_owned();
    let is_asking = use_state_eq(|| false);
    let asking = |asks: bool| {
        let is_asking = is_asking.clone();
        Callback::from(move |_: MouseEvent| is_asking.set(asks))
    };
    let counting = |counted: fn(&YardBoard) -> Option<YardBoard>| {
        let is_asking = is_asking.clone();
        let make = open.making(move |job| {
            let Item::YardBoard(board) = job.item(id)? else { return None };
            let words = format!("change how many {} at the yard", job.item(id)?.name());
            Some(Step::new(words, vec![job.replacing(id, Item::YardBoard(counted(board)?))]))
        });
        Callback::from(move |event: MouseEvent| {
            is_asking.set(false);
            make.emit(event);
        })
    };
    let taking = open.making(move |job| {
        let words = format!("take out {}", job.item(id)?.name());
        Some(Step::new(words, vec![job.removing(id)]))
    });
    let fewer =
        if board.one_fewer().is_some() { counting(YardBoard::one_fewer) } else { asking(true) };
    let key = format!("at-yard-{}", id.0);
    html! {
        <li class="part">
            <a class="row" href={open.at(&format!("item/{}", id.0))} data-testid={format!("item-{name}")}>{ named(&item) }</a>
            if *is_asking {
                { take_out(&key, taking, asking(false)) }
            } else {
                <div class="part__work">
                    <span class="row__more">{ "they have" }</span>
                    <Stepper id={key} name={format!("{name} × {}", board.length)} meant={ENOUGH}
                        count={board.quantity.map_or_else(String::new, |count| count.to_string())} fewer={fewer}
                        more={board.one_more().map(|_| counting(YardBoard::one_more))} />
                </div>
            }
        </li>
    }
}

/// The sizes of a thing on the rack, as written.
fn about(item: &Item) -> String {
    match item {
        Item::RackBoard(it) => {
            let wet = if it.wet { ", wet" } else { "" };
            let sizes = together([&it.thickness, &it.width, &it.length]);
            format!("{}, {sizes}, {}{wet}", counted(it.quantity, " board"), it.section)
        }
        Item::YardBoard(it) => {
            let cents = i64::try_from(it.price).ok().filter(|cents| *cents > 0);
            let price = cents.map_or("no price yet".to_owned(), money);
            format!("{}, {price}", together([&it.thickness, &it.width, &it.length]))
        }
        Item::Round(it) => format!("{} across", it.diameter),
        Item::Saw(it) => format!("kerf {}, reach {}", it.kerf, it.reach),
        Item::CloseEnough(it) if it.size.is_empty() => "half a mark of the tape".to_owned(),
        Item::CloseEnough(it) => format!("off by up to {}", it.size),
        Item::Screw(it) => format!("{}, No. {} × {}", it.quantity, it.gauge, it.length),
        _ => String::new(),
    }
}
