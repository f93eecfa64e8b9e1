//! The parts of a character: `é` is `e` and an acute accent (Unicode Standard Annex 15, form D).
//!
//! The table `decomposed.bin` is written by the test below from the crate unicode-normalization,
//! whose own tables would take ten times as much of the program (47 kB against 4, compressed).

use std::sync::OnceLock;

// The syllables of Hangul are worked out (UAX 15, section 16): where they and their parts begin,
// and how many there are.
const FIRST_SYLLABLE: u32 = 0xAC00;
const FIRST_LEAD: u32 = 0x1100;
const FIRST_VOWEL: u32 = 0x1161;
/// One before the first: a syllable may have none.
const NO_TAIL: u32 = 0x11A7;
const VOWELS: u32 = 21;
const TAILS: u32 = 28;
const SYLLABLES: u32 = 11_172;

/// The tables, unpacked.
#[derive(Default)]
struct Table {
    /// A character with its parts: where they begin among all parts, and how many.
    parts_of: Vec<(u32, usize, usize)>,
    parts: Vec<char>,
    /// Runs of characters of one combining class: first, how many, class.
    classes: Vec<(u32, u32, u8)>,
}

/// Numbers of seven bits a byte, low ones first.
struct Packed<'a>(core::slice::Iter<'a, u8>);

impl Packed<'_> {
    fn next(&mut self) -> u32 {
        let mut number = 0_u32;
        for shift in [0, 7, 14, 21] {
            let Some(byte) = self.0.next() else { break };
            number |= u32::from(byte & 0x7F) << shift;
            if *byte < 128 {
                break;
            }
        }
        number
    }

    /// A column: how many numbers, and the numbers.
    fn column(&mut self) -> Vec<u32> {
        let count = self.next();
        (0..count).map(|_| self.next()).collect()
    }
}

impl Table {
    fn unpacked(bytes: &[u8]) -> Table {
        let mut packed = Packed(bytes.iter());
        let mut column = || packed.column();
        // The marks that there are; the steps from one character to the next; how many marks follow
        // the first part of each; the steps from one first part to the next; the marks by their
        // place in the list.
        let (marks, codes, counts, firsts, places) =
            (column(), column(), column(), column(), column());
        let (starts, lengths, classes) = (column(), column(), column());
        let mut table = Table::default();
        let part = |code: u32| char::from_u32(code).unwrap_or(char::REPLACEMENT_CHARACTER);
        let mut places = places.iter();
        let (mut code, mut first) = (0_u32, 0_u32);
        for ((step, count), to_first) in codes.iter().zip(&counts).zip(&firsts) {
            code = code.wrapping_add(*step);
            // Even steps go up, odd ones down.
            let by = to_first >> 1;
            first = if to_first & 1 == 0 { first.wrapping_add(by) } else { first.wrapping_sub(by) };
            let begin = table.parts.len();
            table.parts.push(part(first));
            let following = places.by_ref().take(*count as usize);
            let following = following.filter_map(|place| marks.get(*place as usize));
            table.parts.extend(following.map(|mark| part(*mark)));
            table.parts_of.push((code, begin, table.parts.len().saturating_sub(begin)));
        }
        let mut start = 0_u32;
        for ((step, length), class) in starts.iter().zip(&lengths).zip(&classes) {
            start = start.wrapping_add(*step);
            table.classes.push((start, *length, u8::try_from(*class).unwrap_or(0)));
        }
        table
    }
}

fn table() -> &'static Table {
    static TABLE: OnceLock<Table> = OnceLock::new();
    TABLE.get_or_init(|| Table::unpacked(include_bytes!("decomposed.bin")))
}

/// The parts of a character, one after the other; itself where it has none.
pub(super) fn decompose(c: char, take: &mut dyn FnMut(char)) {
    let code = u32::from(c);
    if code < 0xC0 {
        return take(c);
    }
    if let Some(at) = code.checked_sub(FIRST_SYLLABLE).filter(|at| *at < SYLLABLES) {
        let of = |from: u32, by: u32| char::from_u32(from.saturating_add(by));
        of(FIRST_LEAD, at / (VOWELS * TAILS)).into_iter().for_each(&mut *take);
        of(FIRST_VOWEL, at % (VOWELS * TAILS) / TAILS).into_iter().for_each(&mut *take);
        if at % TAILS > 0 {
            of(NO_TAIL, at % TAILS).into_iter().for_each(take);
        }
        return;
    }
    let table = table();
    let found = table.parts_of.binary_search_by_key(&code, |(code, ..)| *code);
    let parts = found.ok().and_then(|at| {
        let (_, begin, count) = table.parts_of.get(at)?;
        table.parts.get(*begin..begin.saturating_add(*count))
    });
    match parts {
        Some(parts) => parts.iter().copied().for_each(take),
        None => take(c),
    }
}

