import type { LiftLine } from "#shared-lib/contract/lift.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import type { Store } from "../../store.ts";
import { findLiftLineSql, listLiftLinesSql } from "./lift.sql.ts";

type LiftLineRow = Omit<LiftLine, "title" | "peopleInside" | "danger"> & {
  peopleInside: number;
  danger: number;
};

function toLine(row: LiftLineRow): LiftLine {
  return {
    ...row,
    title: `${row.siteName}, ${row.name}`,
    peopleInside: row.peopleInside === 1,
    danger: row.danger === 1,
  };
}

export function listLiftLines(store: Store): LiftLine[] {
  return store.all<LiftLineRow>(listLiftLinesSql).map(toLine);
}

/** @throws SillbookError not-found */
export function findLiftLine(store: Store, id: string): LiftLine {
  const row = store.get<LiftLineRow>(findLiftLineSql, { id });
  if (!row) throw new SillbookError("not-found", "There is no such lift.", { entity: "lift", id });
  return toLine(row);
}
