//! The boards of a job: what to buy, which part comes from which board, and what was cut of it.

use std::rc::Rc;

use reckoner_core::cutting::labels::Labels;
use reckoner_core::cutting::report::{BoardCut, How, Keep};
use reckoner_core::cutting::wanted::{
    OPTIONS, Options, Wanted, WantedProblem, from_job_book, options, start_entries,
};
use reckoner_core::cutting::{Job as CutJob, Plan};
use reckoner_core::measure::Tape;
use reckoner_core::sheet::{Ask as Texts, Entries};
use reckoner_formats::Ask;
use yew::prelude::*;

use super::item::Shared;
use super::{Open, bar, sections};
use crate::components::icon::{Icon, icon};
use crate::components::sentence::sentence;
use crate::cutting::compare::Comparison;
use crate::cutting::found::{headline, impossible, progress};
use crate::cutting::hook::{Searching, use_search};
use crate::cutting::report::{Beside, Told, whole};
use crate::cutting::search::Search;
use crate::form::Form;
use crate::form::view::{AtHand, asks, use_at_hand};

pub(super) fn page(open: &Open) -> Html {
    html! { <BoardsPage open={Shared(open.clone())} /> }
}

#[derive(Properties, PartialEq)]
struct BoardsPageProps {
    open: Shared,
}

/// What is to be planned, or what is in the way.
type Asked = Result<Wanted, Vec<WantedProblem>>;

fn read(open: &Open, entries: &Entries) -> Option<Options> {
    let mut ask = Texts::new(OPTIONS.fields, entries, &open.settings.bench, &*open.reckoned);
    options(&mut ask)
}

/// The boards of a job.
#[component]
fn BoardsPage(props: &BoardsPageProps) -> Html {
    let Shared(open) = &props.open;
    let bench = open.settings.bench;
    let form = use_reducer(|| Form::new(&OPTIONS, start_entries(&open.book.job), None));
    let entries = form.entries().clone();
    let sheet = Rc::new(OPTIONS.sheet(&entries, &bench, &*open.reckoned));
    let names = use_memo((), |()| Vec::<String>::new());
    let at_hand = use_at_hand(form.clone(), sheet, open.settings.clone(), names);
    let searching = use_search(Search::default);
    let all = use_state_eq(|| false);
    let options = read(open, &entries);
    let wanted: Option<Asked> = options
        .as_ref()
        .map(|options| from_job_book(&open.book.job, &open.reckoned, &bench, options));
    let is_rack = options.as_ref().is_some_and(|options| options.rack_only);
    let page = Page { open, searching: &searching, options: options.as_ref(), is_rack };
    let body = if *searching.search == Search::default() {
        page.nothing_yet(wanted.as_ref())
    } else {
        page.found(wanted.as_ref(), &all)
    };
    let is_keying = at_hand.is_keying();
    html! {
        <div class={classes!("page", "page--calculator", is_keying.then_some("is-keying"))} data-testid="boards">
            { bar(open, "#/jobs", &open.book.job.title) }
            { sections(open, "boards") }
            <main class="bench">
                <section class="answer" aria-label="Plan">
                    { body }
                    { page.tools(&at_hand, wanted.as_ref()) }
                </section>
                <section class="sizes" aria-label="What the plan may do" data-testid="plan-options">
                    <h2 class="part-title">{ OPTIONS.question }</h2>
                    { asks(&at_hand) }
                </section>
            </main>
        </div>
    }
}

/// What the page stands on.
struct Page<'a> {
    open: &'a Open,
    searching: &'a Searching,
    options: Option<&'a Options>,
    is_rack: bool,
}

