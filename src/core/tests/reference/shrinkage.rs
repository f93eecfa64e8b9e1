//! Shrinkage of ordinary softwood against the standard's figures, a worked class problem and
//! hand-worked examples [WH] of the trade rules, stage 2.

use reckoner_core::measure::{Number, length};
use reckoner_core::tables::shrinkage::{Across, Moisture, factor, lost};

fn at(percent: i64) -> Moisture {
    Moisture::percent(Number::whole(percent)).expect("within the formula")
}

#[track_caller]
fn check(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found} is not {expected} ± {tolerance}");
}

/// Source: W63 and W64: FPL-RP-489 on PS 20-70: to 15 %, width 2.80 %, thickness 2.35 %.
#[test]
fn the_lumber_standard_loses_its_figures_to_15_percent() {
    check(lost(Across::Width, at(15)).expect("small").to_f64(), 2.80, 0.01);
    check(lost(Across::Thickness, at(15)).expect("small").to_f64(), 2.35, 0.01);
}

/// Source: W28: Missouri S&T CE 5260 problem 4.34, 13.25 in from 19 % to 10 %. DEPARTS: the
/// source prints 13.02; the formula that it prints gives 12.99, tolerance 0.005.
#[test]
fn a_deep_member_from_19_to_10_percent() {
    let factor = factor(Across::Width, at(19), at(10)).expect("small");
    check(13.25 * factor.to_f64(), 12.98852, 0.00001);
    check(13.25 * factor.to_f64(), 12.99, 0.005);
}

/// Source: [WH] N1: wet 2x6 measuring 5 5/8 to 15 %: loses 2.806 % = 0.158, is 5 15/32.
#[test]
fn n1_a_wet_board_dries_to_15_percent() {
    let wet = length("5 5/8").expect("a length");
    let dry =
        (wet * factor(Across::Width, Moisture::green(), at(15)).expect("small")).expect("small");
    check((wet - dry).expect("small").to_f64(), 0.158, 0.0005);
    check(dry.to_f64(), 5.0 + 15.0 / 32.0, 1.0 / 64.0);
}

#[test]
fn the_formula_holds_from_8_to_19_percent_only() {
    for outside in [7, 20, 28] {
        assert_eq!(Moisture::percent(Number::whole(outside)), None, "{outside}");
    }
    assert!(at(8) < at(19) && at(19) < Moisture::green());
}
