//! [`PartSize`]: parts written as length × width × thickness, and how a list of them is read.

use super::counts::{is_whole, split_sides};
use super::{Ask, Field, Sentence};
use crate::measure::Length;
use crate::measure::text::{Formula, exact_text};
use crate::say;

/// So many parts of one size. All three sides are above zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartSize {
    /// What stands before the colon; empty for none.
    pub name: String,
    /// How many, at least one.
    pub count: u32,
    /// Along the grain.
    pub length: Length,
    /// Across the grain, the wider way.
    pub width: Length,
    /// Across the grain, the thinner way.
    pub thickness: Length,
}

impl Ask<'_> {
    /// Sizes of parts, separated by commas, semicolons or lines: `leg: 4 @ 28 1/2 × 3 1/2 × 3 1/2`.
    ///
    /// `×`, `*` or an `x` that is not part of a word stands between the sides, so a side cannot
    /// itself be a product unless it is written as a sum.
    pub fn sizes(&mut self, field: &Field) -> Option<Vec<PartSize>> {
        let items = self.entries_of(field)?;
        if items.is_empty() {
            self.refuse_field(
                field,
                "empty",
                say!["Write at least one piece, as in ", EXAMPLE, "."],
            );
            return None;
        }
        let mut sizes = Vec::new();
        for item in items {
            sizes.push(self.size(field, &item)?);
        }
        let reading: Vec<String> = sizes.iter().map(|size| size.to_string()).collect();
        self.echo(field, say![reading.join(", ")]);
        Some(sizes)
    }

    fn size(&mut self, field: &Field, item: &str) -> Option<PartSize> {
        let (name, rest) = self.named(field, item)?;
        let (count, sides) = match rest.split_once('@') {
            Some((count, sides)) => (self.count_before(field, count)?, sides),
            None => (1, rest),
        };
        let sides = split_sides(sides);
        if let [before, length, width, thickness] = sides.as_slice()
            && !item.contains('@')
            && is_whole(before)
        {
            let [before, length, width, thickness] =
                [before, length, width, thickness].map(|side| side.trim());
            let typed =
                format!("{}{before} @ {length} × {width} × {thickness}", before_colon(&name));
            self.ask_again(field, "not-a-size", not_a_size(item), (item, &typed));
            return None;
        }
        let [length, width, thickness] = sides.as_slice() else {
            self.refuse_field(field, "not-a-size", not_a_size(item));
            return None;
        };
        let mut side = |text: &str| self.read(field, text, Formula::length).map(|read| read.1);
        let (length, width, thickness) = (side(length)?, side(width)?, side(thickness)?);
        if ![length, width, thickness].into_iter().all(Length::is_positive) {
            self.refuse_field(field, "too-small", say!["Each side must be more than zero."]);
            return None;
        }
        Some(PartSize { name, count, length, width, thickness })
    }
}

/// A name with its colon; nothing for none.
fn before_colon(name: &str) -> String {
    if name.is_empty() { String::new() } else { format!("{name}: ") }
}

/// How a part is written, for the user.
const EXAMPLE: &str = "4 @ 28 1/2 × 3 1/2 × 3 1/2";

fn not_a_size(item: &str) -> Sentence {
    say![format!("“{item}” is not length × width × thickness. Write it as in {EXAMPLE}.")]
}

