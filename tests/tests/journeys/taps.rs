//! How many taps it is from the first page, on a first visit, to what is asked most in a shop.

use reckoner_e2e::{App, Screen};

/// A first visit that counts its taps.
struct Counted {
    app: App,
    taps: usize,
}

impl Counted {
    fn begin() -> Counted {
        let app = App::open(Screen::PHONE);
        app.wait_for("home-tape");
        Counted { app, taps: 0 }
    }

    fn tap(&mut self, ids: &[&str]) {
        for id in ids {
            self.app.tap(id);
            self.taps += 1;
        }
    }

    fn keys(&mut self, keys: &[&str]) {
        for key in keys {
            self.tap(&[&format!("key-{key}")]);
        }
    }

    /// One of a list that opens: a tap on the list and one on the line.
    fn choose(&mut self, list: &str, value: &str) {
        self.app.wait_for(list);
        self.app.script(&format!(
            "const list = document.querySelector('select[id={list}]');
             list.value = '{value}'; list.dispatchEvent(new Event('change', {{ bubbles: true }}))"
        ));
        self.taps += 2;
    }

    /// The exact length of the headline.
    #[track_caller]
    fn wait_for_exact(&self, exact: &str) {
        self.app.wait_until(
            &format!("the headline is {exact}"),
            &format!(
                "const it = document.querySelector('.headline__value [data-exact]')?.dataset.exact;
                 return it === '{exact}' ? true : it",
            ),
        );
    }

    #[track_caller]
    fn assert(&self, what: &str, most: usize) {
        println!("{what}: {} taps", self.taps);
        assert!(self.taps <= most, "{what}: {} taps, {most} at the most", self.taps);
        self.app.assert_quiet_console();
    }
}

#[test]
fn a_decimal_is_a_mark_of_the_tape_in_eight() {
    let mut visit = Counted::begin();
    visit.tap(&["home-tape"]);
    visit.keys(&["3", "7", "point", "3", "1", "2", "5"]);
    visit.wait_for_exact("37 5/16 in");
    visit.assert("37.3125 in on the tape", 8);
}

#[test]
fn a_mark_of_the_tape_is_four_keys() {
    let mut visit = Counted::begin();
    visit.tap(&["home-tape"]);
    visit.taps = 0;
    visit.keys(&["3", "7", "page-16", "7/8"]);
    visit.wait_for_exact("37 7/8 in");
    visit.assert("37 7/8", 4);
}

#[test]
fn the_fence_for_strips_of_a_board_in_nine() {
    let mut visit = Counted::begin();
    visit.tap(&["home-resaw-rip", "question", "question-strips"]);
    visit.choose("field-board", "1x6");
    visit.tap(&["field-strip_width"]);
    visit.keys(&["1", "page-16", "1/4"]);
    // The fence, and that there are four of them.
    visit.app.wait_until(
        "there are four",
        "const it = document.querySelector('[data-testid=figure-n_strips] dd')?.innerText;
         return it === '4' ? true : it",
    );
    visit.wait_for_exact("1 1/4 in");
    visit.assert("fence for four 1 1/4 strips from a 1x6", 9);
}

#[test]
fn the_kerf_of_the_saw_is_set_in_four() {
    let mut visit = Counted::begin();
    visit.tap(&["home-resaw-rip", "field-kerf"]);
    visit.keys(&["page-16", "1/8"]);
    visit.app.wait_for_value("field-kerf", "1/8");
    visit.assert("kerf in Resaw", 4);
}

#[test]
fn six_screws_clear_of_the_middle_leg_in_fourteen() {
    let mut visit = Counted::begin();
    visit.tap(&["home-spacing", "question", "mode-count", "field-count"]);
    visit.keys(&["6", "close"]);
    visit.tap(&["field-keep_out-0"]);
    visit.keys(&["2", "1", "next", "2", "3", "close"]);
    visit.app.wait_for_words("figure-count", "6");
    visit.assert("six screws on a rail clear of the middle leg", 14);
}

#[test]
fn is_it_square_in_three() {
    let mut visit = Counted::begin();
    visit.tap(&["home-frame", "question", "question-square"]);
    visit.app.wait_for("field-diagonal_a");
    visit.app.wait_for_words("answer-headline", "Push");
    visit.assert("is it square", 3);
}
