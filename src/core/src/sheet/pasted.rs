//! Rows pasted from a spreadsheet into a list: their columns in any order, as the first row names them.

use super::Kind;
use super::counts::WIDE;

/// A column that a list knows: what it holds, and what people call it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Column {
    /// Which part of an entry it is.
    part: Part,
    names: &'static [&'static str],
}

/// A part of an entry of a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Part {
    Name,
    Count,
    Length,
    Width,
    Thickness,
    Price,
    Limit,
    From,
    To,
}

const NAME: Column =
    Column { part: Part::Name, names: &["name", "part", "piece", "what", "label", "item"] };
const COUNT: Column = Column {
    part: Part::Count,
    names: &["count", "qty", "quantity", "how many", "number", "no", "pcs", "pieces", "n"],
};
const LENGTH: Column =
    Column { part: Part::Length, names: &["length", "long", "how long", "size", "l", "board"] };
const WIDTH: Column = Column { part: Part::Width, names: &["width", "wide", "w"] };
const THICKNESS: Column = Column { part: Part::Thickness, names: &["thickness", "thick", "t"] };
const PRICE: Column = Column { part: Part::Price, names: &["price", "cost", "each"] };
const LIMIT: Column = Column { part: Part::Limit, names: &["max", "stock", "there are"] };

const FROM: Column = Column { part: Part::From, names: &["from", "begins", "begin", "start"] };
const TO: Column = Column { part: Part::To, names: &["to", "ends", "end"] };

/// The columns of a list of lengths, of boards on hand, of a cutting list, of the parts of a surface, of a yard's prices,
/// and of zones.
const OF_LENGTHS: &[Column] = &[COUNT, LENGTH];
const OF_STOCK: &[Column] = &[COUNT, LENGTH, WIDTH];
const OF_PIECES: &[Column] = &[NAME, COUNT, LENGTH, WIDTH];
const OF_SIZES: &[Column] = &[NAME, COUNT, LENGTH, WIDTH, THICKNESS];
const OF_PRICES: &[Column] = &[LENGTH, WIDTH, PRICE, LIMIT];
const OF_SPANS: &[Column] = &[FROM, TO];

/// A cell by its part, with the unit that its heading names.
struct Cell {
    part: Part,
    text: String,
}

/// One row: its cells that hold something.
struct Row(Vec<Cell>);

impl Row {
    /// The text of a part.
    fn get(&self, part: Part) -> Option<&str> {
        self.0.iter().find(|cell| cell.part == part).map(|cell| cell.text.as_str())
    }
}

fn name_of_row(row: &Row) -> String {
    row.get(Part::Name).map(|name| format!("{name}: ")).unwrap_or_default()
}

fn piece_of_row(row: &Row) -> String {
    let count = row.get(Part::Count).unwrap_or("1");
    format!("{}{count} @ {}", name_of_row(row), sized_of_row(row))
}

fn sized_of_row(row: &Row) -> String {
    let wide = row.get(Part::Width).map(|width| format!("{WIDE}{width}")).unwrap_or_default();
    format!("{}{wide}", row.get(Part::Length).unwrap_or_default())
}

fn stock_of_row(row: &Row) -> String {
    let count = row.get(Part::Count).map(|count| format!("{count} @ ")).unwrap_or_default();
    format!("{count}{}", sized_of_row(row))
}

fn price_of_row(row: &Row) -> String {
    let price = row.get(Part::Price).map(|price| format!(" at {price}")).unwrap_or_default();
    let limit = row.get(Part::Limit).map(|limit| format!(" max {limit}")).unwrap_or_default();
    format!("{}{price}{limit}", sized_of_row(row))
}

fn part_of_row(row: &Row) -> String {
    let side = |part| row.get(part).unwrap_or_default();
    let count = row.get(Part::Count).unwrap_or("1");
    let [length, width] = [Part::Length, Part::Width].map(side);
    let thickness = side(Part::Thickness);
    format!("{}{count} @ {length} × {width} × {thickness}", name_of_row(row))
}

