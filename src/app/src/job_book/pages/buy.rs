//! Everything to buy: with its ticks on the screen, on paper for the yard, as a list and as text.

use std::rc::Rc;

use reckoner_core::measure::text::exact_text;
use reckoner_core::planning::report::{BoardCut, How, at_one_scale};
use reckoner_core::planning::wanted::{OPTIONS, options};
use reckoner_core::sheet::{Ask, Entries, money};
use reckoner_core::to_buy::{InTheWay, Line, Money, ToBuy, to_buy};
use reckoner_formats::to_buy_csv;
use yew::prelude::*;

use super::hand_on::file_name;
use super::head::bar;
use super::open::{Open, Shared};
use super::paper as paper_page;
use crate::components::drawing::drawing;
use crate::components::icon::{Icon, icon};
use crate::components::measure::length;
use crate::components::sentence::sentence;
use crate::cutting::report::key_line;
use crate::platform::{files, sharing};
use crate::route;

fn list_of(open: &Open) -> ToBuy {
    to_buy(&open.book.job, &open.reckoned, &open.settings.bench)
}

pub(super) fn page(open: &Open) -> Html {
    html! { <Buy open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct BuyProps {
    open: Shared,
}

#[component]
fn Buy(props: &BuyProps) -> Html {
    let Shared(open) = &props.open;
    let list = Rc::new(list_of(open));
    let said = use_state_eq(|| "");
    let copy = {
        let (open, list, said) = (open.clone(), list.clone(), said.clone());
        Callback::from(move |_: MouseEvent| {
            let said = said.clone();
            let text = list.as_text(&open.book.job, open.settings.bench.tape);
            sharing::copy(text, move |worked| {
                said.set(if worked { "Copied." } else { "This browser does not let me copy." });
            });
        })
    };
    let send = {
        let (open, list) = (open.clone(), list.clone());
        Callback::from(move |_: MouseEvent| {
            let text = list.as_text(&open.book.job, open.settings.bench.tape);
            sharing::share_text(&open.book.job.title, &text);
        })
    };
    let has_lines = !list.lines.is_empty();
    html! {
        <div class="page page--job">
            { bar(open, &open.at(""), "Everything to buy") }
            <main class="job">
                if has_lines { { spent(&list) } }
                if let Some(known) = &list.known {
                    <p class="job__words" data-testid="known">{ sentence(known, open.settings.bench.tape) }</p>
                }
                { in_the_way(open, &list) }
                if has_lines {
                    <ul class="rows" data-testid="to-buy">{ for list.lines.iter().map(|it| line(open, it)) }</ul>
                } else if list.in_the_way.is_empty() {
                    <p class="job__words" data-testid="nothing-to-buy">
                        { "Nothing to buy yet: the job has no piece to cut, and no kept calculator that takes screws, rod or finish." }
                    </p>
                    <div class="adds"><a class="tool" href={open.at("parts")}>{ "To the pieces" }</a></div>
                }
                if has_lines {
                    <div class="adds">
                        <a class="tool" href={open.at("buy/paper")} data-testid="to-yard-paper">{ "On paper, for the yard" }</a>
                        <button type="button" class="tool" data-testid="save-to-buy" onclick={saving(open)}>{ "As a list (CSV)" }</button>
                        <button type="button" class="tool" data-testid="copy-to-buy" onclick={copy}>{ "Copy as text" }</button>
                        if sharing::can_share() {
                            <button type="button" class="tool" data-testid="send-to-buy" onclick={send}>{ "Send as text" }</button>
                        }
                    </div>
                }
                <p role="status" data-testid="buy-said">{ *said }</p>
            </main>
        </div>
    }
}

/// A callback that gives the user the list as a file.
fn saving(open: &Open) -> Callback<MouseEvent> {
    let open = open.clone();
    Callback::from(move |_| {
        let name = file_name(&open.book.job.title, "to-buy.csv");
        files::save(&name, "text/csv", to_buy_csv(&list_of(&open)).as_bytes());
    })
}

/// What is still to spend, and what was; in pencil while it rests on ours.
fn spent(list: &ToBuy) -> Html {
    let (sum, is_ours) = (list.money, list.ours.is_some());
    html! {
        <section class={classes!("headline", "spent", is_ours.then_some("is-pencil"))} aria-label="Money" data-testid="money" role="status">
            <div class="headline__inside is-long">
                <p class="headline__label">{ "Still to spend" }</p>
                <p class="headline__figure">
                    <span class="headline__value" data-testid="to-come">{ money(sum.to_come) }</span>
                    if is_ours { <span class="headline__example">{ "example" }</span> }
                </p>
                <p class="headline__rest">
                    <span data-testid="spent">{ format!("spent {}", money(sum.spent)) }</span>
                    if sum.before > 0 { <span class="lean">{ format!("{} of it on boards of earlier plans", money(sum.before)) }</span> }
                    { without_price(sum) }
                </p>
            </div>
        </section>
    }
}

/// How many lines are in no sum, because they have no price.
pub(super) fn without_price(sum: Money) -> Html {
    match sum.without_price {
        0 => html! {},
        1 => html! { <span class="lean">{ "1 line has no price" }</span> },
        n => html! { <span class="lean">{ format!("{n} lines have no price") }</span> },
    }
}

/// Why the list is not all that it takes, each with its way there.
fn in_the_way(open: &Open, list: &ToBuy) -> Html {
    let tape = open.settings.bench.tape;
    let one = |it: &InTheWay| {
        let to = match it {
            InTheWay::NoPlan | InTheWay::Plan(_) => open.at("boards"),
            InTheWay::Waits(id) | InTheWay::Refused(id, _) => open.at(&format!("item/{}", id.0)),
            InTheWay::NotCounted(_, screw, _) => route::keep("screws", &counting(it, screw)),
        };
        html! {
            <li>
                <p>{ sentence(&it.sentence(&open.book.job), tape) }</p>
                if let InTheWay::Plan(changes) = it {
                    <ul class="notes">{ for changes.iter().map(|it| html! { <li>{ sentence(it, tape) }</li> }) }</ul>
                }
                <a class="way-out" href={to}>{ it.way_out() }</a>
            </li>
        }
    };
    html! {
        if !list.in_the_way.is_empty() {
            <section class="attention" aria-label="Not in the list" data-testid="not-in-the-list">
                <ul class="attention__list">{ for list.in_the_way.iter().map(one) }</ul>
            </section>
        }
    }
}

/// The question that counts screws of this kind, as a link.
fn counting(it: &InTheWay, screw: &str) -> String {
    let gauge: String = screw.chars().filter(char::is_ascii_digit).collect();
    let mut entries = Entries::from_pairs([("question", "buy".to_owned())]);
    entries.set("gauge", format!("screw_{gauge}"));
    if let InTheWay::NotCounted(_, _, Some(length)) = it {
        entries.set("screw_length", exact_text(*length));
    }
    crate::link::typed(&entries)
}

fn line(open: &Open, it: &Line) -> Html {
    let tape = open.settings.bench.tape;
    let name = it.what().on(tape);
    let can_tick = it.ticking(&open.book.job).is_some();
    let onclick = {
        let source = it.source.clone();
        let (reckoned, bench) = (open.reckoned.clone(), open.settings.bench);
        open.making(move |job| {
            let list = to_buy(job, &reckoned, &bench);
            list.lines.into_iter().find(|line| line.source == source)?.ticking(job)
        })
    };
    html! {
        <li class="buy" data-testid={format!("buy-{}", it.name)}>
            <button type="button" class="tick" aria-pressed={if it.is_done() { "true" } else { "false" }}
                aria-label={format!("{} to buy, {name}: bought", it.to_come())} disabled={!can_tick}
                data-testid={format!("bought-{}", it.name)} {onclick}>
                if it.is_done() { { icon(Icon::Tick) } } else { { it.to_come() } }
            </button>
            <div class="row">
                <span class="row__name">{ sentence(&it.what(), tape) }</span>
                <span class="row__value"><span class={it.is_ours.then_some("is-pencil")}>{ it.price().map_or("no price".to_owned(), money) }</span></span>
                <span class="row__more">
                    <span class="buy__count">{ it.how_many() }</span>
                    { it.each.map(|each| format!(", {} each", money(each))) }
                    if it.is_ours { { ", our example" } }
                </span>
                if !it.uses.is_empty() { <span class="row__more">{ it.uses() }</span> }
            </div>
        </li>
    }
}

/// The list on paper, with every board of the plan at one scale.
pub(super) fn paper(open: &Open) -> Html {
    let list = list_of(open);
    let tape = open.settings.bench.tape;
    let row = |it: &Line| {
        html! {
            <tr>
                <td><span class="box">if it.is_done() { { icon(Icon::Tick) } }</span></td>
                <th scope="row">{ sentence(&it.what(), tape) }</th>
                <td class="card__figure">{ it.to_come() }</td>
                <td class="card__whole">{ it.how_many() }</td>
                <td class="card__whole">{ it.each.map_or("no price".to_owned(), money) }if it.is_ours { { " (our example)" } }</td>
                <td class="card__whole">{ it.price().map(money) }</td>
                <td>{ it.uses() }</td>
            </tr>
        }
    };
    let boards = boards(open);
    let body = html! {
        <article class="card" tabindex="0" aria-label="To buy" data-testid="yard-paper">
            <header class="card__head">
                <h2>{ format!("{}: to buy", open.book.job.title) }</h2>
                <p>{ "Date" }<span class="blank" aria-hidden="true"></span></p>
            </header>
            <table class="card__table">
                <thead><tr>
                    <td></td><th scope="col">{ "What" }</th><th scope="col">{ "To buy" }</th><th scope="col">{ "Of" }</th>
                    <th scope="col">{ "Each" }</th><th scope="col">{ "Price" }</th><th scope="col">{ "For" }</th>
                </tr></thead>
                <tbody>{ for list.lines.iter().map(row) }</tbody>
            </table>
            <p>{ list.money.sentence() }</p>
            if let Some(ours) = &list.ours { <p data-testid="paper-ours">{ ours }{ "." }</p> }
            if let Some(known) = &list.known { <p data-testid="known">{ sentence(known, tape) }</p> }
            <ul class="notes">{ for list.in_the_way.iter().map(|it| html! { <li>{ sentence(&it.sentence(&open.book.job), tape) }</li> }) }</ul>
            if !boards.is_empty() {
                <h3>{ "The boards, all at one scale" }</h3>
                <p>{ "Look along each one on the rack: no split and no loose knot where a piece lies." }</p>
                <ol class="boards">{ for boards.iter().map(|it| board(open, it)) }</ol>
            }
        </article>
    };
    paper_page::page(open, "buy", "To buy, on paper", html! {}, body)
}

fn boards(open: &Open) -> Vec<BoardCut> {
    let job = &open.book.job;
    let kept = job.plan_in_use().and_then(|id| job.cut_plan(id));
    let cuts = kept.and_then(|(kept, _)| {
        let bench = open.settings.bench;
        let entries = kept.as_entries(job.unit);
        let options = options(&mut Ask::new(OPTIONS.fields, &entries, &bench, &*open.reckoned))?;
        let how = How { tape: bench.tape, keep_from: options.keep_from };
        at_one_scale(&kept.asked, &kept.plan, &kept.labels, how)
    });
    cuts.unwrap_or_default()
}

fn board(open: &Open, it: &BoardCut) -> Html {
    let tape = open.settings.bench.tape;
    html! {
        <li class="board">
            <h3 class="board__title">
                <span class="board__number">{ it.number }</span>
                <span>{ &it.name }{ ", " }{ length(it.length, tape) }</span>
                <span class="box" aria-hidden="true"></span>
            </h3>
            { drawing(&it.scene, tape) }
            <ul class="board__key">{ for it.key.iter().map(|it| key_line(it, tape)) }</ul>
        </li>
    }
}
