//! [`Book`]: a job with its history, and what an edit does to it.

use reckoner_core::job::{Conflict, History, Job, Step};
use reckoner_formats::{OpenProblem, SetAside, open_job, read_history, write_history, write_job};

/// A job and the steps that can be taken back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Book {
    /// The job.
    pub job: Job,
    /// Its steps.
    pub history: History,
}

/// What can be done to a book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// Make a step.
    Make(Step),
    /// Take the last step back.
    Undo,
    /// Make the last step taken back again.
    Redo,
}

/// A book as the database keeps it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stored {
    /// The title, for the list of jobs.
    pub title: String,
    /// The job file.
    pub job: String,
    /// The steps.
    pub history: String,
}

impl Book {
    /// A fresh book of a job.
    #[must_use]
    pub fn new(job: Job) -> Book {
        Book { job, history: History::default() }
    }

    /// Does an edit; on a conflict nothing is changed.
    ///
    /// # Errors
    ///
    /// [`Conflict`], naming what somebody else changed in between.
    pub fn edit(&mut self, edit: &Edit) -> Result<(), Conflict> {
        match edit {
            Edit::Make(step) => self.history.make(&mut self.job, step.clone()),
            Edit::Undo => self.history.undo(&mut self.job).map(drop),
            Edit::Redo => self.history.redo(&mut self.job).map(drop),
        }
    }

    /// The label of the step that undo takes back.
    #[must_use]
    pub fn last_step(&self) -> Option<&str> {
        self.history.made().last().map(|step| step.label.as_str())
    }

    /// The label of the step that redo makes again.
    #[must_use]
    pub fn next_step(&self) -> Option<&str> {
        self.history.undone().last().map(|step| step.label.as_str())
    }

    /// As the database keeps it.
    #[must_use]
    pub fn stored(&self) -> Stored {
        Stored {
            title: self.job.title.clone(),
            job: write_job(&self.job),
            history: write_history(&self.history),
        }
    }

    /// From the database, with what is damaged set aside.
    ///
    /// # Errors
    ///
    /// [`OpenProblem`] when nothing of it can be opened.
    pub fn open(stored: &Stored) -> Result<(Book, Vec<SetAside>), OpenProblem> {
        let opened = open_job(&stored.job)?;
        let book = Book { job: opened.job, history: read_history(&stored.history) };
        Ok((book, opened.set_aside))
    }
}
