//! How many formulas a second are read, worked out and shown. A measurement, not a test.
//!
//! `cargo bench -p reckoner-core`; the same through JavaScript with `src/js/example/speed.mjs`.

use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

use reckoner_core::measure::text::{length, show};
use reckoner_core::measure::{Rounding, Tape};

const FORMULAS: [&str; 4] =
    ["3 3/8", "61 3/8 - 2 × 3 1/2 - 2 × 3/4", "(31 - 1/8)/2", "2' 4 1/2\" + 45mm"];
const ROUNDS: u32 = 100_000;

fn main() -> Result<(), Box<dyn Error>> {
    println!("| formula | a second |\n| --- | ---: |");
    for formula in FORMULAS {
        let start = Instant::now();
        for _ in 0..ROUNDS {
            let length = length(black_box(formula))?;
            black_box(show(length, Tape::SIXTEENTHS, Rounding::Nearest)?);
        }
        let a_second = f64::from(ROUNDS) / start.elapsed().as_secs_f64();
        println!("| `{formula}` | {a_second:.0} |");
    }
    Ok(())
}
