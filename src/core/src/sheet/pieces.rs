//! [`CutPiece`] and [`BoardPrice`]: the lines of a cutting list and of a yard's prices, and how they are read.

use super::ask::MOST_ITEMS;
use super::{Ask, Field};
use crate::measure::text::{Formula, decimal, exact_text};
use crate::measure::{Length, Number};
use crate::say;

/// Most pieces of one kind.
const MOST_PIECES: u32 = 1_000;

/// Longest name of a piece, in characters.
const MOST_NAME: usize = 60;

/// Dearest board, in cents.
const MOST_CENTS: i128 = crate::cutting::LARGEST_PRICE_CENTS as i128;

/// So many pieces of one length: `leg: 4 @ 34 1/2`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPiece {
    /// What stands before the colon; the length as written when nothing does.
    pub name: String,
    /// At least one.
    pub count: u32,
    /// Above zero.
    pub length: Length,
}

/// A length the yard sells: `96 at 10.90 max 3`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoardPrice {
    /// Above zero.
    pub length: Length,
    /// In hundredths; more than zero.
    pub cents: Option<i64>,
    /// How many there are; `None` for as many as wanted.
    pub limit: Option<u32>,
}

impl Ask<'_> {
    /// Pieces of a cutting list, separated by commas: `leg: 4 @ 34 1/2, 6 @ 22`. Never empty.
    pub fn pieces(&mut self, field: &Field) -> Option<Vec<CutPiece>> {
        let mut pieces = Vec::new();
        for item in self.items(field)? {
            let (name, rest) = match item.split_once(':') {
                Some((name, rest)) => (name.trim().to_owned(), rest),
                None => (String::new(), item.as_str()),
            };
            if name.chars().count() > MOST_NAME {
                let words = format!("A name may have up to {MOST_NAME} characters.");
                self.refuse_field(field, "too-long", say![words]);
                return None;
            }
            let (count, text) = match rest.split_once('@') {
                Some((count, text)) => (self.whole(field, count, "Before @ goes how many")?, text),
                None => (1, rest),
            };
            let length = self.positive(field, text)?;
            let name = if name.is_empty() { exact_text(length) } else { name };
            pieces.push(CutPiece { name, count, length });
        }
        if pieces.is_empty() {
            self.refuse_field(field, "empty", say!["Write at least one piece, as in 4 @ 34 1/2."]);
            return None;
        }
        let reading = pieces.iter().map(|piece| {
            let length = exact_text(piece.length);
            if piece.name == length {
                format!("{} @ {length}", piece.count)
            } else {
                format!("{}: {} @ {length}", piece.name, piece.count)
            }
        });
        let reading: Vec<String> = reading.collect();
        self.echo(field, say![reading.join(", ")]);
        Some(pieces)
    }

    /// Lengths that the yard sells, separated by commas: `96 at 10.90, 120 at 13.95 max 3`. The price and the number
    /// there are may be left out; so may all of it.
    pub fn prices(&mut self, field: &Field) -> Option<Vec<BoardPrice>> {
        let mut boards = Vec::new();
        for item in self.items(field)? {
            let (rest, limit) = match item.split_once(" max ") {
                Some((rest, limit)) => {
                    (rest, Some(self.whole(field, limit, "After max goes how many there are")?))
                }
                None => (item.as_str(), None),
            };
            let (text, cents) = match rest.split_once(" at ") {
                Some((text, price)) => (text, Some(self.cents(field, price)?)),
                None => (rest, None),
            };
            boards.push(BoardPrice { length: self.positive(field, text)?, cents, limit });
        }
        let reading = boards.iter().map(|board| {
            let price = board.cents.map_or(String::new(), |cents| format!(" at {}", money(cents)));
            let limit = board.limit.map_or(String::new(), |limit| format!(" max {limit}"));
            format!("{}{price}{limit}", exact_text(board.length))
        });
        let reading: Vec<String> = reading.collect();
        self.echo(
            field,
            say![if reading.is_empty() { "none".to_owned() } else { reading.join(", ") }],
        );
        Some(boards)
    }

    fn positive(&mut self, field: &Field, text: &str) -> Option<Length> {
        let (_, length) = self.read(field, text.trim(), Formula::length)?;
        if !length.is_positive() {
            self.refuse_field(field, "too-small", say!["Each of these must be more than zero."]);
            return None;
        }
        Some(length)
    }

    fn whole(&mut self, field: &Field, text: &str, what: &str) -> Option<u32> {
        let (_, number) = self.read(field, text.trim(), Formula::number)?;
        let count = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
        let count = count.filter(|count| (1..=MOST_PIECES).contains(count));
        if count.is_none() {
            let words = format!("{what}: a whole number from 1 to {MOST_PIECES}.");
            self.refuse_field(field, "not-a-count", say![words]);
        }
        count
    }

    fn cents(&mut self, field: &Field, text: &str) -> Option<i64> {
        let (_, number) = self.read(field, text.trim(), Formula::number)?;
        let cents = (number * Number::whole(100)).ok().filter(|cents| cents.is_whole());
        let cents = cents.filter(|cents| (1..=MOST_CENTS).contains(&cents.numer()));
        let cents = cents.and_then(|cents| i64::try_from(cents.numer()).ok());
        if cents.is_none() {
            self.refuse_field(
                field,
                "not-a-price",
                say!["A price is more than zero and goes to hundredths, as in 10.90. A board that costs nothing is one on hand."],
            );
        }
        cents
    }
}

/// Hundredths of the user's money as they are written: `10.90`.
#[must_use]
pub fn money(cents: i64) -> String {
    // A whole number of hundredths always has two exact decimal places.
    Number::ratio(cents.into(), 100).map_or_else(|_| String::new(), |number| decimal(number, 2))
}

/// The most lines of such a list.
pub const MOST_LINES: usize = MOST_ITEMS;
