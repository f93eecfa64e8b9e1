//! Version 2 of the items of a job, as stored. Every size is a text as the user wrote it.
//!
//! All that version 1 has stands here under the same names, so the same tables read it. There a
//! piece that is cut says no sizes, and it is read as one whose sizes were not recorded.

use reckoner_core::job::{
    BoardState, CloseEnough, CutTicks, Dimension, Dimensions, Grain, Hand, Item, ItemId, Kept,
    Known, Linked, MOST_MEASURES, MOST_NOTE, MOST_PIECES_OF_JOB, Made, Match, Measure, MeasureKind,
    Part, Piece, PieceState, RackBoard, Round, Saw, Screw, Sketch, Ticked, Written, YardBoard,
    known,
};
use reckoner_core::measure::Length;
use reckoner_core::measure::text::{exact_text, length};
use reckoner_core::sheet::Side;

use crate::cut_item_v1::{CUT_PLAN, read_cut_plan, write_cut_plan};
use crate::json::{
    Fault, Faults, Field, Fields, I64, Kind, KindOf, Record, U32, U64, Value, Writer, kind_of, may,
    must, written,
};
use crate::texts::{ENTRIES, NAME, TEXT, entry, write_entry};

/// Most boards of a plan that are ticked, and most lines that are told of one.
const MOST_BOARDS: usize = 10_000;

/// Most differences that are left of one reckoning: more than it has parts.
const MOST_LEFT: usize = 1_000;

const NOTE: Kind = Kind::Text(MOST_NOTE);
const SIDE: Kind = Kind::Word(&["left", "right"]);

const MEASURE: &[Field] = &[
    must("rank", I64, "Where it stands in the list."),
    must("name", NAME, ""),
    may("number", Kind::Flag, "It is a plain number, not a length."),
    may("formula", TEXT, "A value or a formula over other names. Either this or `linked`."),
    may("linked", Kind::Record(LINKED), "A result of a kept reckoning."),
    may("as_cut", TEXT, "The size the tape says on the real part."),
    may("is_cut", Kind::Flag, ""),
    may("wait", Kind::Flag, "To be measured on the real thing before parts that need it are cut."),
    may("note", NOTE, ""),
    may("left", TEXT, "By how much it is off where somebody said to leave it so."),
    may("ours", Kind::Flag, "Its plan is an example, and not the person's yet."),
    may("usual", TEXT, "What such a size is published as."),
];

const LINKED: &[Field] =
    &[must("reckoning", U64, ""), must("result", TEXT, ""), may("index", U32, "")];

const PART: &[Field] = &[
    must("rank", I64, "Where it stands in the list."),
    must("name", NAME, ""),
    must("quantity", TEXT, ""),
    must("thickness", TEXT, ""),
    must("width", TEXT, ""),
    must("length", TEXT, "Along the grain."),
    may("stock", TEXT, ""),
    may("grain_free", Kind::Flag, ""),
    may("show_face", TEXT, ""),
    may("pairs", Kind::Flag, "Half of them left, half right."),
    may("may_rip", Kind::Flag, ""),
    may("may_resaw", Kind::Flag, ""),
    may("note", NOTE, ""),
    may("cuts", Kind::List(&SIZES, MOST_PIECES_OF_JOB), "Sizes that pieces of it were cut at."),
    may("pieces", Kind::List(&Kind::Record(PIECE), MOST_PIECES_OF_JOB), "Those that were touched."),
    may("made", Kind::Record(MADE), "The kept reckoning that it was made from."),
];

/// Thickness, width and length; empty for not known.
const SIZES: Kind = Kind::Row(&[TEXT, TEXT, TEXT]);

