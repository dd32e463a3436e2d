import type { ResultKind } from "#shared-lib/contract/search.ts";

/** A place of the program, to be spread into a router `Link` or passed to `navigate`. */
export interface Place {
  readonly to: string;
  readonly search?: Record<string, unknown>;
}

/** Where a result opens. A recorded fix has no screen of its own: it opens with its callout, or with its lift. */
export function placeOfResult(
  result: {
    readonly kind: ResultKind;
    readonly id: string;
    readonly liftId: string | null;
    readonly calloutId: string | null;
  },
  contextLiftId: string | null,
): Place | null {
  switch (result.kind) {
    case "note":
      return placeOfNote(result.id, contextLiftId);
    case "calculator":
      return placeOfCalculator(result.id, contextLiftId, null);
    case "callout":
      return { to: `/callout/${result.id}` };
    case "lift":
      return { to: `/lift/${result.id}` };
    case "check":
      return { to: `/checks/${result.id}` };
    case "fix":
      if (result.calloutId) return { to: `/callout/${result.calloutId}` };
      return result.liftId === null ? null : { to: `/lift/${result.liftId}` };
    case "visit":
      return { to: `/print/visit/${result.id}` };
  }
}

/** A note keeps the lift it is read for, so that its calculator can be filled in from it. */
export function placeOfNote(id: string, liftId: string | null): Place {
  return { to: `/note/${id}`, ...(liftId === null ? {} : { search: { lift: liftId } }) };
}

/** The calculator filled in from the lift, with what the note presets. */
export function placeOfCalculator(calculatorId: string, liftId: string | null, noteId: string | null): Place {
  return {
    to: `/bench/${calculatorId}`,
    search: { ...(liftId === null ? {} : { lift: liftId }), ...(noteId === null ? {} : { note: noteId }) },
  };
}

export function placeOfCheckPlan(planId: string, liftId: string | null): Place {
  return { to: "/checks", search: { plan: planId, ...(liftId === null ? {} : { lift: liftId }) } };
}
