//! What is known of a plan: how its cost stands to the cheapest, and who vouches for that. The screen, paper and what is
//! sent as text take their words from here.

use super::money::proof;
use super::ways::against;
use crate::cutting::Backing;
use crate::job::CutPlan;
use crate::job::cut_labels::Labels;
use crate::say;
use crate::sheet::Sentence;

/// What a plan costs, and what the search that it came from proved of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Of the plan, in cents.
    pub cost_cents: i64,
    /// No plan costs less.
    pub bound_cents: i64,
    /// `None` where it was not kept with the plan.
    pub backing: Option<Backing>,
}

impl Standing {
    /// That of a plan that is kept in a job.
    #[must_use]
    pub fn of(kept: &CutPlan) -> Standing {
        let CutPlan { plan, bound_cents, backing, .. } = kept;
        Standing { cost_cents: plan.cost_cents, bound_cents: *bound_cents, backing: *backing }
    }

    /// How the cost stands to the cheapest: `No cheaper way with these boards, prices and cuts.` Parts that the plan leaves
    /// out stand in the same line.
    #[must_use]
    pub fn cost(&self, labels: &Labels, left_out: &[String]) -> Sentence {
        match self.backing.and_then(|it| it.in_place_of) {
            Some(found) => against(labels, self.cost_cents, found, found <= self.bound_cents),
            None => proof(labels, self.cost_cents, self.bound_cents, left_out).sentence,
        }
    }

    /// Who vouches for it; nothing where nothing is claimed.
    #[must_use]
    pub fn vouched(&self) -> &'static str {
        match self.backing {
            Some(Backing { in_place_of: Some(_), .. }) => "",
            // What costs nothing needs no proof.
            _ if self.cost_cents <= 0 || self.cost_cents > self.bound_cents => "",
            Some(it) if it.is_checked => "The proof was worked out again by a second check.",
            Some(_) => {
                "The planner ruled out every cheaper way with these boards, prices and cuts. No second check went over that."
            }
            None => "It was not kept with this plan whether a second check went over the proof.",
        }
    }

    /// How much a plan made from the rack alone is known to cut.
    #[must_use]
    pub fn from_rack(&self) -> &'static str {
        match self.backing {
            Some(Backing { is_proved: true, .. }) => {
                "the rack gives no more than this: the planner ruled out every other way with these boards and cuts, and no second check went over that"
            }
            Some(_) => "more may be possible",
            None => "as much as the rack gave when it was planned",
        }
    }
}

/// What is known of a plan that is kept in a job, for paper and text.
#[must_use]
pub fn known(kept: &CutPlan) -> Sentence {
    let standing = Standing::of(kept);
    if !kept.plan.left_out.is_empty() {
        return say!["From the rack: ", standing.from_rack(), "."];
    }
    let mut words = standing.cost(&kept.labels, &[]);
    let vouched = standing.vouched();
    if !vouched.is_empty() {
        words.0.extend(say![" ", vouched].0);
    }
    words
}

#[cfg(test)]
mod tests {
    use super::super::trial::yard;
    use super::*;

    fn said(cost_cents: i64, bound_cents: i64, backing: Option<Backing>) -> [String; 2] {
        let standing = Standing { cost_cents, bound_cents, backing };
        [standing.cost(&yard().1, &[]).to_string(), standing.vouched().to_owned()]
    }

    #[test]
    fn what_is_claimed_is_what_was_proved_and_by_whom() {
        let (proved, open) =
            ("No cheaper way with these boards, prices and cuts.", "Not proved yet.");
        let checked = Backing { is_proved: true, is_checked: true, ..Backing::default() };
        let vouched = Backing { is_checked: false, ..checked };
        assert_eq!(
            said(1960, 1960, Some(checked)),
            [proved, "The proof was worked out again by a second check."]
        );
        let words = said(1960, 1960, Some(vouched));
        assert_eq!(words[0], proved);
        assert!(words[1].ends_with("No second check went over that."), "{}", words[1]);
        let words = said(1960, 1960, None);
        assert_eq!(words[0], proved);
        assert!(words[1].starts_with("It was not kept"), "{}", words[1]);
        // Of what is not proved nobody vouches.
        for backing in [Some(checked), Some(vouched), None] {
            let words = said(2100, 1960, backing);
            assert!(words[0].starts_with(open), "{}", words[0]);
            assert_eq!(words[1], "");
        }
        // Nor of what costs nothing.
        assert_eq!(said(0, 0, Some(vouched))[1], "");
    }

    #[test]
    fn a_plan_taken_in_place_of_the_cheapest_is_told_beside_it() {
        let taken = |found| Some(Backing { in_place_of: Some(found), ..Backing::default() });
        assert_eq!(said(2100, 1960, taken(1960)), ["1.40 more than the cheapest plan.", ""]);
        assert_eq!(said(2100, 1900, taken(1960)), ["1.40 more than the best plan found.", ""]);
        assert_eq!(said(1960, 1960, taken(1960)), ["As much as the cheapest plan.", ""]);
    }

    #[test]
    fn what_the_rack_gives_is_told_as_far_as_it_is_known() {
        let words = |backing| Standing { cost_cents: 0, bound_cents: 0, backing }.from_rack();
        let proved = Backing { is_proved: true, ..Backing::default() };
        assert!(words(Some(proved)).starts_with("the rack gives no more"));
        assert_eq!(words(Some(Backing::default())), "more may be possible");
        assert_eq!(words(None), "as much as the rack gave when it was planned");
    }
}
