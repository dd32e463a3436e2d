import type { Callout } from "#shared-lib/contract/callout.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import type { FaultGroup, InsideState } from "#shared-lib/words.ts";

/** What was written down, as it stands in the form that corrects it. */
export interface CalloutDraft {
  readonly version: number;
  readonly liftId: string | null;
  readonly liftText: string;
  readonly said: string;
  readonly group: FaultGroup;
  readonly inside: InsideState;
  readonly insideCount: string;
  readonly insideCondition: string;
  readonly caller: string;
  readonly callBack: string;
  readonly displayReading: string;
}

export function toCalloutDraft(callout: Callout, liftTitle: string): CalloutDraft {
  return {
    version: callout.version,
    liftId: callout.liftId,
    liftText: callout.liftId === null ? callout.liftWords : liftTitle,
    said: callout.said,
    group: callout.group,
    inside: callout.inside,
    insideCount: callout.insideCount === null ? "" : String(callout.insideCount),
    insideCondition: callout.insideCondition,
    caller: callout.caller,
    callBack: callout.callBack,
    displayReading: callout.displayReading,
  };
}

export type ChangeFields = Partial<
  Pick<
    Callout,
    | "liftId"
    | "liftWords"
    | "landingId"
    | "said"
    | "group"
    | "inside"
    | "insideCount"
    | "insideCondition"
    | "caller"
    | "callBack"
    | "displayReading"
  >
>;

/** Only the fields that differ from what is stored, so that another person's change of the others stays. */
export function changedFields(draft: CalloutDraft, stored: Callout): ChangeFields {
  const count = readNumber(draft.insideCount);
  const wanted: ChangeFields = {
    liftId: draft.liftId,
    liftWords: draft.liftId === null ? draft.liftText.trim() : stored.liftWords,
    landingId: draft.liftId === stored.liftId ? stored.landingId : null,
    said: draft.said.trim(),
    group: draft.group,
    inside: draft.inside,
    insideCount: draft.inside === "people inside" && count.kind === "number" ? count.number : null,
    insideCondition: draft.insideCondition.trim(),
    caller: draft.caller.trim(),
    callBack: draft.callBack.trim(),
    displayReading: draft.displayReading.trim(),
  };
  return Object.fromEntries(
    Object.entries(wanted).filter(([field, value]) => stored[field as keyof ChangeFields] !== value),
  );
}

export function calloutDraftProblems(
  draft: CalloutDraft,
): Partial<Record<"said" | "lift" | "insideCount", string>> {
  const problems: Partial<Record<"said" | "lift" | "insideCount", string>> = {};
  if (draft.said.trim() === "") problems.said = "What the caller said cannot be left empty.";
  if (draft.liftId === null && draft.liftText.trim() === "")
    problems.lift = "Choose a lift, or keep what the caller calls it.";
  const count = readNumber(draft.insideCount);
  const isWhole =
    count.kind === "number" && Number.isInteger(count.number) && count.number >= 1 && count.number <= 100;
  if (draft.inside === "people inside" && count.kind !== "empty" && !isWhole)
    problems.insideCount = "A whole number from 1 to 100, or leave it empty.";
  return problems;
}
