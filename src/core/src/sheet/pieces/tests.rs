//! Lists of pieces, of prices and of boards on hand, as they are read.

use super::*;
use crate::measure::text::NoNames;
use crate::measure::{Tape, length};
use crate::sheet::{Bench, Entries, Start, list_rows};

const FIELDS: &[Field] = &[
    Field::new("parts", "Pieces", "", Kind::Pieces, Start::Text("")),
    Field::new("boards", "Boards", "", Kind::Prices, Start::Text("")),
    Field::new("lengths", "Lengths", "", Kind::Lengths, Start::Text("")),
    Field::new("stock", "On hand", "", Kind::OnHand, Start::Text("")),
];

fn pieces(text: &str) -> Result<Vec<(String, u32, Length)>, Box<Refusal>> {
    pieces_of(text, false)
}

fn pieces_of(text: &str, is_wide: bool) -> Result<Vec<(String, u32, Length)>, Box<Refusal>> {
    let (entries, bench) = (Entries::from_pairs([("parts", text)]), Bench::default());
    let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
    let pieces = ask.pieces(&FIELDS[0], is_wide);
    let plain = |it: CutPiece| (it.name, it.count, it.length);
    pieces
        .map(|all| all.into_iter().map(plain).collect())
        .ok_or_else(|| Box::new(ask.finish().1.remove(0)))
}

fn piece(name: &str, count: u32, long: &str) -> (String, u32, Length) {
    (name.to_owned(), count, length(long).expect("a length"))
}

/// What is asked once more, and what its tap writes.
fn asked(text: &str) -> (&'static str, String) {
    asked_of(text, false)
}

fn asked_of(text: &str, is_wide: bool) -> (&'static str, String) {
    let refusal = pieces_of(text, is_wide).expect_err(text);
    let way_out = refusal.way_out.expect("a tap").texts(Tape::SIXTEENTHS);
    (refusal.code, way_out[0].1.clone())
}

#[test]
fn a_list_of_lengths_takes_rows_of_a_spreadsheet_too() {
    let lengths = |text: &str| {
        let (entries, bench) = (Entries::from_pairs([("lengths", text)]), Bench::default());
        Ask::new(FIELDS, &entries, &bench, &NoNames).lengths(&FIELDS[2])
    };
    let [wide, narrow] = ["5 1/2", "3 1/2"].map(|it| length(it).expect("a length"));
    let wanted = Some(vec![wide, wide, narrow]);
    for text in ["2 @ 5 1/2, 3 1/2", "Qty\tLength\n2\t5 1/2\n\t3 1/2", "size (in)\n5 1/2"] {
        let is_table = text.contains('\t') || text.contains('@');
        assert_eq!(lengths(text), wanted.clone().filter(|_| is_table), "{text:?}");
    }
}

#[test]
fn a_count_stands_before_an_x_or_an_at() {
    for text in ["4 @ 33 1/2", "4 x 33 1/2", "4 × 33 1/2", "4x33 1/2", "4X 33 1/2"] {
        assert_eq!(pieces(text), Ok(vec![piece("33 1/2 in", 4, "33 1/2")]), "{text}");
    }
    assert_eq!(pieces("leg: 4 x 33"), Ok(vec![piece("leg", 4, "33")]));
    assert_eq!(pieces("box side: 2 @ 12"), Ok(vec![piece("box side", 2, "12")]));
}

#[test]
fn what_can_be_read_two_ways_is_asked() {
    for (text, meant) in [
        ("33 x 4", "4 @ 33"),
        ("33 1/2 x 4", "4 @ 33 1/2"),
        ("2 @ 12, leg: 33 × 4", "2 @ 12, leg: 4 @ 33"),
    ] {
        assert_eq!(asked(text), ("two-ways", meant.to_owned()));
        assert!(pieces(meant).is_ok(), "{meant}");
    }
}

