//! [`Search`]: the state of one question to the planner, from the first news to the end.

use std::rc::Rc;

use reckoner_core::cutting::{Backing, CutProblem, Job, Plan, Ties};
use reckoner_core::job::CutPlan;
use reckoner_core::planning::report::Standing;
use reckoner_formats::{Checked, Reply, TakenPlan};

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
    /// What was proved of the plan; `None` before the search has ended by itself, and where a plan was kept without it.
    pub backing: Option<Backing>,
    /// It was kept for a job that is another now: nothing is claimed of it any more.
    pub is_outdated: bool,
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
            backing: None,
            is_outdated: false,
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
    pub fn kept(kept: &CutPlan, is_outdated: bool) -> Search {
        Search {
            stage: Stage::Kept,
            job: Some(Rc::new(kept.asked.clone())),
            plan: Some(Rc::new(kept.plan.clone())),
            bound_cents: kept.bound_cents,
            backing: kept.backing,
            is_outdated,
            ..Search::default()
        }
    }

    /// A plan that was taken and kept, with the search that found another behind it.
    #[must_use]
    pub fn taken(kept: TakenPlan) -> Search {
        let TakenPlan { job, found, bound_cents, backing, taken } = kept;
        let before = Search {
            stage: if backing.is_some() { Stage::Ended } else { Stage::Stopped },
            job: Some(Rc::new(job)),
            plan: Some(Rc::new(found)),
            bound_cents,
            backing,
            ..Search::default()
        };
        before.after(Event::Take(Rc::new(taken)))
    }

    /// The plan that was taken in place of the one that was found, to be kept; `None` where none was.
    #[must_use]
    pub fn to_keep_taken(&self) -> Option<TakenPlan> {
        let before = self.before.as_ref()?;
        Some(TakenPlan {
            job: (**self.job.as_ref()?).clone(),
            found: (**before.plan.as_ref()?).clone(),
            bound_cents: self.bound_cents,
            backing: before.backing,
            taken: (**self.plan.as_ref()?).clone(),
        })
    }

    /// What is kept with the plan of what was proved of it: nothing more, where the search did not end by itself.
    #[must_use]
    pub fn to_keep(&self) -> Option<Backing> {
        match self.stage {
            Stage::Kept => self.backing,
            _ => Some(self.backing.unwrap_or_default()),
        }
    }

    /// What is kept with the plan of another way to buy that is taken in place of this one.
    #[must_use]
    pub fn in_place(&self) -> Backing {
        let in_place_of = self.plan.as_ref().map(|plan| plan.cost_cents);
        Backing { in_place_of, ..Backing::default() }
    }

    /// The plan is proved cheapest, or proved to cut the most from the rack.
    #[must_use]
    pub fn is_proved(&self) -> bool {
        self.backing.is_some_and(|it| it.is_proved)
    }

    /// What of the plan's rank among those of equal money is proved, while it fits its job.
    #[must_use]
    pub fn ties(&self) -> Option<Ties> {
        self.backing.filter(|_| !self.is_outdated)?.ties
    }

    /// What is known of a plan that costs so much.
    #[must_use]
    pub fn standing(&self, cost_cents: i64) -> Standing {
        Standing { cost_cents, bound_cents: self.bound_cents, backing: self.backing }
    }

    /// Whether the planner is at work.
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.stage == Stage::Running
    }

    /// Why the plan is as good as it is said to be, or why it is not known.
    #[must_use]
    pub fn why(&self) -> &'static str {
        let vouched = || {
            let plan = self.plan.as_ref();
            plan.map_or("", |plan| self.standing(plan.cost_cents).vouched())
        };
        match (&self.stage, self.is_proved()) {
            (Stage::Running, _) => "",
            (Stage::Kept, _) if self.is_outdated => "",
            (Stage::Kept | Stage::Taken, _) | (_, true) => vouched(),
            (Stage::Stopped, _) => "It was stopped. Planning again may find a cheaper one.",
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
                    backing: Some(before.in_place()),
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
                self.backing = Some(Backing {
                    is_proved: outcome.proved,
                    is_checked: checked.iter().all(|it| *it == Checked::Confirmed),
                    ties: Some(outcome.ties),
                    in_place_of: None,
                });
                self.hold(outcome.plan);
            }
            Reply::RackOnly(outcome) => {
                self.stage = Stage::Ended;
                self.backing = Some(Backing { is_proved: outcome.proved, ..Backing::default() });
                self.hold(outcome.plan);
            }
            Reply::Problem(problem) => self.stage = Stage::Impossible(problem),
            // Answers to other questions.
            Reply::Become(_) | Reply::SingleBoards(_) | Reply::NextRun(_) => {}
        }
    }
}
