import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let liftId: string;
let calloutId: string;
beforeEach(async () => {
  bench = await openTestCore();
  liftId = addLift(bench).liftId;
  calloutId = bench.ask("callout.log", { liftId, liftWords: "", said: "stops short", inside: "nobody" }).id;
  bench.minutes(120);
});
afterEach(() => bench.close());

const fix = {
  cause: "lower zone sensor gap too large",
  fix: "gap set, order proved at every landing",
  group: "position and zone sensing",
} as const;

const visit = (more: object = {}) => ({
  liftId,
  calloutId,
  kind: "callout" as const,
  engineerId: bench.people.engineer,
  arrivedAt: "2026-11-17T09:30:00.000Z",
  leftAt: "2026-11-17T10:20:00.000Z",
  found: "lower zone signal missing at 2",
  done: "gap set",
  ...more,
});

/** The envelope of a refused request. */
function refused(name: "visit.record" | "visit.change", input: object) {
  const envelope = bench.core.request({ operation: name, input, as: bench.people.engineer });
  if (envelope.ok) throw new Error("it was accepted");
  return {
    code: envelope.error.code,
    message: envelope.error.message,
    paths: envelope.error.details.fields?.map((field) => field.path.join(".")),
    details: envelope.error.details,
  };
}

describe("recording a visit", () => {
  test("with a fix writes both, and the callout shows the cause", () => {
    const saved = bench.ask("visit.record", {
      ...visit(),
      chargeable: false,
      parts: [{ name: "zone sensor", quantity: 1 }],
      readings: ["gap 9 mm before, 5 mm after"],
      fix,
    });
    const [found] = bench.ask("visit.list", { calloutId }).visits;
    expect(found).toEqual(bench.ask("visit.find", { id: saved.id }).visit);
    expect(found).toMatchObject({
      id: saved.id,
      version: 1,
      calloutNumber: "A-0001",
      liftTitle: "Kittiwake House, Lift 2",
      engineer: { name: "Ines Calder" },
      chargeable: false,
      parts: [{ name: "zone sensor", quantity: 1, marking: "" }],
      readings: ["gap 9 mm before, 5 mm after"],
      fix: {
        ...fix,
        id: saved.fixId,
        at: "2026-11-17T10:20:00.000Z",
        by: { name: "Ines Calder" },
        calloutId,
        visitId: saved.id,
      },
    });
    const { line, callout, visitIds } = bench.ask("callout.find", { id: calloutId });
    expect(line).toMatchObject({ cause: fix.cause, fix: fix.fix });
    expect(visitIds).toEqual([saved.id]);
    expect(callout.group).toBe("not yet known");
    expect(callout.groupSettled).toBe(false);
  });

  test("without a callout and still going on", () => {
    const saved = bench.ask("visit.record", {
      ...visit({ calloutId: null, leftAt: null }),
      kind: "maintenance",
      fix,
    });
    const { visit: found } = bench.ask("visit.find", { id: saved.id });
    expect(found).toMatchObject({ calloutId: null, calloutNumber: null, leftAt: null, chargeable: null });
    expect(found.fix?.at).toBe("2026-11-17T09:30:00.000Z");
    expect(bench.ask("callout.find", { id: calloutId }).line.cause).toBe("");
  });

  test("refuses times that cannot be, and names the field", () => {
    expect(refused("visit.record", visit({ leftAt: "2026-11-17T09:29:00.000Z" }))).toMatchObject({
      code: "time-refused",
      paths: ["leftAt"],
    });
    const early = refused("visit.record", visit({ arrivedAt: "2026-11-17T08:30:00.000Z" }));
    expect(early).toMatchObject({
      code: "time-refused",
      paths: ["arrivedAt"],
      details: { meant: "2026-11-17T09:30:00.000Z" },
    });
    expect(refused("visit.record", visit({ leftAt: "2026-11-17T12:00:00.000Z" }))).toMatchObject({
      code: "time-refused",
      paths: ["leftAt"],
    });
    expect(
      refused("visit.record", visit({ arrivedAt: "2026-11-18T09:30:00.000Z", leftAt: null })).paths,
    ).toEqual(["arrivedAt"]);
    expect(bench.ask("visit.list", {}).visits).toEqual([]);
  });

  test("in the minute of the call and left in the minute of the arrival is accepted", () => {
    bench.ask(
      "visit.record",
      visit({ arrivedAt: "2026-11-17T08:52:00.000Z", leftAt: "2026-11-17T08:52:00.000Z" }),
    );
  });

  test("refuses a callout of another lift, or one that is not settled", () => {
    const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
    expect(refused("visit.record", visit({ liftId: other }))).toMatchObject({
      code: "input-invalid",
      paths: ["calloutId"],
      message: expect.stringContaining("another lift"),
    });
    const unsettled = bench.ask("callout.log", {
      liftId: null,
      liftWords: "one of the two at the infirmary",
      said: "dead",
      inside: "nobody",
    });
    expect(refused("visit.record", visit({ calloutId: unsettled.id })).message).toContain("not settled");
  });
});

