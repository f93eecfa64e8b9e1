//! [`use_search`] and [`use_question`]: questions to the planner that live as long as the page that asks them.

use std::cell::RefCell;
use std::rc::Rc;

use reckoner_core::cutting::{Job, Plan};
use reckoner_formats::{Ask, Reply};
use yew::prelude::*;

use super::search::{Event, Search};
use crate::platform::later::every_second;
use crate::platform::planner::{self, Asking, Heard};

impl Reducible for Search {
    type Action = Event;

    fn reduce(self: Rc<Self>, event: Event) -> Rc<Self> {
        let next = self.after(event);
        // A sign of life without news draws nothing anew.
        if next == *self { self } else { Rc::new(next) }
    }
}

/// What was asked of the planner.
type Last = (Rc<Job>, Ask);

/// The search for a plan.
#[derive(Clone)]
pub(crate) struct Searching {
    pub(crate) search: UseReducerHandle<Search>,
    asking: Rc<RefCell<Option<Asking>>>,
    /// What was asked last.
    last: Rc<RefCell<Option<Last>>>,
}

impl Searching {
    /// Begins with this job, whatever was asked before.
    pub(crate) fn begin(&self, job: Rc<Job>, ask: Ask) {
        let search = self.search.dispatcher();
        let before = self.last.replace(Some((job.clone(), ask.clone())));
        let goes_on = before.is_some_and(|before| before == (job.clone(), ask.clone()));
        search.dispatch(Event::Begin { job: job.clone(), goes_on });
        let asking = planner::ask(job, ask, move |heard| {
            search.dispatch(match heard {
                Heard::Reply(reply) => Event::Reply(reply),
                Heard::OnPage(why) => Event::OnPage(why),
                Heard::Trouble(why) => Event::Trouble(why),
            });
        });
        let before = self.asking.replace(Some(asking));
        drop(before);
    }

    /// Asks the same again.
    pub(crate) fn again(&self) {
        let last = self.last.borrow().clone();
        // What was kept from an earlier visit was asked for the cheapest plan.
        let kept = || Some((self.search.job.clone()?, Ask::Cheapest { budget: u64::MAX }));
        if let Some((job, ask)) = last.or_else(kept) {
            self.begin(job, ask);
        }
    }

    /// Stops at once and forgets what was found.
    pub(crate) fn forget(&self) {
        drop(self.asking.take());
        self.search.dispatch(Event::Forget);
    }

    /// Takes the plan of another way to buy in place of the one that was found.
    pub(crate) fn take(&self, plan: Rc<Plan>) {
        self.search.dispatch(Event::Take(plan));
    }

    /// Goes back to the plan that was found.
    pub(crate) fn go_back(&self) {
        self.search.dispatch(Event::GoBack);
    }

    /// Stops at once and keeps the best plan so far.
    pub(crate) fn stop(&self) {
        drop(self.asking.take());
        self.search.dispatch(Event::Stop);
    }
}

/// A search that is called off when its page goes.
#[hook]
pub(crate) fn use_search(start: impl FnOnce() -> Search) -> Searching {
    let search = use_reducer_eq(start);
    let asking: Rc<RefCell<Option<Asking>>> = use_mut_ref(|| None);
    {
        let (asking, search_now) = (asking.clone(), search.dispatcher());
        use_effect_with(search.is_running(), move |is_running| {
            let clock = if *is_running {
                Some(every_second(move || search_now.dispatch(Event::Second)))
            } else {
                // It ended by itself or ran out of time; a worker still at work is stopped.
                drop(asking.take());
                None
            };
            move || drop(clock)
        });
    }
    let last = use_mut_ref(|| None);
    Searching { search, asking, last }
}

/// What became of a question.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Asked {
    /// Nothing was asked.
    No,
    /// The planner is at work.
    Waiting,
    /// Its answer.
    Told(Rc<Reply>),
    /// None will come, and why.
    Trouble(String),
}

/// A question with one answer.
#[derive(Clone)]
pub(crate) struct Question {
    pub(crate) state: UseStateHandle<Asked>,
    asking: Rc<RefCell<Option<Asking>>>,
}

impl Question {
    /// Asks; `then` is told the answer too.
    pub(crate) fn ask(&self, job: Rc<Job>, ask: Ask, then: impl Fn(&Reply) + 'static) {
        self.state.set(Asked::Waiting);
        let state = self.state.clone();
        let asking = planner::ask(job, ask, move |heard| match heard {
            Heard::Reply(Reply::News(_)) | Heard::OnPage(_) => {}
            Heard::Reply(reply) => {
                then(&reply);
                state.set(Asked::Told(Rc::new(reply)));
            }
            Heard::Trouble(why) => state.set(Asked::Trouble(why)),
        });
        let before = self.asking.replace(Some(asking));
        drop(before);
    }
}

/// A question that is called off when its page goes, and forgotten when `about` changes.
#[hook]
pub(crate) fn use_question<T: PartialEq + 'static>(about: T) -> Question {
    let state = use_state_eq(|| Asked::No);
    let asking: Rc<RefCell<Option<Asking>>> = use_mut_ref(|| None);
    {
        let (state, asking) = (state.clone(), asking.clone());
        use_effect_with(about, move |_| {
            drop(asking.take());
            state.set(Asked::No);
        });
    }
    Question { state, asking }
}
