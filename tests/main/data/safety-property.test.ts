import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { OperationName } from "#shared-lib/contract/operations.ts";
import { endings, eventKinds, liftStates } from "#shared-lib/words.ts";
import { safetyWrongs } from "./support/safety-facts.ts";
import { addLift, openTestCore, type TestCore } from "./support/test-core.ts";

let bench: TestCore;
beforeAll(async () => {
  bench = await openTestCore();
});
afterAll(() => bench.close());

type Row = Readonly<Record<string, string | number | null>>;
interface Step {
  readonly name: OperationName;
  /** Which lift, callout, bridge or event: taken modulo how many there are. */
  readonly which: number;
  readonly other: number;
  /** How long ago the thing happened that is recorded now, minutes. */
  readonly ago: number;
  /** How much later that is recorded than the step before, minutes. */
  readonly later: number;
  readonly choice: number;
}

const insides = ["nobody", "people inside", "people inside", "not known"] as const;
const undoable = ["lift", "callout", "visit", "recorded fix"] as const;
const tableOf = (entity: (typeof undoable)[number]): string =>
  entity === "recorded fix" ? "recordedFix" : entity;
const recordable = eventKinds.filter((kind) => kind !== "received" && kind !== "closed");

/** What one run works on; rows of other runs are left alone. */
class Run {
  readonly lifts: readonly string[];
  /** Ids grow with time: what was made after the site of this run is of this run. */
  readonly since: string;

  constructor() {
    const first = addLift(bench);
    this.lifts = [first.liftId, bench.ask("lift.add", { siteId: first.siteId, name: "Lift 3" }).id];
    this.since = first.siteId;
  }

  rows(table: string): Row[] {
    return bench.core.file.all<Row>(`SELECT * FROM ${table} WHERE id > :since ORDER BY id`, {
      since: this.since,
    });
  }

  /** One of the rows of a table; where some fit, one of those. */
  pick(table: string, which: number, fits: (row: Row) => boolean): Row | null {
    const rows = this.rows(table);
    const fitting = rows.filter(fits);
    const among = fitting.length > 0 ? fitting : rows;
    return among[which % among.length] ?? null;
  }

  lift(which: number): string {
    return this.lifts[which % 2] as string;
  }
}

function timeOf(step: Step): string {
  return new Date(bench.now - step.ago * 60_000).toISOString();
}

const chosen = <Value>(values: readonly Value[], choice: number): Value =>
  values[choice % values.length] as Value;

/** The input of a step, or null where there is nothing yet that it could be about. */
function inputOf(step: Step, run: Run): object | null {
  const { which, other, choice } = step;
  const at = timeOf(step);
  const by = bench.people.engineer;
  // Most steps are about a row that they can be about, so that runs get far; some are not.
  const aimed = other % 4 !== 0;
  const of = (
    table: string,
    make: (row: Row) => object,
    fits = (_row: Row): boolean => true,
  ): object | null => {
    const row = run.pick(table, which, aimed ? fits : () => true);
    return row && make(row);
  };
  const notBefore = (start: unknown): string => (aimed && at < String(start) ? String(start) : at);
  const isOpen = (row: Row): boolean => row.endedAt === null;
  const named = ({ id, version }: Row) => ({ id, version });
  switch (step.name) {
    case "callout.log": {
      const liftId = choice % 5 === 0 ? null : run.lift(which);
      return {
        liftId,
        liftWords: "the one at the back",
        said: "dead",
        inside: chosen(insides, choice),
        receivedAt: at,
      };
    }
    case "callout.change":
      return of("callout", (row) => ({
        ...named(row),
        fields: choice % 2 === 0 ? { inside: chosen(insides, other) } : { liftId: run.lift(other) },
      }));
    case "callout.recordEvent":
      return of(
        "callout",
        ({ id }) => {
          const kind = chosen([...recordable, "people released", "back in service"], choice);
          return { id, kind, at, to: by, registerComparedBy: by };
        },
        isOpen,
      );
    case "callout.correctEvent":
      return of("calloutEvent", ({ id }) => ({ eventId: id, at }));
    case "callout.withdrawEvent":
      return of(
        "calloutEvent",
        ({ id }) => ({ eventId: id, reason: "by mistake" }),
        ({ kind }) => kind !== "received" && kind !== "closed",
      );
    case "callout.end":
      return of(
        "callout",
        (row) => ({
          ...named(row),
          ending: chosen(endings, choice),
          group: "doors",
          reason: "part awaited",
          at: notBefore(row.receivedAt),
        }),
        isOpen,
      );
    case "callout.reopen":
      return of(
        "callout",
        (row) => ({ ...named(row), reason: "again" }),
        (row) => !isOpen(row),
      );
    case "callout.bringIn": {
      const received = new Date(Date.parse(at) - other * 60_000).toISOString();
      const backInServiceAt = choice % 2 === 0 ? at : null;
      return {
        liftId: run.lift(which),
        said: "dead",
        group: "doors",
        receivedAt: received,
        backInServiceAt,
        inside: chosen(insides, choice),
      };
    }
    case "bridge.set":
      return {
        liftId: run.lift(which),
        contact: "landing door lock",
        points: "1-2",
        reason: "find it",
        control: "inspection",
        setAt: at,
      };
    case "bridge.recordRemoval":
      return of(
        "bridge",
        (row) => ({ ...named(row), removedBy: by, removedAt: notBefore(row.setAt) }),
        (row) => row.removedAt === null,
      );
    case "bridge.confirmRemoval":
      return of(
        "bridge",
        (row) => ({
          ...named(row),
          checkedBy: by,
          checkedAt: notBefore(row.removedAt),
          proof: "opens the chain",
        }),
        (row) => row.removedAt !== null && row.checkedAt === null,
      );
    case "danger.record":
      // A danger stops nearly everything else: too many of them and little would be tried.
      if (choice % 4 !== 0) return null;
      return { liftId: run.lift(which), words: "link across both doors", foundAt: at };
    case "danger.clear":
      return of(
        "danger",
        (row) => ({ ...named(row), how: "taken out", clearedBy: by, clearedAt: notBefore(row.foundAt) }),
        ({ clearedAt }) => clearedAt === null,
      );
    case "lift.setState":
      return of("lift", (row) => ({
        ...named(row),
        state: chosen(liftStates, choice),
        reason: "checked",
        at,
        registerComparedBy: by,
      }));
    case "record.restore": {
      const deleted = undoable.flatMap((entity) =>
        run.rows(tableOf(entity)).flatMap((row) => (row.deleted === 1 ? [{ entity, ...named(row) }] : [])),
      );
      return deleted[which % deleted.length] ?? null;
    }
    case "history.undoLast": {
      const entity = chosen(undoable, choice);
      return of(tableOf(entity), (row) => ({ entity, ...named(row) }));
    }
    case "record.delete": {
      const entity = chosen(["lift", "visit"] as const, choice);
      return of(entity, (row) => ({ entity, ...named(row) }));
    }
    case "visit.record":
      return of("callout", ({ id, liftId }) => ({
        liftId: liftId ?? run.lift(other),
        calloutId: liftId === null ? null : id,
        kind: "callout",
        engineerId: by,
        arrivedAt: at,
        fix: choice % 2 === 0 ? { cause: "worn", fix: "replaced", group: "doors" } : null,
      }));
    default:
      throw new Error(`no step for ${step.name}`);
  }
}

