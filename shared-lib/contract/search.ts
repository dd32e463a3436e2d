import { z } from "zod";
import { driveKinds, faultGroups } from "../words.ts";
import { read } from "./operation.ts";
import { idSchema, momentSchema } from "./record.ts";

export const resultKinds = ["note", "calculator", "fix", "callout", "lift", "check", "visit"] as const;
export type ResultKind = (typeof resultKinds)[number];

/** Half-open ranges of characters in a text, to be marked. */
export const rangesSchema = z.array(z.tuple([z.int(), z.int()]));

export const searchFilterSchema = z.object({
  siteId: idSchema.optional(),
  liftId: idSchema.optional(),
  controllerFamily: z.string().max(200).optional(),
  driveKind: z.enum(driveKinds).optional(),
  group: z.enum(faultGroups).optional(),
  since: momentSchema.optional(),
  until: momentSchema.optional(),
});

export const searchHitSchema = z.object({
  kind: z.enum(resultKinds),
  /** Record id, or the id of a calculator. */
  id: z.string(),
  title: z.string(),
  titleMarks: rangesSchema,
  /** Second line: a passage with matched words where the title has none, else where and when. */
  second: z.string(),
  secondMarks: rangesSchema,
  /** Why this result, in order of weight: "title and symptom; same controller family; 9 callouts". */
  why: z.string(),
  number: z.string().nullable(),
  status: z.string().nullable(),
  liftId: idSchema.nullable(),
  calloutId: idSchema.nullable(),
  at: momentSchema.nullable(),
  score: z.number(),
});
export type SearchHit = z.infer<typeof searchHitSchema>;

export const searchOperations = {
  "search.find": read(
    "Search fault notes, calculators, recorded fixes, callouts and lifts by what a person would say.",
    z.object({
      text: z.string().max(20_000),
      kinds: z.array(z.enum(resultKinds)).optional(),
      filter: searchFilterSchema.default({}),
      /** Lift in whose context is searched: same lift and same controller family rank higher. */
      contextLiftId: idSchema.nullable().default(null),
      limitPerKind: z.int().min(1).max(200).default(5),
      /** Words that are to be taken as typed, not corrected. */
      keepWords: z.array(z.string().max(100)).max(50).default([]),
      /** The last word may be unfinished. */
      typing: z.boolean().default(false),
    }),
    z.object({
      alsoReadAs: z.array(z.string()),
      corrections: z.array(z.object({ typed: z.string(), readAs: z.string() })),
      groups: z.array(
        z.object({ kind: z.enum(resultKinds), total: z.int(), hits: z.array(searchHitSchema) }),
      ),
      /** What to try when nothing was found; null otherwise. */
      advice: z.string().nullable(),
      /** True while the ranked index is still being built and the database's own full-text index answers. */
      warming: z.boolean(),
    }),
  ),
};
