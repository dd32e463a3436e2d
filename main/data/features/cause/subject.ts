import { SillbookError } from "#shared-lib/errors.ts";
import type { Context } from "../../context.ts";

/** What the causes are ranked for: the callout where there is one, a visit without callout, or only a lift. */
export interface Subject {
  readonly liftId: string | null;
  readonly calloutId: string | null;
  readonly visitId: string | null;
  /** What was said or found; compared with past callouts. */
  readonly text: string;
}

export interface SubjectInput {
  readonly calloutId: string | null;
  readonly visitId: string | null;
  readonly liftId?: string | null;
  readonly text?: string;
}

/** @throws SillbookError not-found, input-invalid */
export function findSubject(context: Context, input: SubjectInput): Subject {
  const visit = input.visitId === null ? null : context.records.find("visit", input.visitId);
  const calloutId = (visit?.calloutId as string | null | undefined) ?? input.calloutId;
  if (input.calloutId !== null && calloutId !== input.calloutId) {
    const message = "That visit belongs to another callout.";
    throw new SillbookError("input-invalid", `${message} Nothing was recorded.`, {
      fields: [{ path: ["visitId"], message }],
    });
  }
  const { visitId, text = "", liftId = null } = input;
  if (calloutId !== null) {
    const callout = context.records.find("callout", calloutId);
    const said = [callout.said as string, text].filter((words) => words !== "").join(" ");
    return { liftId: callout.liftId as string | null, calloutId, visitId, text: said };
  }
  if (visit)
    return { liftId: visit.liftId as string, calloutId, visitId, text: (visit.found as string) || text };
  return { liftId, calloutId, visitId, text };
}
