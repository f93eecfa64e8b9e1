//! The entries that the laws over all calculators are tried with.

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use reckoner_core::calculators::Calculator;
use reckoner_core::measure::{Fineness, Tape};
use reckoner_core::sheet::{Entries, Field, Kind, Start};

/// Random entries for each set of choices.
const RANDOM: usize = 3000;

/// Most sets of choices that are taken in order.
const CHOSEN: usize = 300;

/// Tapes of every kind, none coarser than people build with.
pub(crate) const TAPES: [Tape; 5] = [
    Tape::SIXTEENTHS,
    Tape::FeetAndInches(Fineness::ThirtySecond),
    Tape::DecimalInches(3),
    Tape::Millimetres(0),
    Tape::HalfMillimetres,
];

/// Every set of choices with the fresh form, then random ones on every tape; the same in every run.
pub(crate) fn of(calculator: &'static Calculator) -> Vec<(Entries, Tape)> {
    let mut all: Vec<(Entries, Tape)> = chosen(calculator)
        .into_iter()
        .flat_map(|entries| [(entries.clone(), Tape::SIXTEENTHS), (entries, Tape::Millimetres(0))])
        .collect();
    let mut runner = TestRunner::deterministic();
    // Half of them on the common tape: some rules are rare, and the laws want to see each a few times.
    let tapes = TAPES.into_iter().flat_map(|tape| [Tape::SIXTEENTHS, tape]);
    for tape in tapes.cycle().take(RANDOM) {
        let mut entries = Entries::default();
        for field in calculator.fields {
            let text = text(field).new_tree(&mut runner).expect("a text").current();
            if let Some(text) = text {
                entries.set(field.id, text);
            }
        }
        all.push((entries, tape));
    }
    all
}

/// Every set of the choices, in order, up to so many.
pub(crate) fn chosen(calculator: &Calculator) -> Vec<Entries> {
    let mut all = vec![Entries::default()];
    for field in calculator.fields {
        let ids: Vec<&str> = match field.kind {
            Kind::Choice(choices) => choices.iter().map(|choice| choice.id).collect(),
            Kind::YesNo => vec!["yes", "no"],
            _ => continue,
        };
        if all.len() * ids.len() > CHOSEN {
            continue;
        }
        all = all
            .iter()
            .flat_map(|entries| {
                ids.iter().map(|id| {
                    let mut entries = entries.clone();
                    entries.set(field.id, *id);
                    entries
                })
            })
            .collect();
    }
    all
}

/// A length of a bench: fractions, decimals, millimetres.
fn length() -> impl Strategy<Value = String> {
    prop_oneof![
        (0_u32..60, 1_u32..16).prop_map(|(whole, part)| format!("{whole} {part}/16")),
        (1_u32..120).prop_map(|whole| whole.to_string()),
        (5_u32..1500).prop_map(|mm| format!("{mm} mm")),
        (1_u32..20, 1_u32..100).prop_map(|(whole, part)| format!("{whole}.{part}")),
    ]
}

/// What may stand in a field; nothing for what the fresh form has.
fn text(field: &Field) -> BoxedStrategy<Option<String>> {
    let written: BoxedStrategy<String> = match field.kind {
        Kind::Choice(choices) => {
            let ids: Vec<&str> = choices.iter().map(|choice| choice.id).collect();
            return prop::sample::select(ids).prop_map(|id| Some(id.to_owned())).boxed();
        }
        Kind::YesNo => prop::sample::select(vec!["yes", "no"]).prop_map(str::to_owned).boxed(),
        Kind::Count { least, most } => {
            (least..=most.min(least.saturating_add(12))).prop_map(|n| n.to_string()).boxed()
        }
        Kind::Number { least, most, .. } => {
            let near = match field.start {
                Start::Text(text) | Start::Without(text) => {
                    text.parse::<f64>().map_or(least, |start| start as i32)
                }
                _ => least,
            };
            let (least, most) = (least.max(near - 9), most.min(near + 9));
            let decimal = (least..most.max(least + 1), 0_u32..10);
            decimal.prop_map(|(whole, part)| format!("{whole}.{part}")).boxed()
        }
        Kind::OptionalMoney => {
            (0_u32..90, 0_u32..100).prop_map(|(a, b)| format!("{a}.{b:02}")).boxed()
        }
        Kind::Lengths => {
            prop::collection::vec(length(), 1..5).prop_map(|lengths| lengths.join(", ")).boxed()
        }
        Kind::Spans => {
            (0_u32..40, 1_u32..5).prop_map(|(from, by)| format!("{from} to {}", from + by)).boxed()
        }
        Kind::Sizes => (1_u32..9, length(), length(), length())
            .prop_map(|(n, l, w, t)| format!("{n} @ {l} × {w} × {t}"))
            .boxed(),
        Kind::Strip => prop::sample::select(vec!["44 - 2 × 3 1/2\nA / 2", "7/8 ÷ 3", "24 / 5 in"])
            .prop_map(str::to_owned)
            .boxed(),
        Kind::LineOf(_) => prop::sample::select(vec!["", "A"]).prop_map(str::to_owned).boxed(),
        _ => match field.start {
            // Near what the fresh form has, so that most are answered and not refused.
            Start::Inches(start) => prop_oneof![
                2 => (1_u32..16).prop_map(move |by| format!("{start} + {by}/16")),
                2 => (1_u32..8).prop_map(move |by| format!("{start} - {by}/16")),
                1 => (2_u32..5).prop_map(move |times| format!("{times} × ({start})")),
                1 => length(),
                1 => Just("0".to_owned()),
            ]
            .boxed(),
            _ => prop_oneof![length(), (1_u32..16).prop_map(|part| format!("{part}/32"))].boxed(),
        },
    };
    prop_oneof![3 => Just(None), 1 => written.prop_map(Some)].boxed()
}
