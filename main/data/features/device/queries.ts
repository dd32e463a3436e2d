import type { Handlers } from "../../context.ts";
import { chosenPersonKey } from "./commands.ts";
import { findCompanySql, findDraftSql } from "./device.sql.ts";

export const deviceQueries: Handlers<"device.state" | "draft.find" | "setting.read"> = {
  "device.state"(context) {
    return {
      company: context.store.get<{ id: string; name: string }>(findCompanySql) ?? null,
      personId: context.device.read<string>(chosenPersonKey),
      shortCode: context.device.shortCode,
      ...context.program,
    };
  },

  "draft.find"(context, { key }) {
    const row = context.store.get<{ value: string; keptAt: string }>(findDraftSql, { key });
    return { draft: row ? { value: JSON.parse(row.value), keptAt: row.keptAt } : null };
  },

  "setting.read"(context, { key }) {
    return { value: context.device.read(`setting.${key}`) };
  },
};
