//! A packed job in pieces, each small enough for one code on the screen.
//!
//! Every piece says which job it is of, which piece of how many it is, and a check of its own
//! text, so that pieces may come in any order, more than once, and damaged: `SR1 7f3a09c2 2/5
//! 1b2c3d4e TEXT`.

use core::fmt;

/// Most pieces of one job.
const MOST_PIECES: usize = 99;

/// A set of pieces that cannot be made or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CodeProblem {
    /// The job needs more than 99 codes.
    TooLarge,
    /// Not a piece of a job, or damaged.
    Unreadable,
    /// A piece of another job than the ones before.
    OtherJob,
}

impl fmt::Display for CodeProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CodeProblem::TooLarge => {
                "This job is too large for codes on the screen. Hand it on as a file."
            }
            CodeProblem::Unreadable => {
                "This is not a code of this app, or it is damaged. Try again."
            }
            CodeProblem::OtherJob => {
                "This code is of another job. Finish the first one, or start afresh."
            }
        })
    }
}

impl core::error::Error for CodeProblem {}

/// Cuts a packed job into pieces of at most `size` letters of it.
///
/// # Errors
///
/// [`CodeProblem::TooLarge`] beyond 99 pieces.
pub fn codes(packed: &str, size: usize) -> Result<Vec<String>, CodeProblem> {
    let letters: Vec<char> = packed.chars().collect();
    let pieces: Vec<String> =
        letters.chunks(size.max(1)).map(|piece| piece.iter().collect()).collect();
    if pieces.len() > MOST_PIECES {
        return Err(CodeProblem::TooLarge);
    }
    let (job, count) = (check(packed), pieces.len());
    Ok(pieces
        .iter()
        .enumerate()
        .map(|(index, piece)| format!("SR1 {job} {}/{count} {} {piece}", index + 1, check(piece)))
        .collect())
}

fn check(text: &str) -> String {
    format!("{:08x}", crc32fast::hash(text.as_bytes()))
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
            return Err(CodeProblem::OtherJob);
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

    /// The packed job, once every piece is here and they fit together.
    #[must_use]
    pub fn whole(&self) -> Option<String> {
        let pieces: Option<Vec<&str>> = self.pieces.iter().map(Option::as_deref).collect();
        let packed = pieces?.concat();
        (self.job.as_deref() == Some(check(&packed).as_str())).then_some(packed)
    }
}

fn read(code: &str) -> Option<(&str, usize, usize, &str)> {
    let mut words = code.split_whitespace();
    let (mark, job, place, sum, piece) =
        (words.next()?, words.next()?, words.next()?, words.next()?, words.next()?);
    let (number, count) = place.split_once('/')?;
    let (number, count) = (number.parse().ok()?, count.parse().ok()?);
    let fits = mark == "SR1"
        && words.next().is_none()
        && (1..=MOST_PIECES).contains(&count)
        && (1..=count).contains(&number)
        && check(piece) == sum;
    fits.then_some((job, number, count, piece))
}
