import { SillbookError } from "#shared-lib/errors.ts";
import type { InsideState } from "#shared-lib/words.ts";
import type { Context } from "../../context.ts";

const mayHoldPeople = (inside: unknown): boolean => inside === "people inside" || inside === "not known";

/**
 * Whether a callout from records kept before Sillbook is still one of the past. Open, and with people inside or nobody
 * knowing, it is a callout like any other: the safety rule holds for it.
 */
export function isStillPast(
  callout: Readonly<Record<string, unknown>>,
  inside: unknown,
  open: boolean,
): boolean {
  return callout.earlierRecord === true && !(open && mayHoldPeople(inside));
}

/**
 * Somebody who is inside now is no earlier record.
 * @throws SillbookError input-invalid
 */
export function refuseLiveEntrapment(
  inside: InsideState,
  backInServiceAt: string | null,
  endNotKnown: boolean,
): void {
  if (backInServiceAt !== null || endNotKnown || !mayHoldPeople(inside)) return;
  throw new SillbookError(
    "input-invalid",
    "It is not over: people are inside, or may be. Log it as a callout of today. Nothing was brought in.",
    {
      fields: [
        { path: ["inside"], message: "People are inside, or may be, and the lift is not back in service." },
      ],
    },
  );
}

export function endingReasonOf(backInServiceAt: string | null, endNotKnown: boolean): string {
  if (backInServiceAt) return "From records kept before Sillbook";
  return endNotKnown ? "From records kept before Sillbook, which do not say when it ended" : "";
}

export function insertEarlierEvents(
  context: Context,
  calloutId: string,
  receivedAt: string,
  backInServiceAt: string | null,
): void {
  const common = {
    calloutId,
    personId: null,
    toId: null,
    note: "From records kept before Sillbook",
    registerComparedBy: null,
    corrects: null,
    withdrawn: false,
    earlierRecord: true,
  };
  context.records.insert("callout event", { ...common, kind: "received", at: receivedAt });
  if (!backInServiceAt) return;
  context.records.insert("callout event", { ...common, kind: "back in service", at: backInServiceAt });
  context.records.insert("callout event", { ...common, kind: "closed", at: backInServiceAt });
}
