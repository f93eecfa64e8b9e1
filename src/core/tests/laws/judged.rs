//! A law that only skips proves nothing: what it cannot judge is drawn again.
//!
//! So a law judges as many cases as it says, and fails when more than four times as many were refused before it has them.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::fmt::Debug;

use proptest::strategy::Strategy;
use proptest::test_runner::{Config, TestCaseError, TestCaseResult, TestRunner};

/// A law that judges so many cases. Where this is not said they are 256, and 1024 may be refused.
pub(crate) fn cases(count: u32) -> Config {
    Config { max_global_rejects: 4 * count, ..Config::with_cases(count) }
}

/// The answer to be judged; a refusal is drawn again.
pub(crate) fn answered<T, E: Debug>(answer: Result<T, E>) -> Result<T, TestCaseError> {
    answer.map_err(|refusal| TestCaseError::reject(format!("refused: {refusal:?}")))
}

/// How often a law judged each thing that not every case has. A law that looked at none of them fails.
#[derive(Default)]
pub(crate) struct Judged(RefCell<BTreeMap<&'static str, usize>>);

impl Judged {
    /// So many more of these were judged.
    pub(crate) fn note(&self, what: &'static str, more: usize) {
        *self.0.borrow_mut().entry(what).or_default() += more;
    }

    /// Fails where fewer of these were judged.
    #[track_caller]
    pub(crate) fn at_least(&self, least: usize, what: &'static str) {
        let all = self.0.borrow();
        let found = all.get(what).copied().unwrap_or(0);
        assert!(found >= least, "{what}: judged only {found} times of {least}, of all {all:?}");
    }
}

/// Holds what is drawn against a law that keeps count.
#[track_caller]
pub(crate) fn law<S: Strategy>(
    config: Config,
    drawn: &S,
    judge: impl Fn(S::Value) -> TestCaseResult,
) {
    if let Err(broken) = TestRunner::new(config).run(drawn, judge) {
        panic!("{broken}");
    }
}
