//! The TypeScript types, made from the calculators' own lists of fields and results.

use reckoner_core::calculators::{self, Calculator, ResultKind, ResultSpec};
use reckoner_core::sheet::{Caution, DANGERS, Field, Kind, Start};

use crate::FUNCTIONS;
use crate::input::{Settled, settled};

/// What is the same for every calculator.
const COMMON: &str = "// Made from the calculators' own lists of fields and results. Do not edit.

/** Loads the program; call it once, before anything else. `program`: its bytes, its compiled module, a response that brings it, or its address; left out, it is taken from beside this package. */
export default function init(program?: object | string): Promise<void>;
/** The same at once, from the program's bytes or its compiled module. */
export function initSync(program: object): void;

/** `exact` is in inches, such as \"27/8\"; the numbers are as near to it as numbers come. */
export interface Exact { exact: string; inches: number; millimetres: number }
/** A length, and as it stands on the tape. `left_over`: by how much it is more than the mark shown; below zero where the mark is more. */
export interface LengthValue extends Exact { kind: \"length\"; shown: string; lean: \"exact\" | \"heavy\" | \"light\" | \"midway\"; left_over: Exact; spoken: string }
export interface LengthsValue { kind: \"lengths\"; items: Omit<LengthValue, \"kind\">[] }
export interface CountValue { kind: \"count\"; value: number }
export interface AreaValue { kind: \"area\"; exact_square_inches: string; shown: string }
/** `exact` is null for a number of physics, such as an angle. With a tape in millimetres `unit` is a metric one. */
export interface NumberValue { kind: \"number\"; exact: string | null; value: number; unit: string; shown: string }
export interface WordsValue { kind: \"words\"; shown: string }
export type Value = LengthValue | LengthsValue | CountValue | AreaValue | NumberValue | WordsValue;
/** One id and one heading for each value of a row. */
export interface Table { title: string; columns: { id: ColumnId; heading: string }[]; rows: Value[][] }
/** `id`: which note it is, whatever its numbers and its words; no answer has two of one. */
export interface Note { id: NoteId; text: string }
export interface Caution { id: CautionId; line: string; more: string }
/** `at`: where in the text of the field, in UTF-16 units, as `String.slice` counts. */
export interface Problem { field: string; code: Code; message: string; at: [number, number] | null; way_out: { message: string; set: Record<string, string> } | null }
export interface Refused { ok: false; problems: Problem[] }
export interface Answered<Results, Tables> {
  ok: true;
  headline: { id: keyof Results; label: string; from: string; value: Value };
  results: Results; tables: Tables; notes: Note[]; cautions: Caution[];
  understood: Record<string, string>; working: { rule: string; numbers: string; gives: Value }[]; sources: string[];
  /** Choices and settings of the saw that were left out, and what they were taken as. */
  assumed: Record<string, string>;
}
/** The tape and the saw; what is left out is as the app starts. Numbers are inches. */
export interface Bench { tape?: \"inches\" | \"feet\" | \"decimal\" | \"mm\" | \"mm_half\" | \"mm_tenths\"; fineness?: 2 | 4 | 8 | 16 | 32 | 64; kerf?: Measure; blade_reach?: Measure; thinnest_strip?: Measure; fence?: \"left\" | \"right\" }
/** A length or a formula: \"3 3/8\", \"45 mm\", \"59 1/2 - 2 × 3 1/4\"; a number takes `unit`. */
export type Measure = string | number;
";

/// The codes of a call that cannot be made sense of; the last of what should not happen.
const OF_THE_CALL: [&str; 7] =
    ["bad-call", "missing", "not-asked", "too-much", "unreadable", "wrong-type", "failed"];

/// The codes of the questions; a test reads the calculators for them.
pub const OF_THE_QUESTIONS: &[&str] = &[
    "all-waste",
    "below-formula",
    "bends-too-far",
    "between-formula",
    "blade-tilted",
    "block-too-thick",
    "board-too-narrow",
    "board-too-thin-at-fence",
    "cannot-reach",
    "cannot-read",
    "clean-up-takes-all",
    "decimal-comma",
    "deeper-than-part",
    "diagonals-do-not-belong",
    "does-not-reach",
    "dowel-too-big",
    "edge-too-short",
    "empty",
    "end-in-zone",
    "ends-meet",
    "exit-outside",
    "feather-edge",
    "gap-closes",
    "gap-too-small",
    "gaps-fill-top",
    "guide-off-board",
    "head-through-top",
    "housing-through-rail",
    "kerf-too-wide",
    "lap-hides-legs",
    "lap-leaves-nothing",
    "lap-misses-leg",
    "least-over-gap",
    "least-too-large",
    "leg-too-thin-for-tenon",
    "legs-fill-overall",
    "list-too-wide",
    "load-off-the-span",
    "moisture-outside",
    "mortise-comes-out",
    "nail-in-wet",
    "near-edge",
    "no-angled-screw",
    "no-clear-place",
    "no-colon",
    "no-columns",
    "no-depth-left",
    "no-figure-outside",
    "no-free-place",
    "no-gap",
    "no-load",
    "no-planks",
    "no-quarter-figure",
    "no-room",
    "no-room-for-stretcher",
    "no-room-for-strips",
    "no-screws",
    "no-stock-so-long",
    "no-such-line",
    "no-such-thickness",
    "no-such-width",
    "no-widths",
    "not-a-count",
    "not-a-price",
    "not-a-size",
    "not-a-zone",
    "not-on-the-tape",
    "nothing-beside-strip",
    "nothing-between",
    "nothing-for-second-face",
    "nothing-to-cut",
    "one-diagonal",
    "one-for-two-ends",
    "one-plank",
    "opens-further",
    "opens-wider",
    "out-of-range",
    "outside-leg",
    "part-over-leg",
    "part-too-long",
    "part-too-short",
    "plank-too-narrow",
    "plank-too-thin",
    "planks-overfill",
    "planks-will-push",
    "rail-all-joint",
    "rail-fills-overall",
    "rail-past-overall",
    "rail-thicker-than-leg",
    "rails-meet",
    "receiver-too-thin",
    "rise-over-half",
    "seat-outside",
    "set-back-too-deep",
    "set-back-too-far",
    "sides-meet",
    "slat-too-wide",
    "step-in-zone",
    "stretcher-below-floor",
    "stretcher-in-apron",
    "strip-too-wide",
    "supports-do-not-fit",
    "target-larger",
    "tenon-outside-leg",
    "tenon-through-leg",
    "tenons-meet",
    "they-meet",
    "through-leg",
    "too-fine",
    "too-large",
    "too-little-in",
    "too-long",
    "too-many",
    "too-many-marks",
    "too-many-parts",
    "too-many-strips",
    "too-many-zones",
    "too-narrow",
    "too-short",
    "too-small",
    "too-steep",
    "too-thin-at-fence",
    "too-wet",
    "top-smaller-than-base",
    "trims-take-the-board",
    "two-ways",
    "wrong-way-round",
    "zone-outside",
];

/// The ids of the notes; a test reads the calculators for them.
pub const OF_THE_NOTES: &[&str] = &[
    "advice_not_a_rule",
    "air_is_under_cover",
    "bare_faces_take_water",
    "bit_is_tight",
    "bit_may_wander",
    "blade_on_waste_side",
    "blade_only_just_through",
    "blind_at_both_ends",
    "board_feet_go_by_tag",
    "board_off_the_table",
    "boards_differ_in_weight",
    "boards_held_at_middle",
    "boards_may_press",
    "cans_are_cheapest",
    "cans_leave_least_over",
    "center_is_off_board",
    "clean_edge_at_fence",
    "clean_edge_on_far_side",
    "coat_again",
    "core_stays_uncut",
    "count_each_size_alone",
    "coverage_is_taken",
    "cut_from_long_piece",
    "cut_has_tenons",
    "cut_it_the_other_way",
    "cut_on_sloping_support",
    "cut_two_blocks",
    "cuts_are_on_no_mark",
    "dowel_is_oval",
    "drill_along_sightline",
    "drive_through_thinner",
    "edge_that_was_measured",
    "end_cuts_are_parallel",
    "end_grain_drinks",
    "end_grain_holds_half",
    "end_taken_as_square",
    "ends_mirror",
    "enough_thread_is",
    "face_loses_less_than_kerf",
    "first_toed_screw_pushes",
    "fix_one_slot_the_others",
    "flush_shows_differences",
    "for_ordinary_softwood",
    "from_6_to_14_percent",
    "full_value",
    "gap_for_wet_boards",
    "gap_in_the_middle",
    "gap_is_wide",
    "gravity_is_unverified",
    "half_is_on_no_mark",
    "how_faces_count",
    "keep_well_below",
    "kerfs_overlap_little",
    "knot_in_the_middle",
    "last_cut_less_than_kerf",
    "last_joint_opens",
    "last_part_from_leftover",
    "last_strip_has_raw_edge",
    "lay_lean_across_table",
    "least_and_most_species",
    "least_sizes_at_the_mill",
    "lengthen_inward",
    "lengthen_outward",
    "lengths_stay",
    "load_case",
    "mark_edges_from_left",
    "mark_from_same_end",
    "mark_shoulders_from_leg",
    "mark_where_round_meets",
    "mark_width_from_piece",
    "may_touch_zone_edge",
    "measure_all_four_sides",
    "measure_base_as_it_stands",
    "measure_between_corners",
    "measure_frames_as_built",
    "measure_from_outside_faces",
    "measure_from_same_end",
    "measure_rail_to_rail",
    "measure_real_legs",
    "more_fit_by_arithmetic",
    "mortise_goes_through",
    "mortises_meet",
    "moved_out_of_zone",
    "nails_and_batten",
    "nails_hold_without_hole",
    "near_end_can_split",
    "nearest_thing_is_smaller",
    "no_block",
    "no_pull_in_end_grain",
    "no_straight_edge",
    "no_thing_fits_edge",
    "no_thing_fits_run",
    "no_thing_reaches_across",
    "one_is_the_middle",
    "only_priced_can_counts",
    "other_side_of_shoe",
    "overhang_can_tip",
    "plank_is_a_sliver",
    "planks_held_at_middle",
    "point_may_come_through",
    "printed_tables_differ",
    "reference_values",
    "resawn_wood_cups",
    "ridge_and_hollow",
    "rip_both_edges_alike",
    "rip_the_last_board",
    "rise_read_off",
    "rod_is_not_listed",
    "room_for_one_more_plank",
    "round_holes_will_do",
    "run_all_at_one_setting",
    "same_face_down_both_ends",
    "saw_a_test_piece",
    "saw_a_test_stick",
    "saw_one_and_measure",
    "screwed_ends_lie_between",
    "seat_decides_depth",
    "set_fence_to_mark",
    "share_of_waste",
    "shear_is_left_out",
    "shop_end_distance",
    "show_faces_down",
    "shrinkage_is_unverified",
    "shrinks_evenly_from_30",
    "side_load_not_given",
    "softwood_formula_is_average",
    "springy",
    "square_left_end_first",
    "stands_tall_at_fence",
    "started_late",
    "stepping_off_goes_wrong",
    "stiff",
    "strength_is_unverified",
    "stress_over_limit",
    "stretches_taken_alone",
    "sudden_load_over_limit",
    "tabulated_root",
    "take_the_lower",
    "tests_are_near_breaking",
    "thickness_is_left_out",
    "thin_counts_as_one_inch",
    "things_are_wider",
    "thread_stays_in_top",
    "tight_boards_hold_water",
    "turn_board_for_strip",
    "turn_end_for_end",
    "turn_template_over",
    "two_holes_for_a_lag",
    "two_sticks_at_angle",
    "under_6_diameters",
    "use_as_moisture_later",
    "wait_for_dry_wood",
    "words_taken_as_percent",
];

/// The ids of the columns of tables; a test reads the calculators for them.
pub const OF_THE_COLUMNS: &[&str] = &[
    "across",
    "area",
    "at_fence",
    "blade_up",
    "block",
    "board_left",
    "board_there",
    "cut",
    "cut_face",
    "deep",
    "diameters",
    "dressed",
    "face",
    "falls",
    "fence",
    "finished",
    "frame",
    "from",
    "from_fixed_screw",
    "from_kept_edge",
    "from_left",
    "from_left_hand",
    "from_right",
    "from_the_middle",
    "from_the_start",
    "from_top",
    "front_at_your",
    "gap_after",
    "gap_after_it",
    "gives",
    "guide_on",
    "how_many",
    "into_receiver",
    "its_radius",
    "later",
    "least",
    "least_depth",
    "left_edge",
    "length",
    "longest_span",
    "mark",
    "meets_edge_at",
    "moves",
    "off",
    "off_the_straight_line",
    "offset_it_gives",
    "on_the_bench",
    "part",
    "parts",
    "rise_it_gives",
    "sag",
    "sawn",
    "set",
    "shoe_side",
    "side",
    "slat",
    "slot_end_to_end",
    "spacer",
    "stress",
    "thickness",
    "to",
    "to_keep",
    "to_next",
    "today",
    "top_comes_to",
    "up_from_the_chord",
    "verdict",
    "way",
    "where",
    "widest_gap",
    "width",
];

/// The whole of `functions.js`: what the package hands out, by name.
#[must_use]
pub fn functions() -> String {
    let mut out = "// Made from the list of calculators. Do not edit.\nimport { call } from \"./call.js\";\n\n".to_owned();
    for (function, _) in FUNCTIONS {
        out.push_str(&format!(
            "export const {function} = (input, bench) => call(\"{function}\", input, bench);\n"
        ));
    }
    out
}

/// Texts as one type that is any of them.
fn any_of<'a>(texts: impl IntoIterator<Item = &'a str>) -> String {
    let quoted: Vec<String> = texts.into_iter().map(|text| format!("\"{text}\"")).collect();
    quoted.join(" | ")
}

/// The types of codes and ids.
fn names() -> String {
    let mut cautions: Vec<Caution> =
        DANGERS.iter().flat_map(|(_, brought)| brought.iter().copied()).collect();
    cautions.sort_unstable();
    cautions.dedup();
    format!(
        "/** What is in the way: first of the call itself, then of the question. */\n\
         export type Code =\n  | {}\n  | {};\n\
         export type CautionId = {};\n\
         export type NoteId =\n  | {};\n\
         export type ColumnId =\n  | {};\n",
        any_of(OF_THE_CALL),
        any_of(OF_THE_QUESTIONS.iter().copied()).replace(" | ", "\n  | "),
        any_of(cautions.iter().map(|caution| caution.id())),
        any_of(OF_THE_NOTES.iter().copied()).replace(" | ", "\n  | "),
        any_of(OF_THE_COLUMNS.iter().copied()).replace(" | ", "\n  | "),
    )
}

/// The whole of `index.d.ts`.
#[must_use]
pub fn declarations() -> String {
    let mut out = COMMON.to_owned() + &names();
    for (function, slug) in FUNCTIONS {
        if let Some(calculator) = calculators::find(slug) {
            declare(&mut out, function, calculator);
        }
    }
    out
}

fn declare(out: &mut String, function: &str, calculator: &Calculator) {
    let name = camel(function);
    let mut line = |text: String| {
        out.push_str(&text);
        out.push('\n');
    };
    line(format!(
        "\nexport interface {name}Input {{\n  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */\n  unit?: \"in\" | \"mm\";"
    ));
    for field in calculator.fields {
        line(format!("  /** {} */\n  {}?: {};", about(field), field.id, field_type(field.kind)));
    }
    line("}".to_owned());
    let (tables, results): (Vec<&ResultSpec>, Vec<&ResultSpec>) =
        calculator.results.iter().partition(|spec| spec.kind == ResultKind::Table);
    line(format!("export interface {name}Results {{"));
    for spec in results {
        line(format!("  /** {} */\n  {}?: {};", spec.label, spec.id, value_type(spec.kind)));
    }
    line(format!("}}\nexport interface {name}Tables {{"));
    for spec in tables {
        line(format!("  /** {} */\n  {}?: Table;", spec.label, spec.id));
    }
    line(format!(
        "}}\n/** {} */\nexport function {function}(input?: {name}Input, bench?: Bench): Answered<{name}Results, {name}Tables> | Refused;",
        calculator.question
    ));
}

fn about(field: &Field) -> String {
    let label = if field.hint.is_empty() {
        field.label.to_owned()
    } else {
        format!("{}: {}", field.label, field.hint)
    };
    match (settled(field), field.start) {
        (Settled::Default, Start::Text(text) | Start::Question(text) | Start::Without(text)) => {
            format!("{label}. Left out: {text}.")
        }
        (Settled::Default, _) => format!("{label}. Left out: that of the bench."),
        (Settled::Empty, _) => format!("{label}. May be left out."),
        (Settled::Needed, _) => format!("{label}. Needed where it is asked."),
    }
}

fn field_type(kind: Kind) -> String {
    match kind {
        Kind::Length(_) | Kind::OptionalLength(_) => "Measure".to_owned(),
        Kind::Lengths | Kind::OnHand => "Measure | Measure[]".to_owned(),
        Kind::Spans | Kind::Sizes | Kind::Pieces | Kind::Prices => "string | string[]".to_owned(),
        Kind::Count { .. } | Kind::Number { .. } | Kind::OptionalMoney => {
            "number | string".to_owned()
        }
        Kind::YesNo => "boolean".to_owned(),
        Kind::Strip => "string | string[]".to_owned(),
        Kind::LineOf(_) | Kind::Words(_) => "string".to_owned(),
        Kind::Choice(choices) => any_of(choices.iter().map(|choice| choice.id)),
    }
}

fn value_type(kind: ResultKind) -> &'static str {
    match kind {
        ResultKind::Length => "LengthValue",
        ResultKind::Lengths => "LengthsValue",
        ResultKind::Count => "CountValue",
        ResultKind::Area => "AreaValue",
        ResultKind::Number => "NumberValue",
        ResultKind::Words => "WordsValue",
        ResultKind::Table => "Table",
    }
}

fn camel(snake: &str) -> String {
    let mut camel = String::new();
    for word in snake.split('_') {
        let mut letters = word.chars();
        camel.extend(letters.next().map(|c| c.to_ascii_uppercase()));
        camel.push_str(letters.as_str());
    }
    camel
}
