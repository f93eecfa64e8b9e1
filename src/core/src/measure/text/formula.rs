//! [`Formula`]: a written measure as read, which can be worked out again when a name changes.

use core::fmt;
use core::ops::Range;

use super::print::exact_text;
use super::problem::{TextProblem, TextProblemKind as Kind};
use crate::measure::limits::MAX_LENGTH_INCHES;
use crate::measure::{Area, Length, Number, OutOfRange, Unit};

/// What a formula, or a part of it, comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Written without a unit: a length in the user's unit, or a number, as the place wants.
    Bare(Number),
    /// A plain number for certain: a count, or a length ÷ a length.
    Plain(Number),
    /// A length.
    Length(Length),
    /// An area.
    Area(Area),
}

/// The names that a formula may use.
pub trait Names {
    /// How many bytes at the start of `text` are the longest known name there; 0 for none.
    fn longest_match(&self, text: &str) -> usize;
    /// The value of a name, if it has one.
    fn value(&self, name: &str) -> Option<Quantity>;
}

/// No names: every word that is not a unit is refused.
#[derive(Clone, Copy, Debug, Default)]
pub struct NoNames;

impl Names for NoNames {
    fn longest_match(&self, _text: &str) -> usize {
        0
    }
    fn value(&self, _name: &str) -> Option<Quantity> {
        None
    }
}

/// A sign between two parts of a formula.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operator {
    /// `+`
    Add,
    /// `-`
    Subtract,
    /// `×`
    Multiply,
    /// `÷`
    Divide,
}

impl Operator {
    fn sign(self) -> &'static str {
        match self {
            Operator::Add => "+",
            Operator::Subtract => "-",
            Operator::Multiply => "×",
            Operator::Divide => "÷",
        }
    }
}

/// A formula as read from text. `Display` writes it back in one plain spelling.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Formula {
    pub(super) at: Range<usize>,
    pub(super) node: Node,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Node {
    Bare(Number),
    Length(Length),
    Name(String),
    Negative(Box<Formula>),
    Group(Box<Formula>, Option<Unit>),
    Pair(Operator, Box<Formula>, Box<Formula>),
}

impl Formula {
    /// Whether it is one written amount or name, with nothing to work out.
    #[must_use]
    pub fn is_single(&self) -> bool {
        matches!(self.node, Node::Bare(_) | Node::Length(_) | Node::Name(_))
    }

    /// The amount or name that it ends with, where no bracket or unit stands between.
    pub(super) fn last_leaf(&self) -> Option<&Formula> {
        match &self.node {
            Node::Bare(_) | Node::Length(_) | Node::Name(_) => Some(self),
            Node::Negative(inner) | Node::Pair(_, _, inner) => inner.last_leaf(),
            Node::Group(..) => None,
        }
    }

    /// The amount or name that it begins with, where no bracket or sign stands before it.
    pub(super) fn first_leaf(&self) -> Option<&Formula> {
        match &self.node {
            Node::Bare(_) | Node::Length(_) | Node::Name(_) => Some(self),
            Node::Pair(_, inner, _) => inner.first_leaf(),
            Node::Negative(_) | Node::Group(..) => None,
        }
    }

    /// Every name it uses, in the order written; a name used twice stands twice.
    #[must_use]
    pub fn names(&self) -> Vec<&str> {
        let mut names = Vec::new();
        self.collect_names(&mut names);
        names
    }

