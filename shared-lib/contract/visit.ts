import { z } from "zod";
import { faultGroups, visitKinds } from "../words.ts";
import { read, write } from "./operation.ts";
import {
  byWhomSchema,
  idSchema,
  lineOrEmptySchema,
  lineSchema,
  momentSchema,
  patchOf,
  recordFields,
  savedSchema,
  textSchema,
  versionSchema,
} from "./record.ts";

export const partUsedSchema = z.object({
  name: lineSchema,
  quantity: z.number().min(0).max(100_000).default(1),
  marking: lineOrEmptySchema,
});

/** A recorded fix: the cause and the repair that ended a callout. */
export const fixFieldsSchema = z.object({
  cause: z.string().trim().min(1).max(4000),
  fix: z.string().trim().min(1).max(4000),
  group: z.enum(faultGroups),
});

export const visitFieldsSchema = z.object({
  liftId: idSchema,
  /** A visit may stand without a callout: maintenance, commissioning. */
  calloutId: idSchema.nullable().default(null),
  kind: z.enum(visitKinds),
  engineerId: idSchema,
  arrivedAt: momentSchema,
  leftAt: momentSchema.nullable().default(null),
  found: textSchema,
  done: textSchema,
  displayReading: lineOrEmptySchema,
  chargeable: z.boolean().nullable().default(null),
  parts: z.array(partUsedSchema).max(100).default([]),
  /** Measured values and other readings, one sentence each. */
  readings: z.array(z.string().trim().min(1).max(300)).max(100).default([]),
});

export const recordedFixSchema = z.object({
  ...recordFields,
  ...fixFieldsSchema.shape,
  visitId: idSchema.nullable(),
  calloutId: idSchema.nullable(),
  liftId: idSchema,
  liftTitle: z.string(),
  at: momentSchema,
  by: byWhomSchema.nullable(),
  noteId: idSchema.nullable(),
  noteNumber: z.string().nullable(),
  causeKey: z.string().nullable(),
});
export type RecordedFix = z.infer<typeof recordedFixSchema>;

export const visitSchema = z.object({
  ...recordFields,
  ...visitFieldsSchema.shape,
  engineer: byWhomSchema,
  liftTitle: z.string(),
  calloutNumber: z.string().nullable(),
  fix: recordedFixSchema.nullable(),
});
export type Visit = z.infer<typeof visitSchema>;

export const visitOperations = {
  "visit.list": read(
    "Visits of a lift or of a callout, newest first.",
    z.object({
      liftId: idSchema.optional(),
      calloutId: idSchema.optional(),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(500).default(100),
    }),
    z.object({ visits: z.array(visitSchema) }),
  ),
  "visit.find": read("One visit.", z.object({ id: idSchema }), z.object({ visit: visitSchema })),
  "visit.record": write(
    "Record a visit, with the recorded fix where a cause was found.",
    visitFieldsSchema.extend({ fix: fixFieldsSchema.nullable().default(null) }),
    savedSchema.extend({ fixId: idSchema.nullable() }),
  ),
  "visit.change": write(
    "Correct a visit.",
    z.object({
      id: idSchema,
      version: versionSchema,
      fields: patchOf(visitFieldsSchema),
      fix: fixFieldsSchema.nullable().optional(),
    }),
    savedSchema.extend({ fixId: idSchema.nullable() }),
  ),
  "fix.find": read("One recorded fix.", z.object({ id: idSchema }), z.object({ fix: recordedFixSchema })),
  "fix.attach": write(
    "Attach a recorded fix to a fault note, and to one of its causes.",
    z.object({
      id: idSchema,
      version: versionSchema,
      noteId: idSchema.nullable(),
      causeKey: z.string().max(100).nullable(),
    }),
    savedSchema,
  ),
};
