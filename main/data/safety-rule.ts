import { type ErrorCode, errorWords, SillbookError } from "#shared-lib/errors.ts";
import type { TouchedRecord } from "./record-store.ts";
import {
  bridgeDuringServiceSql,
  dangerDuringServiceSql,
  inServiceBeforeReleaseSql,
  insideNotSettledSql,
  liftOfEventSql,
  openBridgeInServiceSql,
  openDangerInServiceSql,
  peopleInsideInServiceSql,
  peopleInsideUnsettledSql,
} from "./safety-rule.sql.ts";
import type { Store } from "./store.ts";

interface Rule {
  readonly sql: string;
  readonly code: ErrorCode;
  readonly say: (row: Readonly<Record<string, string>>) => string;
}

const rulesOfLift: readonly Rule[] = [
  { sql: openDangerInServiceSql, code: "danger-open", say: () => errorWords["danger-open"] },
  {
    sql: dangerDuringServiceSql,
    code: "danger-open",
    say: () =>
      "At that time a car door and a landing door were bridged together. The lift cannot have been back in service.",
  },
  {
    sql: openBridgeInServiceSql,
    code: "bridge-open",
    say: ({ number, points }) =>
      `Bridge ${number} (${points}) is open. The lift cannot be recorded as back in service until its removal is recorded and confirmed.`,
  },
  {
    sql: bridgeDuringServiceSql,
    code: "bridge-open",
    say: ({ number, points }) =>
      `Bridge ${number} (${points}) was still open at that time. The lift cannot have been back in service before its removal was confirmed.`,
  },
  {
    sql: peopleInsideInServiceSql,
    code: "people-inside",
    say: ({ number }) =>
      `Callout ${number} has people inside who are not recorded as released. The lift cannot go back in service or the callout be closed.`,
  },
  {
    sql: insideNotSettledSql,
    code: "people-inside",
    say: ({ number }) =>
      `Callout ${number} does not say whether anyone is inside. Settle that first: nobody, or people inside.`,
  },
  {
    sql: inServiceBeforeReleaseSql,
    code: "people-inside",
    say: ({ number }) =>
      `The people of callout ${number} were released later than that. The lift cannot have been back in service, or the callout closed, before.`,
  },
];

/**
 * Refuses a transaction that would leave a lift in service with an open bridge, an open danger or people inside, now
 * or at the recorded times. It looks at the state after all writes of the transaction, so every path is covered:
 * event, visit, import, undo, restore, corrected time, command line.
 * @throws SillbookError bridge-open, danger-open or people-inside
 */
export function refuseUnsafeState(
  store: Store,
  liftIds: readonly string[],
  touched: readonly TouchedRecord[],
): void {
  for (const liftId of new Set([...liftIds, ...liftsOfEvents(store, touched)])) {
    for (const rule of rulesOfLift) {
      const row = store.get<Record<string, string>>(rule.sql, { liftId });
      if (row) throw new SillbookError(rule.code, rule.say(row), { liftId, ...row });
    }
  }
  for (const { entity, id } of touched) {
    if (entity !== "callout") continue;
    const row = store.get<Record<string, string>>(peopleInsideUnsettledSql, { calloutId: id });
    if (row) throw new SillbookError("people-inside", undefined, { calloutId: id, ...row });
  }
}

/** Events do not name their lift, because a callout can be settled to another one: they are asked through it. */
function liftsOfEvents(store: Store, touched: readonly TouchedRecord[]): string[] {
  return touched
    .filter(({ entity }) => entity === "callout event")
    .map(({ id }) => store.get<{ liftId: string }>(liftOfEventSql, { id })?.liftId)
    .filter((liftId) => liftId !== undefined);
}