describe("correcting a visit", () => {
  test("lets the fix follow its time, changes its words, takes it away and adds one again", () => {
    const { id, fixId } = bench.ask("visit.record", { ...visit(), fix });
    const later = bench.ask("visit.change", {
      id,
      version: 1,
      fields: { leftAt: "2026-11-17T10:40:00.000Z" },
    });
    expect(later).toEqual({ id, version: 2, fixId });
    expect(bench.ask("fix.find", { id: fixId ?? "" }).fix).toMatchObject({
      at: "2026-11-17T10:40:00.000Z",
      version: 2,
      cause: fix.cause,
    });
    bench.ask("visit.change", { id, version: 2, fields: {}, fix: { ...fix, cause: "gap 9 mm" } });
    expect(bench.ask("visit.find", { id }).visit.fix).toMatchObject({ id: fixId, cause: "gap 9 mm" });
    expect(bench.ask("visit.change", { id, version: 2, fields: {}, fix: null }).fixId).toBeNull();
    expect(bench.ask("visit.find", { id }).visit.fix).toBeNull();
    expect(bench.ask("callout.find", { id: calloutId }).line.cause).toBe("");
    const again = bench.ask("visit.change", { id, version: 2, fields: { found: "gap" }, fix });
    expect(again.version).toBe(3);
    expect(bench.ask("visit.find", { id }).visit.fix?.id).toBe(again.fixId);
  });

  test("refuses an older version with the present record, and impossible times with the path of the field", () => {
    const { id } = bench.ask("visit.record", visit());
    bench.ask("visit.change", { id, version: 1, fields: { done: "gap set to 5 mm" } });
    const conflict = refused("visit.change", { id, version: 1, fields: { done: "nothing" } });
    expect(conflict).toMatchObject({
      code: "version-conflict",
      details: { present: { done: "gap set to 5 mm", version: 2 } },
    });
    expect(
      refused("visit.change", { id, version: 2, fields: { leftAt: "2026-11-17T09:00:00.000Z" } }).paths,
    ).toEqual(["fields.leftAt"]);
    const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
    expect(refused("visit.change", { id, version: 2, fields: { liftId: other } }).paths).toEqual([
      "fields.calloutId",
    ]);
  });

  test("of a visit by a person who has left changes its words all the same", () => {
    const leaver = bench.ask("person.add", { name: "Tam Orrick", role: "engineer" }).id;
    const { id } = bench.ask("visit.record", visit({ engineerId: leaver }));
    bench.ask("record.delete", { entity: "person", id: leaver, version: 1 });
    bench.ask("visit.change", { id, version: 1, fields: { done: "gap set to 5 mm" } });
    expect(bench.ask("visit.find", { id }).visit).toMatchObject({
      done: "gap set to 5 mm",
      engineer: { name: "Tam Orrick" },
    });
    expect(bench.refusal("visit.record", visit({ engineerId: leaver }))).toBe("not-found");
  });
});

