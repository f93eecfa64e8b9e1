//! [`Labels`]: from the numbers of a cutting job back to the names and sizes that the builder wrote.

use super::ItemId;
use crate::cutting::scale::CommonUnit;
use crate::cutting::{CutProblem, Job, Units};
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::Sentence;

/// What a part, a board or a scrap of a cutting job is called, and which item of the job book it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Label {
    /// The item; `None` when it comes from a quick list.
    pub item: Option<ItemId>,
    /// What the builder calls it.
    pub name: String,
}

/// A section of a cutting job as the builder knows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SectionLabel {
    /// As parts and boards write it: `2x6`.
    pub name: String,
    /// Thickness and width; `None` when a quick list does not ask for them.
    pub size: Option<(Length, Length)>,
}

/// What the prices of a cutting job stand for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Money {
    /// Hundredths of the user's money.
    Cents,
    /// No price was given: the length of the boards stands in for it. One cent is this much wood.
    Wood {
        /// Length of board for one cent.
        each: Length,
    },
}

/// The names behind a cutting job; each list is as long as the job's own.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Labels {
    /// The unit of its lengths.
    pub unit: CommonUnit,
    /// Of the sections.
    pub sections: Vec<SectionLabel>,
    /// Of the parts.
    pub parts: Vec<Label>,
    /// Of the boards to buy.
    pub boards: Vec<Label>,
    /// Of the scraps.
    pub scraps: Vec<Label>,
    /// What its prices stand for.
    pub money: Money,
}

/// A refusal of the planner in the builder's words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Explained {
    /// The part or board that it is about, where it is one of the job book.
    pub item: Option<ItemId>,
    /// What is wrong.
    pub sentence: Sentence,
    /// What to do.
    pub way_out: Sentence,
}

impl Labels {
    /// A length of the job in inches, exactly.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] when the unit is too fine to keep.
    pub fn length(&self, units: Units) -> Result<Length, OutOfRange> {
        let (numer, denom) = self.unit.fraction(units);
        Length::of_inch(numer, denom)
    }

    /// The label of the section with this id.
    #[must_use]
    pub fn section(&self, job: &Job, id: &str) -> Option<&SectionLabel> {
        let at = job.sections.iter().position(|section| section.id == id)?;
        self.sections.get(at)
    }

    /// The label of the part, board or scrap with this id.
    #[must_use]
    pub fn of(&self, job: &Job, id: &str) -> Option<&Label> {
        let part = job.parts.iter().position(|part| part.id == id);
        let board = job.boards.iter().position(|board| board.id == id);
        let scrap = job.scraps.iter().position(|scrap| scrap.id == id);
        part.and_then(|at| self.parts.get(at))
            .or_else(|| board.and_then(|at| self.boards.get(at)))
            .or_else(|| scrap.and_then(|at| self.scraps.get(at)))
    }

    /// A refusal of the planner in the builder's words, with the part or board by its own name.
    #[must_use]
    pub fn explain(&self, job: &Job, problem: &CutProblem) -> Explained {
        let label = |id: &str| {
            let known = self.of(job, id);
            (known.and_then(|label| label.item), known.map_or(id, |label| &label.name).to_owned())
        };
        let about = |id: &str, rest: &'static str, way_out: Sentence| {
            let (item, name) = label(id);
            Explained { item, sentence: say![name, rest], way_out }
        };
        let whole =
            |sentence: Sentence, way_out: Sentence| Explained { item: None, sentence, way_out };
        match problem {
            CutProblem::NoParts => whole(
                say!["There is no piece to cut."],
                say!["Add a piece, or take back the tick of one that is to be cut again."],
            ),
            CutProblem::NoBoards => whole(
                say!["There is no board to cut from."],
                say!["Add a length that the yard sells, or a board on my rack."],
            ),
            CutProblem::SameId { id } => {
                about(id, " is in the list twice.", say!["Take one of them out."])
            }
            CutProblem::UnknownSection { id, .. } => about(
                id,
                " is of a section that is not in the list.",
                say!["Choose the section again."],
            ),
            CutProblem::LengthNotPositive { id } => {
                about(id, " has a length of zero or less.", say!["Write the length as measured."])
            }
            CutProblem::LengthTooLarge { id } => {
                about(id, " is too long to be planned.", say!["Check its length and its unit."])
            }
            CutProblem::PriceNotPositive { id } => about(
                id,
                " has no price.",
                say!["Write what one costs. A board that costs nothing goes on the rack."],
            ),
            CutProblem::PriceTooLarge { id } => {
                about(id, " has a price over ten million.", say!["Check the price."])
            }
            CutProblem::TooManyParts { wanted } => whole(
                say![format!("{wanted} pieces are more than can be planned at once.")],
                say!["Plan one half of the pieces first, then the other."],
            ),
            CutProblem::LossOutOfRange { what } => whole(
                say!["The ", *what, " is less than zero or too large."],
                say!["Write what the saw takes off: zero or a little more."],
            ),
            CutProblem::KnotOutside { id } => about(
                id,
                " has a place to keep clear of that lies outside the board.",
                say!["Measure the knot from the marked end again."],
            ),
            CutProblem::NothingUsable { id } => about(
                id,
                " has nothing left between its end trims and knots.",
                say!["Take it off the list, or trim less."],
            ),
            CutProblem::PartFitsNowhere { id, length, longest_clear } => {
                self.fits_nowhere(label(id), *length, *longest_clear)
            }
            CutProblem::NotEnoughBoards { left_out, proved } => {
                let names: Vec<String> = left_out
                    .iter()
                    .map(|(id, count)| format!("{count} of {}", label(id).1))
                    .collect();
                let item = left_out.first().and_then(|(id, _)| label(id).0);
                let found = if *proved {
                    "The boards are not enough. Without a place: "
                } else {
                    "No plan was found that holds all. Without a place: "
                };
                Explained {
                    item,
                    sentence: say![found, names.join(", "), "."],
                    way_out: say!["Add a length that the yard sells, or plan from the rack only."],
                }
            }
        }
    }

    fn fits_nowhere(
        &self,
        (item, name): (Option<ItemId>, String),
        length: Units,
        longest_clear: Option<Units>,
    ) -> Explained {
        let clear = longest_clear.and_then(|units| self.length(units).ok());
        let sentence = match (self.length(length), clear) {
            (Ok(length), Some(clear)) => say![
                name,
                " is ",
                length,
                " long. The longest clear stretch of a board for it is ",
                clear,
                "."
            ],
            (Ok(length), None) => {
                say![name, " is ", length, " long. No board that may be cut for it holds it."]
            }
            _ => say![name, " fits no board."],
        };
        Explained {
            item,
            sentence,
            way_out: say!["Add a longer board, or join the piece from two."],
        }
    }
}
