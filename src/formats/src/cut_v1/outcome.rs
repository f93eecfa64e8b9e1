//! What a search came to, as text.

use reckoner_core::cutting::{Certificate, Claim, Job, NextRun, Outcome, RackOutcome, SingleBoard};

use super::backing::{read_ties, write_ties};
use super::kinds::{CENTS, MOST_CUT_LINES, PLACE, place};
use super::plan::{PLAN, read_plan, write_plan};
use super::problem::{PROBLEM, read_problem, write_problem};
use crate::json::{Field, I64, Kind, Record, U64, Value, Writer, may, must};

pub(super) const OUTCOME: &[Field] = &[
    must("plan", Kind::Record(PLAN), ""),
    must("bound_cents", CENTS, ""),
    may("proved", Kind::Flag, ""),
    may("fewest_boards", Kind::Flag, ""),
    may("fewest_settings", Kind::Flag, ""),
    may("fewest_cuts", Kind::Flag, ""),
    may("longest_offcut", Kind::Flag, ""),
    must("certificates", Kind::List(&Kind::Record(CERTIFICATE), MOST_CUT_LINES), ""),
    must("work", U64, ""),
    may("stopped", Kind::Flag, ""),
];

const CERTIFICATE: &[Field] = &[
    must("parts", Kind::List(&PLACE, MOST_CUT_LINES), ""),
    must("bound_cents", CENTS, ""),
    // One for each part; without them only the search vouches for the bound.
    may("worths", Kind::List(&I64, MOST_CUT_LINES), ""),
];

pub(super) const RACK: &[Field] = &[
    must("plan", Kind::Record(PLAN), ""),
    must("proved", Kind::Flag, ""),
    must("work", U64, ""),
    must("stopped", Kind::Flag, ""),
];

pub(super) const SINGLE: &[Field] = &[
    must("board", PLACE, ""),
    must("outcome", Kind::Case(&[("Ok", Some(Kind::Record(OUTCOME))), ("Err", Some(PROBLEM))]), ""),
];

pub(super) const NEXT_RUN: &[Field] =
    &[must("plan", Kind::Record(PLAN), ""), must("bound_cents", CENTS, "")];

pub(super) fn write_outcome(w: &mut Writer, it: &Outcome) {
    w.record(OUTCOME, |out| {
        out.value(Some(&it.plan), write_plan);
        out.int(it.bound_cents);
        out.flag(it.proved);
        write_ties(out, it.ties);
        out.list(&it.certificates, |w, it| {
            w.record(CERTIFICATE, |out| {
                out.list(&it.parts, |w, at| w.int(*at));
                out.int(it.bound_cents);
                let worths = match &it.claim {
                    Claim::Worth(worths) => Some(worths),
                    Claim::SearchFinished => None,
                };
                out.value(worths, |w, worths| w.list(worths, |w, worth| w.int(*worth)));
            });
        });
        out.int(it.work);
        out.flag(it.stopped);
    });
}

pub(super) fn read_outcome(value: Value, job: &Job) -> Outcome {
    let mut it = value.record();
    Outcome {
        plan: plan(&mut it, job),
        bound_cents: it.int(),
        proved: it.flag(),
        ties: read_ties(&mut it),
        certificates: it.list(|value| {
            let mut it = value.record();
            let parts = it.list(|at| place(at, job.parts.len(), "part"));
            let bound_cents = it.int();
            let claim = it.next().map_or(Claim::SearchFinished, |worths| {
                Claim::Worth(worths.list(|worth| worth.int()))
            });
            Certificate { parts, bound_cents, claim }
        }),
        work: it.int(),
        stopped: it.flag(),
    }
}

fn plan(it: &mut Record, job: &Job) -> reckoner_core::cutting::Plan {
    it.next().map(|value| read_plan(value, job)).unwrap_or_default()
}

pub(super) fn write_rack(w: &mut Writer, it: &RackOutcome) {
    w.record(RACK, |out| {
        out.value(Some(&it.plan), write_plan);
        out.flag(it.proved);
        out.int(it.work);
        out.flag(it.stopped);
    });
}

pub(super) fn read_rack(value: Value, job: &Job) -> RackOutcome {
    let mut it = value.record();
    RackOutcome { plan: plan(&mut it, job), proved: it.flag(), work: it.int(), stopped: it.flag() }
}

pub(super) fn write_single(w: &mut Writer, it: &SingleBoard) {
    w.record(SINGLE, |out| {
        out.int(it.board);
        out.value(Some(&it.outcome), |w, outcome| match outcome {
            Ok(outcome) => w.case("Ok", |w| write_outcome(w, outcome)),
            Err(problem) => w.case("Err", |w| write_problem(w, problem)),
        });
    });
}

pub(super) fn read_single(value: Value, job: &Job) -> Option<SingleBoard> {
    let mut it = value.record();
    let board = place(it.next()?, job.boards.len(), "board");
    let outcome = match it.next()?.case()? {
        ("Ok", Some(outcome)) => Ok(read_outcome(outcome, job)),
        (_, problem) => Err(read_problem(problem?)?),
    };
    Some(SingleBoard { board, outcome })
}

pub(super) fn write_next_run(w: &mut Writer, it: &NextRun) {
    w.record(NEXT_RUN, |out| {
        out.value(Some(&it.plan), write_plan);
        out.int(it.bound_cents);
    });
}

pub(super) fn read_next_run(value: Value, job: &Job) -> NextRun {
    let mut it = value.record();
    NextRun { plan: plan(&mut it, job), bound_cents: it.int() }
}
