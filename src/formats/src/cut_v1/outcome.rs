//! What a search came to, as text.

use reckoner_core::cutting::{Certificate, Claim, Job, NextRun, Outcome, RackOutcome, SingleBoard};
use serde::{Deserialize, Serialize};

use super::plan::CutPlanV1;
use super::problem::ProblemV1;
use super::{CutTextProblem, MOST_CUT_LINES, cents, is_default, place, short};

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct OutcomeV1 {
    plan: CutPlanV1,
    bound_cents: i64,
    #[serde(default, skip_serializing_if = "is_default")]
    proved: bool,
    #[serde(default, skip_serializing_if = "is_default")]
    fewest_boards: bool,
    #[serde(default, skip_serializing_if = "is_default")]
    longest_offcut: bool,
    certificates: Vec<CertificateV1>,
    work: u64,
    #[serde(default, skip_serializing_if = "is_default")]
    stopped: bool,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
struct CertificateV1 {
    parts: Vec<usize>,
    bound_cents: i64,
    /// One for each part; without them only the search vouches for the bound.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    worths: Option<Vec<i64>>,
}

impl From<&Outcome> for OutcomeV1 {
    fn from(it: &Outcome) -> OutcomeV1 {
        let certificate = |it: &Certificate| CertificateV1 {
            parts: it.parts.clone(),
            bound_cents: it.bound_cents,
            worths: match &it.claim {
                Claim::Worth(worths) => Some(worths.clone()),
                Claim::SearchFinished => None,
            },
        };
        OutcomeV1 {
            plan: (&it.plan).into(),
            bound_cents: it.bound_cents,
            proved: it.proved,
            fewest_boards: it.fewest_boards,
            longest_offcut: it.longest_offcut,
            certificates: it.certificates.iter().map(certificate).collect(),
            work: it.work,
            stopped: it.stopped,
        }
    }
}

impl OutcomeV1 {
    pub(super) fn outcome(self, job: &Job) -> Result<Outcome, CutTextProblem> {
        short(&self.certificates, MOST_CUT_LINES, "proofs")?;
        let certificates = self.certificates.into_iter().map(|it| it.certificate(job));
        Ok(Outcome {
            certificates: certificates.collect::<Result<_, _>>()?,
            plan: self.plan.plan(job)?,
            bound_cents: cents(self.bound_cents)?,
            proved: self.proved,
            fewest_boards: self.fewest_boards,
            longest_offcut: self.longest_offcut,
            work: self.work,
            stopped: self.stopped,
        })
    }
}

impl CertificateV1 {
    fn certificate(self, job: &Job) -> Result<Certificate, CutTextProblem> {
        for at in &self.parts {
            place(*at, job.parts.len(), "part")?;
        }
        short(&self.parts, job.parts.len(), "parts in a proof")?;
        let claim = match self.worths {
            Some(worths) => {
                short(&worths, self.parts.len(), "numbers in a proof")?;
                Claim::Worth(worths)
            }
            None => Claim::SearchFinished,
        };
        Ok(Certificate { parts: self.parts, bound_cents: cents(self.bound_cents)?, claim })
    }
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct RackV1 {
    plan: CutPlanV1,
    proved: bool,
    work: u64,
    stopped: bool,
}

impl From<&RackOutcome> for RackV1 {
    fn from(it: &RackOutcome) -> RackV1 {
        RackV1 { plan: (&it.plan).into(), proved: it.proved, work: it.work, stopped: it.stopped }
    }
}

impl RackV1 {
    pub(super) fn outcome(self, job: &Job) -> Result<RackOutcome, CutTextProblem> {
        let RackV1 { plan, proved, work, stopped } = self;
        Ok(RackOutcome { plan: plan.plan(job)?, proved, work, stopped })
    }
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct SingleV1 {
    board: usize,
    outcome: Result<OutcomeV1, ProblemV1>,
}

impl From<&SingleBoard> for SingleV1 {
    fn from(it: &SingleBoard) -> SingleV1 {
        SingleV1 {
            board: it.board,
            outcome: it.outcome.as_ref().map(Into::into).map_err(Into::into),
        }
    }
}

impl SingleV1 {
    pub(super) fn single(self, job: &Job) -> Result<SingleBoard, CutTextProblem> {
        Ok(SingleBoard {
            board: place(self.board, job.boards.len(), "board")?,
            outcome: match self.outcome {
                Ok(outcome) => Ok(outcome.outcome(job)?),
                Err(problem) => Err(problem.problem()?),
            },
        })
    }
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct NextRunV1 {
    plan: CutPlanV1,
    bound_cents: i64,
}

impl From<&NextRun> for NextRunV1 {
    fn from(it: &NextRun) -> NextRunV1 {
        NextRunV1 { plan: (&it.plan).into(), bound_cents: it.bound_cents }
    }
}

impl NextRunV1 {
    pub(super) fn run(self, job: &Job) -> Result<NextRun, CutTextProblem> {
        Ok(NextRun { plan: self.plan.plan(job)?, bound_cents: cents(self.bound_cents)? })
    }
}
