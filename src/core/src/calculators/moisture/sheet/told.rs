//! What is told beside the figures: the rule that was used, its limits and its source.

use crate::calculators::moisture::air;
use crate::calculators::moisture::movement::{
    FIBERS_FULL, Moistures, Movement, Rule, Spread, Wood,
};
use crate::measure::Number;
use crate::measure::text::exact_number;
use crate::say;
use crate::sheet::{Note, Source, Step, Term, Value, Working};
use crate::tables::shrinkage::{self, Across, Moisture};
use crate::tables::species::{CHANGE_SOURCE, SHRINKAGE_SOURCE};

/// Percent of the green size that ordinary softwood has lost, as text.
pub(super) fn lost_text(across: Across, percent: Number) -> String {
    let lost = lost(across, percent).unwrap_or(Number::ZERO);
    format!("{} %", exact_number(lost, 9))
}

/// The same as a number; nothing when wet.
fn lost(across: Across, percent: Number) -> Option<Number> {
    Moisture::percent(percent).and_then(|moisture| shrinkage::lost(across, moisture).ok())
}

/// What a size is multiplied by, exactly, as the working names it.
pub(super) fn factor(name: &str, movement: &Movement) -> Term {
    Term::of(name, exact_number(movement.factor, 9))
}

/// How that was found.
pub(super) fn factor_steps(
    name: &'static str,
    wood: Wood,
    moistures: Moistures,
    movement: &Movement,
) -> Vec<Step> {
    let Moistures { from, to, .. } = moistures;
    let gives = Value::Exact(movement.factor, 5, "");
    let species = match wood {
        Wood::Species(species, _) => species.name,
        Wood::OrdinarySoftwood => "ordinary softwood",
    };
    let points = |name, percent| Term::of(name, exact_number(percent, 9));
    match movement.rule {
        Rule::Lumber(across) => {
            let mut steps = Vec::new();
            let mut is_wet = false;
            for (name, m, percent) in [("S today", "M today", from), ("S later", "M later", to)] {
                match (lost(across, percent), shrinkage::formula(across)) {
                    (Some(lost), Ok([all, per_point])) => {
                        let fixed = |number| Term::fixed(format!("{} %", exact_number(number, 9)));
                        let formula = fixed(all) - fixed(per_point) * points(m, percent);
                        steps.push(Step::of(name, formula, Value::Exact(lost, 3, "%")));
                    }
                    _ => is_wet = true,
                }
            }
            let whole = || Term::fixed("100 %".to_owned());
            let lost = |name, percent| Term::of(name, lost_text(across, percent));
            let kept = (whole() - lost("S later", to)) / (whole() - lost("S today", from));
            let remark = if is_wet { "S is 0 % when wet" } else { "" };
            steps.push(Step::of(name, kept, gives).remarked(remark, ""));
            steps
        }
        Rule::EachPoint(per_point) => {
            let change = points("M later", to) - points("M today", from);
            let formula = Term::fixed(1) + Term::of("C", exact_number(per_point, 9)) * change;
            vec![Step::of(name, formula, gives).remarked("", species)]
        }
        Rule::General(total) => {
            let full = Number::whole(FIBERS_FULL);
            let total = || Term::of("S0", exact_number(total, 9));
            let kept = |name, percent: Number| {
                let swollen = points(name, percent.min(full)) / Term::fixed(full);
                Term::fixed(1) - total() * (Term::fixed(1) - swollen)
            };
            let formula = kept("M later", to) / kept("M today", from);
            vec![Step::of(name, formula, gives).remarked("M not over 30", species)]
        }
    }
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
            Rule::Lumber(_) => {
                add(Source::Published(shrinkage::SOURCE));
                add(Source::Published(shrinkage::CHANGE_SOURCE));
                add(Source::Published(SHRINKAGE_SOURCE));
                continue;
            }
            Rule::EachPoint(_) => {
                add(Source::Published(
                    "USDA FPL Wood Handbook, FPL-GTR-190 (2010), Equation 13-2, p. 13-16",
                ));
                CHANGE_SOURCE
            }
            Rule::General(_) => {
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
    let uses = |rule: fn(&Rule) -> bool| spreads.iter().any(|spread| rule(&spread.likely.rule));
    if wood == Wood::OrdinarySoftwood {
        notes.push(Note::new("softwood_formula_is_average", say![
            "The formula is an average, and stands from 8 to 19 %. Redwood and cedars move less."
        ]));
        notes.push(Note::new("least_and_most_species", say![
            "Least and most: a quarter-sawn subalpine fir, a flat-sawn western larch. Most boards lie between."
        ]));
    }
    if uses(|rule| matches!(rule, Rule::EachPoint(_))) {
        notes.push(Note::new(
            "from_6_to_14_percent",
            say!["From 6 to 14 % only. It can come out a twentieth too small."],
        ));
    }
    if uses(|rule| matches!(rule, Rule::General(_))) {
        notes.push(Note::new(
            "shrinks_evenly_from_30",
            say!["Wood is taken to shrink evenly from 30 % down. Single boards differ."],
        ));
    }
    if spreads.iter().any(|spread| spread.likely.is_unverified) {
        notes.push(Note::new(
            "shrinkage_is_unverified",
            say!["The figure of this wood is from memory, unverified. Look it up."],
        ));
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
            let mut steps = vec![Step::in_words(
                "M = 1800 ÷ W × (Kh ÷ (1 - Kh) + (K1 Kh + 2 K1 K2 (Kh)²) ÷ (1 + K1 Kh + K1 K2 (Kh)²))",
                put_in.clone(),
                percent(answer.driest),
            )];
            if let Some(newer) = answer.newer {
                steps.push(Step::in_words(
                    "M = 100 × (A T (1 - T ÷ Tc)^B ln(1 - h))^(C T^D)",
                    put_in,
                    percent(newer),
                ));
            }
            let newer = "USDA FPL Wood Handbook, FPL-GTR-282 (2021), Equation 4-6, p. 4-4";
            Working { steps, sources: vec![Source::Published(source), Source::Published(newer)] }
        }
        air::Input::Place(place) => {
            let step = |rule, number| Step::in_words(rule, say![place.name], percent(number));
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
