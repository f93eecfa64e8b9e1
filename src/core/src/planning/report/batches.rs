//! What is cut at one setting, across all boards: set once, cut all that match (common practice, no source).

use super::board::BoardCut;
use crate::cutting::CutKind;
use crate::measure::Length;
use crate::say;
use crate::sheet::Sentence;

/// All cuts of one setting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutBatch {
    /// What kind of cut.
    pub kind: CutKind,
    /// Fence or stop to near tooth.
    pub setting: Length,
    /// Where they are, in the order of the boards.
    pub cuts: Vec<BatchCut>,
    /// Pieces in all.
    pub pieces: u32,
    /// `Fence at 3 1/4: 5 strips.`
    pub sentence: Sentence,
}

/// The cuts of a batch on one board.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BatchCut {
    /// Number of the board in the report.
    pub board: u32,
    /// The part; `strip`, `layer` or `block 1`.
    pub name: String,
    /// How many.
    pub pieces: u32,
}

/// The batches in the order of the work: blocks, rips, resaws, crosscuts; of each the largest setting first.
pub(super) fn batches(boards: &[BoardCut]) -> Vec<CutBatch> {
    let mut batches: Vec<CutBatch> = Vec::new();
    for board in boards {
        for order in &board.orders {
            if !order.kind.is_set_once() {
                continue;
            }
            let at = batches
                .iter()
                .position(|batch| (batch.kind, batch.setting) == (order.kind, order.setting));
            let at = at.unwrap_or_else(|| {
                batches.push(CutBatch {
                    kind: order.kind,
                    setting: order.setting,
                    cuts: Vec::new(),
                    pieces: 0,
                    sentence: Sentence::default(),
                });
                batches.len() - 1
            });
            let Some(batch) = batches.get_mut(at) else { continue };
            batch.pieces = batch.pieces.saturating_add(order.pieces);
            let same = |cut: &&mut BatchCut| cut.board == board.number && cut.name == order.name;
            match batch.cuts.iter_mut().find(same) {
                Some(cut) => cut.pieces = cut.pieces.saturating_add(order.pieces),
                None => batch.cuts.push(BatchCut {
                    board: board.number,
                    name: order.name.clone(),
                    pieces: order.pieces,
                }),
            }
        }
    }
    crate::order::sort_by(&mut batches, |a, b| a.kind.cmp(&b.kind).then(b.setting.cmp(&a.setting)));
    for batch in &mut batches {
        let (at, what) = match batch.kind {
            CutKind::Rip => ("Fence at ", "strip"),
            CutKind::Resaw => ("Fence at ", "layer"),
            CutKind::Block => ("Stop at ", "block"),
            _ => ("Stop at ", "piece"),
        };
        let many = if batch.pieces == 1 { "" } else { "s" };
        batch.sentence = say![at, batch.setting, format!(": {} {what}{many}.", batch.pieces)];
    }
    batches
}
