//! How wide writing is: the widths of a wide system font, so that on no phone a label is longer than it is taken for.

/// How much wider heavy writing is.
const HEAVY: f64 = 1.13;

/// Width of a line of writing for a height of 1: that of DejaVu Sans, which is wider than the fonts of phones are even
/// where those are heavy.
pub(super) fn width(text: &str, is_heavy: bool) -> f64 {
    let width: f64 = text.chars().map(letter).sum();
    if is_heavy { width * HEAVY } else { width }
}

/// Width of one character, in steps of the table of the font's own widths.
fn letter(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 'I' | 'J' | '\'' => 0.3,
        ' ' | ',' | '.' | '·' | '’' | '/' | ':' | ';' | '\\' | '|' => 0.34,
        'f' | '-' | '(' | ')' | '[' | ']' | 't' | '!' | '²' | 'r' => 0.41,
        '"' | '*' | '_' | '°' | 's' | 'z' | '?' => 0.53,
        'c' | 'L' | 'F' | 'k' | 'v' | 'x' | 'y' | 'P' => 0.6,
        'T' | 'Y' | 'a' | 'o' | 'e' | 'E' | 'S' | 'b' | 'd' | 'g' | 'h' | 'n' | 'p' | 'q' | 'u' => {
            0.635
        }
        '$' | '0'..='9' | '{' | '}' | '√' => 0.64,
        'K' | 'A' | 'V' | 'B' | 'R' | 'X' | 'Z' | 'C' | 'U' => 0.735,
        'H' | 'N' | 'D' | 'G' | '&' | 'O' | 'Q' => 0.79,
        'w' | '#' | '+' | '<' | '=' | '>' | '^' | '~' | '×' | '→' | '←' | '÷' | '−' | '≈' | 'M' => {
            0.865
        }
        _ => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::width;

    /// Advance widths in the font's own table (DejaVu Sans 2.37, 2048 units to the em): digits 1303, space 651,
    /// solidus 690, w 1675; and of its bold: digits 1425, space 713, solidus 748.
    #[test]
    fn writing_is_taken_for_at_least_as_wide_as_the_wide_font_writes_it() {
        let check = |text, is_heavy, units: f64| {
            let (taken, is) = (width(text, is_heavy), units / 2048.0);
            assert!(taken >= is - 1e-3 && taken < is * 1.06, "{text}: {taken}, and is {is}");
        };
        check("43 1/2", false, 4.0 * 1303.0 + 651.0 + 690.0);
        check("43 1/2", true, 4.0 * 1425.0 + 713.0 + 748.0);
        check("w", false, 1675.0);
    }
}
