//! Strength: hand-worked cases S1, S2, S4 and W3 of the project's rules of the trade, the
//! constants of the Wood Handbook, and published beam problems.

use core::f64::consts::PI;
use reckoner_core::calculators::strength::{
    Answer, CALCULATOR, Input, Load, Section, UNKNOWN_SOFTWOOD, Verdict, Wood, at_moisture, reckon,
};
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Entries, Value};
use reckoner_core::tables::beams::{self, Loading, SAG_LIMITS};

#[track_caller]
fn check_near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}

fn beam(section: Section, span: f64, load: Load) -> Answer {
    let input = Input {
        section,
        span,
        middle_supports: 0,
        load,
        sharing: 1,
        wood: Wood::of_stiffness(UNKNOWN_SOFTWOOD),
        span_over_sag: 360.0,
        most_stress: 850.0,
    };
    reckon(&input).expect("an answer")
}

const FLAT_TWO_BY_SIX: Section = Section::Plank { across: 5.5, depth: 1.5 };

fn person() -> Load {
    Load::Point(Loading::MiddleResting, beams::PERSON.pounds)
}

/// Source: [WH] S1, one 2×6 flat, 44 span, 250 lb, E 1.2 million: sag 0.239 (limit 0.122), stress
/// 1333 psi, fails both; with a support in the middle, 22: 0.030, 667 psi, passes.
#[test]
fn s1_a_flat_two_by_six_over_44_needs_a_middle_support() {
    let answer = beam(FLAT_TWO_BY_SIX, 44.0, person());
    check_near(answer.bend.sag, 0.239, 0.0005);
    check_near(answer.bend.most_sag, 0.122, 0.0005);
    check_near(answer.bend.stress, 1333.0, 0.5);
    assert_eq!(answer.bend.verdict, Verdict::Dont);
    assert!(answer.bend.sag > answer.bend.most_sag);
    let supported = answer.supported.expect("a middle support can be put in");
    check_near(supported.sag, 0.030, 0.0005);
    check_near(supported.stress, 667.0, 0.5);
    assert_eq!(supported.verdict, Verdict::Stiff);
}

/// Source: [WH] S2, longest span for that plank at span/360: 31.5.
#[test]
fn s2_the_longest_span_by_sag() {
    let longest = beam(FLAT_TWO_BY_SIX, 44.0, person()).for_sag.longest_span;
    check_near(longest.expect("a span").to_f64(), 31.5, 0.05);
}

/// Source: [WH] S4, 2×4 on edge I 5.36 against flat 0.984: ratio 5.4.
#[test]
fn s4_a_two_by_four_on_edge() {
    let flat = Section::Plank { across: 3.5, depth: 1.5 };
    check_near(flat.inertia(), 0.984, 0.0005);
    check_near(flat.turned().inertia(), 5.36, 0.005);
    let entries = Entries::from_pairs([("across", "3 1/2"), ("span", "24")]);
    let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
    let figures = sheet.answer.expect("an answer").figures;
    let ratio = figures.iter().find(|figure| figure.id == "turned_ratio").expect("the ratio");
    let Value::Real(ratio, 1, "times") = ratio.value else { panic!("{ratio:?}") };
    check_near(ratio, 5.4, 0.05);
}

/// Source: [WH] W3, planter 36 × 12 × 12 inside = 3.0 cu ft; about 300 lb wet at 100 lb/cu ft.
#[test]
fn w3_a_planter_of_wet_soil() {
    let entries = Entries::from_pairs([
        ("load", "soil"),
        ("span", "36"),
        ("soil_width", "12"),
        ("soil_depth", "12"),
    ]);
    let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
    let figures = sheet.answer.expect("an answer").figures;
    let value = |id| figures.iter().find(|figure| figure.id == id).map(|figure| &figure.value);
    assert_eq!(value("soil_volume"), Some(&Value::Real(3.0, 1, "cu ft")));
    assert_eq!(value("soil_weight"), Some(&Value::Real(300.0, 0, "lb")));
}

/// Source: USDA FPL Wood Handbook FPL-GTR-190 (2010) Chapter 9 Table 9-1, kb of the seven
/// loadings used, as decimals of the table file.
#[test]
fn sag_factors_are_those_of_the_wood_handbook() {
    let table = [
        (Loading::EvenResting, 0.013_020_833),
        (Loading::EvenClamped, 0.002_604_167),
        (Loading::MiddleResting, 0.020_833_333),
        (Loading::MiddleClamped, 0.005_208_333),
        (Loading::QuartersResting, 0.014_322_917),
        (Loading::EvenOverhang, 0.125),
        (Loading::EndOverhang, 0.333_333_333),
    ];
    assert_eq!(table.map(|row| row.0), Loading::ALL);
    for (loading, kb) in table {
        check_near(loading.sag_factor(), kb, 1e-9);
    }
}