impl Page<'_> {
    fn tape(&self) -> Tape {
        self.open.settings.bench.tape
    }

    /// Asks the planner for a plan of what is wanted.
    fn plan(&self, wanted: Option<&Asked>) -> Option<Callback<MouseEvent>> {
        let Some(Ok(wanted)) = wanted else { return None };
        let (searching, job) = (self.searching.clone(), Rc::new(wanted.job.clone()));
        let is_rack = self.is_rack;
        Some(Callback::from(move |_: MouseEvent| {
            let budget = u64::MAX;
            let ask = if is_rack { Ask::RackOnly { budget } } else { Ask::Cheapest { budget } };
            searching.begin(job.clone(), ask);
        }))
    }

    /// What a thumb reaches.
    fn tools(&self, at_hand: &AtHand, wanted: Option<&Asked>) -> Html {
        let words = if self.searching.search.is_running() { "Begin again" } else { "Plan it" };
        let plan = self.plan(wanted);
        html! {
            <div class="tools">
                <button type="button" class="tool" data-testid="change-options" onclick={at_hand.begin()}>
                    { icon(Icon::Settings) }<span>{ "Options" }</span>
                </button>
                <button type="button" class="tool tool--main tool--always" data-testid="plan-it" disabled={plan.is_none()}
                    onclick={plan.unwrap_or_default()}>{ words }</button>
            </div>
        }
    }

    /// There is no plan: what is in the way of one, or how to begin.
    fn nothing_yet(&self, wanted: Option<&Asked>) -> Html {
        let words = match wanted {
            Some(Ok(_)) => {
                "Ready. The planner finds the cheapest boards for the parts of this job, and says where each part comes from."
            }
            Some(Err(_)) => "These are in the way of a plan.",
            None => "One of the options is not filled in right.",
        };
        html! {
            <>
                <div class="headline is-wanting" data-testid="answer-headline" role="status">
                    <div class="headline__inside is-words">
                        <p class="headline__label">{ "No plan yet" }</p>
                        <p class="headline__need">{ words }</p>
                    </div>
                </div>
                <div class="rest-of-answer">{ self.about(wanted) }</div>
            </>
        }
    }

    /// What is in the way, what waits, and what the builder should know.
    fn about(&self, wanted: Option<&Asked>) -> Html {
        let tape = self.tape();
        match wanted {
            Some(Err(problems)) => html! {
                <ul class="rows" data-testid="in-the-way">
                    { for problems.iter().map(|problem| self.in_the_way(problem)) }
                </ul>
            },
            Some(Ok(wanted)) => html! {
                <>
                    if !wanted.left_out.is_empty() {
                        <section class="plan__part" aria-label="Parts that wait" data-testid="waiting">
                            <h2 class="part-title">{ "Not planned yet" }</h2>
                            <ul class="notes">{ for wanted.left_out.iter().map(|it| html! { <li>{ sentence(&it.sentence, tape) }</li> }) }</ul>
                        </section>
                    }
                    if !wanted.notes.is_empty() {
                        <ul class="notes">{ for wanted.notes.iter().map(|it| html! { <li>{ sentence(it, tape) }</li> }) }</ul>
                    }
                </>
            },
            None => html! {},
        }
    }

    fn in_the_way(&self, problem: &WantedProblem) -> Html {
        let tape = self.tape();
        let inside = html! {
            <>
                <span class="row__problem">{ sentence(&problem.sentence(), tape) }</span>
                <span class="row__more">{ sentence(&problem.way_out(), tape) }</span>
            </>
        };
        match problem.item() {
            Some(id) => html! {
                <li><a class="row" href={self.open.at(&format!("item/{}", id.0))}>{ inside }</a></li>
            },
            None => html! { <li class="row">{ inside }</li> },
        }
    }

    /// What the planner has found, or is finding.
    fn found(&self, wanted: Option<&Asked>, all: &UseStateHandle<bool>) -> Html {
        let search = &*self.searching.search;
        let tape = self.tape();
        let now = match wanted {
            Some(Ok(wanted)) => Some(wanted).filter(|it| search.job.as_deref() == Some(&it.job)),
            _ => None,
        };
        let Some(wanted_now) = now else {
            // The parts, the rack or the options changed meanwhile.
            return html! {
                <>
                    <div class="headline is-wanting" data-testid="answer-headline" role="status">
                        <div class="headline__inside is-words">
                            <p class="headline__label">{ "Out of date" }</p>
                            <p class="headline__need">{ "Something changed since this was planned. Plan it again." }</p>
                        </div>
                    </div>
                    <div class="rest-of-answer">{ self.about(wanted) }</div>
                </>
            };
        };
        let labels = Rc::new(wanted_now.labels.clone());
        let told = self.told(&wanted_now.job, search.plan.as_ref(), &labels);
        let wanting = impossible(search, Some(&labels), tape).unwrap_or_default();
        let nothing = |_: usize, _: &BoardCut| html! {};
        let nowhere = |_: usize, _: &Keep| html! {};
        html! {
            <>
                { headline(search, Some(&labels), told.as_ref(), self.is_rack, tape, wanting) }
                <div class="rest-of-answer">
                    { progress(self.searching, Some(&labels), self.is_rack) }
                    if let Some(told) = told {
                        { self.about(wanted) }
                        { whole(&told.report, tape, all, &Beside { board: &nothing, offcut: &nowhere }) }
                        if let Some(job) = search.job.clone().filter(|_| !search.is_running() && !self.is_rack) {
                            <Comparison {job} plan={told.plan.clone()} {labels} {tape} />
                        }
                    }
                </div>
            </>
        }
    }

    fn told(&self, job: &CutJob, plan: Option<&Rc<Plan>>, labels: &Labels) -> Option<Told> {
        let how = How { tape: self.tape(), keep_from: self.options?.keep_from };
        Told::of(job, plan?, labels, how)
    }
}
