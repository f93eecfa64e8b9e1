//! The steps in words.

use super::order::BuildOrder;
use super::step::{BuildStep, Stage, Wait};
use crate::job::{Item, ItemId, Job, Reckoned};
use crate::say;
use crate::sentence::counted;
use crate::sheet::{Sentence, Value};

fn name(job: &Job, id: ItemId) -> String {
    job.item(id).map_or("", Item::name).to_owned()
}

impl BuildStep {
    /// How many pieces are in it, those that are cut among them.
    #[must_use]
    pub fn many(&self) -> u32 {
        let pieces = self.pieces.iter().map(|it| it.pieces.len()).sum::<usize>();
        u32::try_from(pieces).unwrap_or(u32::MAX).max(self.count)
    }

    /// What is to be done: `Rip 6 pieces`.
    #[must_use]
    pub fn title(&self, job: &Job) -> String {
        let pieces = counted(self.many(), " piece");
        match (self.stage, self.about) {
            (Stage::Plan, _) => "Plan the boards".to_owned(),
            (Stage::Buy, _) if self.is_begun && !self.is_done => "Buy the rest".to_owned(),
            (Stage::Buy, _) => "Buy everything".to_owned(),
            (Stage::Dry, Some(id)) => format!("Let it dry: {}", name(job, id)),
            (Stage::DryFit, Some(id)) => format!("Dry fit, and measure {}", name(job, id)),
            (Stage::Rough, _) => format!("Crosscut the blocks for {pieces}"),
            (Stage::Resaw | Stage::ResawStrips, _) => format!("Resaw {pieces}"),
            (Stage::Rip | Stage::RipBlocks, _) => format!("Rip {pieces}"),
            (Stage::CrosscutMeasured, _) => format!("Cut {pieces} as measured"),
            (Stage::Crosscut, _) => format!("Cut {pieces} to length"),
            (_, Some(id)) => name(job, id),
            (_, None) => String::new(),
        }
    }

    /// What its figure is measured from: `fence to near tooth`.
    #[must_use]
    pub fn measured(&self, reckoned: &Reckoned) -> &'static str {
        match self.stage {
            Stage::Resaw | Stage::ResawStrips | Stage::Rip | Stage::RipBlocks => {
                "fence to near tooth"
            }
            Stage::Rough | Stage::Crosscut | Stage::CrosscutMeasured => "stop to near tooth",
            _ => self.headline(reckoned).map_or("", |(_, from, _)| from),
        }
    }

    /// The headline of its reckoning: label, what it is measured from, value.
    #[must_use]
    pub fn headline<'a>(
        &self,
        reckoned: &'a Reckoned,
    ) -> Option<(&'static str, &'static str, &'a Value)> {
        let answer = reckoned.kept(self.about?)?.answer.as_ref()?;
        let headline = &answer.headline;
        Some((headline.label, headline.from, &headline.value))
    }

    /// What the tick says: `All 6 cut`.
    #[must_use]
    pub fn done_words(&self) -> String {
        match self.stage {
            Stage::Buy => "All bought".to_owned(),
            Stage::Dry => "It is dry".to_owned(),
            Stage::Plan => "Without a plan".to_owned(),
            stage if stage.is_final_cut() => {
                let open = u32::try_from(self.to_cut().len()).unwrap_or(u32::MAX);
                if open == 1 { "It is cut".to_owned() } else { format!("All {open} cut") }
            }
            Stage::Rough | Stage::Resaw | Stage::ResawStrips | Stage::Rip => "All cut".to_owned(),
            _ => "Done".to_owned(),
        }
    }
}

impl Wait {
    /// What is waited for: `waits for step 3`.
    #[must_use]
    pub fn sentence(&self, job: &Job, order: &BuildOrder) -> Sentence {
        match self {
            Wait::Step(at) => {
                let title = order.steps.get(*at).map_or_else(String::new, |step| step.title(job));
                say![format!("step {}: {title}", at.saturating_add(1))]
            }
            Wait::Plan(part) => {
                say!["the plan of the boards: ", name(job, *part), " is drawn at another size"]
            }
            Wait::Measure(size) => say!["measuring ", name(job, *size)],
            Wait::Look(item) => say!["an answer: look at ", name(job, *item)],
            Wait::Refused(kept) => say![name(job, *kept), ": it has no answer"],
        }
    }
}
