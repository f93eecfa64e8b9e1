//! What this device and its browser do with the page and the jobs, in words. Pure.

/// Whether the page opens without a signal, as the shell found out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offline {
    /// Not known yet.
    Unknown,
    /// Nothing is kept, because the page did not come over https.
    NotSecure,
    /// Nothing is kept, because the browser has no service worker here: so it is in some private windows.
    NotAllowed,
    /// The first visit: files are on their way.
    GettingReady,
    /// They did not come; the next visit tries again.
    NotThisTime,
    /// Files are lost, and cannot be fetched now. The shell says how many.
    Missing,
    /// Every file is kept.
    Ready,
}

impl Offline {
    /// From what the shell says in `data-offline`; `is_secure` whether the browser calls the page a secure place.
    #[must_use]
    pub fn read(said: &str, is_secure: bool) -> Offline {
        match said {
            "none" if is_secure => Offline::NotAllowed,
            "none" => Offline::NotSecure,
            "getting" => Offline::GettingReady,
            "failed" => Offline::NotThisTime,
            "missing" => Offline::Missing,
            "ready" => Offline::Ready,
            _ => Offline::Unknown,
        }
    }

    /// One sentence; empty while nothing is known.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Offline::Unknown => "",
            Offline::NotSecure => {
                "This page is not kept on the device: it needs a signal to open. Open it over https to keep it."
            }
            Offline::NotAllowed => {
                "This page is not kept on the device: it needs a signal to open. Open it in a window that is not private."
            }
            Offline::GettingReady => "Getting ready for use without a signal.",
            Offline::NotThisTime => {
                "This page could not be made ready for use without a signal this time. It is tried again at the next visit."
            }
            Offline::Missing => "Not ready for use without a signal.",
            Offline::Ready => "Works without a signal.",
        }
    }
}

/// What the browser says about deleting what a page keeps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Promise {
    /// It says nothing.
    Unknown,
    /// It keeps the jobs until somebody deletes them.
    Given,
    /// It may delete them when room is short.
    Refused,
}

/// What is known of this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Device {
    /// Opening the page.
    pub offline: Offline,
    /// Keeping the jobs.
    pub promise: Promise,
    /// Whether the page can keep anything at all; not so in some private windows.
    pub has_storage: bool,
    /// Whether it was opened as an installed app.
    pub is_installed: bool,
    /// Whether the browser forgets pages that are not visited, see [`forgets`].
    pub forgets: bool,
}

impl Device {
    /// One line: what becomes of the jobs on this device, and what to do about it.
    #[must_use]
    pub fn jobs_words(&self) -> &'static str {
        if !self.has_storage {
            return "This browser keeps nothing for this page, as in a private window. \
                    Save each job as a file before you close it: Send and print, Save as a file.";
        }
        if self.forgets && !self.is_installed {
            return "This browser may delete your jobs after 7 days of use without a visit here. Put this page on the \
                    home screen or in the Dock (Share, Add), or save each job as a file.";
        }
        match (self.offline, self.promise) {
            (Offline::NotAllowed, _) => {
                "In a private window the jobs go when it is closed. Save each job as a file, or open this page in a usual window."
            }
            (_, Promise::Refused) if self.is_installed => {
                "The browser may delete your jobs when this device is short of room. Save each job as a file."
            }
            (_, Promise::Refused) => {
                "The browser may delete your jobs when this device is short of room. Install this page from the \
                 browser's menu, or save each job as a file."
            }
            (_, Promise::Given) => {
                "The jobs are on this device alone, and the browser keeps them. Save a job as a file to have it twice."
            }
            (_, Promise::Unknown) => {
                "The jobs are in this browser alone. Save each job as a file to have it twice."
            }
        }
    }
}

