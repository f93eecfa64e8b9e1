//! [`Field`]: one thing a calculator asks.

use super::{Bench, Side};
use crate::measure::{Length, Partner, Unit, text::exact_text};

/// One thing a calculator asks.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Stable name in links, in JavaScript and in the job book: `board_width`.
    pub id: &'static str,
    /// What the user reads: `Board width`.
    pub label: &'static str,
    /// Where to measure, or what is meant: `at its narrowest`. Empty when the label says it all.
    pub hint: &'static str,
    /// The same for who measures in millimetres; empty where no number in it has a unit.
    pub metric_hint: &'static str,
    /// What may be written.
    pub kind: Kind,
    /// What stands in a fresh form.
    pub start: Start,
    /// When it is asked at all.
    pub when: When,
}

/// What may be written in a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A length or a formula for one.
    Length(Least),
    /// A length, or nothing.
    OptionalLength(Least),
    /// Lengths separated by commas; `3 @ 1 3/4` stands for three of them.
    Lengths,
    /// Boards on hand, separated by commas: `52, 2 @ 44 wide 5 1/2`; may be empty. See [`OnHand`](super::OnHand).
    OnHand,
    /// Zones measured from the left end, `10 to 12 1/2`, separated by commas; may be empty.
    Spans,
    /// Sizes of parts, length × width × thickness, separated by commas; `leg: 4 @ 28 1/2 × 3 1/2 × 3 1/2`
    /// stands for four legs. See [`PartSize`](super::PartSize).
    Sizes,
    /// Pieces of a cutting list, separated by commas: `leg: 4 @ 34 1/2, 6 @ 22 wide 1 1/2`. See
    /// [`CutPiece`](super::CutPiece).
    Pieces,
    /// Lengths that the yard sells, separated by commas: `96 at 10.90, 120 wide 5 1/2 at 13.95 max 3`; may be empty.
    /// See [`BoardPrice`](super::BoardPrice).
    Prices,
    /// A whole number between these two.
    Count {
        /// Smallest.
        least: u32,
        /// Largest.
        most: u32,
    },
    /// A plain number from `least` to `most`, decimals allowed, with its unit for the label.
    Number {
        /// Smallest.
        least: i32,
        /// Largest.
        most: i32,
        /// `°`, `%`, `lb`; empty for none.
        unit: &'static str,
    },
    /// An amount of money, or nothing.
    OptionalMoney,
    /// One of a few.
    Choice(&'static [Choice]),
    /// Yes or no; the text is `yes` or `no`.
    YesNo,
    /// Free words, such as a name or a note, of at most so many characters; may be empty.
    Words(usize),
    /// A running strip of formulas, one a line; see [`Strip`](super::Strip).
    Strip,
    /// The letter of a line of the strip in the named field, or nothing for its last answer.
    LineOf(&'static str),
}

impl Kind {
    /// A length of more than zero.
    pub const ABOVE_ZERO: Kind = Kind::Length(Least::AboveZero);
    /// A length of zero or more.
    pub const ZERO_UP: Kind = Kind::Length(Least::Zero);
    /// A length of more than zero, or nothing.
    pub const MAYBE_LENGTH: Kind = Kind::OptionalLength(Least::AboveZero);

    /// Whether several things are written in it, one after the other.
    #[must_use]
    pub fn holds_several(self) -> bool {
        matches!(
            self,
            Kind::Lengths
                | Kind::OnHand
                | Kind::Spans
                | Kind::Sizes
                | Kind::Pieces
                | Kind::Prices
                | Kind::Strip
        )
    }
}

/// How small a length may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Least {
    /// More than zero.
    AboveZero,
    /// Zero or more.
    Zero,
    /// Any, also below zero.
    Any,
}

/// One of the answers of a choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Stable name: `both_ends`.
    pub id: &'static str,
    /// What the user reads.
    pub label: &'static str,
    /// How wide it is, beside its label for who measures in millimetres: `4.2 mm`. Empty where the label says it.
    pub across: &'static str,
}

impl Choice {
    /// An answer with its id and what the user reads.
    #[must_use]
    pub const fn new(id: &'static str, label: &'static str) -> Choice {
        Choice { id, label, across: "" }
    }

    /// The same answer, with how wide it is in millimetres.
    #[must_use]
    pub const fn across(self, across: &'static str) -> Choice {
        Choice { across, ..self }
    }

