//! Boards that can stand in for others, whatever these hold: a longer one of the same section, a wider one that can be ripped
//! to the same strips. Our own method.

use crate::completion::BinType;
use crate::model::Model;

/// Pairs of forms of two stocks compared, at most; beyond that neither is taken to replace the other.
const MOST_PAIRS: usize = 1_000;

/// Which boards can stand in for which others, whatever these hold.
pub(crate) struct Replacers {
    /// Paid stocks, those with the fewest replacers first.
    order: Vec<usize>,
    /// For each stock: itself and all that can replace it, those that few others can replace last.
    of: Vec<Vec<usize>>,
    /// Some stock can be replaced by one that costs no more. Otherwise a mix that failed says nothing about a dearer one.
    pub(crate) is_useful: bool,
}

impl Replacers {
    pub(crate) fn new(model: &Model) -> Self {
        let paid = &model.paid();
        let forms: Vec<Vec<Vec<BinType>>> = model
            .stocks
            .iter()
            .map(|stock| stock.forms.iter().map(|form| BinType::all_of(&form.bins)).collect())
            .collect();
        let replaces = |b: usize, a: usize| {
            let is_short = forms[a].len().saturating_mul(forms[b].len()) <= MOST_PAIRS;
            let holds = |few: &Vec<BinType>| forms[b].iter().any(|many| is_no_more(few, many));
            a == b || (is_short && forms[a].iter().all(holds))
        };
        let mut of: Vec<Vec<usize>> = vec![Vec::new(); model.stocks.len()];
        for &stock in paid {
            of[stock] = paid.iter().copied().filter(|&other| replaces(other, stock)).collect();
        }
        let count: Vec<usize> = of.iter().map(Vec::len).collect();
        for list in &mut of {
            list.sort_by_key(|&stock| std::cmp::Reverse(count[stock]));
        }
        let mut order = paid.to_vec();
        order.sort_by_key(|&stock| count[stock]);
        let cost = |stock: usize| model.stocks[stock].cost;
        let is_useful = paid.iter().any(|&a| of[a].iter().any(|&b| a != b && cost(b) <= cost(a)));
        Self { order, of, is_useful }
    }

    /// Whether every board of `mix` finds a board of its own in `failed` that can replace it. Taken greedily: the answer
    /// is exact where boards differ in length only, and never yes when it should be no.
    pub(crate) fn hold(&self, mix: &[u32], failed: &[u32], spare: &mut Vec<u32>) -> bool {
        spare.clear();
        spare.extend_from_slice(failed);
        self.order.iter().filter(|&&stock| mix[stock] > 0).all(|&stock| {
            let mut need = mix[stock];
            for &other in &self.of[stock] {
                let take = need.min(spare[other]);
                spare[other] -= take;
                need -= take;
            }
            need == 0
        })
    }
}

/// Whether each bin of `few` has a bin of its own in `many`, of its kind and at least as long. Both are sorted by kind,
/// then by capacity.
fn is_no_more(few: &[BinType], many: &[BinType]) -> bool {
    few.iter().all(|bin| {
        let as_long = |bins: &[BinType]| -> u32 {
            let of_kind =
                bins.iter().filter(|other| other.kind == bin.kind && other.cap >= bin.cap);
            of_kind.map(|other| other.count).fold(0, u32::saturating_add)
        };
        as_long(few) <= as_long(many)
    })
}
