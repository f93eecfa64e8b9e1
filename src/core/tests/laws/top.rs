//! Laws of the top: what was solved for, put back in, gives what was given, and no gap is ever
//! below zero.

use proptest::prelude::*;
use reckoner_core::calculators::top::{Change, overhang, planks, season, slot};
use reckoner_core::measure::{Length, Number};

use crate::judged::answered;

fn up_to(inches: i32) -> impl Strategy<Value = Length> {
    (1..=inches * 64).prop_map(Length::sixty_fourths)
}

fn widths() -> impl Strategy<Value = Vec<Length>> {
    prop::collection::vec(up_to(11), 1..12)
}

fn change() -> impl Strategy<Value = Change> {
    (-150..=150_i128).prop_map(|n| Change::Shrinks(Number::ratio(n, 10).expect("small")))
}

/// Planks and gaps add up to the top, and each plank begins where the one before it and a gap end.
fn check_whole(answer: &planks::Answer) {
    assert!(!answer.gap.is_negative());
    assert!(answer.widths.iter().all(|width| width.is_positive()));
    let mut edge = Length::ZERO;
    for (index, (width, left)) in answer.widths.iter().zip(&answer.left_edges).enumerate() {
        assert_eq!(edge, *left, "plank {index}");
        let gap = if index + 1 == answer.widths.len() { Length::ZERO } else { answer.gap };
        edge = ((edge + *width).unwrap() + gap).unwrap();
    }
    assert_eq!(edge, answer.top);
}

fn with_gaps(boards: Length, gap: Length, widths: &[Length]) -> Length {
    (boards + (gap * (widths.len() as u32 - 1)).unwrap()).unwrap()
}

/// Ripped planks fill the top, and were never narrower.
fn fill(
    widths: &[Length],
    find: planks::Find,
    top: Length,
    gap: Length,
) -> Result<(), TestCaseError> {
    let input = planks::Input { widths: widths.to_vec(), find };
    let answer = answered(planks::reckon(&input))?;
    check_whole(&answer);
    prop_assert_eq!(answer.top, top);
    prop_assert!(answer.widths.iter().zip(widths).all(|(ripped, was)| ripped <= was));
    let back = planks::Input { widths: answer.widths, find: planks::Find::Top { gap } };
    prop_assert_eq!(planks::reckon(&back).unwrap().top, top);
    Ok(())
}

