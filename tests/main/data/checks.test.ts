import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { checkPlans } from "#shared-lib/check-plans/plan-list.ts";
import { installStarterNotes } from "../../../main/data/starter-notes/install-starter-notes.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
let liftId: string;
let landings: readonly { readonly id: string; readonly marking: string }[];
beforeEach(async () => {
  bench = await openTestCore();
  liftId = addLift(bench).liftId;
  landings = bench.ask("lift.find", { id: liftId }).landings;
});
afterEach(() => bench.close());

const inOrder = {
  up: ["upper on", "lower on", "upper off", "lower off"],
  down: ["lower on", "upper on", "lower off", "upper off"],
};
const landing = (marking: string): string => landings.find((one) => one.marking === marking)?.id ?? "";
const start = (planId = "zone-sensors") => bench.ask("check.start", { liftId, planId });
const record = (checkId: string, marking: string, direction: "up" | "down", order: string[]) =>
  bench.ask("check.recordStep", {
    checkId,
    stepKey: `zone-${direction}-${landing(marking)}`,
    found: { kind: "order", order },
  });

test("plans are listed, and with a lift their steps", () => {
  const { plans } = bench.ask("check.plans", {});
  expect(plans.map(({ id }) => id)).toEqual(checkPlans.map(({ id }) => id));
  expect(plans.every(({ steps }) => steps.length === 0)).toBe(true);
  const zone = bench.ask("check.plans", { liftId }).plans.find(({ id }) => id === "zone-sensors");
  expect(zone?.steps).toHaveLength(12);
});

