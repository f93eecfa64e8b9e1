//! Whether a job's page reminds of saving the job as a file: once, and never again. Pure.

use std::time::Duration;

/// How old a job is before anybody is reminded of it.
const A_WEEK: Duration = Duration::from_secs(7 * 24 * 60 * 60);

/// What is noted of a job, in the words that are stored.
pub const SAVED: &str = "saved";
/// The reminder was put away.
pub const NOT_NOW: &str = "not now";

/// Whether the reminder is shown: the job came to this device more than a week ago, was never saved
/// as a file, and nobody put the reminder away.
///
/// `key` is the job's key on this device, which begins with the time when it came there, in
/// milliseconds since 1970; `now` is the time, likewise. A key without a time, or from the future,
/// reminds of nothing.
#[must_use]
pub fn is_due(key: &str, now: u64, noted: Option<&str>) -> bool {
    let came = key.split('-').next().and_then(|time| time.parse().ok());
    let age = came.and_then(|came| now.checked_sub(came)).map(Duration::from_millis);
    noted.is_none() && age.is_some_and(|age| age > A_WEEK)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2026-03-02 08:00:00 UTC, by `date -u -d @1772438400`.
    const KEY: &str = "1772438400000-48151623";
    /// Seven days later, to the millisecond.
    const A_WEEK_ON: u64 = 1_773_043_200_000;

    #[test]
    fn a_job_older_than_a_week_is_due() {
        assert!(is_due(KEY, A_WEEK_ON + 1, None));
        assert!(!is_due(KEY, A_WEEK_ON, None));
    }

    #[test]
    fn a_job_that_was_saved_or_put_away_is_never_due() {
        for noted in [SAVED, NOT_NOW, "anything else"] {
            assert!(!is_due(KEY, A_WEEK_ON * 2, Some(noted)), "{noted}");
        }
    }

    #[test]
    fn a_key_without_a_time_or_a_clock_set_back_is_not_due() {
        for key in
            ["", "demo", "-1", "x-1772438400000", "1772438400000.5-1", "99999999999999999999-1"]
        {
            assert!(!is_due(key, A_WEEK_ON * 2, None), "{key}");
        }
        assert!(!is_due(KEY, 0, None));
    }
}
