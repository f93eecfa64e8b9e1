//! [`ListRow`]: a list as rows, each with its name, its count and its size, and as the one text that it is kept as.
//!
//! A row is written back as it was typed, so that nothing changes under the person's fingers; what cannot be
//! read stays in its row.

use super::counts::{split_count, split_times, two_ways};
use super::{Kind, pasted};

/// One row of a list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ListRow {
    /// Before the colon; empty for none.
    pub name: String,
    /// Before `@`, or before an `x` or `×` that can be nothing else; empty for one.
    pub count: String,
    /// A length, with its width after the word `wide`, or length × width × thickness; of a zone, where it begins.
    pub size: String,
    /// Where a zone ends, after `to`; empty for what is no zone.
    pub to: String,
    /// What a board costs, after `at`; empty for none.
    pub price: String,
}

/// A place of a row to write a length in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowPlace {
    /// Which of all places of the list it is, counted from 0.
    pub line: usize,
    /// What is written there.
    pub title: &'static str,
    /// What stands there.
    pub text: String,
}

impl ListRow {
    /// How many it stands for; `None` where that cannot be read, or can be read two ways.
    #[must_use]
    pub fn counted(&self, kind: Kind) -> Option<u32> {
        match self.count.trim() {
            // Without its count, such a size stands behind a sign that nothing stands before.
            "" if count_and_size(&self.size, kind).is_some() => None,
            "" => (!is_unclear(&self.size, kind)).then_some(1),
            count => count.parse().ok(),
        }
    }

    /// Whether it is a board that is sold without end.
    #[must_use]
    pub fn is_endless(&self, kind: Kind) -> bool {
        matches!(kind, Kind::Prices) && self.count.trim().is_empty()
    }

    /// One more of it: of what is without end the first that is counted, and of boards of which there is none as many as
    /// wanted, for the yard has them again; unchanged where the count cannot be read.
    pub fn one_more(&mut self, kind: Kind) {
        if matches!(kind, Kind::Prices) && self.counted(kind) == Some(0) {
            self.count.clear();
            return;
        }
        let is_endless = self.is_endless(kind);
        let next = self.counted(kind).map(|now| if is_endless { 1 } else { now.saturating_add(1) });
        self.set_count(next);
    }

    /// One fewer of it, but never none.
    pub fn one_fewer(&mut self, kind: Kind) {
        let next = self.counted(kind).map(|now| now.saturating_sub(1)).filter(|next| *next > 0);
        self.set_count(next);
    }

    fn set_count(&mut self, next: Option<u32>) {
        if let Some(next) = next {
            self.count = next.to_string();
        }
    }

    fn of(text: &str, kind: Kind) -> ListRow {
        let (name, rest) = match text.split_once(':') {
            Some((name, rest)) if is_named(kind) => (name, after_space(rest)),
            _ => ("", text),
        };
        if matches!(kind, Kind::Spans) {
            let (size, to) = match (split_at_word(text, "to "), text.split_once("..")) {
                ((_, ""), Some((size, to))) => (size.trim_end(), to.trim_start()),
                (split, _) => split,
            };
            return ListRow { size: size.to_owned(), to: to.to_owned(), ..ListRow::default() };
        }
        // Of boards there may be only so many: the count stands last.
        if matches!(kind, Kind::Prices) {
            let (rest, count) = split_at_word(rest, "max ");
            let (size, price) = split_at_word(rest, "at ");
            return ListRow {
                count: count.to_owned(),
                size: size.to_owned(),
                price: price.to_owned(),
                ..ListRow::default()
            };
        }
        let (count, size) = count_and_size(rest, kind).unwrap_or(("", rest));
        ListRow {
            name: name.to_owned(),
            count: count.to_owned(),
            size: size.to_owned(),
            ..ListRow::default()
        }
    }

    fn text(&self, kind: Kind) -> String {
        let ListRow { name, count, size, to, price } = self;
        let part = |before: &str, text: &str, after: &str| match text {
            "" => String::new(),
            text => format!("{before}{text}{after}"),
        };
        if matches!(kind, Kind::Spans) {
            return format!("{size}{}", part(" to ", to, ""));
        }
        if matches!(kind, Kind::Prices) {
            return format!("{size}{}{}", part(" at ", price, ""), part(" max ", count, ""));
        }
        // A sign in what comes after is not the one of this part.
        let rest = match count.as_str() {
            "" if count_and_size(size, kind).is_some() => format!("@ {size}"),
            count => format!("{}{size}", part("", count, " @ ")),
        };
        match name.as_str() {
            "" if is_named(kind) && rest.contains(':') => format!(": {rest}"),
            name => format!("{}{rest}", part("", name, ": ")),
        }
    }
}

