//! Keeping a calculator, as it stands on its page, in a job: `#/keep/SLUG?entries`.

use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::job::{Item, Job, Kept, Step};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::Entries;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::shelf::use_cards;
use crate::components::icon::{Icon, icon};
use crate::components::measure;
use crate::job_book::book::{Book, Edit};
use crate::platform::shelf::{self, ShelfProblem};
use crate::platform::{address, dom};
use crate::settings::{Settings, with_units};
use crate::{link, route};

#[derive(Properties)]
pub(super) struct KeepPageProps {
    pub(super) calculator: &'static Calculator,
    pub(super) query: String,
    pub(super) settings: Rc<Settings>,
}

impl PartialEq for KeepPageProps {
    fn eq(&self, other: &KeepPageProps) -> bool {
        core::ptr::eq(self.calculator, other.calculator)
            && self.query == other.query
            && self.settings == other.settings
    }
}

/// Where the reckoning goes.
#[derive(Clone)]
enum Into {
    Job(String),
    New(Unit),
}

/// Puts a kept reckoning into a job, and gives the address of it there.
async fn keep(
    kept: Kept,
    entries: Entries,
    into: Into,
    settings: Rc<Settings>,
    calculator: &'static Calculator,
) -> Result<String, ShelfProblem> {
    let (key, job) = match into {
        Into::Job(key) => {
            let book = match shelf::on_this_page(&key) {
                Some(book) => book,
                None => shelf::fetch(&key).await?.0,
            };
            (key, book.job)
        }
        Into::New(unit) => {
            let job = Job::new("New job", unit);
            (shelf::add(&Book::new(job.clone())).await, job)
        }
    };
    // A bare number means the job's unit there: in a job of the other unit each length gets one.
    let is_other = entries.unit().is_some_and(|unit| unit.is_metric() != job.unit.is_metric());
    let entries =
        if is_other { with_units(calculator.fields, &entries, &settings.bench) } else { entries };
    let rank = job.kept().iter().map(|(_, kept)| kept.rank).max().unwrap_or(0).saturating_add(1);
    let pairs = entries.pairs().map(|(id, text)| (id.to_owned(), text.to_owned())).collect();
    let kept = Kept { rank, entries: pairs, ..kept };
    let label = format!("keep {}", kept.title);
    let change = job.adding(0, Item::Kept(kept));
    let at = route::in_job(&key, &format!("item/{}", change.id.0));
    match shelf::edit(&key, &Edit::Make(Step::new(label, vec![change]))).await {
        // A job of this page alone has taken it, and its page says that it is not kept.
        Err(_) if shelf::on_this_page(&key).is_some() => Ok(at),
        other => other.map(|_| at),
    }
}

/// Asks for the title and the job.
#[component]
pub(super) fn KeepPage(props: &KeepPageProps) -> Html {
    let KeepPageProps { calculator, query, settings } = props;
    let calculator = *calculator;
    let (cards, trouble) = use_cards();
    let title = use_state_eq(|| calculator.title.to_owned());
    use_effect_with((), move |()| dom::set_title("Keep in a job · Sawdust Reckoner"));
    let entries = link::read(calculator, query);
    let back = route::address(calculator.slug, "");
    let inside = match entries {
        Err(problem) => {
            html! { <p class="trouble" role="alert" data-testid="job-trouble">{ problem.to_string() }</p> }
        }
        Ok(entries) => {
            let sheet = calculator.sheet(&entries, &settings.bench, &NoNames);
            let choose = |into: Into| {
                let (trouble, settings, entries) =
                    (trouble.clone(), settings.clone(), entries.clone());
                let kept = Kept {
                    rank: 0,
                    title: title.trim().to_owned(),
                    slug: calculator.slug.to_owned(),
                    entries: Vec::new(),
                };
                Callback::from(move |_: MouseEvent| {
                    let (trouble, settings) = (trouble.clone(), settings.clone());
                    let keeping =
                        keep(kept.clone(), entries.clone(), into.clone(), settings, calculator);
                    spawn_local(async move {
                        match keeping.await {
                            Ok(at) => address::go(&at),
                            Err(problem) => trouble.set(Some(problem.to_string())),
                        }
                    });
                })
            };
            let oninput = {
                let title = title.clone();
                Callback::from(move |event: InputEvent| {
                    title.set(dom::value_of(&event).unwrap_or_default())
                })
            };
            let unit = entries.unit().unwrap_or(settings.bench.tape.unit());
            let is_named = !title.trim().is_empty();
            html! {
                <>
                    if let Some(answer) = &sheet.answer {
                        <p class="job__words">{ calculator.title }{ ": " }{ answer.headline.label }{ " " }{ measure::value(&answer.headline.value, &settings.bench) }</p>
                    }
                    <label class="field is-long">
                        <span class="field__label">{ "Title" }</span>
                        <input class="field__input" type="text" maxlength="500" value={(*title).clone()} {oninput} data-testid="keep-title" />
                    </label>
                    if !is_named { <p class="job__words" role="alert">{ "Give it a title first." }</p> }
                    <h2 class="job__title">{ "In which job?" }</h2>
                    <ul class="rows" data-testid="jobs">
                        { for cards.iter().flatten().map(|card| html! {
                            <li><button type="button" class="row row--choose" disabled={!is_named} onclick={choose(Into::Job(card.key.clone()))}>
                                <span class="row__name">{ &card.title }</span>
                            </button></li>
                        }) }
                    </ul>
                    <div class="adds">
                        <button type="button" class="tool tool--main" data-testid="keep-in-new" disabled={!is_named}
                            onclick={choose(Into::New(unit))}>{ "In a new job" }</button>
                    </div>
                </>
            }
        }
    };
    html! {
        <div class="page page--jobs">
            <header class="bar">
                <a class="bar__link" href={back} aria-label="Back" data-testid="back">{ icon(Icon::Back) }</a>
                <h1 class="bar__title">{ "Keep in a job" }</h1>
            </header>
            <main class="job">
                if let Some(words) = &*trouble { <p class="trouble" role="alert" data-testid="job-trouble">{ words }</p> }
                { inside }
            </main>
        </div>
    }
}
