//! A quick list: lengths and boards without a job book, as a form, and as a cutting job.
//!
//! Boards are cut to length only. Where no board has a price, the plan buys the least wood, then the fewest boards.

use super::wanted::{KEEP_FROM, Wanted, end_trim, units, up_to_100};
use crate::calculators::{Calculator, Stage};
use crate::cutting::scale::CommonUnit;
use crate::cutting::{
    Board, Ends, Job, LARGEST_PRICE_CENTS, Part, SawRules, Scrap, Section, Units, with_spares,
};
use crate::job::cut_labels::{Label, Labels, Money, SectionLabel};
use crate::measure::text::NoNames;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{
    Answer, Ask, Bench, BoardPrice, Caution, CutPiece, Entries, Field, Kind, ListRow, Sentence,
    Start, list_rows, list_text,
};

/// The form of a quick list.
pub static QUICK_LIST: Calculator = Calculator {
    slug: "cut",
    title: "Cut plan",
    question: "Which boards do I buy, and which piece comes from which?",
    stage: Stage::Wood,
    fields: FIELDS,
    results: &[],
    work,
};

/// Our invented potting bench: what is cut to length from one width.
const FIELDS: &[Field] = &[
    Field::new(
        "parts",
        "Pieces",
        "how many @ how long, a name before a colon if you like",
        Kind::Pieces,
        Start::Text(
            "leg: 4 @ 33 1/2, long rail: 4 @ 41, short rail: 4 @ 15 1/2, slat rail: 3 @ 20 1/2",
        ),
    ),
    Field::new(
        "boards",
        "Boards to buy",
        "length at price, and max if there are only so many",
        Kind::Prices,
        Start::Text("96 at 10.90, 120 at 13.95, 144 at 16.40"),
    ),
    Field::new(
        "scraps",
        "On my rack",
        "lengths that cost nothing",
        Kind::Lengths,
        Start::Text("52"),
    ),
    Field::new("kerf", "Kerf", "width of the cut", Kind::ZERO_UP, Start::Kerf),
    end_trim("of a board that is bought, the cut included"),
    up_to_100("spare_each", "Spare pieces", "of each length"),
    up_to_100("extra_percent", "Extra", "per cent of each length"),
    KEEP_FROM,
];

fn work(ask: &mut Ask) -> Option<Answer> {
    quick_list(ask);
    None
}

/// The one kind of stock of a list.
const SECTION: &str = "board";

/// What the list asks for.
struct List {
    parts: Vec<CutPiece>,
    boards: Vec<BoardPrice>,
    scraps: Vec<Length>,
    kerf: Length,
    end_trim: Length,
}

/// Reads the form [`QUICK_LIST`]. `None` when a refusal was kept in the [`Ask`].
pub fn quick_list(ask: &mut Ask) -> Option<Wanted> {
    let (parts, boards, scraps) = (
        ask.pieces(ask.field("parts")),
        ask.prices(ask.field("boards")),
        ask.lengths(ask.field("scraps")),
    );
    let (kerf, end_trim, keep_from) = (
        ask.length(ask.field("kerf")),
        ask.length(ask.field("end_trim")),
        ask.length(ask.field("keep_from")),
    );
    let (spare_each, extra_percent) =
        (ask.count(ask.field("spare_each")), ask.count(ask.field("extra_percent")));
    keep_from?;
    let list =
        List { parts: parts?, boards: boards?, scraps: scraps?, kerf: kerf?, end_trim: end_trim? };
    if let Some((field, code, sentence)) = list.trouble() {
        ask.refuse_field(ask.field(field), code, sentence);
        return None;
    }
    let (spare_each, extra_percent) = (spare_each?, extra_percent?);
    match list.wanted() {
        Some(wanted) => {
            Some(Wanted { job: with_spares(&wanted.job, spare_each, extra_percent), ..wanted })
        }
        None => {
            ask.refuse_field(ask.field("parts"), "too-fine", list.too_fine());
            None
        }
    }
}

