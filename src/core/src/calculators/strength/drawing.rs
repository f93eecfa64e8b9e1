//! The beam from the side, bent as it would be but drawn far too deep, beside the same beam with
//! one middle support more.

use super::fields::{ACROSS, DEPTH, DIAMETER, SPAN};
use super::shown::fine_text;
use super::{Answer, Bend, Input, Load, Section};
use crate::drawing::{Anchor, Draft, Role, SCENE_WIDTH, Scene, Shape, Size};
use crate::measure::text::show;
use crate::measure::{Length, Rounding};
use crate::say;
use crate::sheet::{Bench, Sentence, Value};

/// Border left and right.
const MARGIN: f64 = 24.0;

/// How deep the larger of the two sags is drawn.
const DEEPEST: f64 = 26.0;

/// Height of one panel.
const PANEL: f64 = 124.0;

/// Draws one panel, or two where a middle support would help.
pub(super) fn draw(input: &Input, answer: &Answer, bench: &Bench) -> Scene {
    let wide = SCENE_WIDTH - 2.0 * MARGIN;
    let scale = wide / input.span;
    let times = DEEPEST / (answer.bend.sag * scale).max(1e-9);
    let mut panels = Panels { draft: Draft::default(), scale, times, bench };
    panels.beam(input, answer.bend, input.middle_supports, 0.0);
    let mut height = PANEL;
    if let Some(supported) = answer.supported {
        panels.beam(input, supported, input.middle_supports.saturating_add(1), PANEL);
        height += PANEL;
    }
    let words = if times >= 1.5 {
        format!("bend drawn {times:.0} times too deep")
    } else {
        "bend not to scale".to_owned()
    };
    panels.draft.tell(words);
    panels.span(input, height + 10.0);
    panels.draft.scene(title(answer, bench), height + 48.0)
}

fn title(answer: &Answer, bench: &Bench) -> Sentence {
    let near = |inches: f64| fine_text(inches, bench);
    match answer.supported {
        Some(supported) => say![
            "From the side: it sags ",
            near(answer.bend.sag),
            ", and with one middle support more ",
            near(supported.sag),
            "."
        ],
        None => say!["From the side: it sags ", near(answer.bend.sag), "."],
    }
}

struct Panels<'a> {
    draft: Draft,
    /// Page units to the inch along the span.
    scale: f64,
    /// How much deeper the bend is drawn.
    times: f64,
    bench: &'a Bench,
}

