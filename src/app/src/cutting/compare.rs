//! Other ways to buy, side by side: one length only, and the next cheapest run to the yard. Worked out when they are asked
//! for.

use std::rc::Rc;

use reckoner_core::cutting::{Job, Plan};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::planning::report::{How, Stood, Way, Ways, compare};
use reckoner_formats::{Ask, Reply};
use yew::prelude::*;

use super::buying::purchase;
use super::hook::{Asked, use_question};
use crate::components::sentence::sentence;

/// Steps for each length: a second or two.
const EACH: u64 = 300_000_000;
/// Steps for the next run to the yard.
const NEXT: u64 = 1_500_000_000;

#[derive(Properties, PartialEq)]
pub(crate) struct ComparisonProps {
    pub(crate) job: Rc<Job>,
    pub(crate) plan: Rc<Plan>,
    /// No plan of the job costs less.
    pub(crate) bound_cents: i64,
    pub(crate) labels: Rc<Labels>,
    pub(crate) how: How,
    /// The plan rests on sizes or prices of ours.
    pub(crate) is_ours: bool,
    /// Makes the plan of another way the one on the page.
    pub(crate) take: Callback<Rc<Plan>>,
    /// Goes back to the plan that was found, where another way was taken in its place.
    #[prop_or_default]
    pub(crate) back: Option<Callback<MouseEvent>>,
}

/// The plan beside other ways to buy.
#[component]
pub(crate) fn Comparison(props: &ComparisonProps) -> Html {
    let ComparisonProps { job, plan, bound_cents, labels, how, is_ours, take, back } = props;
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
    let trouble = [&singles.state, &next.state].into_iter().find_map(|state| match &**state {
        Asked::Trouble(words) => Some(words.clone()),
        _ => None,
    });
    let is_waiting =
        [&singles.state, &next.state].into_iter().any(|state| **state == Asked::Waiting);
    if job.boards.is_empty() {
        return html! {};
    }
    // All at once: what came first would move under a thumb when the rest comes.
    let is_told = *singles.state != Asked::No && !is_waiting;
    let stood = Stood { plan, bound_cents: *bound_cents };
    let ways = is_told.then(|| compare(job, labels, *how, stood, by_length, run)).flatten();
    html! {
        <section class={classes!("plan__part", is_ours.then_some("is-ours"))} aria-label="Other ways to buy" data-testid="comparison">
            <h2 class="part-title">{ "Other ways to buy" }</h2>
            if *singles.state == Asked::No {
                <div class="adds">
                    if let Some(onclick) = back.clone() {
                        <button type="button" class="tool" data-testid="go-back" {onclick}>{ "Go back to the plan before" }</button>
                    }
                    <button type="button" class="tool" data-testid="compare" onclick={ask}>{ "Compare other ways to buy" }</button>
                </div>
            }
            if is_waiting { <p class="plan__words" role="status">{ "Working out other ways." }</p> }
            if let Some(ways) = ways { { side_by_side(&ways, *how, take) } }
            if let Some(words) = trouble { <p class="trouble" role="alert">{ words }</p> }
        </section>
    }
}

fn side_by_side(ways: &Ways, how: How, take: &Callback<Rc<Plan>>) -> Html {
    html! {
        <div data-testid="compared">
            if ways.others.is_empty() { <p class="plan__words">{ "No other way was found." }</p> }
            <ul class="ways">
                { way("stood", &ways.stood, how, None) }
                { for (1..).zip(&ways.others).map(|(number, other): (u32, &Way)| {
                    let (take, plan) = (take.clone(), Rc::new(other.plan.clone()));
                    let onclick = Callback::from(move |_: MouseEvent| take.emit(plan.clone()));
                    way(&number.to_string(), other, how, Some(onclick))
                }) }
            </ul>
            if !ways.more.is_empty() {
                <ul class="notes">{ for ways.more.iter().map(|it| html! { <li>{ sentence(it, how.tape) }</li> }) }</ul>
            }
        </div>
    }
}

/// One way, with the tap that takes it.
fn way(id: &str, way: &Way, how: How, take: Option<Callback<MouseEvent>>) -> Html {
    let tape = how.tape;
    html! {
        <li class="way" data-testid={format!("way-{id}")}>
            <h3 class="job__title">{ sentence(&way.title, tape) }</h3>
            <ul class="rows">
                { for way.buy.iter().map(|it| html! { <li key={it.board} class="row">{ purchase(it, tape) }</li> }) }
            </ul>
            if way.buy.is_empty() { <p class="way__words">{ "Nothing: it all comes from my rack." }</p> }
            <p class="way__costs">{ sentence(&way.costs, tape) }</p>
            <p class="way__words">{ sentence(&way.left.sentence(), tape) }</p>
            if let Some(doubt) = &way.doubt { <p class="way__words">{ sentence(doubt, tape) }</p> }
            if let Some(onclick) = take {
                <button type="button" class="tool" data-testid={format!("take-way-{id}")} {onclick}>{ "Take this plan" }</button>
            }
        </li>
    }
}
