import type { CheckLine, Found, PlanStep, StepVerdict } from "#shared-lib/contract/check.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";
import { SillbookError } from "#shared-lib/errors.ts";
import { fromRow } from "../../record-store.ts";
import type { Store } from "../../store.ts";
import { earlierStepsSql, findCheckSql, stepsOfCheckSql } from "./check.sql.ts";

type Row = Readonly<Record<string, unknown>>;
type CheckStep = OutputOf<"check.find">["steps"][number];

export interface FoundCheck {
  readonly check: CheckLine;
  /** The steps as the plan was when the check was started. */
  readonly planned: readonly PlanStep[];
}

export function toCheck(row: Row): FoundCheck {
  const { deleted: _deleted, personId, steps, ...check } = fromRow("check", row);
  const planned = steps as PlanStep[];
  const [passed, failed] = [row.passed as number, row.failed as number];
  return {
    planned,
    check: {
      ...(check as unknown as CheckLine),
      liftTitle: row.liftTitle as string,
      by: { id: personId as string, name: (row.personName as string | null) ?? "" },
      passed,
      failed,
      unchecked: planned.length - passed - failed,
    },
  };
}

/** @throws SillbookError not-found */
export function findCheck(store: Store, id: string): FoundCheck {
  const row = store.get<Row>(findCheckSql, { id });
  if (!row || row.deleted === 1)
    throw new SillbookError("not-found", "There is no such signal check.", { entity: "check", id });
  return toCheck(row);
}

interface EarlierRow {
  readonly checkId: string;
  /** JSON. */
  readonly found: string;
  readonly stepKey: string;
  readonly verdict: StepVerdict;
  readonly sentence: string;
  readonly at: string;
}

/** The newest row of each step: rows come oldest first. */
function newestByStep<R extends { readonly stepKey: unknown }>(rows: readonly R[]): Map<string, R> {
  return new Map(rows.map((row) => [row.stepKey as string, row]));
}

function previousOf(row: EarlierRow | undefined): CheckStep["previous"] {
  if (!row) return null;
  const { checkId, verdict, sentence, at } = row;
  return { checkId, found: JSON.parse(row.found) as Found, verdict, sentence, at };
}

/** The steps of a check with what was found, and with what the same step showed the previous time. */
export function checkSteps(store: Store, { check, planned }: FoundCheck): CheckStep[] {
  const recorded = newestByStep(
    store.all<Row>(stepsOfCheckSql, { checkId: check.id }).map((row): Row & { stepKey: unknown } => ({
      ...fromRow("check step", row),
      personName: row.personName,
      stepKey: row.stepKey,
    })),
  );
  const { liftId, planId, startedAt } = check;
  const earlier = newestByStep(
    store.all<EarlierRow>(earlierStepsSql, { liftId, planId, startedAt, checkId: check.id }),
  );
  return planned.map((step) => {
    const row = recorded.get(step.key);
    return {
      ...step,
      found: (row?.found ?? null) as Found | null,
      verdict: (row?.verdict ?? "unchecked") as StepVerdict,
      sentence: (row?.sentence ?? "") as string,
      note: (row?.note ?? "") as string,
      at: (row?.at ?? null) as string | null,
      by: row ? { id: row.personId as string, name: (row.personName as string | null) ?? "" } : null,
      previous: previousOf(earlier.get(step.key)),
    };
  });
}
