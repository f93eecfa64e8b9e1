//! A quick list: lengths and boards without a job book, as a form, and as a cutting job.
//!
//! Boards are cut to length only, until they have widths: then a narrower piece is ripped from them. A board's width is
//! what lies between clean edges, so nothing is cleaned off. Where no board has a price, the plan buys the least wood, then
//! the fewest boards.

mod make;
mod widths;

pub(super) use make::board_name;

use super::wanted::{KEEP_FROM, Wanted, end_trim, extra_percent, spare_each};
use crate::calculators::resaw_rip::saw::SHORTEST;
use crate::calculators::{Calculator, Stage};
use crate::cutting::scale::CommonUnit;
use crate::cutting::with_spares;
use crate::measure::Length;
use crate::measure::text::NoNames;
use crate::say;
use crate::sheet::{
    Answer, Ask, Bench, BoardPrice, CutPiece, Entries, Field, Kind, ListRow, OnHand, Sentence,
    Start, list_rows, list_text,
};

/// The form of a quick list.
pub static QUICK_LIST: Calculator = Calculator {
    slug: "cut",
    title: "Cut plan",
    question: "Which boards do I buy, and which piece comes from which?",
    stage: Stage::Wood,
    fields: FIELDS,
    results: &[],
    work,
};

/// Our invented potting bench: what is cut to length from one width.
const PARTS: Field = Field::new(
    "parts",
    "Pieces",
    "how many and how long; a name if you like, and a width where it is ripped",
    Kind::Pieces,
    Start::Text(
        "leg: 4 @ 33 1/2 in, long rail: 4 @ 41 in, short rail: 4 @ 15 1/2 in, slat rail: 3 @ 20 1/2 in",
    ),
);
const BOARDS: Field = Field::new(
    "boards",
    "Boards to buy",
    "length and price; how many, where they have only so many; the width between clean edges where pieces are ripped",
    Kind::Prices,
    Start::Text("96 in at 10.90, 120 in at 13.95, 144 in at 16.40"),
);
const SCRAPS: Field = Field::new(
    "scraps",
    "On my rack",
    "lengths that cost nothing",
    Kind::OnHand,
    Start::Text("52 in"),
);
const KERF: Field = Field::new("kerf", "Kerf", "width of the cut", Kind::ZERO_UP, Start::Kerf);
const END_TRIM: Field = end_trim("of a board that is bought, the cut included");
const SPARE_EACH: Field = spare_each("of each length");
const EXTRA_PERCENT: Field = extra_percent("per cent of each length");

const FIELDS: &[Field] =
    &[PARTS, BOARDS, SCRAPS, KERF, END_TRIM, SPARE_EACH, EXTRA_PERCENT, KEEP_FROM];

fn work(ask: &mut Ask) -> Option<Answer> {
    quick_list(ask);
    None
}

/// What the list asks for.
struct List {
    parts: Vec<CutPiece>,
    boards: Vec<BoardPrice>,
    scraps: Vec<OnHand>,
    kerf: Length,
    end_trim: Length,
    /// The narrowest strip at the fence.
    thinnest: Length,
}

/// What is wrong with a list: field, code and sentence.
type Trouble = (&'static Field, &'static str, Sentence);

/// Reads the form [`QUICK_LIST`]. `None` when a refusal was kept in the [`Ask`].
pub fn quick_list(ask: &mut Ask) -> Option<Wanted> {
    let boards = ask.prices(&BOARDS);
    let scraps = ask.on_hand(&SCRAPS);
    let is_wide = boards.iter().flatten().any(|board| board.width.is_some())
        || scraps.iter().flatten().any(|scrap| scrap.width.is_some());
    let parts = ask.pieces(&PARTS, is_wide);
    let (kerf, end_trim, keep_from) =
        (ask.kerf(&KERF), ask.length(&END_TRIM), ask.length(&KEEP_FROM));
    let (spare_each, extra_percent) = (ask.count(&SPARE_EACH), ask.count(&EXTRA_PERCENT));
    keep_from?;
    let list = List {
        parts: parts?,
        boards: boards?,
        scraps: scraps?,
        kerf: kerf?,
        end_trim: end_trim?,
        thinnest: ask.bench().thinnest_strip,
    };
    if let Some((field, code, sentence)) = list.trouble() {
        ask.refuse_field(field, code, sentence);
        return None;
    }
    let (spare_each, extra_percent) = (spare_each?, extra_percent?);
    match list.wanted() {
        Some(wanted) => {
            Some(Wanted { job: with_spares(&wanted.job, spare_each, extra_percent), ..wanted })
        }
        None => {
            ask.refuse_field(&PARTS, "too-fine", list.too_fine());
            None
        }
    }
}

