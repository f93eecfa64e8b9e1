//! The settings: the user's tape, saw and hand, and how the page looks.
//!
//! They are asked by a form like any calculator's, and kept as the same kind of text.

#[cfg(test)]
mod tests;
#[cfg(target_arch = "wasm32")]
mod view;

#[cfg(target_arch = "wasm32")]
pub(crate) use view::{SettingsPage, kept};

use reckoner_core::calculators::{Calculator, Stage};
use reckoner_core::measure::text::{NoNames, exact_text};
use reckoner_core::measure::{Fineness, Length, Tape};
use reckoner_core::sheet::{
    Answer, Ask, Bench, Choice, Entries, Field, Kind, OnHand, Own, Side, Start, When,
};

/// Which hand holds the phone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// The left.
    Left,
    /// The right.
    Right,
}

/// When an answer is read aloud.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Aloud {
    /// Never; the button is not there.
    Never,
    /// When its button is tapped.
    OnTap,
    /// Each new answer, by itself, as well.
    Always,
}

/// The settings, worked out from what was chosen and typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Settings {
    /// Tape, saw and limits.
    pub bench: Bench,
    /// Hand.
    pub hand: Hand,
    /// `auto`, `light`, `dark` or `outdoor`.
    pub theme: &'static str,
    /// Answers to be read across the bench.
    pub is_big: bool,
    /// Reading aloud.
    pub aloud: Aloud,
}

impl Default for Settings {
    fn default() -> Settings {
        Settings::of(&Entries::default())
    }
}

impl Settings {
    /// The bench that the settings start from, on the chosen tape.
    #[must_use]
    pub fn usual_bench(&self) -> Bench {
        Bench { tape: self.bench.tape, ..Bench::default() }
    }

    /// Works the settings out. What cannot be read counts as not changed.
    #[must_use]
    pub fn of(entries: &Entries) -> Settings {
        let usual = Bench::default();
        let mut ask = Ask::new(SETTINGS.fields, entries, &usual, &NoNames);
        let fineness = ask.choice(&FINENESS).id.parse().ok().and_then(Fineness::from_denominator);
        let fineness = fineness.unwrap_or(Fineness::Sixteenth);
        let tape = match ask.choice(&TAPE).id {
            "feet" => Tape::FeetAndInches(fineness),
            "decimal" => Tape::DecimalInches(3),
            "mm" => Tape::Millimetres(0),
            "mm_half" => Tape::HalfMillimetres,
            "mm_tenths" => Tape::Millimetres(1),
            _ => Tape::Inches(fineness),
        };
        let fence = if ask.choice(&FENCE).id == "left" { Side::Left } else { Side::Right };
        let hand = if ask.choice(&HAND).id == "left" { Hand::Left } else { Hand::Right };
        let aloud = match ask.choice(&ALOUD).id {
            "never" => Aloud::Never,
            "always" => Aloud::Always,
            _ => Aloud::OnTap,
        };
        // What was never set is an example of ours, and so is what cannot be read.
        let size = |field: &Field, read: Option<Length>, usual: Length| match read {
            Some(length) => (length, entries.text(field.id).is_some()),
            None => (usual, false),
        };
        let (kerf, has_kerf) = size(&KERF, ask.kerf(&KERF), usual.kerf);
        let (blade_reach, has_reach) =
            size(&BLADE_REACH, ask.length(&BLADE_REACH), usual.blade_reach);
        let (thinnest_strip, has_thinnest) =
            size(&THINNEST_STRIP, ask.length(&THINNEST_STRIP), usual.thinnest_strip);
        let own = Own {
            kerf: has_kerf,
            blade_reach: has_reach,
            fence: entries.text(FENCE.id).is_some(),
            thinnest_strip: has_thinnest,
        };
        Settings {
            bench: Bench { tape, kerf, blade_reach, fence, thinnest_strip, own },
            hand,
            theme: ask.choice(&THEME).id,
            is_big: ask.yes(&BIG),
            aloud,
        }
    }
}

/// What a choice in their form changes beside it: another tape changes what bare numbers mean, and gives them units.
#[must_use]
pub fn along(_: &Entries, after: Entries) -> Entries {
    settled(after)
}

/// The settings with bare numbers in the unit of the chosen tape, and every length as it was.
///
/// A kerf of `1/8` typed for a tape in inches is still 1/8 in when the tape is in millimetres.
#[must_use]
pub fn settled(entries: Entries) -> Entries {
    let unit = Settings::of(&entries).bench.tape.unit();
    if entries.unit() == Some(unit) {
        return entries;
    }
    let mut settled = with_units(SETTINGS.fields, &entries, &Bench::default());
    settled.set_unit(Some(unit));
    settled
}