impl List {
    /// What is wrong with the list as a whole: field, code and sentence.
    fn trouble(&self) -> Option<(&'static str, &'static str, Sentence)> {
        let is_there = |board: &BoardPrice| board.limit != Some(0);
        if !self.boards.iter().any(is_there) && self.scraps.is_empty() {
            let words =
                say!["There is no board to cut from. Write at least one, as in 96 at 10.90."];
            return Some(("boards", "empty", words));
        }
        let priced = self.boards.iter().filter(|board| board.cents.is_some()).count();
        if priced > 0 && priced < self.boards.len() {
            let without = self.boards.iter().find(|board| board.cents.is_none())?;
            let words =
                say![without.length, " has no price. Give every board a price, or none of them."];
            return Some(("boards", "no-price", words));
        }
        let mut longest = self.scraps.iter().copied().max();
        for board in self.boards.iter().filter(|board| is_there(board)) {
            let clear = (self.end_trim * 2).and_then(|trims| board.length - trims).ok();
            match clear.filter(|clear| clear.is_positive()) {
                Some(clear) => longest = longest.max(Some(clear)),
                None => {
                    let words = say![
                        "The end trims leave nothing of a board of ",
                        board.length,
                        ". Trim less."
                    ];
                    return Some(("end_trim", "nothing-left", words));
                }
            }
        }
        let long = self.parts.iter().find(|part| Some(part.length) > longest)?;
        let longest = longest?;
        let words = say![
            long.name.clone(),
            " is ",
            long.length,
            " long. The longest board gives ",
            longest,
            ". Add a longer board."
        ];
        Some(("parts", "too-long", words))
    }

    fn lengths(&self) -> Vec<Length> {
        let parts = self.parts.iter().map(|part| part.length);
        let boards = self.boards.iter().map(|board| board.length);
        let all = parts.chain(boards).chain(self.scraps.iter().copied());
        all.chain([self.kerf, self.end_trim]).collect()
    }

    /// The length that does not go together with the others is the finest of them.
    fn too_fine(&self) -> Sentence {
        let all = self.lengths();
        let finest = all.iter().max_by_key(|length| length.in_inches().denom());
        say![
            finest.copied().unwrap_or(Length::ZERO),
            " is a fraction that does not go together with the other lengths. Write it to a mark of the tape."
        ]
    }

    /// The cutting job; `None` when the lengths have no unit in common that is coarse enough.
    fn wanted(&self) -> Option<Wanted> {
        let fractions: Vec<(i128, i128)> = self
            .lengths()
            .iter()
            .map(|length| (length.in_inches().numer(), length.in_inches().denom()))
            .collect();
        let unit = CommonUnit::of(&fractions).ok()?;
        self.in_units(unit).ok()
    }

    fn in_units(&self, unit: CommonUnit) -> Result<Wanted, OutOfRange> {
        let to = |length: Length| units(unit, length);
        let mut labels = Labels {
            unit,
            sections: vec![SectionLabel { name: SECTION.into(), size: None }],
            parts: Vec::new(),
            boards: Vec::new(),
            scraps: Vec::new(),
            money: Money::Cents,
        };
        let named = |name: String| Label { item: None, name };
        let mut job = Job {
            sections: vec![Section { id: SECTION.into(), wood: SECTION.into(), size: None }],
            parts: Vec::new(),
            boards: Vec::new(),
            scraps: Vec::new(),
            saw: SawRules { kerf: to(self.kerf)?, rip: None },
        };
        for (number, part) in (1_u32..).zip(&self.parts) {
            job.parts.push(Part {
                id: format!("part {number}"),
                name: part.name.clone(),
                section: SECTION.into(),
                length: to(part.length)?,
                quantity: part.count,
                priority: number,
                may_rip: false,
                may_resaw: false,
                grain_free: false,
            });
            labels.parts.push(named(part.name.clone()));
        }
        let trim = to(self.end_trim)?;
        for (number, board) in (1_u32..).zip(&self.boards) {
            job.boards.push(Board {
                id: format!("yard {number}"),
                section: SECTION.into(),
                length: to(board.length)?,
                price_cents: board.cents.unwrap_or(0),
                limit: board.limit,
                trims: Ends { left: trim, right: trim },
                knots: Vec::new(),
            });
            labels.boards.push(named("board".to_owned()));
        }
        for scrap in &self.scraps {
            let length = to(*scrap)?;
            if let Some(alike) = job.scraps.iter_mut().find(|known| known.length == length) {
                alike.quantity += 1;
                continue;
            }
            job.scraps.push(Scrap {
                id: format!("rack {}", job.scraps.len() + 1),
                section: SECTION.into(),
                length,
                quantity: 1,
                trims: Ends::default(),
                knots: Vec::new(),
            });
            labels.scraps.push(named("on my rack".to_owned()));
        }
        if job.boards.iter().all(|board| board.price_cents == 0) && !job.boards.is_empty() {
            labels.money = Money::Wood { each: price_by_length(&mut job.boards, &labels)? };
        }
        Ok(Wanted {
            pieces: self.parts.iter().map(|part| part.count).collect(),
            job,
            labels,
            left_out: Vec::new(),
            notes: Vec::new(),
            cautions: vec![Caution::DustAndNoise],
        })
    }
}

