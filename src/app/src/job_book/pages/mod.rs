//! The pages of the job book.

mod attention;
mod boards;
mod build;
mod buy;
mod codes;
mod drafts;
mod front;
mod full_size;
mod hand_on;
mod head;
mod item;
mod items;
mod keep;
mod kept;
mod lists;
mod long_list;
mod making;
mod match_group;
mod more;
mod moved;
mod open;
mod paper;
mod pencil;
mod pieces;
mod remind;
mod removed;
mod results;
mod shelf;
mod sizes;
mod spoiled;
mod stands;
mod start;
mod take;
mod take_all;
mod title;

use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::attention::{Attention, Fact, attention as attention_of};
use reckoner_core::calculators;
use reckoner_core::job::{Item, ItemId, MOST_PIECES, Reckoned};
use yew::prelude::*;

use head::{bar, bar_with, lost, sections};
use keep::KeepPage;
use open::{Open, Shared};
use removed::{RemovedPage, put_back};
use shelf::ShelfPage;
use start::StartPage;
use take::TakePage;

use super::book::Book;
use super::forms::Form;
use super::hook::use_book;
use super::notes;
use crate::components::icon::{Icon, icon};
use crate::components::not_kept::late;
use crate::platform::later::later;
use crate::platform::storage;
use crate::route::Route;
use crate::settings::Settings;

/// What comes of a job and the settings.
#[derive(Clone)]
struct WorkedOut {
    book: Rc<Book>,
    reckoned: Rc<Reckoned>,
    attention: Rc<Attention>,
}

impl PartialEq for WorkedOut {
    /// All of it is worked out anew at once.
    fn eq(&self, other: &WorkedOut) -> bool {
        Rc::ptr_eq(&self.attention, &other.attention)
    }
}

/// How long after the last change what stands on the first page is written, in milliseconds.
const NEWEST_REST: u32 = 300;

/// The page of the shelf, or of a way on to it, that a route asks for; `None` where it has none.
pub(crate) fn page_of_shelf(route: Route, settings: Rc<Settings>) -> Option<Html> {
    Some(match route {
        Route::Jobs => html! { <ShelfPage {settings} /> },
        Route::Start => html! { <StartPage {settings} /> },
        Route::Removed => html! { <RemovedPage /> },
        Route::Take(packed) => {
            let packed = packed.map(str::to_owned);
            let key = packed.clone().unwrap_or_default();
            html! { <TakePage {key} {packed} bench={settings.bench} /> }
        }
        _ => return None,
    })
}

/// The page of a job that a route asks for, or one that leads into it; `None` where there is none.
pub(crate) fn page(route: Route, settings: Rc<Settings>) -> Option<Html> {
    Some(match route {
        Route::Job(key, rest) => html! {
            <JobPage key={key.to_owned()} job={key.to_owned()} rest={rest.to_owned()} {settings} />
        },
        Route::Keep(listed, query) => {
            let calculator = calculators::find(listed.slug)?;
            html! { <KeepPage key={listed.slug} {calculator} query={query.to_owned()} {settings} /> }
        }
        Route::Print(listed, query) => {
            full_size::page(calculators::find(listed.slug)?, query, &settings)
        }
        _ => return None,
    })
}

#[derive(Properties, PartialEq)]
struct JobPageProps {
    job: String,
    /// What stands after the job in the address.
    rest: String,
    settings: Rc<Settings>,
}

