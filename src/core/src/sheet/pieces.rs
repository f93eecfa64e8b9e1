//! [`CutPiece`], [`BoardPrice`] and [`OnHand`]: the lines of a cutting list, of a yard's prices and of what is on hand,
//! and how they are read.
//!
//! A width stands after the word `wide`, in all three: `33 wide 1 1/2`. A `×` between lengths is a product, as everywhere.

use core::ops::RangeInclusive;

use super::ask::MOST_ITEMS;
use super::counts::{WIDE, count_first, split_count, two_ways};
use super::pasted;
use super::refusal::INVISIBLE;
use super::{Ask, Field, Kind, Refusal, Sentence, WayOut};
use crate::measure::text::{Formula, UNSEEN, decimal, exact_text, is_seen_whole, seen};
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
    /// Above zero; `None` where nothing is said of it.
    pub width: Option<Length>,
}

/// A board on hand: `52`, or `52 wide 5 1/2`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OnHand {
    /// Above zero.
    pub length: Length,
    /// Above zero; `None` where nothing is said of it.
    pub width: Option<Length>,
}

/// A length the yard sells: `96 at 10.90 max 3`, or `96 wide 5 1/2 at 10.90`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BoardPrice {
    /// Above zero.
    pub length: Length,
    /// Above zero; `None` where nothing is said of it.
    pub width: Option<Length>,
    /// In hundredths; more than zero.
    pub cents: Option<i64>,
    /// How many there are, none too; `None` for as many as wanted.
    pub limit: Option<u32>,
}

impl BoardPrice {
    /// As it is written in the list: `96 in at 10.90 max 3`.
    #[must_use]
    pub fn text(&self) -> String {
        let price = self.cents.map_or(String::new(), |cents| format!(" at {}", money(cents)));
        let limit = self.limit.map_or(String::new(), |limit| format!(" max {limit}"));
        format!("{}{price}{limit}", size_text(self.length, self.width))
    }
}

impl OnHand {
    /// As it is written in the list: `52 in wide 5 1/2 in`.
    #[must_use]
    pub fn text(&self) -> String {
        size_text(self.length, self.width)
    }
}

/// A length and the width after it, where there is one: `33 wide 1 1/2`.
#[must_use]
pub fn split_wide(text: &str) -> (&str, Option<&str>) {
    text.split_once(WIDE).map_or((text, None), |(length, width)| (length, Some(width)))
}

/// `20,5` in a list, as it stands and with a point: digits on both sides of a comma without a space, of which the first
/// end no fraction and the last begin none.
fn decimal_comma(text: &str) -> Option<(String, String)> {
    let is_digit = |c: char| c.is_ascii_digit();
    text.match_indices(',').find_map(|(at, _)| {
        let (before, after) = (text.get(..at)?, text.get(at.saturating_add(1)..)?);
        let bare = before.trim_end_matches(is_digit);
        let whole = before.get(bare.len()..)?;
        let rest = after.trim_start_matches(is_digit);
        let part = after.get(..after.len().saturating_sub(rest.len()))?;
        // Nor is `16,20,24` one number.
        let is_row = rest.strip_prefix(',').is_some_and(|next| next.starts_with(is_digit));
        let is_fraction = bare.ends_with(['/', '.', ',']) || rest.starts_with(['/', '.']) || is_row;
        // Of `20,5 1/2`, `20,5 @ 3` and `12,20 to 22` the last is an entry of its own.
        let next = rest.trim_start();
        let goes_on = next.starts_with("to ")
            || next.starts_with(|c: char| is_digit(c) || matches!(c, '@' | 'x' | '×' | ':'));
        let is_one = !whole.is_empty() && !part.is_empty() && !is_fraction && !goes_on;
        is_one.then(|| (format!("{whole},{part}"), format!("{whole}.{part}")))
    })
}

/// A length, and its width where there is one.
fn size_text(length: Length, width: Option<Length>) -> String {
    let wide = width.map_or(String::new(), |width| format!("{WIDE}{}", exact_text(width)));
    format!("{}{wide}", exact_text(length))
}

