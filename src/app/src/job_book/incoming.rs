//! Jobs that come in together, set against those that are here: what is here already stays out,
//! and nothing is overwritten. Pure.

use std::cell::OnceCell;
use std::collections::BTreeMap;

use reckoner_core::job::{Job, MOST_NAME, name_key, visible_title};
use reckoner_core::order::set_of;
use reckoner_formats::{Opened, open_job};

use super::book::Stored;

/// How a job that comes in stands to those that are here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// There is none of its name.
    New,
    /// It is here, the same.
    Here,
    /// It stands before in the same file, the same.
    Twice,
    /// There is one of its name, and it is another.
    Differs,
}

impl Standing {
    /// Whether it comes in unless the user says otherwise.
    #[must_use]
    pub fn is_wanted(self) -> bool {
        matches!(self, Standing::New | Standing::Differs)
    }
}

/// A title with a number behind it, as long as a title may be.
fn numbered(title: &str, number: u32) -> String {
    let number = format!(" {number}");
    let room = MOST_NAME.saturating_sub(number.len());
    let start: String = title.chars().take(room).collect();
    visible_title(&format!("{start}{number}"))
}

/// The longest number behind a title, with its space.
const LONGEST_NUMBER: usize = 11;

/// The keys under which a title may come from another: all of it, and what stands before a number, each with the length
/// of what stands behind.
fn ends(title: &str) -> Vec<(usize, String)> {
    let mut ends = vec![(0, name_key(title).into_owned())];
    if let Some((before, behind)) = title.rsplit_once(' ') {
        let is_number = behind.parse::<u32>().is_ok_and(|number| number.to_string() == behind);
        let end = (behind.len().saturating_add(1), name_key(before).into_owned());
        ends.extend(is_number.then_some(end));
    }
    ends
}

/// The keys of a title by the room that a number behind it takes.
fn starts(title: &str) -> Vec<String> {
    let start = |room: usize| title.chars().take(MOST_NAME.saturating_sub(room)).collect();
    let all = (0..=LONGEST_NUMBER).map(|room| -> String { start(room) });
    all.map(|start| name_key(&start).into_owned()).collect()
}

/// Whether a title is another one, as it is or with a number behind it.
fn is_from(ends: &[(usize, String)], starts: &[String]) -> bool {
    ends.iter().any(|(room, key)| starts.get(*room) == Some(key))
}

/// A job under another title.
#[must_use]
pub fn titled(job: &Job, title: &str) -> Job {
    let mut job = job.clone();
    job.title = visible_title(title);
    job
}

/// How each job that comes in stands to the jobs that are `here`.
#[must_use]
pub fn standings(incoming: &[Opened], here: &[Stored]) -> Vec<Standing> {
    // Only those of the same name are opened.
    let opened: Vec<OnceCell<Option<Job>>> = here.iter().map(|_| OnceCell::new()).collect();
    let titles: Vec<_> = here.iter().map(|it| ends(&it.title)).collect();
    let mut before: Vec<&Job> = Vec::new();
    let mut all = Vec::new();
    for Opened { job, .. } in incoming {
        let starts = starts(&job.title);
        let each = here.iter().zip(&opened).zip(&titles);
        let mut of_its_name = each.filter(|(_, ends)| is_from(ends, &starts));
        let is_here = of_its_name.clone().any(|((it, opened), _)| {
            let other = opened.get_or_init(|| open_job(&it.job).ok().map(|opened| opened.job));
            other.as_ref().is_some_and(|other| titled(job, &other.title) == *other)
        });
        let standing = if is_here {
            Standing::Here
        } else if before.iter().any(|other| other.title == job.title && *other == job) {
            Standing::Twice
        } else if of_its_name.any(|(_, ends)| is_from(ends.get(..1).unwrap_or_default(), &starts)) {
            Standing::Differs
        } else {
            Standing::New
        };
        before.push(job);
        all.push(standing);
    }
    all
}

/// The titles under which jobs come in, in their order: with a number where there is one of the
/// name `here` or before it.
pub fn titles<'a>(
    incoming: impl Iterator<Item = &'a str>,
    here: impl Iterator<Item = &'a str>,
) -> Vec<String> {
    let mut taken = set_of(here.map(|it| name_key(it).into_owned()));
    let mut last: BTreeMap<&str, u32> = BTreeMap::new();
    let free = |title: &'a str| {
        let mut free = title.to_owned();
        while taken.contains(&*name_key(&free)) {
            let number = last.entry(title).or_insert(1);
            *number = number.saturating_add(1);
            free = numbered(title, *number);
        }
        taken.insert(name_key(&free).into_owned());
        free
    };
    incoming.map(free).collect()
}

/// A number of things, in words.
#[must_use]
pub fn count(n: usize, one: &str, many: &str) -> String {
    if n == 1 { format!("1 {one}") } else { format!("{n} {many}") }
}

/// What a file of jobs holds, in a sentence.
#[must_use]
pub fn summary(standings: &[Standing], damaged: usize) -> String {
    let of = |wanted: &[Standing]| standings.iter().filter(|it| wanted.contains(it)).count();
    let parts = [
        (of(&[Standing::New, Standing::Differs]), "not here yet"),
        (of(&[Standing::Here]), "here already"),
        (of(&[Standing::Twice]), "in it twice"),
        (damaged, "damaged"),
    ];
    let parts: Vec<String> =
        parts.iter().filter(|(n, _)| *n > 0).map(|(n, words)| format!("{n} {words}")).collect();
    let all = standings.len().saturating_add(damaged);
    if parts.is_empty() {
        "No job is in this file.".to_owned()
    } else {
        format!("{} in this file: {}.", count(all, "job", "jobs"), parts.join(", "))
    }
}

/// What became of a file of jobs, in a sentence or two.
#[must_use]
pub fn result(came: usize, left: usize, damaged: usize) -> String {
    let mut words = format!("{} came in.", count(came, "job", "jobs"));
    if left > 0 {
        words.push_str(&format!(" {left} {} left out.", if left == 1 { "was" } else { "were" }));
    }
    if damaged > 0 {
        words.push_str(&format!(" {damaged} could not be opened."));
    }
    words
}

#[cfg(test)]
mod tests;
