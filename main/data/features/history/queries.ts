import { type Entity, entities } from "#shared-lib/contract/history.ts";
import type { Handlers } from "../../context.ts";
import { entityTables } from "../../entities.ts";
import { changesOf } from "./changes.ts";
import { deletionOfSql, listDeletedSql } from "./history.sql.ts";

interface Deletion {
  readonly stamp: string;
  readonly personId: string | null;
  readonly personName: string | null;
}

export const historyQueries: Handlers<"history.ofRecord" | "history.deleted"> = {
  "history.ofRecord"(context, { entity, id }) {
    const record = context.records.findIncludingDeleted(entity, id);
    return {
      changes: changesOf(context.store, entity, id).reverse(),
      deleted: record.deleted,
      version: record.version,
    };
  },

  "history.deleted"(context, { limit }) {
    const records = entities.flatMap((entity: Entity) => {
      const sql = listDeletedSql(entityTables[entity]);
      if (!sql) return [];
      return context.store.all<{ id: string; version: number; title: string }>(sql).map((row) => {
        const deletion = context.store.get<Deletion>(deletionOfSql, { id: row.id });
        return {
          entity,
          ...row,
          at: deletion?.stamp.slice(0, 24) ?? context.now,
          by: deletion?.personId ? { id: deletion.personId, name: deletion.personName ?? "" } : null,
        };
      });
    });
    return { records: records.sort((a, b) => (a.at < b.at ? 1 : -1)).slice(0, limit) };
  },
};
