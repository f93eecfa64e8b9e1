//! [`Change`]: how much the planks shrink or swell from today to later.

use crate::calculators::top::fields::{
    MOISTURE_LATER, MOISTURE_NOW, MOVEMENT, NOW, OWN, PERCENT, SHRINKS_BY, WET,
};
use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Amount, Ask, Field, Figure, Refusal, Source, Step, Term, Value, WayOut};
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
        if ask.choice(&SHRINKS_BY) == OWN {
            return ask.number(&PERCENT).map(Change::Shrinks);
        }
        let later = percent(ask, &MOISTURE_LATER);
        let now = match ask.choice(&NOW) {
            WET => Some(Moisture::green()),
            _ => percent(ask, &MOISTURE_NOW),
        };
        Some(Change::Softwood { now: now?, later: later? })
    }

    /// What is lost or gained across the grain, for the user.
    pub(super) fn figure(self) -> Option<Figure> {
        let lost = self.percent_lost().ok()?;
        let label = if lost < Number::ZERO { "Swells across by" } else { "Shrinks across by" };
        let value = Value::Exact(lost.abs(), 2, "%");
        Some(MOVEMENT.called(label).figure("of its width today", value))
    }

    /// What a width of today is multiplied by, as it stands in the working.
    pub(super) fn kept(self) -> Term {
        let left =
            |name, percent: Number| Term::fixed(1) - Term::of(name, Amount::percent(percent));
        match self {
            Change::Softwood { now, later } => {
                left("S later", lost_of_green(later)) / left("S now", lost_of_green(now))
            }
            Change::Shrinks(percent) => left("lost", percent),
        }
    }

    /// What such a width loses, as it stands in the working.
    pub(super) fn lost_of(self, name: &'static str, width: Length) -> Term {
        let width = || Term::of(name, width);
        match self {
            Change::Softwood { .. } => width() - width() * self.kept(),
            Change::Shrinks(percent) => width() * Term::of("lost", Amount::percent(percent)),
        }
    }

    /// The steps of the working, and their sources.
    pub(super) fn working(self) -> (Vec<Step>, Vec<Source>) {
        let Ok(lost) = self.percent_lost() else { return (Vec::new(), Vec::new()) };
        let gives = Value::Exact(lost, 3, "%");
        match self {
            Change::Softwood { now, later } => {
                let mut steps: Vec<Step> = lost_step("S now", "M now", now).into_iter().collect();
                steps.extend(lost_step("S later", "M later", later));
                steps.push(Step::of("lost", Term::fixed(1) - self.kept(), gives));
                let sources = vec![
                    Source::Published(shrinkage::SOURCE),
                    Source::Published(shrinkage::CHANGE_SOURCE),
                ];
                (steps, sources)
            }
            Change::Shrinks(percent) => {
                let own = Term::of("your own figure", Amount::percent(percent));
                let step = Step::of("lost", own, gives);
                (vec![step], vec![Source::Arithmetic])
            }
        }
    }
}

/// What a board has lost of its green width, in percent.
fn lost_of_green(moisture: Moisture) -> Number {
    shrinkage::lost(Across::Width, moisture).unwrap_or(Number::ZERO)
}

/// How that is found; nothing is lost when wet.
fn lost_step(name: &'static str, moisture_name: &str, moisture: Moisture) -> Option<Step> {
    if moisture == Moisture::green() {
        return None;
    }
    let [all, per_point] = shrinkage::formula(Across::Width).ok()?;
    let percent = Term::of(moisture_name, Amount::percent(moisture.in_percent()));
    let formula = Term::fixed(Amount::percent(all)) - Term::fixed(per_point) * percent;
    Some(Step::of(name, formula, Value::Exact(lost_of_green(moisture), 3, "%")))
}

/// A moisture content, within the limits of the formula.
fn percent(ask: &mut Ask, field: &Field) -> Option<Moisture> {
    let number = ask.number(field)?;
    let moisture = Moisture::percent(number);
    if moisture.is_none() {
        let nearest = if number < Number::whole(DRIEST) { DRIEST } else { WETTEST };
        let refusal = Refusal::at(
            field,
            "moisture-outside",
            say![format!(
                "The formula holds from {DRIEST} to {WETTEST} % moisture, and for wet boards."
            )],
            WayOut::set(say![format!("Use {nearest} %.")], field, nearest.to_string()),
        );
        ask.keep(refusal);
    }
    moisture
}
