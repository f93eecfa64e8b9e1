//! [`Conflict`]: why a step cannot be made.

use core::fmt;

use super::ItemId;

/// How many items a sentence names before it counts the rest.
const MOST_NAMED: usize = 5;

/// An item that two sides changed to different things.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clash {
    /// Which item.
    pub id: ItemId,
    /// Its name as it is now.
    pub name: String,
    /// What of it, in the words of its form: `as cut`, `piece 3, as cut`; `taken out` where it is not
    /// there any more. Empty for all of it.
    pub what: Vec<String>,
}

/// A step that would overwrite what somebody else changed, or that finds no room.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Conflict {
    /// The items in question.
    pub items: Vec<Clash>,
    /// Whether the title is in question.
    pub title: bool,
    /// What the job would have too many of, and how many it may have.
    pub full: Option<(&'static str, usize)>,
}

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some((what, most)) = self.full {
            return write!(
                f,
                "A job holds up to {most} {what}. Take one out, or begin another job."
            );
        }
        f.write_str("Changed elsewhere in the meantime: ")?;
        if self.title {
            f.write_str("the title")?;
        }
        for (at, clash) in self.items.iter().take(MOST_NAMED).enumerate() {
            let comma = if at > 0 || self.title { ", " } else { "" };
            write!(f, "{comma}{}", clash.name)?;
            if !clash.what.is_empty() {
                write!(f, " ({})", clash.what.join("; "))?;
            }
        }
        match self.items.len().saturating_sub(MOST_NAMED) {
            0 => {}
            more => write!(f, " and {more} more")?,
        }
        f.write_str(". Look at it, then change it again.")
    }
}

impl core::error::Error for Conflict {}
