//! [`WantedProblem`]: why no plan can be asked for yet, naming the part or the board.

use crate::job::ItemId;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::Sentence;

/// An item of the job book and what it is called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// The item.
    pub item: ItemId,
    /// Its name, or its section where it has none.
    pub name: String,
}

/// Why a part cannot come from the boards of its section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Obstacle {
    /// Every board is narrower or thinner than the part.
    TooSmall,
    /// It would have to be ripped, and the plan may not rip.
    NoRips,
    /// It would have to be ripped, and the part may not.
    PartNotRipped,
    /// It would have to be resawn, and the plan may not resaw.
    NoResaw,
    /// It would have to be resawn, and the part may not.
    PartNotResawn,
    /// The strip or layer would be thinner than the user cuts at the fence.
    TooThin {
        /// The user's limit.
        thinnest: Length,
    },
    /// The blade does not reach through, from both sides either.
    TooDeep {
        /// The deepest cut from both sides.
        most: Length,
    },
    /// Cleaning the edges or faces leaves too little.
    CleanUp,
    /// The board is no wider than this and no thicker: it cannot be held down and pushed.
    TooSlight,
    /// More than lumber comes in.
    TooLarge,
}

/// Why no plan can be asked for yet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WantedProblem {
    /// The job book has no part that is still to be cut.
    NoParts {
        /// Parts that must wait for a measurement.
        waiting: u32,
    },
    /// A size or quantity of a part or board cannot be worked out.
    Size {
        /// The part or board.
        of: Named,
        /// `width`.
        which: &'static str,
        /// What is wrong with it.
        why: String,
    },
    /// A size of a part or board is zero or less.
    NotPositive {
        /// The part or board.
        of: Named,
        /// `width`.
        which: &'static str,
    },
    /// No board carries the section that the part asks for.
    NoBoard {
        /// The part.
        of: Named,
        /// The section as the part asks for it.
        stock: String,
    },
    /// The part takes any board of its own size, and there is none.
    NoBoardOfSize {
        /// The part.
        of: Named,
        /// The part.
        thickness: Length,
        /// The part.
        width: Length,
    },
    /// The boards of the part's section do not give it.
    CannotBeHad {
        /// The part.
        of: Named,
        /// The part.
        thickness: Length,
        /// The part.
        width: Length,
        /// The board that comes nearest.
        board: (Length, Length),
        /// What is in the way there.
        obstacle: Obstacle,
    },
    /// A length that the yard sells has no price.
    NoPrice {
        /// The board.
        of: Named,
    },
    /// The lengths of the job have no unit in common that is coarse enough.
    TooFine {
        /// The part or board with the length; `None` for the saw's own lengths.
        of: Option<Named>,
        /// The length that was one too many.
        length: Length,
    },
    /// A length is beyond what can be planned.
    OutOfRange,
}

impl WantedProblem {
    /// The part or board that it is about.
    #[must_use]
    pub fn item(&self) -> Option<ItemId> {
        match self {
            WantedProblem::Size { of, .. }
            | WantedProblem::NotPositive { of, .. }
            | WantedProblem::NoBoard { of, .. }
            | WantedProblem::NoBoardOfSize { of, .. }
            | WantedProblem::CannotBeHad { of, .. }
            | WantedProblem::NoPrice { of } => Some(of.item),
            WantedProblem::TooFine { of, .. } => of.as_ref().map(|of| of.item),
            WantedProblem::NoParts { .. } | WantedProblem::OutOfRange => None,
        }
    }

