//! [`Search`]: the state of one question to the planner, from the first news to the end.

use std::rc::Rc;

use reckoner_core::cutting::{CutProblem, Job, Plan, Ties};
use reckoner_formats::{Checked, Reply};

/// How long a search may run: what is not proved by then costs more battery than it saves wood.
pub const MOST_SECONDS: u32 = 60;

/// Where a search stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Nothing was asked.
    Idle,
    /// The plan was kept from an earlier search.
    Kept,
    /// The planner is at work.
    Running,
    /// It has said all it will.
    Ended,
    /// The user stopped it: the best plan so far stays.
    Stopped,
    /// The user took another way to buy in place of the plan that was found.
    Taken,
    /// It has run for [`MOST_SECONDS`]: the best plan so far stays.
    OutOfTime,
    /// It stopped by itself, and why.
    Failed(String),
    /// The job cannot be answered.
    Impossible(CutProblem),
}

/// One question about a job: the cheapest plan, or what the rack gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Search {
    /// Where it stands.
    pub stage: Stage,
    /// The job asked about.
    pub job: Option<Rc<Job>>,
    /// The best plan so far.
    pub plan: Option<Rc<Plan>>,
    /// Which plan that is: the page tells one from the next by it.
    pub plan_number: u32,
    /// No plan costs less, in cents.
    pub bound_cents: i64,
    /// The plan is proved cheapest, or proved to cut the most from the rack.
    pub is_proved: bool,
    /// The core's checker worked the whole proof out again; else parts of it only the search knows.
    pub is_checked: bool,
    /// It was kept for a job that is another now: nothing is claimed of it any more.
    pub is_outdated: bool,
    /// What of its rank among plans of equal money is proved; `None` before the search has ended by itself.
    pub ties: Option<Ties>,
    /// The search that found the plan which another way to buy was taken in place of.
    pub before: Option<Rc<Search>>,
    /// It is the quick plan made on the page itself, and why.
    pub on_page: Option<&'static str>,
    /// How long it has run.
    pub seconds: u32,
}

impl Default for Search {
    fn default() -> Search {
        Search {
            stage: Stage::Idle,
            job: None,
            plan: None,
            plan_number: 0,
            bound_cents: 0,
            is_proved: false,
            is_checked: false,
            is_outdated: false,
            ties: None,
            before: None,
            on_page: None,
            seconds: 0,
        }
    }
}

/// What can happen to a [`Search`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Event {
    /// It begins, about this job; where it goes on with the question before, what was found stays until something cheaper
    /// is.
    Begin {
        /// The job.
        job: Rc<Job>,
        /// The same was asked before.
        goes_on: bool,
    },
    /// A reply that was found sound.
    Reply(Reply),
    /// It goes on on the page itself, and why that is less.
    OnPage(&'static str),
    /// Nothing more will come, and why.
    Trouble(String),
    /// The user stops it.
    Stop,
    /// The plan of another way to buy is taken in place of the one that was found.
    Take(Rc<Plan>),
    /// The plan that was found is wanted again.
    GoBack,
    /// A second has gone by.
    Second,
    /// What was found is not wanted any more.
    Forget,
}

impl Search {
    /// A plan that was kept, as the search that it came from; `is_outdated` where it fits its job no longer.
    #[must_use]
    pub fn kept(job: Job, plan: Plan, bound_cents: i64, is_outdated: bool) -> Search {
        Search {
            stage: Stage::Kept,
            is_proved: bound_cents == plan.cost_cents,
            job: Some(Rc::new(job)),
            plan: Some(Rc::new(plan)),
            bound_cents,
            is_outdated,
            ..Search::default()
        }
    }

