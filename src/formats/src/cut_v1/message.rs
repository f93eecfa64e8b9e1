//! What the page asks the planner, and what the planner answers.

use reckoner_core::cutting::{
    CutProblem, Job, NextRun, Outcome, Plan, RackOutcome, SingleBoard, Source,
};

use super::job::{JOB, read_job, write_job};
use super::kinds::{CENTS, MOST_CUT_LINES};
use super::outcome::{
    NEXT_RUN, OUTCOME, RACK, SINGLE, read_next_run, read_outcome, read_rack, read_single,
    write_next_run, write_outcome, write_rack, write_single,
};
use super::plan::{PLAN, SOURCE, read_plan, read_source, write_plan, write_source};
use super::problem::{PROBLEM, read_problem, write_problem};
use super::text::{CutTextProblem, VERSION, VERSIONS, read};
use crate::json::{Field, I64, Kind, U32, U64, Value, Writer, check, may, member, must, written};

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
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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

const QUESTION: &[Field] = &[
    must("version", VERSIONS, ""),
    must("number", U32, ""),
    must("job", Kind::Record(JOB), ""),
    must("ask", ASK, ""),
];

const ASK: Kind = Kind::Case(&[
    ("cheapest", Some(Kind::Record(BUDGET))),
    ("rack_only", Some(Kind::Record(BUDGET))),
    ("become", Some(SOURCE)),
    ("single_boards", Some(Kind::Record(BUDGET))),
    ("next_run", Some(Kind::Record(ASK_NEXT_RUN))),
]);

const BUDGET: &[Field] = &[must("budget", U64, "")];

const ASK_NEXT_RUN: &[Field] =
    &[must("plan", Kind::Record(PLAN), ""), must("most_cents", CENTS, ""), must("budget", U64, "")];

const REPLY: &[Field] =
    &[must("version", VERSIONS, ""), must("number", U32, ""), must("reply", BODY, "")];

const BODY: Kind = Kind::Case(&[
    ("news", Some(Kind::Record(NEWS))),
    ("cheapest", Some(Kind::Row(&[Kind::Record(OUTCOME), CHECKED]))),
    ("rack_only", Some(Kind::Record(RACK))),
    ("become", Some(Kind::List(&Kind::Record(PLAN), MOST_CUT_LINES))),
    ("single_boards", Some(Kind::List(&Kind::Record(SINGLE), MOST_CUT_LINES))),
    ("next_run", Some(Kind::Maybe(&Kind::Record(NEXT_RUN)))),
    ("problem", Some(PROBLEM)),
]);

const NEWS: &[Field] = &[
    must("work", U64, ""),
    must("budget", U64, ""),
    written("cost_cents", CENTS, ""),
    must("bound_cents", I64, ""),
    must("left_out", U32, ""),
    must("boards", U32, ""),
    may("better", Kind::Record(PLAN), ""),
];

const CHECKED: Kind = Kind::List(&Kind::Word(CHECKED_WORDS), MOST_CUT_LINES);
const CHECKED_WORDS: &[&str] = &["confirmed", "not_checkable", "refuted"];

/// Writes a question.
#[must_use]
pub fn write_question(question: &Question) -> String {
    let mut w = Writer::new(false);
    w.record(QUESTION, |out| {
        out.int(VERSION);
        out.int(question.number);
        out.value(Some(&question.job), write_job);
        out.value(Some(&question.ask), write_ask);
    });
    w.out
}

fn write_ask(w: &mut Writer, ask: &Ask) {
    let (name, budget) = match ask {
        Ask::Cheapest { budget } => ("cheapest", budget),
        Ask::RackOnly { budget } => ("rack_only", budget),
        Ask::SingleBoards { budget } => ("single_boards", budget),
        Ask::Become(source) => return w.case("become", |w| write_source(w, *source)),
        Ask::NextRun { plan, most_cents, budget } => {
            return w.case("next_run", |w| {
                w.record(ASK_NEXT_RUN, |out| {
                    out.value(Some(plan), write_plan);
                    out.int(*most_cents);
                    out.int(*budget);
                });
            });
        }
    };
    w.case(name, |w| w.record(BUDGET, |out| out.int(*budget)));
}

/// Reads a question.
///
/// # Errors
/// [`CutTextProblem`].
pub fn read_question(text: &str) -> Result<Question, CutTextProblem> {
    read(text, QUESTION, |it| {
        let number = it.int();
        let job = read_job(it.next()?);
        let ask = read_ask(it.next()?, &job)?;
        Some(Question { number, job, ask })
    })
}

