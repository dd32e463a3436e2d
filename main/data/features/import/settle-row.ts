import type { ImportMapping, ImportRow } from "#shared-lib/contract/import.ts";
import { foldWord } from "#shared-lib/search/fold-word.ts";
import type { Store } from "../../store.ts";
import { sameCalloutSql } from "./import.sql.ts";
import { type LiftFinder, liftWordsOf } from "./lift-finder.ts";

export type Settling = Pick<ImportMapping, "kind" | "lifts" | "addLifts">;

/** What is to be done with a row. */
export type Settled =
  | { readonly what: "add"; readonly liftId: string | null }
  | { readonly what: "duplicate" }
  | { readonly what: "refused"; readonly reason: string };

const minute = 60_000;

/** Decides about one row against what is on the books. `liftId` is null where the lift is to be added first. */
export function settleRow(
  store: Store,
  finder: LiftFinder,
  row: ImportRow,
  { kind, lifts, addLifts }: Settling,
  now: string,
): Settled {
  const decided = lifts[liftWordsOf(row)];
  const liftId = decided && decided !== "new" ? decided : finder.find(row);
  if (kind === "lifts" && liftId) return { what: "duplicate" };
  if (!liftId) {
    const reason = whyNoNewLift(finder, row, decided === "new", addLifts);
    if (reason) return { what: "refused", reason };
  }
  if (kind === "lifts") return { what: "add", liftId: null };
  const reason = whyImpossibleTime(row, now);
  if (reason) return { what: "refused", reason };
  return liftId && isOnTheBooks(store, liftId, row) ? { what: "duplicate" } : { what: "add", liftId };
}

function whyNoNewLift(
  finder: LiftFinder,
  row: ImportRow,
  isDecided: boolean,
  addLifts: boolean,
): string | null {
  if (!row.site || !row.lift) return `no lift on the books has the plate number “${row.plateNumber}”`;
  if (isDecided) return null;
  const similar = finder.couldBe(row)[0];
  if (similar) return `which lift: “${liftWordsOf(row)}” is not on the books; is it ${similar.title}?`;
  return addLifts ? null : `“${liftWordsOf(row)}” is not on the books`;
}

function whyImpossibleTime({ receivedAt, backInServiceAt }: ImportRow, now: string): string | null {
  if (receivedAt === null) return "no time of the call";
  if (receivedAt > now) return "the time of the call is in the future";
  if (backInServiceAt !== null && backInServiceAt > now) return "the time back in service is in the future";
  if (backInServiceAt !== null && backInServiceAt < receivedAt) return "back in service before the call";
  return null;
}

/** Same lift, same minute, same words: brought in before, or logged here. */
function isOnTheBooks(store: Store, liftId: string, { receivedAt, said }: ImportRow): boolean {
  const from = Math.floor(Date.parse(receivedAt ?? "") / minute) * minute;
  const words = foldWord(said).replace(/\s+/g, " ");
  return store
    .all<{ said: string }>(sameCalloutSql, {
      liftId,
      from: new Date(from).toISOString(),
      until: new Date(from + minute).toISOString(),
    })
    .some((callout) => foldWord(callout.said).replace(/\s+/g, " ") === words);
}
