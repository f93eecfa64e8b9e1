//! What wants looking at: cut parts that no longer fit, with ways out, and mates that are not
//! alike.

use reckoner_core::job::moved::{Mismatch, mismatches};
use reckoner_core::job::rescue::{Cut, Rescue, Trouble, may_float, rescues, troubles};
use reckoner_core::job::{Item, ItemId, Measure, Step, Written};
use reckoner_core::measure::text::exact_text;
use yew::prelude::*;

use super::{Open, Shared};
use crate::components::measure::length as length_view;

/// Most ways out shown for one part.
const MOST_WAYS: usize = 4;

/// Most parts in trouble shown at once.
const MOST_TROUBLES: usize = 12;

/// The box at the head of a page of the job; nothing when all is well.
pub(super) fn attention(open: &Open) -> Html {
    let job = &open.book.job;
    let troubles = troubles(job, &open.reckoned, open.settings.bench.tape);
    let apart = mismatches(job, &open.reckoned);
    if troubles.is_empty() && apart.is_empty() {
        return html! {};
    }
    let more = troubles.len().saturating_sub(MOST_TROUBLES);
    html! {
        <section class="attention" aria-label="Look at these" data-testid="attention">
            <h2>{ "Look at these" }</h2>
            { for troubles.iter().take(MOST_TROUBLES).map(|it| trouble(open, it)) }
            if more > 0 { <p>{ format!("And {more} more.") }</p> }
            { for apart.iter().map(|it| mismatch(open, it)) }
        </section>
    }
}

/// What was cut, by name.
fn name_of(open: &Open, cut: Cut) -> String {
    let name = open.book.job.item(cut.id()).map_or("", Item::name);
    match cut {
        Cut::Measure(_) => name.to_owned(),
        Cut::Piece(_, index) => format!("{name}, piece {}", index.saturating_add(1)),
    }
}

fn trouble(open: &Open, it: &Trouble) -> Html {
    let tape = open.settings.bench.tape;
    let name = name_of(open, it.cut);
    html! {
        <article class="attention__part" data-testid={format!("trouble-{name}")}>
            <p>
                <b>{ &name }</b>{ " is cut at " }{ length_view(it.as_cut, tape) }
                { ". It is now wanted at " }{ length_view(it.wanted, tape) }{ "." }
            </p>
            { ways(open, *it) }
        </article>
    }
}

/// Two mates that are too far apart, and by how much.
pub(super) fn mismatch(open: &Open, it: &Mismatch) -> Html {
    let tape = open.settings.bench.tape;
    let name = |id: ItemId| open.book.job.item(id).map_or("", Item::name);
    html! {
        <p class="attention__match" data-testid={format!("mismatch-{}", name(it.group))}>
            <a href={open.at(&format!("item/{}", it.group.0))}>{ name(it.group) }</a>
            { format!(" must match: {} is ", name(it.least.0)) }{ length_view(it.least.1, tape) }
            { format!(", {} is ", name(it.most.0)) }{ length_view(it.most.1, tape) }
            { ". That is " }{ length_view(it.apart, tape) }{ " apart" }
            if it.drift.is_positive() { { "; they may drift " }{ length_view(it.drift, tape) } }
            { "." }
        </p>
    }
}

/// The ways out of a trouble, with what the user wants to stay as it is.
pub(super) fn ways(open: &Open, trouble: Trouble) -> Html {
    html! { <Ways key={format!("{:?}", trouble.cut)} open={Shared(open.clone())} {trouble} /> }
}

#[derive(Properties, PartialEq)]
struct WaysProps {
    open: Shared,
    trouble: Trouble,
}

#[component]
fn Ways(props: &WaysProps) -> Html {
    let WaysProps { open: Shared(open), trouble } = props;
    let held = use_state_eq(Vec::<ItemId>::new);
    let job = &open.book.job;
    let floats = may_float(job, &open.reckoned, trouble);
    let found = use_memo((props.open.clone(), *trouble, (*held).clone()), {
        |(Shared(open), trouble, held)| rescues(&open.book.job, &open.settings.bench, trouble, held)
    });
    let hold = |id: ItemId| {
        let name = job.item(id).map_or("", Item::name);
        let is_held = held.contains(&id);
        let onclick = {
            let held = held.clone();
            Callback::from(move |_: MouseEvent| {
                let mut now: Vec<ItemId> = (*held).clone();
                match now.iter().position(|other| *other == id) {
                    Some(at) => drop(now.remove(at)),
                    None => now.push(id),
                }
                held.set(now);
            })
        };
        html! {
            <button type="button" class="tool hold" data-testid={format!("hold-{name}")}
                aria-pressed={if is_held { "true" } else { "false" }} {onclick}>
                { if is_held { format!("{name} stays") } else { name.to_owned() } }
            </button>
        }
    };
    html! {
        <>
            <p class="attention__ways">
                { if found.is_empty() { "Cut it again; no size that is still free can take it up." } else { "Cut it again, or let one of these give way:" } }
            </p>
            { for found.iter().take(MOST_WAYS).map(|way| rescue(open, way)) }
            if !floats.is_empty() {
                <p class="attention__ways">{ "Tap what must stay as it is:" }</p>
                <div class="holds">{ for floats.into_iter().map(hold) }</div>
            }
        </>
    }
}

fn rescue(open: &Open, way: &Rescue) -> Html {
    let tape = open.settings.bench.tape;
    let job = &open.book.job;
    let Some(Item::Measure(measure)) = job.item(way.floats) else { return html! {} };
    let (id, to) = (way.floats, exact_text(way.to));
    let onclick = open.making(move |job| {
        let Item::Measure(measure) = job.item(id)? else { return None };
        let new = Measure { written: Written::Formula(to.clone()), ..measure.clone() };
        let change = job.replacing(id, Item::Measure(new));
        Some(Step::new(format!("let {} give way", measure.name), vec![change]))
    });
    let again: Vec<&str> = way
        .moves
        .iter()
        .filter(|it| it.means == reckoner_core::job::moved::Means::Recut)
        .map(|it| it.id)
        .chain(way.parts.iter().map(|part| part.id))
        .filter_map(|id| Some(job.item(id)?.name()))
        .collect();
    let recuts = match again.as_slice() {
        [] => "nothing else is cut again".to_owned(),
        names => format!("cut again: {}", names.join(", ")),
    };
    html! {
        <button type="button" class="way-out" data-testid={format!("rescue-{}", measure.name)}
            {onclick}>
            <span><b>{ &measure.name }</b>{ ": " }{ length_view(way.from, tape) }{ " → " }{ length_view(way.to, tape) }
            { format!(", {recuts}") }</span>
        </button>
    }
}
