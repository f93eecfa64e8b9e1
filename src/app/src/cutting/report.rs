//! A plan on the page: what to buy, each board with its cuts, what can be cut together, and what is left.

use std::rc::Rc;

use reckoner_core::cutting::{CutKind, Job, Plan, Source, Ties};
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::measure::Tape;
use reckoner_core::planning::report::{
    BatchCut, BoardCut, CutBatch, How, Keep, KeyLine, Order, Report, glance, work,
};
use reckoner_core::sheet::Sentence;
use reckoner_formats::cut_plan_csv;
use yew::prelude::*;

use super::buying::{Buying, Yard};
use crate::components::drawing::drawing;
use crate::components::measure::length;
use crate::components::notes::Safety;
use crate::components::sentence::sentence;
use crate::platform::files;

/// Boards that are drawn before the rest is asked for.
const MOST_BOARDS: usize = 24;

/// Boards that are drawn while better plans may come: drawing all of them again and again costs frames.
const FIRST_BOARDS: usize = 3;

/// A plan with its report.
#[derive(Clone)]
pub(crate) struct Told {
    /// The job it is a plan of.
    pub(crate) job: Rc<Job>,
    pub(crate) plan: Rc<Plan>,
    pub(crate) report: Rc<Report>,
    /// How much setting up and sawing it is; nothing while better plans may come.
    pub(crate) work: Option<Sentence>,
    /// Parts that are wanted and not in it, by name.
    pub(crate) left_out: Vec<String>,
}

impl Told {
    /// The report of a plan; `None` for one that is not of this job. While better plans may come, it has no more than the
    /// boards that are drawn then. `ties`: what is proved of its rank among plans as cheap, where that is known.
    pub(crate) fn of(
        job: &Rc<Job>,
        plan: &Rc<Plan>,
        labels: &Labels,
        how: How,
        ties: Option<Ties>,
        is_running: bool,
    ) -> Option<Told> {
        let most = if is_running { FIRST_BOARDS } else { usize::MAX };
        let report = glance(job, plan, labels, how, most)?;
        Some(Told {
            job: job.clone(),
            plan: plan.clone(),
            report: Rc::new(report),
            work: if is_running { None } else { work(job, plan, labels, ties) },
            left_out: Vec::new(),
        })
    }
}

/// What stands beside the boards and offcuts of a plan: ticks, and taps that put things away.
pub(crate) struct Beside<'a> {
    /// For each board of the plan.
    pub(crate) board: &'a dyn Fn(usize, &BoardCut) -> Html,
    /// For each kind of offcut.
    pub(crate) offcut: &'a dyn Fn(usize, &Keep) -> Html,
    /// Whether a board of the yard is bought.
    pub(crate) is_bought: &'a dyn Fn(usize) -> bool,
    /// Whether the planner is at work, and a better plan may come.
    pub(crate) is_running: bool,
    /// What can be asked of the yard.
    pub(crate) yard: Option<Yard>,
    /// Whether it rests on sizes or prices of ours: what is to be bought is in pencil then.
    pub(crate) is_ours: bool,
}

impl Beside<'_> {
    /// A plan that nothing was done of.
    pub(crate) fn nothing(is_running: bool, yard: Option<Yard>, is_ours: bool) -> Beside<'static> {
        Beside {
            board: &|_, _| Html::default(),
            offcut: &|_, _| Html::default(),
            is_bought: &|_| false,
            is_running,
            yard,
            is_ours,
        }
    }

    fn origin(&self, at: usize, board: &BoardCut) -> &'static str {
        match board.source {
            Source::Scrap(_) => "on my rack",
            Source::Board(_) if (self.is_bought)(at) => "bought",
            Source::Board(_) => "to buy",
        }
    }
}

/// The button that saves the boards of a plan as a list, in a file of this name.
pub(crate) fn as_list(told: &Told, labels: &Rc<Labels>, name: String) -> Html {
    let (job, report, labels) = (told.job.clone(), told.report.clone(), labels.clone());
    let onclick = Callback::from(move |_: MouseEvent| {
        files::save(&name, "text/csv", cut_plan_csv(&job, &labels, &report.boards).as_bytes());
    });
    html! {
        <button type="button" class="tool" data-testid="save-boards" {onclick}>{ "Boards as a list (CSV)" }</button>
    }
}

/// Everything about a plan but its headline.
pub(crate) fn whole(told: &Told, tape: Tape, all: &UseStateHandle<bool>, beside: &Beside) -> Html {
    let report = &*told.report;
    let most = if **all { usize::MAX } else { MOST_BOARDS };
    let is_cut_off = report.boards.len() > most;
    let show_all = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(true))
    };
    html! {
        <div class={classes!("plan", beside.is_ours.then_some("is-ours"))} data-testid="plan">
            { left_out(report) }
            <Buying of={told.job.clone()} report={told.report.clone()} {tape} yard={beside.yard.clone()} />
            <section class="plan__part" aria-label="Boards">
                <h2 class="part-title">{ "Cut them like this" }</h2>
                <p class="plan__words">{ "Every size is from the left end of the board, as it is drawn. Mark that end first." }</p>
                <ol class="boards">
                    { for report.boards.iter().take(most).enumerate().map(|(at, board)| one_board(at, board, tape, beside)) }
                </ol>
                if beside.is_running {
                    <p class="plan__words">{ "The rest is drawn when the planner has ended." }</p>
                } else if is_cut_off {
                    <button type="button" class="tool" data-testid="all-boards" onclick={show_all}>
                        { format!("Show all {} boards", report.boards.len()) }
                    </button>
                }
            </section>
            if !beside.is_running {
                { together(told, tape) }
                { offcuts(report, tape, beside) }
            }
            <Safety question="cut" cautions={report.cautions.clone()} {tape} />
        </div>
    }
}

