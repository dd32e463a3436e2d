import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
beforeEach(async () => {
  bench = await openTestCore();
});
afterEach(() => bench.close());

describe("a callout from the call to its end", () => {
  test("goes through its events and puts the lift back in service", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "stops a hand's breadth too low at 2",
      inside: "nobody",
    });
    expect(logged.number).toBe("A-0001");
    bench.minutes(5);
    bench.ask("callout.recordEvent", { id: logged.id, kind: "passed on", to: bench.people.engineer });
    bench.minutes(20);
    bench.ask("callout.recordEvent", { id: logged.id, kind: "arrived" });
    bench.ask("callout.recordEvent", { id: logged.id, kind: "made safe" });
    expect(bench.ask("lift.find", { id: liftId }).lift.state).toBe("out of service");
    const contradiction = {
      id: logged.id,
      version: bench.ask("callout.find", { id: logged.id }).callout.version,
      ending: "repaired",
      group: "position and zone sensing",
    } as const;
    expect(bench.refusal("callout.end", contradiction)).toBe("state-refused");
    bench.minutes(30);
    expect(bench.refusal("callout.recordEvent", { id: logged.id, kind: "back in service" })).toBe(
      "register-not-compared",
    );
    bench.ask("callout.recordEvent", {
      id: logged.id,
      kind: "back in service",
      registerComparedBy: bench.people.engineer,
    });
    bench.ask("callout.end", contradiction);
    const found = bench.ask("callout.find", { id: logged.id });
    expect(found.line.next).toBeNull();
    expect(found.line.made).toEqual([
      "received",
      "passed on",
      "arrived",
      "made safe",
      "back in service",
      "closed",
    ]);
    expect(bench.ask("lift.find", { id: liftId }).lift.state).toBe("in service");
  });

  test("an event before the call is refused with the likely time", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "nobody" });
    bench.minutes(60);
    const envelope = bench.core.request({
      operation: "callout.recordEvent",
      input: { id: logged.id, kind: "arrived", at: "2026-11-17T08:05:00.000Z" },
      as: bench.people.engineer,
    });
    expect(envelope).toMatchObject({
      ok: false,
      error: { code: "time-refused", details: { meant: "2026-11-17T09:05:00.000Z" } },
    });
  });

  test("a corrected time keeps the earlier one in sight", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "nobody" });
    bench.minutes(30);
    const { eventId } = bench.ask("callout.recordEvent", { id: logged.id, kind: "arrived" });
    bench.ask("callout.correctEvent", { eventId, at: "2026-11-17T09:10:00.000Z" });
    const arrived = bench
      .ask("callout.find", { id: logged.id })
      .events.find((event) => event.kind === "arrived");
    expect(arrived?.at).toBe("2026-11-17T09:10:00.000Z");
    expect(arrived?.earlier.map((earlier) => earlier.at)).toEqual(["2026-11-17T09:22:00.000Z"]);
    expect(bench.refusal("callout.correctEvent", { eventId, at: "2026-11-17T09:11:00.000Z" })).toBe(
      "version-conflict",
    );
  });
});