describe("a signal check", () => {
  test("records what was found, tells the verdict and counts it", () => {
    const check = start();
    expect(record(check.id, "1", "up", inOrder.up)).toMatchObject({
      id: check.id,
      version: 1,
      verdict: "passed",
    });
    const reversed = record(check.id, "2", "down", inOrder.up);
    expect(reversed).toMatchObject({
      verdict: "failed",
      sentence: expect.stringContaining("found upper on, lower on"),
    });
    const found = bench.ask("check.find", { id: check.id });
    expect(found.check).toMatchObject({
      planName: "Zone sensors at every landing",
      liftTitle: "Kittiwake House, Lift 2",
      by: { name: "Ines Calder" },
      passed: 1,
      failed: 1,
      unchecked: 10,
      finishedAt: null,
    });
    expect(found.steps.find(({ key }) => key === `zone-down-${landing("2")}`)).toMatchObject({
      verdict: "failed",
      found: { kind: "order", order: inOrder.up },
      by: { name: "Ines Calder" },
      at: "2026-11-17T08:52:00.000Z",
      previous: null,
    });
    expect(found.steps.find(({ key }) => key === `zone-up-${landing("3")}`)).toMatchObject({
      verdict: "unchecked",
      found: null,
    });
  });

  test("the newest finding of a step counts, the earlier one stays in the record", () => {
    const check = start();
    record(check.id, "1", "up", inOrder.down);
    record(check.id, "1", "up", inOrder.up);
    expect(bench.ask("check.find", { id: check.id }).check).toMatchObject({ passed: 1, failed: 0 });
    const rows = bench.core.file.all("SELECT * FROM checkStep WHERE checkId = :id", { id: check.id });
    expect(rows).toHaveLength(2);
  });

  test("shows each step beside the previous time with the same plan on the same lift", () => {
    const first = start();
    record(first.id, "1", "up", inOrder.down);
    record(first.id, "2", "up", inOrder.up);
    bench.minutes(24 * 60);
    const second = start();
    record(second.id, "1", "up", inOrder.up);
    bench.minutes(24 * 60);
    const third = start();
    const previous = (id: string, marking: string) =>
      bench.ask("check.find", { id }).steps.find(({ key }) => key === `zone-up-${landing(marking)}`)
        ?.previous;
    expect(previous(third.id, "1")).toMatchObject({ verdict: "passed", at: "2026-11-18T08:52:00.000Z" });
    expect(previous(third.id, "2")).toMatchObject({ verdict: "passed", at: "2026-11-17T08:52:00.000Z" });
    expect(previous(second.id, "1")).toMatchObject({ verdict: "failed" });
    expect(previous(third.id, "3")).toBeNull();
    expect(previous(first.id, "1")).toBeNull();
    const other = bench.ask("check.start", {
      liftId: addLift(bench, "Lift 1", "Saltpan Court").liftId,
      planId: "zone-sensors",
    });
    expect(bench.ask("check.find", { id: other.id }).steps.every((step) => step.previous === null)).toBe(
      true,
    );
  });

  test("what could not be checked stays unchecked, with its note, and takes nothing from what was found before", () => {
    const first = start();
    record(first.id, "1", "up", inOrder.down);
    bench.minutes(60);
    const second = start();
    const notNow = {
      checkId: second.id,
      stepKey: `zone-up-${landing("1")}`,
      found: { kind: "not checked" },
      note: "Lobby is being painted.",
    } as const;
    expect(bench.ask("check.recordStep", notNow)).toMatchObject({ verdict: "unchecked" });
    const found = bench.ask("check.find", { id: second.id });
    expect(found.check).toMatchObject({ passed: 0, failed: 0, unchecked: 12 });
    expect(found.steps.find(({ key }) => key === notNow.stepKey)).toMatchObject({
      found: { kind: "not checked" },
      verdict: "unchecked",
      note: "Lobby is being painted.",
      previous: { checkId: first.id, verdict: "failed", found: { kind: "order", order: inOrder.down } },
    });
    const place = () =>
      bench
        .ask("check.landingStates", { liftId })
        .places.find(({ landingId, part }) => landingId === landing("1") && part === "zone-magnet");
    expect(place()).toMatchObject({ verdict: "failed", checkId: first.id });
    expect(
      bench.ask("check.find", { id: start().id }).steps.find(({ key }) => key === notNow.stepKey),
    ).toMatchObject({
      previous: { checkId: first.id },
    });
  });

  test("a finding taken back in its own check does not count afterwards", () => {
    const first = start();
    record(first.id, "1", "up", inOrder.down);
    bench.ask("check.recordStep", {
      checkId: first.id,
      stepKey: `zone-up-${landing("1")}`,
      found: { kind: "not checked" },
    });
    const next = bench.ask("check.find", { id: start().id });
    expect(next.steps.every(({ previous }) => previous === null)).toBe(true);
    expect(
      bench.ask("check.landingStates", { liftId }).places.every(({ verdict }) => verdict === "unchecked"),
    ).toBe(true);
  });

  test("keeps the steps it was started with when the lift changes", () => {
    const check = start();
    const lift = bench.ask("lift.find", { id: liftId }).lift;
    bench.ask("lift.setLandings", {
      liftId,
      version: lift.version,
      landings: landings
        .slice(0, 2)
        .map(({ id, marking }, index) => ({ id, marking: `${marking}x`, level: index * 3 })),
    });
    expect(
      bench.ask("check.find", { id: check.id }).steps.map(({ landingMarking }) => landingMarking),
    ).toContain("3");
    record(check.id, "3", "up", ["upper on", "lower on"]);
  });

  test("is listed newest first, open ones on their own, and is finished once", () => {
    const first = start();
    bench.minutes(1);
    const second = start("inspection-controls");
    const ids = (input: object) => bench.ask("check.list", input).checks.map(({ id }) => id);
    expect(ids({ liftId })).toEqual([second.id, first.id]);
    const finished = bench.ask("check.finish", { id: first.id, version: first.version });
    expect(ids({ open: true })).toEqual([second.id]);
    expect(ids({ open: false })).toEqual([first.id]);
    expect(bench.refusal("check.finish", { id: first.id, version: finished.version })).toBe("state-refused");
    expect(
      bench.refusal("check.recordStep", {
        checkId: first.id,
        stepKey: `zone-up-${landing("1")}`,
        found: { kind: "order", order: [] },
      }),
    ).toBe("state-refused");
  });

  test("refuses what is no plan, no step, no fitting answer, and what is of another lift", () => {
    expect(bench.refusal("check.start", { liftId, planId: "palmistry" })).toBe("not-found");
    const check = start("inspection-controls");
    const speed = { checkId: check.id, stepKey: "speed" } as const;
    expect(
      bench.refusal("check.recordStep", { ...speed, stepKey: "luck", found: { kind: "yes", yes: true } }),
    ).toBe("not-found");
    expect(bench.refusal("check.recordStep", { ...speed, found: { kind: "yes", yes: true } })).toBe(
      "input-invalid",
    );
    expect(bench.ask("check.recordStep", { ...speed, found: { kind: "value", value: 0.7 } }).verdict).toBe(
      "failed",
    );
    const other = addLift(bench, "Lift 1", "Saltpan Court").liftId;
    const callout = bench.ask("callout.log", {
      liftId: other,
      liftWords: "",
      said: "dead",
      inside: "nobody",
    });
    expect(bench.refusal("check.start", { liftId, planId: "zone-sensors", calloutId: callout.id })).toBe(
      "input-invalid",
    );
    const bare = bench.ask("lift.add", {
      siteId: bench.ask("site.add", { name: "Old Ropery Lofts" }).id,
      name: "Lift",
    });
    expect(bench.refusal("check.start", { liftId: bare.id, planId: "zone-sensors" })).toBe("state-refused");
  });

  test("waits while a danger is open on the lift", () => {
    const check = start();
    const danger = bench.ask("danger.record", { liftId, words: "link across car and landing door" });
    expect(bench.refusal("check.start", { liftId, planId: "zone-sensors" })).toBe("danger-open");
    const step = {
      checkId: check.id,
      stepKey: `zone-up-${landing("1")}`,
      found: { kind: "order" as const, order: inOrder.up },
    };
    expect(bench.refusal("check.recordStep", step)).toBe("danger-open");
    bench.ask("danger.clear", {
      id: danger.id,
      version: 1,
      how: "taken out, both contacts proved",
      clearedBy: bench.people.engineer,
    });
    expect(bench.ask("check.recordStep", step).verdict).toBe("passed");
  });
});

