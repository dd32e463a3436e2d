import type { InputOf } from "#shared-lib/contract/operations.ts";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { readTime } from "#shared-lib/time-words.ts";
import { type FaultGroup, faultGroups, type visitKinds } from "#shared-lib/words.ts";

/** A visit as it is typed: times and numbers in words, parts and readings one line each. */
export interface VisitDraft {
  /** Version the correction was begun from; null for a new visit. */
  readonly version: number | null;
  readonly kind: (typeof visitKinds)[number];
  readonly engineerId: string | null;
  readonly arrived: string;
  readonly left: string;
  readonly found: string;
  readonly done: string;
  readonly cause: string;
  readonly fix: string;
  readonly group: FaultGroup;
  /** One part a line: "2 door rollers, DR-40". */
  readonly parts: string;
  /** One sentence a line. */
  readonly readings: string;
  readonly displayReading: string;
  readonly chargeable: "yes" | "no" | "not decided";
  readonly asked: boolean;
}

export type VisitProblem = "engineer" | "arrived" | "left" | "cause" | "fix" | "parts" | "readings";
export type VisitProblems = Partial<Record<VisitProblem, string>>;

type Part = Visit["parts"][number];

/** "2 × door rollers, DR-40" as a part; a line without a number is one of it; the marking stands after the last comma. */
export function readPart(line: string): Part {
  const counted = /^(\d+(?:[.,]\d+)?)\s*(?:[x×]\s+|\s)\s*(\S.*)$/.exec(line.trim());
  const quantity = counted?.[1] === undefined ? 1 : readQuantity(counted[1]);
  const rest = counted?.[2] ?? line.trim();
  const comma = rest.lastIndexOf(",");
  const name = comma < 0 ? rest : rest.slice(0, comma).trim();
  const marking = comma < 0 ? "" : rest.slice(comma + 1).trim();
  return name === "" ? { name: rest, quantity, marking: "" } : { name, quantity, marking };
}

function readQuantity(text: string): number {
  const reading = readNumber(text);
  return reading.kind === "number" ? reading.number : 1;
}

/** As `readPart` reads it again: the number is written where a name could be taken for one. */
export function writePart({ name, quantity, marking }: Part): string {
  const isPlain = quantity === 1 && marking === "" && !/^\d/.test(name);
  const words = marking !== "" ? `${name}, ${marking}` : name.includes(",") ? `${name},` : name;
  return isPlain ? words : `${quantity} ${words}`;
}

const linesOf = (text: string): string[] =>
  text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");

export function visitProblems(draft: VisitDraft, now: Date): VisitProblems {
  const problems: VisitProblems = {};
  if (draft.engineerId === null) problems.engineer = "Name who attended.";
  const arrived = readTime(draft.arrived, now, "past");
  if (arrived.kind === "empty") problems.arrived = "Write when the engineer arrived, as in 09:05.";
  if (arrived.kind === "unclear") problems.arrived = arrived.problem;
  const left = readTime(draft.left, now, "past");
  if (left.kind === "unclear") problems.left = left.problem;
  if (draft.cause.trim() !== "" && draft.fix.trim() === "")
    problems.fix = "A cause is written: say what ended it too, so that the next person can use it.";
  if (draft.fix.trim() !== "" && draft.cause.trim() === "")
    problems.cause = "A fix is written: say what the cause was. Where none was found, leave both empty.";
  if (linesOf(draft.parts).some((line) => line.length > 300)) problems.parts = "At most 300 letters a line.";
  if (linesOf(draft.readings).some((line) => line.length > 300))
    problems.readings = "At most 300 letters a line.";
  return problems;
}

type VisitFields = Omit<InputOf<"visit.record">, "fix" | "liftId" | "calloutId">;

/** Only for a draft without problems. */
export function toVisitFields(draft: VisitDraft, engineerId: string, now: Date): VisitFields {
  const arrived = readTime(draft.arrived, now, "past");
  const left = readTime(draft.left, now, "past");
  if (arrived.kind !== "moment") throw new RangeError("The time of arrival is not readable.");
  return {
    kind: draft.kind,
    engineerId,
    arrivedAt: arrived.at,
    leftAt: left.kind === "moment" ? left.at : null,
    found: draft.found.trim(),
    done: draft.done.trim(),
    displayReading: draft.displayReading.trim(),
    chargeable: draft.chargeable === "not decided" ? null : draft.chargeable === "yes",
    parts: linesOf(draft.parts).map(readPart),
    readings: linesOf(draft.readings),
  };
}

/** The recorded fix of the visit, or null where no cause was found. */
export function fixOf(draft: VisitDraft): { cause: string; fix: string; group: FaultGroup } | null {
  const cause = draft.cause.trim();
  const fix = draft.fix.trim();
  return cause === "" || fix === "" ? null : { cause, fix, group: draft.group };
}

export function toVisitDraft(visit: Visit, group: FaultGroup): VisitDraft {
  return {
    version: visit.version,
    kind: visit.kind,
    engineerId: visit.engineerId,
    arrived: formatDayAndTime(visit.arrivedAt),
    left: visit.leftAt === null ? "" : formatDayAndTime(visit.leftAt),
    found: visit.found,
    done: visit.done,
    cause: visit.fix?.cause ?? "",
    fix: visit.fix?.fix ?? "",
    group: faultGroups.find((one) => one === visit.fix?.group) ?? group,
    parts: visit.parts.map(writePart).join("\n"),
    readings: visit.readings.join("\n"),
    displayReading: visit.displayReading,
    chargeable: visit.chargeable === null ? "not decided" : visit.chargeable ? "yes" : "no",
    asked: false,
  };
}
