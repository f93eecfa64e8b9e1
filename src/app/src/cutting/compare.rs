//! Other ways to buy: one length only, and the next cheapest store run. Worked out when they are asked for.

use std::rc::Rc;

use reckoner_core::cutting::{Job, Plan};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::measure::Tape;
use reckoner_core::planning::report::compare;
use reckoner_formats::{Ask, Reply};
use yew::prelude::*;

use super::hook::{Asked, use_question};
use crate::components::sentence::sentence;

/// Steps for each length: a second or two.
const EACH: u64 = 300_000_000;
/// Steps for the next store run.
const NEXT: u64 = 1_500_000_000;

#[derive(Properties, PartialEq)]
pub(crate) struct ComparisonProps {
    pub(crate) job: Rc<Job>,
    pub(crate) plan: Rc<Plan>,
    pub(crate) labels: Rc<Labels>,
    pub(crate) tape: Tape,
}

/// The plan beside other ways to buy.
#[component]
pub(crate) fn Comparison(props: &ComparisonProps) -> Html {
    let ComparisonProps { job, plan, labels, tape } = props;
    let singles = use_question((job.clone(), plan.clone()));
    let next = use_question((job.clone(), plan.clone()));
    let ask = {
        let (singles, next, job, plan) = (singles.clone(), next.clone(), job.clone(), plan.clone());
        Callback::from(move |_: MouseEvent| {
            let (next, about, plan) = (next.clone(), job.clone(), plan.clone());
            singles.ask(job.clone(), Ask::SingleBoards { budget: EACH }, move |_| {
                // No run that costs twice as much is worth a thought.
                let most_cents = plan.cost_cents.saturating_mul(2);
                let ask = Ask::NextRun { plan: (*plan).clone(), most_cents, budget: NEXT };
                next.ask(about.clone(), ask, |_| {});
            });
        })
    };
    let told = |state: &Asked| match state {
        Asked::Told(reply) => Some(reply.clone()),
        _ => None,
    };
    let (singles_told, next_told) = (told(&singles.state), told(&next.state));
    let by_length = match singles_told.as_deref() {
        Some(Reply::SingleBoards(all)) => all.as_slice(),
        _ => &[],
    };
    let run = match next_told.as_deref() {
        Some(Reply::NextRun(run)) => run.as_ref(),
        _ => None,
    };
    let lines = compare(job, labels, plan, by_length, run);
    let trouble = [&singles.state, &next.state].into_iter().find_map(|state| match &**state {
        Asked::Trouble(words) => Some(words.clone()),
        _ => None,
    });
    let is_waiting =
        [&singles.state, &next.state].into_iter().any(|state| **state == Asked::Waiting);
    if job.boards.is_empty() {
        return html! {};
    }
    html! {
        <section class="plan__part" aria-label="Other ways to buy" data-testid="comparison">
            <h2 class="part-title">{ "Other ways to buy" }</h2>
            if *singles.state == Asked::No {
                <div class="adds">
                    <button type="button" class="tool" data-testid="compare" onclick={ask}>{ "Compare other ways to buy" }</button>
                </div>
            } else {
                <ul class="notes" data-testid="compared">
                    { for lines.iter().map(|it| html! { <li>{ sentence(&it.sentence, *tape) }</li> }) }
                </ul>
            }
            if is_waiting { <p class="plan__words" role="status">{ "Working out other ways." }</p> }
            if let Some(words) = trouble { <p class="trouble" role="alert">{ words }</p> }
        </section>
    }
}
