//! The headline of a plan: what it costs, and how good it is known to be; while the planner is at work, how far it is.

use std::rc::Rc;

use reckoner_core::job::cut_labels::Labels;
use reckoner_core::measure::Tape;
use reckoner_core::planning::report::{Proof, Spent, Standing, left_out_words, proof};
use reckoner_core::sentence::counted;
use yew::prelude::*;

use super::hook::Searching;
use super::report::Told;
use super::search::{Search, Stage};
use crate::components::sentence::sentence;
use crate::recent::LastAnswer;

const SOON: &str = "Planning starts in a moment.";

/// The headline of a search; in pencil while it rests on an example of ours. `wanting` stands in place of a plan that
/// there is not.
pub(crate) fn headline(
    search: &Search,
    labels: Option<&Rc<Labels>>,
    told: Option<&Told>,
    is_rack: bool,
    is_ours: bool,
    tape: Tape,
    wanting: Html,
) -> Html {
    let inside = match (told, labels) {
        (Some(told), Some(labels)) => figure(search, labels, told, is_rack, is_ours, tape),
        _ if search.is_running() => html! {
            <div key="looking" class="headline__inside is-words">
                <p class="headline__label">{ "No plan yet" }</p>
                <p class="headline__need">{ "Looking for a first plan." }</p>
            </div>
        },
        _ => wanting,
    };
    html! {
        <div class={classes!("headline", "headline--plan", told.is_none().then_some("is-wanting"), (is_ours && told.is_some()).then_some("is-pencil"))} data-testid="answer-headline"
            role="status" aria-busy={search.is_running().then_some("true")}>
            { inside }
        </div>
    }
}

/// A plan in short, once the planner has ended, for the first page.
pub(crate) fn in_short(
    search: &Search,
    told: Option<&Told>,
    is_ours: bool,
    tape: Tape,
) -> Option<LastAnswer> {
    let told = told.filter(|_| !search.is_running())?;
    let value = match &told.report.spent {
        // The length is more than the first page has room for.
        Spent::Wood { boards, .. } => counted(*boards, " board"),
        money @ Spent::Money { .. } => money.sentence().on(tape),
    };
    // As short as the first page has room for.
    let label = match search.stage {
        Stage::Taken => "You took",
        _ if search.is_proved() => "Cheapest",
        _ => "Best found",
    };
    Some(LastAnswer { label: label.to_owned(), value, is_ours })
}

fn figure(
    search: &Search,
    labels: &Labels,
    told: &Told,
    is_rack: bool,
    is_ours: bool,
    tape: Tape,
) -> Html {
    let label = match (&search.stage, is_rack) {
        (Stage::Running, _) => "Best so far",
        (Stage::Kept, _) => "The plan in use",
        (Stage::Taken, _) => "The plan you took",
        (_, true) => "From the rack",
        (_, false) if search.is_proved() => "Cheapest plan",
        (_, false) => "Best plan found",
    };
    let report = &told.report;
    let (figure, rest) = if is_rack {
        let left: u32 = report.left_out.iter().map(|(_, count)| *count).sum();
        let figure = match left {
            0 if !told.left_out.is_empty() => "All other pieces".to_owned(),
            0 => "All pieces".to_owned(),
            1 => "1 piece short".to_owned(),
            left => format!("{left} pieces short"),
        };
        let left_out = left_out_words(&told.left_out);
        (
            figure.into(),
            html! {
                <>
                    { rack_words(search) }
                    if let Some(words) = left_out { <span data-testid="rack-left-out">{ sentence(&words, tape) }</span> }
                </>
            },
        )
    } else {
        let cost = told.plan.cost_cents;
        let words = search.standing(cost).cost(labels, &told.left_out);
        (
            sentence(&report.spent.sentence(), tape),
            html! {
                <>
                    <span data-testid="to-buy">{ sentence(&report.headline(), tape) }</span>
                    if !search.is_outdated {
                        <span class="headline__proof" data-testid="proof">{ sentence(&words, tape) }</span>
                    }
                    <span class="headline__from" data-testid="vouched">{ search.why() }</span>
                </>
            },
        )
    };
    // By key, so that what stood here before goes, also another plan, and is not moved and written over.
    let said = format!("{label} {} {}", search.plan_number, search.bound_cents);
    html! {
        <div key={said} class="headline__inside is-long">
            <p class="headline__label">{ label }</p>
            <p class="headline__figure">
                <span class="headline__value" data-testid="cost">{ figure }</span>
                if is_ours { <span class="headline__example">{ "example" }</span> }
            </p>
            <p class="headline__rest">{ rest }</p>
        </div>
    }
}

