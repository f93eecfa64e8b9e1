//! A job in pieces, each small enough for one code on the screen.
//!
//! The job is made small and written in the alphabet of RFC 4648 base 32, whose letters and digits
//! take the least room in a code. Every piece says which job it is of, which piece of how many it
//! is, and a check of its own text, so that pieces may come in any order, more than once, and
//! damaged: `SR1 7F3A09C2 2/5 1B2C3D4E TEXT`.

use core::fmt;

use data_encoding::BASE32_NOPAD;

use crate::PackProblem;
use crate::packed::{make_large, make_small};

/// What every piece begins with: the app and the version of the form.
const MARK: &str = "SR1";

/// Most pieces of one job.
const MOST_PIECES: usize = 99;

/// Letters of a job in one code on the screen.
///
/// With the 28 letters before it a piece fits a code of version 10 with medium correction (ISO/IEC
/// 18004: 311 letters). That is 65 modules wide with its border, so more than four CSS pixels each
/// on a screen 320 wide.
pub const PIECE: usize = 283;

/// Letters before the text of a piece, at most.
const MOST_HEADING: usize = 40;

/// Longest piece that is read: no code holds more letters (ISO/IEC 18004, version 40, low).
const MOST_LETTERS: usize = 4_296;

/// A set of pieces that cannot be made or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CodeProblem {
    /// The job needs more than 99 codes.
    TooLarge,
    /// Not a piece of a job, or damaged.
    Unreadable,
    /// A piece of another job than the ones before: its number, and of how many.
    OtherJob(usize, usize),
}

impl fmt::Display for CodeProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CodeProblem::TooLarge => {
                f.write_str("This job is too large for codes on the screen. Send it as a file.")
            }
            CodeProblem::Unreadable => {
                f.write_str("This is not a code of this app, or it is damaged. Try again.")
            }
            CodeProblem::OtherJob(number, count) => write!(
                f,
                "Code {number} of {count} is of another job. Finish the first one, or start afresh."
            ),
        }
    }
}

impl core::error::Error for CodeProblem {}

/// Cuts a job file into pieces of at most `size` letters of it, all about as long.
///
/// # Errors
///
/// [`CodeProblem::TooLarge`] beyond 99 pieces.
pub fn codes(text: &str, size: usize) -> Result<Vec<String>, CodeProblem> {
    let whole = BASE32_NOPAD.encode(&make_small(text));
    let count = whole.len().div_ceil(size.max(1));
    if count > MOST_PIECES {
        return Err(CodeProblem::TooLarge);
    }
    let letters: Vec<char> = whole.chars().collect();
    let job = check(&whole);
    let pieces = letters.chunks(letters.len().div_ceil(count.max(1)).max(1));
    Ok((1..)
        .zip(pieces)
        .map(|(number, piece)| {
            let piece: String = piece.iter().collect();
            format!("{MARK} {job} {number}/{count} {} {piece}", check(&piece))
        })
        .collect())
}

fn check(text: &str) -> String {
    format!("{:08X}", crc32(text.as_bytes()))
}

/// The cyclic redundancy check of zip and PNG (ISO 3309), bit by bit: the tables of a fast one are 16 kB that do not
/// compress, and a whole job is a few kilobytes.
fn crc32(bytes: &[u8]) -> u32 {
    let shifted = |crc: u32| if crc & 1 == 1 { (crc >> 1) ^ 0xEDB8_8320 } else { crc >> 1 };
    !bytes
        .iter()
        .fold(u32::MAX, |crc, byte| (0..8).fold(crc ^ u32::from(*byte), |crc, _| shifted(crc)))
}

/// Most pieces that are taken from a pasted text: those of one job, each a few times over.
pub(crate) const MOST_PASTED: usize = 4 * MOST_PIECES;

