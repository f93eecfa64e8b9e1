//! Whether the parts that stand in the job are still those that their reckoning makes.
//!
//! A size that a part takes from the answer moves with it. Which parts there are, which result each takes a size from and
//! which rod a dowel is cut from do not: a plank measured anew as narrower than the others makes five parts of one. What
//! is apart is told until the parts are made again, or until somebody says to leave it so: that is kept with the
//! reckoning, as one text for each difference.

use super::{Making, make_parts};
use crate::job::{Change, Item, ItemId, Job, Kept, Made, Reckoned, Step};
use crate::measure::limits::MAX_TEXT;
use crate::order::set_of;
use crate::sheet::Bench;

/// In what the parts of a reckoning that stand in the job are not those that it makes now.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Behind {
    /// What it makes and the job has not: `right leg`.
    pub missing: Vec<String>,
    /// Parts made before that it does not make any more.
    pub gone: Vec<ItemId>,
    /// Parts that take something from elsewhere in the answer now.
    pub elsewhere: Vec<ItemId>,
    /// Each of these differences as a text, the same as long as it is the same difference.
    differences: Vec<String>,
}

impl Behind {
    /// Whether somebody said to leave all of it so.
    #[must_use]
    pub fn is_left(&self, kept: &Kept) -> bool {
        self.differences.iter().all(|it| kept.left.contains(it))
    }

    fn of(job: &Job, making: &Making) -> Behind {
        let mut all = Behind { gone: making.left.clone(), ..Behind::default() };
        let what = |id: &ItemId| match job.item(*id) {
            Some(Item::Part(part)) => part.made.as_ref().map(|made| made.what.as_str()),
            _ => None,
        };
        let gone = making.left.iter().filter_map(what).map(|what| difference("no", what, &[]));
        all.differences.extend(gone);
        for it in &making.parts {
            let Some(Made { what, .. }) = &it.part.made else { continue };
            match it.id {
                None => {
                    all.differences.push(missing(what));
                    all.missing.push(what.clone());
                }
                Some(id) if !it.elsewhere.is_empty() => {
                    all.differences.push(difference("other", what, &it.elsewhere));
                    all.elsewhere.push(id);
                }
                Some(_) => {}
            }
        }
        all
    }
}

fn missing(what: &str) -> String {
    difference("new", what, &[])
}

fn difference(kind: &str, what: &str, more: &[String]) -> String {
    let all =
        format!("{kind} {what}{}", more.iter().map(|it| format!("; {it}")).collect::<String>());
    super::short(&all, MAX_TEXT)
}

/// The kept reckonings whose parts in the job are not those that they make now, whether somebody left them so or not. One
/// that no part was made of is none.
#[must_use]
pub fn behind(job: &Job, reckoned: &Reckoned, bench: &Bench) -> Vec<(ItemId, Behind)> {
    let made = job.parts().into_iter().filter_map(|(_, part)| Some(part.made.as_ref()?.kept));
    let all = set_of(made).into_iter().filter_map(|kept| {
        let found = Behind::of(job, &make_parts(job, reckoned, bench, kept)?);
        (!found.differences.is_empty()).then_some((kept, found))
    });
    all.collect()
}

/// The step by which all of it is left so; looked at again where `is_left` is no.
#[must_use]
pub fn leaving(job: &Job, id: ItemId, behind: &Behind, is_left: bool) -> Option<Step> {
    let Item::Kept(kept) = job.item(id)? else { return None };
    let left = if is_left { behind.differences.clone() } else { Vec::new() };
    let words = if is_left { "leave the pieces of" } else { "look again at the pieces of" };
    let change = job.replacing(id, Item::Kept(Kept { left, ..kept.clone() }));
    Some(Step::new(format!("{words} {}", kept.title), vec![change]))
}

/// The step, with what it makes apart left so: for one that says itself why a part stays as it is.
pub(in crate::job) fn left_with(job: &Job, reckoned: &Reckoned, bench: &Bench, step: Step) -> Step {
    let mut trial = job.clone();
    if trial.make(&step).is_err() {
        return step;
    }
    let before = behind(job, reckoned, bench);
    let mut step = step;
    for (id, now) in behind(&trial, &reckoned.after(&trial, bench), bench) {
        let is_told = before.iter().any(|(other, was)| {
            *other == id && matches!(job.item(id), Some(Item::Kept(kept)) if !was.is_left(kept))
        });
        let change = step.changes.iter_mut().find(|change| change.id == id);
        if let Some(Change { after: Some(Item::Kept(kept)), .. }) = change.filter(|_| !is_told) {
            kept.left = now.differences;
        }
    }
    step
}

/// The changes by which an item goes. A part that a reckoning makes is not wanted then, though it makes it.
#[must_use]
pub fn without(job: &Job, id: ItemId) -> Vec<Change> {
    let mut changes = vec![job.removing(id)];
    let made = match job.item(id) {
        Some(Item::Part(part)) => part.made.as_ref(),
        _ => None,
    };
    if let Some(made) = made
        && let Some(Item::Kept(kept)) = job.item(made.kept)
        && !kept.left.contains(&missing(&made.what))
    {
        let mut kept = kept.clone();
        kept.left.push(missing(&made.what));
        changes.push(job.replacing(made.kept, Item::Kept(kept)));
    }
    changes
}
