//! What wants looking at: the same list on every page of the job, each entry with its ways out.

use reckoner_core::attention::{Does, Fact, Outcome, Way, cost, looking_again, outcome, ways};
use reckoner_core::job::rescue::may_float;
use reckoner_core::job::{Item, ItemId};
use yew::prelude::*;

use super::long_list::long_list;
use super::moved::moved_list;
use super::open::{Open, Shared};
use super::removed::put_back;
use crate::components::sentence::sentence;

/// So many entries stand there at first: below them is the page itself.
const MOST_FACTS: usize = 4;

/// The box on a page of the job; nothing when all is well.
pub(super) fn attention(open: &Open) -> Html {
    if open.attention.facts.is_empty() && open.attention.left.is_empty() {
        return html! {};
    }
    html! { <List open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct ListProps {
    open: Shared,
}

#[component]
fn List(props: &ListProps) -> Html {
    let Shared(open) = &props.open;
    let is_whole = use_state_eq(|| false);
    let count = open.attention.facts.len();
    let shown = if *is_whole { count } else { count.min(MOST_FACTS) };
    let show_all = {
        let is_whole = is_whole.clone();
        Callback::from(move |_: MouseEvent| is_whole.set(true))
    };
    html! {
        <section class="attention" aria-label="Look at these" data-testid="attention">
            if count > 0 {
                <h2>{ "Look at these" }</h2>
                <ul class="attention__list">
                    { long_list(shown, {
                        let open = open.clone();
                        move |at| open.attention.facts.get(at).map(|it| html! { <li>{ entry(&open, it, false) }</li> }).unwrap_or_default()
                    }) }
                </ul>
            }
            if shown < count {
                <button type="button" class="tool" data-testid="all-to-look-at" onclick={show_all}>{ format!("All {count}") }</button>
            }
            if !open.attention.left.is_empty() {
                <h2>{ "Left as it is" }</h2>
                { for open.attention.left.iter().map(|fact| left(open, fact)) }
            }
        </section>
    }
}

/// A fact in words, with its ways out, where it stands outside the list.
pub(super) fn told(open: &Open, fact: &Fact) -> Html {
    let (job, tape) = (&open.book.job, open.settings.bench.tape);
    html! {
        <>
            <p>{ fact.about(job) }{ ": " }{ sentence(&fact.sentence(job), tape) }</p>
            { for ways(job, &open.reckoned, &open.settings.bench, fact, &[]).iter().map(|way| way_out(open, fact, way, None)) }
        </>
    }
}

/// What wants looking at in one piece of a part.
pub(super) fn of_piece(open: &Open, id: ItemId, index: usize) -> Html {
    let facts: Vec<Fact> =
        open.attention.facts.iter().filter_map(|it| it.of_piece(id, index)).collect();
    let all: Vec<Fact> =
        open.attention.left.iter().filter_map(|it| it.of_piece(id, index)).collect();
    html! {
        if !facts.is_empty() || !all.is_empty() {
            <section class="attention" aria-label="Ways out" data-testid="attention">
                { for facts.iter().map(|fact| entry(open, fact, true)) }
                { for all.iter().map(|fact| left(open, fact)) }
            </section>
        }
    }
}

/// What wants looking at of one item.
pub(super) fn of_item(open: &Open, id: ItemId) -> Html {
    let facts = open.attention.facts.iter().filter(|fact| fact.item() == Some(id));
    let facts: Vec<&Fact> = facts.collect();
    html! {
        if !facts.is_empty() {
            <section class="attention" aria-label="Look at these">
                { for facts.into_iter().map(|fact| entry(open, fact, true)) }
            </section>
        }
    }
}

fn entry(open: &Open, fact: &Fact, is_opened: bool) -> Html {
    let what = match fact {
        Fact::Unread { what, .. } => what,
        _ => "",
    };
    let key = format!("{:?}", (core::mem::discriminant(fact), fact.about(&open.book.job), what));
    html! { <Entry {key} open={Shared(open.clone())} fact={fact.clone()} {is_opened} /> }
}

/// Whether the device took the job after all, and the list is not made anew yet: the room stays, so that nothing moves by itself.
fn is_past(open: &Open, fact: &Fact) -> bool {
    matches!(fact, Fact::NotKept(_)) && open.not_kept.is_none()
}

/// How many things want looking at.
pub(super) fn count(open: &Open) -> usize {
    open.attention.facts.iter().filter(|fact| !is_past(open, fact)).count()
}

/// What was left as it is, with the way back.
fn left(open: &Open, fact: &Fact) -> Html {
    let job = &open.book.job;
    let about = fact.about(job);
    let again = {
        let fact = fact.clone();
        open.making(move |job| looking_again(job, &fact))
    };
    html! {
        <article class="attention__part" data-testid={format!("left-{about}")}>
            <p>
                <b>{ &about }</b>{ ": " }{ sentence(&fact.sentence(job), open.settings.bench.tape) }
                if let Some(with) = fact.left_with(job) { { " " }{ sentence(&with, open.settings.bench.tape) } }
            </p>
            <button type="button" class="way-out" data-testid={format!("look-again-{about}")} onclick={again}>
                { "Look at it again" }
            </button>
        </article>
    }
}

#[derive(Properties, PartialEq)]
struct EntryProps {
    open: Shared,
    fact: Fact,
    /// Its ways out stand there without a tap.
    #[prop_or_default]
    is_opened: bool,
}

/// One entry: a tap opens its ways out.
#[component]
fn Entry(props: &EntryProps) -> Html {
    let EntryProps { open: Shared(open), fact, .. } = props;
    let is_open = use_state_eq(|| props.is_opened);
    let job = &open.book.job;
    let tape = open.settings.bench.tape;
    let about = fact.about(job);
    let toggle = {
        let is_open = is_open.clone();
        Callback::from(move |_: MouseEvent| is_open.set(!*is_open))
    };
    let changes = match fact {
        Fact::Plan { changes, .. } => changes.as_slice(),
        _ => &[],
    };
    html! {
        <article class={classes!("attention__part", is_past(open, fact).then_some("is-past"))} data-testid={format!("trouble-{about}")}>
            <button type="button" class="attention__open" aria-expanded={if *is_open { "true" } else { "false" }}
                data-testid={format!("open-{about}")} onclick={toggle}>
                <b>{ &about }</b>{ ": " }{ sentence(&fact.sentence(job), tape) }
            </button>
            if !changes.is_empty() {
                <ul class="notes" data-testid="changed">{ for changes.iter().map(|it| html! { <li>{ sentence(it, tape) }</li> }) }</ul>
            }
            if *is_open { <Ways open={props.open.clone()} fact={fact.clone()} /> }
        </article>
    }
}

/// The ways out of an entry, with what each would move, and what must stay as it is.
#[component]
fn Ways(props: &EntryProps) -> Html {
    let EntryProps { open: Shared(open), fact, .. } = props;
    let held = use_state_eq(Vec::<ItemId>::new);
    let job = &open.book.job;
    let found = use_memo((props.open.clone(), fact.clone(), (*held).clone()), {
        |(Shared(open), fact, held)| {
            let (job, reckoned, bench) = (&open.book.job, &open.reckoned, &open.settings.bench);
            let all = ways(job, reckoned, bench, fact, held).into_iter();
            let with = all.map(|way| {
                let comes = way.step.as_ref().and_then(|it| outcome(job, reckoned, bench, it));
                (way, comes)
            });
            with.collect::<Vec<_>>()
        }
    });
    let floats = fact.trouble().map_or_else(Vec::new, |it| may_float(job, &open.reckoned, &it));
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
            { for found.iter().map(|(way, comes)| way_out(open, fact, way, comes.as_ref())) }
            if !floats.is_empty() {
                <p class="attention__ways">{ "Tap what must stay as it is:" }</p>
                <div class="holds">{ for floats.into_iter().map(hold) }</div>
            }
        </>
    }
}

/// What wants looking at when a step is made, and does not now.
pub(super) fn then_look_at(comes: &Outcome) -> Html {
    html! {
        if !comes.brings.is_empty() {
            <p class="attention__ways" data-testid="then-look-at">{ format!("Then look at: {}.", comes.then_look_at()) }</p>
        }
    }
}

/// What a way is called in the tests.
fn id_of(open: &Open, does: Does) -> String {
    match does {
        Does::CutAgain => "cut-again".to_owned(),
        Does::CutAgainFromRack => "cut-again-rack".to_owned(),
        Does::Trim(_) => "trim".to_owned(),
        Does::GiveWay(size, _) => {
            format!("rescue-{}", open.book.job.item(size).map_or("", Item::name))
        }
        Does::Shim(_) => "shim".to_owned(),
        Does::Leave => "leave".to_owned(),
        Does::TakePlace => "take-place".to_owned(),
        Does::ToRack => "to-rack".to_owned(),
        Does::WantAgain => "want-again".to_owned(),
        Does::Scrap => "scrap".to_owned(),
        Does::TakePlan => "take-plan".to_owned(),
        Does::ToSmallest => "to-smallest".to_owned(),
        Does::OwnSize => "own-size".to_owned(),
        Does::Measure => "measure".to_owned(),
        Does::MakeAgain => "make-again".to_owned(),
        Does::PlanAgain => "to-boards".to_owned(),
        Does::GoThere => "go-there".to_owned(),
        Does::SaveFile => "to-hand-on".to_owned(),
        Does::PutBack => "put-back".to_owned(),
    }
}

/// Where a way out is done that no tap can do.
fn place_of(fact: &Fact) -> String {
    match fact {
        Fact::Off { part, pieces, of, .. } => {
            let piece = pieces.first().copied().unwrap_or(0);
            format!("stands/{}/{piece}/{}", part.0, of.word())
        }
        Fact::NotRecorded { part, pieces } => {
            format!("piece/{}/{}", part.0, pieces.first().copied().unwrap_or(0))
        }
        Fact::Unread { item, piece: Some(piece), .. } => format!("piece/{}/{piece}", item.0),
        Fact::Plan { .. } => "boards".to_owned(),
        Fact::NotKept(_) => "hand-on".to_owned(),
        Fact::Behind { kept, .. } => format!("parts-of/{}", kept.0),
        fact => fact.item().map_or_else(String::new, |id| format!("item/{}", id.0)),
    }
}

fn way_out(open: &Open, fact: &Fact, way: &Way, comes: Option<&Outcome>) -> Html {
    let tape = open.settings.bench.tape;
    let words = sentence(&fact.way(way.does, &open.book.job), tape);
    let id = id_of(open, way.does);
    if way.does == Does::PutBack {
        return put_back(&open.on_page, open.settings.bench);
    }
    let cost = cost(&open.book.job, &open.reckoned, &open.settings.bench, (fact, way.does), comes);
    let cost = cost.map(|it| {
        html! { <p class="attention__ways" data-testid="way-cost">{ sentence(&it, tape) }</p> }
    });
    if way.step.is_none() {
        let link = html! { <a class="way-out" href={open.at(&place_of(fact))} data-testid={id}>{ words }</a> };
        return match cost {
            Some(cost) => html! { <div class="attention__way">{ link }{ cost }</div> },
            None => link,
        };
    }
    let onclick = {
        let (open, fact, does) = (open.clone(), fact.clone(), way.does);
        let make = open.clone();
        make.making(move |job| {
            let all = ways(job, &open.reckoned, &open.settings.bench, &fact, &[]);
            all.into_iter().find(|way| way.does == does)?.step
        })
    };
    html! {
        <div class="attention__way">
            <button type="button" class="way-out" data-testid={id} {onclick}>{ words }</button>
            { cost }
            if let Some(caution) = way.does.caution() {
                <p class="attention__ways" data-testid="way-caution">{ caution }</p>
            }
            if let Some(comes) = comes {
                if !comes.moves.is_empty() || !comes.parts.is_empty() {
                    { moved_list(open, &comes.job, &comes.moves, &comes.parts) }
                }
                { then_look_at(comes) }
            }
        </div>
    }
}
