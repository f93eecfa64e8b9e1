//! Each kind of item as a form of texts, and back.
//!
//! The forms are asked like a calculator's, so the keypad, the echoes and the problems are the
//! same everywhere in the app.

mod asked;
pub(crate) mod ids;
mod read;

pub(crate) use asked::A_LENGTH;
use asked::A_NUMBER;
use asked::{
    CLOSE_ENOUGH, MEASURE, MEASURE_AT_HAND, PART, RACK_BOARD, ROUND, SAW, SCREW, SKETCH, YARD_BOARD,
};
pub use asked::{MATCH, PIECE, SPOILED};
use ids::*;
pub use read::{read, read_match};
use reckoner_core::calculators::Calculator;
use reckoner_core::job::{
    CloseEnough, Dimension, Dimensions, Grain, Hand, Item, ItemId, Match, Measure, MeasureKind,
    Part, RackBoard, Round, Saw, Screw, Sketch, Written, YardBoard,
};
use reckoner_core::measure::Length;
use reckoner_core::sheet::{Ask, Entries, Side};

/// Which form an item has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// A measure.
    Measure,
    /// A part.
    Part,
    /// A board or scrap on hand.
    RackBoard,
    /// A length the yard sells.
    YardBoard,
    /// A round thing.
    Round,
    /// A saw.
    Saw,
    /// A screw size.
    Screw,
    /// The sketch.
    Sketch,
    /// What is close enough.
    CloseEnough,
}

impl Form {
    /// Every form that the user can add one of, with its name in an address.
    pub const ALL: [(Form, &'static str); 9] = [
        (Form::Measure, "measure"),
        (Form::Part, "part"),
        (Form::RackBoard, "board"),
        (Form::YardBoard, "yard"),
        (Form::Round, "round"),
        (Form::Saw, "saw"),
        (Form::Screw, "screw"),
        (Form::Sketch, "sketch"),
        (Form::CloseEnough, "close"),
    ];

    /// The form with this name in an address.
    #[must_use]
    pub fn named(name: &str) -> Option<Form> {
        Form::ALL.into_iter().find(|(_, known)| *known == name).map(|(form, _)| form)
    }

    /// The form of an item; kept reckonings and groups have pages of their own.
    #[must_use]
    pub fn of(item: &Item) -> Option<Form> {
        Some(match item {
            Item::Measure(_) => Form::Measure,
            Item::Part(_) => Form::Part,
            Item::RackBoard(_) => Form::RackBoard,
            Item::YardBoard(_) => Form::YardBoard,
            Item::Round(_) => Form::Round,
            Item::Saw(_) => Form::Saw,
            Item::Screw(_) => Form::Screw,
            Item::Sketch(_) => Form::Sketch,
            Item::CloseEnough(_) => Form::CloseEnough,
            Item::Kept(_)
            | Item::Match(_)
            | Item::CutPlan(_)
            | Item::CutTicks(_)
            | Item::Ticked(_) => return None,
        })
    }

    /// What the form asks.
    #[must_use]
    pub fn asks(self) -> &'static Calculator {
        match self {
            Form::Measure => &MEASURE,
            Form::Part => &PART,
            Form::RackBoard => &RACK_BOARD,
            Form::YardBoard => &YARD_BOARD,
            Form::Round => &ROUND,
            Form::Saw => &SAW,
            Form::Screw => &SCREW,
            Form::Sketch => &SKETCH,
            Form::CloseEnough => &CLOSE_ENOUGH,
        }
    }

    /// The same of an item that is there: as it is asked at the bench.
    #[must_use]
    pub fn asks_at_hand(self) -> &'static Calculator {
        if self == Form::Measure { &MEASURE_AT_HAND } else { self.asks() }
    }
}

