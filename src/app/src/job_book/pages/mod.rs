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
mod item;
mod keep;
mod kept;
mod lists;
mod long_list;
mod making;
mod match_group;
mod more;
mod moved;
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

use std::cell::RefCell;
use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::attention::{Attention, Fact, NotKept, attention as attention_of};
use reckoner_core::calculators;
use reckoner_core::job::make_parts::without;
use reckoner_core::job::{Item, ItemId, Job, MOST_PIECES, Reckoned, Step};
use reckoner_core::sheet::Bench;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use keep::KeepPage;
use removed::RemovedPage;
use shelf::ShelfPage;
use start::StartPage;
use take::TakePage;

use super::book::{Book, Edit};
use super::forms::Form;
use super::hook::{OnPage, use_book};
use super::kept_form::Keeping;
use super::notes;
use crate::components::icon::{Icon, icon};
use crate::components::not_kept::late;
use crate::platform::later::later;
use crate::platform::{address, dom, storage};
use crate::route::{self, Route};
use crate::settings::Settings;

/// A job worked out, with what the pages of it need.
#[derive(Clone)]
pub(super) struct Open {
    pub(super) key: String,
    pub(super) book: Rc<Book>,
    pub(super) reckoned: Rc<Reckoned>,
    pub(super) attention: Rc<Attention>,
    /// Why the device does not keep the job at this moment. The list of `attention` has it from the next edit or page on:
    /// what comes by itself moves nothing.
    pub(super) not_kept: Option<NotKept>,
    pub(super) on_page: OnPage,
    /// The forms that had something in them at the last edit or page.
    pub(super) known: Rc<BTreeSet<String>>,
    pub(super) settings: Rc<Settings>,
    /// How often something else than their fields filled the forms.
    pub(super) revision: u32,
    /// Whether the next page of an example opens with the keys out: it was come to by one of them.
    pub(super) with_keys: Rc<RefCell<bool>>,
}

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

/// The job at hand, compared by what is in it.
#[derive(Clone)]
pub(super) struct Shared(pub(super) Open);

impl PartialEq for Shared {
    fn eq(&self, other: &Shared) -> bool {
        Rc::ptr_eq(&self.0.book, &other.0.book)
            && Rc::ptr_eq(&self.0.attention, &other.0.attention)
            && self.0.not_kept == other.0.not_kept
            && Rc::ptr_eq(&self.0.settings, &other.0.settings)
            && self.0.revision == other.0.revision
    }
}

impl Open {
    /// The address of a section or item of the job.
    pub(super) fn at(&self, rest: &str) -> String {
        route::in_job(&self.key, rest)
    }

    /// A callback that does an edit.
    pub(super) fn doing(&self, edit: Edit) -> Callback<MouseEvent> {
        let on_page = self.on_page.clone();
        Callback::from(move |_| on_page.edit(edit.clone()))
    }

    /// A callback that makes the step that is worked out from the job as it stands then.
    pub(super) fn making(
        &self,
        step: impl Fn(&Job) -> Option<Step> + 'static,
    ) -> Callback<MouseEvent> {
        let on_page = self.on_page.clone();
        Callback::from(move |_| {
            on_page.make(&step);
        })
    }

    /// What a form in the job needs.
    pub(super) fn keeping(&self) -> Keeping {
        let bench = self.settings.bench;
        Keeping { on_page: self.on_page.clone(), reckoned: self.reckoned.clone(), bench }
    }
}

/// How long after the last change what stands on the first page is written, in milliseconds.
const NEWEST_REST: u32 = 300;

/// The sections of a job that stand on every page of it, with their names in the address.
const SECTIONS: [(&str, &str, Icon); 5] = [
    ("", "Front", Icon::Front),
    ("sizes", "Sizes", Icon::Sizes),
    ("parts", "Pieces", Icon::Pieces),
    ("boards", "Boards", Icon::Boards),
    ("more", "More", Icon::More),
];

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

