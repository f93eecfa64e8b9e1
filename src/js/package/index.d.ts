// Made from the calculators' own lists of fields and results. Do not edit.

/** Loads the program; call it once, before anything else. `program`: its bytes, its compiled module, a response that brings it, or its address; left out, it is taken from beside this package. */
export default function init(program?: object | string): Promise<void>;
/** The same at once, from the program's bytes or its compiled module. */
export function initSync(program: object): void;

/** `exact` is in inches, such as "27/8"; the numbers are as near to it as numbers come. */
export interface Exact { exact: string; inches: number; millimetres: number }
/** A length, and as it stands on the tape. `left_over`: by how much it is more than the mark shown; below zero where the mark is more. */
export interface LengthValue extends Exact { kind: "length"; shown: string; lean: "exact" | "heavy" | "light" | "midway"; left_over: Exact; spoken: string }
export interface LengthsValue { kind: "lengths"; items: Omit<LengthValue, "kind">[] }
export interface CountValue { kind: "count"; value: number }
export interface AreaValue { kind: "area"; exact_square_inches: string; shown: string }
/** `exact` is null for a number of physics, such as an angle. With a tape in millimetres `unit` is a metric one. */
export interface NumberValue { kind: "number"; exact: string | null; value: number; unit: string; shown: string }
export interface WordsValue { kind: "words"; shown: string }
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
export interface Bench { tape?: "inches" | "feet" | "decimal" | "mm" | "mm_half" | "mm_tenths"; fineness?: 2 | 4 | 8 | 16 | 32 | 64; kerf?: Measure; blade_reach?: Measure; thinnest_strip?: Measure; fence?: "left" | "right" }
/** A length or a formula: "3 3/8", "45 mm", "59 1/2 - 2 × 3 1/4"; a number takes `unit`. */
export type Measure = string | number;
/** What is in the way: first of the call itself, then of the question. */
export type Code =
  | "bad-call" | "missing" | "not-asked" | "too-much" | "unreadable" | "wrong-type" | "failed"
  | "all-waste"
  | "below-formula"
  | "bends-too-far"
  | "between-formula"
  | "blade-tilted"
  | "block-too-thick"
  | "board-too-narrow"
  | "board-too-thin-at-fence"
  | "cannot-reach"
  | "cannot-read"
  | "clean-up-takes-all"
  | "decimal-comma"
  | "deeper-than-part"
  | "diagonals-do-not-belong"
  | "does-not-reach"
  | "dowel-too-big"
  | "edge-too-short"
  | "empty"
  | "end-in-zone"
  | "ends-meet"
  | "exit-outside"
  | "feather-edge"
  | "gap-closes"
  | "gap-too-small"
  | "gaps-fill-top"
  | "guide-off-board"
  | "head-through-top"
  | "housing-through-rail"
  | "kerf-too-wide"
  | "lap-hides-legs"
  | "lap-leaves-nothing"
  | "lap-misses-leg"
  | "least-over-gap"
  | "least-too-large"
  | "leg-too-thin-for-tenon"
  | "legs-fill-overall"
  | "list-too-wide"
  | "load-off-the-span"
  | "moisture-outside"
  | "mortise-comes-out"
  | "nail-in-wet"
  | "near-edge"
  | "no-angled-screw"
  | "no-clear-place"
  | "no-colon"
  | "no-columns"
  | "no-depth-left"
  | "no-figure-outside"
  | "no-free-place"
  | "no-gap"
  | "no-load"
  | "no-planks"
  | "no-quarter-figure"
  | "no-room"
  | "no-room-for-stretcher"
  | "no-room-for-strips"
  | "no-screws"
  | "no-stock-so-long"
  | "no-such-line"
  | "no-such-thickness"
  | "no-such-width"
  | "no-widths"
  | "not-a-count"
  | "not-a-price"
  | "not-a-size"
  | "not-a-zone"
  | "not-on-the-tape"
  | "nothing-beside-strip"
  | "nothing-between"
  | "nothing-for-second-face"
  | "nothing-to-cut"
  | "one-diagonal"
  | "one-for-two-ends"
  | "one-plank"
  | "opens-further"
  | "opens-wider"
  | "out-of-range"
  | "outside-leg"
  | "part-over-leg"
  | "part-too-long"
  | "part-too-short"
  | "plank-too-narrow"
  | "plank-too-thin"
  | "planks-overfill"
  | "planks-will-push"
  | "rail-all-joint"
  | "rail-fills-overall"
  | "rail-past-overall"
  | "rail-thicker-than-leg"
  | "rails-meet"
  | "receiver-too-thin"
  | "rise-over-half"
  | "seat-outside"
  | "set-back-too-deep"
  | "set-back-too-far"
  | "sides-meet"
  | "slat-too-wide"
  | "step-in-zone"
  | "stretcher-below-floor"
  | "stretcher-in-apron"
  | "strip-too-wide"
  | "supports-do-not-fit"
  | "target-larger"
  | "tenon-outside-leg"
  | "tenon-through-leg"
  | "tenons-meet"
  | "they-meet"
  | "through-leg"
  | "too-fine"
  | "too-large"
  | "too-little-in"
  | "too-long"
  | "too-many"
  | "too-many-marks"
  | "too-many-parts"
  | "too-many-strips"
  | "too-many-zones"
  | "too-narrow"
  | "too-short"
  | "too-small"
  | "too-steep"
  | "too-thin-at-fence"
  | "too-wet"
  | "top-smaller-than-base"
  | "trims-take-the-board"
  | "two-ways"
  | "wrong-way-round"
  | "zone-outside";
