import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { installStarterNotes } from "../../../main/data/starter-notes/install-starter-notes.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
beforeEach(async () => {
  bench = await openTestCore();
});
afterEach(() => bench.close());

const zoneNote = {
  title: "Zone sensor out of reach",
  group: "position and zone sensing" as const,
  symptoms: ["stops short at one landing"],
  causes: [
    { key: "gap", title: "Gap too large", tell: "signal chatters", fix: "set the gap" },
    { key: "magnet", title: "Magnet moved", tell: "one landing only" },
  ],
  checks: [
    {
      key: "look",
      title: "Look at the sensor",
      outcomes: [{ key: "wide", words: "wide", means: { gap: "likely" as const } }],
    },
  ],
  source: "common practice, no source",
};

/** A callout that ended by a recorded fix. */
function ended(liftId: string, cause = "gap 9 mm") {
  const callout = bench.ask("callout.log", { liftId, liftWords: "", said: "stops short", inside: "nobody" });
  const visit = bench.ask("visit.record", {
    liftId,
    calloutId: callout.id,
    kind: "callout",
    engineerId: bench.people.engineer,
    arrivedAt: new Date(bench.now).toISOString(),
    fix: { cause, fix: "gap set", group: "position and zone sensing" },
  });
  return { calloutId: callout.id, visitId: visit.id, fixId: visit.fixId ?? "" };
}

describe("writing a fault note", () => {
  test("makes a draft with a number, found as it was written", () => {
    const saved = bench.ask("faultNote.write", zoneNote);
    expect(saved).toMatchObject({ version: 1, number: "A-N001" });
    const { note, counts, proof } = bench.ask("faultNote.find", { id: saved.id });
    expect(note).toMatchObject({
      title: zoneNote.title,
      group: zoneNote.group,
      status: "draft",
      statusBy: null,
      starterKey: null,
      edited: false,
      applies: { drives: [], doors: [], controllerFamilies: [], words: "" },
    });
    expect(note.causes[1]).toEqual({
      key: "magnet",
      title: "Magnet moved",
      tell: "one landing only",
      fix: "",
    });
    expect({ counts, proof }).toEqual({ counts: [], proof: [] });
    expect(bench.ask("faultNote.write", zoneNote).number).toBe("A-N002");
  });

  test("from a fix attaches it in the same step, to the only cause or to the one that says the same", () => {
    const { liftId } = addLift(bench);
    const attached = (fixId: string) => bench.ask("fix.find", { id: fixId }).fix;
    const one = ended(liftId);
    const causes = [{ key: "gap", title: "Gap too large" }];
    const note = bench.ask("faultNote.write", { ...zoneNote, causes, fromFixId: one.fixId });
    expect(attached(one.fixId)).toMatchObject({ noteId: note.id, causeKey: "gap" });
    const same = ended(liftId, "Magnet moved");
    bench.ask("faultNote.write", { ...zoneNote, fromFixId: same.fixId });
    expect(attached(same.fixId).causeKey).toBe("magnet");
    const other = ended(liftId, "something else");
    bench.ask("faultNote.write", { ...zoneNote, fromFixId: other.fixId });
    expect(attached(other.fixId).causeKey).toBeNull();
    const missing = { ...zoneNote, fromFixId: "01890000-0000-7000-8000-000000000000" };
    expect(bench.refusal("faultNote.write", missing)).toBe("not-found");
    expect(bench.ask("faultNote.list", {}).notes).toHaveLength(3);
  });

  test("refuses two causes of one key and names the place", () => {
    const [gap] = zoneNote.causes;
    const envelope = bench.core.request({
      operation: "faultNote.write",
      input: { ...zoneNote, causes: [...zoneNote.causes, gap] },
      as: bench.people.engineer,
    });
    expect(envelope).toMatchObject({
      ok: false,
      error: { code: "input-invalid", details: { fields: [{ path: ["causes", 2, "key"] }] } },
    });
  });
});

describe("changing a fault note", () => {
  test("changes only what is given; an older version is refused with the present text", () => {
    const { id } = bench.ask("faultNote.write", zoneNote);
    const changed = bench.ask("faultNote.change", {
      id,
      version: 1,
      fields: { title: "Zone sensor too far away" },
    });
    expect(bench.ask("faultNote.find", { id }).note).toMatchObject({
      title: "Zone sensor too far away",
      symptoms: zoneNote.symptoms,
      group: zoneNote.group,
      version: 2,
      edited: false,
    });
    expect(
      bench.core.request({
        operation: "faultNote.change",
        input: { id, version: 1, fields: { title: "Other" } },
        as: bench.people.lead,
      }),
    ).toMatchObject({
      ok: false,
      error: {
        code: "version-conflict",
        details: { present: { title: "Zone sensor too far away", version: 2 } },
      },
    });
    expect(
      bench.ask("faultNote.change", { id, version: 2, fields: { title: "Zone sensor too far away" } }),
    ).toEqual(changed);
  });

  test("confirming, withdrawing and setting back name the person, the moment and the reason", () => {
    const { id } = bench.ask("faultNote.write", zoneNote);
    bench.minutes(10);
    bench.ask("faultNote.confirm", { id, version: 1, reason: "proved on three lifts" }, bench.people.lead);
    expect(bench.ask("faultNote.find", { id }).note).toMatchObject({
      status: "confirmed",
      statusBy: { name: "Hedda Quill" },
      statusAt: "2026-11-17T09:02:00.000Z",
      statusReason: "proved on three lifts",
    });
    expect(bench.refusal("faultNote.confirm", { id, version: 2 })).toBe("state-refused");
    expect(bench.refusal("faultNote.withdraw", { id, version: 1, reason: "wrong" })).toBe("version-conflict");
    expect(bench.refusal("faultNote.withdraw", { id, version: 2, reason: " " })).toBe("input-invalid");
    bench.ask("faultNote.withdraw", { id, version: 2, reason: "holds for one family only" });
    expect(bench.ask("faultNote.list", { status: "withdrawn" }).notes.map((note) => note.id)).toEqual([id]);
    bench.ask("faultNote.backToDraft", { id, version: 3, reason: "to be written again" });
    expect(bench.ask("faultNote.find", { id }).note).toMatchObject({
      status: "draft",
      statusReason: "to be written again",
    });
  });
});

