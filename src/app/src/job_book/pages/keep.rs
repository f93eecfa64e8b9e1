//! Keeping a calculator, as it stands on its page, in a job: `#/keep/SLUG?entries`.

use std::rc::Rc;

use reckoner_core::calculators::Calculator;
use reckoner_core::job::{Item, Job, Kept, MOST_NAME, Step, check_title};
use reckoner_core::measure::Unit;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::Entries;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

use super::kept::next_rank;
use super::shelf::use_cards;
use super::title;
use crate::components::icon::{Icon, icon};
use crate::components::measure;
use crate::job_book::book::Book;
use crate::job_book::hook::OnPage;
use crate::platform::{address, dom, storage};
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
) -> Result<String, String> {
    let on_page = match into {
        Into::Job(key) => OnPage::of(&key),
        Into::New(unit) => OnPage::begin(Book::new(Job::new("New job", unit))),
    };
    if on_page.book().is_none() {
        on_page.fetch(&settings.bench).await;
    }
    let Some(book) = on_page.book() else {
        return Err(on_page.trouble().unwrap_or_default());
    };
    // A bare number means the job's unit there: in a job of the other unit each length gets one.
    let unit = book.job.unit;
    let is_other = entries.unit().is_some_and(|own| own.is_metric() != unit.is_metric());
    let entries =
        if is_other { with_units(calculator.fields, &entries, &settings.bench) } else { entries };
    let pairs: Vec<_> =
        entries.pairs().map(|(id, text)| (id.to_owned(), text.to_owned())).collect();
    let mut at = String::new();
    let title = kept.title.clone();
    let is_kept = on_page.make(|job| {
        let kept = Kept { rank: next_rank(job), entries: pairs, ..kept };
        let label = format!("keep {}", kept.title);
        let change = job.adding(0, Item::Kept(kept));
        at = route::in_job(on_page.key(), &format!("item/{}", change.id.0));
        Some(Step::new(label, vec![change]))
    });
    if !is_kept {
        return Err(on_page.trouble().unwrap_or_default());
    }
    // What was typed since is not that title.
    let name = storage::title_of(calculator.slug);
    if storage::get(&name).is_some_and(|typed| check_title(&typed).as_ref() == Ok(&title)) {
        storage::set(&name, "");
    }
    Ok(at)
}

/// Asks for the title and the job.
#[component]
pub(super) fn KeepPage(props: &KeepPageProps) -> Html {
    let KeepPageProps { calculator, query, settings } = props;
    let calculator = *calculator;
    let (cards, trouble) = use_cards(0, settings.bench);
    // A title that was begun goes on.
    let title = use_state_eq(|| {
        let begun = storage::get(&storage::title_of(calculator.slug));
        begun.filter(|it| !it.is_empty()).unwrap_or_else(|| calculator.title.to_owned())
    });
    // A second tap keeps nothing twice.
    let is_keeping = use_mut_ref(|| false);
    use_effect_with((), move |()| dom::set_title("Keep in a job · Sawdust Reckoner"));
    let entries = link::read(calculator, query);
    let back = route::address(calculator.slug, "");
    let inside = match entries {
        Err(problem) => {
            html! { <p class="trouble" role="alert" data-testid="job-trouble">{ problem.to_string() }</p> }
        }
        Ok(entries) => {
            let named = check_title(&title);
            let sheet = calculator.sheet(&entries, &settings.bench, &NoNames);
            let choose = |into: Into| {
                let (trouble, settings, entries) =
                    (trouble.clone(), settings.clone(), entries.clone());
                let (title, is_keeping) = (title.clone(), is_keeping.clone());
                Callback::from(move |_: MouseEvent| {
                    // As it is at the tap: its last letter may not be drawn yet.
                    let Ok(title) = check_title(&title) else { return };
                    if is_keeping.replace(true) {
                        return;
                    }
                    let slug = calculator.slug.to_owned();
                    let kept = Kept { rank: 0, title, slug, entries: Vec::new(), left: Vec::new() };
                    let (trouble, settings) = (trouble.clone(), settings.clone());
                    let keeping = keep(kept, entries.clone(), into.clone(), settings, calculator);
                    let is_keeping = is_keeping.clone();
                    spawn_local(async move {
                        match keeping.await {
                            Ok(at) => address::go(&at),
                            Err(words) => {
                                is_keeping.replace(false);
                                trouble.set(Some(words));
                            }
                        }
                    });
                })
            };
            let oninput = {
                let title = title.clone();
                Callback::from(move |event: InputEvent| {
                    let text = dom::value_of(&event).unwrap_or_default();
                    storage::set(&storage::title_of(calculator.slug), &text);
                    title.set(text);
                })
            };
            let unit = entries.unit().unwrap_or(settings.bench.tape.unit());
            let is_named = named.is_ok();
            html! {
                <>
                    if let Some(answer) = &sheet.answer {
                        <p class="job__words">{ calculator.title }{ ": " }{ answer.headline.label }{ " " }{ measure::value(&answer.headline.value, &settings.bench) }{ sheet.assumed.noted().map(|noted| format!(", {noted}")) }</p>
                    }
                    <label class={classes!("field", "is-long", (!is_named).then_some("is-wrong"))}>
                        <span class="field__label">{ "Title" }</span>
                        <input class="field__input" type="text" maxlength={MOST_NAME.to_string()} value={(*title).clone()} {oninput}
                            aria-invalid={(!is_named).then_some("true")} data-testid="keep-title" />
                        if let Err(problem) = &named {
                            <p class="problem__words" role="alert" data-testid="problem-keep-title">{ title::words(problem) }</p>
                        }
                    </label>
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
