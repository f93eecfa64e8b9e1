//! Spacing: marks ascend, stay on the board and out of the zones, mirror and close, and no other
//! arrangement has a smaller widest gap.

use dashu_ratio::RBig;
use proptest::prelude::*;
use reckoner_core::calculators::spacing::{Answer, End, Input, Wish, reckon};
use reckoner_core::measure::{Length, Tape, length};
use reckoner_core::sheet::{Refused, Span};

use crate::judged::{self, answered};

fn quarters(n: i128) -> Length {
    Length::of_inch(n, 4).unwrap()
}

fn end() -> impl Strategy<Value = End> {
    prop_oneof![Just(End::LikeTheGaps), (0_i128..16).prop_map(|n| End::At(quarters(n)))]
}

fn wish() -> impl Strategy<Value = Wish> {
    let (width, gap) = (1_i128..24, 1_i128..16);
    prop_oneof![
        (1_u32..7).prop_map(Wish::Count),
        (2_i128..60).prop_map(|n| Wish::NoGapOver(quarters(n))),
        (2_i128..60).prop_map(|n| Wish::Step(quarters(n))),
        (width.clone(), gap).prop_map(|(width, gap)| Wish::SlatsNear {
            width: quarters(width),
            gap: quarters(gap)
        }),
        (width, 1_u32..7).prop_map(|(width, count)| Wish::Slats { width: quarters(width), count }),
    ]
}

fn zones() -> impl Strategy<Value = Vec<Span>> {
    let zone = (0_i128..160, 1_i128..40)
        .prop_map(|(from, wide)| Span { from: quarters(from), to: quarters(from + wide) });
    prop::collection::vec(zone, 0..4)
}

prop_compose! {
    fn input()(
        length in 8_i128..160, wish in wish(), left in end(), right in end(), alike in any::<bool>(),
        keep_out in zones(), least_gap in prop::option::of(1_i128..24),
    ) -> Input {
        let length = quarters(length);
        let keep_out = keep_out.into_iter().filter(|zone| zone.from < length).collect();
        let right = if alike { left } else { right };
        Input { length, wish, left, right, keep_out, least_gap: least_gap.map(quarters), tape: Tape::SIXTEENTHS }
    }
}

/// The board turned about.
fn image(input: &Input) -> Input {
    let length = input.length;
    let turned =
        |zone: &Span| Span { from: (length - zone.to).unwrap(), to: (length - zone.from).unwrap() };
    Input {
        keep_out: input.keep_out.iter().map(turned).collect(),
        left: input.right,
        right: input.left,
        ..input.clone()
    }
}

/// The same board with its zones mirrored as well, so that a mirrored answer may exist.
fn mirrored(mut input: Input) -> Input {
    let others = image(&input).keep_out;
    input.keep_out.extend(others);
    input.right = input.left;
    input
}

fn check_limits(input: &Input, answer: &Answer) {
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    let right_edge = |mark: Length| (mark + width).unwrap();
    assert!(!answer.marks.is_empty());
    for pair in answer.marks.windows(2) {
        assert!(pair[0] < pair[1], "{answer:?}");
        assert!(right_edge(pair[0]) <= pair[1], "{answer:?}");
    }
    for mark in &answer.marks {
        assert!(!mark.is_negative() && right_edge(*mark) <= input.length, "{answer:?}");
        for zone in &input.keep_out {
            // A mark inside, or a slat over any part of the zone.
            let clear = right_edge(*mark) <= zone.from || zone.to <= *mark;
            assert!(clear, "{mark:?} {zone:?}");
        }
    }
    let (first, last) = (answer.marks[0], *answer.marks.last().unwrap());
    let is_step = matches!(input.wish, Wish::Step(_));
    match input.left {
        End::At(distance) => assert_eq!(first, distance),
        End::LikeTheGaps if !is_step => assert_eq!(first, answer.gaps[0]),
        End::LikeTheGaps => assert_eq!(Wish::Step(first), input.wish),
    }
    if let End::At(distance) = input.right {
        assert_eq!((input.length - right_edge(last)).unwrap(), distance);
    }
    let least = input.least_gap.unwrap_or(Length::ZERO);
    assert!(answer.gaps.iter().all(|gap| *gap >= least));
    assert_eq!(answer.gaps.iter().max(), Some(&answer.widest));
    assert_eq!(answer.gaps.iter().min(), Some(&answer.narrowest));
    assert_eq!(answer.closes_at, input.length);
    for (mark, from_right) in answer.marks.iter().zip(&answer.from_right) {
        assert_eq!((right_edge(*mark) + *from_right).unwrap(), input.length);
    }
    let reversed: Vec<Length> = answer.from_right.iter().rev().copied().collect();
    assert_eq!(answer.each_end.is_some(), reversed == answer.marks);
    match input.wish {
        Wish::Count(count) | Wish::Slats { count, .. } => {
            assert_eq!(answer.marks.len(), count as usize)
        }
        Wish::NoGapOver(greatest) => assert!(answer.widest <= greatest),
        Wish::Step(_) | Wish::SlatsNear { .. } => {}
    }
}

