//! Parts of pages that know nothing of any one calculator.

pub(crate) mod choice;
pub(crate) mod device_line;
pub(crate) mod drawing;
pub(crate) mod drawn;
pub(crate) mod field;
pub(crate) mod find;
pub(crate) mod fold;
pub(crate) mod headline;
pub(crate) mod heard;
pub(crate) mod icon;
pub(crate) mod measure;
pub(crate) mod not_kept;
pub(crate) mod notes;
pub(crate) mod reading;
pub(crate) mod repeats;
pub(crate) mod sentence;
pub(crate) mod stepper;
pub(crate) mod table;
pub(crate) mod working;
