//! What if the yard has none of a length: the same job without it, and what its plan changes. Money and lengths are exact.

use super::left::Left;
use super::money::proof;
use super::purchases::bought;
use super::seen::How;
use crate::cutting::{Job, Plan};
use crate::job::cut_labels::{Labels, Money};
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// What changes when the yard has none of a length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// How much dearer the other plan is, in cents of the cutting job; less than zero where it is cheaper.
    pub dearer_cents: i64,
    /// How many boards more it buys; less than zero where it buys fewer.
    pub more_boards: i64,
    /// What it leaves over.
    pub left_over: LeftOver,
    /// `Without the 2x4 of 144 in it costs 3.20 more, with 1 board more and 14 in more left over to keep.`
    pub sentence: Sentence,
}

/// What one plan leaves over beside another, of what is worth keeping.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LeftOver {
    /// Nothing is ripped: so much more length in all; less than zero where it is less.
    More(Length),
    /// Strips of several widths make no length together: the longest piece of the one plan and of the other, zero where
    /// there is none.
    Longest {
        /// Of the plan that stood.
        was: Length,
        /// Of the plan without that length.
        is: Length,
    },
}

/// The boards that the yard sells in the section and length of this one, by their places in the job, itself among them.
#[must_use]
pub fn of_that_length(job: &Job, board: usize) -> Vec<usize> {
    let Some(of) = job.boards.get(board) else { return Vec::new() };
    let alike = job.boards.iter().enumerate();
    let alike = alike.filter(|(_, it)| it.section == of.section && it.length == of.length);
    alike.map(|(at, _)| at).collect()
}

/// The job where the yard has none of the section and length of this board. All places in its lists stay as they are.
#[must_use]
pub fn without(job: &Job, board: usize) -> Job {
    let mut job = job.clone();
    for at in of_that_length(&job, board) {
        if let Some(board) = job.boards.get_mut(at) {
            board.limit = Some(0);
        }
    }
    job
}

/// `Without the 2x4 of 144 in `. `None` when there is no such board.
#[must_use]
pub fn without_words(job: &Job, labels: &Labels, board: usize) -> Option<Sentence> {
    let board = job.boards.get(board)?;
    let name = labels.section(job, &board.section)?.name.clone();
    Some(say!["Without the ", name, " of ", labels.length(board.length).ok()?, " "])
}

/// The plan made without the length of a board, against the plan that stood. `None` when they are no plans of that job.
#[must_use]
pub fn difference(
    job: &Job,
    labels: &Labels,
    board: usize,
    (stood, other): (&Plan, &Plan),
    how: How,
) -> Option<Difference> {
    let dearer_cents = other.cost_cents.checked_sub(stood.cost_cents)?;
    let more_boards = i64::from(bought(other)) - i64::from(bought(stood));
    let (was, is) = (Left::of(job, labels, stood, how)?, Left::of(job, labels, other, how)?);
    let left_over = if was.is_ripped || is.is_ripped {
        LeftOver::Longest { was: was.longest, is: is.longest }
    } else {
        LeftOver::More((is.together - was.together).ok()?)
    };
    let mut sentence = without_words(job, labels, board)?;
    sentence.0.extend(say![money(labels, dearer_cents), ", with ", boards(more_boards)].0);
    sentence.0.extend(left_over.sentence().0);
    Some(Difference { dearer_cents, more_boards, left_over, sentence })
}

impl LeftOver {
    fn sentence(&self) -> Sentence {
        match self {
            LeftOver::More(more) if more.is_positive() => {
                say![" and ", *more, " more left over to keep."]
            }
            LeftOver::More(more) if more.is_negative() => {
                say![" and ", more.abs(), " less left over to keep."]
            }
            LeftOver::More(_) => say![" and as much left over to keep."],
            LeftOver::Longest { is, .. } if is.is_zero() => say![" and nothing left over to keep."],
            LeftOver::Longest { was, is } if was == is => {
                say![". The longest piece left over is ", *is, " as before."]
            }
            LeftOver::Longest { was, is } if was.is_zero() => {
                say![". The longest piece left over is ", *is, "."]
            }
            LeftOver::Longest { was, is } => {
                say![". The longest piece left over is ", *is, ", not ", *was, "."]
            }
        }
    }
}

/// `it costs 3.20 more`, or where length stands for money `it takes 2 ft more wood`.
fn money(labels: &Labels, dearer_cents: i64) -> String {
    let by = proof(labels, dearer_cents.saturating_abs(), 0, &[]).cost;
    let (does, wood, same) = match labels.money {
        Money::Cents => ("it costs", "", "the same"),
        Money::Wood { .. } => ("it takes", " wood", "as much wood"),
    };
    match dearer_cents {
        0 => format!("{does} {same}"),
        1.. => format!("{does} {by} more{wood}"),
        _ => format!("{does} {by} less{wood}"),
    }
}

