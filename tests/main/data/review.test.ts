import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { faultGroups } from "#shared-lib/words.ts";
import { newIdentifier } from "../../../main/data/identifier.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
beforeEach(async () => {
  bench = await openTestCore();
});
afterEach(() => bench.close());

type Group = (typeof faultGroups)[number];
const day = 24 * 60 * 60 * 1000;
const november = { from: "2026-11-01T00:00:00.000Z", until: "2026-12-01T00:00:00.000Z" };

interface Given {
  readonly liftId: string | null;
  readonly at: string;
  readonly group?: Group;
  readonly ending?: string | null;
  readonly endedAt?: string | null;
}

/** Rows as they would lie in the database, for times that the clock of the test has passed or not. */
function put({ liftId, at, group = "doors", ending = null, endedAt = at }: Given): string {
  const id = newIdentifier();
  bench.core.file.run(
    `INSERT INTO callout (id, version, createdAt, number, liftId, liftWords, said, faultGroup, inside, insideCondition, caller,
       callBack, displayReading, receivedAt, groupSettled, ending, endingReason, endedAt, earlierRecord)
     VALUES (:id, 1, :at, :id, :liftId, '', 'doors keep reopening', :group, 'nobody', '', '', '', '', :at, 0, :ending, '', :endedAt, 0)`,
    { id, at, liftId, group, ending, endedAt: ending === null ? null : endedAt },
  );
  return id;
}

