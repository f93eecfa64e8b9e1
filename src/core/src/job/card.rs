//! The cautions of a whole job, for its shop card.

use super::{Job, PartSizes, Reckoned};
use crate::sheet::{Act, Caution};

/// The usual dangers of a job, each once: of its kept reckonings, of ripping when a width is set at
/// the fence, of small pieces, and of dust and noise wherever something is cut.
#[must_use]
pub fn cautions(job: &Job, reckoned: &Reckoned, parts: &[PartSizes]) -> Vec<Caution> {
    let sheets = job.kept().into_iter().filter_map(|(id, _)| reckoned.kept(id));
    let answers = sheets.filter_map(|sheet| sheet.answer.as_ref());
    let mut all: Vec<Caution> = answers.flat_map(|answer| answer.cautions.clone()).collect();
    if parts.iter().any(|part| part.width.is_ok() && part.quantity.is_ok()) {
        all.extend(Caution::of(&[Act::Rip]));
    }
    let sides = |part: &PartSizes| Some((part.width.clone().ok()?, part.length.clone().ok()?));
    if parts
        .iter()
        .filter_map(sides)
        .any(|(wide, long)| wide < Caution::NARROW || long < Caution::SHORT)
    {
        all.extend(Caution::of(&[Act::SawSmall]));
    }
    if !parts.is_empty() {
        all.extend(Caution::of(&[Act::Saw]));
    }
    crate::order::sort(&mut all);
    all.dedup();
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Item, Kept, Step, demo::demo, part_sizes};
    use crate::measure::Unit;
    use crate::sheet::Bench;

    fn of(job: &Job) -> Vec<Caution> {
        let reckoned = Reckoned::of(job, &Bench::default());
        cautions(job, &reckoned, &part_sizes(job, &reckoned))
    }

    #[test]
    fn each_danger_of_the_job_is_named_once() {
        let all = of(&demo());
        for wanted in [Caution::Ripping, Caution::SmallPiece, Caution::DustAndNoise] {
            assert_eq!(all.iter().filter(|it| **it == wanted).count(), 1, "{wanted:?}");
        }
        assert_eq!(of(&Job::new("empty", Unit::Inch)), []);
    }

    #[test]
    fn a_kept_reckoning_brings_its_own() {
        let mut job = Job::new("dowels", Unit::Inch);
        let kept = Kept {
            rank: 0,
            title: "rail".to_owned(),
            slug: "dowel".to_owned(),
            entries: Vec::new(),
            left: Vec::new(),
        };
        let step = Step::new("keep", vec![job.adding(0, Item::Kept(kept))]);
        job.make(&step).expect("nobody else is here");
        assert_eq!(of(&job), Caution::of(&[Act::Drill, Act::Saw]));
    }
}
