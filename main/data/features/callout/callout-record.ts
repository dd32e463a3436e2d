import type { Callout, CalloutEvent, WithdrawnEvent } from "#shared-lib/contract/callout.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { eventsOfCalloutSql } from "./callout.sql.ts";

interface PersonName {
  readonly id: string;
  readonly name: string;
}

/** A stored callout as the contract shows it; the column is `faultGroup` because GROUP is a word of SQL. */
export function toCallout(context: Context, record: StoredRecord): Callout {
  const { deleted: _deleted, faultGroup, engineerId, ...rest } = record;
  const engineer = engineerId ? context.records.findIncludingDeleted("person", engineerId as string) : null;
  return {
    ...(rest as unknown as Callout),
    group: faultGroup as Callout["group"],
    engineer: engineer ? { id: engineer.id, name: engineer.name as string } : null,
  };
}

interface EventRow {
  readonly id: string;
  readonly createdAt: string;
  readonly kind: CalloutEvent["kind"];
  readonly at: string;
  readonly personId: string | null;
  readonly personName: string | null;
  readonly toId: string | null;
  readonly toName: string | null;
  readonly note: string;
  readonly registerComparedBy: string | null;
  readonly comparedName: string | null;
  readonly corrects: string | null;
  readonly withdrawn: number;
}

function named(id: string | null, name: string | null): PersonName | null {
  return id ? { id, name: name ?? "" } : null;
}

const nobody: PersonName = { id: "00000000-0000-7000-8000-000000000000", name: "" };

/** The events that count, by time, each with the earlier times it had. */
export function eventsOfCallout(store: Store, calloutId: string): CalloutEvent[] {
  const rows = store.all<EventRow>(eventsOfCalloutSql, { calloutId });
  const byId = new Map(rows.map((row) => [row.id, row]));
  const corrected = new Set(rows.map((row) => row.corrects));
  return rows
    .filter((row) => !corrected.has(row.id) && row.withdrawn === 0)
    .map((row) => {
      const earlier: CalloutEvent["earlier"] = [];
      for (let before = row.corrects; before; before = byId.get(before)?.corrects ?? null) {
        const old = byId.get(before);
        if (old)
          earlier.unshift({
            at: old.at,
            by: named(old.personId, old.personName) ?? nobody,
            recordedAt: old.createdAt,
          });
      }
      return {
        id: row.id,
        kind: row.kind,
        at: row.at,
        recordedAt: row.createdAt,
        by: named(row.personId, row.personName) ?? nobody,
        to: named(row.toId, row.toName),
        note: row.note,
        registerComparedBy: named(row.registerComparedBy, row.comparedName),
        corrects: row.corrects,
        earlier,
      };
    })
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1));
}

/** The events that were taken back, by the time they were recorded with. */
export function withdrawnEventsOfCallout(store: Store, calloutId: string): WithdrawnEvent[] {
  return store
    .all<EventRow>(eventsOfCalloutSql, { calloutId })
    .filter((row) => row.withdrawn === 1)
    .map((row) => ({
      id: row.id,
      kind: row.kind,
      at: row.at,
      withdrawnAt: row.createdAt,
      withdrawnBy: named(row.personId, row.personName) ?? nobody,
      reason: row.note,
    }))
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.id < b.id ? -1 : 1));
}
