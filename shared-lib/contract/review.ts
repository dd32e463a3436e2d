import { z } from "zod";
import { endings, faultGroups } from "../words.ts";
import { bridgeSchema, dangerSchema } from "./bridge.ts";
import { noteLineSchema } from "./fault-note.ts";
import { read } from "./operation.ts";
import { idSchema, momentSchema } from "./record.ts";

export const reviewPeriodSchema = z.object({
  from: momentSchema,
  until: momentSchema,
  siteId: idSchema.optional(),
  group: z.enum(faultGroups).optional(),
  windowDays: z.int().min(1).max(365).default(30),
});

/** Callouts of one lift with one fault group, each received within the window of the one before. */
export const chainSchema = z.object({
  liftId: idSchema,
  liftTitle: z.string(),
  group: z.enum(faultGroups),
  callouts: z.array(
    z.object({
      id: idSchema,
      number: z.string(),
      receivedAt: momentSchema,
      said: z.string(),
      cause: z.string(),
      fix: z.string(),
    }),
  ),
  /** True when the newest callout of the chain lies within the window of the period's end. */
  running: z.boolean(),
});

const countSchema = z.object({
  count: z.int(),
  yearBefore: z.int(),
  calloutIds: z.array(idSchema),
  yearBeforeIds: z.array(idSchema),
});

export const reviewOperations = {
  "review.repeats": read(
    "What keeps coming back: chains of repeats by fault group, and same-lift repeats beside.",
    reviewPeriodSchema,
    z.object({
      /** Callouts received in the period, and how many of them were repeats. */
      callouts: z.int(),
      repeats: z.int(),
      calloutsYearBefore: z.int(),
      repeatsYearBefore: z.int(),
      chains: z.array(chainSchema),
      sameLift: z.object({ repeats: z.int(), calloutIds: z.array(idSchema) }),
      repeatIds: z.array(idSchema),
      repeatIdsYearBefore: z.array(idSchema),
      /** When the first of all callouts was received, of the site where one is named; null while there is none. */
      firstReceivedAt: momentSchema.nullable(),
    }),
  ),
  "review.counts": read(
    "Callouts per lift and per fault group in a period, with the count a year before.",
    reviewPeriodSchema,
    z.object({
      lifts: z.array(countSchema.extend({ liftId: idSchema, liftTitle: z.string() })),
      groups: z.array(countSchema.extend({ group: z.enum(faultGroups) })),
      /** Callouts whose lift is not settled. */
      unsettled: z.array(idSchema),
    }),
  ),
  "review.withoutCause": read(
    "Callouts closed in a period without a recorded cause.",
    reviewPeriodSchema,
    z.object({
      closed: z.int(),
      calloutIds: z.array(idSchema),
      /** Every ending that has one, the most without a cause first. */
      endings: z.array(
        z.object({
          ending: z.enum(endings),
          closedIds: z.array(idSchema),
          calloutIds: z.array(idSchema),
        }),
      ),
    }),
  ),
  "review.notesUsed": read(
    "Fault notes by the number of callouts they ended in a period.",
    reviewPeriodSchema,
    z.object({ notes: z.array(noteLineSchema.extend({ inPeriod: z.int(), calloutIds: z.array(idSchema) })) }),
  ),
  "review.attention": read(
    "What needs a person now: running chains of repeats, open bridges, dangers.",
    reviewPeriodSchema,
    z.object({
      chains: z.array(chainSchema),
      bridges: z.array(bridgeSchema),
      dangers: z.array(dangerSchema),
    }),
  ),
};