/// Whether a browser deletes what a page has kept after seven days of use without a visit to it,
/// unless the page was put on the home screen.
///
/// WebKit says so of itself: webkit.org, "Full Third-Party Cookie Blocking and More", 24 March
/// 2020. Every browser on an iPhone or iPad is WebKit; an iPad calls itself a Macintosh, and is told
/// by its touch screen.
#[must_use]
pub fn forgets(user_agent: &str, touch_points: i32) -> bool {
    let says = |name: &str| user_agent.contains(name);
    let is_hand_held = ["iPhone", "iPad", "iPod"].into_iter().any(says);
    let is_mac = says("Macintosh");
    let is_webkit = says("Safari/") && !["Chrome/", "Chromium/", "Edg/"].into_iter().any(says);
    is_hand_held || (is_mac && (touch_points > 1 || is_webkit))
}

#[cfg(test)]
mod tests {
    use super::*;

    const USUAL: Device = Device {
        offline: Offline::Ready,
        promise: Promise::Given,
        has_storage: true,
        is_installed: false,
        forgets: false,
    };

    #[test]
    fn only_a_page_with_every_file_kept_says_that_it_works_without_a_signal() {
        for said in ["", "none", "getting", "failed", "missing", "other"] {
            for is_secure in [true, false] {
                let words = Offline::read(said, is_secure).words();
                assert!(!words.starts_with("Works"), "{said}: {words}");
            }
        }
        assert_eq!(Offline::read("ready", true).words(), "Works without a signal.");
    }

    #[test]
    fn a_page_without_a_service_worker_says_why_and_what_to_do() {
        assert!(Offline::read("none", false).words().contains("https"));
        assert!(Offline::read("none", true).words().contains("not private"));
    }

    #[test]
    fn a_line_that_failed_is_not_called_a_private_window() {
        let offline = Offline::read("failed", true);
        assert!(offline.words().contains("tried again"), "{}", offline.words());
        let words = [offline.words(), Device { offline, ..USUAL }.jobs_words()];
        assert!(words.iter().all(|words| !words.contains("private")), "{words:?}");
    }

    #[test]
    fn every_danger_to_the_jobs_has_a_way_out() {
        let dangers = [
            Device { has_storage: false, ..USUAL },
            Device { forgets: true, ..USUAL },
            Device { promise: Promise::Refused, ..USUAL },
            Device { promise: Promise::Refused, is_installed: true, ..USUAL },
            Device { promise: Promise::Unknown, ..USUAL },
            Device { offline: Offline::NotAllowed, promise: Promise::Unknown, ..USUAL },
        ];
        let mut said: Vec<&str> = dangers.iter().map(Device::jobs_words).collect();
        assert!(said.iter().all(|words| words.contains("as a file")), "{said:?}");
        said.dedup();
        assert_eq!(said.len(), dangers.len(), "each its own sentence: {said:?}");
    }

    #[test]
    fn an_installed_app_is_not_told_to_install_and_not_that_it_is_forgotten() {
        let installed = Device { forgets: true, is_installed: true, ..USUAL };
        assert_eq!(installed.jobs_words(), USUAL.jobs_words());
        let refused = Device { promise: Promise::Refused, is_installed: true, ..USUAL };
        assert!(!refused.jobs_words().contains("Install"));
    }

    #[test]
    fn browsers_of_webkit_on_apples_devices_forget() {
        // Shortened from what the browsers send.
        let iphone = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 Version/18.5 Mobile/15E148 Safari/604.1";
        let chrome_there = "Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 CriOS/137.0 Mobile/15E148 Safari/604.1";
        let mac = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 Version/18.5 Safari/605.1.15";
        let chrome = "Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/537.36 Chrome/137.0.0.0 Safari/537.36";
        let firefox =
            "Mozilla/5.0 (Macintosh; Intel Mac OS X 10.15; rv:139.0) Gecko/20100101 Firefox/139.0";
        let android = "Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 Chrome/137.0.0.0 Mobile Safari/537.36";
        for (agent, touch) in [(iphone, 5), (chrome_there, 5), (mac, 0), (mac, 5)] {
            assert!(forgets(agent, touch), "{agent}");
        }
        for (agent, touch) in [(chrome, 0), (firefox, 0), (android, 5)] {
            assert!(!forgets(agent, touch), "{agent}");
        }
    }
}
