//! Lists as they are typed, and what is wrong with them.

use super::*;
use crate::cutting::CrossSize;
use crate::job::cut_labels::Money;
use crate::measure::length;

fn read(texts: &[(&str, &str)]) -> Result<Wanted, (&'static str, &'static str, String)> {
    let (entries, bench) = (Entries::from_pairs(texts.iter().copied()), Bench::default());
    let mut ask = Ask::new(QUICK_LIST.fields, &entries, &bench, &NoNames);
    let wanted = quick_list(&mut ask);
    let (_, refusals) = ask.finish();
    wanted.ok_or_else(|| {
        let refusal = refusals.first().expect("a refusal");
        (refusal.field, refusal.code, refusal.sentence.to_string())
    })
}

#[test]
fn a_fresh_form_is_a_job_that_can_be_planned() {
    let wanted = read(&[]).expect("wanted");
    assert_eq!(wanted.job.validate(), Ok(()));
    assert_eq!(wanted.labels.money, Money::Cents);
    let names: Vec<&str> = wanted.labels.parts.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(names, ["leg", "long rail", "short rail", "slat rail"]);
}

#[test]
fn lines_are_read_with_names_counts_prices_and_limits() {
    let wanted = read(&[
        ("parts", "leg: 4 @ 34 1/2, 2 × 3 @ 22, 1/3 ft"),
        ("boards", "8 ft at 10.90, 120 at 13.9 max 3"),
        ("scraps", "52, 2 @ 44"),
    ])
    .expect("wanted");
    let Wanted { job, labels, .. } = wanted;
    let parts: Vec<_> = job
        .parts
        .iter()
        .zip(&labels.parts)
        .map(|(part, label)| (label.name.as_str(), part.quantity, labels.length(part.length)))
        .collect();
    let inches = |text: &str| Ok(length(text).expect("a length"));
    assert_eq!(
        parts,
        [("leg", 4, inches("34 1/2")), ("22 in", 6, inches("22")), ("4 in", 1, inches("4")),]
    );
    let boards: Vec<_> = job.boards.iter().map(|b| (b.price_cents, b.limit)).collect();
    assert_eq!(boards, [(1090, None), (1390, Some(3))]);
    let scraps: Vec<_> = job.scraps.iter().map(|s| (labels.length(s.length), s.quantity)).collect();
    assert_eq!(scraps, [(inches("52"), 1), (inches("44"), 2)]);
}

#[test]
fn without_prices_length_stands_for_money() {
    let wanted = read(&[("boards", "96, 120, 10 ft 6 in")]).expect("wanted");
    let prices: Vec<i64> = wanted.job.boards.iter().map(|board| board.price_cents).collect();
    assert_eq!(prices, [16, 20, 21]);
    let each = length("6").expect("a length");
    assert_eq!(wanted.labels.money, Money::Wood { each });
}

/// The length stays in the list with its price, and what else is typed stays as it was typed.
#[test]
fn a_length_of_which_there_is_none_stays_in_the_list() {
    let none = |boards: &str, at: usize| {
        none_of(&Entries::from_pairs([("boards", boards)]), &Bench::default(), at)
    };
    let typed = "8 ft at 10.90,   , 144 at 16.4 max 3, 12 ft at 15";
    let gone = "8 ft at 10.90,   , 144 at 16.4 max 0, 12 ft at 15 max 0";
    assert_eq!(none(typed, 1).as_deref(), Some(gone));
    assert_eq!(none(typed, 2).as_deref(), Some(gone));
    assert_eq!(none(typed, 3), None);
    assert_eq!(none("96 at", 0), None);
    // Not typed yet, it is our example.
    let start = none_of(&Entries::default(), &Bench::default(), 0);
    assert_eq!(start.as_deref(), Some("96 in at 10.90 max 0, 120 in at 13.95, 144 in at 16.40"));
    let pasted = none("Price\tLength\n10.90\t96\n13.95\t120", 1);
    assert_eq!(pasted.as_deref(), Some("96 at 10.90, 120 at 13.95 max 0"));
    // What there is none of gives no length and is no board to cut from.
    let wanted = read(&[("boards", "96 at 10.90, 144 at 16.40 max 0")]).expect("wanted");
    assert_eq!(wanted.job.boards[1].limit, Some(0));
    let boards = ("boards", "96 at 10.90, 144 at 16.40 max 0");
    let long = read(&[("parts", "beam: 100"), boards]).expect_err("too long");
    assert!(long.2.contains("longer than every board: the longest gives 95 in"), "{long:?}");
    let none = read(&[("boards", "96 at 10.90 max 0"), ("scraps", "")]).expect_err("none");
    assert_eq!((none.0, none.1), ("boards", "empty"));
}