/// A page of one job.
#[component]
fn JobPage(props: &JobPageProps) -> Html {
    let JobPageProps { job, rest, settings } = props;
    let bench = settings.bench;
    let on_page = use_book(job, bench);
    let last = use_mut_ref(|| None::<Rc<Reckoned>>);
    let with_keys = use_mut_ref(|| false);
    let not_kept = on_page.not_kept();
    let worked_out = use_memo((on_page.book(), bench, on_page.revision()), {
        move |(book, bench, _)| {
            let book = book.clone()?;
            let mut last = last.borrow_mut();
            let reckoned = match &*last {
                Some(last) => Rc::new(last.after(&book.job, bench)),
                None => Rc::new(Reckoned::of(&book.job, bench)),
            };
            *last = Some(reckoned.clone());
            let attention = Rc::new(attention_of(&book.job, &reckoned, bench));
            Some(WorkedOut { book, reckoned, attention })
        }
    });
    let worked_out = use_memo((worked_out, rest.clone()), |(worked_out, _)| {
        let mut worked_out = (**worked_out).clone()?;
        if let Some(why) = not_kept.clone() {
            worked_out.attention = Rc::new((*worked_out.attention).clone().not_kept(why));
        }
        Some(worked_out)
    });
    let known = use_memo((on_page.book(), rest.clone()), |_| {
        on_page.forms().into_iter().map(|(at, ..)| at).collect::<BTreeSet<_>>()
    });
    let open = (*worked_out).clone().map(|WorkedOut { book, reckoned, attention }| {
        let (key, settings) = (job.clone(), settings.clone());
        let (on_page, revision) = (on_page.clone(), on_page.revision());
        let (known, with_keys) = (known.clone(), with_keys.clone());
        Open {
            key,
            book,
            reckoned,
            attention,
            not_kept,
            on_page,
            known,
            settings,
            revision,
            with_keys,
        }
    });
    let not_kept =
        open.as_ref().and_then(|open| Some((open, Fact::NotKept(open.not_kept.clone()?))));
    // Always one node: with one more or less in the list the page before it would be made anew, keypad and all.
    let trouble = match (on_page.trouble(), not_kept) {
        (Some(words), _) => late(
            "job-trouble",
            html! { <><p>{ words }</p>if on_page.is_removed() { { put_back(&on_page, bench) } }</> },
        ),
        (None, Some((open, fact))) => late("job-trouble", attention::told(open, &fact)),
        (None, None) => html! {},
    };
    use_newest(open.as_ref());
    match &open {
        Some(open) => html! { <>{ inside(open, rest) }{ drafts::left(open, rest) }{ trouble }</> },
        None => html! {
            // As wide as the page that comes.
            <div class="page page--job">
                <header class="bar">
                    <a class="bar__link" href="#/jobs" aria-label="All jobs">{ icon(Icon::Back) }</a>
                    <h1 class="bar__title">{ "Job" }</h1>
                </header>
                <main class="job">{ trouble }</main>
            </div>
        },
    }
}

/// Keeps how the job stands for the first page, a moment after the last change, while the device keeps the job itself.
#[hook]
fn use_newest(open: Option<&Open>) {
    let open = open.filter(|open| open.not_kept.is_none());
    use_effect_with(open.cloned().map(Shared), |shared| {
        let rest = shared.clone().map(|Shared(open)| {
            later(NEWEST_REST, move || {
                storage::set(storage::NEWEST, &front::stands(&open).written());
            })
        });
        move || drop(rest)
    });
}

fn inside(open: &Open, rest: &str) -> Html {
    let (word, argument) = rest.split_once('/').unwrap_or((rest, ""));
    match word {
        "item" => {
            let id = argument.parse().ok().map(ItemId);
            let item = id.and_then(|id| Some((id, open.book.job.item(id)?)));
            match item {
                Some((id, Item::Kept(kept))) => kept::page(open, id, kept),
                Some((id, Item::Match(_))) => match_group::page(open, id),
                Some((id, item)) => match Form::of(item) {
                    Some(form) => item::page(open, form, id),
                    None => lost(open),
                },
                None => lost(open),
            }
        }
        "piece" => match argument.split_once('/').map(|(id, index)| (id.parse(), index.parse())) {
            Some((Ok(id), Ok(index))) if index < MOST_PIECES as usize => {
                pieces::page(open, ItemId(id), index)
            }
            _ => lost(open),
        },
        "stands" => stands::page(open, argument).unwrap_or_else(|| lost(open)),
        "parts-of" => {
            match argument.parse().ok().map(|id| (ItemId(id), open.book.job.item(ItemId(id)))) {
                Some((id, Some(Item::Kept(kept)))) => making::page(open, id, kept),
                _ => lost(open),
            }
        }
        "new" => match notes::bare(argument) {
            "match" => match_group::page_of_new(open, rest),
            argument => match Form::named(argument) {
                Some(form) => item::page_of_new(open, form, rest),
                None => lost(open),
            },
        },
        "buy" if argument == "paper" => buy::paper(open),
        "buy" => buy::page(open),
        "codes" => codes::page(open),
        "card" => paper::card(open),
        "labels" => paper::label_sheet(open, argument),
        section => section_page(open, section),
    }
}

fn section_page(open: &Open, section: &str) -> Html {
    let body = match section {
        "parts" => lists::parts(open),
        "kept" => kept::list(open),
        "rack" => lists::rack(open),
        "hand-on" => hand_on::view(open),
        "boards" => return boards::page(open),
        "build" => return build::page(open),
        "sizes" => sizes::view(open),
        "more" => more::view(open),
        _ => front::view(open),
    };
    let name = &open.book.job.title;
    html! {
        <div class="page page--job">
            if section.is_empty() {
                // Its name is written where it is read.
                { bar_with(open, "#/jobs", name, title::input(open, "title".to_owned(), name, "Name of the job", "job-title")) }
            } else {
                { bar(open, "#/jobs", name) }
            }
            { sections(open, section) }
            <main class="job">{ body }</main>
        </div>
    }
}