/// The entries with every length that was typed as a bare number given its unit, so that it
/// stays the same length when bare numbers take another unit from now on.
///
/// What cannot be read stays as it is.
#[must_use]
pub fn with_units(fields: &'static [Field], entries: &Entries, bench: &Bench) -> Entries {
    let mut fixed = entries.clone();
    let mut ask = Ask::new(fields, entries, bench, &NoNames);
    let exact =
        |lengths: Vec<Length>| lengths.into_iter().map(exact_text).collect::<Vec<_>>().join(", ");
    for field in fields.iter().filter(|field| entries.text(field.id).is_some()) {
        let text = match field.kind {
            Kind::Length(_) | Kind::OptionalLength(_) => ask.length(field).map(exact_text),
            Kind::Lengths => ask.lengths(field).map(exact),
            Kind::OnHand => ask
                .on_hand(field)
                .map(|boards| boards.iter().map(OnHand::text).collect::<Vec<_>>().join(", ")),
            Kind::Spans => ask.spans(field).map(|spans| {
                let zones = spans
                    .iter()
                    .map(|span| format!("{} to {}", exact_text(span.from), exact_text(span.to)));
                zones.collect::<Vec<_>>().join(", ")
            }),
            Kind::Number { .. } => Some(ask.number_with_unit(field)),
            Kind::Sizes => ask
                .sizes(field)
                .map(|parts| parts.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")),
            _ => None,
        };
        if let Some(text) = text {
            fixed.set(field.id, text);
        }
    }
    fixed
}

/// Texts with some fields as they are in others.
#[must_use]
pub fn with_fields(texts: &Entries, fields: &[&str], others: &Entries) -> Entries {
    let own = texts.pairs().filter(|(id, _)| !fields.contains(id));
    let theirs = others.pairs().filter(|(id, _)| fields.contains(id));
    let mut merged = Entries::from_pairs(own.chain(theirs));
    merged.set_unit(texts.unit());
    merged
}

/// What is to be kept of the settings when they are changed in this window from `before` to `after`, while `there` stands
/// there, which another window may have kept: what was changed here, and nothing else.
#[must_use]
pub fn folded(there: &Entries, before: &Entries, after: &Entries) -> Entries {
    if there == before {
        return after.clone();
    }
    // In a window with another tape a bare number is another length.
    let whole = |entries: &Entries| with_units(SETTINGS.fields, entries, &Bench::default());
    let (was, is) = (whole(before), whole(after));
    let ids = SETTINGS.fields.iter().map(|field| field.id);
    let changed: Vec<&str> = ids.filter(|id| was.text(id) != is.text(id)).collect();
    let mine = if there.unit() == after.unit() { after } else { &is };
    settled(with_fields(there, &changed, mine))
}

/// The settings as a form. It has no answer of its own.
pub static SETTINGS: Calculator = Calculator {
    slug: "settings",
    title: "Settings",
    question: "Your tape, your saw, your hand.",
    stage: Stage::Measure,
    fields: FIELDS,
    results: &[],
    work,
};

fn work(ask: &mut Ask) -> Option<Answer> {
    ask.kerf(&KERF);
    for field in [&BLADE_REACH, &THINNEST_STRIP] {
        ask.length(field);
    }
    // What is read and was never set is an example of ours.
    let _side = ask.choice(&FENCE);
    None
}

const fn choice(id: &'static str, label: &'static str) -> Choice {
    Choice::new(id, label)
}

const fn chosen(
    id: &'static str,
    label: &'static str,
    hint: &'static str,
    choices: &'static [Choice],
    start: &'static str,
) -> Field {
    Field::new(id, label, hint, Kind::Choice(choices), Start::Text(start))
}

const fn length(id: &'static str, label: &'static str, hint: &'static str, start: Start) -> Field {
    Field::new(id, label, hint, Kind::ABOVE_ZERO, start)
}

const TAPE: Field = chosen(
    "tape",
    "Tape",
    "how sizes are shown",
    &[
        choice("inches", "Inches"),
        choice("feet", "Feet and inches"),
        choice("decimal", "Decimal inches"),
        choice("mm", "mm"),
        choice("mm_half", "Halves of a mm"),
        choice("mm_tenths", "Tenths of a mm"),
    ],
    "inches",
);
const FINENESS: Field = Field {
    when: When::Chosen(TAPE.id, &["inches", "feet"]),
    ..chosen(
        "fineness",
        "Finest mark",
        "on your tape",
        &[
            choice("2", "1/2"),
            choice("4", "1/4"),
            choice("8", "1/8"),
            choice("16", "1/16"),
            choice("32", "1/32"),
            choice("64", "1/64"),
        ],
        "16",
    )
};
const KERF: Field = length("kerf", "Kerf", "width of your saw cut", Start::Kerf);
const BLADE_REACH: Field =
    length("blade_reach", "Blade reach", "deepest cut at 90°", Start::BladeReach);
const FENCE: Field = Field {
    start: Start::Fence,
    ..chosen(
        "fence",
        "Fence stands",
        "seen from where you stand at the saw",
        &[choice("left", "Left of the blade"), choice("right", "Right of the blade")],
        "",
    )
};
const THINNEST_STRIP: Field = length(
    "thinnest_strip",
    "Thinnest strip",
    "that you cut between blade and fence",
    Start::ThinnestStrip,
);
const HAND: Field = chosen(
    "hand",
    "Hand",
    "the one that types",
    &[choice("left", "Left"), choice("right", "Right")],
    "right",
);
const THEME: Field = chosen(
    "theme",
    "Light",
    "",
    &[
        choice("auto", "As the phone"),
        choice("light", "Paper"),
        choice("dark", "Dark"),
        choice("outdoor", "Outdoors"),
    ],
    "auto",
);
const BIG: Field =
    Field::new("big", "Big answers", "to read across the bench", Kind::YesNo, Start::Text("no"));
const ALOUD: Field = chosen(
    "aloud",
    "Read answers aloud",
    "",
    &[choice("never", "Never"), choice("tap", "When I tap"), choice("always", "Each new one")],
    "tap",
);

const FIELDS: &[Field] =
    &[TAPE, FINENESS, KERF, BLADE_REACH, FENCE, THINNEST_STRIP, HAND, THEME, BIG, ALOUD];