proptest! {
    #[test]
    fn the_gap_put_back_gives_the_top(widths in widths(), top in up_to(90)) {
        let find = planks::Find::Gap { top };
        let answer = planks::reckon(&planks::Input { widths: widths.clone(), find });
        let sum = widths.iter().try_fold(Length::ZERO, |sum, w| sum + *w).unwrap();
        prop_assert!(answer.is_ok() || widths.len() == 1 || sum > top);
        let answer = answered(answer)?;
        check_whole(&answer);
        prop_assert_eq!(answer.top, top);
        let back = planks::Find::Top { gap: answer.gap };
        let back = planks::reckon(&planks::Input { widths, find: back }).unwrap();
        prop_assert_eq!(back, answer);
    }

    /// All are ripped to one width, which the narrowest must have.
    #[test]
    fn planks_of_one_width_fill_the_top(widths in widths(), ripped_off in up_to(4), gap in up_to(1)) {
        let one = (*widths.iter().min().unwrap() - ripped_off).unwrap();
        let top = with_gaps((one * widths.len() as u32).unwrap(), gap, &widths);
        fill(&widths, planks::Find::RipAll { top, gap }, top, gap)?;
    }

    #[test]
    fn ripped_outer_planks_fill_the_top(widths in widths(), ripped_off in up_to(4), gap in up_to(1)) {
        let boards = widths.iter().try_fold(-ripped_off, |sum, width| sum + *width).unwrap();
        let top = with_gaps(boards, gap, &widths);
        fill(&widths, planks::Find::RipOuter { top, gap }, top, gap)?;
    }

    #[test]
    fn spacers_on_a_mark_bracket_the_top(widths in widths(), top in up_to(90)) {
        let input = planks::Input { widths, find: planks::Find::Gap { top } };
        let answer = answered(planks::reckon(&input))?;
        let [below, above] = answered(answer.spacers.ok_or("the gap is on a mark"))?;
        prop_assert!(below.top < top && top < above.top);
        prop_assert_eq!((above.thickness - below.thickness).unwrap(), Length::sixty_fourths(2));
    }

    #[test]
    fn the_overhang_put_back_gives_the_top(
        base in [up_to(90), up_to(40)], top in [up_to(90), up_to(40)],
    ) {
        let input = overhang::Input { base, find: overhang::Find::Overhang { top } };
        let covers = top[0] >= base[0] && top[1] >= base[1];
        let answer = overhang::reckon(&input);
        prop_assert_eq!(covers, answer.is_ok());
        let answer = answered(answer)?;
        let find = overhang::Find::Top { overhang: answer.overhang };
        prop_assert_eq!(overhang::reckon(&overhang::Input { base, find }).unwrap(), answer);
    }

    #[test]
    fn the_gap_left_today_gives_the_gap_wanted_later(
        widths in widths(), change in change(), gap in up_to(1),
    ) {
        let find = season::Find::Today { gap_later: gap };
        let input = season::Input { widths: widths.clone(), change, find };
        let answer = answered(season::reckon(&input))?;
        prop_assert!(!answer.gap_now.is_negative());
        if let Some(least) = answer.gaps_later.iter().min() {
            prop_assert_eq!(*least, gap);
        }
        let find = season::Find::Later { gap_now: answer.gap_now };
        let back = season::reckon(&season::Input { widths, change, find }).unwrap();
        prop_assert_eq!(back, answer);
    }

    /// Against a construction with places: middles stay, edges move, gaps lie between edges.
    #[test]
    fn no_gap_closes_without_a_refusal(widths in widths(), change in change(), gap_now in up_to(1)) {
        let find = season::Find::Later { gap_now };
        let input = season::Input { widths: widths.clone(), change, find };
        let factor = change.factor().unwrap();
        let mut edge = Length::ZERO;
        let mut later = Vec::new();
        for width in &widths {
            let middle = (edge + (*width / 2).unwrap()).unwrap();
            let half = ((*width * factor).unwrap() / 2).unwrap();
            later.push(((middle - half).unwrap(), (middle + half).unwrap()));
            edge = ((edge + *width).unwrap() + gap_now).unwrap();
        }
        let gaps: Vec<Length> =
            later.windows(2).map(|pair| (pair[1].0 - pair[0].1).unwrap()).collect();
        match season::reckon(&input) {
            Ok(answer) => {
                prop_assert!(answer.gaps_later.iter().all(|gap| !gap.is_negative()));
                prop_assert_eq!(&answer.gaps_later, &gaps);
                let over_all = (later.last().unwrap().1 - later[0].0).unwrap();
                prop_assert_eq!(answer.top_later, over_all);
            }
            Err(_) => prop_assert!(gaps.iter().any(|gap| gap.is_negative())),
        }
    }

    #[test]
    fn a_slot_is_as_loose_as_the_distance_says(
        from_fixed in prop::collection::vec(up_to(24), 1..6), change in change(), hole in up_to(1),
    ) {
        let input = slot::Input { from_fixed: from_fixed.clone(), hole, change };
        let answer = slot::reckon(&input).unwrap();
        let factor = change.factor().unwrap();
        for (slot, distance) in answer.slots.iter().zip(from_fixed) {
            let later = (distance - slot.moves_in).unwrap();
            prop_assert_eq!(later, (distance * factor).unwrap());
            prop_assert!(slot.length >= hole && slot.moves_in.abs() <= answer.most);
        }
    }
}
