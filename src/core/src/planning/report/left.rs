//! [`Left`]: what a plan leaves over that is worth keeping.

use super::offcuts;
use super::seen::{How, Seen};
use crate::cutting::{Job, Layout, Plan};
use crate::job::cut_labels::Labels;
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// What is worth keeping of a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Left {
    /// All of it, end to end; it says nothing where boards are ripped.
    pub together: Length,
    /// The longest piece; zero where there is none.
    pub longest: Length,
    /// Boards are ripped: strips of several widths make no length together.
    pub is_ripped: bool,
}

impl Left {
    /// That of a plan; `None` when it is not a plan of that job.
    #[must_use]
    pub fn of(job: &Job, labels: &Labels, plan: &Plan, how: How) -> Option<Left> {
        let mut left = Left { together: Length::ZERO, longest: Length::ZERO, is_ripped: false };
        for (number, cut) in (1..).zip(&plan.boards) {
            left.is_ripped |= !matches!(cut.layout, Layout::Crosscut(_));
            let seen = Seen::of(job, labels, cut, number)?;
            for keep in offcuts::of_board(&seen, plan, how)? {
                left.together = (left.together + (keep.length * keep.count).ok()?).ok()?;
                left.longest = left.longest.max(keep.length);
            }
        }
        Some(left)
    }

    /// `Leaves 45 1/4 in to keep, the longest piece 22 5/8 in.`
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        let Left { together, longest, is_ripped } = *self;
        match (longest.is_zero(), is_ripped || together == longest) {
            (true, _) => say!["Leaves nothing worth keeping."],
            (false, true) if !is_ripped => say!["Leaves one piece to keep, ", longest, "."],
            (false, true) => say!["The longest piece left over is ", longest, "."],
            (false, false) => {
                say!["Leaves ", together, " to keep, the longest piece ", longest, "."]
            }
        }
    }
}
