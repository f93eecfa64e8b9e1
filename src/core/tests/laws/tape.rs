//! Tape: marks ascend, are evenly spaced, and close.

use proptest::prelude::*;
use reckoner_core::calculators::tape::{Input, reckon};
use reckoner_core::measure::{Length, Number, Tape};

proptest! {
    #[test]
    fn running_marks_ascend_and_close(sixty_fourths in 1_i128..2_000_000, thirds in 1_i128..7, parts in 1_u32..200, start in 0_i32..640) {
        let length = Length::inches(Number::ratio(sixty_fourths, 64 * thirds).unwrap());
        let start_mark = Length::sixty_fourths(start);
        let answer = reckon(&Input { length, parts, start_mark, tape: Tape::SIXTEENTHS }).unwrap();
        prop_assert_eq!(answer.marks.len(), parts as usize);
        let mut before = start_mark;
        for mark in &answer.marks {
            prop_assert!(*mark > before);
            prop_assert_eq!((*mark - before).unwrap(), answer.each);
            before = *mark;
        }
        prop_assert_eq!(answer.closes_at, length);
        // Each part rounds by at most half a sixteenth.
        let bound = (Length::sixty_fourths(2) * parts).unwrap();
        prop_assert!(answer.stepping_error.abs() <= bound);
    }
}