/// What stands before a word, with its space, and what after it. Before the word there may be nothing: a size that was cleared.
fn split_at_word<'t>(text: &'t str, word: &str) -> (&'t str, &'t str) {
    if let Some(after) = text.strip_prefix(word) {
        return ("", after);
    }
    let split = text.match_indices(word).find_map(|(at, _)| {
        let before = text.get(..at)?.strip_suffix(' ')?;
        Some((before, text.get(at.checked_add(word.len())?..)?))
    });
    split.unwrap_or((text, ""))
}

/// What stands before and after the sign of a count, where there is one.
fn count_and_size(text: &str, kind: Kind) -> Option<(&str, &str)> {
    let counts = text.contains('@') || (counts_before_x(kind) && !is_unclear(text, kind));
    let (count, size) = split_count(text).filter(|_| counts)?;
    Some((count.strip_suffix(' ').unwrap_or(count), after_space(size)))
}

/// Whether a count may stand before an `x`: between the sides of a part it stands too.
fn counts_before_x(kind: Kind) -> bool {
    matches!(kind, Kind::Lengths | Kind::OnHand | Kind::Pieces)
}

/// Whether what stands before an `x` is not yet known to be a count: it can be read two ways, or is half typed.
fn is_unclear(text: &str, kind: Kind) -> bool {
    let is_half = split_times(text).is_some_and(|(_, size)| size.trim().is_empty());
    counts_before_x(kind) && (is_half || two_ways(text, false).is_some())
}

fn after_space(text: &str) -> &str {
    text.strip_prefix(' ').unwrap_or(text)
}

/// Whether a field of this kind is shown as rows.
#[must_use]
pub fn is_list(kind: Kind) -> bool {
    is_counted(kind) || matches!(kind, Kind::Spans)
}

/// Whether its rows say how many there are; a zone to keep out of is there once.
#[must_use]
pub fn is_counted(kind: Kind) -> bool {
    matches!(kind, Kind::Lengths | Kind::OnHand | Kind::Pieces | Kind::Prices | Kind::Sizes)
}

/// Whether its rows may have a name.
#[must_use]
pub fn is_named(kind: Kind) -> bool {
    matches!(kind, Kind::Pieces | Kind::Sizes)
}

/// The places of the row `at` to write a length in: where a zone begins and where it ends, else one for the size.
#[must_use]
pub fn places(row: &ListRow, kind: Kind, at: usize) -> Vec<RowPlace> {
    let place = |line, title, text: &str| RowPlace { line, title, text: text.to_owned() };
    if matches!(kind, Kind::Spans) {
        let from = at.saturating_mul(2);
        return vec![place(from, "From", &row.size), place(from.saturating_add(1), "To", &row.to)];
    }
    vec![place(at, "Size", &row.size)]
}

/// Whether it can only be shown as its text: rows with tabs of which the columns have no names.
#[must_use]
pub fn is_only_text(text: &str, kind: Kind) -> bool {
    matches!(pasted::entries(text, kind), Some(None))
}

/// The rows of a list, of which there is always one to write in; rows pasted from a spreadsheet are rows here too, and
/// become a list like any other when one of them is changed.
#[must_use]
pub fn list_rows(text: &str, kind: Kind) -> Vec<ListRow> {
    if text.trim().is_empty() {
        return vec![ListRow::default()];
    }
    if let Some(Some(entries)) = pasted::entries(text, kind) {
        let rows: Vec<ListRow> = entries.iter().map(|entry| ListRow::of(entry, kind)).collect();
        return if rows.is_empty() { vec![ListRow::default()] } else { rows };
    }
    text.split([',', ';', '\n'])
        .map(|item| ListRow::of(after_space(item.trim_end_matches('\r')), kind))
        .collect()
}

/// The text of a list with these rows.
#[must_use]
pub fn list_text(rows: &[ListRow], kind: Kind) -> String {
    rows.iter().map(|row| row.text(kind)).collect::<Vec<_>>().join(", ")
}

