//! What is told beside the figures: the rule that was used, its limits and its source.

use crate::calculators::moisture::air;
use crate::calculators::moisture::movement::{Moistures, Rule, Spread, Wood};
use crate::measure::Number;
use crate::measure::text::decimal;
use crate::say;
use crate::sheet::{Note, Source, Step, Value, Working};
use crate::tables::shrinkage::{self, Across, Moisture};
use crate::tables::species::{CHANGE_SOURCE, SHRINKAGE_SOURCE};

/// Percent of the green width that ordinary softwood has lost, as text.
pub(super) fn lost_text(percent: Number) -> String {
    let lost = Moisture::percent(percent).map(|moisture| shrinkage::lost(Across::Width, moisture));
    match lost {
        Some(Ok(lost)) => decimal(lost, 3),
        _ => "0".to_owned(),
    }
}

/// How the factor of the width was found.
pub(super) fn factor_steps(wood: Wood, moistures: Moistures, spread: &Spread) -> Vec<Step> {
    let [from, to] = [moistures.from, moistures.to].map(|percent| decimal(percent, 1));
    let gives = Value::Exact(spread.likely.factor, 5, "");
    let step = match (spread.likely.rule, wood) {
        (Rule::Lumber, _) => Step {
            rule: "later over today = (100 - S later) ÷ (100 - S today), S = 6.031 - 0.215 × M, 0 when wet".into(),
            put_in: say![format!(
                "(100 - {}) ÷ (100 - {}), M {from} % to {to} %",
                lost_text(moistures.to),
                lost_text(moistures.from)
            )],
            gives,
        },
        (Rule::EachPoint, Wood::Species(species, _)) => Step {
            rule: "later over today = 1 + C × (M later - M today)".into(),
            put_in: say![format!("{}, M {from} % to {to} %", species.name)],
            gives,
        },
        (_, Wood::Species(species, _)) => Step {
            rule: "each size = green size × (1 - S0 × (1 - M ÷ 30)), M not over 30".into(),
            put_in: say![format!("{}, M {from} % to {to} %", species.name)],
            gives,
        },
        (_, Wood::OrdinarySoftwood) => {
            Step { rule: "later over today".into(), put_in: say![format!("M {from} % to {to} %")], gives }
        }
    };
    vec![step]
}

/// The documents behind a few figures, each once.
pub(super) fn sources(spreads: &[&Spread]) -> Vec<Source> {
    let mut sources = Vec::new();
    let mut add = |source: Source| {
        if !sources.contains(&source) {
            sources.push(source);
        }
    };
    for spread in spreads {
        let table = match spread.likely.rule {
            Rule::Lumber => {
                add(Source::Published(shrinkage::SOURCE));
                add(Source::Published(shrinkage::CHANGE_SOURCE));
                add(Source::Published(SHRINKAGE_SOURCE));
                continue;
            }
            Rule::EachPoint => {
                add(Source::Published(
                    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Equation 13-2, p. 13-16",
                ));
                CHANGE_SOURCE
            }
            Rule::General => {
                add(Source::Published(
                    "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-9, p. 4-10",
                ));
                SHRINKAGE_SOURCE
            }
        };
        add(if spread.likely.is_unverified {
            Source::Unverified(table)
        } else {
            Source::Published(table)
        });
    }
    sources
}

/// The limits of the rule, and whether a figure was not seen.
pub(super) fn notes(wood: Wood, spreads: &[&Spread]) -> Vec<Note> {
    let mut notes = Vec::new();
    let uses = |rule| spreads.iter().any(|spread| spread.likely.rule == rule);
    if wood == Wood::OrdinarySoftwood {
        notes.push(say![
            "The formula is an average, and stands from 8 to 19 %. Redwood and cedars move less."
        ]);
        notes.push(say![
            "Least and most: a quarter-sawn subalpine fir, a flat-sawn western larch. Most boards lie between."
        ]);
    }
    if uses(Rule::EachPoint) {
        notes.push(say!["From 6 to 14 % only. It can come out a twentieth too small."]);
    }
    if uses(Rule::General) {
        notes.push(say!["Wood is taken to shrink evenly from 30 % down. Single boards differ."]);
    }
    if spreads.iter().any(|spread| spread.likely.is_unverified) {
        notes.push(say!["The figure of this wood is from memory, unverified. Look it up."]);
    }
    notes
}

/// How the moisture in some air was found.
pub(super) fn air_working(input: &air::Input, answer: &air::Answer) -> Working {
    let percent = |number| Value::Real(number, 2, "%");
    match input {
        air::Input::Air(temperature, humidity) => {
            let (degrees, source) = match temperature {
                air::Temperature::Celsius(t) => (
                    format!("{t} °C"),
                    "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-5, p. 4-3 (Simpson 1973)",
                ),
                air::Temperature::Fahrenheit(t) => {
                    (format!("{t} °F"), "FPL-RN-0268 (Simpson 1998), coefficients as quoted")
                }
            };
            let put_in = say![format!("{degrees}, {humidity} %")];
            let mut steps = vec![Step {
                rule: "M = 1800 ÷ W × (Kh ÷ (1 - Kh) + (K1 Kh + 2 K1 K2 (Kh)²) ÷ (1 + K1 Kh + K1 K2 (Kh)²))".into(),
                put_in: put_in.clone(),
                gives: percent(answer.driest),
            }];
            if let Some(newer) = answer.newer {
                steps.push(Step {
                    rule: "M = 100 × (A T (1 - T ÷ Tc)^B ln(1 - h))^(C T^D)".into(),
                    put_in,
                    gives: percent(newer),
                });
            }
            let newer = "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-6, p. 4-4";
            Working { steps, sources: vec![Source::Published(source), Source::Published(newer)] }
        }
        air::Input::Place(place) => {
            let step = |rule: &'static str, number| Step {
                rule: rule.into(),
                put_in: say![place.name],
                gives: percent(number),
            };
            Working {
                steps: vec![
                    step("driest month of the place", answer.driest),
                    step("wettest month of the place", answer.wettest),
                ],
                sources: vec![Source::Published(place.source)],
            }
        }
    }
}
