//! The first page that stands in `index.html`, before there is a program, has the same tiles as the app.

use reckoner_core::calculators::LIST;

const SHELL: &str = include_str!("../../../index.html");

#[test]
fn the_first_page_of_the_shell_has_every_calculator_in_order() {
    let tiles = LIST.iter().map(|it| {
        format!(
            "      <li><a class=\"target\" href=\"#/{}\"><span class=\"target__stage\">{}</span><span class=\"target__title\">{}</span><span class=\"target__question\">{}</span></a></li>\n",
            it.slug,
            it.stage.title(),
            it.title,
            it.question
        )
    });
    let expected: String = tiles.collect();
    assert!(SHELL.contains(&expected), "index.html lacks these lines:\n{expected}");
}
