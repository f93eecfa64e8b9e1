//! Strength: how sag follows size and span, and that every limit solved backwards gives itself.

use proptest::prelude::*;
use reckoner_core::calculators::strength::{
    Input, Load, Section, Wood, reckon, span_for_sag, span_for_stress,
};
use reckoner_core::tables::beams::Loading;

use crate::judged::answered;

fn loading() -> impl Strategy<Value = Loading> {
    prop::sample::select(&Loading::ALL[..])
}

fn load() -> impl Strategy<Value = Load> {
    (loading(), 1.0..500.0_f64).prop_map(|(loading, amount)| match loading {
        Loading::EvenResting | Loading::EvenClamped | Loading::EvenOverhang => {
            Load::Even(loading, amount / 12.0)
        }
        _ => Load::Point(loading, amount),
    })
}

fn section() -> impl Strategy<Value = Section> {
    prop_oneof![
        (0.5..12.0_f64, 0.5..12.0_f64).prop_map(|(across, depth)| Section::Plank { across, depth }),
        (0.5..6.0_f64).prop_map(|diameter| Section::Round { diameter }),
    ]
}

prop_compose! {
    fn question()(
        section in section(),
        span in 6.0..96.0_f64,
        load in load(),
        sharing in 1_u32..5,
        stiffness in 500_000.0..2_500_000.0_f64,
        span_over_sag in prop::sample::select(vec![180.0, 240.0, 360.0, 600.0]),
        most_stress in 400.0..2000.0_f64,
    ) -> Input {
        let wood = Wood::of_stiffness(stiffness);
        Input { section, span, middle_supports: 0, load, sharing, wood, span_over_sag, most_stress }
    }
}

fn near(found: f64, expected: f64) -> bool {
    (found / expected - 1.0).abs() < 1e-9
}

fn sag(input: &Input) -> f64 {
    // Straight from the load, so that a beam too weak to be answered still obeys.
    let load = input.load.shared_by(input.sharing);
    let bay = input.span / f64::from(input.middle_supports + 1);
    load.sag_times_stiffness(bay) / (input.wood.stiffness * input.section.inertia())
}

proptest! {
    #[test]
    fn doubling_the_depth_divides_the_sag_by_8_and_the_width_by_2(
        input in question(), across in 0.5..12.0_f64, depth in 0.5..6.0_f64,
    ) {
        let with = |across, depth| {
            sag(&Input { section: Section::Plank { across, depth }, ..input.clone() })
        };
        let once = with(across, depth);
        prop_assert!(near(with(across, 2.0 * depth) * 8.0, once));
        prop_assert!(near(with(2.0 * across, depth) * 2.0, once));
        let round = |diameter| sag(&Input { section: Section::Round { diameter }, ..input.clone() });
        prop_assert!(near(round(2.0 * depth) * 16.0, round(depth)));
    }

    #[test]
    fn half_the_span_has_an_eighth_of_the_sag_of_a_point_load(mut input in question()) {
        input.load = Load::Point(Loading::MiddleResting, 250.0);
        let whole = sag(&input);
        input.middle_supports = 1;
        prop_assert!(near(sag(&input) * 8.0, whole));
        input.middle_supports = 2;
        prop_assert!(near(sag(&input) * 27.0, whole));
    }

    #[test]
    fn the_longest_span_sags_exactly_its_limit(input in question()) {
        let load = input.load.shared_by(input.sharing);
        let stiffness = input.wood.stiffness;
        let longest = span_for_sag(&load, stiffness, input.section, input.span_over_sag).unwrap();
        let sag = load.sag_times_stiffness(longest) / (stiffness * input.section.inertia());
        let parts = if load.loading().unwrap().is_overhang() { 2.0 } else { 1.0 };
        prop_assert!(near(sag, parts * longest / input.span_over_sag));
        let longest = span_for_stress(&load, input.section, input.most_stress).unwrap();
        prop_assert!(near(load.moment(longest) / input.section.modulus(), input.most_stress));
    }

    #[test]
    fn the_least_depth_is_enough_and_a_little_less_is_not(input in question()) {
        let answer = answered(reckon(&input))?;
        let least = answer.least_depth().to_f64();
        prop_assume!(least > 0.05);
        let with_depth = |depth: f64| {
            let section = match input.section {
                Section::Plank { across, .. } => Section::Plank { across, depth },
                Section::Round { .. } => Section::Round { diameter: depth },
            };
            Input { section, ..input.clone() }
        };
        // Kept to 1/8192 in, so tried a little to either side.
        let passes = |depth| reckon(&with_depth(depth)).is_ok_and(|answer| {
            let bend = answer.bend;
            // A load that may come suddenly strains twice as much, of which 1.6 times is let pass.
            let sudden = bend.sudden_stress.is_none_or(|stress| stress <= 1.6 * input.most_stress);
            bend.sag <= bend.most_sag && bend.stress <= input.most_stress && sudden
        });
        prop_assert!(passes(least + 2e-4));
        prop_assert!(!passes(least - 2e-4));
    }

    #[test]
    fn loads_of_the_table_agree_with_adding_them_up_point_by_point(
        span in 6.0..96.0_f64, amount in 1.0..500.0_f64,
    ) {
        let middle = Load::Several { points: vec![(span / 2.0, amount)], even: 0.0 };
        let even = Load::Several { points: Vec::new(), even: amount };
        for (table, several) in [
            (Load::Point(Loading::MiddleResting, amount), middle),
            (Load::Even(Loading::EvenResting, amount), even),
        ] {
            prop_assert!(near(several.sag_times_stiffness(span), table.sag_times_stiffness(span)));
            prop_assert!(near(several.moment(span), table.moment(span)));
        }
        for overhang in [
            Load::Point(Loading::EndOverhang, amount),
            Load::Even(Loading::EvenOverhang, amount),
        ] {
            prop_assert!(near(overhang.curve(span, span), overhang.sag_times_stiffness(span)));
        }
    }

    #[test]
    fn the_mirror_image_of_a_load_bends_as_far(
        places in prop::collection::vec((0.0..1.0_f64, 1.0..300.0_f64), 1..6),
        span in 6.0..96.0_f64,
    ) {
        let points: Vec<(f64, f64)> = places.iter().map(|(at, p)| (at * span, *p)).collect();
        let turned = points.iter().map(|(at, p)| (span - at, *p)).collect();
        let (one, other) =
            (Load::Several { points, even: 1.0 }, Load::Several { points: turned, even: 1.0 });
        prop_assert!(near(one.sag_times_stiffness(span), other.sag_times_stiffness(span)));
        prop_assert!(near(one.moment(span), other.moment(span)));
        let ((left, right), (l, r)) = (one.on_supports(span), other.on_supports(span));
        prop_assert!((left - r).abs() < 1e-6 && (right - l).abs() < 1e-6);
        prop_assert!(near(left + right, one.total(span)));
    }
}
