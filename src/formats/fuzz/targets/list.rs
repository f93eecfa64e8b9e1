//! Any quick list, its pieces in the first line and its boards on hand in the second: it is a cutting job that keeps its own
//! rules, or it is refused.
#![no_main]

use libfuzzer_sys::fuzz_target;
use reckoner_core::measure::text::NoNames;
use reckoner_core::planning::quick_list::{QUICK_LIST, quick_list};
use reckoner_core::sheet::{Ask, Bench, Entries};

fuzz_target!(|text: &str| {
    let (parts, scraps) = text.split_once('\n').unwrap_or((text, ""));
    let (entries, bench) =
        (Entries::from_pairs([("parts", parts), ("scraps", scraps)]), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    let wanted = quick_list(&mut ask);
    let (_, refusals) = ask.finish();
    assert_eq!(wanted.is_none(), !refusals.is_empty());
    if let Some(wanted) = wanted
        && let Err(problem) = wanted.job.validate()
    {
        let told = wanted.labels.explain(&wanted.job, &problem);
        assert!(!told.sentence.to_string().is_empty());
    }
});