/// Boards on hand and plain lengths count as pieces do. By hand: 4 of 22, not one of 88.
#[test]
fn a_count_stands_before_an_x_in_every_list() {
    let read = |id: &'static str, text: &str| {
        let (entries, bench) = (Entries::from_pairs([(id, text)]), Bench::default());
        let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
        let found = match id {
            "boards" => {
                ask.prices(&FIELDS[1]).map(|all| all.into_iter().map(|it| it.length).collect())
            }
            "lengths" => ask.lengths(&FIELDS[2]),
            _ => ask.on_hand(&FIELDS[3]).map(|all| all.into_iter().map(|it| it.length).collect()),
        };
        let way_out = ask.finish().1.into_iter().find_map(|it| it.way_out);
        found.ok_or_else(|| way_out.expect("a tap").texts(Tape::SIXTEENTHS)[0].1.clone())
    };
    for id in ["lengths", "stock"] {
        let long = |text: &str| length(text).expect("a length");
        for text in ["4 @ 22", "4 x 22", "4 × 22", "4x22"] {
            assert_eq!(read(id, text), Ok(vec![long("22"); 4]), "{id} {text}");
        }
        assert_eq!(read(id, "33 x 4"), Err("4 @ 33".to_owned()), "{id}");
        // Rows of a spreadsheet become a list by the tap.
        assert_eq!(
            read(id, "No\tLength\n2\t41\n\t33 x 4"),
            Err("2 @ 41, 4 @ 33".to_owned()),
            "{id}"
        );
        assert_eq!(read(id, "7, 33 1/2 x 4"), Err("7, 4 @ 33 1/2".to_owned()), "{id}");
        // By hand: 12 + 2 × 4 is 20, and no count of anything.
        assert_eq!(read("lengths", "12 + 2 x 4"), Ok(vec![long("20")]));
    }
    assert_eq!(read("lengths", "33 x 1 1/2"), Err("33 @ 1 1/2".to_owned()));
    assert_eq!(read("stock", "52 x 5 1/2"), Err("52 wide 5 1/2".to_owned()));
    // Of boards to buy the count stands last: 4 of 96, and none of 384.
    for (text, meant) in [
        ("4 x 96 at 10.90", "96 at 10.90 max 4"),
        ("96 x 4 at 10.90", "96 at 10.90 max 4"),
        ("8, 4 @ 96", "8, 96 max 4"),
        ("4 @ 96 at 10.90 max 3", "96 at 10.90 max 3"),
        ("96 x 5 1/2 at 10.90", "96 wide 5 1/2 at 10.90"),
        ("4 @ 96 x 5 1/2", "96 wide 5 1/2 max 4"),
        ("Board\tPrice\n4 x 96\t10.90", "96 at 10.90 max 4"),
    ] {
        assert_eq!(read("boards", text), Err(meant.to_owned()), "{text}");
        assert!(read("boards", meant).is_ok(), "{meant}");
    }
}

/// What is said to a text in a list, and what its tap writes.
fn asked_in(id: &'static str, text: &str) -> (String, String) {
    let (entries, bench) = (Entries::from_pairs([(id, text)]), Bench::default());
    let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
    let is_read = match id {
        "parts" => ask.pieces(&FIELDS[0], true).is_some(),
        "boards" => ask.prices(&FIELDS[1]).is_some(),
        "lengths" => ask.lengths(&FIELDS[2]).is_some(),
        _ => ask.on_hand(&FIELDS[3]).is_some(),
    };
    assert!(!is_read, "{id} {text}");
    let refusal = ask.finish().1.remove(0);
    assert_eq!(refusal.code, "two-ways", "{id} {text}");
    let typed = refusal.way_out.expect("a tap").texts(Tape::SIXTEENTHS);
    (refusal.sentence.to_string(), typed[0].1.clone())
}

