import type { z } from "zod";
import type { changeSchema, Entity } from "#shared-lib/contract/history.ts";
import { changesOfRowSql } from "../../records.sql.ts";
import type { Store } from "../../store.ts";

export type Change = z.infer<typeof changeSchema>;
type JsonValue = Change["fields"][number]["after"];

interface ChangeRow {
  readonly stamp: string;
  readonly field: string;
  readonly value: string;
  readonly personId: string | null;
  readonly personName: string | null;
}

/** The changes of a record, oldest first, each field with its value before and after. */
export function changesOf(store: Store, entity: Entity, id: string): Change[] {
  const now = new Map<string, JsonValue>();
  const changes: Change[] = [];
  for (const row of store.all<ChangeRow>(changesOfRowSql, { entity, rowId: id })) {
    let change = changes.at(-1);
    if (!change || change.stamp !== row.stamp) {
      change = {
        stamp: row.stamp,
        at: row.stamp.slice(0, 24),
        by: row.personId ? { id: row.personId, name: row.personName ?? "" } : null,
        what: "changed",
        fields: [],
      };
      changes.push(change);
    }
    const value = JSON.parse(row.value) as JsonValue;
    if (row.field === "*") {
      change.what = "made";
      for (const [field, first] of Object.entries(value as Record<string, JsonValue>)) {
        change.fields.push({ field, before: null, after: first });
        now.set(field, first);
      }
      continue;
    }
    if (row.field === "deleted") change.what = value === true ? "deleted" : "restored";
    else change.fields.push({ field: row.field, before: now.get(row.field) ?? null, after: value });
    now.set(row.field, value);
  }
  return changes;
}
