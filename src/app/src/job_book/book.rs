//! [`Book`]: a job with its history, and what an edit does to it.

use core::fmt;

use reckoner_core::job::{Conflict, History, Job, Step};
use reckoner_formats::{
    NotKept, OpenProblem, SetAside, check_job, open_job, read_history, write_history, write_job,
};

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

/// Why an edit cannot be done. `Display` is the sentence for the user.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EditProblem {
    /// Somebody else changed the same thing, or there is no room for more of it.
    Conflict(Conflict),
    /// The job could not be opened again.
    NotKept(NotKept),
    /// The last step cannot be taken back.
    NotUndone(Conflict),
    /// The step taken back last cannot be made again.
    NotRedone(Conflict),
}

impl fmt::Display for EditProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            EditProblem::Conflict(conflict) => conflict.fmt(f),
            EditProblem::NotKept(problem) => problem.fmt(f),
            EditProblem::NotUndone(conflict) => {
                write!(f, "{conflict} Undo goes on with the step before it.")
            }
            EditProblem::NotRedone(conflict) => {
                write!(f, "{conflict} Redo goes on with the step after it.")
            }
        }
    }
}

impl From<Conflict> for EditProblem {
    fn from(conflict: Conflict) -> EditProblem {
        EditProblem::Conflict(conflict)
    }
}

impl From<NotKept> for EditProblem {
    fn from(problem: NotKept) -> EditProblem {
        EditProblem::NotKept(problem)
    }
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

    /// Does an edit; where it cannot be done nothing is changed. A step that cannot be taken back or made again is
    /// forgotten, and told: nothing else is changed then.
    ///
    /// # Errors
    ///
    /// [`EditProblem`], naming what somebody else changed in between, or what would not open again.
    pub fn edit(&mut self, edit: &Edit) -> Result<Option<EditProblem>, EditProblem> {
        let Book { mut job, mut history } = self.clone();
        let mut forgotten = None;
        let step = match edit {
            Edit::Make(step) => {
                history.make(&mut job, step.clone())?;
                history.made().next_back()
            }
            Edit::Undo => {
                forgotten = history.undo(&mut job).err().map(EditProblem::NotUndone);
                history.undone().next_back()
            }
            Edit::Redo => {
                forgotten = history.redo(&mut job).err().map(EditProblem::NotRedone);
                history.made().next_back()
            }
        };
        let changes = step.into_iter().flat_map(|step| &step.changes);
        check_job(&job, &changes.map(|change| change.id).collect::<Vec<_>>())?;
        *self = Book { job, history };
        Ok(forgotten)
    }

    /// The label of the step that undo takes back.
    #[must_use]
    pub fn last_step(&self) -> Option<&str> {
        self.history.made().next_back().map(|step| step.label.as_str())
    }

    /// The label of the step that redo makes again.
    #[must_use]
    pub fn next_step(&self) -> Option<&str> {
        self.history.undone().next_back().map(|step| step.label.as_str())
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

#[cfg(test)]
mod tests {
    use reckoner_core::measure::Unit;

    use super::*;

    /// As where the record came without its history, or with that of another.
    #[test]
    fn a_step_that_cannot_be_taken_back_is_told_and_stands_in_the_way_of_none() {
        let rename = |job: &Job, title: &str| {
            let title = Some((job.title.clone(), title.to_owned()));
            Edit::Make(Step { title, ..Step::new("rename the job", Vec::new()) })
        };
        let mut book = Book::new(Job::new("Bench", Unit::Inch));
        book.edit(&rename(&book.job, "Table")).expect("nobody else is here");
        book.edit(&rename(&book.job, "Shelf")).expect("nobody else is here");
        book.job.title = "Stool".to_owned();
        let problem = book.edit(&Edit::Undo).expect("told").expect("it was renamed since");
        assert_eq!(
            problem.to_string(),
            "Changed elsewhere in the meantime: the title. Look at it, then change it again. Undo goes on with the step before it."
        );
        assert_eq!((book.job.title.as_str(), book.history.made().count()), ("Stool", 1));
        // That step left another title, too, so it goes the same way, and the list is free.
        assert!(book.edit(&Edit::Undo).expect("told").is_some());
        book.edit(&rename(&book.job, "Chair")).expect("nobody else is here");
        assert_eq!(book.edit(&Edit::Undo), Ok(None));
        assert_eq!(book.job.title, "Stool");
    }
}
