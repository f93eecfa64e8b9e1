//! [`OnOurs`]: what in a job rests on an example of ours.

use std::collections::BTreeSet;

use super::{ItemId, Job, MeasureState, Part, Reckoned};

/// Every size, kept reckoning and part that rests on an example of ours, and those examples. What was measured on the
/// real part rests on none.
#[derive(Clone, Debug, Default)]
pub struct OnOurs(BTreeSet<ItemId>);

impl OnOurs {
    /// Of a job as it was worked out.
    #[must_use]
    pub fn of(job: &Job, reckoned: &Reckoned) -> OnOurs {
        let is_measured = |id: ItemId| reckoned.measure(id).is_some_and(MeasureState::is_as_cut);
        let sizes = job.measures().into_iter().filter(|(_, it)| it.is_ours).map(|(id, _)| id);
        let sizes = sizes.filter(|id| !is_measured(*id));
        let is_kept = |id: &ItemId| reckoned.kept(*id).is_some_and(|it| !it.assumed.is_empty());
        let kept = job.kept().into_iter().map(|(id, _)| id).filter(is_kept);
        let mut all = reckoned.with_all_needing(sizes.chain(kept));
        all.retain(|id| !is_measured(*id));
        OnOurs(all)
    }

    /// Whether an item is one, or rests on one.
    #[must_use]
    pub fn has(&self, id: ItemId) -> bool {
        self.0.contains(&id)
    }

    /// Whether a size written in the job rests on one.
    #[must_use]
    pub fn has_size(&self, reckoned: &Reckoned, text: &str) -> bool {
        !reckoned.used_in(text).is_disjoint(&self.0)
    }

    /// Whether one of the sizes of a part rests on one. How many there are of it is no size.
    #[must_use]
    pub fn has_sizes_of(&self, reckoned: &Reckoned, id: ItemId, part: &Part) -> bool {
        let sizes = [&part.thickness, &part.width, &part.length];
        self.has(id) && sizes.into_iter().any(|text| self.has_size(reckoned, text))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::make_parts::make_parts;
    use crate::job::{Item, Kept, Measure, MeasureKind, Step, Written};
    use crate::measure::Unit;
    use crate::sheet::Bench;

    fn add(job: &mut Job, item: Item) -> ItemId {
        let change = job.adding(0, item);
        let id = change.id;
        job.make(&Step::new("", vec![change])).expect("fresh");
        id
    }

    fn size(job: &mut Job, name: &str, text: &str, is_ours: bool) -> ItemId {
        let written = Written::Formula(text.to_owned());
        add(
            job,
            Item::Measure(Measure { is_ours, ..Measure::new(name, MeasureKind::Length, written) }),
        )
    }

    fn part(job: &mut Job, name: &str, quantity: &str, length: &str) -> ItemId {
        add(job, Item::Part(Part::new(name, quantity, ["1", "3", length])))
    }

    fn put(job: &mut Job, id: ItemId, new: Item) {
        job.make(&Step::new("", vec![job.replacing(id, new)])).expect("nobody else is here");
    }

    fn parts_on_ours(job: &Job) -> Vec<bool> {
        let reckoned = Reckoned::of(job, &Bench::default());
        let on_ours = OnOurs::of(job, &reckoned);
        let parts = job.parts().into_iter();
        parts.map(|(id, part)| on_ours.has_sizes_of(&reckoned, id, part)).collect()
    }

    #[test]
    fn a_piece_is_in_pencil_while_its_size_rests_on_one_of_ours() {
        let mut job = Job::new("", Unit::Inch);
        let span = size(&mut job, "span", "20", true);
        let deep = size(&mut job, "deep", "span - 2", false);
        part(&mut job, "rail", "2", "2 × deep");
        part(&mut job, "leg", "2", "33 1/2");
        assert_eq!(parts_on_ours(&job), [true, false]);
        let on_ours = OnOurs::of(&job, &Reckoned::of(&job, &Bench::default()));
        assert!(on_ours.has(span) && on_ours.has(deep), "a size that needs one of ours");
        let confirmed = job.item(span).and_then(Item::confirmed).expect("ours");
        put(&mut job, span, confirmed);
        assert_eq!(parts_on_ours(&job), [false, false]);
    }

    /// A frame that was kept as it comes is all examples: so are the sizes that are linked to it and the pieces made of it,
    /// until the last of its examples is the person's.
    #[test]
    fn pieces_of_a_reckoning_that_rests_on_examples_are_in_pencil() {
        let bench = Bench::default();
        let mut job = Job::new("", Unit::Inch);
        let frame = Kept {
            rank: 0,
            title: "front".to_owned(),
            slug: "frame".to_owned(),
            entries: Vec::new(),
            left: Vec::new(),
        };
        let id = add(&mut job, Item::Kept(frame.clone()));
        let making = make_parts(&job, &Reckoned::of(&job, &bench), &bench, id).expect("a rail");
        job.make(&making.step.expect("not there yet")).expect("nobody else is here");
        let made = parts_on_ours(&job);
        assert!(!made.is_empty() && made.iter().all(|it| *it), "{made:?}");
        let reckoned = Reckoned::of(&job, &bench);
        let on_ours = OnOurs::of(&job, &reckoned);
        assert!(job.measures().iter().all(|(id, _)| on_ours.has(*id)), "its linked sizes");
        let assumed = &reckoned.kept(id).expect("known").assumed;
        let texts = assumed.fields().map(|it| (it.id.to_owned(), it.start_text(&bench, job.unit)));
        let entries = texts.collect();
        put(&mut job, id, Item::Kept(Kept { entries, ..frame }));
        assert!(!parts_on_ours(&job).contains(&true));
    }

    /// What the tape said of a size holds, whatever that size was planned from, and however many are wanted.
    #[test]
    fn what_was_measured_rests_on_nothing_of_ours() {
        let mut job = Job::new("", Unit::Inch);
        let span = size(&mut job, "span", "20", true);
        let deep = size(&mut job, "deep", "span - 2", false);
        part(&mut job, "rail", "2 × span / span", "deep");
        assert_eq!(parts_on_ours(&job), [true]);
        let Some(Item::Measure(measure)) = job.item(deep).cloned() else { panic!("a size") };
        put(&mut job, deep, Item::Measure(Measure { as_cut: Some("18".to_owned()), ..measure }));
        assert_eq!(parts_on_ours(&job), [false]);
        let on_ours = OnOurs::of(&job, &Reckoned::of(&job, &Bench::default()));
        assert!(on_ours.has(span) && !on_ours.has(deep));
        // What cannot be read is not what the tape says.
        let Some(Item::Measure(measure)) = job.item(span).cloned() else { panic!("a size") };
        put(&mut job, span, Item::Measure(Measure { as_cut: Some("?".to_owned()), ..measure }));
        assert!(OnOurs::of(&job, &Reckoned::of(&job, &Bench::default())).has(span));
    }
}
