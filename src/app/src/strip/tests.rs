//! Lines of a strip, and letters written into them.

use super::{letters_above, lines, with_letter, with_line};

fn all(text: &str) -> Vec<&str> {
    lines(text).collect()
}

#[test]
fn a_blank_line_to_go_on_with_stands_at_the_end() {
    assert_eq!(all(""), [""]);
    assert_eq!(all("44"), ["44", ""]);
    assert_eq!(all("44\nA / 2"), ["44", "A / 2", ""]);
    assert_eq!(all("44\n "), ["44", " "]);
}

#[test]
fn one_line_is_written_anew() {
    assert_eq!(with_line("44\nA / 2", 0, "46"), "46\nA / 2");
    assert_eq!(with_line("44", 1, "A / 2"), "44\nA / 2");
    assert_eq!(with_line("", 0, "4"), "4");
    // An emptied line keeps its letter for those below; at the end it goes.
    assert_eq!(with_line("44\nA / 2", 0, ""), "\nA / 2");
    assert_eq!(with_line("44\nA / 2", 1, ""), "44");
}

#[test]
fn a_line_stays_one_line() {
    assert_eq!(with_line("44", 0, "1\n+\r2"), "1 + 2");
}

#[test]
fn the_letters_above_are_those_with_something_written() {
    assert_eq!(letters_above("44\n\nA / 2", 3), ["A", "C"]);
    assert_eq!(letters_above("44", 0), Vec::<String>::new());
    assert_eq!(letters_above("1\n2\n3\n4\n5\n6", 6), ["C", "D", "E", "F"]);
}

#[test]
fn a_letter_is_written_at_the_caret_over_the_selection() {
    assert_eq!(with_letter(" / 2", 0..0, "A").text, "A / 2");
    assert_eq!(with_letter("44 + 7", 0..2, "B").text, "B + 7");
    assert_eq!(with_letter("2 × ", 4..4, "B").text, "2 × B");
    assert_eq!(with_letter("2 × ", 4..4, "A2").caret, 6);
}
