//! The plan in use: what was cut of it, what came out different, and what changed since it was made.

use std::rc::Rc;

use reckoner_core::attention::Fact;
use reckoner_core::job::BoardState;
use reckoner_core::job::cut_labels::Labels;
use reckoner_core::planning::CAME_OUT_DIFFERENT;
use reckoner_core::planning::report::{BoardCut, Keep};
use reckoner_core::planning::so_far::so_far;
use yew::prelude::*;

use super::super::front::small;
use super::super::hand_on::file_name;
use super::super::open::Shared;
use super::super::pencil::is_money_on_ours;
use super::different::Different;
use super::{Asked, Body, Kept, Page};
use crate::cutting::buying::Yard;
use crate::cutting::found::headline;
use crate::cutting::report::{Beside, Told, as_list, whole};
use crate::cutting::search::Search;
use crate::platform::dom;

impl Page<'_> {
    /// The plan in use as the search that it came from; nothing is claimed of one that fits the job no longer.
    pub(super) fn kept_search(&self, kept: &Kept) -> Search {
        let facts = &self.open.attention.facts;
        Search::kept(kept.plan, facts.iter().any(|it| matches!(it, Fact::Plan { .. })))
    }

    /// The plan in use. `different` is the board that came out different, while that is being written down.
    pub(super) fn in_use(
        &self,
        kept: &Kept,
        told: Option<&Told>,
        wanted: Option<&Asked>,
        yard: Option<Yard>,
        all: &UseStateHandle<bool>,
        (different, is_keying): (&UseStateHandle<Option<usize>>, &UseStateHandle<bool>),
    ) -> Body {
        let (plan, tape) = (kept.plan, self.tape());
        let labels = Rc::new(plan.labels.clone());
        let search = self.kept_search(kept);
        let is_rack = !plan.plan.left_out.is_empty();
        let board = |at: usize, cut: &BoardCut| self.board(kept, at, cut, different, is_keying);
        let offcut = |_: usize, keep: &Keep| self.offcut(kept, keep);
        let trouble = html! {
            <p class="trouble" role="alert">{ "This plan cannot be shown. Plan again." }</p>
        };
        let is_bought = |at: usize| kept.is_bought(at);
        let beside = Beside {
            board: &board,
            offcut: &offcut,
            is_bought: &is_bought,
            is_running: false,
            yard,
            is_ours: is_money_on_ours(self.open),
        };
        let rest = html! {
            <>
                { self.steps(kept, told, &labels) }
                { self.about(wanted) }
                if let Some(told) = told { { whole(told, tape, all, &beside) } }
                { self.dropping(kept) }
            </>
        };
        Body {
            headline: headline(
                &search,
                Some(&labels),
                told,
                is_rack,
                beside.is_ours,
                tape,
                trouble,
            ),
            rest,
        }
    }

    /// What can be done with the whole plan.
    fn steps(&self, kept: &Kept, told: Option<&Told>, labels: &Rc<Labels>) -> Html {
        let job = &self.open.book.job;
        let n_cut = kept.boards.iter().filter(|state| state.is_cut()).count();
        let can_buy = job.buying(kept.id, None).is_some();
        let id = kept.id;
        let buy = self.open.making(move |job| job.buying(id, None));
        html! {
            <div class="plan-steps">
                <p class="plan__words" data-testid="boards-cut">{ format!("{n_cut} of {} boards cut.", kept.boards.len()) }</p>
                { small(&so_far(job, &self.open.reckoned).boards) }
                if can_buy {
                    <button type="button" class="tool" data-testid="bought" onclick={buy}>{ "All bought" }</button>
                }
                <a class="tool" href={self.open.at("buy")} data-testid="to-buy-page">{ "Everything to buy" }</a>
                if let Some(told) = told { { as_list(told, labels, file_name(&job.title, "boards.csv")) } }
            </div>
        }
    }

    /// The way back to no plan at all.
    fn dropping(&self, kept: &Kept) -> Html {
        let id = kept.id;
        let drop = self.open.making(move |job| {
            dom::confirm("Throw this plan away? Undo brings it back.")
                .then(|| job.dropping_plan(id))
        });
        html! {
            <div class="plan-steps">
                <button type="button" class="tool" data-testid="drop-plan" onclick={drop}>{ "Throw the plan away" }</button>
            </div>
        }
    }

    /// The ticks of one board.
    fn board(
        &self,
        kept: &Kept,
        at: usize,
        cut: &BoardCut,
        different: &UseStateHandle<Option<usize>>,
        is_keying: &UseStateHandle<bool>,
    ) -> Html {
        let state = kept.boards.get(at).cloned().unwrap_or_default();
        match state {
            BoardState::Cut => {
                return html! { <p><span class="badge is-cut" data-testid={format!("is-cut-{}", cut.number)}>{ "cut" }</span></p> };
            }
            BoardState::Different { .. } => {
                return html! { <p><span class="badge is-different">{ "came out different" }</span></p> };
            }
            BoardState::ToCut | BoardState::Bought(_) | BoardState::Begun(_) => {}
        }
        let close = {
            let (different, is_keying) = (different.clone(), is_keying.clone());
            Callback::from(move |()| {
                different.set(None);
                is_keying.set(false);
            })
        };
        if **different == Some(at) {
            let on_keying = {
                let is_keying = is_keying.clone();
                Callback::from(move |is| is_keying.set(is))
            };
            return html! {
                <Different open={Shared(self.open.clone())} plan={kept.id} board={at} key_lines={cut.key.clone()} {close} {on_keying} />
            };
        }
        let begin = {
            let different = different.clone();
            Callback::from(move |_: MouseEvent| different.set(Some(at)))
        };
        html! {
            <div class="board__steps">
                <button type="button" class="tool" data-testid={format!("cut-{}", cut.number)} onclick={self.cutting(kept, at)}>
                    { "Cut as drawn" }
                </button>
                <button type="button" class="tool" data-testid={format!("different-{}", cut.number)} onclick={begin}>
                    { CAME_OUT_DIFFERENT }
                </button>
            </div>
        }
    }

    /// The step is worked out when it is asked for, not with every key of the options.
    fn cutting(&self, kept: &Kept, board: usize) -> Callback<MouseEvent> {
        let keep_from = self.options.map(|options| options.keep_from);
        let plan = kept.id;
        self.open.making(move |job| job.cutting(plan, board, keep_from?))
    }

    /// An offcut goes on the rack when its board is cut.
    fn offcut(&self, kept: &Kept, keep: &Keep) -> Html {
        let is_cut = kept.boards.get(keep.board).is_some_and(BoardState::is_cut);
        let number = keep.board.saturating_add(1);
        let words = match (is_cut, kept.plan.is_list) {
            (true, false) => "on the rack",
            (true, true) => "on my rack",
            (false, _) => "",
        };
        html! {
            if is_cut {
                <span class="badge is-cut">{ words }</span>
            } else {
                <button type="button" class="tool" data-testid={format!("offcut-of-{number}")} onclick={self.cutting(kept, keep.board)}>
                    { format!("Board {number} is cut: keep it") }
                </button>
            }
        }
    }
}
