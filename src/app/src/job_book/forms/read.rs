//! How the texts of an item's form are understood, with what the job has to say about them.

use reckoner_core::calculators::Calculator;
use reckoner_core::job::{
    Item, ItemId, Job, MOST_NAME, MeasureProblem, NameProblem, Reckoned, Written, check_name,
    check_title,
};
use reckoner_core::say;
use reckoner_core::sheet::{Bench, Entries, Kind, Refusal, Sheet};

use super::asked::A_NUMBER;
use super::ids::{FORMULA, KIND, NAME, NUMBER};
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
    sheet.refusals.splice(0..0, unseen(form.asks(), entries));
    if form != Form::Measure {
        // No formula finds it, so it may read as a measure, and one without is named by what it is.
        return sheet;
    }
    let others = job.measures();
    let others =
        others.iter().filter(|(other, _)| Some(*other) != id).map(|(_, m)| m.name.as_str());
    if let Some(problem) = told(check_name(entries.text(NAME).unwrap_or(""), others)) {
        sheet.refusals.insert(0, problem);
    }
    // A linked size has no formula of its own, and needs none.
    let is_linked = matches!(
        id.and_then(|id| job.item(id)),
        Some(Item::Measure(m)) if matches!(m.written, Written::Linked(_))
    );
    if is_linked {
        sheet.refusals.retain(|it| !(it.field == FORMULA && it.code == "empty"));
    }
    if let Some(state) = id.and_then(|id| names.measure(id))
        && let Err(problem @ MeasureProblem::Circle(_)) = &state.planned
    {
        let field = if entries.text(KIND) == Some(A_NUMBER.id) { NUMBER } else { FORMULA };
        sheet.refusals.insert(0, refusal(field, problem.to_string()));
    }
    sheet
}

/// How the texts of a group that must match are understood.
#[must_use]
pub fn read_match(names: &Reckoned, bench: &Bench, entries: &Entries) -> Sheet {
    let mut sheet = MATCH.sheet(entries, bench, names);
    sheet.refusals.extend(told(check_title(entries.text(NAME).unwrap_or(""))));
    sheet.refusals.extend(unseen(&MATCH, entries));
    sheet
}

/// What is wrong with a name, but for what [`unseen`] tells of each.
fn told<T>(checked: Result<T, NameProblem>) -> Option<Refusal> {
    let problem = checked.err().filter(|problem| *problem != NameProblem::Invisible)?;
    Some(refusal(NAME, problem.to_string()))
}

/// The names of a form of which something cannot be seen: also of sections, and of the face that shows.
fn unseen(asks: &Calculator, entries: &Entries) -> Vec<Refusal> {
    let names = asks.fields.iter().filter(|field| matches!(field.kind, Kind::Words(MOST_NAME)));
    names.filter_map(|field| Refusal::unseen(field, entries.text(field.id)?)).collect()
}