test("visits are listed newest first, by lift and by callout", () => {
  const first = bench.ask("visit.record", visit());
  const second = bench.ask(
    "visit.record",
    visit({ calloutId: null, arrivedAt: "2026-11-17T10:30:00.000Z", leftAt: null }),
  );
  const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
  const third = bench.ask("visit.record", visit({ liftId: other, calloutId: null }));
  const ids = (input: object) => bench.ask("visit.list", input).visits.map(({ id }) => id);
  expect(ids({ liftId })).toEqual([second.id, first.id]);
  expect(ids({ calloutId })).toEqual([first.id]);
  expect(ids({})).toEqual([second.id, third.id, first.id]);
  expect(ids({ limit: 1 })).toEqual([second.id]);
  bench.ask("record.delete", { entity: "visit", id: second.id, version: 1 });
  expect(ids({ liftId })).toEqual([first.id]);
  expect(bench.refusal("visit.find", { id: second.id })).toBe("not-found");
});

describe("attaching a fix to a fault note", () => {
  test("names the note and the cause, and is taken off again", () => {
    const { fixId } = bench.ask("visit.record", { ...visit(), fix });
    const note = bench.ask("faultNote.write", {
      title: "Zone sensor out of reach",
      group: "position and zone sensing",
      causes: [{ key: "gap", title: "Gap too large" }],
    });
    const attach = { id: fixId ?? "", version: 1, noteId: note.id };
    expect(bench.refusal("fix.attach", { ...attach, causeKey: "no such cause" })).toBe("input-invalid");
    const attached = bench.ask("fix.attach", { ...attach, causeKey: "gap" });
    expect(bench.ask("fix.find", { id: attached.id }).fix).toMatchObject({
      noteId: note.id,
      noteNumber: "A-N001",
      causeKey: "gap",
      version: 2,
    });
    expect(bench.refusal("fix.attach", { ...attach, causeKey: null })).toBe("version-conflict");
    bench.ask("fix.attach", { id: attached.id, version: 2, noteId: null, causeKey: "gap" });
    expect(bench.ask("fix.find", { id: attached.id }).fix).toMatchObject({
      noteId: null,
      noteNumber: null,
      causeKey: null,
    });
  });

  test("is shown as attached to none while the note is deleted", () => {
    const { fixId } = bench.ask("visit.record", { ...visit(), fix });
    const note = bench.ask("faultNote.write", {
      title: "Zone sensor out of reach",
      group: "doors",
      fromFixId: fixId,
    });
    expect(bench.ask("fix.find", { id: fixId ?? "" }).fix.noteNumber).toBe("A-N001");
    bench.ask("record.delete", { entity: "fault note", id: note.id, version: 1 });
    expect(bench.ask("fix.find", { id: fixId ?? "" }).fix).toMatchObject({ noteId: null, noteNumber: null });
    bench.ask("record.restore", { entity: "fault note", id: note.id, version: 2 });
    expect(bench.ask("fix.find", { id: fixId ?? "" }).fix.noteId).toBe(note.id);
  });
});

test("a deleted visit takes its fix with it, and brings back what went with it", () => {
  const { id, fixId } = bench.ask("visit.record", { ...visit(), fix });
  const cause = () => bench.ask("callout.find", { id: calloutId }).line.cause;
  bench.ask("record.delete", { entity: "visit", id, version: 1 });
  expect(cause()).toBe("");
  expect(bench.refusal("fix.find", { id: fixId ?? "" })).toBe("not-found");
  bench.ask("record.restore", { entity: "visit", id, version: 2 });
  expect(cause()).toBe(fix.cause);
  bench.ask("visit.change", { id, version: 3, fields: {}, fix: null });
  bench.ask("record.delete", { entity: "visit", id, version: 3 });
  bench.ask("history.undoLast", { entity: "visit", id, version: 4 });
  expect(cause()).toBe("");
  expect(bench.ask("visit.find", { id }).visit.fix).toBeNull();
});