export type CautionId = "ripping" | "thin_strip" | "strip_at_fence" | "small_piece" | "stop_block" | "deep_cut" | "tilted_cut" | "hand_saw" | "drilling" | "dust_and_noise" | "treated_wood" | "corrosion" | "load" | "oily_rags" | "reclaimed";
export type NoteId =
  | "advice_not_a_rule"
  | "air_is_under_cover"
  | "bare_faces_take_water"
  | "bit_is_tight"
  | "bit_may_wander"
  | "blade_on_waste_side"
  | "blade_only_just_through"
  | "blind_at_both_ends"
  | "board_feet_go_by_tag"
  | "board_off_the_table"
  | "boards_differ_in_weight"
  | "boards_held_at_middle"
  | "boards_may_press"
  | "cans_are_cheapest"
  | "cans_leave_least_over"
  | "center_is_off_board"
  | "clean_edge_at_fence"
  | "clean_edge_on_far_side"
  | "coat_again"
  | "core_stays_uncut"
  | "count_each_size_alone"
  | "coverage_is_taken"
  | "cut_from_long_piece"
  | "cut_has_tenons"
  | "cut_it_the_other_way"
  | "cut_on_sloping_support"
  | "cut_two_blocks"
  | "cuts_are_on_no_mark"
  | "dowel_is_oval"
  | "drill_along_sightline"
  | "drive_through_thinner"
  | "edge_that_was_measured"
  | "end_cuts_are_parallel"
  | "end_grain_drinks"
  | "end_grain_holds_half"
  | "end_taken_as_square"
  | "ends_mirror"
  | "enough_thread_is"
  | "face_loses_less_than_kerf"
  | "first_toed_screw_pushes"
  | "fix_one_slot_the_others"
  | "flush_shows_differences"
  | "for_ordinary_softwood"
  | "from_6_to_14_percent"
  | "full_value"
  | "gap_for_wet_boards"
  | "gap_in_the_middle"
  | "gap_is_wide"
  | "gravity_is_unverified"
  | "half_is_on_no_mark"
  | "how_faces_count"
  | "keep_well_below"
  | "kerfs_overlap_little"
  | "knot_in_the_middle"
  | "last_cut_less_than_kerf"
  | "last_joint_opens"
  | "last_part_from_leftover"
  | "last_strip_has_raw_edge"
  | "lay_lean_across_table"
  | "least_and_most_species"
  | "least_sizes_at_the_mill"
  | "lengthen_inward"
  | "lengthen_outward"
  | "lengths_stay"
  | "load_case"
  | "mark_edges_from_left"
  | "mark_from_same_end"
  | "mark_shoulders_from_leg"
  | "mark_where_round_meets"
  | "mark_width_from_piece"
  | "may_touch_zone_edge"
  | "measure_all_four_sides"
  | "measure_base_as_it_stands"
  | "measure_between_corners"
  | "measure_frames_as_built"
  | "measure_from_outside_faces"
  | "measure_from_same_end"
  | "measure_rail_to_rail"
  | "measure_real_legs"
  | "more_fit_by_arithmetic"
  | "mortise_goes_through"
  | "mortises_meet"
  | "moved_out_of_zone"
  | "nails_and_batten"
  | "nails_hold_without_hole"
  | "near_end_can_split"
  | "nearest_thing_is_smaller"
  | "no_block"
  | "no_pull_in_end_grain"
  | "no_straight_edge"
  | "no_thing_fits_edge"
  | "no_thing_fits_run"
  | "no_thing_reaches_across"
  | "one_is_the_middle"
  | "only_priced_can_counts"
  | "other_side_of_shoe"
  | "overhang_can_tip"
  | "plank_is_a_sliver"
  | "planks_held_at_middle"
  | "point_may_come_through"
  | "printed_tables_differ"
  | "reference_values"
  | "resawn_wood_cups"
  | "ridge_and_hollow"
  | "rip_both_edges_alike"
  | "rip_the_last_board"
  | "rise_read_off"
  | "rod_is_not_listed"
  | "room_for_one_more_plank"
  | "round_holes_will_do"
  | "run_all_at_one_setting"
  | "same_face_down_both_ends"
  | "saw_a_test_piece"
  | "saw_a_test_stick"
  | "saw_one_and_measure"
  | "screwed_ends_lie_between"
  | "seat_decides_depth"
  | "set_fence_to_mark"
  | "share_of_waste"
  | "shear_is_left_out"
  | "shop_end_distance"
  | "show_faces_down"
  | "shrinkage_is_unverified"
  | "shrinks_evenly_from_30"
  | "side_load_not_given"
  | "softwood_formula_is_average"
  | "springy"
  | "square_left_end_first"
  | "stands_tall_at_fence"
  | "started_late"
  | "stepping_off_goes_wrong"
  | "stiff"
  | "strength_is_unverified"
  | "stress_over_limit"
  | "stretches_taken_alone"
  | "sudden_load_over_limit"
  | "tabulated_root"
  | "take_the_lower"
  | "tests_are_near_breaking"
  | "thickness_is_left_out"
  | "thin_counts_as_one_inch"
  | "things_are_wider"
  | "thread_stays_in_top"
  | "tight_boards_hold_water"
  | "turn_board_for_strip"
  | "turn_end_for_end"
  | "turn_template_over"
  | "two_holes_for_a_lag"
  | "two_sticks_at_angle"
  | "under_6_diameters"
  | "use_as_moisture_later"
  | "wait_for_dry_wood"
  | "words_taken_as_percent";
export type ColumnId =
  | "across"
  | "area"
  | "at_fence"
  | "blade_up"
  | "block"
  | "board_left"
  | "board_there"
  | "cut"
  | "cut_face"
  | "deep"
  | "diameters"
  | "dressed"
  | "face"
  | "falls"
  | "fence"
  | "finished"
  | "frame"
  | "from"
  | "from_fixed_screw"
  | "from_kept_edge"
  | "from_left"
  | "from_left_hand"
  | "from_right"
  | "from_the_middle"
  | "from_the_start"
  | "from_top"
  | "front_at_your"
  | "gap_after"
  | "gap_after_it"
  | "gives"
  | "guide_on"
  | "how_many"
  | "into_receiver"
  | "its_radius"
  | "later"
  | "least"
  | "least_depth"
  | "left_edge"
  | "length"
  | "longest_span"
  | "mark"
  | "meets_edge_at"
  | "moves"
  | "off"
  | "off_the_straight_line"
  | "offset_it_gives"
  | "on_the_bench"
  | "part"
  | "parts"
  | "rise_it_gives"
  | "sag"
  | "sawn"
  | "set"
  | "shoe_side"
  | "side"
  | "slat"
  | "slot_end_to_end"
  | "spacer"
  | "stress"
  | "thickness"
  | "to"
  | "to_keep"
  | "to_next"
  | "today"
  | "top_comes_to"
  | "up_from_the_chord"
  | "verdict"
  | "way"
  | "where"
  | "widest_gap"
  | "width";

export interface TapeInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Work it out: use the letter of a line above to go on from it. Needed where it is asked. */
  strip?: string | string[];
  /** Line in use: empty for the last one. May be left out. */
  line?: string;
  /** Divide. Left out: whole. */
  divide?: "whole" | "half" | "third" | "parts";
  /** Equal parts. Needed where it is asked. */
  parts?: number | string;
  /** Tape starts at: 1 when you hold the 1 in line at the end. Left out: 0. */
  start_mark?: Measure;
}
export interface TapeResults {
  /** Read the tape at */
  read?: LengthValue;
  /** Running marks */
  marks?: LengthsValue;
  /** Length */
  length?: LengthValue;
  /** One part */
  each?: LengthValue;
  /** If you step it off */
  stepping_error?: LengthValue;
  /** Last mark closes at */
  closes_at?: LengthValue;
  /** In millimetres */
  millimetres?: NumberValue;
  /** In decimal inches */
  inches?: NumberValue;
  /** In feet and inches */
  feet?: WordsValue;
  /** Number */
  number?: NumberValue;
  /** Area */
  area?: AreaValue;
}
export interface TapeTables {
}
/** What does this come to, and which line is that? */
export function tape(input?: TapeInput, bench?: Bench): Answered<TapeResults, TapeTables> | Refused;

export interface LumberInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What. Left out: size. */
  ask?: "size" | "amount" | "weight" | "cover";
  /** Tag says: nominal size. Left out: 2x6. */
  section?: "1x2" | "1x3" | "1x4" | "1x6" | "1x8" | "1x10" | "1x12" | "5/4x4" | "5/4x6" | "2x2" | "2x3" | "2x4" | "2x6" | "2x8" | "2x10" | "2x12" | "3x4" | "4x4" | "4x6" | "4x8" | "6x6" | "8x8" | "other";
  /** Nominal thickness: 5/4 is 1 1/4. Needed where it is asked. */
  nominal_thickness?: Measure;
  /** Nominal width. Needed where it is asked. */
  nominal_width?: Measure;
  /** Dry or wet: when it was planed; wet treated boards: as measured. Left out: dry. */
  seasoning?: "dry" | "green";
  /** Thickness measured: as the table if left empty. May be left out. */
  measured_thickness?: Measure;
  /** Width measured: as the table if left empty. May be left out. */
  measured_width?: Measure;
  /** Length: one board. Needed where it is asked. */
  length?: Measure;
  /** Boards. Needed where it is asked. */
  count?: number | string;
  /** Price: of what is named below. May be left out. */
  price?: number | string;
  /** Price is for. Left out: piece. */
  per?: "piece" | "foot" | "board_foot";
  /** Wood: as stamped. Left out: southern_pine. */
  wood?: "southern_pine" | "mixed_southern_pine" | "douglas_fir_larch" | "hem_fir" | "spruce_pine_fir" | "spruce_pine_fir_south" | "western_cedars" | "redwood" | "eastern_white_pine" | "red_oak" | "white_oak" | "mixed_maple" | "northern_white_cedar" | "ponderosa_pine" | "yellow_poplar" | "alaska_yellow_cedar" | "western_hemlock" | "baldcypress" | "black_locust" | "white_ash" | "black_walnut" | "black_cherry" | "teak" | "ipe";
  /** Moisture: wet treated 35 to 75, kiln dried 19, shop 12. Needed where it is asked. */
  moisture?: number | string;
  /** Width to cover. Needed where it is asked. */
  cover_width?: Measure;
  /** Gap: between two boards. Needed where it is asked. */
  gap?: Measure;
  /** Waste: 15 for good boards, 30 for low grades. Needed where it is asked. */
  waste?: number | string;
}
export interface LumberResults {
  /** Width */
  width?: LengthValue;
  /** Thickness */
  thickness?: LengthValue;
  /** Board feet */
  board_feet?: NumberValue;
  /** Board feet, one board */
  board_feet_each?: NumberValue;
  /** Length in all */
  linear_feet?: NumberValue;
  /** Price of all */
  total?: NumberValue;
  /** Price of a board */
  per_piece?: NumberValue;
  /** Price of a foot */
  per_foot?: NumberValue;
  /** Price of a board foot */
  per_board_foot?: NumberValue;
  /** Weight of a board */
  weight?: NumberValue;
  /** Weight of all */
  weight_all?: NumberValue;
  /** The same at 12 % */
  weight_dry?: NumberValue;
  /** Density */
  density?: NumberValue;
  /** Boards to buy */
  boards?: CountValue;
  /** Boards laid */
  rows?: CountValue;
}
export interface LumberTables {
  /** Dry and wet */
  sizes?: Table;
}
/** What does this board really measure, cost and weigh? */
export function lumber(input?: LumberInput, bench?: Bench): Answered<LumberResults, LumberTables> | Refused;

