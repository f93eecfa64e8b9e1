//! Measures that must match each other: which they are, and how far they may drift.

use std::rc::Rc;

use reckoner_core::job::moved::mismatches;
use reckoner_core::job::{Item, ItemId, Match, MeasureKind, Step, check_name};
use reckoner_core::sheet::{Ask, Refusal};
use reckoner_core::{job::NameProblem, say};
use yew::prelude::*;

use super::attention::mismatch;
use super::item::Shared;
use super::long_list::long_list;
use super::sizes::quantity;
use super::together::{Stands, use_together};
use super::{Open, add, bar, ends, row};
use crate::components::icon::{Icon, icon};
use crate::form::Form;
use crate::form::view::{asks, use_at_hand};
use crate::job_book::book::Edit;
use crate::job_book::forms::{MATCH, entries_of_match, match_of};

/// The groups of the job, below its sizes.
pub(super) fn list(open: &Open) -> Html {
    let broken = mismatches(&open.book.job, &open.reckoned);
    let groups = open.book.job.items().filter_map(|(id, item)| match item {
        Item::Match(group) => Some((id, group)),
        _ => None,
    });
    let groups: Vec<_> = groups.collect();
    let one = |id: ItemId, group: &Match| {
        let members = group.measures.iter().filter_map(|id| Some(open.book.job.item(*id)?.name()));
        let is_broken = broken.iter().any(|it| it.group == id);
        html! {
            <>
                <span class="row__name">{ &group.name }</span>
                <span class="row__value">
                    if is_broken { <span class="badge is-short">{ "does not match" }</span> } else { { "match" } }
                </span>
                <span class="row__more">{ members.collect::<Vec<_>>().join(", ") }</span>
            </>
        }
    };
    html! {
        <>
            <h2 class="job__title">{ "Must match" }</h2>
            if !groups.is_empty() {
                <ul class="rows" data-testid="matches">
                    { for groups.iter().map(|(id, group)| row(open, *id, &group.name, one(*id, group))) }
                </ul>
            }
            <div class="adds">{ add(open, "match", "Add sizes that must match") }</div>
        </>
    }
}

/// The page of a group, or of a new one.
pub(super) fn page(open: &Open, id: Option<ItemId>) -> Html {
    html! { <MatchPage key={format!("{id:?}")} open={Shared(open.clone())} {id} /> }
}

#[derive(Properties, PartialEq)]
struct MatchPageProps {
    open: Shared,
    id: Option<ItemId>,
}

#[component]
fn MatchPage(props: &MatchPageProps) -> Html {
    let MatchPageProps { open: Shared(open), id } = props;
    let id = *id;
    let job = &open.book.job;
    let group = match id.and_then(|id| job.item(id)) {
        Some(Item::Match(group)) => Some(group),
        _ => None,
    };
    let stored = group.map(|group| {
        let mut entries = entries_of_match(group);
        entries.set_unit(Some(job.unit));
        entries
    });
    let form = {
        let first = stored.clone().unwrap_or_else(|| Form::fresh(job.unit));
        use_reducer(move || Form::new(&MATCH, first, None))
    };
    let chosen = use_state_eq(Vec::<ItemId>::new);
    let members = group.map_or_else(|| (*chosen).clone(), |group| group.measures.clone());
    let bench = open.settings.bench;
    let mut sheet = MATCH.sheet(form.entries(), &bench, &*open.reckoned);
    if let Err(problem @ (NameProblem::Empty | NameProblem::TooLong | NameProblem::Invisible)) =
        check_name(form.entries().text("name").unwrap_or(""), core::iter::empty())
    {
        let sentence = say![problem.to_string()];
        sheet.refusals.push(Refusal {
            field: "name",
            code: "job",
            sentence,
            at: None,
            way_out: None,
        });
    }
    let sheet = Rc::new(sheet);
    let names = Rc::new(job.measures().into_iter().map(|(_, m)| m.name.clone()).collect());
    let at_hand = use_at_hand(form.clone(), sheet.clone(), open.settings.clone(), names);
    let ask = Ask::new(MATCH.fields, form.entries(), &bench, &*open.reckoned);
    let new = match_of(&ask, members.clone());
    let is_sound = sheet.refusals.is_empty();
    let stands = id.zip(group).zip(stored).map(|((id, group), entries)| Stands {
        id,
        item: Item::Match(group.clone()),
        entries,
    });
    let kept = is_sound.then(|| Item::Match(new.clone()));
    use_together(open, &form, stands, kept, |_, _, _| Vec::new());
    if id.is_some() && group.is_none() {
        return super::lost(open);
    }
    let toggling = (open.clone(), chosen.clone(), members.clone(), group.cloned());
    let toggle = move |measure: ItemId| {
        let (open, chosen, members, group) = toggling.clone();
        Callback::from(move |_: MouseEvent| {
            let mut now = members.clone();
            match now.iter().position(|other| *other == measure) {
                Some(at) => drop(now.remove(at)),
                None => now.push(measure),
            }
            match (id, &group) {
                (Some(id), Some(group)) => {
                    let new = Match { measures: now, ..group.clone() };
                    let label = format!("change {}", new.name);
                    let change = open.book.job.replacing(id, Item::Match(new));
                    open.on_page.edit(Edit::Make(Step::new(label, vec![change])));
                }
                _ => chosen.set(now),
            }
        })
    };
    let broken = mismatches(job, &open.reckoned).into_iter().find(|it| Some(it.group) == id);
    let lengths = job.measures().into_iter().filter(|(_, m)| m.kind == MeasureKind::Length);
    let lengths: Vec<ItemId> = lengths.map(|(id, _)| id).collect();
    html! {
        <div class={classes!("page", "page--item", at_hand.is_keying().then_some("is-keying"))}>
            { bar(open, &open.at(""), if new.name.is_empty() { MATCH.title } else { &new.name }) }
            <main class="bench">
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    { ends(open, id, &Item::Match(new.clone()), is_sound && members.len() >= 2, "") }
                </section>
                <section class="answer members" aria-label="Which sizes">
                    if let Some(it) = &broken { <div class="attention">{ mismatch(open, it) }</div> }
                    <p class="job__words" role="status">
                        { if members.len() < 2 { "Tap two or more sizes that must match.".to_owned() } else { format!("{} sizes must match.", members.len()) } }
                    </p>
                    <ul class="rows" data-testid="members">
                        { long_list(lengths.len(), {
                            let (open, members) = (open.clone(), members.clone());
                            move |at| {
                                let measure = lengths.get(at).copied();
                                let it = measure.and_then(|id| Some((id, open.book.job.item(id)?.name())));
                                it.map(|(id, name)| member(&open, id, name, members.contains(&id), toggle(id)))
                                    .unwrap_or_default()
                            }
                        }) }
                    </ul>
                </section>
            </main>
        </div>
    }
}

/// A size that may be one of the group.
fn member(open: &Open, id: ItemId, name: &str, is_in: bool, onclick: Callback<MouseEvent>) -> Html {
    let value = open.reckoned.measure(id).and_then(|measure| measure.in_use());
    html! {
        <li><button type="button" class="row row--choose" {onclick}
            data-testid={format!("member-{name}")} aria-pressed={if is_in { "true" } else { "false" }}>
            <span class="row__name"><span class="row__box">if is_in { { icon(Icon::Tick) } }</span>{ name }</span>
            <span class="row__value">{ quantity(value, open.settings.bench.tape) }</span>
        </button></li>
    }
}
