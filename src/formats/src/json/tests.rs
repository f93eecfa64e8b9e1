//! The reader of JSON against serde_json, which is independent of it.

use proptest::prelude::*;

use super::*;
use crate::json::scan::members;

/// Texts that are nearly JSON.
fn nearly() -> impl Strategy<Value = String> {
    let piece = prop::sample::select(vec![
        "{",
        "}",
        "[",
        "]",
        ",",
        ":",
        "\"a\"",
        "\"\\u00e9\"",
        "\"\\ud83e\\ude91\"",
        "\"\\ud83e\"",
        "\"\\n\"",
        "\"\\x\"",
        "\"",
        "0",
        "-0",
        "01",
        "1.5e-7",
        "1.",
        "-",
        "true",
        "false",
        "null",
        "nul",
        " ",
        "\n",
        "\u{1}",
        "é",
        "\"🪑\"",
        "\\",
    ]);
    prop::collection::vec(piece, 0..12).prop_map(|pieces| pieces.concat())
}

/// A value in text, as serde_json sees it, put together from the places of this reader.
fn seen(raw: &str) -> serde_json::Value {
    match raw.as_bytes().first() {
        Some(b'[') => elements(raw).map(seen).collect(),
        Some(b'{') => serde_json::Value::Object(
            members(raw).map(|(name, value)| (unquoted(name).into_owned(), seen(value))).collect(),
        ),
        Some(b'"') => unquoted(raw).into_owned().into(),
        _ => serde_json::from_str(raw).expect("a number or a word"),
    }
}

fn agrees(text: &str) -> Result<(), TestCaseError> {
    let theirs = serde_json::from_str::<serde_json::Value>(text);
    match (check(text), theirs) {
        (Ok(()), Ok(theirs)) => prop_assert_eq!(seen(text.trim_matches([' ', '\n'])), theirs),
        (Err(at), Err(_)) => prop_assert!(at <= text.len()),
        (ours, theirs) => prop_assert!(false, "{text:?}: {ours:?}, and {theirs:?}"),
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4_000))]

    #[test]
    fn what_is_json_to_one_reader_is_to_the_other(text in nearly()) {
        agrees(&text)?;
    }

    #[test]
    fn a_text_is_written_as_it_is_read(text in any::<String>()) {
        let mut w = Writer::new(false);
        w.text(&text);
        prop_assert_eq!(serde_json::from_str::<String>(&w.out).expect("JSON"), text.clone());
        prop_assert_eq!(check(&w.out), Ok(()));
        prop_assert_eq!(unquoted(&w.out), text);
    }
}

#[test]
fn every_text_of_few_signs_is_json_to_both_or_to_none() {
    let signs = ["[", "]", "{", "}", ",", ":", "\"", "1", "-", "e", ".", " "];
    let mut texts = vec![String::new()];
    for _ in 0..4 {
        texts = texts
            .iter()
            .flat_map(|text| signs.iter().map(move |sign| format!("{text}{sign}")))
            .chain(texts.iter().cloned())
            .collect();
        texts.sort();
        texts.dedup();
    }
    let is_json = |text: &String| {
        agrees(text).expect("the same");
        check(text).is_ok()
    };
    let count = texts.iter().filter(|text| is_json(text)).count();
    assert!(texts.len() > 20_000 && count > 50, "{} {count}", texts.len());
}
