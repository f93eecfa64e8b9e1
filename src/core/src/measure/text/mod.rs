//! What people write for a measure, and how it is written back.
//!
//! # Grammar
//!
//! ```text
//! formula   = term { ("+" | "-") term }
//! term      = factor { ("×" | "÷") factor }         left to right, before + and -
//! factor    = ["+" | "-"] ( measure | name | "(" formula ")" [unit] )
//! measure   = amount [unit]                         a bare amount takes the user's unit
//!           | amount foot ["-"] amount [inch]       2' 4 1/2"   2 ft 4 in   2'-4"   2' 4
//!           | amount metre amount (cm | mm)         1 m 20 cm
//!           | amount cm amount mm
//! amount    = digits | decimal | fraction           3   3.375   .5   3/8   ⅜
//!           | digits spaces fraction                3 3/8    (the fraction below one)
//!           | digits "-" fraction                   3-3/8    (no space on either side)
//!           | digits ⅜                              3⅜
//! fraction  = digits "/" digits                     no spaces inside: one number, binds first
//! unit      = in inch inches " ″ ” '' | ft foot feet ' ′ ’ ´ | mm | cm | m and their long names
//! "×"       = × x * ·          "÷" = ÷ /          "-" = - − –
//! ```
//!
//! - `3-3/8` without spaces is the mixed number 3 3/8; `3 - 3/8` is a subtraction. What could be
//!   read both ways is refused: a chain such as `6-3-3/8`, a space on one side only (`3 -3/8`,
//!   `2' -4"`), and a dash that is no hyphen (`3–3/8`).
//! - The part after a larger unit is less than one of it: `2' 14"` is refused.
//! - `2x4` and its kin, with the letter and without spaces, are names of boards and refused.
//! - An `=` at the end is passed over. Digits in groups (`1,000`), a space inside a fraction,
//!   wide or raised digits and characters that cannot be seen are refused, each with its reason.
//! - Length × length is an area and length ÷ length a plain number; each is refused where a
//!   length is wanted. Amounts without any unit (`2 × 3 1/4`) stay plain until the end and then
//!   take the user's unit.
//! - A decimal comma is refused, because lists use the comma.
//! - Names are those of the caller, found by longest match, whatever characters they hold.
//! - Text is at most [`MAX_TEXT`](super::limits::MAX_TEXT) characters, nests at most
//!   [`MAX_DEPTH`](super::limits::MAX_DEPTH) deep, a number has at most
//!   [`MAX_DIGITS`](super::limits::MAX_DIGITS) digits, and a written length is at most
//!   [`MAX_LENGTH_INCHES`](super::limits::MAX_LENGTH_INCHES).

mod amount;
mod formula;
mod parse;
mod plain;
mod print;
mod problem;
mod seen;
mod spoken;
#[cfg(test)]
mod tests;
mod written;

pub use formula::{Formula, Names, NoNames, Operator, Quantity};
pub use parse::parse;
pub use plain::{exact_number, length, number};
pub(crate) use print::trim_zeros;
pub use print::{Shown, decimal, exact_text, show};
pub use problem::{TextProblem, TextProblemKind};
pub use seen::{UNSEEN, is_invisible, is_seen_whole, seen};
pub use spoken::number_in_words;
pub use written::Written;
