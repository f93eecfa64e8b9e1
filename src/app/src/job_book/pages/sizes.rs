//! The sizes of a job: what each comes to, and what wants looking at.

use reckoner_core::job::moved::{Means, Moved, is_cut, mismatches};
use reckoner_core::job::rescue::{Rescue, Trouble, rescues, troubles};
use reckoner_core::job::{Change, Item, ItemId, Measure, Step, Written, sketch};
use reckoner_core::measure::text::{Quantity, decimal, exact_text, show};
use reckoner_core::measure::{Length, Rounding, Tape};
use yew::prelude::*;

use super::{Open, add, row};
use crate::components::drawing::drawing;
use crate::components::measure;
use crate::job_book::book::Edit;

/// Most ways out shown for one part.
const MOST_WAYS: usize = 4;

pub(super) fn view(open: &Open) -> Html {
    let measures = open.book.job.measures();
    html! {
        <>
            { attention(open) }
            if measures.is_empty() {
                <p class="job__words">{ "No size yet. Begin with the overall sizes and the leg." }</p>
            }
            <ul class="rows" data-testid="sizes">
                { for measures.iter().map(|(id, it)| row(open, *id, &it.name, one(open, *id, it))) }
            </ul>
            <div class="adds">{ add(open, "measure", "Add a size") }</div>
            { sketch_of(open) }
        </>
    }
}

/// The sketch of the job, with what the last step changed and moved marked.
fn sketch_of(open: &Open) -> Html {
    let tape = open.settings.bench.tape;
    let changed =
        open.book.history.made().last().map(|step| step.changes.iter().map(|change| change.id));
    let moved = changed.into_iter().flatten().collect();
    let Some(views) = sketch::views(&open.book.job, &open.reckoned, &moved, tape) else {
        return html! {};
    };
    html! {
        <section class="sketches" aria-label="Sketch" data-testid="sketch">
            { for [("Front", &views.front), ("Side", &views.side), ("From above", &views.top)].into_iter().map(|(name, scene)| html! {
                <figure><figcaption>{ name }</figcaption>{ drawing(scene, tape) }</figure>
            }) }
        </section>
    }
}

fn one(open: &Open, id: ItemId, it: &Measure) -> Html {
    let state = open.reckoned.measure(id);
    let plan = match &it.written {
        Written::Formula(text) => text.clone(),
        Written::Linked(_) => "from a reckoning".to_owned(),
    };
    let value = state.and_then(|state| state.in_use());
    let problem = state.and_then(|state| match (&state.as_cut, &state.planned) {
        (Some(Err(problem)), _) => Some(problem.to_string()),
        (None, Err(problem)) => Some(problem.to_string()),
        _ => None,
    });
    html! {
        <>
            <span class="row__name">{ &it.name }</span>
            <span class="row__value">{ quantity(value, open.settings.bench.tape) }</span>
            <span class="row__more">
                if it.as_cut.is_some() { <span class="badge is-cut">{ "as cut" }</span> }
                else if it.is_cut { <span class="badge is-cut">{ "cut" }</span> }
                else if it.wait { <span class="badge is-wait">{ "measure first" }</span> }
                { plan }
            </span>
            if let Some(words) = problem { <span class="row__problem">{ words }</span> }
        </>
    }
}

/// A quantity as it is shown in a row.
pub(super) fn quantity(quantity: Option<Quantity>, tape: Tape) -> Html {
    match quantity {
        Some(Quantity::Length(length)) => length_view(length, tape),
        Some(Quantity::Plain(number) | Quantity::Bare(number)) => {
            let places = if number.is_whole() { 0 } else { 3 };
            decimal(number, places).into()
        }
        Some(Quantity::Area(_)) | None => "–".into(),
    }
}

fn length_view(length: Length, tape: Tape) -> Html {
    match show(length, tape, Rounding::Nearest) {
        Ok(shown) => measure::marks(&shown),
        Err(_) => exact_text(length).into(),
    }
}