    /// What is read by who measures lengths in `measures`: `No. 8`, `No. 8 · 4.2 mm`.
    #[must_use]
    pub fn read_in(&self, measures: Unit) -> String {
        match self.across {
            across if measures.is_metric() && !across.is_empty() => {
                format!("{} · {across}", self.label)
            }
            _ => self.label.to_owned(),
        }
    }

    /// Nothing to choose from.
    pub(super) const NONE: Choice = Choice::new("", "");
}

/// What stands in a field before anything is typed.
#[derive(Clone, Copy, Debug)]
pub enum Start {
    /// This length in inches, whatever the user's unit.
    Inches(&'static str),
    /// This text: a count, a choice, a list, or nothing.
    Text(&'static str),
    /// The question that a fresh form asks, out of those it can: no size of anybody's.
    Question(&'static str),
    /// What leaves the thing out, such as `0` or `no`: no size either.
    Without(&'static str),
    /// Nothing: what the tape says on the real thing is written there. A reading is no formula, so no name stands in it.
    Reading,
    /// The saw's kerf.
    Kerf,
    /// The saw's reach.
    BladeReach,
    /// The thinnest strip cut at the fence.
    ThinnestStrip,
    /// The side of the fence: `left` or `right`.
    Fence,
}

/// When a field is asked.
#[derive(Clone, Copy, Debug)]
pub enum When {
    /// Always.
    Always,
    /// When a choice field has one of these answers and is itself asked.
    Chosen(&'static str, &'static [&'static str]),
    /// Where the tape is in millimetres, or where it is not.
    Metric(bool),
}

/// A stretch along a board, from the left end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// Nearer end.
    pub from: Length,
    /// Farther end; never nearer than `from`.
    pub to: Length,
}

impl Field {
    /// A field that is always asked.
    #[must_use]
    pub const fn new(
        id: &'static str,
        label: &'static str,
        hint: &'static str,
        kind: Kind,
        start: Start,
    ) -> Field {
        Field { id, label, hint, metric_hint: "", kind, start, when: When::Always }
    }

    /// The same field, asked only when a choice has one of these answers.
    #[must_use]
    pub const fn only_for(self, choice: &'static str, answers: &'static [&'static str]) -> Field {
        Field { when: When::Chosen(choice, answers), ..self }
    }

    /// The same field, asked only on a tape in millimetres, or only on one in inches.
    #[must_use]
    pub const fn only_on(self, is_metric: bool) -> Field {
        Field { when: When::Metric(is_metric), ..self }
    }

    /// The same field, with its hint for who measures in millimetres.
    #[must_use]
    pub const fn metric_hint(self, metric_hint: &'static str) -> Field {
        Field { metric_hint, ..self }
    }

    /// Its hint, for who measures lengths in `measures`.
    #[must_use]
    pub fn hint_in(&self, measures: Unit) -> &'static str {
        match self.metric_hint {
            hint if measures.is_metric() && !hint.is_empty() => hint,
            _ => self.hint,
        }
    }

    /// Unit of a bare number in it, for who measures lengths in `measures`; empty for none.
    #[must_use]
    pub fn number_unit(&self, measures: Unit) -> &'static str {
        match self.kind {
            Kind::Number { unit, .. } => Partner::of(unit)
                .filter(|_| measures.is_metric())
                .map_or(unit, |partner| partner.metric),
            _ => "",
        }
    }

    /// The text that stands in a fresh form, for bare numbers in `unit`.
    #[must_use]
    pub fn start_text(&self, bench: &Bench, unit: Unit) -> String {
        let length = match self.start {
            Start::Text(text) | Start::Question(text) | Start::Without(text) => {
                // Our examples are in the units of the tables; a bare number would be a metric one.
                return match self.kind {
                    Kind::Number { unit: own, .. }
                        if unit.is_metric() && text != "0" && Partner::of(own).is_some() =>
                    {
                        format!("{text} {own}")
                    }
                    _ => text.to_owned(),
                };
            }
            Start::Reading => return String::new(),
            Start::Inches(text) if unit == Unit::Inch => return text.to_owned(),
            Start::Inches(text) => return format!("{text} in"),
            Start::Fence => {
                return match bench.fence {
                    Side::Left => "left".to_owned(),
                    Side::Right => "right".to_owned(),
                };
            }
            Start::Kerf => bench.kerf,
            Start::BladeReach => bench.blade_reach,
            Start::ThinnestStrip => bench.thinnest_strip,
        };
        let text = exact_text(length);
        text.strip_suffix(unit.short()).map_or(text.clone(), |amount| amount.trim().to_owned())
    }
}
