import { z } from "zod";
import { read, write } from "./operation.ts";
import { byWhomSchema, idSchema, momentSchema, savedSchema, versionSchema } from "./record.ts";

export const entities = [
  "company",
  "person",
  "site",
  "lift",
  "landing",
  "signal",
  "callout",
  "callout event",
  "caller",
  "visit",
  "recorded fix",
  "fault note",
  "bridge",
  "danger",
  "check",
  "check step",
  "calculation",
  "cause step",
] as const;
export type Entity = (typeof entities)[number];

export const fieldChangeSchema = z.object({
  field: z.string(),
  before: z.json(),
  after: z.json(),
});

export const changeSchema = z.object({
  stamp: z.string(),
  at: momentSchema,
  by: byWhomSchema.nullable(),
  what: z.enum(["made", "changed", "deleted", "restored"]),
  fields: z.array(fieldChangeSchema),
});

export const historyOperations = {
  "history.ofRecord": read(
    "Who changed what and when, field by field, newest first.",
    z.object({ entity: z.enum(entities), id: idSchema }),
    z.object({ changes: z.array(changeSchema), deleted: z.boolean(), version: versionSchema }),
  ),
  "history.deleted": read(
    "Deleted records that can be restored, newest first.",
    z.object({ limit: z.int().min(1).max(500).default(100) }).default({ limit: 100 }),
    z.object({
      records: z.array(
        z.object({
          entity: z.enum(entities),
          id: idSchema,
          version: versionSchema,
          title: z.string(),
          at: momentSchema,
          by: byWhomSchema.nullable(),
        }),
      ),
    }),
  ),
  "history.undoLast": write(
    "Take back the last change of a record. What may never be taken back (a bridge, an event) is refused with the reason.",
    z.object({ entity: z.enum(entities), id: idSchema, version: versionSchema }),
    savedSchema,
  ),
  "record.delete": write(
    "Delete a record. It can be restored.",
    z.object({
      entity: z.enum(["site", "lift", "signal", "visit", "fault note", "calculation", "person"]),
      id: idSchema,
      version: versionSchema,
    }),
    savedSchema,
  ),
  "record.restore": write(
    "Restore a deleted record.",
    z.object({ entity: z.enum(entities), id: idSchema, version: versionSchema }),
    savedSchema,
  ),
};