/// Short, because a job may have 200,000 of them.
const PIECE: &[Field] = &[
    may("done", Kind::Flag, "It is cut, and at which sizes was not recorded."),
    may("again", Kind::Flag, "It was cut, and is to be cut again."),
    may("cut", U32, "It is cut, at these sizes of the part's `cuts`, counted from 0."),
    may("as_cut", TEXT, "Its length on the tape."),
    may("thick", TEXT, "Its thickness on the tape."),
    may("wide", TEXT, "Its width on the tape."),
    may("left", SIZES, "By how much it is off where somebody said to leave it so."),
    may("shim_long", Kind::Flag, "A shim fills the length that it is left short of."),
    may("shim_thick", Kind::Flag, "The same of its thickness."),
    may("shim_wide", Kind::Flag, "The same of its width."),
];

const MADE: &[Field] = &[must("reckoning", U64, ""), must("what", TEXT, "Which of its parts.")];

const RECKONING: &[Field] = &[
    must("rank", I64, "Where it stands in the list."),
    must("title", NAME, ""),
    must("calculator", TEXT, ""),
    must("entries", ENTRIES, "Fields and what is written in them."),
    may(
        "left",
        Kind::List(&TEXT, MOST_LEFT),
        "In what its parts are not as it makes them, where somebody said to leave them so.",
    ),
];

const MATCH: &[Field] = &[
    must("name", NAME, ""),
    must("measures", Kind::List(&U64, MOST_MEASURES), "Measures, and parts for their lengths."),
    may("drift", TEXT, ""),
    may("left", TEXT, "How far apart they are where somebody said to leave them so."),
];

const RACK_BOARD: &[Field] = &[
    must("name", NAME, ""),
    must("section", TEXT, ""),
    must("thickness", TEXT, ""),
    must("width", TEXT, ""),
    must("length", TEXT, ""),
    must("quantity", U32, ""),
    may("wet", Kind::Flag, ""),
    may("sawn_ends", Kind::Flag, "Nothing needs trimming off its ends."),
    may("knots", TEXT, ""),
];

const YARD_BOARD: &[Field] = &[
    must("section", TEXT, ""),
    must("thickness", TEXT, ""),
    must("width", TEXT, ""),
    must("length", TEXT, ""),
    must("price", U64, "In hundredths of the user's money."),
    may("quantity", U32, ""),
    may("ours", Kind::Flag, "An example, and not the person's yet."),
];

const ROUND: &[Field] = &[must("name", NAME, ""), must("diameter", TEXT, "")];

const SAW: &[Field] = &[
    must("name", NAME, ""),
    must("kerf", TEXT, ""),
    must("reach", TEXT, ""),
    must("fence", SIDE, "Which side the fence is on."),
];

const SCREW: &[Field] =
    &[must("gauge", U32, ""), must("length", TEXT, ""), must("quantity", U32, "")];

const SKETCH: &[Field] = &[
    must("length", TEXT, ""),
    must("depth", TEXT, ""),
    must("height", TEXT, ""),
    must("leg", TEXT, ""),
    must("rail", TEXT, ""),
    written("shelf", TEXT, ""),
    written("top", TEXT, ""),
    written("overhang", TEXT, ""),
];

const CLOSE_ENOUGH: &[Field] = &[must("size", TEXT, "")];

const TICKED: &[Field] =
    &[must("done", Kind::List(&Kind::Row(&[TEXT, U32]), MOST_BOARDS), "What, and how many.")];

const CUT_TICKS: &[Field] = &[
    must("plan", U64, "The cut plan."),
    must("boards", Kind::List(&BOARD_STATE, MOST_BOARDS), "One for each board of the plan."),
];

const BOARD_STATE: Kind = Kind::Case(&[
    ("to_cut", None),
    // On the rack as this item.
    ("bought", Some(Kind::Maybe(&U64))),
    ("begun", Some(Kind::Record(BEGUN))),
    ("cut", None),
    ("different", Some(Kind::Record(DIFFERENT))),
]);

const BEGUN: &[Field] =
    &[must("cut", Kind::List(&Kind::Row(&[U32, U32]), MOST_BOARDS), "Part and how many.")];

