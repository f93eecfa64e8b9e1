//! What a board on hand can become: the fullest use of it, and the most parts from it.

use std::rc::Rc;

use reckoner_core::cutting::{Job, Source};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::planning::report::{BoardCut, How};
use reckoner_formats::{Ask, Reply};
use yew::prelude::*;

use super::hook::{Asked, use_question};
use super::report::{Told, key_line};
use crate::components::drawing::drawing;
use crate::components::measure::length;

#[derive(Properties, PartialEq)]
pub(crate) struct OnHandProps {
    pub(crate) job: Rc<Job>,
    pub(crate) labels: Rc<Labels>,
    pub(crate) how: How,
}

/// Every board on hand, and what one of them can become.
#[component]
pub(crate) fn OnHand(props: &OnHandProps) -> Html {
    let OnHandProps { job, labels, how } = props;
    let question = use_question(job.clone());
    let chosen = use_state_eq(|| None::<usize>);
    if job.scraps.is_empty() {
        return html! {};
    }
    let one = |at: usize| {
        let (question, chosen, job) = (question.clone(), chosen.clone(), job.clone());
        let is_chosen = *chosen == Some(at);
        let name = labels.scraps.get(at).map_or("", |label| &label.name);
        let long = job.scraps.get(at).and_then(|it| labels.length(it.length).ok());
        let onclick = Callback::from(move |_: MouseEvent| {
            chosen.set(Some(at));
            question.ask(job.clone(), Ask::Become(Source::Scrap(at)), |_| {});
        });
        html! {
            <button type="button" class="tool hold" aria-pressed={if is_chosen { "true" } else { "false" }}
                data-testid={format!("become-{at}")} {onclick}>
                <span>{ name }{ ", " }{ long.map(|it| length(it, how.tape)) }</span>
            </button>
        }
    };
    let answer = match &*question.state {
        Asked::No => html! {},
        Asked::Waiting => html! { <p class="plan__words" role="status">{ "Looking." }</p> },
        Asked::Trouble(words) => html! { <p class="trouble" role="alert">{ words }</p> },
        Asked::Told(reply) => match &**reply {
            Reply::Become(plans) if plans.is_empty() => html! {
                <p class="plan__words" role="status">{ "No piece of the list fits it." }</p>
            },
            Reply::Become(plans) => html! {
                <ul class="boards" data-testid="become">
                    { for plans.iter().filter_map(|plan| Told::of(job, &Rc::new(plan.clone()), labels, *how, None, false)).map(|told| way_of_use(&told, *how)) }
                </ul>
            },
            _ => html! {},
        },
    };
    html! {
        <section class="plan__part" aria-label="What a board on my rack can become">
            <h2 class="part-title">{ "What can a board on my rack become?" }</h2>
            <div class="adds">{ for (0..job.scraps.len()).map(one) }</div>
            { answer }
        </section>
    }
}

fn way_of_use(told: &Told, how: How) -> Html {
    let one = |board: &BoardCut| {
        html! {
            <li class="board">
                { drawing(&board.scene, how.tape) }
                <ul class="board__key">{ for board.key.iter().map(|it| key_line(it, how.tape)) }</ul>
            </li>
        }
    };
    html! { <>{ for told.report.boards.iter().map(one) }</> }
}