impl Ask<'_> {
    /// Pieces of a cutting list, separated by commas: `leg: 4 @ 34 1/2, 6 @ 22`. Never empty.
    ///
    /// A whole number before `x` or `×` is a count too, where it cannot be meant the other way round.
    /// Rows from a spreadsheet are read by the names of their columns. Where the boards have widths (`is_wide`), what may
    /// be meant as one is asked.
    pub fn pieces(&mut self, field: &Field, is_wide: bool) -> Option<Vec<CutPiece>> {
        let mut pieces = Vec::new();
        for item in self.entries_of(field)? {
            let (name, rest) = self.named(field, &item)?;
            if let Some((written, words)) = two_ways(rest, is_wide) {
                let before = if name.is_empty() { String::new() } else { format!("{name}: ") };
                let typed = format!("{before}{written}");
                self.ask_again(field, "two-ways", say![words], (&item, &typed));
                return None;
            }
            let (count, text) = match split_count(rest) {
                Some((count, text)) => {
                    (self.how_many(field, count, "First goes how many", 1..=MOST_PIECES)?, text)
                }
                None => (1, rest),
            };
            let (length, width) = self.sized(field, text)?;
            let name = if name.is_empty() { size_text(length, width) } else { name };
            pieces.push(CutPiece { name, count, length, width });
        }
        if pieces.is_empty() {
            self.refuse_field(field, "empty", say!["Write at least one piece, as in 4 @ 34 1/2."]);
            return None;
        }
        let reading = pieces.iter().map(|piece| {
            let size = size_text(piece.length, piece.width);
            if piece.name == size {
                format!("{} @ {size}", piece.count)
            } else {
                format!("{}: {} @ {size}", piece.name, piece.count)
            }
        });
        let reading: Vec<String> = reading.collect();
        self.echo(field, say![reading.join(", ")]);
        Some(pieces)
    }

    /// The name that stands before the colon of an entry, empty for none, and what comes after it.
    pub(super) fn named<'i>(&mut self, field: &Field, item: &'i str) -> Option<(String, &'i str)> {
        let (name, rest) = match item.split_once(':') {
            Some((name, rest)) if is_seen_whole(name.trim()) => (seen(name), rest),
            Some((name, rest)) => {
                let (name, rest) = (seen(name), rest.trim());
                let typed =
                    if name.is_empty() { rest.to_owned() } else { format!("{name}: {rest}") };
                self.ask_again(field, INVISIBLE, say![UNSEEN], (item, &typed));
                return None;
            }
            None => (String::new(), item),
        };
        if name.is_empty()
            && let Some((word, rest)) = name_without_colon(rest)
        {
            let with_colon = format!("{word}: {rest}");
            let words = say!["Put a colon after the name."];
            self.ask_again(field, "no-colon", words, (item, &with_colon));
            return None;
        }
        if name.chars().count() > MOST_NAME {
            let words = format!("A name may have up to {MOST_NAME} characters.");
            self.refuse_field(field, "too-long", say![words]);
            return None;
        }
        Some((name, rest))
    }

    /// Lengths that the yard sells, separated by commas: `96 at 10.90, 120 at 13.95 max 3`. The price and the number
    /// there are may be left out; so may all of it.
    pub fn prices(&mut self, field: &Field) -> Option<Vec<BoardPrice>> {
        let mut boards = Vec::new();
        for item in self.entries_of(field)? {
            let unended = || item.strip_suffix(" max").map(|rest| (rest, ""));
            let (rest, limit) = match item.split_once(" max ").or_else(unended) {
                Some((rest, limit)) => {
                    let what = "After max goes how many there are";
                    (rest, Some(self.how_many(field, limit, what, 0..=MOST_PIECES)?))
                }
                None => (item.as_str(), None),
            };
            let (text, cents) = match rest.split_once(" at ") {
                Some((text, price)) => (text, Some(self.cents(field, price)?)),
                None => (rest, None),
            };
            if let Some((meant, words)) = count_first(text) {
                let (count, size) = meant;
                let price = rest.get(text.len()..).unwrap_or_default();
                let max = item.get(rest.len()..).unwrap_or_default();
                let max = count
                    .filter(|_| max.is_empty())
                    .map_or(max.to_owned(), |count| format!(" max {count}"));
                let written = format!("{size}{price}{max}");
                self.ask_again(field, "two-ways", say![words], (&item, &written));
                return None;
            }
            let (length, width) = self.sized(field, text)?;
            boards.push(BoardPrice { length, width, cents, limit });
        }
        let reading: Vec<String> = boards.iter().map(BoardPrice::text).collect();
        self.echo(
            field,
            say![if reading.is_empty() { "none".to_owned() } else { reading.join(", ") }],
        );
        Some(boards)
    }

    /// Boards on hand, separated by commas: `52, 2 @ 44 wide 5 1/2`; `3 @` stands for three of them. May be empty.
    pub fn on_hand(&mut self, field: &Field) -> Option<Vec<OnHand>> {
        let entries = self.entries_of(field)?;
        let all = self.counted(field, entries, true, Self::sized)?;
        let all: Vec<OnHand> =
            all.into_iter().map(|(length, width)| OnHand { length, width }).collect();
        let reading: Vec<String> = all.iter().map(OnHand::text).collect();
        self.echo(field, say![reading.join(", ")]);
        Some(all)
    }

    /// A length, and its width where one is written.
    fn sized(&mut self, field: &Field, text: &str) -> Option<(Length, Option<Length>)> {
        let (length, width) = split_wide(text);
        let length = self.positive(field, length)?;
        let width = match width {
            Some(width) => Some(self.positive(field, width)?),
            None => None,
        };
        Some((length, width))
    }

    /// The entries of a list, or of rows with tabs, each as it is typed in the list.
    pub(super) fn entries_of(&mut self, field: &Field) -> Option<Vec<String>> {
        let Some(rows) = pasted::entries(&self.text(field), field.kind) else {
            if let Some((tight, point)) = decimal_comma(&self.text(field)) {
                let spaced = tight.replace(',', ", ");
                let words = format!(
                    "“{tight}” can be read two ways: {point}, or two entries. For two write {spaced}."
                );
                self.ask_again(field, "decimal-comma", say![words], (&tight, &point));
                return None;
            }
            return self.items(field);
        };
        let Some(rows) = rows else {
            let (what, such) = match field.kind {
                Kind::Spans => ("two of them From and To", "To and From"),
                _ => ("one of them the length", "Length and Count"),
            };
            let way_out = WayOut::advice(say![format!("Name them in any order, such as {such}.")]);
            let words = say![format!("The first row must name the columns, {what}.")];
            self.keep(Refusal::at(field, "no-columns", words, way_out));
            return None;
        };
        if rows.len() > MOST_ITEMS {
            let words = format!("A list may have up to {MOST_ITEMS} entries.");
            self.refuse_field(field, "too-many", say![words]);
            return None;
        }
        Some(rows)
    }

    /// Refuses an entry that is written in another way, with a tap that writes it so.
    pub(super) fn ask_again(
        &mut self,
        field: &Field,
        code: &'static str,
        words: Sentence,
        (from, to): (&str, &str),
    ) {
        // Of rows with tabs the entries stand nowhere as they are written here.
        let whole = match pasted::entries(&self.text(field), field.kind) {
            Some(Some(entries)) => entries.join(", "),
            _ => self.text(field),
        };
        let whole = whole.replacen(from, to, 1);
        let way_out = WayOut::set(say![format!("Write {to}.")], field, whole);
        self.keep(Refusal::at(field, code, words, way_out));
    }

    pub(super) fn positive(&mut self, field: &Field, text: &str) -> Option<Length> {
        let (_, length) = self.read(field, text.trim(), Formula::length)?;
        if !length.is_positive() {
            self.refuse_field(field, "too-small", say!["Each of these must be more than zero."]);
            return None;
        }
        Some(length)
    }

    /// How many of one entry there are, before its @.
    pub(super) fn count_before(&mut self, field: &Field, text: &str) -> Option<u32> {
        self.how_many(field, text, "Before @ goes how many", 1..=MOST_ITEMS as u32)
    }

    /// A count in an entry of a list; `what` says where it goes.
    fn how_many(
        &mut self,
        field: &Field,
        text: &str,
        what: &str,
        within: RangeInclusive<u32>,
    ) -> Option<u32> {
        let count = if text.trim().is_empty() {
            None
        } else {
            let (_, number) = self.read(field, text.trim(), Formula::number)?;
            let count = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
            count.filter(|count| within.contains(count))
        };
        if count.is_none() {
            let (least, most) = within.into_inner();
            let words = format!("{what}: a whole number from {least} to {most}.");
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
                say!["A price is more than zero and goes to hundredths, as in 10.90. A board that costs nothing is one on my rack."],
            );
        }
        cents
    }
}

/// `leg 4 @ 33`: a name that runs into its count, and what comes after it.
fn name_without_colon(text: &str) -> Option<(&str, &str)> {
    let (before, _) = text.split_once('@')?;
    let name_ends = before.trim_end().rfind(|c: char| !c.is_ascii_digit())? + 1;
    let name = before.get(..name_ends)?.trim();
    let rest = text.get(name_ends..)?.trim();
    let is_name =
        name.starts_with(char::is_alphabetic) && rest.starts_with(|c: char| c.is_ascii_digit());
    is_name.then_some((name, rest))
}

/// Hundredths of the user's money as they are written: `10.90`.
#[must_use]
pub fn money(cents: i64) -> String {
    // A whole number of hundredths always has two exact decimal places.
    Number::ratio(cents.into(), 100).map_or_else(|_| String::new(), |number| decimal(number, 2))
}

/// The most lines of such a list.
pub const MOST_LINES: usize = MOST_ITEMS;

#[cfg(test)]
mod tests;
