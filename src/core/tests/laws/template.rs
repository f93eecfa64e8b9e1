//! Templates: what is drawn at full size lies where geometry says, worked out another way.

use proptest::prelude::*;
use reckoner_core::calculators;
use reckoner_core::measure::text::NoNames;
use reckoner_core::paper::{Ink, Template};
use reckoner_core::sheet::{Bench, Entries};

fn template(slug: &str, pairs: &[(&str, String)]) -> Option<Template> {
    let calculator = calculators::find(slug).expect("a calculator");
    let entries = Entries::from_pairs(pairs.iter().cloned());
    calculator.sheet(&entries, &Bench::default(), &NoNames).answer?.template
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
        let Some(t) = template("curve", &[("mode", "arc".into()), ("board", String::new()), ("step", "4".into()), ("chord", chord.to_string()), ("rise", format!("{rise}/8"))]) else { return Ok(()) };
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
        let Some(t) = template("curve", &[("mode", "corner".into()), ("radius", radius.to_string()), ("corner", corner.to_string()), ("edge", String::new())]) else { return Ok(()) };
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
        let Some(t) = template("curve", &[("mode", "s_curve".into()), ("run", run.to_string()), ("offset", format!("{eighths}/8")), ("board", String::new()), ("step", "4".into())]) else { return Ok(()) };
        let places = curve(&t);
        let (a, b) = (f64::from(run), f64::from(eighths) / 8.0);
        for ((x, y), (u, v)) in places.iter().zip(places.iter().rev()) {
            prop_assert!((x + u - a).abs() < 1e-6 && (y + v - b).abs() < 1e-6);
        }
    }
}