/// The list with one of its rows changed.
#[must_use]
pub fn with_row(text: &str, kind: Kind, at: usize, change: impl FnOnce(&mut ListRow)) -> String {
    let mut rows = list_rows(text, kind);
    if let Some(row) = rows.get_mut(at) {
        let before = row.clone();
        change(row);
        // What separates rows and their parts is typed into none of them. What came in with the text of the list stays.
        if row.name != before.name {
            row.name = row.name.replace([',', ';', ':', '@', '\n'], " ");
        }
        let is_span = matches!(kind, Kind::Spans);
        let is_typed = row.size != before.size;
        for (now, before, is_place) in [
            (&mut row.size, before.size, is_span),
            (&mut row.to, before.to, is_span),
            (&mut row.price, before.price, false),
        ] {
            if *now != before {
                *now = now.replace(',', ".").replace([';', ':', '@', '\n'], " ");
                if is_place {
                    // Else what was typed would go on in the other place, away from the fingers.
                    *now = now.replace("..", ".").replace("to ", "to");
                }
            }
        }
        // A count may be typed before the size, as in `4 x 20`; but what is left when a count is cleared is the size.
        if is_typed
            && row.count.is_empty()
            && let Some((count, size)) = count_and_size(&row.size, kind)
        {
            (row.count, row.size) = (count.to_owned(), size.to_owned());
        }
    }
    list_text(&rows, kind)
}

/// The list with another text in one of the [`places`] of its rows.
#[must_use]
pub fn with_place(text: &str, kind: Kind, line: usize, typed: String) -> String {
    if !matches!(kind, Kind::Spans) {
        return with_row(text, kind, line, |row| row.size = typed);
    }
    with_row(text, kind, line / 2, |row| match line % 2 {
        0 => row.size = typed,
        _ => row.to = typed,
    })
}

/// The list without one of its rows.
#[must_use]
pub fn without_row(text: &str, kind: Kind, at: usize) -> String {
    let mut rows = list_rows(text, kind);
    if at < rows.len() {
        rows.remove(at);
    }
    list_text(&rows, kind)
}

