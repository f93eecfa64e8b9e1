//! Templates: what is drawn at full size lies where geometry says, worked out another way.

use proptest::prelude::*;
use reckoner_core::calculators;
use reckoner_core::measure::text::NoNames;
use reckoner_core::paper::{Ink, Template};
use reckoner_core::sheet::{Bench, Entries, Refusal};

use crate::judged::answered;

/// The template of an answer, which always has one.
fn template(slug: &str, pairs: &[(&str, String)]) -> Result<Template, Vec<Refusal>> {
    let calculator = calculators::find(slug).expect("a calculator");
    let entries = Entries::from_pairs(pairs.iter().cloned());
    let sheet = calculator.sheet(&entries, &Bench::default(), &NoNames);
    let answer = sheet.answer.ok_or(sheet.refusals)?;
    Ok(answer.template.expect("an answer with a template"))
}

fn curve(template: &Template) -> Vec<(f64, f64)> {
    let cut = template.inks.iter().find_map(|ink| match ink {
        Ink::Cut(places) => Some(places.clone()),
        _ => None,
    });
    cut.expect("a curve")
}

proptest! {
    /// Every place of the arc is one radius from the centre, and it spans the chord.
    #[test]
    fn the_arc_is_a_circle_over_its_chord(chord in 8_u32..90, rise in 1_u32..30) {
        let t = answered(template("curve", &[("mode", "arc".into()), ("board", String::new()), ("step", "4".into()), ("chord", chord.to_string()), ("rise", format!("{rise}/8"))]))?;
        let (c, h) = (f64::from(chord), f64::from(rise) / 8.0);
        let radius = c * c / (8.0 * h) + h / 2.0;
        let places = curve(&t);
        for (x, y) in &places {
            let off = (x - c / 2.0).hypot(y - radius) - radius;
            prop_assert!(off.abs() < 1e-6, "{off}");
        }
        let (first, last) = (places[0], places[places.len() - 1]);
        prop_assert!((first.1 - h).abs() < 1e-6 && (last.0 - c).abs() < 1e-6 && (last.1 - h).abs() < 1e-6);
    }

    /// The round of a corner leaves both edges where they are tangent to it: a straight edge and
    /// the circle meet once.
    #[test]
    fn the_round_touches_both_edges(radius in 1_u32..12, corner in 40_u32..150) {
        let t = answered(template("curve", &[("mode", "corner".into()), ("radius", radius.to_string()), ("corner", corner.to_string()), ("edge", String::new())]))?;
        let Some(Ink::Guide(edges)) = t.inks.iter().find(|ink| matches!(ink, Ink::Guide(_))) else { panic!() };
        let Some(Ink::Hole(cx, cy, _)) = t.inks.iter().find(|ink| matches!(ink, Ink::Hole(..))) else { panic!() };
        for pair in edges.windows(2) {
            let ((ax, ay), (bx, by)) = (pair[0], pair[1]);
            let distance = ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)).abs() / (bx - ax).hypot(by - ay);
            prop_assert!((distance - f64::from(radius)).abs() < 1e-3, "{distance} {radius} {corner}");
        }
        for (x, y) in curve(&t) {
            prop_assert!(((x - cx).hypot(y - cy) - f64::from(radius)).abs() < 1e-3);
        }
    }

    /// The S-curve begins and ends level at its ends and goes through the middle.
    #[test]
    fn the_s_curve_is_the_same_turned_round(run in 6_u32..60, eighths in 4_u32..40) {
        let t = answered(template("curve", &[("mode", "s_curve".into()), ("run", run.to_string()), ("offset", format!("{eighths}/8")), ("board", String::new()), ("step", "4".into())]))?;
        let places = curve(&t);
        let (a, b) = (f64::from(run), f64::from(eighths) / 8.0);
        for ((x, y), (u, v)) in places.iter().zip(places.iter().rev()) {
            prop_assert!((x + u - a).abs() < 1e-6 && (y + v - b).abs() < 1e-6);
        }
    }

    /// The right part is the mirror picture of the left: both holes are as far from their front
    /// end and their top edge, on whatever page they lie.
    #[test]
    fn holes_are_a_mirrored_pair(length in 6_u32..60, height in 2_u32..8, front in 2_u32..40, top in 4_u32..60) {
        let (front, top) = (f64::from(front) / 2.0, f64::from(top) / 8.0);
        let pairs = [("dowel", "1/2".to_owned()), ("part_length", length.to_string()), ("part_height", height.to_string()), ("from_front", front.to_string()), ("from_top", top.to_string())];
        // Holes too near an edge are refused.
        let t = answered(template("dowel", &pairs))?;
        let outlines: Vec<_> = t.inks.iter().filter_map(|ink| match ink { Ink::Guide(places) => Some(places), _ => None }).collect();
        let holes: Vec<_> = t.inks.iter().filter_map(|ink| match ink { Ink::Hole(x, y, d) => Some((*x, *y, *d)), _ => None }).collect();
        prop_assert_eq!((outlines.len(), holes.len()), (2, 2));
        for (outline, (x, y, bit)) in outlines.iter().zip(&holes) {
            // The second place is the corner of the front end and the top edge.
            let corner = outline[1];
            prop_assert!(((x - corner.0).abs() - front).abs() < 1e-9 && (y - corner.1 - top).abs() < 1e-9);
            prop_assert_eq!(*bit, 0.5);
            prop_assert!(*x > 0.0 && *x < t.width && *y < t.height);
        }
        prop_assert!((holes[0].0 + holes[1].0 - t.width).abs() < 1e-9);
    }

    /// A slat as wide as it is cut stands at each left edge, and the gaps between them are equal.
    #[test]
    fn slats_on_a_stick_leave_equal_gaps(length in 20_u32..90, slats in 2_u32..20) {
        let pairs = [("mode", "slats".to_owned()), ("length", length.to_string()), ("slat_width", "1 1/2".to_owned()), ("slats", slats.to_string()), ("least_gap", String::new())];
        let t = answered(template("spacing", &pairs))?;
        let lines: Vec<f64> = t.inks.iter().filter_map(|ink| match ink { Ink::Cut(places) => Some(places[0].0), _ => None }).collect();
        prop_assert_eq!(lines.len(), 2 * slats as usize);
        let gap = (f64::from(length) - 1.5 * f64::from(slats)) / f64::from(slats + 1);
        let mut at = 0.0;
        for edges in lines.chunks(2) {
            prop_assert!((edges[0] - at - gap).abs() < 1e-9 && (edges[1] - edges[0] - 1.5).abs() < 1e-9);
            at = edges[1];
        }
    }
}