/// The canonical combining class: 0 for what stands for itself.
pub(super) fn class(c: char) -> u8 {
    let code = u32::from(c);
    if code < 0x300 {
        return 0;
    }
    let classes = &table().classes;
    let after = classes.partition_point(|(start, ..)| *start <= code);
    let run = after.checked_sub(1).and_then(|at| classes.get(at));
    run.filter(|(start, length, _)| code.saturating_sub(*start) < *length).map_or(0, |run| run.2)
}

#[cfg(test)]
mod tests {
    use unicode_normalization::UnicodeNormalization;
    use unicode_normalization::char::canonical_combining_class;

    use super::*;

    fn pack(out: &mut Vec<u8>, column: &[u32]) {
        for number in [u32::try_from(column.len()).expect("short")].iter().chain(column) {
            let mut rest = *number;
            while rest >= 128 {
                out.push((rest & 0x7F) as u8 | 128);
                rest >>= 7;
            }
            out.push(rest as u8);
        }
    }

    fn packed() -> Vec<u8> {
        let mut columns: [Vec<u32>; 8] = Default::default();
        let (mut code, mut first, mut end) = (0, 0_i64, 0);
        for c in ('\u{C0}'..=char::MAX).filter(|c| !('\u{AC00}'..='\u{D7A3}').contains(c)) {
            let parts: Vec<char> = [c].into_iter().nfd().collect();
            if parts != [c] {
                columns[1].push(u32::from(c) - code);
                code = u32::from(c);
                columns[2].push(parts.len() as u32 - 1);
                let by = i64::from(u32::from(parts[0])) - first;
                columns[3].push((by.unsigned_abs() as u32) << 1 | u32::from(by < 0));
                first += by;
                for mark in &parts[1..] {
                    let mark = u32::from(*mark);
                    let known = columns[0].iter().position(|known| *known == mark);
                    let place = known.unwrap_or(columns[0].len());
                    if known.is_none() {
                        columns[0].push(mark);
                    }
                    columns[4].push(place as u32);
                }
            }
        }
        let mut start = 0;
        for c in '\u{300}'..=char::MAX {
            let class = u32::from(canonical_combining_class(c));
            if class == 0 {
                continue;
            }
            if u32::from(c) == end && columns[7].last() == Some(&class) {
                *columns[6].last_mut().expect("a run") += 1;
            } else {
                columns[5].push(u32::from(c) - start);
                columns[6].push(1);
                columns[7].push(class);
                start = u32::from(c);
            }
            end = u32::from(c) + 1;
        }
        let mut out = Vec::new();
        columns.iter().for_each(|column| pack(&mut out, column));
        out
    }

    /// Run with `UPDATE_NAMES=1` to write the table anew for a later Unicode.
    #[test]
    fn the_table_in_the_repository_is_current() {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/src/job/names/decomposed.bin");
        if std::env::var_os("UPDATE_NAMES").is_some() {
            std::fs::write(file, packed()).expect("writing the table");
        }
        let written = std::fs::read(file).expect("reading the table");
        assert!(written == packed(), "run this test with UPDATE_NAMES=1");
    }

    /// Expected: the crate unicode-normalization, which is tested against the Unicode Character
    /// Database.
    #[test]
    fn every_character_has_the_parts_that_the_standard_gives_it() {
        let mut with_parts = 0;
        for c in '\0'..=char::MAX {
            let mut parts = Vec::new();
            decompose(c, &mut |part| parts.push(part));
            assert!(parts.iter().copied().eq([c].into_iter().nfd()), "{c:?}");
            assert_eq!(class(c), canonical_combining_class(c), "{c:?}");
            with_parts += u32::from(parts != [c]);
        }
        assert!(with_parts > 13_000, "{with_parts}");
    }
}