impl List {
    /// What is wrong with the list as a whole.
    fn trouble(&self) -> Option<Trouble> {
        if !self.boards.iter().any(is_there) && self.scraps.is_empty() {
            let words =
                say!["There is no board to cut from. Write at least one, as in 96 at 10.90."];
            return Some((&BOARDS, "empty", words));
        }
        let priced = self.boards.iter().filter(|board| board.cents.is_some()).count();
        if priced > 0 && priced < self.boards.len() {
            let without = self.boards.iter().find(|board| board.cents.is_none())?;
            let words =
                say![without.length, " has no price. Give every board a price, or none of them."];
            return Some((&BOARDS, "no-price", words));
        }
        let bare = self.boards.iter().find(|board| is_there(board) && self.clear(board).is_none());
        if let Some(board) = bare {
            let words =
                say!["The end trims leave nothing of a board of ", board.length, ". Trim less."];
            return Some((&END_TRIM, "nothing-left", words));
        }
        self.trouble_with_widths().or_else(|| self.too_long())
    }

    /// What the end trims leave of a board; `None` for nothing.
    fn clear(&self, board: &BoardPrice) -> Option<Length> {
        let clear = (self.end_trim * 2).and_then(|trims| board.length - trims).ok();
        clear.filter(|clear| clear.is_positive())
    }

    /// A piece that is longer than what any board gives that is wide enough for it.
    fn too_long(&self) -> Option<Trouble> {
        let (part, longest) = self.parts.iter().find_map(|part| {
            let longest = self.longest_for(part);
            (Some(part.length) > longest).then_some((part, longest))
        })?;
        let words = match longest {
            Some(longest) => say![
                part.name.clone(),
                " is longer than every board: the longest gives ",
                longest,
                ". Add a longer board."
            ],
            None => say![
                part.name.clone(),
                " has to be ripped, and what is shorter than ",
                SHORTEST,
                " is not. Add a longer board."
            ],
        };
        Some((&PARTS, "too-long", words))
    }

    fn lengths(&self) -> Vec<Length> {
        let parts = self.parts.iter().map(|part| part.length);
        let boards = self.boards.iter().map(|board| board.length);
        let all = parts.chain(boards).chain(self.scraps.iter().map(|scrap| scrap.length));
        let all = all.chain([self.kerf, self.end_trim]);
        // Widths that nothing is ripped to would only make the unit finer.
        let ripped =
            self.rips().then(|| self.widths().into_iter().chain([self.thinnest, SHORTEST]));
        all.chain(ripped.into_iter().flatten()).collect()
    }

    /// The length that does not go together with the others is the finest of them.
    fn too_fine(&self) -> Sentence {
        let all = self.lengths();
        let finest = all.iter().max_by_key(|length| length.in_inches().denom());
        say![
            finest.copied().unwrap_or(Length::ZERO),
            " is a fraction that does not go together with the other lengths. Write it to a mark of the tape."
        ]
    }

    /// The cutting job; `None` when the lengths have no unit in common that is coarse enough.
    fn wanted(&self) -> Option<Wanted> {
        let fractions: Vec<(i128, i128)> = self
            .lengths()
            .iter()
            .map(|length| (length.in_inches().numer(), length.in_inches().denom()))
            .collect();
        let unit = CommonUnit::of(&fractions).ok()?;
        self.in_units(unit).ok()
    }
}

/// Whether the yard has any of it.
fn is_there(board: &BoardPrice) -> bool {
    board.limit != Some(0)
}

/// The text of the boards to buy where the yard has none of the size of one of them, by its place in the list. `None`
/// when the list cannot be read, or has no such board.
#[must_use]
pub fn none_of(entries: &Entries, bench: &Bench, board: usize) -> Option<String> {
    let mut ask = Ask::new(FIELDS, entries, bench, &NoNames);
    let field = &BOARDS;
    let boards = ask.prices(field)?;
    let size = |board: &BoardPrice| (board.length, board.width);
    let gone = size(boards.get(board)?);
    let is_gone: Vec<bool> = boards.iter().map(|board| size(board) == gone).collect();
    let text = ask.text(field);
    let mut rows = list_rows(&text, field.kind);
    let is_written = |row: &ListRow| {
        [&row.size, &row.price, &row.count].iter().any(|text| !text.trim().is_empty())
    };
    let written = rows.iter_mut().filter(|row| is_written(row));
    for (row, _) in written.zip(&is_gone).filter(|(_, is_gone)| **is_gone) {
        row.count = "0".to_owned();
    }
    Some(list_text(&rows, field.kind))
}

#[cfg(test)]
mod tests;