/// Source: International Residential Code Table R301.7 (L/360, L/240) and International Building
/// Code Table 1604.3 (L/180).
#[test]
fn sag_limits_are_those_of_the_codes() {
    let limits: Vec<u32> = SAG_LIMITS.iter().map(|limit| limit.span_over_sag).collect();
    assert_eq!(limits, [600, 360, 240, 180]);
    // The shelf limit is 0.02 in to the foot, common practice.
    check_near(12.0 / f64::from(limits[0]), 0.02, 1e-12);
    assert!(SAG_LIMITS.iter().all(|limit| limit.source.is_some() != (limit.id == "shelf")));
}

/// Sources: 2010 ADA Standards 903.6, 250 lbf; ICC 300-2017 Table 303.2 (draft), 120 lb/ft and
/// 300 lb.
#[test]
fn design_loads_are_those_of_the_codes() {
    assert_eq!(beams::PERSON.pounds, 250.0);
    assert_eq!(beams::ROW_OF_PEOPLE.pounds, 120.0);
    assert_eq!(beams::STEP.pounds, 300.0);
    // The Ontario Building Code asks about the same of a row: 1.75 kN/m.
    let newtons_in_pound = 4.448_222;
    let ontario = 1750.0 * 0.3048 / newtons_in_pound;
    check_near(beams::ROW_OF_PEOPLE.pounds, ontario, 0.5);
}

/// A steel beam of a published page: I 285 in⁴, E 29 million psi, depth such that y is 6.25 in.
fn steel(load: Load) -> Answer {
    let depth = 12.5;
    let across = 285.0 * 12.0 / (depth * depth * depth);
    let input = Input {
        section: Section::Plank { across, depth },
        span: 100.0,
        middle_supports: 0,
        load,
        sharing: 1,
        wood: Wood::of_stiffness(29_000_000.0),
        span_over_sag: 360.0,
        most_stress: 20_000.0,
    };
    reckon(&input).expect("an answer")
}

/// Source: Engineering ToolBox beam page (W30, W31): L 100 in, q 100 lb/in: stress 2741 psi,
/// deflection 0.016 in.
#[test]
fn w30_w31_an_even_load() {
    let answer = steel(Load::Even(Loading::EvenResting, 100.0));
    check_near(answer.bend.stress, 2741.0, 0.5);
    check_near(answer.bend.sag, 0.016, 0.0005);
}

/// Source: the same page (W32): F 10,000 lb in the middle: stress 5482 psi.
#[test]
fn w32_a_load_in_the_middle() {
    let answer = steel(Load::Point(Loading::MiddleResting, 10_000.0));
    check_near(answer.bend.stress, 5482.0, 0.6);
}

/// Source: timber beam sample problem (W33, W34): 100 mm × 200 mm, I = 66,666,668 mm⁴ and
/// S = 666,667 mm³ as printed.
#[test]
fn w33_w34_a_rectangle_in_millimetres() {
    let section = Section::Plank { across: 100.0, depth: 200.0 };
    check_near(section.inertia(), 66_666_668.0, 2.0);
    check_near(section.modulus(), 666_666.688, 0.1);
}

/// Source: the same problem (W35, W36): 3 m, 10 kN at 0.5 m, 5 kN at 1.5 m, 10 kN at 2.5 m, own
/// weight 117.7 N/m: end reaction 12,676.5 N, greatest moment 8882.4 N m.
#[test]
fn w35_w36_several_loads() {
    // The rules hold in any unit: newtons and metres here.
    let load = Load::Several {
        points: vec![(0.5, 10_000.0), (1.5, 5_000.0), (2.5, 10_000.0)],
        even: 117.7,
    };
    let (left, right) = load.on_supports(3.0);
    check_near(left, 12_676.5, 0.6);
    check_near(right, 12_676.5, 0.6);
    check_near(load.moment(3.0), 8882.4, 0.2);
}

/// Source: general articles on the code limits (W37 to W39): 12 ft at L/360 is 0.4 in, at L/240
/// 0.6 in; 10 ft at L/360 is 1/3 in.
#[test]
fn w37_to_w39_sag_to_let_pass() {
    let limit = |feet: &str, id: &str| {
        let entries = Entries::from_pairs([
            ("span", feet),
            ("limit", id),
            ("depth", "11 1/4"),
            ("middle_supports", "0"),
        ]);
        let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
        let figures = sheet.answer.expect("an answer").figures;
        let figure = figures.iter().find(|figure| figure.id == "most_sag").expect("the limit");
        let Value::Real(inches, 3, "in") = figure.value else { panic!("{figure:?}") };
        inches
    };
    check_near(limit("12'", "floor"), 0.4, 1e-9);
    check_near(limit("12'", "other"), 0.6, 1e-9);
    check_near(limit("10'", "floor"), 1.0 / 3.0, 1e-9);
}

