//! What a plan buys, length by length, and the tap for a length that the yard has none of: the plan is made again without
//! it, and stands beside the one that stood until one of them is taken.

use std::rc::Rc;

use reckoner_core::cutting::{Backing, Job, Plan, Source};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::measure::Tape;
use reckoner_core::planning::report::{
    How, Purchase, Report, difference, shopping, without, without_words,
};
use reckoner_core::sheet::{Sentence, money};
use reckoner_formats::Ask;
use yew::prelude::*;

use super::hook::{Searching, use_search};
use super::search::{Search, Stage};
use crate::components::measure::length;
use crate::components::sentence::sentence;

/// What the yard is asked about: a plan of a job that can be made again.
#[derive(Clone, PartialEq)]
pub(crate) struct Yard {
    /// What would be asked of the planner today.
    pub(crate) job: Rc<Job>,
    pub(crate) labels: Rc<Labels>,
    /// What is still to do of the plan on the page, as a plan of that job.
    pub(crate) stood: Rc<Plan>,
    pub(crate) how: How,
    pub(crate) take: Callback<Without>,
}

/// A plan that was made without a length of the yard, and is taken.
#[derive(Clone)]
pub(crate) struct Without {
    /// A board of that section and length, by its place in the job.
    pub(crate) board: usize,
    /// The job in which the yard has none of it.
    pub(crate) job: Rc<Job>,
    pub(crate) plan: Rc<Plan>,
    pub(crate) bound_cents: i64,
    pub(crate) backing: Option<Backing>,
}

#[derive(Properties, PartialEq)]
pub(crate) struct BuyingProps {
    /// The job of the plan that is drawn.
    pub(crate) of: Rc<Job>,
    pub(crate) report: Rc<Report>,
    pub(crate) tape: Tape,
    /// `None` while a better plan may come, and where the plan fits the job no longer.
    pub(crate) yard: Option<Yard>,
}

/// What is bought.
#[component]
pub(crate) fn Buying(props: &BuyingProps) -> Html {
    let BuyingProps { of, report, tape, yard } = props;
    let searching = use_search(Search::default);
    let tried = use_state_eq(|| None::<usize>);
    {
        // What was tried belongs to another plan.
        let (searching, tried) = (searching.clone(), tried.clone());
        let about = yard.as_ref().map(|yard| (yard.job.clone(), yard.stood.clone()));
        use_effect_with(about, move |_| {
            searching.forget();
            tried.set(None);
        });
    }
    let one = |it: &Purchase| {
        let asked = yard.as_ref().and_then(|yard| Some((yard, yard.place(of, it)?)));
        let Some((yard, board)) = asked else {
            return html! { <li key={it.board} class="row">{ purchase(it, *tape) }</li> };
        };
        let is_tried = *tried == Some(board);
        let onclick = {
            let (searching, tried, job) = (searching.clone(), tried.clone(), yard.job.clone());
            Callback::from(move |_: MouseEvent| {
                tried.set(Some(board));
                let job = Rc::new(without(&job, board));
                searching.begin(job, Ask::Cheapest { budget: u64::MAX });
            })
        };
        let close = {
            let (searching, tried) = (searching.clone(), tried.clone());
            Callback::from(move |_: MouseEvent| {
                searching.forget();
                tried.set(None);
            })
        };
        html! {
            <li key={it.board} class={classes!("buying", is_tried.then_some("is-tried"))}>
                <div class="row">{ purchase(it, *tape) }</div>
                if is_tried {
                    { yard.tried(&searching, board, *tape, close) }
                } else {
                    <button type="button" class="tool" data-testid={format!("none-{}", it.board)} {onclick}
                        aria-label={format!("They have none: {} × {}", it.section, it.length)}>
                        { "They have none" }
                    </button>
                }
            </li>
        }
    };
    let is_bought = report.shopping.iter().all(|it| it.to_buy() == 0);
    let title = if is_bought && !report.shopping.is_empty() { "Bought" } else { "Buy" };
    html! {
        <section class="plan__part" aria-label="What to buy" data-testid="shopping">
            <h2 class="part-title">{ title }</h2>
            if report.shopping.is_empty() {
                <p class="plan__words">{ "Nothing: it all comes from my rack." }</p>
            } else {
                <ul class="rows">{ for report.shopping.iter().map(one) }</ul>
            }
        </section>
    }
}

