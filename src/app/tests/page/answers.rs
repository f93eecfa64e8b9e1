//! One page draws every calculator from what it asks and answers.

use std::collections::BTreeSet;

use reckoner_core::calculators;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::mounted::Mounted;

#[wasm_bindgen_test]
async fn every_calculator_is_on_the_home_page_in_the_order_of_the_job() {
    let app = Mounted::fresh("#/").await;
    let shown: Vec<String> = app
        .all("[data-testid^='home-']")
        .iter()
        .filter_map(|it| it.get_attribute("data-testid"))
        .collect();
    let mut all: Vec<_> = calculators::ALL.iter().collect();
    all.sort_by_key(|it| it.stage);
    let expected: Vec<String> = all.iter().map(|it| format!("home-{}", it.slug)).collect();
    assert_eq!(shown, expected);
}

#[wasm_bindgen_test]
async fn every_calculator_opens_with_an_answer_and_all_it_asks() {
    for calculator in calculators::ALL {
        let app = Mounted::fresh(&format!("#/{}", calculator.slug)).await;
        let headline = app.text("answer-headline");
        assert!(!headline.contains("No answer yet"), "{}: {headline}", calculator.slug);
        let mut ids = BTreeSet::new();
        for element in app.all("[data-testid]") {
            let id = element.get_attribute("data-testid").unwrap_or_default();
            assert!(ids.insert(id.clone()), "{}: two elements are {id}", calculator.slug);
        }
        let asked = app.all("[data-testid^='field-']").len();
        assert!(asked > 0, "{} asks nothing", calculator.slug);
        assert!(app.find("working-toggle").is_some(), "{} shows no working", calculator.slug);
    }
}

#[wasm_bindgen_test]
async fn a_fraction_is_stacked_for_the_eye_and_words_for_a_voice() {
    let app = Mounted::fresh("#/tape?strip=3+25%2F64&unit=in").await;
    let headline = app.get("answer-headline");
    let seen = headline.query_selector(".fraction").expect("a query").expect("a fraction");
    assert_eq!(seen.text_content().as_deref(), Some("3/8"));
    let hidden = seen.closest("[aria-hidden='true']").expect("a query");
    assert!(hidden.is_some(), "a voice would read the parts of the fraction");
    let spoken = headline.query_selector(".voice").expect("a query").expect("words");
    assert_eq!(
        spoken.text_content().as_deref(),
        Some("three and three eighths inches, and one sixty-fourth more")
    );
    assert!(app.text("answer-headline").contains("and 1/64 more"));
    assert_eq!(app.exact("answer-headline"), "3 25/64 in");
}

#[wasm_bindgen_test]
async fn marks_are_shown_one_at_a_time() {
    let app = Mounted::fresh("#/tape?strip=44&divide=parts&parts=4&unit=in").await;
    assert!(app.text("answer-headline").starts_with("Mark 1 of 4"));
    assert_eq!(app.exact("answer-headline"), "11 in");
    app.tap("mark-next").await;
    app.tap("mark-next").await;
    assert!(app.text("answer-headline").starts_with("Mark 3 of 4"));
    assert_eq!(app.exact("answer-headline"), "33 in");
    app.tap("mark-previous").await;
    assert_eq!(app.exact("answer-headline"), "22 in");
    assert_eq!(app.all(".mark").len(), 4);
}

#[wasm_bindgen_test]
async fn other_marks_begin_with_the_first_again() {
    let app = Mounted::fresh("#/tape?strip=44&divide=parts&parts=4&unit=in").await;
    app.tap("mark-next").await;
    app.types("field-parts", "8").await;
    assert!(app.text("answer-headline").starts_with("Mark 1 of 8"));
}

#[wasm_bindgen_test]
async fn what_is_drawn_says_what_it_shows_and_writes_no_style() {
    let app = Mounted::fresh("#/tape").await;
    let drawing = app.get("drawing");
    let svg = drawing.query_selector("svg [role='img']").expect("a query").expect("a picture");
    assert!(svg.get_attribute("aria-label").is_some_and(|words| words.contains("arrow")));
    assert!(app.all("[style]").is_empty(), "the content policy forbids styles in the page");
    assert!(app.all(".role--tick").len() > 1);
}
