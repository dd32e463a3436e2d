import { z } from "zod";
import { read, write } from "./operation.ts";
import { byWhomSchema, idSchema, momentSchema, recordFields, savedSchema, versionSchema } from "./record.ts";

/** What a step of a check plan asks for and what it is compared with. */
export const expectedSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("state"), on: z.boolean() }),
  z.object({ kind: z.literal("order"), direction: z.enum(["up", "down"]), order: z.array(z.string()) }),
  z.object({
    kind: z.literal("value"),
    unit: z.string(),
    least: z.number().nullable(),
    most: z.number().nullable(),
    /** Where the limit is from; a limit without a source is not shown as one. */
    source: z.string(),
  }),
  z.object({ kind: z.literal("yes"), question: z.string() }),
]);
export type Expected = z.infer<typeof expectedSchema>;

export const foundSchema = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("state"), on: z.boolean() }),
  z.object({ kind: z.literal("order"), order: z.array(z.string()).max(20) }),
  z.object({ kind: z.literal("value"), value: z.number() }),
  z.object({ kind: z.literal("yes"), yes: z.boolean() }),
  /** It could not be checked now; the note says why. The step stays unchecked. */
  z.object({ kind: z.literal("not checked") }),
]);
export type Found = z.infer<typeof foundSchema>;

export const stepVerdicts = ["passed", "failed", "unchecked"] as const;
export type StepVerdict = (typeof stepVerdicts)[number];

export const planStepSchema = z.object({
  key: z.string(),
  title: z.string(),
  how: z.string(),
  caution: z.string(),
  landingId: idSchema.nullable(),
  landingMarking: z.string().nullable(),
  /** Place in the shaft section where the result is shown. */
  part: z.enum(["zone-magnet", "landing-door", "landing-panel", "switch", "car", "pit", "machine"]),
  expected: expectedSchema,
  source: z.string(),
  /** Words to search the fault notes with when the step fails. */
  searchWords: z.string(),
});
export type PlanStep = z.infer<typeof planStepSchema>;

export const planLineSchema = z.object({
  id: z.string(),
  name: z.string(),
  purpose: z.string(),
  cautions: z.array(z.string()),
});

export const checkStepSchema = planStepSchema.extend({
  found: foundSchema.nullable(),
  verdict: z.enum(stepVerdicts),
  /** One sentence: what was expected, what was found. */
  sentence: z.string(),
  note: z.string(),
  at: momentSchema.nullable(),
  by: byWhomSchema.nullable(),
  /** What the same step showed when it was last checked before, in which check and when. */
  previous: z
    .object({
      checkId: idSchema,
      found: foundSchema,
      verdict: z.enum(stepVerdicts),
      sentence: z.string(),
      at: momentSchema,
    })
    .nullable(),
});

export const checkLineSchema = z.object({
  ...recordFields,
  planId: z.string(),
  planName: z.string(),
  liftId: idSchema,
  liftTitle: z.string(),
  startedAt: momentSchema,
  finishedAt: momentSchema.nullable(),
  by: byWhomSchema,
  visitId: idSchema.nullable(),
  calloutId: idSchema.nullable(),
  passed: z.int(),
  failed: z.int(),
  unchecked: z.int(),
});
export type CheckLine = z.infer<typeof checkLineSchema>;

export const checkOperations = {
  "check.plans": read(
    "The built-in check plans, and their steps for a lift where one is named.",
    z.object({ liftId: idSchema.optional() }).default({}),
    z.object({ plans: z.array(planLineSchema.extend({ steps: z.array(planStepSchema) })) }),
  ),
  "check.list": read(
    "Signal checks, newest first.",
    z.object({
      liftId: idSchema.optional(),
      open: z.boolean().optional(),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(500).default(100),
    }),
    z.object({ checks: z.array(checkLineSchema) }),
  ),
  "check.find": read(
    "One signal check with its steps.",
    z.object({ id: idSchema }),
    z.object({ check: checkLineSchema, steps: z.array(checkStepSchema) }),
  ),
  "check.start": write(
    "Start a signal check on a lift.",
    z.object({
      liftId: idSchema,
      planId: z.string(),
      calloutId: idSchema.nullable().default(null),
      visitId: idSchema.nullable().default(null),
    }),
    savedSchema,
  ),
  "check.recordStep": write(
    "Record what was found at one step. The verdict is computed by the program.",
    z.object({
      checkId: idSchema,
      stepKey: z.string(),
      found: foundSchema,
      note: z.string().trim().max(1000).default(""),
    }),
    savedSchema.extend({ verdict: z.enum(stepVerdicts), sentence: z.string() }),
  ),
  "check.finish": write(
    "Finish a signal check.",
    z.object({ id: idSchema, version: versionSchema }),
    savedSchema,
  ),
  "check.landingStates": read(
    "Newest verdict per landing and part of a lift, for the shaft section.",
    z.object({ liftId: idSchema }),
    z.object({
      places: z.array(
        z.object({
          landingId: idSchema.nullable(),
          part: planStepSchema.shape.part,
          verdict: z.enum(stepVerdicts),
          sentence: z.string(),
          at: momentSchema.nullable(),
          checkId: idSchema.nullable(),
        }),
      ),
    }),
  ),
};
