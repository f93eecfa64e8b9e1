//! How a number with a unit is read, in the units of the tables or in metric ones.

use super::{Ask, Bench, Field, Kind, Refusal, Value, WayOut};
use crate::measure::text::{TextProblem, TextProblemKind, decimal, exact_number};
use crate::measure::{Number, Partner, Tape, Unit};
use crate::say;

/// A unit behind its number: `850 psi`, but `45°` and `12 %`.
fn spaced(unit: &str) -> String {
    if unit.is_empty() || unit == "°" { unit.to_owned() } else { format!(" {unit}") }
}

/// A number that came of another unit: no fraction of many digits.
fn short(number: Number) -> String {
    let exact = exact_number(number, 4);
    if exact.contains('/') { decimal(number, 2) } else { exact }
}

/// The metric unit of a number, or its own.
fn written_unit(unit: &'static str, is_metric: bool) -> &'static str {
    Partner::of(unit).filter(|_| is_metric).map_or(unit, |partner| partner.metric)
}

/// A number without the unit that is written after it, and whether it is in the metric one: so is a
/// bare number of who measures in millimetres.
fn written_in<'a>(text: &'a str, unit: &str, measures: Unit) -> (&'a str, bool) {
    let text = text.trim();
    let without = |unit: &str| {
        let at = text.len().checked_sub(unit.len())?;
        let (amount, end) = (text.get(..at)?, text.get(at..)?);
        (!unit.is_empty() && end.eq_ignore_ascii_case(unit)).then_some(amount)
    };
    let Some(partner) = Partner::of(unit) else {
        return (without(unit).unwrap_or(text), false);
    };
    let other = match unit {
        "lb" => "lbs",
        // On each foot, as it was typed before it had a unit of its own.
        "lb/ft" => "lb",
        _ => unit,
    };
    let own = [unit, other];
    if let Some(amount) = own.into_iter().find_map(without) {
        return (amount, false);
    }
    // As it is typed on a keyboard without raised figures, and stress by its other name.
    let plain = partner.metric.replace('²', "2").replace('³', "3");
    let other = if partner.metric == "MPa" { ["N/mm²", "N/mm2"] } else { ["", ""] };
    let metric = [partner.metric, &plain].into_iter().chain(other).find_map(without);
    (metric.unwrap_or(text), metric.is_some() || measures.is_metric())
}

impl Ask<'_> {
    /// An exact number within the limits of its [`Kind`]; a unit sign such as `°` or `%` after it
    /// is allowed.
    pub fn number(&mut self, field: &Field) -> Option<Number> {
        let (least, most, unit) = match field.kind {
            Kind::Number { least, most, unit } => (least, most, unit),
            _ => (i32::MIN, i32::MAX, ""),
        };
        let text = self.text(field);
        let (amount, is_metric) = written_in(&text, unit, self.unit());
        let partner = Partner::of(unit);
        let (formula, (typed, number)) = self.read(field, amount, |formula, unit, names| {
            let typed = formula.number(unit, names)?;
            let number = match partner.filter(|_| is_metric) {
                Some(partner) => partner.from_metric(typed).or_else(|too_fine| {
                    // So large that it is not kept exactly, it is beyond the limits all the same.
                    let near = typed.to_f64() / partner.times.to_f64();
                    match near {
                        _ if near > f64::from(most) => Ok(Number::whole(i64::from(most) + 1)),
                        _ if near < f64::from(least) => Ok(Number::whole(i64::from(least) - 1)),
                        _ => Err(too_fine),
                    }
                }),
                None => Ok(typed),
            };
            let too_large =
                |_| TextProblem { at: 0..amount.len(), kind: TextProblemKind::TooLarge };
            Ok((typed, number.map_err(too_large)?))
        })?;
        // As it is shown to who measures so: the number itself where that is what was typed.
        let shown = |number: Number| match partner.filter(|_| self.unit().is_metric()) {
            Some(it) => Value::Exact(number, it.places, it.unit)
                .in_line(&Bench { tape: Tape::Millimetres(0), ..*self.bench() }),
            None => format!("{}{}", short(number), spaced(unit)),
        };
        let nearest = number.max(Number::whole(least.into())).min(Number::whole(most.into()));
        if number != nearest {
            let is_converted = partner.is_some() && self.unit().is_metric();
            let limits = if is_converted {
                let [least, most] = [least, most].map(|limit| shown(Number::whole(limit.into())));
                format!("This must be from {least} to {most}.")
            } else {
                format!("This must be from {least} to {most}{}.", spaced(unit))
            };
            let words = format!("Use {}, the nearest.", shown(nearest));
            let typed = exact_number(nearest, 0);
            let typed = if partner.is_some() { format!("{typed} {unit}") } else { typed };
            self.keep(Refusal::at(
                field,
                "out-of-range",
                say![limits],
                WayOut::set(say![words], field, typed),
            ));
            return None;
        }
        let reading = if partner.is_some() && is_metric != self.unit().is_metric() {
            shown(number)
        } else {
            format!("{}{}", exact_number(typed, 4), spaced(written_unit(unit, is_metric)))
        };
        self.echo_reading(field, &formula, &reading);
        Some(number)
    }

    /// The text of such a number with its unit, so that it stays the same number when bare ones are
    /// in another unit from now on.
    #[must_use]
    pub fn number_with_unit(&self, field: &Field) -> String {
        let text = self.text(field);
        let unit = match field.kind {
            Kind::Number { unit, .. } => unit,
            _ => "",
        };
        let (amount, is_metric) = written_in(&text, unit, self.unit());
        if Partner::of(unit).is_some() && !amount.trim().is_empty() {
            format!("{} {}", amount.trim(), written_unit(unit, is_metric))
        } else {
            text
        }
    }

    /// The same as a floating-point number, for angles, loads and moisture.
    pub fn real(&mut self, field: &Field) -> Option<f64> {
        self.number(field).map(Number::to_f64)
    }
}
