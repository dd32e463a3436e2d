import { z } from "zod";
import { doorKinds, driveKinds, faultGroups, noteStatuses } from "../words.ts";
import { read, write } from "./operation.ts";
import {
  byWhomSchema,
  idSchema,
  lineSchema,
  momentSchema,
  patchOf,
  recordFields,
  savedSchema,
  versionSchema,
} from "./record.ts";

const sentenceSchema = z.string().trim().min(1).max(1500);
const keySchema = z.string().trim().min(1).max(100);

export const causeSchema = z.object({
  key: keySchema,
  title: lineSchema,
  /** How to tell this cause from the others. */
  tell: z.string().trim().max(2000).default(""),
  fix: z.string().trim().max(2000).default(""),
  caution: z.string().trim().max(600).optional(),
  source: z.string().trim().max(300).optional(),
});
export type Cause = z.infer<typeof causeSchema>;

export const outcomeMeanings = ["excludes", "unlikely", "neutral", "likely", "proves"] as const;

export const noteCheckSchema = z.object({
  key: keySchema,
  title: lineSchema,
  how: z.string().trim().max(2000).default(""),
  minutes: z.number().min(0).max(600).default(5),
  caution: z.string().trim().max(600).optional(),
  hazard: z.enum(["none", "live", "shaft", "isolated"]).default("none"),
  outcomes: z
    .array(
      z.object({
        key: keySchema,
        words: lineSchema,
        means: z.record(z.string(), z.enum(outcomeMeanings)).default({}),
      }),
    )
    .max(12)
    .default([]),
});

export const calculatorLinkSchema = z.object({
  id: z.string().min(1).max(60),
  preset: z.record(z.string(), z.json()).default({}),
  why: z.string().trim().max(300).default(""),
});

export const faultNoteFieldsSchema = z.object({
  title: lineSchema,
  group: z.enum(faultGroups),
  /** Several phrasings, as people say it. */
  symptoms: z.array(sentenceSchema).max(40).default([]),
  applies: z
    .object({
      drives: z.array(z.enum(driveKinds)).default([]),
      doors: z.array(z.enum(doorKinds)).default([]),
      controllerFamilies: z.array(lineSchema).default([]),
      words: z.string().trim().max(600).default(""),
    })
    .default({ drives: [], doors: [], controllerFamilies: [], words: "" }),
  /** In order of likelihood. */
  causes: z.array(causeSchema).max(40).default([]),
  checks: z.array(noteCheckSchema).max(40).default([]),
  cautions: z.array(sentenceSchema).max(20).default([]),
  calculators: z.array(calculatorLinkSchema).max(10).default([]),
  checkPlans: z.array(z.string().max(60)).max(10).default([]),
  /** Where what it says is from: clause and edition, or "common practice, no source". */
  source: z.string().trim().max(600).default(""),
});
export type FaultNoteFields = z.infer<typeof faultNoteFieldsSchema>;

export const faultNoteSchema = z.object({
  ...recordFields,
  ...faultNoteFieldsSchema.shape,
  number: z.string(),
  status: z.enum(noteStatuses),
  statusBy: byWhomSchema.nullable(),
  statusAt: momentSchema.nullable(),
  statusReason: z.string(),
  /** Key of the starter note it came from; null for the company's own. */
  starterKey: z.string().nullable(),
  /** True once the company edited a starter note. */
  edited: z.boolean(),
});
export type FaultNote = z.infer<typeof faultNoteSchema>;

export const noteLineSchema = z.object({
  id: idSchema,
  number: z.string(),
  title: z.string(),
  group: z.enum(faultGroups),
  status: z.enum(noteStatuses),
  starter: z.boolean(),
  callouts: z.int(),
  lifts: z.int(),
});

/** Recorded callouts that ended by one of the causes. `causeKey` null: attached to the note, cause not told. */
export const causeCountSchema = z.object({ causeKey: z.string().nullable(), callouts: z.int() });

export const faultNoteOperations = {
  "faultNote.list": read(
    "Fault notes as lines.",
    z.object({ group: z.enum(faultGroups).optional(), status: z.enum(noteStatuses).optional() }).default({}),
    z.object({ notes: z.array(noteLineSchema) }),
  ),
  "faultNote.find": read(
    "One fault note with the callouts that prove it and how often each cause ended one.",
    z.object({ id: idSchema }),
    z.object({
      note: faultNoteSchema,
      counts: z.array(causeCountSchema),
      callouts: z.int(),
      lifts: z.int(),
      proof: z.array(
        z.object({
          fixId: idSchema,
          calloutId: idSchema.nullable(),
          calloutNumber: z.string().nullable(),
          liftId: idSchema,
          liftTitle: z.string(),
          at: momentSchema,
          cause: z.string(),
          fix: z.string(),
          causeKey: z.string().nullable(),
        }),
      ),
    }),
  ),
  "faultNote.write": write(
    "Write a new fault note, as a draft; from a recorded fix where one is named.",
    faultNoteFieldsSchema.extend({ fromFixId: idSchema.nullable().default(null) }),
    savedSchema.extend({ number: z.string() }),
  ),
  "faultNote.change": write(
    "Change a fault note. An older version is refused with both texts.",
    z.object({ id: idSchema, version: versionSchema, fields: patchOf(faultNoteFieldsSchema) }),
    savedSchema,
  ),
  "faultNote.confirm": write(
    "Confirm a fault note, with the person and the date.",
    z.object({ id: idSchema, version: versionSchema, reason: z.string().trim().max(1000).default("") }),
    savedSchema,
  ),
  "faultNote.withdraw": write(
    "Withdraw a fault note, saying why. It stays findable.",
    z.object({ id: idSchema, version: versionSchema, reason: lineSchema }),
    savedSchema,
  ),
  "faultNote.backToDraft": write(
    "Set a note back to draft, saying why.",
    z.object({ id: idSchema, version: versionSchema, reason: lineSchema }),
    savedSchema,
  ),
  "faultNote.suggest": read(
    "Which existing notes a recorded fix may belong to, best first.",
    z.object({
      text: z.string().max(8000),
      liftId: idSchema.nullable().default(null),
      limit: z.int().min(1).max(10).default(4),
    }),
    z.object({ notes: z.array(noteLineSchema.extend({ why: z.string() })) }),
  ),
};
