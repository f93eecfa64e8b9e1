//! One item of a job as a form. A change is kept when its field is left.

use std::rc::Rc;

use reckoner_core::job::moved::{mismatches, moved, moved_parts};
use reckoner_core::job::{Change, Item, ItemId, Reckoned, Step, check_name};
use reckoner_core::say;
use reckoner_core::sheet::{Ask, Entries, Refusal, Sheet};
use yew::prelude::*;

use super::attention::mismatch;
use super::sizes::{counts_as_cut, moved_list, quantity};
use super::together::{Stands, use_together};
use super::{Open, bar, ends, pieces};
use crate::form::Form as Texts;
use crate::form::view::{asks, use_at_hand};
use crate::job_book::forms::{Form, entries_of, item_of};

pub(super) fn page(open: &Open, form: Form, id: Option<ItemId>) -> Html {
    html! { <ItemPage key={format!("{form:?}-{id:?}")} open={Shared(open.clone())} {form} {id} /> }
}

/// The job at hand, compared by what is in it.
#[derive(Clone)]
pub(super) struct Shared(pub(super) Open);

impl PartialEq for Shared {
    fn eq(&self, other: &Shared) -> bool {
        Rc::ptr_eq(&self.0.book, &other.0.book) && Rc::ptr_eq(&self.0.settings, &other.0.settings)
    }
}

#[derive(Properties, PartialEq)]
struct ItemPageProps {
    open: Shared,
    form: Form,
    id: Option<ItemId>,
}

/// The item that the texts come to.
fn item(open: &Open, form: Form, id: Option<ItemId>, entries: &Entries) -> Item {
    let old = id.and_then(|id| open.book.job.item(id));
    let rank = open.book.job.items().count().try_into().unwrap_or(i64::MAX);
    let bench = open.settings.bench;
    let mut ask = Ask::new(form.asks().fields, entries, &bench, &*open.reckoned);
    item_of(form, &mut ask, old, rank)
}

/// How the texts are understood, in the job as it would be with them.
fn read(open: &Open, form: Form, id: Option<ItemId>, entries: &Entries, names: &Reckoned) -> Sheet {
    let mut sheet = form.asks().sheet(entries, &open.settings.bench, names);
    let refuse = |sheet: &mut Sheet, field: &'static str, words: String| {
        sheet.refusals.insert(
            0,
            Refusal { field, code: "job", sentence: say![words], at: None, way_out: None },
        );
    };
    if form == Form::Measure {
        let others = open.book.job.measures();
        let others =
            others.iter().filter(|(other, _)| Some(*other) != id).map(|(_, m)| m.name.as_str());
        if let Err(problem) = check_name(entries.text("name").unwrap_or(""), others) {
            refuse(&mut sheet, "name", problem.to_string());
        }
        // A linked size has no formula of its own, and needs none.
        let is_linked = matches!(
            id.and_then(|id| open.book.job.item(id)),
            Some(Item::Measure(m)) if matches!(m.written, reckoner_core::job::Written::Linked(_))
        );
        if is_linked {
            sheet.refusals.retain(|it| !(it.field == "formula" && it.code == "empty"));
        }
        if let Some(state) = id.and_then(|id| names.measure(id))
            && let Err(problem @ reckoner_core::job::MeasureProblem::Circle(_)) = &state.planned
        {
            refuse(&mut sheet, "formula", problem.to_string());
        }
    }
    sheet
}