fn rack_words(search: &Search) -> &'static str {
    let backing = search.to_keep().filter(|_| !search.is_outdated);
    match search.stage {
        Stage::Running => "still looking for more",
        _ => Standing { backing, ..search.standing(0) }.from_rack(),
    }
}

/// Cost, bound and gap in one line.
fn so_far(labels: &Labels, cost_cents: i64, bound_cents: i64) -> String {
    let Proof { cost, bound, gap, .. } = proof(labels, cost_cents, bound_cents, &[]);
    format!("{cost} so far. It cannot be less than {bound}: at most {gap} can still be saved.")
}

/// What stands in place of a plan that there is not: what is in the way, or what became of the search.
pub(crate) fn no_plan(search: &Search, labels: Option<&Rc<Labels>>, tape: Tape) -> Html {
    if let (Stage::Impossible(problem), Some(job), Some(labels)) =
        (&search.stage, &search.job, labels)
    {
        let explained = labels.explain(job, problem);
        return html! {
            <div class="headline__inside is-words" data-testid="cannot-plan">
                <p class="headline__label">{ "This cannot be planned" }</p>
                <p class="headline__need">{ sentence(&explained.sentence, tape) }</p>
                <p class="way-out is-advice">{ sentence(&explained.way_out, tape) }</p>
            </div>
        };
    }
    let words = match search.stage {
        // It was about another list; this one is asked as soon as the typing rests.
        _ if labels.is_none() => SOON,
        Stage::Idle | Stage::Running => SOON,
        Stage::Stopped => "Stopped before a first plan was found.",
        Stage::OutOfTime => "A minute was not enough for a first plan.",
        _ => "No plan was made.",
    };
    html! {
        <div class="headline__inside is-words">
            <p class="headline__label">{ "No plan yet" }</p>
            <p class="headline__need">{ words }</p>
        </div>
    }
}

/// How far the planner is, with the way to stop it; and what went wrong.
pub(crate) fn progress(searching: &Searching, labels: Option<&Rc<Labels>>, is_rack: bool) -> Html {
    let search = &*searching.search;
    let stop = {
        let searching = searching.clone();
        Callback::from(move |_: MouseEvent| searching.stop())
    };
    let again = {
        let searching = searching.clone();
        Callback::from(move |_: MouseEvent| searching.again())
    };
    let cost = search.plan.as_ref().map(|plan| plan.cost_cents);
    let trouble = match &search.stage {
        Stage::Failed(words) => Some(words.as_str()),
        _ => search.on_page,
    };
    let reach = cost.filter(|_| !is_rack).zip(labels);
    // What is looked into once the cost is proved takes no time that anybody would stop.
    let is_proved = !is_rack && cost.is_some_and(|cost| cost <= search.bound_cents);
    // At the foot of the screen it would come over what is just being tapped.
    let is_young = search.seconds == 0;
    html! {
        <>
            if search.is_running() && !is_proved {
                <section class={classes!("planning", is_young.then_some("is-young"))} aria-label="The planner is at work" data-testid="planning">
                    if let Some((cost, labels)) = reach {
                        <p class="planning__words">
                            { so_far(labels, cost, search.bound_cents) }
                        </p>
                        <progress class="planning__bar" max={cost.to_string()} value={search.bound_cents.to_string()}
                            aria-label="How much of the cost is proved to be needed" />
                    }
                    <p class="planning__clock" data-testid="seconds">{ format!("{} s", search.seconds) }</p>
                    <button type="button" class="tool tool--stop" data-testid="stop-planning" onclick={stop}>
                        { if search.plan.is_some() { "Stop and keep this plan" } else { "Stop" } }
                    </button>
                </section>
            }
            if matches!(search.stage, Stage::Stopped | Stage::OutOfTime | Stage::Failed(_)) {
                <div class="plan-steps">
                    <button type="button" class="tool" data-testid="plan-again" onclick={again}>{ "Search again" }</button>
                </div>
            }
            if let Some(words) = trouble {
                <p class="trouble" role="alert" data-testid="planner-trouble">{ words }</p>
            }
        </>
    }
}
