import type { Site } from "#shared-lib/contract/site.ts";
import type { Handlers } from "../../context.ts";
import { fromRow } from "../../record-store.ts";
import { listSitesSql } from "./site.sql.ts";

export const siteHandlers: Handlers<"site.list" | "site.find" | "site.add" | "site.change"> = {
  "site.list"(context) {
    const rows = context.store.all<Record<string, unknown> & { liftCount: number }>(listSitesSql);
    return {
      sites: rows.map((row) => ({ ...(fromRow("site", row) as unknown as Site), liftCount: row.liftCount })),
    };
  },

  "site.find"(context, { id }) {
    return { site: context.records.find("site", id) as unknown as Site };
  },

  "site.add"(context, fields) {
    return context.records.insert("site", fields);
  },

  "site.change"(context, { id, version, fields }) {
    return context.records.update("site", context.records.findAtVersion("site", id, version), fields);
  },
};
