import type { z } from "zod";
import type { fixFieldsSchema } from "#shared-lib/contract/visit.ts";
import type { Context, Handlers } from "../../context.ts";
import type { StoredRecord } from "../../record-store.ts";
import { attachFix } from "./attach-fix.ts";
import { fixesOfVisitsSql } from "./visit.sql.ts";
import { refuseImpossibleVisit, type VisitFacts } from "./visit-rules.ts";

type FixFields = z.infer<typeof fixFieldsSchema>;

/** What a fix takes over from the visit it was recorded with. */
function fixFacts(visitId: string, visit: VisitFacts) {
  return {
    liftId: visit.liftId,
    calloutId: visit.calloutId,
    visitId,
    at: visit.leftAt ?? visit.arrivedAt,
    personId: visit.engineerId,
  };
}

function insertFix(context: Context, visitId: string, visit: VisitFacts, fix: FixFields): string {
  const { group, ...words } = fix;
  return context.records.insert("recorded fix", {
    ...fixFacts(visitId, visit),
    ...words,
    faultGroup: group,
    noteId: null,
    causeKey: null,
  }).id;
}

function fixOfVisit(context: Context, visitId: string): StoredRecord | null {
  const rows = context.store.all<{ id: string }>(fixesOfVisitsSql, { visitIds: JSON.stringify([visitId]) });
  const newest = rows.at(-1);
  return newest ? context.records.find("recorded fix", newest.id) : null;
}

/**
 * The fix after a correction of its visit: `undefined` leaves its words and lets its time, lift and person follow the
 * visit, null takes it away.
 */
function changeFix(
  context: Context,
  visitId: string,
  visit: VisitFacts,
  fix: FixFields | null | undefined,
): string | null {
  const present = fixOfVisit(context, visitId);
  if (!present) return fix ? insertFix(context, visitId, visit, fix) : null;
  if (fix === null) {
    context.records.setDeleted("recorded fix", present, true);
    return null;
  }
  const facts = fixFacts(visitId, visit);
  const patch = fix ? { ...facts, cause: fix.cause, fix: fix.fix, faultGroup: fix.group } : facts;
  context.records.update("recorded fix", present, patch);
  return present.id;
}

export const visitCommands: Handlers<"visit.record" | "visit.change" | "fix.attach"> = {
  /** The fault group of the callout is left as it is: it is settled when the callout is closed. */
  "visit.record"(context, { fix, ...fields }) {
    refuseImpossibleVisit(context, fields, fields, []);
    const saved = context.records.insert("visit", fields);
    return { ...saved, fixId: fix ? insertFix(context, saved.id, fields, fix) : null };
  },

  "visit.change"(context, { id, version, fields, fix }) {
    const visit = context.records.findAtVersion("visit", id, version);
    const next = { ...(visit as unknown as VisitFacts), ...fields } as VisitFacts;
    refuseImpossibleVisit(context, next, fields, ["fields"]);
    const saved = context.records.update("visit", visit, fields);
    return { ...saved, fixId: changeFix(context, id, next, fix) };
  },

  "fix.attach"(context, { id, version, noteId, causeKey }) {
    return attachFix(context, context.records.findAtVersion("recorded fix", id, version), noteId, causeKey);
  },
};
