import type { Expected, Found, PlanStep, StepVerdict } from "#shared-lib/contract/check.ts";
import { formatNumber, noBreakSpace } from "#shared-lib/format.ts";
import type { MarkKind } from "../../ui/mark.tsx";

export const verdictMarks: Readonly<Record<StepVerdict, MarkKind>> = {
  passed: "flush",
  failed: "stepped",
  unchecked: "unchecked",
};

export const verdictWords: Readonly<Record<StepVerdict, string>> = {
  passed: "Passed",
  failed: "Failed",
  unchecked: "Unchecked",
};

const partWords: Readonly<Record<PlanStep["part"], string>> = {
  "zone-magnet": "Zone magnets",
  "landing-door": "Landing doors",
  "landing-panel": "Landing panels",
  switch: "Switches",
  car: "Car",
  pit: "Pit",
  machine: "Machine and controller",
};

type Placed = Pick<PlanStep, "landingMarking" | "part">;

/** "Landing 2", or the part of the installation where the step belongs to no landing. */
export function placeWords({ landingMarking, part }: Placed): string {
  return landingMarking === null ? partWords[part] : `Landing ${landingMarking}`;
}

/** As written by hand: no more decimals than the number has. */
export function writtenNumber(value: number, unit: string): string {
  const decimals = Math.min(6, (String(value).split(".")[1] ?? "").length);
  return `${formatNumber(value, decimals)}${unit === "" ? "" : `${noBreakSpace}${unit}`}`;
}

const onOff = (on: boolean): string => (on ? "on" : "off");

/** What the step should show: "lower on, upper on", "at most 0.63 m/s". */
export function expectedWords(expected: Expected): string {
  switch (expected.kind) {
    case "state":
      return onOff(expected.on);
    case "order":
      return expected.order.join(", ");
    case "yes":
      return `${expected.question} Yes.`;
    case "value":
      return limitWords(expected);
  }
}

function limitWords({ least, most, unit }: Expected & { kind: "value" }): string {
  if (least === null && most === null) return "no limit is recorded; the value is kept without a verdict";
  return [
    ...(least === null ? [] : [`at least ${writtenNumber(least, unit)}`]),
    ...(most === null ? [] : [`at most ${writtenNumber(most, unit)}`]),
  ].join(" and ");
}

/** Where what is expected is from; a limit's own source comes first. */
export function sourceWords(step: Pick<PlanStep, "expected" | "source">): string {
  const own = step.expected.kind === "value" ? step.expected.source : "";
  return own === "" || own === step.source ? step.source : `${own}; ${step.source}`;
}

export function foundWords(found: Found | null, expected: Expected): string {
  switch (found?.kind) {
    case "state":
      return onOff(found.on);
    case "order":
      return found.order.length === 0 ? "nothing came" : found.order.join(", ");
    case "yes":
      return found.yes ? "yes" : "no";
    case "value":
      return writtenNumber(found.value, expected.kind === "value" ? expected.unit : "");
    case "not checked":
      return "could not be checked";
    case undefined:
      return "not checked";
  }
}
