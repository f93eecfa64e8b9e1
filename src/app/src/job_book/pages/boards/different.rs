//! A board that came out different: what of it is good, and what is left of it.

use std::rc::Rc;

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::cutting::Source;
use reckoner_core::job::{CutPlan, ItemId, RackBoard};
use reckoner_core::measure::text::{NoNames, exact_text};
use reckoner_core::order::set_of;
use reckoner_core::planning::report::KeyLine;
use reckoner_core::sheet::{Answer, Ask, Bench, Entries, Field, Kind, OnHand, Start};
use yew::prelude::*;

use super::super::drafts::beside;
use super::super::open::{Open, Shared};
use crate::form::at_hand::{KnownNames, Manner, use_at_hand_as};
use crate::form::view::asks_about;
use crate::form::{Action, Form};
use crate::job_book::kept_form::{make_of_form, use_kept_form};
use crate::job_book::notes::bare;

/// What is asked about the pieces that are left.
static LEFT: Calculator = Calculator {
    slug: "",
    title: "What is left",
    question: "What is left of it?",
    stage: Stage::Wood,
    fields: &[OFFCUTS],
    results: &[],
    work,
};

const OFFCUTS: Field = Field::new(
    "left",
    "Left of it",
    "lengths that can still be used, as measured; wide and the width of a strip; empty for none",
    Kind::OnHand,
    Start::Text(""),
);

fn work(ask: &mut Ask) -> Option<Answer> {
    ask.on_hand(&OFFCUTS);
    None
}

/// The field of the form that holds how many of each part are good, as they stand in the key.
const GOOD: &str = "good";

fn good_of(entries: &Entries, key_lines: &[KeyLine]) -> Vec<u32> {
    let said = entries.text(GOOD).unwrap_or_default().split(' ').map(str::parse);
    let said = said.map(Result::ok).chain(core::iter::repeat(None));
    key_lines
        .iter()
        .zip(said)
        .map(|(line, said)| said.unwrap_or(line.count).min(line.count))
        .collect()
}

/// What is left of it, as it is written; `None` where that cannot be read.
fn left_of(entries: &Entries, bench: &Bench) -> Option<Vec<OnHand>> {
    let mut ask = Ask::new(LEFT.fields, entries, bench, &NoNames);
    ask.on_hand(&OFFCUTS)
}

/// Where the note about a board of a plan stands.
fn place(plan: ItemId, board: usize) -> String {
    format!("different/{}/{board}", plan.0)
}

/// The board of a plan of which something was written down and not said to be so.
pub(super) fn begun(open: &Open, plan: ItemId) -> Option<usize> {
    let start = format!("different/{}/", plan.0);
    let board = |(at, ..): (String, _, _)| bare(&at).strip_prefix(&start)?.parse().ok();
    open.on_page.forms().into_iter().find_map(board)
}

#[derive(Properties, PartialEq)]
pub(super) struct DifferentProps {
    pub(super) open: Shared,
    pub(super) plan: ItemId,
    pub(super) board: usize,
    /// What comes from the board, as planned.
    pub(super) key_lines: Vec<KeyLine>,
    pub(super) close: Callback<()>,
    pub(super) on_keying: Callback<bool>,
}

