//! A file of jobs, to be looked at before any of it is put on the shelf.

use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::job::{Item, Job};
use reckoner_core::order::set_of;
use reckoner_formats::{Opened, OpenedJobs, SetAside};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::long_list::long_list;
use crate::components::icon::{Icon, icon};
use crate::job_book::book::{Book, Stored};
use crate::job_book::incoming::{Standing, count, result, standings, summary, titled, titles};
use crate::platform::shelf;

/// Most damaged things that are named.
const MOST_NAMED: usize = 10;

/// A file of jobs, and the jobs that are here.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Many {
    pub(super) opened: OpenedJobs,
    pub(super) here: Vec<Stored>,
}

impl Many {
    /// The jobs that come in of those that are wanted, by their places, with their titles here.
    fn coming(&self, wanted: &BTreeSet<usize>) -> Vec<(usize, String)> {
        let job = |at: &usize| Some((*at, self.opened.jobs.get(*at)?.job.title.as_str()));
        let chosen: Vec<(usize, &str)> = wanted.iter().filter_map(job).collect();
        let here = self.here.iter().map(|it| it.title.as_str());
        let titles = titles(chosen.iter().map(|(_, title)| *title), here);
        chosen.into_iter().map(|(at, _)| at).zip(titles).collect()
    }
}

#[derive(Properties, PartialEq)]
pub(super) struct TakeAllProps {
    pub(super) many: Rc<Many>,
    /// Called with what became of it; with nothing where it was left.
    pub(super) on_end: Callback<Option<String>>,
}

/// What is in a job, in numbers.
pub(super) fn inside(job: &Job) -> String {
    let boards = job.items().filter(|(_, item)| matches!(item, Item::RackBoard(_))).count();
    let words = [
        count(job.measures().len(), "size", "sizes"),
        count(job.parts().len(), "piece", "pieces"),
        count(boards, "board", "boards"),
        count(job.kept().len(), "calculator kept", "calculators kept"),
    ];
    format!("{}.", words.join(", "))
}

/// What is damaged, by name.
pub(super) fn damaged(kind: &'static str, set_aside: &[SetAside]) -> Html {
    html! {
        <ul class="notes">
            { for set_aside.iter().take(MOST_NAMED).map(|it| html! {
                <li>{ format!("{kind} {} {}: {}", it.number, it.name, it.why) }</li>
            }) }
        </ul>
    }
}

/// The jobs of a file; those that are wanted are put beside those that are here.
#[component]
pub(super) fn TakeAll(props: &TakeAllProps) -> Html {
    let TakeAllProps { many, on_end } = props;
    let standings = use_memo(many.clone(), |many| standings(&many.opened.jobs, &many.here));
    let wanted = use_state_eq(|| {
        let all = standings.iter().enumerate();
        set_of(all.filter(|(_, it)| it.is_wanted()).map(|(at, _)| at))
    });
    let trouble = use_state_eq(|| None::<String>);
    // A second tap puts nothing there twice.
    let is_taking = use_mut_ref(|| false);
    let jobs = &many.opened.jobs;
    let coming = many.coming(&wanted);
    let number = coming.len();
    let take = {
        let (many, wanted, trouble) = (many.clone(), wanted.clone(), trouble.clone());
        let on_end = on_end.clone();
        Callback::from(move |_: MouseEvent| {
            if is_taking.replace(true) {
                return;
            }
            // As they are at the tap: the choice before it may not be drawn yet.
            let coming = many.coming(&wanted);
            let book = |(at, title): &(usize, String)| {
                let it = many.opened.jobs.get(*at)?;
                Some(Book::new(titled(&it.job, title)).stored())
            };
            let books: Vec<Stored> = coming.iter().filter_map(book).collect();
            let left = many.opened.jobs.len().saturating_sub(books.len());
            let words = result(books.len(), left, many.opened.set_aside.len());
            let (trouble, on_end) = (trouble.clone(), on_end.clone());
            let is_taking = is_taking.clone();
            spawn_local(async move {
                match shelf::put_beside(&books).await {
                    Ok(()) => on_end.emit(Some(words)),
                    Err(problem) => {
                        is_taking.replace(false);
                        trouble.set(Some(format!("None of them came in: {problem}.")));
                    }
                }
            });
        })
    };
    let leave = on_end.reform(|_: MouseEvent| None);
    let row = {
        let (many, standings, wanted) = (many.clone(), standings.clone(), wanted.clone());
        move |at: usize| {
            let Some((job, standing)) = many.opened.jobs.get(at).zip(standings.get(at)) else {
                return html! {};
            };
            let place = coming.binary_search_by_key(&at, |(at, _)| *at).ok();
            let title = place.and_then(|place| coming.get(place)).map(|(_, title)| title.as_str());
            let onclick = {
                let wanted = wanted.clone();
                Callback::from(move |_: MouseEvent| {
                    let mut now = (*wanted).clone();
                    if !now.remove(&at) {
                        now.insert(at);
                    }
                    wanted.set(now);
                })
            };
            row(at, job, *standing, title, onclick)
        }
    };
    let damage = &many.opened.set_aside;
    html! {
        <section class="incoming" aria-label="Jobs to come in" data-testid="incoming-jobs">
            <h2>{ "Jobs to come in" }</h2>
            <p data-testid="incoming-summary">{ summary(&standings, damage.len()) }</p>
            <div class="adds">
                <button type="button" class="tool tool--main" data-testid="take-jobs" disabled={number == 0} onclick={take}>
                    { format!("Put {number} on my shelf") }
                </button>
                <button type="button" class="tool" data-testid="leave-jobs" onclick={leave}>{ "Leave them" }</button>
            </div>
            if let Some(words) = &*trouble {
                <p class="trouble" role="alert" data-testid="incoming-trouble">{ words }</p>
            }
            if !damage.is_empty() {
                <p>{ "These cannot be opened:" }</p>
                { damaged("job", damage) }
            }
            <ul class="rows">{ long_list(jobs.len(), row) }</ul>
        </section>
    }
}

/// A job of the file; a tap takes it or leaves it. `title` is what it comes in as.
fn row(
    at: usize,
    Opened { job, set_aside }: &Opened,
    standing: Standing,
    title: Option<&str>,
    onclick: Callback<MouseEvent>,
) -> Html {
    let words = match standing {
        Standing::New => "",
        Standing::Here => "Here already, the same. ",
        Standing::Twice => "Stands before in this file, the same. ",
        Standing::Differs => "A job of this name is here and is not the same. ",
    };
    let other = title.filter(|title| *title != job.title);
    let number = at.saturating_add(1);
    html! {
        <li>
            <button type="button" class="row row--choose" data-testid={format!("incoming-{number}")}
                aria-pressed={if title.is_some() { "true" } else { "false" }} {onclick}>
                <span class="row__name">
                    <span class="row__box" aria-hidden="true">if title.is_some() { { icon(Icon::Tick) } }</span>
                    <span>{ &job.title }</span>
                </span>
                <span class="row__more">
                    { words }
                    if let Some(title) = other { { format!("Comes in beside it as “{title}”. ") } }
                    { inside(job) }
                    if !set_aside.is_empty() {
                        { format!(" {}", count(set_aside.len(), "item is damaged and will be left out.", "items are damaged and will be left out.")) }
                    }
                </span>
            </button>
        </li>
    }
}