describe("the safety rule", () => {
  test("an open bridge keeps a lift out of service until its removal is confirmed", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "stops short", inside: "nobody" });
    bench.minutes(30);
    const bridge = bench.ask("bridge.set", {
      liftId,
      contact: "landing door contact",
      points: "34-35",
      reason: "find the open contact",
      control: "inspection",
    });
    const back = {
      id: logged.id,
      kind: "back in service",
      registerComparedBy: bench.people.engineer,
    } as const;
    expect(bench.refusal("callout.recordEvent", back)).toBe("bridge-open");
    bench.minutes(10);
    const removed = bench.ask("bridge.recordRemoval", {
      id: bridge.id,
      version: bridge.version,
      removedBy: bench.people.engineer,
    });
    expect(bench.refusal("callout.recordEvent", back)).toBe("bridge-open");
    bench.ask("bridge.confirmRemoval", {
      id: bridge.id,
      version: removed.version,
      checkedBy: bench.people.lead,
      proof: "door contact opens the chain at landing 3",
    });
    expect(
      bench.refusal("callout.recordEvent", { ...back, at: new Date(bench.now - 5 * 60_000).toISOString() }),
    ).toBe("bridge-open");
    const { eventId } = bench.ask("callout.recordEvent", back);
    expect(
      bench.refusal("callout.correctEvent", { eventId, at: new Date(bench.now - 5 * 60_000).toISOString() }),
    ).toBe("bridge-open");
    expect(bench.refusal("history.undoLast", { entity: "bridge", id: bridge.id, version: 3 })).toBe(
      "state-refused",
    );
  });

  test("people inside keep the lift out of service and the callout open", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "dead, one person inside",
      inside: "people inside",
      insideCount: 1,
    });
    const lift = bench.ask("lift.find", { id: liftId }).lift;
    expect(lift.state).toBe("out of service");
    bench.minutes(10);
    const end = {
      id: logged.id,
      version: logged.version,
      ending: "cancelled",
      group: "not yet known",
    } as const;
    expect(bench.refusal("callout.end", end)).toBe("people-inside");
    expect(
      bench.refusal("lift.setState", {
        id: liftId,
        version: lift.version,
        state: "in service",
        registerComparedBy: bench.people.engineer,
      }),
    ).toBe("people-inside");
    expect(
      bench.refusal("callout.recordEvent", {
        id: logged.id,
        kind: "back in service",
        registerComparedBy: bench.people.engineer,
      }),
    ).toBe("people-inside");
    bench.ask("callout.recordEvent", { id: logged.id, kind: "people released" });
    bench.ask("callout.recordEvent", {
      id: logged.id,
      kind: "back in service",
      registerComparedBy: bench.people.engineer,
    });
    bench.ask("callout.end", {
      ...end,
      version: bench.ask("callout.find", { id: logged.id }).callout.version,
      ending: "repaired",
    });
  });

  test("a danger blocks every further step until it is cleared", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "nobody" });
    const danger = bench.ask("danger.record", {
      liftId,
      words: "link from car door to landing door terminals",
    });
    expect(
      bench.refusal("bridge.set", {
        liftId,
        contact: "landing door contact",
        points: "1-2",
        reason: "x",
        control: "inspection",
      }),
    ).toBe("danger-open");
    expect(
      bench.refusal("callout.end", { id: logged.id, version: 1, ending: "repaired", group: "doors" }),
    ).toBe("danger-open");
    bench.ask("danger.clear", {
      id: danger.id,
      version: 1,
      how: "link taken out, both contacts proved",
      clearedBy: bench.people.engineer,
    });
    bench.ask("callout.recordEvent", {
      id: logged.id,
      kind: "back in service",
      registerComparedBy: bench.people.engineer,
    });
  });
});

test("history tells who changed what, and the last change can be taken back", () => {
  const { liftId } = addLift(bench);
  const changed = bench.ask("lift.change", { id: liftId, version: 1, fields: { ratedSpeed: 1.6 } });
  expect(bench.refusal("lift.change", { id: liftId, version: 1, fields: { ratedSpeed: 2 } })).toBe(
    "version-conflict",
  );
  const [last] = bench.ask("history.ofRecord", { entity: "lift", id: liftId }).changes;
  expect(last).toMatchObject({
    what: "changed",
    by: { name: "Ines Calder" },
    fields: [{ field: "ratedSpeed", before: 1, after: 1.6 }],
  });
  bench.ask("history.undoLast", { entity: "lift", id: liftId, version: changed.version });
  expect(bench.ask("lift.find", { id: liftId }).lift.ratedSpeed).toBe(1);
});