    fn collect_names<'a>(&'a self, names: &mut Vec<&'a str>) {
        match &self.node {
            Node::Bare(_) | Node::Length(_) => {}
            Node::Name(name) => names.push(name),
            Node::Negative(inner) | Node::Group(inner, _) => inner.collect_names(names),
            Node::Pair(_, left, right) => {
                left.collect_names(names);
                right.collect_names(names);
            }
        }
    }

    /// Works it out.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be worked out.
    pub fn quantity(&self, unit: Unit, names: &dyn Names) -> Result<Quantity, TextProblem> {
        let refuse = |kind| Err(TextProblem::new(self.at.clone(), kind));
        match &self.node {
            Node::Bare(number) => Ok(Quantity::Bare(*number)),
            Node::Length(length) => Ok(Quantity::Length(*length)),
            Node::Name(name) => match names.value(name) {
                Some(quantity) => Ok(quantity),
                None => refuse(Kind::NameWithoutValue(name.clone())),
            },
            Node::Negative(inner) => Ok(match inner.quantity(unit, names)? {
                Quantity::Bare(n) => Quantity::Bare(-n),
                Quantity::Plain(n) => Quantity::Plain(-n),
                Quantity::Length(l) => Quantity::Length(-l),
                Quantity::Area(a) => Quantity::Area(Area::square_inches(-a.in_square_inches())),
            }),
            Node::Group(inner, None) => inner.quantity(unit, names),
            Node::Group(inner, Some(written)) => match inner.quantity(unit, names)? {
                Quantity::Bare(n) | Quantity::Plain(n) => match Length::of(n, *written) {
                    Ok(length) => Ok(Quantity::Length(length)),
                    Err(OutOfRange) => refuse(Kind::TooLarge),
                },
                Quantity::Length(_) | Quantity::Area(_) => refuse(Kind::UnitMuddle),
            },
            Node::Pair(operator, left, right) => {
                let (l, r) = (left.quantity(unit, names)?, right.quantity(unit, names)?);
                combine(*operator, l, r, unit).map_err(|kind| {
                    let at = if kind == Kind::DivisionByZero {
                        right.at.clone()
                    } else {
                        self.at.clone()
                    };
                    TextProblem::new(at, kind)
                })
            }
        }
    }

    /// Works it out where a length is wanted; a bare number takes `unit`.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be worked out, or for the whole when it is an area
    /// or a plain number, or longer than [`MAX_LENGTH_INCHES`] either way.
    pub fn length(&self, unit: Unit, names: &dyn Names) -> Result<Length, TextProblem> {
        let refuse = |kind| Err(TextProblem::new(self.at.clone(), kind));
        let length = match self.quantity(unit, names)? {
            Quantity::Bare(number) => match Length::of(number, unit) {
                Ok(length) => length,
                Err(OutOfRange) => return refuse(Kind::TooLarge),
            },
            Quantity::Length(length) => length,
            Quantity::Plain(_) => return refuse(Kind::IsPlainNumber),
            Quantity::Area(_) => return refuse(Kind::IsArea),
        };
        if length.abs() > Length::inches(Number::whole(MAX_LENGTH_INCHES)) {
            return refuse(Kind::TooLarge);
        }
        Ok(length)
    }

    /// Works it out where a plain number is wanted.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be worked out, or for the whole when it has a unit.
    pub fn number(&self, unit: Unit, names: &dyn Names) -> Result<Number, TextProblem> {
        match self.quantity(unit, names)? {
            Quantity::Bare(number) | Quantity::Plain(number) => Ok(number),
            Quantity::Length(_) | Quantity::Area(_) => {
                Err(TextProblem::new(self.at.clone(), Kind::IsLength))
            }
        }
    }

    /// Works it out where an area is wanted.
    ///
    /// # Errors
    ///
    /// [`TextProblem`] at the part that cannot be worked out, or for the whole when it is no area.
    pub fn area(&self, unit: Unit, names: &dyn Names) -> Result<Area, TextProblem> {
        match self.quantity(unit, names)? {
            Quantity::Area(area) => Ok(area),
            // `40 × 18` in an area field: both sides bare, so the product is of two lengths.
            Quantity::Bare(number) if matches!(self.node, Node::Pair(Operator::Multiply, ..)) => {
                Length::of(number, unit)
                    .and_then(|l| l * Length::inches(unit.in_inches()))
                    .map_err(|OutOfRange| TextProblem::new(self.at.clone(), Kind::TooLarge))
            }
            Quantity::Bare(_) | Quantity::Plain(_) | Quantity::Length(_) => {
                Err(TextProblem::new(self.at.clone(), Kind::IsNotArea))
            }
        }
    }
}

