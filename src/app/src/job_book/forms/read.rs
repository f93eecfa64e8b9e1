//! How the texts of an item's form are understood, with what the job has to say about them.

use reckoner_core::job::{
    Item, ItemId, Job, MeasureProblem, NameProblem, Reckoned, Written, check_name,
};
use reckoner_core::say;
use reckoner_core::sheet::{Bench, Entries, Refusal, Sheet};

use super::{Form, MATCH};

fn refusal(field: &'static str, words: String) -> Refusal {
    Refusal { field, code: "job", sentence: say![words], at: None, way_out: None }
}

/// How the texts of an item are understood. `names` is the job worked out as it would be with them.
#[must_use]
pub fn read(
    job: &Job,
    names: &Reckoned,
    bench: &Bench,
    form: Form,
    id: Option<ItemId>,
    entries: &Entries,
) -> Sheet {
    let mut sheet = form.asks().sheet(entries, bench, names);
    if form != Form::Measure {
        // No formula finds it, so it may read as a measure, and one without is named by what it is.
        let unseen = unseen(entries).filter(|it| *it == NameProblem::Invisible);
        sheet.refusals.extend(unseen.map(named));
        return sheet;
    }
    let others = job.measures();
    let others =
        others.iter().filter(|(other, _)| Some(*other) != id).map(|(_, m)| m.name.as_str());
    if let Err(problem) = check_name(entries.text("name").unwrap_or(""), others) {
        sheet.refusals.insert(0, named(problem));
    }
    // A linked size has no formula of its own, and needs none.
    let is_linked = matches!(
        id.and_then(|id| job.item(id)),
        Some(Item::Measure(m)) if matches!(m.written, Written::Linked(_))
    );
    if is_linked {
        sheet.refusals.retain(|it| !(it.field == "formula" && it.code == "empty"));
    }
    if let Some(state) = id.and_then(|id| names.measure(id))
        && let Err(problem @ MeasureProblem::Circle(_)) = &state.planned
    {
        let field = if entries.text("kind") == Some("number") { "number" } else { "formula" };
        sheet.refusals.insert(0, refusal(field, problem.to_string()));
    }
    sheet
}

/// How the texts of a group that must match are understood.
#[must_use]
pub fn read_match(names: &Reckoned, bench: &Bench, entries: &Entries) -> Sheet {
    let mut sheet = MATCH.sheet(entries, bench, names);
    sheet.refusals.extend(unseen(entries).map(named));
    sheet
}

fn named(problem: NameProblem) -> Refusal {
    refusal("name", problem.to_string())
}

/// What cannot be seen of a name that no formula finds.
fn unseen(entries: &Entries) -> Option<NameProblem> {
    let problem = check_name(entries.text("name").unwrap_or(""), core::iter::empty()).err()?;
    (!matches!(problem, NameProblem::IsAMeasure | NameProblem::Taken)).then_some(problem)
}