fn boards(more: i64) -> String {
    match more {
        0 => "as many boards".to_owned(),
        1 => "1 board more".to_owned(),
        -1 => "1 board fewer".to_owned(),
        2.. => format!("{more} boards more"),
        _ => format!("{} boards fewer", more.saturating_abs()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::trial::{how, plan, yard};
    use super::*;
    use crate::cutting::{Layout, Strip};
    use crate::measure::length;

    /// By hand. A board of 144 in less 1/2 and 1/2 gives three rails, 120 in and two kerfs, and after a third kerf 22 5/8 is
    /// left; one of 96 gives two, and 14 3/4 is left. Two at 9.80 are 19.60 and leave 45 1/4; three at 7.00 are 21.00 and
    /// leave 44 1/4. Worth keeping from 15 in on, the short ones leave nothing.
    #[test]
    fn a_length_that_is_not_there_costs_so_much_more() {
        let (job, labels) = yard();
        let (stood, other) = (plan(&job, &[(0, 3); 2]), plan(&job, &[(1, 2); 3]));
        let told = |from: &str, plans: (&Plan, &Plan)| {
            difference(&job, &labels, 0, plans, how(from)).expect("plans of this job")
        };
        let one = told("12", (&stood, &other));
        assert_eq!((one.dearer_cents, one.more_boards), (140, 1));
        assert_eq!(one.left_over, LeftOver::More(length("-1").expect("a length")));
        assert_eq!(
            one.sentence.to_string(),
            "Without the 2x4 of 144 in it costs 1.40 more, with 1 board more and 1 in less left over to keep."
        );
        assert_eq!(
            told("15", (&stood, &other)).sentence.to_string(),
            "Without the 2x4 of 144 in it costs 1.40 more, with 1 board more and 45 1/4 in less left over to keep."
        );
        // The other way round, as where the plan that stood was not proved.
        assert_eq!(
            told("12", (&other, &stood)).sentence.to_string(),
            "Without the 2x4 of 144 in it costs 1.40 less, with 1 board fewer and 1 in more left over to keep."
        );
        assert_eq!(
            told("12", (&stood, &stood)).sentence.to_string(),
            "Without the 2x4 of 144 in it costs the same, with as many boards and as much left over to keep."
        );
    }

    /// By hand: without prices a cent is 2 in of wood here; 140 of them are 280 in, 23.333 ft.
    #[test]
    fn where_no_board_has_a_price_wood_is_told() {
        let (job, mut labels) = yard();
        labels.money = Money::Wood { each: length("2").expect("a length") };
        let (stood, other) = (plan(&job, &[(0, 3); 2]), plan(&job, &[(1, 2); 3]));
        let told = difference(&job, &labels, 0, (&stood, &other), how("12")).expect("plans");
        assert!(
            told.sentence.to_string().contains(" it takes 23.333 ft more wood, with 1 board"),
            "{told:?}"
        );
    }

    /// Strips of several widths are not added up. By hand: of the ripped board 22 5/8 is left beside the rails.
    #[test]
    fn of_ripped_boards_the_longest_piece_left_over_is_told() {
        let (mut job, labels) = yard();
        let size = crate::cutting::CrossSize { width: 28, thickness: 12 };
        job.sections[0].size = Some(size);
        let rip = crate::cutting::RipRules {
            kerf: 1,
            near_edge: 0,
            far_edge: 0,
            least_width: 4,
            least_length: 96,
            crosscut_first: false,
            resaw: None,
        };
        job.saw.rip = Some(rip);
        let mut labels = labels;
        labels.sections[0].size =
            Some((length("1 1/2").expect("a length"), length("3 1/2").expect("a length")));
        let (mut stood, other) = (plan(&job, &[(0, 3); 2]), plan(&job, &[(1, 2); 3]));
        let parts = stood.boards[0].placed();
        let layers = vec![crate::cutting::Layer { at: 0, thickness: 12, parts }];
        stood.boards[0].layout = Layout::RipFirst(vec![Strip { at: 0, width: 28, layers }]);
        let told = |plans| difference(&job, &labels, 0, plans, how("12")).expect("plans");
        let [was, is] = ["22 5/8", "14 3/4"].map(|it| length(it).expect("a length"));
        assert_eq!(told((&stood, &other)).left_over, LeftOver::Longest { was, is });
        let words = |plans| told(plans).sentence.to_string();
        assert!(words((&stood, &other)).ends_with("left over is 14 3/4 in, not 22 5/8 in."));
        assert!(words((&stood, &stood)).ends_with("left over is 22 5/8 in as before."));
    }

    /// The yard has none of the length, whatever price it is written at; the other lengths are as they were.
    #[test]
    fn every_board_of_that_length_is_left_out() {
        let (job, labels) = yard();
        let limits = |board: usize| -> Vec<_> {
            without(&job, board).boards.iter().map(|board| board.limit).collect()
        };
        assert_eq!(limits(0), [Some(0), None, Some(0)]);
        assert_eq!(limits(1), [None, Some(0), Some(3)]);
        assert_eq!(limits(9), [None, None, Some(3)]);
        assert_eq!(without_words(&job, &labels, 9), None);
    }
}
