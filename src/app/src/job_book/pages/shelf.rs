//! The shelf: every job on this device.

use std::rc::Rc;

use reckoner_core::job::Job;
use reckoner_core::measure::Unit;
use reckoner_core::planning::demo::demo_in_work;
use reckoner_core::sheet::Bench;
use reckoner_formats::write_jobs;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::long_list::long_list;
use super::removed::TakenOff;
use crate::components::device_line::DeviceLine;
use crate::components::icon::{Icon, icon};
use crate::components::reading::use_reading;
use crate::job_book::book::Book;
use crate::job_book::hook::{self, OnPage};
use crate::job_book::incoming::count;
use crate::job_book::reminder;
use crate::platform::database::Problem;
use crate::platform::shelf::{self, Card};
use crate::platform::{address, clock, dom, files, storage};
use crate::route;
use crate::settings::Settings;

#[derive(Properties, PartialEq)]
pub(super) struct ShelfPageProps {
    pub(super) settings: Rc<Settings>,
}

/// The cards of every job, `None` until they are there, and what the user must be told. They are
/// read anew when `revision` changes, and where they could not be read.
#[hook]
pub(super) fn use_cards(
    revision: u32,
    bench: Bench,
) -> (UseStateHandle<Option<Vec<Card>>>, UseStateHandle<Option<String>>) {
    let cards = use_state_eq(|| None::<Vec<Card>>);
    let trouble = use_state_eq(|| None::<String>);
    {
        let (cards, trouble) = (cards.clone(), trouble.clone());
        use_reading(revision, move || {
            let (cards, trouble) = (cards.clone(), trouble.clone());
            async move {
                let read = hook::cards(&bench).await;
                trouble.set(read.as_ref().err().map(|problem| format!(
                    "The jobs on this device cannot be read: {problem}. A new one stays usable on this page."
                )));
                read.map(|all| cards.set(Some(all)))
            }
        });
    }
    (cards, trouble)
}

/// Every job, and the ways to begin one.
#[component]
pub(super) fn ShelfPage(props: &ShelfPageProps) -> Html {
    let revision = use_state_eq(|| 0_u32);
    let bench = props.settings.bench;
    let (cards, trouble) = use_cards(*revision, bench);
    let said = use_state_eq(String::new);
    let on_back = {
        let revision = revision.clone();
        Callback::from(move |()| revision.set(revision.saturating_add(1)))
    };
    let save = {
        let (said, trouble) = (said.clone(), trouble.clone());
        Callback::from(move |_: MouseEvent| {
            let (said, trouble) = (said.clone(), trouble.clone());
            spawn_local(async move {
                match save_all(&bench).await {
                    Ok(words) => said.set(words),
                    Err(words) => trouble.set(Some(words)),
                }
            });
        })
    };
    use_effect_with((), |()| dom::set_title("Jobs · Sawdust Reckoner"));
    let put = putting();
    let unit =
        if props.settings.bench.tape.unit().is_metric() { Unit::Millimetre } else { Unit::Inch };
    let new = put.reform(move |_: MouseEvent| Book::new(Job::new("New job", unit)));
    let open_demo = put.reform(|_: MouseEvent| {
        let (job, history) = demo_in_work();
        Book { job, history }
    });
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href="#/" aria-label="All calculators" data-testid="home">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Jobs" }</h1>
            </header>
            <main class="job">
                <TakenOff {on_back} />
                <div class="adds">
                    <button type="button" class="tool tool--main" data-testid="new-job" onclick={new}>{ "New job" }</button>
                    <a class="tool" href="#/jobs/start" data-testid="to-start">{ "Start from a piece" }</a>
                    <button type="button" class="tool" data-testid="open-demo" onclick={open_demo}>
                        { "Open our example (invented)" }
                    </button>
                    <a class="tool" href="#/take" data-testid="to-take">{ "Take a job in" }</a>
                </div>
                <DeviceLine />
                // What comes late stands below what can be tapped.
                { list(cards.as_deref()) }
                if let Some(cards) = &*cards {
                    <div class="adds">
                        if !cards.is_empty() {
                            <button type="button" class="tool" data-testid="save-all" onclick={save}>{ "Save all jobs as one file" }</button>
                        }
                        <a class="tool" href="#/jobs/removed" data-testid="to-removed">{ "Removed jobs" }</a>
                    </div>
                    <p class="job__words said" role="status" data-testid="saved-all">{ &*said }</p>
                }
                if let Some(words) = &*trouble {
                    <p class="trouble is-late" role="alert" data-testid="job-trouble">{ words }</p>
                }
            </main>
        </div>
    }
}

/// Gives the user every job in one file, notes that each was saved, and says so.
async fn save_all(bench: &Bench) -> Result<String, String> {
    let unread = |why: Problem| format!("The jobs on this device cannot be read: {why}.");
    let all = hook::jobs(bench).await.map_err(unread)?;
    let is_any_off = !shelf::removed().await.map_err(unread)?.is_empty();
    let text = write_jobs(all.values().map(|stored| stored.job.as_str()))
        .map_err(|why| why.to_string())?;
    files::save("all.jobs.json", "application/json", text.as_bytes());
    for key in all.keys() {
        storage::set(&storage::saved(key), reminder::SAVED);
    }
    let jobs = count(all.len(), "job is", "jobs are");
    let off = if is_any_off { " Removed jobs are not in it." } else { "" };
    Ok(format!("{jobs} in the file all.jobs.json.{off} “Take a job in” reads it again."))
}

/// Puts a job on the shelf and opens it.
pub(super) fn putting() -> Callback<Book> {
    Callback::from(|book: Book| put(book, || ()))
}

/// The same; `once_there` lets go of what the job came from, when it is on the shelf.
pub(super) fn put(book: Book, once_there: impl FnOnce() + 'static) {
    address::go_by(|| Some(route::in_job(OnPage::begin_from(book, once_there).key(), "")));
}

fn list(cards: Option<&[Card]>) -> Html {
    match cards {
        None => html! {},
        Some([]) => {
            html! { <p class="job__words" data-testid="no-jobs">{ "No job yet. Start one, or look at our example: a potting bench for a school garden." }</p> }
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
            // Two jobs of one name are told apart by it.
            if card.when > 0 { <span class="row__more">{ format!("changed {}", clock::told(card.when)) }</span> }
        </a></li>
    }
}
