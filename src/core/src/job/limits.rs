//! How large a job may be.

/// Most measures of one job.
pub const MOST_MEASURES: usize = 2_000;
/// Most parts of one job.
pub const MOST_PARTS: usize = 1_000;
/// Most items of any other kind in one job.
pub const MOST_OTHERS: usize = 500;
/// Most pieces of one job that were touched, over all its parts: 200 parts of 1,000 pieces. Each
/// takes some 30 bytes of the job's text when it is ticked and measured, so that they fit in it.
pub const MOST_PIECES_OF_JOB: usize = 200_000;
/// Longest name or title, in characters.
pub const MOST_NAME: usize = 500;
/// Longest note, in characters.
pub const MOST_NOTE: usize = 5_000;
