import type { z } from "zod";
import type { FaultNote, FaultNoteFields, noteLineSchema } from "#shared-lib/contract/fault-note.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Context } from "../../context.ts";
import type { Fields, StoredRecord } from "../../record-store.ts";
import type { SqlParameters, Store } from "../../store.ts";

export type NoteLine = z.infer<typeof noteLineSchema>;

/** A stored note as the contract shows it; the column is `faultGroup` because GROUP is a word of SQL. */
export function toFaultNote(context: Context, record: StoredRecord): FaultNote {
  const { deleted: _deleted, starterHash: _starterHash, faultGroup, statusBy, ...note } = record;
  const person = statusBy ? context.records.findIncludingDeleted("person", statusBy as string) : null;
  return {
    ...(note as unknown as FaultNote),
    group: faultGroup as FaultNote["group"],
    statusBy: person ? { id: person.id, name: person.name as string } : null,
  };
}

/** Contract fields as they are stored. Fields that are not given stay out, so that a change leaves them alone. */
export function toNoteColumns({ group, ...fields }: Partial<FaultNoteFields>): Fields {
  const given = Object.entries(fields).filter(([, value]) => value !== undefined);
  return { ...(Object.fromEntries(given) as Fields), ...(group ? { faultGroup: group } : {}) };
}

export function noteLines(store: Store, sql: string, parameters: SqlParameters): NoteLine[] {
  return store
    .all<Omit<NoteLine, "starter"> & { starter: number }>(sql, parameters)
    .map((row) => ({ ...row, starter: row.starter === 1 }));
}

/**
 * Recorded fixes and answers of checks point to causes by their key, so a key names one cause.
 * @throws SillbookError input-invalid
 */
export function refuseSameKeys(fields: Partial<FaultNoteFields>, under: readonly string[]): void {
  for (const list of ["causes", "checks"] as const) {
    const seen = new Set<string>();
    for (const [index, { key, title }] of (fields[list] ?? []).entries()) {
      if (seen.has(key)) {
        const message = `"${title}" has the key of another one, ${key}.`;
        throw new SillbookError("input-invalid", `${message} Nothing was changed.`, {
          fields: [{ path: [...under, list, index, "key"], message }],
        });
      }
      seen.add(key);
    }
  }
}
