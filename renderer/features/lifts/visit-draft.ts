import type { InputOf } from "#shared-lib/contract/operations.ts";
import type { Visit } from "#shared-lib/contract/visit.ts";
import { formatDayAndTime } from "#shared-lib/format.ts";
import { readNumber } from "#shared-lib/number-words.ts";
import { readTime } from "#shared-lib/time-words.ts";
import type { FaultGroup } from "#shared-lib/words.ts";

export interface PartRow {
  readonly name: string;
  readonly quantity: string;
  readonly marking: string;
}

export interface VisitDraft {
  readonly version: number;
  readonly kind: Visit["kind"] | null;
  readonly engineerId: string | null;
  readonly arrived: string;
  readonly left: string;
  readonly found: string;
  readonly done: string;
  readonly displayReading: string;
  readonly chargeable: "yes" | "no" | "not settled";
  /** One reading a line. */
  readonly readings: string;
  readonly parts: readonly PartRow[];
  readonly cause: string;
  readonly fix: string;
  readonly group: FaultGroup;
  readonly tried: boolean;
}

export function startVisit(engineerId: string | null): VisitDraft {
  return {
    version: 0,
    kind: null,
    engineerId,
    arrived: "",
    left: "",
    found: "",
    done: "",
    displayReading: "",
    chargeable: "not settled",
    readings: "",
    parts: [],
    cause: "",
    fix: "",
    group: "not yet known",
    tried: false,
  };
}

export function draftOfVisit(visit: Visit): VisitDraft {
  return {
    ...startVisit(visit.engineerId),
    version: visit.version,
    kind: visit.kind,
    arrived: formatDayAndTime(visit.arrivedAt),
    left: visit.leftAt === null ? "" : formatDayAndTime(visit.leftAt),
    found: visit.found,
    done: visit.done,
    displayReading: visit.displayReading,
    chargeable: visit.chargeable === null ? "not settled" : visit.chargeable ? "yes" : "no",
    readings: visit.readings.join("\n"),
    parts: visit.parts.map(({ name, quantity, marking }) => ({ name, quantity: String(quantity), marking })),
    cause: visit.fix?.cause ?? "",
    fix: visit.fix?.fix ?? "",
    group: visit.fix?.group ?? "not yet known",
  };
}

type VisitFields = Omit<InputOf<"visit.record">, "liftId" | "calloutId">;

export interface VisitReading {
  readonly input: VisitFields | null;
  readonly problems: Readonly<Record<string, string | undefined>>;
}

/** Reads the form of a visit. Cause and fix belong together: one without the other is no recorded fix. */
export function readVisit(draft: VisitDraft, now: Date): VisitReading {
  const arrived = readTime(draft.arrived, now, "past");
  const left = readTime(draft.left, now, "past");
  const parts = draft.parts.filter((part) => part.name.trim() !== "" || part.marking.trim() !== "");
  const quantities = parts.map((part) => readNumber(part.quantity));
  const hasCause = draft.cause.trim() !== "";
  const hasFix = draft.fix.trim() !== "";
  const problems = {
    kind: draft.kind === null ? "Choose what kind of visit it was." : undefined,
    engineerId: draft.engineerId === null ? "Name who was there." : undefined,
    arrivedAt:
      arrived.kind === "empty"
        ? "Say when it began."
        : arrived.kind === "unclear"
          ? arrived.problem
          : undefined,
    leftAt: left.kind === "unclear" ? left.problem : undefined,
    parts: partsProblem(parts, quantities),
    cause: hasFix && !hasCause ? "Say the cause that the fix ended." : undefined,
    fix: hasCause && !hasFix ? "Say what ended the cause." : undefined,
  };
  const { kind, engineerId } = draft;
  const clean = Object.values(problems).every((problem) => problem === undefined);
  if (!clean || kind === null || engineerId === null || arrived.kind !== "moment")
    return { input: null, problems };
  const { found, done, displayReading, chargeable, group } = draft;
  return {
    problems,
    input: {
      kind,
      engineerId,
      arrivedAt: arrived.at,
      leftAt: left.kind === "moment" ? left.at : null,
      found,
      done,
      displayReading,
      chargeable: chargeable === "not settled" ? null : chargeable === "yes",
      parts: parts.map((part, i) => {
        const quantity = quantities[i];
        return { ...part, quantity: quantity?.kind === "number" ? quantity.number : 1 };
      }),
      readings: draft.readings
        .split("\n")
        .map((line) => line.trim())
        .filter((line) => line !== ""),
      fix: hasCause && hasFix ? { cause: draft.cause, fix: draft.fix, group } : null,
    },
  };
}

function partsProblem(
  parts: readonly PartRow[],
  quantities: readonly ReturnType<typeof readNumber>[],
): string | undefined {
  if (parts.some((part) => part.name.trim() === "")) return "Name every part.";
  const unclear = quantities.find((one) => one.kind === "unclear");
  if (unclear?.kind === "unclear") return unclear.problem;
  if (quantities.some((one) => one.kind === "number" && one.number < 0))
    return "A quantity is not below zero.";
  return undefined;
}
