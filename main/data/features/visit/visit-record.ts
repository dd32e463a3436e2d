import type { RecordedFix, Visit } from "#shared-lib/contract/visit.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { fromRow } from "../../record-store.ts";
import type { SqlParameters, Store } from "../../store.ts";
import { findFixSql, findVisitSql, fixesOfVisitsSql } from "./visit.sql.ts";

type Row = Readonly<Record<string, unknown>>;

function named(id: unknown, name: unknown): { id: string; name: string } | null {
  return typeof id === "string" ? { id, name: typeof name === "string" ? name : "" } : null;
}

/** A stored fix as the contract shows it. One that names a deleted note is shown as attached to none. */
function toFix(row: Row): RecordedFix {
  const { deleted: _deleted, faultGroup, personId, ...fix } = fromRow("recorded fix", row);
  const attached = typeof row.presentNoteId === "string";
  return {
    ...(fix as unknown as RecordedFix),
    group: faultGroup as RecordedFix["group"],
    liftTitle: row.liftTitle as string,
    by: named(personId, row.personName),
    noteId: attached ? (row.presentNoteId as string) : null,
    noteNumber: attached ? (row.noteNumber as string) : null,
    causeKey: attached ? (fix.causeKey as string | null) : null,
  };
}

function toVisit(row: Row, fix: RecordedFix | null): Visit {
  const { deleted: _deleted, ...visit } = fromRow("visit", row);
  return {
    ...(visit as unknown as Visit),
    engineer: named(row.engineerId, row.engineerName) ?? { id: "", name: "" },
    liftTitle: row.liftTitle as string,
    calloutNumber: row.calloutNumber as string | null,
    fix,
  };
}

/** Visits of a query, each with its recorded fix, which are asked for all of them at once. */
export function visitsOf(store: Store, sql: string, parameters: SqlParameters): Visit[] {
  const rows = store.all<Row>(sql, parameters);
  const visitIds = JSON.stringify(rows.map((row) => row.id));
  const fixes = new Map(
    store.all<Row>(fixesOfVisitsSql, { visitIds }).map((row) => [row.visitId as string, toFix(row)]),
  );
  return rows.map((row) => toVisit(row, fixes.get(row.id as string) ?? null));
}

/** @throws SillbookError not-found */
export function findVisit(store: Store, id: string): Visit {
  const [visit] = visitsOf(store, findVisitSql, { id });
  if (!visit) throw new SillbookError("not-found", "There is no such visit.", { entity: "visit", id });
  return visit;
}

/** @throws SillbookError not-found */
export function findFix(store: Store, id: string): RecordedFix {
  const row = store.get<Row>(findFixSql, { id });
  if (!row)
    throw new SillbookError("not-found", "There is no such recorded fix.", { entity: "recorded fix", id });
  return toFix(row);
}
