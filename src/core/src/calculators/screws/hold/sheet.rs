//! Reads fastener and wood and lays out what one holds.

use super::{Answer, Input, Mode, reckon};
use crate::calculators::screws::{Wood, sheet::chosen};
use crate::measure::Rounding;
use crate::say;
use crate::sheet::{self, Ask, Caution, Figure, Source, Step, Value, Working};
use crate::tables::fasteners::{Make, SIZES_SOURCE, TEST_SOURCE, bending_yield};
use crate::tables::gravity;

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(ask.field("screw_length"));
    let top = ask.length(ask.field("top_thickness"));
    let input = Input {
        fastener: chosen(ask, "fastener")?,
        length: length?,
        top: top?,
        wood: Wood::read(ask)?,
        end_grain: ask.choice(ask.field("into")).id == "end",
        wet: ask.yes(ask.field("wet")),
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer)),
        Err(problems) => ask.refuse(&problems),
    }
}

fn words(mode: Mode) -> &'static str {
    match mode {
        Mode::ReceiverCrushed => "the receiver is crushed",
        Mode::TopCrushed => "the top piece is crushed",
        Mode::Tilts => "it tilts in both pieces",
        Mode::BendsInReceiver => "it bends in the receiver",
        Mode::BendsInTop => "it bends in the top piece",
        Mode::BendsInBoth => "it bends in both pieces",
    }
}

fn pounds(id: &'static str, label: &'static str, from: &'static str, load: f64) -> Figure {
    Figure { id, label, from, value: Value::Real(load, 0, "lb") }
}

fn lay_out(input: &Input, answer: &Answer) -> sheet::Answer {
    let pull = answer.pull.map(|load| pounds("pull", "Straight pull", "for one", load));
    let side = answer.side.map(|(load, _)| pounds("side_load", "Side load", "for one", load));
    let to = match input.fastener.make {
        Make::LagScrew => "its face to where the tip begins",
        _ => "its face to the tip",
    };
    let into = Figure::length("into_receiver", "Into the receiver", to, answer.into_receiver);
    let (headline, mut figures) = match (side, pull) {
        (Some(side), pull) => (side, pull.into_iter().collect::<Vec<_>>()),
        (None, Some(pull)) => (pull, Vec::new()),
        // Only a lag screw has no side load here, and it always has a pull.
        (None, None) => (into.clone(), Vec::new()),
    };
    if headline.id != into.id {
        figures.push(into);
    }
    if let Some((_, mode)) = answer.side {
        let value = Value::Words(say![words(mode)]);
        figures.push(Figure { id: "gives_way", label: "Gives way first", from: "", value });
    }
    if let Some(load) = answer.pull_per_inch {
        figures.push(pounds("pull_per_inch", "Pull per inch", "of thread in the receiver", load));
    }
    if let Some(load) = answer.test_pull {
        figures.push(pounds("test_pull", "Pulled out in tests", "about, dry", load));
    }
    if let Some(load) = answer.test_side {
        figures.push(pounds("test_side", "Stays bent in tests", "side load, about, dry", load));
    }
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = figures;
    laid.notes = notes(input, answer);
    laid.cautions = vec![Caution::Load, Caution::Corrosion];
    laid
}

fn notes(input: &Input, answer: &Answer) -> Vec<sheet::Note> {
    let mut notes = vec![say![
        "Reference values for loads of normal duration, sound wood and both pieces of one wood. \
         Ends, edges and groups lower them."
    ]];
    if answer.pull_per_inch.is_none() {
        notes.push(say![
            "In end grain the rules allow no straight pull. Turn the joint, or bolt it."
        ]);
    }
    if answer.side.is_none() {
        notes.push(say![
            "From 1/4 in on, the side load depends on the grain; it is not given here."
        ]);
    }
    if let (Some((load, _)), Some(bent)) = (answer.side, answer.test_side)
        && bent < load
    {
        notes
            .push(say!["In the older tests it began to bend below the side load: take the lower."]);
    }
    if !input.end_grain {
        notes.push(say!["Test loads are near breaking, with pilot holes: never load that far."]);
    }
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let fastener = input.fastener;
    let diameter = f64::from(fastener.shank) / 1000.0;
    let gravity = input.wood.gravity;
    let mut steps = Vec::new();
    if let (Some(per_inch), Some(pull)) = (answer.pull_per_inch, answer.pull) {
        steps.push(Step {
            rule: match fastener.make {
                Make::WoodScrew => "pull per inch = 2850 G² D, × 0.7 when wet",
                Make::Nail => "pull per inch = 1380 G^2.5 D",
                Make::LagScrew => {
                    "pull per inch = 1800 G^1.5 D^0.75, × 0.7 when wet, × 0.75 in end grain"
                }
            }
            .into(),
            put_in: say![format!("G {gravity:.2}, D {diameter:.3} in")],
            gives: Value::Real(per_inch, 1, "lb"),
        });
        steps.push(Step {
            rule: "pull = per inch × thread in the receiver".into(),
            put_in: say![
                format!("{per_inch:.1} lb × "),
                (answer.thread_in_receiver, Rounding::Nearest)
            ],
            gives: Value::Real(pull, 0, "lb"),
        });
    }
    if let Some((load, mode)) = answer.side {
        let bearing = super::yield_modes::bearing_strength(gravity);
        let bending = bending_yield(fastener.shank).unwrap_or(0);
        steps.push(Step {
            rule: "side load = least of six yield modes, × 0.7 when wet, × 0.67 in end grain"
                .into(),
            put_in: say![
                format!(
                    "root {:.3} in, wood {bearing:.0} psi, bending {bending} psi, top ",
                    f64::from(fastener.root) / 1000.0
                ),
                input.top,
                format!("; {}", words(mode))
            ],
            gives: Value::Real(load, 0, "lb"),
        });
    }
    let mut sources = vec![
        Source::Published(
            "AWC NDS 2018, Eq. 12.2-1 to 12.2-3; Tables 11.3.3, 12.3.1A, 12.3.1B, 12.3.3, I1",
        ),
        Source::Published(gravity::SOURCE),
        Source::Published(SIZES_SOURCE),
    ];
    if answer.test_pull.is_some() {
        sources.push(Source::Published(TEST_SOURCE));
    }
    if steps.is_empty() {
        let gives = Value::Length(answer.into_receiver, Rounding::Nearest);
        let rule = "into the receiver = length - top";
        steps.push(Step { rule: rule.into(), put_in: say![input.length, " - ", input.top], gives });
    }
    Working { steps, sources }
}
