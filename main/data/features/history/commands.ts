import type { Entity } from "#shared-lib/contract/history.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Context, Handlers } from "../../context.ts";
import { entityTables } from "../../entities.ts";
import type { Fields, StoredRecord } from "../../record-store.ts";
import { changesOf } from "./changes.ts";
import { liftsOfSiteSql, openOnLiftSql } from "./history.sql.ts";
import { setDeleted } from "./set-deleted.ts";

const whyNot: Partial<Record<Entity, string>> = {
  bridge: "A bridge stays in the register. Record its removal instead.",
  danger: "A danger stays on record. Record how it was cleared instead.",
  "callout event": "An event is corrected or taken back by a new one; the old one stays visible.",
};

/** @throws SillbookError not-found, version-conflict */
function atVersion(context: Context, entity: Entity, id: string, version: number): StoredRecord {
  const record = context.records.findIncludingDeleted(entity, id);
  if (record.version !== version)
    throw new SillbookError("version-conflict", undefined, { entity, id, present: record });
  return record;
}

function remove(context: Context, entity: Entity, record: StoredRecord): { id: string; version: number } {
  if (
    entity === "site" &&
    (context.store.get<{ count: number }>(liftsOfSiteSql, { id: record.id })?.count ?? 0) > 0
  ) {
    throw new SillbookError("state-refused", "The site still has lifts. Move or delete them first.", {
      id: record.id,
    });
  }
  if (
    entity === "lift" &&
    (context.store.get<{ count: number }>(openOnLiftSql, { id: record.id })?.count ?? 0) > 0
  ) {
    throw new SillbookError(
      "state-refused",
      "The lift has an open callout, bridge or danger. End that first.",
      { id: record.id },
    );
  }
  return setDeleted(context, entity, record, true);
}

/** Fields that follow an event or the shaft itself. Taking back an entry does not change what happened there. */
const followsEvents: Partial<
  Record<Entity, { readonly fields: readonly string[]; readonly instead: string }>
> = {
  lift: {
    fields: ["state", "stateReason", "stateSince", "stateBy", "stateComparedBy"],
    instead: "The state of a lift is not taken back. Record its new state instead.",
  },
  callout: {
    fields: ["ending", "endedAt", "endingReason", "awaits", "returnVisitOn", "engineerId", "receivedAt"],
    instead: "That followed an event. Correct or take back the event, or open the callout again.",
  },
};

export const historyCommands: Handlers<"history.undoLast" | "record.delete" | "record.restore"> = {
  "history.undoLast"(context, { entity, id, version }) {
    const reason = whyNot[entity] ?? (entityTables[entity].undo ? null : "That cannot be taken back.");
    if (reason) throw new SillbookError("state-refused", reason, { entity, id });
    const record = atVersion(context, entity, id, version);
    const last = changesOf(context.store, entity, id).at(-1);
    if (!last) throw new SillbookError("state-refused", "There is nothing to take back.", { entity, id });
    if (last.what === "made") return remove(context, entity, record);
    if (last.what === "deleted" || last.what === "restored")
      return setDeleted(context, entity, record, last.what === "restored");
    const follows = followsEvents[entity];
    if (follows && last.fields.some(({ field }) => follows.fields.includes(field))) {
      throw new SillbookError("state-refused", follows.instead, { entity, id });
    }
    const before = Object.fromEntries(
      last.fields.map(({ field, before: value }) => [field, value]),
    ) as Fields;
    return context.records.update(entity, record, before);
  },

  "record.delete"(context, { entity, id, version }) {
    const record = atVersion(context, entity, id, version);
    if (record.deleted)
      throw new SillbookError("state-refused", "That record is deleted already.", { entity, id });
    return remove(context, entity, record);
  },

  "record.restore"(context, { entity, id, version }) {
    const record = atVersion(context, entity, id, version);
    if (!record.deleted)
      throw new SillbookError("state-refused", "That record is not deleted.", { entity, id });
    return setDeleted(context, entity, record, false);
  },
};
