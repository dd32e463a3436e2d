import type { Expected } from "#shared-lib/contract/check.ts";
import { writtenNumber } from "./step-words.ts";

type ExpectedValue = Expected & { readonly kind: "value" };

interface PlausibleRange {
  readonly least: number;
  readonly most: number;
  /** Unit people also write this quantity in, and how many of it make one of the step's own. */
  readonly other?: { readonly unit: string; readonly perOne: number };
}

/** What a lift can have at all, by unit: the widest that its own record accepts. Beyond it a unit was confused. */
const ranges: Readonly<Record<string, PlausibleRange>> = {
  m: { least: 0, most: 40, other: { unit: "mm", perOne: 1000 } },
  mm: { least: -500, most: 500 },
  "m/s": { least: 0, most: 20, other: { unit: "mm/s", perOne: 1000 } },
};

/** "0 to 40 m"; undefined for a unit whose range is not known. */
export function rangeWords({ unit }: ExpectedValue): string | undefined {
  const range = ranges[unit];
  return range && `${writtenNumber(range.least, "")} to ${writtenNumber(range.most, unit)}`;
}

/** One sentence where the value cannot be meant as typed; undefined where it can. It is not the verdict. */
export function valueProblem({ unit }: ExpectedValue, value: number): string | undefined {
  const range = ranges[unit];
  if (!range || (value >= range.least && value <= range.most)) return undefined;
  const typed = writtenNumber(value, unit);
  const said = `${typed} cannot be: ${rangeWords({ unit } as ExpectedValue)} is possible here.`;
  const { other } = range;
  const converted = other ? value / other.perOne : Number.NaN;
  if (other && converted > range.least && converted <= range.most)
    return `${said} Was it ${writtenNumber(value, other.unit)}? Then enter ${writtenNumber(converted, unit)}. Nothing was recorded.`;
  return `${said} Nothing was recorded.`;
}