fn yes_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// The texts of an item's form.
#[must_use]
pub fn entries_of(item: &Item) -> Entries {
    let texts: Vec<(&str, String)> = match item.clone() {
        Item::Measure(m) => {
            let formula = match m.written {
                Written::Formula(text) => text,
                Written::Linked(_) => String::new(),
            };
            let is_number = m.kind == MeasureKind::Number;
            vec![
                (NAME, m.name),
                (KIND, if is_number { A_NUMBER } else { A_LENGTH }.id.to_owned()),
                (if is_number { NUMBER } else { FORMULA }, formula),
                (AS_CUT, m.as_cut.unwrap_or_default()),
                (IS_CUT, yes_no(m.is_cut).to_owned()),
                (WAIT, yes_no(m.wait).to_owned()),
                (NOTE, m.note),
            ]
        }
        Item::Part(p) => vec![
            (NAME, p.name),
            (QUANTITY, p.quantity),
            (THICKNESS, p.thickness),
            (WIDTH, p.width),
            (LENGTH, p.length),
            (STOCK, p.stock),
            (GRAIN_FREE, yes_no(p.grain == Grain::Free).to_owned()),
            (PAIRS, yes_no(p.hand == Hand::Pairs).to_owned()),
            (MAY_RIP, yes_no(p.may_rip).to_owned()),
            (MAY_RESAW, yes_no(p.may_resaw).to_owned()),
            (SHOW_FACE, p.show_face),
            (NOTE, p.note),
        ],
        Item::CloseEnough(it) => vec![(SIZE, it.size)],
        Item::RackBoard(b) => vec![
            (NAME, b.name),
            (SECTION, b.section),
            (QUANTITY, b.quantity.to_string()),
            (THICKNESS, b.thickness),
            (WIDTH, b.width),
            (LENGTH, b.length),
            (WET, yes_no(b.wet).to_owned()),
            (SAWN_ENDS, yes_no(b.sawn_ends).to_owned()),
            (KNOTS, b.knots),
        ],
        Item::YardBoard(b) => vec![
            (SECTION, b.section),
            (THICKNESS, b.thickness),
            (WIDTH, b.width),
            (LENGTH, b.length),
            (PRICE, price_text(b.price)),
        ],
        Item::Round(r) => vec![(NAME, r.name), (DIAMETER, r.diameter)],
        Item::Saw(s) => vec![
            (NAME, s.name),
            (KERF, s.kerf),
            (REACH, s.reach),
            (FENCE, if s.fence == Side::Left { "left" } else { "right" }.to_owned()),
        ],
        Item::Screw(s) => {
            vec![
                (GAUGE, s.gauge.to_string()),
                (LENGTH, s.length),
                (QUANTITY, s.quantity.to_string()),
            ]
        }
        Item::Sketch(s) => vec![
            (LENGTH, s.length),
            (DEPTH, s.depth),
            (HEIGHT, s.height),
            (LEG, s.leg),
            (RAIL, s.rail),
            (SHELF, s.shelf),
            (TOP, s.top),
            (OVERHANG, s.overhang),
        ],
        Item::Kept(_) | Item::Match(_) | Item::CutPlan(_) | Item::CutTicks(_) | Item::Ticked(_) => {
            Vec::new()
        }
    };
    Entries::from_pairs(texts)
}

/// Hundredths of the user's money as it is written.
fn price_text(price: u64) -> String {
    let digits = format!("{price:03}");
    let (whole, part) = digits.split_at(digits.len().saturating_sub(2));
    format!("{whole}.{part}")
}

