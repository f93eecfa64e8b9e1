//! Moisture by the words that a builder has for it: wet, under a roof, indoors in winter.

use super::fields::{
    BY_PERCENT, DRIEST, DRIEST_IS, IN_RAIN, INDOORS, LATER_IS, MOISTURE_LATER, MOISTURE_TODAY,
    TODAY_IS, UNDER_ROOF, WET, WETTEST, WETTEST_IS, YARD_DRY,
};
use crate::measure::Number;
use crate::say;
use crate::sheet::{Answer, Ask, Choice, Field, Note, Refusal, Refused, Source};
use crate::tables::air::{HEATED_SOURCE, UNDER_COVER_SOURCE};

/// Which field of percents is asked when its choice says so.
pub(super) const PERCENTS: [(&Field, &Field); 4] = [
    (&TODAY_IS, &MOISTURE_TODAY),
    (&LATER_IS, &MOISTURE_LATER),
    (&DRIEST_IS, &DRIEST),
    (&WETTEST_IS, &WETTEST),
];

/// A word, the percent it is taken as, and where that is from.
pub(super) const WORDS: [(Choice, i64, Source); 5] = [
    (
        WET,
        28,
        Source::Published("Wet wood is taken as 28 %: FPL Research Paper FPL-RP-489 (Green)"),
    ),
    (YARD_DRY, 19, Source::CommonPractice),
    (IN_RAIN, 15, Source::CommonPractice),
    (UNDER_ROOF, 12, Source::Published(UNDER_COVER_SOURCE)),
    (INDOORS, 5, Source::Published(HEATED_SOURCE)),
];

/// Reads a moisture: by its word, or as a percent.
pub(super) fn moisture(ask: &mut Ask, word: &Field, percent: &Field) -> Option<Number> {
    let chosen = ask.choice(word);
    match WORDS.iter().find(|(choice, ..)| *choice == chosen) {
        Some((_, percent, _)) => Some(Number::whole(*percent)),
        None => ask.number(percent),
    }
}

/// Where the words that were chosen are from, beside the other sources.
pub(super) fn cite(ask: &Ask, answer: &mut Answer) {
    let mut by_practice: Vec<(&str, i64)> = Vec::new();
    let chosen = PERCENTS.iter().filter(|(word, _)| ask.is_asked(word));
    for (word, _) in chosen {
        let chosen = ask.choice(word);
        let Some((choice, percent, source)) = WORDS.iter().find(|it| it.0 == chosen) else {
            continue;
        };
        // The same word may stand in two fields.
        let taken = (choice.label, *percent);
        if *source == Source::CommonPractice && !by_practice.contains(&taken) {
            by_practice.push(taken);
        }
        if !answer.working.sources.contains(source) {
            answer.working.sources.push(*source);
        }
    }
    if let Some(((word, percent), others)) = by_practice.split_first() {
        let others = others.iter().map(|(word, percent)| format!(", “{word}” as {percent} %"));
        let words = say![
            format!("“{word}” is taken as {percent} %"),
            others.collect::<String>(),
            ": common practice, no source."
        ];
        answer.notes.push(Note::new("words_taken_as_percent", words));
    }
}

/// What is in the way, beside the fields that are asked: where a word stands for the percent, the
/// refusal stands beside the word, and its way out asks for the percent again.
pub(super) fn beside_words(ask: &Ask, refused: Refused) -> Refused {
    let Refused::For(refusals) = refused else { return refused };
    let by_word = |percent: &str| {
        let pair = PERCENTS.iter().find(|(_, field)| field.id == percent);
        pair.map(|(word, _)| *word).filter(|word| ask.choice(word) != BY_PERCENT)
    };
    let moved = |mut refusal: Refusal| {
        if let Some(word) = by_word(refusal.field) {
            refusal.field = word.id;
        }
        if let Some(way_out) = &mut refusal.way_out {
            let words: Vec<&Field> =
                way_out.set.iter().filter_map(|(field, _)| by_word(field)).collect();
            let to_percent = |word: &Field| (word.id, BY_PERCENT.id.to_owned().into());
            way_out.set.splice(0..0, words.into_iter().map(to_percent));
        }
        refusal
    };
    Refused::For(refusals.into_iter().map(moved).collect())
}
