//! Any text that was pasted or seen by a camera: gathering its codes never panics.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_formats::{Gatherer, codes_in, open_job};

fuzz_target!(|text: &str| {
    let mut gatherer = Gatherer::default();
    for code in codes_in(text) {
        let _ = gatherer.take(&code);
    }
    let (here, all) = gatherer.progress();
    assert_eq!(all - here, gatherer.missing().len());
    if let Some(Ok(file)) = gatherer.whole() {
        let _ = open_job(&file);
    }
});
