//! The shelf: every job on this device.

use std::rc::Rc;

use reckoner_core::job::{Job, demo};
use reckoner_core::measure::Unit;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::long_list::long_list;
use crate::components::device_line::DeviceLine;
use crate::components::icon::{Icon, icon};
use crate::job_book::book::Book;
use crate::job_book::hook::OnPage;
use crate::platform::shelf::{self, Card};
use crate::platform::{address, dom};
use crate::route;
use crate::settings::Settings;

#[derive(Properties, PartialEq)]
pub(super) struct ShelfPageProps {
    pub(super) settings: Rc<Settings>,
}

/// The cards of every job, `None` until they are there, and what the user must be told.
#[hook]
pub(super) fn use_cards() -> (UseStateHandle<Option<Vec<Card>>>, UseStateHandle<Option<String>>) {
    let cards = use_state_eq(|| None::<Vec<Card>>);
    let trouble = use_state_eq(|| None::<String>);
    {
        let (cards, trouble) = (cards.clone(), trouble.clone());
        use_effect_with((), move |()| {
            spawn_local(async move {
                match shelf::cards().await {
                    Ok(all) => cards.set(Some(all)),
                    Err(problem) => trouble.set(Some(format!(
                        "The jobs on this device cannot be read: {problem}. A new one stays usable on this page."
                    ))),
                }
            });
        });
    }
    (cards, trouble)
}

/// Every job, and the ways to begin one.
#[component]
pub(super) fn ShelfPage(props: &ShelfPageProps) -> Html {
    let (cards, trouble) = use_cards();
    use_effect_with((), |()| dom::set_title("Jobs · Sawdust Reckoner"));
    let put = putting();
    let unit =
        if props.settings.bench.tape.unit().is_metric() { Unit::Millimetre } else { Unit::Inch };
    let new = put.reform(move |_: MouseEvent| Job::new("New job", unit));
    let open_demo = put.reform(|_: MouseEvent| demo::demo());
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Jobs" }</h1>
            </header>
            <main class="job">
                <div class="adds">
                    <button type="button" class="tool tool--main" data-testid="new-job" onclick={new}>{ "New job" }</button>
                    <button type="button" class="tool" data-testid="open-demo" onclick={open_demo}>
                        { "Open the demo (invented)" }
                    </button>
                    <a class="tool" href="#/take" data-testid="to-take">{ "Take a job in" }</a>
                </div>
                <DeviceLine />
                // What comes late stands below what can be tapped.
                { list(cards.as_deref()) }
                if let Some(words) = &*trouble {
                    <p class="trouble is-late" role="alert" data-testid="job-trouble">{ words }</p>
                }
            </main>
        </div>
    }
}

/// Puts a job on the shelf and opens it.
pub(super) fn putting() -> Callback<Job> {
    Callback::from(move |job: Job| {
        let on_page = OnPage::begin(Book::new(job));
        address::go(&route::in_job(on_page.key(), ""));
    })
}

fn list(cards: Option<&[Card]>) -> Html {
    match cards {
        None => html! {},
        Some([]) => {
            html! { <p class="job__words" data-testid="no-jobs">{ "No job yet. Start one, or look at the demo: a potting bench for a school garden." }</p> }
        }
        Some(cards) => html! {
            <ul class="rows" data-testid="jobs">
                { long_list(cards.len(), {
                    let cards = cards.to_vec();
                    move |at| cards.get(at).map(card).unwrap_or_default()
                }) }
            </ul>
        },
    }
}

fn card(card: &Card) -> Html {
    html! {
        <li><a class="row" href={route::in_job(&card.key, "")} data-testid={format!("job-{}", card.title)}>
            <span class="row__name">{ &card.title }</span>
        </a></li>
    }
}
