//! The list in words: on a line, and as plain text to send.

use super::{InTheWay, Line, Money, ToBuy};
use crate::job::{Item, Job};
use crate::measure::Tape;
use crate::say;
use crate::sheet::{Sentence, money};

impl Line {
    /// `2x6, 96 long`, `dowel rod, 1 thick, 48 long`.
    #[must_use]
    pub fn what(&self) -> Sentence {
        let mut words = say![self.name.clone()];
        // A section names its own thickness and width.
        if let (Some(thickness), None) = (self.thickness, self.width) {
            words.0.extend(say![", ", thickness, " thick"].0);
        }
        if let Some(length) = self.length {
            words.0.extend(say![", ", length, " long"].0);
        }
        words
    }

    /// How many, and how far it is: `33 wanted, 3 of them spare, 20 that I have, 13 to buy`.
    #[must_use]
    pub fn how_many(&self) -> String {
        let mut parts = Vec::new();
        if self.spares > 0 || self.on_hand > 0 {
            parts.push(format!("{} wanted", self.wanted));
        }
        if self.spares > 0 {
            parts.push(format!("{} of them spare", self.spares));
        }
        if self.on_hand > 0 {
            parts.push(format!("{} that I have", self.on_hand));
        }
        if self.bought > 0 && !self.is_done() {
            parts.push(format!("{} bought", self.bought));
        }
        parts.push(match (self.to_come(), self.bought) {
            (0, 0) => "nothing to buy".to_owned(),
            (0, bought) => format!("{bought} bought"),
            (count, _) => format!("{count} to buy"),
        });
        parts.join(", ")
    }

    /// What it is for: `for long rail, upper; leg`. A name may hold a comma.
    #[must_use]
    pub fn uses(&self) -> String {
        format!("for {}", self.uses.join("; "))
    }
}

impl InTheWay {
    /// What is in the way.
    #[must_use]
    pub fn sentence(&self, job: &Job) -> Sentence {
        let name = |id| job.item(id).map_or("", Item::name).to_owned();
        match self {
            InTheWay::NoPlan => say!["No plan of the boards yet: which to buy is not known."],
            InTheWay::Plan(_) => {
                say!["The plan in use no longer fits the job: other boards may be wanted."]
            }
            InTheWay::Waits(part) => {
                say![name(*part), " waits for a measurement: its boards are not in the list."]
            }
            InTheWay::Refused(kept, why) => {
                let mut words = say![name(*kept), " has no answer. "];
                words.0.extend(why.0.clone());
                words
            }
            InTheWay::NotCounted(kept, screw, length) => {
                let mut words = say![name(*kept), ": ", screw.clone()];
                if let Some(length) = length {
                    words.0.extend(say![", ", *length, " long"].0);
                }
                words.0.push("; how many is not said.".into());
                words
            }
        }
    }

    /// What leads out of it.
    #[must_use]
    pub fn way_out(&self) -> &'static str {
        match self {
            InTheWay::NoPlan => "Plan the boards",
            InTheWay::Plan(_) => "Plan what is left",
            InTheWay::Waits(_) => "See the piece",
            InTheWay::Refused(..) => "Put it right",
            InTheWay::NotCounted(..) => "Count them",
        }
    }
}

impl Money {
    /// `Still to spend 32.70, spent 12.00. 2 lines have no price.`
    #[must_use]
    pub fn sentence(&self) -> String {
        let mut words =
            format!("Still to spend {}, spent {}.", money(self.to_come), money(self.spent));
        match self.without_price {
            0 => {}
            1 => words.push_str(" 1 line has no price and is not in it."),
            n => words.push_str(&format!(" {n} lines have no price and are not in it.")),
        }
        words
    }
}

impl ToBuy {
    /// The list as plain text, to be sent to somebody.
    #[must_use]
    pub fn as_text(&self, job: &Job, tape: Tape) -> String {
        let mut lines = vec![format!("To buy for {}", job.title)];
        for line in &self.lines {
            let tick = if line.is_done() { "x" } else { " " };
            let price = line.price().map_or("no price".to_owned(), money);
            let price = if line.is_ours { format!("{price} (our example)") } else { price };
            let what = line.what().on(tape);
            lines.push(format!("[{tick}] {what}: {}, {price}, {}", line.how_many(), line.uses()));
        }
        lines.push(self.money.sentence());
        lines.extend(self.ours.iter().map(|it| format!("{it}.")));
        lines.extend(self.known.iter().map(|it| it.on(tape)));
        lines.extend(self.in_the_way.iter().map(|it| it.sentence(job).on(tape)));
        lines.join("\n")
    }
}
