//! What every calculator shares: what it asks, what it answers, and how it refuses.
//!
//! A calculator has two layers. The inner one is typed: `reckon(&Input) -> Result<Answer,
//! Refused>`. The outer one, made of the types here, lets one page, one link format,
//! one export to JavaScript and one job book serve all calculators: [`Field`]s in, a [`Sheet`]
//! out. An [`Ask`] turns the texts of the fields into an `Input`; the calculator lays its
//! `Answer` out as [`Figure`]s, [`Table`]s, a [`Scene`](crate::drawing::Scene) and a [`Working`].

mod answer;
mod ask;
mod assumed;
mod bench;
mod caution;
mod counts;
mod entries;
mod face;
mod field;
mod list;
mod number;
mod pasted;
mod pieces;
mod refusal;
mod sizes;
mod strip;
mod term;
mod value;
mod working;

pub use answer::{Answer, Column, Figure, Goods, Note, Row, Sheet, Table};
pub use ask::{Ask, Echo};
pub use assumed::{Assumed, in_short, not_yours};
pub use bench::{Bench, Own, Side, WIDEST_KERF};
pub use caution::{Act, Caution, DANGERS};
pub use entries::Entries;
pub use face::{Face, face, face_in_working};
pub use field::{Choice, Field, Kind, Least, Span, Start, When};
pub use list::{
    ListRow, RowPlace, is_counted, is_list, is_named, is_only_text, list_rows, list_text, places,
    with_new_row, with_place, with_row, without_row,
};
pub use pieces::{BoardPrice, CutPiece, MOST_LINES, OnHand, money, split_wide};
pub use refusal::{Refusal, Refused, WayOut};
pub use sizes::PartSize;
pub use strip::{Line, Outcome, Strip};
pub use term::{Amount, Term};
pub use value::Value;
pub use working::{Rounded, Source, Step, Working};

// What a sheet says is made of these.
pub use crate::sentence::{Piece, Sentence, amount_text};