    /// Whether the planner is at work.
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.stage == Stage::Running
    }

    /// Why the plan is as good as it is said to be, or why it is not known. What only the search vouches for is told as such.
    #[must_use]
    pub fn why(&self) -> &'static str {
        match (&self.stage, self.is_proved) {
            (Stage::Running | Stage::Kept | Stage::Taken, _) => "",
            (_, true) if self.is_checked => "The proof was worked out again by a second check.",
            (_, true) => {
                "The planner ruled out every cheaper way with these boards, prices and cuts. No second check went over that."
            }
            (Stage::Stopped, _) => "You stopped it. Planning again may find a cheaper one.",
            (Stage::OutOfTime, _) => "Stopped after a minute, to spare the battery.",
            (Stage::Failed(_), _) => "The planner did not finish.",
            _ => "The planner could not close the rest of the gap.",
        }
    }

    /// The search after an event.
    #[must_use]
    pub fn after(&self, event: Event) -> Search {
        let mut next = self.clone();
        match event {
            Event::Begin { job, goes_on } => {
                // What was forgotten, kept with the job or taken by hand is not gone on from.
                let goes_on =
                    goes_on && !matches!(self.stage, Stage::Idle | Stage::Kept | Stage::Taken);
                let found = if goes_on { next } else { Search::default() };
                next = Search {
                    stage: Stage::Running,
                    job: Some(job),
                    plan: found.plan,
                    bound_cents: found.bound_cents,
                    plan_number: self.plan_number,
                    ..Search::default()
                };
            }
            Event::Forget => {
                next = Search { plan_number: self.plan_number, ..Search::default() };
            }
            Event::Take(plan) => {
                let before = self.before.clone().unwrap_or_else(|| Rc::new(self.clone()));
                next = Search {
                    stage: Stage::Taken,
                    job: self.job.clone(),
                    plan: Some(plan),
                    plan_number: self.plan_number.wrapping_add(1),
                    bound_cents: self.bound_cents,
                    before: Some(before),
                    ..Search::default()
                };
            }
            Event::GoBack => {
                if let Some(before) = &self.before {
                    next = Search {
                        plan_number: self.plan_number.wrapping_add(1),
                        ..(**before).clone()
                    };
                }
            }
            // What comes after the end belongs to a question that was called off.
            _ if !self.is_running() => {}
            Event::OnPage(why) => next.on_page = Some(why),
            Event::Trouble(why) => next.stage = Stage::Failed(why),
            Event::Stop => next.stage = Stage::Stopped,
            Event::Second => {
                next.seconds = next.seconds.saturating_add(1);
                if next.seconds >= MOST_SECONDS {
                    next.stage = Stage::OutOfTime;
                }
            }
            Event::Reply(reply) => next.take(reply),
        }
        next
    }

    /// Takes a plan, unless one that was found before is cheaper.
    fn hold(&mut self, plan: Plan) {
        if self.plan.as_ref().is_some_and(|held| held.cost_cents < plan.cost_cents) {
            return;
        }
        self.plan = Some(Rc::new(plan));
        self.plan_number = self.plan_number.wrapping_add(1);
    }

    fn take(&mut self, reply: Reply) {
        match reply {
            Reply::News(news) => {
                self.bound_cents = self.bound_cents.max(news.bound_cents);
                if let Some(plan) = news.better {
                    self.hold(plan);
                }
            }
            Reply::Cheapest(outcome, checked) => {
                self.stage = Stage::Ended;
                self.bound_cents = self.bound_cents.max(outcome.bound_cents);
                self.is_proved = outcome.proved;
                self.is_checked = checked.iter().all(|it| *it == Checked::Confirmed);
                self.ties = Some(outcome.ties);
                self.hold(outcome.plan);
            }
            Reply::RackOnly(outcome) => {
                self.stage = Stage::Ended;
                self.is_proved = outcome.proved;
                self.hold(outcome.plan);
            }
            Reply::Problem(problem) => self.stage = Stage::Impossible(problem),
            // Answers to other questions.
            Reply::Become(_) | Reply::SingleBoards(_) | Reply::NextRun(_) => {}
        }
    }
}
