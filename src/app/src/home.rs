//! The list of calculators, in the order of the job.

use reckoner_core::calculators::{self, Listed, Stage};
use yew::prelude::*;

use crate::components::device_line::OfflineLine;
use crate::components::icon::{Icon, icon};
use crate::platform::{dom, storage};
use crate::{recent, route};

#[derive(Properties, PartialEq)]
pub(crate) struct HomeProps {
    /// A page was asked for that there is not.
    pub(crate) is_lost: bool,
}

/// Every calculator, grouped by the stage of the job; the last ones used on top.
#[component]
pub(crate) fn Home(props: &HomeProps) -> Html {
    use_effect_with((), |()| dom::set_title("Sawdust Reckoner"));
    let recent = recent::read(&storage::get(storage::RECENT).unwrap_or_default());
    let stages = Stage::ALL.iter().filter_map(|stage| {
        let mut here = calculators::LIST.iter().filter(|it| it.stage == *stage).peekable();
        here.peek().is_some().then(|| {
            html! {
                <section class="stage">
                    <h2 class="stage__title">{ stage.title() }</h2>
                    <ul class="stage__list">{ for here.map(target) }</ul>
                </section>
            }
        })
    });
    html! {
        <div class="page page--home">
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
                if !recent.is_empty() {
                    <nav class="recent" aria-label="Used last">
                        { for recent.iter().map(|it| html! {
                            <a class="recent__link" href={route::address(it.slug, "")}
                                data-testid={format!("recent-{}", it.slug)}>{ it.title }</a>
                        }) }
                    </nav>
                }
                <a class="target target--jobs" href="#/jobs" data-testid="to-jobs">
                    <span class="target__title">{ "Jobs" }</span>
                    <span class="target__question">{ "One part came out different. What else changes?" }</span>
                </a>
                <a class="target target--jobs" href="#/cut" data-testid="to-cut">
                    <span class="target__title">{ "Cut plan" }</span>
                    <span class="target__question">{ "Which boards do I buy, and which piece comes from which?" }</span>
                </a>
                <div class="stages">{ for stages }</div>
                <footer class="home__foot"><OfflineLine /></footer>
            </main>
        </div>
    }
}

fn target(calculator: &Listed) -> Html {
    html! {
        <li>
            <a class="target" href={route::address(calculator.slug, "")}
                data-testid={format!("home-{}", calculator.slug)}>
                <span class="target__title">{ calculator.title }</span>
                <span class="target__question">{ calculator.question }</span>
            </a>
        </li>
    }
}
