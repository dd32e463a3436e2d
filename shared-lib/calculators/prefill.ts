import type { Calculator } from "./calculator.ts";
import type { CalculatorInput, Field, FieldValue, PrefillKey } from "./field.ts";

/** What is known about the lift, its landing and its saved checks; null where it was never recorded. */
export type PrefillFacts = Readonly<Partial<Record<PrefillKey, number | string | null>>>;

export interface Prefilled {
  readonly input: CalculatorInput;
  /** By field key: where its value came from, for the words beside the field. */
  readonly origins: Readonly<Record<string, PrefillKey | "preset">>;
}

function factFor(field: Field, fact: number | string): FieldValue | undefined {
  switch (field.kind) {
    case "number":
      return typeof fact === "number" ? fact : undefined;
    case "choice":
      return field.options.find((option) => option.id === fact || option.recorded === fact)?.id;
    case "text":
      return String(fact).slice(0, field.longest);
    case "order":
    case "table":
      return undefined;
  }
}

/**
 * Fills a form from the lift and from the preset of a fault note; the preset wins, because it says what the note is
 * about. Keys that this calculator does not know are left out, so that an old note still opens it.
 */
export function prefill(
  calculator: Calculator,
  facts: PrefillFacts,
  preset: Readonly<Record<string, unknown>> = {},
): Prefilled {
  const input: Record<string, FieldValue | undefined> = {};
  const origins: Record<string, PrefillKey | "preset"> = {};
  for (const field of calculator.inputs) {
    const given = calculator.schema.safeParse({ [field.key]: preset[field.key] });
    if (preset[field.key] !== undefined && given.success) {
      input[field.key] = given.data[field.key];
      origins[field.key] = "preset";
      continue;
    }
    const fact = field.prefilledFrom === undefined ? undefined : facts[field.prefilledFrom];
    const value = fact === undefined || fact === null ? undefined : factFor(field, fact);
    if (value === undefined || field.prefilledFrom === undefined) continue;
    input[field.key] = value;
    origins[field.key] = field.prefilledFrom;
  }
  return { input, origins };
}
