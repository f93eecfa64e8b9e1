//! What the page asks the planner, and what the planner answers.

use reckoner_core::cutting::{
    CutProblem, Job, NextRun, Outcome, Plan, RackOutcome, SingleBoard, Source,
};
use serde::{Deserialize, Serialize};

use super::outcome::{NextRunV1, OutcomeV1, RackV1, SingleV1};
use super::plan::SourceV1;
use super::problem::ProblemV1;
use super::{
    CutJobV1, CutPlanV1, CutTextProblem, MOST_CUT_LINES, VERSION, cents, is_known, parsed, short,
    written,
};

/// What is asked about a job. A budget is in steps of the search.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ask {
    /// The plan that costs least.
    Cheapest {
        /// Most steps.
        budget: u64,
    },
    /// As many parts as the rack gives, nothing bought.
    RackOnly {
        /// Most steps.
        budget: u64,
    },
    /// What one board or scrap can become.
    Become(Source),
    /// What each board of the yard comes to when it is the only one bought.
    SingleBoards {
        /// Most steps for each.
        budget: u64,
    },
    /// The cheapest plan that buys other boards.
    NextRun {
        /// The plan whose boards are not wanted again.
        plan: Plan,
        /// It may cost no more than this.
        most_cents: i64,
        /// Most steps.
        budget: u64,
    },
}

/// A question of the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// Replies carry it back: a reply to an older question is dropped.
    pub number: u32,
    /// The job asked about.
    pub job: Job,
    /// What is asked.
    pub ask: Ask,
}

/// How far a search has come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct News {
    /// Steps done.
    pub work: u64,
    /// Steps allowed.
    pub budget: u64,
    /// The best plan's cost; `None` while there is no plan.
    pub cost_cents: Option<i64>,
    /// No plan costs less, as far as the search says.
    pub bound_cents: i64,
    /// Parts left out of the best plan.
    pub left_out: u32,
    /// Boards and scraps cut in the best plan.
    pub boards: usize,
    /// The best plan, only in the first news after it was found.
    pub better: Option<Plan>,
}

/// What the core's checker says to a certificate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Checked {
    /// It worked the bound out again.
    Confirmed,
    /// It cannot: only the search knows, or it would take too large a table.
    NotCheckable,
    /// The certificate does not prove its bound.
    Refuted,
}

/// What the planner answers. All but [`Reply::News`] end the question.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reply {
    /// It goes on.
    News(News),
    /// The cheapest plan found, and what the core's checker says to each of its certificates.
    Cheapest(Outcome, Vec<Checked>),
    /// What the rack gives.
    RackOnly(RackOutcome),
    /// What the board or scrap can become.
    Become(Vec<Plan>),
    /// For each board of the yard.
    SingleBoards(Vec<SingleBoard>),
    /// Another store run, if there is one that cheap.
    NextRun(Option<NextRun>),
    /// The job cannot be answered.
    Problem(CutProblem),
}