/// The item that a form comes to. `old` is what it was, or stands for what a fresh one starts
/// from; `rank` is the place of a fresh one in its list.
///
/// Texts go in as they are typed; what they come to is worked out from the job each time.
#[must_use]
pub fn item_of(form: Form, ask: &mut Ask, old: Option<&Item>, rank: i64) -> Item {
    let text = |ask: &Ask, id: &str| ask.text(ask.field(id)).trim().to_owned();
    match form {
        Form::Measure => {
            let before = match old {
                Some(Item::Measure(before)) => Some(before.clone()),
                _ => None,
            };
            let is_number = ask.choice(ask.field(KIND)).id == A_NUMBER.id;
            let formula = text(ask, if is_number { NUMBER } else { FORMULA });
            // A linked result stays until a formula is written over it.
            let written = match before.as_ref().map(|before| &before.written) {
                Some(Written::Linked(linked)) if formula.is_empty() => {
                    Written::Linked(linked.clone())
                }
                _ => Written::Formula(formula),
            };
            // A size that is written anew is the person's own.
            let is_ours =
                before.as_ref().is_some_and(|before| before.is_ours && before.written == written);
            Item::Measure(Measure {
                is_ours,
                usual: before.as_ref().map_or_else(String::new, |before| before.usual.clone()),
                rank: before.as_ref().map_or(rank, |before| before.rank),
                name: text(ask, NAME),
                kind: if is_number { MeasureKind::Number } else { MeasureKind::Length },
                written,
                as_cut: Some(text(ask, AS_CUT)).filter(|text| !text.is_empty()),
                is_cut: ask.yes(ask.field(IS_CUT)),
                wait: ask.yes(ask.field(WAIT)),
                note: text(ask, NOTE),
                left: before.as_ref().and_then(|before| before.left),
            })
        }
        Form::Part => {
            let before = match old {
                Some(Item::Part(before)) => Some(before.clone()),
                _ => None,
            };
            Item::Part(Part {
                rank: before.as_ref().map_or(rank, |before| before.rank),
                name: text(ask, NAME),
                quantity: text(ask, QUANTITY),
                thickness: text(ask, THICKNESS),
                width: text(ask, WIDTH),
                length: text(ask, LENGTH),
                stock: text(ask, STOCK),
                grain: if ask.yes(ask.field(GRAIN_FREE)) { Grain::Free } else { Grain::Locked },
                show_face: text(ask, SHOW_FACE),
                hand: if ask.yes(ask.field(PAIRS)) { Hand::Pairs } else { Hand::Alike },
                may_rip: ask.yes(ask.field(MAY_RIP)),
                may_resaw: ask.yes(ask.field(MAY_RESAW)),
                note: text(ask, NOTE),
                made: before.as_ref().and_then(|before| before.made.clone()),
                pieces: before.map_or_else(Vec::new, |before| before.pieces),
            })
        }
        Form::RackBoard => Item::RackBoard(RackBoard {
            name: text(ask, NAME),
            section: text(ask, SECTION),
            thickness: text(ask, THICKNESS),
            width: text(ask, WIDTH),
            length: text(ask, LENGTH),
            quantity: ask.count(ask.field(QUANTITY)).unwrap_or(1),
            wet: ask.yes(ask.field(WET)),
            sawn_ends: ask.yes(ask.field(SAWN_ENDS)),
            knots: text(ask, KNOTS),
        }),
        Form::YardBoard => {
            let before = match old {
                Some(Item::YardBoard(before)) => Some(before),
                _ => None,
            };
            let board = YardBoard {
                section: text(ask, SECTION),
                thickness: text(ask, THICKNESS),
                width: text(ask, WIDTH),
                length: text(ask, LENGTH),
                price: ask.optional_cents(ask.field(PRICE)).flatten().unwrap_or(0),
                quantity: before.and_then(|before| before.quantity),
                is_ours: before.is_some_and(|before| before.is_ours),
            };
            // What is changed of it is the person's own, and with it the rest, which was in sight.
            let is_ours = before == Some(&board) && board.is_ours;
            Item::YardBoard(YardBoard { is_ours, ..board })
        }
        Form::Round => Item::Round(Round { name: text(ask, NAME), diameter: text(ask, DIAMETER) }),
        Form::Saw => Item::Saw(Saw {
            name: text(ask, NAME),
            kerf: text(ask, KERF),
            reach: text(ask, REACH),
            fence: if ask.choice(ask.field(FENCE)).id == "left" { Side::Left } else { Side::Right },
        }),
        Form::Screw => Item::Screw(Screw {
            gauge: ask.count(ask.field(GAUGE)).unwrap_or(8),
            length: text(ask, LENGTH),
            quantity: ask.count(ask.field(QUANTITY)).unwrap_or(1),
        }),
        Form::CloseEnough => Item::CloseEnough(CloseEnough { size: text(ask, SIZE) }),
        Form::Sketch => Item::Sketch(Sketch {
            length: text(ask, LENGTH),
            depth: text(ask, DEPTH),
            height: text(ask, HEIGHT),
            leg: text(ask, LEG),
            rail: text(ask, RAIL),
            shelf: text(ask, SHELF),
            top: text(ask, TOP),
            overhang: text(ask, OVERHANG),
        }),
    }
}

/// The field of each size of a piece on the tape.
fn tape_field(of: Dimension) -> &'static str {
    match of {
        Dimension::Length => AS_CUT,
        of => of.word(),
    }
}

/// The texts of one piece of a part, counted from 0.
#[must_use]
pub fn entries_of_piece(part: &Part, index: usize) -> Entries {
    let piece = part.piece(index);
    let mut entries = Entries::from_pairs([(DONE, yes_no(piece.is_cut()).to_owned())]);
    for of in Dimension::ALL {
        entries.set(tape_field(of), piece.tape(of).unwrap_or_default());
    }
    entries
}

