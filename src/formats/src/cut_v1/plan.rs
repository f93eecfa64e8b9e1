//! A plan as text.

use reckoner_core::cutting::{
    Block, CutBoard, Job, Layer, Layout, LeftOut, Placed, Plan, Source, Strip,
};
use serde::{Deserialize, Serialize};

use super::{CutTextProblem, MOST_PIECES, cents, is_default, place, short, units};

/// A plan. Parts, boards and scraps are named by their place in the job's lists.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct CutPlanV1 {
    boards: Vec<CutBoardV1>,
    /// Part and how many.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    left_out: Vec<(usize, u32)>,
    cost_cents: i64,
}

/// Where a board comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub(super) enum SourceV1 {
    Board(usize),
    Scrap(usize),
}

impl From<Source> for SourceV1 {
    fn from(source: Source) -> SourceV1 {
        match source {
            Source::Board(at) => SourceV1::Board(at),
            Source::Scrap(at) => SourceV1::Scrap(at),
        }
    }
}

impl SourceV1 {
    pub(super) fn source(self, job: &Job) -> Result<Source, CutTextProblem> {
        Ok(match self {
            SourceV1::Board(at) => Source::Board(place(at, job.boards.len(), "board")?),
            SourceV1::Scrap(at) => Source::Scrap(place(at, job.scraps.len(), "scrap")?),
        })
    }
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct CutBoardV1 {
    from: SourceV1,
    #[serde(flatten)]
    layout: LayoutV1,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
enum LayoutV1 {
    Crosscut(Vec<PlacedV1>),
    RipFirst(Vec<StripV1>),
    CrosscutFirst(Vec<BlockV1>),
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct PlacedV1 {
    part: usize,
    at: i64,
    #[serde(default, skip_serializing_if = "is_default")]
    turned: bool,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct StripV1 {
    at: i64,
    width: i64,
    layers: Vec<LayerV1>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct LayerV1 {
    at: i64,
    thickness: i64,
    parts: Vec<PlacedV1>,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
struct BlockV1 {
    at: i64,
    length: i64,
    parts: Vec<PlacedV1>,
}

fn placed_v1(parts: &[Placed]) -> Vec<PlacedV1> {
    let one = |it: &Placed| PlacedV1 { part: it.part, at: it.at, turned: it.turned };
    parts.iter().map(one).collect()
}

impl From<&Plan> for CutPlanV1 {
    fn from(plan: &Plan) -> CutPlanV1 {
        CutPlanV1 {
            boards: plan
                .boards
                .iter()
                .map(|board| CutBoardV1 {
                    from: board.source.into(),
                    layout: (&board.layout).into(),
                })
                .collect(),
            left_out: plan.left_out.iter().map(|left| (left.part, left.quantity)).collect(),
            cost_cents: plan.cost_cents,
        }
    }
}

impl From<&Layout> for LayoutV1 {
    fn from(layout: &Layout) -> LayoutV1 {
        match layout {
            Layout::Crosscut(parts) => LayoutV1::Crosscut(placed_v1(parts)),
            Layout::RipFirst(strips) => {
                let layer = |it: &Layer| LayerV1 {
                    at: it.at,
                    thickness: it.thickness,
                    parts: placed_v1(&it.parts),
                };
                let strip = |it: &Strip| StripV1 {
                    at: it.at,
                    width: it.width,
                    layers: it.layers.iter().map(layer).collect(),
                };
                LayoutV1::RipFirst(strips.iter().map(strip).collect())
            }
            Layout::CrosscutFirst(blocks) => {
                let block = |it: &Block| BlockV1 {
                    at: it.at,
                    length: it.length,
                    parts: placed_v1(&it.parts),
                };
                LayoutV1::CrosscutFirst(blocks.iter().map(block).collect())
            }
        }
    }
}

impl CutPlanV1 {
    /// The plan, as one of this job. Whether it keeps the rules is for `check_plan` to say.
    ///
    /// # Errors
    /// [`CutTextProblem`] for lists, numbers and places that no plan of this job has.
    pub fn plan(self, job: &Job) -> Result<Plan, CutTextProblem> {
        short(&self.boards, MOST_PIECES, "boards")?;
        short(&self.left_out, MOST_PIECES, "parts left out")?;
        let board = |it: CutBoardV1| {
            Ok(CutBoard { source: it.from.source(job)?, layout: it.layout.layout(job)? })
        };
        let left = |(part, quantity)| {
            Ok(LeftOut { part: place(part, job.parts.len(), "part")?, quantity })
        };
        Ok(Plan {
            boards: self.boards.into_iter().map(board).collect::<Result<_, _>>()?,
            left_out: self.left_out.into_iter().map(left).collect::<Result<_, _>>()?,
            cost_cents: cents(self.cost_cents)?,
        })
    }
}

impl LayoutV1 {
    fn layout(self, job: &Job) -> Result<Layout, CutTextProblem> {
        Ok(match self {
            LayoutV1::Crosscut(parts) => Layout::Crosscut(placed(parts, job)?),
            LayoutV1::RipFirst(strips) => {
                short(&strips, MOST_PIECES, "strips")?;
                let strip = |it: StripV1| {
                    short(&it.layers, MOST_PIECES, "layers")?;
                    let layers = it.layers.into_iter().map(|it| layer(it, job));
                    Ok(Strip {
                        at: units(it.at, "place")?,
                        width: units(it.width, "width")?,
                        layers: layers.collect::<Result<_, _>>()?,
                    })
                };
                Layout::RipFirst(strips.into_iter().map(strip).collect::<Result<_, _>>()?)
            }
            LayoutV1::CrosscutFirst(blocks) => {
                short(&blocks, MOST_PIECES, "blocks")?;
                let block = |it: BlockV1| {
                    Ok(Block {
                        at: units(it.at, "place")?,
                        length: units(it.length, "length")?,
                        parts: placed(it.parts, job)?,
                    })
                };
                Layout::CrosscutFirst(blocks.into_iter().map(block).collect::<Result<_, _>>()?)
            }
        })
    }
}

fn layer(it: LayerV1, job: &Job) -> Result<Layer, CutTextProblem> {
    Ok(Layer {
        at: units(it.at, "place")?,
        thickness: units(it.thickness, "thickness")?,
        parts: placed(it.parts, job)?,
    })
}

fn placed(parts: Vec<PlacedV1>, job: &Job) -> Result<Vec<Placed>, CutTextProblem> {
    short(&parts, MOST_PIECES, "pieces")?;
    let one = |it: PlacedV1| {
        Ok(Placed {
            part: place(it.part, job.parts.len(), "part")?,
            at: units(it.at, "place")?,
            turned: it.turned,
        })
    };
    parts.into_iter().map(one).collect()
}
