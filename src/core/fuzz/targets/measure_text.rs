//! Any text: reading it never panics, and what is read is echoed in a spelling that reads the same.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_core::measure::Unit;
use reckoner_core::measure::limits::MAX_TEXT;
use reckoner_core::measure::text::{NoNames, parse};

fuzz_target!(|text: &str| {
    let Ok(formula) = parse(text, &NoNames) else { return };
    let echo = formula.to_string();
    if echo.chars().count() <= MAX_TEXT {
        let worth = |formula: &reckoner_core::measure::text::Formula| {
            formula.quantity(Unit::Millimetre, &NoNames).map_err(|problem| problem.kind)
        };
        let again = parse(&echo, &NoNames).map(|again| worth(&again));
        assert_eq!(Ok(worth(&formula)), again, "{text:?} is echoed as {echo:?}");
    }
});
