import { furthestEvent, nextEvent } from "#shared-lib/callout-progress.ts";
import type { CalloutLine } from "#shared-lib/contract/callout.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { chainsByGroup, type RepeatCandidate } from "#shared-lib/repeats.ts";
import { type EventKind, eventKinds, repeatWindowDays } from "#shared-lib/words.ts";
import type { SqlParameters, Store } from "../../store.ts";
import { calloutsOfLiftAndGroupSql, findCalloutLineSql, openBridgesOfLiftSql } from "./callout.sql.ts";

interface CalloutLineRow
  extends Omit<
    CalloutLine,
    "state" | "next" | "made" | "engineer" | "openBridges" | "danger" | "repeat" | "stillInside"
  > {
  readonly engineerId: string | null;
  readonly engineerName: string | null;
  readonly made: string | null;
  readonly danger: number;
  readonly stillInside: number;
}

/** Completes rows to lines; what belongs to a lift or to a chain is asked once for all lines of a list. */
class LineCompletion {
  readonly #store: Store;
  readonly #bridges = new Map<string, CalloutLine["openBridges"]>();
  readonly #positions = new Map<string, Map<string, number>>();

  constructor(store: Store) {
    this.#store = store;
  }

  complete(row: CalloutLineRow): CalloutLine {
    const { engineerId, engineerName, made: madeText, danger, ...rest } = row;
    const happened = new Set((madeText ?? "").split(","));
    const stillInside = row.stillInside === 1;
    // A release counts only for the people reported before it.
    if (stillInside) happened.delete("people released");
    const made = eventKinds.filter((kind) => happened.has(kind)) as EventKind[];
    return {
      ...rest,
      stillInside,
      made,
      state: furthestEvent(made),
      next: row.endedAt ? null : nextEvent(made, row.inside),
      engineer: engineerId ? { id: engineerId, name: engineerName ?? "" } : null,
      danger: danger === 1,
      openBridges: row.liftId ? this.#bridgesOf(row.liftId) : [],
      repeat: this.#repeatOf(row),
    };
  }

  #bridgesOf(liftId: string): CalloutLine["openBridges"] {
    const known =
      this.#bridges.get(liftId) ??
      this.#store.all<CalloutLine["openBridges"][number]>(openBridgesOfLiftSql, { liftId });
    this.#bridges.set(liftId, known);
    return known;
  }

  #repeatOf(row: CalloutLineRow): number {
    if (!row.liftId || row.group === "not yet known") return 0;
    const key = `${row.liftId} ${row.group}`;
    let positions = this.#positions.get(key);
    if (!positions) {
      positions = new Map();
      const callouts = this.#store.all<RepeatCandidate>(calloutsOfLiftAndGroupSql, {
        liftId: row.liftId,
        group: row.group,
      });
      for (const chain of chainsByGroup(callouts, repeatWindowDays)) {
        for (const [position, callout] of chain.entries()) positions.set(callout.id, position);
      }
      this.#positions.set(key, positions);
    }
    return positions.get(row.id) ?? 0;
  }
}

export function calloutLines(store: Store, sql: string, parameters: SqlParameters): CalloutLine[] {
  const completion = new LineCompletion(store);
  return store.all<CalloutLineRow>(sql, parameters).map((row) => completion.complete(row));
}

/** @throws SillbookError not-found */
export function findCalloutLine(store: Store, id: string): CalloutLine {
  const [line] = calloutLines(store, findCalloutLineSql, { id });
  if (!line) throw new SillbookError("not-found", "There is no such callout.", { entity: "callout", id });
  return line;
}
