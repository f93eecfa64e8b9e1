//! How much work the search may do, and how it reports. Our own.
//!
//! There is no clock here. Work is counted in steps of about a nanosecond to ten; the caller sees every few million of them,
//! looks at its own clock, and says whether to go on. The same job with the same budget gives the same plan every time.

use std::ops::ControlFlow;

use reckoner_core::cutting::Plan;

/// What the search tells while it runs.
#[derive(Debug, Clone)]
pub struct Progress<'a> {
    /// Steps done so far.
    pub work: u64,
    /// Steps allowed.
    pub budget: u64,
    /// The best plan's cost, in cents; `None` while there is no plan.
    pub cost_cents: Option<i64>,
    /// No plan can cost less, in cents. When planning from the rack: a measure of the parts that must be left out.
    pub bound_cents: i64,
    /// Parts left out of the best plan; zero unless planning from the rack.
    pub left_out: u32,
    /// Boards and scraps cut in the best plan.
    pub boards: usize,
    /// The best plan, only in the first report after it was found.
    pub better: Option<&'a Plan>,
}

/// Steps between two reports.
const REPORT_EVERY: u64 = 4_000_000;

/// Counts the work and carries the news out.
pub(crate) struct Meter<'c> {
    work: u64,
    budget: u64,
    next_report: u64,
    stopped: bool,
    score: Option<(i64, usize)>,
    bound: i64,
    plan: Option<Plan>,
    fresh: bool,
    listener: &'c mut dyn FnMut(&Progress<'_>) -> ControlFlow<()>,
}

impl<'c> Meter<'c> {
    pub(crate) fn new(
        budget: u64,
        listener: &'c mut dyn FnMut(&Progress<'_>) -> ControlFlow<()>,
    ) -> Self {
        Self {
            work: 0,
            budget,
            next_report: REPORT_EVERY,
            stopped: false,
            score: None,
            bound: 0,
            plan: None,
            fresh: false,
            listener,
        }
    }

    /// Counts `steps`; `false` when the search must stop.
    pub(crate) fn tick(&mut self, steps: u64) -> bool {
        self.work = self.work.saturating_add(steps);
        if self.work >= self.next_report {
            self.next_report = self.work + REPORT_EVERY;
            self.report();
        }
        self.going()
    }

    /// Whether the search may go on.
    pub(crate) fn going(&self) -> bool {
        !self.stopped && self.work < self.budget
    }

    /// Steps done so far.
    pub(crate) fn work(&self) -> u64 {
        self.work
    }

    /// Tells the listener at once.
    pub(crate) fn report(&mut self) {
        let progress = Progress {
            work: self.work,
            budget: self.budget,
            cost_cents: self.plan.as_ref().map(|plan| plan.cost_cents),
            bound_cents: self.bound,
            left_out: self.plan.as_ref().map_or(0, |plan| {
                plan.left_out.iter().map(|left| left.quantity).fold(0, u32::saturating_add)
            }),
            boards: self.plan.as_ref().map_or(0, |plan| plan.boards.len()),
            better: self.plan.as_ref().filter(|_| self.fresh),
        };
        self.fresh = false;
        if (self.listener)(&progress).is_break() {
            self.stopped = true;
        }
    }

    /// A better plan and its score.
    pub(crate) fn better(&mut self, plan: Plan, score: (i64, usize)) {
        self.score = Some(score);
        self.plan = Some(plan);
        self.fresh = true;
        self.report();
    }

    /// A better bound.
    pub(crate) fn raise(&mut self, bound: i64) {
        if bound > self.bound {
            self.bound = bound;
        }
    }

    /// Whether a plan of this score (cost, then boards) is better than the best told so far.
    pub(crate) fn is_better(&self, score: (i64, usize)) -> bool {
        self.score.is_none_or(|old| score < old)
    }

    /// Whether the listener asked to stop.
    pub(crate) fn stopped(&self) -> bool {
        self.stopped
    }
}