export interface MoistureInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What. Left out: board. */
  ask?: "board" | "gap" | "swing" | "air";
  /** Width today: as measured; over the year: when driest. Needed where it is asked. */
  width?: Measure;
  /** Thickness today: as measured. Needed where it is asked. */
  thickness?: Measure;
  /** Boards. Needed where it is asked. */
  boards?: number | string;
  /** Find. Left out: later. */
  known?: "later" | "today";
  /** Gap today: 0 when laid tight. Needed where it is asked. */
  gap_now?: Measure;
  /** Gap wanted later. Needed where it is asked. */
  gap_later?: Measure;
  /** The wood is. Left out: percent. */
  now_is?: "percent" | "wet" | "yard" | "rain" | "roof" | "indoors";
  /** Moisture today: wet 28, yard-dry 19, shop-dry 12. Needed where it is asked. */
  now?: number | string;
  /** It will be. Left out: percent. */
  later_is?: "percent" | "wet" | "yard" | "rain" | "roof" | "indoors";
  /** Moisture later: 12 under cover, 15 outdoors. Needed where it is asked. */
  later?: number | string;
  /** At its driest. Left out: percent. */
  driest_is?: "percent" | "wet" | "yard" | "rain" | "roof" | "indoors";
  /** Driest of the year. Needed where it is asked. */
  driest?: number | string;
  /** At its wettest. Left out: percent. */
  wettest_is?: "percent" | "wet" | "yard" | "rain" | "roof" | "indoors";
  /** Wettest of the year. Needed where it is asked. */
  wettest?: number | string;
  /** Wood. Left out: softwood. */
  wood?: "softwood" | "southern_pine" | "loblolly_pine" | "longleaf_pine" | "shortleaf_pine" | "slash_pine" | "douglas_fir" | "douglas_fir_north" | "douglas_fir_west" | "western_hemlock" | "western_larch" | "white_fir" | "balsam_fir" | "subalpine_fir" | "lodgepole_pine" | "jack_pine" | "engelmann_spruce" | "red_spruce" | "eastern_white_pine" | "ponderosa_pine" | "western_redcedar" | "northern_white_cedar" | "atlantic_white_cedar" | "incense_cedar" | "port_orford_cedar" | "yellow_cedar" | "eastern_redcedar" | "redwood_old" | "redwood_young" | "baldcypress" | "white_oak" | "white_oak_sold" | "northern_red_oak" | "red_oak" | "black_locust" | "honeylocust" | "mesquite" | "sugar_maple" | "white_ash" | "beech" | "yellow_birch" | "red_alder" | "pecan" | "black_walnut" | "black_cherry" | "yellow_poplar" | "sweetgum" | "sycamore" | "chestnut" | "mahogany" | "afrormosia" | "teak" | "ipe";
  /** Rings: seen on the end. Left out: unsure. */
  grain?: "unsure" | "flat" | "quarter";
  /** Air. Left out: air. */
  air?: "air" | "northern_cover" | "burlington" | "phoenix" | "arid";
  /** Degrees. Left out: fahrenheit. */
  degrees?: "fahrenheit" | "celsius";
  /** Warmth: from 30 °F: the formula is not for colder air. Needed where it is asked. */
  fahrenheit?: number | string;
  /** Warmth: from -1 °C: the formula is not for colder air. Needed where it is asked. */
  celsius?: number | string;
  /** Humidity: relative, on average. Needed where it is asked. */
  humidity?: number | string;
}
export interface MoistureResults {
  /** Width later */
  width_later?: LengthValue;
  /** Thickness later */
  thickness_later?: LengthValue;
  /** Change of width */
  change?: LengthValue;
  /** If it moves least */
  least?: LengthValue;
  /** If it moves most */
  most?: LengthValue;
  /** Gap to leave today */
  gap_now?: LengthValue;
  /** Gap later */
  gap_later?: LengthValue;
  /** Whole width today */
  top_now?: LengthValue;
  /** Whole width later */
  top_later?: LengthValue;
  /** As one panel, later */
  panel_later?: LengthValue;
  /** Swing */
  swing?: LengthValue;
  /** By the wet size */
  by_green_size?: LengthValue;
  /** Gap that never closes */
  never_closes?: LengthValue;
  /** Moisture, driest */
  driest?: NumberValue;
  /** Moisture, wettest */
  wettest?: NumberValue;
  /** By the newer formula */
  newer?: NumberValue;
}
export interface MoistureTables {
  /** Today and later */
  sizes?: Table;
}
/** How wide will it be when it dries, and which gap do I leave? */
export function moisture(input?: MoistureInput, bench?: Bench): Answered<MoistureResults, MoistureTables> | Refused;