/** What happens more rarely, or needs something before it, stands here more often. */
const names = [
  "callout.log",
  "callout.log",
  "callout.change",
  "callout.recordEvent",
  "callout.recordEvent",
  "callout.recordEvent",
  "callout.recordEvent",
  "callout.recordEvent",
  "callout.correctEvent",
  "callout.correctEvent",
  "callout.withdrawEvent",
  "callout.end",
  "callout.end",
  "callout.end",
  "callout.reopen",
  "callout.reopen",
  "callout.reopen",
  "callout.bringIn",
  "bridge.set",
  "bridge.recordRemoval",
  "bridge.recordRemoval",
  "bridge.confirmRemoval",
  "bridge.confirmRemoval",
  "danger.record",
  "danger.clear",
  "danger.clear",
  "danger.clear",
  "lift.setState",
  "lift.setState",
  "history.undoLast",
  "history.undoLast",
  "record.delete",
  "record.restore",
  "visit.record",
] as const satisfies readonly OperationName[];

const anyStep: fc.Arbitrary<Step> = fc.record({
  name: fc.constantFrom(...names),
  which: fc.nat(1000),
  other: fc.nat(60),
  ago: fc.oneof(fc.constant(0), fc.nat(120)),
  later: fc.constantFrom(0, 0, 1, 7, 30),
  choice: fc.nat(1000),
});

const accepted = new Map<OperationName, number>();

function carryOut(step: Step, run: Run): string | null {
  bench.now += step.later * 60_000 + 1000;
  const input = inputOf(step, run);
  if (!input) return null;
  const envelope = bench.core.request({ operation: step.name, input, as: bench.people.engineer });
  if (envelope.ok) accepted.set(step.name, (accepted.get(step.name) ?? 0) + 1);
  return `${step.name} ${JSON.stringify(input)} ${envelope.ok ? "accepted" : envelope.error.message}`;
}

const runs = Number(process.env.SAFETY_RUNS ?? 120);

describe("the safety rule, for any sequence of operations", () => {
  test("after every step nothing is in service that must not be", () => {
    fc.assert(
      fc.property(fc.array(anyStep, { minLength: 25, maxLength: 40, size: "max" }), (steps) => {
        const run = new Run();
        const story: (string | null)[] = [];
        for (const step of steps) {
          story.push(carryOut(step, run));
          const wrongs = safetyWrongs(bench.core.file, run.since);
          expect(wrongs, `\n${story.join("\n")}`).toEqual([]);
        }
      }),
      { numRuns: runs, interruptAfterTimeLimit: 120_000 },
    );
    // A test in which an operation is never accepted would prove nothing about it.
    for (const name of new Set(names)) expect(accepted.get(name) ?? 0, name).toBeGreaterThan(0);
  }, 600_000);
});

