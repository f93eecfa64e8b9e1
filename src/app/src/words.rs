//! Answers as one line of text: to copy, and to read aloud.

use reckoner_core::measure::text::{Shown, Written};
use reckoner_core::sheet::{Assumed, Bench, Face, Figure, face};

/// A figure in one line: `Fence: 3 3/8 in, and 1/64 more (fence to near tooth), from 1 example
/// size: kerf`.
#[must_use]
pub fn to_copy(figure: &Figure, bench: &Bench, assumed: &Assumed) -> String {
    let value = match face(&figure.value, bench) {
        Face::Measure(shown) => written(&shown),
        Face::Measures(all) => all.iter().map(written).collect::<Vec<_>>().join("; "),
        Face::Line { text, .. } => text,
    };
    let from = if figure.from.is_empty() { String::new() } else { format!(" ({})", figure.from) };
    let noted = assumed.noted().map_or_else(String::new, |noted| format!(", {noted}"));
    format!("{}: {value}{from}{noted}", figure.label)
}

fn written(shown: &Shown) -> String {
    match (&shown.or_mark, shown.lean) {
        (Some(_), _) => shown.in_words.clone(),
        (None, "exact") => shown.mark.to_string(),
        (None, _) => format!("{}, {}", shown.mark, shown.in_words),
    }
}

/// What a figure came to, and no more: `7 7/8 in`.
#[must_use]
pub fn in_short(figure: &Figure, bench: &Bench) -> String {
    match face(&figure.value, bench) {
        Face::Measure(shown) => shown.mark.to_string(),
        Face::Measures(all) => {
            all.iter().map(|it| it.mark.to_string()).collect::<Vec<_>>().join("; ")
        }
        Face::Line { text, .. } => text,
    }
}

/// A figure for a voice. Of several lengths, the one with this index.
#[must_use]
pub fn to_say(figure: &Figure, bench: &Bench, index: usize, assumed: &Assumed) -> String {
    let value = match face(&figure.value, bench) {
        Face::Measures(all) => all.get(index).map_or_else(String::new, |one| one.spoken.clone()),
        face => all_to_say(face),
    };
    let from = if figure.from.is_empty() { String::new() } else { format!(", {}", figure.from) };
    let rests = assumed.spoken().map_or_else(String::new, |rests| format!(" {rests}"));
    format!("{}: {value}{from}.{rests}", figure.label)
}

/// What a value came to, for a voice: of several lengths, all of them.
#[must_use]
pub fn all_to_say(face: Face) -> String {
    match face {
        Face::Measure(shown) => shown.spoken,
        Face::Measures(all) => all.into_iter().map(|it| it.spoken).collect::<Vec<_>>().join("; "),
        Face::Line { spoken, .. } => spoken,
    }
}

/// How large a headline may be set: the longer it is, the smaller.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// A number: at its full size.
    Short,
    /// Two marks, or feet and inches.
    Long,
    /// Words.
    Words,
}

/// How large a face may be set as the headline.
#[must_use]
pub fn room(face: &Face, index: usize) -> Room {
    let length = |written: &Written| written.to_string().chars().count();
    let of = |shown: &Shown| match (length(&shown.mark), shown.or_mark.as_ref().map(length)) {
        (0..=14, None) | (0..=10, Some(0..=10)) => Room::Short,
        _ => Room::Long,
    };
    match face {
        Face::Measure(shown) => of(shown),
        Face::Measures(all) => all.get(index).map_or(Room::Short, of),
        Face::Line { text, .. } => match text.chars().count() {
            0..=9 => Room::Short,
            10..=18 => Room::Long,
            _ => Room::Words,
        },
    }
}

/// Three sizes as written; a unit that all of them have stands once, at their end. One that only some have stays where it is:
/// without it the number would be of the job's unit.
#[must_use]
pub fn together(all: [&str; 3]) -> String {
    let of_all =
        [" in", " mm"].into_iter().find(|unit| all.iter().all(|size| size.ends_with(unit)));
    let unit = of_all.unwrap_or("");
    let bare = all.map(|size| size.strip_suffix(unit).unwrap_or(size));
    format!("{}{unit}", bare.join(" × "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_stands_once_only_where_all_sizes_have_it() {
        assert_eq!(together(["1 1/2 in", "7 1/2 in", "52 in"]), "1 1/2 × 7 1/2 × 52 in");
        assert_eq!(together(["38 mm", "190 mm", "2400 mm"]), "38 × 190 × 2400 mm");
        assert_eq!(together(["38 mm", "7 1/2 in", "2400"]), "38 mm × 7 1/2 in × 2400");
        assert_eq!(together(["1 1/2", "7 1/2 in", "52"]), "1 1/2 × 7 1/2 in × 52");
        assert_eq!(together(["", "", ""]), " ×  × ");
    }
}
