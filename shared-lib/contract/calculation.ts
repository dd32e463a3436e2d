import { z } from "zod";
import { read, write } from "./operation.ts";
import { byWhomSchema, idSchema, momentSchema, recordFields, savedSchema } from "./record.ts";

const plainSchema = z.record(z.string(), z.json());

export const calculationSchema = z.object({
  ...recordFields,
  calculatorId: z.string(),
  calculatorName: z.string(),
  liftId: idSchema,
  landingId: idSchema.nullable(),
  visitId: idSchema.nullable(),
  at: momentSchema,
  by: byWhomSchema,
  inputs: plainSchema,
  /** The result as computed when it was saved, verdict and values included. */
  result: z.json(),
  verdictWord: z.string(),
  verdictSentence: z.string(),
});
export type Calculation = z.infer<typeof calculationSchema>;

export const calculationOperations = {
  "calculator.list": read(
    "Every calculator with its inputs, sources and cautions.",
    z.object({}).default({}),
    z.object({ calculators: z.array(z.record(z.string(), z.json())) }),
  ),
  "calculator.compute": read(
    "Compute one calculator. SI units.",
    z.object({ id: z.string().min(1).max(60), inputs: plainSchema }),
    z.object({ result: z.json() }),
  ),
  "calculator.prefill": read(
    "Inputs of a calculator filled in from a lift and its last saved results, each with where it is from.",
    z.object({
      id: z.string().min(1).max(60),
      liftId: idSchema,
      landingId: idSchema.nullable().default(null),
    }),
    z.object({ inputs: plainSchema, from: z.record(z.string(), z.string()) }),
  ),
  "calculation.save": write(
    "Save a result on a lift, landing or visit. It is computed again from the inputs before it is saved.",
    z.object({
      calculatorId: z.string().min(1).max(60),
      liftId: idSchema,
      landingId: idSchema.nullable().default(null),
      visitId: idSchema.nullable().default(null),
      inputs: plainSchema,
    }),
    savedSchema.extend({ verdictWord: z.string(), verdictSentence: z.string() }),
  ),
  "calculation.recent": read(
    "The results saved last, of every lift, newest first, each with its lift and landing in words.",
    z.object({ limit: z.int().min(1).max(100).default(10) }).default({ limit: 10 }),
    z.object({
      calculations: z.array(
        calculationSchema
          .omit({ inputs: true, result: true })
          .extend({ liftTitle: z.string(), landingMarking: z.string().nullable() }),
      ),
    }),
  ),
  "calculation.list": read(
    "Saved results of a lift, newest first.",
    z.object({
      liftId: idSchema,
      calculatorId: z.string().optional(),
      landingId: idSchema.optional(),
      limit: z.int().min(1).max(500).default(50),
    }),
    z.object({ calculations: z.array(calculationSchema) }),
  ),
};
