import { readdirSync } from "node:fs";
import { afterEach, beforeEach, expect, test } from "vitest";
import {
  builtInStarterNotes,
  installStarterNotes,
} from "../../../main/data/starter-notes/install-starter-notes.ts";
import type { StarterNote } from "../../../shared-lib/starter-note.ts";
import { openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
beforeEach(async () => {
  bench = await openTestCore();
});
afterEach(() => bench.close());

const notes = () => bench.ask("faultNote.list", {}).notes;
function noteOf(key: string) {
  const found = notes()
    .map(({ id }) => bench.ask("faultNote.find", { id }).note)
    .find((note) => note.starterKey === key);
  if (!found) throw new Error(`no note ${key}`);
  return found;
}
const [first, second, third] = builtInStarterNotes as [StarterNote, StarterNote, StarterNote];
const rewritten = (note: StarterNote): StarterNote => ({ ...note, title: `${note.title}, said better` });

test("every file becomes a draft that says it is general practice", () => {
  installStarterNotes(bench.core);
  const files = readdirSync(new URL("../../../main/data/starter-notes", import.meta.url)).filter((name) =>
    name.endsWith(".json"),
  );
  expect(notes()).toHaveLength(files.length);
  expect(files.length).toBeGreaterThan(20);
  expect(notes().every((note) => note.starter && note.status === "draft")).toBe(true);
  expect(noteOf(first.key)).toMatchObject({
    title: first.title,
    group: first.group,
    causes: first.causes,
    checks: first.checks,
    source: first.source,
    edited: false,
    statusBy: null,
    statusReason: "starter note: general practice, check on site",
    version: 1,
  });
});

test("a second start changes nothing, writes nothing and is quick", () => {
  installStarterNotes(bench.core);
  const before = notes();
  const said = bench.events.length;
  const started = performance.now();
  installStarterNotes(bench.core);
  expect(performance.now() - started).toBeLessThan(100);
  expect(bench.events).toHaveLength(said);
  expect(notes()).toEqual(before);
});

test("a newer text replaces an untouched note, and keeps its number and its history", () => {
  installStarterNotes(bench.core, [first, second]);
  const { id, number } = noteOf(first.key);
  installStarterNotes(bench.core, [rewritten(first), second]);
  expect(noteOf(first.key)).toMatchObject({
    id,
    number,
    title: `${first.title}, said better`,
    version: 2,
    edited: false,
  });
  expect(noteOf(second.key).version).toBe(1);
  const [change] = bench.ask("history.ofRecord", { entity: "fault note", id }).changes;
  expect(change?.fields.map(({ field }) => field).sort()).toEqual(["starterHash", "title"]);
  expect(change?.by).toBeNull();
});

test("an edited, a confirmed and a deleted note are never touched", () => {
  installStarterNotes(bench.core, [first, second, third]);
  const edited = noteOf(first.key);
  bench.ask("faultNote.change", { id: edited.id, version: 1, fields: { title: "Our own words" } });
  expect(noteOf(first.key).edited).toBe(true);
  bench.ask("faultNote.confirm", { id: noteOf(second.key).id, version: 1 });
  const deleted = noteOf(third.key).id;
  bench.ask("record.delete", { entity: "fault note", id: deleted, version: 1 });
  installStarterNotes(bench.core, [first, second, third].map(rewritten));
  expect(noteOf(first.key)).toMatchObject({ title: "Our own words", version: 2 });
  expect(noteOf(second.key)).toMatchObject({ title: second.title, status: "confirmed", version: 2 });
  expect(notes()).toHaveLength(2);
  bench.ask("record.restore", { entity: "fault note", id: deleted, version: 2 });
  expect(noteOf(third.key).title).toBe(third.title);
});

test("a change that changes nothing does not make a starter note the company's own", () => {
  installStarterNotes(bench.core, [first]);
  const { id } = noteOf(first.key);
  bench.ask("faultNote.change", { id, version: 1, fields: { title: first.title } });
  expect(noteOf(first.key)).toMatchObject({ edited: false, version: 1 });
  bench.ask("faultNote.change", { id, version: 1, fields: { title: "Our own words" } });
  bench.ask("history.undoLast", { entity: "fault note", id, version: 2 });
  expect(noteOf(first.key)).toMatchObject({ edited: false, title: first.title });
});

test("a note of a later version of the program is added, one that went is kept", () => {
  installStarterNotes(bench.core, [first]);
  installStarterNotes(bench.core, [second]);
  expect(
    notes()
      .map(({ number }) => number)
      .sort(),
  ).toEqual(["A-N001", "A-N002"]);
});