#[derive(Serialize, Deserialize)]
struct QuestionV1 {
    version: u32,
    number: u32,
    job: CutJobV1,
    ask: AskV1,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum AskV1 {
    Cheapest { budget: u64 },
    RackOnly { budget: u64 },
    Become(SourceV1),
    SingleBoards { budget: u64 },
    NextRun { plan: CutPlanV1, most_cents: i64, budget: u64 },
}

#[derive(Serialize, Deserialize)]
struct ReplyV1 {
    version: u32,
    number: u32,
    reply: BodyV1,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum BodyV1 {
    News {
        work: u64,
        budget: u64,
        cost_cents: Option<i64>,
        bound_cents: i64,
        left_out: u32,
        boards: usize,
        better: Option<CutPlanV1>,
    },
    Cheapest(OutcomeV1, Vec<Checked>),
    RackOnly(RackV1),
    Become(Vec<CutPlanV1>),
    SingleBoards(Vec<SingleV1>),
    NextRun(Option<NextRunV1>),
    Problem(ProblemV1),
}

/// Writes a question.
#[must_use]
pub fn write_question(question: &Question) -> String {
    let ask = match &question.ask {
        Ask::Cheapest { budget } => AskV1::Cheapest { budget: *budget },
        Ask::RackOnly { budget } => AskV1::RackOnly { budget: *budget },
        Ask::Become(source) => AskV1::Become((*source).into()),
        Ask::SingleBoards { budget } => AskV1::SingleBoards { budget: *budget },
        Ask::NextRun { plan, most_cents, budget } => {
            AskV1::NextRun { plan: plan.into(), most_cents: *most_cents, budget: *budget }
        }
    };
    let job = (&question.job).into();
    written(&QuestionV1 { version: VERSION, number: question.number, job, ask })
}

/// Reads a question.
///
/// # Errors
/// [`CutTextProblem`].
pub fn read_question(text: &str) -> Result<Question, CutTextProblem> {
    let QuestionV1 { version, number, job, ask } = parsed(text)?;
    is_known(version)?;
    let job = job.job()?;
    let ask = match ask {
        AskV1::Cheapest { budget } => Ask::Cheapest { budget },
        AskV1::RackOnly { budget } => Ask::RackOnly { budget },
        AskV1::Become(source) => Ask::Become(source.source(&job)?),
        AskV1::SingleBoards { budget } => Ask::SingleBoards { budget },
        AskV1::NextRun { plan, most_cents, budget } => {
            Ask::NextRun { plan: plan.plan(&job)?, most_cents: cents(most_cents)?, budget }
        }
    };
    Ok(Question { number, job, ask })
}

/// Writes a reply to the question of that number.
#[must_use]
pub fn write_reply(number: u32, reply: &Reply) -> String {
    let reply = match reply {
        Reply::News(it) => BodyV1::News {
            work: it.work,
            budget: it.budget,
            cost_cents: it.cost_cents,
            bound_cents: it.bound_cents,
            left_out: it.left_out,
            boards: it.boards,
            better: it.better.as_ref().map(Into::into),
        },
        Reply::Cheapest(outcome, checked) => BodyV1::Cheapest(outcome.into(), checked.clone()),
        Reply::RackOnly(outcome) => BodyV1::RackOnly(outcome.into()),
        Reply::Become(plans) => BodyV1::Become(plans.iter().map(Into::into).collect()),
        Reply::SingleBoards(all) => BodyV1::SingleBoards(all.iter().map(Into::into).collect()),
        Reply::NextRun(run) => BodyV1::NextRun(run.as_ref().map(Into::into)),
        Reply::Problem(problem) => BodyV1::Problem(problem.into()),
    };
    written(&ReplyV1 { version: VERSION, number, reply })
}

/// Reads a reply about this job, with the number of its question.
///
/// # Errors
/// [`CutTextProblem`].
pub fn read_reply(text: &str, job: &Job) -> Result<(u32, Reply), CutTextProblem> {
    let ReplyV1 { version, number, reply } = parsed(text)?;
    is_known(version)?;
    let reply = match reply {
        BodyV1::News { work, budget, cost_cents, bound_cents, left_out, boards, better } => {
            Reply::News(News {
                work,
                budget,
                cost_cents: cost_cents.map(cents).transpose()?,
                bound_cents,
                left_out,
                boards,
                better: better.map(|plan| plan.plan(job)).transpose()?,
            })
        }
        BodyV1::Cheapest(outcome, checked) => Reply::Cheapest(outcome.outcome(job)?, checked),
        BodyV1::RackOnly(outcome) => Reply::RackOnly(outcome.outcome(job)?),
        BodyV1::Become(plans) => {
            short(&plans, MOST_CUT_LINES, "plans")?;
            Reply::Become(plans.into_iter().map(|it| it.plan(job)).collect::<Result<_, _>>()?)
        }
        BodyV1::SingleBoards(all) => {
            short(&all, job.boards.len(), "boards")?;
            Reply::SingleBoards(all.into_iter().map(|it| it.single(job)).collect::<Result<_, _>>()?)
        }
        BodyV1::NextRun(run) => Reply::NextRun(run.map(|it| it.run(job)).transpose()?),
        BodyV1::Problem(problem) => Reply::Problem(problem.problem()?),
    };
    Ok((number, reply))
}

/// The number of the question that a reply is to, without reading the rest.
#[must_use]
pub fn number_of_reply(text: &str) -> Option<u32> {
    #[derive(Deserialize)]
    struct Numbered {
        number: u32,
    }
    parsed(text).ok().map(|it: Numbered| it.number)
}
