//! What is stored or handed on, with version numbers.
//!
//! The types here are the promise to files, other phones and later versions; the core's own
//! types make none. Reading never trusts what it reads: it refuses with a sentence, or sets the
//! damaged piece aside and opens the rest.

mod brought;
mod codes;
mod cut_item_v1;
mod cut_v1;
mod history_v2;
mod item_v2;
mod job_file;
mod jobs_file;
mod json;
mod lists;
mod packed;
mod pdf;
mod pdf_file;
mod screen;
mod texts;

pub use brought::{Brought, brought};
pub use codes::{CodeProblem, Gatherer, PIECE, codes, codes_in};
pub use cut_v1::{
    Ask, Checked, CutTextProblem, MOST_CUT_LINES, MOST_CUT_TEXT, News, Question, Reply, TakenPlan,
    number_of_reply, read_cut, read_question, read_reply, read_taken, write_cut, write_question,
    write_reply, write_taken,
};
pub use history_v2::{MAX_HISTORY, read_history, read_step, write_history, write_step};
#[cfg(feature = "schema")]
pub use job_file::schema;
pub use job_file::{
    MAX_FILE, NotKept, OpenProblem, Opened, SetAside, check_job, open_job, write_job,
    write_job_file,
};
pub use jobs_file::{
    MAX_JOBS_FILE, MOST_JOBS, OpenedJobs, TooManyJobs, is_of_jobs, open_jobs, write_jobs,
};
pub use lists::{build_order_csv, cut_plan_csv, parts_csv, to_buy_csv};
pub use packed::{PackProblem, pack, unpack};
pub use pdf::template_pdf;
pub use screen::{CodePicture, Middle, code_picture, codes_seen, middle};
