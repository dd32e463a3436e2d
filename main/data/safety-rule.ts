import { type ErrorCode, errorWords, SillbookError } from "#shared-lib/errors.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import type { TouchedRecord } from "./record-store.ts";
import {
  bridgeDuringServiceSql,
  calloutsOfEventsSql,
  dangerDuringServiceSql,
  doorsBridgedTogetherSql,
  hasAnythingToHoldSql,
  inServiceAfterCallSql,
  inServiceBeforeReleaseSql,
  insideNotSettledSql,
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
  {
    sql: doorsBridgedTogetherSql,
    code: "doors-bridged-together",
    say: ({ number, other }) =>
      `Bridge ${number} lies across a car door contact and bridge ${other} across a landing door contact. They are never bridged together. Take the first one out; if both were found bridged, record that as a danger.`,
  },
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
  {
    sql: inServiceAfterCallSql,
    code: "people-inside",
    say: ({ number, at }) =>
      `Callout ${number} has people inside, and after that call the lift is recorded as back in service (${at ? formatDayAndTime(at) : ""}). Enter the call with its true time, or correct or take back that event first.`,
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
  const ofEvents = calloutsOfEvents(store, touched);
  for (const liftId of new Set([...liftIds, ...ofEvents.flatMap(({ liftId }) => liftId ?? [])])) {
    if (store.get<{ yes: number }>(hasAnythingToHoldSql, { liftId })?.yes === 0) continue;
    for (const rule of rulesOfLift) {
      const row = store.get<Record<string, string>>(rule.sql, { liftId });
      if (row) throw new SillbookError(rule.code, rule.say(row), { liftId, ...row });
    }
  }
  const calloutIds = touched.filter(({ entity }) => entity === "callout").map(({ id }) => id);
  for (const calloutId of new Set([...calloutIds, ...ofEvents.map((event) => event.calloutId)])) {
    const row = store.get<Record<string, string>>(peopleInsideUnsettledSql, { calloutId });
    if (row) throw new SillbookError("people-inside", undefined, { calloutId, ...row });
  }
}

/** Events do not name their lift, because a callout can be settled to another one: they are asked through it. */
function calloutsOfEvents(
  store: Store,
  touched: readonly TouchedRecord[],
): { calloutId: string; liftId: string | null }[] {
  const ids = touched.filter(({ entity }) => entity === "callout event").map(({ id }) => id);
  return ids.length === 0 ? [] : store.all(calloutsOfEventsSql, { ids: JSON.stringify(ids) });
}