export interface ResawRipInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What to saw. Left out: section. */
  question?: "section" | "strips" | "guide";
  /** Board by its tag: or Measured: the tape is right. Left out: 4x4. */
  stock?: "measured" | "1x2" | "1x3" | "1x4" | "1x6" | "1x8" | "1x10" | "1x12" | "5/4x4" | "5/4x6" | "2x2" | "2x3" | "2x4" | "2x6" | "2x8" | "2x10" | "2x12" | "3x4" | "4x4" | "4x6" | "4x8" | "6x6" | "8x8";
  /** Dry or wet: When it was planed; treated and wet: as measured. Left out: dry. */
  stock_dressed?: "dry" | "green";
  /** Stock width: Face 1 to face 3, at its narrowest. Needed where it is asked. */
  stock_width?: Measure;
  /** Stock thickness: Face 2 to face 4, at its thinnest. Needed where it is asked. */
  stock_thickness?: Measure;
  /** Target wide. Needed where it is asked. */
  target_width?: Measure;
  /** Target thick. Needed where it is asked. */
  target_thickness?: Measure;
  /** Faces to clean: Faces 1 and 3 lie across the width. Left out: all. */
  faces?: "all" | "two" | "width_both" | "thickness_both";
  /** Clean opposite faces: One cut first leaves a strip to use. Left out: even. */
  share?: "even" | "kerf_first";
  /** Pieces: All go through before the fence moves. Needed where it is asked. */
  n_pieces?: number | string;
  /** Board by its tag: or Measured: the tape is right. Left out: 2x10. */
  board?: "measured" | "1x2" | "1x3" | "1x4" | "1x6" | "1x8" | "1x10" | "1x12" | "5/4x4" | "5/4x6" | "2x2" | "2x3" | "2x4" | "2x6" | "2x8" | "2x10" | "2x12" | "3x4" | "4x4" | "4x6" | "4x8" | "6x6" | "8x8";
  /** Dry or wet: When it was planed; treated and wet: as measured. Left out: dry. */
  board_dressed?: "dry" | "green";
  /** Board width: At its narrowest. Needed where it is asked. */
  board_width?: Measure;
  /** Board thickness: The depth of the cut. Needed where it is asked. */
  board_thickness?: Measure;
  /** Strips. Left out: fit. */
  plan?: "fit" | "equal" | "list";
  /** Strip width: Finished. Needed where it is asked. */
  strip_width?: Measure;
  /** How many. Needed where it is asked. */
  n_strips?: number | string;
  /** Widths: Finished. Needed where it is asked. */
  widths?: Measure | Measure[];
  /** Off the first edge: Kerf and all; 0 when it is good. Left out: 0. */
  first_edge?: Measure;
  /** Other edge. Left out: raw. */
  other_edge?: "raw" | "clean" | "cut";
  /** Planing per face: Left on both sawn faces of a strip. Left out: 0. */
  allowance?: Measure;
  /** Strips come off: Thin ones belong on the far side. Left out: at_fence. */
  falls?: "at_fence" | "far_side";
  /** Board width: Across the cut. Needed where it is asked. */
  guide_board?: Measure;
  /** Strip to keep: From the kept edge to the line. Needed where it is asked. */
  guide_strip?: Measure;
  /** Kept edge. Left out: left. */
  kept_edge?: "left" | "right";
  /** Shoe, narrow side: Shoe edge to nearest tooth; unplug first. Needed where it is asked. */
  shoe_narrow?: Measure;
  /** Shoe, wide side: Shoe edge to nearest tooth. Needed where it is asked. */
  shoe_wide?: Measure;
  /** Guide lies on. Left out: waste. */
  guide_on?: "waste" | "strip";
  /** Along the guide: Work from the other end to swap sides. Left out: narrow. */
  shoe_side?: "narrow" | "wide";
  /** Kerf: Width of the cut. Left out: that of the bench. */
  kerf?: Measure;
  /** Blade reach: Deepest cut at 90 degrees. Left out: that of the bench. */
  reach?: Measure;
  /** Fence side. Left out: that of the bench. */
  fence?: "left" | "right";
  /** Raise the blade: In steps for hard or wet wood. Left out: at_once. */
  rise?: "at_once" | "in_steps";
  /** Thinnest strip I will hold at the fence: No thinner piece between blade and fence. Left out: that of the bench. */
  thinnest?: Measure;
  /** Piece length: Short pieces are not safe to rip. Needed where it is asked. */
  piece_length?: Measure;
  /** Saw the last bit by hand: Where the blade cannot reach the middle. Left out: no. */
  core_by_hand?: boolean;
  /** Blade off square: Gap at its tip beside a square, at full reach. Left out: 0. */
  lean?: Measure;
}
export interface ResawRipResults {
  /** Fence */
  fence?: LengthValue;
  /** Second fence */
  second_fence?: LengthValue;
  /** Fence for the clean edge */
  clean_up_fence?: LengthValue;
  /** Strips */
  n_strips?: CountValue;
  /** Strip width */
  strip_width?: LengthValue;
  /** Sawn width */
  sawn_width?: LengthValue;
  /** Leftover */
  leftover?: LengthValue;
  /** Edge of the leftover */
  leftover_edge?: WordsValue;
  /** Width after */
  finished_width?: LengthValue;
  /** Thickness after */
  finished_thickness?: LengthValue;
  /** Blade height */
  blade_height?: LengthValue;
  /** Kerfs overlap */
  overlap?: LengthValue;
  /** Uncut core */
  core?: LengthValue;
  /** If you turn the wrong face */
  step_if_turned?: LengthValue;
  /** Ridge */
  ridge?: LengthValue;
  /** Face out of square */
  out_of_square?: LengthValue;
  /** Fence settings */
  n_settings?: CountValue;
  /** Passes */
  n_passes?: CountValue;
  /** Guide */
  guide?: LengthValue;
  /** Guide from the other edge */
  guide_from_other_edge?: LengthValue;
  /** Guide offset */
  offset?: LengthValue;
  /** Strip kept */
  kept_strip?: LengthValue;
  /** Waste */
  waste?: LengthValue;
}
export interface ResawRipTables {
  /** Fence list */
  fence_list?: Table;
  /** What comes off */
  off_list?: Table;
  /** Strips */
  strip_list?: Table;
  /** Places for the guide */
  placements?: Table;
}
/** Where do I set the fence and the blade to get the pieces I need? */
export function resaw_rip(input?: ResawRipInput, bench?: Bench): Answered<ResawRipResults, ResawRipTables> | Refused;

export interface CrosscutInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Board: end to end, as measured. Needed where it is asked. */
  board?: Measure;
  /** Trim each end: past the checks, the cut included. Needed where it is asked. */
  trim?: Measure;
  /** One piece. Needed where it is asked. */
  part?: Measure;
  /** Pieces wanted. Needed where it is asked. */
  wanted?: number | string;
  /** Kerf. Left out: that of the bench. */
  kerf?: Measure;
  /** Keep clear of: knots from the left end, as 30 to 33 1/2. May be left out. */
  knots?: string | string[];
}
export interface CrosscutResults {
  /** Pieces from one board */
  parts?: CountValue;
  /** Left over */
  leftover?: LengthValue;
  /** Boards for the job */
  boards?: CountValue;
  /** Stop block */
  stop?: LengthValue;
  /** Board for one piece more */
  for_one_more?: LengthValue;
}
export interface CrosscutTables {
  /** Marks */
  cuts?: Table;
  /** Falls out at knots */
  passed_over?: Table;
}
/** How many pieces come off this board, and what is left? */
export function crosscut(input?: CrosscutInput, bench?: Bench): Answered<CrosscutResults, CrosscutTables> | Refused;