#[test]
fn what_is_wrong_stands_beside_its_field() {
    let many = "1/7, ".repeat(201);
    type Case<'a> = (&'a [(&'a str, &'a str)], &'a str, &'a str, &'a str);
    let cases: [Case<'_>; 17] = [
        (&[("parts", "")], "parts", "empty", "at least one piece"),
        (&[("parts", &many)], "parts", "too-many", "200"),
        (&[("parts", "0 @ 12")], "parts", "not-a-count", "from 1 to 1000"),
        (&[("parts", "@ 12")], "parts", "not-a-count", "First goes how many"),
        (&[("parts", "3 @ -12")], "parts", "too-small", "more than zero"),
        (&[("parts", "3 @ a lot")], "parts", "cannot-read", ""),
        (
            &[("parts", "beam: 145")],
            "parts",
            "too-long",
            "beam is longer than every board: the longest gives 143 in",
        ),
        (
            &[("parts", "4 @ 500")],
            "parts",
            "too-long",
            "500 in is longer than every board: the longest gives 143 in. Add a longer board.",
        ),
        (&[("parts", "1/999999937")], "parts", "too-fine", "does not go together"),
        (&[("boards", "96 at 0")], "boards", "not-a-price", "more than zero"),
        (&[("boards", "96 at -3")], "boards", "not-a-price", "more than zero"),
        (&[("boards", "96 at 1.005")], "boards", "not-a-price", "hundredths"),
        (&[("boards", "96 at 3, 120")], "boards", "no-price", "120 in has no price"),
        (&[("boards", ""), ("scraps", "")], "boards", "empty", "no board"),
        (&[("boards", "96 at 3 max -1")], "boards", "not-a-count", "from 0 to 1000"),
        (&[("boards", "96 at 3 max")], "boards", "not-a-count", "After max goes how many"),
        (&[("end_trim", "48")], "end_trim", "nothing-left", "96 in"),
    ];
    for (texts, field, code, words) in cases {
        let found = read(texts).expect_err(words);
        assert_eq!((found.0, found.1), (field, code), "{found:?}");
        assert!(found.2.contains(words), "{found:?}");
    }
}

/// By hand, in quarters of an inch and finer: widths 5 1/2 and 1 1/2, kerf 1/8: eighths.
#[test]
fn a_narrower_piece_is_ripped_and_one_without_a_width_takes_the_whole() {
    let wanted = read(&[
        ("parts", "slat: 9 @ 30 wide 1 1/2, rail: 40"),
        ("boards", "96 wide 5 1/2 at 10"),
        ("scraps", "52 wide 5 1/2, 52 wide 5 1/2"),
    ])
    .expect("wanted");
    let Wanted { job, labels, .. } = wanted;
    assert_eq!(job.validate(), Ok(()));
    let size = |id: &str| job.section(id).and_then(|section| section.size).map(|it| it.width);
    let widths: Vec<_> = job.parts.iter().map(|part| (size(&part.section), part.may_rip)).collect();
    assert_eq!(widths, [(Some(12), true), (Some(44), true)]);
    assert_eq!(size(&job.boards[0].section), Some(44));
    assert_eq!((job.scraps.len(), job.scraps[0].quantity), (1, 2));
    assert_eq!(
        job.section("board 5 1/2 in").and_then(|it| it.size),
        Some(CrossSize { width: 44, thickness: 1 })
    );
    let rip = job.saw.rip.expect("it rips");
    // The strip limit of the bench, and 6 in, the shortest that is ripped.
    let bench = Bench::default().thinnest_strip;
    assert_eq!((labels.length(rip.least_width), rip.least_length), (Ok(bench), 48));
    assert_eq!((rip.near_edge, rip.far_edge, rip.kerf), (0, 0, 1));
    assert_eq!(
        labels.sections.iter().map(|it| it.name.as_str()).collect::<Vec<_>>(),
        ["1 1/2 in board", "5 1/2 in board"]
    );
}

/// Where every piece is as wide as its boards nothing is ripped, and the list is one of lengths in two kinds.
#[test]
fn pieces_as_wide_as_their_boards_are_cut_to_length_only() {
    let wanted =
        read(&[("parts", "leg: 4 @ 33 wide 3 1/2"), ("boards", "96 wide 3 1/2"), ("scraps", "")])
            .expect("wanted");
    assert_eq!(wanted.job.saw.rip, None);
    assert!(wanted.job.sections.iter().all(|section| section.size.is_none()));
}

#[test]
fn widths_that_do_not_go_together_are_refused_with_what_to_write() {
    let two = "96 wide 5 1/2 at 10, 96 wide 3 1/2 at 6";
    type Case<'a> = (&'a str, &'a str, &'a str, &'a str, &'a str, &'a str);
    let cases: [Case<'_>; 9] = [
        ("33 wide 1 1/2", "96 at 10", "", "boards", "no-width", "96 in has no width"),
        ("33", "96 wide 5 1/2 at 10, 120 at 12", "", "boards", "no-width", "120 in has no"),
        ("33", "96 wide 5 1/2 at 10", "52", "scraps", "no-width", "52 in has no width"),
        ("leg: 33", two, "", "parts", "no-width", "leg has no width"),
        ("33 wide 6", two, "", "parts", "too-wide", "The widest board is 5 1/2 in"),
        ("33 wide 1/64", two, "", "parts", "too-narrow", "limit for a strip"),
        ("33 wide 2", "96 wide 5 1/2, 96 wide 3", "", "boards", "no-price", "need prices"),
        // The longer board is too narrow for it.
        ("70 wide 5", "60 wide 5 1/2 at 9, 96 wide 3 at 6", "", "parts", "too-long", "gives 59 in"),
        ("4 wide 2", "5 wide 3 1/2 at 1", "", "parts", "too-long", "shorter than 6 in"),
    ];
    for (parts, boards, scraps, field, code, words) in cases {
        let texts = [("parts", parts), ("boards", boards), ("scraps", scraps)];
        let found = read(&texts).expect_err(words);
        assert_eq!((found.0, found.1), (field, code), "{found:?}");
        assert!(found.2.contains(words), "{found:?}");
    }
}

/// The yard has none of one width; the other width of that length it has.
#[test]
fn none_of_a_width_leaves_the_other_widths() {
    let boards = "96 wide 5 1/2 at 10, 96 wide 3 1/2 at 6";
    let none = none_of(&Entries::from_pairs([("boards", boards)]), &Bench::default(), 1);
    assert_eq!(none.as_deref(), Some("96 wide 5 1/2 at 10, 96 wide 3 1/2 at 6 max 0"));
}
