//! Measures and parts that must match each other: which they are, and how far they may drift.

use std::rc::Rc;

use reckoner_core::job::moved::mismatches;
use reckoner_core::job::{Dimension, Item, ItemId, Job, Match, MeasureKind, Step};
use reckoner_core::measure::text::Quantity;
use reckoner_core::sheet::{Ask, Entries, Sheet};
use yew::prelude::*;

use super::attention::of_item;
use super::drafts;
use super::drafts::Ends;
use super::head::{bar, lost};
use super::items::{add, row, take_out};
use super::long_list::long_list;
use super::open::{Open, Shared};
use crate::components::icon::{Icon, icon};
use crate::components::measure::quantity;
use crate::form::at_hand::{KnownNames, Manner, use_at_hand_as};
use crate::form::view::asks;
use crate::form::{Action, Form};
use crate::job_book::forms::{MATCH, entries_of_match, match_of, read_match};
use crate::job_book::kept_form::use_kept_form;

/// The groups of the job, below its sizes.
pub(super) fn list(open: &Open) -> Html {
    let broken = mismatches(&open.book.job, &open.reckoned);
    let groups = open.book.job.items().filter_map(|(id, item)| match item {
        Item::Match(group) => Some((id, group)),
        _ => None,
    });
    let groups: Vec<_> = groups.collect();
    let one = |id: ItemId, group: &Match| {
        let members = group.measures.iter().filter_map(|id| Some(named(open.book.job.item(*id)?)));
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
            <div class="adds">{ add(open, "match", "Add what must match") }</div>
        </>
    }
}

/// What a member is called: a part and a size may have one name.
fn named(item: &Item) -> String {
    match item {
        Item::Part(part) => format!("{}, its pieces", part.name),
        item => item.name().to_owned(),
    }
}

/// The page of a group.
pub(super) fn page(open: &Open, id: ItemId) -> Html {
    let place = format!("item/{}", id.0);
    html! { <MatchPage key={place.clone()} open={Shared(open.clone())} id={Some(id)} place={place.clone()} /> }
}

/// The form of a new group, at its place.
pub(super) fn page_of_new(open: &Open, place: &str) -> Html {
    html! { <MatchPage key={place.to_owned()} open={Shared(open.clone())} id={None::<ItemId>} place={place.to_owned()} /> }
}

/// The field of a new group's form that holds what was tapped in the list.
const MEMBERS: &str = "members";

/// The sizes tapped for a new group.
fn members_of(entries: &Entries) -> Vec<ItemId> {
    let text = entries.text(MEMBERS).unwrap_or_default();
    text.split(' ').filter_map(|id| id.parse().ok().map(ItemId)).collect()
}

#[derive(Properties, PartialEq)]
struct MatchPageProps {
    open: Shared,
    id: Option<ItemId>,
    /// Where its note stands.
    place: String,
}

