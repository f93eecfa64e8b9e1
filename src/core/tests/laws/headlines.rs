//! The headline of every question, held against the list that stands in the notes for developers.

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Entries};

/// Where the list stands.
const NOTES: &str = include_str!("../../../../DEVELOPERS.md");
/// The line before it, and the one after.
const FENCES: [&str; 2] = ["\n```headlines\n", "\n```"];

/// A line of the list: `calculator question: headline, second`.
fn line(calculator: &Calculator, question: Option<(&'static str, &'static str)>) -> String {
    let entries = Entries::from_pairs(question);
    let sheet = calculator.sheet(&entries, &Bench::default(), &NoNames);
    let answer = sheet.answer.unwrap_or_else(|| panic!("{question:?}: no answer to our example"));
    let second = answer.figures.first().map_or_else(String::new, |it| format!(", {}", it.id));
    let question = question.map_or_else(String::new, |(_, choice)| format!(" {choice}"));
    format!("{}{question}: {}{second}", calculator.slug, answer.headline.id)
}

#[test]
fn the_headline_of_every_question_is_the_one_that_is_listed() {
    let (_, rest) = NOTES.split_once(FENCES[0]).expect("the list begins");
    let (list, _) = rest.split_once(FENCES[1]).expect("the list ends");
    let listed: Vec<&str> = list.lines().collect();
    let answered: Vec<String> = calculators::ALL
        .iter()
        .flat_map(|it| match it.questions() {
            Some((field, all)) => {
                all.iter().map(|choice| line(it, Some((field.id, choice.id)))).collect()
            }
            None => vec![line(it, None)],
        })
        .collect();
    assert_eq!(listed, answered, "{}", answered.join("\n"));
}
