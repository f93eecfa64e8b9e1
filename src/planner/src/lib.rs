//! The cut planner as a program of its own: a question comes in as text, replies go out as text.
//!
//! The page starts it in a Web Worker, so that it is never kept waiting. Here is only the conversation, tested natively;
//! `browser` ties it to the browser. It looks at no clock: the page does, and ends the whole program when it has had
//! enough. News goes out when there is some, and otherwise now and then as a sign of life.

#[cfg(target_arch = "wasm32")]
pub mod browser;

use std::ops::ControlFlow;

use reckoner_core::cutting::{Certificate, CertificateFault, Job, Outcome, check_certificate};
use reckoner_cutplan::{
    Progress, compare_single_boards, next_store_run, plan_job, plan_rack, what_it_can_become,
};
use reckoner_formats::{
    Ask, Checked, CutTextProblem, News, Question, Reply, read_question, write_reply,
};

/// What the program says when it can take questions.
pub const READY: &str = "ready";

/// Reports of the search between two signs of life.
const SIGN_OF_LIFE: u32 = 8;

/// Answers one question. `tell` gets each reply as text, the last one being the answer.
///
/// # Errors
/// [`CutTextProblem`] for a text that is no question; then nothing is told.
pub fn answer(text: &str, tell: &mut dyn FnMut(String)) -> Result<(), CutTextProblem> {
    let Question { number, job, ask } = read_question(text)?;
    let mut teller = Teller { number, last: None, quiet: 0, tell };
    let reply = match ask {
        Ask::Cheapest { budget } => {
            let found = plan_job(&job, budget, &mut |progress| teller.hear(progress, true));
            found.map(|outcome| {
                let checked = certificates(&job, &outcome);
                Reply::Cheapest(outcome, checked)
            })
        }
        Ask::RackOnly { budget } => {
            plan_rack(&job, budget, &mut |progress| teller.hear(progress, true))
                .map(Reply::RackOnly)
        }
        Ask::Become(source) => what_it_can_become(&job, source).map(Reply::Become),
        Ask::SingleBoards { budget } => job.validate().map(|()| {
            // These plans are of other jobs, each without some boards, so they are not news about this one.
            let mut listen = |progress: &Progress<'_>| teller.hear(progress, false);
            Reply::SingleBoards(compare_single_boards(&job, budget, &mut listen))
        }),
        Ask::NextRun { plan, most_cents, budget } => {
            let mut listen = |progress: &Progress<'_>| teller.hear(progress, false);
            next_store_run(&job, &plan, most_cents, budget, &mut listen).map(Reply::NextRun)
        }
    };
    (teller.tell)(write_reply(number, &reply.unwrap_or_else(Reply::Problem)));
    Ok(())
}

/// What the checker of the core, which knows nothing of the search, says to each certificate.
fn certificates(job: &Job, outcome: &Outcome) -> Vec<Checked> {
    let check = |it: &Certificate| match check_certificate(job, it) {
        Ok(()) => Checked::Confirmed,
        Err(CertificateFault::OnlyTheSearchKnows | CertificateFault::TooLargeToCheck) => {
            Checked::NotCheckable
        }
        Err(CertificateFault::Malformed | CertificateFault::NotProved) => Checked::Refuted,
    };
    outcome.certificates.iter().map(check).collect()
}

/// Passes news on.
struct Teller<'t> {
    number: u32,
    /// Cost, bound and parts left out, as told last.
    last: Option<(Option<i64>, i64, u32)>,
    /// Reports since then.
    quiet: u32,
    tell: &'t mut dyn FnMut(String),
}

impl Teller<'_> {
    fn hear(&mut self, progress: &Progress<'_>, with_plan: bool) -> ControlFlow<()> {
        let now = (progress.cost_cents, progress.bound_cents, progress.left_out);
        let better = progress.better.filter(|_| with_plan);
        self.quiet += 1;
        if better.is_some() || self.last != Some(now) || self.quiet >= SIGN_OF_LIFE {
            self.last = Some(now);
            self.quiet = 0;
            let news = News {
                work: progress.work,
                budget: progress.budget,
                cost_cents: progress.cost_cents,
                bound_cents: progress.bound_cents,
                left_out: progress.left_out,
                boards: progress.boards,
                better: better.cloned(),
            };
            (self.tell)(write_reply(self.number, &Reply::News(news)));
        }
        ControlFlow::Continue(())
    }
}