describe("holes that were found and closed", () => {
  const refused = (name: OperationName, input: object) => {
    const envelope = bench.core.request({ operation: name, input, as: bench.people.engineer });
    return envelope.ok ? "accepted" : envelope.error.code;
  };
  const ago = (minutes: number) => new Date(bench.now - minutes * 60_000).toISOString();
  const back = (id: string, at: string) => ({
    id,
    kind: "back in service" as const,
    at,
    registerComparedBy: bench.people.engineer,
  });

  test("people trapped in the minute in which the lift went back are logged, and released later", () => {
    const { liftId } = addLift(bench);
    const first = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "dead",
      inside: "nobody",
      receivedAt: ago(60),
    });
    bench.ask("callout.recordEvent", back(first.id, ago(0)));
    const trapped = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "stuck",
      inside: "people inside",
    });
    bench.minutes(30);
    expect(refused("callout.recordEvent", { id: trapped.id, kind: "people released" })).toBe("accepted");
  });

  test("an entrapment before a recorded return to service is refused at once, not when the release is recorded", () => {
    const { liftId } = addLift(bench);
    const first = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "dead",
      inside: "nobody",
      receivedAt: ago(60),
    });
    const { eventId } = bench.ask("callout.recordEvent", back(first.id, ago(20)));
    const trapped = { liftId, liftWords: "", said: "stuck", inside: "people inside", receivedAt: ago(30) };
    expect(refused("callout.log", trapped)).toBe("people-inside");
    bench.ask("callout.withdrawEvent", { eventId, reason: "it was not" });
    expect(refused("callout.log", trapped)).toBe("accepted");
  });

  test("a release on a closed callout without a lift is not taken back, nor moved behind its end", () => {
    const logged = bench.ask("callout.log", {
      liftId: null,
      liftWords: "the back one",
      said: "stuck",
      inside: "people inside",
      receivedAt: ago(60),
    });
    const { eventId } = bench.ask("callout.recordEvent", {
      id: logged.id,
      kind: "people released",
      at: ago(30),
    });
    const { version } = bench.ask("callout.find", { id: logged.id }).callout;
    bench.ask("callout.end", { id: logged.id, version, ending: "cancelled", group: "doors", at: ago(20) });
    expect(refused("callout.withdrawEvent", { eventId, reason: "by mistake" })).toBe("people-inside");
    expect(refused("callout.correctEvent", { eventId, at: ago(10) })).toBe("people-inside");
    expect(refused("callout.correctEvent", { eventId, at: ago(25) })).toBe("accepted");
  });

  test("a lift is not in service since a time with a danger, or with people inside", () => {
    const { liftId } = addLift(bench);
    const danger = bench.ask("danger.record", { liftId, words: "link across both doors", foundAt: ago(60) });
    bench.ask("danger.clear", {
      id: danger.id,
      version: 1,
      how: "taken out",
      clearedBy: bench.people.lead,
      clearedAt: ago(30),
    });
    const trapped = bench.ask("callout.log", {
      liftId,
      liftWords: "",
      said: "stuck",
      inside: "people inside",
      receivedAt: ago(25),
    });
    bench.ask("callout.recordEvent", { id: trapped.id, kind: "people released", at: ago(10) });
    const set = (at: string) => {
      const { version } = bench.ask("lift.find", { id: liftId }).lift;
      return refused("lift.setState", {
        id: liftId,
        version,
        state: "in service",
        at,
        registerComparedBy: bench.people.lead,
      });
    };
    expect(set(ago(45))).toBe("danger-open");
    expect(set(ago(15))).toBe("people-inside");
    expect(set(ago(5))).toBe("accepted");
  });

  test("an earlier record that is open holds nobody: brought in so it is refused, changed or reopened so it is a callout like any other", () => {
    const { liftId } = addLift(bench);
    const earlier = { liftId, said: "stuck", group: "doors", receivedAt: ago(90), backInServiceAt: null };
    expect(refused("callout.bringIn", { ...earlier, inside: "people inside" })).toBe("input-invalid");
    const open = bench.ask("callout.bringIn", { ...earlier, group: "doors", inside: "nobody" });
    bench.ask("callout.change", { id: open.id, version: open.version, fields: { inside: "people inside" } });
    const { version } = bench.ask("callout.find", { id: open.id }).callout;
    expect(refused("callout.end", { id: open.id, version, ending: "cancelled", group: "doors" })).toBe(
      "people-inside",
    );
    const other = addLift(bench).liftId;
    const closed = bench.ask("callout.bringIn", {
      ...earlier,
      liftId: other,
      group: "doors",
      backInServiceAt: ago(80),
      inside: "people inside",
    });
    expect(refused("callout.reopen", { id: closed.id, version: closed.version, reason: "again" })).toBe(
      "people-inside",
    );
  });
});
