import type { InputOf } from "#shared-lib/contract/operations.ts";
import { proposeFaultGroup } from "#shared-lib/fault-group-words.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import type { FaultGroup, InsideState } from "#shared-lib/words.ts";

/** What the clerk types while the caller speaks, kept as a draft with every word. */
export interface NewCalloutDraft {
  /** What stands in the field of the lift; free words while no lift is chosen. */
  readonly liftText: string;
  readonly liftId: string | null;
  readonly landingId: string | null;
  /** Null until asked: nobody is never taken for granted. */
  readonly inside: Exclude<InsideState, "not recorded"> | null;
  readonly insideCount: string;
  readonly insideCondition: string;
  readonly said: string;
  /** Null: as the words read. */
  readonly group: FaultGroup | null;
  readonly caller: string;
  readonly callBack: string;
  readonly displayReading: string;
  /** Landing and display reading are unfolded. */
  readonly unfolded: boolean;
  /** Once saving was tried, what is missing stands at its field. */
  readonly asked: boolean;
}

export const emptyCallout: NewCalloutDraft = {
  liftText: "",
  liftId: null,
  landingId: null,
  inside: null,
  insideCount: "",
  insideCondition: "",
  said: "",
  group: null,
  caller: "",
  callBack: "",
  displayReading: "",
  unfolded: false,
  asked: false,
};

export type NewCalloutProblems = Partial<Record<"lift" | "inside" | "insideCount" | "said", string>>;

export function newCalloutProblems(draft: NewCalloutDraft): NewCalloutProblems {
  const problems: { -readonly [Field in keyof NewCalloutProblems]: NewCalloutProblems[Field] } = {};
  if (draft.liftId === null && draft.liftText.trim() === "")
    problems.lift = "Choose a lift, or write what the caller calls it: it can be settled later.";
  if (draft.inside === null) problems.inside = "Ask whether anyone is inside. Not known can be chosen.";
  if (saidOf(draft) === "") problems.said = "Write down what the caller says.";
  if (draft.inside === "people inside" && readCount(draft.insideCount) === "unclear")
    problems.insideCount = "A whole number from 1 to 100, or leave it empty.";
  return problems;
}

function readCount(text: string): number | null | "unclear" {
  const reading = readNumber(text);
  if (reading.kind === "empty") return null;
  if (reading.kind !== "number") return "unclear";
  const { number } = reading;
  return Number.isInteger(number) && number >= 1 && number <= 100 ? number : "unclear";
}

/** People inside must be saved at once: without words that is what is written down; words are added later. */
export function saidOf(draft: Pick<NewCalloutDraft, "said" | "inside">): string {
  return draft.said.trim() || (draft.inside === "people inside" ? "People inside" : "");
}

/** The group that is saved: chosen by hand, else as the words read. */
export function groupOf(draft: Pick<NewCalloutDraft, "group" | "said">): FaultGroup {
  return draft.group ?? proposeFaultGroup(draft.said).group;
}

/** People inside, as fields of a callout. Where nobody is inside, number and condition are not sent. */
export function insideFields(draft: NewCalloutDraft): {
  readonly inside: InsideState;
  readonly insideCount: number | null;
  readonly insideCondition: string;
} {
  const inside = draft.inside ?? "not known";
  if (inside !== "people inside") return { inside, insideCount: null, insideCondition: "" };
  const count = readCount(draft.insideCount);
  return {
    inside,
    insideCount: count === "unclear" ? null : count,
    insideCondition: draft.insideCondition.trim(),
  };
}

/** Only for a draft without problems. */
export function toLogInput(draft: NewCalloutDraft, passTo: string | null): InputOf<"callout.log"> {
  return {
    liftId: draft.liftId,
    liftWords: draft.liftId === null ? draft.liftText.trim() : "",
    landingId: draft.liftId === null ? null : draft.landingId,
    said: saidOf(draft),
    group: groupOf(draft),
    ...insideFields(draft),
    caller: draft.caller.trim(),
    callBack: draft.callBack.trim(),
    displayReading: draft.displayReading.trim(),
    passTo,
  };
}

/** True while there is anything that would be missed. */
export function isBegun(draft: NewCalloutDraft): boolean {
  const { liftText, said, caller, callBack, displayReading, insideCondition, inside } = draft;
  return (
    [liftText, said, caller, callBack, displayReading, insideCondition].some((text) => text !== "") ||
    inside !== null
  );
}