describe("repeats", () => {
  test("are counted where they were received, even if what they repeat lies before the period", () => {
    const { liftId } = addLift(bench);
    const first = put({ liftId, at: "2026-09-20T10:00:00.000Z" });
    const second = put({ liftId, at: "2026-10-15T10:00:00.000Z" });
    const third = put({ liftId, at: "2026-11-14T10:00:00.000Z" });
    const fourth = put({ liftId, at: "2026-11-20T10:00:00.000Z" });
    put({ liftId, at: "2026-12-02T10:00:00.000Z" });
    const found = bench.ask("review.repeats", november);
    expect(found).toMatchObject({ callouts: 2, repeats: 2, calloutsYearBefore: 0, repeatsYearBefore: 0 });
    expect(found.repeatIds).toEqual([third, fourth]);
    expect(found.chains).toHaveLength(1);
    expect(found.chains[0]).toMatchObject({
      liftId,
      liftTitle: "Kittiwake House, Lift 2",
      group: "doors",
      running: true,
    });
    expect(found.chains[0]?.callouts.map(({ id }) => id)).toEqual([first, second, third, fourth]);
  });

  test("need the window: 30 days and a second are no repeat, another group and not yet known are none", () => {
    const { liftId } = addLift(bench);
    put({ liftId, at: "2026-11-01T10:00:00.000Z" });
    put({ liftId, at: "2026-12-01T10:00:01.000Z" });
    put({ liftId, at: "2026-11-05T10:00:00.000Z", group: "brake" });
    put({ liftId, at: "2026-11-06T10:00:00.000Z", group: "not yet known" });
    put({ liftId, at: "2026-11-07T10:00:00.000Z", group: "not yet known" });
    const period = { from: november.from, until: "2027-01-01T00:00:00.000Z" };
    const found = bench.ask("review.repeats", period);
    expect({ callouts: found.callouts, repeats: found.repeats, chains: found.chains }).toEqual({
      callouts: 5,
      repeats: 0,
      chains: [],
    });
    expect(found.sameLift.repeats).toBe(4);
    expect(bench.ask("review.repeats", { ...period, windowDays: 31 }).repeats).toBe(1);
  });

  test("leave out a wrong address, and keep a cancelled one; both count as callouts", () => {
    const { liftId } = addLift(bench);
    put({ liftId, at: "2026-11-02T10:00:00.000Z" });
    put({ liftId, at: "2026-11-03T10:00:00.000Z", ending: "wrong address" });
    const cancelled = put({ liftId, at: "2026-11-04T10:00:00.000Z", ending: "cancelled" });
    const found = bench.ask("review.repeats", november);
    expect(found).toMatchObject({ callouts: 3, repeats: 1, repeatIds: [cancelled] });
    expect(bench.ask("callout.list", { filter: { ids: [cancelled] } }).callouts[0]?.repeat).toBe(1);
  });

  test("take site and group where they are named, and the same dates a year before", () => {
    const one = addLift(bench);
    const other = addLift(bench, "Lift 1", "Saltpan Court");
    for (const { liftId } of [one, other]) {
      put({ liftId, at: "2026-11-02T10:00:00.000Z" });
      put({ liftId, at: "2026-11-03T10:00:00.000Z" });
    }
    put({ liftId: one.liftId, at: "2025-10-30T10:00:00.000Z" });
    const repeatBefore = put({ liftId: one.liftId, at: "2025-11-03T10:00:00.000Z" });
    put({ liftId: one.liftId, at: "2025-12-01T10:00:00.000Z" });
    expect(bench.ask("review.repeats", { ...november, siteId: one.siteId })).toMatchObject({
      callouts: 2,
      repeats: 1,
      calloutsYearBefore: 1,
      repeatsYearBefore: 1,
      repeatIdsYearBefore: [repeatBefore],
      firstReceivedAt: "2025-10-30T10:00:00.000Z",
    });
    expect(bench.ask("review.repeats", { ...november, siteId: other.siteId }).firstReceivedAt).toBe(
      "2026-11-02T10:00:00.000Z",
    );
    expect(bench.ask("review.repeats", november).repeats).toBe(2);
    expect(bench.ask("review.repeats", { ...november, group: "brake" })).toMatchObject({
      callouts: 0,
      repeats: 0,
    });
  });

  test("show cause and fix, and the chain as ended when it has been quiet for the window", () => {
    const { liftId } = addLift(bench);
    bench.now = Date.parse("2026-11-02T08:00:00.000Z");
    put({ liftId, at: "2026-10-20T10:00:00.000Z" });
    const logged = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "doors reopen",
      inside: "nobody",
      group: "doors",
    });
    bench.ask("visit.record", {
      liftId,
      calloutId: logged.id,
      kind: "callout",
      engineerId: bench.people.engineer,
      arrivedAt: "2026-11-02T08:00:00.000Z",
      fix: { cause: "stone in the sill groove", fix: "taken out", group: "doors" },
    });
    const chain = (until: string) => bench.ask("review.repeats", { from: november.from, until }).chains[0];
    expect(chain(november.until)).toMatchObject({ running: true });
    expect(chain("2026-12-10T00:00:00.000Z")).toMatchObject({ running: false });
    expect(chain(november.until)?.callouts[1]).toMatchObject({
      number: logged.number,
      cause: "stone in the sill groove",
      fix: "taken out",
    });
  });

  test("agree with counting them one by one", () => {
    const lifts = [addLift(bench).liftId, addLift(bench, "Lift 1", "Saltpan Court").liftId];
    const groups = ["doors", "brake", "not yet known"] as const;
    const start = Date.parse("2025-01-01T00:00:00.000Z");
    const callouts = fc.array(
      fc.record({
        lift: fc.nat(1),
        group: fc.constantFrom(...groups),
        hour: fc.nat(24 * 720),
        wrong: fc.boolean(),
      }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(
        callouts,
        fc.nat(700),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 60 }),
        (given, after, days, windowDays) => {
          bench.core.file.run("DELETE FROM callout");
          const rows = given.map(({ lift, group, hour, wrong }) => {
            const at = start + hour * 3_600_000;
            const id = put({
              liftId: lifts[lift] ?? "",
              at: new Date(at).toISOString(),
              group,
              ending: wrong ? "wrong address" : null,
            });
            return { id, lift, group, at, wrong };
          });
          const [from, until] = [start + after * day, start + (after + days) * day];
          const expected = rows.filter(
            (row) =>
              !row.wrong &&
              row.group !== "not yet known" &&
              row.at >= from &&
              row.at < until &&
              rows.some(
                (before) =>
                  !before.wrong &&
                  before.lift === row.lift &&
                  before.group === row.group &&
                  (before.at < row.at || (before.at === row.at && before.id < row.id)) &&
                  row.at - before.at <= windowDays * day,
              ),
          );
          const found = bench.ask("review.repeats", {
            from: new Date(from).toISOString(),
            until: new Date(until).toISOString(),
            windowDays,
          });
          expect([...found.repeatIds].sort()).toEqual(expected.map(({ id }) => id).sort());
          expect(found.callouts).toBe(rows.filter(({ at }) => at >= from && at < until).length);
          for (const chain of found.chains) {
            const [first] = chain.callouts;
            const earlier = rows.filter(
              (row) =>
                !row.wrong &&
                lifts[row.lift] === chain.liftId &&
                row.group === chain.group &&
                row.at < Date.parse(first?.receivedAt ?? ""),
            );
            expect(
              earlier.every(({ at }) => Date.parse(first?.receivedAt ?? "") - at > windowDays * day),
            ).toBe(true);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

test("counts per lift and group stand beside the same dates of the year before", () => {
  const { liftId } = addLift(bench);
  const quiet = addLift(bench, "Lift 1", "Saltpan Court").liftId;
  const [a, b] = ["2026-11-02T10:00:00.000Z", "2026-11-03T10:00:00.000Z"].map((at) => put({ liftId, at }));
  const brake = put({ liftId, at: "2026-11-04T10:00:00.000Z", group: "brake" });
  const wrong = put({ liftId, at: "2026-11-05T10:00:00.000Z", group: "brake", ending: "wrong address" });
  const unsettled = put({ liftId: null, at: "2026-11-06T10:00:00.000Z" });
  const before = put({ liftId: quiet, at: "2025-11-06T10:00:00.000Z", group: "brake" });
  expect(bench.ask("review.counts", november)).toEqual({
    lifts: [
      {
        liftId,
        liftTitle: "Kittiwake House, Lift 2",
        count: 3,
        yearBefore: 0,
        calloutIds: [a, b, brake],
        yearBeforeIds: [],
      },
      {
        liftId: quiet,
        liftTitle: "Saltpan Court, Lift 1",
        count: 0,
        yearBefore: 1,
        calloutIds: [],
        yearBeforeIds: [before],
      },
    ],
    groups: [
      { group: "doors", count: 3, yearBefore: 0, calloutIds: [a, b, unsettled], yearBeforeIds: [] },
      { group: "brake", count: 2, yearBefore: 1, calloutIds: [brake, wrong], yearBeforeIds: [before] },
    ],
    unsettled: [unsettled],
  });
  expect(
    bench.ask("review.counts", { ...november, group: "brake" }).groups.map(({ group }) => group),
  ).toEqual(["brake"]);
});

test("what was closed without a cause, and which notes ended callouts", () => {
  const { liftId, siteId } = addLift(bench);
  const at = new Date(bench.now).toISOString();
  const withFix = put({ liftId, at, ending: "repaired" });
  const without = put({ liftId, at, ending: "nothing found" });
  put({ liftId, at: "2026-10-30T10:00:00.000Z", ending: "repaired" });
  put({ liftId, at });
  const { fixId } = bench.ask("visit.record", {
    liftId,
    calloutId: withFix,
    kind: "callout",
    engineerId: bench.people.engineer,
    arrivedAt: at,
    fix: { cause: "belt worn", fix: "belt replaced", group: "door operator" },
  });
  const note = bench.ask("faultNote.write", {
    title: "Worn door belt",
    group: "door operator",
    fromFixId: fixId,
  });
  bench.ask("faultNote.write", { title: "Unused", group: "doors" });
  expect(bench.ask("review.withoutCause", november)).toEqual({
    closed: 2,
    calloutIds: [without],
    endings: [
      { ending: "nothing found", closedIds: [without], calloutIds: [without] },
      { ending: "repaired", closedIds: [withFix], calloutIds: [] },
    ],
  });
  expect(bench.ask("review.notesUsed", { ...november, siteId }).notes).toMatchObject([
    { id: note.id, inPeriod: 1, calloutIds: [withFix], callouts: 1, lifts: 1 },
  ]);
  const earlier = { from: "2026-10-01T00:00:00.000Z", until: november.from };
  expect(bench.ask("review.withoutCause", earlier).closed).toBe(1);
  expect(bench.ask("review.notesUsed", earlier).notes).toEqual([]);
});

test("what needs a person now: running chains, open bridges and dangers, of a site where one is named", () => {
  const { liftId, siteId } = addLift(bench);
  const other = addLift(bench, "Lift 1", "Saltpan Court");
  for (const at of ["2026-10-20T10:00:00.000Z", "2026-11-10T10:00:00.000Z"]) put({ liftId, at });
  for (const at of ["2026-09-01T10:00:00.000Z", "2026-09-10T10:00:00.000Z"])
    put({ liftId, at, group: "brake" });
  bench.ask("bridge.set", {
    liftId,
    contact: "landing door contact",
    points: "34-35",
    reason: "find the open contact",
    control: "inspection",
  });
  bench.ask("danger.record", { liftId: other.liftId, words: "link across car and landing door" });
  const short = { from: "2026-11-16T00:00:00.000Z", until: "2026-11-17T10:00:00.000Z" };
  const all = bench.ask("review.attention", short);
  expect(all.chains.map(({ group }) => group)).toEqual(["doors"]);
  expect([all.bridges.length, all.dangers.length]).toEqual([1, 1]);
  const one = bench.ask("review.attention", { ...short, siteId });
  expect([one.chains.length, one.bridges.length, one.dangers.length]).toEqual([1, 1, 0]);
  expect(bench.ask("review.attention", { ...short, siteId: other.siteId })).toMatchObject({
    chains: [],
    bridges: [],
    dangers: [{}],
  });
});

test("a hundred thousand callouts answer well under a second", () => {
  const { siteId } = addLift(bench);
  const lifts = bench.core.batch((ask) =>
    Array.from(
      { length: 1500 },
      (_, index) =>
        ask("lift.add", { siteId, name: `Lift ${index}` }, { id: bench.people.office, name: "Orla Vance" })
          .id,
    ),
  );
  bench.core.file.transaction(() => {
    for (let index = 0; index < 100_000; index++) {
      const at = new Date(Date.parse("2017-01-01T00:00:00.000Z") + index * 3_110_000).toISOString();
      // Every fifth callout is on the lift and in the group of the one before it.
      const place = index % 5 === 4 ? index - 1 : index;
      const group = faultGroups[(place * 7) % 17];
      put({ liftId: lifts[(place * 7919) % 1500] ?? "", at, group: group ?? "doors", ending: "repaired" });
    }
  });
  const year = { from: "2025-11-17T00:00:00.000Z", until: "2026-11-17T00:00:00.000Z" };
  const { repeats, callouts } = bench.ask("review.repeats", year);
  expect(repeats).toBeGreaterThan(callouts / 6);
  const operations = [
    "review.repeats",
    "review.counts",
    "review.withoutCause",
    "review.notesUsed",
    "review.attention",
  ] as const;
  for (const operation of operations) {
    const started = performance.now();
    expect(bench.core.request({ operation, input: year }).ok, operation).toBe(true);
    expect(performance.now() - started, operation).toBeLessThan(1000);
  }
});
