import { z } from "zod";
import { bridgeControls, chainContacts } from "../words.ts";
import { read, write } from "./operation.ts";
import {
  byWhomSchema,
  idSchema,
  lineSchema,
  momentSchema,
  recordFields,
  savedSchema,
  versionSchema,
} from "./record.ts";

/** A temporary link across a contact of the safety chain: the fields of the register (F9.20). */
export const bridgeFieldsSchema = z.object({
  liftId: idSchema,
  calloutId: idSchema.nullable().default(null),
  contact: z.enum(chainContacts),
  /** Between which points, as marked on that site's drawing. */
  points: lineSchema,
  landingId: idSchema.nullable().default(null),
  reason: lineSchema,
  control: z.enum(bridgeControls),
  /** Number written on the lead itself. */
  leadNumber: z.string().trim().max(40).default(""),
});

export const bridgeSchema = z.object({
  ...recordFields,
  ...bridgeFieldsSchema.shape,
  number: z.string(),
  liftTitle: z.string(),
  landingMarking: z.string().nullable(),
  setAt: momentSchema,
  setBy: byWhomSchema,
  removedAt: momentSchema.nullable(),
  removedBy: byWhomSchema.nullable(),
  removalNote: z.string(),
  /** Second check: a named person looked at the place after the removal. */
  checkedAt: momentSchema.nullable(),
  checkedBy: byWhomSchema.nullable(),
  /** What proves that the contact works again, e.g. the door-circuit monitoring test (EN 81-20:2020 5.12.1.9). */
  proof: z.string(),
  /** Open until its removal is recorded and confirmed by the second check. */
  open: z.boolean(),
});
export type Bridge = z.infer<typeof bridgeSchema>;

/** Car door and landing door found bridged together. Blocks every further step until cleared. */
export const dangerSchema = z.object({
  ...recordFields,
  liftId: idSchema,
  liftTitle: z.string(),
  foundAt: momentSchema,
  foundBy: byWhomSchema,
  words: z.string(),
  clearedAt: momentSchema.nullable(),
  clearedBy: byWhomSchema.nullable(),
  clearedHow: z.string(),
});
export type Danger = z.infer<typeof dangerSchema>;

export const bridgeOperations = {
  "bridge.list": read(
    "Bridges of a lift or of all lifts, open ones first.",
    z.object({ liftId: idSchema.optional(), open: z.boolean().optional() }).default({}),
    z.object({ bridges: z.array(bridgeSchema), dangers: z.array(dangerSchema) }),
  ),
  "bridge.set": write(
    "Enter a bridge in the register before it is set. The lift goes out of service in the same step.",
    bridgeFieldsSchema.extend({ setAt: momentSchema.optional() }),
    savedSchema.extend({ number: z.string() }),
  ),
  "bridge.recordRemoval": write(
    "Record that a bridge was taken out, by whom and when.",
    z.object({
      id: idSchema,
      version: versionSchema,
      removedBy: idSchema,
      removedAt: momentSchema.optional(),
      note: z.string().trim().max(1000).default(""),
    }),
    savedSchema,
  ),
  "bridge.confirmRemoval": write(
    "Second check after a removal: who looked at the place, and what proves that the contact works again.",
    z.object({
      id: idSchema,
      version: versionSchema,
      checkedBy: idSchema,
      checkedAt: momentSchema.optional(),
      proof: lineSchema,
    }),
    savedSchema,
  ),
  "danger.record": write(
    "Record that a car door and a landing door were found bridged together. The lift goes out of service.",
    z.object({ liftId: idSchema, words: lineSchema, foundAt: momentSchema.optional() }),
    savedSchema,
  ),
  "danger.clear": write(
    "Record how the danger was cleared, by whom.",
    z.object({
      id: idSchema,
      version: versionSchema,
      how: lineSchema,
      clearedBy: idSchema,
      clearedAt: momentSchema.optional(),
    }),
    savedSchema,
  ),
};
