// Made from the calculators' own lists of fields and results. Do not edit.

/** A length: exact inches such as "27/8", and as it stands on the tape. */
export interface LengthValue { kind: "length"; exact: string; shown: string; lean: "exact" | "heavy" | "light" | "midway"; left_over: string; spoken: string }
export interface LengthsValue { kind: "lengths"; items: Omit<LengthValue, "kind">[] }
export interface CountValue { kind: "count"; value: number }
export interface AreaValue { kind: "area"; exact_square_inches: string; shown: string }
/** `exact` is null for a number of physics, such as an angle. */
export interface NumberValue { kind: "number"; exact: string | null; value: number; unit: string; shown: string }
export interface WordsValue { kind: "words"; shown: string }
export type Value = LengthValue | LengthsValue | CountValue | AreaValue | NumberValue | WordsValue;
export interface Table { title: string; columns: string[]; rows: Value[][] }
export interface Problem { field: string; code: string; message: string; at: [number, number] | null; way_out: { message: string; set: Record<string, string> } | null }
export interface Refused { ok: false; problems: Problem[] }
export interface Answered<Results, Tables> {
  ok: true;
  headline: { id: keyof Results; label: string; from: string; value: Value };
  results: Results; tables: Tables; notes: string[]; cautions: { line: string; more: string }[];
  understood: Record<string, string>; working: { rule: string; numbers: string; gives: Value }[]; sources: string[];
}
/** The tape and the saw; what is left out is as the app starts. */
export interface Bench { tape?: "inches" | "feet" | "decimal" | "mm"; fineness?: 2 | 4 | 8 | 16 | 32 | 64; kerf?: string; blade_reach?: string; thinnest_strip?: string; fence?: "left" | "right" }
/** A length or a formula: "3 3/8", "45 mm", "59 1/2 - 2 × 3 1/4"; a number takes `unit`. */
export type Measure = string | number;

export interface TapeInput {
  /** Unit of bare numbers. */
  unit?: "in" | "mm";
  /** Work it out: use the letter of a line above to go on from it */
  strip?: string | string[];
  /** Line in use: empty for the last one */
  line?: string;
  /** Divide */
  divide?: "whole" | "half" | "third" | "parts";
  /** Equal parts */
  parts?: number | string;
  /** Tape starts at: 1 when you hold the 1 in line at the end */
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
  /** Error when stepped off */
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