impl Panels<'_> {
    fn add(&mut self, role: Role, shape: Shape) {
        self.draft.add(role, shape);
    }

    /// The span and the depth, which are given.
    fn span(&mut self, input: &Input, y: f64) {
        let (from, to) = (MARGIN, MARGIN + input.span * self.scale);
        let label = format!("span {}", self.amount(input.span));
        self.draft.dimension(Role::Ink, (from, y), (to, y), label, Some(SPAN.id));
        let (name, field) = match input.section {
            Section::Round { .. } => ("round", DIAMETER.id),
            _ => ("deep", DEPTH.id),
        };
        let label = format!("{} {name}", self.amount(input.section.depth()));
        let (ink, below) = ((Role::Ink, Size::Small), y + 28.0);
        self.draft.name(ink, (to, below, Anchor::End), label, Some(field));
        if let Section::Plank { across, .. } = input.section {
            let label = format!("{} wide", self.amount(across));
            self.draft.name(ink, (from, below, Anchor::Start), label, Some(ACROSS.id));
        }
    }

    fn amount(&self, inches: f64) -> String {
        let length = Length::near(inches).unwrap_or(Length::ZERO);
        show(length, self.bench.tape, Rounding::Nearest)
            .map_or_else(|_| length.to_string(), |shown| shown.mark.amount())
    }

    /// One beam with its supports, loads and numbers; `top` is the upper edge of its panel.
    fn beam(&mut self, input: &Input, bend: Bend, middle_supports: u32, top: f64) {
        let rest = top + 46.0;
        let thick = (input.section.depth() * self.scale).clamp(3.0, 22.0);
        let bays = middle_supports.saturating_add(1);
        let is_overhang = input.load.loading().is_some_and(|loading| loading.is_overhang());
        let span = f64::from(bays) * bend.bay * self.scale;
        self.add(Role::Ghost, Shape::Rect(MARGIN, rest, span, thick));
        // A load on one spot is drawn in the middle stretch; the others stay straight.
        let everywhere = matches!(input.load, Load::Even(..));
        let loaded = bays / 2;
        let bent: Vec<(f64, f64)> = (0..bays)
            .flat_map(|bay| self.bay(&input.load, bend, bay, everywhere || bay == loaded))
            .collect();
        let lower = bent.iter().rev().map(|(x, y)| (*x, rest + y + thick));
        let outline = bent.iter().map(|(x, y)| (*x, rest + y)).chain(lower).collect();
        self.add(Role::Wood, Shape::Polygon(outline));
        self.supports(bend.bay, bays, rest + thick, is_overhang);
        for (x, drop) in self.loads(&input.load, bend, bays, loaded) {
            self.arrow(x, rest + drop);
        }
        let sag = fine_text(bend.sag, self.bench);
        let words = format!(
            "sag {sag} · {} · {}",
            bend.verdict.word(),
            Value::Real(bend.stress, 0, "psi").in_line(self.bench)
        );
        let at = (SCENE_WIDTH / 2.0, top + 14.0, Anchor::Middle);
        self.draft.row((Role::StrongInk, Size::Small), at, words);
        let stretch = self.amount(bend.bay);
        let (from, to) = (MARGIN, MARGIN + bend.bay * self.scale);
        let y = top + PANEL - 14.0;
        if bays > 1 {
            self.draft.dimension(Role::Ink, (from, y), (to, y), stretch, None);
        }
    }

    /// The upper edge of one stretch: places across the page, and how far each lies below rest.
    fn bay(&self, load: &Load, bend: Bend, bay: u32, is_loaded: bool) -> Vec<(f64, f64)> {
        let start = f64::from(bay) * bend.bay;
        let greatest = load.sag_times_stiffness(bend.bay).max(f64::MIN_POSITIVE);
        let deepest = bend.sag * self.scale * self.times;
        (0_u32..=24)
            .map(|i| {
                let along = bend.bay * f64::from(i) / 24.0;
                let share = load.curve(bend.bay, along) / greatest;
                let drop = if is_loaded { share * deepest } else { 0.0 };
                (MARGIN + (start + along) * self.scale, drop)
            })
            .collect()
    }

    fn supports(&mut self, bay: f64, bays: u32, under: f64, is_overhang: bool) {
        if is_overhang {
            self.add(Role::Mate, Shape::Rect(MARGIN - 14.0, under - 34.0, 14.0, 50.0));
            return;
        }
        for i in 0..=bays {
            let x = MARGIN + f64::from(i) * bay * self.scale;
            let triangle = vec![(x, under), (x - 7.0, under + 12.0), (x + 7.0, under + 12.0)];
            self.add(Role::Mate, Shape::Polygon(triangle));
        }
    }

    /// Where the arrows stand: places across the page, and how far the beam lies below rest there.
    fn loads(&self, load: &Load, bend: Bend, bays: u32, loaded: u32) -> Vec<(f64, f64)> {
        let greatest = load.sag_times_stiffness(bend.bay).max(f64::MIN_POSITIVE);
        let deepest = bend.sag * self.scale * self.times;
        let in_bay = |bay: u32, along: f64| {
            let x = MARGIN + (f64::from(bay) * bend.bay + along) * self.scale;
            (x, load.curve(bend.bay, along) / greatest * deepest)
        };
        use crate::tables::beams::Loading;
        match load {
            Load::Point(Loading::EndOverhang, _) => vec![in_bay(0, bend.bay)],
            Load::Point(Loading::QuartersResting, _) => {
                vec![in_bay(loaded, bend.bay / 4.0), in_bay(loaded, bend.bay * 0.75)]
            }
            Load::Point(..) => vec![in_bay(loaded, bend.bay / 2.0)],
            Load::Even(..) => {
                let all = f64::from(bays) * bend.bay;
                (0_u32..8)
                    .map(|i| {
                        let at = all * (f64::from(i) + 0.5) / 8.0;
                        let bay = libm::floor(at / bend.bay);
                        in_bay(bay as u32, at - bay * bend.bay)
                    })
                    .collect()
            }
            Load::Several { points, .. } => points.iter().map(|(at, _)| in_bay(0, *at)).collect(),
        }
    }

    /// An arrow down onto the beam.
    fn arrow(&mut self, x: f64, tip: f64) {
        self.add(Role::Kerf, Shape::Rect(x - 1.0, tip - 20.0, 2.0, 14.0));
        let head = vec![(x, tip), (x - 4.0, tip - 8.0), (x + 4.0, tip - 8.0)];
        self.add(Role::Kerf, Shape::Polygon(head));
    }
}
