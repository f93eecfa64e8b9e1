//! One board of a plan with all that is known of it, and how the report is written.

use crate::cutting::{CutBoard, Job, Source, StockView, Units};
use crate::job::cut_labels::{Label, Labels, SectionLabel};
use crate::measure::{Length, Tape};

/// How the report is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct How {
    /// The user's tape, for what is written into drawings.
    pub tape: Tape,
    /// The shortest offcut worth keeping.
    pub keep_from: Length,
}

/// One board of the plan with all that is known of it.
pub(super) struct Seen<'a> {
    pub(super) job: &'a Job,
    pub(super) labels: &'a Labels,
    pub(super) view: StockView<'a>,
    pub(super) cut: &'a CutBoard,
    pub(super) label: &'a Label,
    pub(super) section: &'a SectionLabel,
    pub(super) number: u32,
}

impl<'a> Seen<'a> {
    pub(super) fn of(
        job: &'a Job,
        labels: &'a Labels,
        cut: &'a CutBoard,
        number: u32,
    ) -> Option<Seen<'a>> {
        let (place, label) = match cut.source {
            Source::Board(at) => (at, labels.boards.get(at)?),
            Source::Scrap(at) => (job.boards.len().checked_add(at)?, labels.scraps.get(at)?),
        };
        let view = job.stock().nth(place)?;
        let section = labels.section(job, view.section)?;
        Some(Seen { job, labels, view, cut, label, section, number })
    }

    pub(super) fn length(&self, units: Units) -> Option<Length> {
        self.labels.length(units).ok()
    }

    pub(super) fn part_name(&self, part: usize) -> Option<&'a str> {
        self.labels.parts.get(part).map(|label| label.name.as_str())
    }
}
