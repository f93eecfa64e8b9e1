//! The only code that touches the browser.

pub(crate) mod shell;
