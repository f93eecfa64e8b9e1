//! A job packed small, for a link and for codes on the screen.
//!
//! The text is compressed (DEFLATE, RFC 1951) and written in the URL-safe alphabet of RFC 4648.

use core::fmt;

use data_encoding::BASE64URL_NOPAD;
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;

use crate::MAX_FILE;

/// A packed text that cannot be opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PackProblem {
    /// It is cut short or changed on the way.
    Damaged,
    /// It would unpack to more than [`MAX_FILE`] bytes.
    TooLarge,
}

impl fmt::Display for PackProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            PackProblem::Damaged => {
                "This link or code is cut short or was changed on the way. Ask for it again."
            }
            PackProblem::TooLarge => "This link or code holds more than a job can be.",
        })
    }
}

impl core::error::Error for PackProblem {}

/// Packs a text: a link may hold it after its `#`.
#[must_use]
pub fn pack(text: &str) -> String {
    BASE64URL_NOPAD.encode(&make_small(text))
}

/// Unpacks a text.
///
/// # Errors
///
/// [`PackProblem`]; a small text that would unpack to a huge one is refused before it does.
pub fn unpack(packed: &str) -> Result<String, PackProblem> {
    // Base 64 makes a third more of what it holds, and a job packs to less than it is.
    if packed.len() > MAX_FILE * 2 {
        return Err(PackProblem::TooLarge);
    }
    let bytes =
        BASE64URL_NOPAD.decode(packed.trim().as_bytes()).map_err(|_| PackProblem::Damaged)?;
    make_large(&bytes)
}

pub(crate) fn make_small(text: &str) -> Vec<u8> {
    compress_to_vec(text.as_bytes(), 9)
}

/// A small text that would come to a huge one is refused before it does.
pub(crate) fn make_large(bytes: &[u8]) -> Result<String, PackProblem> {
    let text = decompress_to_vec_with_limit(bytes, MAX_FILE).map_err(|error| {
        if error.status == miniz_oxide::inflate::TINFLStatus::HasMoreOutput {
            PackProblem::TooLarge
        } else {
            PackProblem::Damaged
        }
    })?;
    String::from_utf8(text).map_err(|_| PackProblem::Damaged)
}
