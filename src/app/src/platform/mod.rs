//! The only code that touches the browser.

pub(crate) mod address;
pub(crate) mod alive;
pub(crate) mod back;
pub(crate) mod camera;
pub(crate) mod clock;
pub(crate) mod database;
pub(crate) mod device;
pub(crate) mod dom;
pub(crate) mod files;
pub(crate) mod later;
pub(crate) mod near;
pub(crate) mod notes;
pub(crate) mod page;
pub(crate) mod planner;
pub(crate) mod sharing;
pub(crate) mod shelf;
pub(crate) mod shell;
pub(crate) mod speech;
pub(crate) mod storage;
