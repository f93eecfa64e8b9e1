//! Any file: opening it never panics, and a job that was opened is written and opened again, whole and the same.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_formats::{open_job, write_job};

fuzz_target!(|text: &str| {
    let Ok(opened) = open_job(text) else { return };
    let written = write_job(&opened.job);
    let again = open_job(&written).expect("what was opened can be kept");
    assert!(again.set_aside.is_empty(), "{:?}", again.set_aside);
    assert_eq!(write_job(&again.job), written);
});