/// Nearest and farthest place of a stretch.
type Gate = (RBig, RBig);

fn big(length: Length) -> RBig {
    let inches = length.in_inches();
    RBig::from_parts(inches.numer().into(), u128::try_from(inches.denom()).unwrap().into())
}

/// Where no mark, or no left edge of a slat, may be. Zones that meet leave nothing between them.
fn taken(input: &Input) -> Vec<(Length, Length)> {
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    let zone = |from: Length, to: Length| ((from - width).unwrap(), to);
    let mut zones: Vec<_> = input.keep_out.iter().map(|span| zone(span.from, span.to)).collect();
    for a in &input.keep_out {
        for b in &input.keep_out {
            if a.to == b.from {
                zones.push(zone(a.from, b.to));
            }
        }
    }
    zones
}

/// Free stretches, found by cutting at every zone edge and asking of each piece whether it is
/// taken.
fn free_stretches(zones: &[(Length, Length)], from: Length, to: Length) -> Vec<Gate> {
    let mut edges: Vec<Length> = zones.iter().flat_map(|zone| [zone.0, zone.1]).collect();
    edges.extend([from, to]);
    edges.retain(|edge| from <= *edge && *edge <= to);
    edges.sort_unstable();
    edges.dedup();
    let inside = |place: Length| zones.iter().any(|zone| zone.0 < place && place < zone.1);
    let mut free: Vec<Gate> = Vec::new();
    for edge in &edges {
        if *edge == from || *edge == to || !inside(*edge) {
            free.push((big(*edge), big(*edge)));
        }
    }
    for pair in edges.windows(2) {
        let middle = ((pair[0] + pair[1]).unwrap() / 2).unwrap();
        if !inside(middle) {
            free.push((big(pair[0]), big(pair[1])));
        }
    }
    free
}

/// Whether places in these stretches, in order, can have every step between `least` and `widest`:
/// by shortest paths over the limits, which have an answer unless a circle of them is below zero.
fn feasible(gates: &[Gate], least: &RBig, widest: &RBig) -> bool {
    let (count, ground) = (gates.len(), gates.len());
    let mut limits: Vec<(usize, usize, RBig)> = Vec::new();
    for (i, (from, to)) in gates.iter().enumerate() {
        limits.push((ground, i, to.clone()));
        limits.push((i, ground, -from.clone()));
        if i + 1 < count {
            limits.push((i, i + 1, widest.clone()));
            limits.push((i + 1, i, -least.clone()));
        }
    }
    let mut distance = vec![RBig::ZERO; count + 1];
    for _ in 0..=count + 1 {
        let mut moved = false;
        for (from, to, most) in &limits {
            let next = &distance[*from] + most;
            if next < distance[*to] {
                distance[*to] = next;
                moved = true;
            }
        }
        if !moved {
            return true;
        }
    }
    false
}

/// Whether any choice of stretches for the places works.
fn any_feasible(
    free: &[Gate],
    ends: &Gate,
    points: usize,
    least: &RBig,
    widest: &RBig,
    mirrored_only: bool,
) -> bool {
    fn choose(
        free: &[Gate],
        gates: &mut Vec<Gate>,
        left: usize,
        check: &dyn Fn(&[Gate]) -> bool,
    ) -> bool {
        if left == 0 {
            return check(gates);
        }
        for index in 0..free.len() {
            gates.push(free[index].clone());
            // Stretches overlap in single points only, so the order of their ends is enough.
            let in_order = gates.len() < 2 || gates[gates.len() - 2].0 <= free[index].1;
            let found = in_order && choose(free, gates, left - 1, check);
            gates.pop();
            if found {
                return true;
            }
        }
        false
    }
    let check = |middle: &[Gate]| {
        let mut gates = vec![(ends.0.clone(), ends.0.clone())];
        gates.extend(middle.iter().cloned());
        gates.push((ends.1.clone(), ends.1.clone()));
        let both = &ends.0 + &ends.1;
        let is_mirrored = gates
            .iter()
            .zip(gates.iter().rev())
            .all(|(gate, other)| &gate.0 + &other.1 == both && &gate.1 + &other.0 == both);
        (is_mirrored || !mirrored_only) && feasible(&gates, least, widest)
    };
    choose(free, &mut Vec::new(), points - 2, &check)
}