/// The pieces in a text that was pasted, whatever stands between them. What is longer than a piece
/// can be is none, and after so many that no job has them nothing more is looked for.
#[must_use]
pub fn codes_in(text: &str) -> Vec<String> {
    let mut words = text.split_whitespace();
    let mut codes = Vec::new();
    while let Some(word) = words.next() {
        let piece = || core::iter::once(word).chain(words.clone().take(4));
        let length: usize = piece().map(str::len).sum();
        if word == MARK && length <= MOST_LETTERS + MOST_HEADING {
            codes.push(piece().collect::<Vec<_>>().join(" "));
            if codes.len() > MOST_PASTED {
                break;
            }
        }
    }
    codes
}

/// Gathers the pieces of one job.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gatherer {
    job: Option<String>,
    pieces: Vec<Option<String>>,
}

impl Gatherer {
    /// Takes one piece; the same one again changes nothing. Tells whether it was new.
    ///
    /// # Errors
    ///
    /// [`CodeProblem`]; what was gathered stays.
    pub fn take(&mut self, code: &str) -> Result<bool, CodeProblem> {
        let (job, number, count, piece) = read(code).ok_or(CodeProblem::Unreadable)?;
        if self.job.is_none() {
            self.job = Some(job.to_owned());
            self.pieces = vec![None; count];
        }
        if self.job.as_deref() != Some(job) || self.pieces.len() != count {
            return Err(CodeProblem::OtherJob(number, count));
        }
        let slot = self.pieces.get_mut(number - 1).ok_or(CodeProblem::Unreadable)?;
        let is_new = slot.is_none();
        *slot = Some(piece.to_owned());
        Ok(is_new)
    }

    /// How many pieces are here, and of how many.
    #[must_use]
    pub fn progress(&self) -> (usize, usize) {
        (self.pieces.iter().flatten().count(), self.pieces.len())
    }

    /// The numbers of the pieces that are still missing.
    #[must_use]
    pub fn missing(&self) -> Vec<usize> {
        (1..).zip(&self.pieces).filter(|(_, piece)| piece.is_none()).map(|(n, _)| n).collect()
    }

    /// How far it is: `3 of 5, still missing 2 and 5`.
    #[must_use]
    pub fn in_words(&self) -> String {
        let (here, count) = self.progress();
        let missing: Vec<String> = self.missing().iter().map(usize::to_string).collect();
        match missing.as_slice() {
            [] if count == 0 => "No code yet.".to_owned(),
            [] => format!("All {count} codes are here."),
            [last] => format!("{here} of {count}, still missing {last}"),
            [first @ .., last] if missing.len() <= 8 => {
                format!("{here} of {count}, still missing {} and {last}", first.join(", "))
            }
            _ => format!("{here} of {count}, {} still missing", missing.len()),
        }
    }

    /// The job file, once every piece is here.
    ///
    /// # Errors
    ///
    /// [`PackProblem`] when the pieces do not fit together, or hold more than a job can be.
    #[must_use]
    pub fn whole(&self) -> Option<Result<String, PackProblem>> {
        let pieces: Option<Vec<&str>> = self.pieces.iter().map(Option::as_deref).collect();
        let whole = pieces.filter(|pieces| !pieces.is_empty())?.concat();
        let open = || {
            if self.job.as_deref() != Some(check(&whole).as_str()) {
                return Err(PackProblem::Damaged);
            }
            make_large(&BASE32_NOPAD.decode(whole.as_bytes()).map_err(|_| PackProblem::Damaged)?)
        };
        Some(open())
    }
}

fn read(code: &str) -> Option<(&str, usize, usize, &str)> {
    let mut words = code.split_whitespace();
    let (mark, job, place, sum, piece) =
        (words.next()?, words.next()?, words.next()?, words.next()?, words.next()?);
    let (number, count) = place.split_once('/')?;
    let (number, count) = (number.parse().ok()?, count.parse().ok()?);
    let fits = mark == MARK
        && words.next().is_none()
        && piece.len() <= MOST_LETTERS
        && (1..=MOST_PIECES).contains(&count)
        && (1..=count).contains(&number)
        && check(piece) == sum;
    fits.then_some((job, number, count, piece))
}