/// Puts a job back that was taken off the device.
fn put_back(on_page: &OnPage, bench: Bench) -> Html {
    let on_page = on_page.clone();
    let onclick = Callback::from(move |_: MouseEvent| {
        let on_page = on_page.clone();
        spawn_local(async move { on_page.put_back(&bench).await });
    });
    html! { <button type="button" class="tool" data-testid="put-back" {onclick}>{ "Put it back" }</button> }
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

pub(super) fn lost(open: &Open) -> Html {
    html! {
        <div class="page">
            { bar(open, &open.at(""), "Not here") }
            <main class="job">
                <p class="trouble" role="alert">{ "This is not in the job any more. It may come back with Undo." }</p>
            </main>
        </div>
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

/// The way to the other sections of the job.
fn sections(open: &Open, section: &str) -> Html {
    let count = drafts::count(open);
    let is_known = SECTIONS.iter().any(|(name, ..)| *name == section);
    let here = if is_known { section } else { "more" };
    html! {
        <nav class="sections" aria-label="Sections of the job">
            { for SECTIONS.iter().map(|(name, label, face)| html! {
                <a class="section-link" href={open.at(name)} data-testid={format!("section-{}", if name.is_empty() { "front" } else { name })}
                    aria-current={(here == *name).then_some("page")}>
                    { icon(*face) }
                    <span>{ *label }</span>
                    if name.is_empty() && count > 0 {
                        <span class="section-link__count" aria-label={format!("{count} to look at")} data-testid="to-look-at">{ count }</span>
                    }
                </a>
            }) }
        </nav>
    }
}

/// The head of a page of the job: back, title, undo and redo.
pub(super) fn bar(open: &Open, back: &str, title: &str) -> Html {
    bar_with(open, back, title, html! { { title } })
}

/// The same, with the title as it is drawn.
fn bar_with(open: &Open, back: &str, title: &str, drawn: Html) -> Html {
    dom::set_title(&format!("{title} · Sawdust Reckoner"));
    let name = |word: &str, step: Option<&str>| match step {
        Some(step) => format!("{word}: {step}"),
        None => word.to_owned(),
    };
    html! {
        <header class="bar">
            <a class="bar__link" href={back.to_owned()} aria-label="Back" data-testid="back">{ icon(Icon::Back) }</a>
            <h1 class="bar__title">{ drawn }</h1>
            <button type="button" class="bar__link" data-testid="undo" aria-label={name("Undo", open.book.last_step())}
                disabled={open.book.last_step().is_none()} onclick={open.doing(Edit::Undo)}>{ icon(Icon::Undo) }</button>
            <button type="button" class="bar__link" data-testid="redo" aria-label={name("Redo", open.book.next_step())}
                disabled={open.book.next_step().is_none()} onclick={open.doing(Edit::Redo)}>{ icon(Icon::Redo) }</button>
        </header>
    }
}

/// A row of a list that leads to an item.
pub(super) fn row(open: &Open, id: ItemId, name: &str, inside: Html) -> Html {
    html! {
        <li>
            <a class="row" href={open.at(&format!("item/{}", id.0))} data-testid={format!("item-{name}")}>
                { inside }
            </a>
        </li>
    }
}

/// A button that leads to a form for something new, below what was begun and not put in yet.
pub(super) fn add(open: &Open, form: &str, label: &str) -> Html {
    html! {
        <>
            { drafts::begun(open, form) }
            <a class="tool add" href={open.at(&drafts::fresh_place(open, form))} data-testid={format!("add-{form}")}>{ icon(Icon::Plus) }<span>{ label }</span></a>
        </>
    }
}

/// The end of the form of an item that is there: it is taken out, and the page goes `back`. What is typed in it goes in first,
/// so that it comes back with the item; what cannot be read stays in its form.
pub(super) fn take_out(open: &Open, id: ItemId, back: &str) -> Html {
    let onclick = {
        let (Keeping { on_page, reckoned, bench }, back) = (open.keeping(), open.at(back));
        Callback::from(move |_: MouseEvent| {
            address::go_by(|| {
                let place = format!("item/{}", id.0);
                if let Some(typed) = on_page.form(&place) {
                    on_page.fold(&place, &typed, &reckoned, &bench, None);
                }
                let is_out = on_page.make(|job| {
                    let words = format!("take out {}", job.item(id)?.name());
                    Some(Step::new(words, without(job, id)))
                });
                is_out.then(|| back.clone())
            });
        })
    };
    html! {
        <div class="adds">
            <button type="button" class="tool" data-testid="take-out" {onclick}>
                { icon(Icon::Clear) }<span>{ "Take it out" }</span>
            </button>
        </div>
    }
}
