//! The cutting job as text.

use reckoner_core::cutting::{
    Board, CrossSize, Ends, Job, KnotZone, LARGEST_PRICE_CENTS, Part, ResawRules, RipRules,
    SawRules, Scrap, Section,
};
use serde::{Deserialize, Serialize};

use super::{CutTextProblem, MOST_CUT_LINES, is_default, short, text, units};

/// A cutting job. Lengths are whole numbers of the job's unit, prices whole cents.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CutJobV1 {
    sections: Vec<SectionV1>,
    parts: Vec<PartV1>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    boards: Vec<BoardV1>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    scraps: Vec<ScrapV1>,
    /// Crosscut kerf.
    kerf: i64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    rip: Option<RipV1>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct SectionV1 {
    id: String,
    wood: String,
    /// Width and thickness.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    size: Option<(i64, i64)>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct PartV1 {
    id: String,
    name: String,
    section: String,
    length: i64,
    quantity: u32,
    #[serde(default, skip_serializing_if = "is_default")]
    priority: u32,
    #[serde(default, skip_serializing_if = "is_default")]
    may_rip: bool,
    #[serde(default, skip_serializing_if = "is_default")]
    may_resaw: bool,
    #[serde(default, skip_serializing_if = "is_default")]
    grain_free: bool,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct BoardV1 {
    id: String,
    section: String,
    length: i64,
    price_cents: i64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    limit: Option<u32>,
    /// At the left and the right end.
    #[serde(default, skip_serializing_if = "is_default")]
    trims: (i64, i64),
    /// From and to, from the left end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    knots: Vec<(i64, i64)>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct ScrapV1 {
    id: String,
    section: String,
    length: i64,
    quantity: u32,
    /// At the left and the right end.
    #[serde(default, skip_serializing_if = "is_default")]
    trims: (i64, i64),
    /// From and to, from the left end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    knots: Vec<(i64, i64)>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct RipV1 {
    kerf: i64,
    /// Clean-up of the near and the far edge.
    edges: (i64, i64),
    least_width: i64,
    #[serde(default, skip_serializing_if = "is_default")]
    least_length: i64,
    #[serde(default, skip_serializing_if = "is_default")]
    crosscut_first: bool,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    resaw: Option<ResawV1>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct ResawV1 {
    kerf: i64,
    /// Clean-up of the near and the far face.
    faces: (i64, i64),
    least_thickness: i64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    greatest_width: Option<i64>,
}

fn knots_v1(knots: &[KnotZone]) -> Vec<(i64, i64)> {
    knots.iter().map(|knot| (knot.from, knot.to)).collect()
}

impl From<&Job> for CutJobV1 {
    fn from(job: &Job) -> CutJobV1 {
        let trims = |ends: Ends| (ends.left, ends.right);
        CutJobV1 {
            sections: job
                .sections
                .iter()
                .map(|it| SectionV1 {
                    id: it.id.clone(),
                    wood: it.wood.clone(),
                    size: it.size.map(|size| (size.width, size.thickness)),
                })
                .collect(),
            parts: job
                .parts
                .iter()
                .map(|it| PartV1 {
                    id: it.id.clone(),
                    name: it.name.clone(),
                    section: it.section.clone(),
                    length: it.length,
                    quantity: it.quantity,
                    priority: it.priority,
                    may_rip: it.may_rip,
                    may_resaw: it.may_resaw,
                    grain_free: it.grain_free,
                })
                .collect(),
            boards: job
                .boards
                .iter()
                .map(|it| BoardV1 {
                    id: it.id.clone(),
                    section: it.section.clone(),
                    length: it.length,
                    price_cents: it.price_cents,
                    limit: it.limit,
                    trims: trims(it.trims),
                    knots: knots_v1(&it.knots),
                })
                .collect(),
            scraps: job
                .scraps
                .iter()
                .map(|it| ScrapV1 {
                    id: it.id.clone(),
                    section: it.section.clone(),
                    length: it.length,
                    quantity: it.quantity,
                    trims: trims(it.trims),
                    knots: knots_v1(&it.knots),
                })
                .collect(),
            kerf: job.saw.kerf,
            rip: job.saw.rip.as_ref().map(|rip| RipV1 {
                kerf: rip.kerf,
                edges: (rip.near_edge, rip.far_edge),
                least_width: rip.least_width,
                least_length: rip.least_length,
                crosscut_first: rip.crosscut_first,
                resaw: rip.resaw.as_ref().map(|resaw| ResawV1 {
                    kerf: resaw.kerf,
                    faces: (resaw.near_face, resaw.far_face),
                    least_thickness: resaw.least_thickness,
                    greatest_width: resaw.greatest_width,
                }),
            }),
        }
    }
}

impl CutJobV1 {
    /// The job. Whether it can be answered is for `Job::validate` to say.
    ///
    /// # Errors
    /// [`CutTextProblem`] for lists, names and numbers that no job has.
    pub fn job(self) -> Result<Job, CutTextProblem> {
        short(&self.sections, MOST_CUT_LINES, "sections")?;
        short(&self.parts, MOST_CUT_LINES, "parts")?;
        short(&self.boards, MOST_CUT_LINES, "boards")?;
        short(&self.scraps, MOST_CUT_LINES, "scraps")?;
        Ok(Job {
            sections: self.sections.into_iter().map(section).collect::<Result<_, _>>()?,
            parts: self.parts.into_iter().map(part).collect::<Result<_, _>>()?,
            boards: self.boards.into_iter().map(board).collect::<Result<_, _>>()?,
            scraps: self.scraps.into_iter().map(scrap).collect::<Result<_, _>>()?,
            saw: SawRules { kerf: units(self.kerf, "kerf")?, rip: self.rip.map(rip).transpose()? },
        })
    }
}

fn section(it: SectionV1) -> Result<Section, CutTextProblem> {
    let size = |(width, thickness)| {
        Ok(CrossSize { width: units(width, "width")?, thickness: units(thickness, "thickness")? })
    };
    Ok(Section { id: text(it.id)?, wood: text(it.wood)?, size: it.size.map(size).transpose()? })
}

fn part(it: PartV1) -> Result<Part, CutTextProblem> {
    Ok(Part {
        id: text(it.id)?,
        name: text(it.name)?,
        section: text(it.section)?,
        length: units(it.length, "length")?,
        quantity: it.quantity,
        priority: it.priority,
        may_rip: it.may_rip,
        may_resaw: it.may_resaw,
        grain_free: it.grain_free,
    })
}

fn board(it: BoardV1) -> Result<Board, CutTextProblem> {
    if it.price_cents.unsigned_abs() > LARGEST_PRICE_CENTS.unsigned_abs() {
        return Err(CutTextProblem::OutOfRange("price"));
    }
    Ok(Board {
        id: text(it.id)?,
        section: text(it.section)?,
        length: units(it.length, "length")?,
        price_cents: it.price_cents,
        limit: it.limit,
        trims: ends(it.trims)?,
        knots: knots(it.knots)?,
    })
}

fn scrap(it: ScrapV1) -> Result<Scrap, CutTextProblem> {
    Ok(Scrap {
        id: text(it.id)?,
        section: text(it.section)?,
        length: units(it.length, "length")?,
        quantity: it.quantity,
        trims: ends(it.trims)?,
        knots: knots(it.knots)?,
    })
}

fn ends((left, right): (i64, i64)) -> Result<Ends, CutTextProblem> {
    Ok(Ends { left: units(left, "end trim")?, right: units(right, "end trim")? })
}

fn knots(knots: Vec<(i64, i64)>) -> Result<Vec<KnotZone>, CutTextProblem> {
    short(&knots, MOST_CUT_LINES, "knots")?;
    let zone = |(from, to)| Ok(KnotZone { from: units(from, "knot")?, to: units(to, "knot")? });
    knots.into_iter().map(zone).collect()
}

fn rip(it: RipV1) -> Result<RipRules, CutTextProblem> {
    Ok(RipRules {
        kerf: units(it.kerf, "rip kerf")?,
        near_edge: units(it.edges.0, "edge clean-up")?,
        far_edge: units(it.edges.1, "edge clean-up")?,
        least_width: units(it.least_width, "least width")?,
        least_length: units(it.least_length, "least length")?,
        crosscut_first: it.crosscut_first,
        resaw: it.resaw.map(resaw).transpose()?,
    })
}

fn resaw(it: ResawV1) -> Result<ResawRules, CutTextProblem> {
    Ok(ResawRules {
        kerf: units(it.kerf, "resaw kerf")?,
        near_face: units(it.faces.0, "face clean-up")?,
        far_face: units(it.faces.1, "face clean-up")?,
        least_thickness: units(it.least_thickness, "least thickness")?,
        greatest_width: it.greatest_width.map(|width| units(width, "width")).transpose()?,
    })
}
