import { z } from "zod";
import { quantityNames, type Unit, units } from "../quantities.ts";
import { drawingSchema } from "./drawing.ts";
import { sourceSchema } from "./source.ts";

export const verdictWords = [
  "Within",
  "Outside",
  "Crossed",
  "Dead",
  "Reversed",
  "Misplaced",
  "No overlap",
  "Irregular",
  "Not enough",
] as const;

const unitSchema = z.enum(Object.keys(units) as [Unit, ...Unit[]]);

/** One word, what it is, why it is that and no other, what to do, and what follows until then. */
export const verdictSchema = z.object({
  word: z.enum(verdictWords),
  /** true holds, false does not hold, null cannot be said. */
  holds: z.boolean().nullable(),
  sentence: z.string(),
  because: z.string(),
  next: z.string(),
  until: z.string(),
});
export type Verdict = z.infer<typeof verdictSchema>;

/** One number against its own limit and no other. Read aloud: `reading`: `word` `rest`. */
export const comparisonSchema = z.object({
  key: z.string(),
  label: z.string(),
  value: z.number().nullable(),
  quantity: z.enum(quantityNames),
  unit: unitSchema,
  digits: z.int(),
  signed: z.boolean(),
  limit: z.object({ least: z.number().nullable(), most: z.number().nullable(), source: sourceSchema }),
  holds: z.boolean().nullable(),
  word: z.enum(["within", "outside", "no limit given", "cannot be said"]),
  reading: z.string(),
  rest: z.string(),
  /** Field the number was typed in, where it was typed: the comparison can be shown there as well. */
  field: z.string().nullable(),
});
export type Comparison = z.infer<typeof comparisonSchema>;

export const valueLineSchema = z.object({
  key: z.string(),
  label: z.string(),
  /** SI. */
  value: z.number(),
  quantity: z.enum(quantityNames),
  unit: unitSchema,
  digits: z.int(),
  signed: z.boolean(),
  /** As written for a person, with its unit. */
  shown: z.string(),
});
export type ValueLine = z.infer<typeof valueLineSchema>;

/** A sentence at a field: what is wrong, what was probably meant, what happens meanwhile. */
export const problemSchema = z.object({ field: z.string(), sentence: z.string() });
export type Problem = z.infer<typeof problemSchema>;

export const resultSchema = z.object({
  verdict: verdictSchema,
  comparisons: z.array(comparisonSchema),
  values: z.array(valueLineSchema),
  drawings: z.array(drawingSchema),
  problems: z.array(problemSchema),
  /** Keys of fields without which nothing can be said. */
  missing: z.array(z.string()),
  notes: z.array(z.string()),
});
export type Result = z.infer<typeof resultSchema>;
export type VerdictWord = (typeof verdictWords)[number];
