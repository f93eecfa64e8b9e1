//! An id is spelled once: in the constant of its field, its result, its choice or its column, and where its note is made.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use reckoner_core::calculators::{self, Calculator};
use reckoner_core::measure::Tape;
use reckoner_core::measure::text::NoNames;
use reckoner_core::sheet::{Bench, Kind};

use crate::entries;

/// What may stand before a spelled id.
const MAKERS: [&str; 4] = ["Field::new(", "ResultSpec::new(", "Choice::new(", COLUMN];

/// What stands before the id of a column.
const COLUMN: &str = "Column::new(";

/// What stands before a word of a rule, of what a figure is measured from, of a sentence or of a
/// drawing, or before the name of the calculator; it may be the same as an id.
const WORDS: [&str; 6] =
    ["Term::of(", "Step::of(", ".figure(", "say![", "Size::Small,", "Calculator{slug:"];

/// Other words that happen to be the same as an id: the calculator, the word, and where it is seen.
const SAME_WORD: [(&str, &str, &str); 8] = [
    ("angles", "flat", "the other way to lay a side, in a note"),
    ("frame", "stretcher", "a part in the drawing"),
    ("resaw-rip", "left", "the side of the fence, in the title of the drawing"),
    ("resaw-rip", "right", "the side of the fence, in the title of the drawing"),
    ("strength", "round", "the section in the drawing"),
    ("tape", "inches", "the numbers of the tape, in the title of the drawing"),
    ("top", "today", "the planks in the drawing"),
    ("top", "later", "the planks in the drawing"),
];

/// Of the entries that the law of the working takes, every so many.
const ONE_IN: usize = 4;

fn folder(calculator: &Calculator) -> PathBuf {
    let calculators = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/calculators");
    calculators.join(calculator.slug.replace('-', "_"))
}

/// Every source file of a calculator but its tests.
fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder of a calculator") {
        let path = entry.expect("a file").path();
        if path.is_dir() {
            all.extend(sources(&path));
        } else if !path.ends_with("tests.rs") {
            all.push(path);
        }
    }
    all
}

/// Ids of fields, choices, results, and of the columns of tables as the sources spell them.
fn ids(calculator: &Calculator) -> Vec<String> {
    let mut ids: Vec<&str> = calculator.fields.iter().map(|field| field.id).collect();
    ids.extend(calculator.results.iter().map(|result| result.id));
    for field in calculator.fields {
        if let Kind::Choice(choices) = field.kind {
            ids.extend(choices.iter().map(|choice| choice.id));
        }
    }
    let mut ids: Vec<String> = ids.into_iter().map(str::to_owned).collect();
    for path in sources(&folder(calculator)) {
        let source = fs::read_to_string(&path).expect("a source file");
        let columns = literals(&source).into_iter().filter(|(before, _)| before.ends_with(COLUMN));
        ids.extend(columns.map(|(_, id)| id));
    }
    ids
}

/// Each text that is the whole of a literal, with what stands before it.
fn literals(source: &str) -> Vec<(String, String)> {
    let code: Vec<&str> =
        source.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
    let code = code.join("\n");
    let mut found = Vec::new();
    let mut before = String::new();
    for (index, piece) in code.split('"').enumerate() {
        if index % 2 == 1 {
            let squeezed: String = before.split_whitespace().collect();
            found.push((squeezed, piece.to_owned()));
        }
        before = piece.to_owned();
    }
    found
}

#[test]
fn an_id_is_spelled_only_in_its_constant() {
    let mut trouble = Vec::new();
    let mut unseen = SAME_WORD.to_vec();
    for calculator in calculators::ALL {
        let ids = ids(calculator);
        let mut made: BTreeMap<(&str, String), usize> = BTreeMap::new();
        let mut stray = Vec::new();
        for path in sources(&folder(calculator)) {
            let source = fs::read_to_string(&path).expect("a source file");
            for (before, text) in literals(&source) {
                if !ids.contains(&text) || WORDS.iter().any(|words| before.ends_with(words)) {
                    continue;
                }
                let is_same = |(slug, word, _): &(&str, &str, &str)| {
                    (*slug, *word) == (calculator.slug, text.as_str())
                };
                match MAKERS.iter().find(|maker| before.ends_with(*maker)) {
                    Some(maker) => *made.entry((maker, text)).or_default() += 1,
                    None if SAME_WORD.iter().any(is_same) => unseen.retain(|word| !is_same(word)),
                    None => stray.push(format!("{}: {text:?}", path.display())),
                }
            }
        }
        let twice = made.into_iter().filter(|(_, times)| *times > 1);
        stray.extend(twice.map(|((maker, id), times)| format!("{maker}{id:?} {times} times")));
        if !stray.is_empty() {
            trouble.push(format!("{}: {stray:#?}", calculator.slug));
        }
    }
    trouble.extend(unseen.iter().map(|(slug, word, _)| format!("{slug}: no more {word:?}")));
    assert!(trouble.is_empty(), "{}", trouble.join("\n"));
}

