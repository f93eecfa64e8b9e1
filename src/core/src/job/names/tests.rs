//! Names that look the same are the same, and what cannot be seen is in none.

use crate::job::tests::{id_of, inches, job_of, problem, value};
use crate::job::{
    Item, NameProblem, Reckoned, Step, Written, check_name, check_title, is_same_name,
    visible_title,
};
use crate::measure::text::seen;
use crate::sheet::Bench;

/// UAX 15: `é` in one character or in two. UAX 9 and UAX 44: marks of direction, of no width, and
/// what else is ignored by default.
#[test]
fn names_are_compared_by_what_is_seen() {
    let check =
        |name: &str| check_name(name, ["table\u{301} e\u{301}lan", "front rail"].into_iter());
    for name in [
        "tabl\u{e9} \u{e9}lan",
        "table\u{301} \u{e9}lan",
        "tabl\u{e9}\u{a0} e\u{301}lan",
        "front \u{3000} rail",
    ] {
        assert_eq!(check(name), Err(NameProblem::Taken), "{name:?}");
    }
    assert_eq!(check("table elan"), Ok(()));
    for c in "\u{ad}\u{61c}\u{200b}\u{200c}\u{200d}\u{200e}\u{200f}\u{2028}\u{2029}\u{202a}\u{202e}\u{2060}\u{2066}\u{2069}\u{feff}\u{fe0f}\u{e0020}\u{e0100}\u{34f}\u{3164}\u{2800}".chars() {
        assert_eq!(check(&format!("le{c}g")), Err(NameProblem::Invisible), "{:x}", u32::from(c));
        assert_eq!(seen(&format!(" le{c}g  2 ")).replace(' ', ""), "leg2");
    }
    // A mark below and one above may be written in any order.
    assert!(
        is_same_name("o\u{323}\u{302}", "\u{1ed9}") && is_same_name("o\u{302}\u{323}", "\u{1ed9}")
    );
    assert!(is_same_name("\u{d55c}", "\u{1112}\u{1161}\u{11ab}") && !is_same_name("leg", "Leg"));
}

/// UTS 51: a heart in red is U+2764 U+FE0F, a family is three people with joiners between them, a key is its sign with
/// U+FE0F U+20E3, a heart on fire is U+2764 U+FE0F U+200D U+1F525. UAX 9: a mark of direction turns what follows it.
#[test]
fn small_pictures_stay_whole_and_what_hides_alone_does_not() {
    let heart = "Bench \u{2764}\u{fe0f}";
    let family = "\u{1f469}\u{200d}\u{1f467}\u{200d}\u{1f466} table";
    for title in [heart, family, "no 1\u{fe0f}\u{20e3}", "\u{2764}\u{fe0f}\u{200d}\u{1f525}"] {
        assert_eq!(check_title(title).as_deref(), Ok(title));
        assert_eq!(visible_title(title), title);
        assert_eq!(check_name(title, core::iter::empty()), Ok(()));
    }
    for c in ['\u{202e}', '\u{2066}', '\u{200b}', '\u{7}', '\u{200d}', '\u{fe0f}', '\u{2800}'] {
        assert_eq!(check_title(&format!("ben{c}ch")), Err(NameProblem::Invisible));
        assert_eq!(visible_title(&format!(" ben{c}ch ")), "bench");
    }
    // A joiner joins two pictures, and a sign is coloured once.
    for (hides, seen) in [
        ("\u{1f469}\u{200d}", "\u{1f469}"),
        ("\u{1f469}\u{200d} table", "\u{1f469} table"),
        ("\u{2764}\u{fe0f}\u{fe0f}", "\u{2764}\u{fe0f}"),
        ("no 1\u{fe0f}", "no 1"),
        ("bench \u{fe0f}", "bench"),
    ] {
        assert_eq!(check_title(hides), Err(NameProblem::Invisible), "{hides:?}");
        assert_eq!(visible_title(hides), seen);
    }
    // With and without its colour it is one name.
    assert_eq!(check_name(heart, ["Bench \u{2764}"].into_iter()), Err(NameProblem::Taken));
}

#[test]
fn a_title_is_held_as_it_is_seen() {
    assert_eq!(check_title("  "), Err(NameProblem::Empty));
    assert_eq!(check_title(&"b".repeat(501)), Err(NameProblem::TooLong));
    for typed in
        [" Potting bench ", "Potting  bench", "Potting\u{a0}bench", "Potting \u{3000} bench"]
    {
        assert_eq!(check_title(typed).as_deref(), Ok("Potting bench"));
        assert_eq!(visible_title(typed), "Potting bench");
    }
    assert_eq!(visible_title("\u{200b} "), "Untitled");
    // 499 letters, a space and one more: what is cut off does not leave the space.
    assert_eq!(visible_title(&format!("{} b", "b".repeat(499))), "b".repeat(499));
}

#[test]
fn a_formula_finds_a_name_in_either_form_and_not_half_a_letter() {
    let mut job = job_of(&[
        ("cafe\u{301} rail", "10"),
        ("cafe", "1"),
        ("sum", "caf\u{e9} \u{a0}rail + 2 × cafe\u{301}\u{200b} rail"),
        ("no half", "cafe\u{301}"),
    ]);
    assert_eq!(value(&job, "sum"), inches("30"));
    assert!(
        problem(&job, "no half")
            .ends_with("is not a unit or a known name. Units are in, ft, mm, cm and m.")
    );
    let reckoned = Reckoned::of(&job, &Bench::default());
    let changes = job.renaming(id_of(&job, "cafe\u{301} rail"), "rail", &reckoned);
    job.make(&Step::new("rename", changes)).expect("no conflict");
    let Some(Item::Measure(sum)) = job.item(id_of(&job, "sum")) else { panic!() };
    assert_eq!(sum.written, Written::Formula("rail + 2 × rail".to_owned()));
}

#[test]
fn of_two_sizes_that_look_the_same_the_second_is_in_question() {
    let job = job_of(&[("caf\u{e9}", "10"), ("cafe\u{301}", "20"), ("sum", "cafe\u{301} + 1")]);
    assert_eq!(value(&job, "sum"), inches("11"));
    assert_eq!(
        problem(&job, "cafe\u{301}"),
        "Another size has this name, and formulas use that one. Rename one of them."
    );
    let reckoned = Reckoned::of(&job, &Bench::default());
    let second = id_of(&job, "cafe\u{301}");
    assert_eq!(job.renaming(second, "other", &reckoned).len(), 1, "formulas mean the first");
}
