//! The first page that stands in `index.html`, before there is a program, has the same tiles as the app.

use reckoner_core::calculators::LIST;

const SHELL: &str = include_str!("../../../index.html");

#[test]
fn the_first_page_of_the_shell_has_every_calculator_in_order() {
    let tiles = LIST.iter().map(|it| {
        format!(
            "      <li><a class=\"target\" href=\"#/{0}\"><svg class=\"target__picture\"><use href=\"#picture-{0}\"></use></svg><span class=\"target__stage\">{1}</span><span class=\"target__title\">{2}</span><span class=\"target__question\">{3}</span></a></li>\n",
            it.slug,
            it.stage.title(),
            it.title,
            it.question
        )
    });
    let expected: String = tiles.collect();
    assert!(SHELL.contains(&expected), "index.html lacks these lines:\n{expected}");
}

#[test]
fn every_calculator_has_a_picture_in_the_shell() {
    for slug in LIST.iter().map(|it| it.slug).chain(["jobs", "cut"]) {
        let symbol = format!("<symbol id=\"picture-{slug}\" viewBox=");
        assert_eq!(SHELL.matches(&symbol).count(), 1, "{slug}");
    }
}