const DIFFERENT: &[Field] = &[
    must("good", Kind::List(&Kind::Row(&[U32, U32]), MOST_BOARDS), "Part and how many."),
    may("left", Kind::List(&TEXT, MOST_BOARDS), "Lengths left, as measured."),
];

/// Anything in a job.
const KINDS: &[KindOf] = &[
    kind_of("measure", MEASURE, "A named size or number."),
    kind_of("part", PART, "A part to cut."),
    kind_of("reckoning", RECKONING, "A calculator kept with its entries."),
    kind_of("match", MATCH, "Measures and parts that must come out alike."),
    kind_of("rack_board", RACK_BOARD, "A board or scrap on hand."),
    kind_of("yard_board", YARD_BOARD, "A length the yard sells."),
    kind_of("round", ROUND, "A round thing the user owns."),
    kind_of("saw", SAW, "A saw."),
    kind_of("screw", SCREW, "A screw size on hand."),
    kind_of("sketch", SKETCH, "What the sketch is drawn from."),
    kind_of("cut_plan", CUT_PLAN, "A cut plan."),
    kind_of("cut_ticks", CUT_TICKS, "What has been bought and cut of a cut plan."),
    kind_of("close_enough", CLOSE_ENOUGH, "How far a piece may be off and count as right."),
    kind_of("ticked", TICKED, "What is ticked off that no piece and no board tells."),
];

/// An item: in a job with its id, in a step beside it.
pub(crate) const ITEM: Kind = Kind::Kinds(KINDS);

/// Writes an item, with its id where it has one to itself.
pub(crate) fn write_item(w: &mut Writer, id: Option<ItemId>, item: &Item) {
    w.record(&[], |out| {
        if let Some(id) = id {
            out.besides("id", |w| w.int(id.0));
        }
        write_kind(out, item);
    });
}

fn write_kind(out: &mut Fields, item: &Item) {
    let name = match item {
        Item::Measure(_) => "measure",
        Item::Part(_) => "part",
        Item::Kept(_) => "reckoning",
        Item::Match(_) => "match",
        Item::RackBoard(_) => "rack_board",
        Item::YardBoard(_) => "yard_board",
        Item::Round(_) => "round",
        Item::Saw(_) => "saw",
        Item::Screw(_) => "screw",
        Item::Sketch(_) => "sketch",
        Item::CutPlan(_) => "cut_plan",
        Item::CutTicks(_) => "cut_ticks",
        Item::CloseEnough(_) => "close_enough",
        Item::Ticked(_) => "ticked",
    };
    out.besides("kind", |w| w.text(name));
    if let Some(kind) = KINDS.iter().find(|kind| kind.name == name) {
        out.go_on_with(kind.fields);
    }
    match item {
        Item::Measure(it) => {
            out.int(it.rank);
            out.text(&it.name);
            out.flag(it.kind == MeasureKind::Number);
            let (formula, linked) = match &it.written {
                Written::Formula(text) => (Some(&**text), None),
                Written::Linked(linked) => (None, Some(linked)),
            };
            out.maybe_text(formula);
            out.value(linked, |w, linked| {
                w.record(LINKED, |out| {
                    out.int(linked.kept.0);
                    out.text(&linked.result);
                    out.int(linked.index);
                });
            });
            out.maybe_text(it.as_cut.as_deref());
            out.flag(it.is_cut);
            out.flag(it.wait);
            out.text(&it.note);
            out.maybe_text(length_text(it.left).as_deref());
            out.flag(it.is_ours);
            out.text(&it.usual);
        }
        Item::Part(it) => write_part(out, it),
        Item::Kept(it) => {
            out.int(it.rank);
            out.text(&it.title);
            out.text(&it.slug);
            out.list(&it.entries, write_entry);
            out.list(&it.left, |w, text| w.text(text));
        }
        Item::Match(it) => {
            out.text(&it.name);
            out.list(&it.measures, |w, id| w.int(id.0));
            out.text(&it.drift);
            out.maybe_text(length_text(it.left).as_deref());
        }
        Item::RackBoard(it) => {
            for text in [&it.name, &it.section, &it.thickness, &it.width, &it.length] {
                out.text(text);
            }
            out.int(it.quantity);
            out.flag(it.wet);
            out.flag(it.sawn_ends);
            out.text(&it.knots);
        }
        Item::YardBoard(it) => {
            for text in [&it.section, &it.thickness, &it.width, &it.length] {
                out.text(text);
            }
            out.int(it.price);
            out.maybe_int(it.quantity);
            out.flag(it.is_ours);
        }
        Item::Round(it) => {
            out.text(&it.name);
            out.text(&it.diameter);
        }
        Item::Saw(it) => {
            for text in [&it.name, &it.kerf, &it.reach] {
                out.text(text);
            }
            out.text(if it.fence == Side::Left { "left" } else { "right" });
        }
        Item::Screw(it) => {
            out.int(it.gauge);
            out.text(&it.length);
            out.int(it.quantity);
        }
        Item::Sketch(it) => {
            let Sketch { length, depth, height, leg, rail, shelf, top, overhang } = it;
            for text in [length, depth, height, leg, rail, shelf, top, overhang] {
                out.text(text);
            }
        }
        Item::CutPlan(it) => write_cut_plan(out, it),
        Item::CutTicks(it) => {
            out.int(it.plan.0);
            out.list(&it.boards, write_state);
        }
        Item::CloseEnough(it) => out.text(&it.size),
        Item::Ticked(it) => {
            let done: Vec<_> = it.done.iter().collect();
            out.list(&done, |w, (what, count)| {
                w.row(&mut [&mut |w| w.text(what), &mut |w| w.int(**count)]);
            });
        }
    }
}