#[test]
fn a_spelled_id_is_seen() {
    let source = "const A: Field = Field::new(\n    \"board\", \"Board\");\n// \"board\"\nask.length(\"board\")";
    let found = literals(source);
    let of_board: Vec<&str> = found
        .iter()
        .filter(|(_, text)| text == "board")
        .map(|(before, _)| before.as_str())
        .collect();
    assert_eq!(of_board, ["constA:Field=Field::new(", ");ask.length("]);
}

/// The ids of all notes, as they are spelled in the sources.
fn note_ids() -> Vec<String> {
    let calculators = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/calculators");
    let mut ids = Vec::new();
    for path in sources(&calculators) {
        let source = fs::read_to_string(&path).expect("a source file");
        let made = source.matches("Note::new(").count();
        let spelled = literals(&source).into_iter().filter(|(it, _)| it.ends_with("Note::new("));
        let spelled: Vec<String> = spelled.map(|(_, id)| id).collect();
        assert_eq!(spelled.len(), made, "{}: an id stands with its note", path.display());
        ids.extend(spelled);
    }
    ids
}

/// Two to five short words, with `_` between.
fn is_id_of_note(id: &str) -> bool {
    let words: Vec<&str> = id.split('_').collect();
    (1..=5).contains(&words.len())
        && id.len() <= 32
        && words.iter().all(|word| {
            !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
        })
}

#[test]
fn an_id_of_a_note_is_short_and_spelled_once() {
    let ids = note_ids();
    let bad: Vec<&String> = ids.iter().filter(|id| !is_id_of_note(id)).collect();
    assert!(bad.is_empty(), "{bad:?}");
    let each: BTreeSet<&String> = ids.iter().collect();
    let twice = each.iter().filter(|id| ids.iter().filter(|it| it == *id).count() > 1);
    assert_eq!(twice.collect::<Vec<_>>(), Vec::<&&String>::new());
    assert!(!is_id_of_note("no gaps: outdoors") && !is_id_of_note("a_b_c_d_e_f"));
}

/// The words of a note without its numbers, its units and the signs between them: they come and go with the numbers.
fn without_numbers(words: &str) -> String {
    let words = words.split_whitespace().filter(|word| {
        !word.contains(|c: char| c.is_ascii_digit()) && !["about", "in", "mm"].contains(word)
    });
    words.collect::<Vec<_>>().join(" ")
}

/// Over all calculators and random entries: no two notes of an answer have one id, each id is one that is spelled, and
/// notes that differ only in their numbers have the same one.
#[test]
fn a_note_is_told_by_its_id() {
    let spelled: BTreeSet<String> = note_ids().into_iter().collect();
    let mut seen: BTreeMap<(&str, String), BTreeSet<&str>> = BTreeMap::new();
    let (mut trouble, mut judged) = (BTreeSet::new(), 0);
    for calculator in calculators::ALL {
        for (entries, tape) in entries::of(calculator).into_iter().step_by(ONE_IN) {
            let bench = Bench { tape, ..Bench::default() };
            let Some(answer) = calculator.sheet(&entries, &bench, &NoNames).answer else {
                continue;
            };
            let ids: BTreeSet<&str> = answer.notes.iter().map(|note| note.id).collect();
            if ids.len() < answer.notes.len() {
                let ids: Vec<&str> = answer.notes.iter().map(|note| note.id).collect();
                trouble.insert(format!("{}: two of one id: {ids:?}", calculator.slug));
            }
            for note in &answer.notes {
                judged += 1;
                let words = without_numbers(&note.on(Tape::SIXTEENTHS));
                seen.entry((calculator.slug, words)).or_default().insert(note.id);
            }
        }
    }
    for ((slug, words), ids) in &seen {
        if ids.len() > 1 {
            trouble.insert(format!("{slug}: {words:?} is {ids:?}"));
        }
    }
    assert!(trouble.is_empty(), "{trouble:#?}");
    let told: BTreeSet<String> = seen.values().flatten().map(|id| (*id).to_owned()).collect();
    assert!(told.is_subset(&spelled), "{:?}", told.difference(&spelled).collect::<Vec<_>>());
    // A few are of rare numbers.
    let unseen: Vec<_> = spelled.difference(&told).collect();
    assert!(unseen.len() * 10 < spelled.len(), "{} never came: {unseen:?}", unseen.len());
    assert!(judged > 5_000, "{judged} notes");
}