export interface FrameInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Question. Left out: rail. */
  question?: "rail" | "spacer" | "stretcher" | "support" | "tenons" | "lap" | "square";
  /** Find. Left out: rail. */
  find?: "rail" | "overall" | "leg";
  /** Rail ends. Left out: butt. */
  joint?: "butt" | "tenon" | "lap";
  /** Overall: outside of leg to outside of leg. Needed where it is asked. */
  overall?: Measure;
  /** Rail as measured: end to end, joints included. Needed where it is asked. */
  rail?: Measure;
  /** Left leg: as measured, along the rail. Needed where it is asked. */
  leg_left?: Measure;
  /** Right leg: empty if the same as the left. May be left out. */
  leg_right?: Measure;
  /** Tenon: each end, shoulder to tip. Needed where it is asked. */
  tenon?: Measure;
  /** Short of the outside: each end; 0 for flush. Left out: 0. */
  lap_short?: Measure;
  /** On the bench. Left out: outside. */
  lay?: "outside" | "inside" | "centred" | "block";
  /** Leg: as measured, outside to inside face. Needed where it is asked. */
  leg?: Measure;
  /** Rail thickness: as measured. Needed where it is asked. */
  rail_thickness?: Measure;
  /** Set-back: outside of leg to rail. Needed where it is asked. */
  set_back?: Measure;
  /** Block: its thickness. Needed where it is asked. */
  block?: Measure;
  /** Stretcher height: above the floor. Needed where it is asked. */
  height?: Measure;
  /** Measured to its. Left out: lower. */
  height_to?: "lower" | "middle" | "upper";
  /** Stretcher width: upper to lower edge. Needed where it is asked. */
  stretcher_width?: Measure;
  /** Leg length: floor to top of leg. Needed where it is asked. */
  leg_length?: Measure;
  /** Apron width: 0 without one. Needed where it is asked. */
  apron_width?: Measure;
  /** Apron below leg top. Left out: 0. */
  apron_down?: Measure;
  /** Depth: outside of front leg to outside of back leg. Needed where it is asked. */
  depth_overall?: Measure;
  /** Rail set-back: outside of leg to rail. Needed where it is asked. */
  rail_set_back?: Measure;
  /** Leg to leg: along the rail. Needed where it is asked. */
  between_legs?: Measure;
  /** Supports. Needed where it is asked. */
  supports?: number | string;
  /** Support thickness: along the rail. Needed where it is asked. */
  support_thickness?: Measure;
  /** Each end goes in: tenon or housing; 0 for square ends. Left out: 0. */
  housing?: Measure;
  /** First tenon: shoulder to tip. Needed where it is asked. */
  tenon_a?: Measure;
  /** Second tenon: from the neighbouring face. Needed where it is asked. */
  tenon_b?: Measure;
  /** Tenon thickness: cheek to cheek. Needed where it is asked. */
  tenon_thickness?: Measure;
  /** Tenons are. Left out: centred. */
  tenon_place?: "centred" | "measured";
  /** Outside to cheek: outside of leg to nearer cheek. Needed where it is asked. */
  cheek?: Measure;
  /** Front piece: thickness, cut from its back. Needed where it is asked. */
  front_thickness?: Measure;
  /** Rear piece: thickness, cut from its show face. Needed where it is asked. */
  rear_thickness?: Measure;
  /** Rear cut as made: empty if not cut yet. May be left out. */
  rear_cut?: Measure;
  /** Near side: left to right, corner to corner. Needed where it is asked. */
  near_side?: Measure;
  /** Left side: near to far, same corners. Needed where it is asked. */
  left_side?: Measure;
  /** Near left to far right: empty if not measured. May be left out. */
  diagonal_a?: Measure;
  /** Near right to far left: empty if not measured. May be left out. */
  diagonal_b?: Measure;
}
export interface FrameResults {
  /** Rail, cut length */
  rail_cut?: LengthValue;
  /** Overall */
  overall_length?: LengthValue;
  /** Each leg */
  leg_each?: LengthValue;
  /** Leg to leg */
  leg_to_leg?: LengthValue;
  /** Mortise depth */
  mortise?: LengthValue;
  /** Spacer block */
  spacer_block?: LengthValue;
  /** Set-back outside */
  rail_set_back_outside?: LengthValue;
  /** Set-back inside */
  rail_set_back_inside?: LengthValue;
  /** Block on the floor */
  floor_block?: LengthValue;
  /** Block at the apron */
  apron_block?: LengthValue;
  /** Upper edge */
  upper_edge?: LengthValue;
  /** From leg top */
  from_leg_top?: LengthValue;
  /** Support, cut length */
  support_cut?: LengthValue;
  /** Rail to rail */
  between_rails?: LengthValue;
  /** Clear bay */
  bay?: LengthValue;
  /** Left edges */
  support_edges?: LengthsValue;
  /** Longest tenons alike */
  longest_tenons?: LengthValue;
  /** Wood between tenons */
  tenons_clear?: LengthValue;
  /** Outside to cheek */
  outside_to_cheek?: LengthValue;
  /** Cut in rear piece */
  lap_rear?: LengthValue;
  /** Cut in front piece */
  lap_front?: LengthValue;
  /** Left of rear piece */
  lap_rear_left?: LengthValue;
  /** Step at the back */
  lap_step?: LengthValue;
  /** Diagonal when square */
  square_diagonal?: LengthValue;
  /** Push the far side */
  push_by?: LengthValue;
  /** Which way to push */
  push?: WordsValue;
  /** Out of square */
  out_of_square?: NumberValue;
}
export interface FrameTables {
  /** Blocks */
  blocks?: Table;
}
/** What length between the legs, and which block sets it? */
export function frame(input?: FrameInput, bench?: Bench): Answered<FrameResults, FrameTables> | Refused;

export interface DowelInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Holes. Left out: through. */
  hold?: "through" | "blind" | "one_end";
  /** Frames measured. Left out: overall. */
  measured?: "overall" | "clear" | "legs";
  /** Outside to outside: of the drilled pieces. Needed where it is asked. */
  overall?: Measure;
  /** Between the pieces: inside to inside. Needed where it is asked. */
  clear?: Measure;
  /** Between the legs: inside to inside. Needed where it is asked. */
  between_legs?: Measure;
  /** Leg: thickness along the dowel. Needed where it is asked. */
  leg?: Measure;
  /** Set-back: outside of leg to outside of piece; the middle if left empty. May be left out. */
  set_back?: Measure;
  /** Piece: thickness along the dowel. Needed where it is asked. */
  left_part?: Measure;
  /** Right piece: as the left if left empty. May be left out. */
  right_part?: Measure;
  /** Trim: at each through end. Needed where it is asked. */
  trim?: Measure;
  /** Hole depth: blind hole. Needed where it is asked. */
  depth?: Measure;
  /** Free at the bottom: of a blind hole. Needed where it is asked. */
  room?: Measure;
  /** Dowel: measured, at its thickest. Needed where it is asked. */
  dowel?: Measure;
  /** Dowel across: at right angles; round if left empty. May be left out. */
  across?: Measure;
  /** Bits. Left out: sixty_fourths. */
  bits?: "sixty_fourths" | "thirty_seconds" | "sixteenths" | "millimetres";
  /** Piece height: the face that is drilled. Needed where it is asked. */
  part_height?: Measure;
  /** Hole from top: to its center; the middle if left empty. May be left out. */
  from_top?: Measure;
  /** Piece length: front to back. Needed where it is asked. */
  part_length?: Measure;
  /** Hole from front: to its center; the middle if left empty. May be left out. */
  from_front?: Measure;
  /** Least wood: round the hole; half the hole if left empty. May be left out. */
  least_wood?: Measure;
}
export interface DowelResults {
  /** Cut the dowel */
  cut?: LengthValue;
  /** Dowel when done */
  finished?: LengthValue;
  /** Dowel seen */
  visible?: LengthValue;
  /** Outside to outside */
  overall?: LengthValue;
  /** Bit */
  bit?: WordsValue;
  /** Clearance */
  clearance?: WordsValue;
  /** Least wood round the hole */
  wood?: LengthValue;
  /** Wood under the hole */
  under?: LengthValue;
}
export interface DowelTables {
  /** Holes */
  holes?: Table;
}
/** How long a dowel, which bit, and where are the holes? */
export function dowel(input?: DowelInput, bench?: Bench): Answered<DowelResults, DowelTables> | Refused;