/// The form of an item, with what a size comes to and what moves with it.
#[component]
fn ItemPage(props: &ItemPageProps) -> Html {
    let ItemPageProps { open: Shared(open), form, id } = props;
    let (form, id) = (*form, *id);
    let job = &open.book.job;
    let before = id.and_then(|id| job.item(id)).map(entries_of);
    let texts = use_reducer(|| {
        let mut entries = before.clone().unwrap_or_default();
        entries.set_unit(Some(job.unit));
        Texts::new(form.asks(), entries, None)
    });
    // The job as it was when the page was opened: what moves is told against it.
    let at_first = use_memo((), |()| open.reckoned.clone());
    let entries = texts.entries().clone();
    let new = item(open, form, id, &entries);
    let trial = id.filter(|id| job.item(*id).is_some_and(|stands| *stands != new)).and_then(|id| {
        let mut trial = job.clone();
        trial.make(&Step::new("", vec![job.replacing(id, new.clone())])).ok()?;
        Some(trial)
    });
    let reckoned = match &trial {
        Some(trial) => Rc::new(open.reckoned.after(trial, &open.settings.bench)),
        None => open.reckoned.clone(),
    };
    let sheet = Rc::new(read(open, form, id, &entries, &reckoned));
    let is_sound = sheet.refusals.is_empty();
    let names = use_memo((props.open.clone(), id), |(Shared(open), id)| {
        let others = open.book.job.measures().into_iter();
        let others = others.filter(|(other, _)| Some(*other) != *id);
        others.map(|(_, measure)| measure.name.clone()).collect::<Vec<_>>()
    });
    let at_hand = use_at_hand(texts.clone(), sheet, open.settings.clone(), names);
    let stands = id.and_then(|id| {
        let item = job.item(id)?.clone();
        let mut entries = entries_of(&item);
        entries.set_unit(Some(job.unit));
        Some(Stands { id, item, entries })
    });
    use_together(open, &texts, stands, is_sound.then(|| new.clone()), renamed);
    let title = if id.is_some() { new.name().to_owned() } else { form.asks().title.to_owned() };
    let is_keying = at_hand.is_keying();
    html! {
        <div class={classes!("page", "page--item", is_keying.then_some("is-keying"))}>
            { bar(open, &open.at(section_of(form)), &title) }
            <main class="bench">
                <section class="answer" aria-label="What it comes to">
                    if form == Form::Measure { { headline(open, id, &reckoned) } }
                    if let Some(id) = id.filter(|_| form == Form::Part) { { pieces::list(open, id) } }
                    if let Some(id) = id.filter(|_| form == Form::Measure) {
                        { apart(open, id) }
                        { what_moves(open, id, &at_first, &reckoned) }
                    }
                </section>
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    { ends(open, id, &new, is_sound, section_of(form)) }
                </section>
            </main>
        </div>
    }
}

/// A rename reaches every formula that uses the name.
fn renamed(open: &Open, id: ItemId, new: &Item) -> Vec<Change> {
    let job = &open.book.job;
    match (job.item(id), new) {
        (Some(Item::Measure(old)), Item::Measure(measure)) if old.name != measure.name => {
            let all = job.renaming(id, &measure.name, &open.reckoned);
            all.into_iter().filter(|change| change.id != id).collect()
        }
        _ => Vec::new(),
    }
}

/// The section that an item stands in.
fn section_of(form: Form) -> &'static str {
    match form {
        Form::Measure => "",
        Form::Part => "parts",
        _ => "rack",
    }
}

fn headline(open: &Open, id: Option<ItemId>, reckoned: &Reckoned) -> Html {
    let state = id.and_then(|id| reckoned.measure(id));
    let value = state.and_then(|state| state.in_use());
    let from = match state {
        Some(state) if state.as_cut.is_some() => "as cut",
        _ => "as planned",
    };
    html! {
        <div class="headline" data-testid="answer-headline" role="status">
            <div class="headline__inside is-short">
                <p class="headline__label">{ "In use" }</p>
                <p class="headline__figure">{ quantity(value, open.settings.bench.tape) }</p>
                <p class="headline__rest"><span class="lean">{ from }</span></p>
            </div>
        </div>
    }
}

fn what_moves(open: &Open, id: ItemId, at_first: &Reckoned, now: &Reckoned) -> Html {
    let all = moved(&open.book.job, at_first, now);
    // The size that is being edited says its own change, unless it is a part that is cut.
    let others: Vec<_> =
        all.into_iter().filter(|it| it.id != id || counts_as_cut(open.book.job.item(id))).collect();
    let parts = moved_parts(&open.book.job, at_first, now);
    if others.is_empty() && parts.is_empty() {
        html! {}
    } else {
        moved_list(open, &others, &parts)
    }
}

/// The groups whose match this size breaks, or is broken with.
fn apart(open: &Open, id: ItemId) -> Html {
    let job = &open.book.job;
    let broken = mismatches(job, &open.reckoned).into_iter().filter(
        |it| matches!(job.item(it.group), Some(Item::Match(group)) if group.measures.contains(&id)),
    );
    let broken: Vec<_> = broken.collect();
    if broken.is_empty() {
        return html! {};
    }
    html! {
        <section class="attention" aria-label="Does not match">
            { for broken.iter().map(|it| mismatch(open, it)) }
        </section>
    }
}
