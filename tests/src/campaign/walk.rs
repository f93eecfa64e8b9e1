//! One walk: a job, and random actions on every kind of form with every way out of it.

use std::collections::BTreeMap;
use std::path::Path;
use std::time::Duration;

use reckoner_devserver::{Compression, Server};
use serde_json::{Value, json};

use super::chance::Chance;
use super::chromium::Chromium;
use super::full::Full;
use super::model::{Form, Model, Place};
use super::tab::Tab;
use super::wire::{Trouble, Wire};
use crate::{Screen, release};

/// How long a text may take to be where it belongs before it counts as lost, in milliseconds: a busy machine is slow.
const LOST_AFTER: u32 = 20_000;
/// How long what stands in another window is looked at, in milliseconds: nothing is on its way there any more, but a list is
/// opened as text.
const LOOKED_AT: u32 = 500;

/// The calculators, by their addresses.
const CALCULATORS: [&str; 14] = [
    "angles",
    "crosscut",
    "curve",
    "dowel",
    "finish",
    "frame",
    "lumber",
    "moisture",
    "resaw-rip",
    "screws",
    "spacing",
    "strength",
    "tape",
    "top",
];

/// Pages that ask for the title under which a calculator is kept.
const KEEPING: [&str; 3] = ["keep/frame", "keep/spacing", "keep/tape"];

/// Keeps hold of the connections to the database, so that a walk can close them as a browser may, and counts the
/// writings that the browser has not acknowledged.
pub(super) const HOLD: &str = "(() => {
  const held = window.heldByTheWalk = [];
  const open = IDBFactory.prototype.open;
  IDBFactory.prototype.open = function (...all) {
    const request = open.apply(this, all);
    request.addEventListener('success', () => held.push(request.result));
    return request;
  };
  window.begunByThePage = 0;
  const begin = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...all) {
    const begun = begin.apply(this, all);
    if (begun.mode === 'readwrite') {
      window.begunByThePage++;
      for (const end of ['complete', 'abort']) begun.addEventListener(end, () => window.begunByThePage--);
    }
    return begun;
  };
})()";

/// Why a walk ended before its end.
pub(super) enum Stop {
    /// Something does not stand that must.
    Loss(String),
    /// The walk could not go on.
    Stuck(Trouble),
}

impl From<Trouble> for Stop {
    fn from(words: Trouble) -> Stop {
        Stop::Stuck(words)
    }
}

/// What was done, for the person who reads of a loss.
#[derive(Default)]
pub(super) struct Told {
    pub(super) actions: Vec<String>,
    pub(super) faults: BTreeMap<&'static str, usize>,
    /// How long the frames were after which the page or the browser was killed.
    pub(super) frames: Vec<Duration>,
}

pub(super) struct Walk<'a> {
    pub(super) browser: &'a mut Chromium,
    pub(super) server: Server,
    pub(super) screen: Screen,
    pub(super) tab: Tab,
    /// Windows that were left open.
    pub(super) second: Vec<Tab>,
    /// What stood in the form at hand before a second window was opened on it, while that is at hand and the first waits.
    pub(super) before: Option<BTreeMap<String, String>>,
    pub(super) chance: Chance,
    pub(super) model: Model,
    /// The form at hand, if there is one.
    pub(super) at: Option<Place>,
    pub(super) told: Told,
    /// Numbers for names, so that no two are alike.
    pub(super) count: usize,
    /// While the storage is full.
    pub(super) full: Option<Full>,
    /// There is room again, and what had none is not in the database yet.
    pub(super) is_making_room: bool,
    /// The release that is served next.
    pub(super) next_release: Option<&'a Path>,
}