export interface ScrewsInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Question. Left out: length. */
  question?: "length" | "pilot" | "placing" | "pocket" | "toe" | "corner" | "hold" | "buy";
  /** Screw. Left out: screw_8. */
  gauge?: "screw_6" | "screw_7" | "screw_8" | "screw_9" | "screw_10" | "screw_12" | "screw_14" | "screw_16" | "screw_18" | "screw_20" | "screw_24";
  /** Screw or nail. Left out: screw_8. */
  fastener?: "screw_6" | "screw_7" | "screw_8" | "screw_9" | "screw_10" | "screw_12" | "screw_14" | "screw_16" | "screw_18" | "screw_20" | "screw_24" | "lag_1_4" | "lag_5_16" | "lag_3_8" | "lag_7_16" | "lag_1_2" | "lag_5_8" | "lag_3_4" | "lag_7_8" | "lag_1" | "nail_6d" | "nail_7d" | "nail_8d" | "nail_10d" | "nail_12d" | "nail_16d" | "nail_20d" | "nail_30d" | "nail_40d" | "nail_50d" | "nail_60d";
  /** Wood. Left out: southern_pine. */
  wood?: "southern_pine" | "mixed_southern_pine" | "douglas_fir_larch" | "hem_fir" | "spruce_pine_fir" | "spruce_pine_fir_south" | "western_cedars" | "redwood" | "eastern_white_pine" | "red_oak" | "white_oak" | "mixed_maple" | "northern_white_cedar" | "ponderosa_pine" | "yellow_poplar" | "alaska_yellow_cedar" | "western_hemlock";
  /** Its length. Needed where it is asked. */
  screw_length?: Measure;
  /** Drilled piece: thickness, drilled face to far face. Needed where it is asked. */
  part_thickness?: Measure;
  /** Piece under head: thickness. Needed where it is asked. */
  top_thickness?: Measure;
  /** Other piece: the screw ends in it; thickness along the screw. Needed where it is asked. */
  receiver_thickness?: Measure;
  /** Into. Left out: side. */
  into?: "side" | "end";
  /** Head sunk: top of head below the face. Needed where it is asked. */
  head_sunk?: Measure;
  /** Margin: wood left behind the tip. Needed where it is asked. */
  margin?: Measure;
  /** Screws at hand: their length; empty if none. May be left out. */
  at_hand?: Measure;
  /** Pilot hole drilled. Left out: yes. */
  drilled?: boolean;
  /** Through a steel plate. Left out: no. */
  steel?: boolean;
  /** Board width: edge to edge. Needed where it is asked. */
  board_width?: Measure;
  /** Angle. Needed where it is asked. */
  pocket_angle?: number | string;
  /** Angle. Needed where it is asked. */
  toe_angle?: number | string;
  /** Angle is from. Left out: face. */
  angle_from?: "face" | "receiver";
  /** Find. Left out: start. */
  angled_find?: "start" | "exit";
  /** Leaves the end: from the drilled face; empty for the middle. May be left out. */
  exit?: Measure;
  /** Starts: from the end, along the drilled face. Needed where it is asked. */
  start_back?: Measure;
  /** Wood under the head: seat to end, along the screw. Needed where it is asked. */
  seat_wood?: Measure;
  /** Go in at least: square into the other piece. Needed where it is asked. */
  wanted_deep?: Measure;
  /** Other piece goes on: past the far face of the drilled piece. Left out: 0. */
  beyond?: Measure;
  /** They are. Left out: round. */
  section?: "round" | "tenon";
  /** Leg: square, as measured. Needed where it is asked. */
  leg?: Measure;
  /** Thickness: diameter, or cheek to cheek. Needed where it is asked. */
  size?: Measure;
  /** Tenon height: along the leg. Needed where it is asked. */
  tall?: Measure;
  /** First goes in: from the inner face. Needed where it is asked. */
  a_deep?: Measure;
  /** First from outside: outside face to its middle. Needed where it is asked. */
  a_outside?: Measure;
  /** First height: to its middle, same end for both. Needed where it is asked. */
  a_height?: Measure;
  /** Second goes in: from the other inner face. Needed where it is asked. */
  b_deep?: Measure;
  /** Second from outside: outside face to its middle. Needed where it is asked. */
  b_outside?: Measure;
  /** Second height: to its middle, same end for both. Needed where it is asked. */
  b_height?: Measure;
  /** Wet in use: over 19 % moisture, as outdoors on the ground. Left out: yes. */
  wet?: boolean;
  /** Planks or joints. Needed where it is asked. */
  planks?: number | string;
  /** Rails crossed by each: 1 for joints. Needed where it is asked. */
  rails?: number | string;
  /** Screws each time. Needed where it is asked. */
  per_crossing?: number | string;
  /** Spare: lost, snapped, spoilt. Needed where it is asked. */
  spare?: number | string;
  /** Box of: 1 when sold singly. Needed where it is asked. */
  box_of?: number | string;
}
export interface ScrewsResults {
  /** Screw length */
  best_length?: LengthValue;
  /** Long enough */
  enough?: LengthValue;
  /** Longest there is room for */
  longest?: LengthValue;
  /** Into the other piece */
  into_receiver?: LengthValue;
  /** Thread in the other piece */
  thread_in_receiver?: LengthValue;
  /** Wood behind the tip */
  behind_tip?: LengthValue;
  /** The one at hand */
  verdict_at_hand?: WordsValue;
  /** The one at hand goes in */
  at_hand_into?: LengthValue;
  /** Wood behind its tip */
  at_hand_behind?: LengthValue;
  /** Pilot bit */
  pilot_bit?: WordsValue;
  /** Clearance bit */
  clearance_bit?: WordsValue;
  /** Shank */
  shank?: NumberValue;
  /** Root of thread */
  root?: NumberValue;
  /** Countersink width */
  head_width?: NumberValue;
  /** Clearance depth */
  clearance_depth?: LengthValue;
  /** Pilot depth in the other piece */
  pilot_depth?: LengthValue;
  /** From an end, pulled towards */
  end_distance?: LengthValue;
  /** From an end, pushed away */
  end_pushed?: LengthValue;
  /** From an edge */
  edge_distance?: LengthValue;
  /** Rows that fit */
  rows_that_fit?: CountValue;
  /** Start */
  start?: LengthValue;
  /** Leaves the end */
  exit_from_face?: LengthValue;
  /** Hole in the drilled piece */
  axis?: LengthValue;
  /** Pocket depth */
  to_seat?: LengthValue;
  /** Deep in the other piece */
  deep?: LengthValue;
  /** Goes sideways */
  drift?: LengthValue;
  /** Angle from the drilled face */
  from_face?: NumberValue;
  /** Angle from the other piece's face */
  from_receiver?: NumberValue;
  /** Wood between */
  between?: LengthValue;
  /** Clear at any depth */
  always_clear?: LengthValue;
  /** Side load */
  side_load?: NumberValue;
  /** Pull */
  pull?: NumberValue;
  /** Pull for each length of thread */
  pull_per_inch?: NumberValue;
  /** What gives way first */
  gives_way?: WordsValue;
  /** Pulled out in tests */
  test_pull?: NumberValue;
  /** Stays bent in tests */
  test_side?: NumberValue;
  /** Buy */
  to_buy?: CountValue;
  /** In the work */
  needed?: CountValue;
  /** Boxes */
  boxes?: CountValue;
  /** Left over */
  spare_left?: CountValue;
}
export interface ScrewsTables {
  /** Stock lengths */
  stock?: Table;
  /** Least distances */
  spacing?: Table;
}
/** Which screw, which bits, where, and will it show through? */
export function screws(input?: ScrewsInput, bench?: Bench): Answered<ScrewsResults, ScrewsTables> | Refused;

export interface SpacingInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What do you want to know?. Left out: greatest_gap. */
  mode?: "greatest_gap" | "count" | "step" | "slats_near" | "slats";
  /** Length: the board, or the opening. Needed where it is asked. */
  length?: Measure;
  /** At most apart: center to center. Needed where it is asked. */
  greatest_gap?: Measure;
  /** How many. Needed where it is asked. */
  count?: number | string;
  /** Step: set off from both ends. Needed where it is asked. */
  step?: Measure;
  /** Slat width: as measured. Needed where it is asked. */
  slat_width?: Measure;
  /** Gap wanted: slat to slat. Needed where it is asked. */
  slat_gap?: Measure;
  /** Slats: how many. Needed where it is asked. */
  slats?: number | string;
  /** First mark: from left end; like the gaps if left empty. May be left out. */
  left_end?: Measure;
  /** Last mark: from right end; as the first if left empty. May be left out. */
  right_end?: Measure;
  /** First slat at: from left end; 0 is flush; like the gaps if left empty. May be left out. */
  left_slat?: Measure;
  /** Last slat at: from right end; as the first if left empty. May be left out. */
  right_slat?: Measure;
  /** Keep clear of: from left end, as 10 to 12 1/2, 30 to 33. May be left out. */
  keep_out?: string | string[];
  /** Least apart: empty for none. May be left out. */
  least_gap?: Measure;
}
export interface SpacingResults {
  /** Marks from each end */
  each_end?: LengthsValue;
  /** Marks from the left end */
  marks?: LengthsValue;
  /** Marks from the right end */
  from_right?: LengthsValue;
  /** Center to center */
  pitch?: LengthValue;
  /** Gap */
  gap?: LengthValue;
  /** How many */
  count?: CountValue;
  /** Widest gap */
  widest?: LengthValue;
  /** Narrowest gap */
  narrowest?: LengthValue;
  /** Adds up to */
  closes_at?: LengthValue;
  /** If you step it off */
  step_error?: LengthValue;
}
export interface SpacingTables {
  /** Marks */
  layout?: Table;
  /** Fewer or more marks */
  others?: Table;
}
/** Where do the screws, pegs or slats go? */
export function spacing(input?: SpacingInput, bench?: Bench): Answered<SpacingResults, SpacingTables> | Refused;