test("a note counts the callouts its causes ended, and shows the proof newest first", () => {
  const { liftId } = addLift(bench);
  const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
  const { id: noteId } = bench.ask("faultNote.write", zoneNote);
  const attach = (fixId: string, causeKey: string | null) =>
    bench.ask("fix.attach", { id: fixId, version: 1, noteId, causeKey });
  const first = ended(liftId);
  attach(first.fixId, "gap");
  bench.minutes(30);
  // A second visit to the same callout with the same cause is one callout more often visited, not ended twice.
  const again = bench.ask("visit.record", {
    liftId,
    calloutId: first.calloutId,
    kind: "return visit",
    engineerId: bench.people.engineer,
    arrivedAt: new Date(bench.now).toISOString(),
    fix: { cause: "gap 7 mm", fix: "gap set again", group: "position and zone sensing" },
  });
  attach(again.fixId ?? "", "gap");
  const second = ended(other);
  attach(second.fixId, "gap");
  attach(ended(other).fixId, "magnet");
  attach(ended(other).fixId, null);
  const found = bench.ask("faultNote.find", { id: noteId });
  expect(found.counts).toEqual([
    { causeKey: "gap", callouts: 2 },
    { causeKey: "magnet", callouts: 1 },
    { causeKey: null, callouts: 1 },
  ]);
  expect({ callouts: found.callouts, lifts: found.lifts, proof: found.proof.length }).toEqual({
    callouts: 4,
    lifts: 2,
    proof: 5,
  });
  expect(found.proof.at(-1)).toMatchObject({
    fixId: first.fixId,
    calloutNumber: "A-0001",
    liftTitle: "Kittiwake House, Lift 2",
  });
  const [line] = bench.ask("faultNote.list", { group: "position and zone sensing" }).notes;
  expect(line).toMatchObject({ id: noteId, callouts: 4, lifts: 2, starter: false });
  bench.ask("record.delete", { entity: "visit", id: second.visitId, version: 1 });
  expect(bench.ask("faultNote.find", { id: noteId })).toMatchObject({ callouts: 3, proof: { length: 4 } });
  expect(bench.ask("faultNote.list", { group: "brake" }).notes).toEqual([]);
});

describe("suggesting notes for what was found", () => {
  const keysFor = (text: string, liftId: string | null = null) =>
    bench
      .ask("faultNote.suggest", { text, liftId })
      .notes.map(({ id }) => bench.ask("faultNote.find", { id }).note.starterKey);

  test("brings the note of that trouble first, whatever words were used", () => {
    installStarterNotes(bench.core);
    expect(keysFor("upper and lower zone sensor wires crossed, order reversed at every landing")[0]).toBe(
      "zone-signals-reversed",
    );
    expect(keysFor("terminator of the landing panel bus was missing")[0]).toBe(
      "panel-bus-terminator-missing",
    );
    expect(keysFor("elevator hoistway pit flooded, water in the pit")[0]).toBe("water-in-pit");
    expect(keysFor("xyzzy")).toEqual([]);
    expect(keysFor("")).toEqual([]);
  });

  test("says why, and answers the same every time", () => {
    installStarterNotes(bench.core);
    const ask = () =>
      bench.ask("faultNote.suggest", { text: "gap of the zone sensor too large, signal chatters", limit: 3 })
        .notes;
    const notes = ask();
    expect(notes).toHaveLength(3);
    for (const note of notes)
      expect(note.why).toMatch(/^(title|symptom|cause|fix)( and (title|symptom|cause|fix))*: \w/);
    expect(ask()).toEqual(notes);
  });

  test("follows new, changed and deleted notes, raises the lift's own family and lowers withdrawn ones", () => {
    const { liftId } = addLift(bench);
    const write = (title: string, controllerFamilies: string[]) =>
      bench.ask("faultNote.write", {
        ...zoneNote,
        title,
        applies: { drives: [], doors: [], controllerFamilies, words: "" },
      }).id;
    const tern = write("Relay board loses the zone", ["Tern"]);
    const dunlin = write("Relay board loses the zone", ["Dunlin"]);
    const ids = (lift: string | null) =>
      bench
        .ask("faultNote.suggest", { text: "relay board loses zone", liftId: lift })
        .notes.map(({ id }) => id);
    expect(ids(null)).toEqual([tern, dunlin]);
    expect(ids(liftId)).toEqual([dunlin, tern]);
    expect(bench.ask("faultNote.suggest", { text: "relay board", liftId }).notes[0]?.why).toContain(
      "same controller family",
    );
    bench.ask("faultNote.withdraw", { id: tern, version: 1, reason: "wrong" });
    expect(ids(null)).toEqual([dunlin, tern]);
    bench.ask("record.delete", { entity: "fault note", id: dunlin, version: 1 });
    expect(ids(liftId)).toEqual([tern]);
  });
});
