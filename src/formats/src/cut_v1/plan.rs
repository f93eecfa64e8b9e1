//! A plan as text.

use reckoner_core::cutting::{
    Block, CutBoard, Job, Layer, Layout, LeftOut, Placed, Plan, Source, Strip,
};

use super::kinds::{CENTS, MOST_PIECES, PLACE, UNITS, place};
use crate::json::{Fault, Field, Kind, Record, U32, Value, Writer, may, must};

/// A plan. Parts, boards and scraps are named by their place in the job's lists.
pub(super) const PLAN: &[Field] = &[
    must("boards", Kind::List(&Kind::Record(BOARD), MOST_PIECES), ""),
    may("left_out", Kind::List(&Kind::Row(&[PLACE, U32]), MOST_PIECES), "Part and how many."),
    must("cost_cents", CENTS, ""),
];

/// Where a board comes from.
pub(super) const SOURCE: Kind = Kind::Case(&[("board", Some(PLACE)), ("scrap", Some(PLACE))]);

const BOARD: &[Field] = &[
    must("from", SOURCE, ""),
    may("crosscut", PLACED, "One of the three."),
    may("rip_first", Kind::List(&Kind::Record(STRIP), MOST_PIECES), ""),
    may("crosscut_first", Kind::List(&Kind::Record(BLOCK), MOST_PIECES), ""),
];

const PLACED: Kind = Kind::List(
    &Kind::Record(&[must("part", PLACE, ""), must("at", UNITS, ""), may("turned", Kind::Flag, "")]),
    MOST_PIECES,
);

const STRIP: &[Field] = &[
    must("at", UNITS, ""),
    must("width", UNITS, ""),
    must("layers", Kind::List(&Kind::Record(LAYER), MOST_PIECES), ""),
];

const LAYER: &[Field] =
    &[must("at", UNITS, ""), must("thickness", UNITS, ""), must("parts", PLACED, "")];

const BLOCK: &[Field] =
    &[must("at", UNITS, ""), must("length", UNITS, ""), must("parts", PLACED, "")];

pub(super) fn write_plan(w: &mut Writer, plan: &Plan) {
    w.record(PLAN, |out| {
        out.list(&plan.boards, |w, board| {
            w.record(BOARD, |out| {
                out.value(Some(board.source), write_source);
                let (mut crosscut, mut strips, mut blocks) = (None, None, None);
                match &board.layout {
                    Layout::Crosscut(parts) => crosscut = Some(&**parts),
                    Layout::RipFirst(all) => strips = Some(all),
                    Layout::CrosscutFirst(all) => blocks = Some(all),
                }
                out.value(crosscut, write_placed);
                out.value(strips, |w, strips| w.list(strips, write_strip));
                out.value(blocks, |w, blocks| {
                    w.list(blocks, |w, it| write_parts(w, BLOCK, it.at, it.length, &it.parts));
                });
            });
        });
        out.list(&plan.left_out, |w, left| {
            w.row(&mut [&mut |w| w.int(left.part), &mut |w| w.int(left.quantity)]);
        });
        out.int(plan.cost_cents);
    });
}

pub(super) fn write_source(w: &mut Writer, source: Source) {
    match source {
        Source::Board(at) => w.case("board", |w| w.int(at)),
        Source::Scrap(at) => w.case("scrap", |w| w.int(at)),
    }
}

fn write_strip(w: &mut Writer, it: &Strip) {
    w.record(STRIP, |out| {
        out.int(it.at);
        out.int(it.width);
        out.list(&it.layers, |w, it| write_parts(w, LAYER, it.at, it.thickness, &it.parts));
    });
}

/// A layer or a block.
fn write_parts(w: &mut Writer, fields: &'static [Field], at: i64, size: i64, parts: &[Placed]) {
    w.record(fields, |out| {
        out.int(at);
        out.int(size);
        out.value(Some(parts), write_placed);
    });
}

fn write_placed(w: &mut Writer, parts: &[Placed]) {
    let Kind::List(Kind::Record(fields), _) = PLACED else { return };
    w.list(parts, |w, it| {
        w.record(fields, |out| {
            out.int(it.part);
            out.int(it.at);
            out.flag(it.turned);
        });
    });
}

/// The plan, as one of this job. Whether it keeps the rules is for `check_plan` to say.
pub(super) fn read_plan(value: Value, job: &Job) -> Plan {
    let mut it = value.record();
    Plan {
        boards: it.list(|value| {
            let mut it = value.record();
            let source = it.next().map_or(Source::Board(0), |value| read_source(value, job));
            CutBoard { source, layout: layout(value, &mut it, job) }
        }),
        left_out: it.list(|value| {
            let mut row = value.row();
            let part = row.next().map_or(0, |at| place(at, job.parts.len(), "part"));
            LeftOut { part, quantity: row.int() }
        }),
        cost_cents: it.int(),
    }
}

pub(super) fn read_source(value: Value, job: &Job) -> Source {
    match value.case() {
        Some(("scrap", Some(at))) => Source::Scrap(place(at, job.scraps.len(), "scrap")),
        Some((_, Some(at))) => Source::Board(place(at, job.boards.len(), "board")),
        _ => Source::Board(0),
    }
}

fn layout(board: Value, it: &mut Record, job: &Job) -> Layout {
    match (it.next(), it.next(), it.next()) {
        (Some(parts), None, None) => Layout::Crosscut(placed(parts, job)),
        (None, Some(strips), None) => Layout::RipFirst(strips.list(|value| {
            let mut it = value.record();
            Strip {
                at: it.int(),
                width: it.int(),
                layers: it.list(|value| {
                    let mut it = value.record();
                    let (at, thickness) = (it.int(), it.int());
                    Layer { at, thickness, parts: parts(&mut it, job) }
                }),
            }
        })),
        (None, None, Some(blocks)) => Layout::CrosscutFirst(blocks.list(|value| {
            let mut it = value.record();
            let (at, length) = (it.int(), it.int());
            Block { at, length, parts: parts(&mut it, job) }
        })),
        _ => {
            board.faults.add(Fault::Wrong("layout"));
            Layout::Crosscut(Vec::new())
        }
    }
}

fn parts(it: &mut Record, job: &Job) -> Vec<Placed> {
    it.next().map(|value| placed(value, job)).unwrap_or_default()
}

fn placed(value: Value, job: &Job) -> Vec<Placed> {
    value.list(|value| {
        let mut it = value.record();
        let part = it.next().map_or(0, |at| place(at, job.parts.len(), "part"));
        Placed { part, at: it.int(), turned: it.flag() }
    })
}
