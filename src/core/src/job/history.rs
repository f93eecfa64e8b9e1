//! [`History`]: the steps that can be taken back and made again, kept with the job.

use std::collections::VecDeque;
use std::sync::Arc;

use super::merge::Maker;
use super::{Conflict, Job, Step};

/// How many steps are kept, of those made and of those taken back.
pub const MOST_STEPS: usize = 200;

/// The steps made, newest last, and those taken back. Copies share them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct History {
    made: VecDeque<Arc<Step>>,
    undone: Vec<Arc<Step>>,
}

impl History {
    /// A history from stored steps, oldest first; only the newest are kept.
    #[must_use]
    pub fn from_steps(made: Vec<Step>, undone: Vec<Step>) -> History {
        let newest = |steps: Vec<Step>| {
            let surplus = steps.len().saturating_sub(MOST_STEPS);
            steps.into_iter().skip(surplus).map(Arc::new)
        };
        History { made: newest(made).collect(), undone: newest(undone).collect() }
    }

    /// The steps made, oldest first.
    pub fn made(&self) -> impl DoubleEndedIterator<Item = &Step> {
        self.made.iter().map(|step| &**step)
    }

    /// The steps taken back, the last one taken back last.
    pub fn undone(&self) -> impl DoubleEndedIterator<Item = &Step> {
        self.undone.iter().map(|step| &**step)
    }

    /// Makes a step, [rebased](Job::rebased) on the job as it is, and remembers it as it was made.
    /// What was taken back before can no longer be made again. A step that changes nothing is not
    /// remembered.
    ///
    /// # Errors
    ///
    /// [`Conflict`]; nothing is changed then.
    pub fn make(&mut self, job: &mut Job, step: Step) -> Result<(), Conflict> {
        let step = job.rebased(&step)?;
        if !step.is_empty() {
            job.make(&step)?;
            self.undone.clear();
            self.remember(step);
        }
        Ok(())
    }

    fn remember(&mut self, step: Step) {
        self.made.push_back(Arc::new(step));
        if self.made.len() > MOST_STEPS {
            self.made.pop_front();
        }
    }

    /// Takes the last step back. `false` when there is none.
    ///
    /// # Errors
    ///
    /// [`Conflict`] when the job is not as the step left it. The job is not changed then, and the step is forgotten: it
    /// would stand before all that were made earlier.
    pub fn undo(&mut self, job: &mut Job) -> Result<bool, Conflict> {
        let Some(step) = self.made.pop_back() else { return Ok(false) };
        let back = job.merged(&step.turned_round(), Maker::History)?;
        job.make(&back)?;
        self.undone.extend((!back.is_empty()).then(|| Arc::new(back.turned_round())));
        Ok(true)
    }

    /// Makes the last step taken back again. `false` when there is none.
    ///
    /// # Errors
    ///
    /// [`Conflict`] when the job is not as it was before the step. The job is not changed then, and the step is forgotten.
    pub fn redo(&mut self, job: &mut Job) -> Result<bool, Conflict> {
        let Some(step) = self.undone.pop() else { return Ok(false) };
        let step = job.merged(&step, Maker::History)?;
        job.make(&step)?;
        if !step.is_empty() {
            self.remember(step);
        }
        Ok(true)
    }
}
