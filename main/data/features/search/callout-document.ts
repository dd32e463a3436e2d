import type { Store } from "../../store.ts";
import { callersSaidSql, calloutRowSql, causesAndFixesSql, visitTextsSql } from "./callout-document.sql.ts";
import type { DocumentRow } from "./search-documents.ts";

interface CalloutRow extends Omit<DocumentRow, "symptom" | "cause" | "fix" | "body" | "marking"> {
  readonly said: string;
  readonly endingReason: string;
  readonly number: string;
  readonly displayReading: string;
}

interface VisitTexts {
  readonly found: string;
  readonly done: string;
  readonly parts: string;
  readonly readings: string;
  readonly displayReading: string;
}

const lines = (texts: readonly string[]): string => texts.filter((text) => text !== "").join("\n");

/**
 * What a callout says to the search, with everything that hangs on it. Four short questions: one statement with an
 * aggregate for each text takes twice as long, and every save waits for it.
 */
export function readCallout(store: Store, id: string): DocumentRow | undefined {
  const row = store.get<CalloutRow>(calloutRowSql, { id });
  if (!row) return undefined;
  const { said, endingReason, number, displayReading, ...document } = row;
  const callers = store.all<{ said: string }>(callersSaidSql, { id });
  const fixes = store.all<{ cause: string; fix: string }>(causesAndFixesSql, { id });
  const visits = store.all<VisitTexts>(visitTextsSql, { id });
  return {
    ...document,
    symptom: lines([said, ...callers.map((caller) => caller.said)]),
    cause: lines(fixes.map((fix) => fix.cause)),
    fix: lines(fixes.map((fix) => fix.fix)),
    body: lines([
      endingReason,
      ...visits.flatMap(({ found, done, parts, readings }) => [found, done, parts, readings]),
    ]),
    marking: lines([number, displayReading, ...visits.map((visit) => visit.displayReading)]),
  };
}
