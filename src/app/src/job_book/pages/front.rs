//! The front page of a job: its name, its picture, how far it is, what wants looking at, and what comes next.

use reckoner_core::attention::Looks;
use reckoner_core::build_order::Stage;
use reckoner_core::job::sketch::picture;
use reckoner_core::planning::so_far::{Board, SoFar, so_far};
use reckoner_core::sheet::money;
use reckoner_core::to_buy::to_buy;
use yew::prelude::*;

use super::build::{Now, now, order_of};
use super::buy::without_price;
use super::drafts::{count, to_look_at};
use super::items::add;
use super::open::{Open, Shared};
use super::{pencil, remind};
use crate::components::drawing::drawing;
use crate::recent::NewestJob;

pub(super) fn view(open: &Open) -> Html {
    let job = &open.book.job;
    let so_far = so_far(job, &open.reckoned);
    html! {
        <div class="front" data-testid="front">
            <remind::Remind open={Shared(open.clone())} />
            { pictured(open) }
            if job.items().next().is_none() {
                { to_look_at(open) }
                { begin(open) }
            } else {
                { progress(open, &so_far) }
                { pencil::line_with_plan(open) }
                { pencil::off(open) }
                { to_look_at(open) }
                { next(open) }
                { spent(open) }
            }
        </div>
    }
}

/// How a job begins that has nothing in it.
fn begin(open: &Open) -> Html {
    html! {
        <>
            <p class="job__words">{ "Begin with the pieces to cut, or with the sizes that they come of." }</p>
            <div class="adds">{ add(open, "part", "Add a piece") }{ add(open, "measure", "Add a size") }</div>
        </>
    }
}

/// The piece, each of its parts as it stands. It leads to the list of them.
fn pictured(open: &Open) -> Html {
    let looks = Looks::of(&open.book.job, &open.reckoned, &open.attention);
    let tape = open.settings.bench.tape;
    let drawn = picture(&open.book.job, &open.reckoned, &|part, index| looks.piece(part, index));
    let Some(mut drawn) = drawn else { return html! {} };
    // The link is named by what the picture shows; what is to be looked at stands below it.
    let words = core::mem::take(&mut drawn.scene.words);
    let beside: Vec<&str> = drawn
        .beside
        .iter()
        .filter_map(|id| open.book.job.item(*id))
        .map(reckoner_core::job::Item::name)
        .collect();
    html! {
        <section class="pictured" aria-label="The piece" data-testid="picture">
            // Which names are written on the picture goes by the room there: the link is called by all of them.
            <a href={open.at("parts")}>
                <span class="voice">{ drawn.scene.title.on(tape) }</span>
                <span aria-hidden="true">{ drawing(&drawn.scene, tape) }</span>
            </a>
            <ul class="legend" aria-hidden="true">
                <li class="legend__cut">{ "cut" }</li>
                <li class="legend__to-cut">{ "to cut" }</li>
                <li class="legend__wrong">{ "wrong" }</li>
                <li class="legend__changes">{ "changes size" }</li>
            </ul>
            if !words.is_empty() { <p class="job__words">{ words.join(" · ") }</p> }
            if !beside.is_empty() {
                <p class="job__words">{ format!("Not drawn: {}", beside.join(", ")) }</p>
            }
        </section>
    }
}

/// The boards, drawn small, and the pieces.
fn progress(open: &Open, so_far: &SoFar) -> Html {
    let SoFar { boards, pieces_cut, pieces, .. } = so_far;
    let cut = so_far.count(Board::Cut);
    let on_hand = so_far.count(Board::OnHand);
    let words = if boards.is_empty() {
        "No boards planned".to_owned()
    } else {
        format!("{cut} of {} boards cut", boards.len())
    };
    html! {
        <section class="so-far" aria-label="How far">
            <a class="row" href={open.at("boards")} data-testid="boards-so-far">
                <span class="row__name">{ words }</span>
                <span class="row__more">
                    if !boards.is_empty() { { format!("{on_hand} on my rack, {} to buy", so_far.count(Board::ToBuy)) } }
                    else { { "Work out the boards" } }
                </span>
                { small(boards) }
            </a>
            <a class="row" href={open.at("parts")} data-testid="pieces-so-far">
                <span class="row__name">{ format!("{pieces_cut} of {pieces} pieces cut") }</span>
            </a>
        </section>
    }
}

/// The boards of the plan in use, drawn small: those that are cut are filled. They are counted in words beside it.
pub(super) fn small(boards: &[Board]) -> Html {
    let look = |board: &Board| match board {
        Board::Cut => "is-cut",
        Board::OnHand => "is-on-hand",
        Board::ToBuy => "is-to-buy",
    };
    html! {
        if !boards.is_empty() {
            <span class="boards-small" aria-hidden="true">
                { for boards.iter().map(|board| html! { <i class={look(board)} /> }) }
            </span>
        }
    }
}

/// What comes next, one thing, and where that is: the next step of the build order.
fn comes_next(open: &Open) -> (String, &'static str) {
    let order = order_of(open);
    match now(&order) {
        Now::Step(_, step) => {
            let there = match step.stage {
                Stage::Plan => "boards",
                Stage::Buy => "buy",
                _ => "build",
            };
            (step.title(&open.book.job), there)
        }
        Now::Nothing => ("Add the pieces to cut".to_owned(), "parts"),
        Now::Done => ("All steps are done".to_owned(), "build"),
        Now::Waits => ("Look at what the work waits for".to_owned(), "build"),
    }
}

/// How a job stands, for the first page.
pub(super) fn stands(open: &Open) -> NewestJob {
    let (next, _) = comes_next(open);
    let look = match count(open) {
        0 => String::new(),
        count => format!("{count} to look at. "),
    };
    NewestJob { title: open.book.job.title.clone(), stands: format!("{look}Next: {next}") }
}

fn next(open: &Open) -> Html {
    let (words, to) = comes_next(open);
    html! {
        <a class="next" href={open.at(to)} data-testid="next">
            <span class="next__label">{ "Next" }</span>
            <span class="next__words">{ words }</span>
        </a>
    }
}

/// Money so far and to come, of all that is on the list of what to buy; in pencil while it rests on ours.
fn spent(open: &Open) -> Html {
    let list = to_buy(&open.book.job, &open.reckoned, &open.settings.bench);
    let is_ours = list.ours.is_some();
    let sum = list.money;
    let all = [("spent", sum.spent), ("to buy", sum.to_come), ("in all", sum.whole())];
    html! {
        if !list.lines.is_empty() {
            <a class={classes!("money", is_ours.then_some("is-pencil"))} href={open.at("buy")} data-testid="money">
                { for all.map(|(label, cents)| html! {
                    <span><span class="money__label">{ label }</span><b>{ money(cents) }</b></span>
                }) }
                if is_ours { <span class="headline__example">{ "example" }</span> }
            </a>
            { without_price(sum) }
        }
    }
}