test("lists, look-up and what stands beside a callout", () => {
  const { liftId } = addLift(bench);
  addLift(bench, "Lift 1", "Saltpan Court");
  bench.ask("callout.log", {
    liftId,
    liftWords: "",
    said: "doors keep reopening",
    inside: "nobody",
    group: "doors",
    callBack: "555 0142",
  });
  bench.minutes(60 * 24 * 10);
  const beside = bench.ask("callout.beside", { liftId, said: "doors reopen at the lobby" });
  expect(beside).toMatchObject({
    proposedGroup: "doors",
    chain: [{ number: "A-0001" }],
    open: [{ number: "A-0001" }],
  });
  const second = bench.ask("callout.log", {
    liftId,
    liftWords: "",
    said: "doors again",
    inside: "nobody",
    group: "doors",
  });
  expect(bench.ask("callout.find", { id: second.id }).line.repeat).toBe(1);
  expect(bench.ask("lift.lookUp", { text: "kitiwake 2" }).lifts[0]?.title).toBe("Kittiwake House, Lift 2");
  expect(bench.ask("lift.lookUp", { text: "5550142" }).lifts[0]?.title).toBe("Kittiwake House, Lift 2");
  expect(bench.ask("callout.list", { filter: { open: true } }).total).toBe(2);
  expect(bench.ask("callout.list", { filter: { text: "reopening" } }).callouts).toHaveLength(1);
  expect(bench.ask("lift.timeline", { id: liftId }).entries.length).toBeGreaterThan(2);
});

describe("what a reviewer found", () => {
  test("car door and landing door are never bridged together, one after the other neither", () => {
    const { liftId } = addLift(bench);
    const common = { liftId, points: "1-2", reason: "find it", control: "inspection" } as const;
    const landing = bench.ask("bridge.set", { ...common, contact: "landing door contact" });
    const car = { ...common, contact: "car door contact" } as const;
    expect(bench.refusal("bridge.set", car)).toBe("doors-bridged-together");
    bench.minutes(10);
    bench.ask("bridge.recordRemoval", { id: landing.id, version: 1, removedBy: bench.people.engineer });
    expect(
      bench.refusal("bridge.set", { ...car, setAt: new Date(bench.now - 5 * 60_000).toISOString() }),
    ).toBe("doors-bridged-together");
    expect(bench.refusal("bridge.set", car)).toBe("accepted");
  });

  test("people reported by a later caller wait from then on; an earlier release was not theirs", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "nobody" });
    bench.minutes(60);
    bench.ask("callout.change", { id: logged.id, version: 1, fields: { inside: "people inside" } });
    const early = {
      id: logged.id,
      kind: "people released",
      at: new Date(bench.now - 60_000).toISOString(),
    } as const;
    expect(bench.refusal("callout.recordEvent", early)).toBe("time-refused");
    const line = bench.ask("callout.list", { filter: { open: true } }).callouts[0];
    expect(line).toMatchObject({ stillInside: true, insideSince: new Date(bench.now).toISOString() });
    bench.minutes(5);
    bench.ask("callout.recordEvent", { id: logged.id, kind: "people released" });
    expect(bench.ask("callout.list", { filter: { open: true } }).callouts[0]?.stillInside).toBe(false);
  });

  test("a lift is found by its own words before look-alikes, by a number only where it is known", () => {
    const { liftId } = addLift(bench, "Lift 1", "Gannet Row");
    addLift(bench, "Lift 1", "Net Loft Studios");
    bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "nobody", callBack: "555 0130" });
    expect(bench.ask("lift.lookUp", { text: "net loft" }).lifts[0]?.title).toBe("Net Loft Studios, Lift 1");
    expect(bench.ask("lift.lookUp", { text: "555 0130" }).lifts.map((lift) => lift.title)).toEqual([
      "Gannet Row, Lift 1",
    ]);
    expect(bench.ask("lift.lookUp", { text: "555 0131" }).lifts).toEqual([]);
    expect(bench.ask("lift.lookUp", { text: "the lift at gannet" }).lifts[0]?.title).toBe(
      "Gannet Row, Lift 1",
    );
  });

  test("the newest reason why a lift is out of service is the one that is seen", () => {
    const { liftId } = addLift(bench);
    const logged = bench.ask("callout.log", { liftId, liftWords: "", said: "dead", inside: "people inside" });
    bench.minutes(5);
    bench.ask("callout.recordEvent", { id: logged.id, kind: "people released" });
    bench.ask("callout.recordEvent", { id: logged.id, kind: "made safe" });
    const { version } = bench.ask("callout.find", { id: logged.id }).callout;
    bench.ask("callout.end", {
      id: logged.id,
      version,
      ending: "left out of service",
      group: "doors",
      reason: "door edge on order",
    });
    expect(bench.ask("lift.find", { id: liftId }).lift).toMatchObject({
      stateReason: "door edge on order",
      stateSince: "2026-11-17T08:52:00.000Z",
    });
  });
});