fn read_ask(value: Value, job: &Job) -> Option<Ask> {
    let (name, value) = value.case()?;
    let value = value?;
    Some(match name {
        "cheapest" => Ask::Cheapest { budget: value.record().int() },
        "rack_only" => Ask::RackOnly { budget: value.record().int() },
        "single_boards" => Ask::SingleBoards { budget: value.record().int() },
        "become" => Ask::Become(read_source(value, job)),
        _ => {
            let mut it = value.record();
            let plan = read_plan(it.next()?, job);
            Ask::NextRun { plan, most_cents: it.int(), budget: it.int() }
        }
    })
}

/// Writes a reply to the question of that number.
#[must_use]
pub fn write_reply(number: u32, reply: &Reply) -> String {
    let mut w = Writer::new(false);
    w.record(REPLY, |out| {
        out.int(VERSION);
        out.int(number);
        out.value(Some(reply), write_body);
    });
    w.out
}

fn write_body(w: &mut Writer, reply: &Reply) {
    match reply {
        Reply::News(it) => w.case("news", |w| write_news(w, it)),
        Reply::Cheapest(outcome, checked) => w.case("cheapest", |w| {
            w.row(&mut [&mut |w| write_outcome(w, outcome), &mut |w| {
                w.list(checked, |w, checked| {
                    w.text(match checked {
                        Checked::Confirmed => "confirmed",
                        Checked::NotCheckable => "not_checkable",
                        Checked::Refuted => "refuted",
                    });
                });
            }]);
        }),
        Reply::RackOnly(outcome) => w.case("rack_only", |w| write_rack(w, outcome)),
        Reply::Become(plans) => w.case("become", |w| w.list(plans, write_plan)),
        Reply::SingleBoards(all) => w.case("single_boards", |w| w.list(all, write_single)),
        Reply::NextRun(run) => w.case("next_run", |w| match run {
            Some(run) => write_next_run(w, run),
            None => w.out.push_str("null"),
        }),
        Reply::Problem(problem) => w.case("problem", |w| write_problem(w, problem)),
    }
}

fn write_news(w: &mut Writer, it: &News) {
    w.record(NEWS, |out| {
        out.int(it.work);
        out.int(it.budget);
        out.maybe_int(it.cost_cents);
        out.int(it.bound_cents);
        out.int(it.left_out);
        out.int(it.boards);
        out.value(it.better.as_ref(), write_plan);
    });
}

/// Reads a reply about this job, with the number of its question.
///
/// # Errors
/// [`CutTextProblem`].
pub fn read_reply(text: &str, job: &Job) -> Result<(u32, Reply), CutTextProblem> {
    read(text, REPLY, |it| {
        let number = it.int();
        Some((number, read_body(it.next()?, job)?))
    })
}

fn read_body(value: Value, job: &Job) -> Option<Reply> {
    Some(match value.case()? {
        ("news", Some(value)) => {
            let mut it = value.record();
            Reply::News(News {
                work: it.int(),
                budget: it.int(),
                cost_cents: it.maybe_int(),
                bound_cents: it.int(),
                left_out: it.int(),
                boards: it.int(),
                better: it.next().map(|plan| read_plan(plan, job)),
            })
        }
        ("cheapest", Some(value)) => {
            let mut row = value.row();
            let outcome = read_outcome(row.next()?, job);
            let checked = row.next()?.list(|word| match word.word() {
                0 => Checked::Confirmed,
                1 => Checked::NotCheckable,
                _ => Checked::Refuted,
            });
            Reply::Cheapest(outcome, checked)
        }
        ("rack_only", Some(value)) => Reply::RackOnly(read_rack(value, job)),
        ("become", Some(value)) => Reply::Become(value.list(|plan| read_plan(plan, job))),
        ("single_boards", Some(value)) => {
            let all = value.list(|single| read_single(single, job));
            Reply::SingleBoards(all.into_iter().collect::<Option<_>>()?)
        }
        ("next_run", run) => Reply::NextRun(run.map(|run| read_next_run(run, job))),
        (_, problem) => Reply::Problem(read_problem(problem?)?),
    })
}

/// The number of the question that a reply is to, without reading the rest.
#[must_use]
pub fn number_of_reply(text: &str) -> Option<u32> {
    check(text).ok()?;
    member(text, "number")?.parse().ok()
}