export interface TopInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Question. Left out: planks. */
  question?: "planks" | "overhang" | "season" | "slot" | "tip";
  /** Find. Left out: gap. */
  find?: "gap" | "rip_all" | "rip_outer" | "top";
  /** Plank widths: as measured, from the left. Needed where it is asked. */
  planks?: Measure | Measure[];
  /** Top width: across the planks. Needed where it is asked. */
  top_width?: Measure;
  /** Gap: between two planks. Needed where it is asked. */
  gap?: Measure;
  /** Find. Left out: overhang. */
  overhang_find?: "overhang" | "top";
  /** Base length: as built, outside to outside. Needed where it is asked. */
  base_length?: Measure;
  /** Base width: as built, outside to outside. Needed where it is asked. */
  base_width?: Measure;
  /** Top length: end to end. Needed where it is asked. */
  top_length?: Measure;
  /** Top width: across the planks. Needed where it is asked. */
  top_across?: Measure;
  /** Overhang at ends: each end. Needed where it is asked. */
  overhang_end?: Measure;
  /** Overhang at sides: front and back. Needed where it is asked. */
  overhang_side?: Measure;
  /** Find. Left out: later. */
  season_find?: "later" | "today";
  /** Gap today: 0 when laid tight. Left out: 0. */
  gap_now?: Measure;
  /** Smallest gap later. Needed where it is asked. */
  gap_later?: Measure;
  /** Loose screws: each from the fixed one, across the grain. Needed where it is asked. */
  loose_screws?: Measure | Measure[];
  /** Hole: that the screw slips through. Needed where it is asked. */
  hole?: Measure;
  /** Wood. Left out: softwood. */
  shrinks_by?: "softwood" | "own";
  /** Boards today. Left out: wet. */
  now?: "wet" | "measured";
  /** Moisture today: 8 to 19 %. Needed where it is asked. */
  moisture_now?: number | string;
  /** Moisture later: outdoors about 12 to 15 %. Needed where it is asked. */
  moisture_later?: number | string;
  /** Shrinks across: of its width, as for one species; below 0 when it swells. Needed where it is asked. */
  percent?: number | string;
  /** Load beyond feet: outside of feet to the load. Needed where it is asked. */
  beyond_legs?: Measure;
  /** Feet apart: outside to outside. Needed where it is asked. */
  leg_spacing?: Measure;
  /** Weight of the piece. Needed where it is asked. */
  weight?: number | string;
  /** Load: a person leaning or sitting. Needed where it is asked. */
  load?: number | string;
}
export interface TopResults {
  /** Gap */
  plank_gap?: LengthValue;
  /** Plank width */
  plank_width?: LengthValue;
  /** Outer plank width */
  outer_width?: LengthValue;
  /** Top width */
  top_overall?: LengthValue;
  /** Left edges */
  left_edges?: LengthsValue;
  /** All spacers together */
  gaps_together?: LengthValue;
  /** Overhang at ends */
  end_overhang?: LengthValue;
  /** Overhang at sides */
  side_overhang?: LengthValue;
  /** Top length */
  top_size_length?: LengthValue;
  /** Top width */
  top_size_width?: LengthValue;
  /** Gap today */
  gap_today?: LengthValue;
  /** Smallest gap later */
  gap_smallest?: LengthValue;
  /** Widest gap later */
  gap_widest?: LengthValue;
  /** Top today */
  top_today?: LengthValue;
  /** Top later */
  top_later?: LengthValue;
  /** Movement across */
  movement?: NumberValue;
  /** Farthest slot */
  slot_long?: LengthValue;
  /** Loose by */
  loose_by?: LengthValue;
  /** Largest load */
  most_load?: NumberValue;
  /** Farthest beyond feet */
  most_beyond?: LengthValue;
  /** Tips */
  tip_verdict?: WordsValue;
}
export interface TopTables {
  /** Spacers on a mark */
  spacers?: Table;
  /** Planks today and later */
  season?: Table;
  /** Slots */
  slots?: Table;
}
/** Which planks and gaps make the top, and where does it land? */
export function top(input?: TopInput, bench?: Bench): Answered<TopResults, TopTables> | Refused;

export interface CurveInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What to draw. Left out: arc. */
  mode?: "arc" | "rim" | "corner" | "end" | "s_curve";
  /** Width of the arc: straight across, end to end. Needed where it is asked. */
  chord?: Measure;
  /** Rise: in the middle, from that straight line to the curve. Needed where it is asked. */
  rise?: Measure;
  /** Edge of the board. Left out: hollow. */
  shape?: "hollow" | "crown";
  /** Measured. Left out: straightedge. */
  measured?: "around" | "straightedge";
  /** Once round: along the edge that the pencil will follow. Needed where it is asked. */
  around?: Measure;
  /** Straightedge: between the two places where it touches. Needed where it is asked. */
  short_chord?: Measure;
  /** Rise under its middle: from the straightedge to the rim. Needed where it is asked. */
  short_rise?: Measure;
  /** Radius. Needed where it is asked. */
  radius?: Measure;
  /** Angle of the corner: of the wood, 90 when square. Needed where it is asked. */
  corner?: number | string;
  /** Round. Left out: both. */
  corners?: "one" | "both";
  /** Length of the edge: leave empty when there is plenty. May be left out. */
  edge?: Measure;
  /** Width of the end. Needed where it is asked. */
  end_width?: Measure;
  /** Run: along the board, end to end of the curve. Needed where it is asked. */
  run?: Measure;
  /** Offset: across the board, end to end of the curve. Needed where it is asked. */
  offset?: Measure;
  /** A mark every. Needed where it is asked. */
  step?: Measure;
  /** Board width: empty when it does not matter. May be left out. */
  board?: Measure;
  /** Wood to leave: at the narrowest place. Needed where it is asked. */
  keep?: Measure;
  /** Round things I own: across each. Needed where it is asked. */
  things?: Measure | Measure[];
}
export interface CurveResults {
  /** Radius */
  radius?: LengthValue;
  /** Round meets the edge */
  touches?: LengthValue;
  /** Diameter */
  diameter?: LengthValue;
  /** Center */
  centre?: LengthValue;
  /** Corner to center */
  corner_to_centre?: LengthValue;
  /** Off the corner */
  lost?: LengthValue;
  /** Straight edge left */
  straight?: LengthValue;
  /** Arcs meet, along */
  meet_along?: LengthValue;
  /** Arcs meet, across */
  meet_across?: LengthValue;
  /** Left at the narrowest */
  narrowest?: LengthValue;
  /** Along the curve */
  curve_length?: LengthValue;
  /** Once round */
  around?: LengthValue;
  /** Radius, at least */
  least?: LengthValue;
  /** Radius, at most */
  most?: LengthValue;
  /** Between two sticks */
  sticks?: NumberValue;
  /** Steepest place */
  steepest?: NumberValue;
  /** Cut away */
  waste?: NumberValue;
  /** Nearest round thing */
  thing?: LengthValue;
  /** Its center */
  thing_centre?: LengthValue;
  /** Its radius */
  thing_off?: WordsValue;
}
export interface CurveTables {
  /** Marks for a batten */
  marks?: Table;
  /** Round things */
  things?: Table;
}
/** What radius is it, and how do I draw it? */
export function curve(input?: CurveInput, bench?: Bench): Answered<CurveResults, CurveTables> | Refused;

