//! The cutting job as text.

use reckoner_core::cutting::{
    Board, CrossSize, Ends, Job, KnotZone, LARGEST_PRICE_CENTS, Part, ResawRules, RipRules,
    SawRules, Scrap, Section,
};

use super::kinds::{MOST_CUT_LINES, TEXT, UNITS};
use crate::json::{Field, Fields, Kind, Record, U32, Value, Writer, may, must};

/// A cutting job. Lengths are whole numbers of the job's unit, prices whole cents.
pub(super) const JOB: &[Field] = &[
    must("sections", Kind::List(&Kind::Record(SECTION), MOST_CUT_LINES), ""),
    must("parts", Kind::List(&Kind::Record(PART), MOST_CUT_LINES), ""),
    may("boards", Kind::List(&Kind::Record(BOARD), MOST_CUT_LINES), ""),
    may("scraps", Kind::List(&Kind::Record(SCRAP), MOST_CUT_LINES), ""),
    must("kerf", UNITS, "Of a crosscut."),
    may("rip", Kind::Record(RIP), ""),
];

const PAIR: Kind = Kind::Row(&[UNITS, UNITS]);

const SECTION: &[Field] =
    &[must("id", TEXT, ""), must("wood", TEXT, ""), may("size", PAIR, "Width and thickness.")];

const PART: &[Field] = &[
    must("id", TEXT, ""),
    must("name", TEXT, ""),
    must("section", TEXT, ""),
    must("length", UNITS, ""),
    must("quantity", U32, ""),
    may("priority", U32, ""),
    may("may_rip", Kind::Flag, ""),
    may("may_resaw", Kind::Flag, ""),
    may("grain_free", Kind::Flag, ""),
];

const PRICE: Kind = Kind::Whole(-(LARGEST_PRICE_CENTS as i128), LARGEST_PRICE_CENTS as i128);
const KNOTS: Kind = Kind::List(&PAIR, MOST_CUT_LINES);

const BOARD: &[Field] = &[
    must("id", TEXT, ""),
    must("section", TEXT, ""),
    must("length", UNITS, ""),
    must("price_cents", PRICE, ""),
    may("limit", U32, ""),
    may("trims", PAIR, "At the left and the right end."),
    may("knots", KNOTS, "From and to, from the left end."),
];

const SCRAP: &[Field] = &[
    must("id", TEXT, ""),
    must("section", TEXT, ""),
    must("length", UNITS, ""),
    must("quantity", U32, ""),
    may("trims", PAIR, "At the left and the right end."),
    may("knots", KNOTS, "From and to, from the left end."),
];

const RIP: &[Field] = &[
    must("kerf", UNITS, ""),
    must("edges", PAIR, "Clean-up of the near and the far edge."),
    must("least_width", UNITS, ""),
    may("least_length", UNITS, ""),
    may("crosscut_first", Kind::Flag, ""),
    may("resaw", Kind::Record(RESAW), ""),
];

const RESAW: &[Field] = &[
    must("kerf", UNITS, ""),
    must("faces", PAIR, "Clean-up of the near and the far face."),
    must("least_thickness", UNITS, ""),
    may("greatest_width", UNITS, ""),
];

pub(super) fn write_job(w: &mut Writer, job: &Job) {
    w.record(JOB, |out| {
        out.list(&job.sections, |w, it| {
            w.record(SECTION, |out| {
                out.text(&it.id);
                out.text(&it.wood);
                let size = it.size.map(|size| [size.width, size.thickness]);
                out.value(size, Writer::row_of_ints);
            });
        });
        out.list(&job.parts, |w, it| {
            w.record(PART, |out| {
                out.text(&it.id);
                out.text(&it.name);
                out.text(&it.section);
                out.int(it.length);
                out.int(it.quantity);
                out.int(it.priority);
                out.flag(it.may_rip);
                out.flag(it.may_resaw);
                out.flag(it.grain_free);
            });
        });
        out.list(&job.boards, |w, it| {
            w.record(BOARD, |out| {
                out.text(&it.id);
                out.text(&it.section);
                out.int(it.length);
                out.int(it.price_cents);
                out.maybe_int(it.limit);
                write_ends(out, it.trims, &it.knots);
            });
        });
        out.list(&job.scraps, |w, it| {
            w.record(SCRAP, |out| {
                out.text(&it.id);
                out.text(&it.section);
                out.int(it.length);
                out.int(it.quantity);
                write_ends(out, it.trims, &it.knots);
            });
        });
        out.int(job.saw.kerf);
        out.value(job.saw.rip.as_ref(), write_rip);
    });
}