/// What of a board is good, and what is left of it.
#[component]
pub(super) fn Different(props: &DifferentProps) -> Html {
    let DifferentProps { open: Shared(open), plan, board, key_lines, close, on_keying } = props;
    let bench = open.settings.bench;
    let place = place(*plan, *board);
    let at = place.clone();
    let form = use_kept_form(open.keeping(), &place, &LEFT, Form::fresh(open.book.job.unit));
    let good = good_of(form.entries(), key_lines);
    let entries = form.entries().clone();
    let sheet = Rc::new(LEFT.sheet(&entries, &bench, &NoNames));
    let (names, manner) = (KnownNames::default(), Manner::of_no_examples());
    let at_hand = use_at_hand_as(form.clone(), sheet, open.settings.clone(), names, manner);
    {
        let on_keying = on_keying.clone();
        use_effect_with(at_hand.is_keying(), move |is| on_keying.emit(*is));
    }
    let is_sound = left_of(&entries, &bench).is_some();
    let take = {
        let (on_page, form, close) = (open.on_page.clone(), form.clone(), close.clone());
        let (plan, board, key_lines) = (*plan, *board, key_lines.clone());
        Callback::from(move |_: MouseEvent| {
            let is_made = make_of_form(&on_page, &place, &form, |job, entries| {
                let (kept, left) = (job.cut_plan(plan)?.0, left_of(entries, &bench)?);
                let good = counted(kept, board, &good_of(entries, &key_lines));
                let pieces = if kept.is_list { Vec::new() } else { on_rack(kept, board, &left) };
                let texts =
                    if kept.is_list { left.iter().map(OnHand::text).collect() } else { Vec::new() };
                job.coming_out_different(plan, board, good, pieces, texts)
            });
            if is_made {
                close.emit(());
            }
        })
    };
    let line = |at: usize, line: &KeyLine| {
        let now = good.get(at).copied().unwrap_or(0);
        let to = |change: fn(u32) -> u32| {
            let (key_lines, form) = (key_lines.clone(), form.clone());
            Callback::from(move |_: MouseEvent| {
                // As they are at the tap: the one before may not be drawn yet.
                let mut counts = good_of(form.entries(), &key_lines);
                if let (Some(it), Some(line)) = (counts.get_mut(at), key_lines.get(at)) {
                    *it = change(*it).min(line.count);
                }
                let counts = counts.iter().map(ToString::to_string).collect::<Vec<_>>().join(" ");
                form.dispatch(Action::Set(vec![(GOOD, counts)]));
            })
        };
        html! {
            <li class="good">
                <button type="button" class="tick" aria-label={format!("One {} less is good", line.name)} disabled={now == 0}
                    data-testid={format!("less-{}", line.letter)} onclick={to(|now| now.saturating_sub(1))}>{ "−" }</button>
                <span class="good__words">{ format!("{now} of {} × {} good", line.count, line.name) }</span>
                <button type="button" class="tick" aria-label={format!("One {} more is good", line.name)} disabled={now >= line.count}
                    data-testid={format!("more-{}", line.letter)} onclick={to(|now| now.saturating_add(1))}>{ "+" }</button>
            </li>
        }
    };
    html! {
        <section class="different" aria-label="It came out different" data-testid="different">
            <p class="plan__words">{ "A split, a knot, a piece cut wrong: say what is good, and what is left." }</p>
            <ul class="goods">{ for key_lines.iter().enumerate().map(|(at, it)| line(at, it)) }</ul>
            { asks_about(LEFT.title, &at_hand) }
            <div class="board__steps">
                <button type="button" class="tool tool--take" data-testid="take-different" disabled={!is_sound} onclick={take}>
                    { "That is how it is" }
                </button>
                <button type="button" class="tool" data-testid="leave-different" onclick={close.reform(|_: MouseEvent| ())}>{ "Not now" }</button>
            </div>
            { beside(open, &at, &LEFT, &form) }
        </section>
    }
}

/// How many of each part are good, by the part's place in the cutting job. The lines of the key stand in that order.
fn counted(kept: &CutPlan, board: usize, good: &[u32]) -> Vec<(usize, u32)> {
    let cut = kept.plan.boards.get(board);
    let parts = cut.map(|cut| set_of(cut.placed().iter().map(|placed| placed.part)));
    let parts = parts.unwrap_or_default();
    parts.into_iter().zip(good.iter().copied()).filter(|(_, count)| *count > 0).collect()
}

/// What is left of a board, as boards of the rack.
fn on_rack(kept: &CutPlan, board: usize, left: &[OnHand]) -> Vec<RackBoard> {
    let Some(cut) = kept.plan.boards.get(board) else { return Vec::new() };
    let section = match cut.source {
        Source::Board(at) => kept.asked.boards.get(at).map(|it| &it.section),
        Source::Scrap(at) => kept.asked.scraps.get(at).map(|it| &it.section),
    };
    let label = section.and_then(|id| kept.labels.section(&kept.asked, id));
    let Some((label, (thickness, width))) = label.and_then(|it| Some((it, it.size?))) else {
        return Vec::new();
    };
    let piece = |left: &OnHand| RackBoard {
        name: format!("left of board {}", board.saturating_add(1)),
        section: label.name.clone(),
        thickness: exact_text(thickness),
        width: exact_text(left.width.unwrap_or(width)),
        length: exact_text(left.length),
        quantity: 1,
        wet: false,
        sawn_ends: true,
        knots: String::new(),
    };
    left.iter().map(piece).collect()
}
