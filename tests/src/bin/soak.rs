//! The campaign at its full length: `cargo xtask soak [WALKS] [--seed N] [--two] [--go-on]`. It fails on a loss.

use std::process::ExitCode;

use reckoner_e2e::campaign::{Plan, campaign};

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let mut numbers = words.iter().filter_map(|word| word.parse().ok());
    let walks =
        if words.first().is_some_and(|it| it.starts_with("--")) { None } else { numbers.next() };
    let has_seed = words.iter().any(|word| word == "--seed");
    let seed = if has_seed { numbers.next() } else { None };
    let has = |flag: &str| words.iter().any(|word| word == flag);
    let outcome = campaign(&Plan {
        first: seed.unwrap_or(1),
        walks: walks.unwrap_or(300),
        at_once: if has("--two") { 2 } else { 1 },
        goes_on: has("--go-on"),
    });
    println!("\n{} walks, {} actions", outcome.walks, outcome.actions);
    for (kind, times) in &outcome.faults {
        println!("{times:6}  {kind}");
    }
    let mut frames = outcome.frames;
    frames.sort_unstable();
    if let [least, .., most] = frames.as_slice() {
        let median = frames[frames.len() / 2];
        println!(
            "killed {} times a frame after the key: {least:.0?} at the least, {median:.0?} in the median, {most:.0?} at the most",
            frames.len()
        );
    }
    println!("{} losses, {} walks that could not go on", outcome.losses.len(), outcome.stuck.len());
    let is_clean = outcome.losses.is_empty() && outcome.stuck.is_empty();
    if is_clean { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
