//! Every way out of a form, and every fault that may come over it.

use std::time::Instant;

use serde_json::{Value, json};

use super::full::{FULL_AT_ONCE, FULL_AT_THE_END, Full};
use super::model::Place;
use super::tab::Tab;
use super::walk::{HOLD, Stop, Walk};
use super::wire::Trouble;

/// A browser that gives no database, as in some private modes.
const BLOCKED: &str = "IDBFactory.prototype.open = function () { throw new DOMException('blocked', 'InvalidStateError') }";

/// Asks for the database in a newer version, so that other windows must let go of it, and leaves it as it is.
const ASK_FOR_NEWER: &str = "
  const all = await indexedDB.databases();
  for (const { name, version } of all) {
    await new Promise((done) => {
      const open = indexedDB.open(name, version + 1);
      open.onupgradeneeded = () => open.transaction.abort();
      open.onerror = open.onsuccess = done;
      setTimeout(done, 1500);
    });
  }
  return true";

impl Walk<'_> {
    /// Leaves the form at hand, one way or another, and looks at it again.
    pub(super) fn way_out(&mut self, place: &Place) -> Result<(), Stop> {
        let weights = [
            14,
            12,
            8,
            self.most("reload", 9, 10),
            self.most("window closed", 9, 9),
            self.most("tab crashed", 3, 7),
            self.most("browser killed", 2, 8),
            self.most("second window", 3, 8),
            self.most("storage full", 1, 5),
            self.most("database closed", 2, 6),
            self.most("database wanted by another window", 1, 4),
            self.most("storage blocked", 1, 4),
            if self.next_release.is_some() { self.most("update", 1, 4) } else { 0 },
        ];
        match self.chance.weighted(&weights) {
            0 => self.arrow()?,
            1 => self.back()?,
            2 => self.link()?,
            3 => {
                self.fault("reload");
                self.reload()?;
                self.same_again(place)?;
            }
            4 => {
                self.fault("window closed");
                self.close_window(place)?;
            }
            5 => {
                self.after_a_frame()?;
                self.fault("tab crashed");
                self.crash(place)?;
            }
            6 => {
                self.after_a_frame()?;
                self.fault("browser killed");
                self.kill(place)?;
            }
            7 => return self.second_window(place),
            8 => return self.storage_full(),
            9 => {
                self.fault("database closed");
                self.script(
                    "for (const it of heldByTheWalk.splice(0)) { it.close(); it.dispatchEvent(new Event('close')) }
                     return true",
                )?;
                return Ok(());
            }
            10 => return self.wanted_by_another(place),
            11 => self.blocked()?,
            _ => self.update(place)?,
        }
        if self.chance.percent(12) { self.check_all() } else { self.check(place) }
    }

    /// The weight of a fault that a walk has so many times at most. Without room, and until what had none is in the
    /// database, there is none that the local storage does not stand.
    fn most(&self, kind: &str, most: usize, weight: usize) -> usize {
        let is_spent = self.told.faults.get(kind).is_some_and(|times| *times >= most);
        let is_stood = ["reload", "window closed", "tab crashed"].contains(&kind);
        let has_no_room = self.full.is_some() || self.is_making_room;
        if is_spent || (has_no_room && !is_stood) { 0 } else { weight }
    }

    /// Something that comes over the form right after a key or a tap: at once where the page goes by itself, a frame
    /// later where it is killed.
    pub(super) fn sudden(&mut self, place: &Place) -> Result<(), Stop> {
        if self.before.is_some() || !self.chance.percent(12) {
            return Ok(());
        }
        let weights = [
            10,
            self.most("window closed", 9, 9),
            self.most("tab crashed", 3, 7),
            self.most("browser killed", 2, 9),
        ];
        match self.chance.weighted(&weights) {
            0 => {
                self.fault("reload");
                self.reload()?;
                self.same_again(place)?;
            }
            1 => {
                self.fault("window closed");
                self.close_window(place)?;
            }
            2 => {
                self.after_a_frame()?;
                self.fault("tab crashed");
                self.crash(place)?;
            }
            _ => {
                self.after_a_frame()?;
                self.fault("browser killed");
                self.kill(place)?;
            }
        }
        self.check(place)
    }

    /// Waits for the frame that the promise allows, and then only for what has begun to be written by its end: how long
    /// a browser takes for that depends on the machine. Takes down how long it was.
    fn after_a_frame(&mut self) -> Result<(), Trouble> {
        let begun = Instant::now();
        self.script(
            "await Promise.race([sleep(100), new Promise((go) => setTimeout(() => requestAnimationFrame(go), 16))]);
             await until(() => window.begunByThePage === 0, 2000);
             return true",
        )?;
        self.told.frames.push(begun.elapsed());
        Ok(())
    }

    fn hash(&self) -> Result<String, Trouble> {
        let hash = self.script("return location.hash")?;
        Ok(hash.as_str().unwrap_or_default().to_owned())
    }

    fn wait_for_other(&self, than: &str) -> Result<(), Trouble> {
        let than = json!(than.split('?').next());
        self.wait("another page", &format!("isReady() && location.hash.split('?')[0] !== {than}"))
            .map(drop)
    }

    /// The arrow at the top, or the way home of a page beside the jobs.
    fn arrow(&mut self) -> Result<(), Trouble> {
        let hash = self.hash()?;
        // Under a keypad there is no arrow.
        let id = self.script("return ['back', 'home'].find((id) => test(id)) ?? null")?;
        let id = match id.as_str() {
            Some(id) => id.to_owned(),
            None => {
                self.close_keypad()?;
                let id = self.wait("an arrow", "['back', 'home'].find((id) => test(id))")?;
                id.as_str().unwrap_or_default().to_owned()
            }
        };
        self.tell("arrow at the top");
        self.tap(&id)?;
        self.wait_for_other(&hash)
    }

    /// The browser's Back.
    fn back(&mut self) -> Result<(), Trouble> {
        let history =
            self.wire().ask(&self.tab.session, "Page.getNavigationHistory", &json!({}))?;
        let now = usize::try_from(history["currentIndex"].as_u64().unwrap_or(0)).unwrap_or(0);
        let url = |at: usize| history["entries"][at]["url"].as_str().unwrap_or_default();
        let page = |at: usize| url(at).split('?').next().unwrap_or_default();
        // A page over which keys were opened has two entries; Back leaves both, once the keys are shut.
        let first = if now > 0 && page(now) == page(now - 1) { now - 1 } else { now };
        if first < 2 || page(first) == page(first - 1) || !url(first - 1).starts_with("http") {
            return self.arrow();
        }
        let hash = self.hash()?;
        self.tell("Back");
        // Keys, or a choice that the way through the fields came to.
        let open = "(test('keypad') || test('key-close'))";
        if self.script(&format!("return !!{open}"))? == Value::Bool(true) {
            self.script("history.back(); return true")?;
            self.wait("what was open is shut", &format!("!{open}"))?;
        }
        self.script("history.back(); return true")?;
        self.wait_for_other(&hash)
    }

    /// A section's tab where there is one, else an address from somewhere else.
    fn link(&mut self) -> Result<(), Trouble> {
        let hash = self.hash()?;
        let state = self.state()?;
        let sections: Vec<&str> =
            state["sections"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
        match self.chance.one(&sections).copied() {
            Some(section) => {
                self.tell(section);
                self.tap(section)?;
                self.wait("the section is drawn", "test('section-sizes')").map(drop)
            }
            None => {
                let to = self.chance.one(&["#/", "#/jobs", "#/settings"]).copied().unwrap_or("#/");
                self.tell(&format!("a link to {to}"));
                if hash == to {
                    return Ok(());
                }
                self.script(&format!("location.hash = '{to}'; return true"))?;
                self.wait_for_other(&hash)
            }
        }
    }

    /// Waits until the app has started in a page that was loaded, and looks at the form.
    pub(super) fn after_loading(&mut self, place: &Place) -> Result<(), Stop> {
        self.loaded()?;
        self.same_again(place)?;
        self.check(place)
    }

    /// A page beside the jobs is the same at once, not only when it is opened afresh: its address may be older than the
    /// last key.
    fn same_again(&self, place: &Place) -> Result<(), Stop> {
        if matches!(place, Place::Page(_)) { self.compare(place) } else { Ok(()) }
    }

    fn reload(&mut self) -> Result<(), Trouble> {
        self.script("loadAgain(); return true")?;
        self.wire().ask(&self.tab.session, "Page.reload", &json!({}))?;
        self.loaded()
    }

    fn loaded(&self) -> Result<(), Trouble> {
        self.wait("the app has started", "isReady()").map(drop)
    }

    pub(super) fn new_window(&self) -> Result<(String, String), Trouble> {
        self.browser.window(self.screen, &[HOLD])
    }

    /// Loads a form in the window at hand.
    pub(super) fn load(&self, place: &Place) -> Result<(), Trouble> {
        let url = format!("{}{}", self.server.url(), place.address(&self.model.job));
        self.tab.load(self.wire(), &url)?;
        self.wait("the app has started", "isReady() && (Object.keys(fields()).length || by('.trouble').length || test('section-sizes'))")
            .map(drop)
    }

    pub(super) fn close_tab(&self, tab: &Tab) -> Result<(), Trouble> {
        self.browser.ask("Target.closeTarget", &json!({ "targetId": tab.target })).map(drop)
    }

    fn close_window(&mut self, place: &Place) -> Result<(), Trouble> {
        let old = self.tab.clone();
        self.close_tab(&old)?;
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        self.stay_full()?;
        self.load(place)
    }

    fn crash(&mut self, place: &Place) -> Result<(), Trouble> {
        let old = self.tab.clone();
        self.wire().send(&old.session, "Page.crash", &json!({}))?;
        self.wire().wait_for_crash(&old.session)?;
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        self.stay_full()?;
        self.close_tab(&old)?;
        self.load(place)
    }

    fn kill(&mut self, place: &Place) -> Result<(), Trouble> {
        self.browser.kill_and_start_again()?;
        self.second.clear();
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        self.load(place)
    }

    /// No room for more on this device, for a few actions.
    fn storage_full(&mut self) -> Result<(), Stop> {
        self.fault("storage full");
        let way = if self.chance.percent(50) { FULL_AT_ONCE } else { FULL_AT_THE_END };
        self.script(&format!("{way}; return true"))?;
        self.full = Some(Full { actions: 2 + self.chance.below(4), way, script: Value::Null });
        Ok(self.stay_full()?)
    }

    /// A page that is loaded has no more room than the one before it.
    fn stay_full(&mut self) -> Result<(), Trouble> {
        let Some(way) = self.full.as_ref().map(|full| full.way) else { return Ok(()) };
        let source = json!({ "source": format!("{{ {way} }}") });
        let script =
            self.wire().ask(&self.tab.session, "Page.addScriptToEvaluateOnNewDocument", &source)?;
        self.full = self.full.take().map(|full| Full { script, ..full });
        Ok(())
    }

    /// There is room again: the app keeps by itself what it could not keep.
    pub(super) fn room_again(&mut self) -> Result<(), Stop> {
        self.tell("room again");
        if let Some(full) = self.full.take() {
            let session = &self.tab.session;
            self.wire().ask(session, "Page.removeScriptToEvaluateOnNewDocument", &full.script)?;
        }
        self.script("IDBObjectStore.prototype.put = window.putOfTheBrowser; return true")?;
        self.is_making_room = true;
        if let Some(place) = self.at.clone() {
            self.edit(&place)?;
        }
        self.is_making_room = false;
        self.wait("it says no longer that something is not kept", "!/not kept/i.test(words())")?;
        self.tab.frame(self.wire())?;
        self.reload()?;
        self.check_all()
    }

    /// Another window wants the database for itself, and lets it be.
    fn wanted_by_another(&mut self, place: &Place) -> Result<(), Stop> {
        self.fault("database wanted by another window");
        let first = self.tab.clone();
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        let url = format!("{}icons/icon.svg", self.server.url());
        self.tab.load(self.wire(), &url)?;
        let asked = self.tab.script(self.wire(), ASK_FOR_NEWER);
        self.close_tab(&self.tab.clone())?;
        self.tab = first;
        self.browser.ask("Target.activateTarget", &json!({ "targetId": self.tab.target }))?;
        asked?;
        self.at = Some(place.clone());
        self.edit(place)
    }

    /// The page is loaded while the browser gives no database, and then again with one.
    fn blocked(&mut self) -> Result<(), Stop> {
        self.fault("storage blocked");
        let source = json!({ "source": BLOCKED });
        let session = self.tab.session.clone();
        let script = self.wire().ask(&session, "Page.addScriptToEvaluateOnNewDocument", &source)?;
        self.go(&format!("#/job/{}", self.model.job))?;
        self.reload()?;
        self.wait("it says what is wrong", "words() !== ''")?;
        self.wire().ask(&session, "Page.removeScriptToEvaluateOnNewDocument", &script)?;
        self.reload()?;
        Ok(())
    }

    /// A new release is there, and taken.
    fn update(&mut self, place: &Place) -> Result<(), Stop> {
        let Some(folder) = self.next_release else { return Ok(()) };
        self.wait(
            "the release at hand is kept",
            "document.documentElement.dataset.offline === 'ready'",
        )?;
        self.fault("update");
        self.server.serve_folder(folder);
        self.script(
            "await (await navigator.serviceWorker.getRegistration()).update(); return true",
        )?;
        // Over a keypad there is no room for the offer.
        self.close_keypad()?;
        self.wait("the update is offered", "test('update-take')")?;
        self.tap("update-take")?;
        self.wait(
            "the new release is on the screen",
            &format!(
                "document.documentElement.getAttribute('{}') && isReady()",
                crate::release::MARK
            ),
        )?;
        self.at = Some(place.clone());
        Ok(())
    }
}