impl Yard {
    /// The board of a line in the job of today, where the plan still buys it.
    fn place(&self, of: &Job, it: &Purchase) -> Option<usize> {
        let id = &of.boards.get(it.board)?.id;
        let at = self.job.boards.iter().position(|board| board.id == *id)?;
        self.stood.boards.iter().any(|cut| cut.source == Source::Board(at)).then_some(at)
    }

    /// What stops a plan without the length, where the planner knows it.
    fn why_not(&self, search: &Search) -> Option<Sentence> {
        match (&search.stage, &search.job) {
            (Stage::Impossible(problem), Some(job)) => {
                Some(self.labels.explain(job, problem).sentence)
            }
            _ => None,
        }
    }

    /// The plan without a length, as far as it is known.
    fn tried(
        &self,
        searching: &Searching,
        board: usize,
        tape: Tape,
        close: Callback<MouseEvent>,
    ) -> Html {
        let search = &*searching.search;
        let plan = search.plan.as_ref().filter(|_| search.job.is_some());
        let changed = plan.and_then(|plan| {
            difference(&self.job, &self.labels, board, (&*self.stood, &**plan), self.how)
        });
        let said = match (&changed, search.is_running()) {
            (Some(changed), _) => sentence(&changed.sentence, tape),
            (None, true) => "Planning without it.".into(),
            (None, false) => {
                let why = self.why_not(search);
                html! {
                    <>
                        { without_words(&self.job, &self.labels, board).map(|words| sentence(&words, tape)) }
                        // Only what the planner has proved is said to be so.
                        { if why.is_some() { "there is no plan. " } else { "no plan was found." } }
                        { why.map(|words| sentence(&words, tape)) }
                    </>
                }
            }
        };
        let take = plan.zip(search.job.as_ref()).map(|(plan, job)| {
            let without = Without {
                board,
                job: job.clone(),
                plan: plan.clone(),
                bound_cents: search.bound_cents,
                backing: search.to_keep(),
            };
            let (take, close) = (self.take.clone(), close.clone());
            Callback::from(move |event: MouseEvent| {
                take.emit(without.clone());
                close.emit(event);
            })
        });
        let lines = plan.and_then(|plan| shopping(&self.job, plan, &self.labels));
        let proved = plan
            .map(|plan| sentence(&search.standing(plan.cost_cents).cost(&self.labels, &[]), tape));
        html! {
            <div class="without" role="group" aria-label="Without this length" data-testid="without">
                <p class="without__said" role="status" data-testid="without-said">{ said }</p>
                <div class="without__steps">
                    <button key="leave" type="button" class="tool" data-testid="leave-without" onclick={close}>{ "Go back" }</button>
                    if let Some(take) = take {
                        <button key="take" type="button" class="tool tool--main tool--always" data-testid="take-without"
                            onclick={take}>{ "Take this plan" }</button>
                    }
                </div>
                if let Some(lines) = lines {
                    <h3 class="job__title">{ "Then buy" }</h3>
                    <ul class="rows" data-testid="then-buy">
                        { for lines.iter().map(|it| html! { <li key={it.board} class="row">{ purchase(it, tape) }</li> }) }
                    </ul>
                }
                if let Some(proved) = proved { <p class="plan__words">{ proved }{ " " }{ search.why() }</p> }
                if search.is_running() {
                    <p class="plan__words">{ format!("Still looking, {} s.", search.seconds) }</p>
                }
                if let Stage::Failed(words) = &search.stage {
                    <p class="trouble" role="alert">{ words }</p>
                }
            </div>
        }
    }
}

/// One line of what is bought.
pub(super) fn purchase(it: &Purchase, tape: Tape) -> Html {
    html! {
        <>
            <span class="row__name">{ format!("{} × ", it.count) }{ length(it.length, tape) }</span>
            <span class="row__value">{ it.price.map(|(_, sum)| money(sum)) }</span>
            <span class="row__more">
                if let Some(words) = it.bought_words() { <span class="badge is-cut">{ words }</span> }
                { &it.section }
                if let Some((each, _)) = it.price { { format!(", {} each", money(each)) } }
            </span>
        </>
    }
}