describe("the state of each place in the shaft", () => {
  const place = (marking: string | null, part: string) =>
    bench
      .ask("check.landingStates", { liftId })
      .places.find(
        (one) => one.landingId === (marking === null ? null : landing(marking)) && one.part === part,
      );

  test("is unchecked until every step there has passed, and failed while one has", () => {
    expect(place("1", "zone-magnet")).toEqual({
      landingId: landing("1"),
      part: "zone-magnet",
      verdict: "unchecked",
      sentence: "Not checked yet.",
      at: null,
      checkId: null,
    });
    const check = start();
    record(check.id, "1", "up", inOrder.up);
    expect(place("1", "zone-magnet")).toMatchObject({
      verdict: "unchecked",
      sentence: "1 of 3 steps passed, the others are not checked.",
    });
    record(check.id, "1", "down", inOrder.up);
    expect(place("1", "zone-magnet")).toMatchObject({ verdict: "failed", checkId: check.id });
    bench.minutes(60);
    const again = start();
    record(again.id, "1", "down", inOrder.down);
    bench.ask("check.recordStep", {
      checkId: again.id,
      stepKey: `sills-${landing("1")}`,
      found: { kind: "value", value: -4 },
    });
    expect(place("1", "zone-magnet")).toMatchObject({
      verdict: "passed",
      checkId: again.id,
      at: "2026-11-17T09:52:00.000Z",
    });
    expect(place("2", "zone-magnet")).toMatchObject({ verdict: "unchecked" });
  });

  test("asks only the plans that were carried out there", () => {
    const check = start("chain-free-of-bridges");
    bench.ask("check.recordStep", {
      checkId: check.id,
      stepKey: `chain-landing-door-${landing("1")}-front`,
      found: { kind: "state", on: false },
    });
    expect(place("1", "landing-door")).toMatchObject({ verdict: "passed" });
    expect(place("2", "landing-door")).toMatchObject({ verdict: "unchecked", at: null });
    expect(place(null, "pit")).toMatchObject({ verdict: "unchecked" });
  });

  test("covers each place once", () => {
    const keys = bench
      .ask("check.landingStates", { liftId })
      .places.map(({ landingId, part }) => `${landingId} ${part}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain(`${landing("3")} switch`);
  });
});

test("the words of a failed step lead to the notes about it", () => {
  installStarterNotes(bench.core);
  const groups: Record<string, readonly string[]> = {
    "zone-sensors": ["position and zone sensing"],
    "terminal-slowdown": [
      "position and zone sensing",
      "safety chain",
      "drive and motor",
      "governor and safety gear",
    ],
    "door-commands": ["doors", "door operator", "safety chain"],
    "inspection-controls": ["safety chain", "controller and power supply"],
    "chain-free-of-bridges": ["safety chain", "doors"],
  };
  for (const plan of bench.ask("check.plans", { liftId }).plans) {
    for (const text of new Set(plan.steps.map(({ searchWords }) => searchWords))) {
      const [best] = bench.ask("faultNote.suggest", { text }).notes;
      expect(groups[plan.id], `${text}: ${best?.title}`).toContain(best?.group);
    }
  }
});
