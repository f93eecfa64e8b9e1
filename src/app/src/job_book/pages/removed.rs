//! Jobs that were taken off this device: put back, or deleted for good.

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::sheet::Bench;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::long_list::long_list;
use crate::components::icon::{Icon, icon};
use crate::components::reading::use_reading;
use crate::job_book::hook::{self, OnPage};
use crate::job_book::incoming::count;
use crate::platform::database::Problem;
use crate::platform::dom;
use crate::platform::shelf::{self, Card};
use crate::route;

/// A job that was just taken off: its key and title.
pub(super) type Removed = (String, String);

thread_local! {
    static LAST: RefCell<Option<Removed>> = const { RefCell::new(None) };
}

/// The job that was just taken off; the next page of all jobs offers it.
pub(super) fn just_removed(job: Removed) {
    LAST.set(Some(job));
}

const DELETED: &str = "It was deleted in another window.";

/// The job that was taken off on the page before, with the way back.
#[component]
pub(super) fn TakenOff(props: &TakenOffProps) -> Html {
    let job = use_state(|| LAST.take());
    let said = use_state_eq(|| None::<String>);
    let Some((key, title)) = &*job else { return html! {} };
    let put_back = {
        let (key, title, said) = (key.clone(), title.clone(), said.clone());
        let on_back = props.on_back.clone();
        Callback::from(move |_: MouseEvent| {
            let (key, title, said) = (key.clone(), title.clone(), said.clone());
            let on_back = on_back.clone();
            spawn_local(async move {
                said.set(Some(match hook::put_back(&key).await {
                    Ok(true) => format!("Put back: {title}"),
                    Ok(false) => DELETED.to_owned(),
                    Err(problem) => format!("Still taken off: {problem}."),
                }));
                on_back.emit(());
            });
        })
    };
    html! {
        <div class="remind" data-testid="taken-off">
            <p role="status">{ said.as_deref().map_or_else(|| format!("Taken off: {title}"), str::to_owned) }</p>
            <div class="adds">
                <button type="button" class="tool" data-testid="put-back" disabled={said.is_some()} onclick={put_back}>{ "Put it back" }</button>
            </div>
        </div>
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct TakenOffProps {
    /// Called when the jobs that are here may have changed.
    pub(super) on_back: Callback<()>,
}

/// Puts a job back that was taken off the device.
pub(super) fn put_back(on_page: &OnPage, bench: Bench) -> Html {
    let on_page = on_page.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        let on_page = on_page.clone();
        spawn_local(async move { on_page.put_back(&bench).await });
    });
    html! { <button type="button" class="tool" data-testid="put-back" {onclick}>{ "Put it back" }</button> }
}

/// What the page knows.
#[derive(Clone)]
struct State {
    cards: UseStateHandle<Option<Rc<Vec<Card>>>>,
    /// Those that were put back: they stay in the list, so that nothing moves under a finger.
    back: Rc<RefCell<BTreeSet<String>>>,
    said: UseStateHandle<String>,
    trouble: UseStateHandle<Option<String>>,
}

impl State {
    async fn read(&self) -> Result<(), Problem> {
        let read = shelf::removed().await;
        if let Err(problem) = &read {
            self.trouble.set(Some(format!("The removed jobs cannot be read: {problem}.")));
        }
        read.map(|cards| self.cards.set(Some(Rc::new(cards))))
    }

    fn put_back(&self, Card { key, title, .. }: Card) {
        let state = self.clone();
        spawn_local(async move {
            match hook::put_back(&key).await {
                Ok(true) => {
                    state.back.borrow_mut().insert(key);
                    state.trouble.set(None);
                    state.said.set(format!("Put back: {title}"));
                }
                Ok(false) => state.trouble.set(Some(DELETED.to_owned())),
                Err(problem) => {
                    state.trouble.set(Some(format!("Still taken off: {problem}.")));
                }
            }
        });
    }