    /// Stable name for programs.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            WantedProblem::NoParts { .. } => "no-parts",
            WantedProblem::Size { .. } => "size",
            WantedProblem::NotPositive { .. } => "not-positive",
            WantedProblem::NoBoard { .. } => "no-board",
            WantedProblem::NoBoardOfSize { .. } => "no-board-of-size",
            WantedProblem::CannotBeHad { .. } => "cannot-be-had",
            WantedProblem::NoPrice { .. } => "no-price",
            WantedProblem::TooFine { .. } => "too-fine",
            WantedProblem::OutOfRange => "out-of-range",
        }
    }

    /// What is wrong.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            WantedProblem::NoParts { waiting: 0 } => say!["There is no piece to cut."],
            WantedProblem::NoParts { .. } => {
                say!["Every piece that is left must wait for a measurement."]
            }
            WantedProblem::Size { of, which, why } => {
                say![of.name.clone(), ": the ", *which, " cannot be worked out. ", why.clone()]
            }
            WantedProblem::NotPositive { of, which } => {
                say![of.name.clone(), ": the ", *which, " must be more than zero."]
            }
            WantedProblem::NoBoard { of, stock } => say![
                of.name.clone(),
                " is cut from ",
                stock.clone(),
                ", and neither the rack nor the yard has any."
            ],
            WantedProblem::NoBoardOfSize { of, thickness, width } => say![
                of.name.clone(),
                " may come from any board ",
                *thickness,
                " by ",
                *width,
                ", and neither the rack nor the yard has one."
            ],
            WantedProblem::CannotBeHad { of, thickness, width, board, obstacle } => {
                let mut sentence = say![
                    of.name.clone(),
                    " is ",
                    *thickness,
                    " by ",
                    *width,
                    ", its board ",
                    board.0,
                    " by ",
                    board.1,
                    ". "
                ];
                sentence.0.extend(obstacle.sentence().0);
                sentence
            }
            WantedProblem::NoPrice { of } => say![of.name.clone(), " at the yard has no price."],
            WantedProblem::TooFine { of, length } => {
                let name = of.as_ref().map_or("The saw".to_owned(), |of| of.name.clone());
                say![
                    name,
                    ": ",
                    *length,
                    " is a fraction that does not go together with the other lengths."
                ]
            }
            WantedProblem::OutOfRange => say!["A length is too large to be planned."],
        }
    }

    /// What to do.
    #[must_use]
    pub fn way_out(&self) -> Sentence {
        match self {
            WantedProblem::NoParts { waiting: 0 } => {
                say!["Add a piece, or take back the tick of one that is to be cut again."]
            }
            WantedProblem::NoParts { .. } => say!["Measure what they wait for, and write it down."],
            WantedProblem::Size { .. } | WantedProblem::NotPositive { .. } => {
                say!["Open it and write the size again."]
            }
            WantedProblem::NoBoard { .. } => {
                say!["Add a length that the yard sells, or change what the piece is cut from."]
            }
            WantedProblem::NoBoardOfSize { .. } => {
                say!["Add such a board, or write into the piece which board it is ripped from."]
            }
            WantedProblem::CannotBeHad { obstacle, .. } => obstacle.way_out(),
            WantedProblem::NoPrice { .. } => {
                say!["Write what one costs. A board that costs nothing goes on the rack."]
            }
            WantedProblem::TooFine { length, .. } => {
                say!["Write the size to a mark of the tape: ", (*length, Rounding::Nearest), "."]
            }
            WantedProblem::OutOfRange => say!["Check the lengths and their units."],
        }
    }
}

impl Obstacle {
    fn sentence(self) -> Sentence {
        match self {
            Obstacle::TooSmall => say!["No board of its section is large enough."],
            Obstacle::NoRips => say!["It would have to be ripped, and the plan may not rip."],
            Obstacle::PartNotRipped => {
                say!["It would have to be ripped, and the piece may not be."]
            }
            Obstacle::NoResaw => say!["It would have to be resawn, and the plan may not resaw."],
            Obstacle::PartNotResawn => {
                say!["It would have to be resawn, and the piece may not be."]
            }
            Obstacle::TooThin { thinnest } => {
                say!["Your limit for a strip at the fence is ", thinnest, "."]
            }
            Obstacle::TooDeep { most } => {
                say!["From both sides your blade cuts ", most, " deep at most."]
            }
            Obstacle::CleanUp => say!["Cleaning it up takes what is needed."],
            Obstacle::TooSlight => say!["So slight a stick cannot be held down and pushed."],
            Obstacle::TooLarge => say!["That is more than lumber comes in."],
        }
    }

    fn way_out(self) -> Sentence {
        match self {
            Obstacle::TooSmall => say!["Add a larger board, or glue the piece up from two."],
            Obstacle::NoRips => say!["Let the plan rip wider boards."],
            Obstacle::NoResaw => say!["Let the plan resaw thicker boards."],
            Obstacle::PartNotRipped => {
                say!["Open the piece and allow it to be ripped, or add a board of its own size."]
            }
            Obstacle::PartNotResawn => {
                say!["Open the piece and allow it to be resawn, or add a board of its own size."]
            }
            Obstacle::TooThin { .. } => say!["Plane it down from a thicker strip."],
            Obstacle::TooDeep { .. } => {
                say!["Add a board of its own size, or finish the cut with a hand saw."]
            }
            Obstacle::CleanUp => say!["Clean up less, or add a larger board."],
            Obstacle::TooSlight | Obstacle::TooLarge => say!["Add a board of its own size."],
        }
    }
}
