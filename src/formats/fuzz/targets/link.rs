//! Any text at the end of a link: it never panics, and what unpacks packs and unpacks to the same.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_formats::{open_job, pack, unpack};

fuzz_target!(|text: &str| {
    let Ok(file) = unpack(text) else { return };
    assert_eq!(unpack(&pack(&file)).as_ref(), Ok(&file));
    let _ = open_job(&file);
});
