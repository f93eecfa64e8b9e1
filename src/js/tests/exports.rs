//! The exported functions cover every calculator, and the types say what they take and give.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use reckoner_core::calculators;
use reckoner_core::measure::Unit;
use reckoner_core::sheet::Bench;
use reckoner_js::{BenchIn, FUNCTIONS, Given, reckon, types};
use serde_json::{Value, json};

fn call(slug: &str, input: Value, bench: Value) -> Value {
    let calculator = calculators::find(slug).expect("a calculator");
    let given: Given = serde_json::from_value(input).expect("an object");
    let bench: BenchIn = serde_json::from_value(bench).expect("a bench");
    serde_json::to_value(reckon(calculator, &given, &bench)).expect("a plain object")
}

#[test]
fn there_is_one_function_for_each_calculator() {
    let exported: Vec<&str> = FUNCTIONS.iter().map(|(_, slug)| *slug).collect();
    let known: Vec<&str> = calculators::ALL.iter().map(|calculator| calculator.slug).collect();
    assert_eq!(exported, known);
    for (function, slug) in FUNCTIONS {
        assert_eq!(*function, slug.replace('-', "_"));
    }
}

/// A file of the package.
fn package(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("package").join(name)
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Run with `UPDATE_TYPES=1` to write the files anew after a calculator changed.
#[test]
fn the_types_and_the_functions_are_current() {
    let made = [("index.d.ts", types::declarations()), ("functions.js", types::functions())];
    for (name, made) in made {
        let file = package(name);
        if std::env::var_os("UPDATE_TYPES").is_some() {
            fs::write(&file, &made).expect("writing what is made");
        }
        assert!(
            read(&file) == made,
            "run this test with UPDATE_TYPES=1 and commit src/js/package/{name}"
        );
    }
}

/// Types that need no browser: a program for Node is compiled without them.
#[test]
fn the_types_name_nothing_of_the_browser() {
    let types = types::declarations();
    for name in ["Response", "Request", "URL", "BufferSource", "WebAssembly", "HTML"] {
        assert!(!types.contains(name), "{name}");
    }
}

#[test]
fn the_package_has_the_version_and_the_licence_of_the_workspace() {
    let package: Value = serde_json::from_str(&read(&package("package.json"))).expect("JSON");
    assert_eq!(package["version"], env!("CARGO_PKG_VERSION"));
    assert_eq!(package["license"], env!("CARGO_PKG_LICENSE"));
}

/// What a program that takes the package is told of it, and the files that it names are there.
#[test]
fn the_package_says_how_it_is_taken() {
    let json: Value = serde_json::from_str(&read(&package("package.json"))).expect("JSON");
    assert_eq!(json["type"], "module");
    assert_eq!(json["types"], json["exports"]["."]["types"]);
    assert_eq!(json["main"], json["exports"]["."]["default"]);
    assert_eq!(json["sideEffects"], false);
    assert_eq!(json["engines"]["node"], ">=20");
    for named in [&json["types"], &json["main"], &json["exports"]["."]["node"]] {
        let named = named.as_str().and_then(|it| it.strip_prefix("./")).expect("a file beside it");
        assert!(package(named).is_file(), "{named}");
    }
}

/// The core's own code below a folder, its tests left out.
fn sources(folder: &Path, found: &mut Vec<String>) {
    for entry in fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("a file").path();
        if path.is_dir() {
            if !path.ends_with("tests") {
                sources(&path, found);
            }
        } else if !path.ends_with("tests.rs") {
            found.push(read(&path));
        }
    }
}

/// Texts of that form which are no code: the name of a calculator, and a measure in a drawing.
const NO_CODES: [&str; 2] = ["resaw-rip", "set-back"];

/// A code is a text of words with hyphens between, and nothing else in those sources is.
#[test]
fn every_code_of_a_question_is_in_the_types() {
    let mut texts = Vec::new();
    for folder in ["calculators", "sheet"] {
        sources(
            &Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src").join(folder),
            &mut texts,
        );
    }
    let is_word = |word: &str| {
        !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())
    };
    let is_code = |text: &str| {
        text.contains('-')
            && text.starts_with(|c: char| c.is_ascii_lowercase())
            && text.split('-').all(is_word)
    };
    let mut codes: BTreeSet<&str> = BTreeSet::from(["empty"]);
    for text in &texts {
        codes.extend(text.split('"').filter(|it| is_code(it)));
    }
    for no_code in NO_CODES {
        assert!(codes.remove(no_code), "{no_code}");
    }
    let listed: BTreeSet<&str> = types::OF_THE_QUESTIONS.iter().copied().collect();
    assert_eq!(codes, listed);
}