/// Reads back to the same size: `leg: 4 @ 28 1/2 in × 3 1/2 in × 3 1/2 in`.
impl core::fmt::Display for PartSize {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}", before_colon(&self.name))?;
        if self.count != 1 {
            write!(f, "{} @ ", self.count)?;
        }
        let [length, width, thickness] = [self.length, self.width, self.thickness].map(exact_text);
        write!(f, "{length} × {width} × {thickness}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{length, text::NoNames};
    use crate::sheet::{Bench, Entries, Field, Kind, Start};

    const FIELDS: &[Field] = &[Field::new("parts", "Pieces", "", Kind::Sizes, Start::Text(""))];

    fn ask(text: &str) -> Result<Vec<PartSize>, Box<crate::sheet::Refusal>> {
        let (entries, bench) = (Entries::from_pairs([("parts", text)]), Bench::default());
        let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
        let sizes = ask.sizes(&FIELDS[0]);
        sizes.ok_or_else(|| Box::new(ask.finish().1.remove(0)))
    }

    fn read(text: &str) -> Result<Vec<PartSize>, &'static str> {
        ask(text).map_err(|refusal| refusal.code)
    }

    /// By hand: 850 mm × 70 mm × 38,5 mm as a spreadsheet with decimal commas hands it over.
    #[test]
    fn parts_come_from_a_spreadsheet_too() {
        let rows =
            "Qty\tLength (mm)\tThick (mm)\tWidth (mm)\n4\t850\t38,5\t70\n\t33,25 in\t38.1\t70";
        let parts =
            vec![part(4, ["850mm", "70mm", "38.5mm"]), part(1, ["33.25", "70mm", "38.1mm"])];
        assert_eq!(read(rows), Ok(parts));
        // What may be thousands is not read as a decimal.
        assert!(read("Length\tWidth\tThick\n1,200\t70\t38").is_err());
    }

    fn part(count: u32, sides: [&str; 3]) -> PartSize {
        let [length, width, thickness] = sides.map(|side| length(side).unwrap());
        PartSize { name: String::new(), count, length, width, thickness }
    }

    /// As the pieces of a cut plan have one. Our invented potting bench.
    #[test]
    fn a_part_has_a_name_before_its_colon() {
        let leg = PartSize { name: "leg".to_owned(), ..part(4, ["34", "3", "1 1/2"]) };
        let plank = part(1, ["48", "5 1/2", "1 1/2"]);
        for text in [
            "leg: 4 @ 34 × 3 × 1 1/2, 48 x 5 1/2 x 1 1/2",
            "leg:4@34x3x1 1/2; : 48 x 5 1/2 x 1 1/2",
            "Name\tQty\tLength\tWidth\tThick\nleg\t4\t34\t3\t1 1/2\n\t\t48\t5 1/2\t1 1/2",
        ] {
            assert_eq!(read(text), Ok(vec![leg.clone(), plank.clone()]), "{text}");
        }
        assert_eq!(leg.to_string(), "leg: 4 @ 34 in × 3 in × 1 1/2 in");
        assert_eq!(read(&leg.to_string()), Ok(vec![leg]));
        // What is asked of such a row keeps its name.
        for (text, code, meant) in [
            ("leg 4 @ 34 x 3 x 1", "no-colon", "leg: 4 @ 34 x 3 x 1"),
            ("leg: 4 x 34 x 3 x 1", "not-a-size", "leg: 4 @ 34 × 3 × 1"),
        ] {
            let refusal = ask(text).expect_err(text);
            let typed = refusal.way_out.expect("a tap").texts(crate::measure::Tape::SIXTEENTHS);
            assert_eq!((refusal.code, typed[0].1.as_str()), (code, meant));
        }
        let long = format!("{}: 4 @ 34 x 3 x 1", "l".repeat(61));
        assert_eq!(read(&long), Err("too-long"));
    }

    #[test]
    fn parts_are_read_with_every_sign_between_the_sides() {
        let leg = part(4, ["28 1/2", "3 1/2", "3 1/2"]);
        for text in [
            "4 @ 28 1/2 × 3 1/2 × 3 1/2",
            "4@28 1/2x3 1/2x3 1/2",
            "4 @ 28-1/2 in X 3 1/2 in * 3 1/2",
        ] {
            assert_eq!(read(text), Ok(vec![leg.clone()]), "{text}");
        }
        let two = vec![part(1, ["1000mm", "100mm", "20mm"]), part(2, ["12", "3", "1"])];
        assert_eq!(read("1000mm x 100 mm x 20mm; 2 @ 12 x 3 x 1\n"), Ok(two));
    }

    #[test]
    fn a_part_size_is_written_so_that_it_reads_back() {
        for size in [part(3, ["1/3", "45 mm", "7/8"]), part(1, ["96", "5 1/2", "1 1/2"])] {
            assert_eq!(read(&size.to_string()), Ok(vec![size]));
        }
    }

    #[test]
    fn a_list_of_parts_that_cannot_be_read_says_why() {
        assert_eq!(read(""), Err("empty"));
        assert_eq!(read("4 @ 28 1/2 x 3 1/2"), Err("not-a-size"));
        assert_eq!(read("2 x 3 x 4 x 5"), Err("not-a-size"));
        assert_eq!(read("0 @ 2 x 3 x 4"), Err("not-a-count"));
        assert_eq!(read(" @ 2 x 3 x 4"), Err("not-a-count"));
        assert_eq!(read("1/2 @ 2 x 3 x 4"), Err("not-a-count"));
        assert_eq!(read("2 x 0 x 4"), Err("too-small"));
        // Four pieces of 34 × 3 × 1 1/2, with a tap that writes the count so.
        let counted = ask("2 @ 5 x 4 x 1, 4 x 34 x 3 x 1 1/2").expect_err("four numbers");
        let typed = counted.way_out.expect("a tap").texts(crate::measure::Tape::SIXTEENTHS);
        assert_eq!(typed[0].1, "2 @ 5 x 4 x 1, 4 @ 34 × 3 × 1 1/2");
        assert_eq!(read("2 x  x 4"), Err("empty"));
        assert_eq!(read("2 x board x 4"), Err("cannot-read"));
    }
}
