//! [`Route`]: which page an address shows.

use reckoner_core::calculators::{self, Listed};

/// A page, by the fragment of its address.
#[derive(Clone, Copy)]
pub enum Route<'a> {
    /// The list: `#/` or nothing.
    Home,
    /// `#/settings`
    Settings,
    /// `#/slug` or `#/slug?field=text`: the calculator and what stands after the question mark.
    Calculator(&'static Listed, Option<&'a str>),
    /// `#/cut` or `#/cut?field=text`: the quick list of the cut planner.
    Cut(Option<&'a str>),
    /// `#/jobs`: every job on this device.
    Jobs,
    /// `#/jobs/start`: the kinds of pieces that a job can begin from.
    Start,
    /// `#/jobs/removed`: every job that was taken off this device.
    Removed,
    /// `#/job/KEY` and what stands after it: a section, or an item.
    Job(&'a str, &'a str),
    /// `#/take`: the ways to take a job in; `#/take?PACKED`: one that was handed on as a link.
    Take(Option<&'a str>),
    /// `#/print/slug?field=text`: the full-size template of a calculator's answer.
    Print(&'static Listed, &'a str),
    /// `#/keep/slug?field=text`: a calculator that is to be kept in a job.
    Keep(&'static Listed, &'a str),
    /// `#/notices`: what the app is made of, and under which licences.
    Notices,
    /// A page that there is not.
    Unknown,
}

impl<'a> Route<'a> {
    /// Reads a fragment, with or without its `#`.
    #[must_use]
    pub fn read(fragment: &'a str) -> Route<'a> {
        let path = fragment.trim_start_matches('#').trim_start_matches('/');
        let (slug, query) = match path.split_once('?') {
            Some((slug, query)) => (slug, Some(query)),
            None => (path, None),
        };
        match slug.trim_end_matches('/') {
            "" => Route::Home,
            "settings" => Route::Settings,
            "notices" => Route::Notices,
            "cut" => Route::Cut(query.filter(|query| !query.is_empty())),
            "jobs" => Route::Jobs,
            "jobs/start" => Route::Start,
            "jobs/removed" => Route::Removed,
            "take" => Route::Take(query),
            job if job.starts_with("job/") => {
                let key = job.trim_start_matches("job/");
                let (key, rest) = key.split_once('/').unwrap_or((key, ""));
                Route::Job(key, rest)
            }
            keep if keep.starts_with("keep/") => {
                calculators::listed(keep.trim_start_matches("keep/"))
                    .map_or(Route::Unknown, |calculator| {
                        Route::Keep(calculator, query.unwrap_or(""))
                    })
            }
            print if print.starts_with("print/") => {
                let slug = print.trim_start_matches("print/");
                calculators::listed(slug).map_or(Route::Unknown, |calculator| {
                    Route::Print(calculator, query.unwrap_or(""))
                })
            }
            slug => calculators::listed(slug).map_or(Route::Unknown, |calculator| {
                Route::Calculator(calculator, query.filter(|query| !query.is_empty()))
            }),
        }
    }
}

/// The address of a calculator's page, without or with a query.
#[must_use]
pub fn address(slug: &str, query: &str) -> String {
    if query.is_empty() { format!("#/{slug}") } else { format!("#/{slug}?{query}") }
}

/// The address of the full-size template of a calculator's answer.
#[must_use]
pub fn to_print(slug: &str, query: &str) -> String {
    format!("#/print/{slug}?{query}")
}

/// The address of a job, or of a section or item in it.
#[must_use]
pub fn in_job(key: &str, rest: &str) -> String {
    if rest.is_empty() { format!("#/job/{key}") } else { format!("#/job/{key}/{rest}") }
}

/// The address of the page that keeps a calculator, with these entries, in a job.
#[must_use]
pub fn keep(slug: &str, query: &str) -> String {
    format!("#/keep/{slug}?{query}")
}
