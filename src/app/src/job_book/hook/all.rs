//! Every job of the device, with what was done to it and is not in its record yet.

use std::collections::BTreeMap;

use reckoner_core::sheet::Bench;

use super::{ALL, OnPage};
use crate::job_book::book::Stored;
use crate::platform::database::Problem;
use crate::platform::shelf::{self, Card};

/// Every job in a list, the one changed last first.
pub(crate) async fn cards(bench: &Bench) -> Result<Vec<Card>, Problem> {
    let (mut cards, ahead) = with_what_is_ahead(bench, shelf::cards).await?;
    for on_page in &ahead {
        let card = cards.iter_mut().find(|card| card.key == on_page.key());
        if let Some((card, book)) = card.zip(on_page.book()) {
            card.title.clone_from(&book.job.title);
        }
    }
    Ok(cards)
}

/// Every job as its record would be, by its key; those of this page that found no room as well.
pub(crate) async fn jobs(bench: &Bench) -> Result<BTreeMap<String, Stored>, Problem> {
    let (stored, ahead) = with_what_is_ahead(bench, shelf::jobs).await?;
    let mut jobs: BTreeMap<String, Stored> = BTreeMap::new();
    jobs.extend(stored);
    for on_page in &ahead {
        if let Some(book) = on_page.book() {
            jobs.insert(on_page.key().to_owned(), book.stored());
        }
    }
    Ok(jobs)
}

/// What is read of the shelf, with the jobs of this page that were ahead of it then.
async fn with_what_is_ahead<T, R>(
    bench: &Bench,
    read: impl FnOnce() -> R,
) -> Result<(T, Vec<OnPage>), Problem>
where
    R: Future<Output = Result<T, Problem>>,
{
    // What pages that live no more had done goes in first, as when the job is opened.
    for key in shelf::left_behind().await? {
        OnPage::of(&key).fetch(bench).await;
    }
    // What is sent meanwhile may have been read or not.
    let mut ahead = ahead_of_the_shelf();
    let read = read().await?;
    ahead.extend(ahead_of_the_shelf());
    Ok((read, ahead))
}

/// The jobs of this page that are not, or not wholly, in their records.
fn ahead_of_the_shelf() -> Vec<OnPage> {
    let on_pages: Vec<OnPage> = ALL.with_borrow(|all| all.values().cloned().collect());
    let is_ahead =
        |it: &OnPage| it.is_there() && (it.0.is_new.get() || !it.0.waiting.borrow().is_empty());
    on_pages.into_iter().filter(is_ahead).collect()
}