/// The id of a note stands where the note is made, that of a column in its constant.
#[test]
fn every_id_of_a_note_and_of_a_column_is_in_the_types() {
    let mut texts = Vec::new();
    let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src");
    sources(&core.join("calculators"), &mut texts);
    for (maker, all) in
        [("Note::new(", types::OF_THE_NOTES), ("Column::new(", types::OF_THE_COLUMNS)]
    {
        let made = texts.iter().flat_map(|text| text.split(maker).skip(1));
        let ids: BTreeSet<&str> = made.filter_map(|after| after.split('"').nth(1)).collect();
        let listed: BTreeSet<&str> = all.iter().copied().collect();
        assert_eq!(ids, listed, "{maker}");
    }
}

/// The examples of the forms are no answers: an empty call names every size that is missing, and what
/// has a default is listed where it was used.
#[test]
fn a_size_left_out_is_missing_and_a_choice_left_out_is_assumed() {
    let bench = Bench::default();
    for calculator in calculators::ALL {
        let out = call(calculator.slug, json!({}), json!({}));
        let mut input = serde_json::Map::new();
        // What asks for choices only, such as the size of a 2x6, needs nothing more.
        let missing = out["problems"].as_array().cloned().unwrap_or_default();
        assert_eq!(missing.is_empty(), calculator.slug == "lumber", "{}: {out}", calculator.slug);
        for problem in missing {
            assert_eq!(problem["code"], "missing", "{problem}");
            let id = problem["field"].as_str().expect("a field");
            let field = calculator.fields.iter().find(|field| field.id == id).expect(id);
            input.insert(id.to_owned(), json!(field.start_text(&bench, Unit::Inch)));
        }
        let out = call(calculator.slug, Value::Object(input.clone()), json!({}));
        assert_eq!(out["ok"], true, "{}: {out}", calculator.slug);
        let id = out["headline"]["id"].as_str().expect("a headline");
        assert_eq!(out["results"][id], out["headline"]["value"]);
        for (id, text) in out["assumed"].as_object().expect("a list") {
            let field = calculator.fields.iter().find(|field| field.id == *id).expect(id);
            assert_eq!(*text, json!(field.start_text(&bench, Unit::Inch)));
            assert!(!input.contains_key(id), "{id}");
        }
    }
}

#[test]
fn nothing_that_is_handed_in_is_passed_over() {
    for (input, field, code) in [
        (json!({"strip": "3", "wanted": "5"}), "wanted", "bad-call"),
        (json!({"strip": null}), "strip", "wrong-type"),
        (json!({"strip": {"a": 1}}), "strip", "wrong-type"),
        (json!({"strip": [["3"]]}), "strip", "wrong-type"),
        (json!({"strip": true}), "strip", "wrong-type"),
        (json!({"strip": "3", "unit": null}), "unit", "wrong-type"),
        (json!({"strip": "3", "unit": 5}), "unit", "wrong-type"),
    ] {
        let out = call("tape", input, json!({}));
        assert_eq!(out["problems"][0]["code"], code, "{out}");
        assert_eq!(out["problems"][0]["field"], field);
    }
    for bench in [json!({"kerf": null}), json!({"kerf": true}), json!({"kerf": ["1/8"]})] {
        let out = call("tape", json!({"strip": "3"}), bench);
        assert_eq!(out["problems"][0]["code"], "wrong-type", "{out}");
        assert_eq!(out["problems"][0]["field"], "kerf");
    }
    // A field of another question.
    let out = call("screws", json!({"question": "buy", "leg": "3 1/2"}), json!({}));
    let problems = out["problems"].as_array().expect("problems");
    let leg = problems.iter().find(|it| it["field"] == "leg").expect("it is named");
    assert_eq!(leg["code"], "not-asked");
    assert_eq!(leg["message"], "“leg” is asked only where question is corner.");
}

/// JavaScript counts UTF-16 units: the fraction sign has 2 bytes and is 1, a letter outside the first
/// plane has 4 bytes and is 2.
#[test]
fn the_place_of_a_problem_is_counted_as_javascript_counts() {
    for (strip, at) in [("3⅜ plus 2", [3, 7]), ("½ + 𝟚x", [4, 6])] {
        let out = call("tape", json!({"strip": strip}), json!({}));
        assert_eq!(out["problems"][0]["at"], json!(at), "{out}");
    }
}

