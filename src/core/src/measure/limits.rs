//! Named limits: the largest text, number and length that anything in the core accepts.
//!
//! They are generous for a workshop and small enough that no product of two accepted values
//! can overflow the 128-bit integers inside.

/// Longest text of one measure or formula, in characters.
pub const MAX_TEXT: usize = 500;

/// Deepest nesting of brackets and signs in a formula.
pub const MAX_DEPTH: usize = 120;

/// Most digits of one written number, before and after its point together. As many as
/// [`MAX_TERM`] has, so that whatever can be kept can be written and read back.
pub const MAX_DIGITS: usize = 18;

/// Longest length that can be typed, in whole inches (a little over a mile and a half).
pub const MAX_LENGTH_INCHES: i64 = 100_000;

/// Largest numerator and denominator of an exact number in lowest terms: 18 nines.
///
/// Two numbers within it can be added or multiplied in 128-bit integers without overflow:
/// the largest step is below 2 × 10^36, and `i128` holds 1.7 × 10^38.
pub const MAX_TERM: i128 = 999_999_999_999_999_999;
