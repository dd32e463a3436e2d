import { calculators } from "#shared-lib/calculators/registry.ts";
import type { OutputOf } from "#shared-lib/contract/operations.ts";

export interface CalculatorLine {
  readonly id: string;
  /** Why it was found; empty in the plain list. */
  readonly why: string;
}

/** All calculators while nothing is asked, else those found, best first. */
export function calculatorsFor(
  asked: string,
  found: OutputOf<"search.find"> | undefined,
): readonly CalculatorLine[] {
  if (asked === "" || found === undefined) return calculators.map(({ id }) => ({ id, why: "" }));
  return (found.groups.find((group) => group.kind === "calculator")?.hits ?? []).map(({ id, why }) => ({
    id,
    why,
  }));
}