    fn empty(&self, keys: Vec<String>) {
        let state = self.clone();
        spawn_local(async move {
            let mut gone = 0_usize;
            for key in keys {
                match hook::delete(&key).await {
                    Ok(is_gone) => gone = gone.saturating_add(is_gone.into()),
                    Err(problem) => {
                        let words = format!("The others are still here: {problem}.");
                        state.trouble.set(Some(words));
                        return drop(state.read().await);
                    }
                }
            }
            state.back.borrow_mut().clear();
            state.trouble.set(None);
            state.said.set(format!("{} deleted for good.", count(gone, "job", "jobs")));
            drop(state.read().await);
        });
    }
}

/// Every job that was taken off.
#[component]
pub(super) fn RemovedPage() -> Html {
    let state = State {
        cards: use_state_eq(|| None),
        back: use_mut_ref(BTreeSet::new),
        said: use_state_eq(String::new),
        trouble: use_state_eq(|| None),
    };
    {
        let state = state.clone();
        use_reading(0, move || {
            let state = state.clone();
            async move {
                state.read().await?;
                state.trouble.set(None);
                Ok(())
            }
        });
    }
    use_effect_with((), |()| dom::set_title("Removed jobs · Sawdust Reckoner"));
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/jobs" aria-label="All jobs" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Removed jobs" }</h1>
            </header>
            <main class="job">
                <p class="job__words">{ "Jobs that were taken off this device, with all that was typed in them. They stay here until you empty the list." }</p>
                { list(&state) }
                <p class="job__words said" role="status" data-testid="removed-said">{ &*state.said }</p>
                if let Some(words) = &*state.trouble {
                    <p class="trouble is-late" role="alert" data-testid="job-trouble">{ words }</p>
                }
            </main>
        </div>
    }
}

fn list(state: &State) -> Html {
    let Some(cards) = (*state.cards).clone() else { return html! {} };
    let left: Vec<String> = cards
        .iter()
        .filter(|card| !state.back.borrow().contains(&card.key))
        .map(|card| card.key.clone())
        .collect();
    if cards.is_empty() {
        return html! { <p class="job__words" data-testid="no-removed">{ "The list is empty." }</p> };
    }
    let is_empty = left.is_empty();
    let empty = {
        let state = state.clone();
        Callback::from(move |_: MouseEvent| {
            let jobs = count(left.len(), "job", "jobs");
            if dom::confirm(&format!("Delete {jobs} for good? They cannot be put back after that."))
            {
                state.empty(left.clone());
            }
        })
    };
    let row = {
        let (state, cards) = (state.clone(), cards.clone());
        move |at: usize| cards.get(at).map(|card| row(&state, card)).unwrap_or_default()
    };
    html! {
        <>
            <ul class="rows" data-testid="removed">{ long_list(cards.len(), row) }</ul>
            <div class="adds">
                <button type="button" class="tool" data-testid="empty-list" disabled={is_empty} onclick={empty}>
                    { icon(Icon::Clear) }<span>{ "Empty the list" }</span>
                </button>
            </div>
        </>
    }
}

fn row(state: &State, card: &Card) -> Html {
    let Card { key, title, .. } = card;
    let way = if state.back.borrow().contains(key) {
        html! { <a class="tool" href={route::in_job(key, "")} data-testid={format!("open-{title}")}>{ "Open it" }</a> }
    } else {
        let onclick = {
            let (state, card) = (state.clone(), card.clone());
            Callback::from(move |_: MouseEvent| state.put_back(card.clone()))
        };
        html! {
            <button type="button" class="tool" data-testid={format!("put-back-{title}")}
                aria-label={format!("Put back: {title}")} {onclick}>{ "Put back" }</button>
        }
    };
    html! {
        <li class="row">
            <span class="row__name">{ title }</span>
            <span class="adds adds--row">{ way }</span>
        </li>
    }
}