/// The list with a new row at its end.
#[must_use]
pub fn with_new_row(text: &str, kind: Kind) -> String {
    let mut rows = list_rows(text, kind);
    rows.push(ListRow::default());
    list_text(&rows, kind)
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;
    use proptest::sample::select;

    use super::*;
    use crate::measure::length;
    use crate::measure::text::NoNames;
    use crate::sheet::{Ask, Bench, Entries, Field, Span, Start};

    const BENCH: &str = "leg: 4 @ 33 1/2, long rail: 4 @ 41, 20 1/2";
    const YARD: &str = "96 at 10.90, 120 at 13.95 max 3, 144";

    #[test]
    fn a_list_comes_back_from_its_rows_as_it_was() {
        for (text, kind) in [
            (BENCH, Kind::Pieces),
            (YARD, Kind::Prices),
            ("leg: 4 @ 28 1/2 × 3 1/2 × 3 1/2, 41 x 5 x 1", Kind::Sizes),
            ("leg: 4 @ 33 , : , odd", Kind::Pieces),
            ("2 @ 2 3/4 in, 1 3/4 in, 3 @ 40 mm", Kind::Lengths),
            ("batten 1, @ 7 @ 46 3/4", Kind::OnHand),
            ("leg: @ 7 @ 46 3/4", Kind::Sizes),
        ] {
            let again = list_text(&list_rows(text, kind), kind);
            assert_eq!(list_text(&list_rows(&again, kind), kind), again, "{text}");
            assert_eq!(list_rows(&again, kind), list_rows(text, kind), "{text}");
        }
        assert_eq!(list_text(&list_rows(BENCH, Kind::Pieces), Kind::Pieces), BENCH);
        assert_eq!(list_text(&list_rows(YARD, Kind::Prices), Kind::Prices), YARD);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2000))]

        /// Whatever the text of a list is, its rows say the same when they are written anew; spaces may be fewer.
        #[test]
        fn rows_come_back_from_any_text(
            words in vec(select(&["1", "7 1/2", " ", ",", ":", "@", "x", " × ", " max ", " at ", " to ", "..", "\n", "leg"][..]), 0..9)
        ) {
            let text = words.concat();
            for kind in
                [Kind::Lengths, Kind::OnHand, Kind::Pieces, Kind::Prices, Kind::Sizes, Kind::Spans]
            {
                let rows = list_rows(&text, kind);
                let again = list_rows(&list_text(&rows, kind), kind);
                let flat = |rows: &[ListRow]| format!("{rows:?}").replace(' ', "");
                prop_assert_eq!(flat(&again), flat(&rows), "{:?} {:?}", kind, text);
            }
        }
    }

    /// Whatever part of a row is cleared, the others stay what they are.
    #[test]
    fn a_row_of_which_parts_are_empty_comes_back_as_it_is() {
        let either = |text: &str| [String::new(), text.to_owned()];
        let mut judged = 0;
        for kind in [Kind::Pieces, Kind::Prices, Kind::Sizes] {
            let names = if is_named(kind) { either("leg") } else { either("") };
            let prices = if matches!(kind, Kind::Prices) { either("10.90") } else { either("") };
            for ((name, price), (count, size)) in names
                .iter()
                .flat_map(|name| prices.iter().map(move |price| (name, price)))
                .flat_map(|it| either("4").map(|count| (it, count)))
                .flat_map(|(it, count)| either("33 1/2").map(|size| (it, (count.clone(), size))))
            {
                let row = ListRow {
                    name: name.clone(),
                    count,
                    size,
                    price: price.clone(),
                    ..ListRow::default()
                };
                let rows = vec![row, ListRow { size: "20".to_owned(), ..ListRow::default() }];
                let text = list_text(&rows, kind);
                assert_eq!(list_rows(&text, kind), rows, "{text:?}");
                judged += 1;
            }
        }
        assert_eq!(judged, 48);
    }

    /// Whatever of a zone is cleared or half typed, the rest stays where it is.
    #[test]
    fn a_zone_is_a_row_of_two_places() {
        let kind = Kind::Spans;
        let read = |text: &str| -> Vec<(String, String)> {
            list_rows(text, kind).into_iter().map(|row| (row.size, row.to)).collect()
        };
        let pair = |from: &str, to: &str| (from.to_owned(), to.to_owned());
        let zones = "10 to 12 1/2, 30..33 1/2";
        assert_eq!(read(zones), [pair("10", "12 1/2"), pair("30", "33 1/2")]);
        let lines: Vec<usize> = list_rows(zones, kind)
            .iter()
            .enumerate()
            .flat_map(|(at, row)| places(row, kind, at))
            .map(|place| place.line)
            .collect();
        assert_eq!(lines, [0, 1, 2, 3]);
        for (from, to) in [("", ""), ("10", ""), ("", "12"), ("10 ", "12 "), ("10", "12 1/2")] {
            for rows in
                [vec![pair(from, to), pair("30", "33")], vec![pair("30", "33"), pair(from, to)]]
            {
                let mut text = with_new_row("", kind);
                for (at, (from, to)) in rows.iter().enumerate() {
                    text = with_place(&text, kind, at * 2, from.clone());
                    text = with_place(&text, kind, at * 2 + 1, to.clone());
                }
                assert_eq!(read(&text), rows, "{text:?}");
            }
        }
        assert_eq!(with_place(zones, kind, 3, "34".to_owned()), "10 to 12 1/2, 30 to 34");
        assert_eq!(without_row(zones, kind, 0), "30 to 33 1/2");
        // What is typed stays in its place, though it cannot be read there.
        assert_eq!(read(&with_place("", kind, 0, "10 to 12".to_owned())), [pair("10 to12", "")]);
        assert_eq!(read(&with_place("10 to 12", kind, 1, "1..".to_owned())), [pair("10", "1.")]);
    }

    #[test]
    fn a_row_counts_up_and_down_but_never_to_none() {
        let counted = |text: &str, kind: Kind, change: fn(&mut ListRow, Kind)| {
            with_row(text, kind, 0, |row| change(row, kind))
        };
        let more = ListRow::one_more;
        let fewer = ListRow::one_fewer;
        assert_eq!(counted("leg: 33", Kind::Pieces, more), "leg: 2 @ 33");
        assert_eq!(counted("leg: 4 @ 33", Kind::Pieces, more), "leg: 5 @ 33");
        assert_eq!(counted("leg: 4 @ 33", Kind::Pieces, fewer), "leg: 3 @ 33");
        assert_eq!(counted("leg: 1 @ 33", Kind::Pieces, fewer), "leg: 1 @ 33");
        assert_eq!(counted("leg: 33", Kind::Pieces, fewer), "leg: 33");
        assert_eq!(counted("leg: 4294967295 @ 33", Kind::Pieces, more), "leg: 4294967295 @ 33");
        assert_eq!(counted("leg: some @ 33", Kind::Pieces, more), "leg: some @ 33");
        assert_eq!(counted("5 1/2 in", Kind::Lengths, more), "2 @ 5 1/2 in");
        // A board that is sold without end becomes one; one of three, two.
        assert_eq!(counted("96 at 10.90", Kind::Prices, more), "96 at 10.90 max 1");
        assert_eq!(counted("96 at 10.90 max 3", Kind::Prices, fewer), "96 at 10.90 max 2");
        // What the yard has none of, it has again.
        assert_eq!(counted("96 at 10.90 max 0", Kind::Prices, more), "96 at 10.90");
    }

    #[test]
    fn a_row_is_changed_taken_out_and_added() {
        let rows = list_rows(BENCH, Kind::Pieces);
        assert_eq!(
            rows.iter().map(|row| row.counted(Kind::Pieces)).collect::<Vec<_>>(),
            [Some(4), Some(4), Some(1)]
        );
        let more = with_row(BENCH, Kind::Pieces, 0, |row| row.count = "5".to_owned());
        assert_eq!(more, "leg: 5 @ 33 1/2, long rail: 4 @ 41, 20 1/2");
        assert_eq!(without_row(BENCH, Kind::Pieces, 1), "leg: 4 @ 33 1/2, 20 1/2");
        let new = with_new_row("leg: 4 @ 33", Kind::Pieces);
        // Half typed, the space before a fraction stays.
        let typed = with_row(&new, Kind::Pieces, 1, |row| row.size = "12 ".to_owned());
        assert_eq!(list_rows(&typed, Kind::Pieces)[1].size, "12 ");
        let comma = with_row("33", Kind::Pieces, 0, |row| row.size = "1,5".to_owned());
        assert_eq!(comma, "1.5");
        let dear = with_row(YARD, Kind::Prices, 0, |row| row.price = "11.20".to_owned());
        assert_eq!(dear, "96 at 11.20, 120 at 13.95 max 3, 144");
    }

    /// By hand: `4 x 20` is four pieces of 20, and one more is five.
    #[test]
    fn a_count_before_an_x_is_the_count_of_its_row() {
        for kind in [Kind::Pieces, Kind::Lengths, Kind::OnHand] {
            let more = |text: &str| with_row(text, kind, 0, |row| row.one_more(kind));
            for text in ["4 x 20", "4 × 20", "4x20", "4 @ 20"] {
                let row = &list_rows(text, kind)[0];
                let seen = (row.counted(kind), row.size.as_str());
                assert_eq!(seen, (Some(4), "20"), "{kind:?} {text}");
                assert_eq!(more(text), "5 @ 20", "{kind:?} {text}");
            }
            // What can be read two ways, or is half typed, has no count and stays as it was typed.
            for text in ["33 x 4", "33 1/2 x 4", "33 x 1 1/2", "4 x ", "33 x"] {
                assert_eq!(list_rows(text, kind)[0].counted(kind), None, "{kind:?} {text}");
                assert_eq!(more(text), text, "{kind:?}");
            }
            // By hand: 12 + 2 × 4 is one length of 20.
            assert_eq!(more("12 + 2 x 4"), "2 @ 12 + 2 x 4", "{kind:?}");
        }
        assert_eq!(
            with_row("leg: 4 x 20", Kind::Pieces, 0, |row| row.one_more(Kind::Pieces)),
            "leg: 5 @ 20"
        );
        // Between the sides of a part it stands too.
        let part = with_row("34 x 3 x 1 1/2", Kind::Sizes, 0, |row| row.one_more(Kind::Sizes));
        assert_eq!(part, "2 @ 34 x 3 x 1 1/2");
        let named = "leg: 4 @ 34 x 3 x 1";
        assert_eq!(list_rows(named, Kind::Sizes)[0].name, "leg");
        let more = with_row(named, Kind::Sizes, 0, |row| row.one_more(Kind::Sizes));
        assert_eq!(more, "leg: 5 @ 34 x 3 x 1");
    }

    /// What is left when a count is cleared is the size, whatever is done to the list next.
    #[test]
    fn a_size_stays_a_size_when_its_count_is_cleared() {
        for kind in [Kind::Pieces, Kind::Lengths, Kind::OnHand, Kind::Sizes] {
            let cleared = with_row("3 @ 2 x 24, 33", kind, 0, |row| row.count.clear());
            let next =
                with_new_row(&with_row(&cleared, kind, 1, |row| row.size = "34".into()), kind);
            let rows = list_rows(&next, kind);
            let seen: Vec<_> =
                rows.iter().map(|it| (it.count.as_str(), it.size.as_str())).collect();
            assert_eq!(seen, [("", "2 x 24"), ("", "34"), ("", "")], "{kind:?} {next}");
            let known = if matches!(kind, Kind::Sizes) { Some(1) } else { None };
            assert_eq!(
                (rows[0].counted(kind), rows[1].counted(kind)),
                (known, Some(1)),
                "{kind:?}"
            );
        }
        // One that is typed before the size is the count, as it is in a text.
        for kind in [Kind::Pieces, Kind::Lengths, Kind::OnHand] {
            let typed =
                |text: &str, size: &str| with_row(text, kind, 0, |row| row.size = size.into());
            assert_eq!(typed("33", "4 x"), "4 x");
            // Half typed, it could be read two ways.
            assert_eq!(typed("4 x", "4 x 2"), "4 x 2");
            assert_eq!(typed("4 x 2", "4 x 20"), "4 @ 20");
        }
    }

    /// Our invented potting bench, pasted: the first row names the columns and is no row.
    #[test]
    fn rows_of_a_spreadsheet_are_rows_of_the_list() {
        let pasted = "Qty\tName\tLength\n4\tleg\t33,5\n2\tlong rail\t41";
        let rows = list_rows(pasted, Kind::Pieces);
        assert_eq!(list_text(&rows, Kind::Pieces), "leg: 4 @ 33.5, long rail: 2 @ 41");
        let more = with_row(pasted, Kind::Pieces, 1, |row| row.one_more(Kind::Pieces));
        assert_eq!(more, "leg: 4 @ 33.5, long rail: 3 @ 41");
        assert!(!is_only_text(pasted, Kind::Pieces) && !is_only_text("leg: 33", Kind::Pieces));
        assert!(is_only_text("4\tleg\t33", Kind::Pieces));
        let yard = "Price\tBoard\n10,90\t96\n13.95\t120";
        let none = with_row(yard, Kind::Prices, 0, |row| row.one_more(Kind::Prices));
        assert_eq!(none, "96 at 10.90 max 1, 120 at 13.95");
    }

    /// Zones too: by hand, 254 mm to 304,8 mm is 10 in to 12 in, whichever column comes first.
    #[test]
    fn rows_of_a_spreadsheet_are_zones() {
        const FIELDS: &[Field] =
            &[Field::new("knots", "Keep clear of", "", Kind::Spans, Start::Text(""))];
        let read = |text: &str| {
            let (entries, bench) = (Entries::from_pairs([("knots", text)]), Bench::default());
            let mut ask = Ask::new(FIELDS, &entries, &bench, &NoNames);
            let zones = ask.spans(&FIELDS[0]);
            zones.ok_or_else(|| ask.finish().1.remove(0).code)
        };
        let long = |text: &str| length(text).expect("a length");
        let zone = |from, to| Span { from: long(from), to: long(to) };
        let wanted = Ok(vec![zone("10", "12"), zone("30", "33 1/2")]);
        for text in [
            "10 to 12, 30 to 33 1/2",
            "10 to 12,30 to 33 1/2",
            "From\tTo\n10\t12\n30\t33 1/2",
            "What\tto (mm)\tfrom/mm\nknot\t304,8\t254\nbark\t33 1/2 in\t30 in",
        ] {
            assert_eq!(read(text), wanted, "{text:?}");
        }
        let rows = list_rows("To\tFrom\n12\t10\n33\t30", Kind::Spans);
        assert_eq!(list_text(&rows, Kind::Spans), "10 to 12, 30 to 33");
        assert_eq!(read("From\tLength\n10\t2"), Err("no-columns"));
        assert_eq!(read("10\t12"), Err("no-columns"));
    }
}