impl<'a> Walk<'a> {
    /// Begins a walk on an origin of its own, so that nothing of another is there.
    pub(super) fn begin(
        browser: &'a mut Chromium,
        seed: u64,
        next_release: Option<&'a Path>,
    ) -> Result<Walk<'a>, Trouble> {
        let address = std::net::SocketAddr::from((std::net::Ipv4Addr::LOCALHOST, 0));
        let server = Server::at(address, release::built(), Compression::Never)
            .map_err(|error| format!("the server does not start: {error}"))?;
        let mut chance = Chance::of(seed);
        let screen = if chance.percent(70) { Screen::PHONE } else { Screen::DESKTOP };
        let (target, session) = browser.window(screen, &[HOLD])?;
        let mut walk = Walk {
            browser,
            server,
            screen,
            tab: Tab { target, session },
            second: Vec::new(),
            before: None,
            chance,
            model: Model::default(),
            at: None,
            told: Told::default(),
            count: 0,
            full: None,
            is_making_room: false,
            next_release,
        };
        walk.begin_job()?;
        Ok(walk)
    }

    fn begin_job(&mut self) -> Result<(), Trouble> {
        let is_demo = self.chance.percent(60);
        self.tab.load(self.wire(), &format!("{}#/jobs", self.server.url()))?;
        self.wait(
            "the shelf is read",
            "isReady() && by('[data-testid=jobs], main .job__words').length > 0",
        )?;
        let button = if is_demo { "open-demo" } else { "new-job" };
        self.tap(button)?;
        let hash = self.tab.wait(
            self.wire(),
            "a job is open",
            "location.hash.startsWith('#/job/') && test('section-sizes') && location.hash",
        )?;
        let hash = hash.as_str().unwrap_or_default();
        self.model.job = hash.split('/').nth(2).unwrap_or_default().to_owned();
        self.tell(&format!("{button} at {}x{}", self.screen.width, self.screen.height));
        Ok(())
    }

    pub(super) fn wire(&self) -> &Wire {
        &self.browser.wire
    }

    pub(super) fn tell(&mut self, action: &str) {
        self.told.actions.push(action.to_owned());
    }

    pub(super) fn fault(&mut self, kind: &'static str) {
        *self.told.faults.entry(kind).or_default() += 1;
        if self.full.is_some() {
            *self.told.faults.entry("of these, without room").or_default() += 1;
        }
        self.tell(kind);
    }

    pub(super) fn n_faults(&self) -> usize {
        self.told.faults.values().sum()
    }

    pub(super) fn tap(&self, id: &str) -> Result<(), Trouble> {
        self.tab.tap(self.wire(), &format!("[data-testid={}]", json!(id)))
    }

    pub(super) fn script(&self, body: &str) -> Result<Value, Trouble> {
        self.tab.patient(self.wire(), body)
    }

    pub(super) fn wait(&self, what: &str, expression: &str) -> Result<Value, Trouble> {
        self.tab.wait(self.wire(), what, expression)
    }

    pub(super) fn state(&self) -> Result<Value, Trouble> {
        self.script("return state()")
    }

    /// Goes to an address within the app, and waits until its page is drawn.
    pub(super) fn go(&self, address: &str) -> Result<(), Trouble> {
        let wanted = json!(address);
        self.script(&format!(
            "if (location.hash !== {wanted}) {{
               const heard = new Promise((go) => addEventListener('hashchange', go, {{ once: true }}));
               location.hash = {wanted};
               await heard; await sleep(0);
             }}
             return true"
        ))?;
        self.drawn(address)
    }

    fn drawn(&self, address: &str) -> Result<(), Trouble> {
        let there = if address.ends_with("/parts") || address.ends_with("/rack") {
            "test('parts') || test('rack') || by('.trouble').length"
        } else {
            "Object.keys(fields()).length || by('.trouble').length || by('[data-testid=section-sizes], [data-testid=new-job], [data-testid=to-jobs]').length"
        };
        let hash = json!(address);
        self.wait(
            &format!("{address} is drawn"),
            &format!("isReady() && location.hash.startsWith({hash}) && ({there})"),
        )?;
        Ok(())
    }

    /// Opens a form afresh: from another page.
    pub(super) fn open(&mut self, place: &Place) -> Result<(), Trouble> {
        let address = place.address(&self.model.job);
        let now = self.script("return location.hash")?;
        let here = now.as_str().unwrap_or_default();
        if here.split('?').next() == Some(address.as_str()) {
            self.go(if here.starts_with("#/job/") { "#/jobs" } else { "#/" })?;
        }
        self.go(&address)?;
        self.at = Some(place.clone());
        // What is seldom asked is folded away while nothing is said of it. A finger that misses it taps again.
        for _ in 0..3 {
            if self.script("return !!test('more-fields')")? == json!(false) {
                return Ok(());
            }
            self.tap("more-fields")?;
            if self.script("return await until(() => !test('more-fields'), 500)")? == json!(true) {
                return Ok(());
            }
            self.tell("a tap on more-fields did nothing");
        }
        Err("all fields were asked for three times, and are not there".to_owned())
    }

    /// Opens a form, and takes down what stands in it if that is not known yet.
    pub(super) fn learn(&mut self, place: &Place) -> Result<(), Stop> {
        self.open(place)?;
        if self.model.forms.contains_key(place) {
            return self.check(place);
        }
        let state = self.state()?;
        let fields = state["fields"].as_object().cloned().unwrap_or_default();
        let is_kept = fields.contains_key("kept-title");
        let mut form = Form::default();
        for (field, it) in &fields {
            // What a calculator starts from follows the settings; what a tick is, its piece.
            let is_known = match place {
                Place::Item(_) => field == "kept-title" || !is_kept,
                Place::Piece(..) => true,
                Place::Section(name) => name.is_empty(),
                Place::Draft(_) | Place::Page(_) => false,
            };
            if is_known {
                form.set(field, it["text"].as_str().unwrap_or_default());
            }
        }
        self.model.forms.insert(place.clone(), form);
        Ok(())
    }

    /// Compares a form, opened afresh, with what must stand in it.
    pub(super) fn check(&mut self, place: &Place) -> Result<(), Stop> {
        self.open(place)?;
        self.compare(place)
    }

    /// Compares the form at hand with what must stand in it.
    pub(super) fn compare(&self, place: &Place) -> Result<(), Stop> {
        let wrong = self.lost(place, LOST_AFTER)?;
        if wrong.is_empty() {
            return Ok(());
        }
        let page = self.script("return words()")?;
        Err(Stop::Loss(format!(
            "{place:?}:{}\n    the page says: {page}",
            wrong
                .iter()
                .map(|it| format!(
                    "\n    {} expected {} found {}",
                    it["id"].as_str().unwrap_or_default(),
                    it["wanted"],
                    it["found"]
                ))
                .collect::<String>()
        )))
    }

    /// The fields that are as they must be in no window.
    pub(super) fn lost(&self, place: &Place, patience: u32) -> Result<Vec<Value>, Trouble> {
        let mut wrong = self.wrong_in(&self.tab, place, patience)?;
        // A text that cannot go into the job stays in the window where it was typed, for as long as that is open. Nobody
        // expects it in both: in a second window, what the first had typed; in the first, what one that was left open has.
        if let Some(before) = &self.before {
            let is_of_first = |it: &Value| {
                let text = it["id"].as_str().and_then(|field| before.get(field));
                text.is_some_and(|text| it["wanted"] == json!(text))
            };
            wrong.retain(|it| !is_of_first(it));
        }
        if self.model.forms.get(place).is_some_and(|form| form.is_shared) {
            for tab in &self.second {
                let there = self.wrong_in(tab, place, LOOKED_AT)?;
                wrong.retain(|it| there.iter().any(|other| other["id"] == it["id"]));
            }
        }
        Ok(wrong)
    }

    /// The fields that are not as they must be in a window.
    fn wrong_in(&self, tab: &Tab, place: &Place, patience: u32) -> Result<Vec<Value>, Trouble> {
        let Some(form) = self.model.forms.get(place) else { return Ok(Vec::new()) };
        let question = format!(
            "return await check({}, {}, {}, {patience})",
            form.wanted(),
            form.is_shared,
            matches!(place, Place::Page(_)),
        );
        let wrong = tab.patient(self.wire(), &question)?;
        Ok(wrong.as_array().cloned().unwrap_or_default())
    }

    /// Compares everything that is known.
    pub(super) fn check_all(&mut self) -> Result<(), Stop> {
        let places: Vec<Place> = self.model.forms.keys().cloned().collect();
        for place in places {
            self.check(&place)?;
        }
        self.check_lists()
    }

    /// Items that were put in are listed, those taken out are not.
    fn check_lists(&mut self) -> Result<(), Stop> {
        for id in self.model.gone.keys().copied().collect::<Vec<_>>() {
            self.open(&Place::Item(id))?;
            if self.script("return Object.keys(fields()).length")? != json!(0) {
                return Err(Stop::Loss(format!("item {id} was taken out and is there again")));
            }
        }
        Ok(())
    }

    /// One action, and a look at what must stand after it.
    pub(super) fn step(&mut self) -> Result<(), Stop> {
        match &mut self.full {
            Some(full) if full.actions == 0 => return self.room_again(),
            Some(full) => full.actions -= 1,
            None => {}
        }
        match self.at.clone() {
            None => self.choose_place(),
            Some(place) if self.chance.percent(60) => {
                self.edit(&place)?;
                self.says_so(&place)
            }
            Some(place) => {
                if self.chance.percent(25) {
                    self.choose_place()
                } else {
                    self.way_out(&place)
                }
            }
        }
    }

    /// While there is no room, a page of the job says that something is not kept.
    fn says_so(&self, place: &Place) -> Result<(), Stop> {
        if self.full.is_none() || matches!(place, Place::Page(_)) || self.at.as_ref() != Some(place)
        {
            return Ok(());
        }
        // Where nothing more was to be written, nothing is said: it would be wrong.
        let said = self.script(
            "const end = performance.now() + 5000;
             const isWritten = () => refused === 0 && performance.now() > end;
             return await until(() => /not kept/i.test(words()) || isWritten(), 20000)",
        )?;
        if said == Value::Null {
            return Err(Stop::Loss(format!("{place:?}: not kept, and nothing says so")));
        }
        Ok(())
    }

    /// Goes to a form: of the job, of something new, or beside it.
    fn choose_place(&mut self) -> Result<(), Stop> {
        let known: Vec<Place> = self.model.forms.keys().cloned().collect();
        match self.chance.weighted(&[28, 22, 8, 4, 8, 20, 8, 6, 5, 8]) {
            0 => self.reach_an_item(),
            1 => self.reach_something_new(),
            2 => self.reach_a_piece(),
            3 => self.visit(Place::Section("")),
            4 => self.visit(Place::Section("parts")),
            5 => {
                let slug = match self.chance.weighted(&[55, 20, 12, 8, 5]) {
                    0 => self.chance.one(&CALCULATORS).copied().unwrap_or("frame"),
                    1 => "cut",
                    2 => "settings",
                    3 => self.chance.one(&KEEPING).copied().unwrap_or("keep/tape"),
                    _ => "take",
                };
                self.visit(Place::Page(slug))
            }
            6 => match self.chance.one(&known).cloned() {
                Some(place) => self.visit(place),
                None => self.reach_an_item(),
            },
            7 => self.undo(),
            8 => self.visit(Place::Section("rack")),
            _ => self.visit(Place::Section("boards")),
        }
    }

    pub(super) fn visit(&mut self, place: Place) -> Result<(), Stop> {
        self.tell(&format!("go to {place:?}"));
        self.learn(&place)
    }

    /// The items that a section lists.
    pub(super) fn listed(&self, section: &str) -> Result<Vec<u64>, Trouble> {
        let address = format!("#/job/{}/{section}", self.model.job);
        self.go(&address)?;
        self.wait("the section is drawn", "test('section-sizes')")?;
        let items = self.script("return state().items")?;
        Ok(items.as_array().into_iter().flatten().filter_map(Value::as_u64).collect())
    }

    fn reach_an_item(&mut self) -> Result<(), Stop> {
        let section =
            self.chance.one(&["sizes", "parts", "kept", "rack"]).copied().unwrap_or_default();
        let items = self.listed(section)?;
        let Some(id) = self.chance.one(&items).copied() else {
            self.at = None;
            return self.reach_something_new();
        };
        let css = format!("a.row[href=\"#/job/{}/item/{id}\"]", self.model.job);
        self.tell(&format!("tap item {id}"));
        self.tab.tap(self.wire(), &css)?;
        self.drawn(&Place::Item(id).address(&self.model.job))?;
        self.learn(&Place::Item(id))
    }

    fn reach_a_piece(&mut self) -> Result<(), Stop> {
        let parts = self.listed("parts")?;
        let Some(id) = self.chance.one(&parts).copied() else { return self.reach_something_new() };
        self.learn(&Place::Item(id))?;
        let pieces = self.script("return by('[data-testid^=piece-]').length")?;
        let most = usize::try_from(pieces.as_u64().unwrap_or(0)).unwrap_or(0).min(20);
        if most == 0 {
            return Ok(());
        }
        let index = u64::try_from(self.chance.below(most)).unwrap_or(0);
        self.visit(Place::Piece(id, index))
    }

    fn reach_something_new(&mut self) -> Result<(), Stop> {
        let all = ["measure", "part", "board", "yard", "round", "saw", "screw", "match", "kept"];
        let form = self.chance.one(&all).copied().unwrap_or("measure");
        if form == "kept" {
            return self.keep_a_reckoning();
        }
        self.visit(Place::Draft(form.to_owned()))
    }

    fn keep_a_reckoning(&mut self) -> Result<(), Stop> {
        if self.full.is_some() {
            return Ok(());
        }
        let before = self.listed("kept")?;
        let slug = self.chance.one(&CALCULATORS).copied().unwrap_or("frame");
        let id = format!("keep-{slug}");
        if self.script(&format!("return !!test({})", json!(id)))? == json!(false) {
            return Ok(());
        }
        self.tell(&id);
        self.tap(&id)?;
        let hash = self.wait("it is kept", "location.hash.includes('/item/') && location.hash")?;
        let id = hash.as_str().and_then(|it| it.rsplit('/').next()?.parse().ok()).unwrap_or(0);
        if before.contains(&id) {
            return Err(Stop::Stuck(format!("kept item {id} was there before")));
        }
        self.model.own.insert(id);
        self.learn(&Place::Item(id))
    }
}

impl Walk<'_> {
    /// The end of a walk: the page is loaded anew, and everything compared.
    pub(super) fn end(&mut self) -> Result<(), Stop> {
        if self.full.is_some() {
            self.room_again()?;
        }
        self.tell("the end: loaded anew");
        self.close_all()?;
        self.check_all()
    }

    /// Begins again with what stands now, after a loss.
    pub(super) fn forget(&mut self) {
        self.before = None;
        self.is_making_room = false;
        self.model.forms.clear();
        self.model.gone.clear();
        self.model.own.clear();
        self.at = None;
    }

    fn close_all(&mut self) -> Result<(), Trouble> {
        for tab in std::mem::take(&mut self.second) {
            self.close_tab(&tab)?;
        }
        let last = self.tab.clone();
        let (target, session) = self.new_window()?;
        self.tab = Tab { target, session };
        self.close_tab(&last)?;
        self.load(&Place::Section("parts"))
    }
}
