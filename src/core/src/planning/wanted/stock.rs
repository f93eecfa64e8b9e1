//! The boards of the job book with their sizes worked out, and the sections that they come in.

use super::{Options, WantedProblem, problem::Named};
use crate::job::{Item, ItemId, Job, Reckoned};
use crate::measure::Length;
use crate::sheet::{Ask, Bench, Entries, Field, Kind, Span, Start};

/// A board of the rack or the yard, its sizes not yet read.
pub(super) struct RawBoard<'a> {
    pub(super) named: Named,
    pub(super) section: &'a str,
    thickness: &'a str,
    width: &'a str,
    length: &'a str,
    knots: &'a str,
    pub(super) on_hand: Option<u32>,
    pub(super) wet: bool,
    sawn_ends: bool,
    price: u64,
    limit: Option<u32>,
}

/// A board with its sizes worked out.
#[derive(Clone, Debug)]
pub(super) struct StockBoard {
    pub(super) named: Named,
    /// As the user writes it.
    pub(super) section: String,
    pub(super) thickness: Length,
    pub(super) width: Length,
    pub(super) length: Length,
    pub(super) knots: Vec<Span>,
    /// How many are on hand; `None` for a board of the yard.
    pub(super) on_hand: Option<u32>,
    /// Both ends are sawn: nothing is trimmed off.
    pub(super) sawn_ends: bool,
    pub(super) price_cents: i64,
    pub(super) limit: Option<u32>,
}

/// Every board that a plan may use.
pub(super) fn boards<'a>(job: &'a Job, options: &Options) -> Vec<RawBoard<'a>> {
    let named = |item: ItemId, name: &str, section: &str| Named {
        item,
        name: if name.trim().is_empty() { section.trim() } else { name.trim() }.to_owned(),
    };
    let all = job.items().filter_map(|(id, item)| match item {
        Item::RackBoard(board) if board.quantity > 0 => Some(RawBoard {
            named: named(id, &board.name, &board.section),
            section: &board.section,
            thickness: &board.thickness,
            width: &board.width,
            length: &board.length,
            knots: &board.knots,
            on_hand: Some(board.quantity),
            wet: board.wet,
            sawn_ends: board.sawn_ends,
            price: 0,
            limit: None,
        }),
        Item::YardBoard(board) if !options.rack_only => Some(RawBoard {
            named: named(id, "", &board.section),
            section: &board.section,
            thickness: &board.thickness,
            width: &board.width,
            length: &board.length,
            knots: "",
            on_hand: None,
            wet: false,
            sawn_ends: false,
            price: board.price,
            limit: board.quantity,
        }),
        _ => None,
    });
    all.collect()
}

impl RawBoard<'_> {
    /// Works its sizes out.
    ///
    /// # Errors
    ///
    /// All that is wrong with it.
    pub(super) fn read(
        &self,
        reckoned: &Reckoned,
        bench: &Bench,
    ) -> Result<StockBoard, Vec<WantedProblem>> {
        let mut problems = Vec::new();
        let mut size = |which: &'static str, text: &str| match reckoned.length_of(text) {
            Ok(length) if length.is_positive() => Some(length),
            Ok(_) => {
                problems.push(WantedProblem::NotPositive { of: self.named.clone(), which });
                None
            }
            Err(problem) => {
                let of = self.named.clone();
                problems.push(WantedProblem::Size { of, which, why: problem.to_string() });
                None
            }
        };
        let thickness = size("thickness", self.thickness);
        let width = size("width", self.width);
        let length = size("length", self.length);
        let knots = match places_to_keep_out_of(self.knots, reckoned, bench) {
            Ok(knots) => knots,
            Err(why) => {
                let (of, which) = (self.named.clone(), "place to keep clear of");
                problems.push(WantedProblem::Size { of, which, why });
                Vec::new()
            }
        };
        if self.on_hand.is_none() && self.price == 0 {
            problems.push(WantedProblem::NoPrice { of: self.named.clone() });
        }
        match (thickness, width, length) {
            (Some(thickness), Some(width), Some(length)) if problems.is_empty() => Ok(StockBoard {
                named: self.named.clone(),
                section: self.section.trim().to_owned(),
                thickness,
                width,
                length,
                knots,
                on_hand: self.on_hand,
                sawn_ends: self.sawn_ends,
                price_cents: i64::try_from(self.price).unwrap_or(i64::MAX),
                limit: self.limit,
            }),
            _ => Err(problems),
        }
    }
}

const KNOTS: Field = Field::new("knots", "", "", Kind::Spans, Start::Text(""));

/// Zones as a board of the rack writes them.
///
/// # Errors
///
/// What is wrong with them, in sentences.
pub fn places_to_keep_out_of(
    text: &str,
    reckoned: &Reckoned,
    bench: &Bench,
) -> Result<Vec<Span>, String> {
    let mut entries = Entries::from_pairs([(KNOTS.id, text)]);
    entries.set_unit(Some(reckoned.unit()));
    let mut ask = Ask::new(const { &[KNOTS] }, &entries, bench, reckoned);
    let spans = ask.spans(&KNOTS);
    let (_, refusals) = ask.finish();
    let why = || refusals.iter().map(|r| r.sentence.to_string()).collect::<Vec<_>>().join(" ");
    spans.ok_or_else(why)
}