fn write_part(out: &mut Fields, it: &Part) {
    out.int(it.rank);
    for text in [&it.name, &it.quantity, &it.thickness, &it.width, &it.length, &it.stock] {
        out.text(text);
    }
    out.flag(it.grain == Grain::Free);
    out.text(&it.show_face);
    out.flag(it.hand == Hand::Pairs);
    out.flag(it.may_rip);
    out.flag(it.may_resaw);
    out.text(&it.note);
    let cuts = cuts_of(it);
    out.list(&cuts, write_sizes);
    out.list(&it.pieces, |w, piece| write_piece(w, piece, &cuts));
    out.value(it.made.as_ref(), |w, made| {
        w.record(MADE, |out| {
            out.int(made.kept.0);
            out.text(&made.what);
        });
    });
}

/// The sizes that pieces of a part were cut at, each once.
fn cuts_of(part: &Part) -> Vec<Dimensions<Option<Length>>> {
    let mut cuts: Vec<Dimensions<Option<Length>>> = Vec::new();
    for piece in &part.pieces {
        let sizes = Dimensions::of(|of| piece.recorded(of));
        if sizes != Dimensions::default() && !cuts.iter().rev().any(|known| *known == sizes) {
            cuts.push(sizes);
        }
    }
    cuts
}

fn write_piece(w: &mut Writer, piece: &Piece, cuts: &[Dimensions<Option<Length>>]) {
    let sizes = Dimensions::of(|of| piece.recorded(of));
    let cut = cuts.iter().position(|known| *known == sizes);
    w.record(PIECE, |out| {
        out.flag(piece.is_cut() && cut.is_none());
        out.flag(piece.state() == PieceState::Again);
        out.maybe_int(cut);
        for of in [Dimension::Length, Dimension::Thickness, Dimension::Width] {
            out.maybe_text(piece.tape(of));
        }
        let left = Dimensions::of(|of| piece.left(of));
        out.value((left != Dimensions::default()).then_some(&left), write_sizes);
        for of in [Dimension::Length, Dimension::Thickness, Dimension::Width] {
            out.flag(piece.has_shim(of));
        }
    });
}

