//! A law that only skips proves nothing: what it cannot judge is drawn again.
//!
//! So a law judges as many cases as it says, and fails when more than four times as many were refused before it has them.

use std::fmt::Debug;

use proptest::test_runner::{Config, TestCaseError};

/// A law that judges so many cases. Where this is not said they are 256, and 1024 may be refused.
pub(crate) fn cases(count: u32) -> Config {
    Config { max_global_rejects: 4 * count, ..Config::with_cases(count) }
}

/// The answer to be judged; a refusal is drawn again.
pub(crate) fn answered<T, E: Debug>(answer: Result<T, E>) -> Result<T, TestCaseError> {
    answer.map_err(|refusal| TestCaseError::reject(format!("refused: {refusal:?}")))
}
