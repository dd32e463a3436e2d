import type { Landing, Lift, Signal } from "#shared-lib/contract/lift.ts";
import type { Site } from "#shared-lib/contract/site.ts";
import type { Handlers } from "../../context.ts";
import { fromRow } from "../../record-store.ts";
import { listLandingsSql, listSignalsSql } from "./lift.sql.ts";
import { findLiftLine, listLiftLines } from "./lift-lines.ts";
import { lookUpLifts } from "./look-up.ts";
import { liftTimeline } from "./timeline.ts";

export const liftQueries: Handlers<"lift.list" | "lift.lookUp" | "lift.find" | "lift.timeline"> = {
  "lift.list"(context) {
    return { lifts: listLiftLines(context.store) };
  },

  "lift.lookUp"(context, { text, limit }) {
    return {
      lifts: lookUpLifts(context.store, text, limit).map(({ line, because }) => ({ ...line, because })),
    };
  },

  "lift.find"(context, { id }) {
    const lift = context.records.find("lift", id) as unknown as Lift;
    const rows = (sql: string): Record<string, unknown>[] => context.store.all(sql, { liftId: id });
    return {
      lift,
      line: findLiftLine(context.store, id),
      site: context.records.find("site", lift.siteId) as unknown as Site,
      landings: rows(listLandingsSql).map((row) => fromRow("landing", row) as unknown as Landing),
      signals: rows(listSignalsSql).map((row) => fromRow("signal", row) as unknown as Signal),
    };
  },

  "lift.timeline"(context, { id, limit, before }) {
    context.records.find("lift", id);
    return { entries: liftTimeline(context.store, { liftId: id, limit, before: before ?? "9999" }) };
  },
};