/// The text of the boards to buy where the yard has none of the length of one of them, by its place in the list. `None`
/// when the list cannot be read, or has no such board.
#[must_use]
pub fn none_of(entries: &Entries, bench: &Bench, board: usize) -> Option<String> {
    let mut ask = Ask::new(FIELDS, entries, bench, &NoNames);
    let field = ask.field("boards");
    let mut boards = ask.prices(field)?;
    let length = boards.get(board)?.length;
    let is_gone: Vec<bool> = boards.iter().map(|board| board.length == length).collect();
    let text = ask.text(field);
    if text.contains('\t') {
        // Rows of a spreadsheet may have no column for it.
        for (board, _) in boards.iter_mut().zip(&is_gone).filter(|(_, is_gone)| **is_gone) {
            board.limit = Some(0);
        }
        return Some(boards.iter().map(BoardPrice::text).collect::<Vec<_>>().join(", "));
    }
    let mut rows = list_rows(&text, field.kind);
    let is_written = |row: &ListRow| {
        [&row.size, &row.price, &row.count].iter().any(|text| !text.trim().is_empty())
    };
    let written = rows.iter_mut().filter(|row| is_written(row));
    for (row, _) in written.zip(&is_gone).filter(|(_, is_gone)| **is_gone) {
        row.count = "0".to_owned();
    }
    Some(list_text(&rows, field.kind))
}

/// Lets the length of each board stand for its price, and says how much wood one cent is.
fn price_by_length(boards: &mut [Board], labels: &Labels) -> Result<Length, OutOfRange> {
    let step = boards.iter().fold(0, |step, board| common(step, board.length)).max(1);
    for board in boards {
        board.price_cents = board.length / step;
        if board.price_cents > LARGEST_PRICE_CENTS {
            return Err(OutOfRange);
        }
    }
    labels.length(step)
}

fn common(a: Units, b: Units) -> Units {
    if b == 0 { a } else { common(b, a % b) }
}

#[cfg(test)]
mod tests {
    use super::*;
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
        let scraps: Vec<_> =
            job.scraps.iter().map(|s| (labels.length(s.length), s.quantity)).collect();
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
        assert_eq!(start.as_deref(), Some("96 at 10.90 max 0, 120 at 13.95, 144 at 16.40"));
        let pasted = none("Price\tLength\n10.90\t96\n13.95\t120", 1);
        assert_eq!(pasted.as_deref(), Some("96 in at 10.90, 120 in at 13.95 max 0"));
        // What there is none of gives no length and is no board to cut from.
        let wanted = read(&[("boards", "96 at 10.90, 144 at 16.40 max 0")]).expect("wanted");
        assert_eq!(wanted.job.boards[1].limit, Some(0));
        let boards = ("boards", "96 at 10.90, 144 at 16.40 max 0");
        let long = read(&[("parts", "beam: 100"), boards]).expect_err("too long");
        assert!(long.2.contains("longest board gives 95 in"), "{long:?}");
        let none = read(&[("boards", "96 at 10.90 max 0"), ("scraps", "")]).expect_err("none");
        assert_eq!((none.0, none.1), ("boards", "empty"));
    }

    #[test]
    fn what_is_wrong_stands_beside_its_field() {
        let many = "1/7, ".repeat(201);
        type Case<'a> = (&'a [(&'a str, &'a str)], &'a str, &'a str, &'a str);
        let cases: [Case<'_>; 14] = [
            (&[("parts", "")], "parts", "empty", "at least one piece"),
            (&[("parts", &many)], "parts", "too-many", "200"),
            (&[("parts", "0 @ 12")], "parts", "not-a-count", "from 1 to 1000"),
            (&[("parts", "3 @ -12")], "parts", "too-small", "more than zero"),
            (&[("parts", "3 @ a lot")], "parts", "cannot-read", ""),
            (
                &[("parts", "beam: 145")],
                "parts",
                "too-long",
                "beam is 145 in long. The longest board gives 143 in",
            ),
            (&[("parts", "1/999999937")], "parts", "too-fine", "does not go together"),
            (&[("boards", "96 at 0")], "boards", "not-a-price", "more than zero"),
            (&[("boards", "96 at -3")], "boards", "not-a-price", "more than zero"),
            (&[("boards", "96 at 1.005")], "boards", "not-a-price", "hundredths"),
            (&[("boards", "96 at 3, 120")], "boards", "no-price", "120 in has no price"),
            (&[("boards", ""), ("scraps", "")], "boards", "empty", "no board"),
            (&[("boards", "96 at 3 max -1")], "boards", "not-a-count", "from 0 to 1000"),
            (&[("end_trim", "48")], "end_trim", "nothing-left", "96 in"),
        ];
        for (texts, field, code, words) in cases {
            let found = read(texts).expect_err(words);
            assert_eq!((found.0, found.1), (field, code), "{found:?}");
            assert!(found.2.contains(words), "{found:?}");
        }
    }
}
