//! What of a plan, and of what a job costs by it, is an example of ours.

use super::quick_list::QUICK_LIST;
use super::since::kept_options;
use super::wanted::OPTIONS;
use crate::job::kinds;
use crate::job::{CutPlan, Item, Job, Reckoned, Step};
use crate::measure::text::NoNames;
use crate::sentence::counted;
use crate::sheet::{Assumed, Bench};

/// What a plan that is kept was made with and is ours: of its options, or of the quick list that it comes from.
#[must_use]
pub fn assumed_of(job: &Job, kept: &CutPlan, reckoned: &Reckoned, bench: &Bench) -> Assumed {
    let entries = kept.as_entries(job.unit);
    if kept.is_list {
        // It was written outside of the job, and uses no names.
        QUICK_LIST.sheet(&entries, bench, &NoNames).assumed
    } else {
        OPTIONS.sheet(&entries, bench, reckoned).assumed
    }
}

/// How many examples the plan in use was made with.
fn examples_of_plan(job: &Job, reckoned: &Reckoned, bench: &Bench) -> usize {
    let plan = job.plan_in_use().and_then(|id| job.cut_plan(id));
    plan.map_or(0, |(kept, _)| assumed_of(job, kept, reckoned, bench).fields().count())
}

/// How many examples of ours there still are, in the job and in its plan.
#[must_use]
pub fn examples_left(job: &Job, reckoned: &Reckoned, bench: &Bench) -> usize {
    let of_job = kinds::examples_left(job, reckoned);
    of_job.saturating_add(examples_of_plan(job, reckoned, bench))
}

/// What the money of a job still rests on that is ours, in one line; `None` where all of it is the person's. The one rule
/// for every place that tells what the plan in use costs.
#[must_use]
pub fn line_of_money(job: &Job, reckoned: &Reckoned, bench: &Bench) -> Option<String> {
    let of_plan = match examples_of_plan(job, reckoned, bench) {
        0 => None,
        many => {
            let many = u64::try_from(many).unwrap_or(u64::MAX);
            Some(format!("{} in the plan", counted(many, " example")))
        }
    };
    let all = [kinds::ours_line(job, reckoned), of_plan];
    let all: Vec<String> = all.into_iter().flatten().collect();
    (!all.is_empty()).then(|| all.join(". "))
}

/// The step that takes what the plan in use was made with as the person's own: with these texts, where they come to the
/// same options. `None` where they come to others, which want another plan, and where they stand there already.
#[must_use]
pub fn confirming_options(
    job: &Job,
    texts: &[(String, String)],
    reckoned: &Reckoned,
    bench: &Bench,
) -> Option<Step> {
    let id = job.find_cut_plan(false)?;
    let (kept, _) = job.cut_plan(id)?;
    let confirmed = CutPlan { entries: texts.to_vec(), ..kept.clone() };
    let options = |plan: &CutPlan| kept_options(job, plan, reckoned, bench);
    if confirmed == *kept || options(&confirmed)? != options(kept)? {
        return None;
    }
    let plan = job.replacing(id, Item::CutPlan(Box::new(confirmed)));
    // What is cut of it stays so: the step knows of the ticks, and leaves them as they are.
    let ticks = job.ticks_of(id);
    let ticks = ticks.map(|(id, ticks)| job.replacing(id, Item::CutTicks(ticks.clone())));
    Some(Step::new("confirm the options", core::iter::once(plan).chain(ticks).collect()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::demo::demo;
    use crate::measure::Unit;
    use crate::planning::demo::demo_in_work;
    use crate::to_buy::tests::planned;
    use crate::to_buy::to_buy;

    fn worked(job: &Job) -> (Reckoned, Bench) {
        let bench = Bench::default();
        (Reckoned::of(job, &bench), bench)
    }

    fn plan(job: &Job) -> &CutPlan {
        let plan = job.plan_in_use().and_then(|id| job.cut_plan(id));
        plan.expect("a plan in use").0
    }

    fn ids(job: &Job) -> Vec<&'static str> {
        let (reckoned, bench) = worked(job);
        assumed_of(job, plan(job), &reckoned, &bench).fields().map(|it| it.id).collect()
    }

    /// The texts of a plan's options with all that is ours as it stands.
    fn confirmed(job: &Job) -> Vec<(String, String)> {
        let (reckoned, bench) = worked(job);
        let assumed = assumed_of(job, plan(job), &reckoned, &bench);
        let texts = assumed.fields().map(|it| (it.id.to_owned(), it.start_text(&bench, job.unit)));
        plan(job).entries.iter().cloned().chain(texts).collect()
    }

    fn confirming(job: &Job, texts: &[(String, String)]) -> Option<Step> {
        let (reckoned, bench) = worked(job);
        confirming_options(job, texts, &reckoned, &bench)
    }

    fn line(job: &Job) -> Option<String> {
        let (reckoned, bench) = worked(job);
        assert_eq!(to_buy(job, &reckoned, &bench).ours, line_of_money(job, &reckoned, &bench));
        line_of_money(job, &reckoned, &bench)
    }

    /// What leaves a thing out is none: no spare, nothing off the faces, no crosscut first.
    #[test]
    fn a_plan_of_a_fresh_form_rests_on_its_examples_until_they_are_confirmed() {
        let mut job = planned();
        let all =
            ["kerf", "reach", "end_trim", "may_rip", "may_resaw", "edge_cleanup", "keep_from"];
        assert_eq!(ids(&job), all);
        assert_eq!(line(&job).as_deref(), Some("7 examples in the plan"));
        let (reckoned, bench) = worked(&job);
        assert_eq!(examples_left(&job, &reckoned, &bench), 7);
        // Another kerf is another plan.
        let mut other = confirmed(&job);
        other.iter_mut().filter(|(id, _)| id == "kerf").for_each(|(_, text)| *text = "1/16".into());
        assert_eq!(confirming(&job, &other), None);
        // One of them, and then the others, with a board that is bought by then.
        let kerf: Vec<_> = confirmed(&job).into_iter().filter(|(id, _)| id == "kerf").collect();
        job.make(&confirming(&job, &kerf).expect("the same kerf")).expect("nobody else is here");
        assert_eq!(ids(&job), all[1..]);
        assert_eq!(confirming(&job, &kerf), None, "it stands there");
        let buying = job.plan_in_use().and_then(|id| job.buying(id, None)).expect("a board to buy");
        job.make(&buying).expect("nobody else is here");
        let step = confirming(&job, &confirmed(&job)).expect("the same options");
        job.make(&step).expect("what is bought stays bought");
        assert_eq!((line(&job), ids(&job)), (None, Vec::new()));
        let states = job.cut_plan(job.plan_in_use().expect("a plan")).expect("the same").1;
        assert!(states.iter().all(|it| *it != crate::job::BoardState::ToCut), "{states:?}");
    }

    /// Its plan was made of lengths, boards and prices that nobody typed.
    #[test]
    fn a_plan_of_our_own_list_rests_on_the_list() {
        let (mut kept, mut job) = (plan(&planned()).clone(), Job::new("Cut list", Unit::Inch));
        kept.is_list = true;
        job.make(&job.keeping_plan(kept)).expect("fresh");
        let all = ids(&job);
        assert!(["parts", "boards", "scraps", "kerf"].iter().all(|id| all.contains(id)), "{all:?}");
        assert!(!all.contains(&"spare_each"), "{all:?}");
        assert_eq!(confirming(&job, &confirmed(&job)), None, "the options of the page are no list");
    }

    #[test]
    fn the_demo_is_in_ink() {
        assert_eq!((line(&demo()), line(&demo_in_work().0)), (None, None));
    }
}
