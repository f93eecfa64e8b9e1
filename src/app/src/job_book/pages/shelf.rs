//! The shelf: every job on this device, and the ways to bring one in.

use std::rc::Rc;

use reckoner_core::job::{Job, demo};
use reckoner_core::measure::Unit;
use reckoner_formats::{Opened, open_job, unpack};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use crate::components::icon::{Icon, icon};
use crate::job_book::book::Book;
use crate::platform::shelf::{self, Card};
use crate::platform::{address, dom, files};
use crate::route;
use crate::settings::Settings;

#[derive(Properties, PartialEq)]
pub(super) struct ShelfPageProps {
    pub(super) settings: Rc<Settings>,
    /// A job that came as a link, packed.
    pub(super) packed: Option<String>,
}

/// Every job, and the ways to bring one in. What comes in is shown before anything changes.
#[component]
pub(super) fn ShelfPage(props: &ShelfPageProps) -> Html {
    let cards = use_state_eq(|| None::<Vec<Card>>);
    let trouble = use_state_eq(|| None::<String>);
    let incoming = use_state_eq(|| None::<Rc<Opened>>);
    use_effect_with((), |()| dom::set_title("Jobs · Sawdust Reckoner"));
    {
        let (cards, trouble) = (cards.clone(), trouble.clone());
        use_effect_with((), move |()| {
            spawn_local(async move {
                match shelf::cards().await {
                    Ok(all) => cards.set(Some(all)),
                    Err(problem) => trouble.set(Some(problem.to_string())),
                }
            });
        });
    }
    let look_at = {
        let (incoming, trouble) = (incoming.clone(), trouble.clone());
        Callback::from(move |text: String| match open_job(&text) {
            Ok(opened) => {
                trouble.set(None);
                incoming.set(Some(Rc::new(opened)));
            }
            Err(problem) => trouble.set(Some(problem.to_string())),
        })
    };
    {
        let (look_at, trouble) = (look_at.clone(), trouble.clone());
        use_effect_with(props.packed.clone(), move |packed| {
            if let Some(packed) = packed {
                match unpack(packed) {
                    Ok(text) => look_at.emit(text),
                    Err(problem) => trouble.set(Some(problem.to_string())),
                }
            }
        });
    }
    let put = {
        let trouble = trouble.clone();
        Callback::from(move |job: Job| {
            let trouble = trouble.clone();
            spawn_local(async move {
                match shelf::add(&Book::new(job)).await {
                    Ok(key) => address::go(&route::in_job(&key, "")),
                    Err(problem) => trouble.set(Some(problem.to_string())),
                }
            });
        })
    };
    let unit =
        if props.settings.bench.tape.unit().is_metric() { Unit::Millimetre } else { Unit::Inch };
    let new = put.reform(move |_: MouseEvent| Job::new("New job", unit));
    let open_demo = put.reform(|_: MouseEvent| demo::demo());
    let chosen = {
        let (look_at, trouble) = (look_at.clone(), trouble.clone());
        Callback::from(move |event: Event| {
            let (look_at, trouble) = (look_at.clone(), trouble.clone());
            files::read_chosen(&event, reckoner_formats::MAX_FILE, move |read| match read {
                Ok(text) => look_at.emit(text),
                Err(words) => trouble.set(Some(words)),
            });
        })
    };
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Jobs" }</h1>
            </header>
            <main class="job">
                if let Some(words) = &*trouble {
                    <p class="trouble" role="alert" data-testid="job-trouble">{ words }</p>
                }
                if let Some(opened) = &*incoming { { preview(opened, &put, &incoming) } }
                { list(cards.as_deref()) }
                <div class="adds">
                    <button type="button" class="tool tool--main" data-testid="new-job" onclick={new}>{ "New job" }</button>
                    <button type="button" class="tool" data-testid="open-demo" onclick={open_demo}>
                        { "Open the demo (invented)" }
                    </button>
                    <label class="tool file">
                        { "Open a job file" }
                        <input type="file" class="voice" accept=".json,application/json" data-testid="open-file" onchange={chosen} />
                    </label>
                </div>
            </main>
        </div>
    }
}

fn list(cards: Option<&[Card]>) -> Html {
    match cards {
        None => html! {},
        Some([]) => {
            html! { <p class="job__words">{ "No job yet. Start one, or look at the demo: a potting bench for a school garden." }</p> }
        }
        Some(cards) => html! {
            <ul class="rows" data-testid="jobs">
                { for cards.iter().map(|card| html! {
                    <li><a class="row" href={route::in_job(&card.key, "")}>
                        <span class="row__name">{ &card.title }</span>
                    </a></li>
                }) }
            </ul>
        },
    }
}

/// What would come in, before anything changes.
fn preview(
    opened: &Rc<Opened>,
    put: &Callback<Job>,
    incoming: &UseStateHandle<Option<Rc<Opened>>>,
) -> Html {
    let job = &opened.job;
    let words = format!(
        "{} sizes, {} parts, {} reckonings.",
        job.measures().len(),
        job.parts().len(),
        job.kept().len()
    );
    let take = {
        let job = job.clone();
        put.reform(move |_: MouseEvent| job.clone())
    };
    let leave = {
        let incoming = incoming.clone();
        Callback::from(move |_: MouseEvent| incoming.set(None))
    };
    html! {
        <section class="incoming" aria-label="Job to come in" data-testid="incoming">
            <h2>{ &job.title }</h2>
            <p>{ words }</p>
            if !opened.set_aside.is_empty() {
                <p>{ format!("{} items of it are damaged and will be left out:", opened.set_aside.len()) }</p>
                <ul class="notes">
                    { for opened.set_aside.iter().take(10).map(|it| html! {
                        <li>{ format!("item {} {}: {}", it.number, it.name, it.why) }</li>
                    }) }
                </ul>
            }
            <div class="adds">
                <button type="button" class="tool tool--main" data-testid="take-job" onclick={take}>{ "Put it on my shelf" }</button>
                <button type="button" class="tool" data-testid="leave-job" onclick={leave}>{ "Leave it" }</button>
            </div>
        </section>
    }
}
