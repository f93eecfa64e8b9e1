//! The sizes of a job: what each comes to, and what wants looking at.

use reckoner_core::job::moved::mismatches;
use reckoner_core::job::{Item, ItemId, Measure, MeasureState, OnOurs, Written, sketch};
use reckoner_core::measure::text::{NoNames, parse};
use yew::prelude::*;

use super::drafts::to_look_at;
use super::items::{add, row};
use super::long_list::long_list;
use super::open::Open;
use super::{match_group, pencil};
use crate::components::drawing::drawing;
use crate::components::measure::quantity;

pub(super) fn view(open: &Open) -> Html {
    let ids: Vec<ItemId> = open.book.job.measures().into_iter().map(|(id, _)| id).collect();
    let shared = open.clone();
    let on_ours = OnOurs::of(&open.book.job, &open.reckoned);
    let apart: Vec<ItemId> = mismatches(&open.book.job, &open.reckoned)
        .iter()
        .filter_map(|it| match open.book.job.item(it.group) {
            Some(Item::Match(group)) => Some(group.measures.clone()),
            _ => None,
        })
        .flatten()
        .collect();
    html! {
        <>
            { pencil::line(open) }
            { to_look_at(open) }
            if ids.is_empty() {
                <p class="job__words">{ "No size yet. Begin with the overall sizes and the leg." }</p>
            }
            <ul class="rows" data-testid="sizes">
                { long_list(ids.len(), move |at| {
                    let it = ids.get(at).and_then(|id| match shared.book.job.item(*id) {
                        Some(Item::Measure(it)) => Some((*id, it)),
                        _ => None,
                    });
                    it.map(|(id, it)| {
                        let (is_apart, is_ours) = (apart.contains(&id), on_ours.has(id));
                        row(&shared, id, &it.name, one(&shared, id, it, is_apart, is_ours))
                    })
                    .unwrap_or_default()
                }) }
            </ul>
            <div class="adds">{ add(open, "measure", "Add a size") }</div>
            { match_group::list(open) }
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

/// A size; `is_ours` where it is an example of ours, or rests on one.
fn one(open: &Open, id: ItemId, it: &Measure, is_apart: bool, is_ours: bool) -> Html {
    let state = open.reckoned.measure(id);
    let plan = match &it.written {
        // What is one size and no formula stands beside the name already, until the tape says another.
        Written::Formula(text) if it.as_cut.is_none() && is_one_size(text) => String::new(),
        Written::Formula(text) => text.clone(),
        Written::Linked(linked) => match open.book.job.item(linked.kept) {
            Some(kept) => format!("from {}", kept.name()),
            None => "from a kept calculator".to_owned(),
        },
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
            <span class="row__value"><span class={is_ours.then_some("is-pencil")}>{ quantity(value, open.settings.bench.tape) }</span></span>
            <span class="row__more">
                if state.is_some_and(MeasureState::is_as_cut) { <span class="badge is-cut">{ "the tape says" }</span> }
                else if it.is_cut { <span class="badge is-cut">{ "cut" }</span> }
                else if it.wait { <span class="badge is-wait">{ "measure first" }</span> }
                if is_ours { <span class="badge is-ours">{ "example" }</span> }
                if is_apart { <span class="badge is-short">{ "does not match" }</span> }
                { plan }
            </span>
            if let Some(words) = problem { <span class="row__problem">{ words }</span> }
        </>
    }
}

fn is_one_size(text: &str) -> bool {
    parse(text, &NoNames).is_ok_and(|formula| formula.is_single())
}
