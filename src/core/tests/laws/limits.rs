//! Texts where rules change: the least and the most that a field takes, what is one mark beside them, and sizes that are
//! exactly another size of the same form, or a mark off it.

use reckoner_core::calculators::Calculator;
use reckoner_core::sheet::{Entries, Field, Kind, Start};

/// Every count up to here is one of its own; beyond it only those at the limit.
const EACH_COUNT: u32 = 48;

/// A mark of the tape, and one so small that no tape shows it.
const BESIDE: [&str; 4] = [" + 1/16", " - 1/16", " + 1/1000", " - 1/1000"];

/// The texts of a field that has limits of its own, or the sizes of other fields; none for a list or a choice.
pub(crate) fn texts(calculator: &Calculator, entries: &Entries, field: &Field) -> Vec<String> {
    match field.kind {
        Kind::Count { least, most } => {
            let mut all: Vec<u32> = (0..=most.saturating_add(1).min(EACH_COUNT)).collect();
            all.extend(
                [least, most]
                    .iter()
                    .flat_map(|limit| [limit.saturating_sub(1), *limit, limit.saturating_add(1)]),
            );
            all.sort_unstable();
            all.dedup();
            all.into_iter().map(|count| count.to_string()).collect()
        }
        Kind::Number { least, most, .. } => [least, most]
            .into_iter()
            .flat_map(|limit| {
                ["", " + 1/1000", " - 1/1000", " + 1", " - 1"].map(|by| format!("{limit}{by}"))
            })
            .collect(),
        Kind::Length(_) | Kind::OptionalLength(_) => {
            let mut all: Vec<String> = ["", "0", "1/1000", "1/16", "-1/16", "100000", "100001"]
                .map(str::to_owned)
                .to_vec();
            for other in calculator.fields {
                let size = match (entries.text(other.id), other.start) {
                    _ if !matches!(other.kind, Kind::Length(_)) => continue,
                    (Some(text), _) | (None, Start::Inches(text)) => text,
                    _ => continue,
                };
                if other.id != field.id {
                    all.push(size.to_owned());
                }
                all.extend(BESIDE.map(|by| format!("{size}{by}")));
            }
            all
        }
        _ => Vec::new(),
    }
}
