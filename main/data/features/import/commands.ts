import type { Entity } from "#shared-lib/contract/history.ts";
import type { ImportCounts, ImportRow, RefusedRow } from "#shared-lib/contract/import.ts";
import { liftFieldsSchema } from "#shared-lib/contract/lift.ts";
import type { ParsedInputOf } from "#shared-lib/contract/operations.ts";
import { siteFieldsSchema } from "#shared-lib/contract/site.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { type Context, type Handlers, signerOf } from "../../context.ts";
import { newIdentifier } from "../../identifier.ts";
import { calloutCommands } from "../callout/commands.ts";
import { liftCommands } from "../lift/commands.ts";
import { siteHandlers } from "../site/handlers.ts";
import {
  countImportedSql,
  findRunSql,
  fixesOfCalloutSql,
  importedSql,
  insertImportedSql,
  insertRefusalSql,
  insertRunSql,
  markImportedSql,
  standsOnCalloutSql,
  standsOnLiftSql,
  standsOnSiteSql,
} from "./import.sql.ts";
import { LiftFinder } from "./lift-finder.ts";
import { settleRow } from "./settle-row.ts";

type Mutable<Type> = { -readonly [Key in keyof Type]: Type[Key] };
type Part = ParsedInputOf<"import.bringIn">;

export const importCommands: Handlers<"import.begin" | "import.bringIn" | "import.undo"> = {
  "import.begin"(context, { name, header, mapping }) {
    const importId = newIdentifier();
    context.store.run(insertRunSql, {
      id: importId,
      name,
      header: JSON.stringify(header),
      mapping: JSON.stringify(mapping),
      at: context.now,
      personId: signerOf(context).id,
    });
    return { importId };
  },

  "import.bringIn"(context, part) {
    refuseUnknownRun(context, part.importId);
    for (const row of part.refused) keepRefused(context, part.importId, row);
    return bringIn(context, part);
  },

  "import.undo"(context, { importId, atOnce }) {
    refuseUnknownRun(context, importId);
    const made = context.store.all<{ place: number; entity: Entity; recordId: string }>(importedSql, {
      importId,
      limit: atOnce,
    });
    let deleted = 0;
    for (const { place, entity, recordId } of made) {
      const isGone = takeBack(context, entity, recordId);
      context.store.run(markImportedSql, { place, state: isGone ? "taken back" : "kept" });
      if (isGone) deleted += 1;
    }
    return {
      deleted,
      left: countOf(context, importId, "brought in"),
      kept: countOf(context, importId, "kept"),
    };
  },
};

function refuseUnknownRun(context: Context, importId: string): void {
  if (context.store.get(findRunSql, { id: importId })) return;
  throw new SillbookError("not-found", "That import was never begun. Nothing was changed.", { importId });
}

function countOf(context: Context, importId: string, state: string): number {
  return context.store.get<{ count: number }>(countImportedSql, { importId, state })?.count ?? 0;
}

function bringIn(context: Context, { importId, rows, cells, ...settling }: Part): ImportCounts {
  const finder = new LiftFinder(context.store);
  const counts: Mutable<ImportCounts> = { added: 0, duplicates: 0, refused: [], newSites: 0, newLifts: 0 };
  const note = (entity: Entity, recordId: string): void =>
    context.store.run(insertImportedSql, { importId, entity, recordId });
  for (const [index, row] of rows.entries()) {
    const settled = settleRow(context.store, finder, row, settling, context.now);
    if (settled.what === "duplicate") counts.duplicates += 1;
    else if (settled.what === "refused") {
      const { rowNumber } = row;
      counts.refused.push({ rowNumber, reason: settled.reason });
      keepRefused(context, importId, { rowNumber, reason: settled.reason, cells: cells[index] ?? [] });
    } else {
      const liftId = settled.liftId ?? addLift(context, finder, row, counts, note);
      if (settling.kind === "callouts") addCallout(context, row, liftId, note);
      counts.added += 1;
    }
  }
  return counts;
}

function keepRefused(context: Context, importId: string, { rowNumber, reason, cells }: RefusedRow): void {
  context.store.run(insertRefusalSql, { importId, rowNumber, reason, cells: JSON.stringify(cells) });
}

function addLift(
  context: Context,
  finder: LiftFinder,
  row: ImportRow,
  counts: Mutable<ImportCounts>,
  note: (entity: Entity, recordId: string) => void,
): string {
  let siteId = finder.findSite(row.site);
  if (!siteId) {
    const { site: name, street, town } = row;
    siteId = siteHandlers["site.add"](context, siteFieldsSchema.parse({ name, street, town })).id;
    finder.addSite(row.site, siteId);
    note("site", siteId);
    counts.newSites += 1;
  }
  const fields = liftFieldsSchema.parse({ siteId, name: row.lift, plateNumber: row.plateNumber });
  const { id } = liftCommands["lift.add"](context, { ...fields, landings: [] });
  finder.add(row, id);
  note("lift", id);
  counts.newLifts += 1;
  return id;
}

function addCallout(
  context: Context,
  row: ImportRow,
  liftId: string,
  note: (entity: Entity, recordId: string) => void,
): void {
  const { id } = calloutCommands["callout.bringIn"](context, {
    liftId,
    said: row.said,
    group: row.group,
    receivedAt: row.receivedAt ?? context.now,
    backInServiceAt: row.backInServiceAt,
    cause: row.cause,
    fix: row.fix,
    inside: "not recorded",
    ending: "repaired",
    // An old record without an end is no open callout.
    endNotKnown: row.backInServiceAt === null,
  });
  note("callout", id);
  for (const fix of context.store.all<{ id: string }>(fixesOfCalloutSql, { id }))
    note("recorded fix", fix.id);
}

/** True where the record is gone afterwards; false where somebody has worked with it since, so that it stays. */
function takeBack(context: Context, entity: Entity, id: string): boolean {
  const record = context.records.findIncludingDeleted(entity, id);
  if (record.deleted) return true;
  if (record.version > 1 || stands(context, entity, id)) return false;
  context.records.setDeleted(entity, record, true);
  return true;
}

function stands(context: Context, entity: Entity, id: string): boolean {
  const sql = { callout: standsOnCalloutSql, lift: standsOnLiftSql, site: standsOnSiteSql }[entity as string];
  return sql !== undefined && (context.store.get<{ count: number }>(sql, { id })?.count ?? 0) > 0;
}
