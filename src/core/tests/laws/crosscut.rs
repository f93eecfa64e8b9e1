//! Crosscut: parts, kerfs and leftover fill the board; one part more does not fit.

use proptest::prelude::*;
use reckoner_core::calculators::crosscut::{Input, reckon};
use reckoner_core::measure::{Length, Number};
use reckoner_core::sheet::Span;

use crate::judged::answered;

fn parts_of_an_inch(n: i32) -> Length {
    Length::sixty_fourths(n)
}

prop_compose! {
    fn question()(
        board in 640_i32..9000,
        trim in 0_i32..128,
        part in 200_i32..1300,
        kerf in 0_i32..16,
        knots in prop::collection::vec((0_i32..9000, 1_i32..300), 0..4),
        wanted in 1_u32..60,
    ) -> Input {
        let knots = knots
            .into_iter()
            .map(|(from, wide)| Span { from: parts_of_an_inch(from), to: parts_of_an_inch(from + wide) })
            .collect();
        let [board, trim, part, kerf] = [board, trim, part, kerf].map(parts_of_an_inch);
        Input { board, trim, part, kerf, knots, wanted }
    }
}

/// Most parts clear of knots, by trying every sixty-fourth as the start of each part.
fn most_by_trying(input: &Input) -> usize {
    let units = |length: Length| {
        let sixty_fourths = (length.in_inches() * Number::whole(64)).unwrap();
        usize::try_from(sixty_fourths.numer()).unwrap()
    };
    let (part, kerf) = (units(input.part), units(input.kerf));
    let (begin, end) = (units(input.trim), units(input.board) - units(input.trim));
    let is_clear = |from: usize| {
        input.knots.iter().all(|knot| from + part <= units(knot.from) || units(knot.to) <= from)
    };
    // best[at] is the most parts that begin at `at` or later.
    let mut best = vec![0; end + part + kerf + 1];
    for at in (begin..end).rev() {
        best[at] = best[at + 1];
        if at + part <= end && is_clear(at) {
            best[at] = best[at].max(1 + best[at + part + kerf]);
        }
    }
    best[begin]
}

proptest! {
    #[test]
    fn a_clear_board_is_filled_exactly_and_one_part_more_does_not_fit(question in question()) {
        let input = Input { knots: Vec::new(), ..question };
        let answer = answered(reckon(&input))?;
        let n = answer.parts.len() as u32;
        let usable = (answer.usable.to - answer.usable.from).unwrap();
        let used = ((input.part * n).unwrap() + (input.kerf * (n - 1)).unwrap()).unwrap();
        let rest = (usable - used).unwrap();
        prop_assert!(!rest.is_negative());
        if rest > input.kerf {
            prop_assert_eq!((answer.leftover + input.kerf).unwrap(), rest);
        } else {
            prop_assert_eq!(answer.leftover, Length::ZERO);
        }
        prop_assert!(answer.for_one_more > input.board);
        // A board of that length does give one more.
        let longer = Input { board: answer.for_one_more, ..input };
        prop_assert_eq!(reckon(&longer).unwrap().parts.len() as u32, n + 1);
    }

    #[test]
    fn around_knots_no_other_way_gives_more_parts(input in question()) {
        match reckon(&input) {
            Ok(answer) => {
                prop_assert_eq!(answer.parts.len(), most_by_trying(&input));
                for part in &answer.parts {
                    prop_assert!(input.knots.iter().all(|k| part.to <= k.from || k.to <= part.from));
                }
            }
            Err(_) => prop_assert_eq!(most_by_trying(&input), 0),
        }
    }
}
