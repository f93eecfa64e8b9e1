//! The results of a kept reckoning, each of which can become a size that is linked to it.

use reckoner_core::job::make_parts::linked_name;
use reckoner_core::job::{
    Item, ItemId, Job, Kept, Linked, Measure, MeasureKind, Step, Written, kind_of,
};
use reckoner_core::sheet::{Answer, Value};
use yew::prelude::*;

use super::open::Open;
use crate::components::measure;

/// Most cells of a table that are offered.
const MOST_CELLS: usize = 200;

/// One result that can become a size.
struct Result<'a> {
    linked: Linked,
    kind: MeasureKind,
    label: String,
    value: &'a Value,
}

/// Every result of an answer that has a kind a measure can have; of a list, the one shown.
pub(super) fn list(open: &Open, id: ItemId, kept: &Kept, answer: &Answer, index: usize) -> Html {
    let link = |result: &str, index: usize| Linked {
        kept: id,
        result: result.to_owned(),
        index: index.try_into().unwrap_or(u32::MAX),
    };
    let figures = core::iter::once(&answer.headline).chain(&answer.figures).filter_map(|figure| {
        let kind = kind_of(&figure.value)?;
        let (index, label) = match &figure.value {
            Value::Lengths(all) => {
                let index = index.min(all.len().saturating_sub(1));
                (index, format!("{} {}", figure.label, index.saturating_add(1)))
            }
            _ => (0, figure.label.to_owned()),
        };
        Some(Result { linked: link(figure.id, index), kind, label, value: &figure.value })
    });
    let cells = answer.tables.iter().flat_map(|table| {
        let named = table.rows.iter().zip(1_usize..).flat_map(|(row, n)| {
            row.iter().zip(table.columns).map(move |(cell, column)| (cell, column, n))
        });
        named.enumerate().filter_map(|(index, (cell, column, n))| {
            let kind = kind_of(cell)?;
            let label = format!("{} {n}: {}", table.title, column.heading.to_lowercase());
            Some(Result { linked: link(table.id, index), kind, label, value: cell })
        })
    });
    let cells: Vec<_> = cells.take(MOST_CELLS).collect();
    html! {
        <>
            <h2 class="job__title">{ "Make a size of it" }</h2>
            <div class="adds" data-testid="results">{ for figures.map(|it| one(open, kept, &it)) }</div>
            if !cells.is_empty() {
                <details class="results">
                    <summary>{ "From the lists" }</summary>
                    <div class="adds">{ for cells.iter().map(|it| one(open, kept, it)) }</div>
                </details>
            }
        </>
    }
}

/// The step that puts a size of a result into the job, under the name wanted or one like it.
fn becoming(job: &Job, wanted: &str, kind: MeasureKind, written: Written) -> Step {
    let measures = job.measures();
    let is_taken = |name: &str| measures.iter().any(|(_, measure)| measure.name == name);
    let name = core::iter::once(wanted.to_owned())
        .chain((2_u32..).map(|n| format!("{wanted} {n}")))
        .find(|name| !is_taken(name))
        .unwrap_or_else(|| wanted.to_owned());
    let rank = measures.iter().map(|(_, measure)| measure.rank).max().unwrap_or(0);
    let new = Measure { rank: rank.saturating_add(1), ..Measure::new(name.clone(), kind, written) };
    Step::new(format!("add {name}"), vec![job.adding(0, Item::Measure(new))])
}

/// A button that makes a size of a result, or the way to the size that is made of it.
fn one(open: &Open, kept: &Kept, it: &Result) -> Html {
    let job = &open.book.job;
    let measures = job.measures();
    let is_it = |measure: &&Measure| {
        measure.kind == it.kind && measure.written == Written::Linked(it.linked.clone())
    };
    if let Some((id, here)) = measures.iter().find(|(_, measure)| is_it(measure)) {
        return html! {
            <a class="tool" href={open.at(&format!("item/{}", id.0))}>{ format!("{}: in the job as {}", it.label, here.name) }</a>
        };
    }
    let wanted = linked_name(&kept.title, &it.label.to_lowercase());
    let (kind, linked) = (it.kind, it.linked.clone());
    let onclick =
        open.making(move |job| Some(becoming(job, &wanted, kind, Written::Linked(linked.clone()))));
    let shown = match it.value {
        Value::Lengths(all) => all
            .get(it.linked.index as usize)
            .map(|length| measure::length(*length, open.settings.bench.tape)),
        value => Some(measure::value(value, &open.settings.bench)),
    };
    html! {
        <button type="button" class="tool" data-testid={format!("become-{}-{}", it.linked.result, it.linked.index)}
            {onclick}>
            <span>{ &it.label }</span>{ shown }
        </button>
    }
}
