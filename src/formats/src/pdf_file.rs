//! The structure of a PDF file (ISO 32000-1:2008, 7.3, 7.5 and 8.4 to 9.4): what is drawn on a page, pages, and the table
//! of places that makes a file of them.
//!
//! Only what templates need: lines, curves and words in one font. A library for all of it weighs 13 kB more in the program
//! as it is sent, most of that tables for printing numbers in their shortest form.

use std::fmt::Write as _;

/// What is drawn on a page: numbers, each list before the operator that takes it. One unit is a 72nd of an inch, from the
/// left bottom corner.
#[derive(Default)]
pub(crate) struct Content {
    text: String,
}

impl Content {
    /// An operator with the numbers it takes, to a thousandth.
    pub(crate) fn put(&mut self, numbers: &[f64], operator: &str) {
        for value in numbers {
            number(&mut self.text, *value);
        }
        self.text.push_str(operator);
        self.text.push('\n');
    }

    /// From here on lines have these dashes and gaps; none for a whole line.
    pub(crate) fn dashes(&mut self, lengths: &[f64]) {
        self.text.push('[');
        for length in lengths {
            number(&mut self.text, *length);
        }
        self.text.push(']');
        self.put(&[0.0], "d");
    }

    /// Words, in the bytes of the font's encoding, with their base line beginning at a place.
    pub(crate) fn words(&mut self, (x, y): (f64, f64), size: f64, words: &[u8]) {
        self.text.push_str("BT\n/F ");
        self.put(&[size], "Tf");
        self.put(&[x, y], "Td");
        self.text.push('<');
        for byte in words {
            // Writing to a string cannot fail.
            let _ = write!(self.text, "{byte:02X}");
        }
        self.text.push_str("> Tj\nET\n");
    }
}

/// Writes a number to a thousandth, and a space.
fn number(text: &mut String, value: f64) {
    let thousandths = (value * 1000.0).round() as i64;
    let sign = if thousandths < 0 { "-" } else { "" };
    let (whole, rest) = (thousandths.unsigned_abs() / 1000, thousandths.unsigned_abs() % 1000);
    let _ = write!(text, "{sign}{whole}.{rest:03} ");
}

/// A file of pages of one size, which write in Helvetica.
pub(crate) fn file((width, height): (f64, f64), pages: &[Content]) -> Vec<u8> {
    let (tree, font, first) = (2, 3, 4);
    let mut size = String::new();
    number(&mut size, width);
    number(&mut size, height);
    // Each page is two objects: itself, and what is drawn on it.
    let page = |at: usize| first + 2 * at;
    let kids: String = (0..pages.len()).map(|at| format!("{} 0 R ", page(at))).collect();
    let mut objects = vec![
        format!("<</Type/Catalog/Pages {tree} 0 R>>"),
        format!("<</Type/Pages/Kids[{kids}]/Count {}>>", pages.len()),
        "<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>".to_owned(),
    ];
    for (at, Content { text }) in pages.iter().enumerate() {
        objects.push(format!(
            "<</Type/Page/Parent {tree} 0 R/MediaBox[0 0 {size}]/Contents {} 0 R/Resources<</Font<</F {font} 0 R>>>>>>",
            page(at) + 1
        ));
        objects.push(format!("<</Length {}>>stream\n{text}\nendstream", text.len()));
    }
    let mut text = String::from("%PDF-1.7\n");
    // Ten digits, five, a letter and two more: each line of the table has 20 bytes.
    let mut table = String::from("0000000000 65535 f \n");
    for (number, object) in (1..).zip(&objects) {
        let _ = writeln!(table, "{:010} 00000 n ", text.len());
        let _ = writeln!(text, "{number} 0 obj\n{object}\nendobj");
    }
    let (start, count) = (text.len(), objects.len() + 1);
    let _ = write!(
        text,
        "xref\n0 {count}\n{table}trailer\n<</Size {count}/Root 1 0 R>>\nstartxref\n{start}\n%%EOF\n"
    );
    text.into_bytes()
}
