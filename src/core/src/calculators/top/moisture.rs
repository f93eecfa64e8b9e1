//! [`Change`]: how much the planks shrink or swell from today to later.

use super::Problem;
use crate::measure::{Number, OutOfRange};
use crate::say;
use crate::sheet::{Ask, Figure, Problems, Source, Step, Value};
use crate::tables::shrinkage::{self, Across, DRIEST, Moisture, WETTEST};

/// How much the planks change across the grain from today to later.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// By the formula of ordinary softwood lumber, from one moisture content to another.
    Softwood {
        /// Today.
        now: Moisture,
        /// Later.
        later: Moisture,
    },
    /// So many percent of the width of today: above zero when they shrink.
    Shrinks(Number),
}

impl Change {
    /// What a width of today is multiplied by.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] for percentages with too many digits.
    pub fn factor(self) -> Result<Number, OutOfRange> {
        match self {
            Change::Softwood { now, later } => shrinkage::factor(Across::Width, now, later),
            Change::Shrinks(percent) => Number::ONE - (percent / Number::whole(100))?,
        }
    }

    /// What is lost of a width of today, in percent; below zero when it swells.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`] for percentages with too many digits.
    pub fn percent_lost(self) -> Result<Number, OutOfRange> {
        (Number::ONE - self.factor()?)? * Number::whole(100)
    }

    /// Reads it from the fields.
    pub(super) fn read(ask: &mut Ask) -> Option<Change> {
        if ask.choice(ask.field("shrinks_by")).id == "own" {
            return ask.number(ask.field("percent")).map(Change::Shrinks);
        }
        let later = percent(ask, "moisture_later");
        let now = match ask.choice(ask.field("now")).id {
            "wet" => Some(Moisture::green()),
            _ => percent(ask, "moisture_now"),
        };
        Some(Change::Softwood { now: now?, later: later? })
    }

    /// What is lost or gained across the grain, for the user.
    pub(super) fn figure(self) -> Option<Figure> {
        let lost = self.percent_lost().ok()?;
        let label = if lost < Number::ZERO { "Swells across by" } else { "Shrinks across by" };
        let value = Value::Exact(lost.abs(), 2, "%");
        Some(Figure { id: "movement", label, from: "of its width today", value })
    }

    /// The step of the working, and its sources.
    pub(super) fn working(self) -> (Option<Step>, Vec<Source>) {
        let Ok(lost) = self.percent_lost() else { return (None, Vec::new()) };
        let gives = Value::Exact(lost, 3, "%");
        match self {
            Change::Softwood { now, later } => {
                let step = Step {
                    rule: "S = 6.031 - 0.215 M, nothing when wet; lost = 1 - (1 - S later) ÷ (1 - S now)".into(),
                    put_in: say![format!("M now {}, later {}", words(now), words(later))],
                    gives,
                };
                let sources = vec![
                    Source::Published(shrinkage::SOURCE),
                    Source::Published(shrinkage::CHANGE_SOURCE),
                ];
                (Some(step), sources)
            }
            Change::Shrinks(_) => {
                let put_in = say!["as given"];
                let step = Step { rule: "lost = your own figure".into(), put_in, gives };
                (Some(step), vec![Source::Arithmetic])
            }
        }
    }
}

fn words(moisture: Moisture) -> String {
    if moisture == Moisture::green() {
        "wet".to_owned()
    } else {
        format!("{} %", crate::measure::text::decimal(moisture.in_percent(), 1))
    }
}

/// A moisture content, within the limits of the formula.
fn percent(ask: &mut Ask, field: &'static str) -> Option<Moisture> {
    let number = ask.number(ask.field(field))?;
    let moisture = Moisture::percent(number);
    if moisture.is_none() {
        let nearest = if number < Number::whole(DRIEST) { DRIEST } else { WETTEST };
        let problems = Problems::from(Problem::MoistureOutside { field, nearest });
        return ask.refuse(&problems);
    }
    moisture
}