/// Source: Wood Handbook FPL-GTR-190 Table 9-1 (sag) and the moments of the same loadings, w L² ÷ 8, w L² ÷ 2, P L ÷ 4
/// and P L. By hand for a flat 2×6 (I 1.546875, S 2.0625, E 1.2 million) over 24 in, 120 lb on each foot or 250 lb:
/// 5 × 10 × 24⁴ ÷ (384 E I) = 0.023273, 10 × 24⁴ ÷ (8 E I) = 0.223418, 250 × 24³ ÷ (48 E I) = 0.038788,
/// 250 × 24³ ÷ (3 E I) = 0.620606. A middle support leaves spans of 12, and a sixteenth of the first or an eighth of the
/// third; an overhang has none.
#[test]
fn each_load_is_asked_for_by_its_own_name() {
    let asked = |load: &str, supports: &str| {
        let entries = Entries::from_pairs([
            ("load", load),
            ("span", "24"),
            ("pounds", "250"),
            ("pounds_per_foot", "120"),
            ("middle_supports", supports),
        ]);
        let sheet = CALCULATOR.sheet(&entries, &Bench::default(), &NoNames);
        let figures = sheet.answer.expect("an answer").figures;
        ["sag", "stress"].map(|id| {
            match figures.iter().find(|it| it.id == id).map(|it| &it.value) {
                Some(Value::Real(number, ..)) => *number,
                other => panic!("{id}: {other:?}"),
            }
        })
    };
    for (load, supports, sag, moment) in [
        ("even", "0", 0.023_273, 720.0),
        ("even", "1", 0.023_273 / 16.0, 720.0 / 4.0),
        ("even_end", "0", 0.223_418, 2880.0),
        ("even_end", "1", 0.223_418, 2880.0),
        ("point", "0", 0.038_788, 1500.0),
        ("point", "1", 0.038_788 / 8.0, 750.0),
        ("end", "0", 0.620_606, 6000.0),
        ("end", "1", 0.620_606, 6000.0),
    ] {
        let [found, stress] = asked(load, supports);
        check_near(found, sag, 1e-6);
        check_near(stress, moment / 2.0625, 0.01);
    }
}

/// Source: S. J. Record, The Mechanical Properties of Wood (1914): E = P l³ ÷ (4 D b h³) and
/// R = 1.5 P l ÷ (b h²) for a load in the middle.
#[test]
fn a_middle_load_is_as_record_has_it() {
    let (p, l, b, h) = (180.0, 36.0, 3.5, 1.5);
    let answer =
        beam(Section::Plank { across: b, depth: h }, l, Load::Point(Loading::MiddleResting, p));
    check_near(answer.bend.sag, p * l.powi(3) / (4.0 * UNKNOWN_SOFTWOOD * b * h.powi(3)), 1e-12);
    check_near(answer.bend.stress, 1.5 * p * l / (b * h * h), 1e-9);
}

/// Source: Engineering ToolBox beam page, two equal loads at a from each end: deflection
/// F a (3 L² - 4 a²) ÷ (24 E I), stress y F a ÷ I; Wood Handbook Table 9-1 for quarter points.
#[test]
fn two_equal_loads_agree_with_the_closed_form_and_the_handbook() {
    let (force, span) = (125.0, 40.0);
    for a in [4.0, 10.0, 16.5] {
        let load = Load::Several { points: vec![(a, force), (span - a, force)], even: 0.0 };
        let closed = force * a * (3.0 * span * span - 4.0 * a * a) / 24.0;
        check_near(load.sag_times_stiffness(span) / closed, 1.0, 1e-9);
        check_near(load.moment(span), force * a, 1e-6);
    }
    let quarters = Load::Point(Loading::QuartersResting, 2.0 * force);
    let same = Load::Several { points: vec![(10.0, force), (30.0, force)], even: 0.0 };
    check_near(quarters.sag_times_stiffness(span) / same.sag_times_stiffness(span), 1.0, 1e-9);
    check_near(quarters.moment(span), same.moment(span), 1e-6);
}

/// Source: geometry, I = π d⁴ ÷ 64 and S = π d³ ÷ 32.
#[test]
fn a_round_rail_has_its_closed_forms() {
    let rail = Section::Round { diameter: 2.0 };
    check_near(rail.inertia(), PI / 4.0, 1e-12);
    check_near(rail.modulus(), PI / 4.0, 1e-12);
}

/// Source: USDA FPL Wood Handbook FPL-GTR-282 (2021) Equation 5-3, example p. 5-34 (W29): white
/// ash, 103,000 kPa at 12 %, 66,000 kPa green, Mp 24: 119,500 kPa at 8 %.
#[test]
fn w29_white_ash_at_8_percent() {
    check_near(at_moisture(103_000.0, 66_000.0, 24.0, 8.0), 119_500.0, 100.0);
}

/// Source: Army TM 5-852-4 Table 2-2 (credits FPL): green over 12 % is 2360 ÷ 2800 for the
/// stiffness, 17600 ÷ 25700 for the breaking stress.
#[test]
fn green_wood_keeps_the_published_share() {
    let dry = Wood::of_species("white_oak", 12.0).expect("white oak");
    let green = Wood::of_species("white_oak", 60.0).expect("white oak");
    check_near(green.stiffness / dry.stiffness, 2360.0 / 2800.0, 1e-12);
    let (green, dry) = (green.rupture.expect("a stress"), dry.rupture.expect("a stress"));
    check_near(green / dry, 17_600.0 / 25_700.0, 1e-12);
    // Table 5-3a: white oak breaks at 105,000 kPa.
    check_near(dry, 105_000.0 / 6.894_757, 0.5);
}