/// A section before its length, as it is said at a yard, was 2 boards of 4 × 96 = 384, without a word. The longest of the
/// sizes is the length, and what stands before an @, or before all three sides, the count.
#[test]
fn a_section_before_a_length_is_asked_in_every_list() {
    for (text, stock, boards, lengths) in [
        ("2 x 4 x 96", "96", "96", "96"),
        ("2x4x8 ft", "8 ft", "8 ft", "8 ft"),
        ("38 × 89 × 2.4 m", "2.4 m", "2.4 m", "2.4 m"),
        ("3 @ 2 x 4 x 96", "3 @ 96", "96 max 3", "3 @ 96"),
        ("3 x 2 x 4 x 96", "3 @ 96", "96 max 3", "3 @ 96"),
        ("4 x 33 x 1 1/2", "4 @ 33 wide 1 1/2", "33 wide 1 1/2 max 4", "4 @ 33"),
        ("33 x 3 1/2 x 3/4", "33 wide 3 1/2", "33 wide 3 1/2", "33"),
        ("4 @ 33 x 3 1/2 x 3/4", "4 @ 33 wide 3 1/2", "33 wide 3 1/2 max 4", "4 @ 33"),
    ] {
        for (id, meant) in
            [("parts", stock), ("stock", stock), ("boards", boards), ("lengths", lengths)]
        {
            assert_eq!(asked_in(id, text).1, meant, "{id} {text}");
        }
        // Its row has no number that could be counted up, unless that stands before an @.
        let counted = list_rows(text, Kind::OnHand)[0].counted(Kind::OnHand);
        assert_eq!(counted.is_some(), text.contains('@'), "{text}");
    }
    assert_eq!(
        asked_in("stock", "2 x 4 x 96").0,
        "“2 x 4 x 96” can be read two ways: a 2 x 4 that is 96 long, or a length worked out. Here goes the length. A \
         width goes after the word wide; the thickness is not asked."
    );
    assert_eq!(asked_in("boards", "52, 2 x 4 x 96 at 10.90 max 3").1, "52, 96 at 10.90 max 3");
    assert_eq!(asked_in("parts", "leg: 2 x 4 x 96").1, "leg: 96");
    // By hand: a length that is worked out is one of 12 + 2 × 4 × 3 = 36, or of 2 × 3 × 4 = 24.
    assert_eq!(pieces("12 + 2 x 4 x 3"), Ok(vec![piece("36 in", 1, "36")]));
    assert_eq!(pieces("3 @ 2 * 3 * 4"), Ok(vec![piece("24 in", 3, "24")]));
}

/// With widths, what may be one is asked; without, a × is what it always was.
#[test]
fn what_may_be_a_width_is_asked_where_the_boards_have_one() {
    for (text, meant) in [
        ("leg: 4 @ 33 x 1 1/2", "leg: 4 @ 33 wide 1 1/2"),
        ("4 @ 33 × 1 1/2", "4 @ 33 wide 1 1/2"),
        ("33 1/2 x 1 1/2", "33 1/2 wide 1 1/2"),
        ("33 x 1 1/2", "33 wide 1 1/2"),
    ] {
        assert_eq!(asked_of(text, true), ("two-ways", meant.to_owned()), "{text}");
        assert!(pieces_of(meant, true).is_ok(), "{meant}");
    }
    // A count before a longer length can be nothing else.
    assert_eq!(pieces_of("4 x 33 1/2", true), pieces("4 x 33 1/2"));
    // Without widths too it may be meant as one, or as a product.
    assert_eq!(asked("33 x 1 1/2"), ("two-ways", "33 @ 1 1/2".to_owned()));
    // By hand: 2 × 33 is 66.
    assert_eq!(pieces("leg: 4 @ 2 × 33"), Ok(vec![piece("leg", 4, "66")]));
}

#[test]
fn a_width_stands_after_wide_in_pieces_boards_and_on_hand() {
    let texts = [
        ("parts", "leg: 4 @ 33 wide 1 1/2, 12 ft wide 38 mm, 20"),
        ("boards", "8 ft wide 5 1/2 at 10.90 max 3, 120 wide 7 1/4 at 13.95"),
        ("stock", "2 @ 52 wide 5 1/2, 30"),
    ];
    let (entries, bench) = (Entries::from_pairs(texts), Bench::default());
    let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
    let long = |text: &str| length(text).expect("a length");
    let parts = ask.pieces(&FIELDS[0], true).expect("pieces");
    let seen: Vec<_> = parts.iter().map(|it| (it.name.as_str(), it.width)).collect();
    assert_eq!(
        seen,
        [("leg", Some(long("1 1/2"))), ("144 in wide 38 mm", Some(long("38 mm"))), ("20 in", None)]
    );
    let boards = ask.prices(&FIELDS[1]).expect("boards");
    let seen: Vec<_> = boards.iter().map(BoardPrice::text).collect();
    assert_eq!(seen, ["96 in wide 5 1/2 in at 10.90 max 3", "120 in wide 7 1/4 in at 13.95"]);
    let stock = ask.on_hand(&FIELDS[3]).expect("boards on hand");
    let seen: Vec<_> = stock.iter().map(OnHand::text).collect();
    assert_eq!(seen, ["52 in wide 5 1/2 in", "52 in wide 5 1/2 in", "30 in"]);
    for text in ["33 wide", "33 wide 0", "33 wide -2", "33 wide 1 wide 2", "wide 3"] {
        assert!(pieces_of(text, true).is_err(), "{text}");
    }
    // Rows of a spreadsheet may have a column for it.
    let rows = pieces_of("Name\tLength\tWidth (mm)\tQty\nslat\t20\t38\t2", true);
    assert_eq!(rows, Ok(vec![piece("slat", 2, "20")]));
}

