//! A text that somebody pasted: a job file, a link, or codes.

use crate::codes::MOST_PASTED;
use crate::packed::{PackProblem, unpack};
use crate::{MAX_FILE, codes_in};

/// What stands before a packed job in a link of this app.
const LINK: &str = "#/take?";

/// What a pasted text brings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Brought {
    /// A job file, not opened yet.
    File(String),
    /// Pieces of a job, to be gathered.
    Codes(Vec<String>),
}

/// Reads a pasted text, whatever of the three it is.
///
/// # Errors
///
/// [`PackProblem`] when it is none of them.
pub fn brought(text: &str) -> Result<Brought, PackProblem> {
    let text = text.trim();
    // Base 64 makes a third more of what it holds; nothing larger can be a job.
    if text.len() > MAX_FILE * 2 {
        return Err(PackProblem::TooLarge);
    }
    if text.starts_with('{') {
        return Ok(Brought::File(text.to_owned()));
    }
    let codes = codes_in(text);
    if codes.len() > MOST_PASTED {
        return Err(PackProblem::TooLarge);
    }
    if !codes.is_empty() {
        return Ok(Brought::Codes(codes));
    }
    let packed = match text.split_once(LINK) {
        Some((_, rest)) => rest.split_whitespace().next().unwrap_or(""),
        None => text,
    };
    unpack(packed).map(Brought::File)
}
