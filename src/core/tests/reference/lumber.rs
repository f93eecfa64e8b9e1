//! Lumber sizes against PS 20-20, American Softwood Lumber Standard (NIST), Table 3, nominal and
//! minimum-dressed sizes of boards, dimension and timbers (read in a text copy), and the
//! conversions W57 and W58 worked from that table.

use reckoner_core::measure::{Length, Number, Unit, length};
use reckoner_core::tables::lumber::{self, SECTIONS, SIZES, Seasoning, Use};

/// Nominal, dry, green in inches; dry in millimetres, as printed.
#[rustfmt::skip]
const TABLE_3: [(&str, &str, &str, u16); 23] = [
    ("3/8", "5/16", "11/32", 8),
    ("1/2", "7/16", "15/32", 11),
    ("5/8", "9/16", "19/32", 14),
    ("3/4", "5/8", "11/16", 16),
    ("1", "3/4", "25/32", 19),
    ("1 1/4", "1", "1 1/32", 25),
    ("1 1/2", "1 1/4", "1 9/32", 32),
    ("2", "1 1/2", "1 9/16", 38),
    ("2 1/2", "2", "2 1/16", 51),
    ("3", "2 1/2", "2 9/16", 64),
    ("3 1/2", "3", "3 1/16", 76),
    ("4", "3 1/2", "3 9/16", 89),
    ("4 1/2", "4", "4 1/16", 102),
    ("5", "4 1/2", "4 5/8", 114),
    ("6", "5 1/2", "5 5/8", 140),
    ("7", "6 1/2", "6 5/8", 165),
    ("8", "7 1/4", "7 1/2", 184),
    ("9", "8 1/4", "8 1/2", 210),
    ("10", "9 1/4", "9 1/2", 235),
    ("11", "10 1/4", "10 1/2", 260),
    ("12", "11 1/4", "11 1/2", 286),
    ("14", "13 1/4", "13 1/2", 337),
    ("16", "15 1/4", "15 1/2", 387),
];

fn inches(text: &str) -> Length {
    length(text).expect("a size of the table")
}

/// Source: PS 20-20, Table 3, all rows.
#[test]
fn every_row_of_the_lumber_standard_stands_in_the_table() {
    assert_eq!(SIZES.len(), TABLE_3.len());
    for (size, (nominal, dry, green, dry_mm)) in SIZES.iter().zip(TABLE_3) {
        assert_eq!(size.name, nominal);
        assert_eq!(size.nominal, inches(nominal));
        assert_eq!(size.dressed(Seasoning::Dry), inches(dry), "{nominal}");
        assert_eq!(size.dressed(Seasoning::Green), inches(green), "{nominal}");
        assert_eq!(size.dry_mm, dry_mm, "{nominal}");
        assert_eq!(lumber::size_of(inches(nominal)), Some(*size));
    }
}

/// Source: PS 20-20, Table 3: the printed millimetres are the dry inches at 25.4 mm, to the
/// nearest whole one. W57 (9 1/4 in is 235 mm) and W58 (3/4 in is 19 mm) are among them.
#[test]
fn the_printed_millimetres_of_the_lumber_standard_are_the_inches() {
    for size in SIZES {
        let exact = size.dry.in_unit(Unit::Millimetre).expect("a small length");
        let off = (exact - Number::whole(size.dry_mm.into())).expect("a small number").abs();
        assert!(off <= Number::ratio(1, 2).expect("one half"), "{}: {exact} mm", size.name);
    }
    let dry_mm = |nominal: &str| lumber::size_of(inches(nominal)).map(|size| size.dry_mm);
    assert_eq!(dry_mm("10"), Some(235));
    assert_eq!(dry_mm("1"), Some(19));
}

/// Source: PS 20-20, Table 3: which rows are for what.
#[test]
fn lumber_rows_run_from_thin_boards_to_wide_timbers() {
    let count = |usage| SIZES.iter().filter(|size| size.usage == usage).count();
    assert_eq!([Use::BoardThickness, Use::Dimension, Use::Wide].map(count), [7, 6, 10],);
    assert!(SIZES.is_sorted_by_key(|size| size.nominal));
    assert!(SIZES.iter().all(|size| size.dry < size.green && size.green < size.nominal));
}

#[test]
fn every_section_a_yard_sells_has_a_dressed_size() {
    for section in SECTIONS {
        for seasoning in [Seasoning::Dry, Seasoning::Green] {
            let (thickness, width) = section.dressed(seasoning).expect("both sides in the table");
            assert!(thickness <= width, "{}", section.id);
        }
        assert_eq!(lumber::section(section.id), Some(section));
    }
    let post = lumber::section("4x4").and_then(|s| s.dressed(Seasoning::Dry));
    assert_eq!(post, Some((inches("3 1/2"), inches("3 1/2"))));
    let wet_two_by_eight = lumber::section("2x8").and_then(|s| s.dressed(Seasoning::Green));
    assert_eq!(wet_two_by_eight, Some((inches("1 9/16"), inches("7 1/2"))));
    assert_eq!(lumber::section("2x7"), None);
}
