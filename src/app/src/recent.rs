//! What was used last, for the top of the list, each with its last answer.

use reckoner_core::calculators;

/// Most of them that are kept.
const MOST: usize = 3;

/// What can be used last: a calculator, or the cut planner's quick list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Used {
    /// Its name in an address.
    pub slug: &'static str,
    /// Its title.
    pub title: &'static str,
}

/// The cut planner's quick list, which is no calculator.
pub const CUT: Used = Used { slug: "cut", title: "Cut plan" };

impl Used {
    fn named(slug: &str) -> Option<Used> {
        let listed = calculators::listed(slug).map(|it| Used { slug: it.slug, title: it.title });
        listed.or_else(|| (slug == CUT.slug).then_some(CUT))
    }
}

/// What a calculator answered last, as the first page shows it: it is kept as text, since the first page is there
/// before the calculators are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastAnswer {
    /// What it is.
    pub label: String,
    /// What it came to.
    pub value: String,
    /// Whether it rests on an example of ours.
    pub is_ours: bool,
}

impl LastAnswer {
    /// As it is kept.
    #[must_use]
    pub fn written(&self) -> String {
        let hand = if self.is_ours { "pencil" } else { "ink" };
        format!("{hand}\n{}\n{}", self.label, self.value)
    }

    /// Reads what [`LastAnswer::written`] wrote.
    #[must_use]
    pub fn read(text: &str) -> Option<LastAnswer> {
        let mut lines = text.lines();
        let is_ours = lines.next()? == "pencil";
        let (label, value) = (lines.next()?.to_owned(), lines.next()?.to_owned());
        Some(LastAnswer { label, value, is_ours })
    }
}

/// The job that was opened last, as the first page shows it: kept as text, since the first page is there before the
/// job book is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewestJob {
    /// Its title.
    pub title: String,
    /// What comes next in it, and what wants looking at.
    pub stands: String,
}

impl NewestJob {
    /// As it is kept.
    #[must_use]
    pub fn written(&self) -> String {
        format!("{}\n{}", self.title, self.stands)
    }

    /// Reads what [`NewestJob::written`] wrote.
    #[must_use]
    pub fn read(text: &str) -> Option<NewestJob> {
        let mut lines = text.lines().map(str::to_owned);
        Some(NewestJob { title: lines.next()?, stands: lines.next()? })
    }
}

/// Reads slugs with commas between; what is unknown is dropped.
#[must_use]
pub fn read(text: &str) -> Vec<Used> {
    text.split(',').filter_map(Used::named).take(MOST).collect()
}

/// The same list with one put first.
#[must_use]
pub fn with_first(text: &str, slug: &str) -> String {
    let others = text.split(',').filter(|other| *other != slug && !other.is_empty());
    core::iter::once(slug).chain(others).take(MOST).collect::<Vec<_>>().join(",")
}

#[cfg(test)]
mod tests {
    use super::{LastAnswer, NewestJob};

    #[test]
    fn a_last_answer_reads_as_it_was_written_and_nothing_else_does() {
        for is_ours in [true, false] {
            let answer = LastAnswer { label: "Apart".into(), value: "7 7/8 in".into(), is_ours };
            assert_eq!(LastAnswer::read(&answer.written()), Some(answer));
        }
        for text in ["", "ink", "pencil\nApart"] {
            assert_eq!(LastAnswer::read(text), None, "{text:?}");
        }
    }

    #[test]
    fn the_newest_job_reads_as_it_was_written_and_nothing_else_does() {
        let job =
            NewestJob { title: "Potting bench".into(), stands: "Next: buy the boards".into() };
        assert_eq!(NewestJob::read(&job.written()), Some(job));
        assert_eq!(NewestJob::read("Potting bench"), None);
    }
}