/// What a choice in a form changes beside it.
#[must_use]
pub fn along(asks: &'static Calculator) -> fn(&Entries, Entries) -> Entries {
    if core::ptr::eq(asks, &PIECE) { saying } else { |_, after| after }
}

/// That it was chosen by hand whether a piece is cut stands beside the choice.
fn saying(before: &Entries, mut after: Entries) -> Entries {
    let done = after.text(DONE).map(str::to_owned);
    if let Some(done) = done.filter(|done| before.text(DONE) != Some(done.as_str())) {
        after.set(SAID, done);
    }
    after
}

/// Whether a field of a piece's form says what the tape does.
#[must_use]
pub fn is_of_tape(field: &str) -> bool {
    Dimension::ALL.into_iter().any(|of| tape_field(of) == field)
}

/// The part that the form of a piece comes to. Who measured a piece has cut it, unless it is `said` in
/// the same breath whether it is; a piece that is ticked is cut at the sizes `wanted` now.
#[must_use]
pub fn part_of_piece(
    entries: &Entries,
    part: &Part,
    index: usize,
    wanted: Dimensions<Option<Length>>,
) -> Part {
    let tape = Dimensions::of(|of| {
        let text = entries.text(tape_field(of)).unwrap_or_default().trim().to_owned();
        Some(text).filter(|text| !text.is_empty())
    });
    let old = part.piece(index);
    let is_new = |of| tape.get(of).is_some() && old.tape(of).is_none();
    let is_measured = Dimension::ALL.into_iter().any(is_new);
    let is_said = entries.text(SAID).is_some();
    let is_done = entries.text(DONE) == Some(yes_no(true));
    let piece = if is_done || (is_measured && !old.is_cut() && !is_said) {
        old.ticked(wanted)
    } else if old.is_cut() {
        old.put_back()
    } else {
        old
    };
    let all = Dimension::ALL.into_iter();
    let piece = all.fold(piece, |piece, of| piece.measured(of, tape.get(of).clone()));
    part.clone().with_piece(index, piece)
}

/// The texts of a group that must match.
#[must_use]
pub fn entries_of_match(group: &Match) -> Entries {
    Entries::from_pairs([(NAME, group.name.clone()), (DRIFT, group.drift.clone())])
}

