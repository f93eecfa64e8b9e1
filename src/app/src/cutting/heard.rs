//! What the planner answers, checked before anybody sees it.
//!
//! The planner is a program of its own. The core's checker goes over every plan that comes back; one that breaks a rule
//! is refused, whatever the planner says about it.

use reckoner_core::cutting::{CheckOptions, Job, Outcome, Plan, check_plan};
use reckoner_formats::{Checked, News, Reply};

/// What is said in place of a plan that breaks a rule.
const BAD_PLAN: &str = "The planner gave a plan that breaks a rule of cutting, so it is not shown. This is a fault of the app.";
/// What is said in place of a bound that is not true.
const BAD_PROOF: &str = "The planner gave a proof that does not hold, so its plan is not shown. This is a fault of the app.";

/// News with what is newer: a plan is not lost when the next news has none.
#[must_use]
pub fn joined(old: Option<News>, new: News) -> News {
    let better = new.better.or_else(|| old.and_then(|old| old.better));
    News { better, ..new }
}

/// The reply, if every plan in it keeps the rules and every bound is what its certificates prove.
///
/// # Errors
/// The sentence to show in its place.
pub fn sound(job: &Job, reply: Reply) -> Result<Reply, String> {
    match &reply {
        Reply::News(news) => {
            if let Some(plan) = &news.better {
                let agrees = news.cost_cents == Some(plan.cost_cents);
                plan_is_sound(job, plan, !plan.left_out.is_empty())?;
                if !agrees {
                    return Err(BAD_PLAN.to_owned());
                }
            }
        }
        Reply::Cheapest(outcome, checked) => {
            outcome_is_sound(job, outcome)?;
            let is_checked = checked.len() == outcome.certificates.len()
                && checked.iter().all(|it| *it != Checked::Refuted);
            if !is_checked {
                return Err(BAD_PROOF.to_owned());
            }
        }
        Reply::RackOnly(outcome) => plan_is_sound(job, &outcome.plan, true)?,
        Reply::Become(plans) => {
            for plan in plans {
                plan_is_sound(job, plan, true)?;
            }
        }
        Reply::SingleBoards(all) => {
            for single in all {
                if let Ok(outcome) = &single.outcome {
                    outcome_is_sound(job, outcome)?;
                }
            }
        }
        Reply::NextRun(run) => {
            if let Some(run) = run {
                plan_is_sound(job, &run.plan, false)?;
            }
        }
        Reply::Problem(_) => {}
    }
    Ok(reply)
}

fn plan_is_sound(job: &Job, plan: &Plan, may_leave_out: bool) -> Result<(), String> {
    check_plan(job, plan, CheckOptions { may_leave_out }).map_err(|_| BAD_PLAN.to_owned())
}

/// The plan keeps the rules, and the bound is no more than its certificates say together.
fn outcome_is_sound(job: &Job, outcome: &Outcome) -> Result<(), String> {
    plan_is_sound(job, &outcome.plan, false)?;
    let cost = outcome.plan.cost_cents;
    let proved =
        outcome.certificates.iter().try_fold(0_i64, |sum, it| sum.checked_add(it.bound_cents));
    let agrees = outcome.bound_cents <= cost && outcome.proved == (outcome.bound_cents == cost);
    if agrees && proved.is_some_and(|proved| outcome.bound_cents <= proved) {
        Ok(())
    } else {
        Err(BAD_PROOF.to_owned())
    }
}