fn combine(
    operator: Operator,
    left: Quantity,
    right: Quantity,
    unit: Unit,
) -> Result<Quantity, Kind> {
    use Quantity::{Bare, Plain};
    let as_length = |n: Number| Length::of(n, unit).map_err(|OutOfRange| Kind::TooLarge);
    let fits = |OutOfRange| Kind::TooLarge;
    Ok(match operator {
        Operator::Add | Operator::Subtract => {
            let subtract = operator == Operator::Subtract;
            let add_numbers = |a: Number, b: Number| if subtract { a - b } else { a + b };
            let add_lengths = |a: Length, b: Length| if subtract { a - b } else { a + b };
            match (left, right) {
                (Bare(a), Bare(b)) => Bare(add_numbers(a, b).map_err(fits)?),
                (Plain(a), Plain(b) | Bare(b)) | (Bare(a), Plain(b)) => {
                    Plain(add_numbers(a, b).map_err(fits)?)
                }
                (Quantity::Length(a), Quantity::Length(b)) => {
                    Quantity::Length(add_lengths(a, b).map_err(fits)?)
                }
                (Quantity::Length(a), Bare(b)) => {
                    Quantity::Length(add_lengths(a, as_length(b)?).map_err(fits)?)
                }
                (Bare(a), Quantity::Length(b)) => {
                    Quantity::Length(add_lengths(as_length(a)?, b).map_err(fits)?)
                }
                (Quantity::Area(a), Quantity::Area(b)) => {
                    let sum = if subtract { a - b } else { a + b };
                    Quantity::Area(sum.map_err(fits)?)
                }
                _ => return Err(Kind::AddsUnlike),
            }
        }
        Operator::Multiply => match (left, right) {
            (Bare(a), Bare(b)) => Bare((a * b).map_err(fits)?),
            (Bare(a) | Plain(a), Plain(b)) | (Plain(a), Bare(b)) => match (left, right) {
                // A bare amount may still be a length, and a number of lengths is a length.
                (Plain(_), Plain(_)) => Plain((a * b).map_err(fits)?),
                _ => Bare((a * b).map_err(fits)?),
            },
            (Quantity::Length(l), Bare(n) | Plain(n))
            | (Bare(n) | Plain(n), Quantity::Length(l)) => Quantity::Length((l * n).map_err(fits)?),
            (Quantity::Length(a), Quantity::Length(b)) => Quantity::Area((a * b).map_err(fits)?),
            (Quantity::Area(a), Bare(n) | Plain(n)) | (Bare(n) | Plain(n), Quantity::Area(a)) => {
                Quantity::Area((a * n).map_err(fits)?)
            }
            _ => return Err(Kind::BeyondArea),
        },
        Operator::Divide => {
            let is_zero = match right {
                Bare(n) | Plain(n) => n == Number::ZERO,
                Quantity::Length(l) => l.is_zero(),
                Quantity::Area(a) => a == Area::ZERO,
            };
            if is_zero {
                return Err(Kind::DivisionByZero);
            }
            match (left, right) {
                (Bare(a), Bare(b) | Plain(b)) => Bare((a / b).map_err(fits)?),
                (Plain(a), Bare(b) | Plain(b)) => Plain((a / b).map_err(fits)?),
                (Quantity::Length(l), Bare(n) | Plain(n)) => {
                    Quantity::Length((l / n).map_err(fits)?)
                }
                (Quantity::Length(a), Quantity::Length(b)) => Plain((a / b).map_err(fits)?),
                (Bare(a), Quantity::Length(b)) => Plain((as_length(a)? / b).map_err(fits)?),
                (Quantity::Area(a), Bare(n) | Plain(n)) => Quantity::Area((a / n).map_err(fits)?),
                (Quantity::Area(a), Quantity::Length(l)) => {
                    Quantity::Length((a / l).map_err(fits)?)
                }
                (Quantity::Area(a), Quantity::Area(b)) => {
                    Plain((a.in_square_inches() / b.in_square_inches()).map_err(fits)?)
                }
                _ => return Err(Kind::BeyondArea),
            }
        }
    })
}

impl fmt::Display for Formula {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.node {
            Node::Bare(number) => f.write_str(&super::print::mixed(*number)),
            Node::Length(length) => f.write_str(&exact_text(*length)),
            Node::Name(name) => f.write_str(name),
            Node::Negative(inner) => write!(f, "-{inner}"),
            Node::Group(inner, None) => write!(f, "({inner})"),
            Node::Group(inner, Some(unit)) => write!(f, "({inner}) {}", unit.short()),
            Node::Pair(operator, left, right) => write!(f, "{left} {} {right}", operator.sign()),
        }
    }
}
