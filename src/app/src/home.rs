//! The first page: find a question, what was used last, the jobs, and every calculator.

use reckoner_core::calculators::{self, Listed};
use yew::prelude::*;

use crate::components::device_line::OfflineLine;
use crate::components::find::{founds, line};
use crate::components::icon::{Icon, icon};
use crate::platform::{dom, shell, storage};
use crate::recent::{self, LastAnswer, NewestJob, Used};
use crate::route;

#[derive(Properties, PartialEq)]
pub(crate) struct HomeProps {
    /// A page was asked for that there is not.
    pub(crate) is_lost: bool,
}

/// Every calculator in the order of the job, two to a row; the last ones used on top.
#[component]
pub(crate) fn Home(props: &HomeProps) -> Html {
    use_effect_with((), |()| dom::set_title("Sawdust Reckoner"));
    let wanted = use_state_eq(String::new);
    let recent = recent::read(&storage::get(storage::RECENT).unwrap_or_default());
    let is_finding = !wanted.trim().is_empty();
    html! {
        <div class="page page--home">
            { for shell::pictures().map(|pictures| Html::VRef(pictures.into())) }
            <header class="home-head">
                <h1 class="home-head__title">{ "Sawdust Reckoner" }</h1>
                <a class="bar__link" href="#/settings" aria-label="Settings" data-testid="settings">
                    { icon(Icon::Settings) }
                </a>
            </header>
            <main class="home">
                if props.is_lost {
                    <p class="trouble" role="alert" data-testid="link-trouble">
                        { "There is no page for this link. Here are all calculators." }
                    </p>
                }
                { line("Find a question", &wanted, None) }
                if is_finding {
                    { found(&wanted) }
                } else {
                    { used_last(&recent) }
                    <div class="home__jobs">
                        <a class="target target--jobs" href="#/jobs" data-testid="to-jobs">
                            { picture("jobs") }
                            <span class="target__title">{ "Jobs" }</span>
                            { newest_job() }
                        </a>
                        <a class="target target--jobs" href="#/cut" data-testid="to-cut">
                            { picture(recent::CUT.slug) }
                            <span class="target__title">{ recent::CUT.title }</span>
                            { last_plan() }
                        </a>
                    </div>
                    <h2 class="home__order">{ "Calculators, in the order of the work" }</h2>
                    <ul class="targets">{ for calculators::LIST.iter().map(target) }</ul>
                }
                <footer class="home__foot"><OfflineLine /></footer>
            </main>
        </div>
    }
}

/// How the job stands that was opened last.
fn newest_job() -> Html {
    let newest = storage::get(storage::NEWEST);
    let Some(NewestJob { title, stands }) = newest.as_deref().and_then(NewestJob::read) else {
        return html! { <span class="target__stage">{ "sizes, pieces, boards" }</span> };
    };
    html! {
        <>
            <span class="target__stage target__job">{ title }</span>
            <span class="target__stage target__stands">{ stands }</span>
        </>
    }
}

/// What the quick list came to that was planned last.
fn last_plan() -> Html {
    let last = storage::get(&storage::last_answer(recent::CUT.slug));
    let Some(LastAnswer { value, is_ours, .. }) = last.as_deref().and_then(LastAnswer::read) else {
        return html! { <span class="target__stage">{ "which boards to buy" }</span> };
    };
    html! {
        <span class="target__stage">
            { value }
            if is_ours { { ", example" } }
        </span>
    }
}

/// A picture that stands in the shell, so that it is there before the program is.
fn picture(of: &str) -> Html {
    html! { <svg class="target__picture"><use href={format!("#picture-{of}")}></use></svg> }
}

/// The questions that have the words.
fn found(wanted: &str) -> Html {
    let all = calculators::find_questions(wanted);
    html! {
        <>
            { founds(&all, None) }
            if all.is_empty() {
                <p class="home__none" data-testid="none-found">{ "No question has these words. Here is what there is." }</p>
                <ul class="targets">{ for calculators::LIST.iter().map(target) }</ul>
            }
        </>
    }
}

fn used_last(recent: &[Used]) -> Html {
    if recent.is_empty() {
        return html! {
            <p class="last-used home__new">
                { "New here? Tap a calculator. Grey slanted sizes are our example." }
            </p>
        };
    }
    let one = |it: &Used| {
        let answer = storage::get(&storage::last_answer(it.slug));
        let answer = answer.as_deref().and_then(LastAnswer::read);
        html! {
            <a class="recent__link" href={route::address(it.slug, "")} data-testid={format!("recent-{}", it.slug)}>
                <span class="recent__name">{ it.title }</span>
                if let Some(LastAnswer { label, value, is_ours }) = answer {
                    <span class={classes!("recent__value", is_ours.then_some("is-pencil"))}>{ value }</span>
                    <span class="recent__label">
                        { label }
                        if is_ours { { ", example" } }
                    </span>
                }
            </a>
        }
    };
    html! {
        <nav class="last-used recent" aria-label="Used last">{ for recent.iter().map(one) }</nav>
    }
}

fn target(calculator: &'static Listed) -> Html {
    html! {
        <li>
            <a class="target" href={route::address(calculator.slug, "")}
                data-testid={format!("home-{}", calculator.slug)}>
                { picture(calculator.slug) }
                <span class="target__stage">{ calculator.stage.title() }</span>
                <span class="target__title">{ calculator.title }</span>
                <span class="target__question">{ calculator.question }</span>
            </a>
        </li>
    }
}
