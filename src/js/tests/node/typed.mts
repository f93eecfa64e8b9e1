// A program for Node in TypeScript, that package.mjs has checked without the types of a browser; it is never run.
import init, { initSync, spacing, type Bench, type Code, type ColumnId, type NoteId } from "sawdust-reckoner";

await init(new Uint8Array());
initSync(new Uint8Array());
const bench: Bench = { tape: "inches", fineness: 16, kerf: "1/8" };
const answer = spacing({ mode: "slats", length: 37, slat_width: "2 3/4", slats: 9 }, bench);
const codes: Code[] = [];
const notes: NoteId[] = [];
const columns: ColumnId[] = ["from_left"];
if (answer.ok) {
  const inches: number | undefined = answer.results.pitch?.inches;
  notes.push(...answer.notes.map((note) => note.id));
  if (inches !== undefined && notes[0] === "may_touch_zone_edge") notes.pop();
} else {
  codes.push(...answer.problems.map((problem) => problem.code));
}
// @ts-expect-error: no such code.
codes.push("no-such-code");
// @ts-expect-error: no such column.
columns.push("From left");
// @ts-expect-error: no such note.
notes.push("The gap in the middle is");
// @ts-expect-error: no such field.
spacing({ lenght: 37 });
// @ts-expect-error: nothing of a browser is known here.
document.title;