/// First and last place, and how many of the two lie beyond the board.
fn track(input: &Input) -> (Length, Length, usize) {
    let width = input.wish.slat_width().unwrap_or(Length::ZERO);
    let from = match input.left {
        End::At(distance) => distance,
        End::LikeTheGaps => -width,
    };
    let to = match input.right {
        End::At(distance) => ((input.length - distance).unwrap() - width).unwrap(),
        End::LikeTheGaps => input.length,
    };
    let beyond = [input.left, input.right].iter().filter(|e| **e == End::LikeTheGaps).count();
    (from, to, beyond)
}

/// Compares an answer, or a refusal for want of room, with every choice of stretches: no smaller
/// widest gap, and mirrored marks wherever some have the same widest gap.
fn check_best(input: &Input) -> Result<(), TestCaseError> {
    let (count, width) = match input.wish {
        Wish::Count(count) => (count, Length::ZERO),
        Wish::Slats { width, count } => (count, width),
        _ => return Err(TestCaseError::reject("no count is asked for")),
    };
    let (from, to, beyond) = track(input);
    let points = count as usize + beyond;
    prop_assume!(from < to && points >= 2, "nothing to choose");
    let zones = taken(input);
    let free = free_stretches(&zones, from, to);
    let ends = (big(from), big(to));
    // Marks may not stand on one spot, so a least gap of nothing is a tiny one.
    let tiny = RBig::from_parts(1.into(), 1_000_000_u32.into());
    let least = big((width + input.least_gap.unwrap_or(Length::ZERO)).unwrap()).max(tiny.clone());
    let possible = |widest: &RBig| any_feasible(&free, &ends, points, &least, widest, false);
    match reckon(input) {
        Ok(answer) => {
            let widest = big((answer.widest + width).unwrap());
            prop_assert!(possible(&widest), "{:?}", answer);
            if input.left == input.right {
                // Stretches that mirror each other hold mirrored places, if they hold any.
                let zones = [zones, taken(&image(input))].concat();
                let free = free_stretches(&zones, from, to);
                let mirrors = any_feasible(&free, &ends, points, &least, &widest, true);
                prop_assert_eq!(answer.each_end.is_some(), mirrors, "{:?}", answer);
            }
            prop_assert!(
                widest == least || !possible(&(widest - tiny)),
                "not the best: {answer:?}"
            );
        }
        Err(refused) => {
            for code in refused.codes() {
                match code {
                    "no-room" | "least-too-large" | "no-free-place" => {
                        prop_assert!(!possible(&big((to - from).unwrap())), "{refused:?}");
                    }
                    "end-in-zone" | "ends-meet" | "slat-too-wide" => {}
                    other => prop_assert!(false, "{other}"),
                }
            }
        }
    }
    Ok(())
}

