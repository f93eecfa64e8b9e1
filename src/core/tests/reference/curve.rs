//! Arcs, corners and S-curves against published and hand-worked examples.

use reckoner_core::calculators::curve::{arc, corner, rim};
use reckoner_core::measure::text::show;
use reckoner_core::measure::{Length, Number, Rounding, Tape, length};

fn inches(text: &str) -> Length {
    length(text).expect("a length")
}

fn arc_over(chord: &str, rise: &str) -> arc::Answer {
    let input = arc::Input {
        chord: inches(chord),
        rise: inches(rise),
        step: inches(chord),
        board: None,
        things: Vec::new(),
    };
    arc::reckon(&input).expect("an arc")
}

fn near(got: Length, expected: f64, tolerance: f64) {
    assert!((got.to_f64() - expected).abs() <= tolerance, "{got:?} is not {expected}");
}

/// worked_examples W45 to W50, with the tolerances stated there.
#[test]
fn radius_from_chord_and_rise() {
    // W45: mathematics question site, bridge arch problem; chord 24, rise 4.
    assert_eq!(arc_over("24", "4").radius, inches("20"));
    // W46: trade tip by a California builder; chord 96 in, rise 12 in.
    assert_eq!(arc_over("96", "12").radius, inches("102"));
    // W47: general mathematics article; chord 6 ft, rise 1 ft.
    assert_eq!(arc_over("6 ft", "1 ft").radius, inches("5 ft"));
    // W48: mathematics question site, bridge arch problem; chord 56 m, rise 9.8 m: 44.9 m.
    let metres = arc_over("56 m", "9.8 m").radius.to_f64() * 0.0254;
    assert!((metres - 44.9).abs() <= 0.05, "{metres}");
    // W49: University of Regina, Math Central, fence arch; chord 85 in, rise 4 in. The value is
    // exact: 85² / 32 + 2.
    near(arc_over("85", "4").radius, 227.78125, 0.005);
    assert_eq!(arc_over("85", "4").radius, inches("227.78125"));
    // W50: University of Regina, Math Central, arch between columns; chord 11 ft, rise 21 in.
    near(arc_over("11 ft", "21 in").radius, 114.21429, 0.005);
}

/// [WH] V1: chord 36, rise 2: R = 82; ordinates at 6, 9, 12: 1 25/32, 1 1/2, 1 1/8; arc 36.3.
#[test]
fn v1_a_long_shallow_arc() {
    let input = arc::Input {
        chord: inches("36"),
        rise: inches("2"),
        step: inches("3"),
        board: None,
        things: Vec::new(),
    };
    let answer = arc::reckon(&input).expect("an arc");
    assert_eq!(answer.radius, inches("82"));
    let at = |along: &str| {
        let along = inches(along);
        answer.marks.iter().find(|mark| mark.along == along).expect("a mark there").height
    };
    // The example rounds 1.7802, 1.5046 and 1.1165 to the nearest 32nd.
    for (along, expected) in [("6", "1 25/32"), ("9", "1 1/2"), ("12", "1 1/8")] {
        let thirty_seconds = Tape::Inches(reckoner_core::measure::Fineness::ThirtySecond);
        let shown = show(at(along), thirty_seconds, Rounding::Nearest).expect("short");
        assert_eq!(shown.mark.amount(), expected, "at {along}");
    }
    near(answer.arc_length, 36.3, 0.05);
}

/// [WH] V3: radius 2 on a square corner: tangents 2 each way, 0.83 cut off the corner; on a
/// 105 degree corner 1.53.
#[test]
fn v3_rounded_corners() {
    let round = |degrees| {
        let input = corner::Input {
            radius: inches("2"),
            corner: Number::whole(degrees),
            edge: None,
            both: false,
            things: Vec::new(),
        };
        corner::reckon(&input).expect("a corner")
    };
    assert_eq!(round(90).tangent, inches("2"));
    near(round(90).lost, 0.83, 0.005);
    near(round(105).tangent, 1.53, 0.005);
}

/// [WH] V5: a full half-round on a 5 1/2 wide end needs a 5 1/2 diameter object.
#[test]
fn v5_a_round_end() {
    let width = inches("5 1/2");
    let things = vec![inches("4"), inches("5 1/2"), inches("8")];
    let input = corner::Input::whole_end(width, things).expect("small");
    let answer = corner::reckon(&input).expect("an end");
    assert_eq!((input.radius * 2).expect("small"), width);
    assert_eq!(answer.fits[0].diameter, width);
    assert!(answer.fits[0].off.is_zero());
    assert_eq!(answer.straight, Some(Length::ZERO));
}

/// Closed form: a circle once round is π times its diameter; 22 in round is just over 7 across.
#[test]
fn a_rim_once_round() {
    let answer = rim::reckon(&rim::Input::Around(inches("22"))).expect("a rim");
    near(answer.diameter, 22.0 / core::f64::consts::PI, 1.0 / 8192.0);
    near(answer.radius, 11.0 / core::f64::consts::PI, 1.0 / 8192.0);
}