fn write_ends(out: &mut Fields, trims: Ends, knots: &[KnotZone]) {
    let is_trimmed = trims != Ends::default();
    out.value(is_trimmed.then_some([trims.left, trims.right]), Writer::row_of_ints);
    out.list(knots, |w, knot| w.row_of_ints([knot.from, knot.to]));
}

fn write_rip(w: &mut Writer, rip: &RipRules) {
    w.record(RIP, |out| {
        out.int(rip.kerf);
        out.value(Some([rip.near_edge, rip.far_edge]), Writer::row_of_ints);
        out.int(rip.least_width);
        out.int(rip.least_length);
        out.flag(rip.crosscut_first);
        out.value(rip.resaw.as_ref(), |w, it| {
            w.record(RESAW, |out| {
                out.int(it.kerf);
                out.value(Some([it.near_face, it.far_face]), Writer::row_of_ints);
                out.int(it.least_thickness);
                out.maybe_int(it.greatest_width);
            });
        });
    });
}

/// The job. Whether it can be answered is for `Job::validate` to say.
pub(super) fn read_job(value: Value) -> Job {
    let mut it = value.record();
    Job {
        sections: it.list(|value| {
            let mut it = value.record();
            let (id, wood) = (it.text(), it.text());
            let size = it.next().map(pair);
            let size = size.map(|(width, thickness)| CrossSize { width, thickness });
            Section { id, wood, size }
        }),
        parts: it.list(|value| {
            let mut it = value.record();
            Part {
                id: it.text(),
                name: it.text(),
                section: it.text(),
                length: it.int(),
                quantity: it.int(),
                priority: it.int(),
                may_rip: it.flag(),
                may_resaw: it.flag(),
                grain_free: it.flag(),
            }
        }),
        boards: it.list(|value| {
            let mut it = value.record();
            Board {
                id: it.text(),
                section: it.text(),
                length: it.int(),
                price_cents: it.int(),
                limit: it.maybe_int(),
                trims: ends(&mut it),
                knots: knots(&mut it),
            }
        }),
        scraps: it.list(|value| {
            let mut it = value.record();
            Scrap {
                id: it.text(),
                section: it.text(),
                length: it.int(),
                quantity: it.int(),
                trims: ends(&mut it),
                knots: knots(&mut it),
            }
        }),
        saw: SawRules { kerf: it.int(), rip: it.next().map(rip) },
    }
}

fn pair(value: Value) -> (i64, i64) {
    let mut row = value.row();
    (row.int(), row.int())
}

fn ends(it: &mut Record) -> Ends {
    let (left, right) = it.next().map(pair).unwrap_or_default();
    Ends { left, right }
}

fn knots(it: &mut Record) -> Vec<KnotZone> {
    it.list(|value| {
        let (from, to) = pair(value);
        KnotZone { from, to }
    })
}

fn rip(value: Value) -> RipRules {
    let mut it = value.record();
    let kerf = it.int();
    let (near_edge, far_edge) = it.next().map(pair).unwrap_or_default();
    RipRules {
        kerf,
        near_edge,
        far_edge,
        least_width: it.int(),
        least_length: it.int(),
        crosscut_first: it.flag(),
        resaw: it.next().map(resaw),
    }
}

fn resaw(value: Value) -> ResawRules {
    let mut it = value.record();
    let kerf = it.int();
    let (near_face, far_face) = it.next().map(pair).unwrap_or_default();
    ResawRules {
        kerf,
        near_face,
        far_face,
        least_thickness: it.int(),
        greatest_width: it.maybe_int(),
    }
}