proptest! {
    #![proptest_config(judged::cases(400))]

    #[test]
    fn spacing_keeps_every_limit(input in input(), mirror in any::<bool>()) {
        let input = if mirror { mirrored(input) } else { input };
        check_limits(&input, &answered(reckon(&input))?);
    }

    /// Random marks on sixteenths that keep the limits never have a smaller widest gap.
    #[test]
    fn no_random_arrangement_is_better(
        input in input(), tries in prop::collection::vec(prop::collection::vec(0_i128..640, 0..6), 40),
    ) {
        let input = Input { wish: Wish::Count(match input.wish { Wish::Count(count) => count, _ => 5 }), ..input };
        let answer = answered(reckon(&input))?;
        let (from, to, beyond) = track(&input);
        let inner = answer.marks.len() + beyond - 2;
        let least = input.least_gap.unwrap_or(Length::ZERO);
        for mut places in tries {
            places.resize(inner, 37);
            let mut marks: Vec<Length> = places.iter().map(|n| Length::of_inch(*n, 16).unwrap()).collect();
            marks.extend([from, to]);
            marks.sort_unstable();
            if marks[0] != from || *marks.last().unwrap() != to { continue }
            let free = marks[1..marks.len() - 1].iter().all(|mark| input.keep_out.iter().all(|zone| *mark <= zone.from || zone.to <= *mark));
            let gaps: Vec<Length> = marks.windows(2).map(|pair| (pair[1] - pair[0]).unwrap()).collect();
            if free && gaps.iter().all(|gap| *gap >= least) {
                prop_assert!(gaps.iter().max() >= Some(&answer.widest), "{marks:?} beats {answer:?}");
            }
        }
    }

    #[test]
    fn a_free_count_is_the_fewest_and_a_refused_gap_has_none(input in input(), quarters_of_gap in 4_i128..60) {
        let greatest = quarters(quarters_of_gap);
        let input = Input { wish: Wish::NoGapOver(greatest), ..input };
        let (from, to, beyond) = track(&input);
        prop_assume!(from < to, "no room between the ends");
        let widest_with = |count: u32| reckon(&Input { wish: Wish::Count(count), ..input.clone() }).ok().map(|answer| answer.widest);
        match reckon(&input) {
            Ok(answer) => {
                let count = u32::try_from(answer.marks.len()).unwrap();
                prop_assert!(answer.widest <= greatest);
                for fewer in 1..count {
                    prop_assert!(widest_with(fewer).is_none_or(|widest| widest > greatest), "{fewer} do");
                }
            }
            Err(refused) => {
                if refused.codes() == ["gap-too-small"] {
                    let Refused::For(refusals) = &refused else { unreachable!() };
                    let way_out = refusals[0].way_out.as_ref().expect("a way out");
                    let smallest = length(&way_out.texts(input.tape)[0].1).expect("a length");
                    for count in 1..20 - beyond as u32 {
                        prop_assert!(widest_with(count).is_none_or(|widest| widest > greatest));
                    }
                    let eased = Input { wish: Wish::NoGapOver(smallest), ..input.clone() };
                    prop_assert!(reckon(&eased).is_ok(), "{smallest:?}");
                }
            },
        }
    }

    /// Without zones of all counts, with zones of its neighbours.
    #[test]
    fn slats_near_a_gap_are_nearer_than_one_more_or_one_fewer(input in input(), width in 1_i128..24, gap in 0_i128..16) {
        let (width, gap) = (quarters(width), quarters(gap));
        let input = Input { wish: Wish::SlatsNear { width, gap }, ..input };
        let answer = answered(reckon(&input))?;
        let off = |answer: &Answer| {
            let mut gaps = answer.gaps.clone();
            gaps.sort_unstable();
            (gaps[(gaps.len() - 1) / 2] - gap).unwrap().abs()
        };
        let count = answer.marks.len() as u32;
        let others = if input.keep_out.is_empty() { 1..=count + 8 } else { count.max(2) - 1..=count + 1 };
        let mut judged = 0;
        for count in others {
            if let Ok(other) = reckon(&Input { wish: Wish::Slats { width, count }, ..input.clone() }) {
                prop_assert!(off(&answer) <= off(&other), "{} slats are nearer", count);
                judged += 1;
            }
        }
        // One of them is the answer itself.
        prop_assume!(judged > 1, "no other number of slats fits");
    }

    /// Steps as even as the zones allow: no single mark can move to bring its two gaps closer
    /// together without leaving its free stretch.
    #[test]
    fn every_mark_is_drawn_as_even_as_its_zones_allow(input in input()) {
        let answer = answered(reckon(&input))?;
        prop_assume!(!matches!(input.wish, Wish::Step(_)), "the step is given");
        let (from, to, _) = track(&input);
        // Mirrored marks keep out of the image of each zone as well.
        let zones = if answer.each_end.is_some() { mirrored(input.clone()).keep_out } else { input.keep_out.clone() };
        let mut places = answer.marks.clone();
        places.extend([from, to]);
        places.sort_unstable();
        places.dedup();
        let width = input.wish.slat_width().unwrap_or(Length::ZERO);
        for three in places.windows(3) {
            let (before, after) = ((three[1] - three[0]).unwrap(), (three[2] - three[1]).unwrap());
            if before == after { continue }
            // Uneven: the mark is held by the edge of a zone on the side of the wider gap.
            let held = zones.iter().any(|zone| {
                let near = (zone.from - width).unwrap();
                if before < after { three[1] == near } else { three[1] == zone.to }
            });
            prop_assert!(held, "{three:?} {answer:?}");
        }
    }
}

proptest! {
    // Each case tries every choice of stretches.
    #![proptest_config(judged::cases(100))]

    #[test]
    fn no_choice_of_stretches_has_a_smaller_widest_gap_or_mirrors_better(input in input(), mirror in any::<bool>()) {
        check_best(&if mirror { mirrored(input) } else { input })?;
    }
}