#[component]
fn MatchPage(props: &MatchPageProps) -> Html {
    let MatchPageProps { open: Shared(open), id, place } = props;
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
    let standing = stored.unwrap_or_else(|| Form::fresh(job.unit));
    let form = use_kept_form(open.keeping(), place, &MATCH, standing);
    let members = group.map_or_else(|| members_of(form.entries()), |group| group.measures.clone());
    let bench = open.settings.bench;
    let sheet = Rc::new(read_match(&open.reckoned, &bench, form.entries()));
    let names = Rc::new(job.measures().into_iter().map(|(_, m)| m.name.clone()).collect());
    let at_hand = use_at_hand_as(
        form.clone(),
        sheet.clone(),
        open.settings.clone(),
        KnownNames { list: names, job: None },
        Manner::of_no_examples(),
    );
    let ask = Ask::new(MATCH.fields, form.entries(), &bench, &*open.reckoned);
    let new = match_of(&ask, members.clone(), group.and_then(|group| group.left));
    let has_part = has_part(job, &members);
    let needs = needs(job, &sheet, &members);
    if id.is_some() && group.is_none() {
        return lost(open);
    }
    let toggle = {
        let (open, form) = (open.clone(), form.clone());
        move |measure: ItemId| match id {
            Some(id) => open.making(move |job| {
                let Item::Match(group) = job.item(id)? else { return None };
                let new = Match { measures: toggled(&group.measures, measure), ..group.clone() };
                let label = format!("change {}", new.name);
                Some(Step::new(label, vec![job.replacing(id, Item::Match(new))]))
            }),
            None => {
                let form = form.clone();
                Callback::from(move |_: MouseEvent| {
                    let now = toggled(&members_of(form.entries()), measure);
                    let now: Vec<String> = now.iter().map(|id| id.0.to_string()).collect();
                    form.dispatch(Action::Set(vec![(MEMBERS, now.join(" "))]));
                })
            }
        }
    };
    let lengths = job.measures().into_iter().filter(|(_, m)| m.kind == MeasureKind::Length);
    let parts = job.parts().into_iter().map(|(id, _)| id);
    let lengths: Vec<ItemId> = lengths.map(|(id, _)| id).chain(parts).collect();
    let words = match members.len() {
        1 if has_part => "Its pieces must match each other in length.".to_owned(),
        0 | 1 => "Tap two or more sizes that must match, or pieces that must.".to_owned(),
        count => format!("{count} sizes must match."),
    };
    html! {
        <div class={classes!("page", "page--item", at_hand.is_keying().then_some("is-keying is-close"))}>
            { bar(open, &open.at("sizes"), if new.name.is_empty() { MATCH.title } else { &new.name }) }
            <main class="bench">
                <section class="sizes" aria-label="What is asked">
                    { asks(&at_hand) }
                    if let Some(id) = id {
                        { take_out(open, id, "sizes") }
                    } else {
                        { drafts::ends(open, &form, place, Ends { needs, back: "sizes", again: None }, {
                            let open = open.clone();
                            move |job: &Job, entries: &Entries| new_group(job, &open, entries)
                        }) }
                    }
                </section>
                <section class="answer members" aria-label="Which sizes">
                    if let Some(id) = id { { of_item(open, id) } }
                    <p class="job__words" role="status">
                        { words }
                    </p>
                    <ul class="rows" data-testid="members">
                        { long_list(lengths.len(), {
                            let (open, members) = (open.clone(), members.clone());
                            move |at| {
                                let measure = lengths.get(at).copied();
                                let it = measure.and_then(|id| Some((id, open.book.job.item(id)?)));
                                it.map(|(id, item)| member(&open, id, item, members.contains(&id), toggle(id)))
                                    .unwrap_or_default()
                            }
                        }) }
                    </ul>
                </section>
            </main>
        </div>
    }
}

/// Whether pieces are among the members: those of one part must match each other.
fn has_part(job: &Job, members: &[ItemId]) -> bool {
    members.iter().any(|id| matches!(job.item(*id), Some(Item::Part(_))))
}

/// What a group cannot do without yet, by name.
fn needs(job: &Job, sheet: &Sheet, members: &[ItemId]) -> Vec<&'static str> {
    let mut needs = drafts::needs(sheet, &MATCH);
    needs.extend((members.len() < 2 && !has_part(job, members)).then_some("two sizes"));
    needs
}

/// The group that the texts of a new one come to; `None` while it needs something.
fn new_group(job: &Job, open: &Open, entries: &Entries) -> Option<Item> {
    let bench = open.settings.bench;
    let members = members_of(entries);
    let sheet = read_match(&open.reckoned, &bench, entries);
    let ask = Ask::new(MATCH.fields, entries, &bench, &*open.reckoned);
    let is_sound = needs(job, &sheet, &members).is_empty();
    is_sound.then(|| Item::Match(match_of(&ask, members, None)))
}

/// The members with one more, or one less.
fn toggled(members: &[ItemId], measure: ItemId) -> Vec<ItemId> {
    let mut now = members.to_vec();
    match now.iter().position(|other| *other == measure) {
        Some(at) => drop(now.remove(at)),
        None => now.push(measure),
    }
    now
}

/// A size that may be one of the group.
fn member(
    open: &Open,
    id: ItemId,
    item: &Item,
    is_in: bool,
    onclick: Callback<MouseEvent>,
) -> Html {
    let length = open.reckoned.part(id).and_then(|part| part.wanted(Dimension::Length));
    let value = match length {
        Some(length) => Some(Quantity::Length(length)),
        None => open.reckoned.measure(id).and_then(|measure| measure.in_use()),
    };
    let name = named(item);
    html! {
        <li><button type="button" class="row row--choose" {onclick}
            data-testid={format!("member-{name}")} aria-pressed={if is_in { "true" } else { "false" }}>
            <span class="row__name"><span class="row__box">if is_in { { icon(Icon::Tick) } }</span>{ name }</span>
            <span class="row__value">{ quantity(value, open.settings.bench.tape) }</span>
        </button></li>
    }
}
