//! [`Sheet`]: what a calculator says to a set of entries.

use core::fmt;

use super::{Assumed, Caution, Echo, Refusal, Sentence, Value, WayOut, Working};
use crate::drawing::Scene;
use crate::measure::{Length, Number, Tape};
use crate::paper::Template;

/// What a calculator says: an answer, or refusals beside the fields.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// How each field that was asked was understood.
    pub echoes: Vec<Echo>,
    /// What is in the way. Empty when there is an answer.
    pub refusals: Vec<Refusal>,
    /// The answer. Absent when there are refusals.
    pub answer: Option<Answer>,
    /// The sizes of ours that it rests on.
    pub assumed: Assumed,
}

/// An answer, laid out.
#[derive(Clone, Debug)]
pub struct Answer {
    /// The one figure that is wanted most: the largest thing on the screen.
    pub headline: Figure,
    /// The others, most wanted first.
    pub figures: Vec<Figure>,
    /// Lists such as passes and marks.
    pub tables: Vec<Table>,
    /// What the user should know; not a danger.
    pub notes: Vec<Note>,
    /// Dangers of the work.
    pub cautions: Vec<Caution>,
    /// The picture, to scale.
    pub drawing: Option<Scene>,
    /// What can be printed at full size and laid on the wood.
    pub template: Option<Template>,
    /// How it was found.
    pub working: Working,
    /// What has to be bought for it, beside boards.
    pub goods: Vec<Goods>,
}

impl Answer {
    /// An answer of one figure and its working, without a drawing yet.
    #[must_use]
    pub fn new(headline: Figure, working: Working) -> Answer {
        Answer {
            headline,
            figures: Vec::new(),
            tables: Vec::new(),
            notes: Vec::new(),
            cautions: Vec::new(),
            drawing: None,
            template: None,
            working,
            goods: Vec::new(),
        }
    }

    /// The lengths that are gone through one by one: those of the headline, or the first that are several.
    #[must_use]
    pub fn marks(&self) -> Option<&Figure> {
        let mut figures = core::iter::once(&self.headline).chain(&self.figures);
        figures.find(|figure| matches!(figure.value, Value::Lengths(_)))
    }

    /// Whether the list of marks, or a column of a table, says all that a figure says: the first of the marks, or that column.
    #[must_use]
    pub fn is_repeated(&self, figure: &Figure) -> bool {
        let Value::Lengths(all) = &figure.value else { return false };
        let marks = self.marks();
        if marks.is_some_and(|marks| marks.id == figure.id) {
            return false;
        }
        let is_of_marks = marks.is_some_and(|marks| match &marks.value {
            Value::Lengths(marks) => marks.len() > all.len() && marks.starts_with(all),
            _ => false,
        });
        is_of_marks || self.tables.iter().any(|table| table.column_of(all).is_some())
    }

    /// The column of a table that says what the list of marks says.
    #[must_use]
    pub fn marks_column(&self, table: &Table) -> Option<usize> {
        match &self.marks()?.value {
            Value::Lengths(marks) => table.column_of(marks),
            _ => None,
        }
    }
}

/// Something that has to be bought for the work; boards are planned elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Goods {
    /// What it is: `No. 8 screws`.
    pub name: String,
    /// How thick it is, where that is asked for at the counter: a dowel rod.
    pub across: Option<Length>,
    /// How long one is.
    pub length: Option<Length>,
    /// How many the work takes; `None` where the question does not say.
    pub count: Option<u64>,
    /// How many more, as a share for spares.
    pub spares: u64,
    /// Price of one, where it is known.
    pub each: Option<Number>,
}

/// One result.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Stable name in JavaScript and in the job book: `strip_width`.
    pub id: &'static str,
    /// What the user reads: `Fence`.
    pub label: &'static str,
    /// What it is measured from: `fence to near tooth`. Empty for what is not measured.
    pub from: &'static str,
    /// The result, exactly.
    pub value: Value,
}

/// A list with a heading.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Stable name: `passes`.
    pub id: &'static str,
    /// Heading.
    pub title: &'static str,
    /// Its columns.
    pub columns: &'static [Column],
    /// The rows; as many values as columns.
    pub rows: Vec<Row>,
    /// What a tap on a row asks instead, for each row; empty where no row can be tapped.
    pub ways: Vec<Option<WayOut>>,
}

impl Table {
    /// The same, with what a tap on each row asks instead.
    #[must_use]
    pub fn with_ways(self, ways: Vec<Option<WayOut>>) -> Table {
        Table { ways, ..self }
    }

    /// The first column in which these lengths stand, in this order and nothing else.
    fn column_of(&self, all: &[Length]) -> Option<usize> {
        let is_it = |at: usize| {
            let cells = self.rows.iter().map(|row| match row.get(at) {
                Some(Value::Length(length, _)) => Some(length),
                _ => None,
            });
            cells.eq(all.iter().map(Some))
        };
        (0..self.columns.len()).find(|at| !all.is_empty() && is_it(*at))
    }
}

/// A column of a [`Table`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Column {
    /// Stable name, of which a table has one column: `from_left`.
    pub id: &'static str,
    /// What the user reads; empty where the cells say it themselves.
    pub heading: &'static str,
}

impl Column {
    /// A column with its id and its heading.
    #[must_use]
    pub const fn new(id: &'static str, heading: &'static str) -> Column {
        Column { id, heading }
    }
}

/// One row of a [`Table`].
pub type Row = Vec<Value>;

/// Something the user should know.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Note {
    /// Stable name for programs, in words with `_` between; it is spelled where the note is made, once, and no answer has two
    /// notes of one.
    pub id: &'static str,
    /// What the user reads.
    pub words: Sentence,
}

impl Note {
    /// A note with its id.
    #[must_use]
    pub fn new(id: &'static str, words: Sentence) -> Note {
        Note { id, words }
    }

    /// Its words, with every length read on a tape.
    #[must_use]
    pub fn on(&self, tape: Tape) -> String {
        self.words.on(tape)
    }
}

/// Its words, with every length written exactly.
impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.words.fmt(f)
    }
}