/// The group that the form comes to, with these members.
#[must_use]
pub fn match_of(ask: &Ask, measures: Vec<ItemId>, left: Option<Length>) -> Match {
    let text = |id: &str| ask.text(ask.field(id)).trim().to_owned();
    Match { name: text(NAME), measures, drift: text(DRIFT), left }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::form::{Action, Form as Texts};
    use reckoner_core::job::demo::demo;
    use reckoner_core::job::{Piece, Reckoned};
    use reckoner_core::measure::length;
    use reckoner_core::measure::text::NoNames;
    use reckoner_core::sheet::{Bench, Sheet};

    /// Every item of the demo goes through its form and comes back as it was.
    #[test]
    fn items_go_through_their_forms_unchanged() {
        let job = demo();
        let bench = Bench::default();
        let mut seen = 0;
        for (_, item) in job.items() {
            let Some(form) = Form::of(item) else { continue };
            let entries = entries_of(item);
            let mut ask = Ask::new(form.asks().fields, &entries, &bench, &NoNames);
            assert_eq!(item_of(form, &mut ask, Some(item), 0), *item);
            seen += 1;
        }
        assert!(seen > 40, "{seen}");
    }

    /// UAX 9: U+202E turns what follows it. UTS 51: U+2764 U+FE0F is a heart in red.
    #[test]
    fn every_name_of_a_form_is_refused_that_is_not_seen_whole() {
        let (job, bench) = (demo(), Bench::default());
        let reckoned = Reckoned::of(&job, &bench);
        let mut asked = 0;
        let mut told = |sheet: &dyn Fn(&Entries) -> Sheet, asks: &'static Calculator| {
            for field in ["name", "stock", "section", "show_face"] {
                if !asks.fields.iter().any(|it| it.id == field) {
                    continue;
                }
                asked += 1;
                let refusals = |name: &str| {
                    let mut all = sheet(&Entries::from_pairs([(field, name)])).refusals;
                    all.retain(|it| it.field == field);
                    all
                };
                assert_eq!(refusals("cedar \u{2764}\u{fe0f}"), []);
                for hidden in ["ce\u{202e}dar", "ced\u{fe0f}ar", " cedar\u{2800}", "\u{200b}cedar"]
                {
                    let all = refusals(hidden);
                    assert_eq!(
                        all.iter().map(|it| it.code).collect::<Vec<_>>(),
                        ["invisible"],
                        "{hidden:?}"
                    );
                    let way_out = all[0].way_out.as_ref().expect("a tap");
                    assert_eq!(way_out.texts(bench.tape), [(field, "cedar".to_owned())]);
                }
                assert_eq!(refusals("\u{2060}")[0].code, "invisible");
            }
        };
        for (form, _) in Form::ALL {
            told(&|entries| read(&job, &reckoned, &bench, form, None, entries), form.asks());
        }
        told(&|entries| read_match(&reckoned, &bench, entries), &MATCH);
        // A size, a part with three, a board on the rack with two, one at the yard, a round thing, a saw, a group.
        assert_eq!(asked, 10);
    }

    #[test]
    fn a_linked_size_stays_linked_until_a_formula_is_written() {
        use reckoner_core::job::{ItemId, Linked};
        let linked =
            Written::Linked(Linked { kept: ItemId(4), result: "read".to_owned(), index: 0 });
        let old = Item::Measure(Measure {
            rank: 2,
            ..Measure::new("half", MeasureKind::Length, linked.clone())
        });
        let bench = Bench::default();
        let mut entries = entries_of(&old);
        for (formula, expected) in [("", linked), ("22", Written::Formula("22".to_owned()))] {
            entries.set("formula", formula);
            let mut ask = Ask::new(MEASURE.fields, &entries, &bench, &NoNames);
            let Item::Measure(measure) = item_of(Form::Measure, &mut ask, Some(&old), 9) else {
                panic!()
            };
            assert_eq!((measure.written, measure.rank), (expected, 2));
        }
    }

    #[test]
    fn a_piece_that_is_measured_is_cut_and_may_be_put_back() {
        let job = demo();
        let (_, part) = job.parts()[0];
        let mut entries = entries_of_piece(part, 41);
        entries.set("as_cut", " 33 ");
        let wanted = Dimensions { length: length("33 1/2").ok(), ..Dimensions::default() };
        let cut = part_of_piece(&entries, part, 41, wanted);
        assert_eq!(cut.pieces.len(), 42);
        let piece = Piece::cut(wanted).measured(Dimension::Length, Some("33".to_owned()));
        assert_eq!((&cut.pieces[41], &cut.pieces[0]), (&piece, &Piece::default()));
        let mut entries = entries_of_piece(&cut, 41);
        entries.set("done", "no");
        assert!(!part_of_piece(&entries, &cut, 41, wanted).pieces[41].is_cut());
        // What was cut and is not, with a measure at once.
        let done = part.clone().with_piece(41, Piece::default().ticked(wanted));
        assert!(!part_of_piece(&entries, &done, 41, wanted).pieces[41].is_cut());
        // What was never cut, and is said not to be while it is measured: yes, and no again.
        let mut entries = entries_of_piece(part, 41);
        entries.set("width", "3");
        assert!(part_of_piece(&entries, part, 41, wanted).pieces[41].is_cut());
        let form = Texts::new(&PIECE, entries, None).bringing_along(along(&PIECE));
        let choose = |done: &str| Action::Set(vec![("done", done.to_owned())]);
        let form = form.after(choose("yes")).after(choose("no"));
        assert!(!part_of_piece(form.entries(), part, 41, wanted).pieces[41].is_cut());
    }

    #[test]
    fn a_group_goes_through_its_form_unchanged() {
        let job = demo();
        let bench = Bench::default();
        let groups = job.items().filter_map(|(_, item)| match item {
            Item::Match(group) => Some(group),
            _ => None,
        });
        let mut seen = 0;
        for group in groups {
            let entries = entries_of_match(group);
            let ask = Ask::new(MATCH.fields, &entries, &bench, &NoNames);
            assert_eq!(match_of(&ask, group.measures.clone(), group.left), *group);
            seen += 1;
        }
        assert!(seen > 0);
    }

    #[test]
    fn prices_are_written_with_two_places() {
        assert_eq!([0, 5, 95, 1090].map(price_text), ["0.00", "0.05", "0.95", "10.90"]);
    }
}