export interface AnglesInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** What leans. Left out: leg. */
  mode?: "leg" | "two_ways" | "sides";
  /** Height: straight up, floor to the underside of the top. Needed where it is asked. */
  height?: Measure;
  /** I know. Left out: angle. */
  known?: "angle" | "foot_out";
  /** Lean: from upright. Needed where it is asked. */
  angle?: number | string;
  /** Foot out: beyond the top, one edge of the leg to the same edge. Needed where it is asked. */
  foot_out?: Measure;
  /** Width of the leg: in the direction in which it leans. Needed where it is asked. */
  width?: Measure;
  /** Lean front to back: from upright, seen from the side. Needed where it is asked. */
  rake?: number | string;
  /** Lean side to side: from upright, seen from the front. Needed where it is asked. */
  splay?: number | string;
  /** Leg: across when round, one side when square. Needed where it is asked. */
  thickness?: Measure;
  /** Shape. Left out: turned. */
  faces?: "turned" | "square";
  /** Tops apart, side to side: outside to outside of two legs; may be empty. May be left out. */
  apart?: Measure;
  /** Tops apart, front to back: outside to outside of two legs; may be empty. May be left out. */
  apart_front?: Measure;
  /** Sides. Needed where it is asked. */
  sides?: number | string;
  /** Lean: from upright: 0 straight, 90 a flat frame. Needed where it is asked. */
  lean?: number | string;
  /** Ends. Left out: mitred. */
  joint?: "mitred" | "butt";
  /** Board on the saw. Left out: flat. */
  lay?: "flat" | "on_edge";
  /** Across the wide end: flat to flat outside; may be empty. May be left out. */
  across?: Measure;
  /** Board width: along the slope; may be empty. May be left out. */
  board?: Measure;
}
export interface AnglesResults {
  /** Blank */
  blank?: LengthValue;
  /** Gauge and tilt */
  setting?: WordsValue;
  /** Gauge */
  gauge?: NumberValue;
  /** Gauge, from the edge */
  gauge_from_edge?: NumberValue;
  /** Blade tilt */
  tilt?: NumberValue;
  /** Blade, from the table */
  tilt_from_table?: NumberValue;
  /** Along the edge */
  edge?: LengthValue;
  /** Along the middle */
  middle?: LengthValue;
  /** Foot out */
  foot_out?: LengthValue;
  /** Foot out, front to back */
  foot_front?: LengthValue;
  /** Foot out, side to side */
  foot_side?: LengthValue;
  /** Feet apart, side to side */
  spread?: LengthValue;
  /** Feet apart, front to back */
  spread_front?: LengthValue;
  /** Along the end cut */
  end_cut?: LengthValue;
  /** Lean, both together */
  resultant?: NumberValue;
  /** Drill, from the top */
  from_top?: NumberValue;
  /** Sightline */
  sightline?: NumberValue;
  /** Sightline, from the side */
  sightline_side?: NumberValue;
  /** Longer face */
  longer?: WordsValue;
  /** Wide end of a side */
  wide_edge?: LengthValue;
  /** Narrow end of a side */
  narrow_edge?: LengthValue;
  /** The other way on the saw */
  other_setting?: WordsValue;
}
export interface AnglesTables {
}
/** What do I set the saw to, and how long is the piece? */
export function angles(input?: AnglesInput, bench?: Bench): Answered<AnglesResults, AnglesTables> | Refused;

export interface StrengthInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Shape. Left out: plank. */
  shape?: "plank" | "round";
  /** Width: level; a flat 2×6 is 5 1/2. Needed where it is asked. */
  across?: Measure;
  /** Depth: up and down, as measured. Needed where it is asked. */
  depth?: Measure;
  /** Diameter: at its thinnest. Needed where it is asked. */
  diameter?: Measure;
  /** Span: between outer supports, or the overhang. Needed where it is asked. */
  span?: Measure;
  /** Load. Left out: person. */
  load?: "person" | "pair" | "row" | "step" | "soil" | "point" | "even" | "several" | "end" | "even_end";
  /** How heavy. Needed where it is asked. */
  pounds?: number | string;
  /** Even load: 120 is a row of people. Needed where it is asked. */
  pounds_per_foot?: number | string;
  /** Places: from the left support; two there for twice the load. Needed where it is asked. */
  places?: Measure | Measure[];
  /** Load at each place. Needed where it is asked. */
  each?: number | string;
  /** And an even load: the wood itself, or 0. Left out: 0. */
  and_even?: number | string;
  /** Planter width: inside. Needed where it is asked. */
  soil_width?: Measure;
  /** Soil depth. Needed where it is asked. */
  soil_depth?: Measure;
  /** Middle supports: evenly placed. Left out: 0. */
  middle_supports?: number | string;
  /** Pieces that share it: 1 when one may take it all. Needed where it is asked. */
  sharing?: number | string;
  /** Wood. Left out: unknown. */
  wood?: "unknown" | "loblolly_pine" | "longleaf_pine" | "shortleaf_pine" | "slash_pine" | "douglas_fir" | "western_hemlock" | "western_larch" | "lodgepole_pine" | "jack_pine" | "engelmann_spruce" | "white_spruce" | "red_spruce" | "balsam_fir" | "subalpine_fir" | "eastern_white_pine" | "ponderosa_pine" | "western_redcedar" | "northern_white_cedar" | "atlantic_white_cedar" | "eastern_redcedar" | "yellow_cedar" | "redwood_old" | "redwood_young" | "baldcypress" | "white_oak" | "northern_red_oak" | "black_locust" | "sugar_maple" | "white_ash" | "black_walnut" | "black_cherry" | "yellow_poplar" | "teak" | "ipe" | "own";
  /** Moisture: 12 to 15 outdoors, over 25 wet. Needed where it is asked. */
  moisture?: number | string;
  /** Stiffness: modulus of elasticity; 1200 for unknown softwood. Needed where it is asked. */
  stiffness?: number | string;
  /** Sag to let pass. Left out: floor. */
  limit?: "shelf" | "floor" | "other" | "farm";
  /** Stress to let pass: 800 to 900 is common practice. Needed where it is asked. */
  most_stress?: number | string;
}
export interface StrengthResults {
  /** Verdict */
  verdict?: WordsValue;
  /** Sag */
  sag?: NumberValue;
  /** Sag to let pass */
  most_sag?: NumberValue;
  /** Bending stress */
  stress?: NumberValue;
  /** Longest span */
  longest_span?: LengthValue;
  /** Least depth */
  least_depth?: LengthValue;
  /** Sag after years */
  later_sag?: NumberValue;
  /** Sag, put on suddenly */
  sudden_sag?: NumberValue;
  /** Stress, put on suddenly */
  sudden_stress?: NumberValue;
  /** Sag with ends held stiff */
  clamped_sag?: NumberValue;
  /** Turned over, times as stiff */
  turned_ratio?: NumberValue;
  /** Clear wood breaks near */
  rupture?: NumberValue;
  /** On the left support */
  left_support?: NumberValue;
  /** On the right support */
  right_support?: NumberValue;
  /** Soil */
  soil_volume?: NumberValue;
  /** Soil, wet */
  soil_weight?: NumberValue;
}
export interface StrengthTables {
  /** Ways to build it */
  ways?: Table;
  /** Longest and least */
  limits?: Table;
}
/** Will it sag, and will it hold? */
export function strength(input?: StrengthInput, bench?: Bench): Answered<StrengthResults, StrengthTables> | Refused;

export interface FinishInput {
  /** Unit of bare numbers; where it is mm, loads are in kg, stresses in MPa and stiffness in GPa. */
  unit?: "in" | "mm";
  /** Pieces: how many, and length × width × thickness. Needed where it is asked. */
  parts?: string | string[];
  /** Coat. Left out: all. */
  faces?: "all" | "not_underside" | "show_face" | "ends";
  /** Coats. Needed where it is asked. */
  coats?: number | string;
  /** Surface. Left out: smooth. */
  surface?: "smooth" | "weathered" | "rough" | "can";
  /** Finish covers: from the label, its lowest figure. Needed where it is asked. */
  coverage?: number | string;
  /** Reserve: for spills, thirsty wood and touching up. Needed where it is asked. */
  reserve?: number | string;
  /** Price of a gallon. May be left out. */
  gallon_price?: number | string;
  /** Price of a quart. May be left out. */
  quart_price?: number | string;
  /** Price of a 5 L can. May be left out. */
  price_of_5?: number | string;
  /** Price of a 2.5 L can. May be left out. */
  price_of_2_5?: number | string;
  /** Price of a 1 L can. May be left out. */
  price_of_1?: number | string;
  /** Price of a 0.75 L can. May be left out. */
  price_of_0_75?: number | string;
}
export interface FinishResults {
  /** Buy */
  buy?: WordsValue;
  /** Area */
  area?: AreaValue;
  /** Finish, at most */
  gallons_most?: NumberValue;
  /** Finish, at least */
  gallons_least?: NumberValue;
  /** First coat, at most */
  first_coat?: NumberValue;
  /** With the reserve */
  with_reserve?: NumberValue;
  /** Cost */
  cost?: NumberValue;
}
export interface FinishTables {
  /** Area of each piece */
  part_areas?: Table;
}
/** How much finish do these pieces take? */
export function finish(input?: FinishInput, bench?: Bench): Answered<FinishResults, FinishTables> | Refused;