fn write_sizes(w: &mut Writer, sizes: &Dimensions<Option<Length>>) {
    let texts = Dimension::ALL.map(|of| length_text(*sizes.get(of)).unwrap_or_default());
    w.list(&texts, |w, text| w.text(text));
}

fn length_text(length: Option<Length>) -> Option<String> {
    length.map(exact_text)
}

/// A length as it was written here. What is none is not known.
fn length_of(text: &str) -> Option<Length> {
    length(text).ok()
}

fn write_state(w: &mut Writer, state: &BoardState) {
    match state {
        BoardState::ToCut => w.text("to_cut"),
        BoardState::Bought(None) => w.case("bought", |w| w.out.push_str("null")),
        BoardState::Bought(Some(id)) => w.case("bought", |w| w.int(id.0)),
        BoardState::Begun(cut) => w.case("begun", |w| {
            w.record(BEGUN, |out| out.list(cut, write_count));
        }),
        BoardState::Cut => w.text("cut"),
        BoardState::Different { good, left } => w.case("different", |w| {
            w.record(DIFFERENT, |out| {
                out.list(good, write_count);
                out.list(left, |w, text| w.text(text));
            });
        }),
    }
}

/// A part by its place, and how many.
fn write_count(w: &mut Writer, (part, count): &(usize, u32)) {
    w.row(&mut [&mut |w| w.int(*part), &mut |w| w.int(*count)]);
}

fn read_count(pair: Value) -> (usize, u32) {
    let mut row = pair.row();
    (row.int(), row.int())
}

/// Reads an item of the [`ITEM`] kinds.
///
/// # Errors
///
/// The first thing that is wrong with it.
pub(crate) fn read_item(raw: &str) -> Result<Item, Fault> {
    let faults = Faults::default();
    let item = Value::new(raw, ITEM, "item", &faults).kind().and_then(|(kind, mut it)| {
        Some(match kind.name {
            "measure" => Item::Measure(measure(&mut it, &faults)),
            "part" => Item::Part(part(&mut it)),
            "reckoning" => Item::Kept(Kept {
                rank: it.int(),
                title: it.text(),
                slug: it.text(),
                entries: it.list(entry),
                left: it.list(|text| text.text()),
            }),
            "match" => Item::Match(Match {
                name: it.text(),
                measures: it.list(|id| ItemId(id.int())),
                drift: it.text(),
                left: it.maybe_text().as_deref().and_then(length_of),
            }),
            "rack_board" => Item::RackBoard(RackBoard {
                name: it.text(),
                section: it.text(),
                thickness: it.text(),
                width: it.text(),
                length: it.text(),
                quantity: it.int(),
                wet: it.flag(),
                sawn_ends: it.flag(),
                knots: it.text(),
            }),
            "yard_board" => Item::YardBoard(YardBoard {
                section: it.text(),
                thickness: it.text(),
                width: it.text(),
                length: it.text(),
                price: it.int(),
                quantity: it.maybe_int(),
                is_ours: it.flag(),
            }),
            "round" => Item::Round(Round { name: it.text(), diameter: it.text() }),
            "saw" => Item::Saw(Saw {
                name: it.text(),
                kerf: it.text(),
                reach: it.text(),
                fence: if it.word() == 0 { Side::Left } else { Side::Right },
            }),
            "screw" => {
                Item::Screw(Screw { gauge: it.int(), length: it.text(), quantity: it.int() })
            }
            "sketch" => Item::Sketch(Sketch {
                length: it.text(),
                depth: it.text(),
                height: it.text(),
                leg: it.text(),
                rail: it.text(),
                shelf: it.text(),
                top: it.text(),
                overhang: it.text(),
            }),
            "cut_plan" => Item::CutPlan(Box::new(read_cut_plan(&mut it, &faults)?)),
            "cut_ticks" => Item::CutTicks(CutTicks {
                plan: ItemId(it.int()),
                boards: it.list(|state| read_state(state)),
            }),
            "close_enough" => Item::CloseEnough(CloseEnough { size: it.text() }),
            _ => {
                let done = it.list(|tick| {
                    let mut row = tick.row();
                    (row.text(), row.int())
                });
                Item::Ticked(Ticked { done: done.into_iter().collect() })
            }
        })
    });
    faults.or(item)?.ok_or(Fault::Kind)
}