fn left_out(report: &Report) -> Html {
    html! {
        if !report.left_out.is_empty() {
            <section class="plan__part" aria-label="Pieces left out" data-testid="left-out">
                <h2 class="part-title">{ "Not cut from this" }</h2>
                <ul class="notes">
                    { for report.left_out.iter().map(|(name, count)| html! { <li>{ format!("{count} × {name}") }</li> }) }
                </ul>
            </section>
        }
    }
}

fn one_board(at: usize, board: &BoardCut, tape: Tape, beside: &Beside) -> Html {
    let from = beside.origin(at, board);
    html! {
        <li class="board" data-testid={format!("board-{}", board.number)}>
            <h3 class="board__title">
                <span class="board__number">{ board.number }</span>
                <span>{ &board.name }{ ", " }{ length(board.length, tape) }</span>
                <span class="badge">{ from }</span>
            </h3>
            { drawing(&board.scene, tape) }
            <ul class="board__key">{ for board.key.iter().map(|it| key_line(it, tape)) }</ul>
            <details class="orders">
                <summary data-testid={format!("orders-{}", board.number)}>{ format!("The cuts in order, {}", board.orders.len()) }</summary>
                <ol class="orders__list">{ for board.orders.iter().map(|it| order(it, tape)) }</ol>
            </details>
            { (beside.board)(at, board) }
        </li>
    }
}

/// What a letter in the bar stands for.
pub(crate) fn key_line(it: &KeyLine, tape: Tape) -> Html {
    html! {
        <li>
            <b>{ &it.letter }</b>{ format!(" {} × {}, ", it.count, it.name) }{ length(it.length, tape) }
            if let Some(width) = it.width { { ", " }{ length(width, tape) }{ " wide" } }
        </li>
    }
}

fn order(it: &Order, tape: Tape) -> Html {
    html! {
        <li class="order" value={it.number.to_string()}>
            <span class="order__kind">{ kind(it.kind) }</span>
            <span>{ sentence(&it.sentence, tape) }</span>
        </li>
    }
}

fn kind(kind: CutKind) -> &'static str {
    match kind {
        CutKind::Block => "Crosscut a block",
        CutKind::Clean => "Clean",
        CutKind::Rip => "Rip",
        CutKind::Resaw => "Resaw",
        CutKind::Crosscut => "Crosscut",
        CutKind::Trim => "Trim",
    }
}

fn together(told: &Told, tape: Tape) -> Html {
    let report = &*told.report;
    let group = |title: &str, is_of: fn(CutKind) -> bool| {
        let mut here = report.batches.iter().filter(|it| is_of(it.kind)).peekable();
        html! {
            if here.peek().is_some() {
                <h3 class="job__title">{ title }</h3>
                <ul class="rows">{ for here.map(|it| batch(it, tape)) }</ul>
            }
        }
    };
    html! {
        if !report.batches.is_empty() {
            <section class="plan__part" aria-label="Set once, cut all that match" data-testid="plan-batches">
                <h2 class="part-title">{ "Set once, cut all that match" }</h2>
                if let Some(work) = &told.work {
                    <p class="plan__words" data-testid="work">{ sentence(work, tape) }</p>
                }
                { group("Fence, by width and thickness", |kind| matches!(kind, CutKind::Clean | CutKind::Rip | CutKind::Resaw)) }
                { group("Stop block, by length", |kind| matches!(kind, CutKind::Block | CutKind::Crosscut | CutKind::Trim)) }
            </section>
        }
    }
}

fn batch(it: &CutBatch, tape: Tape) -> Html {
    let place = |cut: &BatchCut| format!("board {}: {} × {}", cut.board, cut.pieces, cut.name);
    let places: Vec<String> = it.cuts.iter().map(place).collect();
    html! {
        <li class="row">
            <span class="row__name">{ sentence(&it.sentence, tape) }</span>
            <span class="row__more">{ places.join("; ") }</span>
        </li>
    }
}

fn offcuts(report: &Report, tape: Tape, beside: &Beside) -> Html {
    html! {
        if !report.offcuts.is_empty() {
            <section class="plan__part" aria-label="Offcuts" data-testid="offcuts">
                <h2 class="part-title">{ "Left over and worth keeping" }</h2>
                <ul class="rows">
                    { for report.offcuts.iter().enumerate().map(|(at, keep)| html! {
                        <li class="row row--offcut">
                            <span class="row__name">{ sentence(&keep.sentence, tape) }</span>
                            { (beside.offcut)(at, keep) }
                        </li>
                    }) }
                </ul>
            </section>
        }
    }
}