/// What wants looking at: cut parts that no longer fit, and mates that are not alike.
fn attention(open: &Open) -> Html {
    let job = &open.book.job;
    let troubles = troubles(job, &open.reckoned);
    let apart = mismatches(job, &open.reckoned);
    if troubles.is_empty() && apart.is_empty() {
        return html! {};
    }
    let name = |id: ItemId| job.item(id).map_or("", Item::name);
    let tape = open.settings.bench.tape;
    html! {
        <section class="attention" aria-label="Look at these" data-testid="attention">
            <h2>{ "Look at these" }</h2>
            { for troubles.iter().map(|it| trouble(open, it)) }
            { for apart.iter().map(|it| html! {
                <p class="attention__match">
                    { format!("{} must match: {} is ", name(it.group), name(it.least.0)) }{ length_view(it.least.1, tape) }
                    { format!(", {} is ", name(it.most.0)) }{ length_view(it.most.1, tape) }{ "." }
                </p>
            }) }
        </section>
    }
}

fn trouble(open: &Open, it: &Trouble) -> Html {
    let job = &open.book.job;
    let tape = open.settings.bench.tape;
    let name = |id: ItemId| job.item(id).map_or("", Item::name);
    let ways = rescues(job, &open.settings.bench, it, &[]);
    html! {
        <article class="attention__part" data-testid={format!("trouble-{}", name(it.id))}>
            <p>
                <b>{ name(it.id) }</b>{ " is cut at " }{ length_view(it.as_cut, tape) }
                { ". It is now wanted at " }{ length_view(it.wanted, tape) }{ "." }
            </p>
            <p class="attention__ways">
                { if ways.is_empty() { "Cut it again; no size that is still free can take it up." } else { "Cut it again, or let one of these give way:" } }
            </p>
            { for ways.iter().take(MOST_WAYS).map(|way| rescue(open, way)) }
        </article>
    }
}

fn rescue(open: &Open, way: &Rescue) -> Html {
    let tape = open.settings.bench.tape;
    let Some(Item::Measure(measure)) = open.book.job.item(way.floats) else { return html! {} };
    let new = Measure { written: Written::Formula(exact_text(way.to)), ..measure.clone() };
    let change: Change = open.book.job.replacing(way.floats, Item::Measure(new));
    let step = Step::new(format!("let {} give way", measure.name), vec![change]);
    let recuts = match way.recuts {
        0 => "nothing else is cut again".to_owned(),
        1 => "1 cut part is cut again".to_owned(),
        n => format!("{n} cut parts are cut again"),
    };
    html! {
        <button type="button" class="way-out" data-testid={format!("rescue-{}", measure.name)}
            onclick={open.doing(Edit::Make(step))}>
            <span><b>{ &measure.name }</b>{ ": " }{ length_view(way.from, tape) }{ " → " }{ length_view(way.to, tape) }
            { format!(", {recuts}") }</span>
        </button>
    }
}

/// What moved with the last change.
pub(super) fn moved_list(open: &Open, moved: &[Moved]) -> Html {
    let tape = open.settings.bench.tape;
    let job = &open.book.job;
    let by = |it: &Moved| {
        it.by.map(|by| {
            let sign = if by.is_negative() { "− " } else { "+ " };
            html! { <>{ sign }{ length_view(by.abs(), tape) }</> }
        })
    };
    html! {
        <section class="moved" aria-label="What moves" data-testid="moved">
            <h2>{ "What moves with it" }</h2>
            if moved.is_empty() { <p class="job__words">{ "Nothing else." }</p> }
            <ul class="rows">
                { for moved.iter().map(|it| html! {
                    <li class={classes!("row", "row--moved", (it.means != Means::NewNumber).then_some("is-recut"))}>
                        <span class="row__name">{ job.item(it.id).map_or("", Item::name) }</span>
                        <span class="row__value">{ quantity(it.old, tape) }{ " → " }{ quantity(it.new, tape) }</span>
                        <span class="row__more">
                            { by(it) }
                            <span class="badge">{ match it.means {
                                Means::Recut => "cut already: recut or rescue",
                                Means::NewNumber => "not cut yet: only the number",
                                Means::Lost => "has no value now",
                            } }</span>
                        </span>
                    </li>
                }) }
            </ul>
        </section>
    }
}

/// Whether the row of a measure counts as cut, for the item page.
pub(super) fn counts_as_cut(item: Option<&Item>) -> bool {
    matches!(item, Some(Item::Measure(measure)) if is_cut(measure))
}