fn measure(it: &mut Record, faults: &Faults) -> Measure {
    let (rank, name, is_number) = (it.int(), it.text(), it.flag());
    let formula = it.maybe_text();
    let linked = it.next().map(|value| {
        let mut it = value.record();
        Linked { kept: ItemId(it.int()), result: it.text(), index: it.int() }
    });
    let written = match (formula, linked) {
        (Some(text), None) => Written::Formula(text),
        (None, Some(linked)) => Written::Linked(linked),
        _ => {
            let words = "a measure has either a formula or a linked result";
            faults.add(Fault::Said(words.to_owned()));
            Written::Formula(String::new())
        }
    };
    Measure {
        rank,
        name,
        kind: if is_number { MeasureKind::Number } else { MeasureKind::Length },
        written,
        as_cut: it.maybe_text(),
        is_cut: it.flag(),
        wait: it.flag(),
        note: it.text(),
        left: it.maybe_text().as_deref().and_then(length_of),
        is_ours: it.flag(),
        usual: it.text(),
    }
}

fn part(it: &mut Record) -> Part {
    Part {
        rank: it.int(),
        name: it.text(),
        quantity: it.text(),
        thickness: it.text(),
        width: it.text(),
        length: it.text(),
        stock: it.text(),
        grain: if it.flag() { Grain::Free } else { Grain::Locked },
        show_face: it.text(),
        hand: if it.flag() { Hand::Pairs } else { Hand::Alike },
        may_rip: it.flag(),
        may_resaw: it.flag(),
        note: it.text(),
        pieces: {
            let cuts = it.list(|sizes| read_sizes(&sizes));
            it.list(|piece| read_piece(&piece, &cuts))
        },
        made: it.next().map(|made| {
            let mut it = made.record();
            Made { kept: ItemId(it.int()), what: it.text() }
        }),
    }
}

fn read_piece(value: &Value, cuts: &[Known]) -> Piece {
    let mut it = value.record();
    let (is_done, is_again) = (it.flag(), it.flag());
    let cut: Option<usize> = it.maybe_int();
    let state = match (is_done || cut.is_some(), is_again) {
        (_, true) => PieceState::Again,
        (true, false) => PieceState::Cut,
        (false, false) => PieceState::ToCut,
    };
    let recorded = cut.and_then(|at| cuts.get(at)).cloned().flatten();
    let (length, thickness, width) = (it.maybe_text(), it.maybe_text(), it.maybe_text());
    let left = it.next().and_then(|sizes| read_sizes(&sizes));
    let (long, thick, wide) = (it.flag(), it.flag(), it.flag());
    let shims = Dimensions { thickness: thick, width: wide, length: long };
    Piece::stored(state, recorded, Dimensions { thickness, width, length }, (left, shims))
}

fn read_sizes(value: &Value) -> Known {
    let mut row = value.row();
    known(Dimensions::of(|_| length_of(&row.text())))
}

fn read_state(value: Value) -> BoardState {
    match value.case() {
        Some(("bought", id)) => BoardState::Bought(id.map(|id| ItemId(id.int()))),
        Some(("begun", Some(value))) => BoardState::Begun(value.record().list(read_count)),
        Some(("cut", _)) => BoardState::Cut,
        Some(("different", Some(value))) => {
            let mut it = value.record();
            let good = it.list(read_count);
            BoardState::Different { good, left: it.list(|text| text.text()) }
        }
        _ => BoardState::ToCut,
    }
}
