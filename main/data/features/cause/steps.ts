import type { CauseStep } from "#shared-lib/contract/cause.ts";
import { fromRow } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { stepsSql, visitsOfCalloutSql } from "./cause.sql.ts";
import type { Subject } from "./subject.ts";

type Row = Readonly<Record<string, unknown>>;

function toStep(row: Row): Omit<CauseStep, "overtaken"> & { readonly ofVisit: string | null } {
  const step = fromRow("cause step", row) as unknown as CauseStep & {
    personId: string;
    visitId: string | null;
  };
  return {
    id: step.id,
    noteId: step.noteId,
    noteNumber: row.noteNumber as string,
    noteTitle: row.noteTitle as string,
    checkKey: step.checkKey,
    checkTitle: step.checkTitle,
    outcomeKey: step.outcomeKey,
    outcomeWords: step.outcomeWords,
    at: step.at,
    by: { id: step.personId, name: (row.personName as string | null) ?? "" },
    after: step.after,
    takenBack:
      row.backAt === null
        ? null
        : {
            at: row.backAt as string,
            by: { id: row.backBy as string, name: (row.backName as string | null) ?? "" },
          },
    ofVisit: step.visitId,
  };
}

type Step = ReturnType<typeof toStep>;

/** A later answer to the same check, if it stands, takes the place of an earlier one. */
function withOvertaken(steps: readonly Step[]): (CauseStep & { readonly ofVisit: string | null })[] {
  return steps.map((step, index) => ({
    ...step,
    overtaken: steps
      .slice(index + 1)
      .some(
        (later) =>
          later.noteId === step.noteId && later.checkKey === step.checkKey && later.takenBack === null,
      ),
  }));
}

const withoutVisit = ({ ofVisit: _ofVisit, ...step }: CauseStep & { ofVisit: string | null }): CauseStep =>
  step;

/** All answers given for a callout, or on a visit without one, oldest first. */
export function stepsOf(store: Store, { calloutId, visitId }: Subject): CauseStep[] {
  return readSteps(store, calloutId, visitId).map(withoutVisit);
}

function readSteps(store: Store, calloutId: string | null, visitId: string | null) {
  const id = calloutId ?? visitId;
  if (id === null) return [];
  const rows = store.all<Row>(stepsSql(calloutId === null ? "visit" : "callout"), { id });
  return withOvertaken(rows.map(toStep));
}

/**
 * The answers that belong to one visit of a callout. An answer is given before the visit is written down, so it
 * belongs to the last visit that had arrived by then; what was asked before the first arrival belongs to the first.
 */
export function stepsOfVisit(store: Store, subject: Subject, visitId: string): CauseStep[] {
  const { calloutId } = subject;
  if (calloutId === null) return stepsOf(store, subject);
  const visits = store.all<{ id: string; arrivedAt: string }>(visitsOfCalloutSql, { calloutId });
  const visitAt = (at: string): string | undefined =>
    (visits.findLast(({ arrivedAt }) => arrivedAt <= at) ?? visits[0])?.id;
  return readSteps(store, calloutId, null)
    .filter((step) => (step.ofVisit ?? visitAt(step.at)) === visitId)
    .map(withoutVisit);
}
