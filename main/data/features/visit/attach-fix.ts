import type { Cause } from "#shared-lib/contract/fault-note.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Context } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";

/**
 * Attaches a recorded fix to a fault note and to one of its causes; `noteId` null takes it off.
 * @throws SillbookError not-found, input-invalid where the note has no such cause
 */
export function attachFix(
  context: Context,
  fix: StoredRecord,
  noteId: string | null,
  causeKey: string | null,
): { id: string; version: number } {
  if (noteId === null) return context.records.update("recorded fix", fix, { noteId: null, causeKey: null });
  const note = context.records.find("fault note", noteId);
  const causes = note.causes as readonly Cause[];
  if (causeKey !== null && !causes.some((cause) => cause.key === causeKey)) {
    const message = `Fault note ${note.number} has no such cause.`;
    throw new SillbookError("input-invalid", `${message} Nothing was changed.`, {
      fields: [{ path: ["causeKey"], message }],
    });
  }
  return context.records.update("recorded fix", fix, { noteId, causeKey });
}