#[test]
fn lengths_come_exact_and_readable() {
    let out = call("tape", json!({"strip": ["6 3/4", "A / 2"]}), json!({}));
    let read = &out["results"]["read"];
    assert_eq!(read["kind"], "length");
    assert_eq!(read["exact"], "27/8");
    assert_eq!(read["shown"], "3 3/8 in");
    assert_eq!((&read["inches"], &read["millimetres"]), (&json!(3.375), &json!(85.725)));
    assert_eq!(read["spoken"], "three and three eighths inches");
    assert_eq!(read["left_over"]["exact"], "0");
}

/// By hand: 2 in and 1/64 lies 1/64 over the mark 2 of a tape in sixteenths, 2 in and 3/64 lies 1/64
/// under 2 1/16.
#[test]
fn what_is_left_over_is_a_length_with_its_sign() {
    for (strip, left_over) in [("2 1/64", "1/64"), ("2 3/64", "-1/64")] {
        let out = call("tape", json!({"strip": strip}), json!({}));
        assert_eq!(out["results"]["read"]["left_over"]["exact"], left_over, "{out}");
    }
}

/// What a program tells notes, cautions and columns apart by.
#[test]
fn columns_notes_and_cautions_have_ids() {
    let mut seen = [0, 0, 0];
    for calculator in calculators::ALL {
        let bench = Bench::default();
        let form = |asked: &dyn Fn(&str) -> bool| -> Value {
            let fields = calculator.fields.iter().filter(|field| asked(field.id));
            fields
                .map(|field| (field.id.to_owned(), json!(field.start_text(&bench, Unit::Inch))))
                .collect::<serde_json::Map<String, Value>>()
                .into()
        };
        // What is not asked is named; without it the form is whole.
        let out = call(calculator.slug, form(&|_| true), json!({}));
        let problems = out["problems"].as_array().cloned().unwrap_or_default();
        let out = call(
            calculator.slug,
            form(&|id| !problems.iter().any(|problem| problem["field"] == id)),
            json!({}),
        );
        assert_eq!(out["ok"], true, "{}: {out}", calculator.slug);
        let tables = out["tables"].as_object().expect("tables").values();
        let lists = tables.map(|it| (0, &it["columns"]));
        for (place, list) in lists.chain([(1, &out["notes"]), (2, &out["cautions"])]) {
            let list = list.as_array().expect("a list");
            let ids: BTreeSet<&str> =
                list.iter().map(|it| it["id"].as_str().expect("an id")).collect();
            assert_eq!(ids.len(), list.len(), "{list:?}");
            let plain = |id: &str| id.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'_');
            let begins = |id: &str| id.starts_with(|c: char| c.is_ascii_lowercase());
            assert!(ids.iter().all(|id| begins(id) && plain(id)), "{ids:?}");
            seen[place] += ids.len();
        }
    }
    assert!(seen.iter().all(|n| *n > 10), "{seen:?}");
}

#[test]
fn a_bare_number_takes_the_unit_of_the_call() {
    let out = call("tape", json!({"strip": "50.8", "unit": "mm"}), json!({}));
    assert_eq!(out["results"]["read"]["exact"], "2");
    let out = call("tape", json!({"strip": "2"}), json!({"tape": "mm"}));
    assert_eq!(out["results"]["read"]["exact"], "10/127");
}

#[test]
fn problems_name_their_field_their_place_and_a_way_out() {
    let out = call("tape", json!({"strip": "3 3/8 plus 2"}), json!({}));
    assert_eq!(out["ok"], false);
    let problem = &out["problems"][0];
    assert_eq!(problem["field"], "strip");
    assert_eq!(problem["code"], "cannot-read");
    assert_eq!(problem["at"], json!([6, 10]));
    assert_eq!(
        problem["message"],
        "“plus” is not a unit or a known name. Units are in, ft, mm, cm and m."
    );
}

#[test]
fn a_call_that_is_misspelt_is_refused_not_guessed() {
    for (input, bench, field) in [
        (json!({"stripe": "3"}), json!({}), "stripe"),
        (json!({"divide": "quarters"}), json!({}), "divide"),
        (json!({"unit": "cubit"}), json!({}), "unit"),
        (json!({}), json!({"tape": "fathoms"}), "tape"),
        (json!({}), json!({"fineness": 7}), "fineness"),
        (json!({}), json!({"kerf": "0"}), "kerf"),
        (json!({}), json!({"fence": "behind"}), "fence"),
        (json!({}), json!({"saw": "table"}), "saw"),
    ] {
        let out = call("tape", input, bench);
        assert_eq!(out["problems"][0]["code"], "bad-call", "{out}");
        assert_eq!(out["problems"][0]["field"], field);
    }
}