/// A list of `3 @ 20,5` was one of 20 and one of 5, without a word.
#[test]
fn a_comma_between_digits_is_asked() {
    assert_eq!(asked("3 @ 20,5"), ("decimal-comma", "3 @ 20.5".to_owned()));
    assert_eq!(asked("2 @ 41,25, 2 @ 10"), ("decimal-comma", "2 @ 41.25, 2 @ 10".to_owned()));
    let long = |text: &str| length(text).expect("a length");
    let two = [(4, long("16")), (5, long("3"))];
    for text in ["4 @ 16, 5 @ 3", "4 @ 16,5 @ 3", "4 @ 16;5 @ 3", "4 @ 16 ,5 @ 3"] {
        let found = pieces(text).expect("two entries");
        let seen: Vec<_> = found.iter().map(|(_, count, length)| (*count, *length)).collect();
        assert_eq!(seen, two, "{text}");
    }
    assert_eq!(pieces("33 1/2,22").expect("two entries").len(), 2);
    assert_eq!(pieces("20,5 1/2").expect("two entries").len(), 2);
    assert_eq!(pieces("16,20,24").expect("three entries").len(), 3);
}

/// UAX 9: U+202E turns what follows it; U+200B has no width, and U+2800 no dot. UTS 51: U+2764 U+FE0F is a red heart.
#[test]
fn a_name_of_which_something_cannot_be_seen_is_asked() {
    for c in ['\u{202e}', '\u{200b}', '\u{2800}', '\u{fe0f}'] {
        let typed = format!("rail: 41, le{c}g: 4 @ 33");
        assert_eq!(asked(&typed), ("invisible", "rail: 41, leg: 4 @ 33".to_owned()), "{c:?}");
        assert_eq!(asked(&format!("{c}: 4 @ 33")), ("invisible", "4 @ 33".to_owned()), "{c:?}");
    }
    let heart = "leg \u{2764}\u{fe0f}";
    assert_eq!(pieces(&format!("{heart}: 4 @ 33")), Ok(vec![piece(heart, 4, "33")]));
    assert_eq!(pieces("long \u{a0}rail: 33"), Ok(vec![piece("long rail", 1, "33")]));
}

#[test]
fn a_name_without_its_colon_gets_one_in_a_tap() {
    assert_eq!(asked("leg 4 @ 33"), ("no-colon", "leg: 4 @ 33".to_owned()));
    assert_eq!(
        asked("2 @ 5, long rail 12 @ 41"),
        ("no-colon", "2 @ 5, long rail: 12 @ 41".to_owned())
    );
}

/// Our invented potting bench, as a spreadsheet hands it over.
#[test]
fn rows_of_a_spreadsheet_are_read_by_the_names_of_their_columns() {
    let bench = vec![piece("leg", 4, "33 1/2"), piece("rail", 2, "41")];
    for text in [
        "Name\tCount\tLength\nleg\t4\t33 1/2\nrail\t2\t41\n",
        "length (in)\tpart\tqty\r\n33 1/2\tleg\t4\r\n41\trail\t2\r\n",
        "Notes\tPcs\tPiece\tSize\nfront\t4\tleg\t33.5\n\t2\trail\t41",
    ] {
        assert_eq!(pieces(text), Ok(bench.clone()), "{text:?}");
    }
    // By hand: 508 mm is 20 in. Without a count it is one.
    assert_eq!(pieces("What\tLength/mm\nslat\t508"), Ok(vec![piece("slat", 1, "20")]));
    let unnamed = pieces("leg\t4\t33").expect_err("no names");
    assert_eq!(unnamed.code, "no-columns");
    assert!(unnamed.way_out.is_some());
}

#[test]
fn prices_and_parts_come_from_a_spreadsheet_too() {
    let entries =
        Entries::from_pairs([("boards", "Price\tBoard\tMax\n10.90\t96\t3\n13.95\t120\t")]);
    let bench = Bench::default();
    let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
    let boards = ask.prices(&FIELDS[1]).expect("two boards");
    let seen: Vec<_> = boards.iter().map(|it| (it.cents, it.limit)).collect();
    assert_eq!(seen, [(Some(1090), Some(3)), (Some(1395), None)]);
}
