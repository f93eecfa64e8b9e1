//! Reads fastener and wood and lays out what one holds.

use super::{Answer, Input, Mode, WET_SHARE, reckon};
use crate::calculators::screws::Wood;
use crate::calculators::screws::fastener::chosen;
use crate::calculators::screws::fields::{
    END, FASTENER, GIVES_WAY, INTO, INTO_RECEIVER, PULL, PULL_PER_INCH, SCREW_LENGTH, SIDE_LOAD,
    TEST_PULL, TEST_SIDE, TOP_THICKNESS, WET, out_of_range,
};
use crate::say;
use crate::sheet::{self, Act, Amount, Ask, Caution, Note, Source, Step, Term, Value, Working};
use crate::tables::fasteners::{LARGE, Make, SIZES_SOURCE, TEST_SOURCE, bending_yield};
use crate::tables::gravity;

pub(in crate::calculators::screws) fn work(ask: &mut Ask) -> Option<sheet::Answer> {
    let length = ask.length(&SCREW_LENGTH);
    let top = ask.length(&TOP_THICKNESS);
    let input = Input {
        fastener: chosen(ask, &FASTENER)?,
        length: length?,
        top: top?,
        wood: Wood::read(ask)?,
        end_grain: ask.choice(&INTO) == END,
        wet: ask.yes(&WET),
    };
    match reckon(&input) {
        Ok(answer) => Some(lay_out(&input, &answer)),
        Err(refused) => ask.refused(refused, out_of_range()),
    }
}

fn words(mode: Mode) -> &'static str {
    match mode {
        Mode::ReceiverCrushed => "the other piece is crushed",
        Mode::TopCrushed => "the top piece is crushed",
        Mode::Tilts => "it tilts in both pieces",
        Mode::BendsInReceiver => "it bends in the other piece",
        Mode::BendsInTop => "it bends in the top piece",
        Mode::BendsInBoth => "it bends in both pieces",
    }
}

fn pounds(load: f64) -> Value {
    Value::Real(load, 0, "lb")
}

fn lay_out(input: &Input, answer: &Answer) -> sheet::Answer {
    let pull = answer.pull.map(|load| PULL.called("Straight pull").figure("for one", pounds(load)));
    let side = answer.side.map(|(load, _)| SIDE_LOAD.figure("for one", pounds(load)));
    let to = match input.fastener.make {
        Make::LagScrew => "its face to where the tip begins",
        _ => "its face to the tip",
    };
    let into = INTO_RECEIVER.figure(to, answer.into_receiver);
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
        figures.push(GIVES_WAY.called("Gives way first").figure("", value));
    }
    if let Some(load) = answer.pull_per_inch {
        figures.push(
            PULL_PER_INCH
                .called("Pull by length")
                .figure("of thread in the other piece", Value::Real(load, 1, "lb/in")),
        );
    }
    if let Some(load) = answer.test_pull {
        figures.push(TEST_PULL.figure("about, dry", pounds(load)));
    }
    if let Some(load) = answer.test_side {
        figures.push(TEST_SIDE.figure("side load, about, dry", pounds(load)));
    }
    let mut laid = sheet::Answer::new(headline, working(input, answer));
    laid.figures = figures;
    laid.notes = notes(input, answer);
    laid.cautions = Caution::of(&[Act::Load, Act::Fasten]);
    laid
}

fn notes(input: &Input, answer: &Answer) -> Vec<sheet::Note> {
    let mut notes = vec![Note::new(
        "reference_values",
        say![
            "Reference values for loads of normal duration, sound wood and both pieces of one wood. \
         Ends, edges and groups lower them."
        ],
    )];
    if answer.pull_per_inch.is_none() {
        notes.push(Note::new(
            "no_pull_in_end_grain",
            say!["In end grain the rules allow no straight pull. Turn the joint, or bolt it."],
        ));
    }
    if answer.side.is_none() {
        notes.push(Note::new(
            "side_load_not_given",
            say!["From ", LARGE, " on, the side load depends on the grain; it is not given here."],
        ));
    }
    if let (Some((load, _)), Some(bent)) = (answer.side, answer.test_side)
        && bent < load
    {
        notes.push(Note::new(
            "take_the_lower",
            say!["In the older tests it began to bend below the side load: take the lower."],
        ));
    }
    if !input.end_grain {
        notes.push(Note::new(
            "tests_are_near_breaking",
            say!["Test loads are near breaking, with pilot holes: never load that far."],
        ));
    }
    notes
}

fn working(input: &Input, answer: &Answer) -> Working {
    let fastener = input.fastener;
    let gravity = input.wood.gravity;
    let mut steps = Vec::new();
    if let (Some(per_inch), Some(pull)) = (answer.pull_per_inch, answer.pull) {
        steps.push(per_inch_step(input, per_inch));
        let thread = Term::of("thread in the other piece", answer.thread_in_receiver);
        let per_inch = Term::of("per inch", Amount::real(per_inch, "lb"));
        steps.push(Step::of("pull", per_inch * thread, pounds(pull)));
    }
    if let Some((load, mode)) = answer.side {
        let bearing = super::yield_modes::bearing_strength(gravity);
        let bending = bending_yield(fastener.shank / 10).unwrap_or(0);
        steps.push(Step::in_words(
            "side load = least of six yield modes, × 0.7 when wet, × 0.67 in end grain",
            say![
                format!(
                    "root {:.3} in, wood {bearing:.0} psi, bending {bending} psi, top ",
                    f64::from(fastener.root) / 1000.0
                ),
                input.top,
                format!("; {}", words(mode))
            ],
            pounds(load),
        ));
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
    Working { steps, sources }
}

fn per_inch_step(input: &Input, per_inch: f64) -> Step {
    let diameter = input.fastener.diameter();
    let gives = Value::Real(per_inch, 1, "lb");
    let numbers = say![format!("G {:.2}, D {diameter:.3} in", input.wood.gravity)];
    match input.fastener.make {
        Make::WoodScrew => {
            let gravity = || Term::of("G", format!("{:.2}", input.wood.gravity));
            let dry = Term::fixed(2850)
                * gravity()
                * gravity()
                * Term::of("D", format!("{diameter:.3} in"));
            let wet = Term::of("what is left when wet", WET_SHARE.to_string());
            Step::of("pull per inch", if input.wet { dry * wet } else { dry }, gives)
        }
        Make::Nail => Step::in_words("pull per inch = 1380 G^2.5 D", numbers, gives),
        Make::LagScrew => Step::in_words(
            "pull per inch = 1800 G^1.5 D^0.75, × 0.7 when wet, × 0.75 in end grain",
            numbers,
            gives,
        ),
    }
}
