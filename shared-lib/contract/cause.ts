import { z } from "zod";
import { noteStatuses } from "../words.ts";
import { noteCheckSchema } from "./fault-note.ts";
import { read, write } from "./operation.ts";
import { byWhomSchema, idSchema, momentSchema, savedSchema } from "./record.ts";
import { rangesSchema } from "./search.ts";

const keySchema = z.string().min(1).max(100);

/** One cause of a fault note, as it stands for the callout in hand. */
export const rankedCauseSchema = z.object({
  key: z.string(),
  title: z.string(),
  tell: z.string(),
  fix: z.string(),
  caution: z.string(),
  /** Place in the fault note, from 1. */
  place: z.int(),
  /** 0 to 1; over all causes of the note 1. */
  probability: z.number(),
  /** Similar callouts that it ended, of `evidence.callouts`. */
  callouts: z.int(),
  onLift: z.int(),
  /** Checks whose answers rule it out, and prove it, in words. */
  ruledOutBy: z.array(z.string()),
  provedBy: z.array(z.string()),
});
export type RankedCause = z.infer<typeof rankedCauseSchema>;

/** A check that is still open, with why it is worth its time. */
export const offeredCheckSchema = z.object({
  ...noteCheckSchema.pick({ key: true, title: true, how: true, minutes: true, hazard: true }).shape,
  caution: z.string(),
  outcomes: z.array(z.object({ key: z.string(), words: z.string() })),
  /** Expected decrease of the uncertainty, bits. */
  gain: z.number(),
  /** False: whatever comes out, the causes stay as they are. */
  tells: z.boolean(),
  /** Dangerous or invasive: never offered before a harmless check that still tells something. */
  careful: z.boolean(),
  why: z.string(),
});
export type OfferedCheck = z.infer<typeof offeredCheckSchema>;

/** An answered check, or an answer taken back: the path to the cause, kept for good. */
export const causeStepSchema = z.object({
  id: idSchema,
  noteId: idSchema,
  noteNumber: z.string(),
  noteTitle: z.string(),
  checkKey: z.string(),
  checkTitle: z.string(),
  outcomeKey: z.string(),
  outcomeWords: z.string(),
  at: momentSchema,
  by: byWhomSchema,
  /** What stood first right after this answer, with its probability then; empty where everything was ruled out. */
  after: z.array(z.object({ title: z.string(), probability: z.number() })),
  takenBack: z.object({ at: momentSchema, by: byWhomSchema }).nullable(),
  /** A later answer to the same check stands in its place. */
  overtaken: z.boolean(),
});
export type CauseStep = z.infer<typeof causeStepSchema>;

export const causeRankingSchema = z.object({
  noteId: idSchema,
  noteNumber: z.string(),
  noteTitle: z.string(),
  causes: z.array(rankedCauseSchema),
  evidence: z.object({
    callouts: z.int(),
    alike: z.int(),
    onLift: z.int(),
    /** Callouts of this note whose cause was not told, or is no longer in the note. */
    untold: z.int(),
    /** Fewer than five: the order is the note's own. */
    thin: z.boolean(),
    sentence: z.string(),
  }),
  answers: z.array(causeStepSchema),
  /** What to do where the answers rule out every cause; null otherwise. */
  contradiction: z.string().nullable(),
  /** The check to do next; null when none tells anything more. */
  next: offeredCheckSchema.nullable(),
  others: z.array(offeredCheckSchema),
  /** Repairs to try when no check tells more, by probability over time. */
  repairs: z.array(
    z.object({
      causeKey: z.string(),
      title: z.string(),
      minutes: z.number(),
      /** How many visits that put this cause right the minutes are the median of; 0: assumed. */
      fromVisits: z.int(),
    }),
  ),
  /** Expected minutes until one of the repairs helped, in that order. */
  expectedMinutes: z.number(),
});
export type CauseRanking = z.infer<typeof causeRankingSchema>;

/** A past callout like the one in hand, with what ended it. */
export const similarCalloutSchema = z.object({
  calloutId: idSchema,
  number: z.string(),
  liftTitle: z.string(),
  at: momentSchema,
  said: z.string(),
  saidMarks: rangesSchema,
  cause: z.string(),
  fix: z.string(),
  circle: z.enum(["lift", "alike", "elsewhere"]),
  /** Of the callouts about as near, how many the same cause ended. */
  sameCause: z.int(),
  near: z.int(),
  /** "this lift; 5 of 12 like it" */
  why: z.string(),
});
export type SimilarCallout = z.infer<typeof similarCalloutSchema>;

const aboutSchema = {
  calloutId: idSchema.nullable().default(null),
  visitId: idSchema.nullable().default(null),
};

export const causeOperations = {
  "cause.rank": read(
    "Causes of a fault note ranked for a callout, a visit or a lift, from the company’s own callouts and the answers given, with the next best check.",
    z.object({
      noteId: idSchema,
      ...aboutSchema,
      /** Where there is neither callout nor visit. */
      liftId: idSchema.nullable().default(null),
      text: z.string().max(8000).default(""),
    }),
    causeRankingSchema,
  ),
  "cause.similar": read(
    "Nearest past callouts with what ended them, one for each cause: same lift first, then the same family and drive; and the fault note most like it.",
    z.object({
      text: z.string().max(8000),
      liftId: idSchema.nullable().default(null),
      /** Left out: the callout in hand. */
      calloutId: idSchema.nullable().default(null),
      limit: z.int().min(1).max(20).default(3),
    }),
    z.object({
      callouts: z.array(similarCalloutSchema),
      note: z
        .object({
          id: idSchema,
          number: z.string(),
          title: z.string(),
          status: z.enum(noteStatuses),
          /** Its likeliest cause, with the count behind it. */
          cause: z.string(),
          why: z.string(),
        })
        .nullable(),
    }),
  ),
  "cause.answerCheck": write(
    "Record what a check of a fault note showed, for a callout or a visit. A later answer to the same check takes its place.",
    z.object({ noteId: idSchema, ...aboutSchema, checkKey: keySchema, outcomeKey: keySchema }),
    savedSchema,
  ),
  "cause.takeBack": write(
    "Take an answer back: a new row says so, the answer stays readable.",
    z.object({ stepId: idSchema }),
    savedSchema,
  ),
  "cause.path": read(
    "The checks answered for a callout or on a visit, oldest first.",
    z.object(aboutSchema),
    z.object({ steps: z.array(causeStepSchema) }),
  ),
};
