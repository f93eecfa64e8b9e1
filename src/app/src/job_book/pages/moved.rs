//! What moves with a change, size by size and part by part.

use std::rc::Rc;

use reckoner_core::job::moved::{Means, Moved, MovedPart, is_cut};
use reckoner_core::job::{Item, ItemId, Job};
use yew::prelude::*;

use super::long_list::long_list;
use super::open::Open;
use crate::components::measure::{length as length_view, quantity};

/// What moved with the last change, or would with one that leads to `job`.
pub(super) fn moved_list(open: &Open, job: &Job, moved: &[Moved], parts: &[MovedPart]) -> Html {
    let name = |id: ItemId| job.item(id).map_or("", Item::name).to_owned();
    let moved: Rc<[_]> = moved.iter().map(|it| (name(it.id), it.clone())).collect();
    let parts: Rc<[_]> = parts.iter().map(|it| (name(it.id), it.clone())).collect();
    html! {
        <section class="moved" aria-label="What moves" data-testid="moved">
            <h2>{ "What moves with it" }</h2>
            if moved.is_empty() { <p class="job__words">{ "Nothing else." }</p> }
            <ul class="rows">
                { long_list(moved.len(), {
                    let (open, moved) = (open.clone(), moved.clone());
                    move |at| moved.get(at).map(|(name, it)| moved_size(&open, name, it)).unwrap_or_default()
                }) }
                { long_list(parts.len(), {
                    let (open, parts) = (open.clone(), parts.clone());
                    move |at| parts.get(at).map(|(name, it)| moved_part(&open, name, it)).unwrap_or_default()
                }) }
            </ul>
        </section>
    }
}

fn moved_size(open: &Open, name: &str, it: &Moved) -> Html {
    let tape = open.settings.bench.tape;
    let by = it.by.map(|by| {
        let sign = if by.is_negative() { "− " } else { "+ " };
        html! { <>{ sign }{ length_view(by.abs(), tape) }</> }
    });
    html! {
        <li class={classes!("row", "row--moved", (!matches!(it.means, Means::NewNumber | Means::AsCut)).then_some("is-recut"))}>
            <span class="row__name">{ name }</span>
            <span class="row__value">{ quantity(it.old, tape) }{ " → " }{ quantity(it.new, tape) }</span>
            <span class="row__more">
                { by }
                <span class="badge">{ match it.means {
                    Means::Recut => "cut already: look at it below",
                    Means::PiecesCut => "pieces of it are cut: look at them below",
                    Means::AsCut => "new, as it was cut",
                    Means::NewNumber => "not cut yet: only the number",
                    Means::Lost => "has no value now",
                } }</span>
            </span>
        </li>
    }
}

fn moved_part(open: &Open, name: &str, it: &MovedPart) -> Html {
    let tape = open.settings.bench.tape;
    let words = match it.done {
        0 => "piece, none cut yet".to_owned(),
        n => format!("piece, {n} cut already: look at it below"),
    };
    html! {
        <li class={classes!("row", "row--moved", (it.done > 0).then_some("is-recut"))}>
            <span class="row__name">{ name }</span>
            <span class="row__value">
                { for it.sides.iter().map(|(side, old, new)| html! {
                    <span class="row__side">{ format!("{side} ") }{ length_view(*old, tape) }{ " → " }{ length_view(*new, tape) }</span>
                }) }
            </span>
            <span class="row__more"><span class="badge">{ words }</span></span>
        </li>
    }
}

/// Whether the row of a measure counts as cut, for the item page.
pub(super) fn counts_as_cut(item: Option<&Item>) -> bool {
    matches!(item, Some(Item::Measure(measure)) if is_cut(measure))
}
