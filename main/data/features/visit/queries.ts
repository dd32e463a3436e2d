import type { Handlers } from "../../context.ts";
import { listVisitsSql } from "./visit.sql.ts";
import { findFix, findVisit, visitsOf } from "./visit-record.ts";

export const visitQueries: Handlers<"visit.list" | "visit.find" | "fix.find"> = {
  "visit.list"(context, { liftId, calloutId, offset, limit }) {
    const sql = listVisitsSql(liftId !== undefined, calloutId !== undefined);
    const parameters = { limit, offset, ...(liftId ? { liftId } : {}), ...(calloutId ? { calloutId } : {}) };
    return { visits: visitsOf(context.store, sql, parameters) };
  },

  "visit.find"(context, { id }) {
    context.records.find("visit", id);
    return { visit: findVisit(context.store, id) };
  },

  "fix.find"(context, { id }) {
    context.records.find("recorded fix", id);
    return { fix: findFix(context.store, id) };
  },
};
