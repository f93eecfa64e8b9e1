//! Notes and cautions of an answer.

use reckoner_core::measure::Tape;
use reckoner_core::order;
use reckoner_core::sheet::{Answer, Caution};
use yew::prelude::*;

use super::fold::use_fold;
use crate::platform::{dom, near, storage};

/// What the user should know.
pub(crate) fn notes(answer: &Answer, tape: Tape) -> Html {
    html! {
        if !answer.notes.is_empty() {
            <ul class="notes">
                { for answer.notes.iter().map(|note| html! { <li>{ note.on(tape) }</li> }) }
            </ul>
        }
    }
}

#[derive(Properties, PartialEq)]
pub(crate) struct SafetyProps {
    /// Whose dangers: the calculator, and the question it is asked.
    pub(crate) question: String,
    pub(crate) cautions: Vec<Caution>,
    /// The tape that their distances are read on.
    pub(crate) tape: Tape,
}

/// The dangers of the work, folded to one row. It stands open until those that can take fingers have been on the screen
/// at this question once: so a setting that brings a new one opens it again.
#[component]
pub(crate) fn Safety(props: &SafetyProps) -> Html {
    let SafetyProps { question, cautions, tape } = props;
    let place = use_node_ref();
    let name = storage::read_cautions(question);
    let dangers: Vec<&str> =
        cautions.iter().filter(|it| it.can_take_fingers()).map(|it| it.id()).collect();
    // What was read before stays as it was read, for as long as the same dangers are shown.
    let is_new = use_memo((name.clone(), dangers.clone()), |(name, dangers)| {
        let read = storage::get(name).unwrap_or_default();
        dangers.iter().any(|danger| !read.split(',').any(|it| it == *danger))
    });
    let (was_open, opened) = use_fold("safety");
    let is_open = use_state_eq(|| *is_new || was_open);
    {
        let (is_open, place) = (is_open.clone(), place.clone());
        use_effect_with((name, dangers, *is_new), move |(name, dangers, is_new)| {
            if *is_new {
                is_open.set(true);
            }
            let (name, dangers) = (name.clone(), dangers.clone());
            let watch = is_new.then(|| {
                near::watch(&place, near::SEEN, move |is_seen, _| {
                    // Folded, it has no size and is not on the screen.
                    if is_seen {
                        let read = storage::get(&name).unwrap_or_default();
                        let read = read.split(',').filter(|it| !it.is_empty());
                        let new = dangers.iter().copied();
                        let mut all: Vec<&str> = read.chain(new).collect();
                        order::sort(&mut all);
                        all.dedup();
                        storage::set(&name, &all.join(","));
                    }
                })
            });
            move || drop(watch)
        });
    }
    let ontoggle = {
        let is_open = is_open.clone();
        Callback::from(move |event: Event| {
            if let Some(now) = dom::toggled(&event, ".fold") {
                is_open.set(now);
                opened.emit(now);
            }
        })
    };
    html! {
        if !cautions.is_empty() {
            <details class="fold cautions" data-testid="safety" open={*is_open} {ontoggle}>
                <summary>{ "Safety" }<span class="fold__count">{ cautions.len() }</span></summary>
                <div ref={place} class="fold__body">{ for cautions.iter().map(|it| caution(*it, *tape)) }</div>
            </details>
        }
    }
}

/// One line, which opens to more.
pub(crate) fn caution(caution: Caution, tape: Tape) -> Html {
    html! {
        <details class="caution">
            <summary>{ caution.line().on(tape) }</summary>
            <p>{ caution.more().on(tape) }</p>
        </details>
    }
}
