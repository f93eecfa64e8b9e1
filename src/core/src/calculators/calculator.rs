//! What a calculator is, and what it is known by. No name here leads to the work of one.

use crate::drawing::Outline;
use crate::measure::text::{Names, NoNames};
use crate::sheet::{
    Answer, Ask, Bench, Choice, Column, Entries, Field, Figure, Kind, Row, Sheet, Start, Table,
    Value,
};

/// A calculator, as the page, the links, JavaScript and the job book see it.
pub struct Calculator {
    /// Stable name in links and in JavaScript: `spacing`.
    pub slug: &'static str,
    /// Name in the list: `Spacing`.
    pub title: &'static str,
    /// The question it answers, in a builder's words.
    pub question: &'static str,
    /// Where in the job it is needed.
    pub stage: Stage,
    /// What it asks, in the order asked.
    pub fields: &'static [Field],
    /// Every figure and table it may answer with.
    pub results: &'static [ResultSpec],
    /// Reads the fields and answers. `None` when a refusal was kept in the [`Ask`].
    pub work: fn(&mut Ask) -> Option<Answer>,
}

/// By its slug: the rest is the same in every run.
impl core::fmt::Debug for Calculator {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(self.slug)
    }
}

impl Calculator {
    pub(super) const fn listed(&self) -> Listed {
        let questions = match self.fields {
            [Field { id, kind: Kind::Choice(choices), start: Start::Question(_), .. }, ..] => {
                Some((*id, *choices))
            }
            _ => None,
        };
        Listed {
            slug: self.slug,
            title: self.title,
            question: self.question,
            stage: self.stage,
            questions,
        }
    }

    /// The questions it can be asked, and the field that chooses one; none where there is but one.
    #[must_use]
    pub fn questions(&self) -> Option<(&'static Field, &'static [Choice])> {
        let field = self.fields.first()?;
        self.listed().questions.map(|(_, choices)| (field, choices))
    }

    /// Answers a set of entries. Never panics, whatever the texts.
    #[must_use]
    pub fn sheet(&self, entries: &Entries, bench: &Bench, names: &dyn Names) -> Sheet {
        let mut ask = Ask::new(self.fields, entries, bench, names);
        let mut answer = (self.work)(&mut ask);
        if let Some(scene) = answer.as_mut().and_then(|answer| answer.drawing.as_mut()) {
            scene.keep_sizes(|id| self.fields.iter().any(|it| it.id == id && ask.is_given(it)));
        }
        let assumed = ask.assumed();
        let (echoes, refusals) = ask.finish();
        // An answer never stands beside a refusal: it would be of a question nobody asked.
        let answer = if refusals.is_empty() { answer } else { None };
        Sheet { echoes, refusals, answer, assumed }
    }

    /// A picture of one of its questions, too small to be read: the drawing of our own example.
    #[must_use]
    pub fn outline(&self, question: &str, bench: &Bench) -> Option<Outline> {
        let (field, _) = self.questions()?;
        let entries = Entries::from_pairs([(field.id, question)]);
        self.sheet(&entries, bench, &NoNames).answer?.drawing?.outline()
    }

    /// The fields that are asked, given the choices made.
    pub fn asked<'a>(
        &'a self,
        entries: &'a Entries,
        bench: &'a Bench,
    ) -> impl Iterator<Item = &'static Field> + 'a {
        let ask = Ask::new(self.fields, entries, bench, &NoNames);
        self.fields.iter().filter(move |field| ask.is_asked(field))
    }
}

/// What a list shows of a calculator. It does not lead to the calculator's work, so that a program which only lists
/// them carries none of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Listed {
    /// As in [`Calculator`].
    pub slug: &'static str,
    /// As in [`Calculator`].
    pub title: &'static str,
    /// As in [`Calculator`].
    pub question: &'static str,
    /// As in [`Calculator`].
    pub stage: Stage,
    /// Id of the field that chooses the question, and the questions; none where there is but one.
    pub questions: Option<(&'static str, &'static [Choice])>,
}

/// A figure or table that a calculator may answer with.
#[derive(Clone, Copy, Debug)]
pub struct ResultSpec {
    /// Id of the [`Figure`](crate::sheet::Figure) or [`Table`](crate::sheet::Table).
    pub id: &'static str,
    /// What it is, for the list of results that a job can link to.
    pub label: &'static str,
    /// What kind of value.
    pub kind: ResultKind,
}

impl ResultSpec {
    /// A result with its id, what it is, and its kind.
    #[must_use]
    pub const fn new(id: &'static str, label: &'static str, kind: ResultKind) -> ResultSpec {
        ResultSpec { id, label, kind }
    }

    /// The figure, and what it is measured from.
    #[must_use]
    pub fn figure(&self, from: &'static str, value: impl Into<Value>) -> Figure {
        Figure { id: self.id, label: self.label, from, value: value.into() }
    }

    /// The same under a shorter name, beside others of the sheet.
    #[must_use]
    pub fn called(&self, label: &'static str) -> ResultSpec {
        ResultSpec { label, ..*self }
    }

    /// The table, with its columns.
    #[must_use]
    pub fn table(&self, columns: &'static [Column], rows: Vec<Row>) -> Table {
        Table { id: self.id, title: self.label, columns, rows, ways: Vec::new() }
    }
}

/// What kind of value a result is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ResultKind {
    /// [`Value::Length`](crate::sheet::Value::Length)
    Length,
    /// [`Value::Lengths`](crate::sheet::Value::Lengths)
    Lengths,
    /// [`Value::Count`](crate::sheet::Value::Count)
    Count,
    /// [`Value::Area`](crate::sheet::Value::Area)
    Area,
    /// [`Value::Exact`](crate::sheet::Value::Exact) or [`Value::Real`](crate::sheet::Value::Real)
    Number,
    /// [`Value::Words`](crate::sheet::Value::Words)
    Words,
    /// A [`Table`](crate::sheet::Table)
    Table,
}

/// Where in the job a calculator is needed. In the order of the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Measuring and reckoning.
    Measure,
    /// Choosing and buying wood.
    Wood,
    /// At the saw.
    Saw,
    /// Joining the frame.
    Frame,
    /// Screws and holes.
    Fasten,
    /// Tops, curves and angles.
    Shape,
    /// Will it hold, and the finish.
    Last,
}

impl Stage {
    /// Every stage, in the order of the job.
    pub const ALL: [Stage; 7] = [
        Stage::Measure,
        Stage::Wood,
        Stage::Saw,
        Stage::Frame,
        Stage::Fasten,
        Stage::Shape,
        Stage::Last,
    ];

    /// Heading in the list.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Stage::Measure => "Measure",
            Stage::Wood => "Choose the wood",
            Stage::Saw => "At the saw",
            Stage::Frame => "Frame and joints",
            Stage::Fasten => "Holes and screws",
            Stage::Shape => "Tops, curves, angles",
            Stage::Last => "Strength and finish",
        }
    }

    /// The run of stages that it is in.
    #[must_use]
    pub fn run(self) -> Run {
        match self {
            Stage::Measure | Stage::Wood | Stage::Saw => Run::Wood,
            Stage::Frame | Stage::Fasten => Run::Joints,
            Stage::Shape | Stage::Last => Run::Shapes,
        }
    }
}

/// Stages whose calculators a program in parts has in one part, each about a third of them all. A name here does not
/// lead to their work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Run {
    /// Up to the saw: [`WOOD`](super::WOOD).
    Wood,
    /// Frames, holes and screws: [`JOINTS`](super::JOINTS).
    Joints,
    /// From the top on: [`SHAPES`](super::SHAPES).
    Shapes,
}
