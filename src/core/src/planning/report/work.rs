//! How much setting up and sawing a plan is, and which of that is known to be the least at its price.

use crate::cutting::{Effort, Job, Plan, Ties};
use crate::job::cut_labels::{Labels, Money};
use crate::say;
use crate::sheet::Sentence;

/// How much work a plan is, in words: `3 settings of fence and stop, 9 cuts.` `ties` says what was proved of it; `None` for
/// a plan of which that is not known. `None` when it is no plan of that job.
#[must_use]
pub fn work(job: &Job, plan: &Plan, labels: &Labels, ties: Option<Ties>) -> Option<Sentence> {
    let Effort { settings, cuts } = plan.effort(job)?;
    let settings = match settings.len() {
        1 => "1 setting".to_owned(),
        many => format!("{many} settings"),
    };
    let cuts = match cuts {
        1 => "1 cut".to_owned(),
        many => format!("{many} cuts"),
    };
    let mut sentence = say![format!("{settings} of fence and stop, {cuts}.")];
    if let Some(ties) = ties {
        sentence.0.extend(proved(labels, ties).0);
    }
    Some(sentence)
}

/// What is proved of a plan's rank among those as cheap, and what is only the best that was found.
fn proved(labels: &Labels, ties: Ties) -> Sentence {
    let ranks = [
        ("the boards to cut", ties.fewest_boards),
        ("the settings", ties.fewest_settings),
        ("the cuts", ties.fewest_cuts),
        ("the longest offcut", ties.longest_offcut),
    ];
    // Each rank counts among those that are alike in all before it.
    let known = ranks.iter().take_while(|rank| rank.1).count();
    let (proved, found) = ranks.split_at_checked(known).unwrap_or((&ranks, &[]));
    let names = |ranks: &[(&'static str, bool)], between: &str| {
        ranks.iter().map(|rank| rank.0).collect::<Vec<_>>().join(between)
    };
    let as_cheap = match labels.money {
        Money::Cents => "No plan at this price",
        Money::Wood { .. } => "No plan with as little wood",
    };
    let mut sentence = Sentence::default();
    if !proved.is_empty() {
        let names = names(proved, ", then ");
        sentence.0.extend(say![format!(" {as_cheap} does better on {names}.")].0);
    }
    if !found.is_empty() {
        let names = names(found, ", ");
        sentence.0.extend(say![format!(" The best we found, not proved: {names}.")].0);
    }
    sentence
}
