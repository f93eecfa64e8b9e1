//! Laws of exact measures, their text, and the tape.

use proptest::prelude::*;
use reckoner_core::measure::Length;

proptest! {
    #[test]
    fn a_length_near_a_float_is_within_its_bound(inches in -100_000.0..100_000.0_f64) {
        let near = Length::near(inches).expect("within the limit");
        prop_assert!((near.to_f64() - inches).abs() <= 1.0 / 8192.0);
    }

    #[test]
    fn a_length_of_4096ths_survives_the_way_through_a_float(parts in -409_600_000_i128..=409_600_000) {
        let length = Length::of_inch(parts, 4096).expect("small");
        prop_assert_eq!(Length::near(length.to_f64()), Ok(length));
    }
}

#[test]
fn a_float_that_is_no_length_is_refused() {
    for inches in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 100_000.1, -1e300, f64::MAX] {
        assert!(Length::near(inches).is_err(), "{inches}");
    }
}