fn zone_of_row(row: &Row) -> String {
    let [from, to] = [Part::From, Part::To].map(|part| row.get(part).unwrap_or_default());
    format!("{from} to {to}")
}

/// The entries of a list from rows with tabs, each as it is typed in the list; `Some(None)` where the first row does not
/// name its columns, and `None` for what is no such text.
pub(super) fn entries(text: &str, kind: Kind) -> Option<Option<Vec<String>>> {
    let (columns, entry): (&[Column], fn(&Row) -> String) = match kind {
        Kind::Lengths => (OF_LENGTHS, stock_of_row),
        Kind::OnHand => (OF_STOCK, stock_of_row),
        Kind::Pieces => (OF_PIECES, piece_of_row),
        Kind::Prices => (OF_PRICES, price_of_row),
        Kind::Sizes => (OF_SIZES, part_of_row),
        Kind::Spans => (OF_SPANS, zone_of_row),
        _ => return None,
    };
    Some(rows(text, columns)?.map(|rows| rows.iter().map(entry).collect()))
}

/// The rows of a text with tabs; `Some(None)` where the first row does not name its columns, and `None`
/// for a text without tabs.
fn rows(text: &str, known: &[Column]) -> Option<Option<Vec<Row>>> {
    if !text.contains('\t') {
        return None;
    }
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let headings: Vec<Option<(Part, &str)>> =
        lines.next().unwrap_or_default().split('\t').map(|it| heading(it, known)).collect();
    // A length is what every list is about, and of a zone where it begins and ends.
    let is_needed = |it: &&Column| matches!(it.part, Part::Length | Part::From | Part::To);
    let is_named = |it: &Column| headings.iter().flatten().any(|(part, _)| *part == it.part);
    if !known.iter().filter(is_needed).all(is_named) {
        return Some(None);
    }
    let row = |line: &str| {
        let cells = line.split('\t').zip(&headings).filter_map(|(cell, heading)| {
            let (part, unit) = (*heading)?;
            let cell = cell.trim().trim_matches('"').trim();
            // What separates entries and their parts stands in no cell.
            let cell = with_points(cell).replace([',', ';', ':', '@'], " ");
            let is_number = !cell.trim().is_empty()
                && cell.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '/' | ' '));
            let text = if is_number && !unit.is_empty() { format!("{cell} {unit}") } else { cell };
            (!text.trim().is_empty()).then_some(Cell { part, text })
        });
        Row(cells.collect())
    };
    Some(Some(lines.map(row).filter(|row| !row.0.is_empty()).collect()))
}

/// `33,5` with a point. Three digits behind a comma may be thousands, and words have no decimals.
fn with_points(cell: &str) -> String {
    let after = |part: &str| part.chars().take_while(char::is_ascii_digit).count();
    let is_decimal = cell.starts_with(|c: char| c.is_ascii_digit())
        && cell.split(',').skip(1).all(|part| !matches!(after(part), 0 | 3));
    if is_decimal { cell.replace(',', ".") } else { cell.to_owned() }
}

/// What a heading such as `Length (mm)` says, and the unit it names.
fn heading<'a>(text: &'a str, known: &[Column]) -> Option<(Part, &'a str)> {
    let (name, unit) = match text.split_once(['(', '/', '[']) {
        Some((name, unit)) => (name, unit.trim_end_matches([')', ']', ' ']).trim()),
        None => (text, ""),
    };
    let name = name.trim().trim_matches('"').to_lowercase();
    let column = known.iter().find(|column| column.names.contains(&name.as_str()))?;
    let is_length = !matches!(column.part, Part::Name | Part::Count | Part::Price | Part::Limit);
    let unit = ["in", "mm", "cm", "m", "ft"].contains(&unit).then_some(unit);
    Some((column.part, unit.filter(|_| is_length).unwrap_or_default()))
}
